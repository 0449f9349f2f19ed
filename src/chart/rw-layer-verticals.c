/* rw-layer-verticals.c: moments as labelled verticals.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Placing. Rank says who goes first: marks, symptoms, repairs, gaps, setup, notes, trims. In
 * order of rank (and of time within one):
 *  1. every vertical gets its sign, in the lowest of its rows where none stands already;
 *  2. every one with a sign gets its label into the free stretch to the right or to the left of
 *     it, whole; where that fails, in another row, sign and all;
 *  3. labels still missing are cut to the larger stretch, if that is long enough to be worth it.
 *
 * A free stretch ends at the nearest sign, label or crossing line of the row, so no two of them
 * ever overlap.
 */
#include "config.h"

#include "rw-layer-verticals.h"

#include <math.h>

#include "rw-glyph.h"
#include "rw-ink.h"

static const double sign_size = 11;
static const double gap = 4;         /* pixels between sign and label, and between neighbours */
static const double least_cut = 48;  /* pixels: a label cut shorter is not worth having */
static const double finger = 10;
static const double line_finger = 4; /* on the plot, where readings want the pointer too */

static const RwEventType ranking[] = { RW_EVENT_MARK, RW_EVENT_SYMPTOM, RW_EVENT_REPAIR,
                                       RW_EVENT_GAP,  RW_EVENT_SETUP,   RW_EVENT_NOTE,
                                       RW_EVENT_TRIM };
static const guint n_ranks = G_N_ELEMENTS (ranking);

/* 0 goes first. */
static guint
rank_of (RwEventType type)
{
  guint rank = 0;

  while (rank < n_ranks - 1 && ranking[rank] != type)
    rank++;
  return rank;
}

static void
clear_mark (gpointer data)
{
  g_clear_pointer (&((RwVerticalMark *) data)->words, g_free);
}

static RwVerticalMark *
mark_at (const RwVerticalsLayer *self,
         guint                   i)
{
  return &g_array_index (self->marks, RwVerticalMark, i);
}

static gint
compare_x (gconstpointer a,
           gconstpointer b)
{
  const RwVerticalMark *one = a, *other = b;

  if (one->x != other->x)
    return one->x < other->x ? -1 : 1;
  return one->index < other->index ? -1 : one->index > other->index;
}

static double
row_y (const RwScene *scene,
       guint          row)
{
  return row < scene->n_lanes ? scene->lane_y[row] : scene->trim_lane_y;
}

static gboolean
has_sign (const RwVerticalMark *mark)
{
  return mark->sign.width > 0;
}

/* The line of @mark runs through @row on its way down. */
static gboolean
crosses (const RwVerticalMark *mark,
         guint                 row)
{
  return has_sign (mark) && mark->row < row;
}

static void
set_row (const RwScene  *scene,
         RwVerticalMark *mark,
         guint           row)
{
  const double size = sign_size * scene->unit;

  mark->row = row;
  mark->sign = (RwRect){ mark->x - size / 2, row_y (scene, row) - size / 2, size, size };
}

/* Nothing stands where @mark's sign is now. */
static gboolean
stands_free (const RwVerticalsLayer *self,
             const RwVerticalMark   *mark)
{
  for (guint i = 0; i < self->marks->len; i++)
    {
      const RwVerticalMark *other = mark_at (self, i);

      if (other != mark
          && (rw_rect_overlap (&other->sign, &mark->sign)
              || rw_rect_overlap (&other->label, &mark->sign)))
        return FALSE;
    }
  return TRUE;
}

/* Step 1. */
static void
place_sign (const RwVerticalsLayer *self,
            const RwScene          *scene,
            RwVerticalMark         *mark)
{
  const gboolean trim = mark->type == RW_EVENT_TRIM;
  const guint lowest = trim ? scene->n_lanes : scene->n_lanes - 1,
              n_rows = trim ? 1 : scene->n_lanes;

  for (guint i = 0; i < n_rows; i++)
    {
      set_row (scene, mark, lowest - i);
      if (stands_free (self, mark))
        return;
    }
  mark->sign = (RwRect){ 0 };
}

/* Cuts the stretch [*from, *to] on one side of @mark's sign short at a box. */
static void
stop_at (const RwVerticalMark *mark,
         const RwRect         *box,
         double                space,
         gboolean              rightwards,
         double               *from,
         double               *to)
{
  if (rightwards && box->x >= mark->sign.x)
    *to = MIN (*to, box->x - space);
  if (!rightwards && box->x < mark->sign.x)
    *from = MAX (*from, rw_rect_right (box) + space);
}

/* The stretch of @mark's row that is free beside its sign. */
static void
free_stretch (const RwVerticalsLayer *self,
              const RwScene          *scene,
              const RwVerticalMark   *mark,
              gboolean                rightwards,
              double                 *from,
              double                 *to)
{
  const double space = gap * scene->unit;

  *from = rightwards ? rw_rect_right (&mark->sign) + space : space;
  *to = rightwards ? scene->in.width - space : mark->sign.x - space;
  for (guint i = 0; i < self->marks->len; i++)
    {
      const RwVerticalMark *other = mark_at (self, i);
      const RwRect line = { other->x, 0, 0, 0 };

      if (other == mark || !has_sign (other))
        continue;
      if (crosses (other, mark->row))
        stop_at (mark, &line, space, rightwards, from, to);
      if (other->row != mark->row)
        continue;
      stop_at (mark, &other->sign, 2 * space, rightwards, from, to);
      if (other->label.width > 0)
        stop_at (mark, &other->label, 2 * space, rightwards, from, to);
    }
}

/* TRUE when @words fit between @from and @to, cut if need be. */
static gboolean
write_label (const RwScene  *scene,
             RwVerticalMark *mark,
             const char     *words,
             double          from,
             double          to,
             gboolean        rightwards)
{
  RwChartText *text = scene->in.text;

  mark->words = rw_chart_text_fit (text, RW_TEXT_CAPTION, words, to - from);
  if (mark->words == NULL)
    return FALSE;

  const double width = rw_chart_text_width (text, RW_TEXT_CAPTION, mark->words);
  const double height = rw_chart_text_height (text, RW_TEXT_CAPTION);

  mark->label = (RwRect){ rightwards ? from : to - width, row_y (scene, mark->row) - height / 2,
                          width, height };
  return TRUE;
}

static gboolean
write_whole (const RwVerticalsLayer *self,
             const RwScene          *scene,
             RwVerticalMark         *mark,
             const char             *words)
{
  const double width = rw_chart_text_width (scene->in.text, RW_TEXT_CAPTION, words);

  for (int leftwards = 0; leftwards < 2; leftwards++)
    {
      double from, to;

      free_stretch (self, scene, mark, !leftwards, &from, &to);
      if (to - from >= width)
        return write_label (scene, mark, words, from, to, !leftwards);
    }
  return FALSE;
}

/* Step 2. A trim stays in its row. One that moves up leaves a line through the row it comes from,
 * but no label is in its way there: its own sign has kept that spot free. */
static void
place_whole (const RwVerticalsLayer *self,
             const RwScene          *scene,
             RwVerticalMark         *mark,
             const char             *words)
{
  const guint home = mark->row;

  if (write_whole (self, scene, mark, words) || mark->type == RW_EVENT_TRIM)
    return;
  for (guint row = 0; row < scene->n_lanes; row++)
    {
      set_row (scene, mark, row);
      if (row != home && stands_free (self, mark) && write_whole (self, scene, mark, words))
        return;
    }
  set_row (scene, mark, home);
}

/* Step 3. A trim's number is not worth cutting. */
static void
place_cut (const RwVerticalsLayer *self,
           const RwScene          *scene,
           RwVerticalMark         *mark,
           const char             *words)
{
  double left_from, left_to, right_from, right_to;

  if (mark->words != NULL || mark->type == RW_EVENT_TRIM)
    return;
  free_stretch (self, scene, mark, TRUE, &right_from, &right_to);
  free_stretch (self, scene, mark, FALSE, &left_from, &left_to);

  const gboolean rightwards = right_to - right_from >= left_to - left_from;
  const double from = rightwards ? right_from : left_from, to = rightwards ? right_to : left_to;

  if (to - from >= least_cut * scene->unit)
    write_label (scene, mark, words, from, to, rightwards);
}

static void
add_marks (RwVerticalsLayer *self,
           const RwScene    *scene)
{
  const guint n = rw_chart_data_get_n_verticals (scene->in.data);

  for (guint i = 0; i < n; i++)
    {
      const RwChartVertical *vertical = rw_chart_data_get_vertical (scene->in.data, i);
      const RwVerticalMark mark = { .index = vertical->index,
                                    .type = vertical->type,
                                    .count = vertical->count,
                                    .x = rw_scene_x (scene, vertical->t) };

      if (vertical->t >= scene->time.lo && vertical->t <= scene->time.hi)
        g_array_append_val (self->marks, mark);
    }
  g_array_sort (self->marks, compare_x);
}

/* The vertical of event @index; it is there. O(log n): indices rise. */
static const RwChartVertical *
find_vertical (const RwScene *scene,
               guint          index)
{
  guint low = 0, high = rw_chart_data_get_n_verticals (scene->in.data);

  while (high - low > 1)
    {
      const guint middle = low + (high - low) / 2;

      if (rw_chart_data_get_vertical (scene->in.data, middle)->index <= index)
        low = middle;
      else
        high = middle;
    }
  return rw_chart_data_get_vertical (scene->in.data, low);
}

typedef void (*LabelFunc) (const RwVerticalsLayer *self, const RwScene *scene, RwVerticalMark *mark,
                           const char *words);

/* In order of rank. */
static void
each_label (const RwVerticalsLayer *self,
            const RwScene          *scene,
            LabelFunc               func,
            const GPtrArray        *words)
{
  for (guint rank = 0; rank < n_ranks; rank++)
    for (guint i = 0; i < self->marks->len; i++)
      {
        RwVerticalMark *mark = mark_at (self, i);
        const char *said = words->pdata[i];

        if (rank_of (mark->type) == rank && has_sign (mark) && said != NULL && said[0] != '\0')
          func (self, scene, mark, said);
      }
}

void
rw_verticals_layer_layout (RwVerticalsLayer   *self,
                           const RwScene      *scene,
                           RwVerticalWordsFunc words,
                           gpointer            user_data)
{
  g_autoptr (GPtrArray) said = g_ptr_array_new_with_free_func (g_free);

  self->marks = g_array_new (FALSE, TRUE, sizeof (RwVerticalMark));
  g_array_set_clear_func (self->marks, clear_mark);
  add_marks (self, scene);
  for (guint rank = 0; rank < n_ranks; rank++)
    for (guint i = 0; i < self->marks->len; i++)
      if (rank_of (mark_at (self, i)->type) == rank)
        place_sign (self, scene, mark_at (self, i));
  for (guint i = 0; i < self->marks->len; i++)
    g_ptr_array_add (said, words (find_vertical (scene, mark_at (self, i)->index), user_data));
  each_label (self, scene, place_whole, said);
  each_label (self, scene, place_cut, said);
}

void
rw_verticals_layer_clear (RwVerticalsLayer *self)
{
  g_clear_pointer (&self->marks, g_array_unref);
}

/* Marks are to be found again, so theirs is the strongest line; a note only says where it was
 * written. */
static void
set_line (const RwScene *scene,
          RwEventType    type,
          cairo_t       *cr)
{
  const double unit = scene->unit;
  const double dashes[] = { 4 * unit, 3 * unit }, dots[] = { unit, 3 * unit };
  const RwTheme *theme = scene->theme;
  const gboolean strong = type == RW_EVENT_MARK || type == RW_EVENT_SYMPTOM
                          || type == RW_EVENT_REPAIR;

  rw_ink_color (cr, strong ? theme->ink : theme->line);
  cairo_set_line_width (cr, (type == RW_EVENT_MARK ? 1.2 : 0.8) * unit * theme->weight);
  if (type == RW_EVENT_SETUP || type == RW_EVENT_SYMPTOM)
    cairo_set_dash (cr, dashes, G_N_ELEMENTS (dashes), 0);
  else if (type == RW_EVENT_NOTE || type == RW_EVENT_GAP)
    cairo_set_dash (cr, dots, G_N_ELEMENTS (dots), 0);
  else
    cairo_set_dash (cr, NULL, 0, 0);
}

void
rw_verticals_layer_ink_lines (const RwVerticalsLayer *self,
                              const RwScene          *scene,
                              cairo_t                *cr)
{
  cairo_save (cr);
  for (guint i = 0; i < self->marks->len; i++)
    {
      const RwVerticalMark *mark = mark_at (self, i);
      const double x = rw_ink_crisp (mark->x);
      const double top = has_sign (mark) ? rw_rect_bottom (&mark->sign) + 2 * scene->unit
                                         : scene->plot.y;

      set_line (scene, mark->type, cr);
      rw_ink_line (cr, x, top, x, rw_rect_bottom (&scene->plot));
    }
  cairo_restore (cr);
}

void
rw_verticals_layer_ink_signs (const RwVerticalsLayer *self,
                              const RwScene          *scene,
                              cairo_t                *cr)
{
  RwSession *session = rw_chart_data_get_session (scene->in.data);
  const RwTheme *theme = scene->theme;

  for (guint i = 0; i < self->marks->len; i++)
    {
      const RwVerticalMark *mark = mark_at (self, i);

      if (!has_sign (mark))
        continue;

      const RwColor color = mark->type == RW_EVENT_NOTE || mark->type == RW_EVENT_TRIM
                                ? theme->quiet
                                : theme->ink;

      rw_glyph_ink (cr, rw_session_get_event (session, mark->index), mark->count, mark->x,
                    mark->sign.y + mark->sign.height / 2, sign_size * scene->unit, color,
                    theme->paper);
      if (mark->words != NULL)
        rw_chart_text_ink (scene->in.text, cr, RW_TEXT_CAPTION, mark->words, mark->label.x,
                           mark->label.y + mark->label.height / 2, 0, color);
    }
}

/* Pixels from the point to the sign, the label or the line, whichever is nearest; INFINITY out of
 * reach. */
static double
distance_to (const RwVerticalMark *mark,
             const RwScene        *scene,
             double                x,
             double                y)
{
  const double across = fabs (mark->x - x);

  if (mark->label.width > 0 && rw_rect_contains (&mark->label, x, y))
    return 0;

  /* Above the plot, what has a sign is found in its own row only. */
  const gboolean above = y < scene->plot.y;
  const double off_row = has_sign (mark) ? fabs (y - mark->sign.y - mark->sign.height / 2) : 0;
  const gboolean there = above ? off_row <= finger * scene->unit
                               : rw_rect_contains (&scene->plot, x, y);

  if (!there || across > (above ? finger : line_finger) * scene->unit)
    return INFINITY;
  return across;
}

void
rw_verticals_layer_lookup (const RwVerticalsLayer *self,
                           const RwScene          *scene,
                           double                  x,
                           double                  y,
                           RwFound                *best)
{
  for (guint i = 0; i < self->marks->len; i++)
    {
      const RwVerticalMark *mark = mark_at (self, i);
      const double at = has_sign (mark) ? mark->sign.y + mark->sign.height / 2 : scene->plot.y;
      const RwFound found = { RW_HIT_VERTICAL, mark->index, NULL,
                              mark->x,         at,          distance_to (mark, scene, x, y) };

      if (isfinite (found.distance))
        rw_found_offer (best, &found);
    }
}
