/* rw-bench-picture.c: draws the bench: parts, wires, spots, leads, words.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * From the back to the front: boxes, wires, spots, leads, words on a ground of their own, tips. So a lead may cross
 * words but never hides them. Nothing is told by colour alone: rails have their names, the red tip is round and says
 * R, the black one is square and says B, what must not be touched is hatched and named.
 */
#include "config.h"

#include "rw-bench-picture.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-ink.h"

/* The leads have the colours of real ones. Black is ringed with the ink, so that it shows on dark ground too. */
static const RwColor red_on_light = { 0.72, 0.11, 0.11, 1 }, red_on_dark = { 1, 0.45, 0.42, 1 };
static const RwColor black = { 0, 0, 0, 1 }, white = { 1, 1, 1, 1 };

typedef struct
{
  cairo_t             *cr;
  const RwTheme       *theme;
  const RwBenchScene  *scene;
  const RwBenchLayout *at;
  RwChartText         *text;
} Draw;

static RwColor
red_of (const RwTheme *theme)
{
  return rw_color_contrast (red_on_light, theme->paper) >= 4.5 ? red_on_light : red_on_dark;
}

static RwColor
danger_of (const RwTheme *theme)
{
  return theme->verdicts[RW_VERDICT_OUTSIDE];
}

static RwColor
row_color (Draw              *draw,
           const RwBenchNode *node)
{
  return rw_theme_series (draw->theme, node->series).color;
}

/* --- parts ---------------------------------------------------------------------------------------- */

static void
box (Draw         *draw,
     const RwRect *rect,
     gboolean      dashed)
{
  static const double dashes[] = { 5, 4 };

  cairo_save (draw->cr);
  rw_ink_color (draw->cr, draw->theme->line);
  cairo_set_line_width (draw->cr, 1.2 * draw->theme->weight);
  if (dashed)
    cairo_set_dash (draw->cr, dashes, 2, 0);
  cairo_rectangle (draw->cr, rw_ink_crisp (rect->x), rw_ink_crisp (rect->y), floor (rect->width),
                   floor (rect->height));
  cairo_stroke (draw->cr);
  cairo_restore (draw->cr);
}

/* The hatching of what is covered. */
static void
draw_cover (Draw *draw)
{
  const RwRect *cover = &draw->at->cover;

  if (cover->width <= 0)
    return;
  cairo_save (draw->cr);
  cairo_rectangle (draw->cr, cover->x, cover->y, cover->width, cover->height);
  rw_ink_color (draw->cr, danger_of (draw->theme));
  cairo_set_line_width (draw->cr, 1.4 * draw->theme->weight);
  cairo_stroke_preserve (draw->cr);
  cairo_clip (draw->cr);
  rw_ink_color (draw->cr, rw_ink_faded (danger_of (draw->theme), 0.35));
  cairo_set_line_width (draw->cr, draw->theme->weight);
  for (double x = -cover->height; x < cover->width; x += 7)
    rw_ink_line (draw->cr, cover->x + x, rw_rect_bottom (cover), cover->x + x + cover->height, cover->y);
  cairo_restore (draw->cr);
}

/* A screw head; its slot turns through three quarters of a turn from end to end. */
static void
draw_trim (Draw *draw)
{
  const RwBenchPoint at = draw->at->trim;
  const double r = draw->at->trim_radius, turned = (CLAMP (draw->scene->trim, 0, 1) - 0.5) * 1.5 * G_PI;
  const double x = sin (turned) * 0.72 * r, y = -cos (turned) * 0.72 * r;

  rw_ink_color (draw->cr, draw->theme->ink);
  cairo_set_line_width (draw->cr, 1.6 * draw->theme->weight);
  cairo_arc (draw->cr, at.x, at.y, r, 0, 2 * G_PI);
  cairo_stroke (draw->cr);
  cairo_set_line_width (draw->cr, MAX (2, 0.16 * r));
  rw_ink_line (draw->cr, at.x - x, at.y - y, at.x + x, at.y + y);
  cairo_arc (draw->cr, at.x + x * 1.2, at.y + y * 1.2, MAX (1.5, 0.1 * r), 0, 2 * G_PI);
  cairo_fill (draw->cr);
}

static void
draw_speaker (Draw *draw)
{
  const RwBenchPoint at = draw->at->speaker;
  const double s = draw->at->speaker_size / 2;

  rw_ink_color (draw->cr, draw->theme->line);
  cairo_set_line_width (draw->cr, 1.4 * draw->theme->weight);
  cairo_rectangle (draw->cr, at.x - s, at.y - 0.35 * s, 0.5 * s, 0.7 * s);
  cairo_move_to (draw->cr, at.x - 0.5 * s, at.y - 0.35 * s);
  cairo_line_to (draw->cr, at.x, at.y - s);
  cairo_line_to (draw->cr, at.x, at.y + s);
  cairo_line_to (draw->cr, at.x - 0.5 * s, at.y + 0.35 * s);
  cairo_stroke (draw->cr);
  rw_ink_color (draw->cr, draw->theme->ink);
  for (guint i = 0; i < MIN (draw->scene->sound, 3); i++)
    {
      cairo_new_sub_path (draw->cr);
      cairo_arc (draw->cr, at.x + 0.1 * s, at.y, (0.35 + 0.3 * i) * s, -0.9, 0.9);
    }
  cairo_stroke (draw->cr);
}

static void
draw_boxes (Draw *draw)
{
  const RwBenchLayout *at = draw->at;

  box (draw, &at->supply, FALSE);
  box (draw, &at->board, !draw->scene->fitted);
  box (draw, &at->plug, FALSE);
  box (draw, &at->chip, FALSE);
  box (draw, &at->amplifier, FALSE);
  box (draw, &at->meter, FALSE);
  if (at->cabinet.width > 0)
    box (draw, &at->cabinet, FALSE);
  draw_cover (draw);
  draw_trim (draw);
  rw_ink_color (draw->cr, draw->theme->line);
  cairo_set_line_width (draw->cr, draw->theme->weight);
  rw_ink_line (draw->cr, at->speaker.x - 0.75 * at->speaker_size / 2, rw_rect_bottom (&at->amplifier),
               at->speaker.x - 0.75 * at->speaker_size / 2, at->speaker.y - 0.18 * at->speaker_size);
  draw_speaker (draw);
}

/* --- wires and spots ------------------------------------------------------------------------------ */

static int
find (Draw       *draw,
      RwBenchPart part,
      guint       row)
{
  for (guint i = 0; i < draw->scene->n_nodes; i++)
    if (draw->scene->nodes[i].part == part && draw->scene->nodes[i].row == row)
      return (int) i;
  return -1;
}

static void
draw_wire (Draw *draw,
           guint from)
{
  const RwBenchNode *node = &draw->scene->nodes[from];
  const int to = find (draw, RW_BENCH_PLUG, node->row);

  if (to < 0)
    return;
  rw_ink_color (draw->cr, row_color (draw, node));
  cairo_set_line_width (draw->cr, 3 * draw->theme->weight);
  rw_ink_line (draw->cr, draw->at->node[from].x, draw->at->node[from].y, draw->at->node[to].x, draw->at->node[to].y);
}

/* From a finger along the board to the pin of the chip. */
static void
draw_trace (Draw *draw,
            guint from,
            guint nth)
{
  const int to = find (draw, RW_BENCH_CHIP, draw->scene->nodes[from].row);
  const double x = draw->at->chip.x - draw->at->spot - 5 - 3 * nth;

  if (to < 0)
    return;
  rw_ink_color (draw->cr, draw->theme->grid);
  cairo_set_line_width (draw->cr, 1.5 * draw->theme->weight);
  cairo_move_to (draw->cr, draw->at->node[from].x, draw->at->node[from].y);
  cairo_line_to (draw->cr, x, draw->at->node[from].y);
  cairo_line_to (draw->cr, x, draw->at->node[to].y);
  cairo_line_to (draw->cr, draw->at->node[to].x, draw->at->node[to].y);
  cairo_stroke (draw->cr);
}

static void
draw_wires (Draw *draw)
{
  guint n = 0;

  for (guint i = 0; i < draw->scene->n_nodes; i++)
    if (draw->scene->nodes[i].part == RW_BENCH_STRIP)
      draw_wire (draw, i);
    else if (draw->scene->nodes[i].part == RW_BENCH_EDGE)
      draw_trace (draw, i, n++);
}

static void
draw_screw (Draw        *draw,
            RwBenchPoint at,
            double       r)
{
  cairo_arc (draw->cr, at.x, at.y, r, 0, 2 * G_PI);
  rw_ink_color (draw->cr, draw->theme->paper);
  cairo_fill_preserve (draw->cr);
  rw_ink_color (draw->cr, draw->theme->ink);
  cairo_stroke (draw->cr);
  rw_ink_line (draw->cr, at.x - 0.6 * r, at.y - 0.6 * r, at.x + 0.6 * r, at.y + 0.6 * r);
}

static void
draw_bar (Draw        *draw,
          RwBenchPoint at,
          double       width,
          double       height)
{
  cairo_rectangle (draw->cr, at.x - width / 2, at.y - height / 2, width, height);
  rw_ink_color (draw->cr, draw->theme->paper);
  cairo_fill_preserve (draw->cr);
  rw_ink_color (draw->cr, draw->theme->ink);
  cairo_stroke (draw->cr);
}

/* Crossed out: nobody goes there. */
static void
draw_hazard (Draw        *draw,
             RwBenchPoint at,
             double       r)
{
  rw_ink_color (draw->cr, danger_of (draw->theme));
  cairo_set_line_width (draw->cr, 1.6 * draw->theme->weight);
  rw_ink_line (draw->cr, at.x - r, at.y - r, at.x + r, at.y + r);
  rw_ink_line (draw->cr, at.x - r, at.y + r, at.x + r, at.y - r);
  cairo_arc (draw->cr, at.x, at.y, 1.15 * r, 0, 2 * G_PI);
  cairo_stroke (draw->cr);
}

static void
draw_spot (Draw *draw,
           guint i)
{
  const RwBenchPoint at = draw->at->node[i];
  const double r = draw->at->spot;

  cairo_set_line_width (draw->cr, 1.2 * draw->theme->weight);
  if (draw->scene->nodes[i].hazard)
    {
      draw_hazard (draw, at, 0.8 * r);
      return;
    }
  switch (draw->scene->nodes[i].part)
    {
    case RW_BENCH_LUG:
    case RW_BENCH_PLUG:
      draw_bar (draw, at, 1.2 * r, 1.2 * r);
      break;
    case RW_BENCH_EDGE:
      draw_bar (draw, at, 1.9 * r, 0.9 * r);
      break;
    case RW_BENCH_CHIP:
      draw_bar (draw, at, 1.5 * r, 0.7 * r);
      break;
    case RW_BENCH_STRIP:
    case RW_BENCH_MAINS:
    case RW_BENCH_INSIDE:
    case RW_BENCH_SOUND:
    case RW_BENCH_CABINET:
    case RW_N_BENCH_PARTS:
    default:
      draw_screw (draw, at, 0.8 * r);
    }
}

static void
draw_selected (Draw *draw)
{
  const int i = draw->scene->selected;

  if (i < 0 || (guint) i >= draw->scene->n_nodes)
    return;
  rw_ink_color (draw->cr, draw->theme->accent);
  cairo_set_line_width (draw->cr, 2.5 * draw->theme->weight);
  cairo_arc (draw->cr, draw->at->node[i].x, draw->at->node[i].y, 1.6 * draw->at->spot, 0, 2 * G_PI);
  cairo_stroke (draw->cr);
}

/* --- leads ---------------------------------------------------------------------------------------- */

/* Both on one spot lie side by side. */
static RwBenchPoint
tip_of (Draw *draw,
        int   lead)
{
  const RwBenchScene *scene = draw->scene;
  const int node = lead == 0 ? scene->red : scene->black;
  const double aside = scene->red >= 0 && scene->red == scene->black ? (lead == 0 ? -0.7 : 0.7) * draw->at->spot : 0;

  if (node < 0 || (guint) node >= scene->n_nodes)
    return draw->at->park[lead];
  return (RwBenchPoint) { draw->at->node[node].x + aside, draw->at->node[node].y + aside };
}

/* To which side a lead keeps clear of the spots below its tip, in pixels. */
static double
bulge_of (Draw *draw,
          int   node)
{
  if (node < 0 || (guint) node >= draw->scene->n_nodes)
    return 0;
  switch (draw->scene->nodes[node].part)
    {
    case RW_BENCH_STRIP:
    case RW_BENCH_MAINS:
    case RW_BENCH_INSIDE:
      return 0.55 * (draw->at->plug.x - rw_rect_right (&draw->at->supply));
    case RW_BENCH_LUG:
    case RW_BENCH_PLUG:
      return -0.3 * (draw->at->plug.x - rw_rect_right (&draw->at->supply));
    case RW_BENCH_EDGE:
      return -0.5 * draw->at->plug.width;
    case RW_BENCH_CHIP:
    case RW_BENCH_SOUND:
    case RW_BENCH_CABINET:
    case RW_N_BENCH_PARTS:
    default:
      return -0.08 * draw->at->width;
    }
}

/* Upwards out of its jack; to what lies beside the meter out of the meter's side. */
static void
draw_lead (Draw   *draw,
           int     lead,
           RwColor color,
           double  width)
{
  const RwBenchLayout *at = draw->at;
  const RwBenchPoint to = tip_of (draw, lead);
  const gboolean beside = to.y > at->meter.y - 6, left = to.x < at->meter.x;
  const double side = left ? at->meter.x : rw_rect_right (&at->meter);
  const RwBenchPoint from = beside ? (RwBenchPoint) { side, at->meter.y + (lead == 0 ? 0.35 : 0.65) * at->meter.height }
                                   : at->jack[lead];
  const double rise = 0.5 * fabs (from.y - to.y), reach = 0.5 * (to.x - from.x);
  const double bulge = bulge_of (draw, lead == 0 ? draw->scene->red : draw->scene->black);

  rw_ink_color (draw->cr, color);
  cairo_set_line_width (draw->cr, width * draw->theme->weight);
  cairo_move_to (draw->cr, from.x, from.y);
  if (beside)
    cairo_curve_to (draw->cr, from.x + reach, from.y, to.x - reach, to.y, to.x, to.y);
  else
    cairo_curve_to (draw->cr, from.x, from.y - rise, to.x + 1.3 * bulge, to.y + 0.6 * rise, to.x, to.y);
  cairo_stroke (draw->cr);
}

static void
draw_leads (Draw *draw)
{
  draw_lead (draw, 1, draw->theme->ink, 4.6);
  draw_lead (draw, 1, black, 2.6);
  draw_lead (draw, 0, red_of (draw->theme), 3.4);
}

static void
tip_letter (Draw        *draw,
            RwBenchPoint at,
            const char  *letter,
            RwColor      ground)
{
  const RwColor color = rw_color_contrast (white, ground) > rw_color_contrast (black, ground) ? white : black;

  rw_chart_text_ink (draw->text, draw->cr, RW_TEXT_CAPTION, letter, at.x, at.y, 0.5, color);
  cairo_new_path (draw->cr); /* words leave a point behind, which the next arc would be joined to */
}

static void
draw_tips (Draw *draw)
{
  const RwBenchPoint r = tip_of (draw, 0), b = tip_of (draw, 1);
  const double half = 8 * draw->at->text_scale;

  cairo_rectangle (draw->cr, b.x - half, b.y - half, 2 * half, 2 * half);
  rw_ink_color (draw->cr, black);
  cairo_fill_preserve (draw->cr);
  rw_ink_color (draw->cr, draw->theme->ink);
  cairo_set_line_width (draw->cr, 1.4 * draw->theme->weight);
  cairo_stroke (draw->cr);
  /* Translators: one letter, on the tip of the black lead. */
  tip_letter (draw, b, C_ ("lead", "B"), black);
  cairo_arc (draw->cr, r.x, r.y, half, 0, 2 * G_PI);
  rw_ink_color (draw->cr, red_of (draw->theme));
  cairo_fill (draw->cr);
  /* Translators: one letter, on the tip of the red lead. */
  tip_letter (draw, r, C_ ("lead", "R"), red_of (draw->theme));
}

/* --- words ---------------------------------------------------------------------------------------- */

static void
draw_label (Draw               *draw,
            const RwBenchLabel *label)
{
  const RwRect *rect = &label->rect;
  const RwTextRank rank = label->node >= 0 ? RW_TEXT_BODY : RW_TEXT_CAPTION;
  const gboolean danger = label->node >= 0 && draw->scene->nodes[label->node].hazard;
  const RwColor color = danger ? danger_of (draw->theme) : label->quiet ? draw->theme->quiet : draw->theme->ink;
  g_autofree char *fitting = rw_chart_text_fit (draw->text, rank, label->text, rect->width + 1);

  if (fitting == NULL)
    return;
  cairo_rectangle (draw->cr, rect->x - 2, rect->y + 1, rect->width + 4, rect->height - 2);
  rw_ink_color (draw->cr, rw_ink_faded (draw->theme->paper, 0.85));
  cairo_fill (draw->cr);
  rw_chart_text_ink (draw->text, draw->cr, rank, fitting, rect->x + label->align * rect->width,
                     rect->y + rect->height / 2, label->align, color);
  cairo_new_path (draw->cr);
}

/* As large as it fits into its room. */
static void
draw_value (Draw                       *draw,
            const PangoFontDescription *font)
{
  const RwRect *room = &draw->at->value;
  const double wanted = rw_chart_text_width (draw->text, RW_TEXT_TITLE, draw->scene->value);
  const double height = rw_chart_text_height (draw->text, RW_TEXT_TITLE);

  if (*draw->scene->value == '\0' || wanted <= 0)
    return;

  const double grown = draw->at->text_scale * CLAMP (MIN (room->width / wanted, room->height / height), 0.5, 3);
  g_autoptr (RwChartText) large = rw_chart_text_new (font, grown, TRUE);

  rw_chart_text_ink (large, draw->cr, RW_TEXT_TITLE, draw->scene->value, room->x + room->width / 2,
                     room->y + room->height / 2, 0.5, draw->theme->ink);
  cairo_new_path (draw->cr);
}

void
rw_bench_picture_draw (cairo_t                    *cr,
                       const RwTheme              *theme,
                       const PangoFontDescription *font,
                       const RwBenchScene         *scene,
                       const RwBenchLayout        *layout)
{
  g_return_if_fail (cr != NULL && theme != NULL && scene != NULL && layout != NULL);
  if (layout->n_labels == 0)
    return;

  g_autoptr (RwChartText) text = rw_chart_text_new (font, layout->text_scale, TRUE);
  Draw draw = { cr, theme, scene, layout, text };

  cairo_save (cr);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  draw_boxes (&draw);
  draw_wires (&draw);
  for (guint i = 0; i < scene->n_nodes; i++)
    draw_spot (&draw, i);
  draw_leads (&draw);
  for (guint i = 0; i < layout->n_labels; i++)
    draw_label (&draw, &layout->labels[i]);
  draw_value (&draw, font);
  draw_selected (&draw);
  draw_tips (&draw);
  cairo_restore (cr);
}
