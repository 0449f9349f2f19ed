/* rw-layer-axes.c: time along the bottom; in volts, numbers up the side.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-layer-axes.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-ink.h"
#include "rw-quantity.h"

static const double time_spacing = 84; /* least pixels between times */
static const double scale_spacing = 42;
static const double tick_length = 5;
static const double millivolts_below = 0.2;
static const double longest_time = 1e9; /* seconds: a clock shows no more */

static void
clear_tick (gpointer data)
{
  g_clear_pointer (&((RwAxisTick *) data)->words, g_free);
}

static GArray *
tick_list (void)
{
  GArray *list = g_array_new (FALSE, FALSE, sizeof (RwAxisTick));

  g_array_set_clear_func (list, clear_tick);
  return list;
}

/* Numbers stay on the picture; one that would touch the one before is left out. */
static void
layout_time (RwAxesLayer   *self,
             const RwScene *scene)
{
  RwChartText *text = scene->in.text;
  const RwTicks ticks = rw_axis_clock_ticks (&scene->time, time_spacing * scene->unit);
  const double gap = 6 * scene->unit;
  double taken = 0;

  for (guint i = 0; i < ticks.n; i++)
    {
      const double t = rw_ticks_at (&ticks, i);
      RwAxisTick tick = { .at = rw_axis_to_pixel (&scene->time, t),
                          .words = rw_quantity_format_clock (MIN (t, longest_time)) };
      const double half = rw_chart_text_width (text, RW_TEXT_CAPTION, tick.words) / 2;

      tick.words_at = MAX (MIN (tick.at, scene->in.width - half), half);
      tick.shown = tick.words_at - half >= taken;
      if (tick.shown)
        taken = tick.words_at + half + gap;
      g_array_append_val (self->time, tick);
    }
  self->unit_x = scene->in.width - gap;
  if (self->unit_x - rw_chart_text_width (text, RW_TEXT_CAPTION, _ ("since start")) >= taken)
    self->unit_words = g_strdup (_ ("since start"));
}

static void
layout_scale (RwAxesLayer   *self,
              const RwScene *scene)
{
  const RwTicks ticks = rw_axis_ticks (&scene->scale, scale_spacing * scene->unit);
  const double half = rw_chart_text_height (scene->in.text, RW_TEXT_CAPTION) / 2;
  const gboolean milli = MAX (fabs (scene->scale.lo), fabs (scene->scale.hi)) < millivolts_below;

  self->scale_unit = milli ? "mV" : rw_kind_get_unit (RW_KIND_DC);
  for (guint i = 0; i < ticks.n; i++)
    {
      const double value = rw_ticks_at (&ticks, i);
      RwAxisTick tick = { .at = rw_axis_to_pixel (&scene->scale, value),
                          .words = milli ? rw_quantity_format_number (value * 1e3,
                                                                      MAX (ticks.decimals - 3, 0))
                                         : rw_quantity_format_number (value, ticks.decimals),
                          .shown = TRUE };

      tick.words_at = CLAMP (tick.at, half, scene->in.height - half);
      g_array_append_val (self->scale, tick);
    }
}

void
rw_axes_layer_layout (RwAxesLayer   *self,
                      const RwScene *scene)
{
  *self = (RwAxesLayer){ .time = tick_list (), .scale = tick_list () };
  self->words_y = rw_rect_bottom (&scene->plot) + RW_SCENE_TIME_GAP * scene->unit
                  + rw_chart_text_height (scene->in.text, RW_TEXT_CAPTION) / 2;
  layout_time (self, scene);
  if (scene->mode == RW_VIEW_VOLTS)
    layout_scale (self, scene);
}

void
rw_axes_layer_clear (RwAxesLayer *self)
{
  g_clear_pointer (&self->time, g_array_unref);
  g_clear_pointer (&self->scale, g_array_unref);
  g_clear_pointer (&self->unit_words, g_free);
}

static void
ink_scale (const RwAxesLayer *self,
           const RwScene     *scene,
           cairo_t           *cr)
{
  const RwTheme *theme = scene->theme;

  for (guint i = 0; i < self->scale->len; i++)
    {
      const RwAxisTick *tick = &g_array_index (self->scale, RwAxisTick, i);

      rw_ink_color (cr, theme->grid);
      rw_ink_line (cr, scene->plot.x, rw_ink_crisp (tick->at), rw_rect_right (&scene->plot),
                   rw_ink_crisp (tick->at));
      rw_chart_text_ink (scene->in.text, cr, RW_TEXT_CAPTION, tick->words,
                         scene->plot.x - 9 * scene->unit, tick->words_at, 1, theme->quiet);
    }
  if (self->scale_unit != NULL)
    rw_chart_text_ink (scene->in.text, cr, RW_TEXT_CAPTION, self->scale_unit,
                       scene->plot.x - 9 * scene->unit, scene->trim_lane_y, 1, theme->quiet);
}

static void
ink_time (const RwAxesLayer *self,
          const RwScene     *scene,
          cairo_t           *cr)
{
  const RwTheme *theme = scene->theme;
  const double bottom = rw_ink_crisp (rw_rect_bottom (&scene->plot));

  rw_ink_color (cr, theme->line);
  rw_ink_line (cr, scene->plot.x, bottom, rw_rect_right (&scene->plot), bottom);
  for (guint i = 0; i < self->time->len; i++)
    {
      const RwAxisTick *tick = &g_array_index (self->time, RwAxisTick, i);

      rw_ink_color (cr, theme->line);
      rw_ink_line (cr, rw_ink_crisp (tick->at), bottom, rw_ink_crisp (tick->at),
                   bottom + tick_length * scene->unit);
      if (tick->shown)
        rw_chart_text_ink (scene->in.text, cr, RW_TEXT_CAPTION, tick->words, tick->words_at,
                           self->words_y, 0.5, theme->quiet);
    }
  if (self->unit_words != NULL)
    rw_chart_text_ink (scene->in.text, cr, RW_TEXT_CAPTION, self->unit_words, self->unit_x,
                       self->words_y, 1, theme->quiet);
}

void
rw_axes_layer_ink (const RwAxesLayer *self,
                   const RwScene     *scene,
                   cairo_t           *cr)
{
  cairo_save (cr);
  cairo_set_line_width (cr, scene->unit * scene->theme->weight);
  ink_scale (self, scene, cr);
  ink_time (self, scene, cr);
  cairo_restore (cr);
}
