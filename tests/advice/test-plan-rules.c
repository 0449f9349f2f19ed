/* test-plan-rules.c: rules for special kinds of repair and inspection, against brute force.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Something to open first, somebody to call, looks that can miss, parts in series: the worked
 * examples E18, E14, E13, E16, and 1 000 random problems each, where every order (for looks:
 * every policy) is tried. Costs are worked out here anew.
 */
#include "config.h"

#include <math.h>

#include "rw-overlook.h"
#include "rw-repair-cluster.h"
#include "rw-repair-order.h"
#include "rw-series.h"

#define N_RANDOM 1000
#define MOST 7

static const double e1_p[] = { 0.30, 0.25, 0.20, 0.15, 0.10 };
static const double e1_c[] = { 30, 10, 5, 20, 2 };

/* Called with every order of n things. */
typedef void (*Visit) (const guint *order, gpointer data);

static void
permute (guint    n,
         guint   *order,
         guint    k,
         Visit    visit,
         gpointer data)
{
  if (k == n)
    visit (order, data);
  for (guint i = k; i < n; i++)
    {
      const guint there = order[i];

      order[i] = order[k];
      order[k] = there;
      permute (n, order, k + 1, visit, data);
      order[k] = order[i];
      order[i] = there;
    }
}

static void
visit_all (guint    n,
           Visit    visit,
           gpointer data)
{
  guint order[MOST];

  for (guint i = 0; i < n; i++)
    order[i] = i;
  permute (n, order, 0, visit, data);
}

static void
assert_same (double value,
             double expected)
{
  g_assert_cmpfloat_with_epsilon (value, expected, 1e-12 * (1 + fabs (expected)));
}

/* Minutes that are sometimes 0 and often equal: ties and edges. */
static double
random_minutes (GRand *random,
                double most)
{
  return g_rand_int_range (random, 0, 8) == 0   ? 0
         : g_rand_int_range (random, 0, 3) == 0 ? g_rand_int_range (random, 1, 4)
                                                : g_rand_double_range (random, 0.5, most);
}

static void
fill_random (GRand  *random,
             guint   n,
             double *w,
             double *c)
{
  for (guint i = 0; i < n; i++)
    {
      w[i] = -log (1 - g_rand_double (random));
      c[i] = random_minutes (random, 60);
    }
}

/* --- something to open --------------------------------------------------------------------- */

typedef struct
{
  guint  n;
  double w[MOST], c[MOST];
  int    cluster[MOST];
  double opening[3];
  double least;
} Cabinet;

/* Chance of each cause × minutes up to and with its repair. */
static double
opened_cost (const Cabinet *self,
             const guint   *order)
{
  gboolean open[3] = { FALSE };
  double minutes = 0, cost = 0;

  for (guint k = 0; k < self->n; k++)
    {
      const int in = self->cluster[order[k]];

      if (in >= 0 && !open[in])
        minutes += self->opening[in];
      if (in >= 0)
        open[in] = TRUE;
      minutes += self->c[order[k]];
      cost += self->w[order[k]] * minutes;
    }
  return cost;
}

static void
visit_cabinet (const guint *order,
               gpointer     data)
{
  Cabinet *self = data;

  self->least = fmin (self->least, opened_cost (self, order));
}

static double
order_cabinet (const Cabinet *self,
               guint         *order)
{
  return rw_repair_cluster_order (self->n, self->w, self->c, self->cluster, 3, self->opening,
                                  order);
}

static void
test_worked_clusters (void)
{
  static const double opening[] = { 15, 45, 60 }, cost[] = { 45, 72.9, 82.85 };
  static const guint orders[3][5] = { { 4, 2, 1, 0, 3 }, { 0, 4, 2, 1, 3 }, { 0, 3, 4, 2, 1 } };

  for (guint k = 0; k < 3; k++)
    {
      Cabinet it = { .n = 5, .cluster = { -1, 0, 0, -1, 0 }, .opening = { opening[k] } };
      guint order[5];

      for (guint i = 0; i < 5; i++)
        {
          it.w[i] = e1_p[i];
          it.c[i] = e1_c[i];
        }
      assert_same (order_cabinet (&it, order), cost[k]);
      for (guint i = 0; i < 5; i++)
        g_assert_cmpuint (order[i], ==, orders[k][i]);
    }
}

static void
test_clusters_are_never_beaten (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (101);

  for (guint round = 0; round < N_RANDOM; round++)
    {
      Cabinet it = { .n = (guint) g_rand_int_range (random, 1, MOST), .least = INFINITY };
      guint order[MOST];

      fill_random (random, it.n, it.w, it.c);
      for (guint i = 0; i < it.n; i++)
        it.cluster[i] = g_rand_int_range (random, -1, 3);
      for (guint k = 0; k < 3; k++)
        it.opening[k] = random_minutes (random, 90);
      visit_all (it.n, visit_cabinet, &it);
      assert_same (order_cabinet (&it, order), it.least);
      assert_same (opened_cost (&it, order), it.least);
    }
}

/* --- somebody to call ----------------------------------------------------------------------- */

typedef struct
{
  guint  n;
  double w[MOST], c[MOST];
  double service;
  double least;
} Call;

/* Every place to stop in one order. */
static void
visit_call (const guint *order,
            gpointer     data)
{
  Call *self = data;
  double minutes = 0, fixed = 0, left = 0;

  for (guint i = 0; i < self->n; i++)
    left += self->w[i];
  for (guint k = 0; k <= self->n; k++)
    {
      const double rest = k < self->n ? left * (minutes + self->service) : 0;

      self->least = fmin (self->least, fixed + rest);
      if (k == self->n)
        return;
      minutes += self->c[order[k]];
      fixed += self->w[order[k]] * minutes;
      left -= self->w[order[k]];
    }
}

static void
test_worked_call (void)
{
  static const double service[] = { 20, 40, 100 }, cost[] = { 20, 30, 30 };
  static const guint own[] = { 0, 5, 5 };

  for (guint k = 0; k < 3; k++)
    {
      guint n_own = 9;

      assert_same (rw_repair_cost_service (5, e1_p, e1_c, service[k], &n_own), cost[k]);
      g_assert_cmpuint (n_own, ==, own[k]);
    }
}

static void
test_calls_are_never_beaten (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (103);
  guint some = 0;

  for (guint round = 0; round < N_RANDOM; round++)
    {
      Call it = { .n = (guint) g_rand_int_range (random, 1, MOST), .least = INFINITY };
      guint own = 0;

      fill_random (random, it.n, it.w, it.c);
      it.service = random_minutes (random, 120);
      visit_all (it.n, visit_call, &it);
      assert_same (rw_repair_cost_service (it.n, it.w, it.c, it.service, &own), it.least);
      some += own > 0 && own < it.n;
    }
  g_assert_cmpuint (some, >, N_RANDOM / 10); /* not all or nothing only */
}

/* --- looks that can miss -------------------------------------------------------------------- */

#define PLACES 3
#define LOOKS 26 /* each: with finds ≥ 0.7 what is then left is 0.3^25 = 1e-13 */

/* The least cost over all policies: from the most looks down to none. */
static double
least_search (const double *p,
              const double *finds,
              const double *minutes)
{
  static double value[LOOKS + 1][LOOKS + 1][LOOKS + 1];

  for (int a = LOOKS; a >= 0; a--)
    for (int b = LOOKS; b >= 0; b--)
      for (int c = LOOKS; c >= 0; c--)
        {
          const double mass = p[0] * pow (1 - finds[0], a) + p[1] * pow (1 - finds[1], b)
                              + p[2] * pow (1 - finds[2], c);
          double best = INFINITY;

          if (a < LOOKS)
            best = fmin (best, minutes[0] * mass + value[a + 1][b][c]);
          if (b < LOOKS)
            best = fmin (best, minutes[1] * mass + value[a][b + 1][c]);
          if (c < LOOKS)
            best = fmin (best, minutes[2] * mass + value[a][b][c + 1]);
          value[a][b][c] = isinf (best) ? 0 : best;
        }
  return value[0][0][0];
}

static void
test_worked_search (void)
{
  static const double p[] = { 0.5, 0.3, 0.2 }, finds[] = { 0.6, 0.8, 0.5 };
  static const double minutes[] = { 2, 3, 1 };
  static const guint sequence[] = { 0, 2, 1, 0, 2, 2, 0, 1, 2, 0, 2, 0 };
  guint looks[3] = { 0 };

  g_assert_cmpfloat_with_epsilon (rw_overlook_cost (3, p, finds, minutes, 10000), 6.766945245,
                                  1e-9);
  for (guint k = 0; k < G_N_ELEMENTS (sequence); k++)
    {
      const guint next = rw_overlook_next (3, p, finds, minutes, looks);

      g_assert_cmpuint (next, ==, sequence[k]);
      looks[next]++;
    }
}

static void
test_searches_are_never_beaten (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (107);

  for (guint round = 0; round < N_RANDOM; round++)
    {
      double p[PLACES], finds[PLACES], minutes[PLACES], sum = 0;

      for (guint i = 0; i < PLACES; i++)
        {
          sum += p[i] = -log (1 - g_rand_double (random));
          finds[i] = g_rand_double_range (random, 0.7, 1);
          minutes[i] = g_rand_double_range (random, 0.5, 10);
        }

      const double least = least_search (p, finds, minutes);

      g_assert_cmpfloat_with_epsilon (rw_overlook_cost (PLACES, p, finds, minutes, 10000), least,
                                      1e-9 * (sum + least));
    }
}

/* --- parts in series -------------------------------------------------------------------------- */

typedef struct
{
  guint  n;
  double p[MOST], minutes[MOST];
  double least;
} Series;

/* Chance that the k-th is the first bad one × minutes up to it. */
static double
inspection_cost (const Series *self,
                 const guint  *order)
{
  double minutes = 0, cost = 0, good = 1;

  for (guint k = 0; k < self->n; k++)
    {
      minutes += self->minutes[order[k]];
      cost += good * self->p[order[k]] * minutes;
      good *= 1 - self->p[order[k]];
    }
  return cost + good * minutes;
}

static void
visit_series (const guint *order,
              gpointer     data)
{
  Series *self = data;

  self->least = fmin (self->least, inspection_cost (self, order));
}

static void
test_worked_series (void)
{
  static const double p[] = { 0.10, 0.30, 0.05, 0.20 }, minutes[] = { 2, 9, 1, 3 };
  static const guint expected[] = { 3, 0, 2, 1 };
  guint order[4];

  rw_series_sort (4, p, minutes, order);
  for (guint k = 0; k < 4; k++)
    g_assert_cmpuint (order[k], ==, expected[k]);
  assert_same (rw_series_cost (4, p, minutes, order), 11.476);
}

static void
test_series_are_never_beaten (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (109);

  for (guint round = 0; round < N_RANDOM; round++)
    {
      Series it = { .n = (guint) g_rand_int_range (random, 1, MOST), .least = INFINITY };
      guint order[MOST];

      for (guint i = 0; i < it.n; i++)
        {
          it.p[i] = g_rand_int_range (random, 0, 10) == 0 ? 0 : g_rand_double (random);
          it.minutes[i] = random_minutes (random, 30);
        }
      visit_all (it.n, visit_series, &it);
      rw_series_sort (it.n, it.p, it.minutes, order);
      assert_same (rw_series_cost (it.n, it.p, it.minutes, order), it.least);
      assert_same (inspection_cost (&it, order), it.least);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan-rules/something to open: worked examples", test_worked_clusters);
  g_test_add_func ("/plan-rules/something to open: no order is cheaper",
                   test_clusters_are_never_beaten);
  g_test_add_func ("/plan-rules/somebody to call: worked examples", test_worked_call);
  g_test_add_func ("/plan-rules/somebody to call: no order and no stop is cheaper",
                   test_calls_are_never_beaten);
  g_test_add_func ("/plan-rules/looks that miss: a worked example", test_worked_search);
  g_test_add_func ("/plan-rules/looks that miss: no policy is cheaper",
                   test_searches_are_never_beaten);
  g_test_add_func ("/plan-rules/parts in series: a worked example", test_worked_series);
  g_test_add_func ("/plan-rules/parts in series: no order is cheaper",
                   test_series_are_never_beaten);
  return g_test_run ();
}
