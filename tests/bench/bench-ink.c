/* bench-ink.c: inking a million samples takes no longer than inking ten thousand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Times are machine-bound, so only ratios are judged: a million against ten thousand at most 3;
 * white noise, the stroker's worst case, against a smooth line at most 2.
 */
#include "config.h"

#include <math.h>

#include "chart-fixture.h"
#include "rw-chart.h"

#define ROUNDS 15

typedef double (*SignalFunc) (guint i, guint n, GRand *random);

static double
smooth (guint  i,
        guint  n,
        GRand *random)
{
  return 5.05 + 0.1 * sin (12.0 * i / n) + g_rand_double_range (random, -0.001, 0.001);
}

static double
noise (guint  i,
       guint  n,
       GRand *random)
{
  return g_rand_double_range (random, 4.85, 5.25);
}

/* @n samples over half an hour, whatever @n. */
static RwSession *
stream (guint      n,
        SignalFunc signal)
{
  RwSession *session = fixture_empty ();
  g_autoptr (GRand) random = g_rand_new_with_seed (1);

  for (guint i = 0; i < n; i++)
    fixture_sample (session, 1800.0 * i / n, "p5", RW_PLACE_BOARD, signal (i, n, random));
  return session;
}

static int
compare_times (gconstpointer a,
               gconstpointer b)
{
  const gint64 x = *(const gint64 *) a, y = *(const gint64 *) b;

  return x < y ? -1 : x > y;
}

/* Median microseconds of an ink that starts from a changed view. */
static double
ink_time (RwSession *session)
{
  g_autoptr (RwView) view = rw_view_new (session);
  g_autoptr (RwChart) chart = rw_chart_new (session, view);
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 1200, 600);
  cairo_t *cr = cairo_create (image);
  gint64 times[ROUNDS];

  for (guint i = 0; i < ROUNDS; i++)
    {
      rw_view_set_theme (view, (RwThemeId) (i % 2));

      const gint64 before = g_get_monotonic_time ();

      rw_chart_ink (chart, cr, 1200, 600, RW_INK_SCREEN);
      times[i] = g_get_monotonic_time () - before;
    }
  cairo_destroy (cr);
  cairo_surface_destroy (image);
  qsort (times, ROUNDS, sizeof times[0], compare_times);
  return (double) times[ROUNDS / 2];
}

static double
time_of (guint      n,
         SignalFunc signal)
{
  g_autoptr (RwSession) session = stream (n, signal);

  return ink_time (session);
}

static void
test_a_million_cost_as_much_as_ten_thousand (void)
{
  const double few = time_of (10000, smooth), many = time_of (1000000, smooth),
               rough = time_of (1000000, noise);

  g_print ("# ink: 1e4 %.2f ms, 1e6 %.2f ms, 1e6 of noise %.2f ms\n", few / 1e3, many / 1e3,
           rough / 1e3);
  g_assert_cmpfloat (many / few, <=, 3);
  g_assert_cmpfloat (rough / many, <=, 2);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bench/a-million-cost-as-much-as-ten-thousand",
                   test_a_million_cost_as_much_as_ten_thousand);
  return g_test_run ();
}
