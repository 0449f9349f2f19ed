/* rw-trim-bend.c: does a rail lie on a straight line in the reference at all?
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One point a trim position: the means of the readings of both rails there, so that no two points share an
 * error. The test is that of rw-line-fit (the fall of χ² with an added square), not R², which is near 1 for a
 * line that is plainly bent.
 */
#include "config.h"

#include "rw-trim-bend.h"

#include <math.h>

#include "rw-line-fit.h"

static const guint least_positions = 4;
static const double level = 0.01;

static guint
count_outliers (const RwTrimSet *set,
                guint            rail)
{
  guint n = 0;

  for (guint i = 0; i < set->points->len; i++)
    {
      const RwTrimPoint *point = &g_array_index (set->points, RwTrimPoint, i);

      n += point->rail == rail && point->outlier;
    }
  return n;
}

/* Weighted mean of the readings of @rail at a position. FALSE: there is none. */
static gboolean
mean_at (const RwTrimSet *set,
         guint            rail,
         guint            position,
         gboolean         with_outliers,
         double          *mean,
         double          *u)
{
  double sum = 0, weights = 0;

  for (guint i = 0; i < set->points->len; i++)
    {
      const RwTrimPoint *point = &g_array_index (set->points, RwTrimPoint, i);

      if (point->rail != rail || point->position != position || (point->outlier && !with_outliers)
          || !(point->u > 0))
        continue;
      sum += point->value / (point->u * point->u);
      weights += 1 / (point->u * point->u);
    }
  if (!(weights > 0))
    return FALSE;
  *mean = sum / weights;
  *u = sqrt (1 / weights);
  return TRUE;
}

gboolean
rw_trim_bend_is_curved (const RwTrimSet *set,
                        guint            rail)
{
  g_autofree RwLinePoint *points = g_new0 (RwLinePoint, set->positions->len);
  /* One slip is a slip; several of one rail are more likely the bend itself. */
  const gboolean with_outliers = count_outliers (set, rail) > 1;
  guint n = 0;

  if (rail == set->reference)
    return FALSE;
  for (guint i = 0; i < set->positions->len; i++)
    {
      RwLinePoint *point = &points[n];

      n += mean_at (set, set->reference, i, FALSE, &point->x, &point->ux)
           && mean_at (set, rail, i, with_outliers, &point->y, &point->uy);
    }
  return n >= least_positions && rw_line_fit_is_curved (points, n, level, NULL);
}
