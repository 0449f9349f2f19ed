/* rw-lead-picture.c: draws where the leads go.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-lead-picture.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-chart-text.h"
#include "rw-ink.h"

/* Smaller than this its words would run into each other. */
static const double least_width = 180, least_height = 90;

static const double tip_size = 9, screw_size = 7;

/* The leads have the colours of real ones. Black is ringed with the ink, so that it shows on dark ground too. */
static const RwColor red_on_light = { 0.72, 0.11, 0.11, 1 }, red_on_dark = { 1, 0.45, 0.42, 1 };
static const RwColor black = { 0, 0, 0, 1 };

typedef struct
{
  cairo_t           *cr;
  const RwTheme     *theme;
  const RwLeadScene *scene;
  RwLeadLayout       at;
  RwChartText       *text;
} Draw;

static RwColor
red_of (const RwTheme *theme)
{
  return rw_color_contrast (red_on_light, theme->paper) >= 4.5 ? red_on_light : red_on_dark;
}

static void
words (Draw       *draw,
       const char *text,
       double      x,
       double      y,
       double      align,
       double      room,
       RwColor     color)
{
  g_autofree char *fitting = rw_chart_text_fit (draw->text, RW_TEXT_CAPTION, text, room);

  if (fitting != NULL)
    rw_chart_text_ink (draw->text, draw->cr, RW_TEXT_CAPTION, fitting, x, y, align, color);
  cairo_new_path (draw->cr); /* words leave a point behind, which the next arc would be joined to */
}

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
  cairo_rectangle (draw->cr, rw_ink_crisp (rect->x), rw_ink_crisp (rect->y), floor (rect->width), floor (rect->height));
  cairo_stroke (draw->cr);
  cairo_restore (draw->cr);
}

static double
above (Draw         *draw,
       const RwRect *rect)
{
  return rect->y - 0.6 * rw_chart_text_height (draw->text, RW_TEXT_CAPTION);
}

/* --- the cabinet -------------------------------------------------------------------------------- */

static RwColor
rail_color (Draw *draw)
{
  return draw->scene->rail != NULL ? rw_theme_series (draw->theme, draw->scene->series).color : draw->theme->quiet;
}

static void
screw (Draw       *draw,
       RwLeadPoint at,
       const char *label)
{
  const double half = screw_size / 2;

  rw_ink_color (draw->cr, draw->theme->ink);
  cairo_set_line_width (draw->cr, draw->theme->weight);
  cairo_arc (draw->cr, at.x, at.y, half, 0, 2 * G_PI);
  cairo_stroke (draw->cr);
  rw_ink_line (draw->cr, at.x - half * 0.7, at.y - half * 0.7, at.x + half * 0.7, at.y + half * 0.7);
  words (draw, label, at.x - screw_size, at.y, 1, draw->at.supply.width - 1.5 * screw_size, draw->theme->ink);
}

/* Hatched: covered, and not to be touched. */
static void
mains_screw (Draw *draw)
{
  const RwLeadPoint at = draw->at.mains_screw;
  const double half = screw_size * 0.8;

  cairo_save (draw->cr);
  cairo_rectangle (draw->cr, at.x - half, at.y - half, 2 * half, 2 * half);
  rw_ink_color (draw->cr, draw->theme->verdicts[RW_VERDICT_OUTSIDE]);
  cairo_set_line_width (draw->cr, draw->theme->weight);
  cairo_stroke_preserve (draw->cr);
  cairo_clip (draw->cr);
  for (double x = -2 * half; x <= 2 * half; x += 3)
    rw_ink_line (draw->cr, at.x + x - half, at.y + half, at.x + x + half, at.y - half);
  cairo_restore (draw->cr);
  words (draw, _ ("mains"), at.x - screw_size, at.y, 1, draw->at.supply.width - 1.5 * screw_size,
         draw->theme->verdicts[RW_VERDICT_OUTSIDE]);
}

static void
draw_supply (Draw *draw)
{
  const RwRect *rect = &draw->at.supply;

  box (draw, rect, FALSE);
  words (draw, _ ("supply"), rect->x, above (draw, rect), 0, rect->width, draw->theme->quiet);
  screw (draw, draw->at.rail_screw, draw->scene->rail != NULL ? draw->scene->rail : "+");
  screw (draw, draw->at.ground_screw, _ ("0 V"));
  mains_screw (draw);
}

static void
wire (Draw       *draw,
      RwLeadPoint from,
      RwLeadPoint to,
      RwColor     color)
{
  rw_ink_color (draw->cr, color);
  cairo_set_line_width (draw->cr, 2.5 * draw->theme->weight);
  rw_ink_line (draw->cr, from.x + screw_size / 2, from.y, to.x, to.y);
}

static void
draw_harness (Draw *draw)
{
  const RwRect *edge = &draw->at.edge;
  const double middle = (draw->at.rail_screw.x + edge->x) / 2;

  wire (draw, draw->at.rail_screw, draw->at.rail_contact, rail_color (draw));
  wire (draw, draw->at.ground_screw, draw->at.ground_contact, draw->theme->quiet);
  box (draw, edge, FALSE);
  rw_ink_color (draw->cr, draw->theme->line);
  for (guint i = 1; i < 6; i++)
    rw_ink_line (draw->cr, edge->x + 2, edge->y + i * edge->height / 6, rw_rect_right (edge) - 2,
                 edge->y + i * edge->height / 6);
  words (draw, _ ("harness"), middle, above (draw, &draw->at.supply), 0.5, edge->x - rw_rect_right (&draw->at.supply) - 6,
         draw->theme->quiet);
  words (draw, _ ("connector"), rw_rect_right (edge), rw_rect_bottom (edge) + 8, 1,
         edge->x - rw_rect_right (&draw->at.supply), draw->theme->quiet);
}

static void
finger (Draw       *draw,
        RwLeadPoint at)
{
  const gboolean fitted = draw->scene->board != RW_SAID_NO;

  rw_ink_color (draw->cr, draw->theme->ink);
  cairo_set_line_width (draw->cr, 3 * draw->theme->weight);
  rw_ink_line (draw->cr, fitted ? rw_rect_right (&draw->at.edge) : at.x - 6, at.y, at.x + 6, at.y);
}

/* From the fingers along the board to the chip's corners. */
static void
draw_traces (Draw *draw)
{
  const RwLeadLayout *at = &draw->at;
  const double right = (rw_rect_right (&at->chip) + rw_rect_right (&at->board)) / 2;

  rw_ink_color (draw->cr, draw->theme->grid);
  cairo_set_line_width (draw->cr, 1.5 * draw->theme->weight);
  cairo_move_to (draw->cr, at->rail_finger.x + 6, at->rail_finger.y);
  cairo_line_to (draw->cr, right, at->rail_finger.y);
  cairo_line_to (draw->cr, right, at->rail_pin.y);
  cairo_line_to (draw->cr, at->rail_pin.x, at->rail_pin.y);
  cairo_move_to (draw->cr, at->ground_finger.x + 6, at->ground_finger.y);
  cairo_line_to (draw->cr, at->chip.x - 8, at->ground_finger.y);
  cairo_line_to (draw->cr, at->chip.x - 8, at->ground_pin.y);
  cairo_line_to (draw->cr, at->ground_pin.x, at->ground_pin.y);
  cairo_stroke (draw->cr);
}

static void
draw_board (Draw *draw)
{
  const RwRect *rect = &draw->at.board;
  const gboolean out = draw->scene->board == RW_SAID_NO;

  box (draw, rect, out);
  words (draw, out ? _ ("board, out") : _ ("board"), rw_rect_right (rect), above (draw, rect), 1,
         rect->width, out ? draw->theme->ink : draw->theme->quiet);
  draw_traces (draw);
  finger (draw, draw->at.rail_finger);
  finger (draw, draw->at.ground_finger);
  box (draw, &draw->at.chip, FALSE);
  if (!out)
    words (draw, _ ("far chip"), rw_rect_right (&draw->at.chip) - tip_size, draw->at.chip.y - tip_size, 1,
           rw_rect_right (&draw->at.chip) - rect->x - 48, draw->theme->quiet);
}

static void
draw_power (Draw *draw)
{
  const RwRect *meter = &draw->at.meter;
  const double y = meter->y + meter->height / 2;
  const gboolean off = draw->scene->power == RW_SAID_NO;

  if (draw->scene->power != RW_SAID_NOT)
    words (draw, off ? _ ("⊘ power off") : _ ("● power on"), draw->at.supply.x, y, 0, meter->x - draw->at.supply.x - 12,
           off ? draw->theme->verdicts[RW_VERDICT_OUTSIDE] : draw->theme->ink);
}

/* --- the meter ---------------------------------------------------------------------------------- */

static const char *
mode_of (RwKind kind)
{
  switch (kind)
    {
    case RW_KIND_RIPPLE:
      return "AC V";
    case RW_KIND_OHMS:
      return "Ω";
    case RW_KIND_AMPS:
      return "A";
    case RW_KIND_CELSIUS:
      return "°C";
    case RW_KIND_DC:
    case RW_N_KINDS:
    default:
      return "DC V";
    }
}

/* One lead, from the side of the meter that its tip is nearer to. @row: −1, 0 or 1, apart from another one on that
 * side. @bulge: pixels that it keeps clear of what lies below its tip. */
static void
lead (Draw       *draw,
      RwLeadPoint tip,
      double      row,
      double      bulge,
      double      line)
{
  const RwRect *meter = &draw->at.meter;
  const gboolean right = tip.x > meter->x + meter->width / 2;
  const double x = right ? rw_rect_right (meter) : meter->x;
  const double y = meter->y + (0.25 + 0.2 * row) * meter->height;

  cairo_set_line_width (draw->cr, line * draw->theme->weight);
  cairo_move_to (draw->cr, x, y);
  cairo_curve_to (draw->cr, tip.x + bulge, y, tip.x + 1.4 * bulge, bulge > 0 ? tip.y + (y - tip.y) * 0.3 : y, tip.x, tip.y);
  cairo_stroke (draw->cr);
}

/* Below a rail is the ground, and below the screws' ground the mains: a lead does not lie on either. */
static double
bulge_of (Draw       *draw,
          RwLeadPoint tip)
{
  const RwLeadLayout *at = &draw->at;

  if (tip.x == at->rail_screw.x)
    return tip.y == at->rail_screw.y ? 32 : 20;
  return tip.x == at->rail_finger.x && tip.y == at->rail_finger.y ? 24 : 0;
}

static void
draw_tips (Draw *draw)
{
  const RwLeadLayout *at = &draw->at;
  const double half = tip_size / 2;

  cairo_rectangle (draw->cr, at->black.x - half, at->black.y - half, tip_size, tip_size);
  rw_ink_color (draw->cr, black);
  cairo_fill_preserve (draw->cr);
  rw_ink_color (draw->cr, draw->theme->ink);
  cairo_set_line_width (draw->cr, 1.4 * draw->theme->weight);
  cairo_stroke (draw->cr);
  cairo_arc (draw->cr, at->red.x, at->red.y, half + 0.5, 0, 2 * G_PI);
  rw_ink_color (draw->cr, red_of (draw->theme));
  cairo_fill (draw->cr);
}

static void
draw_leads (Draw *draw)
{
  const RwLeadLayout *at = &draw->at;
  const double middle = at->meter.x + at->meter.width / 2;
  const double row = (at->red.x > middle) == (at->black.x > middle) ? 1 : 0;
  rw_ink_color (draw->cr, draw->theme->ink);
  lead (draw, at->black, row, bulge_of (draw, at->black), 4.4);
  rw_ink_color (draw->cr, black);
  lead (draw, at->black, row, bulge_of (draw, at->black), 2.4);
  rw_ink_color (draw->cr, red_of (draw->theme));
  lead (draw, at->red, -row, bulge_of (draw, at->red), 3);
  draw_tips (draw);
}

static void
draw_meter (Draw *draw)
{
  const RwRect *meter = &draw->at.meter;

  box (draw, meter, FALSE);
  words (draw, mode_of (draw->scene->kind), meter->x + meter->width / 2, meter->y + meter->height / 2, 0.5,
         meter->width - 4, draw->theme->ink);
}

/* What the shapes at the ends of the leads mean. */
static void
draw_key (Draw *draw)
{
  const RwRect *meter = &draw->at.meter;
  const double y = rw_rect_bottom (meter) - 5, right = rw_rect_right (&draw->at.board);
  const double half = rw_rect_right (meter) + 42 < right ? (right - rw_rect_right (meter) - 42) / 2 : 0;

  words (draw, _ ("● red"), right - half, y, 1, half, red_of (draw->theme));
  words (draw, _ ("■ black"), right, y, 1, half, draw->theme->ink);
}

void
rw_lead_picture_draw (cairo_t                    *cr,
                      const RwTheme              *theme,
                      const PangoFontDescription *font,
                      double                      text_scale,
                      const RwLeadScene          *scene,
                      double                      width,
                      double                      height)
{
  g_return_if_fail (cr != NULL && theme != NULL && scene != NULL);
  if (!(width >= least_width) || !(height >= least_height))
    return;

  g_autoptr (RwChartText) text = rw_chart_text_new (font, text_scale, TRUE);
  Draw draw = { .cr = cr, .theme = theme, .scene = scene, .text = text };

  rw_lead_layout_make (scene, width, height, &draw.at);
  cairo_save (cr);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  draw_supply (&draw);
  draw_harness (&draw);
  draw_board (&draw);
  draw_power (&draw);
  draw_meter (&draw);
  draw_key (&draw);
  draw_leads (&draw);
  cairo_restore (cr);
}
