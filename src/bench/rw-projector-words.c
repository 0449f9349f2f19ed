/* rw-projector-words.c: texts of the projector as pango lays them out.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Blocks of words: the size is the largest of a few at which title, lines and table fit into the box; where none does
 * it shrinks on, below what is read from afar, until all fits: a class that must come closer is better off than one to
 * which the end is never shown.
 */
#include "config.h"

#include "rw-projector-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "rw-projector-picture.h"

static const double unit_scale = 0.6;
static const double largest = 0.10 * RW_PROJECTOR_HEIGHT;
static const double smallest = 12;
static const double shrink = 0.94;
static const double column_gap = 1.0; /* of the size */
static const double title_space = 0.35;

/* --- one text ------------------------------------------------------------------------------------- */

static PangoLayout *
make (PangoContext *context,
      const char   *text,
      double        size,
      gboolean      bold)
{
  PangoLayout *layout = pango_layout_new (context);
  const PangoFontDescription *of_context = pango_context_get_font_description (context);
  g_autoptr (PangoFontDescription) font = of_context != NULL ? pango_font_description_copy (of_context)
                                                             : pango_font_description_new ();

  pango_font_description_set_absolute_size (font, size * PANGO_SCALE);
  pango_font_description_set_weight (font, bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description (layout, font);
  pango_layout_set_text (layout, text != NULL ? text : "", -1);
  return layout;
}

static void
set_attributes (PangoLayout *layout,
                gboolean     small_unit)
{
  const char *text = pango_layout_get_text (layout);
  const char *space = small_unit ? strstr (text, "\u202f") : NULL;
  PangoAttrList *list = pango_attr_list_new ();

  pango_attr_list_insert (list, pango_attr_font_features_new ("tnum=1"));
  if (space != NULL)
    {
      PangoAttribute *scale = pango_attr_scale_new (unit_scale);

      scale->start_index = (guint) (space - text);
      pango_attr_list_insert (list, scale);
    }
  pango_layout_set_attributes (layout, list);
  pango_attr_list_unref (list);
}

PangoLayout *
rw_projector_words (PangoContext *context,
                    const char   *text,
                    double        size,
                    gboolean      bold)
{
  PangoLayout *layout = make (context, text, size, bold);

  set_attributes (layout, FALSE);
  return layout;
}

PangoLayout *
rw_projector_value (PangoContext *context,
                    const char   *text,
                    double        size)
{
  PangoLayout *layout = make (context, text, size, TRUE);

  set_attributes (layout, TRUE);
  return layout;
}

double
rw_projector_size (PangoLayout *layout)
{
  return (double) pango_font_description_get_size (pango_layout_get_font_description (layout)) / PANGO_SCALE;
}

void
rw_projector_measure (PangoLayout *layout,
                      double      *width,
                      double      *height)
{
  PangoRectangle logical;

  pango_layout_get_extents (layout, NULL, &logical);
  *width = (double) logical.width / PANGO_SCALE;
  *height = (double) logical.height / PANGO_SCALE;
}

void
rw_projector_measure_steady (PangoLayout *layout,
                             double      *width,
                             double      *height)
{
  g_autoptr (PangoLayout) copy = pango_layout_copy (layout);
  g_autofree char *text = g_strdup (pango_layout_get_text (layout));

  for (char *c = text; *c != '\0'; c++)
    if (g_ascii_isdigit (*c))
      *c = '0';
  pango_layout_set_text (copy, text, -1);
  rw_projector_measure (copy, width, height);
}

double
rw_projector_width_of_verdicts (PangoContext *context,
                                double        size)
{
  const char *const verdicts[] = { _ ("● inside"), _ ("◐ too close"), _ ("▲ outside"), _ ("◌ stale") };
  double widest = 0;

  for (guint i = 0; i < G_N_ELEMENTS (verdicts); i++)
    {
      g_autoptr (PangoLayout) layout = rw_projector_words (context, verdicts[i], size, TRUE);
      double w, h;

      rw_projector_measure (layout, &w, &h);
      widest = MAX (widest, w);
    }
  return widest;
}

/* --- blocks --------------------------------------------------------------------------------------- */

void
rw_projector_free_blocks (GArray *blocks)
{
  for (guint i = 0; i < blocks->len; i++)
    g_object_unref (g_array_index (blocks, RwProjectorBlock, i).layout);
  g_array_unref (blocks);
}

/* Broken into lines at @width. Returns where it ends. */
static double
add_block (GArray       *blocks,
           PangoContext *context,
           const char   *text,
           double        size,
           gboolean      bold,
           RwRect        cell)
{
  RwProjectorBlock block = { rw_projector_words (context, text, size, bold), cell.x, cell.y, cell.width, FALSE };
  double w, h;

  pango_layout_set_width (block.layout, (int) (cell.width * PANGO_SCALE));
  pango_layout_set_wrap (block.layout, PANGO_WRAP_WORD_CHAR);
  rw_projector_measure (block.layout, &w, &h);
  g_array_append_val (blocks, block);
  return cell.y + h;
}

static double
natural_width (PangoContext *context,
               const char   *text,
               double        size,
               gboolean      bold)
{
  g_autoptr (PangoLayout) layout = rw_projector_words (context, text, size, bold);
  double w, h;

  rw_projector_measure (layout, &w, &h);
  return w;
}

/* What every column needs; where that is more than there is, the widest gives way. */
static void
size_columns (PangoContext              *context,
              const RwProjectionContent *content,
              double                     size,
              double                     room,
              double                    *widths)
{
  const guint n = content->n_columns, n_cells = g_strv_length (content->cells);
  double sum = (n - 1) * column_gap * size;
  guint widest = 0;

  for (guint i = 0; i < n_cells; i++)
    widths[i % n] = MAX (widths[i % n], ceil (natural_width (context, content->cells[i], size, i < n)));
  for (guint k = 0; k < n; k++)
    {
      sum += widths[k];
      widest = widths[k] > widths[widest] ? k : widest;
    }
  if (sum > room)
    widths[widest] = MAX (widths[widest] - (sum - room), 3 * size);
}

static double
add_table (GArray                    *blocks,
           PangoContext              *context,
           const RwProjectionContent *content,
           double                     size,
           RwRect                     box)
{
  const guint n = content->n_columns, n_cells = g_strv_length (content->cells);
  g_autofree double *widths = g_new0 (double, n);
  double y = box.y;

  size_columns (context, content, size, box.width, widths);
  for (guint row = 0; row + n <= n_cells; row += n)
    {
      double x = box.x, bottom = y;

      for (guint k = 0; k < n; k++)
        {
          const RwRect cell = { x, y, widths[k], 0 };
          const double end = add_block (blocks, context, content->cells[row + k], size, row == 0, cell);

          bottom = MAX (bottom, end);
          g_array_index (blocks, RwProjectorBlock, blocks->len - 1).quiet = row == 0;
          x += widths[k] + column_gap * size;
        }
      y = bottom;
    }
  return y;
}

/* Returns where it ends. */
static double
lay (GArray                    *blocks,
     PangoContext              *context,
     const RwProjectionContent *content,
     double                     size,
     RwRect                     box)
{
  double y = box.y;

  if (content->title != NULL)
    y = add_block (blocks, context, content->title, size * 1.1, TRUE, (RwRect){ box.x, y, box.width, 0 })
        + title_space * size;
  for (guint i = 0; content->lines != NULL && content->lines[i] != NULL; i++)
    y = add_block (blocks, context, content->lines[i], size, FALSE, (RwRect){ box.x, y, box.width, 0 });
  if (content->cells != NULL && content->n_columns > 0)
    y = add_table (blocks, context, content, size, (RwRect){ box.x, y, box.width, 0 });
  return y;
}

static gboolean
reaches_out (GArray *blocks,
             double  right)
{
  for (guint i = 0; i < blocks->len; i++)
    {
      const RwProjectorBlock *block = &g_array_index (blocks, RwProjectorBlock, i);

      if (block->x + block->width > right + 0.5)
        return TRUE;
    }
  return FALSE;
}

GArray *
rw_projector_lay_words (PangoContext              *context,
                        const RwProjectionContent *content,
                        RwRect                     box,
                        gboolean                  *fits)
{
  double size = largest;
  GArray *blocks = g_array_new (FALSE, FALSE, sizeof (RwProjectorBlock));

  while ((lay (blocks, context, content, size, box) > rw_rect_bottom (&box)
          || reaches_out (blocks, rw_rect_right (&box)))
         && size > smallest)
    {
      const gboolean large = size > RW_PROJECTOR_READ;

      rw_projector_free_blocks (blocks);
      blocks = g_array_new (FALSE, FALSE, sizeof (RwProjectorBlock));
      size = large ? MAX (size * shrink, RW_PROJECTOR_READ) : size * shrink;
    }
  *fits = size >= RW_PROJECTOR_READ;
  return blocks;
}
