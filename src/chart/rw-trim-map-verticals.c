/* rw-trim-map-verticals.c: the window, the set point, bounds that exclude each other, the needle.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Their labels share the lanes above the plot. Each asks for a lane and a place; in a lane where
 * another label stands it gives way to the next one, and where all are taken it is left out: the
 * pointer and the summary still tell. So they are placed in order of weight.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-ink.h"
#include "rw-trim-map-layout.h"
#include "rw-trim-map-words.h"

static const double label_gap = 12; /* least pixels between labels of one lane */
static const double edge = 6;       /* between a label and the edge of the picture */
static const double beside = 6;     /* between a window's end and its volts */
static const double plate_pad = 6;

static gboolean
is_free (const RwTrimMapLayout *self,
         double                 y,
         double                 x0,
         double                 x1)
{
  const double gap = label_gap * self->scene.unit;

  for (guint i = 0; i < self->labels->len; i++)
    {
      const RwTrimMapLabel *label = &g_array_index (self->labels, RwTrimMapLabel, i);

      if (label->y == y && x0 < label->x + label->width + gap && label->x < x1 + gap)
        return FALSE;
    }
  return TRUE;
}

/* Puts @words into the first free lane from @lane up, then the ones below. @align: 0 from x on, 0.5
 * about it, 1 up to it; moved in from the edges of the picture. Takes @words. FALSE: no room. */
static gboolean
add_label (RwTrimMapLayout *self,
           char            *words,
           double           x,
           double           align,
           guint            lane,
           RwColor          color)
{
  const double width = rw_chart_text_width (self->in.text, RW_TEXT_CAPTION, words);
  const double margin = edge * self->scene.unit;
  const double left = MAX (MIN (x - align * width, self->in.width - margin - width), margin);

  for (guint i = 0; i < self->n_lanes; i++)
    {
      const double y = self->lane_y[(lane + i) % self->n_lanes];
      const RwTrimMapLabel label = { words, left, y, width, color };

      if (!is_free (self, y, left, left + width))
        continue;
      g_array_append_val (self->labels, label);
      return TRUE;
    }
  g_free (words);
  return FALSE;
}

/* The volts of a window's end, outside the bracket. */
static gboolean
add_end (RwTrimMapLayout *self,
         double           volts,
         gboolean         open,
         double           x,
         double           align)
{
  const double away = beside * self->scene.unit;

  return open
         || add_label (self, rw_trim_map_words_volts (self->in.set, volts),
                       x + (align > 0 ? -away : away), align, 0, self->scene.theme->ink);
}

static gboolean
place_window (RwTrimMapLayout *self)
{
  const RwTrimWindow *window = &self->in.set->window;
  RwTrimMapBand *band = &self->window;
  int beyond0, beyond1;

  if (!window->exists || !isfinite (window->best))
    return TRUE;
  band->x0 = rw_trim_map_layout_x (self, window->lo, &beyond0);
  band->x1 = rw_trim_map_layout_x (self, window->hi, &beyond1);
  band->open0 = beyond0 != 0;
  band->open1 = beyond1 != 0;
  band->shown = band->x1 > band->x0 || beyond0 == 0;
  if (!band->shown)
    return TRUE;

  const gboolean from = add_end (self, window->lo, band->open0, band->x0, 1);
  const gboolean to = add_end (self, window->hi, band->open1, band->x1, 0);
  const double wide = rw_chart_text_width (self->in.text, RW_TEXT_CAPTION, _ ("window"));

  if (band->x1 - band->x0 >= wide + 2 * label_gap * self->scene.unit)
    /* Translators: the values of the reference rail at which every rail is inside its limits. */
    add_label (self, g_strdup (_ ("window")), (band->x0 + band->x1) / 2, 0.5, 0,
               self->scene.theme->quiet);
  return from && to;
}

/* With no window the label stands over those of the bounds. */
static gboolean
place_set_point (RwTrimMapLayout *self)
{
  const RwTrimSet *set = self->in.set;
  int beyond;

  if (!isfinite (set->window.best))
    return TRUE;

  const double x = rw_trim_map_layout_x (self, set->window.best, &beyond);

  if (beyond != 0)
    return TRUE;
  self->set_x = x;
  return add_label (self, rw_trim_map_words_set_label (set), x, 0.5, 1, self->scene.theme->ink);
}

static RwTrimMapBound
make_bound (const RwTrimMapLayout *self,
            int                    rail,
            gboolean               lower)
{
  RwTrimMapBound bound = { .rail = (guint) rail, .x = NAN, .lower = lower };
  int beyond;

  bound.style = rw_trim_map_layout_style (self, bound.rail);
  bound.volts = rw_trim_map_bound (self->in.set, bound.rail, lower);
  if (isfinite (bound.volts))
    {
      const double x = rw_trim_map_layout_x (self, bound.volts, &beyond);

      bound.x = beyond == 0 ? x : (double) NAN;
    }
  return bound;
}

/* Between what one rail allows (on the left) and the other needs (on the right). */
static void
place_gap (RwTrimMapLayout *self)
{
  const RwTrimMapBound *needs = &self->bounds[0], *allows = &self->bounds[1];
  int beyond0, beyond1;

  if (!isfinite (needs->volts) || !isfinite (allows->volts))
    return;
  self->gap.x0 = rw_trim_map_layout_x (self, allows->volts, &beyond0);
  self->gap.x1 = rw_trim_map_layout_x (self, needs->volts, &beyond1);
  self->gap.open0 = beyond0 != 0;
  self->gap.open1 = beyond1 != 0;
  self->gap.shown = self->gap.x1 > self->gap.x0;
}

static gboolean
label_bound (RwTrimMapLayout      *self,
             const RwTrimMapBound *bound)
{
  const RwRect *plot = &self->scene.plot;
  const double off = bound->lower ? rw_rect_right (plot) : plot->x;
  const double x = isfinite (bound->x) ? bound->x : off;

  return !isfinite (bound->volts)
         || add_label (self, rw_trim_map_words_bound_label (self->in.set, bound->lower), x,
                       bound->lower ? 0 : 1, 0, bound->style.color);
}

static gboolean
place_conflict (RwTrimMapLayout *self)
{
  const RwTrimWindow *window = &self->in.set->window;
  const RwRect *plot = &self->scene.plot;
  double middle = plot->x + plot->width / 2;

  if (window->exists || window->low_rail < 0 || window->high_rail < 0)
    return TRUE;
  if (window->low_rail != window->high_rail)
    {
      self->bounds[0] = make_bound (self, window->low_rail, TRUE);
      self->bounds[1] = make_bound (self, window->high_rail, FALSE);
      self->n_bounds = 2;
      place_gap (self);
      if (self->gap.shown)
        middle = (self->gap.x0 + self->gap.x1) / 2;
    }

  gboolean fits = add_label (self, rw_trim_map_words_conflict (self->in.set), middle, 0.5,
                             self->n_bounds > 0 ? 1 : 0, self->scene.theme->ink);

  for (guint i = 0; i < self->n_bounds; i++)
    fits = label_bound (self, &self->bounds[i]) && fits;
  return fits;
}

gboolean
rw_trim_map_layout_place_verticals (RwTrimMapLayout *self)
{
  const gboolean conflict = place_conflict (self);
  const gboolean window = place_window (self);
  const gboolean set_point = place_set_point (self);

  return conflict && window && set_point;
}

/* --- the needle --------------------------------------------------------------------------- */

static void
add_diamond (RwTrimMapLayout *self,
             guint            rail)
{
  const RwTrimSet *set = self->in.set;
  const RwTrimMapNow *now = &self->needle.now;
  RwTrimMapDiamond diamond = { .rail = rail, .measured = now->from == (int) rail };
  RwTrimExpected expected;
  int beyond;

  if (!now->live && rw_trim_map_is_read_now (set, rail)) /* its reading stands there */
    return;
  if (!rw_trim_map_expect_now (set, self->in.live, now, rail, &expected))
    return;

  const double one = rw_trim_map_position (set, rail, expected.lo);
  const double other = rw_trim_map_position (set, rail, expected.hi);
  const double position = rw_trim_map_position (set, rail, expected.value);

  if (!isfinite (position))
    return;
  diamond.y = rw_trim_map_layout_y (self, position, &beyond);
  if (beyond != 0)
    return;
  diamond.style = rw_trim_map_layout_style (self, rail);
  diamond.y_lo = rw_trim_map_layout_y (self, MIN (one, other), &beyond);
  diamond.y_hi = rw_trim_map_layout_y (self, MAX (one, other), &beyond);
  g_array_append_val (self->needle.diamonds, diamond);
}

/* The words stand over the numbers of the axis, at the needle's foot. */
static void
place_plate (RwTrimMapLayout *self)
{
  RwTrimMapNeedle *needle = &self->needle;
  RwChartText *text = self->in.text;
  const double pad = plate_pad * self->scene.unit;
  const double height = rw_chart_text_height (text, RW_TEXT_CAPTION);

  needle->words = rw_trim_map_words_now_label (self->in.set, &needle->now, self->in.past);

  const double width = rw_chart_text_width (text, RW_TEXT_CAPTION, needle->words) + 2 * pad;

  needle->plate = (RwRect){ needle->x - width / 2, self->ticks_y - height / 2 - pad / 6, width,
                            height + pad / 3 };
  needle->plate.x = MAX (MIN (needle->plate.x, self->in.width - width), 0);
}

void
rw_trim_map_layout_place_needle (RwTrimMapLayout *self)
{
  RwTrimMapNeedle *needle = &self->needle;

  needle->shown = rw_trim_map_now (self->in.set, self->in.live, &needle->now);
  if (!needle->shown)
    return;
  needle->x = rw_trim_map_layout_x (self, needle->now.x, &needle->beyond);
  place_plate (self);
  for (guint i = 0; needle->beyond == 0 && i < rw_profile_get_n_rails (self->in.set->profile); i++)
    add_diamond (self, i);
}
