/* rw-trim-map-lookup.c: what lies under a point of the trim map, and where readings are.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "rw-trim-map-private.h"
#include "rw-trim-map-words.h"

static const double finger = 14;     /* pixels around a reading that still count */
static const double line_finger = 6; /* beside a line */

/* Nearest thing but readings. */
typedef struct
{
  RwTrimMapHit hit;
  double       distance; /* INFINITY: none */
} Found;

static void
fill_reading (const RwTrimMapLayout *layout,
              const RwTrimMapMark   *mark,
              RwTrimMapHit          *hit)
{
  const RwTrimSet *set = layout->in.set;
  const RwTrimPoint *point = &g_array_index (set->points, RwTrimPoint, mark->index);

  *hit = (RwTrimMapHit){
    .kind = RW_TRIM_HIT_READING,
    .n = point->n,
    .rail = (int) point->rail,
    .x = mark->x,
    .y = mark->y,
    .volts = point->x,
    .value = point->value,
    .position = rw_trim_map_position (set, point->rail, point->value),
    .outlier = point->outlier,
    .text = rw_trim_map_words_point (set, point),
  };
}

static const RwTrimMapMark *
nearest_mark (const RwTrimMapLayout *layout,
              double                 x,
              double                 y)
{
  const RwTrimMapMark *best = NULL;
  double least = finger * layout->scene.unit;

  for (guint i = 0; i < layout->marks->len; i++)
    {
      const RwTrimMapMark *mark = &g_array_index (layout->marks, RwTrimMapMark, i);
      const double distance = hypot (mark->x - x, mark->y - y);

      if (distance > least)
        continue;
      least = distance;
      best = mark;
    }
  return best;
}

/* A vertical line through the plot at @at. */
static void
offer_vertical (const RwTrimMapLayout *layout,
                RwTrimHitKind          kind,
                int                    rail,
                double                 at,
                double                 x,
                double                 y,
                Found                 *best)
{
  const double distance = fabs (at - x);

  if (!(distance <= line_finger * layout->scene.unit) || distance >= best->distance)
    return;
  best->distance = distance;
  best->hit = (RwTrimMapHit){ .kind = kind, .rail = rail, .x = at, .y = y };
}

static void
offer_line (const RwTrimMapLayout *layout,
            const RwTrimMapLine   *line,
            double                 x,
            double                 y,
            Found                 *best)
{
  const double run = line->x1 - line->x0, rise = line->y1 - line->y0;

  if (!line->seen || !(run > 0) || x < line->x0 || x > line->x1)
    return;

  const double at = line->y0 + rise * (x - line->x0) / run;
  const double distance = fabs (at - y) * run / hypot (run, rise);

  if (distance > line_finger * layout->scene.unit || distance >= best->distance)
    return;
  best->distance = distance;
  best->hit = (RwTrimMapHit){ .kind = RW_TRIM_HIT_LINE, .rail = (int) line->rail, .x = x, .y = at };
}

static void
offer_all (const RwTrimMapLayout *layout,
           double                 x,
           double                 y,
           Found                 *best)
{
  if (layout->needle.shown && layout->needle.beyond == 0)
    offer_vertical (layout, RW_TRIM_HIT_NEEDLE, -1, layout->needle.x, x, y, best);
  offer_vertical (layout, RW_TRIM_HIT_SET_POINT, -1, layout->set_x, x, y, best);
  for (guint i = 0; i < layout->n_bounds; i++)
    offer_vertical (layout, RW_TRIM_HIT_BOUND, (int) layout->bounds[i].rail, layout->bounds[i].x, x,
                    y, best);
  for (guint i = 0; i < layout->lines->len; i++)
    offer_line (layout, &g_array_index (layout->lines, RwTrimMapLine, i), x, y, best);
  if (isinf (best->distance) && layout->window.shown && x >= layout->window.x0
      && x <= layout->window.x1)
    *best = (Found){ { .kind = RW_TRIM_HIT_WINDOW, .rail = -1, .x = x, .y = y }, 0 };
}

/* Volts, position and words of a hit of which kind, rail and place are known. */
static void
fill_hit (const RwTrimMapLayout *layout,
          RwTrimMapHit          *hit)
{
  const RwTrimSet *set = layout->in.set;
  RwTrimLine line;

  hit->volts = rw_axis_to_value (&layout->volts, hit->x);
  hit->value = hit->position = NAN;
  if (hit->rail >= 0 && rw_trim_fit_get_line (set->fit, (guint) hit->rail, &line))
    {
      hit->value = line.offset + line.slope * hit->volts;
      hit->position = rw_trim_map_position (set, (guint) hit->rail, hit->value);
    }
  if (hit->kind == RW_TRIM_HIT_NEEDLE)
    hit->text = rw_trim_map_words_now (set, layout->in.live, layout->in.past);
  else if (hit->kind == RW_TRIM_HIT_SET_POINT)
    hit->text = rw_trim_map_words_set_point (set);
  else if (hit->kind == RW_TRIM_HIT_BOUND)
    hit->text = rw_trim_map_words_bound_label (set, hit->rail == set->window.low_rail);
  else if (hit->kind == RW_TRIM_HIT_LINE)
    hit->text = rw_trim_map_words_line (set, (guint) hit->rail, hit->volts);
  else
    hit->text = rw_trim_map_words_window (set);
}

gboolean
rw_trim_map_lookup (RwTrimMap    *self,
                    double        x,
                    double        y,
                    RwTrimMapHit *hit)
{
  g_return_val_if_fail (RW_IS_TRIM_MAP (self) && hit != NULL, FALSE);

  const RwTrimMapLayout *layout = rw_trim_map_get_layout (self);
  Found found = { .distance = INFINITY };

  if (layout->instead != NULL || !rw_rect_contains (&layout->scene.plot, x, y))
    return FALSE;

  const RwTrimMapMark *mark = nearest_mark (layout, x, y);

  if (mark != NULL)
    {
      fill_reading (layout, mark, hit);
      return TRUE;
    }
  offer_all (layout, x, y, &found);
  if (isinf (found.distance))
    return FALSE;
  fill_hit (layout, &found.hit);
  *hit = found.hit;
  return TRUE;
}

/* Index among the marks, −1 when it is not there. */
static int
find_mark (const RwTrimMapLayout *layout,
           guint                  n)
{
  for (guint i = 0; i < layout->marks->len; i++)
    {
      const RwTrimMapMark *mark = &g_array_index (layout->marks, RwTrimMapMark, i);

      if (g_array_index (layout->in.set->points, RwTrimPoint, mark->index).n == n)
        return (int) i;
    }
  return -1;
}

gboolean
rw_trim_map_locate (RwTrimMap    *self,
                    guint         n,
                    RwTrimMapHit *hit)
{
  g_return_val_if_fail (RW_IS_TRIM_MAP (self) && hit != NULL, FALSE);

  const RwTrimMapLayout *layout = rw_trim_map_get_layout (self);
  const int at = find_mark (layout, n);

  if (at < 0)
    return FALSE;
  fill_reading (layout, &g_array_index (layout->marks, RwTrimMapMark, at), hit);
  return TRUE;
}

gboolean
rw_trim_map_step (RwTrimMap    *self,
                  guint         n,
                  gboolean      forward,
                  RwTrimMapHit *hit)
{
  g_return_val_if_fail (RW_IS_TRIM_MAP (self) && hit != NULL, FALSE);

  const RwTrimMapLayout *layout = rw_trim_map_get_layout (self);
  const int last = (int) layout->marks->len - 1;
  const int from = n == 0 ? -1 : find_mark (layout, n);
  const int at = from < 0 ? (forward ? 0 : last) : forward ? from + 1 : from - 1;

  if (at < 0 || at > last)
    return FALSE;
  fill_reading (layout, &g_array_index (layout->marks, RwTrimMapMark, at), hit);
  return TRUE;
}

double
rw_trim_map_volts_at (RwTrimMap *self,
                      double     x)
{
  g_return_val_if_fail (RW_IS_TRIM_MAP (self), NAN);

  const RwTrimMapLayout *layout = rw_trim_map_get_layout (self);

  return layout->instead == NULL ? rw_axis_to_value (&layout->volts, x) : (double) NAN;
}

double
rw_trim_map_x_at (RwTrimMap *self,
                  double     volts)
{
  g_return_val_if_fail (RW_IS_TRIM_MAP (self), NAN);

  const RwTrimMapLayout *layout = rw_trim_map_get_layout (self);

  return layout->instead == NULL ? rw_axis_to_pixel (&layout->volts, volts) : (double) NAN;
}

void
rw_trim_map_get_plot (RwTrimMap *self,
                      RwRect    *plot)
{
  g_return_if_fail (RW_IS_TRIM_MAP (self) && plot != NULL);
  *plot = rw_trim_map_get_layout (self)->scene.plot;
}
