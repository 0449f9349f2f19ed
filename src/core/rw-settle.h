/* rw-settle.h: has a stream come to rest, and at what value?
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Watches one stream of one spot. Constant memory. No clock: time comes with each sample. */
typedef struct _RwSettle RwSettle;

typedef struct
{
  gboolean settled;
  double   value; /* median of the window */
  double   u;     /* standard error of it as the value now, own part only, at least step/√12; whole once settled */
  double   since; /* seconds: when the stream came to rest */
} RwSettled;

/* @step: the meter's last digit in base units; 0 when unknown. */
RwSettle *rw_settle_new (double step);
void      rw_settle_free (RwSettle *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwSettle, rw_settle_free)

/* Forgets the samples, not the noise that the meter was seen to have. */
void rw_settle_reset (RwSettle *self);

/* The same meter on another range: as a reset, with another last digit. */
void rw_settle_set_step (RwSettle *self, double step);

/* One sample; NaN (overload) and a step back in time reset. Returns the state after it: value and u are NaN
 * until a whole window is there. O(1). */
RwSettled rw_settle_push (RwSettle *self, double t, double value);

G_END_DECLS
