/* rw-chart.c: the chart over time: keeping the layout, inking it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * From a change to ink:
 *
 *     session event ─► chart data ─► data_changed_cb ┐
 *     view "changed" ──────────────► view_changed_cb ┼─► touch (): layout dropped, "changed" once
 *     rw_chart_set_… () ─────────────────────────────┘
 *     rw_chart_ink () ─► rw_chart_get_layout () ─► ink_layers () into the kept picture (screen) or
 *                        the caller's context (vector)
 *
 * Order of ink, from below: paper, axes, space outside the limits, verticals, what is expected, steps
 * between readings, line ends, streams, signs on streams, readings, words.
 */
#include "config.h"

#include "rw-chart.h"

#include <math.h>

#include "rw-chart-private.h"
#include "rw-chart-title.h"
#include "rw-ink.h"
#include "rw-layer-cursor.h"

static guint changed_signal;

G_DEFINE_FINAL_TYPE (RwChart, rw_chart, G_TYPE_OBJECT)

void
rw_chart_hit_clear (RwChartHit *hit)
{
  g_clear_pointer (&hit->text, g_free);
}

static void
drop_layout (RwChart *self)
{
  RwChartLayout *layout = &self->layout;

  if (!self->laid_out)
    return;
  rw_axes_layer_clear (&layout->axes);
  rw_limits_layer_clear (&layout->limits);
  rw_verticals_layer_clear (&layout->verticals);
  rw_readings_layer_clear (&layout->readings);
  rw_samples_layer_clear (&layout->samples);
  rw_ends_layer_clear (&layout->ends);
  rw_expected_layer_clear (&layout->expected);
  rw_scene_clear (&layout->scene);
  self->laid_out = FALSE;
}

/* The picture is another one now. */
static void
touch (RwChart *self)
{
  const gboolean first = !self->needs_ink;

  drop_layout (self);
  self->needs_ink = TRUE;
  if (first)
    g_signal_emit (self, changed_signal, 0);
}

static RwChartLook
look_of (RwView *view)
{
  return (RwChartLook){
    .start = rw_view_get_start (view),
    .end = rw_view_get_end (view),
    .text_scale = rw_view_get_text_scale (view),
    .rail = rw_view_get_rail (view),
    .place = rw_view_get_place (view),
    .theme = rw_view_get_theme (view),
    .mode = rw_view_get_mode (view),
  };
}

static gboolean
same_look (const RwChartLook *a,
           const RwChartLook *b)
{
  return a->start == b->start && a->end == b->end && a->text_scale == b->text_scale
         && a->rail == b->rail && a->place == b->place && a->theme == b->theme
         && a->mode == b->mode;
}

static void
view_changed_cb (RwChart *self)
{
  const RwChartLook look = look_of (self->view);

  if (same_look (&look, &self->look))
    return;
  if (look.text_scale != self->look.text_scale)
    g_clear_pointer (&self->text, rw_chart_text_free);
  self->look = look;
  touch (self);
}

static void
data_changed_cb (RwChart *self)
{
  touch (self);
}

static void
rw_chart_dispose (GObject *object)
{
  RwChart *self = RW_CHART (object);

  drop_layout (self);
  g_clear_pointer (&self->foresight, rw_foresight_free);
  g_clear_pointer (&self->state, rw_bench_state_unref);
  g_clear_object (&self->data);
  g_clear_object (&self->view);
  g_clear_object (&self->session);
  if (self->namer_destroy != NULL)
    g_steal_pointer (&self->namer_destroy) (self->namer.user_data);
  self->namer = (RwChartNamer){ NULL, NULL };
  G_OBJECT_CLASS (rw_chart_parent_class)->dispose (object);
}

static void
rw_chart_finalize (GObject *object)
{
  RwChart *self = RW_CHART (object);

  g_clear_pointer (&self->font, pango_font_description_free);
  g_clear_pointer (&self->text, rw_chart_text_free);
  g_clear_pointer (&self->title, g_free);
  g_clear_pointer (&self->aside, g_free);
  g_clear_pointer (&self->kept, cairo_surface_destroy);
  G_OBJECT_CLASS (rw_chart_parent_class)->finalize (object);
}

static void
rw_chart_class_init (RwChartClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_chart_dispose;
  G_OBJECT_CLASS (klass)->finalize = rw_chart_finalize;
  changed_signal = g_signal_new ("changed", RW_TYPE_CHART, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 0);
}

static void
rw_chart_init (RwChart *self)
{
  self->width = self->height = 1;
  self->device_scale = 1;
  self->draw_text = TRUE;
  self->needs_ink = TRUE;
}

RwChart *
rw_chart_new (RwSession *session,
              RwView    *view)
{
  g_return_val_if_fail (RW_IS_SESSION (session) && RW_IS_VIEW (view), NULL);

  RwChart *self = g_object_new (RW_TYPE_CHART, NULL);

  self->session = g_object_ref (session);
  self->view = g_object_ref (view);
  self->data = rw_chart_data_for (session);
  self->look = look_of (view);
  g_signal_connect_object (view, "changed", G_CALLBACK (view_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->data, "changed", G_CALLBACK (data_changed_cb), self,
                           G_CONNECT_SWAPPED);
  return self;
}

RwSession *
rw_chart_get_session (RwChart *self)
{
  g_return_val_if_fail (RW_IS_CHART (self), NULL);
  return self->session;
}

RwView *
rw_chart_get_view (RwChart *self)
{
  g_return_val_if_fail (RW_IS_CHART (self), NULL);
  return self->view;
}

/* TRUE when it is another size. */
static gboolean
take_size (RwChart *self,
           double   width,
           double   height)
{
  const double w = isfinite (width) ? MAX (width, 1) : 1,
               h = isfinite (height) ? MAX (height, 1) : 1;

  if (w == self->width && h == self->height)
    return FALSE;
  self->width = w;
  self->height = h;
  return TRUE;
}

void
rw_chart_set_size (RwChart *self,
                   double   width,
                   double   height)
{
  g_return_if_fail (RW_IS_CHART (self));
  if (take_size (self, width, height))
    touch (self);
}

void
rw_chart_set_device_scale (RwChart *self,
                           double   scale)
{
  g_return_if_fail (RW_IS_CHART (self));

  const double clamped = isfinite (scale) ? CLAMP (scale, 1, 8) : 1;

  if (clamped == self->device_scale)
    return;
  self->device_scale = clamped;
  touch (self);
}

void
rw_chart_set_font (RwChart                    *self,
                   const PangoFontDescription *font)
{
  g_return_if_fail (RW_IS_CHART (self));
  if (font == self->font
      || (font != NULL && self->font != NULL && pango_font_description_equal (font, self->font)))
    return;
  g_clear_pointer (&self->font, pango_font_description_free);
  self->font = font != NULL ? pango_font_description_copy (font) : NULL;
  g_clear_pointer (&self->text, rw_chart_text_free);
  touch (self);
}

void
rw_chart_set_draw_text (RwChart *self,
                        gboolean draw_text)
{
  g_return_if_fail (RW_IS_CHART (self));
  if (!draw_text == !self->draw_text)
    return;
  self->draw_text = draw_text ? TRUE : FALSE;
  g_clear_pointer (&self->text, rw_chart_text_free);
  touch (self);
}

void
rw_chart_set_title (RwChart    *self,
                    const char *title,
                    const char *aside)
{
  g_return_if_fail (RW_IS_CHART (self));
  if (g_strcmp0 (title, self->title) == 0 && g_strcmp0 (aside, self->aside) == 0)
    return;

  g_autofree char *old_title = g_steal_pointer (&self->title);
  g_autofree char *old_aside = g_steal_pointer (&self->aside);

  self->title = g_strdup (title);
  self->aside = g_strdup (aside);
  touch (self);
}

void
rw_chart_set_range (RwChart *self,
                    double   lo,
                    double   hi)
{
  g_return_if_fail (RW_IS_CHART (self));

  const gboolean given = isfinite (lo) && isfinite (hi) && lo < hi;
  const double new_lo = given ? lo : 0, new_hi = given ? hi : 0;

  if (new_lo == self->given_lo && new_hi == self->given_hi)
    return;
  self->given_lo = new_lo;
  self->given_hi = new_hi;
  touch (self);
}

void
rw_chart_get_range (RwChart *self,
                    double  *lo,
                    double  *hi)
{
  g_return_if_fail (RW_IS_CHART (self) && lo != NULL && hi != NULL);

  const RwScene *scene = &rw_chart_get_layout (self)->scene;

  *lo = scene->scale.lo;
  *hi = scene->scale.hi;
}

void
rw_chart_set_name_func (RwChart        *self,
                        RwChartNameFunc func,
                        gpointer        user_data,
                        GDestroyNotify  destroy)
{
  g_return_if_fail (RW_IS_CHART (self));
  if (self->namer_destroy != NULL)
    self->namer_destroy (self->namer.user_data);
  self->namer = (RwChartNamer){ func, user_data };
  self->namer_destroy = destroy;
  touch (self);
}

void
rw_chart_set_state (RwChart      *self,
                    RwBenchState *state)
{
  g_return_if_fail (RW_IS_CHART (self));
  if (state == self->state)
    return;

  RwForesight *foresight = state != NULL ? rw_foresight_new (self->session, state, self->foresight)
                                         : NULL;
  g_autoptr (RwBenchState) old = g_steal_pointer (&self->state);

  drop_layout (self); /* borrows from what goes now */
  g_clear_pointer (&self->foresight, rw_foresight_free);
  self->foresight = foresight;
  self->state = state != NULL ? rw_bench_state_ref (state) : NULL;
  touch (self);
}

static char *
vertical_words (const RwChartVertical *vertical,
                gpointer               user_data)
{
  RwChart *self = user_data;

  return rw_chart_words_vertical (self->session, vertical, &self->namer);
}

const RwChartLayout *
rw_chart_get_layout (RwChart *self)
{
  RwChartLayout *layout = &self->layout;
  const RwScene *scene = &layout->scene;

  rw_chart_data_catch_up (self->data); /* drops the layout when there is news */
  if (self->laid_out)
    return layout;
  if (self->text == NULL)
    self->text = rw_chart_text_new (self->font, self->look.text_scale, self->draw_text);

  const RwSceneInput input = {
    .data = self->data,
    .view = self->view,
    .text = self->text,
    .width = self->width,
    .height = self->height,
    .device_scale = self->device_scale,
    .title = self->title,
    .aside = self->aside,
    .foresight = self->foresight,
    .given_lo = self->given_lo,
    .given_hi = self->given_hi,
  };

  rw_scene_init (&layout->scene, &input);
  rw_axes_layer_layout (&layout->axes, scene);
  rw_limits_layer_layout (&layout->limits, scene);
  rw_verticals_layer_layout (&layout->verticals, scene, vertical_words, self);
  rw_readings_layer_layout (&layout->readings, scene);
  rw_samples_layer_layout (&layout->samples, scene);
  rw_ends_layer_layout (&layout->ends, scene);
  rw_expected_layer_layout (&layout->expected, scene);
  self->laid_out = TRUE;
  return layout;
}

gboolean
rw_chart_needs_ink (RwChart *self)
{
  g_return_val_if_fail (RW_IS_CHART (self), FALSE);
  return self->needs_ink;
}

static void
ink_below_streams (const RwChartLayout *layout,
                   cairo_t             *cr)
{
  const RwScene *scene = &layout->scene;

  rw_ink_color (cr, scene->theme->paper);
  cairo_rectangle (cr, 0, 0, scene->in.width, scene->in.height);
  cairo_fill (cr);
  rw_axes_layer_ink (&layout->axes, scene, cr);
  rw_limits_layer_ink (&layout->limits, scene, cr);
  rw_verticals_layer_ink_lines (&layout->verticals, scene, cr);
  rw_expected_layer_ink (&layout->expected, scene, cr);
  rw_readings_layer_ink_joins (&layout->readings, scene, cr);
  rw_ends_layer_ink (&layout->ends, scene, cr);
}

static void
ink_above_streams (const RwChartLayout *layout,
                   cairo_t             *cr)
{
  const RwScene *scene = &layout->scene;

  rw_samples_layer_ink_signs (&layout->samples, scene, cr);
  rw_expected_layer_ink_ends (&layout->expected, scene, cr);
  rw_readings_layer_ink_marks (&layout->readings, scene, cr);
  rw_limits_layer_ink_words (&layout->limits, scene, cr);
  rw_verticals_layer_ink_signs (&layout->verticals, scene, cr);
  rw_chart_title_ink (scene, cr);
}

static void
ink_vector (const RwChartLayout *layout,
            cairo_t             *cr)
{
  ink_below_streams (layout, cr);
  rw_samples_layer_ink_lines (&layout->samples, &layout->scene, cr);
  ink_above_streams (layout, cr);
}

/* A picture of the right size for the screen; NULL when there is no memory for it. */
static cairo_surface_t *
ready_picture (RwChart *self)
{
  const int width = (int) ceil (self->width * self->device_scale);
  const int height = (int) ceil (self->height * self->device_scale);

  if (self->kept == NULL || cairo_image_surface_get_width (self->kept) != width
      || cairo_image_surface_get_height (self->kept) != height)
    {
      g_clear_pointer (&self->kept, cairo_surface_destroy);
      self->kept = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
    }
  cairo_surface_set_device_scale (self->kept, self->device_scale, self->device_scale);
  if (cairo_surface_status (self->kept) != CAIRO_STATUS_SUCCESS)
    g_clear_pointer (&self->kept, cairo_surface_destroy);
  return self->kept;
}

static void
ink_picture (RwChart         *self,
             cairo_surface_t *picture)
{
  const RwChartLayout *layout = rw_chart_get_layout (self);
  cairo_t *cr = cairo_create (picture);

  ink_below_streams (layout, cr);
  rw_samples_layer_raster (&layout->samples, &layout->scene, picture);
  ink_above_streams (layout, cr);
  cairo_destroy (cr);
}

static void
ink_screen (RwChart *self,
            cairo_t *cr)
{
  rw_chart_data_catch_up (self->data);

  const gboolean current = self->kept != NULL && !self->needs_ink;
  cairo_surface_t *picture = current ? self->kept : ready_picture (self);

  if (picture == NULL)
    {
      ink_vector (rw_chart_get_layout (self), cr);
      return;
    }
  if (!current)
    ink_picture (self, picture);
  cairo_set_source_surface (cr, picture, 0, 0);
  cairo_rectangle (cr, 0, 0, self->width, self->height);
  cairo_fill (cr);
  self->needs_ink = FALSE;
}

void
rw_chart_ink (RwChart    *self,
              cairo_t    *cr,
              double      width,
              double      height,
              RwInkTarget target)
{
  g_return_if_fail (RW_IS_CHART (self) && cr != NULL);
  if (take_size (self, width, height)) /* told to nobody: whoever inks knows */
    {
      drop_layout (self);
      self->needs_ink = TRUE;
    }
  cairo_save (cr);
  cairo_new_path (cr);
  if (target == RW_INK_SCREEN)
    ink_screen (self, cr);
  else
    ink_vector (rw_chart_get_layout (self), cr);
  cairo_new_path (cr); /* a path is not part of what cairo restores */
  cairo_restore (cr);
}

void
rw_chart_ink_cursor (RwChart          *self,
                     cairo_t          *cr,
                     const RwChartHit *hit)
{
  g_return_if_fail (RW_IS_CHART (self) && cr != NULL && hit != NULL);

  const RwScene *scene = &rw_chart_get_layout (self)->scene;
  RwCursorLayer cursor;

  rw_cursor_layer_layout (&cursor, scene, hit);
  rw_cursor_layer_ink (&cursor, scene, cr);
  cairo_new_path (cr);
  rw_cursor_layer_clear (&cursor);
}
