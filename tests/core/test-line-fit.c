/* test-line-fit.c: the line through published sets.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * York (1966) on Pearson's points, ISO/TS 28037, GUM H.3, DIN 32645, the linear sets of the NIST StRD and
 * textbook predictions; each file of data/ says where its numbers come from.
 */
#include "config.h"

#include <math.h>

#include "line-points.h"
#include "rw-distribution.h"

#define SHARE 1e-12 /* tighter than the files ask */

static double
computed (JsonNode   *data,
          const char *key)
{
  return fixture_number (data, "computed", key, NULL);
}

/* A number of a list of @object. */
static double
listed (JsonObject *object,
        const char *key,
        guint       i)
{
  return json_array_get_double_element (json_object_get_array_member (object, key), i);
}

static JsonObject *
computed_object (JsonNode *data)
{
  return json_object_get_object_member (json_node_get_object (data), "computed");
}

static void
assert_york (JsonNode        *data,
             const RwLineFit *line)
{
  assert_close (line->offset, computed (data, "intercept"), SHARE);
  assert_close (line->slope, computed (data, "slope"), SHARE);
  assert_close (line->offset_u, computed (data, "se_intercept"), SHARE);
  assert_close (line->slope_u, computed (data, "se_slope"), SHARE);
  assert_close (line->cov, computed (data, "cov"), SHARE);
  assert_close (line->chi2, computed (data, "S"), SHARE);
  assert_close (line->dof, computed (data, "dof"), 0);
  assert_close (line->p, computed (data, "p_chi2"), SHARE);
}

/* Weights to standard uncertainties; with @exact_x or @exact_y that one is 0. */
static GArray *
york_points (JsonNode *data,
             gboolean  exact_x,
             gboolean  exact_y)
{
  GArray *points = points_new (data, "x", "y", "wx", "wy");

  for (guint i = 0; i < points->len; i++)
    {
      RwLinePoint *point = &g_array_index (points, RwLinePoint, i);

      point->ux = exact_x ? 0 : 1 / sqrt (point->ux);
      point->uy = exact_y ? 0 : 1 / sqrt (point->uy);
    }
  return points;
}

static void
exchange (GArray *points)
{
  for (guint i = 0; i < points->len; i++)
    {
      RwLinePoint *point = &g_array_index (points, RwLinePoint, i);

      *point = (RwLinePoint) { point->y, point->x, point->uy, point->ux, point->cov };
    }
}

static void
test_york (void)
{
  g_autoptr (JsonNode) data = fixture_refdata ("york_pearson_1901_york_1966.json");
  g_autoptr (GArray) points = york_points (data, FALSE, FALSE);
  RwLineFit line;

  g_assert_cmpint (points_fit (points, &line), ==, RW_LINE_FIT_DONE);
  assert_york (data, &line);
  assert_close (line.offset, fixture_number (data, "expected_published", "intercept", NULL), 1e-12);
  assert_close (line.slope, fixture_number (data, "expected_published", "slope", NULL), 1e-12);

  const double chi2 = line.chi2;

  exchange (points);
  g_assert_cmpint (points_fit (points, &line), ==, RW_LINE_FIT_DONE);
  assert_close (line.slope, fixture_number (data, "also", "swapped_xy_slope", NULL), SHARE);
  assert_close (line.offset, fixture_number (data, "also", "swapped_xy_intercept", NULL), SHARE);
  assert_close (line.chi2, chi2, SHARE);
}

static void
test_york_exact (void)
{
  g_autoptr (JsonNode) data = fixture_refdata ("york_pearson_1901_york_1966.json");
  g_autoptr (GArray) exact_x = york_points (data, TRUE, FALSE);
  g_autoptr (GArray) exact_y = york_points (data, FALSE, TRUE);
  RwLineFit line;

  g_assert_cmpint (points_fit (exact_x, &line), ==, RW_LINE_FIT_DONE);
  assert_close (line.offset, fixture_number (data, "also", "x_exact_weighted_y", "intercept", NULL), SHARE);
  assert_close (line.slope, fixture_number (data, "also", "x_exact_weighted_y", "slope", NULL), SHARE);
  assert_close (line.offset_u, fixture_number (data, "also", "x_exact_weighted_y", "se_intercept", NULL),
                SHARE);
  assert_close (line.slope_u, fixture_number (data, "also", "x_exact_weighted_y", "se_slope", NULL), SHARE);
  assert_close (line.chi2, fixture_number (data, "also", "x_exact_weighted_y", "S", NULL), SHARE);

  g_assert_cmpint (points_fit (exact_y, &line), ==, RW_LINE_FIT_DONE);
  assert_close (line.offset, fixture_number (data, "also", "y_exact_weighted_x", "intercept", NULL), SHARE);
  assert_close (line.slope, fixture_number (data, "also", "y_exact_weighted_x", "slope", NULL), SHARE);
  assert_close (line.chi2, fixture_number (data, "also", "y_exact_weighted_x", "S", NULL), SHARE);

  g_assert_cmpint (points_fit_plain (exact_x, FALSE, &line), ==, RW_LINE_FIT_DONE);
  assert_close (line.offset, fixture_number (data, "also", "ols_y_on_x", "intercept", NULL), SHARE);
  assert_close (line.slope, fixture_number (data, "also", "ols_y_on_x", "slope", NULL), SHARE);
}

static void
test_iso_known (gconstpointer name)
{
  g_autoptr (JsonNode) data = fixture_refdata (name);
  g_autoptr (GArray) points = points_new (data, "x", "y", "ux", "uy");
  RwLineFit line;

  g_assert_cmpint (points_fit (points, &line), ==, RW_LINE_FIT_DONE);
  assert_york (data, &line);
}

/* The lines of clause 6 used both ways. */
static void
test_iso_used (void)
{
  g_autoptr (JsonNode) equal = fixture_refdata ("iso28037_clause6_equal.json");
  g_autoptr (JsonNode) unequal = fixture_refdata ("iso28037_clause6_unequal.json");
  g_autoptr (GArray) equal_points = points_new (equal, "x", "y", "ux", "uy");
  g_autoptr (GArray) unequal_points = points_new (unequal, "x", "y", "ux", "uy");
  RwLineFit line;
  double u;

  g_assert_cmpint (points_fit (equal_points, &line), ==, RW_LINE_FIT_DONE);
  assert_close (rw_line_fit_x_at (&line, 10.5, 0.5, &u),
                fixture_number (equal, "also", "inverse", "x", NULL), SHARE);
  assert_close (u, fixture_number (equal, "also", "inverse", "u_x", NULL), SHARE);
  assert_close (rw_line_fit_value (&line, 3.5, 0.2, &u),
                fixture_number (equal, "also", "forward", "y", NULL), SHARE);
  assert_close (u, fixture_number (equal, "also", "forward", "u_y", NULL), SHARE);

  g_assert_cmpint (points_fit (unequal_points, &line), ==, RW_LINE_FIT_DONE);
  assert_close (rw_line_fit_x_at (&line, 10.5, 1, &u),
                fixture_number (unequal, "also", "inverse", "x", NULL), SHARE);
  assert_close (u, fixture_number (unequal, "also", "inverse", "u_x", NULL), SHARE);
}

static void
test_iso_unknown (void)
{
  g_autoptr (JsonNode) data = fixture_refdata ("iso28037_annexE_unknown_sigma.json");
  g_autoptr (GArray) points = points_new (data, "x", "y", NULL, NULL);
  RwLineFit line;
  double u;

  g_assert_cmpint (points_fit_plain (points, FALSE, &line), ==, RW_LINE_FIT_DONE);
  assert_close (line.offset, computed (data, "intercept"), SHARE);
  assert_close (line.slope, computed (data, "slope"), SHARE);
  assert_close (line.offset_u, computed (data, "se_intercept"), SHARE);
  assert_close (line.slope_u, computed (data, "se_slope"), SHARE);
  assert_close (line.cov, computed (data, "cov"), SHARE);
  assert_close (line.chi2, computed (data, "rss"), SHARE);
  assert_close (line.sd, computed (data, "s"), SHARE);
  assert_close (rw_line_fit_value (&line, 3.5, 0, &u),
                fixture_number (data, "computed", "mean_response_at_3_5", "y", NULL), SHARE);
  assert_close (u, fixture_number (data, "computed", "mean_response_at_3_5", "u", NULL), SHARE);
  assert_close (hypot (u, line.sd),
                fixture_number (data, "computed", "single_response_at_3_5", "u", NULL), SHARE);
  assert_close (rw_line_fit_x_at (&line, 10.5, line.sd, &u),
                fixture_number (data, "computed", "inverse_single_y_10_5", "x", NULL), SHARE);
  assert_close (u, fixture_number (data, "computed", "inverse_single_y_10_5", "u", NULL), SHARE);
}

static void
test_deming (void)
{
  g_autoptr (JsonNode) data = fixture_refdata ("deming_pearson_equal_errors.json");
  g_autoptr (GArray) points = points_new (data, "x", "y", NULL, NULL);
  JsonArray *cases = json_object_get_array_member (computed_object (data), "cases");

  for (guint i = 0; i < json_array_get_length (cases); i++)
    {
      JsonNode *one = json_array_get_element (cases, i);
      RwLineFit line;

      for (guint k = 0; k < points->len; k++)
        {
          g_array_index (points, RwLinePoint, k).ux = fixture_number (one, "sd_x", NULL);
          g_array_index (points, RwLinePoint, k).uy = fixture_number (one, "sd_y", NULL);
        }
      g_assert_cmpint (points_fit (points, &line), ==, RW_LINE_FIT_DONE);
      assert_close (line.slope, fixture_number (one, "slope", NULL), SHARE);
      assert_close (line.offset, fixture_number (one, "intercept", NULL), SHARE);
      assert_close (line.slope_u, fixture_number (one, "se_slope", NULL), SHARE);
      assert_close (line.offset_u, fixture_number (one, "se_intercept", NULL), SHARE);
      assert_close (line.chi2, fixture_number (one, "S", NULL), SHARE);
    }
}

/* The temperature counts from t0, so that the printed covariance comes out. */
static void
test_gum (void)
{
  g_autoptr (JsonNode) data = fixture_refdata ("gum_h3_thermometer_line.json");
  g_autoptr (GArray) points = points_new (data, "t", "b", NULL, NULL);
  const double t0 = fixture_number (data, "inputs", "t0", NULL);
  const double share = fixture_number (data, "tolerance", "rel", NULL);
  RwLineFit line;
  double u;

  for (guint i = 0; i < points->len; i++)
    g_array_index (points, RwLinePoint, i).x -= t0;
  g_assert_cmpint (points_fit_plain (points, FALSE, &line), ==, RW_LINE_FIT_DONE);
  assert_close (line.offset, computed (data, "y1"), share);
  assert_close (line.slope, computed (data, "y2"), share);
  assert_close (line.offset_u, computed (data, "u_y1"), share);
  assert_close (line.slope_u, computed (data, "u_y2"), share);
  assert_close (line.cov / line.offset_u / line.slope_u, computed (data, "r"), share);
  assert_close (line.sd, computed (data, "s"), share);
  g_assert_cmpuint (line.dof, ==, 9);

  const double b_30 = rw_line_fit_value (&line, 30 - t0, 0, &u);
  const double t = rw_t_half_width (0.95, line.dof);

  assert_close (b_30, computed (data, "b_30"), share);
  assert_close (u, computed (data, "u_b_30"), share);
  assert_close (hypot (u, line.sd), computed (data, "u_single_new_reading_30"), share);
  assert_close (b_30 - t * u, listed (computed_object (data), "ci95_b30", 0), share);
  assert_close (b_30 + t * hypot (u, line.sd), listed (computed_object (data), "pi95_b30", 1), share);
}

/* Inverse prediction, and the least x that can be told from none. */
static void
test_din (void)
{
  g_autoptr (JsonNode) data = fixture_refdata ("din32645_calibration.json");
  g_autoptr (GArray) points = points_new (data, "x", "y", NULL, NULL);
  RwLineFit line;
  double u;

  g_assert_cmpint (points_fit_plain (points, FALSE, &line), ==, RW_LINE_FIT_DONE);
  assert_close (line.offset, computed (data, "intercept"), SHARE);
  assert_close (line.slope, computed (data, "slope"), SHARE);
  assert_close (line.sd, computed (data, "s"), SHARE);
  assert_close (rw_line_fit_x_at (&line, fixture_number (data, "inputs", "y0", NULL), line.sd, &u),
                computed (data, "x0"), 1e-11);
  assert_close (u, computed (data, "se"), 1e-11);
  assert_close (u * rw_t_half_width (0.99, line.dof), computed (data, "half99"), 1e-11);
  assert_close (rw_t_half_width (0.98, line.dof) * hypot (line.sd, line.offset_u) / line.slope,
                computed (data, "critical_value"), 1e-11);
}

static void
assert_prediction (const RwLineFit *line,
                   JsonNode        *at)
{
  const double t = rw_t_half_width (0.95, line->dof);
  double u;
  const double y = rw_line_fit_value (line, fixture_number (at, "x0", NULL), 0, &u);

  assert_close (y, fixture_number (at, "fit", NULL), SHARE);
  assert_close (u, fixture_number (at, "se_mean", NULL), SHARE);
  assert_close (hypot (u, line->sd), fixture_number (at, "se_single", NULL), SHARE);
  for (guint side = 0; side < 2; side++)
    {
      const double sign = side == 0 ? -1 : 1;

      assert_close (y + sign * t * u, listed (json_node_get_object (at), "ci", side), SHARE);
      assert_close (y + sign * t * hypot (u, line->sd), listed (json_node_get_object (at), "pi", side),
                    SHARE);
    }
}

static void
test_predictions (void)
{
  g_autoptr (JsonNode) cod = fixture_refdata ("walpole_cod_prediction.json");
  g_autoptr (JsonNode) cars = fixture_refdata ("cars_prediction.json");
  g_autoptr (GArray) cod_points = points_new (cod, "x", "y", NULL, NULL);
  g_autoptr (GArray) cars_points = points_new (cars, "x", "y", NULL, NULL);
  const char *const speeds[] = { "12", "19", "21", "24" };
  RwLineFit line;
  double u;

  g_assert_cmpint (points_fit_plain (cod_points, FALSE, &line), ==, RW_LINE_FIT_DONE);
  assert_close (line.offset, computed (cod, "intercept"), SHARE);
  assert_close (line.slope, computed (cod, "slope"), SHARE);
  assert_close (line.sd, computed (cod, "s"), SHARE);
  assert_prediction (&line, json_object_get_member (computed_object (cod), "at20"));
  assert_prediction (&line, json_object_get_member (computed_object (cod), "at21_5"));

  const double x = fixture_number (cod, "computed", "inverse_3_readings", "x", NULL);
  const double y = rw_line_fit_value (&line, x, 0, NULL);

  assert_close (rw_line_fit_x_at (&line, y, line.sd / sqrt (3), &u), x, SHARE);
  assert_close (u, fixture_number (cod, "computed", "inverse_3_readings", "se", NULL), SHARE);

  g_assert_cmpint (points_fit_plain (cars_points, FALSE, &line), ==, RW_LINE_FIT_DONE);
  assert_close (line.offset, fixture_number (cars, "fit", "intercept", NULL), SHARE);
  assert_close (line.slope, fixture_number (cars, "fit", "slope", NULL), SHARE);
  for (guint i = 0; i < G_N_ELEMENTS (speeds); i++)
    assert_prediction (&line, json_object_get_member (computed_object (cars), speeds[i]));
}

static void
assert_strd (JsonObject      *expected,
             const RwLineFit *line,
             gboolean         through_origin)
{
  const guint slope = through_origin ? 0 : 1;

  assert_close (line->slope, listed (expected, "beta", slope), SHARE);
  assert_close (line->slope_u, listed (expected, "se", slope), 1e-11);
  if (through_origin)
    g_assert_cmpfloat (line->offset, ==, 0);
  else
    {
      assert_close (line->offset, listed (expected, "beta", 0), SHARE);
      assert_close (line->offset_u, listed (expected, "se", 0), 1e-11);
      assert_close (line->cov, json_object_get_double_member (expected, "cov01"), 1e-11);
    }
  assert_close (line->chi2, json_object_get_double_member (expected, "rss"), 1e-11);
  assert_close (line->sd, json_object_get_double_member (expected, "resid_sd"), 1e-11);
  g_assert_cmpuint (line->dof, ==, json_object_get_int_member (expected, "df_resid"));
}

static void
test_strd_lines (void)
{
  static const char *const names[] = { "strd_norris.json", "strd_noint1.json", "strd_noint2.json" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (JsonNode) data = fixture_refdata (names[i]);
      g_autoptr (GArray) points = points_new (data, "x", "y", NULL, NULL);
      RwLineFit line;

      g_assert_cmpint (points_fit_plain (points, i > 0, &line), ==, RW_LINE_FIT_DONE);
      assert_strd (computed_object (data), &line, i > 0);
    }
}

/* R² of the line is 0.99999, and yet. */
static void
test_strd_curve (void)
{
  g_autoptr (JsonNode) curve = fixture_refdata ("strd_pontius.json");
  g_autoptr (JsonNode) straight = fixture_refdata ("strd_pontius_line_only.json");
  g_autoptr (GArray) points = points_new (curve, "x", "y", NULL, NULL);
  JsonObject *square = computed_object (curve);
  RwLineFit line;
  RwLineBend bend;

  g_assert_cmpint (points_fit_plain (points, FALSE, &line), ==, RW_LINE_FIT_DONE);
  assert_strd (json_object_get_object_member (computed_object (straight), "line"), &line, FALSE);
  g_assert_cmpfloat (json_object_get_double_member (
                         json_object_get_object_member (computed_object (straight), "line"), "R2"),
                     >, 0.99998);

  g_assert_true (rw_line_fit_is_curved ((const RwLinePoint *) (gpointer) points->data, points->len, 0.01,
                                        &bend));
  assert_close (bend.statistic, computed (straight, "quadratic_F_for_curvature"), 1e-10);
  g_assert_cmpuint (bend.dof, ==, 37);
  assert_close (bend.square, listed (square, "beta", 2), 1e-10);
  assert_close (bend.square_u, listed (square, "se", 2), 1e-10);
  g_assert_cmpfloat (bend.p, <, 1e-30);
}

/* A winding of N turns: N/N1 (V1 + VF1) − VF. The line of the rail, and where it meets its limits. */
static void
assert_winding (JsonNode   *data,
                const char *rail,
                double      sign,
                double      lo,
                double      hi,
                const char *window)
{
  const double ratio = fixture_number (data, "inputs", "N", rail, NULL)
                       / fixture_number (data, "inputs", "N", "5", NULL);
  const double drop = fixture_number (data, "inputs", "VF", "5", NULL);
  RwLinePoint points[6];
  RwLineFit line;

  for (guint i = 0; i < G_N_ELEMENTS (points); i++)
    {
      const double x = 4.7 + 0.1 * i;
      const double y = ratio * (x + drop) - fixture_number (data, "inputs", "VF", rail, NULL);

      points[i] = (RwLinePoint) { x, sign * y, 0.003, 0.006, 0 };
    }
  g_assert_cmpint (rw_line_fit (points, G_N_ELEMENTS (points), &line), ==, RW_LINE_FIT_DONE);
  g_assert_cmpfloat_with_epsilon (line.slope, sign * 2.4, 1e-12);
  g_assert_cmpfloat_with_epsilon (line.offset, sign * 0.21, 1e-12);
  g_assert_cmpfloat_with_epsilon (rw_line_fit_value (&line, 5, 0, NULL),
                                  listed (computed_object (data), "at_5_00", sign < 0), 1e-12);
  g_assert_cmpfloat_with_epsilon (rw_line_fit_x_at (&line, lo, 0, NULL),
                                  listed (computed_object (data), window, 0), 1e-12);
  g_assert_cmpfloat_with_epsilon (rw_line_fit_x_at (&line, hi, 0, NULL),
                                  listed (computed_object (data), window, 1), 1e-12);
}

static void
test_windings (void)
{
  g_autoptr (JsonNode) data = fixture_refdata ("multi_output_line_model.json");

  assert_winding (data, "12", 1, 11.4, 12.6, "window_from_12V_5pct");
  assert_winding (data, "-12", -1, -10.8, -13.2, "window_from_neg12_10pct");
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/core/line-fit/york-on-pearson-and-with-axes-exchanged", test_york);
  g_test_add_func ("/core/line-fit/york-on-pearson-with-one-axis-exact", test_york_exact);
  g_test_add_data_func ("/core/line-fit/iso-28037-clause-6-equal", "iso28037_clause6_equal.json",
                        test_iso_known);
  g_test_add_data_func ("/core/line-fit/iso-28037-clause-6-unequal", "iso28037_clause6_unequal.json",
                        test_iso_known);
  g_test_add_data_func ("/core/line-fit/iso-28037-clause-7", "iso28037_clause7_xy.json", test_iso_known);
  g_test_add_func ("/core/line-fit/iso-28037-used-both-ways", test_iso_used);
  g_test_add_func ("/core/line-fit/iso-28037-annex-e", test_iso_unknown);
  g_test_add_func ("/core/line-fit/constant-errors-are-the-closed-form", test_deming);
  g_test_add_func ("/core/line-fit/gum-h3-thermometer", test_gum);
  g_test_add_func ("/core/line-fit/din-32645", test_din);
  g_test_add_func ("/core/line-fit/textbook-predictions", test_predictions);
  g_test_add_func ("/core/line-fit/nist-lines-to-twelve-digits", test_strd_lines);
  g_test_add_func ("/core/line-fit/nist-curve-is-curved-although-r2-is-nearly-one", test_strd_curve);
  g_test_add_func ("/core/line-fit/windings-are-lines", test_windings);
  return g_test_run ();
}
