/* rw-compare-lines.c: what the trim did to every rail in two sessions: slopes, and where the lines lie.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A line V = a + b·x is compared by its slope b and by its level at the nominal volts x of the reference rail: its
 * offset a lies far outside everything that was read and goes with the slope almost fully, so it is told but not tested.
 * A scale error e of the meter leaves b as it is and moves the level at a shown x by e·a, so that is the per cent part.
 */
#include "config.h"

#include <math.h>

#include "rw-compare-private.h"

static const double sqrt_3 = 1.7320508075688772;

/* The meter of its first reading. (nullable) */
static const RwMeterFacts *
meter_of (const RwCompareSide *side,
          const RwTrimSet     *set)
{
  const int index = rw_session_find (side->session, g_array_index (set->points, RwTrimPoint, 0).n);

  return index < 0 ? NULL
                   : rw_session_find_meter (side->session,
                                            rw_session_get_event (side->session, (guint) index)->reading.meter);
}

/* A rail of a set that has a line. */
typedef struct
{
  const RwCompareSide *side;
  const RwTrimSet     *set;
  guint                rail;
  gboolean             aged;
  RwTrimLine           line;
  RwTrimExpected       level; /* at x */
} Line;

static gboolean
find_line (const RwCompareSide *side,
           guint                set,
           const char          *rail,
           double               x,
           Line                *out)
{
  const RwTrimSet *it = side->sets->pdata[set];
  const int index = rw_profile_index_of (it->profile, rail);

  if (index < 0 || !rw_compare_tells_slope (it, (guint) index))
    return FALSE;
  *out = (Line){ side, it, (guint) index, g_array_index (side->aged, gboolean, set), { 0 }, { 0 } };
  return rw_trim_fit_get_line (it->fit, out->rail, &out->line)
         && rw_trim_fit_expect (it->fit, out->rail, x, 0, &out->level);
}

static RwCompareValue
slope_value (const Line *line)
{
  return (RwCompareValue){
    .value = line->line.slope,
    .u = line->line.slope_u,
    .lo = NAN,
    .hi = NAN,
    .offset = line->line.offset,
    .offset_u = line->line.offset_u,
    .t = NAN,
    .before_repair = line->aged,
  };
}

static RwCompareValue
level_value (const Line *line)
{
  const double common = line->set->percent / 100 * fabs (line->level.value) / sqrt_3;
  const double lo = line->set->lo[line->rail], hi = line->set->hi[line->rail];
  RwCompareValue value = slope_value (line);

  value.value = line->level.value;
  value.u = hypot (line->level.u, common);
  value.lo = lo;
  value.hi = hi;
  if (!isnan (lo) && !isnan (hi))
    value.verdict = rw_verdict_judge (value.value, value.u, lo, hi);
  return value;
}

static double
level_u (const Line *old,
         const Line *new,
         gboolean    same)
{
  const double a = old->set->percent / 100 * old->line.offset / sqrt_3,
               b = new->set->percent / 100 * new->line.offset / sqrt_3;

  return hypot (hypot (old->level.u, new->level.u), same ? b - a : hypot (a, b));
}

static double
half_width (const RwTrimSet *set,
            guint            rail)
{
  return (set->hi[rail] - set->lo[rail]) / 2;
}

static void
add_items (const Line     *old,
           const Line     *new,
           double          x,
           RwCompareMeters meters,
           GArray         *items)
{
  const RwRail *rail = rw_profile_get_rail (new->set->profile, new->rail);
  const RwMeterFacts *old_meter = meter_of (old->side, old->set), *new_meter = meter_of (new->side, new->set);
  RwCompareItem item = {
    .what = RW_COMPARE_SLOPE,
    .rail = rail->id,
    .label = g_strdup (rail->label),
    .reference = rw_profile_get_rail (new->set->profile, new->set->reference)->label,
    .place = new->set->place,
    .kind = RW_KIND_DC,
    .setup = { RW_SAID_YES, new->set->board, RW_SAID_NOT },
    .x = NAN,
    .then = slope_value (old),
    .now = slope_value (new),
    .why = old_meter == NULL || new_meter == NULL ? RW_COMPARE_WHY_METER : RW_COMPARE_WHY_NONE,
  };
  RwCompareItem level = item;

  item.difference = item.now.value - item.then.value;
  item.u = item.why == RW_COMPARE_WHY_NONE ? hypot (old->line.slope_u, new->line.slope_u)
                                             : (double) NAN;
  item.worth = RW_COMPARE_WORTH * half_width (new->set, new->rail) / half_width (new->set, new->set->reference);
  g_array_append_val (items, item);
  level.what = RW_COMPARE_LEVEL;
  level.label = g_strdup (rail->label);
  level.x = x;
  level.then = level_value (old);
  level.now = level_value (new);
  level.difference = level.now.value - level.then.value;
  level.u = level.why == RW_COMPARE_WHY_NONE
                ? level_u (old, new, rw_compare_same_meter (old_meter, new_meter, meters))
                : (double) NAN;
  level.worth = RW_COMPARE_WORTH * half_width (new->set, new->rail);
  g_array_append_val (items, level);
}

static gboolean
same_reference (const RwTrimSet *a,
                const RwTrimSet *b)
{
  return rw_profile_get_rail (a->profile, a->reference)->id == rw_profile_get_rail (b->profile, b->reference)->id;
}

static void
pair_sets (const RwCompareSide *then,
           guint                i,
           const RwCompareSide *now,
           guint                k,
           RwCompareMeters      meters,
           GArray              *items)
{
  const RwTrimSet *set = now->sets->pdata[k];
  const double x = rw_profile_get_rail (set->profile, set->reference)->nominal;

  for (guint r = 0; r < rw_profile_get_n_rails (set->profile); r++)
    {
      const char *rail = rw_profile_get_rail (set->profile, r)->id;
      Line old, new;

      if (find_line (then, i, rail, x, &old) && find_line (now, k, rail, x, &new))
        add_items (&old, &new, x, meters, items);
    }
}

void
rw_compare_pair_lines (const RwCompareSide *then,
                       const RwCompareSide *now,
                       RwCompareMeters      meters,
                       GArray              *items)
{
  for (guint i = 0; i < then->sets->len; i++)
    for (guint k = 0; k < now->sets->len; k++)
      {
        const RwTrimSet *old = then->sets->pdata[i], *new = now->sets->pdata[k];

        if (old->place == new->place && old->board == new->board && same_reference (old, new))
          pair_sets (then, i, now, k, meters, items);
      }
}
