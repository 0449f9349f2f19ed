/* test-repair-order.c: what repairing straight away costs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Worked example E1: five causes, the best of all 120 orders costs 30 minutes, the worst 52.7.
 */
#include "config.h"

#include <math.h>

#include "rw-repair-order.h"

static const double e1_p[] = { 0.30, 0.25, 0.20, 0.15, 0.10 };
static const double e1_c[] = { 30, 10, 5, 20, 2 };

/* Expected cost of one order. */
static double
order_cost (guint         n,
            const double *w,
            const double *c,
            const guint  *order)
{
  double left = 0;
  double cost = 0;

  for (guint k = 0; k < n; k++)
    left += w[order[k]];
  for (guint k = 0; k < n; k++)
    {
      cost += c[order[k]] * left;
      left -= w[order[k]];
    }
  return cost;
}

/* Least and greatest cost over all orders of order[k …]. */
static void
permute (guint         n,
         const double *w,
         const double *c,
         guint        *order,
         guint         k,
         double       *least,
         double       *greatest)
{
  if (k == n)
    {
      const double cost = order_cost (n, w, c, order);

      *least = fmin (*least, cost);
      *greatest = fmax (*greatest, cost);
      return;
    }
  for (guint i = k; i < n; i++)
    {
      const guint there = order[i];

      order[i] = order[k];
      order[k] = there;
      permute (n, w, c, order, k + 1, least, greatest);
      order[k] = order[i];
      order[i] = there;
    }
}

static void
test_worked_example (void)
{
  static const guint likeliest_first[] = { 0, 1, 2, 3, 4 };
  static const guint cheapest_first[] = { 4, 2, 1, 3, 0 };
  guint order[] = { 0, 1, 2, 3, 4 };
  double least = INFINITY, greatest = 0;

  permute (5, e1_p, e1_c, order, 0, &least, &greatest);
  g_assert_cmpfloat_with_epsilon (rw_repair_cost (5, e1_p, e1_c), 30, 1e-12);
  g_assert_cmpfloat_with_epsilon (least, 30, 1e-12);
  g_assert_cmpfloat_with_epsilon (greatest, 52.7, 1e-12);
  g_assert_cmpfloat_with_epsilon (order_cost (5, e1_p, e1_c, likeliest_first), 44.45, 1e-12);
  g_assert_cmpfloat_with_epsilon (order_cost (5, e1_p, e1_c, cheapest_first), 31.5, 1e-12);
}

static void
test_worked_order (void)
{
  static const int expected[] = { 4, 2, 1, 0, 3 };
  double w[5];

  for (guint i = 0; i < 5; i++)
    w[i] = e1_p[i];
  for (guint k = 0; k < 5; k++)
    {
      g_assert_cmpint (rw_repair_best (5, w, e1_c), ==, expected[k]);
      w[expected[k]] = 0;
    }
  g_assert_cmpint (rw_repair_best (5, w, e1_c), ==, -1);
}

/* Causes that are ruled out stand at the end, and of equal ones the first is first. */
static void
test_order_of_ties_and_nothings (void)
{
  static const double w[] = { 0, 0.2, 0.1, 0, 0.2, 0.3 }, c[] = { 0, 4, 2, 9, 4, 0 };
  static const guint expected[] = { 5, 1, 2, 4, 0, 3 };
  guint order[6];

  rw_repair_sort (6, w, c, order);
  for (guint k = 0; k < 6; k++)
    g_assert_cmpuint (order[k], ==, expected[k]);
}

static void
test_pair_formula_is_the_best_of_all_orders (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (1);

  for (guint round = 0; round < 120; round++)
    {
      const guint n = round % 8 + 1;
      guint order[8] = { 0, 1, 2, 3, 4, 5, 6, 7 };
      double w[8], c[8], least = INFINITY, greatest = 0;

      for (guint i = 0; i < n; i++)
        {
          w[i] = g_rand_double (random);
          c[i] = g_rand_int_range (random, 0, 5) == 0 ? 0 : g_rand_double_range (random, 1, 60);
        }
      permute (n, w, c, order, 0, &least, &greatest);
      rw_repair_sort (n, w, c, order);
      g_assert_cmpfloat_with_epsilon (order_cost (n, w, c, order), least,
                                      1e-12 * least + 1e-300);
      g_assert_cmpfloat_with_epsilon (rw_repair_cost (n, w, c), least,
                                      1e-12 * least + 1e-300);
    }
}

static void
test_known_cause_costs_no_more (void)
{
  g_assert_cmpfloat_with_epsilon (rw_repair_cost_known (5, e1_p, e1_c), 15.7, 1e-12);
  g_assert_cmpfloat (rw_repair_cost_known (5, e1_p, e1_c), <, rw_repair_cost (5, e1_p, e1_c));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/repair-order/a worked example", test_worked_example);
  g_test_add_func ("/repair-order/its order", test_worked_order);
  g_test_add_func ("/repair-order/ties and causes ruled out", test_order_of_ties_and_nothings);
  g_test_add_func ("/repair-order/the pair formula is the best of all orders",
                   test_pair_formula_is_the_best_of_all_orders);
  g_test_add_func ("/repair-order/knowing the cause never costs more",
                   test_known_cause_costs_no_more);
  return g_test_run ();
}
