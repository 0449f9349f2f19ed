/* test-line-fit-laws.c: what holds for any line: symmetry, scales, zero errors, chances, and clear refusals.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "line-points.h"
#include "rw-distribution.h"

#define SEED 20260314
#define N_SETS 400

static RwLinePoint *
at (GArray *points,
    guint   i)
{
  return &g_array_index (points, RwLinePoint, i);
}

/* Any slope, any size of errors, every fourth point without error in x, every fourth in y, some correlated. */
static GArray *
any_points (GRand *random)
{
  static const double slopes[] = { 0.02, 1, -1, 2.4, -2.4, 40 };
  static const double sizes[] = { 1e-4, 1e-3, 0.01, 0.1, 0.5 };
  const double slope = slopes[g_rand_int_range (random, 0, G_N_ELEMENTS (slopes))];
  const double ux = sizes[g_rand_int_range (random, 0, G_N_ELEMENTS (sizes))];
  const double uy = fabs (slope) * sizes[g_rand_int_range (random, 0, G_N_ELEMENTS (sizes))];
  GArray *points = points_random (random, (guint) g_rand_int_range (random, 3, 12), 0.3, slope, ux, uy);

  for (guint i = 0; i < points->len; i++)
    switch (g_rand_int_range (random, 0, 4))
      {
      case 0:
        at (points, i)->ux = 0;
        break;
      case 1:
        at (points, i)->uy = 0;
        break;
      case 2:
        at (points, i)->cov = g_rand_double_range (random, -0.8, 0.8) * at (points, i)->ux * at (points, i)->uy;
        break;
      default:
        break;
      }
  return points;
}

/* S of the line of this slope that suits best, written as in the papers but from the first point on; good to
 * ROUNDING, since a difference of 1e-16 is divided by an error of 1e-6. */
#define ROUNDING 1e-8

static double
misfit (GArray *points,
        double  b)
{
  double weights = 0, x = 0, y = 0, sum = 0;

  for (int pass = 0; pass < 2; pass++)
    for (guint i = 0; i < points->len; i++)
      {
        const RwLinePoint *p = at (points, i);
        const double weight = 1 / (p->uy * p->uy + b * b * p->ux * p->ux - 2 * b * p->cov);

        if (pass == 0)
          {
            weights += weight;
            x += weight * (p->x - at (points, 0)->x);
            y += weight * (p->y - at (points, 0)->y);
          }
        else
          sum += weight * pow (p->y - at (points, 0)->y - y / weights
                               - b * (p->x - at (points, 0)->x - x / weights), 2);
      }
  return sum;
}

static void
assert_no_better (const RwLineFit *line,
                  GArray          *points,
                  double           slope)
{
  g_assert_cmpfloat (line->chi2, <=, misfit (points, slope) * (1 + ROUNDING));
}

static void
test_nothing_fits_better (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED);

  for (guint set = 0; set < N_SETS; set++)
    {
      g_autoptr (GArray) points = any_points (random);
      RwLineFit line;

      g_assert_cmpint (points_fit (points, &line), ==, RW_LINE_FIT_DONE);
      assert_close (line.chi2, misfit (points, line.slope), ROUNDING);
      for (int i = -89; i < 90; i++)
        assert_no_better (&line, points, line.slope + tan (i * G_PI / 180));
      for (double shift = 1e-5; shift < 2; shift *= 3)
        {
          assert_no_better (&line, points, line.slope * (1 + shift));
          assert_no_better (&line, points, line.slope * (1 - shift));
        }
    }
}

/* Three points that scatter more than they spread, in whole numbers: York's rule alone creeps or overshoots
 * for ever on one in a thousand. An upright line is an answer too. */
static void
test_scatter_beyond_spread (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED + 7);
  guint lines = 0;
  const guint n_sets = 20000;

  for (guint set = 0; set < n_sets; set++)
    {
      g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (RwLinePoint));
      RwLineFit line;

      for (int i = 0; i < 3; i++)
        {
          const RwLinePoint point = { i + g_rand_int_range (random, -2, 3), g_rand_int_range (random, -3, 4),
                                      g_rand_int_range (random, 1, 4), g_rand_int_range (random, 1, 4), 0 };

          g_array_append_val (points, point);
        }
      if (points_fit (points, &line) == RW_LINE_FIT_DONE)
        {
          lines++;
          for (int i = -89; i < 90; i += 10)
            assert_no_better (&line, points, tan (i * G_PI / 180));
        }
      else
        g_assert_true (points_fit (points, &line) == RW_LINE_FIT_VERTICAL
                       || points_fit (points, &line) == RW_LINE_FIT_NO_SPREAD);
    }
  g_assert_cmpuint (lines, >, n_sets / 2);
}

static void
test_exchange (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED + 1);

  for (guint set = 0; set < N_SETS; set++)
    {
      g_autoptr (GArray) points = any_points (random);
      RwLineFit line, exchanged;

      g_assert_cmpint (points_fit (points, &line), ==, RW_LINE_FIT_DONE);
      for (guint i = 0; i < points->len; i++)
        {
          const RwLinePoint p = *at (points, i);

          *at (points, i) = (RwLinePoint) { p.y, p.x, p.uy, p.ux, p.cov };
        }
      g_assert_cmpint (points_fit (points, &exchanged), ==, RW_LINE_FIT_DONE);

      const double b = line.slope;

      g_assert_cmpfloat_with_epsilon (exchanged.slope * b, 1, 1e-9);
      g_assert_cmpfloat_with_epsilon (exchanged.slope_u * b * b / line.slope_u, 1, 1e-7);
      g_assert_cmpfloat_with_epsilon (-exchanged.offset * b, line.offset,
                                      1e-9 * (fabs (line.offset) + fabs (6 * b)));
      assert_close (exchanged.chi2, line.chi2, 1e-7);
    }
}

static void
test_scales (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED + 2);

  for (guint set = 0; set < N_SETS; set++)
    {
      g_autoptr (GArray) points = any_points (random);
      const double kx = exp (g_rand_double_range (random, -9, 9));
      const double ky = -exp (g_rand_double_range (random, -9, 9));
      const double sx = g_rand_double_range (random, -3, 3);
      const double sy = g_rand_double_range (random, -3, 3);
      RwLineFit line, moved;

      g_assert_cmpint (points_fit (points, &line), ==, RW_LINE_FIT_DONE);
      for (guint i = 0; i < points->len; i++)
        {
          const RwLinePoint p = *at (points, i);

          *at (points, i) = (RwLinePoint) { kx * (p.x + sx), ky * (p.y + sy), kx * p.ux, -ky * p.uy,
                                            kx * ky * p.cov };
        }
      g_assert_cmpint (points_fit (points, &moved), ==, RW_LINE_FIT_DONE);
      assert_close (moved.slope, ky / kx * line.slope, 1e-9);
      assert_close (moved.slope_u, -ky / kx * line.slope_u, 1e-7);
      g_assert_cmpfloat_with_epsilon (moved.offset / ky, line.offset + sy - line.slope * sx,
                                      1e-8 * (1 + fabs (line.slope)));
      assert_close (moved.chi2, line.chi2, 1e-7);
    }
}

static void
test_one_factor_on_all_errors (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED + 3);

  for (guint set = 0; set < N_SETS; set++)
    {
      g_autoptr (GArray) points = any_points (random);
      RwLineFit line, doubled;

      g_assert_cmpint (points_fit (points, &line), ==, RW_LINE_FIT_DONE);
      for (guint i = 0; i < points->len; i++)
        {
          at (points, i)->ux *= 2;
          at (points, i)->uy *= 2;
          at (points, i)->cov *= 4;
        }
      g_assert_cmpint (points_fit (points, &doubled), ==, RW_LINE_FIT_DONE);
      assert_close (doubled.slope, line.slope, 1e-9);
      assert_close (doubled.chi2, line.chi2 / 4, 1e-7);
      assert_close (doubled.slope_u, 2 * line.slope_u, 1e-7);
      assert_close (doubled.offset_u, 2 * line.offset_u, 1e-7);
    }
}

/* A large common offset of all readings costs no digits but those that the numbers themselves have lost. */
static void
test_far_from_zero (void)
{
  RwLinePoint points[7];
  RwLineFit line;

  for (guint i = 0; i < G_N_ELEMENTS (points); i++)
    points[i] = (RwLinePoint) { 1048576 + i / 1024.0, 4194304 - i / 512.0 + (i % 2) / 65536.0, 1e-5, 1e-5, 0 };
  g_assert_cmpint (rw_line_fit_plain (points, G_N_ELEMENTS (points), FALSE, &line), ==, RW_LINE_FIT_DONE);
  /* Symmetric about the middle point, so the zigzag does not turn the line. */
  const double zigzag = 12.0 / 7 / 65536 / 65536, xx = 28.0 / 1024 / 1024, xy = -2 * xx;

  assert_close (line.slope, -2, 1e-12);
  assert_close (line.chi2, zigzag, 1e-9);

  /* Equal errors: the closed form; the zigzag makes it a little steeper. */
  const double more = 4 * xx + zigzag - xx;

  g_assert_cmpint (rw_line_fit (points, G_N_ELEMENTS (points), &line), ==, RW_LINE_FIT_DONE);
  assert_close (line.slope, (more + sqrt (more * more + 4 * xy * xy)) / (2 * xy), 1e-12);
}

/* Standard uncertainties mean what they say: over many sets 95.45 % of the slopes are within two of them. */
static void
test_uncertainties_hold (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED + 4);
  guint slopes = 0, values = 0, misfits = 0;
  const guint n_sets = 4000;

  for (guint set = 0; set < n_sets; set++)
    {
      g_autoptr (GArray) points = points_random (random, 6, 0.2, 2.4, 0.01, 0.03);
      RwLineFit line;
      double u;

      g_assert_cmpint (points_fit (points, &line), ==, RW_LINE_FIT_DONE);
      slopes += fabs (line.slope - 2.4) < 2 * line.slope_u;
      values += fabs (rw_line_fit_value (&line, 5.6, 0, &u) - (0.2 + 2.4 * 5.6)) < 2 * u;
      misfits += line.p < 0.1;
    }
  g_assert_cmpfloat_with_epsilon (slopes / (double) n_sets, 0.9545, 0.012);
  g_assert_cmpfloat_with_epsilon (values / (double) n_sets, 0.9545, 0.012);
  g_assert_cmpfloat_with_epsilon (misfits / (double) n_sets, 0.1, 0.018);
}

static void
test_meets_by_its_definition (void)
{
  const RwLinePoint points[] = {
    { 4.8, 11.7, 0, 0.1, 0 }, { 5.0, 12.3, 0, 0.1, 0 }, { 5.1, 12.4, 0, 0.1, 0 }, { 5.3, 13.0, 0, 0.1, 0 },
  };
  const double k = 1.96, y = 13.2, u_y = 0.05;
  RwLineFit line;
  double ends[2], u;

  g_assert_cmpint (rw_line_fit (points, G_N_ELEMENTS (points), &line), ==, RW_LINE_FIT_DONE);
  g_assert_true (rw_line_fit_meets (&line, y, u_y, k, &ends[0], &ends[1]));
  g_assert_cmpfloat (ends[0], <, rw_line_fit_x_at (&line, y, u_y, NULL));
  g_assert_cmpfloat (ends[1], >, rw_line_fit_x_at (&line, y, u_y, NULL));
  for (guint i = 0; i < 2; i++)
    {
      const double off = fabs (rw_line_fit_value (&line, ends[i], 0, &u) - y);

      assert_close (off, k * hypot (u, u_y), 1e-10);
    }
  /* The side away from the readings is the longer one; x ± k u would make them equal. */
  g_assert_cmpfloat (ends[1] - rw_line_fit_x_at (&line, y, u_y, NULL), >,
                     1.1 * (rw_line_fit_x_at (&line, y, u_y, NULL) - ends[0]));
}

/* Where the slope is only three times its error, Fieller's interval still holds the truth as often as it
 * says; one without end holds it too. */
static void
test_meets_holds (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED + 5);
  guint held = 0, endless = 0;
  const guint n_sets = 4000;

  for (guint set = 0; set < n_sets; set++)
    {
      g_autoptr (GArray) points = points_random (random, 5, 1, 0.5, 0, 0.1);
      RwLineFit line;
      double lo, hi;

      g_assert_cmpint (points_fit (points, &line), ==, RW_LINE_FIT_DONE);
      endless += !rw_line_fit_meets (&line, 1 + 0.5 * 5.7, 0, 1.959964, &lo, &hi);
      held += lo <= 5.7 && 5.7 <= hi;
    }
  g_assert_cmpfloat (endless, >, 0.1 * n_sets);
  g_assert_cmpfloat (endless, <, 0.9 * n_sets);
  g_assert_cmpfloat (held / (double) n_sets, >=, 0.95 - 0.011);
}

static void
test_still_rail_has_no_meeting (void)
{
  const RwLinePoint points[] = {
    { 4.8, 5.01, 0.01, 0.01, 0 }, { 5.0, 5.00, 0.01, 0.01, 0 }, { 5.2, 5.01, 0.01, 0.01, 0 },
  };
  RwLineFit line;
  double lo, hi;

  g_assert_cmpint (rw_line_fit (points, G_N_ELEMENTS (points), &line), ==, RW_LINE_FIT_DONE);
  g_assert_cmpfloat_with_epsilon (line.slope, 0, 1e-12);
  g_assert_false (rw_line_fit_meets (&line, 4.75, 0, 1.96, &lo, &hi));
  g_assert_true (isinf (lo) && lo < 0 && isinf (hi) && hi > 0);
}

static gboolean
is_curved (GArray     *points,
           RwLineBend *bend)
{
  return rw_line_fit_is_curved ((const RwLinePoint *) (gpointer) points->data, points->len, 0.05, bend);
}

/* Straight truth is called curved as often as the level says, a bent one nearly always. */
static void
test_curved_is_as_rare_as_its_level (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED + 6);
  const guint n_sets = 4000;
  guint known = 0, wide = 0, unknown = 0, bent = 0, bent_unknown = 0;
  RwLineBend bend;

  for (guint set = 0; set < n_sets; set++)
    {
      g_autoptr (GArray) points = points_random (random, 8, 0.2, 2.4, 0.01, 0.03);
      g_autoptr (GArray) exact = points_random (random, 8, 0.2, 2.4, 0, 0);
      g_autoptr (GArray) far_off = points_random (random, 8, 0.2, 2.4, 0.15, 0.05);

      known += is_curved (points, NULL);
      wide += is_curved (far_off, NULL); /* by adjusted points; by the measured ones 0.02 */
      for (guint i = 0; i < points->len; i++)
        at (points, i)->y += 2 * pow (at (points, i)->x - 5, 2);
      bent += is_curved (points, NULL);
      for (guint i = 0; i < exact->len; i++)
        at (exact, i)->y += 0.03 * random_normal (random);
      unknown += is_curved (exact, &bend);
      g_assert_cmpuint (bend.dof, ==, 5);
      for (guint i = 0; i < exact->len; i++)
        at (exact, i)->y += 2 * pow (at (exact, i)->x - 5, 2);
      bent_unknown += is_curved (exact, NULL);
    }
  g_assert_cmpfloat_with_epsilon (known / (double) n_sets, 0.05, 0.012);
  g_assert_cmpfloat_with_epsilon (wide / (double) n_sets, 0.05, 0.012);
  g_assert_cmpfloat_with_epsilon (unknown / (double) n_sets, 0.05, 0.012);
  g_assert_cmpfloat (bent, >, 0.9 * n_sets);
  g_assert_cmpfloat (bent_unknown, >, 0.9 * n_sets);
}

/* With x exact the fall of χ² is that of a full fit with a square, and doubled errors quarter it. */
static void
test_bend_of_a_parabola (void)
{
  RwLinePoint points[] = {
    { -2, 4, 0, 0.5, 0 }, { -1, 1, 0, 0.5, 0 }, { 0, 0, 0, 0.5, 0 }, { 1, 1, 0, 0.5, 0 }, { 2, 4, 0, 0.5, 0 },
  };
  RwLineFit line;
  RwLineBend bend;

  g_assert_cmpint (rw_line_fit (points, 5, &line), ==, RW_LINE_FIT_DONE);
  g_assert_true (rw_line_fit_is_curved (points, 5, 0.01, &bend));
  assert_close (bend.square, 1, 1e-12);
  assert_close (bend.square_u, 0.5 / sqrt (14), 1e-12); /* Σ(x² − 2)² = 14 */
  assert_close (bend.statistic, line.chi2, 1e-12);      /* the parabola itself leaves nothing */
  assert_close (bend.p, rw_chi2_survival (56, 1), 1e-9);
  g_assert_cmpuint (bend.dof, ==, 0);

  for (guint i = 0; i < 5; i++)
    points[i].uy = 1;
  rw_line_fit_is_curved (points, 5, 0.01, &bend);
  assert_close (bend.statistic, 14, 1e-12);

  for (guint i = 0; i < 5; i++)
    points[i].uy = 0;
  g_assert_true (rw_line_fit_is_curved (points, 5, 0.01, &bend)); /* nothing left over at all */
  g_assert_cmpfloat (bend.p, <, 1e-20);
}

static void
assert_nothing_told (const RwLinePoint *points,
                     guint              n)
{
  RwLineBend bend;

  g_assert_false (rw_line_fit_is_curved (points, n, 0.5, &bend));
  g_assert_cmpfloat (bend.p, ==, 1);
  g_assert_true (isnan (bend.statistic) && isnan (bend.square) && isnan (bend.square_u));
}

static void
test_too_little_to_be_curved (void)
{
  const RwLinePoint two_places[] = {
    { 1, 1, 0, 0.1, 0 }, { 1, 1.3, 0, 0.1, 0 }, { 2, 2, 0, 0.1, 0 }, { 2, 2.4, 0, 0.1, 0 }, { 1, 0.9, 0, 0.1, 0 },
  };
  const RwLinePoint three_unknown[] = { { 1, 1, 0, 0, 0 }, { 2, 2, 0, 0, 0 }, { 3, 5, 0, 0, 0 } };
  const RwLinePoint straight[] = {
    { 0.1, 0.3, 0, 0, 0 }, { 0.2, 0.6, 0, 0, 0 }, { 0.3, 0.9, 0, 0, 0 }, { 0.4, 1.2, 0, 0, 0 }, { 0.7, 2.1, 0, 0, 0 },
  };
  const RwLinePoint upright[] = { { 1, 1, 0, 0.1, 0 }, { 1, 2, 0, 0.1, 0 }, { 1, 3, 0, 0.1, 0 } };

  assert_nothing_told (two_places, 5);
  assert_nothing_told (three_unknown, 3);
  assert_nothing_told (straight, 5); /* what is left is rounding */
  assert_nothing_told (upright, 3);
  assert_nothing_told (NULL, 0);
}

static void
assert_refused (const RwLinePoint *points,
                guint              n,
                RwLineFitResult    why,
                RwLineFitResult    why_plain)
{
  RwLineFit line = { 0 };

  g_assert_cmpint (rw_line_fit (points, n, &line), ==, why);
  if (why != RW_LINE_FIT_DONE)
    g_assert_true (isnan (line.slope) && isnan (line.offset_u) && isnan (line.p) && line.n == 0);
  g_assert_cmpint (rw_line_fit_plain (points, n, FALSE, &line), ==, why_plain);
  if (why_plain != RW_LINE_FIT_DONE)
    g_assert_true (isnan (line.slope) && isnan (line.offset_u) && isnan (line.sd) && line.n == 0);
}

static void
test_refusals (void)
{
  const RwLinePoint upright[] = { { 5, 1, 0.1, 0.1, 0 }, { 5, 2, 0.1, 0.1, 0 }, { 5, 3, 0, 0.1, 0 } };
  const RwLinePoint one_place[] = { { 5, 1, 0.1, 0.1, 0 }, { 5, 1, 0.1, 0.1, 0 } };
  const RwLinePoint exact[] = { { 1, 1, 0.1, 0.1, 0 }, { 2, 2, 0, 0, 0 }, { 3, 4, 0.1, 0.1, 0 } };
  const RwLinePoint no_number[] = { { 1, 1, 0.1, 0.1, 0 }, { NAN, 2, 0.1, 0.1, 0 }, { 3, 4, 0.1, 0.1, 0 } };
  const RwLinePoint below_zero[] = { { 1, 1, 0.1, 0.1, 0 }, { 2, 2, -0.1, 0.1, 0 } };
  const RwLinePoint endless[] = { { 1, 1, 0.1, 0.1, 0 }, { 2, 2, INFINITY, 0.1, 0 } };
  const RwLinePoint too_tied[] = { { 1, 1, 0.1, 0.1, 0 }, { 2, 2, 0.1, 0.1, 0.02 } };
  const RwLinePoint too_wide[] = { { 1.7e308, 1, 1, 1, 0 }, { -1.7e308, 2, 1, 1, 0 } };
  /* Symmetric about an upright line, and it fits better than the flat one. */
  const RwLinePoint upright_by_fit[] = { { -1, 0, 3, 1, 0 }, { 1, 0, 3, 1, 0 }, { 0, 9, 3, 1, 0 } };
  /* Errors that lie along the line altogether: every direction fits alike. */
  const RwLinePoint along[] = { { 0, 0, 1, 1, 1 }, { 1, 1, 1, 1, 1 }, { 2, 2, 1, 1, 1 } };

  assert_refused (NULL, 0, RW_LINE_FIT_TOO_FEW, RW_LINE_FIT_TOO_FEW);
  assert_refused (upright, 1, RW_LINE_FIT_TOO_FEW, RW_LINE_FIT_TOO_FEW);
  assert_refused (upright, 3, RW_LINE_FIT_VERTICAL, RW_LINE_FIT_VERTICAL);
  assert_refused (one_place, 2, RW_LINE_FIT_NO_SPREAD, RW_LINE_FIT_NO_SPREAD);
  assert_refused (exact, 3, RW_LINE_FIT_NO_ERROR, RW_LINE_FIT_DONE);
  assert_refused (no_number, 3, RW_LINE_FIT_BAD_POINT, RW_LINE_FIT_BAD_POINT);
  assert_refused (below_zero, 2, RW_LINE_FIT_BAD_POINT, RW_LINE_FIT_DONE);
  assert_refused (endless, 2, RW_LINE_FIT_BAD_POINT, RW_LINE_FIT_DONE);
  assert_refused (too_tied, 2, RW_LINE_FIT_BAD_POINT, RW_LINE_FIT_DONE);
  assert_refused (too_wide, 2, RW_LINE_FIT_BAD_POINT, RW_LINE_FIT_BAD_POINT);
  assert_refused (upright_by_fit, 3, RW_LINE_FIT_VERTICAL, RW_LINE_FIT_DONE);
  assert_refused (along, 3, RW_LINE_FIT_NOT_CONVERGED, RW_LINE_FIT_DONE);
}

static void
test_two_points (void)
{
  const RwLinePoint points[] = { { 1, 3, 0.1, 0.1, 0 }, { 3, 7, 0.1, 0, 0 } };
  RwLineFit line;

  g_assert_cmpint (rw_line_fit (points, 2, &line), ==, RW_LINE_FIT_DONE);
  assert_close (line.slope, 2, 1e-13);
  assert_close (line.offset, 1, 1e-12);
  /* (y2 − y1)/(x2 − x1), errors carried through. */
  assert_close (line.slope_u, sqrt (0.1 * 0.1 + 4 * 0.1 * 0.1 + 4 * 0.1 * 0.1) / 2, 1e-12);
  g_assert_cmpuint (line.dof, ==, 0);
  g_assert_cmpfloat (line.p, ==, 1);

  g_assert_cmpint (rw_line_fit_plain (points, 2, FALSE, &line), ==, RW_LINE_FIT_DONE);
  assert_close (line.slope, 2, 1e-13);
  g_assert_true (isnan (line.slope_u) && isnan (line.sd)); /* nothing left over to tell errors from */
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/core/line-fit/no-other-slope-fits-better", test_nothing_fits_better);
  g_test_add_func ("/core/line-fit/scatter-beyond-the-spread-is-fitted", test_scatter_beyond_spread);
  g_test_add_func ("/core/line-fit/exchanged-axes-give-the-same-line", test_exchange);
  g_test_add_func ("/core/line-fit/shift-and-scale-move-the-line-along", test_scales);
  g_test_add_func ("/core/line-fit/one-factor-on-all-errors-leaves-the-slope", test_one_factor_on_all_errors);
  g_test_add_func ("/core/line-fit/far-from-zero-no-digits-are-lost", test_far_from_zero);
  g_test_add_func ("/core/line-fit/uncertainties-hold-as-often-as-they-say", test_uncertainties_hold);
  g_test_add_func ("/core/line-fit/meets-ends-where-fieller-says", test_meets_by_its_definition);
  g_test_add_func ("/core/line-fit/meets-holds-the-truth-of-a-weak-slope", test_meets_holds);
  g_test_add_func ("/core/line-fit/a-rail-that-stands-still-meets-nothing", test_still_rail_has_no_meeting);
  g_test_add_func ("/core/line-fit/straight-is-called-curved-as-rarely-as-the-level",
                   test_curved_is_as_rare_as_its_level);
  g_test_add_func ("/core/line-fit/a-parabola-is-all-bend", test_bend_of_a_parabola);
  g_test_add_func ("/core/line-fit/too-little-to-be-curved", test_too_little_to_be_curved);
  g_test_add_func ("/core/line-fit/no-line-has-a-reason", test_refusals);
  g_test_add_func ("/core/line-fit/two-points-are-a-line-without-a-check", test_two_points);
  return g_test_run ();
}
