/* trim-fixture.c: made-up trim sets for the tests of the trim map.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "trim-fixture.h"

#include <math.h>

static const char profile_text[] =
    "{\"id\":\"four-rails\",\"title\":\"Four rails\",\"reference\":\"p5\",\"rails\":["
    "{\"id\":\"p5\",\"label\":\"+5 V\",\"nominal\":5,\"limits\":[4.9,5.2],"
    "\"bare_limits\":[4.75,5.4],\"never_above\":5.5,\"priority\":1,\"follows_trim\":\"yes\"},"
    "{\"id\":\"p12\",\"label\":\"+12 V\",\"nominal\":12,\"limits\":[11.4,12.6],"
    "\"bare_limits\":[11,13.2],\"never_above\":15,\"priority\":2,\"follows_trim\":\"yes\"},"
    "{\"id\":\"m5\",\"label\":\"−5 V\",\"nominal\":-5,\"limits\":[-5.25,-4.75],"
    "\"bare_limits\":[-5.7,-4.7],\"never_above\":6.5,\"priority\":3,\"follows_trim\":\"yes\"},"
    "{\"id\":\"m12\",\"label\":\"−12 V\",\"nominal\":-12,\"limits\":[-13.2,-10.8],"
    "\"bare_limits\":[-14,-10.5],\"never_above\":16,\"priority\":4,\"follows_trim\":\"unknown\"}]"
    "}";

/* 0.5 per cent and two counts of a hundredth. */
static const double percent = 0.5;
static const double own_u = 0.0115; /* 2 · 0.01 / √3 */

static RwProfile *
load_profile (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) node = json_from_string (profile_text, &error);

  g_assert_no_error (error);

  RwProfile *profile = rw_profile_new_from_node (node, "fixture", &error);

  g_assert_no_error (error);
  return profile;
}

RwTrimSet *
fixture_trim_of (RwPlace place, RwSaid board, const double *values, guint n_positions)
{
  g_autoptr (RwProfile) profile = load_profile ();
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (RwTrimPoint));
  g_autofree double *starts = g_new0 (double, n_positions);
  g_autofree double *ends = g_new0 (double, n_positions);

  for (guint k = 0; k < n_positions; k++)
    {
      starts[k] = 60 * k;
      ends[k] = k + 1 < n_positions ? 60 * (k + 1) : INFINITY;
      for (guint i = 0; i < FIXTURE_RAILS; i++)
        {
          const double      value = values[k * FIXTURE_RAILS + i];
          const RwTrimPoint point = { .n = 11 + points->len + k,
                                      .t = starts[k] + 5 * i,
                                      .rail = i,
                                      .position = k,
                                      .value = value,
                                      .u = own_u };

          if (!isnan (value))
            g_array_append_val (points, point);
        }
    }

  const RwTrimSetInput input = { .profile = profile,
                                 .place = place,
                                 .board = board,
                                 .points = (const RwTrimPoint *)(gpointer)points->data,
                                 .n_points = points->len,
                                 .starts = starts,
                                 .ends = ends,
                                 .n_positions = n_positions,
                                 .is_current = TRUE,
                                 .percent = percent };

  return rw_trim_set_new (&input);
}

RwTrimSet *
fixture_trim_usual (void)
{
  static const double values[] = { 4.94,  11.61, -4.72, NAN,   5.05,  NAN,
                                   -4.83, NAN,   5.17,  12.15, -4.95, NAN };

  return fixture_trim_of (RW_PLACE_BOARD, RW_SAID_YES, values, 3);
}

/* −5 V = 0.56 − x, +12 V = 0.312 + 2.4 x. */
RwTrimSet *
fixture_trim_conflict (void)
{
  static const double values[] = { 4.92,  12.12, -4.36, NAN,   5.04,  12.41,
                                   -4.48, NAN,   5.16,  12.70, -4.60, NAN };

  return fixture_trim_of (RW_PLACE_BOARD, RW_SAID_YES, values, 3);
}

RwTrimSet *
fixture_trim_once (void)
{
  static const double values[] = { 4.83, 11.52, NAN, -11.4 };

  return fixture_trim_of (RW_PLACE_BOARD, RW_SAID_YES, values, 1);
}

RwTrimSet *
fixture_trim_outlier (void)
{
  static const double values[] = { 4.90,  11.52, -4.68, NAN,   4.97,  11.68, -4.75,
                                   NAN,   5.04,  11.84, -5.60, NAN,   5.11,  12.01,
                                   -4.89, NAN,   5.18,  12.17, -4.96, NAN };

  return fixture_trim_of (RW_PLACE_BOARD, RW_SAID_YES, values, 5);
}

RwTrimSet *
fixture_trim_untied (void)
{
  static const double values[] = { NAN, NAN, -4.8, NAN };

  return fixture_trim_of (RW_PLACE_BOARD, RW_SAID_YES, values, 1);
}

RwTrimSet *
fixture_trim_full (void)
{
  double values[6 * FIXTURE_RAILS];

  for (guint k = 0; k < 6; k++)
    {
      const double x = 4.86 + 0.07 * k;

      values[k * FIXTURE_RAILS] = x;
      values[k * FIXTURE_RAILS + 1] = round (100 * (0.1 + 2.36 * x)) / 100;
      values[k * FIXTURE_RAILS + 2] = round (100 * (-0.05 - 0.98 * x)) / 100;
      values[k * FIXTURE_RAILS + 3] = round (100 * (-2.2 - 1.9 * x)) / 100;
    }
  return fixture_trim_of (RW_PLACE_TERMINALS, RW_SAID_NO, values, 6);
}

const FixtureTrimFunc fixture_trim_drawn[FIXTURE_TRIM_DRAWN] = {
  fixture_trim_usual, fixture_trim_conflict, fixture_trim_once, fixture_trim_outlier,
  fixture_trim_full
};

RwTrimMap *
fixture_trim_map (RwTrimSet *set)
{
  g_autoptr (RwView) view = rw_view_new (NULL);
  RwTrimMap *map = rw_trim_map_new (view);

  rw_trim_map_set_draw_text (map, FALSE);
  rw_trim_map_set_size (map, 860, 330);
  rw_trim_map_set_set (map, set);
  rw_trim_set_unref (set);
  return map;
}

void
fixture_trim_live (RwTrimMap *map, guint rail, double value)
{
  RwTrimLive live;

  rw_trim_live_init (&live, rw_trim_map_get_set (map), rail, value, own_u);
  rw_trim_map_set_live (map, &live);
  rw_trim_live_clear (&live);
}
