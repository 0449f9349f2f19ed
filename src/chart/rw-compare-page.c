/* rw-compare-page.c: a page that says what changed between two sessions, as PNG, SVG or PDF.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *     Tidepool Racer · B-07                      2026-03-14 and 2027-03-20
 *     2 of 14 values changed beyond the meters' errors.
 *     ┌ both charts ───────────────────────────────────────────────────┐
 *     └────────────────────────────────────────────────────────────────┘
 *     +5 V, board, warm: 5.04 V then, 4.96 V now, weaker by …; changed
 *     and 1 more
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-chart-text.h"
#include "rw-compare-picture-private.h"
#include "rw-compare-words.h"
#include "rw-ink.h"

static const double edge = 18;
static const double chart_share = 0.55; /* of the height that the charts keep at least */
static const double leading = 1.35;     /* lines of text */

typedef struct
{
  RwComparePicture *picture;
  const RwTheme    *theme;
  RwChartText      *text;
  cairo_t          *cr;
  double            width, y;
} Page;

static double
line_height (const Page *page,
             RwTextRank  rank)
{
  return leading * rw_chart_text_height (page->text, rank);
}

/* A line from the left edge on, cut to what fits beside @taken pixels. */
static void
put_line (Page       *page,
          RwTextRank  rank,
          const char *words,
          double      taken,
          RwColor     color)
{
  const double height = line_height (page, rank);
  g_autofree char *fitted = rw_chart_text_fit (page->text, rank, words, page->width - 2 * edge - taken);

  if (fitted != NULL)
    rw_chart_text_ink (page->text, page->cr, rank, fitted, edge, page->y + height / 2, 0, color);
  page->y += height;
}

static void
put_head (Page *page)
{
  RwCompare *compare = page->picture->compare;
  g_autofree char *cabinet = rw_compare_words_cabinet (compare);
  g_autofree char *dates = rw_compare_words_dates (compare);
  g_autofree char *headline = rw_compare_words_headline (compare);
  const double room = rw_chart_text_width (page->text, RW_TEXT_BODY, dates) + edge;

  rw_chart_text_ink (page->text, page->cr, RW_TEXT_BODY, dates, page->width - edge,
                     page->y + line_height (page, RW_TEXT_TITLE) / 2, 1, page->theme->quiet);
  put_line (page, RW_TEXT_TITLE, cabinet, room, page->theme->ink);
  for (guint i = 0; i < rw_compare_get_n_remarks (compare); i++)
    put_line (page, RW_TEXT_LABEL, rw_compare_get_remark (compare, i), 0, page->theme->ink);
  put_line (page, RW_TEXT_LABEL, headline, 0, page->theme->ink);
}

/* What changed, in @room pixels; how many of @n had to be left out is said. */
static void
put_changes (Page  *page,
             guint  n,
             double room)
{
  const double height = line_height (page, RW_TEXT_BODY);
  const guint lines = (guint) MAX (room / height, 0);
  const guint shown = n <= lines ? n : lines > 0 ? lines - 1 : 0;

  for (guint i = 0; i < shown; i++)
    {
      g_autofree char *words = rw_compare_words_item (rw_compare_get_item (page->picture->compare, i));

      put_line (page, RW_TEXT_BODY, words, 0, page->theme->ink);
    }
  if (shown == n || lines == 0)
    return;

  g_autofree char *more = g_strdup_printf (ngettext ("and %u more", "and %u more", n - shown), n - shown);

  put_line (page, RW_TEXT_BODY, more, 0, page->theme->quiet);
}

static void
draw_page (cairo_t    *cr,
           double      width,
           double      height,
           RwInkTarget target,
           gpointer    user_data)
{
  RwComparePicture *self = user_data;
  g_autoptr (RwChartText) text = rw_chart_text_new (self->font, self->text_scale, self->draw_text);
  Page page = { self, rw_theme_get (self->theme), text, cr, width, edge };

  rw_ink_color (cr, page.theme->paper);
  cairo_paint (cr);
  put_head (&page);

  const guint n = rw_compare_get_n_results (self->compare, RW_COMPARE_CHANGED);
  const double wanted = n * line_height (&page, RW_TEXT_BODY), left = height - page.y - edge;
  const double charts = MAX (left - wanted - edge, chart_share * left);

  /* Whole pixels: a kept picture would blur at its edges. */
  cairo_save (cr);
  cairo_translate (cr, edge, round (page.y + edge / 2));
  rw_compare_picture_ink (self, cr, MAX (width - 2 * edge, 1), MAX (floor (charts - edge / 2), 1), target);
  cairo_restore (cr);
  page.y += charts + edge / 2;
  put_changes (&page, n, height - edge - page.y);
}

GBytes *
rw_compare_picture_export_bytes (RwComparePicture *self,
                                 RwChartFormat     format,
                                 int               width,
                                 int               height,
                                 GError          **error)
{
  g_return_val_if_fail (self != NULL && format < RW_N_CHART_FORMATS, NULL);
  return rw_chart_export_drawn (rw_compare_get_now (self->compare), format, width, height, draw_page, self, error);
}
