/* rw-label-page.c: the label of the supply drawn, and as a PDF page.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Black on white, so that any printer and a photocopier keep it: a frame, the cabinet in bold, the set point in bold,
 * the rails as three columns, meter and person below. What is too long for its line is wrapped, and the type shrinks until
 * all lines fit: nothing is ever cut.
 */
#include "config.h"

#include "rw-label.h"

#include <glib/gi18n-lib.h>

#include "rw-paper.h"

/* Points. */
static const double margin = 8, frame = 3, gap = 1;
static const double largest = 9, shrink = 0.95;
static const double columns[] = { 0, 0.40, 0.72 }; /* shares of the width */

/* Where the pen stands; without ink it only measures. */
typedef struct
{
  cairo_t *cr;
  double   size, y; /* of the type; of the next line's top */
  gboolean ink;
} Pen;

/* One text, wrapped to @width. Returns its height. */
static double
put (const Pen  *pen,
     const char *text,
     gboolean    bold,
     double      x,
     double      width)
{
  g_autoptr (PangoLayout) layout = rw_paper_new_layout (pen->cr, text, pen->size, bold, width);

  pango_layout_set_single_paragraph_mode (layout, TRUE);
  if (pen->ink)
    {
      cairo_move_to (pen->cr, x, pen->y);
      pango_cairo_show_layout (pen->cr, layout);
    }
  return rw_paper_get_height (layout);
}

static void
put_line (Pen        *pen,
          const char *text,
          gboolean    bold)
{
  pen->y += put (pen, text, bold, margin, RW_LABEL_WIDTH - 2 * margin) + gap;
}

static void
put_row (Pen        *pen,
         const char *const *cells)
{
  const double width = RW_LABEL_WIDTH - 2 * margin;
  double height = 0;

  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    {
      const double end = i + 1 < G_N_ELEMENTS (columns) ? columns[i + 1] : 1;

      height = MAX (height, put (pen, cells[i], FALSE, margin + columns[i] * width, (end - columns[i]) * width - gap));
    }
  pen->y += height;
}

static void
put_all (Pen           *pen,
         const RwLabel *self)
{
  g_autofree char *when = g_strdup_printf (_ ("Set %s, %s"), self->date, self->warm);
  g_autofree char *meter = g_strdup_printf (_ ("Meter: %s"), self->meter);
  g_autofree char *who = g_strdup_printf (_ ("By: %s"), self->who);
  const char *const head[] = { _ ("rail"), _ ("board"), _ ("terminals") };

  put_line (pen, self->cabinet, TRUE);
  put_line (pen, when, FALSE);
  put_line (pen, self->set_point, TRUE);
  put_row (pen, head);
  for (guint i = 0; i < self->rows->len; i++)
    {
      const RwLabelRow *row = &g_array_index (self->rows, RwLabelRow, i);
      const char *const cells[] = { row->rail, row->board, row->terminals };

      put_row (pen, cells);
    }
  pen->y += gap;
  put_line (pen, meter, FALSE);
  put_line (pen, who, FALSE);
}

void
rw_label_draw (const RwLabel *self,
               cairo_t       *cr)
{
  Pen pen = { cr, largest, margin, FALSE };

  put_all (&pen, self);
  while (pen.y > RW_LABEL_HEIGHT - margin)
    {
      pen = (Pen){ cr, pen.size * shrink, margin, FALSE };
      put_all (&pen, self);
    }
  cairo_save (cr);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_rectangle (cr, 0, 0, RW_LABEL_WIDTH, RW_LABEL_HEIGHT);
  cairo_fill (cr);
  cairo_set_source_rgb (cr, 0, 0, 0);
  cairo_set_line_width (cr, 0.75);
  cairo_rectangle (cr, frame, frame, RW_LABEL_WIDTH - 2 * frame, RW_LABEL_HEIGHT - 2 * frame);
  cairo_stroke (cr);
  pen = (Pen){ cr, pen.size, margin, TRUE };
  put_all (&pen, self);
  cairo_restore (cr);
}

/* --- PDF ---------------------------------------------------------------------------------------- */

static void
draw_cb (cairo_t      *cr,
         guint         page,
         gconstpointer data)
{
  rw_label_draw (data, cr);
}

gboolean
rw_label_save_pdf (const RwLabel *self,
                   RwSession     *session,
                   const char    *path,
                   GError       **error)
{
  const RwPaper paper
      = { RW_LABEL_WIDTH, RW_LABEL_HEIGHT, 1, self->cabinet, rw_session_get_header (session)->started };

  return rw_paper_save_pdf (&paper, draw_cb, self, path, error);
}
