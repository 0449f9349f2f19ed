/* rw-projector-picture.c: where everything on the projector stands, and the ink.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Values alone are rows, one a rail: label, value, and verdict over place at the end of the row. Above words they are
 * columns of a strip; above a picture, which needs the height, one rail stands in a line. Digits are of one width and
 * values are measured with zeros for digits, so nothing changes size as they count.
 */
#include "config.h"

#include "rw-projector-picture.h"

#include <math.h>
#include <string.h>

#include "rw-ink.h"
#include "rw-projector-words.h"

static const double margin = 24;
static const double gap = 30;
static const double dim_share = 0.5;
static const double frame_inside = 6;
static const double line_size = 1.15 * RW_PROJECTOR_READ;

/* --- texts ---------------------------------------------------------------------------------------- */

void
rw_projector_layout_clear (RwProjectorLayout *self)
{
  for (guint i = 0; self->texts != NULL && i < self->texts->len; i++)
    g_object_unref (g_array_index (self->texts, RwProjectorText, i).layout);
  g_clear_pointer (&self->texts, g_array_unref);
  g_clear_pointer (&self->frames, g_array_unref);
  g_clear_pointer (&self->lines, g_array_unref);
}

static void
begin (RwProjectorLayout *out,
       double             width)
{
  *out = (RwProjectorLayout){ .width = MAX (width, 1) };
  out->texts = g_array_new (FALSE, FALSE, sizeof (RwProjectorText));
  out->frames = g_array_new (FALSE, FALSE, sizeof (RwRect));
  out->lines = g_array_new (FALSE, FALSE, sizeof (RwRect));
}

/* Where in its cell a text stands. */
typedef enum
{
  AT_START,
  AT_END,
} Align;

/* Takes @layout. The cell [x, x + width] is told as in a picture that runs left to right. */
static RwProjectorText *
put (RwProjectorLayout *out,
     gboolean           rtl,
     PangoLayout       *layout,
     double             x,
     double             y,
     double             width,
     Align              align)
{
  double w, h;
  RwProjectorText text = { .layout = layout };

  rw_projector_measure (layout, &w, &h);

  const double from_start = align == AT_START ? x : x + width - w;

  text.x = rtl ? out->width - from_start - w : from_start;
  text.y = y;
  text.box = (RwRect){ text.x, text.y, w, h };
  text.size = rw_projector_size (layout);
  g_array_append_val (out->texts, text);
  return &g_array_index (out->texts, RwProjectorText, out->texts->len - 1);
}

static void
color_verdict (RwProjectorText        *text,
               const RwProjectionRail *rail)
{
  text->role = rail->look == RW_VERDICT_NONE ? RW_PROJECTOR_QUIET : RW_PROJECTOR_VERDICT;
  text->look = rail->look;
  text->dim = rail->dim;
}

/* A rail in one text; empty when it has nothing to say there. */
typedef struct
{
  PangoLayout *label, *value, *verdict, *place;
} Cell;

static Cell
make_cell (PangoContext           *context,
           const RwProjectionRail *rail,
           double                  label,
           double                  value,
           double                  words)
{
  return (Cell){
    rw_projector_words (context, rail->label, label, TRUE),
    rw_projector_value (context, rail->value, value),
    rw_projector_words (context, rail->verdict, words, TRUE),
    rw_projector_words (context, rail->place, words, FALSE),
  };
}

static void
free_cell (const Cell *cell)
{
  g_object_unref (cell->label);
  g_object_unref (cell->value);
  g_object_unref (cell->verdict);
  g_object_unref (cell->place);
}

/* @boxes: of label, value, verdict, place; 0 wide: left out. @value: where in its box the value stands. */
static void
put_cell_texts (RwProjectorLayout      *out,
                gboolean                rtl,
                const RwProjectionRail *rail,
                const RwRect            boxes[4],
                const Cell             *cell,
                Align                   value)
{
  PangoLayout *layouts[] = { cell->label, cell->value, cell->verdict, cell->place };

  for (guint i = 0; i < G_N_ELEMENTS (layouts); i++)
    {
      if (boxes[i].width <= 0)
        {
          g_object_unref (layouts[i]);
          continue;
        }

      RwProjectorText *text = put (out, rtl, layouts[i], boxes[i].x, boxes[i].y, boxes[i].width,
                                   i == 1 ? value : AT_START);

      text->value = i == 1;
      text->dim = rail->dim;
      if (i == 2)
        color_verdict (text, rail);
      else if (i == 3 || (i == 1 && rail->stale))
        text->role = RW_PROJECTOR_QUIET;
    }
}

static void
put_frame (RwProjectorLayout      *out,
           gboolean                rtl,
           const RwProjectionRail *rail,
           RwRect                  box)
{
  if (!rail->lit)
    return;
  if (rtl)
    box.x = out->width - rw_rect_right (&box);
  g_array_append_val (out->frames, box);
}

/* --- rows ----------------------------------------------------------------------------------------- */

/* Sizes and columns that all rows share. */
typedef struct
{
  double label, value, words;                    /* sizes */
  double label_width, value_width, words_width;
  double row;                                    /* height */
} Rows;

static double
widest (PangoContext              *context,
        const RwProjectionContent *content,
        const Rows                *rows,
        int                        which)
{
  double widest = which == 2 ? rw_projector_width_of_verdicts (context, rows->words) : 0;

  for (guint i = 0; i < content->shown->len; i++)
    {
      const RwProjectionRail *rail = content->shown->pdata[i];
      const char *text = which == 0 ? rail->label : which == 1 ? rail->value : which == 2 ? rail->verdict : rail->place;
      g_autoptr (PangoLayout) layout = which == 1 ? rw_projector_value (context, text, rows->value)
                                                  : rw_projector_words (context, text, which == 0 ? rows->label : rows->words,
                                                                        which != 3);
      double w, h;

      rw_projector_measure_steady (layout, &w, &h);
      widest = MAX (widest, w);
    }
  return widest;
}

/* Label and words get what they need, the value what is left of the width, up to the height of the row. */
static Rows
size_rows (PangoContext              *context,
           const RwProjectionContent *content,
           double                     width,
           double                     height)
{
  Rows rows = { .row = height / MAX (content->shown->len, 1) };

  rows.words = CLAMP (rows.row * 0.24, RW_PROJECTOR_READ, 1.1 * RW_PROJECTOR_READ);
  rows.label = CLAMP (rows.row * 0.36, RW_PROJECTOR_READ, 0.9 * RW_PROJECTOR_VALUE);
  rows.value = 100;
  rows.label_width = widest (context, content, &rows, 0);
  rows.words_width = MAX (widest (context, content, &rows, 2), widest (context, content, &rows, 3));

  const double room = width - rows.label_width - rows.words_width - 2 * gap;

  rows.value = MAX (MIN (rows.row * 0.72, rows.value * room / MAX (widest (context, content, &rows, 1), 1)), 1);
  rows.value_width = room;
  return rows;
}

static void
put_row (RwProjectorLayout      *out,
         PangoContext           *context,
         gboolean                rtl,
         const RwProjectionRail *rail,
         const Rows             *rows,
         double                  y)
{
  const Cell cell = make_cell (context, rail, rows->label, rows->value, rows->words);
  double w, label, value, verdict, place;

  rw_projector_measure (cell.label, &w, &label);
  rw_projector_measure (cell.value, &w, &value);
  rw_projector_measure (cell.verdict, &w, &verdict);
  rw_projector_measure (cell.place, &w, &place);
  verdict = rail->verdict != NULL ? verdict : 0;
  place = rail->place != NULL ? place : 0;

  const double middle = y + rows->row / 2, x = margin + rows->label_width + gap;
  const double end = x + rows->value_width + gap, top = middle - (verdict + place) / 2;
  const RwRect boxes[] = {
    { margin, middle - label / 2, rows->label_width, label },
    { x, middle - value / 2, rows->value_width, value },
    { end, top, rail->verdict != NULL ? rows->words_width : 0, verdict },
    { end, top + verdict, rail->place != NULL ? rows->words_width : 0, place },
  };

  put_cell_texts (out, rtl, rail, boxes, &cell, AT_END);
  put_frame (out, rtl, rail,
             (RwRect){ frame_inside, y + frame_inside, out->width - 2 * frame_inside, rows->row - 2 * frame_inside });
}

static void
put_rows (RwProjectorLayout         *out,
          PangoContext              *context,
          const RwProjectionContent *content,
          gboolean                   rtl)
{
  const Rows rows = size_rows (context, content, out->width - 2 * margin, RW_PROJECTOR_HEIGHT);

  for (guint i = 0; i < content->shown->len; i++)
    {
      const RwRect line = { margin, i * rows.row - RW_PROJECTOR_LINE / 2, out->width - 2 * margin, RW_PROJECTOR_LINE };

      put_row (out, context, rtl, content->shown->pdata[i], &rows, i * rows.row);
      if (i > 0)
        g_array_append_val (out->lines, line);
    }
}

/* --- one rail ------------------------------------------------------------------------------------- */

static PangoLayout *
fit_place (PangoContext *context,
           const char   *place,
           double        room)
{
  PangoLayout *layout = rw_projector_words (context, place, RW_PROJECTOR_VALUE, FALSE);
  double w, h;

  rw_projector_measure (layout, &w, &h);
  if (w <= room)
    return layout;
  g_object_unref (layout);
  return rw_projector_words (context, place, RW_PROJECTOR_VALUE * room / w, FALSE);
}

/* Label and place above, the value as large as it goes, the verdict below. */
static void
put_single (RwProjectorLayout         *out,
            PangoContext              *context,
            const RwProjectionContent *content,
            gboolean                   rtl)
{
  const RwProjectionRail *rail = content->shown->pdata[0];
  const double width = out->width - 2 * margin, y = margin / 2;
  Cell cell = make_cell (context, rail, RW_PROJECTOR_VALUE, 100, RW_PROJECTOR_VALUE);
  RwRect boxes[4];
  double w, h;

  rw_projector_measure_steady (cell.value, &w, &h);
  g_object_unref (cell.value);
  cell.value = rw_projector_value (context, rail->value, 100 * MIN (width / MAX (w, 1), 0.5 * RW_PROJECTOR_HEIGHT / MAX (h, 1)));
  rw_projector_measure (cell.label, &w, &h);
  boxes[0] = (RwRect){ margin, y, w, h };
  g_object_unref (cell.place);
  cell.place = fit_place (context, rail->place, width - w - gap);
  rw_projector_measure (cell.place, &w, &h);
  boxes[3] = (RwRect){ margin + width - w, y, rail->place != NULL ? w : 0, h };
  rw_projector_measure (cell.value, &w, &h);
  boxes[1] = (RwRect){ margin + (width - w) / 2, (RW_PROJECTOR_HEIGHT - h) / 2, w, h };
  rw_projector_measure (cell.verdict, &w, &h);
  boxes[2] = (RwRect){ margin + (width - w) / 2, RW_PROJECTOR_HEIGHT - h - y, rail->verdict != NULL ? w : 0, h };
  put_cell_texts (out, rtl, rail, boxes, &cell, AT_END);
}

/* --- the strip ------------------------------------------------------------------------------------ */

static double
column_width (const RwProjectorLayout   *out,
              const RwProjectionContent *content)
{
  const guint n = MAX (content->shown->len, 1);

  return (out->width - 2 * margin - (n - 1) * gap) / n;
}

/* Label and value of every rail stand side by side. */
static gboolean
fits_beside (PangoContext              *context,
             const RwProjectionContent *content,
             double                     width)
{
  const Rows rows = { RW_PROJECTOR_READ, RW_PROJECTOR_READ, RW_PROJECTOR_READ, 0, 0, 0, 0 };

  return widest (context, content, &rows, 0) + gap / 2 + widest (context, content, &rows, 1) <= width;
}

/* As large as must be, or as fits where that is too wide. */
static double
squeeze (PangoContext              *context,
         const RwProjectionContent *content,
         int                        which,
         double                     width)
{
  const Rows rows = { RW_PROJECTOR_READ, RW_PROJECTOR_READ, RW_PROJECTOR_READ, 0, 0, 0, 0 };

  return RW_PROJECTOR_READ * MIN (1, width / MAX (widest (context, content, &rows, which), 1));
}

static double
put_column (RwProjectorLayout      *out,
            PangoContext           *context,
            gboolean                rtl,
            const RwProjectionRail *rail,
            const double            sizes[3],
            double                  x,
            double                  width,
            gboolean                beside)
{
  const Cell cell = make_cell (context, rail, sizes[0], sizes[1], sizes[2]);
  double label_width, label, w, value, verdict;
  const double y = margin / 3;

  rw_projector_measure (cell.label, &label_width, &label);
  rw_projector_measure (cell.value, &w, &value);
  rw_projector_measure (cell.verdict, &w, &verdict);

  const double below = beside ? MAX (label, value) : label + value;
  const RwRect boxes[4] = {
    { x, y, label_width, label },
    { beside ? x + label_width + gap / 2 : x, beside ? y : y + label, width, value },
    { x, y + below, rail->verdict != NULL ? width : 0, verdict },
    { 0 },
  };

  put_cell_texts (out, rtl, rail, boxes, &cell, AT_START);
  put_frame (out, rtl, rail, (RwRect){ x - gap / 3, y / 2, width + 2 * gap / 3, below + verdict + y });
  return y + below + verdict + y;
}

/* Returns where it ends. */
static double
put_strip (RwProjectorLayout         *out,
           PangoContext              *context,
           const RwProjectionContent *content,
           gboolean                   rtl)
{
  const double width = column_width (out, content);
  const gboolean beside = fits_beside (context, content, width);
  const double sizes[] = { beside ? RW_PROJECTOR_READ : squeeze (context, content, 0, width),
                           beside ? RW_PROJECTOR_READ : squeeze (context, content, 1, width),
                           squeeze (context, content, 2, width) };
  double bottom = 0;

  for (guint i = 0; i < content->shown->len; i++)
    {
      const double end = put_column (out, context, rtl, content->shown->pdata[i], sizes, margin + i * (width + gap),
                                     width, beside);

      bottom = MAX (bottom, end);
    }
  if (bottom > 0)
    {
      const RwRect line = { margin, bottom, out->width - 2 * margin, RW_PROJECTOR_LINE };

      g_array_append_val (out->lines, line);
    }
  return bottom > 0 ? bottom + RW_PROJECTOR_LINE : 0;
}

/* --- the line ------------------------------------------------------------------------------------- */

/* The size at which a rail stands in one line, at most @wanted. */
static double
size_line (PangoContext           *context,
           const RwProjectionRail *rail,
           double                  width,
           double                  wanted)
{
  const Cell cell = make_cell (context, rail, wanted, wanted, wanted);
  const double verdict = rw_projector_width_of_verdicts (context, wanted);
  double label, value, h;

  rw_projector_measure (cell.label, &label, &h);
  rw_projector_measure_steady (cell.value, &value, &h);
  free_cell (&cell);
  return wanted * MIN (1, (width - 2 * gap) / (label + value + verdict));
}

/* One rail above a picture, which needs the height for itself: returns where it ends. */
static double
put_line (RwProjectorLayout         *out,
          PangoContext              *context,
          const RwProjectionContent *content,
          gboolean                   rtl)
{
  if (content->shown->len == 0)
    return 0;

  const RwProjectionRail *rail = content->shown->pdata[0];
  const double width = out->width - 2 * margin, y = margin / 3;
  const double size = size_line (context, rail, width, line_size), words = rw_projector_width_of_verdicts (context, size);
  const Cell cell = make_cell (context, rail, size, size, size);
  double label, value, height, h;

  rw_projector_measure (cell.label, &label, &height);
  rw_projector_measure (cell.value, &value, &h);

  const double end = margin + width - MAX (words, 1), middle = margin + label + (end - gap - margin - label + value) / 2;
  const RwRect boxes[4] = {
    { margin, y, label, height },
    { middle - value, y, value, height },
    { end, y, rail->verdict != NULL ? words : 0, height },
    { 0 },
  };
  const RwRect line = { margin, height + 2 * y, width, RW_PROJECTOR_LINE };

  put_cell_texts (out, rtl, rail, boxes, &cell, AT_END);
  g_array_append_val (out->lines, line);
  return height + 2 * y + RW_PROJECTOR_LINE;
}

static void
put_picture (RwProjectorLayout         *out,
             PangoContext              *context,
             const RwProjectionContent *content,
             gboolean                   rtl)
{
  const double top = ceil (put_line (out, context, content, rtl));

  out->part = (RwRect){ 0, top, out->width, RW_PROJECTOR_HEIGHT - top };
}

/* --- words ---------------------------------------------------------------------------------------- */

/* Within its width a block begins where its writing does. */
static void
put_block (RwProjectorLayout      *out,
           gboolean                rtl,
           const RwProjectorBlock *block)
{
  RwProjectorText text = { .layout = block->layout, .y = block->y, .size = rw_projector_size (block->layout) };
  PangoRectangle logical;

  pango_layout_get_extents (block->layout, NULL, &logical);
  text.x = rtl ? out->width - block->x - block->width : block->x;
  text.box = (RwRect){ text.x + (double) logical.x / PANGO_SCALE, text.y, (double) logical.width / PANGO_SCALE,
                       (double) logical.height / PANGO_SCALE };
  text.role = block->quiet ? RW_PROJECTOR_QUIET : RW_PROJECTOR_INK;
  g_array_append_val (out->texts, text);
}

/* Takes @blocks (element-type RwProjectorBlock). */
static void
put_blocks (RwProjectorLayout *out,
            gboolean           rtl,
            GArray            *blocks)
{
  for (guint i = 0; i < blocks->len; i++)
    put_block (out, rtl, &g_array_index (blocks, RwProjectorBlock, i));
  g_array_unref (blocks);
}

/* Below a strip, if there is one and the words leave room for it. */
static void
put_words (RwProjectorLayout         *out,
           PangoContext              *context,
           const RwProjectionContent *content,
           gboolean                   rtl)
{
  const double strip = put_strip (out, context, content, rtl);
  RwRect box = { margin, strip + margin / 2, out->width - 2 * margin, RW_PROJECTOR_HEIGHT - strip - margin };
  gboolean fits;
  GArray *blocks = rw_projector_lay_words (context, content, box, &fits);

  if (!fits && strip > 0)
    {
      rw_projector_free_blocks (blocks);
      rw_projector_layout_clear (out);
      begin (out, out->width);
      box.y = margin / 2;
      box.height = RW_PROJECTOR_HEIGHT - margin;
      blocks = rw_projector_lay_words (context, content, box, &fits);
    }
  put_blocks (out, rtl, blocks);
}

/* --- all of it ------------------------------------------------------------------------------------ */

void
rw_projector_layout_init (RwProjectorLayout         *out,
                          PangoContext              *context,
                          const RwProjectionContent *content,
                          double                     width,
                          gboolean                   rtl)
{
  begin (out, width);
  if (content->blank)
    return;
  if (rw_projection_content_is_words (content))
    put_words (out, context, content, rtl);
  else if (content->part == RW_PROJECTION_VALUES && content->shown->len == 1)
    put_single (out, context, content, rtl);
  else if (content->part == RW_PROJECTION_VALUES)
    put_rows (out, context, content, rtl);
  else
    put_picture (out, context, content, rtl);
}

/* --- ink ------------------------------------------------------------------------------------------ */

static RwColor
color_of (const RwProjectorText *text,
          const RwTheme         *theme)
{
  const RwColor color = text->role == RW_PROJECTOR_VERDICT ? theme->verdicts[text->look]
                        : text->role == RW_PROJECTOR_QUIET ? theme->quiet
                                                           : theme->ink;

  return text->dim ? rw_ink_mixed (color, theme->paper, dim_share) : color;
}

void
rw_projector_layout_ink (const RwProjectorLayout *self,
                         cairo_t                 *cr,
                         const RwTheme           *theme)
{
  rw_ink_color (cr, theme->paper);
  cairo_paint (cr);
  rw_ink_color (cr, theme->grid);
  for (guint i = 0; i < self->lines->len; i++)
    {
      const RwRect *line = &g_array_index (self->lines, RwRect, i);

      cairo_rectangle (cr, line->x, line->y, line->width, line->height);
      cairo_fill (cr);
    }
  rw_ink_color (cr, theme->ink);
  cairo_set_line_width (cr, 1.5 * RW_PROJECTOR_LINE);
  for (guint i = 0; i < self->frames->len; i++)
    {
      const RwRect *frame = &g_array_index (self->frames, RwRect, i);

      cairo_rectangle (cr, frame->x, frame->y, frame->width, frame->height);
      cairo_stroke (cr);
    }
  for (guint i = 0; i < self->texts->len; i++)
    {
      const RwProjectorText *text = &g_array_index (self->texts, RwProjectorText, i);

      rw_ink_color (cr, color_of (text, theme));
      cairo_move_to (cr, text->x, text->y);
      pango_cairo_show_layout (cr, text->layout);
    }
}
