/* rw-mistakes-slope.c: a rail that should follow the trim and does not, or far too much.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An unregulated winding beside a regulated one follows it by their turns: +12 V by 2.3 … 2.4 V a volt of +5 V.
 * Said only of a plus rail that the profile calls a follower, when its line is sure and far from that.
 */
#include "config.h"

#include "rw-mistakes-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"

/* Shares of the slope that the profile lets expect. */
static const double too_flat = 0.35, too_steep = 2.0;
static const double sure_times = 4;
static const guint  sure_readings = 3;

/* Less likely than this, the readings do not lie on lines at all. */
static const double fits_from = 0.01;

/* Volts a volt on either side of a bound, within which only the fit itself decides. */
static const double close_to = 0.01;

/* Of those the profile lets expect a slope. */
static gboolean
is_follower (RwProfile *profile,
             guint      i)
{
  const RwRail *rail = rw_profile_get_rail (profile, i);

  return rail != rw_profile_get_reference (profile) && rail->nominal > 0 && rail->follows_trim == RW_FOLLOWS_YES;
}

gboolean
rw_mistakes_may_have_slopes (const RwBenchState *state,
                             const RwTrimBook   *book,
                             RwPlace             place,
                             RwSaid              board)
{
  RwProfile *profile = rw_bench_state_get_profile (state);

  if (rw_trim_book_count_positions (book, place, board) < 2)
    return FALSE;
  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    {
      const RwSpotState *now
          = rw_bench_state_find_spot (state, rw_profile_get_rail (profile, i)->id, place, RW_KIND_DC);
      guint newest = 0;

      if (is_follower (profile, i) && now != NULL && !now->stale
          && rw_trim_book_count_readings (book, place, board, i, &newest) >= sure_readings && newest == now->n)
        return TRUE;
    }
  return FALSE;
}

static gboolean
is_odd (const RwTrimLine *line,
        double            expected)
{
  const double share = line->slope / expected;

  return line->n_readings >= sure_readings
         && fabs (line->slope - expected) > sure_times * line->slope_u && (share < too_flat || share > too_steep);
}

static double
expected_of (RwProfile *profile,
             guint      i)
{
  return rw_trim_prior (rw_profile_get_rail (profile, i), rw_profile_get_reference (profile)).slope;
}

gboolean
rw_mistakes_has_odd_slope (RwProfile       *profile,
                           const RwTrimFit *fit)
{
  RwTrimLine line;

  if (!(rw_trim_fit_get_p (fit) > fits_from))
    return FALSE;
  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    if (is_follower (profile, i) && rw_trim_fit_get_line (fit, i, &line) && is_odd (&line, expected_of (profile, i)))
      return TRUE;
  return FALSE;
}

gboolean
rw_mistakes_are_slopes_usual (RwProfile          *profile,
                              const RwTrimScreen *screen)
{
  double least, most;

  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    if (is_follower (profile, i) && rw_trim_screen_get_slope (screen, i, &least, &most)
        && (least < too_flat * expected_of (profile, i) + close_to
            || most > too_steep * expected_of (profile, i) - close_to))
      return FALSE;
  return TRUE;
}

static const RwTrimPoint *
newest_point (const RwTrimSet *set,
              guint            rail)
{
  const RwTrimPoint *newest = NULL;

  for (guint i = 0; i < set->points->len; i++)
    {
      const RwTrimPoint *point = &g_array_index (set->points, RwTrimPoint, i);

      if (point->rail == rail && !point->outlier)
        newest = point;
    }
  return newest;
}

static void
look_at_rail (RwMistakes      *self,
              const RwTrimSet *set,
              guint            i)
{
  const RwRail *rail = rw_profile_get_rail (set->profile, i);
  const double expected = expected_of (set->profile, i);
  const RwSpotState *now = rw_mistakes_fresh (self, rail->id, set->place, RW_KIND_DC);
  const RwTrimPoint *point = newest_point (set, i);
  RwTrimLine line;

  if (!is_follower (set->profile, i) || now == NULL || point == NULL
      || now->n != point->n || !rw_trim_fit_get_line (set->fit, i, &line) || !is_odd (&line, expected))
    return;

  g_autofree char *slope = rw_quantity_format_number (line.slope, 1);
  g_autofree char *wanted = rw_quantity_format_number (expected, 1);

  rw_mistakes_warn (self, now, "slope-odd", FALSE,
                    /* Translators: rail, volts, volts. */
                    g_strdup_printf (_ ("%s moves by %s V for each volt of the trim where about %s V would be expected: "
                                        "is the lead on another output, or has this rail a regulator of its own? Look "
                                        "before the trim is turned for it."),
                                     rail->label, slope, wanted));
}

void
rw_mistakes_look_at_slopes (RwMistakes *self)
{
  for (guint i = 0; i < rw_bench_state_get_n_trim_sets (self->state); i++)
    {
      const RwTrimSet *set = rw_bench_state_get_trim_set (self->state, i);

      if (set->positions->len < 2 || !(rw_trim_fit_get_p (set->fit) > fits_from))
        continue;
      for (guint rail = 0; rail < rw_profile_get_n_rails (set->profile); rail++)
        look_at_rail (self, set, rail);
    }
}
