/* line-points.c: points for the tests of the line, from published sets and made up.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "line-points.h"

#include <math.h>

static double
element (JsonObject *inputs,
         const char *key,
         guint       i)
{
  return key != NULL ? json_array_get_double_element (json_object_get_array_member (inputs, key), i) : 0;
}

GArray *
points_new (JsonNode   *data,
            const char *x,
            const char *y,
            const char *ux,
            const char *uy)
{
  JsonObject *inputs = json_object_get_object_member (json_node_get_object (data), "inputs");
  const guint n = json_array_get_length (json_object_get_array_member (inputs, x));
  GArray *points = g_array_new (FALSE, FALSE, sizeof (RwLinePoint));

  for (guint i = 0; i < n; i++)
    {
      const RwLinePoint point = { element (inputs, x, i), element (inputs, y, i),
                                  element (inputs, ux, i), element (inputs, uy, i), 0 };

      g_array_append_val (points, point);
    }
  return points;
}

double
random_normal (GRand *random)
{
  const double radius = sqrt (-2 * log (1 - g_rand_double (random)));

  return radius * cos (2 * G_PI * g_rand_double (random));
}

GArray *
points_random (GRand *random,
               guint  n,
               double offset,
               double slope,
               double ux,
               double uy)
{
  GArray *points = g_array_new (FALSE, FALSE, sizeof (RwLinePoint));

  for (guint i = 0; i < n; i++)
    {
      const double x = g_rand_double_range (random, 4.5, 5.5);
      RwLinePoint point = { x, offset + slope * x, ux * exp (g_rand_double_range (random, -0.55, 0.55)),
                            uy * exp (g_rand_double_range (random, -0.55, 0.55)), 0 };

      point.x += point.ux * random_normal (random);
      point.y += point.uy * random_normal (random);
      g_array_append_val (points, point);
    }
  return points;
}

RwLineFitResult
points_fit (GArray    *points,
            RwLineFit *line)
{
  return rw_line_fit ((const RwLinePoint *) (gpointer) points->data, points->len, line);
}

RwLineFitResult
points_fit_plain (GArray    *points,
                  gboolean   through_origin,
                  RwLineFit *line)
{
  return rw_line_fit_plain ((const RwLinePoint *) (gpointer) points->data, points->len, through_origin,
                            line);
}

void
assert_close (double value,
              double expected,
              double share)
{
  if (!(fabs (value - expected) <= share * fabs (expected)))
    g_error ("%.17g is not %.17g within %g of it", value, expected, share);
}
