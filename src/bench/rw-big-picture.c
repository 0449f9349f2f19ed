/* rw-big-picture.c: where everything of the big view stands at a size, and the ink.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * From top to bottom: rail and place, value, verdict, bar, what to do, message. Each has a share of the height; those
 * that are not there leave theirs to the others. A text is as large as its box lets it, the value by the height of its
 * digits, the others by their line. To be read from four metres on a screen 0.2 m high, a capital has to be 12 mm high
 * (10 minutes of arc) at least, 19 mm (16 minutes) to be read at ease: 6 % and 9.5 % of the height.
 *
 * Digits are of one width, and the value is measured with zeros in place of its digits, so that nothing changes size
 * as it counts.
 */
#include "config.h"

#include "rw-big-picture.h"

#include <math.h>
#include <string.h>

#include "rw-ink.h"

/* Shares of the height, to be scaled so that those in use fill it. */
static const double shares[RW_N_BIG_LINES] = {
  [RW_BIG_WHERE] = 0.12, [RW_BIG_VALUE] = 0.37, [RW_BIG_VERDICT] = 0.13, [RW_BIG_TODO] = 0.14,
};
static const double message_shares[] = { 0.15, 0.28, 0.42 }; /* the first at which it can be read from afar */
static const double legible_share = 0.06;                    /* height of a capital */
static const double bar_share = 0.12;
static const double gap_share = 0.028;
static const double margin_share = 0.03;
static const double inner_share = 0.70; /* of the bar's width: what lies between the limits */
static const double unit_scale = 0.55;
static const double first_pixels = 100; /* a size to measure at */
static const double size_step = 2;
static const double one_line_room = 0.985; /* of the width: letters do not grow quite evenly with the size */
static const double worth_breaking = 0.55; /* a line this much smaller than its box is better broken in two */

/* --- texts ---------------------------------------------------------------------------------------- */

static const char *
text_of (const RwBigContent *content,
         RwBigLineId         id)
{
  const char *texts[RW_N_BIG_LINES] = {
    [RW_BIG_WHERE] = content->where, [RW_BIG_VALUE] = content->value,     [RW_BIG_VERDICT] = content->verdict,
    [RW_BIG_TODO] = content->todo,   [RW_BIG_MESSAGE] = content->message,
  };

  return texts[id] != NULL && texts[id][0] != '\0' ? texts[id] : NULL;
}

/* A number and its unit are not torn apart. (transfer full) */
static char *
bind_units (const char *text)
{
  GString *bound = g_string_new (NULL);

  for (const char *c = text; *c != '\0'; c++)
    if (*c == ' ' && c > text && g_ascii_isdigit (c[-1]) && c[1] == 'V' && !g_ascii_isalpha (c[2]))
      g_string_append (bound, "\u00a0");
    else
      g_string_append_c (bound, *c);
  return g_string_free (bound, FALSE);
}

static void
set_size (PangoLayout *layout,
          double       pixels)
{
  g_autoptr (PangoFontDescription) font
      = pango_font_description_copy (pango_context_get_font_description (pango_layout_get_context (layout)));

  pango_font_description_set_absolute_size (font, pixels * PANGO_SCALE);
  pango_font_description_set_weight (font, PANGO_WEIGHT_BOLD);
  pango_layout_set_font_description (layout, font);
}

/* The unit, behind the narrow space, is smaller. */
static void
set_attributes (PangoLayout *layout,
                RwBigLineId  id)
{
  const char *text = pango_layout_get_text (layout);
  const char *space = id == RW_BIG_VALUE ? strstr (text, "\u202f") : NULL;
  PangoAttrList *list = pango_attr_list_new ();

  pango_attr_list_insert (list, pango_attr_font_features_new ("tnum=1"));
  if (space != NULL)
    {
      PangoAttribute *scale = pango_attr_scale_new (unit_scale);

      scale->start_index = (guint) (space - text);
      pango_attr_list_insert (list, scale);
    }
  pango_layout_set_attributes (layout, list);
  pango_attr_list_unref (list);
}

/* Height of a zero in this font. */
static double
measure_capital (PangoLayout *layout)
{
  g_autoptr (PangoLayout) zero = pango_layout_new (pango_layout_get_context (layout));
  PangoRectangle ink;

  pango_layout_set_font_description (zero, pango_layout_get_font_description (layout));
  pango_layout_set_text (zero, "0", 1);
  pango_layout_get_extents (zero, &ink, NULL);
  return (double) ink.height / PANGO_SCALE;
}

static void
measure (PangoLayout *layout,
         double      *width,
         double      *height)
{
  PangoRectangle logical;

  pango_layout_get_extents (layout, NULL, &logical);
  *width = (double) logical.width / PANGO_SCALE;
  *height = (double) logical.height / PANGO_SCALE;
}

/* With any digits in it: its width, and its height from the top of the digits to the tail of a decimal comma. */
static void
measure_value (PangoLayout *layout,
               double      *width,
               double      *height)
{
  g_autoptr (PangoLayout) copy = pango_layout_copy (layout);
  g_autofree char *text = g_strdup (pango_layout_get_text (layout));
  PangoRectangle ink;

  for (char *c = text; *c != '\0'; c++)
    if (g_ascii_isdigit (*c))
      *c = '0';
  pango_layout_set_text (copy, text, -1);
  measure (copy, width, height);
  pango_layout_get_extents (copy, &ink, NULL);
  *height = (double) ink.height / PANGO_SCALE;
}

/* One line, its digits as high as the box or as wide as it allows. */
static void
fit_value (PangoLayout *layout,
           double       width,
           double       height)
{
  double w, h;

  set_size (layout, first_pixels);
  measure_value (layout, &w, &h);
  set_size (layout, first_pixels * MIN (height / MAX (h, 1), width / MAX (w, 1)));
}

static gboolean
fits (PangoLayout *layout,
      double       pixels,
      double       width,
      double       height)
{
  double w, h;

  set_size (layout, pixels);
  measure (layout, &w, &h);
  return w <= width && h <= height;
}

/* Of the whole steps between two sizes the largest that fits; the smaller size where none does. Whole steps, since
 * a font is made for every size that is tried, and kept. */
static void
search_size (PangoLayout *layout,
             double       smallest,
             double       largest,
             double       width,
             double       height)
{
  int low = (int) ceil (smallest / size_step), high = (int) floor (largest / size_step);
  double best = smallest;

  while (low <= high)
    {
      const int middle = (low + high) / 2;

      if (fits (layout, middle * size_step, width, height))
        {
          best = middle * size_step;
          low = middle + 1;
        }
      else
        high = middle - 1;
    }
  set_size (layout, best);
}

/* As large as its box lets it; broken between words where one line would be much smaller. */
static void
fit_words (PangoLayout *layout,
           double       width,
           double       height)
{
  double w, h;

  pango_layout_set_alignment (layout, PANGO_ALIGN_CENTER);
  set_size (layout, first_pixels);
  measure (layout, &w, &h);

  const double as_high = first_pixels * height / MAX (h, 1);
  const double as_wide = first_pixels * width / MAX (w, 1) * one_line_room;

  pango_layout_set_width (layout, (int) (width * PANGO_SCALE));
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD);
  if (as_wide > worth_breaking * as_high)
    set_size (layout, MIN (as_high, as_wide));
  else
    search_size (layout, as_wide, as_high, width, height);
}

/* --- layout --------------------------------------------------------------------------------------- */

static RwRect
ink_of (PangoLayout *layout,
        double       x,
        double       y)
{
  PangoRectangle ink;

  pango_layout_get_extents (layout, &ink, NULL);
  return (RwRect){ x + (double) ink.x / PANGO_SCALE, y + (double) ink.y / PANGO_SCALE,
                   (double) ink.width / PANGO_SCALE, (double) ink.height / PANGO_SCALE };
}

/* Digits stand in the middle of the box; words by their line. */
static void
put_line (RwBigLine    *line,
          PangoContext *context,
          RwBigLineId   id,
          const char   *text,
          RwRect        box)
{
  g_autofree char *bound = bind_units (text);
  double width, height;
  RwRect ink;

  line->layout = pango_layout_new (context);
  pango_layout_set_text (line->layout, bound, -1);
  set_attributes (line->layout, id);
  if (id == RW_BIG_VALUE)
    fit_value (line->layout, box.width, box.height);
  else
    fit_words (line->layout, box.width, box.height);
  measure (line->layout, &width, &height);
  line->x = id == RW_BIG_VALUE ? box.x + (box.width - width) / 2 : box.x;
  ink = ink_of (line->layout, line->x, 0);
  line->y = id == RW_BIG_VALUE ? box.y + (box.height - ink.height) / 2 - ink.y : box.y + (box.height - height) / 2;
  line->ink = ink_of (line->layout, line->x, line->y);
  line->capital = measure_capital (line->layout);
}

/* In danger the bar has nothing to add. */
static gboolean
has_bar (const RwBigContent *content)
{
  return content->bar.shown && !content->danger;
}

static double
sum_of_shares (const RwBigContent *content,
               double              message_share)
{
  double sum = has_bar (content) ? bar_share + gap_share : 0;

  for (guint i = 0; i < RW_N_BIG_LINES; i++)
    if (text_of (content, i) != NULL)
      sum += gap_share + (i == RW_BIG_MESSAGE ? message_share : shares[i]);
  return sum;
}

/* A band with no more than its text needs. */
static void
put_band (RwBigLayout        *out,
          const RwBigContent *content)
{
  const RwBigLine *first = &out->lines[RW_BIG_VERDICT];
  const RwBigLine *last = content->danger ? &out->lines[RW_BIG_TODO] : first;
  const double edge = 0.02 * out->height;

  if (content->look != RW_VERDICT_OUTSIDE || first->layout == NULL || last->layout == NULL)
    return;

  const double left = MAX (0, MIN (first->ink.x, last->ink.x) - 2 * edge);
  const double right = MIN (out->width, MAX (rw_rect_right (&first->ink), rw_rect_right (&last->ink)) + 2 * edge);
  const double top = first->ink.y - edge;

  out->band = (RwRect){ left, top, right - left, rw_rect_bottom (&last->ink) + edge - top };
}

/* Most of the height is for what is there, but a line or two that are alone stay in the middle of it. */
static void
lay_out (RwBigLayout        *out,
         PangoContext       *context,
         const RwBigContent *content,
         double              message_share)
{
  static const RwBigLineId order[] = { RW_BIG_WHERE, RW_BIG_VALUE, RW_BIG_VERDICT, RW_N_BIG_LINES, RW_BIG_TODO,
                                       RW_BIG_MESSAGE };
  const double margin = margin_share * MIN (out->width, out->height), room = out->height - 2 * margin;
  const double sum = sum_of_shares (content, message_share), unit = room / MAX (sum, 0.3);
  double y = margin + (room - unit * sum) / 2;

  for (guint i = 0; i < G_N_ELEMENTS (order); i++)
    {
      const gboolean is_bar = order[i] == RW_N_BIG_LINES;
      const char *text = is_bar ? NULL : text_of (content, order[i]);
      const double share = is_bar ? bar_share : order[i] == RW_BIG_MESSAGE ? message_share : shares[order[i]];
      const RwRect box = { margin, y + unit * gap_share / 2, out->width - 2 * margin, unit * share };

      if (is_bar ? !has_bar (content) : text == NULL)
        continue;
      if (is_bar)
        out->bar = box;
      else
        put_line (&out->lines[order[i]], context, order[i], text, box);
      y += unit * (share + gap_share);
    }
}

void
rw_big_layout_init (RwBigLayout        *out,
                    PangoContext       *context,
                    const RwBigContent *content,
                    double              width,
                    double              height)
{
  *out = (RwBigLayout){ .width = width, .height = height };
  for (guint i = 0; i < G_N_ELEMENTS (message_shares); i++)
    {
      rw_big_layout_clear (out);
      lay_out (out, context, content, message_shares[i]);
      if (out->lines[RW_BIG_MESSAGE].layout == NULL
          || out->lines[RW_BIG_MESSAGE].capital >= legible_share * height)
        break;
    }
  put_band (out, content);
}

void
rw_big_layout_clear (RwBigLayout *self)
{
  for (guint i = 0; i < RW_N_BIG_LINES; i++)
    g_clear_object (&self->lines[i].layout);
}

/* --- ink ------------------------------------------------------------------------------------------ */

static double
to_x (const RwRect *bar,
      double        position)
{
  return bar->x + bar->width / 2 + position * bar->width * inner_share / 2;
}

static void
ink_stretch (cairo_t *cr,
             double   from,
             double   to,
             double   y,
             double   height)
{
  cairo_rectangle (cr, from, y - height / 2, to - from, height);
  cairo_fill (cr);
}

/* The limits are the two tall ticks; the window is the thick stretch; the set point cuts through it. */
static void
ink_scale (cairo_t       *cr,
           const RwRect  *bar,
           const RwBigBar *value,
           const RwTheme *theme)
{
  const double y = bar->y + bar->height * 0.70, weight = MAX (2, bar->height * 0.11) * theme->weight;
  const double low = to_x (bar, -1), high = to_x (bar, 1), half = bar->height * 0.30;

  rw_ink_color (cr, theme->line);
  ink_stretch (cr, bar->x, rw_rect_right (bar), y, weight / 3);
  rw_ink_color (cr, rw_ink_mixed (theme->line, theme->paper, 0.5));
  ink_stretch (cr, value->open_low ? bar->x : low, high, y, bar->height * 0.20);
  if (!isnan (value->window_lo) && !isnan (value->window_hi))
    {
      rw_ink_color (cr, theme->verdicts[RW_VERDICT_INSIDE]);
      ink_stretch (cr, CLAMP (to_x (bar, value->window_lo), bar->x, rw_rect_right (bar)),
                   CLAMP (to_x (bar, value->window_hi), bar->x, rw_rect_right (bar)), y, bar->height * 0.36);
    }
  rw_ink_color (cr, theme->ink);
  if (!value->open_low)
    ink_stretch (cr, low - weight / 2, low + weight / 2, y, 2 * half);
  ink_stretch (cr, high - weight / 2, high + weight / 2, y, 2 * half);
}

/* A wedge from below with its tip in the stretch. */
static void
ink_set_point (cairo_t        *cr,
               const RwRect   *bar,
               const RwBigBar *value,
               const RwTheme  *theme)
{
  const double x = to_x (bar, CLAMP (value->aim, -1.4, 1.4)), y = bar->y + bar->height * 0.70;
  const double half = bar->height * 0.22, bottom = rw_rect_bottom (bar);

  cairo_move_to (cr, x, y - bar->height * 0.02);
  cairo_line_to (cr, x - half, bottom);
  cairo_line_to (cr, x + half, bottom);
  cairo_close_path (cr);
  rw_ink_color (cr, theme->paper);
  cairo_set_line_width (cr, bar->height * 0.05);
  cairo_stroke_preserve (cr);
  rw_ink_color (cr, theme->ink);
  cairo_fill (cr);
}

static void
trace_needle (cairo_t      *cr,
              const RwRect *bar,
              double        position)
{
  const double half = bar->height * 0.32, y = bar->y + bar->height * 0.68;
  const double x = to_x (bar, position), left = bar->x + half, right = rw_rect_right (bar) - half;

  if (x < left || x > right)
    {
      const double tip = x < left ? bar->x : rw_rect_right (bar), back = x < left ? left + half : right - half;

      cairo_move_to (cr, tip, bar->y + half);
      cairo_line_to (cr, back, bar->y);
      cairo_line_to (cr, back, bar->y + 2 * half);
    }
  else
    {
      cairo_move_to (cr, x, y);
      cairo_line_to (cr, x - half, bar->y);
      cairo_line_to (cr, x + half, bar->y);
    }
  cairo_close_path (cr);
}

/* Off the scale it points there. */
static void
ink_needle (cairo_t            *cr,
            const RwRect       *bar,
            const RwBigContent *content,
            const RwTheme      *theme)
{
  const RwColor color = content->stale ? theme->quiet : theme->verdicts[content->look];

  trace_needle (cr, bar, content->bar.value);
  rw_ink_color (cr, content->stale ? theme->paper : color);
  cairo_fill_preserve (cr);
  rw_ink_color (cr, color);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_width (cr, MAX (1.5, bar->height * 0.05) * theme->weight);
  cairo_stroke (cr);
}

static void
ink_band (cairo_t       *cr,
          const RwRect  *band,
          const RwTheme *theme)
{
  const double r = MIN (band->height, band->width) * 0.15, right = rw_rect_right (band), bottom = rw_rect_bottom (band);

  cairo_new_sub_path (cr);
  cairo_arc (cr, right - r, band->y + r, r, -(G_PI / 2), 0);
  cairo_arc (cr, right - r, bottom - r, r, 0, (G_PI / 2));
  cairo_arc (cr, band->x + r, bottom - r, r, (G_PI / 2), G_PI);
  cairo_arc (cr, band->x + r, band->y + r, r, G_PI, 1.5 * G_PI);
  cairo_close_path (cr);
  rw_ink_color (cr, theme->verdicts[RW_VERDICT_OUTSIDE]);
  cairo_fill (cr);
}

static RwColor
color_of (const RwBigLayout  *self,
          const RwBigContent *content,
          const RwTheme      *theme,
          RwBigLineId         id)
{
  if (self->band.width > 0 && (id == RW_BIG_VERDICT || (id == RW_BIG_TODO && content->danger)))
    return theme->paper;
  if (id == RW_BIG_VERDICT && !content->stale)
    return theme->verdicts[content->look];
  if (content->stale && (id == RW_BIG_VALUE || id == RW_BIG_VERDICT))
    return theme->line;
  return id == RW_BIG_WHERE ? theme->quiet : theme->ink;
}

void
rw_big_layout_ink (const RwBigLayout  *self,
                   cairo_t            *cr,
                   const RwBigContent *content,
                   const RwTheme      *theme)
{
  rw_ink_color (cr, theme->paper);
  cairo_paint (cr);
  if (self->band.width > 0)
    ink_band (cr, &self->band, theme);
  if (self->bar.width > 0)
    {
      ink_scale (cr, &self->bar, &content->bar, theme);
      if (!isnan (content->bar.aim))
        ink_set_point (cr, &self->bar, &content->bar, theme);
      if (!isnan (content->bar.value))
        ink_needle (cr, &self->bar, content, theme);
    }
  for (guint i = 0; i < RW_N_BIG_LINES; i++)
    if (self->lines[i].layout != NULL)
      {
        rw_ink_color (cr, color_of (self, content, theme, i));
        cairo_move_to (cr, self->lines[i].x, self->lines[i].y);
        pango_cairo_show_layout (cr, self->lines[i].layout);
      }
}
