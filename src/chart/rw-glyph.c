/* rw-glyph.c: small pictures at the top of a vertical.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each is drawn in a square from −1 to 1, so that line widths are shares of it.
 */
#include "config.h"

#include "rw-glyph.h"

#include "rw-ink.h"

static const double stroke = 0.24;
static const double slot_start = -0.35; /* radians */
static const double slot_turn = 0.55;   /* a turn of the trim */

static void
open_path (cairo_t            *cr,
           const double (*points)[2],
           guint               n)
{
  cairo_new_path (cr);
  for (guint i = 0; i < n; i++)
    cairo_line_to (cr, points[i][0], points[i][1]);
}

/* A screw head with its slot. */
static void
ink_trim (cairo_t *cr,
          guint    count,
          RwColor  paper)
{
  cairo_arc (cr, 0, 0, 0.9, 0, 2 * G_PI);
  cairo_fill (cr);
  rw_ink_color (cr, paper);
  cairo_rotate (cr, slot_start + slot_turn * count);
  cairo_set_line_width (cr, 0.34);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  rw_ink_line (cr, -0.68, 0, 0.68, 0);
}

/* A pennant flying from the vertical. */
static void
ink_mark (cairo_t *cr)
{
  static const double flag[][2] = { { -0.7, -0.8 }, { 0.9, -0.3 }, { -0.7, 0.25 } };

  open_path (cr, flag, G_N_ELEMENTS (flag));
  cairo_close_path (cr);
  cairo_fill_preserve (cr);
  cairo_stroke (cr);
  rw_ink_line (cr, -0.7, -0.8, -0.7, 0.95);
}

/* A sheet with two lines on it. */
static void
ink_note (cairo_t *cr)
{
  cairo_rectangle (cr, -0.75, -0.85, 1.5, 1.7);
  cairo_stroke (cr);
  rw_ink_line (cr, -0.35, -0.25, 0.35, -0.25);
  rw_ink_line (cr, -0.35, 0.25, 0.35, 0.25);
}

/* A jagged pulse: the cabinet did something. */
static void
ink_symptom (cairo_t *cr)
{
  static const double pulse[][2] = { { -0.95, 0.1 }, { -0.45, 0.1 }, { -0.2, -0.8 },
                                     { 0.2, 0.8 },   { 0.45, 0.1 },  { 0.95, 0.1 } };

  open_path (cr, pulse, G_N_ELEMENTS (pulse));
  cairo_stroke (cr);
}

/* A ring; ticked when the repair helped, barred when it did not. */
static void
ink_repair (cairo_t *cr,
            gboolean fixed)
{
  static const double tick[][2] = { { -0.42, 0.05 }, { -0.1, 0.38 }, { 0.45, -0.35 } };

  cairo_arc (cr, 0, 0, 0.88, 0, 2 * G_PI);
  cairo_stroke (cr);
  if (!fixed)
    {
      rw_ink_line (cr, -0.42, 0, 0.42, 0);
      return;
    }
  open_path (cr, tick, G_N_ELEMENTS (tick));
  cairo_stroke (cr);
}

/* A plug with two pins. */
static void
ink_setup (cairo_t *cr)
{
  cairo_rectangle (cr, -0.65, -0.2, 1.3, 0.8);
  cairo_fill_preserve (cr);
  cairo_stroke (cr);
  rw_ink_line (cr, -0.32, -0.9, -0.32, 0);
  rw_ink_line (cr, 0.32, -0.9, 0.32, 0);
}

/* A line with a piece missing. */
static void
ink_gap (cairo_t *cr)
{
  rw_ink_line (cr, -0.95, 0, -0.42, 0);
  rw_ink_line (cr, 0.42, 0, 0.95, 0);
  rw_ink_line (cr, -0.42, -0.5, -0.42, 0.5);
  rw_ink_line (cr, 0.42, -0.5, 0.42, 0.5);
}

static void
ink_sign (cairo_t       *cr,
          const RwEvent *event,
          guint          count,
          RwColor        paper)
{
  if (event->type == RW_EVENT_TRIM)
    ink_trim (cr, count, paper);
  else if (event->type == RW_EVENT_MARK)
    ink_mark (cr);
  else if (event->type == RW_EVENT_NOTE)
    ink_note (cr);
  else if (event->type == RW_EVENT_SYMPTOM)
    ink_symptom (cr);
  else if (event->type == RW_EVENT_REPAIR)
    ink_repair (cr, event->repair.result == RW_REPAIR_FIXED);
  else if (event->type == RW_EVENT_SETUP)
    ink_setup (cr);
  else if (event->type == RW_EVENT_GAP)
    ink_gap (cr);
}

void
rw_glyph_ink (cairo_t       *cr,
              const RwEvent *event,
              guint          count,
              double         x,
              double         y,
              double         size,
              RwColor        color,
              RwColor        paper)
{
  cairo_save (cr);
  cairo_translate (cr, x, y);
  cairo_scale (cr, size / 2, size / 2);
  cairo_set_line_width (cr, stroke);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_dash (cr, NULL, 0, 0);
  rw_ink_color (cr, color);
  cairo_new_path (cr);
  ink_sign (cr, event, count, paper);
  cairo_restore (cr);
}
