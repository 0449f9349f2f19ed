/* rw-trim-map.c: the chart of the trim: keeping the layout, inking it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *     view "changed", rw_trim_map_set_… () ─► touch (): layout dropped, "changed" once
 *     rw_trim_map_ink () ─► rw_trim_map_get_layout () ─► rw_trim_map_layout_ink ()
 *
 * There are few marks, so nothing is kept as pixels.
 */
#include "config.h"

#include "rw-trim-map.h"

#include <math.h>

#include "rw-layer-cursor.h"
#include "rw-trim-map-private.h"
#include "rw-trim-map-words.h"

static guint changed_signal;

G_DEFINE_FINAL_TYPE (RwTrimMap, rw_trim_map, G_TYPE_OBJECT)

static void
drop_layout (RwTrimMap *self)
{
  if (self->laid_out)
    rw_trim_map_layout_clear (&self->layout);
  self->laid_out = FALSE;
}

/* The picture is another one now. */
static void
touch (RwTrimMap *self)
{
  const gboolean first = !self->needs_ink;

  drop_layout (self);
  self->needs_ink = TRUE;
  if (first)
    g_signal_emit (self, changed_signal, 0);
}

static RwTrimMapLook
look_of (RwView *view)
{
  return (RwTrimMapLook){ rw_view_get_text_scale (view), rw_view_get_rail (view),
                          rw_view_get_theme (view) };
}

static void
view_changed_cb (RwTrimMap *self)
{
  const RwTrimMapLook look = look_of (self->view), *old = &self->look;

  if (look.text_scale == old->text_scale && look.rail == old->rail && look.theme == old->theme)
    return;
  if (look.text_scale != old->text_scale)
    g_clear_pointer (&self->text, rw_chart_text_free);
  self->look = look;
  touch (self);
}

static void
rw_trim_map_dispose (GObject *object)
{
  RwTrimMap *self = RW_TRIM_MAP (object);

  drop_layout (self);
  g_clear_object (&self->view);
  g_clear_pointer (&self->set, rw_trim_set_unref);
  G_OBJECT_CLASS (rw_trim_map_parent_class)->dispose (object);
}

static void
rw_trim_map_finalize (GObject *object)
{
  RwTrimMap *self = RW_TRIM_MAP (object);

  g_clear_pointer (&self->live.rails, g_free);
  g_clear_pointer (&self->font, pango_font_description_free);
  g_clear_pointer (&self->text, rw_chart_text_free);
  g_clear_pointer (&self->title, g_free);
  g_clear_pointer (&self->aside, g_free);
  G_OBJECT_CLASS (rw_trim_map_parent_class)->finalize (object);
}

static void
rw_trim_map_class_init (RwTrimMapClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_trim_map_dispose;
  G_OBJECT_CLASS (klass)->finalize = rw_trim_map_finalize;
  changed_signal = g_signal_new ("changed", RW_TYPE_TRIM_MAP, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                 NULL, G_TYPE_NONE, 0);
}

static void
rw_trim_map_init (RwTrimMap *self)
{
  self->width = self->height = 1;
  self->draw_text = TRUE;
  self->needs_ink = TRUE;
}

void
rw_trim_map_hit_clear (RwTrimMapHit *hit)
{
  g_clear_pointer (&hit->text, g_free);
}

RwTrimMap *
rw_trim_map_new (RwView *view)
{
  g_return_val_if_fail (RW_IS_VIEW (view), NULL);

  RwTrimMap *self = g_object_new (RW_TYPE_TRIM_MAP, NULL);

  self->view = g_object_ref (view);
  self->look = look_of (view);
  g_signal_connect_object (view, "changed", G_CALLBACK (view_changed_cb), self, G_CONNECT_SWAPPED);
  return self;
}

RwView *
rw_trim_map_get_view (RwTrimMap *self)
{
  g_return_val_if_fail (RW_IS_TRIM_MAP (self), NULL);
  return self->view;
}

void
rw_trim_map_set_set (RwTrimMap       *self,
                     const RwTrimSet *set)
{
  g_return_if_fail (RW_IS_TRIM_MAP (self));
  if (set == self->set)
    return;

  RwTrimSet *old = g_steal_pointer (&self->set);

  drop_layout (self);
  self->set = set != NULL ? rw_trim_set_ref ((RwTrimSet *) set) : NULL; /* only its count changes */
  g_clear_pointer (&old, rw_trim_set_unref);
  touch (self);
}

const RwTrimSet *
rw_trim_map_get_set (RwTrimMap *self)
{
  g_return_val_if_fail (RW_IS_TRIM_MAP (self), NULL);
  return self->set;
}

const RwTrimLive *
rw_trim_map_get_live (RwTrimMap *self)
{
  return self->live.rails != NULL ? &self->live : NULL;
}

/* NaN equals NaN: both say that nothing is known. */
static gboolean
same (double a,
      double b)
{
  return a == b || (isnan (a) && isnan (b));
}

static gboolean
same_live (const RwTrimLive *a,
           const RwTrimLive *b)
{
  if (a == NULL || b == NULL)
    return a == b;
  if (a->n_rails != b->n_rails || a->from != b->from || !same (a->x, b->x)
      || !same (a->u_x, b->u_x))
    return FALSE;
  for (guint i = 0; i < a->n_rails; i++)
    if (!same (a->rails[i].value, b->rails[i].value) || !same (a->rails[i].lo, b->rails[i].lo)
        || !same (a->rails[i].hi, b->rails[i].hi))
      return FALSE;
  return TRUE;
}

void
rw_trim_map_set_live (RwTrimMap        *self,
                      const RwTrimLive *live)
{
  g_return_if_fail (RW_IS_TRIM_MAP (self));
  if (live != NULL && live->rails == NULL)
    live = NULL;
  if (same_live (live, rw_trim_map_get_live (self)))
    return;

  RwTrimExpected *rails = live != NULL
                              ? g_memdup2 (live->rails, live->n_rails * sizeof *live->rails)
                              : NULL;

  drop_layout (self);
  g_free (self->live.rails);
  self->live = live != NULL ? *live : (RwTrimLive){ 0 };
  self->live.rails = rails;
  touch (self);
}

/* TRUE when it is another size. */
static gboolean
take_size (RwTrimMap *self,
           double     width,
           double     height)
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
rw_trim_map_set_size (RwTrimMap *self,
                      double     width,
                      double     height)
{
  g_return_if_fail (RW_IS_TRIM_MAP (self));
  if (take_size (self, width, height))
    touch (self);
}

void
rw_trim_map_set_font (RwTrimMap                  *self,
                      const PangoFontDescription *font)
{
  g_return_if_fail (RW_IS_TRIM_MAP (self));
  if (font == self->font
      || (font != NULL && self->font != NULL && pango_font_description_equal (font, self->font)))
    return;
  g_clear_pointer (&self->font, pango_font_description_free);
  self->font = font != NULL ? pango_font_description_copy (font) : NULL;
  g_clear_pointer (&self->text, rw_chart_text_free);
  touch (self);
}

void
rw_trim_map_set_draw_text (RwTrimMap *self,
                           gboolean   draw_text)
{
  g_return_if_fail (RW_IS_TRIM_MAP (self));
  if (!draw_text == !self->draw_text)
    return;
  self->draw_text = draw_text ? TRUE : FALSE;
  g_clear_pointer (&self->text, rw_chart_text_free);
  touch (self);
}

void
rw_trim_map_set_title (RwTrimMap  *self,
                       const char *title,
                       const char *aside)
{
  g_return_if_fail (RW_IS_TRIM_MAP (self));
  if (g_strcmp0 (title, self->title) == 0 && g_strcmp0 (aside, self->aside) == 0)
    return;

  g_autofree char *old_title = g_steal_pointer (&self->title);
  g_autofree char *old_aside = g_steal_pointer (&self->aside);

  self->title = g_strdup (title);
  self->aside = g_strdup (aside);
  touch (self);
}

void
rw_trim_map_set_note (RwTrimMap *self,
                      gboolean   note)
{
  g_return_if_fail (RW_IS_TRIM_MAP (self));
  if (self->without_note == !note)
    return;
  self->without_note = !note;
  touch (self);
}

static void
take_ends (double  lo,
           double  hi,
           double *own_lo,
           double *own_hi)
{
  const gboolean given = isfinite (lo) && isfinite (hi) && lo < hi;

  *own_lo = given ? lo : 0;
  *own_hi = given ? hi : 0;
}

void
rw_trim_map_set_range (RwTrimMap            *self,
                       const RwTrimMapRange *range)
{
  g_return_if_fail (RW_IS_TRIM_MAP (self) && range != NULL);

  RwTrimMapRange given;

  take_ends (range->volts_lo, range->volts_hi, &given.volts_lo, &given.volts_hi);
  take_ends (range->lo, range->hi, &given.lo, &given.hi);
  if (given.volts_lo == self->given.volts_lo && given.volts_hi == self->given.volts_hi && given.lo == self->given.lo
      && given.hi == self->given.hi)
    return;
  self->given = given;
  touch (self);
}

gboolean
rw_trim_map_get_range (RwTrimMap      *self,
                       RwTrimMapRange *out)
{
  g_return_val_if_fail (RW_IS_TRIM_MAP (self) && out != NULL, FALSE);

  const RwTrimMapLayout *layout = rw_trim_map_get_layout (self);

  if (self->set == NULL || layout->instead != NULL)
    return FALSE;
  *out = (RwTrimMapRange){ layout->volts.lo, layout->volts.hi, layout->scene.scale.lo, layout->scene.scale.hi };
  return TRUE;
}

void
rw_trim_map_set_past (RwTrimMap *self,
                      gboolean   past)
{
  g_return_if_fail (RW_IS_TRIM_MAP (self));
  past = past != FALSE;
  if (past == self->past)
    return;
  self->past = past;
  touch (self);
}

const RwTrimMapLayout *
rw_trim_map_get_layout (RwTrimMap *self)
{
  if (self->laid_out)
    return &self->layout;
  if (self->text == NULL)
    self->text = rw_chart_text_new (self->font, self->look.text_scale, self->draw_text);

  const RwTrimMapInput input = {
    .set = self->set,
    .live = rw_trim_map_get_live (self),
    .past = self->past,
    .view = self->view,
    .text = self->text,
    .width = self->width,
    .height = self->height,
    .title = self->title,
    .aside = self->aside,
    .given = self->given,
    .without_note = self->without_note,
  };

  rw_trim_map_layout_init (&self->layout, &input);
  self->laid_out = TRUE;
  return &self->layout;
}

gboolean
rw_trim_map_needs_ink (RwTrimMap *self)
{
  g_return_val_if_fail (RW_IS_TRIM_MAP (self), FALSE);
  return self->needs_ink;
}

void
rw_trim_map_ink (RwTrimMap *self,
                 cairo_t   *cr,
                 double     width,
                 double     height)
{
  g_return_if_fail (RW_IS_TRIM_MAP (self) && cr != NULL);
  if (take_size (self, width, height)) /* told to nobody: whoever inks knows */
    drop_layout (self);
  cairo_new_path (cr);
  rw_trim_map_layout_ink (rw_trim_map_get_layout (self), cr);
  cairo_new_path (cr); /* a path is not part of what cairo restores */
  self->needs_ink = FALSE;
}

/* The cursor of the other chart: it needs no more of a scene than this one has. */
void
rw_trim_map_ink_cursor (RwTrimMap          *self,
                        cairo_t            *cr,
                        const RwTrimMapHit *hit)
{
  g_return_if_fail (RW_IS_TRIM_MAP (self) && cr != NULL && hit != NULL);

  const RwScene *scene = &rw_trim_map_get_layout (self)->scene;
  const RwChartHit pointed = { .kind = hit->kind == RW_TRIM_HIT_READING ? RW_HIT_READING
                                                                        : RW_HIT_VERTICAL,
                               .x = hit->x,
                               .y = hit->y,
                               .text = hit->text };
  RwCursorLayer cursor;

  rw_cursor_layer_layout (&cursor, scene, &pointed);
  rw_cursor_layer_ink (&cursor, scene, cr);
  cairo_new_path (cr);
  rw_cursor_layer_clear (&cursor);
}

char *
rw_trim_map_dup_summary (RwTrimMap *self)
{
  g_return_val_if_fail (RW_IS_TRIM_MAP (self), NULL);
  return rw_trim_map_words_summary (self->set, rw_trim_map_get_live (self), self->past,
                                    !self->without_note);
}
