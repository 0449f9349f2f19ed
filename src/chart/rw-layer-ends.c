/* rw-layer-ends.c: the name of each line at its right end.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Spreading. With z_i = y_i − i·spacing the demand "at least spacing apart" becomes "not
 * falling", so the least squares answer is the isotonic regression of z, found by pooling
 * neighbours that violate it (Ayer et al. 1955, Ann. Math. Stat. 26, 641: pool adjacent
 * violators). Bounds on the ends become plain clamping of the pooled values, since clamping keeps
 * them from falling.
 */
#include "config.h"

#include "rw-layer-ends.h"

#include <math.h>

#include "rw-ink.h"

static const double marker_gap = 17; /* from the plot's edge to the middle of the marker */
static const double name_gap = 9;    /* from there to the name */
static const double marker_size = 8;
static const double end_gap = 4; /* between the last letter and the edge of the picture */

/* Values that move together. */
typedef struct
{
  double mean;
  guint  n;
} Block;

/* z becomes its isotonic regression. */
static void
pool (double *z,
      guint   n)
{
  g_autofree Block *blocks = g_new (Block, n);
  guint n_blocks = 0, at = 0;

  for (guint i = 0; i < n; i++)
    {
      blocks[n_blocks++] = (Block){ z[i], 1 };
      while (n_blocks > 1 && blocks[n_blocks - 2].mean > blocks[n_blocks - 1].mean)
        {
          Block *into = &blocks[n_blocks - 2];
          const Block *from = &blocks[n_blocks - 1];

          into->mean = (into->mean * into->n + from->mean * from->n) / (into->n + from->n);
          into->n += from->n;
          n_blocks--;
        }
    }
  for (guint i = 0; i < n_blocks; i++)
    for (guint k = 0; k < blocks[i].n; k++)
      z[at++] = blocks[i].mean;
}

void
rw_ends_spread (double *y,
                guint   n,
                double  spacing,
                double  lo,
                double  hi)
{
  if (n == 0)
    return;
  if (n > 1 && (n - 1) * spacing > hi - lo)
    spacing = MAX (hi - lo, 0) / (n - 1);

  for (guint i = 0; i < n; i++)
    y[i] -= i * spacing;
  pool (y, n);
  for (guint i = 0; i < n; i++)
    y[i] = MAX (MIN (y[i], hi - (n - 1) * spacing), lo) + i * spacing;
}

static void
clear_label (gpointer data)
{
  RwEndLabel *label = data;

  g_clear_pointer (&label->name, g_free);
  g_clear_pointer (&label->place, g_free);
}

/* Newest value of a trace, of either kind. */
typedef struct
{
  double t, value; /* NaN: an overload */
  guint  index;    /* of the event */
} Newest;

/* FALSE when it has nothing to show. */
static gboolean
find_newest (const RwScene *scene,
             const RwTrace *trace,
             Newest        *newest)
{
  const RwPyramid *samples = trace->channel->samples;
  const RwChartReading *reading = rw_chart_channel_last_reading (trace->channel, scene->time.hi);
  guint i = trace->first_sample + trace->n_samples;

  while (i > 0 && isnan (rw_pyramid_get_value (samples, i - 1)))
    i--;
  if (i == 0 && reading == NULL)
    return FALSE;
  if (i == 0 || (reading != NULL && reading->t >= rw_pyramid_get_time (samples, i - 1)))
    *newest = (Newest){ reading->t, reading->value, reading->index };
  else
    *newest = (Newest){ rw_pyramid_get_time (samples, i - 1), rw_pyramid_get_value (samples, i - 1),
                        rw_pyramid_get_tag (samples, i - 1) };
  return TRUE;
}

/* Another place of the same rail has a newer value. */
static gboolean
is_overtaken (const RwScene *scene,
              guint          index,
              const Newest  *newest)
{
  const RwTrace *trace = rw_scene_trace (scene, index);

  for (guint i = 0; i < scene->traces->len; i++)
    {
      const RwTrace *other = rw_scene_trace (scene, i);
      Newest rival;

      if (other->channel->rail == trace->channel->rail && other->place_label != NULL
          && trace->place_label != NULL && find_newest (scene, other, &rival)
          && rival.index > newest->index)
        return TRUE;
    }
  return FALSE;
}

/* Its line ends in what is expected now. */
static void
end_expected (const RwScene        *scene,
              RwEndLabel           *label,
              const RwExpectedKnot *knot)
{
  int beyond;

  label->x = MAX (rw_scene_x (scene, knot->t), scene->plot.x);
  label->y = rw_scene_y (scene, rw_scene_trace (scene, label->trace), knot->value, &beyond);
  label->until = rw_rect_right (&scene->plot);
  label->holds = TRUE;
  label->expected = TRUE;
}

static void
find_end (const RwScene *scene,
          RwEndLabel    *label,
          const Newest  *newest)
{
  const RwExpectedKnot *knot = rw_scene_expected_now (scene, label->trace);
  const double change = rw_scene_next_change (scene, newest->t);
  const double edge = rw_rect_right (&scene->plot);
  int beyond;

  if (knot != NULL)
    {
      end_expected (scene, label, knot);
      return;
    }
  label->x = MAX (rw_scene_x (scene, newest->t), scene->plot.x);
  /* A rail of which there is nothing but an overload is named where its marker is: at the top. */
  label->y = isnan (newest->value)
                 ? scene->plot.y
                 : rw_scene_y (scene, rw_scene_trace (scene, label->trace), newest->value, &beyond);
  label->holds = change > scene->time.hi;
  label->until = label->holds ? edge : MAX (rw_scene_x (scene, change), label->x);
  label->quiet = !label->holds && is_overtaken (scene, label->trace, newest);
}

static RwTextRank
name_rank (const RwEndLabel *label)
{
  return label->quiet ? RW_TEXT_CAPTION : RW_TEXT_LABEL;
}

static void
fit_words (const RwScene *scene,
           RwEndLabel    *label)
{
  const RwTrace *trace = rw_scene_trace (scene, label->trace);
  RwChartText *text = scene->in.text;
  const double limit = scene->in.width - end_gap * scene->unit;

  label->marker_x = rw_rect_right (&scene->plot) + marker_gap * scene->unit;
  label->name_x = label->marker_x + name_gap * scene->unit;
  label->name = rw_chart_text_fit (text, name_rank (label), trace->label, limit - label->name_x);

  g_autofree char *caption = rw_scene_dup_caption (trace, label->expected);

  if (label->name == NULL || caption == NULL)
    return;
  label->place_x = label->name_x + rw_chart_text_width (text, name_rank (label), label->name)
                   + 4 * scene->unit;
  label->place = rw_chart_text_fit (text, RW_TEXT_CAPTION, caption, limit - label->place_x);
}

static gint
compare_labels (gconstpointer a,
                gconstpointer b)
{
  const RwEndLabel *one = a, *other = b;

  if (one->y != other->y)
    return one->y < other->y ? -1 : 1;
  return one->trace < other->trace ? -1 : 1;
}

/* Of the place that the leads are on. */
static gboolean
is_aimed (const RwScene    *scene,
          const RwEndLabel *label)
{
  return rw_scene_trace (scene, label->trace)->channel->place == rw_view_get_place (scene->in.view);
}

/* TRUE when @one is kept rather than @other. */
static gboolean
is_worthier (const RwScene    *scene,
             const RwEndLabel *one,
             const RwEndLabel *other)
{
  const gboolean chosen = rw_scene_trace (scene, one->trace)->chosen;

  if (chosen != rw_scene_trace (scene, other->trace)->chosen)
    return chosen;
  if (chosen && is_aimed (scene, one) != is_aimed (scene, other))
    return is_aimed (scene, one);
  if (one->quiet != other->quiet)
    return other->quiet;
  if (one->expected != other->expected)
    return other->expected;
  return one->trace < other->trace;
}

/* All but the worthiest @room. */
static void
leave_out (RwEndsLayer   *self,
           const RwScene *scene,
           guint          room)
{
  for (guint left = self->labels->len; left > room; left--)
    {
      RwEndLabel *least = NULL;

      for (guint i = 0; i < self->labels->len; i++)
        {
          RwEndLabel *label = &g_array_index (self->labels, RwEndLabel, i);

          if (!label->left_out && (least == NULL || is_worthier (scene, least, label)))
            least = label;
        }
      least->left_out = TRUE;
    }
}

static void
spread_labels (RwEndsLayer   *self,
               const RwScene *scene)
{
  const double height = rw_chart_text_height (scene->in.text, RW_TEXT_LABEL);
  const gboolean crowded = self->labels->len * height > scene->plot.height;
  const double room = scene->plot.height + (crowded ? RW_SCENE_TIME_GAP * scene->unit : 0);
  g_autofree double *y = g_new (double, self->labels->len + 1);
  guint n = 0;

  leave_out (self, scene, MAX ((guint) (room / height), 1));
  for (guint i = 0; i < self->labels->len; i++)
    if (!g_array_index (self->labels, RwEndLabel, i).left_out)
      y[n++] = g_array_index (self->labels, RwEndLabel, i).y;
  rw_ends_spread (y, n, height, scene->plot.y + height / 2, scene->plot.y + MAX (room, height) - height / 2);
  n = 0;
  for (guint i = 0; i < self->labels->len; i++)
    {
      RwEndLabel *label = &g_array_index (self->labels, RwEndLabel, i);

      label->label_y = label->left_out ? label->y : y[n++];
    }
}

void
rw_ends_layer_layout (RwEndsLayer   *self,
                      const RwScene *scene)
{
  self->labels = g_array_new (FALSE, FALSE, sizeof (RwEndLabel));
  g_array_set_clear_func (self->labels, clear_label);
  for (guint i = 0; i < scene->traces->len; i++)
    {
      RwEndLabel label = { .trace = i };
      Newest newest;

      if (!find_newest (scene, rw_scene_trace (scene, i), &newest))
        continue;
      find_end (scene, &label, &newest);
      fit_words (scene, &label);
      g_array_append_val (self->labels, label);
    }
  g_array_sort (self->labels, compare_labels);
  spread_labels (self, scene);
}

void
rw_ends_layer_clear (RwEndsLayer *self)
{
  g_clear_pointer (&self->labels, g_array_unref);
}

static void
ink_leader (const RwScene    *scene,
            const RwEndLabel *label,
            cairo_t          *cr)
{
  const double edge = rw_rect_right (&scene->plot), unit = scene->unit;
  const double dots[] = { unit, 3 * unit };
  const RwColor color = rw_scene_trace (scene, label->trace)->style.color;

  cairo_set_line_width (cr, unit * scene->theme->weight);
  rw_ink_color (cr, rw_ink_mixed (color, scene->theme->paper, 0.6));
  cairo_set_dash (cr, dots, G_N_ELEMENTS (dots), 0);
  if (label->x < label->until)
    rw_ink_line (cr, label->x, label->y, label->until, label->y);
  cairo_set_dash (cr, NULL, 0, 0);
  if (label->holds && !label->left_out)
    rw_ink_line (cr, edge + unit, label->y, label->marker_x - (marker_size / 2 + 3) * unit,
                 label->label_y);
}

static void
ink_name (const RwScene    *scene,
          const RwEndLabel *label,
          cairo_t          *cr)
{
  const RwTrace *trace = rw_scene_trace (scene, label->trace);
  const RwColor color = trace->style.color;
  const double size = marker_size * scene->unit * (label->quiet ? 0.8 : 1);
  const RwMarkerFill fill = label->expected ? RW_FILL_HOLLOW
                                            : rw_ink_fill_of (trace->channel->place);

  rw_ink_marker (cr, trace->style.marker, fill, label->marker_x,
                 label->label_y, size, color, scene->theme->paper);
  if (label->name != NULL)
    rw_chart_text_ink (scene->in.text, cr, name_rank (label), label->name, label->name_x,
                       label->label_y, 0, color);
  if (label->place != NULL)
    rw_chart_text_ink (scene->in.text, cr, RW_TEXT_CAPTION, label->place, label->place_x,
                       label->label_y, 0, color);
}

void
rw_ends_layer_ink (const RwEndsLayer *self,
                   const RwScene     *scene,
                   cairo_t           *cr)
{
  cairo_save (cr);
  for (guint i = 0; i < self->labels->len; i++)
    {
      ink_leader (scene, &g_array_index (self->labels, RwEndLabel, i), cr);
      if (!g_array_index (self->labels, RwEndLabel, i).left_out)
        ink_name (scene, &g_array_index (self->labels, RwEndLabel, i), cr);
    }
  cairo_restore (cr);
}
