/* rw-compare-spots.c: the spots that two sessions have in common, and how sure their differences are.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "rw-compare-private.h"

static const double sqrt_3 = 1.7320508075688772;

gboolean
rw_compare_same_meter (const RwMeterFacts *a,
                       const RwMeterFacts *b,
                       RwCompareMeters     meters)
{
  if (meters != RW_COMPARE_METERS_BY_NAME)
    return meters == RW_COMPARE_METERS_SAME;
  return a != NULL && b != NULL && a->name != NULL && a->name[0] != '\0' && g_strcmp0 (a->name, b->name) == 0
         && a->percent == b->percent && a->counts == b->counts;
}

double
rw_compare_u (const RwReading    *a,
              const RwMeterFacts *meter_a,
              const RwReading    *b,
              const RwMeterFacts *meter_b,
              gboolean            same)
{
  if ((meter_a == NULL && isnan (a->u)) || (meter_b == NULL && isnan (b->u)))
    return NAN;

  const double own = hypot (rw_meter_facts_u_own (meter_a, a), rw_meter_facts_u_own (meter_b, b));
  const double common_a = rw_meter_facts_u_common (meter_a, a), common_b = rw_meter_facts_u_common (meter_b, b);
  const gboolean shared = same && meter_a != NULL && meter_b != NULL && isnan (a->u) && isnan (b->u);
  const double common = shared ? meter_a->percent / 100 * fabs (b->value - a->value) / sqrt_3
                               : hypot (common_a, common_b);
  const double u = hypot (own, common);

  return u > 0 ? u : (double) NAN;
}

static gboolean
said_agrees (RwSaid a,
             RwSaid b,
             gboolean exactly)
{
  return a == b || (!exactly && (a == RW_SAID_NOT || b == RW_SAID_NOT));
}

static gboolean
spots_agree (const RwCompareSpot *a,
             const RwCompareSpot *b,
             gboolean             exactly)
{
  return rw_reading_same_spot (&a->reading, &b->reading)
         && said_agrees (a->setup.power_on, b->setup.power_on, exactly)
         && said_agrees (a->setup.board_fitted, b->setup.board_fitted, exactly)
         && said_agrees (a->setup.warm, b->setup.warm, exactly);
}

static RwSaid
either (RwSaid a,
        RwSaid b)
{
  return a != RW_SAID_NOT ? a : b;
}

static RwSetup
either_setup (const RwSetup *a,
              const RwSetup *b)
{
  return (RwSetup){ either (a->power_on, b->power_on), either (a->board_fitted, b->board_fitted),
                    either (a->warm, b->warm) };
}

static RwCompareValue
value_of (const RwCompareSide *side,
          const RwCompareSpot *spot)
{
  const RwReading *reading = &spot->reading;
  const RwRail *rail = rw_profile_find_rail (rw_session_get_profile (side->session), reading->rail);
  RwCompareValue value = {
    .value = reading->over ? (double) NAN : reading->value,
    .u = spot->meter != NULL || !isnan (reading->u) ? rw_meter_facts_u_total (spot->meter, reading) : (double) NAN,
    .lo = NAN,
    .hi = NAN,
    .offset = NAN,
    .offset_u = NAN,
    .n = spot->n,
    .t = spot->t,
  };

  if (!rw_rail_limits_at (rail, reading->rail, reading->place, reading->kind, &value.lo, &value.hi))
    value.lo = value.hi = NAN;
  else if (!isnan (value.value) && !isnan (value.u))
    value.verdict = rw_verdict_judge (value.value, value.u, value.lo, value.hi);
  return value;
}

/* Half a margin, by today's limits. One-sided limits begin at zero. */
static double
worth_of (const RwCompareValue *now)
{
  return RW_COMPARE_WORTH * (isinf (now->lo) ? now->hi : (now->hi - now->lo) / 2);
}

static void
pair (const RwCompareSide *then,
      const RwCompareSpot *old,
      const RwCompareSide *now,
      const RwCompareSpot *new,
      RwCompareMeters      meters,
      GArray              *items)
{
  RwCompareItem item = {
    .what = RW_COMPARE_READING,
    .rail = new->reading.rail,
    .label = rw_compare_dup_label (rw_session_get_profile (now->session), new->reading.rail),
    .place = new->reading.place,
    .kind = new->reading.kind,
    .setup = either_setup (&old->setup, &new->setup),
    .setup_unsure = !spots_agree (old, new, TRUE),
    .step = MAX (old->reading.step, new->reading.step),
    .x = NAN,
    .then = value_of (then, old),
    .now = value_of (now, new),
  };

  item.difference = item.now.value - item.then.value;
  item.u = rw_compare_u (&old->reading, old->meter, &new->reading, new->meter,
                         rw_compare_same_meter (old->meter, new->meter, meters));
  item.worth = worth_of (&item.now);
  if (isnan (item.difference))
    item.why = RW_COMPARE_WHY_OVERLOAD;
  else if (isnan (item.u))
    item.why = RW_COMPARE_WHY_METER;
  g_array_append_val (items, item);
}

static void
leave (const RwCompareSide *side,
       const RwCompareSpot *spot,
       gboolean             in_then,
       gboolean             in_now,
       GArray              *left)
{
  const RwCompareLeft it = {
    .rail = spot->reading.rail,
    .label = rw_compare_dup_label (rw_session_get_profile (side->session), spot->reading.rail),
    .place = spot->reading.place,
    .kind = spot->reading.kind,
    .setup = spot->setup,
    .in_then = in_then,
    .in_now = in_now,
    .outdated = in_then && in_now,
  };

  g_array_append_val (left, it);
}

/* The spot of @side that is still free and goes with @spot: a valid one before one that is not; −1: none. */
static int
find_partner (const RwCompareSide *side,
              const gboolean      *taken,
              const RwCompareSpot *spot,
              gboolean             exactly)
{
  int found = -1;

  for (guint i = 0; i < side->spots->len; i++)
    {
      const RwCompareSpot *other = &g_array_index (side->spots, RwCompareSpot, i);

      if (taken[i] || !spots_agree (spot, other, exactly))
        continue;
      if (!other->outdated)
        return (int) i;
      found = found < 0 ? (int) i : found;
    }
  return found;
}

typedef struct
{
  const RwCompareSide *then, *now;
  gboolean            *then_done, *now_done;
  RwCompareMeters      meters;
  GArray              *items, *left;
} Pairing;

static void
pair_all (Pairing *self,
          gboolean exactly)
{
  for (guint i = 0; i < self->then->spots->len; i++)
    {
      const RwCompareSpot *old = &g_array_index (self->then->spots, RwCompareSpot, i);

      if (self->then_done[i])
        continue;

      const int k = find_partner (self->now, self->now_done, old, exactly);

      if (k < 0)
        continue;

      const RwCompareSpot *new = &g_array_index (self->now->spots, RwCompareSpot, (guint) k);

      self->then_done[i] = self->now_done[k] = TRUE;
      if (old->outdated || new->outdated)
        leave (self->now, new, TRUE, TRUE, self->left);
      else
        pair (self->then, old, self->now, new, self->meters, self->items);
    }
}

void
rw_compare_pair_spots (const RwCompareSide *then,
                       const RwCompareSide *now,
                       RwCompareMeters      meters,
                       GArray              *items,
                       GArray              *left)
{
  g_autofree gboolean *then_done = g_new0 (gboolean, then->spots->len + 1);
  g_autofree gboolean *now_done = g_new0 (gboolean, now->spots->len + 1);
  Pairing pairing = { then, now, then_done, now_done, meters, items, left };

  pair_all (&pairing, TRUE);
  pair_all (&pairing, FALSE);
  for (guint i = 0; i < then->spots->len; i++)
    if (!then_done[i])
      leave (then, &g_array_index (then->spots, RwCompareSpot, i), TRUE, FALSE, left);
  for (guint i = 0; i < now->spots->len; i++)
    if (!now_done[i])
      leave (now, &g_array_index (now->spots, RwCompareSpot, i), FALSE, TRUE, left);
}
