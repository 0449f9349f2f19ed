/* test-trim-chance.c: the chance that all rails are inside at once when the screw is set.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Worked answers (data/trim_window_worked.json); draws of the errors that are told (Monte Carlo, seeded);
 * steps whose mean is plain geometry.
 */
#include "config.h"

#include <math.h>

#include "fixtures.h"
#include "rw-trim-chance-private.h"
#include "rw-trim-window.h"
#include "rw-verdict.h"

#define MAX_N 6
#define N_DRAWS 40000

static double
number (JsonObject *object,
        const char *key)
{
  JsonNode *node = json_object_get_member (object, key);

  return json_node_get_value_type (node) == G_TYPE_STRING
           ? g_ascii_strtod (json_node_get_string (node), NULL)
           : json_node_get_double (node);
}

/* s² = u_a² + t² u_b² + 2 t ρ u_a u_b + u_meter² */
static RwTrimChanceRail
worked_rail (JsonObject *rail,
             JsonObject *unc,
             double      t)
{
  const double u_a = number (unc, "u_a"), u_b = number (unc, "u_b"), u_meter = number (unc, "u_meter");

  return (RwTrimChanceRail){
    .value = number (rail, "a") + number (rail, "b") * t,
    .slope = number (rail, "b"),
    .var = u_a * u_a + t * t * u_b * u_b + 2 * t * number (unc, "rho") * u_a * u_b + u_meter * u_meter,
    .lo = number (rail, "lo"),
    .hi = number (rail, "hi"),
  };
}

static void
assert_worked_at (JsonObject *it,
                  const char *key_t,
                  const char *key_each,
                  const char *key_all)
{
  RwTrimChanceRail rails[MAX_N];
  JsonArray *list = json_object_get_array_member (it, "rails");
  JsonArray *unc = json_object_get_array_member (it, "unc");
  JsonArray *each = json_object_get_array_member (it, key_each);
  const guint n = json_array_get_length (list);

  for (guint i = 0; i < n; i++)
    {
      rails[i] = worked_rail (json_array_get_object_element (list, i), json_array_get_object_element (unc, i),
                              number (it, key_t));
      g_assert_cmpfloat_with_epsilon (rw_trim_chance_all (&rails[i], 1, 0, 0),
                                      json_array_get_double_element (each, i), 1e-9);
    }
  g_assert_cmpfloat_with_epsilon (rw_trim_chance_all (rails, n, 0, 0), number (it, key_all), 1e-9);
}

static void
test_worked_cases (void)
{
  g_autoptr (JsonNode) data = fixture_refdata ("trim_window_worked.json");
  JsonArray *cases = json_object_get_array_member (json_node_get_object (data), "computed");

  for (guint i = 0; i < json_array_get_length (cases); i++)
    {
      JsonObject *it = json_array_get_object_element (cases, i);

      assert_worked_at (it, "minimax_t", "prob_at_minimax_each", "prob_at_minimax_all");
      assert_worked_at (it, "best_t_probability", "prob_each_at_best", "prob_all_at_best");
    }
}

static double
normal_draw (GRand *random)
{
  const double u = 1 - g_rand_double (random);

  return sqrt (-2 * log (u)) * cos (2 * G_PI * g_rand_double (random));
}

/* The share of draws with all rails inside. */
static double
draw_chance (GRand                  *random,
             const RwTrimChanceRail *rails,
             guint                   n,
             double                  half_scale,
             double                  half_setting)
{
  guint n_inside = 0;

  for (guint draw = 0; draw < N_DRAWS; draw++)
    {
      const double scale = 1 + half_scale * (2 * g_rand_double (random) - 1);
      const double e = half_setting * (2 * g_rand_double (random) - 1);
      gboolean inside = TRUE;

      for (guint i = 0; i < n && inside; i++)
        {
          const double var = rails[i].var + e * (rails[i].var1 + e * rails[i].var2);
          const double shown = rails[i].value + rails[i].slope * e + sqrt (var) * normal_draw (random);
          const double volts = shown / scale;

          inside = volts >= rails[i].lo && volts <= rails[i].hi;
        }
      n_inside += inside ? 1 : 0;
    }
  return (double) n_inside / N_DRAWS;
}

/* Rails somewhere near their limits, the reference first, known exactly. */
static guint
random_rails (GRand            *random,
              RwTrimChanceRail *rails)
{
  static const double nominals[MAX_N] = { 5, 12, -5, -12, 3.3, 24 };
  const guint n = (guint) g_rand_int_range (random, 2, MAX_N + 1);

  for (guint i = 0; i < n; i++)
    {
      const double half = fabs (nominals[i]) * g_rand_double_range (random, 0.015, 0.06);
      const double tilt = nominals[i] / 5 * g_rand_double_range (random, 0.2, 0.5);
      const double u = i == 0 ? 0 : exp (g_rand_double_range (random, log (5e-4), log (0.1)));

      rails[i] = (RwTrimChanceRail){
        .value = nominals[i] + half * g_rand_double_range (random, -1, 1) * g_rand_int_range (random, 0, 2),
        .slope = i == 0 ? 1 : tilt * g_rand_int_range (random, 0, 4),
        .var = u * u,
        .var1 = u * u * g_rand_double_range (random, -5, 5),
        .var2 = u * u * 50,
        .lo = nominals[i] - half,
        .hi = nominals[i] + half,
      };
    }
  return n;
}

static void
test_chance_is_the_share_of_draws (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (21);
  guint n_between = 0;

  for (guint trial = 0; trial < 150; trial++)
    {
      RwTrimChanceRail rails[MAX_N];
      const guint n = random_rails (random, rails);
      const double half_scale = 0.01 * g_rand_double (random) * g_rand_int_range (random, 0, 2);
      const double half_setting = 0.05 * g_rand_double (random) * g_rand_int_range (random, 0, 2);
      const double chance = rw_trim_chance_all (rails, n, half_scale, half_setting);
      const double share = draw_chance (random, rails, n, half_scale, half_setting);

      n_between += chance > 0.01 && chance < 0.99 ? 1 : 0;
      /* Five standard errors of the share, and what the nodes may be off. */
      g_assert_cmpfloat_with_epsilon (chance, share, 5 * sqrt (chance * (1 - chance) / N_DRAWS) + 3e-4);
    }
  g_assert_cmpuint (n_between, >, 50);
}

/* A rail known exactly is a step: the chance is the share of the square on its right side. */
static void
test_exact_rail_is_a_share_of_the_errors (void)
{
  RwTrimChanceRail rail = { .value = 5.0, .slope = 1, .lo = 4.5, .hi = 5.01 };

  /* 5 + e ≤ 5.01 for e within ±0.02: three quarters. */
  g_assert_cmpfloat_with_epsilon (rw_trim_chance_all (&rail, 1, 0, 0.02), 0.75, 1e-9);
  /* 5 / (1 + s) ≤ 5.01 for s ≥ −0.00199600798, within ±0.005. */
  g_assert_cmpfloat_with_epsilon (rw_trim_chance_all (&rail, 1, 0.005, 0), (0.005 + 0.01 / 5.01) / 0.01,
                                  1e-9);
  /* On the limit, errors even: half, whichever error is the larger one. */
  rail.hi = 5.0;
  g_assert_cmpfloat_with_epsilon (rw_trim_chance_all (&rail, 1, 0.005, 0.02), 0.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (rw_trim_chance_all (&rail, 1, 0.002, 0.02), 0.5, 1e-9);
  /* Two steps along the same axis: a mirror pair of rails, each inside for half of e, never both. */
  const RwTrimChanceRail pair[] = { rail, { .value = -5.0, .slope = -1, .lo = -6, .hi = -5 } };

  g_assert_cmpfloat_with_epsilon (rw_trim_chance_all (pair, 2, 0, 0.02), 0, 1e-9);
}

/* Both errors at once cut a corner off the square: the excess of the setting, uniform within ±w, over a bound
 * uniform within d ± h has the mean (w + h − d)² / (8 w h), d ≥ |w − h|. */
static void
test_exact_rail_cuts_a_corner_off (void)
{
  const double widths[][2] = { { 0.002, 0.02 }, { 0.002, 0.012 }, { 0.004, 0.012 }, { 0.01, 0.04 } };

  for (guint i = 0; i < G_N_ELEMENTS (widths); i++)
    {
      RwTrimChanceRail rail = { .value = 5.0, .slope = 1, .lo = 4, .hi = 5.015 };

      for (rail.value = 4.97; rail.value < 5.02; rail.value += 0.001)
        {
          const double d = rail.hi - rail.value, h = rail.hi * widths[i][0], w = widths[i][1];
          const double corner = pow (w + h - d, 2) / (8 * w * h);

          if (d >= fabs (w - h) && d <= w + h)
            g_assert_cmpfloat_with_epsilon (rw_trim_chance_all (&rail, 1, widths[i][0], w), 1 - corner, 1e-9);
        }
    }
}

/* The mean of Φ has a closed form: its integral is z·Φ + φ. */
static void
test_uncertain_rail_is_a_mean_of_phi (void)
{
  for (double u = 2e-4; u < 0.2; u *= 1.3)
    {
      const RwTrimChanceRail rail = { .value = 5, .slope = 1, .var = u * u, .lo = -INFINITY, .hi = 5.01 };
      const double from = -0.01 / u, to = 0.03 / u;
      const double mean = (to * rw_normal_cdf (to) + exp (-to * to / 2) / sqrt (2 * G_PI)
                           - from * rw_normal_cdf (from) - exp (-from * from / 2) / sqrt (2 * G_PI))
                          / (to - from);

      g_assert_cmpfloat_with_epsilon (rw_trim_chance_all (&rail, 1, 0, 0.02), mean, 2e-5);
    }
}

/* An error in common makes rails pass or fail together: more than the product, never more than the worst. */
static void
test_common_errors_bind_rails_together (void)
{
  const RwTrimChanceRail rails[] = {
    { .value = 5.0, .slope = 1, .var = 1e-6, .lo = 4.5, .hi = 5.0 },
    { .value = 12.0, .slope = 2.4, .var = 1e-6, .lo = 11, .hi = 12.0 },
  };
  const double both = rw_trim_chance_all (rails, 2, 0.005, 0.002);

  g_assert_cmpfloat_with_epsilon (rw_trim_chance_all (&rails[0], 1, 0.005, 0.002), 0.5, 1e-4);
  g_assert_cmpfloat (both, >, 0.45);
  g_assert_cmpfloat (both, <=, 0.5 + 1e-4);
}

static void
test_without_limits_all_is_well (void)
{
  const RwTrimChanceRail free = { .value = 5, .slope = 1, .var = 1, .lo = -INFINITY, .hi = INFINITY };
  const RwTrimChanceRail odd = { .value = NAN, .slope = 1, .lo = 4, .hi = 6 };

  g_assert_cmpfloat (rw_trim_chance_all (NULL, 0, 0.01, 0.01), ==, 1);
  g_assert_cmpfloat (rw_trim_chance_all (&free, 1, 0.01, 0.01), ==, 1);
  g_assert_cmpfloat (rw_trim_chance_all (&odd, 1, 0.01, 0.01), ==, 0);
}

/* Four positions of +5, +12 and −5; a fourth rail was never read. */
static RwTrimFit *
small_fit (void)
{
  const RwTrimPrior priors[] = { { 1, 0 }, { 2.4, 1 }, { -1, 0.5 }, { 0.66, 0.3 } };
  const double x[] = { 4.91, 5.02, 5.08, 5.15 };
  RwTrimReading readings[12];

  for (guint k = 0; k < 4; k++)
    {
      readings[3 * k] = (RwTrimReading){ 0, k, x[k], 0.001, FALSE };
      readings[3 * k + 1] = (RwTrimReading){ 1, k, 0.3 + 2.3 * x[k], 0.01, FALSE };
      readings[3 * k + 2] = (RwTrimReading){ 2, k, 0.2 - 1.02 * x[k], 0.004, FALSE };
    }
  return rw_trim_fit_new (4, 0, priors, 4, readings, G_N_ELEMENTS (readings));
}

static guint
rails_of_fit (const RwTrimFit  *fit,
              const double     *lo,
              const double     *hi,
              double            x,
              RwTrimChanceRail *rails)
{
  guint n = 0;

  for (guint i = 0; i < rw_trim_fit_get_n_rails (fit); i++)
    {
      RwTrimLine line;

      if (isnan (lo[i]) || !rw_trim_fit_get_line (fit, i, &line))
        continue;
      rails[n++] = (RwTrimChanceRail){
        .value = line.offset + line.slope * x,
        .slope = line.slope,
        .var = pow (line.offset_u, 2) + 2 * x * line.cov + pow (x * line.slope_u, 2),
        .var1 = 2 * line.cov + 2 * x * pow (line.slope_u, 2),
        .var2 = pow (line.slope_u, 2),
        .lo = lo[i],
        .hi = hi[i],
      };
    }
  return n;
}

static void
test_chance_of_a_fit_is_the_share_of_draws (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (22);
  g_autoptr (RwTrimFit) fit = small_fit ();
  const double lo[] = { 4.95, 11.9, -5.15, NAN }, hi[] = { 5.2, 12.1, NAN, NAN };
  const double open_hi[] = { 5.2, 12.1, INFINITY, INFINITY };

  for (double x = 4.98; x < 5.2; x += 0.04)
    {
      RwTrimChanceRail rails[MAX_N];
      const guint n = rails_of_fit (fit, lo, open_hi, x, rails);
      const double chance = rw_trim_window_chance (fit, lo, hi, x, 0.003, 0.5);
      const double share = draw_chance (random, rails, n, 0.005, sqrt (3) * 0.003);

      g_assert_cmpuint (n, ==, 3);
      g_assert_cmpfloat_with_epsilon (chance, share, 5 * sqrt (chance * (1 - chance) / N_DRAWS) + 3e-4);
    }
  /* So wide a setting error that the lines' uncertainty differs across it. */
  RwTrimChanceRail rails[MAX_N];
  const guint n = rails_of_fit (fit, lo, open_hi, 5.08, rails);

  g_assert_cmpfloat_with_epsilon (rw_trim_window_chance (fit, lo, hi, 5.08, 0.1, 0.5),
                                  rw_trim_chance_all (rails, n, 0.005, sqrt (3) * 0.1), 1e-9);
  g_assert_cmpfloat (rw_trim_window_chance (fit, lo, hi, 5.08, 0.003, 0.5), >, 0.1);
  g_assert_cmpfloat (rw_trim_window_chance (fit, lo, hi, 5.08, 0.003, 0.5), <, 1);
  g_assert_true (isnan (rw_trim_window_chance (fit, lo, hi, NAN, 0.003, 0.5)));
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/trim-chance/worked-cases", test_worked_cases);
  g_test_add_func ("/trim-chance/is-the-share-of-draws", test_chance_is_the_share_of_draws);
  g_test_add_func ("/trim-chance/exact-rail-is-a-share-of-the-errors",
                   test_exact_rail_is_a_share_of_the_errors);
  g_test_add_func ("/trim-chance/exact-rail-cuts-a-corner-off", test_exact_rail_cuts_a_corner_off);
  g_test_add_func ("/trim-chance/uncertain-rail-is-a-mean-of-phi", test_uncertain_rail_is_a_mean_of_phi);
  g_test_add_func ("/trim-chance/common-errors-bind-rails-together", test_common_errors_bind_rails_together);
  g_test_add_func ("/trim-chance/without-limits-all-is-well", test_without_limits_all_is_well);
  g_test_add_func ("/trim-chance/of-a-fit-is-the-share-of-draws", test_chance_of_a_fit_is_the_share_of_draws);
  return g_test_run ();
}
