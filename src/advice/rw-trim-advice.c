/* rw-trim-advice.c: what to do with the trim, if anything.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Figures of the trade (estimates): a reference that loses more than 5 % between terminals and board, or
 * that would have to stand more than 6 % above nominal at the terminals, is a matter of wiring, whatever the
 * trim could do about it.
 */
#include "config.h"

#include "rw-trim-advice.h"

#include <math.h>

static const double drop_share = 0.05;
static const double terminals_share = 0.06;

/* A smallest margin this much better is worth a turn though all is inside. */
static const double worth_margin = 0.25;

/* Volts on the reference too little to be set by hand. */
static const double too_little = 0.01;

static const RwRail *
rail_of (const RwTrimSet *set,
         guint            i)
{
  return rw_profile_get_rail (set->profile, i);
}

/* The set that the screw is set by: at the board, else wherever there is one. */
static const RwTrimSet *
choose_set (const RwBenchState *state)
{
  static const RwPlace places[] = { RW_PLACE_BOARD, RW_PLACE_CHIP, RW_PLACE_TERMINALS };

  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    {
      const RwTrimSet *set = rw_bench_state_find_trim_set (state, places[i]);

      if (set != NULL)
        return set;
    }
  return NULL;
}

/* --- the drop ----------------------------------------------------------------------------------- */

/* No repair that fixed something came after. */
static gboolean
still_holds (const RwBenchState *state,
             const RwSpotState  *spot)
{
  for (guint i = 0; i < rw_bench_state_get_n_repairs (state); i++)
    {
      const RwRepairSeen *repair = rw_bench_state_get_repair (state, i);

      if (repair->result == RW_REPAIR_FIXED && repair->n > spot->n)
        return FALSE;
    }
  return TRUE;
}

/* A drop measured along a wire; a turn of the trim hardly changes it. NaN when not known. */
static double
wire_drop (const RwBenchState *state,
           const char         *rail,
           gboolean           *outside)
{
  const RwSpotState *spot = rw_bench_state_find_spot (state, rail, RW_PLACE_WIRE, RW_KIND_DC);

  if (spot == NULL || spot->reading.over || !still_holds (state, spot))
    return NAN;
  *outside = *outside || spot->verdict == RW_VERDICT_OUTSIDE;
  return fabs (spot->reading.value);
}

/* What the reference loses from the terminals to the board; NaN when not known. */
static double
find_drop (const RwBenchState *state,
           const RwTrimSet    *set,
           gboolean           *outside)
{
  const RwTrimSet *terminals = rw_bench_state_find_trim_set (state, RW_PLACE_TERMINALS);
  const double wire = wire_drop (state, rail_of (set, set->reference)->id, outside);
  const double ground = wire_drop (state, RW_RAIL_GROUND, outside);

  if (set->place == RW_PLACE_BOARD && terminals != NULL && !isnan (terminals->x) && !isnan (set->x))
    return terminals->x - set->x;
  return wire + ground;
}

/* --- what stands in the way --------------------------------------------------------------------- */

/* The first rail of the profile that nobody read at the set's place, by priority; −1: none. A rail that was
 * read and still has no line is dead, which no screw can mend: *dead. */
static int
find_unread (const RwBenchState *state,
             const RwTrimSet    *set,
             gboolean           *dead)
{
  int best = -1;

  for (guint i = 0; i < rw_profile_get_n_rails (set->profile); i++)
    {
      RwTrimLine line;

      if (rw_trim_fit_get_line (set->fit, i, &line))
        continue;
      if (rw_bench_state_find_spot (state, rail_of (set, i)->id, set->place, RW_KIND_DC) != NULL
          && i != set->reference)
        *dead = TRUE;
      else if (best < 0 || rail_of (set, i)->priority < rail_of (set, (guint) best)->priority)
        best = (int) i;
    }
  return best;
}

/* A rail that would pass what a board survives with the reference at @x; −1: none. @drop: NaN when not known. */
static int
find_past (const RwTrimSet *set,
           double           x,
           double           drop)
{
  for (guint i = 0; i < rw_profile_get_n_rails (set->profile); i++)
    {
      RwTrimExpected it;
      double most;

      if (!rw_trim_fit_expect (set->fit, i, x, 0, &it))
        continue;
      most = MAX (fabs (it.lo), fabs (it.hi));
      if (i == set->reference && drop > 0)
        most += drop;
      if (most > rail_of (set, i)->never_above)
        return (int) i;
    }
  return -1;
}

/* The smallest margin of all rails with limits at @x, by their lines. */
static double
margin_at (const RwTrimSet *set,
           double           x)
{
  double least = INFINITY;

  for (guint i = 0; i < rw_profile_get_n_rails (set->profile); i++)
    {
      RwTrimLine line;

      if (!isnan (set->lo[i]) && rw_trim_fit_get_line (set->fit, i, &line))
        least = MIN (least, rw_margin (line.offset + line.slope * x, set->lo[i], set->hi[i]));
    }
  return least;
}

static gboolean
is_well (const RwTrimSet *set,
         double           x)
{
  const double margin = margin_at (set, x);

  if (fabs (set->window.best - x) < too_little)
    return TRUE;
  return margin > 0 && set->window.margin - margin < worth_margin
         && rw_trim_window_chance (set->fit, set->lo, set->hi, x, isnan (set->u_x) ? 0 : set->u_x, set->percent)
                >= RW_VERDICT_SURE;
}

/* --- the turn ----------------------------------------------------------------------------------- */

/* Watches the rail that the meter is on when it moves surely and visibly; the reference otherwise. */
static void
choose_watch (const RwTrimSet *set,
              const char      *on_rail,
              double           x,
              RwTrimAdvice    *out)
{
  const int on = on_rail != NULL ? rw_profile_index_of (set->profile, on_rail) : -1;
  RwTrimLine line = { .slope = 1 };

  out->watch = set->reference;
  if (on >= 0 && (guint) on != set->reference && rw_trim_fit_get_line (set->fit, (guint) on, &line)
      && fabs (line.slope) > 3 * line.slope_u && fabs (line.slope * (set->window.best - x)) > 2 * too_little)
    out->watch = (guint) on;
  else
    line = (RwTrimLine){ .slope = 1 };
  out->now = line.offset + line.slope * x;
  out->to = line.offset + line.slope * set->window.best;
  out->up = fabs (out->to) > fabs (out->now);
}

static void
decide (const RwBenchState *state,
        const char         *on_rail,
        double              x,
        RwTrimAdvice       *out)
{
  const RwTrimSet *set = out->set;
  gboolean wires_outside = FALSE, dead = FALSE;
  const double drop = find_drop (state, set, &wires_outside);
  const RwRail *reference = rail_of (set, set->reference);
  const double nominal = fabs (reference->nominal);
  int rail;

  out->rail = set->reference;
  if (wires_outside || drop > drop_share * nominal
      || (drop > 0 && set->window.best + drop > (1 + terminals_share) * nominal && set->window.best > x))
    {
      out->says = RW_TRIM_SAYS_WIRING;
      out->drop = drop;
      return;
    }
  rail = find_unread (state, set, &dead);
  if (dead)
    return;
  if (rail >= 0)
    {
      out->says = RW_TRIM_SAYS_READ;
      out->rail = (guint) rail;
      return;
    }
  if (isnan (x) || !isfinite (set->window.best))
    return;
  if (!set->window.exists)
    out->says = RW_TRIM_SAYS_NO_WINDOW;
  else if (is_well (set, x))
    out->says = RW_TRIM_SAYS_LEAVE;
  else if ((rail = find_past (set, set->window.best, drop)) >= 0)
    {
      out->says = RW_TRIM_SAYS_NEVER;
      out->rail = (guint) rail;
    }
  else if (set->place == RW_PLACE_TERMINALS)
    out->says = RW_TRIM_SAYS_BOARD;
  else if (set->window.best > x && isnan (drop))
    out->says = RW_TRIM_SAYS_TERMINALS;
  else
    {
      out->says = RW_TRIM_SAYS_TURN;
      choose_watch (set, on_rail, x, out);
    }
}

void
rw_trim_advice_work_out (const RwBenchState *state,
                         const char         *on_rail,
                         const RwTrimLive   *live,
                         RwTrimAdvice       *out)
{
  const RwSetup setup = rw_bench_state_get_setup (state);
  const RwTrimSet *set = choose_set (state);
  const double x = live != NULL && !isnan (live->x) ? live->x : set != NULL ? set->x : (double) NAN;

  *out = (RwTrimAdvice){ .says = RW_TRIM_SAYS_NOTHING };
  if (set == NULL || setup.power_on == RW_SAID_NO)
    return;
  out->set = set;
  out->x = x;
  if (set->board != RW_SAID_NO)
    decide (state, on_rail, x, out);
  else if (!isnan (x) && margin_at (set, x) < 0)
    out->says = RW_TRIM_SAYS_LOAD;
}
