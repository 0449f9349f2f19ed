/* rw-target.c: where the rail that the meter is on should stand, and how far from there it is now.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-target.h"

#include <math.h>

/* A supply rail that shows less than this share of its nominal shows nothing: leads in the air, or a dead rail. */
static const double nothing_share = 0.02;

static gboolean
is_supply (const RwTarget *target)
{
  return target->rail != NULL && target->sample.kind == RW_KIND_DC && target->sample.place != RW_PLACE_WIRE;
}

/* By magnitude: volts that @value is more than @than. */
static double
more_than (const RwTarget *target,
           double          value,
           double          than)
{
  return target->rail != NULL && target->rail->nominal < 0 ? than - value : value - than;
}

static void
take_limits (RwTarget *out,
             double    u)
{
  const RwReading *sample = &out->sample;

  if (!rw_rail_limits_at (out->rail, sample->rail, sample->place, sample->kind, &out->lo, &out->hi))
    return;
  out->verdict = rw_verdict_judge (out->value, u, out->lo, out->hi);
  if (isnan (out->value))
    return;

  const double below = out->lo - out->value, above = out->value - out->hi;

  out->limit = below > above ? out->lo : out->hi;
  out->past = MAX (below, above);
  out->weak = is_supply (out) && (below > above) == (out->rail->nominal > 0);
}

/* Volts of this rail over the window of the reference; the limits where the window is open. */
static void
take_window (RwTarget        *out,
             const RwTrimSet *set,
             guint            rail)
{
  RwTrimExpected low, high;

  out->window_lo = out->lo;
  out->window_hi = out->hi;
  if (!isfinite (set->window.lo) || !isfinite (set->window.hi)
      || !rw_trim_fit_expect (set->fit, rail, set->window.lo, 0, &low)
      || !rw_trim_fit_expect (set->fit, rail, set->window.hi, 0, &high))
    return;
  out->window_lo = MIN (low.value, high.value);
  out->window_hi = MAX (low.value, high.value);
}

/* FALSE: the screw is not what this rail should be brought to its place by. */
static gboolean
take_set_point (RwTarget           *out,
                const RwBenchState *state,
                const RwTrimSet    *set,
                const RwTrimLive   *live)
{
  RwTrimAdvice advice;
  RwTrimExpected aim;

  if (set == NULL || live == NULL || !is_supply (out) || isnan (live->x))
    return FALSE;
  rw_trim_advice_work_out (state, out->sample.rail, live, &advice);
  if (advice.set != set || (advice.says != RW_TRIM_SAYS_TURN && advice.says != RW_TRIM_SAYS_LEAVE)
      || !rw_trim_fit_expect (set->fit, live->from, set->window.best, 0, &aim))
    return FALSE;
  out->from = RW_TARGET_TRIM;
  out->aim = aim.value;
  take_window (out, set, live->from);
  out->half = (out->window_hi - out->window_lo) / 2;
  out->inside = advice.says == RW_TRIM_SAYS_LEAVE;
  return TRUE;
}

/* Where no reading of this meter could show that the limits are kept, lying within them has to do. */
static void
take_middle (RwTarget *out)
{
  if (!isfinite (out->lo) || !isfinite (out->hi))
    return;
  out->from = RW_TARGET_LIMITS;
  out->aim = (out->lo + out->hi) / 2;
  out->half = (out->hi - out->lo) / 2;
  out->inside = out->verdict == RW_VERDICT_INSIDE || (out->verdict == RW_VERDICT_BLIND && out->past <= 0);
}

void
rw_target_init (RwTarget           *out,
                const RwBenchState *state,
                const RwReading    *sample,
                const RwMeterFacts *meter,
                const RwTrimSet    *set,
                const RwTrimLive   *live)
{
  *out = (RwTarget){ .sample = *sample, .value = sample->over ? (double) NAN : sample->value };
  out->rail = rw_profile_find_rail (rw_bench_state_get_profile (state), sample->rail);
  out->lo = out->hi = out->window_lo = out->window_hi = out->aim = out->distance = out->half = NAN;
  out->limit = out->past = NAN;
  out->touched = !is_supply (out) || !(fabs (out->value) < nothing_share * fabs (out->rail->nominal));
  out->reversed = is_supply (out) && out->touched && out->value * out->rail->nominal < 0;
  out->danger = is_supply (out) && fabs (out->value) > out->rail->never_above;
  take_limits (out, rw_meter_facts_u_total (meter, sample));
  if (out->danger || !take_set_point (out, state, set, live))
    take_middle (out);
  if (!(out->half > 0))
    out->half = NAN;
  out->distance = more_than (out, out->value, out->aim);
}
