/* rw-trim-evidence.c: what the window of the trim, or the want of one, says about the cause.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One screw moves all rails. A healthy supply that is set wrong has a position that suits all
 * of them; one whose rails have drifted apart has none. So the window is a finding that nobody
 * has to make: it is computed from the readings, and what each cause makes of it stands in the
 * knowledge (data/knowledge/computed.json).
 *
 * Weights. With s the chance that one position has all rails inside at once,
 *   w (none suits) = 1 − s,
 *   w (higher, lower, this one suits) = s · P (x < lo), s · P (x > hi), s · P (lo ≤ x ≤ hi),
 * x normal about where the screw stands now with its standard uncertainty, lo … hi the window;
 * the likelihood of a cause is Σ_o w_o P (o | cause). s is the set's own chance at its set
 * point where a window exists. Where none does it is the largest of the chances at the set
 * point of the rails kept, at both ends of the gap and in its middle, with the screw set
 * without error, so that a gap no wider than the readings' uncertainty is no proof; the window
 * is then that point.
 *
 * Right after a turn nobody knows where the screw stands: each of the last three then weighs
 * s, for one of the three is as likely as they are together. Only where none suits is the
 * likelier does that count; that there is a window somewhere says hardly anything.
 *
 * Each rail's reading is evidence by itself already, and a window is made of such readings:
 * what they say twice must not count twice. The rows in the knowledge are therefore flat: no
 * outcome is more than 6 times as likely from one cause as from another. Only the newest set
 * counts, since the sets at the terminals and at the board share one supply.
 *
 * A set that is not whole, or whose readings contradict each other, says nothing. One position
 * alone has its slopes from the profile; it counts only where even so one side has
 * RW_VERDICT_SURE. A repair that fixed something starts the sets afresh, so what was read
 * before it counts no more.
 */
#include "config.h"

#include "rw-trim-evidence.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"

static const double shown_step = 0.01; /* volts */
static const double still_share = 0.2; /* of moving in proportion */

static const char *const outcome_ids[RW_N_TRIM_OUTCOMES] = { "none-suits", "higher-suits",
                                                             "lower-suits", "this-suits" };

const char *
rw_trim_outcome_to_id (RwTrimOutcome outcome)
{
  return outcome < RW_N_TRIM_OUTCOMES ? outcome_ids[outcome] : NULL;
}

/* --- chances ------------------------------------------------------------------------------------ */

/* Where a rail's line meets its limits, in volts of the reference, the lower first. */
static gboolean
crossings (const RwTrimSet *set,
           int              rail,
           double          *from,
           double          *to)
{
  RwTrimLine line;

  if (rail < 0 || !rw_trim_fit_get_line (set->fit, (guint) rail, &line))
    return FALSE;

  const double a = (set->lo[rail] - line.offset) / line.slope;
  const double b = (set->hi[rail] - line.offset) / line.slope;

  *from = MIN (a, b);
  *to = MAX (a, b);
  return isfinite (a) && isfinite (b);
}

/* Without a window: where the screw might still have a chance. *xs: room for 4; their number. */
static guint
candidates (const RwTrimSet *set,
            double          *xs)
{
  double wanted, allowed, other;
  guint n = 0;

  if (isfinite (set->window.best))
    xs[n++] = set->window.best;
  if (!isfinite (set->window.gap) || !crossings (set, set->window.low_rail, &wanted, &other)
      || !crossings (set, set->window.high_rail, &other, &allowed))
    return n;
  xs[n++] = allowed;
  xs[n++] = (allowed + wanted) / 2;
  xs[n++] = wanted;
  return n;
}

/* The chance that one position suits all; *lo, *hi where. NaN when nothing limits the screw. */
static double
chance_of_window (const RwTrimSet *set,
                  double          *lo,
                  double          *hi)
{
  double xs[4];
  double best = 0;

  *lo = set->window.lo;
  *hi = set->window.hi;
  if (set->window.exists)
    return set->chance;

  const guint n = candidates (set, xs);

  for (guint i = 0; i < n; i++)
    {
      const double chance = rw_trim_window_chance (set->fit, set->lo, set->hi, xs[i], 0, set->percent);

      if (i == 0 || chance > best)
        {
          *lo = *hi = xs[i];
          best = chance;
        }
    }
  return best;
}

void
rw_trim_evidence_weigh (const RwTrimSet *set,
                        double          *weights)
{
  double lo, hi;
  const double s = chance_of_window (set, &lo, &hi);

  weights[RW_TRIM_NONE_SUITS] = 1 - s;
  weights[RW_TRIM_HIGHER_SUITS] = weights[RW_TRIM_LOWER_SUITS] = weights[RW_TRIM_THIS_SUITS] = s;
  if (!set->is_current || isnan (set->x) || isnan (lo))
    return;

  const double below = rw_chance_inside (set->x, set->u_x, -(double) INFINITY, lo);
  const double above = rw_chance_inside (set->x, set->u_x, hi, (double) INFINITY);
  const double within = rw_chance_inside (set->x, set->u_x, lo, hi);
  const double sum = below + above + within; /* above 1 for an exact value on a limit */

  weights[RW_TRIM_HIGHER_SUITS] *= below / sum;
  weights[RW_TRIM_LOWER_SUITS] *= above / sum;
  weights[RW_TRIM_THIS_SUITS] *= within / sum;
}

/* --- which set ---------------------------------------------------------------------------------- */

static guint
positions_known (const RwTrimSet *set)
{
  guint n = 0;

  for (guint i = 0; i < set->positions->len; i++)
    if (!isnan (g_array_index (set->positions, RwTrimPosition, i).x))
      n++;
  return n;
}

static gboolean
is_worth_counting (const RwTrimSet *set)
{
  double lo, hi;

  if (!set->complete || set->points->len == 0 || rw_trim_fit_get_unclear (set->fit)
      || set->board == RW_SAID_NO
      || (set->place != RW_PLACE_BOARD && set->place != RW_PLACE_TERMINALS))
    return FALSE;

  const double s = chance_of_window (set, &lo, &hi);

  if (!(set->is_current && !isnan (set->x)) && s >= 0.5)
    return FALSE;
  return !isnan (s)
         && (positions_known (set) >= 2 || s >= RW_VERDICT_SURE || 1 - s >= RW_VERDICT_SURE);
}

static guint
newest_event (const RwTrimSet *set)
{
  return g_array_index (set->points, RwTrimPoint, set->points->len - 1).n;
}

const RwTrimSet *
rw_trim_evidence_find (const RwBenchState *state)
{
  const RwTrimSet *newest = NULL;

  for (guint i = 0; i < rw_bench_state_get_n_trim_sets (state); i++)
    {
      const RwTrimSet *set = rw_bench_state_get_trim_set (state, i);

      if (is_worth_counting (set)
          && (newest == NULL || newest_event (set) > newest_event (newest)))
        newest = set;
    }
  return newest;
}

/* --- words -------------------------------------------------------------------------------------- */

static const char *
label_of (const RwTrimSet *set,
          int              rail)
{
  return rw_profile_get_rail (set->profile, (guint) rail)->label;
}

/* A rail that hardly follows the screw: its bounds lie where nobody would turn it to. */
static gboolean
stands_still (const RwTrimSet *set,
              int              rail)
{
  const double reference = rw_profile_get_rail (set->profile, set->reference)->nominal;
  const double nominal = rw_profile_get_rail (set->profile, (guint) rail)->nominal;
  RwTrimLine line;

  return rw_trim_fit_get_line (set->fit, (guint) rail, &line)
         && fabs (line.slope) < still_share * fabs (nominal / reference);
}

/* Without a window: the rail that is outside wherever the screw stands; −1 for none. */
static int
still_rail (const RwTrimSet *set)
{
  const RwTrimWindow *window = &set->window;

  if (window->exists || window->low_rail < 0 || window->high_rail < 0)
    return -1;
  if (window->low_rail == window->high_rail || stands_still (set, window->low_rail))
    return window->low_rail;
  return stands_still (set, window->high_rail) ? window->high_rail : -1;
}

static char *
detail_of_none (const RwTrimSet *set)
{
  const RwTrimWindow *window = &set->window;
  const int still = still_rail (set);

  if (still >= 0)
    /* Translators: a rail, "−5 V", is outside at every position of the trim */
    return g_strdup_printf (_ ("%s is outside at every one"), label_of (set, still));
  if (window->low_rail < 0 || window->high_rail < 0 || window->low_rail == window->high_rail)
    return NULL;
  return g_strdup_printf (window->exists
                              /* Translators: two rails, "−5 V" and "+12 V" */
                              ? _ ("%s and %s leave hardly any room")
                              : _ ("%s and %s rule each other out"),
                          label_of (set, window->low_rail), label_of (set, window->high_rail));
}

char *
rw_trim_evidence_detail (const RwTrimSet *set,
                         RwTrimOutcome    outcome)
{
  const RwTrimWindow *window = &set->window;

  if (outcome == RW_TRIM_NONE_SUITS)
    return detail_of_none (set);
  if (!window->exists || !isfinite (window->lo) || !isfinite (window->hi))
    return NULL;

  g_autofree char *from = rw_quantity_format (window->lo, shown_step, RW_KIND_DC);
  g_autofree char *to = rw_quantity_format (window->hi, shown_step, RW_KIND_DC);

  /* Translators: where the trim may stand: "+5 V from 4.96 V to 5.07 V" */
  return g_strdup_printf (_ ("%s from %s to %s"), label_of (set, (int) set->reference), from, to);
}

/* --- why ---------------------------------------------------------------------------------------- */

/* A rail that the screw does not move, outside by itself. */
static char *
why_still (const RwTrimSet *set,
           guint            index)
{
  const RwRail *rail = rw_profile_get_rail (set->profile, index);
  const double x = isfinite (set->window.best) ? set->window.best : 0;
  RwTrimExpected value = { .value = NAN };

  rw_trim_fit_expect (set->fit, index, x, 0, &value);
  if (rw_position (value.value, set->lo[index], set->hi[index], rail->nominal < 0) > 0)
    /* Translators: a rail, "−5 V" */
    return g_strdup_printf (_ ("The trim hardly moves %s: this usually means that its own regulator has "
                               "failed, or that nothing draws on it."),
                            rail->label);
  /* Translators: a rail, "−5 V" */
  return g_strdup_printf (_ ("The trim hardly moves %s: this usually means that its own regulator, or what "
                             "feeds it, is tired or overloaded."),
                          rail->label);
}

/* A negative rail that is too weak while another is at the top of what it may have. */
static char *
why_weak_negative (const RwTrimSet *set,
                   int              rail)
{
  if (set->place == RW_PLACE_BOARD)
    /* Translators: a rail, "−5 V" */
    return g_strdup_printf (_ ("This usually means a tired %s output, a poor wire or contact on its way to "
                               "the board, a missing minimum load, or a supply that was never meant for "
                               "this board."),
                            label_of (set, rail));
  /* Translators: a rail, "−5 V" */
  return g_strdup_printf (_ ("This usually means a tired %s output, a missing minimum load, or a supply "
                             "that was never meant for this board."),
                          label_of (set, rail));
}

/* The same of a positive one, which people load more. */
static char *
why_weak_positive (const RwTrimSet *set,
                   int              rail)
{
  const char *reference = label_of (set, (int) set->reference);

  if (set->place == RW_PLACE_BOARD)
    /* Translators: two rails, "+12 V" and "+5 V" */
    return g_strdup_printf (_ ("This usually means a tired or overloaded %s output, a poor wire or contact "
                               "on its way to the board, too little load on %s, or a supply that was never "
                               "meant for this board."),
                            label_of (set, rail), reference);
  /* Translators: two rails, "+12 V" and "+5 V" */
  return g_strdup_printf (_ ("This usually means a tired or overloaded %s output, too little load on %s, or "
                             "a supply that was never meant for this board."),
                          label_of (set, rail), reference);
}

/* @rail is too strong while the reference still wants more. */
static char *
why_strong (const RwTrimSet *set,
            int              rail)
{
  const char *reference = label_of (set, (int) set->reference);

  if (set->place == RW_PLACE_BOARD)
    /* Translators: three rails, "+12 V", "+5 V" and "+5 V" again */
    return g_strdup_printf (_ ("This usually means too little load on %s, a drop in the %s wiring, or tired "
                               "%s capacitors in the supply."),
                            label_of (set, rail), reference, reference);
  /* Translators: three rails, "+12 V", "+5 V" and "+5 V" again */
  return g_strdup_printf (_ ("This usually means too little load on %s, too much on %s, or tired %s "
                             "capacitors in the supply."),
                          label_of (set, rail), reference, reference);
}

char *
rw_trim_evidence_why (const RwTrimSet *set)
{
  const RwTrimWindow *window = &set->window;
  const int still = still_rail (set);

  if (still >= 0)
    return why_still (set, (guint) still);
  if (window->exists || window->low_rail < 0 || window->high_rail < 0)
    return NULL;
  if ((guint) window->low_rail == set->reference)
    return why_strong (set, window->high_rail);
  if (rw_profile_get_rail (set->profile, (guint) window->low_rail)->nominal < 0)
    return why_weak_negative (set, window->low_rail);
  return why_weak_positive (set, window->low_rail);
}
