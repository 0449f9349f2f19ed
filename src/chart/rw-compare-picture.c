/* rw-compare-picture.c: the charts of two sessions side by side on one scale.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two pictures of one size need not have plots of one size: names and labels ask for different room. So each is laid out
 * once in its half to learn what lies around its plot, and then both get the size that makes the plots equal. Since what
 * lies around depends a little on the size in turn, names being cut, that goes round until the plots are alike.
 */
#include "config.h"

#include "rw-compare-picture-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-compare-words.h"

static const double gap = 12;
static const double tolerance = 0.01; /* pixels */
static const guint most_rounds = 6;
static const double narrow = 640; /* pixels at text scale 1: less is too little for two beside each other */

/* --- making and setting ------------------------------------------------------------------------- */

static void
changed_cb (RwComparePicture *self)
{
  if (self->laying_out)
    return;
  self->laid_out = FALSE;
  if (self->changed != NULL)
    self->changed (self->user_data);
}

static void
half_init (RwCompareHalf    *half,
           RwComparePicture *self,
           RwSession        *session,
           RwBenchState     *state,
           const RwTrimSet  *set)
{
  g_autofree char *date = rw_compare_words_date (session);

  half->view = rw_view_new (session);
  half->chart = rw_chart_new (session, half->view);
  half->map = rw_trim_map_new (half->view);
  rw_chart_set_state (half->chart, state);
  rw_chart_set_title (half->chart, date, NULL);
  rw_trim_map_set_set (half->map, set);
  rw_trim_map_set_title (half->map, date, NULL);
  g_signal_connect_swapped (half->chart, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (half->map, "changed", G_CALLBACK (changed_cb), self);
}

static void
half_clear (RwCompareHalf    *half,
            RwComparePicture *self)
{
  g_signal_handlers_disconnect_by_data (half->chart, self);
  g_signal_handlers_disconnect_by_data (half->map, self);
  g_clear_object (&half->chart);
  g_clear_object (&half->map);
  g_clear_object (&half->view);
}

RwComparePicture *
rw_compare_picture_new (RwCompare           *compare,
                        RwComparePictureFunc changed,
                        gpointer             user_data)
{
  RwComparePicture *self = g_new0 (RwComparePicture, 1);
  RwSession *then = rw_compare_get_then (compare), *now = rw_compare_get_now (compare);
  const double longest = MAX (rw_session_get_end (then), rw_session_get_end (now));

  self->compare = rw_compare_ref (compare);
  self->theme = RW_THEME_LIGHT;
  self->text_scale = 1;
  self->draw_text = TRUE;
  half_init (&self->half[0], self, then, rw_compare_get_then_state (compare), rw_compare_get_trim_set (compare, FALSE));
  rw_trim_map_set_past (self->half[0].map, TRUE);
  half_init (&self->half[1], self, now, rw_compare_get_now_state (compare), rw_compare_get_trim_set (compare, TRUE));
  for (guint i = 0; i < 2; i++)
    {
      rw_view_set_horizon (self->half[i].view, longest);
      rw_view_fit (self->half[i].view);
    }
  self->changed = changed;
  self->user_data = user_data;
  return self;
}

void
rw_compare_picture_free (RwComparePicture *self)
{
  if (self == NULL)
    return;
  for (guint i = 0; i < 2; i++)
    half_clear (&self->half[i], self);
  g_clear_pointer (&self->font, pango_font_description_free);
  g_clear_pointer (&self->compare, rw_compare_unref);
  g_free (self);
}

void
rw_compare_picture_set_chart (RwComparePicture *self,
                              RwViewChart       chart)
{
  if (chart == self->which)
    return;
  self->which = chart;
  changed_cb (self);
}

RwViewChart
rw_compare_picture_get_chart (const RwComparePicture *self)
{
  return self->which;
}

void
rw_compare_picture_set_look (RwComparePicture *self,
                             RwThemeId         theme,
                             double            text_scale)
{
  self->theme = theme;
  self->text_scale = text_scale;
  for (guint i = 0; i < 2; i++)
    {
      rw_view_set_theme (self->half[i].view, theme);
      rw_view_set_text_scale (self->half[i].view, text_scale);
    }
}

void
rw_compare_picture_set_font (RwComparePicture           *self,
                             const PangoFontDescription *font)
{
  g_clear_pointer (&self->font, pango_font_description_free);
  self->font = font != NULL ? pango_font_description_copy (font) : NULL;
  for (guint i = 0; i < 2; i++)
    {
      rw_chart_set_font (self->half[i].chart, font);
      rw_trim_map_set_font (self->half[i].map, font);
    }
}

void
rw_compare_picture_set_draw_text (RwComparePicture *self,
                                  gboolean          draw_text)
{
  self->draw_text = draw_text;
  for (guint i = 0; i < 2; i++)
    {
      rw_chart_set_draw_text (self->half[i].chart, draw_text);
      rw_trim_map_set_draw_text (self->half[i].map, draw_text);
    }
}

void
rw_compare_picture_set_device_scale (RwComparePicture *self,
                                     double            scale)
{
  for (guint i = 0; i < 2; i++)
    rw_chart_set_device_scale (self->half[i].chart, scale);
}

void
rw_compare_picture_set_name_func (RwComparePicture *self,
                                  RwChartNameFunc   func,
                                  gpointer          user_data)
{
  for (guint i = 0; i < 2; i++)
    rw_chart_set_name_func (self->half[i].chart, func, user_data, NULL);
}

void
rw_compare_picture_zoom (RwComparePicture *self,
                         double            factor)
{
  for (guint i = 0; i < 2; i++)
    {
      RwView *view = self->half[i].view;

      rw_view_zoom (view, factor, (rw_view_get_start (view) + rw_view_get_end (view)) / 2);
    }
}

void
rw_compare_picture_pan (RwComparePicture *self,
                        double            share)
{
  for (guint i = 0; i < 2; i++)
    rw_view_pan (self->half[i].view, share);
}

void
rw_compare_picture_fit (RwComparePicture *self)
{
  for (guint i = 0; i < 2; i++)
    rw_view_fit (self->half[i].view);
}

/* --- one scale ---------------------------------------------------------------------------------- */

/* What lies around a plot. */
typedef struct
{
  double left, right, top, bottom;
} Frame;

static void
plot_of (RwComparePicture *self,
         guint             i,
         RwRect           *plot)
{
  if (self->which == RW_VIEW_TRIM)
    rw_trim_map_get_plot (self->half[i].map, plot);
  else
    rw_chart_get_plot (self->half[i].chart, plot);
}

static void
set_size (RwComparePicture *self,
          guint             i,
          double            width,
          double            height)
{
  if (self->which == RW_VIEW_TRIM)
    rw_trim_map_set_size (self->half[i].map, width, height);
  else
    rw_chart_set_size (self->half[i].chart, width, height);
}

static void
share_trim_range (RwComparePicture *self)
{
  const RwTrimMapRange own = { 0 };
  RwTrimMapRange a, b;

  for (guint i = 0; i < 2; i++)
    rw_trim_map_set_range (self->half[i].map, &own);
  if (!rw_trim_map_get_range (self->half[0].map, &a) || !rw_trim_map_get_range (self->half[1].map, &b))
    return;

  const RwTrimMapRange both = { MIN (a.volts_lo, b.volts_lo), MAX (a.volts_hi, b.volts_hi), MIN (a.lo, b.lo),
                                MAX (a.hi, b.hi) };

  for (guint i = 0; i < 2; i++)
    rw_trim_map_set_range (self->half[i].map, &both);
}

static void
share_range (RwComparePicture *self)
{
  double lo[2], hi[2];

  if (self->which == RW_VIEW_TRIM)
    {
      share_trim_range (self);
      return;
    }
  for (guint i = 0; i < 2; i++)
    {
      rw_chart_set_range (self->half[i].chart, 0, 0);
      rw_chart_get_range (self->half[i].chart, &lo[i], &hi[i]);
    }
  for (guint i = 0; i < 2; i++)
    rw_chart_set_range (self->half[i].chart, MIN (lo[0], lo[1]), MAX (hi[0], hi[1]));
}

/* FALSE: there is no plot. */
static gboolean
frame_of (RwComparePicture *self,
          guint             i,
          double            width,
          double            height,
          Frame            *out)
{
  RwRect plot = { 0 };

  set_size (self, i, width, height);
  plot_of (self, i, &plot);
  *out = (Frame){ plot.x, width - rw_rect_right (&plot), plot.y, height - rw_rect_bottom (&plot) };
  return plot.width > 0 && plot.height > 0;
}

/* Beside each other: one plot width from what both frames leave, and plots at one height. */
static void
place_beside (RwComparePicture *self,
              const Frame      *frames,
              double            width,
              double            height)
{
  const double sides = frames[0].left + frames[0].right + frames[1].left + frames[1].right;
  const double plot = MAX (floor ((width - gap - sides) / 2), 1); /* scenes keep to whole pixels */
  const double top = MAX (frames[0].top, frames[1].top), bottom = MAX (frames[0].bottom, frames[1].bottom);
  double x = 0;

  for (guint i = 0; i < 2; i++)
    {
      const double y = top - frames[i].top, below = bottom - frames[i].bottom;

      self->half[i].at = (RwRect){ x, y, frames[i].left + plot + frames[i].right, MAX (height - y - below, 1) };
      x = rw_rect_right (&self->half[i].at) + gap;
    }
}

/* Above each other: plots of one height and width, from one x on. */
static void
place_above (RwComparePicture *self,
             const Frame      *frames,
             double            width,
             double            height)
{
  const double ends = frames[0].top + frames[0].bottom + frames[1].top + frames[1].bottom;
  const double plot = MAX (floor ((height - gap - ends) / 2), 1);
  const double left = MAX (frames[0].left, frames[1].left), right = MAX (frames[0].right, frames[1].right);
  double y = 0;

  for (guint i = 0; i < 2; i++)
    {
      const double x = left - frames[i].left, past = right - frames[i].right;

      self->half[i].at = (RwRect){ x, y, MAX (width - x - past, 1), frames[i].top + plot + frames[i].bottom };
      y = rw_rect_bottom (&self->half[i].at) + gap;
    }
}

static void
place_plain (RwComparePicture *self,
             gboolean          beside,
             double            width,
             double            height)
{
  const double half = MAX (floor (((beside ? width : height) - gap) / 2), 1);

  for (guint i = 0; i < 2; i++)
    self->half[i].at = beside ? (RwRect){ i * (half + gap), 0, half, height } : (RwRect){ 0, i * (half + gap), width, half };
}

/* Of both halves as they are placed. FALSE: one has no plot. */
static gboolean
measure (RwComparePicture *self,
         Frame            *frames)
{
  gboolean plots = TRUE;

  for (guint i = 0; i < 2; i++)
    plots = frame_of (self, i, self->half[i].at.width, self->half[i].at.height, &frames[i]) && plots;
  return plots;
}

/* Plots of one size, beside or above each other in line. */
static gboolean
are_alike (RwComparePicture *self)
{
  RwRect then, now;

  plot_of (self, 0, &then);
  plot_of (self, 1, &now);
  return fabs (then.width - now.width) < tolerance && fabs (then.height - now.height) < tolerance
         && (fabs (then.y + self->half[0].at.y - now.y - self->half[1].at.y) < tolerance
             || fabs (then.x + self->half[0].at.x - now.x - self->half[1].at.x) < tolerance);
}

void
rw_compare_picture_lay_out (RwComparePicture *self,
                            double            width,
                            double            height)
{
  const gboolean beside = width >= narrow * self->text_scale;
  Frame frames[2];

  if (self->laid_out && width == self->width && height == self->height)
    return;
  self->laying_out = TRUE;
  self->width = width;
  self->height = height;
  place_plain (self, beside, width, height);
  share_range (self);

  for (guint round = 0; round < most_rounds && measure (self, frames) && !are_alike (self); round++)
    {
      if (beside)
        place_beside (self, frames, width, height);
      else
        place_above (self, frames, width, height);
      for (guint i = 0; i < 2; i++)
        set_size (self, i, self->half[i].at.width, self->half[i].at.height);
    }
  self->laying_out = FALSE;
  self->laid_out = TRUE;
}

/* --- showing ------------------------------------------------------------------------------------ */

static void
ink_half (RwComparePicture *self,
          guint             i,
          cairo_t          *cr,
          RwInkTarget       target)
{
  const RwRect *at = &self->half[i].at;

  cairo_save (cr);
  cairo_translate (cr, at->x, at->y);
  if (self->which == RW_VIEW_TRIM)
    rw_trim_map_ink (self->half[i].map, cr, at->width, at->height);
  else
    rw_chart_ink (self->half[i].chart, cr, at->width, at->height, target);
  cairo_restore (cr);
}

void
rw_compare_picture_ink (RwComparePicture *self,
                        cairo_t          *cr,
                        double            width,
                        double            height,
                        RwInkTarget       target)
{
  const RwColor paper = rw_theme_get (self->theme)->paper;

  rw_compare_picture_lay_out (self, width, height);
  cairo_save (cr);
  cairo_set_source_rgba (cr, paper.r, paper.g, paper.b, paper.a);
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_fill (cr);
  for (guint i = 0; i < 2; i++)
    ink_half (self, i, cr, target);
  cairo_restore (cr);
}

gboolean
rw_compare_picture_get_plot (RwComparePicture *self,
                             double            width,
                             double            height,
                             gboolean          now,
                             RwRect           *out)
{
  const guint i = now ? 1 : 0;

  rw_compare_picture_lay_out (self, width, height);
  plot_of (self, i, out);
  out->x += self->half[i].at.x;
  out->y += self->half[i].at.y;
  return out->width > 0 && out->height > 0;
}

double
rw_compare_picture_get_pace (RwComparePicture *self,
                             double            width,
                             double            height,
                             gboolean          now)
{
  RwView *view = self->half[now ? 1 : 0].view;
  RwRect plot;

  if (self->which == RW_VIEW_TRIM || !rw_compare_picture_get_plot (self, width, height, now, &plot))
    return NAN;
  return (rw_view_get_end (view) - rw_view_get_start (view)) / plot.width;
}

static char *
half_summary (RwComparePicture *self,
              guint             i)
{
  return self->which == RW_VIEW_TRIM ? rw_trim_map_dup_summary (self->half[i].map)
                                     : rw_chart_dup_summary (self->half[i].chart);
}

char *
rw_compare_picture_dup_summary (RwComparePicture *self)
{
  g_autofree char *then = half_summary (self, 0), *now = half_summary (self, 1);
  g_autofree char *then_date = rw_compare_words_date (rw_compare_get_then (self->compare));
  g_autofree char *now_date = rw_compare_words_date (rw_compare_get_now (self->compare));

  /* Translators: date and what the chart of that day shows, twice. */
  return g_strdup_printf (_ ("%s: %s\n%s: %s"), then_date, then, now_date, now);
}
