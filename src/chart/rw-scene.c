/* rw-scene.c: everything the layers share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-scene.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-scene-expected.h"
#include "rw-scene-range.h"

static const double grid = 6;         /* pixels: all distances are multiples of it */
static const guint  many_moments = 4; /* from so many on, their labels have two lanes */
static const double tall_enough = 300;

static void
clear_trace (gpointer data)
{
  RwTrace *trace = data;

  g_clear_pointer (&trace->label, g_free);
  g_clear_pointer (&trace->columns, g_free);
}

const char *
rw_scene_rail_label (const RwChartChannel *channel)
{
  if (channel->facts != NULL)
    return channel->facts->label;
  return g_str_equal (channel->rail, RW_RAIL_GROUND) ? _ ("ground") : channel->rail;
}

static gboolean
has_something (const RwChartChannel *channel,
               double                until)
{
  return rw_chart_channel_last_reading (channel, until) != NULL
         || (rw_pyramid_get_n (channel->samples) > 0
             && rw_pyramid_get_time (channel->samples, 0) <= until);
}

/* Ripple and drops are numbers of another size: they are shown only where they are asked for. */
static gboolean
is_side_matter (const RwChartChannel *channel)
{
  return channel->kind != RW_KIND_DC || channel->place == RW_PLACE_WIRE;
}

static gboolean
is_shown (const RwScene        *self,
          const RwChartChannel *channel)
{
  const gboolean chosen = channel->rail == self->rail;

  if (!has_something (channel, rw_view_get_end (self->in.view)))
    return FALSE;
  if (self->mode == RW_VIEW_POSITION && channel->place == RW_PLACE_WIRE)
    return channel->limited && chosen
           && (rw_view_get_place (self->in.view) == RW_PLACE_WIRE || g_str_equal (self->rail, RW_RAIL_GROUND));
  if (self->mode == RW_VIEW_POSITION)
    return channel->limited && (chosen || !is_side_matter (channel));
  if (g_str_equal (self->rail, RW_RAIL_GROUND))
    return chosen && channel->kind == RW_KIND_DC;
  return chosen && !is_side_matter (channel);
}

static void
add_trace (RwScene              *self,
           const RwChartChannel *channel)
{
  const gboolean position = self->mode == RW_VIEW_POSITION;
  const RwTrace trace = {
    .channel = channel,
    .style = rw_theme_series (self->theme, channel->series),
    .gain = position ? channel->gain : 1,
    .offset = position ? channel->offset : 0,
    .chosen = channel->rail == self->rail,
  };

  g_array_append_val (self->traces, trace);
}

/* Chosen ones last, so that they lie on top; otherwise by the order of the profile, then place,
 * then kind. */
static gint
compare_traces (gconstpointer a,
                gconstpointer b)
{
  const RwTrace *one = a, *other = b;
  const RwChartChannel *c1 = one->channel, *c2 = other->channel;

  if (one->chosen != other->chosen)
    return one->chosen ? 1 : -1;
  if (c1->series != c2->series)
    return c1->series < c2->series ? -1 : 1;
  if (c1->rail != c2->rail)
    return strcmp (c1->rail, c2->rail);
  if (c1->place != c2->place)
    return c1->place < c2->place ? -1 : 1;
  return (int) c1->kind - (int) c2->kind;
}

/* Ripple and drops are named for what they are, the rest for the rail. */
static char *
make_label (const RwChartChannel *channel)
{
  const char *rail = rw_scene_rail_label (channel);

  if (channel->kind == RW_KIND_RIPPLE)
    /* Translators: label of a line on the chart; %s is a rail such as "+5 V". */
    return g_strdup_printf (_ ("%s ripple"), rail);
  if (channel->place == RW_PLACE_WIRE)
    /* Translators: label of a line on the chart: volts lost along the wire of a rail such as "+5
     * V". */
    return g_strdup_printf (_ ("%s drop"), rail);
  return g_strdup (rail);
}

/* The place is worth saying where the same of the rail is there from another place too; a drop has but one. */
static const char *
place_label (const RwScene        *self,
             const RwChartChannel *channel)
{
  guint n = 0;

  if (channel->place == RW_PLACE_WIRE)
    return NULL;
  for (guint i = 0; i < self->traces->len; i++)
    {
      const RwChartChannel *other = rw_scene_trace (self, i)->channel;

      n += other->rail == channel->rail && other->kind == channel->kind && other->place != RW_PLACE_WIRE ? 1 : 0;
    }
  return n > 1 ? rw_place_get_label (channel->place) : NULL;
}

char *
rw_scene_dup_caption (const RwTrace *trace,
                      gboolean       expected)
{
  if (!expected)
    return g_strdup (trace->place_label);
  if (trace->place_label == NULL)
    return g_strdup (_ ("expected"));
  /* Translators: behind the name of a line on the chart; %s is a place such as "board". */
  return g_strdup_printf (_ ("%s, expected"), trace->place_label);
}

static void
choose_traces (RwScene *self)
{
  const guint n = rw_chart_data_get_n_channels (self->in.data);

  for (guint i = 0; i < n; i++)
    {
      const RwChartChannel *channel = rw_chart_data_get_channel (self->in.data, i);

      if (is_shown (self, channel))
        add_trace (self, channel);
    }
  g_array_sort (self->traces, compare_traces);
  for (guint i = 0; i < self->traces->len; i++)
    {
      RwTrace *trace = &g_array_index (self->traces, RwTrace, i);

      trace->label = make_label (trace->channel);
      trace->place_label = place_label (self, trace->channel);
    }
}

/* A warm-up changes nothing at one stroke; all the others do. */
static gboolean
makes_stale (const RwChartVertical *vertical)
{
  if (vertical->type == RW_EVENT_SETUP)
    return vertical->news.power_on != RW_SAID_NOT || vertical->news.board_fitted != RW_SAID_NOT;
  return vertical->type == RW_EVENT_TRIM || vertical->type == RW_EVENT_REPAIR;
}

static void
collect_changes (RwScene *self)
{
  const guint n = rw_chart_data_get_n_verticals (self->in.data);

  for (guint i = 0; i < n; i++)
    {
      const RwChartVertical *vertical = rw_chart_data_get_vertical (self->in.data, i);

      if (makes_stale (vertical))
        g_array_append_val (self->changes, vertical->t);
    }
}

/* Somewhere a rail beside the reference has a line: sooner or later a label says "expected". Asked
 * here of the sets and not of what is expected now, so that the plot keeps its width while one rail
 * after the other is measured. */
static gboolean
foretells (const RwScene *self)
{
  const RwForesight *foresight = self->in.foresight;

  for (guint i = 0; foresight != NULL && i < rw_foresight_get_n_sets (foresight); i++)
    if (rw_foresight_get_set (foresight, i)->n_lined > 1)
      return TRUE;
  return FALSE;
}

static double
widest_label (const RwScene *self)
{
  RwChartText *text = self->in.text;
  const gboolean expected = foretells (self);
  double widest = 0;

  for (guint i = 0; i < self->traces->len; i++)
    {
      const RwTrace *trace = rw_scene_trace (self, i);
      const gboolean sometimes = expected && !is_side_matter (trace->channel);
      g_autofree char *caption = rw_scene_dup_caption (trace, sometimes);

      widest = MAX (widest, rw_chart_text_width (text, RW_TEXT_LABEL, trace->label)
                                + rw_chart_text_width (text, RW_TEXT_CAPTION,
                                                       caption != NULL ? caption : ""));
    }
  return widest > 0 ? widest + RW_SCENE_LABEL_ROOM * self->unit : 0;
}

/* Moments in sight that stand in the lanes. */
static guint
count_moments (const RwScene *self)
{
  const guint n = rw_chart_data_get_n_verticals (self->in.data);
  const double start = rw_view_get_start (self->in.view), end = rw_view_get_end (self->in.view);
  guint count = 0;

  for (guint i = 0; i < n; i++)
    {
      const RwChartVertical *vertical = rw_chart_data_get_vertical (self->in.data, i);

      count += vertical->type != RW_EVENT_TRIM && vertical->t >= start && vertical->t <= end ? 1
                                                                                             : 0;
    }
  return count;
}

static double
left_margin (const RwScene *self)
{
  RwChartText *text = self->in.text;

  if (self->mode == RW_VIEW_VOLTS)
    return rw_chart_text_width (text, RW_TEXT_CAPTION, "−88.888");
  return MAX (MAX (rw_chart_text_width (text, RW_TEXT_CAPTION, _ ("strong limit")),
                   rw_chart_text_width (text, RW_TEXT_CAPTION, _ ("weak limit"))),
              rw_chart_text_width (text, RW_TEXT_CAPTION, _ ("middle")));
}

/* The rows above the plot; returns where they end. */
static double
place_rows (RwScene *self)
{
  const double step = grid * self->unit;
  const double caption = rw_chart_text_height (self->in.text, RW_TEXT_CAPTION);
  const double title = rw_chart_text_height (self->in.text, RW_TEXT_TITLE);
  const gboolean titled = self->in.title != NULL || self->in.aside != NULL;
  double y = step + (titled ? title + step : 0);

  self->title_y = step + title / 2;
  self->n_lanes = count_moments (self) >= many_moments
                          && self->in.height >= tall_enough * self->unit
                      ? 2
                      : 1;
  for (guint i = 0; i < self->n_lanes; i++, y += caption + step / 2)
    self->lane_y[i] = y + caption / 2;
  self->trim_lane_y = y + 1.1 * step;
  return y + 2.5 * step;
}

/* Edges of the plot are whole pixels, so that columns and hairlines are sharp. */
static void
place_plot (RwScene *self)
{
  const double step = grid * self->unit;
  const double caption = rw_chart_text_height (self->in.text, RW_TEXT_CAPTION);
  const double width = self->in.width, height = self->in.height;
  const double top = place_rows (self);
  const double bottom = height - caption - 2 * step;
  const double left = MIN (left_margin (self) + 3 * step, width / 3);
  const double right = width - MIN (MAX (widest_label (self), 4 * step), width / 3);

  self->plot = (RwRect){ round (left), round (MIN (top, height / 2)), 0, 0 };
  self->plot.width = MAX (round (right) - self->plot.x, 1);
  self->plot.height = MAX (round (bottom) - self->plot.y, 1);
}

static void
cut_columns (RwScene *self)
{
  const double length = self->time.hi - self->time.lo;

  self->n_columns = (guint) CLAMP (round (self->plot.width * self->in.device_scale), 1, 1 << 16);
  for (guint i = 0; i < self->traces->len; i++)
    {
      RwTrace *trace = &g_array_index (self->traces, RwTrace, i);
      const RwPyramid *samples = trace->channel->samples;

      trace->first_sample = rw_pyramid_find_time (samples, self->time.lo);
      trace->n_samples = rw_pyramid_find_time (samples, self->time.hi) - trace->first_sample;
      if (rw_pyramid_get_n (samples) == 0)
        continue;
      trace->columns = g_new (RwSpan, self->n_columns);
      rw_pyramid_columns (samples, self->time.lo, length / self->n_columns, self->n_columns,
                          trace->columns);
    }
}

void
rw_scene_init (RwScene            *self,
               const RwSceneInput *input)
{
  const RwProfile *profile = rw_session_get_profile (rw_chart_data_get_session (input->data));

  *self = (RwScene){ .in = *input };
  self->theme = rw_theme_get (rw_view_get_theme (input->view));
  self->unit = rw_view_get_text_scale (input->view);
  self->mode = rw_view_get_mode (input->view);
  self->rail = rw_view_get_rail (input->view);
  if (self->rail == NULL && self->mode == RW_VIEW_VOLTS)
    self->rail = rw_profile_get_reference (profile)->id;
  self->traces = g_array_new (FALSE, FALSE, sizeof (RwTrace));
  g_array_set_clear_func (self->traces, clear_trace);
  self->changes = g_array_new (FALSE, FALSE, sizeof (double));
  choose_traces (self);
  collect_changes (self);
  place_plot (self);
  self->time = rw_axis_make (rw_view_get_start (input->view), rw_view_get_end (input->view),
                             self->plot.x, rw_rect_right (&self->plot));
  cut_columns (self);
  rw_scene_set_expected (self);
  rw_scene_set_range (self);
}

void
rw_scene_clear (RwScene *self)
{
  g_clear_pointer (&self->traces, g_array_unref);
  g_clear_pointer (&self->changes, g_array_unref);
  g_clear_pointer (&self->expected, g_array_unref);
}

const RwExpectedKnot *
rw_scene_expected_now (const RwScene *self,
                       guint          trace)
{
  for (guint i = 0; i < self->expected->len; i++)
    {
      const RwExpectedStretch *stretch = rw_scene_stretch (self, i);

      if (stretch->trace == trace && stretch->lasts)
        return &g_array_index (stretch->knots, RwExpectedKnot, stretch->knots->len - 1);
    }
  return NULL;
}

double
rw_scene_x (const RwScene *self,
            double         t)
{
  return rw_axis_to_pixel (&self->time, t);
}

double
rw_scene_y (const RwScene *self,
            const RwTrace *trace,
            double         value,
            int           *beyond)
{
  const double shown = trace->gain * value + trace->offset;

  *beyond = rw_axis_beyond (&self->scale, shown);
  if (*beyond != 0)
    return *beyond < 0 ? rw_rect_bottom (&self->plot) : self->plot.y;
  return rw_axis_to_pixel (&self->scale, shown);
}

double
rw_scene_next_change (const RwScene *self,
                      double         t)
{
  for (guint i = 0; i < self->changes->len; i++)
    if (g_array_index (self->changes, double, i) > t)
      return g_array_index (self->changes, double, i);
  return INFINITY;
}
