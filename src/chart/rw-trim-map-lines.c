/* rw-trim-map-lines.c: the rails' lines with their bands and names, and the readings on them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Position is a straight function of volts, so a rail's straight line stays one.
 */
#include "config.h"

#include <math.h>

#include "rw-layer-ends.h"
#include "rw-trim-map-layout.h"

static const double marker_gap = 17; /* from the plot's edge to the middle of a line's marker */
static const double name_gap = 9;    /* from there to its name */
static const double end_gap = 4;     /* between the last letter and the edge of the picture */

/* Position of @rail's line where the reference is @volts. */
static double
position_at (const RwTrimMapLayout *self,
             const RwTrimLine      *line,
             guint                  rail,
             double                 volts)
{
  return rw_trim_map_position (self->in.set, rail, line->offset + line->slope * volts);
}

/* The piece of the line that is on the plot; at which ends it leaves through top or bottom. */
static void
cut_line (const RwTrimMapLayout *self,
          RwTrimMapLine         *out,
          double                 left,
          double                 right)
{
  const RwAxis *up = &self->scene.scale, *across = &self->volts;
  const double rise = right - left;
  double from = 0, to = 1; /* shares of the way across */

  if (rise != 0)
    {
      const double one = (up->lo - left) / rise, other = (up->hi - left) / rise;

      from = MAX (from, MIN (one, other));
      to = MIN (to, MAX (one, other));
    }
  out->seen = rise != 0 ? from < to : out->beyond == 0;
  out->x0 = across->from + from * (across->to - across->from);
  out->x1 = across->from + to * (across->to - across->from);
  out->y0 = rw_axis_to_pixel (up, left + from * rise);
  out->y1 = rw_axis_to_pixel (up, left + to * rise);
}

/* Pixels of a position, no farther off the plot than its own height. */
static double
band_y (const RwTrimMapLayout *self,
        double                 position)
{
  const RwRect *plot = &self->scene.plot;
  const double y = rw_axis_to_pixel (&self->scene.scale, position);

  return CLAMP (y, plot->y - plot->height, rw_rect_bottom (plot) + plot->height);
}

static void
place_band (const RwTrimMapLayout *self,
            RwTrimMapLine         *out)
{
  const RwTrimSet *set = self->in.set;

  out->banded = out->rail != set->reference;
  for (guint i = 0; i < RW_TRIM_MAP_STEPS && out->banded; i++)
    {
      const double share = i / (RW_TRIM_MAP_STEPS - 1.0);
      const double x = self->volts.lo + share * (self->volts.hi - self->volts.lo);
      RwTrimExpected expected;

      out->banded = rw_trim_fit_expect (set->fit, out->rail, x, 0, &expected);
      if (!out->banded)
        return;
      out->lo[i] = band_y (self, rw_trim_map_position (set, out->rail, expected.lo));
      out->hi[i] = band_y (self, rw_trim_map_position (set, out->rail, expected.hi));
    }
}

static void
fit_name (const RwTrimMapLayout *self,
          RwTrimMapLine         *out)
{
  const RwScene *scene = &self->scene;
  const char *label = rw_profile_get_rail (self->in.set->profile, out->rail)->label;

  out->marker_x = rw_rect_right (&scene->plot) + marker_gap * scene->unit;
  out->name_x = out->marker_x + name_gap * scene->unit;
  out->name = rw_chart_text_fit (self->in.text, RW_TEXT_LABEL, label,
                                 self->in.width - end_gap * scene->unit - out->name_x);
}

/* FALSE: it has no line, or no limits to draw it between. */
static gboolean
place_line (const RwTrimMapLayout *self,
            guint                  rail,
            RwTrimMapLine         *out)
{
  const RwTrimSet *set = self->in.set;
  RwTrimLine line;

  *out = (RwTrimMapLine){ .rail = rail, .style = rw_trim_map_layout_style (self, rail) };
  if (!rw_trim_map_has_limits (set, rail) || !rw_trim_fit_get_line (set->fit, rail, &line))
    return FALSE;

  const double left = position_at (self, &line, rail, self->volts.lo);
  const double right = position_at (self, &line, rail, self->volts.hi);

  if (!isfinite (left) || !isfinite (right))
    return FALSE;
  out->end = right;
  out->end_y = rw_trim_map_layout_y (self, right, &out->beyond);
  out->chosen = self->scene.rail == rw_profile_get_rail (set->profile, rail)->id;
  cut_line (self, out, left, right);
  place_band (self, out);
  fit_name (self, out);
  return TRUE;
}

static gint
compare_ends (gconstpointer a,
              gconstpointer b,
              gpointer      user_data)
{
  const GArray *lines = user_data;
  const RwTrimMapLine *one = &g_array_index (lines, RwTrimMapLine, *(const guint *) a);
  const RwTrimMapLine *other = &g_array_index (lines, RwTrimMapLine, *(const guint *) b);

  if (one->end != other->end)
    return one->end > other->end ? -1 : 1;
  return one->rail < other->rail ? -1 : one->rail > other->rail;
}

static void
spread_names (RwTrimMapLayout *self)
{
  const guint n = self->lines->len;
  const double height = rw_chart_text_height (self->in.text, RW_TEXT_LABEL);
  const RwRect *plot = &self->scene.plot;
  g_autofree double *y = g_new (double, n + 1);
  g_autofree guint *order = g_new (guint, n + 1);

  for (guint i = 0; i < n; i++)
    order[i] = i;
  g_qsort_with_data (order, (gint) n, sizeof *order, compare_ends, self->lines);
  for (guint i = 0; i < n; i++)
    y[i] = g_array_index (self->lines, RwTrimMapLine, order[i]).end_y;
  rw_ends_spread (y, n, height, plot->y + height / 2, rw_rect_bottom (plot) - height / 2);
  for (guint i = 0; i < n; i++)
    g_array_index (self->lines, RwTrimMapLine, order[i]).label_y = y[i];
}

void
rw_trim_map_layout_place_lines (RwTrimMapLayout *self)
{
  const guint n = rw_profile_get_n_rails (self->in.set->profile);

  /* The chosen one on top of the others. */
  for (guint round = 0; round < 2; round++)
    for (guint i = 0; i < n; i++)
      {
        RwTrimMapLine line;

        if (!place_line (self, i, &line))
          continue;
        if (line.chosen == (round == 1))
          g_array_append_val (self->lines, line);
        else
          g_free (line.name);
      }
  spread_names (self);
}

static void
place_bars (const RwTrimMapLayout *self,
            const RwTrimPoint     *point,
            RwTrimMapMark         *mark)
{
  const RwTrimSet *set = self->in.set;
  const double across = isfinite (point->u_x) ? RW_SCENE_COVER * point->u_x : 0;
  const double up = isfinite (point->u) ? RW_SCENE_COVER * point->u : 0;
  const double one = rw_trim_map_position (set, point->rail, point->value - up);
  const double other = rw_trim_map_position (set, point->rail, point->value + up);
  int beyond;

  mark->x_lo = rw_trim_map_layout_x (self, point->x - across, &beyond);
  mark->x_hi = rw_trim_map_layout_x (self, point->x + across, &beyond);
  mark->y_lo = rw_trim_map_layout_y (self, MIN (one, other), &beyond);
  mark->y_hi = rw_trim_map_layout_y (self, MAX (one, other), &beyond);
}

static gint
compare_marks (gconstpointer a,
               gconstpointer b)
{
  const RwTrimMapMark *one = a, *other = b;

  if (one->x != other->x)
    return one->x < other->x ? -1 : 1;
  if (one->y != other->y)
    return one->y < other->y ? -1 : 1;
  return one->index < other->index ? -1 : one->index > other->index;
}

void
rw_trim_map_layout_place_marks (RwTrimMapLayout *self)
{
  const RwTrimSet *set = self->in.set;

  for (guint i = 0; i < set->points->len; i++)
    {
      const RwTrimPoint *point = &g_array_index (set->points, RwTrimPoint, i);
      const double position = rw_trim_map_position (set, point->rail, point->value);
      RwTrimMapMark mark = { .index = i,
                             .rail = point->rail,
                             .style = rw_trim_map_layout_style (self, point->rail),
                             .outlier = point->outlier };

      if (!isfinite (point->x) || !isfinite (position))
        continue;
      mark.newest = set->is_current && point->position + 1 == set->positions->len;
      mark.x = rw_trim_map_layout_x (self, point->x, &mark.beyond_x);
      mark.y = rw_trim_map_layout_y (self, position, &mark.beyond_y);
      place_bars (self, point, &mark);
      g_array_append_val (self->marks, mark);
    }
  g_array_sort (self->marks, compare_marks);
}
