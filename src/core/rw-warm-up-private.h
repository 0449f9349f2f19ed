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

/* Fills drift, u, r, n_eff, approach, tau, final, settled, settle_at and all of the step. @nominal in volts. */
void rw_warm_up_fit (RwWarmUp *self, const RwWarmUpReading *readings, guint n, double nominal);

/* TRUE when one step, with or without a drift beside it, says more than anything else; fills the step, and drift, u, r
 * and n_eff of what is beside it. @own: the readings' own standard error, volts. @approach_rss: sum of squares about the
 * best exponential approach; infinite when there is none. */
gboolean rw_warm_up_find_step (RwWarmUp *self, const RwWarmUpReading *readings, guint n, double own, double approach_rss);

G_END_DECLS
