/* rw-settle-belief.h: what the samples of a stream so far say of where it goes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* What is believed of the stream now. */
typedef struct
{
  double   p_going;    /* chance that it is on its way by the meter's own filter, or has only just come here */
  double   p_creeping; /* chance that it creeps, as a rail that charges */
  double   noise;      /* standard deviation of a sample, as expected */
  gboolean fits;       /* the newest sample is none that the likeliest stretch skipped */
} RwSettleOutlook;

typedef struct _RwSettleBelief RwSettleBelief;

/* @step ≥ 0: value of the last digit, 0 when unknown. */
RwSettleBelief *rw_settle_belief_new (double step);
void            rw_settle_belief_free (RwSettleBelief *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwSettleBelief, rw_settle_belief_free)

/* Forgets the samples, not what the meter's noise was. */
void rw_settle_belief_reset (RwSettleBelief *self);

/* Another range: as a reset; the noise stays what it was in steps. */
void rw_settle_belief_set_step (RwSettleBelief *self, double step);

/* One finite sample, later than the one before. O(1): no more than 75 stretches are weighed. */
void rw_settle_belief_push (RwSettleBelief *self, double t, double value);

/* @way > 0: what may be left, by the filter or by charging, without counting as on its way. O(1). */
RwSettleOutlook rw_settle_belief_get (const RwSettleBelief *self, double way);

/* Half of what 95 % of what may be left of the way is below: as a standard deviation, but rare long ways do not
 * inflate it. Of a stream that is not on its way. O(1). */
double rw_settle_belief_get_u_left (const RwSettleBelief *self);

G_END_DECLS
