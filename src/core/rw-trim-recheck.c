/* rw-trim-recheck.c: which rails have to be read again after a trim, and in what order.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-trim-recheck.h"

#include <math.h>

typedef struct
{
  guint  rail;
  double risk; /* chance of being outside; 2: read it first whatever the others say */
  int    priority;
} Due;

static RwPlace
find_place (const RwBenchState *state)
{
  const RwSpotState *newest = NULL;

  for (guint i = 0; i < rw_bench_state_get_n_spots (state); i++)
    {
      const RwSpotState *spot = rw_bench_state_get_spot (state, i);

      if (spot->rail == NULL || spot->reading.kind != RW_KIND_DC || spot->reading.place == RW_PLACE_WIRE)
        continue;
      if (spot->reading.place == RW_PLACE_BOARD)
        return RW_PLACE_BOARD;
      if (newest == NULL || spot->n > newest->n)
        newest = spot;
    }
  return newest != NULL ? newest->reading.place : RW_PLACE_BOARD;
}

static double
risk_of (const RwTrimSet *set,
         guint            rail)
{
  RwTrimExpected it;

  if (set == NULL || isnan (set->x) || isnan (set->lo[rail])
      || !rw_trim_fit_expect (set->fit, rail, set->x, set->u_x, &it))
    return 0.5; /* nobody knows */

  const double common = set->percent / 100 * fabs (it.value) / sqrt (3);

  return 1 - rw_chance_inside (it.value, hypot (it.u, common), set->lo[rail], set->hi[rail]);
}

static int
compare_due (gconstpointer a,
             gconstpointer b)
{
  const Due *first = a, *second = b;

  if (first->risk != second->risk)
    return first->risk > second->risk ? -1 : 1;
  return (first->priority > second->priority) - (first->priority < second->priority);
}

void
rw_trim_recheck_init (RwTrimRecheck      *out,
                      const RwBenchState *state)
{
  RwProfile *profile = rw_bench_state_get_profile (state);
  const guint n = rw_profile_get_n_rails (profile);
  const RwRail *reference = rw_profile_get_reference (profile);
  g_autoptr (GArray) due = g_array_new (FALSE, FALSE, sizeof (Due));
  guint n_fresh = 0, n_read = 0;

  *out = (RwTrimRecheck){ .place = find_place (state) };

  const RwTrimSet *set = rw_bench_state_find_trim_set (state, out->place);

  for (guint i = 0; i < n; i++)
    {
      const RwRail *rail = rw_profile_get_rail (profile, i);
      const RwSpotState *spot = rw_bench_state_find_spot (state, rail->id, out->place, RW_KIND_DC);
      const gboolean first = rail == reference && (set == NULL || isnan (set->x));

      n_read += spot != NULL;
      n_fresh += spot != NULL && !spot->stale;
      if (spot == NULL || !spot->changed_since)
        continue;
      
      const Due it = { i, first ? 2 : risk_of (set, i), rail->priority };

      g_array_append_val (due, it);
    }
  g_array_sort (due, compare_due);
  out->on = n_read > 0 && rw_bench_state_get_n_trims (state) > 0;
  out->complete = out->on && n_fresh == n;
  out->n_due = out->on ? due->len : 0;
  out->due = g_new (guint, MAX (due->len, 1));
  for (guint i = 0; i < due->len; i++)
    out->due[i] = g_array_index (due, Due, i).rail;
}

void
rw_trim_recheck_clear (RwTrimRecheck *self)
{
  g_clear_pointer (&self->due, g_free);
}

guint
rw_trim_recheck_rank (const RwTrimRecheck *self,
                      guint                rail)
{
  for (guint i = 0; i < self->n_due; i++)
    if (self->due[i] == rail)
      return i + 1;
  return 0;
}
