/* rw-warm-up-private.h: what the parts of the warm-up share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-warm-up.h"

G_BEGIN_DECLS

typedef struct
{
  double      t;     /* seconds since power on */
  double      value; /* volts */
  double      u_own;
  double      step;
  double      share; /* the meter's percent part, as a standard share of a value */
  const char *meter;
  guint       n;     /* event number */
} RwWarmUpReading;

/* Fills drift, u, r, n_eff, approach, tau, final, settled and settle_at. @nominal in volts. */
void rw_warm_up_fit (RwWarmUp *self, const RwWarmUpReading *readings, guint n, double nominal);

G_END_DECLS
