/* rw-chart-text.h: words on a picture: measured, shortened, inked.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * With drawing off nothing is inked and sizes are reckoned by the number of letters, so that a
 * picture comes out the same whatever fonts a machine has.
 */
#pragma once

#include <cairo.h>
#include <pango/pango.h>

#include "rw-theme.h"

G_BEGIN_DECLS

typedef enum
{
  RW_TEXT_CAPTION, /* axes, labels */
  RW_TEXT_BODY,
  RW_TEXT_LABEL, /* bold: the names of the rails */
  RW_TEXT_TITLE,
  RW_N_TEXT_RANKS
} RwTextRank;

typedef struct _RwChartText RwChartText;

/* @font: (nullable): family and weight; the size is not used. @scale: 1 is RW_TEXT_BODY_PIXELS. */
RwChartText *rw_chart_text_new (const PangoFontDescription *font, double scale, gboolean draw);
void         rw_chart_text_free (RwChartText *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwChartText, rw_chart_text_free)

#define RW_TEXT_BODY_PIXELS 13.5

double rw_chart_text_height (RwChartText *self, RwTextRank rank); /* of a line */
double rw_chart_text_width (RwChartText *self, RwTextRank rank, const char *words);

/* @words as they fit into @room pixels, with an ellipsis when they had to be cut; NULL when not
 * even three letters would be left. (transfer full) (nullable) */
char *rw_chart_text_fit (RwChartText *self, RwTextRank rank, const char *words, double room);

/* One line, @align 0 from x on, 0.5 about x, 1 up to x; its middle at height @y. */
void rw_chart_text_ink (RwChartText *self, cairo_t *cr, RwTextRank rank, const char *words,
                        double x, double y, double align, RwColor color);

G_END_DECLS
