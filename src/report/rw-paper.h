/* rw-paper.h: what every printed page shares: type, A4 with its title and foot, and the PDF file.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lengths in points.
 */
#pragma once

#include <gio/gio.h>
#include <pango/pangocairo.h>

G_BEGIN_DECLS

/* A4, its margin, where the text begins below the title, and the height it has above the foot. */
#define RW_PAPER_WIDTH 595.28
#define RW_PAPER_HEIGHT 841.89
#define RW_PAPER_MARGIN 42.0
#define RW_PAPER_TOP (RW_PAPER_MARGIN + 44)
#define RW_PAPER_ROOM (RW_PAPER_HEIGHT - RW_PAPER_MARGIN - 24 - RW_PAPER_TOP)
#define RW_PAPER_TEXT_SIZE 9.0

/* Text set in the one typeface, wrapped to @width, never cut. (transfer full) */
PangoLayout *rw_paper_new_layout (cairo_t *cr, const char *text, double size, gboolean bold, double width);
double       rw_paper_get_height (PangoLayout *layout);

/* The title above and the foot below an A4 page: @small print at its left, "1 of 3" at its right. @page: 0 …. */
void rw_paper_draw_frame (cairo_t *cr, const char *title, const char *small, guint page, guint n_pages);

typedef struct
{
  double      width, height;
  guint       n_pages;
  const char *title; /* of the file */
  GDateTime  *date;  /* (nullable): what the file says it was made at, so that the same work gives the same bytes */
} RwPaper;

typedef void (*RwPaperDrawFunc) (cairo_t *cr, guint page, gconstpointer data);

/* Draws every page into a PDF file, which is replaced as a whole or not at all. Errors: G_FILE_ERROR, and G_IO_ERROR when
 * it cannot be drawn. */
gboolean rw_paper_save_pdf (const RwPaper *self, RwPaperDrawFunc draw, gconstpointer data, const char *path,
                            GError **error);

G_END_DECLS
