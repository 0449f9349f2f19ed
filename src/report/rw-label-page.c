/* rw-label-page.c: the label of the supply drawn, and as a PDF page.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Black on white, so that any printer and a photocopier keep it: a frame, the cabinet in bold, the set point in bold,
 * the rails as three columns, meter and person below.
 */
#include "config.h"

#include "rw-label.h"

#include <cairo-pdf.h>
#include <gio/gio.h>
#include <glib/gi18n-lib.h>
#include <pango/pangocairo.h>

/* Points. */
static const double margin = 8, frame = 3, gap = 1;
static const double largest = 9, smallest = 3, shrink = 0.5;
static const double columns[] = { 0, 0.40, 0.72 }; /* shares of the width */

/* Where the pen stands; without ink it only measures. */
typedef struct
{
  cairo_t *cr;
  double   size, y; /* of the type; of the next line's top */
  gboolean ink;
} Pen;

/* One text, ellipsized to @width. Returns its height. */
static double
put (const Pen  *pen,
     const char *text,
     gboolean    bold,
     double      x,
     double      width)
{
  g_autoptr (PangoLayout) layout = pango_cairo_create_layout (pen->cr);
  g_autoptr (PangoFontDescription) font = pango_font_description_from_string ("Sans");
  int height = 0;

  pango_font_description_set_absolute_size (font, pen->size * PANGO_SCALE);
  pango_font_description_set_weight (font, bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description (layout, font);
  pango_layout_set_single_paragraph_mode (layout, TRUE);
  pango_layout_set_text (layout, text, -1);
  pango_layout_set_width (layout, (int) (width * PANGO_SCALE));
  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
  pango_layout_get_size (layout, NULL, &height);
  if (pen->ink)
    {
      cairo_move_to (pen->cr, x, pen->y);
      pango_cairo_show_layout (pen->cr, layout);
    }
  return (double) height / PANGO_SCALE;
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
  while (pen.y > RW_LABEL_HEIGHT - margin && pen.size > smallest)
    {
      pen = (Pen){ cr, pen.size - shrink, margin, FALSE };
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

static cairo_status_t
append_bytes (void                *closure,
              const unsigned char *data,
              unsigned int         length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

/* Else the PDF would hold the hour at which it was made. */
static void
set_facts (cairo_surface_t *surface,
           const RwLabel   *self,
           RwSession       *session)
{
  g_autofree char *date = g_date_time_format (rw_session_get_header (session)->started, "%Y-%m-%dT%H:%M:%SZ");

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, self->cabinet);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, "Railwright");
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, date);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_MOD_DATE, date);
}

gboolean
rw_label_save_pdf (const RwLabel *self,
                   RwSession     *session,
                   const char    *path,
                   GError       **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  cairo_surface_t *surface
      = cairo_pdf_surface_create_for_stream (append_bytes, bytes, RW_LABEL_WIDTH, RW_LABEL_HEIGHT);
  cairo_t *cr = cairo_create (surface);

  set_facts (surface, self, session);
  rw_label_draw (self, cr);
  cairo_show_page (cr);
  cairo_destroy (cr);
  cairo_surface_finish (surface);

  const cairo_status_t status = cairo_surface_status (surface);

  cairo_surface_destroy (surface);
  if (status != CAIRO_STATUS_SUCCESS)
    {
      g_set_error (error, G_IO_ERROR, G_IO_ERROR_FAILED, _ ("Cannot draw the label: %s"),
                   cairo_status_to_string (status));
      return FALSE;
    }
  return g_file_set_contents (path, (const char *) bytes->data, (gssize) bytes->len, error);
}
