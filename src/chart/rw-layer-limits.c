/* rw-layer-limits.c: the two limits, the middle, and the space outside.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The space outside is tinted and hatched in the colour of ink: it is a place, not an alarm. In
 * position the lines are named at the left, where an axis has its numbers; in volts the numbers
 * stand there, and the names with their volts go onto the plot, just outside the lines.
 *
 * In a low picture the names of the two limits move apart, and stay between the rows above the plot
 * and the times below it. The middle is named only where that leaves room for it; where there is no
 * room for two, the weak limit goes without: past the strong one a board can be hurt.
 */
#include "config.h"

#include "rw-layer-limits.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-ink.h"
#include "rw-layer-ends.h"
#include "rw-quantity.h"

static const double hatch_spacing = 9;
static const double label_gap = 9;

static const char *
limit_name (RwLimit limit)
{
  if (limit == RW_LIMIT_MIDDLE)
    return _ ("middle");
  return limit == RW_LIMIT_STRONG ? _ ("strong limit") : _ ("weak limit");
}

static char *
limit_words (const RwScene *scene,
             RwLimit        limit,
             double         value)
{
  if (scene->mode == RW_VIEW_POSITION)
    return g_strdup (limit_name (limit));

  const gboolean drop = g_str_equal (scene->rail, RW_RAIL_GROUND);
  g_autofree char *volts = rw_quantity_format (value, drop ? 0.001 : 0.01, RW_KIND_DC);

  /* Translators: a line on the chart: "strong limit" and its volts. A drop has just limits. */
  return g_strdup_printf (_ ("%s %s"), drop ? _ ("limit") : limit_name (limit), volts);
}

static void
place_words (RwLimitsLayer *self,
             const RwScene *scene,
             RwLimit        limit)
{
  const double height = rw_chart_text_height (scene->in.text, RW_TEXT_CAPTION);

  if (scene->mode == RW_VIEW_POSITION)
    {
      self->align = 1;
      self->words_x[limit] = scene->plot.x - label_gap * scene->unit;
      self->words_y[limit] = self->y[limit];
      return;
    }

  const double middle = self->y[RW_LIMIT_MIDDLE];
  const double away = self->y[limit] <= middle ? -1 : 1;

  self->align = 0;
  self->plates = TRUE;
  self->words_x[limit] = scene->plot.x + label_gap * scene->unit;
  self->words_y[limit] = self->y[limit] + away * (height / 2 + 3 * scene->unit);
}

/* Middles of the uppermost and of the lowest words that there is room for. */
static void
find_room (const RwLimitsLayer *self,
           const RwScene       *scene,
           double              *top,
           double              *bottom)
{
  const double half = rw_chart_text_height (scene->in.text, RW_TEXT_CAPTION) / 2;
  const double below = self->plates ? 0 : RW_SCENE_TIME_GAP * scene->unit;

  *top = scene->plot.y + half;
  *bottom = MAX (rw_rect_bottom (&scene->plot) + below - half, *top);
}

/* The words of both limits as near to their lines as they can be. */
static void
part_limits (RwLimitsLayer *self,
             double         height,
             double         top,
             double         bottom)
{
  const gboolean upright = self->words_y[RW_LIMIT_STRONG] <= self->words_y[RW_LIMIT_WEAK];
  const RwLimit order[2] = { upright ? RW_LIMIT_STRONG : RW_LIMIT_WEAK,
                             upright ? RW_LIMIT_WEAK : RW_LIMIT_STRONG };
  double y[2];
  guint n = 0;

  if (self->named[RW_LIMIT_STRONG] && bottom - top < height)
    self->named[RW_LIMIT_WEAK] = FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (order); i++)
    if (self->named[order[i]])
      y[n++] = self->words_y[order[i]];
  rw_ends_spread (y, n, height, top, bottom);
  n = 0;
  for (guint i = 0; i < G_N_ELEMENTS (order); i++)
    if (self->named[order[i]])
      self->words_y[order[i]] = y[n++];
}

static void
name_limits (RwLimitsLayer *self,
             const RwScene *scene)
{
  const double height = rw_chart_text_height (scene->in.text, RW_TEXT_CAPTION);
  const double middle = self->words_y[RW_LIMIT_MIDDLE];
  double top, bottom;

  for (guint i = 0; i < RW_N_LIMITS; i++)
    self->named[i] = self->shown[i] && (i != RW_LIMIT_MIDDLE || !self->plates);
  find_room (self, scene, &top, &bottom);
  part_limits (self, height, top, bottom);
  for (guint i = 0; i < RW_N_LIMITS; i++)
    if (i != RW_LIMIT_MIDDLE && self->named[i] && fabs (self->words_y[i] - middle) < height)
      self->named[RW_LIMIT_MIDDLE] = FALSE;
  if (middle < top || middle > bottom)
    self->named[RW_LIMIT_MIDDLE] = FALSE;
}

/* The two bands between the edges of the plot and the outermost limits. */
static void
place_outside (RwLimitsLayer *self,
               const RwScene *scene)
{
  const RwRect *plot = &scene->plot;
  const double one = CLAMP (self->y[RW_LIMIT_STRONG], plot->y, rw_rect_bottom (plot));
  const double other = CLAMP (self->y[RW_LIMIT_WEAK], plot->y, rw_rect_bottom (plot));
  const double upper = MIN (one, other), lower = MAX (one, other);

  self->outside[0] = (RwRect){ plot->x, plot->y, plot->width, upper - plot->y };
  self->outside[1] = (RwRect){ plot->x, lower, plot->width, rw_rect_bottom (plot) - lower };
}

void
rw_limits_layer_layout (RwLimitsLayer *self,
                        const RwScene *scene)
{
  const double values[RW_N_LIMITS] = { scene->strong, scene->middle, scene->weak };

  *self = (RwLimitsLayer){ 0 };
  if (!scene->limited)
    return;
  for (guint i = 0; i < RW_N_LIMITS; i++)
    {
      self->y[i] = rw_axis_to_pixel (&scene->scale, values[i]);
      self->shown[i] = isfinite (values[i]) && rw_axis_beyond (&scene->scale, values[i]) == 0;
    }
  for (guint i = 0; i < RW_N_LIMITS; i++)
    {
      self->words[i] = limit_words (scene, (RwLimit) i, values[i]);
      place_words (self, scene, (RwLimit) i);
    }
  name_limits (self, scene);
  place_outside (self, scene);
}

void
rw_limits_layer_clear (RwLimitsLayer *self)
{
  for (guint i = 0; i < RW_N_LIMITS; i++)
    g_clear_pointer (&self->words[i], g_free);
}

/* Slanted lines, each starting on the same raster whatever the rectangle, so that both bands match.
 */
static void
ink_hatch (const RwScene *scene,
           cairo_t       *cr,
           const RwRect  *rect)
{
  const double spacing = hatch_spacing * scene->unit;
  const double first = spacing * floor ((rect->x - rw_rect_bottom (rect)) / spacing);

  cairo_save (cr);
  cairo_rectangle (cr, rect->x, rect->y, rect->width, rect->height);
  cairo_clip (cr);
  for (double at = first; at + rect->y < rw_rect_right (rect); at += spacing)
    {
      cairo_move_to (cr, at + rw_rect_bottom (rect), rw_rect_bottom (rect));
      cairo_line_to (cr, at + rect->y, rect->y);
    }
  rw_ink_color (cr, scene->theme->hatch);
  cairo_set_line_width (cr, scene->unit);
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
ink_outside (const RwScene *scene,
             cairo_t       *cr,
             const RwRect  *rect)
{
  if (!(rect->height > 0))
    return;
  rw_ink_color (cr, scene->theme->tint);
  cairo_rectangle (cr, rect->x, rect->y, rect->width, rect->height);
  cairo_fill (cr);
  ink_hatch (scene, cr, rect);
}

void
rw_limits_layer_ink (const RwLimitsLayer *self,
                     const RwScene       *scene,
                     cairo_t             *cr)
{
  const double width = scene->unit * scene->theme->weight;
  const double dots[] = { 1.5 * scene->unit, 4.5 * scene->unit };

  cairo_save (cr);
  for (guint i = 0; i < G_N_ELEMENTS (self->outside); i++)
    ink_outside (scene, cr, &self->outside[i]);
  cairo_set_line_width (cr, width);
  rw_ink_color (cr, scene->theme->line);
  for (guint i = 0; i < RW_N_LIMITS; i++)
    {
      if (!self->shown[i])
        continue;
      cairo_set_dash (cr, dots, i == RW_LIMIT_MIDDLE ? 2 : 0, 0);
      rw_ink_line (cr, scene->plot.x, rw_ink_crisp (self->y[i]), rw_rect_right (&scene->plot),
                   rw_ink_crisp (self->y[i]));
    }
  cairo_restore (cr);
}

/* Verticals and hatching would run through the letters. */
static void
ink_plate (const RwLimitsLayer *self,
           const RwScene       *scene,
           guint                limit,
           cairo_t             *cr)
{
  const double pad = 3 * scene->unit;
  const double height = rw_chart_text_height (scene->in.text, RW_TEXT_CAPTION);
  const double width = rw_chart_text_width (scene->in.text, RW_TEXT_CAPTION, self->words[limit]);
  const RwTheme *theme = scene->theme;

  rw_ink_color (cr, rw_ink_mixed (theme->tint, theme->paper, theme->tint.a));
  cairo_rectangle (cr, self->words_x[limit] - pad, self->words_y[limit] - height / 2,
                   width + 2 * pad, height);
  cairo_fill (cr);
}

void
rw_limits_layer_ink_words (const RwLimitsLayer *self,
                           const RwScene       *scene,
                           cairo_t             *cr)
{
  for (guint i = 0; i < RW_N_LIMITS; i++)
    {
      if (!self->named[i])
        continue;
      if (self->plates)
        ink_plate (self, scene, i, cr);
      rw_chart_text_ink (scene->in.text, cr, RW_TEXT_CAPTION, self->words[i], self->words_x[i],
                         self->words_y[i], self->align, scene->theme->quiet);
    }
}
