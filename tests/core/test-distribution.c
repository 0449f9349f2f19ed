/* test-distribution.c: the chances behind the tests of a fit, against closed forms and printed tables.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "fixtures.h"
#include "rw-distribution.h"

static void
assert_close (double value,
              double expected,
              double share)
{
  if (!(fabs (value - expected) <= share * fabs (expected)))
    g_error ("%.17g is not %.17g within %g of it", value, expected, share);
}

/* Even degrees of freedom: e^−x/2 Σ (x/2)^k / k!; one: erfc. */
static double
chi2_closed (double x,
             guint  dof)
{
  double term = exp (-x / 2);
  double sum = term;

  if (dof == 1)
    return erfc (sqrt (x / 2));
  for (guint k = 1; k < dof / 2; k++)
    {
      term *= x / 2 / k;
      sum += term;
    }
  return sum;
}

static void
test_chi2_closed_forms (void)
{
  static const guint dofs[] = { 1, 2, 4, 6, 8, 20, 60 };

  for (guint i = 0; i < G_N_ELEMENTS (dofs); i++)
    for (double x = 1e-3; x < 700; x *= 1.37)
      assert_close (rw_chi2_survival (x, dofs[i]), chi2_closed (x, dofs[i]), 1e-12);
}

/* Abramowitz and Stegun, table 26.8: to its printed digits. */
static void
test_chi2_table (void)
{
  g_assert_cmpfloat_with_epsilon (rw_chi2_survival (3.84146, 1), 0.05, 1e-6);
  g_assert_cmpfloat_with_epsilon (rw_chi2_survival (11.3449, 3), 0.01, 1e-6);
  g_assert_cmpfloat_with_epsilon (rw_chi2_survival (18.3070, 10), 0.05, 1e-6);
  g_assert_cmpfloat_with_epsilon (rw_chi2_survival (0.831211, 5), 0.975, 1e-6);
  g_assert_cmpfloat_with_epsilon (rw_chi2_survival (124.342, 100), 0.05, 1e-5);
}

/* Q(χ²|ν + 2) − Q(χ²|ν) is the density's own term, for odd ν too: (x/2)^(ν/2) e^−x/2 / Γ(ν/2 + 1). */
static void
test_chi2_steps (void)
{
  for (guint dof = 1; dof < 41; dof++)
    for (double x = 0.1; x < 100; x *= 1.7)
      {
        const double term = exp (dof / 2.0 * log (x / 2) - x / 2 - lgamma (dof / 2.0 + 1));

        g_assert_cmpfloat_with_epsilon (rw_chi2_survival (x, dof + 2) - rw_chi2_survival (x, dof), term,
                                        1e-14);
      }
}

static void
test_edges (void)
{
  g_assert_cmpfloat (rw_chi2_survival (0, 3), ==, 1);
  g_assert_cmpfloat (rw_chi2_survival (5, 0), ==, 1);
  g_assert_cmpfloat (rw_chi2_survival (INFINITY, 3), ==, 0);
  g_assert_cmpfloat (rw_chi2_survival (1e9, 3), ==, 0);
  g_assert_true (isnan (rw_chi2_survival (NAN, 3)));
  g_assert_true (isnan (rw_chi2_survival (-1, 3)));
  g_assert_cmpfloat (rw_f_survival (0, 1, 5), ==, 1);
  g_assert_cmpfloat (rw_f_survival (INFINITY, 1, 5), ==, 0);
  g_assert_true (isnan (rw_f_survival (NAN, 1, 5)));
  g_assert_true (isnan (rw_f_survival (-1, 1, 5)));
  g_assert_true (isnan (rw_f_survival (1, 0, 5)));
  g_assert_true (isnan (rw_f_survival (1, 1, 0)));
  g_assert_true (isnan (rw_t_half_width (1, 5)));
  g_assert_true (isnan (rw_t_half_width (0, 5)));
  g_assert_true (isnan (rw_t_half_width (NAN, 5)));
  g_assert_true (isnan (rw_t_half_width (0.95, 0)));
}

/* d1 = 2: (1 + 2F/d2)^(−d2/2). And the exchange of both: Q(F|d1,d2) = 1 − Q(1/F|d2,d1). */
static void
test_f_closed_forms (void)
{
  for (guint d2 = 1; d2 < 50; d2++)
    for (double f = 1e-3; f < 1e6; f *= 2.3)
      {
        assert_close (rw_f_survival (f, 2, d2), pow (1 + 2 * f / d2, -(d2 / 2.0)), 1e-12);
        g_assert_cmpfloat_with_epsilon (rw_f_survival (f, 3, d2), 1 - rw_f_survival (1 / f, d2, 3), 1e-13);
        g_assert_cmpfloat_with_epsilon (rw_f_survival (f, 1, d2), 1 - rw_f_survival (1 / f, d2, 1), 1e-13);
      }
}

/* Abramowitz and Stegun, table 26.9: to its printed digits. */
static void
test_f_table (void)
{
  g_assert_cmpfloat_with_epsilon (rw_f_survival (4.96, 1, 10), 0.05, 2e-4);
  g_assert_cmpfloat_with_epsilon (rw_f_survival (10.04, 1, 10), 0.01, 2e-5);
  g_assert_cmpfloat_with_epsilon (rw_f_survival (2.71, 5, 20), 0.05, 2e-4);
  g_assert_cmpfloat_with_epsilon (rw_f_survival (161.4, 1, 1), 0.05, 2e-5);
}

/* One degree of freedom: tan (πp/2); two: p √(2/(1 − p²)); and table 26.10. */
static void
test_t (void)
{
  for (double p = 0.05; p < 1; p += 0.05)
    {
      assert_close (rw_t_half_width (p, 1), tan (G_PI_2 * p), 1e-12);
      assert_close (rw_t_half_width (p, 2), p * sqrt (2 / (1 - p * p)), 1e-12);
    }
  g_assert_cmpfloat_with_epsilon (rw_t_half_width (0.95, 9), 2.262, 5e-4);
  g_assert_cmpfloat_with_epsilon (rw_t_half_width (0.99, 4), 4.604, 5e-4);
  g_assert_cmpfloat_with_epsilon (rw_t_half_width (0.95, 1000000), 1.959964, 1e-5);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/core/distribution/chi2-is-the-closed-forms", test_chi2_closed_forms);
  g_test_add_func ("/core/distribution/chi2-is-the-printed-table", test_chi2_table);
  g_test_add_func ("/core/distribution/chi2-steps-by-its-density-term", test_chi2_steps);
  g_test_add_func ("/core/distribution/nonsense-is-nan-and-ends-are-exact", test_edges);
  g_test_add_func ("/core/distribution/f-is-the-closed-forms", test_f_closed_forms);
  g_test_add_func ("/core/distribution/f-is-the-printed-table", test_f_table);
  g_test_add_func ("/core/distribution/t-is-the-closed-forms-and-the-table", test_t);
  return g_test_run ();
}
