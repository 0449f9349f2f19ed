/* rw-trim-map-ink.c: the trim map on a cairo context.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Order of ink, from below: paper, window, space outside the limits, gap, bands, lines, set point
 * and bounds, needle, readings, words.
 */
#include "config.h"

#include <math.h>

#include "rw-chart-title.h"
#include "rw-ink.h"
#include "rw-trim-map-layout.h"

static const double band_share = 0.13;   /* of a rail's colour in its band */
static const double window_share = 0.10; /* of the verdict's colour in the window */
static const double mark_size = 8, newest_size = 10, diamond_size = 10;
static const double tick_length = 5;
static const double notch = 6;
static const double cap = 3; /* half the width of an error bar's end */
static const double gap_spacing = 7;
static const double gap_share = 0.42; /* of the verdict's colour in the hatching of the gap */

static double
hairline (const RwTrimMapLayout *self)
{
  return self->scene.unit * self->scene.theme->weight;
}

static void
clip_to_plot (const RwTrimMapLayout *self,
              cairo_t               *cr)
{
  const RwRect *plot = &self->scene.plot;

  cairo_rectangle (cr, plot->x, plot->y, plot->width, plot->height);
  cairo_clip (cr);
}

static void
ink_vertical (const RwTrimMapLayout *self,
              cairo_t               *cr,
              double                 x)
{
  const RwRect *plot = &self->scene.plot;

  rw_ink_line (cr, rw_ink_crisp (x), plot->y, rw_ink_crisp (x), rw_rect_bottom (plot));
}

static void
ink_triangle (cairo_t *cr,
              double   x,
              double   y,
              double   dx,
              double   dy)
{
  cairo_new_path (cr);
  cairo_move_to (cr, x, y);
  cairo_line_to (cr, x + dx - dy * 0.8, y + dy - dx * 0.8);
  cairo_line_to (cr, x + dx + dy * 0.8, y + dy + dx * 0.8);
  cairo_close_path (cr);
  cairo_fill (cr);
}

/* --- window and gap ----------------------------------------------------------------------- */

static void
ink_window (const RwTrimMapLayout *self,
            cairo_t               *cr)
{
  const RwRect *plot = &self->scene.plot;
  const RwTheme *theme = self->scene.theme;
  const RwTrimMapBand *band = &self->window;
  const RwColor color = theme->verdicts[RW_VERDICT_INSIDE];

  if (!band->shown)
    return;
  rw_ink_color (cr, rw_ink_mixed (color, theme->paper, window_share));
  cairo_rectangle (cr, band->x0, plot->y, band->x1 - band->x0, plot->height);
  cairo_fill (cr);
  rw_ink_color (cr, rw_ink_mixed (color, theme->paper, 0.6));
  cairo_set_line_width (cr, hairline (self));
  if (!band->open0)
    ink_vertical (self, cr, band->x0);
  if (!band->open1)
    ink_vertical (self, cr, band->x1);
}

/* From end to end of the window, above the plot. */
static void
ink_bracket (const RwTrimMapLayout *self,
             cairo_t               *cr)
{
  const RwTrimMapBand *band = &self->window;
  const double unit = self->scene.unit;
  const double y = rw_ink_crisp (self->scene.plot.y - 5 * unit);

  if (!band->shown)
    return;
  rw_ink_color (cr, self->scene.theme->verdicts[RW_VERDICT_INSIDE]);
  cairo_set_line_width (cr, 2 * hairline (self));
  rw_ink_line (cr, band->x0, y, band->x1, y);
  if (!band->open0)
    rw_ink_line (cr, band->x0, y - 3 * unit, band->x0, self->scene.plot.y);
  if (!band->open1)
    rw_ink_line (cr, band->x1, y - 3 * unit, band->x1, self->scene.plot.y);
}

/* Slanted the other way than the space outside the limits, and closer. */
static void
ink_gap (const RwTrimMapLayout *self,
         cairo_t               *cr)
{
  const RwRect *plot = &self->scene.plot;
  const RwTheme *theme = self->scene.theme;
  const double spacing = gap_spacing * self->scene.unit;

  if (!self->gap.shown)
    return;
  cairo_save (cr);
  cairo_rectangle (cr, self->gap.x0, plot->y, self->gap.x1 - self->gap.x0, plot->height);
  cairo_clip (cr);
  for (double at = self->gap.x0 - plot->height; at < self->gap.x1; at += spacing)
    {
      cairo_move_to (cr, at, plot->y);
      cairo_line_to (cr, at + plot->height, rw_rect_bottom (plot));
    }
  rw_ink_color (cr, rw_ink_mixed (theme->verdicts[RW_VERDICT_OUTSIDE], theme->paper, gap_share));
  cairo_set_line_width (cr, hairline (self));
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* --- lines -------------------------------------------------------------------------------- */

static void
ink_band (const RwTrimMapLayout *self,
          const RwTrimMapLine   *line,
          cairo_t               *cr)
{
  const RwRect *plot = &self->scene.plot;
  const double step = plot->width / (RW_TRIM_MAP_STEPS - 1);
  const gboolean strong = self->scene.theme->weight > 1; /* high contrast: nothing shines through */

  if (!line->banded)
    return;
  cairo_new_path (cr);
  for (guint i = 0; i < RW_TRIM_MAP_STEPS; i++)
    cairo_line_to (cr, plot->x + i * step, line->hi[i]);
  if (strong)
    cairo_new_sub_path (cr);
  for (guint i = RW_TRIM_MAP_STEPS; i-- > 0;)
    cairo_line_to (cr, plot->x + i * step, line->lo[i]);
  rw_ink_color (cr, strong ? line->style.color : rw_ink_faded (line->style.color, band_share));
  if (strong)
    cairo_stroke (cr);
  else
    cairo_fill (cr);
}

static void
ink_line (const RwTrimMapLayout *self,
          const RwTrimMapLine   *line,
          cairo_t               *cr)
{
  if (!line->seen)
    return;
  rw_ink_color (cr, line->style.color);
  rw_ink_dashes (cr, &line->style, self->scene.unit);
  cairo_set_line_width (cr, (line->chosen ? 2.6 : 1.7) * hairline (self));
  rw_ink_line (cr, line->x0, line->y0, line->x1, line->y1);
  cairo_set_dash (cr, NULL, 0, 0);
}

static void
ink_lines (const RwTrimMapLayout *self,
           cairo_t               *cr)
{
  cairo_save (cr);
  clip_to_plot (self, cr);
  cairo_set_line_width (cr, hairline (self));
  for (guint i = 0; i < self->lines->len; i++)
    ink_band (self, &g_array_index (self->lines, RwTrimMapLine, i), cr);
  for (guint i = 0; i < self->lines->len; i++)
    ink_line (self, &g_array_index (self->lines, RwTrimMapLine, i), cr);
  cairo_restore (cr);
}

/* From where the line leaves the plot to its name; dotted along the edge when that is before the
 * right end. */
static void
ink_leader (const RwTrimMapLayout *self,
            const RwTrimMapLine   *line,
            cairo_t               *cr)
{
  const double right = rw_rect_right (&self->scene.plot), unit = self->scene.unit;
  const double dots[] = { unit, 3 * unit };
  const double away = line->beyond > 0 ? -1 : 1;

  cairo_set_line_width (cr, hairline (self));
  rw_ink_color (cr, rw_ink_mixed (line->style.color, self->scene.theme->paper, 0.6));
  rw_ink_line (cr, right + unit, line->end_y, line->marker_x - (mark_size / 2 + 3) * unit,
               line->label_y);
  if (line->beyond == 0)
    return;
  cairo_set_dash (cr, dots, G_N_ELEMENTS (dots), 0);
  if (line->seen)
    rw_ink_line (cr, line->x1, line->end_y, right, line->end_y);
  cairo_set_dash (cr, NULL, 0, 0);
  rw_ink_color (cr, line->style.color);
  if (!line->seen)
    ink_triangle (cr, right - 8 * unit, line->end_y, 0, -away * 7 * unit);
}

static void
ink_names (const RwTrimMapLayout *self,
           cairo_t               *cr)
{
  for (guint i = 0; i < self->lines->len; i++)
    {
      const RwTrimMapLine *line = &g_array_index (self->lines, RwTrimMapLine, i);

      ink_leader (self, line, cr);
      rw_ink_marker (cr, line->style.marker, RW_FILL_SOLID, line->marker_x, line->label_y,
                     mark_size * self->scene.unit, line->style.color, self->scene.theme->paper);
      if (line->name != NULL)
        rw_chart_text_ink (self->in.text, cr, RW_TEXT_LABEL, line->name, line->name_x,
                           line->label_y, 0, line->style.color);
    }
}

/* --- readings ----------------------------------------------------------------------------- */

/* A bar that the marker hides is not drawn; an end that runs off the plot has no cap. */
static void
ink_bar (const RwTrimMapLayout *self,
         cairo_t               *cr,
         const RwTrimMapMark   *mark,
         double                 size)
{
  const RwRect *plot = &self->scene.plot;
  const double end = cap * self->scene.unit;
  const double across[] = { mark->x_lo, mark->x_hi }, up[] = { mark->y_hi, mark->y_lo };

  if (mark->x_hi - mark->x_lo > size + 4 * self->scene.unit)
    {
      rw_ink_line (cr, mark->x_lo, mark->y, mark->x_hi, mark->y);
      for (guint i = 0; i < 2; i++)
        if (across[i] > plot->x && across[i] < rw_rect_right (plot))
          rw_ink_line (cr, across[i], mark->y - end, across[i], mark->y + end);
    }
  if (mark->y_lo - mark->y_hi > size + 4 * self->scene.unit)
    {
      rw_ink_line (cr, mark->x, mark->y_lo, mark->x, mark->y_hi);
      for (guint i = 0; i < 2; i++)
        if (up[i] > plot->y && up[i] < rw_rect_bottom (plot))
          rw_ink_line (cr, mark->x - end, up[i], mark->x + end, up[i]);
    }
}

/* A marker past the edge stands within it, and an arrow says where its value would be. */
static void
ink_arrow (const RwTrimMapLayout *self,
           const RwTrimMapMark   *mark,
           double                 size,
           double                *x,
           double                *y,
           cairo_t               *cr)
{
  const double arrow = size * 0.62, away = arrow + size * 0.85;

  rw_ink_color (cr, mark->style.color);
  if (mark->beyond_y != 0)
    ink_triangle (cr, *x - mark->beyond_x * away, *y, 0, mark->beyond_y * arrow);
  if (mark->beyond_x != 0)
    ink_triangle (cr, *x, *y + mark->beyond_y * away, -mark->beyond_x * arrow, 0);
  *x -= mark->beyond_x * away;
  *y += mark->beyond_y * away;
}

/* Two strokes through the marker. */
static void
ink_cross (cairo_t *cr,
           double   x,
           double   y,
           double   reach)
{
  rw_ink_line (cr, x - reach, y - reach, x + reach, y + reach);
  rw_ink_line (cr, x - reach, y + reach, x + reach, y - reach);
}

static void
ink_mark (const RwTrimMapLayout *self,
          const RwTrimMapMark   *mark,
          cairo_t               *cr)
{
  const RwColor color = mark->style.color, paper = self->scene.theme->paper;
  const double size = (mark->newest ? newest_size : mark_size) * self->scene.unit;
  const RwMarkerFill fill = mark->outlier ? RW_FILL_HOLLOW : RW_FILL_SOLID;
  double x = mark->x, y = mark->y;

  cairo_set_line_width (cr, 1.2 * hairline (self));
  rw_ink_color (cr, color);
  if (mark->beyond_x != 0 || mark->beyond_y != 0)
    ink_arrow (self, mark, size, &x, &y, cr);
  else
    ink_bar (self, cr, mark, size);
  /* A rim of paper keeps markers apart where they crowd. */
  rw_ink_marker (cr, mark->style.marker, RW_FILL_SOLID, x, y, size + 3 * self->scene.unit, paper,
                 paper);
  rw_ink_marker (cr, mark->style.marker, fill, x, y, size, color, paper);
  rw_ink_color (cr, color);
  if (mark->outlier)
    ink_cross (cr, x, y, size * 0.8);
}

/* --- verticals ---------------------------------------------------------------------------- */

static void
ink_set_point (const RwTrimMapLayout *self,
               cairo_t               *cr)
{
  const double unit = self->scene.unit;
  const double dashes[] = { 6 * unit, 3 * unit };

  if (isnan (self->set_x))
    return;
  rw_ink_color (cr, self->scene.theme->ink);
  cairo_set_line_width (cr, 1.3 * hairline (self));
  cairo_set_dash (cr, dashes, G_N_ELEMENTS (dashes), 0);
  ink_vertical (self, cr, self->set_x);
  cairo_set_dash (cr, NULL, 0, 0);
  ink_triangle (cr, self->set_x, self->scene.plot.y + 2 * unit, 0, -1.4 * notch * unit);
}

static void
ink_bounds (const RwTrimMapLayout *self,
            cairo_t               *cr)
{
  const RwRect *plot = &self->scene.plot;
  const double unit = self->scene.unit;

  for (guint i = 0; i < self->n_bounds; i++)
    {
      const RwTrimMapBound *bound = &self->bounds[i];
      const double away = bound->lower ? 1 : -1;

      if (isnan (bound->x))
        continue;
      rw_ink_color (cr, bound->style.color);
      cairo_set_line_width (cr, 2 * hairline (self));
      rw_ink_line (cr, bound->x, plot->y - 5 * unit, bound->x, rw_rect_bottom (plot));
      /* The way the rail would have the screw go. */
      rw_ink_line (cr, bound->x, plot->y - 5 * unit, bound->x + away * 14 * unit,
                   plot->y - 5 * unit);
      ink_triangle (cr, bound->x + away * 20 * unit, plot->y - 5 * unit, -away * notch * unit, 0);
    }
}

static void
ink_diamonds (const RwTrimMapLayout *self,
              cairo_t               *cr)
{
  const RwTrimMapNeedle *needle = &self->needle;
  const double size = diamond_size * self->scene.unit;

  for (guint i = 0; i < needle->diamonds->len; i++)
    {
      const RwTrimMapDiamond *diamond = &g_array_index (needle->diamonds, RwTrimMapDiamond, i);

      cairo_set_line_width (cr, 1.4 * hairline (self));
      rw_ink_color (cr, diamond->style.color);
      if (isfinite (diamond->y_lo) && isfinite (diamond->y_hi))
        rw_ink_line (cr, needle->x, diamond->y_lo, needle->x, diamond->y_hi);
      rw_ink_marker (cr, RW_MARKER_DIAMOND, diamond->measured ? RW_FILL_SOLID : RW_FILL_HOLLOW,
                     needle->x, diamond->y, size, diamond->style.color, self->scene.theme->paper);
    }
}

static void
ink_needle (const RwTrimMapLayout *self,
            cairo_t               *cr)
{
  const RwTrimMapNeedle *needle = &self->needle;
  const RwTheme *theme = self->scene.theme;
  const double unit = self->scene.unit, bottom = rw_rect_bottom (&self->scene.plot);
  const RwColor color = needle->now.live ? theme->ink : theme->quiet;

  if (!needle->shown)
    return;
  rw_ink_color (cr, color);
  if (needle->beyond != 0)
    ink_triangle (cr, needle->x + needle->beyond * unit, bottom - 6 * unit,
                  -needle->beyond * notch * unit, 0);
  else
    {
      cairo_set_line_width (cr, (needle->now.live ? 2 : 1.2) * hairline (self));
      rw_ink_line (cr, needle->x, self->scene.plot.y, needle->x, bottom);
      ink_triangle (cr, needle->x, bottom - 2 * unit, 0, 1.4 * notch * unit);
    }
  ink_diamonds (self, cr);
}

/* Paper on ink while the meter speaks; else words on paper in a frame. */
static void
ink_plate (const RwTrimMapLayout *self,
           cairo_t               *cr)
{
  const RwTrimMapNeedle *needle = &self->needle;
  const RwTheme *theme = self->scene.theme;
  const RwRect *plate = &needle->plate;

  if (!needle->shown)
    return;
  cairo_rectangle (cr, plate->x + 0.5, plate->y + 0.5, plate->width - 1, plate->height - 1);
  rw_ink_color (cr, needle->now.live ? theme->ink : theme->paper);
  cairo_fill_preserve (cr);
  rw_ink_color (cr, needle->now.live ? theme->ink : theme->quiet);
  cairo_set_line_width (cr, hairline (self));
  cairo_stroke (cr);
  rw_chart_text_ink (self->in.text, cr, RW_TEXT_CAPTION, needle->words,
                     plate->x + plate->width / 2, plate->y + plate->height / 2, 0.5,
                     needle->now.live ? theme->paper : theme->ink);
}

/* --- words -------------------------------------------------------------------------------- */

static void
ink_ticks (const RwTrimMapLayout *self,
           cairo_t               *cr)
{
  const RwTheme *theme = self->scene.theme;
  const RwRect *plot = &self->scene.plot;
  const double bottom = rw_ink_crisp (rw_rect_bottom (plot));

  cairo_set_line_width (cr, hairline (self));
  rw_ink_color (cr, theme->line);
  rw_ink_line (cr, plot->x, bottom, rw_rect_right (plot), bottom);
  for (guint i = 0; i < self->ticks->len; i++)
    {
      const RwAxisTick *tick = &g_array_index (self->ticks, RwAxisTick, i);
      const double x = rw_ink_crisp (tick->at);

      rw_ink_color (cr, theme->line);
      rw_ink_line (cr, x, bottom, x, bottom + tick_length * self->scene.unit);
      if (tick->shown)
        rw_chart_text_ink (self->in.text, cr, RW_TEXT_CAPTION, tick->words, tick->words_at,
                           self->ticks_y, 0.5, theme->quiet);
    }
}

static void
ink_words (const RwTrimMapLayout *self,
           cairo_t               *cr)
{
  for (guint i = 0; i < self->labels->len; i++)
    {
      const RwTrimMapLabel *label = &g_array_index (self->labels, RwTrimMapLabel, i);

      rw_chart_text_ink (self->in.text, cr, RW_TEXT_CAPTION, label->words, label->x, label->y, 0,
                         label->color);
    }
  if (self->axis_words != NULL)
    rw_chart_text_ink (self->in.text, cr, RW_TEXT_CAPTION, self->axis_words, self->axis_x,
                       self->foot_y, 1, self->scene.theme->quiet);
  if (self->note_words != NULL)
    rw_chart_text_ink (self->in.text, cr, RW_TEXT_CAPTION, self->note_words, self->note_x,
                       self->foot_y, 0, self->scene.theme->quiet);
}

static void
ink_instead (const RwTrimMapLayout *self,
             cairo_t               *cr)
{
  const double height = 1.35 * rw_chart_text_height (self->in.text, RW_TEXT_BODY);
  double y = self->in.height / 2 - (self->instead->len - 1.0) / 2 * height;

  for (guint i = 0; i < self->instead->len; i++, y += height)
    rw_chart_text_ink (self->in.text, cr, RW_TEXT_BODY, g_ptr_array_index (self->instead, i),
                       self->in.width / 2, y, 0.5, self->scene.theme->quiet);
}

static void
ink_picture (const RwTrimMapLayout *self,
             cairo_t               *cr)
{
  ink_window (self, cr);
  rw_limits_layer_ink (&self->limits, &self->scene, cr);
  ink_gap (self, cr);
  ink_ticks (self, cr);
  ink_lines (self, cr);
  ink_names (self, cr);
  ink_bracket (self, cr);
  ink_bounds (self, cr);
  ink_set_point (self, cr);
  ink_needle (self, cr);
  for (guint i = 0; i < self->marks->len; i++)
    ink_mark (self, &g_array_index (self->marks, RwTrimMapMark, i), cr);
  if (self->limits_named)
    rw_limits_layer_ink_words (&self->limits, &self->scene, cr);
  ink_plate (self, cr);
  ink_words (self, cr);
}

void
rw_trim_map_layout_ink (const RwTrimMapLayout *self,
                        cairo_t               *cr)
{
  cairo_save (cr);
  cairo_set_dash (cr, NULL, 0, 0);
  rw_ink_color (cr, self->scene.theme->paper);
  cairo_rectangle (cr, 0, 0, self->in.width, self->in.height);
  cairo_fill (cr);
  if (self->instead != NULL)
    ink_instead (self, cr);
  else
    ink_picture (self, cr);
  rw_chart_title_ink (&self->scene, cr);
  cairo_restore (cr);
}
