/* rw-paper.c: what every printed page shares: type, A4 with its title and foot, and the PDF file.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-paper.h"

#include <cairo-pdf.h>
#include <glib/gi18n-lib.h>

#include "rw-theme.h"

static const double title_size = 15, small_size = 7.5, foot_height = 14;

PangoLayout *
rw_paper_new_layout (cairo_t    *cr,
                     const char *text,
                     double      size,
                     gboolean    bold,
                     double      width)
{
  PangoLayout *layout = pango_cairo_create_layout (cr);
  g_autoptr (PangoFontDescription) font = pango_font_description_from_string ("Sans");

  pango_font_description_set_absolute_size (font, size * PANGO_SCALE);
  pango_font_description_set_weight (font, bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description (layout, font);
  pango_layout_set_text (layout, text, -1);
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_width (layout, (int) (width * PANGO_SCALE));
  return layout;
}

double
rw_paper_get_height (PangoLayout *layout)
{
  int height = 0;

  pango_layout_get_size (layout, NULL, &height);
  return (double) height / PANGO_SCALE;
}

/* One line over the whole width, ellipsized. */
static void
draw_line (cairo_t       *cr,
           const char    *words,
           double         size,
           double         y,
           PangoAlignment alignment)
{
  g_autoptr (PangoLayout) layout
      = rw_paper_new_layout (cr, words, size, size > RW_PAPER_TEXT_SIZE, RW_PAPER_WIDTH - 2 * RW_PAPER_MARGIN);

  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
  pango_layout_set_alignment (layout, alignment);
  cairo_move_to (cr, RW_PAPER_MARGIN, y);
  pango_cairo_show_layout (cr, layout);
}

static void
set_color (cairo_t *cr,
           RwColor  color)
{
  cairo_set_source_rgba (cr, color.r, color.g, color.b, color.a);
}

void
rw_paper_draw_frame (cairo_t    *cr,
                     const char *title,
                     const char *small,
                     guint       page,
                     guint       n_pages)
{
  const double foot = RW_PAPER_HEIGHT - RW_PAPER_MARGIN - foot_height;
  /* Translators: number of the page, number of pages. */
  g_autofree char *number = g_strdup_printf (_ ("%u of %u"), page + 1, n_pages);

  set_color (cr, rw_theme_get (RW_THEME_LIGHT)->ink);
  draw_line (cr, title, title_size, RW_PAPER_MARGIN, PANGO_ALIGN_LEFT);
  set_color (cr, rw_theme_get (RW_THEME_LIGHT)->quiet);
  draw_line (cr, small, small_size, foot, PANGO_ALIGN_LEFT);
  draw_line (cr, number, small_size, foot, PANGO_ALIGN_RIGHT);
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
set_facts (const RwPaper   *self,
           cairo_surface_t *surface)
{
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, self->title);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, "Railwright");
  if (self->date == NULL)
    return;

  g_autofree char *date = g_date_time_format (self->date, "%Y-%m-%dT%H:%M:%SZ");

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, date);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_MOD_DATE, date);
}

gboolean
rw_paper_save_pdf (const RwPaper  *self,
                   RwPaperDrawFunc draw,
                   gconstpointer   data,
                   const char     *path,
                   GError        **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (append_bytes, bytes, self->width, self->height);
  cairo_t *cr = cairo_create (surface);

  set_facts (self, surface);
  for (guint page = 0; page < self->n_pages; page++)
    {
      draw (cr, page, data);
      cairo_show_page (cr);
    }

  const cairo_status_t drawn = cairo_status (cr);

  cairo_destroy (cr);
  cairo_surface_finish (surface);

  const cairo_status_t status = drawn != CAIRO_STATUS_SUCCESS ? drawn : cairo_surface_status (surface);

  cairo_surface_destroy (surface);
  if (status != CAIRO_STATUS_SUCCESS)
    {
      g_set_error (error, G_IO_ERROR, G_IO_ERROR_FAILED, _ ("The PDF could not be drawn: %s."),
                   cairo_status_to_string (status));
      return FALSE;
    }
  return g_file_set_contents (path, (const char *) bytes->data, (gssize) bytes->len, error);
}
