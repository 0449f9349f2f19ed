/* rw-chart-text.c: words on a picture.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-chart-text.h"

#include <pango/pangocairo.h>

#include "rw-ink.h"

struct _RwChartText
{
  PangoContext *context;
  PangoLayout  *layouts[RW_N_TEXT_RANKS]; /* all NULL when not drawing */
  double        heights[RW_N_TEXT_RANKS];
  double        pixels[RW_N_TEXT_RANKS]; /* size of the letters */
  gboolean      draw;
};

static const double ratios[RW_N_TEXT_RANKS] = { 0.85, 1, 1, 1.2 };

/* Of the letter size, when there is no font to ask. */
static const double guessed_width = 0.6;
static const double guessed_height = 1.25;

/* Grey, unhinted, at sub-pixel places: the same layout on every surface and at every scale. */
static void
set_font_options (PangoContext *context)
{
  cairo_font_options_t *options = cairo_font_options_create ();

  cairo_font_options_set_antialias (options, CAIRO_ANTIALIAS_GRAY);
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_SLIGHT);
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  pango_cairo_context_set_font_options (context, options);
  cairo_font_options_destroy (options);
  pango_context_set_round_glyph_positions (context, FALSE);
}

/* Figures of one width, so that labels do not dance. */
static PangoLayout *
make_layout (RwChartText                *self,
             const PangoFontDescription *font,
             RwTextRank                  rank)
{
  PangoLayout *layout = pango_layout_new (self->context);
  PangoFontDescription *sized = pango_font_description_copy (font);
  PangoAttrList *attributes = pango_attr_list_new ();

  pango_font_description_set_absolute_size (sized, self->pixels[rank] * PANGO_SCALE);
  if (rank == RW_TEXT_LABEL || rank == RW_TEXT_TITLE)
    pango_font_description_set_weight (sized, PANGO_WEIGHT_BOLD);
  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum=1"));
  pango_layout_set_font_description (layout, sized);
  pango_layout_set_attributes (layout, attributes);
  pango_layout_set_single_paragraph_mode (layout, TRUE);
  pango_attr_list_unref (attributes);
  pango_font_description_free (sized);
  return layout;
}

static double
layout_height (PangoLayout *layout)
{
  int height;

  pango_layout_set_text (layout, "Xg", -1);
  pango_layout_get_size (layout, NULL, &height);
  return pango_units_to_double (height);
}

static void
load_fonts (RwChartText                *self,
            const PangoFontDescription *font)
{
  PangoFontDescription *fallback = pango_font_description_from_string ("Sans");

  self->context = pango_font_map_create_context (pango_cairo_font_map_get_default ());
  set_font_options (self->context);
  for (guint rank = 0; rank < RW_N_TEXT_RANKS; rank++)
    {
      self->layouts[rank] = make_layout (self, font != NULL ? font : fallback, (RwTextRank) rank);
      self->heights[rank] = layout_height (self->layouts[rank]);
    }
  pango_font_description_free (fallback);
}

RwChartText *
rw_chart_text_new (const PangoFontDescription *font,
                   double                      scale,
                   gboolean                    draw)
{
  RwChartText *self = g_new0 (RwChartText, 1);

  self->draw = draw;
  for (guint rank = 0; rank < RW_N_TEXT_RANKS; rank++)
    {
      self->pixels[rank] = RW_TEXT_BODY_PIXELS * ratios[rank] * scale;
      self->heights[rank] = self->pixels[rank] * guessed_height;
    }
  if (draw)
    load_fonts (self, font);
  return self;
}

void
rw_chart_text_free (RwChartText *self)
{
  if (self == NULL)
    return;
  for (guint rank = 0; rank < RW_N_TEXT_RANKS; rank++)
    g_clear_object (&self->layouts[rank]);
  g_clear_object (&self->context);
  g_free (self);
}

double
rw_chart_text_height (RwChartText *self,
                      RwTextRank   rank)
{
  return self->heights[rank];
}

double
rw_chart_text_width (RwChartText *self,
                     RwTextRank   rank,
                     const char  *words)
{
  if (!self->draw)
    return guessed_width * self->pixels[rank] * (double) g_utf8_strlen (words, -1);

  int width;

  pango_layout_set_text (self->layouts[rank], words, -1);
  pango_layout_get_size (self->layouts[rank], &width, NULL);
  return pango_units_to_double (width);
}

/* The first @n letters and an ellipsis. */
static char *
cut (const char *words,
     glong       n)
{
  g_autofree char *head = g_utf8_substring (words, 0, n);

  g_strchomp (head);
  return g_strconcat (head, "…", NULL);
}

char *
rw_chart_text_fit (RwChartText *self,
                   RwTextRank   rank,
                   const char  *words,
                   double       room)
{
  if (rw_chart_text_width (self, rank, words) <= room)
    return g_strdup (words);

  /* Widths grow with the letters kept: find the most that fit. */
  glong low = 0, high = g_utf8_strlen (words, -1) - 1;

  while (low < high)
    {
      const glong middle = (low + high + 1) / 2;
      g_autofree char *tried = cut (words, middle);

      if (rw_chart_text_width (self, rank, tried) <= room)
        low = middle;
      else
        high = middle - 1;
    }
  return low >= 3 ? cut (words, low) : NULL;
}

void
rw_chart_text_ink (RwChartText *self,
                   cairo_t     *cr,
                   RwTextRank   rank,
                   const char  *words,
                   double       x,
                   double       y,
                   double       align,
                   RwColor      color)
{
  if (!self->draw || words[0] == '\0')
    return;

  const double width = rw_chart_text_width (self, rank, words);

  rw_ink_color (cr, color);
  cairo_move_to (cr, x - align * width, y - self->heights[rank] / 2);
  pango_cairo_show_layout (cr, self->layouts[rank]);
}
