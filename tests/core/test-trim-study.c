/* test-trim-study.c: how good the trim's predictions are, over thousands of simulated supplies.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each supply (trim-supply.c) is measured at 2 to 5 positions at least 0.05 V apart, each rail at
 * each with the chance 0.85, by one of three meters: 4 000 counts in ranges of 4 and 40 V (10 mV
 * on 5 V), 6 000 counts in ranges of 6 and 60 V, 20 000 counts in ranges of 2, 20 and 200 V (both
 * 1 mV on 5 V), ±(0.3–0.8 % + 1–3 counts).
 *
 * Truth is what the meter would show without its own error: a scale error common to all readings
 * can be known by nobody. A band is right when it holds that. The set point is right when the
 * smallest margin that it really gives is within 0.03 of the largest possible one: of all rails
 * that have a line where a window really exists, of the rails kept by priority else. "No window"
 * is judged where the true width or gap is more than twice what the readings leave open of the
 * two bounds.
 *
 * RAILWRIGHT_STUDY_TABLE names a file to write the table to, as Markdown.
 */
#include "config.h"

#include <math.h>

#include "fixtures.h"
#include "trim-supply.h"

static const guint n_supplies = 6000;
static const guint32 seed = 20260314;
static const double share_read = 0.85;
static const double least_x = 4.75, largest_x = 5.4;
static const double near_best = 0.03;

enum
{
  AT_RANDOM,    /* a rail read at two positions or more, at any x */
  AT_SET_POINT, /* the same at the set point */
  LIVE,         /* the same, from whichever rail is watched */
  READ_ONCE,    /* a rail read at one position, so that its prior counts */
  ALL_BANDS,    /* all of the above */
  POINT_FINE,   /* set points, meters that show 5 V to 1 mV */
  POINT_COARSE, /* set points, a meter that shows 5 V to 10 mV */
  WINDOW,       /* window or none */
  BORDER,       /* how many windows are too close to tell */
  MISFIT,       /* how many clean sets look as if a reading were wrong */
  N_CLAIMS
};

typedef struct
{
  guint n, right;
} Tally;

/* By positions; 0: all. */
static Tally tallies[SUPPLY_MAX_POSITIONS + 1][N_CLAIMS];

static void
count (const Supply *supply,
       guint         claim,
       gboolean      right)
{
  Tally *of[] = { &tallies[0][claim], &tallies[supply->n_positions][claim] };

  for (guint i = 0; i < G_N_ELEMENTS (of); i++)
    {
      of[i]->n++;
      of[i]->right += right ? 1 : 0;
    }
}

static double
share (guint positions,
       guint claim)
{
  const Tally *tally = &tallies[positions][claim];

  g_assert_cmpuint (tally->n, >, 0);
  return (double) tally->right / tally->n;
}

/* --- bands ----------------------------------------------------------------------------------- */

static void
count_band (const Supply         *supply,
            guint                 claim,
            guint                 rail,
            double                x,
            const RwTrimExpected *band)
{
  const double truth = supply_shown (supply, rail, x);
  const gboolean holds = band->lo <= truth && truth <= band->hi;

  count (supply, claim, holds);
  count (supply, ALL_BANDS, holds);
}

static guint
n_read (const RwTrimSet *set,
        guint            rail)
{
  RwTrimLine line;

  return rw_trim_fit_get_line (set->fit, rail, &line) ? line.n_readings : 0;
}

static void
try_bands (const Supply    *supply,
           const RwTrimSet *set,
           GRand           *random)
{
  const double x = g_rand_double_range (random, least_x, largest_x) * supply->meter.scale;
  const guint from = (guint) g_rand_int_range (random, 0, (gint32) supply->n_rails);
  double u;
  const double seen = supply_read (supply, supply_shown (supply, from, x), &u, random);
  RwTrimExpected band;

  for (guint i = 0; i < supply->n_rails; i++)
    {
      const gboolean twice = n_read (set, i) >= 2;

      if (i != from && rw_trim_fit_expect_from (set->fit, i, from, seen, u, &band))
        count_band (supply, twice && n_read (set, from) >= 2 ? LIVE : READ_ONCE, i, x, &band);
      if (i == 0)
        continue;
      if (rw_trim_fit_expect (set->fit, i, x, 0, &band))
        count_band (supply, twice ? AT_RANDOM : READ_ONCE, i, x, &band);
      if (isfinite (set->window.best) && rw_trim_fit_expect (set->fit, i, set->window.best, 0,
                                                             &band))
        count_band (supply, twice ? AT_SET_POINT : READ_ONCE, i, set->window.best, &band);
    }
}

/* --- window and set point -------------------------------------------------------------------- */

typedef struct
{
  double x, u;
} Bound;

/* The true window of the rails that have a line, with what the fit leaves open of each bound. */
static void
find_window (const Supply    *supply,
             const RwTrimSet *set,
             Bound           *lo,
             Bound           *hi)
{
  *lo = (Bound){ -INFINITY, 0 };
  *hi = (Bound){ INFINITY, 0 };
  for (guint i = 0; i < supply->n_rails; i++)
    for (guint j = 0; j < 2; j++)
      {
        const SupplyRail *rail = &supply->rails[i];
        const double x = ((j == 0 ? rail->lo : rail->hi) - supply_shown (supply, i,
                                                                         0)) / rail->slope;
        const gboolean is_low = (j == 0) == (rail->slope > 0);
        RwTrimExpected there;

        if (!rw_trim_fit_expect (set->fit, i, x, 0, &there))
          continue;

        const Bound bound = { x, there.u / fabs (rail->slope) };

        if (is_low && x > lo->x)
          *lo = bound;
        if (!is_low && x < hi->x)
          *hi = bound;
      }
}

/* The smallest true margin of the rails that count. */
static double
margin_at (const Supply *supply,
           guint64       kept,
           double        x)
{
  double least = INFINITY;

  for (guint i = 0; i < supply->n_rails; i++)
    if ((kept >> i & 1) != 0)
      {
        const SupplyRail *rail = &supply->rails[i];
        const double middle = (rail->lo + rail->hi) / 2, half = (rail->hi - rail->lo) / 2;

        least = MIN (least, 1 - fabs (supply_shown (supply, i, x) - middle) / half);
      }
  return least;
}

/* The largest smallest margin there is: it is concave, so thirds close in on its top. */
static double
best_margin (const Supply *supply,
             guint64       kept)
{
  double lo = 0, hi = 20;

  while (hi - lo > 1e-9)
    {
      const double a = lo + (hi - lo) / 3, b = hi - (hi - lo) / 3;

      *(margin_at (supply, kept, a) < margin_at (supply, kept, b) ? &lo : &hi) =
        margin_at (supply, kept, a) < margin_at (supply, kept, b) ? a : b;
    }
  return margin_at (supply, kept, (lo + hi) / 2);
}

static void
try_window (const Supply    *supply,
            const RwTrimSet *set)
{
  Bound lo, hi;
  guint64 kept = 0;

  find_window (supply, set, &lo, &hi);

  const double width = hi.x - lo.x;
  const gboolean is_clear = fabs (width) > 2 * hypot (lo.u, hi.u);

  count (supply, BORDER, !is_clear);
  if (is_clear)
    count (supply, WINDOW, set->window.exists == (width > 0));
  if (!isfinite (set->window.best))
    return;
  for (guint i = 0; i < supply->n_rails; i++)
    if (width > 0 ? n_read (set, i) > 0 || i == 0 : (set->window.kept >> i & 1) != 0)
      kept |= G_GUINT64_CONSTANT (1) << i;
  count (supply, supply->meter.range < 5 && supply->meter.full < 5000 ? POINT_COARSE : POINT_FINE,
         margin_at (supply, kept, set->window.best) >= best_margin (supply, kept) - near_best);
}

/* --- the study ------------------------------------------------------------------------------- */

static void
run_study (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (seed);

  for (guint i = 0; i < n_supplies; i++)
    {
      Supply supply;

      supply_init (&supply, 2 + i % (SUPPLY_MAX_POSITIONS - 1), random);

      g_autoptr (RwTrimSet) set = supply_measure (&supply, share_read, random);

      count (&supply, MISFIT, rw_trim_fit_get_unclear (set->fit) ||
             rw_trim_fit_get_n_outliers (set->fit) > 0);
      try_bands (&supply, set, random);
      try_window (&supply, set);
      supply_clear (&supply);
    }
}

static char *
write_table (void)
{
  static const guint columns[] = { AT_RANDOM,  AT_SET_POINT, LIVE,   READ_ONCE, ALL_BANDS,
                                   POINT_FINE, POINT_COARSE, WINDOW, BORDER };
  GString *text = g_string_new (
    "| positions | band, any x | band, set point | band, live | band, rail read once | all bands "
    "| set point, 1 mV meter | set point, 10 mV meter | window or none | too close to tell |\n"
    "|---|---|---|---|---|---|---|---|---|---|\n");

  for (guint k = 0; k <= SUPPLY_MAX_POSITIONS; k++)
    {
      if (k == 1)
        continue;
      if (k == 0)
        g_string_append (text, "| all |");
      else
        g_string_append_printf (text, "| %u |", k);
      for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
        g_string_append_printf (text, " %.1f %% of %u |", 100 * share (k, columns[i]),
                                tallies[k][columns[i]].n);
      g_string_append_c (text, '\n');
    }
  return g_string_free (text, FALSE);
}

static void
tell_table (void)
{
  g_autofree char *table = write_table ();
  g_auto (GStrv) lines = g_strsplit (table, "\n", -1);
  const char *path = g_getenv ("RAILWRIGHT_STUDY_TABLE");

  for (guint i = 0; lines[i] != NULL; i++)
    g_test_message ("%s", lines[i]);
  if (path != NULL)
    {
      g_autoptr (GError) error = NULL;

      g_file_set_contents (path, table, -1, &error);
      g_assert_no_error (error);
    }
}

#define assert_within(value, lo, hi)          \
  G_STMT_START                                \
  {                                           \
    const double value_ = (value);            \
    g_assert_cmpfloat (value_, >=, (lo));     \
    g_assert_cmpfloat (value_, <=, (hi));     \
  }                                           \
  G_STMT_END

static void
test_bands_hold_the_truth_95_times_in_100 (void)
{
  tell_table ();
  assert_within (share (0, ALL_BANDS), 0.93, 0.97);
  for (guint k = 0; k <= SUPPLY_MAX_POSITIONS; k++)
    for (guint claim = AT_RANDOM; claim <= LIVE && k != 1; claim++)
      assert_within (share (k, claim), 0.93, 0.97);
}

/* Of a rail that was read once the slope is a guess, so wide that it must not be wrong. */
static void
test_bands_of_a_rail_read_once_are_no_narrower (void)
{
  g_assert_cmpfloat (share (0, READ_ONCE), >=, 0.93);
}

static void
test_the_set_point_is_as_good_as_any (void)
{
  g_assert_cmpfloat (share (0, POINT_FINE), >=, 0.95);
}

/* Counts of 10 mV on 5 V are up to 0.2 of a margin: what is left is what averaging makes of it. */
static void
test_a_coarse_meter_costs_set_points_little (void)
{
  g_assert_cmpfloat (share (0, POINT_COARSE), >=, 0.8);
}

static void
test_no_window_is_right_97_times_in_100 (void)
{
  g_assert_cmpfloat (share (0, WINDOW), >=, 0.97);
  for (guint k = 2; k <= SUPPLY_MAX_POSITIONS; k++)
    g_assert_cmpfloat (share (k, WINDOW), >=, 0.97);
  g_assert_cmpfloat (share (0, BORDER), <, 0.15);
}

static void
test_clean_readings_are_not_suspected (void)
{
  g_assert_cmpfloat (share (0, MISFIT), <, 0.01);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  run_study ();
  g_test_add_func ("/trim-study/bands-hold-the-truth-95-times-in-100",
                   test_bands_hold_the_truth_95_times_in_100);
  g_test_add_func ("/trim-study/bands-of-a-rail-read-once-are-no-narrower",
                   test_bands_of_a_rail_read_once_are_no_narrower);
  g_test_add_func ("/trim-study/the-set-point-is-as-good-as-any",
                   test_the_set_point_is_as_good_as_any);
  g_test_add_func ("/trim-study/a-coarse-meter-costs-set-points-little",
                   test_a_coarse_meter_costs_set_points_little);
  g_test_add_func ("/trim-study/no-window-is-right-97-times-in-100",
                   test_no_window_is_right_97_times_in_100);
  g_test_add_func ("/trim-study/clean-readings-are-not-suspected",
                   test_clean_readings_are_not_suspected);
  return g_test_run ();
}
