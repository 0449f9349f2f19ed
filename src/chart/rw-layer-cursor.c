/* rw-layer-cursor.c: where the pointer or the arrow keys are.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-layer-cursor.h"

#include "rw-ink.h"

static const double ring_radius = 9;
static const double tag_away = 14; /* from the point to the box */
static const double tag_padding = 6;

/* Above the point and to its right, on the other side where there is no room, and never off the
 * picture. */
static void
place_tag (RwCursorLayer *self,
           const RwScene *scene,
           double         x,
           double         y)
{
  const double padding = tag_padding * scene->unit, away = tag_away * scene->unit;
  const double width = rw_chart_text_width (scene->in.text, RW_TEXT_CAPTION, self->words)
                       + 2 * padding;
  const double height = rw_chart_text_height (scene->in.text, RW_TEXT_CAPTION) + 2 * padding;
  const double left = x + away + width <= scene->in.width ? x + away : x - away - width;
  const double top = y - away - height >= scene->plot.y ? y - away - height : y + away;

  self->tag = (RwRect){ MAX (MIN (left, scene->in.width - width), 0),
                        MAX (MIN (top, scene->in.height - height), 0), width, height };
}

void
rw_cursor_layer_layout (RwCursorLayer    *self,
                        const RwScene    *scene,
                        const RwChartHit *hit)
{
  const double room = scene->in.width - 2 * tag_padding * scene->unit;

  *self = (RwCursorLayer){ .line_x = hit->x, .ring_x = hit->x, .ring_y = hit->y };
  self->ring_radius = hit->kind == RW_HIT_VERTICAL ? 0 : ring_radius * scene->unit;
  self->words = rw_chart_text_fit (scene->in.text, RW_TEXT_CAPTION,
                                   hit->text != NULL ? hit->text : "", room);
  if (self->words == NULL)
    self->words = g_strdup ("");
  place_tag (self, scene, hit->x, hit->y);
}

void
rw_cursor_layer_clear (RwCursorLayer *self)
{
  g_clear_pointer (&self->words, g_free);
}

static void
ink_tag (const RwCursorLayer *self,
         const RwScene       *scene,
         cairo_t             *cr)
{
  const RwTheme *theme = scene->theme;
  const double radius = 4 * scene->unit;
  const RwRect *tag = &self->tag;

  cairo_new_path (cr);
  cairo_arc (cr, tag->x + radius, tag->y + radius, radius, G_PI, 1.5 * G_PI);
  cairo_arc (cr, rw_rect_right (tag) - radius, tag->y + radius, radius, 1.5 * G_PI, 2 * G_PI);
  cairo_arc (cr, rw_rect_right (tag) - radius, rw_rect_bottom (tag) - radius, radius, 0,
             0.5 * G_PI);
  cairo_arc (cr, tag->x + radius, rw_rect_bottom (tag) - radius, radius, 0.5 * G_PI, G_PI);
  cairo_close_path (cr);
  rw_ink_color (cr, theme->paper);
  cairo_fill_preserve (cr);
  rw_ink_color (cr, theme->line);
  cairo_set_line_width (cr, scene->unit * theme->weight);
  cairo_stroke (cr);
  rw_chart_text_ink (scene->in.text, cr, RW_TEXT_CAPTION, self->words,
                     tag->x + tag_padding * scene->unit, tag->y + tag->height / 2, 0, theme->ink);
}

void
rw_cursor_layer_ink (const RwCursorLayer *self,
                     const RwScene       *scene,
                     cairo_t             *cr)
{
  const double x = rw_ink_crisp (self->line_x);

  cairo_save (cr);
  cairo_set_dash (cr, NULL, 0, 0);
  rw_ink_color (cr, scene->theme->accent);
  cairo_set_line_width (cr, scene->unit * scene->theme->weight);
  rw_ink_line (cr, x, scene->plot.y, x, rw_rect_bottom (&scene->plot));
  if (self->ring_radius > 0)
    {
      cairo_set_line_width (cr, 2 * scene->unit);
      cairo_arc (cr, self->ring_x, self->ring_y, self->ring_radius, 0, 2 * G_PI);
      cairo_stroke (cr);
    }
  if (self->words[0] != '\0')
    ink_tag (self, scene, cr);
  cairo_restore (cr);
}
