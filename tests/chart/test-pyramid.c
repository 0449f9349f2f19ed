/* test-pyramid.c: the pyramid against doing it the long way.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Small reductions make every boundary come soon.
 */
#include "config.h"

#include <glib.h>
#include <math.h>

#include "rw-pyramid.h"

typedef struct
{
  double t, value;
} Plain;

/* @n samples, some of them holes, some at the same time as the one before. */
static GArray *
random_stream (GRand *random,
               guint  n)
{
  GArray *stream = g_array_new (FALSE, FALSE, sizeof (Plain));
  double t = 0;

  for (guint i = 0; i < n; i++)
    {
      const Plain sample = { t, g_rand_int_range (random, 0, 9) == 0
                                    ? (double) NAN
                                    : g_rand_double_range (random, -5, 5) };

      g_array_append_val (stream, sample);
      t += g_rand_int_range (random, 0, 5) == 0 ? 0 : g_rand_double (random);
    }
  return stream;
}

static RwPyramid *
build (const GArray *stream,
       guint         reduction,
       guint         n)
{
  RwPyramid *pyramid = rw_pyramid_new_full (reduction);

  for (guint i = 0; i < n; i++)
    rw_pyramid_push (pyramid, g_array_index (stream, Plain, i).t,
                     g_array_index (stream, Plain, i).value, 10 * i);
  return pyramid;
}

static gboolean
plain_range (const GArray *stream,
             guint         from,
             guint         to,
             double       *lo,
             double       *hi)
{
  *lo = *hi = NAN;
  for (guint i = from; i < to && i < stream->len; i++)
    {
      *lo = fmin (*lo, g_array_index (stream, Plain, i).value);
      *hi = fmax (*hi, g_array_index (stream, Plain, i).value);
    }
  return !isnan (*lo);
}

static void
assert_same (double a,
             double b)
{
  if (isnan (a) || isnan (b))
    g_assert_true (isnan (a) && isnan (b));
  else
    g_assert_cmpfloat_with_epsilon (a, b, 1e-9);
}

static void
assert_ranges (const RwPyramid *pyramid,
               const GArray    *stream,
               guint            n)
{
  for (guint from = 0; from <= n; from++)
    for (guint to = from; to <= n; to++)
      {
        double lo = NAN, hi = NAN, plain_lo, plain_hi;
        const gboolean any = rw_pyramid_range (pyramid, from, to, &lo, &hi);

        g_assert_cmpint (any, ==, plain_range (stream, from, to, &plain_lo, &plain_hi));
        assert_same (lo, plain_lo);
        assert_same (hi, plain_hi);
      }
}

static void
test_every_range_of_every_length (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (1);

  for (guint reduction = 2; reduction <= 5; reduction++)
    for (guint n = 0; n <= 70; n += 1 + n / 12)
      {
        g_autoptr (GArray) stream = random_stream (random, n);
        g_autoptr (RwPyramid) pyramid = build (stream, reduction, n);

        assert_ranges (pyramid, stream, n);
      }
}

static void
test_cut_and_grown_again_is_as_new (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (2);

  for (guint reduction = 2; reduction <= 5; reduction++)
    for (guint keep = 0; keep <= 40; keep++)
      {
        g_autoptr (GArray) first = random_stream (random, 40), second = random_stream (random, 40);
        g_autoptr (RwPyramid) pyramid = build (first, reduction, first->len);

        rw_pyramid_truncate (pyramid, keep);
        g_assert_cmpuint (rw_pyramid_get_n (pyramid), ==, keep);
        assert_ranges (pyramid, first, keep);
        g_array_set_size (first, keep);
        for (guint i = keep; i < second->len; i++)
          {
            const Plain sample = { 100 + i, g_array_index (second, Plain, i).value };

            g_array_append_val (first, sample);
            rw_pyramid_push (pyramid, sample.t, sample.value, 10 * i);
          }
        assert_ranges (pyramid, first, first->len);
      }
}

static void
test_part_is_as_new_at_every_length (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (3);

  for (guint reduction = 2; reduction <= 5; reduction++)
    {
      g_autoptr (GArray) stream = random_stream (random, 60);
      g_autoptr (RwPyramid) whole = build (stream, reduction, stream->len);
      g_autoptr (RwPyramid) part = rw_pyramid_new_part (whole);

      for (guint i = 0; i < 60; i++)
        {
          const guint n = (guint) g_rand_int_range (random, 0, 61);
          g_autoptr (RwPyramid) fresh = build (stream, reduction, n);
          RwSpan ours[40], theirs[40];

          rw_pyramid_see (part, n);
          g_assert_cmpuint (rw_pyramid_get_n (part), ==, n);
          assert_ranges (part, stream, n);
          g_assert_cmpuint (rw_pyramid_find_time (part, 1e9), ==, n);
          rw_pyramid_columns (part, -1, 0.7, 40, ours);
          rw_pyramid_columns (fresh, -1, 0.7, 40, theirs);
          for (guint k = 0; k < 40; k++)
            {
              assert_same (ours[k].lo, theirs[k].lo);
              assert_same (ours[k].hi, theirs[k].hi);
              g_assert_cmpint (ours[k].through, ==, theirs[k].through);
            }
        }
    }
}

/* Where the line through the samples meets [t0, t1]: every segment is cut to it. */
static void
plain_column (const GArray *stream,
              double        t0,
              double        t1,
              double       *lo,
              double       *hi)
{
  *lo = *hi = NAN;
  for (guint i = 0; i < stream->len; i++)
    {
      const Plain a = g_array_index (stream, Plain, i);

      if (a.t >= t0 && a.t < t1)
        {
          *lo = fmin (*lo, a.value);
          *hi = fmax (*hi, a.value);
        }
      if (i + 1 == stream->len)
        continue;

      const Plain b = g_array_index (stream, Plain, i + 1);
      const double from = MAX (a.t, t0), to = MIN (b.t, t1);

      if (isnan (a.value + b.value) || !(from < to))
        continue;

      const double v0 = a.value + (b.value - a.value) * (from - a.t) / (b.t - a.t);
      const double v1 = a.value + (b.value - a.value) * (to - a.t) / (b.t - a.t);

      *lo = fmin (*lo, fmin (v0, v1));
      *hi = fmax (*hi, fmax (v0, v1));
    }
}

static void
assert_columns (const RwPyramid *pyramid,
                const GArray    *stream,
                double           start,
                double           width,
                guint            n)
{
  g_autofree RwSpan *spans = g_new (RwSpan, n);

  rw_pyramid_columns (pyramid, start, width, n, spans);
  for (guint i = 0; i < n; i++)
    {
      double lo, hi;

      plain_column (stream, start + i * width, start + (i + 1) * width, &lo, &hi);
      assert_same (spans[i].lo, lo);
      assert_same (spans[i].hi, hi);
    }
}

static void
test_columns_are_the_line_cut_up (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (3);

  for (guint round = 0; round < 60; round++)
    {
      const guint n = (guint) g_rand_int_range (random, 0, 120);
      g_autoptr (GArray) stream = random_stream (random, n);
      g_autoptr (RwPyramid) pyramid = build (stream, 2 + round % 4, n);

      for (double width = 0.03; width < 60; width *= 2.1)
        assert_columns (pyramid, stream, g_rand_double_range (random, -5, 20), width, 37);
    }
}

static void
test_through_means_entered_and_left_at_the_ends (void)
{
  static const Plain rise[] = { { 0, 0 }, { 10, 10 } };
  g_autoptr (GArray) stream = g_array_new (FALSE, FALSE, sizeof (Plain));
  const Plain peak = { 5, 30 };
  RwSpan spans[10];

  g_array_append_vals (stream, rise, 2);

  g_autoptr (RwPyramid) straight = build (stream, 4, 2);

  rw_pyramid_columns (straight, 0, 1, 10, spans);
  for (guint i = 0; i < 9; i++)
    g_assert_true (spans[i].through);
  g_array_insert_val (stream, 1, peak);

  g_autoptr (RwPyramid) peaked = build (stream, 4, 3);

  rw_pyramid_columns (peaked, 0, 4, 3, spans);
  g_assert_true (spans[0].through);
  g_assert_false (spans[1].through);
  g_assert_cmpfloat (spans[1].hi, ==, 30);
}

static void
test_hole_breaks_the_line (void)
{
  g_autoptr (RwPyramid) pyramid = rw_pyramid_new ();
  RwSpan spans[10];

  rw_pyramid_push (pyramid, 0.5, 1, 0);
  rw_pyramid_push (pyramid, 2, NAN, 1);
  rw_pyramid_push (pyramid, 8.5, 2, 2);
  rw_pyramid_columns (pyramid, 0, 1, 10, spans);
  for (guint i = 0; i < 10; i++)
    g_assert_cmpint (isnan (spans[i].lo), ==, i != 0 && i != 8);
}

static void
test_time_never_runs_back (void)
{
  g_autoptr (RwPyramid) pyramid = rw_pyramid_new ();

  rw_pyramid_push (pyramid, 5, 1, 0);
  rw_pyramid_push (pyramid, 3, 2, 1);
  rw_pyramid_push (pyramid, NAN, 3, 2);
  rw_pyramid_push (pyramid, 9, INFINITY, 3);
  g_assert_cmpfloat (rw_pyramid_get_time (pyramid, 1), ==, 5);
  g_assert_cmpfloat (rw_pyramid_get_time (pyramid, 2), ==, 5);
  g_assert_true (isnan (rw_pyramid_get_value (pyramid, 3)));
}

static void
test_finding_by_time_and_tag (void)
{
  g_autoptr (RwPyramid) pyramid = rw_pyramid_new ();

  g_assert_cmpuint (rw_pyramid_find_time (pyramid, 0), ==, 0);
  for (guint i = 0; i < 100; i++)
    rw_pyramid_push (pyramid, i, i, 3 * i);
  g_assert_cmpuint (rw_pyramid_find_time (pyramid, -1), ==, 0);
  g_assert_cmpuint (rw_pyramid_find_time (pyramid, 41), ==, 41);
  g_assert_cmpuint (rw_pyramid_find_time (pyramid, 41.5), ==, 42);
  g_assert_cmpuint (rw_pyramid_find_time (pyramid, 1e9), ==, 100);
  g_assert_cmpuint (rw_pyramid_find_tag (pyramid, 123), ==, 41);
  g_assert_cmpuint (rw_pyramid_find_tag (pyramid, 124), ==, 42);
  g_assert_cmpuint (rw_pyramid_find_tag (pyramid, 1000), ==, 100);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pyramid/every-range-of-every-length", test_every_range_of_every_length);
  g_test_add_func ("/pyramid/cut-and-grown-again-is-as-new", test_cut_and_grown_again_is_as_new);
  g_test_add_func ("/pyramid/part-is-as-new-at-every-length", test_part_is_as_new_at_every_length);
  g_test_add_func ("/pyramid/columns-are-the-line-cut-up", test_columns_are_the_line_cut_up);
  g_test_add_func ("/pyramid/through-means-entered-and-left-at-the-ends",
                   test_through_means_entered_and_left_at_the_ends);
  g_test_add_func ("/pyramid/hole-breaks-the-line", test_hole_breaks_the_line);
  g_test_add_func ("/pyramid/time-never-runs-back", test_time_never_runs_back);
  g_test_add_func ("/pyramid/finding-by-time-and-tag", test_finding_by_time_and_tag);
  return g_test_run ();
}
