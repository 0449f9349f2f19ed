/* rw-trim-map-values.c: the numbers that the trim map shows.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-trim-map-values.h"

#include <math.h>

static const double narrow_window = 0.05; /* volts: below, hundredths are too coarse */
static const double fine_u = 0.004;       /* volts: a reading this sure had millivolts */

gboolean
rw_trim_map_now (const RwTrimSet  *set,
                 const RwTrimLive *live,
                 RwTrimMapNow     *out)
{
  *out = (RwTrimMapNow){ .x = NAN, .u_x = NAN, .from = -1 };
  if (live != NULL && isfinite (live->x))
    *out = (RwTrimMapNow){ live->x, live->u_x, TRUE, (int) live->from };
  else if (set->is_current && isfinite (set->x))
    *out = (RwTrimMapNow){ set->x, set->u_x, FALSE, -1 };
  return isfinite (out->x);
}

gboolean
rw_trim_map_is_read_now (const RwTrimSet *set,
                         guint            rail)
{
  for (guint i = 0; set->is_current && i < set->points->len; i++)
    {
      const RwTrimPoint *point = &g_array_index (set->points, RwTrimPoint, i);

      if (point->rail == rail && point->position + 1 == set->positions->len && !point->outlier)
        return TRUE;
    }
  return FALSE;
}

gboolean
rw_trim_map_expect_now (const RwTrimSet    *set,
                        const RwTrimLive   *live,
                        const RwTrimMapNow *now,
                        guint               rail,
                        RwTrimExpected     *out)
{
  if (!isfinite (now->x))
    return FALSE;
  if (!now->live)
    return rw_trim_fit_expect (set->fit, rail, now->x, isfinite (now->u_x) ? now->u_x : 0, out);
  if (rail >= live->n_rails || !isfinite (live->rails[rail].value))
    return FALSE;
  *out = live->rails[rail];
  return TRUE;
}

gboolean
rw_trim_map_has_limits (const RwTrimSet *set,
                        guint            rail)
{
  const double lo = set->lo[rail], hi = set->hi[rail];

  return !isnan (lo) && !isnan (hi) && lo < hi && (isfinite (lo) || isfinite (hi));
}

double
rw_trim_map_position (const RwTrimSet *set,
                      guint            rail,
                      double           value)
{
  const RwRail *facts = rw_profile_get_rail (set->profile, rail);

  if (!rw_trim_map_has_limits (set, rail))
    return NAN;
  return rw_position (value, set->lo[rail], set->hi[rail], facts->nominal < 0);
}

double
rw_trim_map_bound (const RwTrimSet *set,
                   guint            rail,
                   gboolean         lower)
{
  RwTrimLine line;

  if (!rw_trim_fit_get_line (set->fit, rail, &line) || line.slope == 0)
    return NAN;

  const double one = (set->lo[rail] - line.offset) / line.slope;
  const double other = (set->hi[rail] - line.offset) / line.slope;
  const double bound = lower ? fmin (one, other) : fmax (one, other);

  return isfinite (bound) ? bound : (double) NAN;
}

double
rw_trim_map_digit (const RwTrimSet *set)
{
  const RwTrimWindow *window = &set->window;

  return window->exists && window->hi - window->lo < narrow_window ? 0.001 : 0.01;
}

double
rw_trim_map_reading_digit (double u)
{
  return u > 0 && u < fine_u ? 0.001 : 0.01;
}
