/* rw-trim-map-range.c: how far the trim map reaches across and up.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Across: one and a half half bands of the reference either side of its middle, and as much more as
 * readings, window, set point, bounds and the needle ask for, up to RW_SCENE_FAR half bands. Up: as
 * on the chart over time, RW_SCENE_LEAST, and as much more as readings (up to RW_SCENE_FAR) and the
 * ends of the lines (up to farthest_end) ask for. What lies past that is drawn at the edge with an
 * arrow, and an outlier widens nothing, so that one silly reading never squashes the picture.
 */
#include "config.h"

#include <math.h>

#include "rw-trim-map-layout.h"

static const double least_across = 1.5;
static const double farthest_end = 2.0;
static const double rounding = 0.2;
static const double room = 0.1; /* between the outermost value and the edge, before rounding */
static const double nominal_share = 0.05; /* half a band where no limits are laid down */

/* In half bands from the middle. */
typedef struct
{
  double middle, half;
  double below, above;
} Reach;

static void
reach_for (Reach *reach,
           double value)
{
  const double at = (value - reach->middle) / reach->half;

  if (!(fabs (at) <= RW_SCENE_FAR))
    return;
  reach->above = MAX (reach->above, rounding * ceil ((at + room) / rounding - 1e-9));
  reach->below = MIN (reach->below, rounding * floor ((at - room) / rounding + 1e-9));
}

static Reach
reference_reach (const RwTrimSet *set)
{
  const double lo = set->lo[set->reference], hi = set->hi[set->reference];
  const double nominal = rw_profile_get_rail (set->profile, set->reference)->nominal;
  Reach reach = { nominal, fabs (nominal) * nominal_share, -least_across, least_across };

  if (isfinite (lo) && isfinite (hi) && hi > lo)
    {
      reach.middle = (lo + hi) / 2;
      reach.half = (hi - lo) / 2;
    }
  return reach;
}

static gboolean
is_given (double lo,
          double hi)
{
  return isfinite (lo) && isfinite (hi) && lo < hi;
}

/* Both bounds when there is no window; otherwise its ends. */
static void
reach_for_window (const RwTrimSet *set,
                  Reach           *reach)
{
  const RwTrimWindow *window = &set->window;

  reach_for (reach, window->best);
  if (window->exists)
    {
      reach_for (reach, window->lo);
      reach_for (reach, window->hi);
    }
  else if (window->low_rail >= 0 && window->high_rail >= 0)
    {
      reach_for (reach, rw_trim_map_bound (set, (guint) window->low_rail, TRUE));
      reach_for (reach, rw_trim_map_bound (set, (guint) window->high_rail, FALSE));
    }
}

static void
set_across (RwTrimMapLayout *self)
{
  const RwTrimSet *set = self->in.set;
  const RwRect *plot = &self->scene.plot;
  const RwTrimMapRange *given = &self->in.given;
  Reach reach = reference_reach (set);
  RwTrimMapNow now;

  if (is_given (given->volts_lo, given->volts_hi))
    {
      self->volts = rw_axis_make (given->volts_lo, given->volts_hi, plot->x, rw_rect_right (plot));
      return;
    }
  for (guint i = 0; i < set->points->len; i++)
    {
      const RwTrimPoint *point = &g_array_index (set->points, RwTrimPoint, i);
      const double spread = isfinite (point->u_x) ? RW_SCENE_COVER * point->u_x : 0;

      if (point->outlier)
        continue;
      reach_for (&reach, point->x - spread);
      reach_for (&reach, point->x + spread);
    }
  reach_for_window (set, &reach);
  if (rw_trim_map_now (set, self->in.live, &now))
    reach_for (&reach, now.x);
  self->volts = rw_axis_make (reach.middle + reach.below * reach.half,
                              reach.middle + reach.above * reach.half, plot->x,
                              rw_rect_right (plot));
}

static void
reach_for_points (const RwTrimSet *set,
                  Reach           *reach)
{
  for (guint i = 0; i < set->points->len; i++)
    {
      const RwTrimPoint *point = &g_array_index (set->points, RwTrimPoint, i);
      const double spread = RW_SCENE_COVER * point->u;

      if (point->outlier || !isfinite (point->x))
        continue;
      reach_for (reach, rw_trim_map_position (set, point->rail, point->value - spread));
      reach_for (reach, rw_trim_map_position (set, point->rail, point->value + spread));
    }
}

static void
reach_for_lines (const RwTrimMapLayout *self,
                 Reach                 *reach)
{
  const RwTrimSet *set = self->in.set;
  const guint n = rw_profile_get_n_rails (set->profile);
  const double ends[] = { self->volts.lo, self->volts.hi };

  for (guint i = 0; i < n; i++)
    for (guint k = 0; k < G_N_ELEMENTS (ends); k++)
      {
        RwTrimLine line;

        if (!rw_trim_fit_get_line (set->fit, i, &line))
          continue;

        const double end = rw_trim_map_position (set, i, line.offset + line.slope * ends[k]);

        if (isfinite (end))
          reach_for (reach, CLAMP (end, -farthest_end + room, farthest_end - room));
      }
}

void
rw_trim_map_layout_set_ranges (RwTrimMapLayout *self)
{
  const RwRect *plot = &self->scene.plot;
  const RwTrimMapRange *given = &self->in.given;
  Reach up = { 0, 1, -RW_SCENE_LEAST, RW_SCENE_LEAST };

  set_across (self);
  if (is_given (given->lo, given->hi))
    {
      self->scene.scale = rw_axis_make (given->lo, given->hi, rw_rect_bottom (plot), plot->y);
      return;
    }
  reach_for_points (self->in.set, &up);
  reach_for_lines (self, &up);
  self->scene.scale = rw_axis_make (up.below, up.above, rw_rect_bottom (plot), plot->y);
}
