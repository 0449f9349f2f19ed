/* test-trim-window-search.c: the window and the set point of random rails, found again by brute force.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "fixtures.h"
#include "rw-trim-window.h"

#define MAX_N 7
#define N_TRIALS 4000

/* Rails of a likely supply; some do not move, some have one limit or none, some rule each other out. */
static guint
random_rails (GRand      *random,
              RwTrimRail *rails,
              gboolean    one_sided)
{
  static const double nominals[] = { 5, 12, -5, -12, 3.3, 24, 15 };
  const guint n = (guint) g_rand_int_range (random, 1, MAX_N + 1);
  const double spread = g_rand_double_range (random, 0.005, 0.1);

  for (guint i = 0; i < n; i++)
    {
      const double nominal = nominals[i];
      const double moved = nominal / 5 * g_rand_double_range (random, 0.6, 1.4);
      const double tilt = g_rand_int_range (random, 0, 9) == 0 ? 0 : moved;
      const double value = nominal * (1 + g_rand_double_range (random, -spread, spread));
      const double half = fabs (nominal) * g_rand_double_range (random, 0.02, 0.1);

      rails[i] = (RwTrimRail){ value - 5 * tilt, tilt, nominal - half, nominal + half * (1 + spread),
                               g_rand_int_range (random, 1, 4) };
      if (one_sided && g_rand_int_range (random, 0, 6) == 0)
        {
          if (g_rand_boolean (random))
            rails[i].lo = -INFINITY;
          else
            rails[i].hi = INFINITY;
        }
    }
  return n;
}

/* How far inside: ≥ 0 when every rail of @kept suits x. Volts. */
static double
room (const RwTrimRail *rails,
      guint             n,
      guint64           kept,
      double            x)
{
  double least = INFINITY;

  for (guint i = 0; i < n; i++)
    {
      const double value = rails[i].offset + rails[i].slope * x;

      if ((kept >> i & 1) != 0)
        least = MIN (least, MIN (value - rails[i].lo, rails[i].hi - value));
    }
  return least;
}

static void
test_window_is_where_all_suit (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (11);
  guint n_exists = 0;

  for (guint trial = 0; trial < N_TRIALS; trial++)
    {
      RwTrimRail rails[MAX_N];
      const guint n = random_rails (random, rails, TRUE);
      RwTrimWindow window;

      rw_trim_window_solve (rails, n, &window);
      n_exists += window.exists ? 1 : 0;
      g_assert_cmpint (window.exists, ==, window.kept == (1u << n) - 1);
      g_assert_cmpint (window.exists, ==, window.gap == 0);
      for (double x = 3.5; x < 6.5; x += 0.01)
        {
          const double spare = room (rails, n, window.kept | ((1u << n) - 1), x);

          if (spare > 1e-9)
            g_assert_true (window.exists && x > window.lo && x < window.hi);
          if (window.exists && x > window.lo && x < window.hi)
            g_assert_cmpfloat (spare, >=, -1e-9);
        }
    }
  g_assert_cmpuint (n_exists, >, N_TRIALS / 10);
  g_assert_cmpuint (n_exists, <, N_TRIALS * 9 / 10);
}

/* The largest value of a concave function, by halving thirds. */
static double
search_top (const RwTrimRail *rails,
            guint             n,
            guint64           kept,
            double           *x)
{
  double lo = -50, hi = 60;

  for (guint i = 0; i < 200; i++)
    {
      const double a = lo + (hi - lo) / 3, b = hi - (hi - lo) / 3;

      if (rw_trim_window_margin (rails, n, kept, a) < rw_trim_window_margin (rails, n, kept, b))
        lo = a;
      else
        hi = b;
    }
  *x = (lo + hi) / 2;
  return rw_trim_window_margin (rails, n, kept, *x);
}

static void
test_set_point_has_the_largest_smallest_margin (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (12);
  guint n_best = 0;

  for (guint trial = 0; trial < N_TRIALS; trial++)
    {
      RwTrimRail rails[MAX_N];
      const guint n = random_rails (random, rails, FALSE);
      const guint64 all = (1u << n) - 1;
      RwTrimWindow window;
      double x;

      rw_trim_window_solve (rails, n, &window);
      if (isnan (window.best))
        continue;
      n_best++;
      g_assert_cmpfloat_with_epsilon (window.margin, search_top (rails, n, window.kept, &x), 1e-9);
      g_assert_cmpfloat (window.margin, >=, -1e-9);
      g_assert_cmpfloat_with_epsilon (rw_trim_window_margin (rails, n, all, window.compromise),
                                      search_top (rails, n, all, &x), 1e-9);
      for (x = 3.5; x < 6.5; x += 0.03)
        g_assert_cmpfloat (window.margin, >=, rw_trim_window_margin (rails, n, window.kept, x) - 1e-9);
    }
  g_assert_cmpuint (n_best, >, N_TRIALS * 3 / 4);
}

/* The bounds of one rail in x, told the slow way: where it meets its limits. */
static void
slow_bounds (const RwTrimRail *rail,
             double           *lo,
             double           *hi)
{
  const double a = (rail->lo - rail->offset) / rail->slope, b = (rail->hi - rail->offset) / rail->slope;

  *lo = rail->slope > 0 ? a : b;
  *hi = rail->slope > 0 ? b : a;
}

static void
assert_rules_out (const RwTrimRail   *rails,
                  guint               n,
                  const RwTrimWindow *window)
{
  double largest = 0;

  if (isinf (window->gap))
    {
      g_assert_cmpint (window->low_rail, ==, window->high_rail);
      g_assert_cmpfloat (rails[window->low_rail].slope, ==, 0);
      g_assert_cmpfloat (room (rails, n, 1u << window->low_rail, 5), <, 0);
      return;
    }
  for (guint i = 0; i < n; i++)
    for (guint k = 0; k < n; k++)
      {
        double low, high, unused;

        if (rails[i].slope == 0 || rails[k].slope == 0)
          continue;
        slow_bounds (&rails[i], &low, &unused);
        slow_bounds (&rails[k], &unused, &high);
        largest = MAX (largest, low - high);
      }
  g_assert_cmpfloat_with_epsilon (window->gap, largest, 1e-12);

  double low, high, unused;

  slow_bounds (&rails[window->low_rail], &low, &unused);
  slow_bounds (&rails[window->high_rail], &unused, &high);
  g_assert_cmpfloat_with_epsilon (low - high, window->gap, 1e-12);
}

static void
test_pair_that_rules_each_other_out_is_named (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (13);
  guint n_pairs = 0;

  for (guint trial = 0; trial < N_TRIALS; trial++)
    {
      RwTrimRail rails[MAX_N];
      const guint n = random_rails (random, rails, TRUE);
      RwTrimWindow window;

      rw_trim_window_solve (rails, n, &window);
      if (window.exists)
        continue;
      n_pairs += isfinite (window.gap) ? 1 : 0;
      g_assert_true (isnan (window.lo) && isnan (window.hi));
      assert_rules_out (rails, n, &window);
    }
  g_assert_cmpuint (n_pairs, >, N_TRIALS / 10);
}

/* Does some x suit the rails of @kept? By every pair of bounds. */
static gboolean
suits_some_x (const RwTrimRail *rails,
              guint             n,
              guint64           kept)
{
  double low = -INFINITY, high = INFINITY;

  for (guint i = 0; i < n; i++)
    {
      double a, b;

      if ((kept >> i & 1) == 0)
        continue;
      if (rails[i].slope == 0 && room (rails, n, G_GUINT64_CONSTANT (1) << i, 5) < 0)
        return FALSE;
      if (rails[i].slope == 0)
        continue;
      slow_bounds (&rails[i], &a, &b);
      low = MAX (low, a);
      high = MIN (high, b);
    }
  return low <= high;
}

static void
test_rails_are_kept_by_priority (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (14);

  for (guint trial = 0; trial < N_TRIALS; trial++)
    {
      RwTrimRail rails[MAX_N];
      const guint n = random_rails (random, rails, TRUE);
      guint64 kept = 0;
      RwTrimWindow window;

      rw_trim_window_solve (rails, n, &window);
      for (int priority = 1; priority <= 3; priority++)
        for (guint i = 0; i < n; i++)
          if (rails[i].priority == priority && suits_some_x (rails, n, kept | G_GUINT64_CONSTANT (1) << i))
            kept |= G_GUINT64_CONSTANT (1) << i;
      g_assert_cmpuint (window.kept, ==, kept);
      if (!isnan (window.best))
        g_assert_cmpfloat (room (rails, n, kept, window.best), >=, -1e-9);
    }
}

static void
test_adding_a_rail_never_widens_the_window (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (15);

  for (guint trial = 0; trial < N_TRIALS; trial++)
    {
      RwTrimRail rails[MAX_N];
      const guint n = random_rails (random, rails, TRUE);
      RwTrimWindow fewer, more;

      rw_trim_window_solve (rails, n - 1, &fewer);
      rw_trim_window_solve (rails, n, &more);
      g_assert_true (fewer.exists || !more.exists);
      g_assert_cmpfloat (more.gap, >=, fewer.gap);
      if (more.exists)
        g_assert_true (more.lo >= fewer.lo && more.hi <= fewer.hi);
      if (more.exists && isfinite (fewer.margin) && isfinite (more.margin) && isfinite (rails[n - 1].lo))
        g_assert_cmpfloat (more.margin, <=, fewer.margin + 1e-12);
    }
}

static void
assert_mirrored (const RwTrimWindow *a,
                 const RwTrimWindow *b,
                 double              factor)
{
  const gboolean flipped = factor < 0;

  g_assert_cmpint (a->exists, ==, b->exists);
  g_assert_cmpuint (a->kept, ==, b->kept);
  g_assert_cmpint (a->low_rail, ==, flipped ? b->high_rail : b->low_rail);
  g_assert_cmpint (a->high_rail, ==, flipped ? b->low_rail : b->high_rail);
  if (a->exists && isfinite (a->lo))
    g_assert_cmpfloat_with_epsilon (a->lo * factor, flipped ? b->hi : b->lo, 1e-9);
  if (isfinite (a->gap))
    g_assert_cmpfloat_with_epsilon (a->gap * fabs (factor), b->gap, 1e-9);
  g_assert_cmpint (isnan (a->best), ==, isnan (b->best));
  if (!isnan (a->best))
    {
      g_assert_cmpfloat_with_epsilon (a->best * factor, b->best, 1e-9);
      g_assert_cmpfloat_with_epsilon (a->compromise * factor, b->compromise, 1e-9);
      g_assert_cmpfloat_with_epsilon (a->margin, b->margin, 1e-9);
    }
}

/* Rails seen upside down, x counted the other way, and x in other units: the same answer. */
static void
test_mirrored_and_scaled_rails_give_the_same_answer (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (16);

  for (guint trial = 0; trial < N_TRIALS; trial++)
    {
      RwTrimRail rails[MAX_N], upside[MAX_N], backwards[MAX_N], scaled[MAX_N];
      const guint n = random_rails (random, rails, FALSE);
      RwTrimWindow plain, other;

      for (guint i = 0; i < n; i++)
        {
          upside[i] = (RwTrimRail){ -rails[i].offset, -rails[i].slope, -rails[i].hi, -rails[i].lo,
                                    rails[i].priority };
          backwards[i] = scaled[i] = rails[i];
          backwards[i].slope *= -1;
          scaled[i].slope /= 3;
        }
      rw_trim_window_solve (rails, n, &plain);
      rw_trim_window_solve (upside, n, &other);
      assert_mirrored (&plain, &other, 1);
      rw_trim_window_solve (backwards, n, &other);
      assert_mirrored (&plain, &other, -1);
      rw_trim_window_solve (scaled, n, &other);
      assert_mirrored (&plain, &other, 3);
    }
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/trim-window/is-where-all-suit", test_window_is_where_all_suit);
  g_test_add_func ("/trim-window/set-point-has-the-largest-smallest-margin",
                   test_set_point_has_the_largest_smallest_margin);
  g_test_add_func ("/trim-window/pair-that-rules-each-other-out-is-named",
                   test_pair_that_rules_each_other_out_is_named);
  g_test_add_func ("/trim-window/rails-are-kept-by-priority", test_rails_are_kept_by_priority);
  g_test_add_func ("/trim-window/adding-a-rail-never-widens-it", test_adding_a_rail_never_widens_the_window);
  g_test_add_func ("/trim-window/mirrored-and-scaled-rails-give-the-same-answer",
                   test_mirrored_and_scaled_rails_give_the_same_answer);
  return g_test_run ();
}
