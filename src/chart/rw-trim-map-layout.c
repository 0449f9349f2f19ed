/* rw-trim-map-layout.c: where everything on the trim map goes: the frame, and the order of work.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-trim-map-layout.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"
#include "rw-trim-map-words.h"

static const double grid = 6;       /* pixels: all distances are multiples of it */
static const double sign_room = 10; /* the notch and the bracket, between the lanes and the plot */
static const double tick_spacing = 84; /* least pixels between numbers across */
static const double least_plot = 0.42; /* of the height: less, and rows are shed */
static const double widest_sentence = 560;
static const guint most_words = 64; /* a sentence's; far past what any language needs */

static void
clear_line (gpointer data)
{
  g_clear_pointer (&((RwTrimMapLine *) data)->name, g_free);
}

static void
clear_label (gpointer data)
{
  g_clear_pointer (&((RwTrimMapLabel *) data)->words, g_free);
}

static void
clear_tick (gpointer data)
{
  g_clear_pointer (&((RwAxisTick *) data)->words, g_free);
}

static GArray *
list_of (guint          size,
         GDestroyNotify clear)
{
  GArray *list = g_array_new (FALSE, FALSE, size);

  g_array_set_clear_func (list, clear);
  return list;
}

/* --- a sentence in the middle ------------------------------------------------------------- */

/* As many of @words as fit into @room, at least one. Returns how many. */
static guint
fill_line (RwTrimMapLayout *self,
           char           **words,
           double           room)
{
  g_autoptr (GString) line = g_string_new (words[0]);
  guint n = 1;

  for (; words[n] != NULL && n < most_words; n++)
    {
      g_autofree char *longer = g_strconcat (line->str, " ", words[n], NULL);

      if (rw_chart_text_width (self->in.text, RW_TEXT_BODY, longer) > room)
        break;
      g_string_assign (line, longer);
    }
  g_ptr_array_add (self->instead, g_strdup (line->str));
  return n;
}

static void
break_lines (RwTrimMapLayout *self,
             const char      *sentence)
{
  g_auto (GStrv) words = g_strsplit (sentence, " ", -1);
  const double room = MIN (self->in.width - 4 * grid * self->scene.unit,
                           widest_sentence * self->scene.unit);

  self->instead = g_ptr_array_new_with_free_func (g_free);
  for (char **left = words; *left != NULL;)
    left += fill_line (self, left, room);
}

/* --- the frame ---------------------------------------------------------------------------- */

/* Rows of words that are wanted; a low picture has fewer. */
typedef struct
{
  guint    lanes;
  gboolean foot;
} Rows;

static double
left_margin (const RwTrimMapLayout *self)
{
  RwChartText *text = self->in.text;

  return MAX (MAX (rw_chart_text_width (text, RW_TEXT_CAPTION, _ ("strong limit")),
                   rw_chart_text_width (text, RW_TEXT_CAPTION, _ ("weak limit"))),
              rw_chart_text_width (text, RW_TEXT_CAPTION, _ ("middle")));
}

static double
right_margin (const RwTrimMapLayout *self)
{
  const RwProfile *profile = self->in.set->profile;
  double widest = 0;

  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    widest = MAX (widest, rw_chart_text_width (self->in.text, RW_TEXT_LABEL,
                                               rw_profile_get_rail (profile, i)->label));
  return widest + RW_SCENE_LABEL_ROOM * self->scene.unit;
}

/* Places the rows and returns the height that is left for the plot. */
static double
place_rows (RwTrimMapLayout *self,
            const Rows      *rows)
{
  RwScene *scene = &self->scene;
  const double step = grid * scene->unit;
  const double caption = rw_chart_text_height (self->in.text, RW_TEXT_CAPTION);
  const double title = rw_chart_text_height (self->in.text, RW_TEXT_TITLE);
  const gboolean titled = self->in.title != NULL || self->in.aside != NULL;
  double top = step + (titled ? title + step : 0), bottom = self->in.height - step;

  scene->title_y = step + title / 2;
  self->n_lanes = rows->lanes;
  for (guint i = rows->lanes; i-- > 0; top += caption + step / 2)
    self->lane_y[i] = top + caption / 2;
  top += sign_room * scene->unit;
  self->foot_y = NAN;
  if (rows->foot)
    {
      self->foot_y = bottom - caption / 2;
      bottom -= caption + step;
    }
  self->ticks_y = bottom - caption / 2;
  bottom -= caption + 1.5 * step;
  scene->plot.y = round (top);
  scene->plot.height = MAX (round (bottom) - scene->plot.y, 1);
  return bottom - top;
}

static void
place_plot (RwTrimMapLayout *self,
            guint            lanes)
{
  RwScene *scene = &self->scene;
  const double step = grid * scene->unit;
  Rows rows = { lanes, TRUE };

  while (place_rows (self, &rows) < least_plot * self->in.height && (rows.lanes > 0 || rows.foot))
    {
      if (rows.lanes > 1 || !rows.foot)
        rows.lanes--;
      else
        rows.foot = FALSE;
    }

  const double left = left_margin (self) + 3 * step;

  self->limits_named = left <= self->in.width / 3;
  scene->plot.x = round (self->limits_named ? left : MIN (2 * step, self->in.width / 3));
  scene->plot.width = self->in.width - MIN (right_margin (self), self->in.width / 3);
  scene->plot.width = MAX (round (scene->plot.width) - scene->plot.x, 1);
}

/* Axis title at the right end of the plot, the note at the left edge of the picture, cut to what
 * the other leaves. */
static void
place_foot (RwTrimMapLayout *self)
{
  const double edge = 2 * grid * self->scene.unit;
  g_autofree char *axis = rw_trim_map_words_axis (self->in.set);
  g_autofree char *note = self->in.without_note ? NULL : rw_trim_map_words_note (self->in.set);

  if (isnan (self->foot_y))
    return;
  self->note_x = edge;
  self->axis_x = note == NULL ? rw_rect_right (&self->scene.plot) : self->in.width - edge;
  self->axis_words = rw_chart_text_fit (self->in.text, RW_TEXT_CAPTION, axis, self->axis_x - edge);
  if (note == NULL || self->axis_words == NULL)
    return;

  const double taken = rw_chart_text_width (self->in.text, RW_TEXT_CAPTION, self->axis_words);

  self->note_words = rw_chart_text_fit (self->in.text, RW_TEXT_CAPTION, note,
                                        self->axis_x - taken - 2 * edge);
}

/* Every tick is drawn; its number where it touches neither the one before nor the needle's. */
static void
place_ticks (RwTrimMapLayout *self)
{
  const double unit = self->scene.unit, gap = grid * unit;
  const RwTicks ticks = rw_axis_ticks (&self->volts, tick_spacing * unit);
  const RwRect *plate = &self->needle.plate;
  double taken = 0;

  for (guint i = 0; i < ticks.n; i++)
    {
      const double value = rw_ticks_at (&ticks, i);
      RwAxisTick tick = { .at = rw_axis_to_pixel (&self->volts, value),
                          .words = rw_quantity_format (value, ticks.step, RW_KIND_DC) };
      const double half = rw_chart_text_width (self->in.text, RW_TEXT_CAPTION, tick.words) / 2;

      tick.words_at = MAX (MIN (tick.at, self->in.width - half), half);
      tick.shown = tick.words_at - half >= taken
                   && (plate->width == 0 || tick.words_at + half + gap / 2 < plate->x
                       || tick.words_at - half - gap / 2 > rw_rect_right (plate));
      if (tick.shown)
        taken = tick.words_at + half + gap;
      g_array_append_val (self->ticks, tick);
    }
}

static void
place_picture (RwTrimMapLayout *self)
{
  RwScene *scene = &self->scene;

  /* As few lanes as hold every label. */
  for (guint lanes = 2; lanes <= RW_TRIM_MAP_LANES; lanes++)
    {
      g_array_set_size (self->labels, 0);
      place_plot (self, lanes);
      rw_trim_map_layout_set_ranges (self);
      if (rw_trim_map_layout_place_verticals (self))
        break;
    }
  scene->limited = TRUE;
  scene->weak = -1;
  scene->strong = 1;
  rw_limits_layer_layout (&self->limits, scene);
  rw_trim_map_layout_place_lines (self);
  rw_trim_map_layout_place_marks (self);
  rw_trim_map_layout_place_needle (self);
  place_ticks (self);
  place_foot (self);
}

void
rw_trim_map_layout_init (RwTrimMapLayout      *self,
                         const RwTrimMapInput *input)
{
  g_autofree char *instead = rw_trim_map_words_instead (input->set);

  *self = (RwTrimMapLayout){ .in = *input, .set_x = NAN };
  self->scene.in.text = input->text;
  self->scene.in.width = input->width;
  self->scene.in.height = input->height;
  self->scene.in.title = input->title;
  self->scene.in.aside = input->aside;
  self->scene.theme = rw_theme_get (rw_view_get_theme (input->view));
  self->scene.unit = rw_view_get_text_scale (input->view);
  self->scene.mode = RW_VIEW_POSITION;
  self->scene.rail = rw_view_get_rail (input->view);
  self->lines = list_of (sizeof (RwTrimMapLine), clear_line);
  self->marks = list_of (sizeof (RwTrimMapMark), NULL);
  self->labels = list_of (sizeof (RwTrimMapLabel), clear_label);
  self->ticks = list_of (sizeof (RwAxisTick), clear_tick);
  self->needle.diamonds = list_of (sizeof (RwTrimMapDiamond), NULL);
  self->scene.title_y = grid * self->scene.unit
                        + rw_chart_text_height (input->text, RW_TEXT_TITLE) / 2;
  if (instead != NULL)
    break_lines (self, instead);
  else
    place_picture (self);
}

void
rw_trim_map_layout_clear (RwTrimMapLayout *self)
{
  g_clear_pointer (&self->instead, g_ptr_array_unref);
  rw_limits_layer_clear (&self->limits);
  g_clear_pointer (&self->lines, g_array_unref);
  g_clear_pointer (&self->marks, g_array_unref);
  g_clear_pointer (&self->labels, g_array_unref);
  g_clear_pointer (&self->ticks, g_array_unref);
  g_clear_pointer (&self->needle.diamonds, g_array_unref);
  g_clear_pointer (&self->needle.words, g_free);
  g_clear_pointer (&self->axis_words, g_free);
  g_clear_pointer (&self->note_words, g_free);
}

/* Pixels of a number, clamped to its axis. */
static double
clamped (const RwAxis *axis,
         double        value,
         int          *beyond)
{
  *beyond = rw_axis_beyond (axis, value);
  if (*beyond != 0)
    return *beyond < 0 ? axis->from : axis->to;
  return rw_axis_to_pixel (axis, value);
}

double
rw_trim_map_layout_y (const RwTrimMapLayout *self,
                      double                 position,
                      int                   *beyond)
{
  return clamped (&self->scene.scale, position, beyond);
}

double
rw_trim_map_layout_x (const RwTrimMapLayout *self,
                      double                 volts,
                      int                   *beyond)
{
  return clamped (&self->volts, volts, beyond);
}

RwSeriesStyle
rw_trim_map_layout_style (const RwTrimMapLayout *self,
                          guint                  rail)
{
  return rw_theme_series (self->scene.theme, rail);
}
