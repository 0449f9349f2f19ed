/* rw-bench-picture-layout.c: where every part, spot and word of the bench's picture is.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Top down: a line of titles; the body with supply, harness, plug and board; a gap; the meter and the speaker. The body
 * has one pitch for all rows: those of the strip, half a row of air, the title of the mains cover and the mains screws.
 * Across: supply and board take what their words need, the harness and then the board what is left.
 */
#include "config.h"

#include "rw-bench-picture.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const double pad_by_text = 7;         /* pixels at text scale 1 */
static const double least_pitch = 1.08;      /* of a line of text */
static const double most_pitch = 2.3;
static const double smaller = 0.93, smallest = 0.4; /* of the text that was asked for */
static const double least_harness = 0.10;    /* of the width */
static const double out_gap = 0.05;          /* of the width, between the plug and a board that is out */

typedef struct
{
  const RwBenchScene *scene;
  RwChartText        *text;
  RwBenchLayout      *out;
  double              pad, body, caption; /* body, caption: heights of a line */
  guint               count[RW_N_BENCH_PARTS];
  double              widest[RW_N_BENCH_PARTS]; /* label */
  guint               rows;
  double              left;  /* width of what is in the supply beside its strip */
  double              strip; /* width of the strip with its labels */
} Make;

/* --- measuring ----------------------------------------------------------------------------------- */

static gboolean
is_row (RwBenchPart part)
{
  return part == RW_BENCH_STRIP || part == RW_BENCH_LUG || part == RW_BENCH_PLUG || part == RW_BENCH_EDGE;
}

static void
measure (Make *make)
{
  const RwBenchScene *scene = make->scene;

  for (guint i = 0; i < scene->n_nodes; i++)
    {
      const RwBenchNode *node = &scene->nodes[i];
      const double width = rw_chart_text_width (make->text, RW_TEXT_BODY, node->label);

      make->count[node->part]++;
      make->widest[node->part] = MAX (make->widest[node->part], width);
      if (is_row (node->part))
        make->rows = MAX (make->rows, node->row + 1);
    }
}

static double
caption_width (Make       *make,
               const char *words)
{
  return rw_chart_text_width (make->text, RW_TEXT_CAPTION, words);
}

static void
add_label (Make       *make,
           const char *text,
           double      x,
           double      y,
           double      align,
           double      room,
           int         node)
{
  RwBenchLayout *out = make->out;
  const RwTextRank rank = node >= 0 ? RW_TEXT_BODY : RW_TEXT_CAPTION;
  const double height = node >= 0 ? make->body : make->caption;
  const double width = MIN (rw_chart_text_width (make->text, rank, text), room);

  if (*text == '\0' || !(width > 0) || out->n_labels >= RW_BENCH_MAX_LABELS)
    return;
  out->labels[out->n_labels++] = (RwBenchLabel) {
    .rect = { x - align * width, y - height / 2, width, height },
    .text = text,
    .align = align,
    .node = node,
    .quiet = node < 0,
  };
}

/* --- parts --------------------------------------------------------------------------------------- */

/* The body's rows. FALSE: they do not fit. */
static gboolean
place_rows (Make *make)
{
  RwBenchLayout *out = make->out;
  const double top = make->pad + make->caption + 3;
  const double meter = MAX (2 * make->body + 2.5 * make->pad + make->caption, 0.15 * out->height);
  const double gap = make->caption + 2.5 * make->pad;
  const double height = out->height - top - gap - meter - make->pad;
  const double fixed = make->count[RW_BENCH_MAINS] > 0 ? make->caption + 2 * make->pad : make->pad;
  const double n = make->rows + make->count[RW_BENCH_MAINS] + 0.6;

  out->pitch = MIN ((height - fixed) / n, most_pitch * make->body);
  out->spot = CLAMP (0.34 * out->pitch, 3, 9 * out->text_scale);
  out->supply = (RwRect) { make->pad, top, 0, height };
  out->meter = (RwRect) { 0, out->height - make->pad - meter, 0, meter };
  return out->pitch >= least_pitch * make->body;
}

static gboolean
place_columns (Make *make)
{
  RwBenchLayout *out = make->out;
  const double pad = make->pad, spot = out->spot;
  const double plug = MAX (3.4 * spot, 0.03 * out->width);
  const double gap = make->scene->fitted ? 0 : out_gap * out->width;
  const double inside = make->widest[RW_BENCH_INSIDE] + 2 * spot + 6;
  const double cover = MAX (make->widest[RW_BENCH_MAINS] + 2 * spot + pad, caption_width (make, _ ("mains, covered")));
  const double chip = MAX (make->widest[RW_BENCH_CHIP], caption_width (make, _ ("far chip")) - pad) + spot + 2 * pad;
  const double board = make->widest[RW_BENCH_EDGE] + spot + 3 * pad + chip + pad + 3 * make->rows;

  make->left = MAX (inside, caption_width (make, _ ("trim screw"))) + 2 * pad;
  make->strip = MAX (make->widest[RW_BENCH_STRIP] + 2 * spot, cover) + 1.5 * pad;
  out->supply.width = make->left + make->strip;

  const double room = out->width - 2 * pad - out->supply.width - plug - gap - board;
  const double harness = CLAMP (0.5 * room, least_harness * out->width, 0.28 * out->width);

  if (room < harness)
    return FALSE;
  out->plug = (RwRect) { rw_rect_right (&out->supply) + harness, out->supply.y, plug,
                         make->pad + make->rows * out->pitch };
  out->board = (RwRect) { rw_rect_right (&out->plug) + gap, out->supply.y, 0, out->supply.height };
  out->board.width = out->width - pad - out->board.x;
  out->chip = (RwRect) { rw_rect_right (&out->board) - pad - chip, out->board.y + pad + make->caption + 2, chip,
                         out->pitch * (make->count[RW_BENCH_CHIP] + 0.3) };
  return TRUE;
}

/* Below the chip; its speaker beside the meter. FALSE: no room for it. */
static gboolean
place_sound (Make *make)
{
  RwBenchLayout *out = make->out;
  const double pad = make->pad;
  const double words = MAX (caption_width (make, _ ("amplifier")),
                            make->widest[RW_BENCH_SOUND] > 0 ? make->widest[RW_BENCH_SOUND] + 2 * out->spot + pad : 0);
  const double width = MAX (words + 2 * pad, out->chip.width);
  const double height = make->caption + pad + make->count[RW_BENCH_SOUND] * out->pitch;

  out->amplifier = (RwRect) { rw_rect_right (&out->board) - pad - width, rw_rect_bottom (&out->board) - pad - height,
                              width, height };
  out->speaker_size = MIN (out->meter.height * 0.5, 26 * out->text_scale);
  out->speaker = (RwBenchPoint) { out->amplifier.x + out->amplifier.width - 1.6 * out->speaker_size,
                                  rw_rect_bottom (&out->meter) - make->caption - pad - out->speaker_size / 2 };
  return out->amplifier.y > rw_rect_bottom (&out->chip) + pad
         && out->speaker.y - out->speaker_size / 2 > rw_rect_bottom (&out->board) + 2;
}

/* The cabinet's own metal and lamps, one above the other, left of the meter. */
static gboolean
place_cabinet (Make *make)
{
  RwBenchLayout *out = make->out;
  const guint n = make->count[RW_BENCH_CABINET];

  out->cabinet = (RwRect) { make->pad, out->meter.y, 0, out->meter.height };
  if (n == 0)
    return TRUE;
  out->cabinet.width = MAX (make->widest[RW_BENCH_CABINET] + 2 * out->spot + 6, caption_width (make, _ ("cabinet")))
                       + 2 * make->pad;
  return (out->cabinet.height - make->pad) / n >= make->body;
}

static gboolean
place_meter (Make *make)
{
  RwBenchLayout *out = make->out;
  const double tail = 5 * out->spot + make->pad; /* where a tip hangs */
  const double left = rw_rect_right (&out->cabinet) + tail;
  const double right = out->speaker.x - out->speaker_size - make->pad - tail;
  const double width = MIN (0.42 * out->width, right - left);

  if (width < 9 * make->body)
    return FALSE;
  out->meter.width = width;
  out->meter.x = CLAMP (out->width * 0.45 - width / 2, left, right - width);
  out->jack[0] = (RwBenchPoint) { out->meter.x + 0.35 * width, out->meter.y };
  out->jack[1] = (RwBenchPoint) { out->meter.x + 0.65 * width, out->meter.y };
  out->park[0] = (RwBenchPoint) { out->meter.x - 3 * out->spot, out->meter.y + out->meter.height / 2 };
  out->park[1] = (RwBenchPoint) { rw_rect_right (&out->meter) + 3 * out->spot, out->park[0].y };
  out->value = (RwRect) { out->meter.x + make->pad, out->meter.y + make->pad, width - 2 * make->pad,
                          out->meter.height - 2 * make->pad - make->caption };
  return TRUE;
}

/* The trim screw; below it is what is inside the supply. */
static gboolean
place_trim (Make *make)
{
  RwBenchLayout *out = make->out;
  const double rows = make->count[RW_BENCH_INSIDE] * make->body * least_pitch;
  const double room = out->supply.height - 4 * make->pad - make->caption - rows;

  out->trim_radius = MIN (MIN (make->left / 2 - make->pad, room / 2), 26 * out->text_scale);
  if (out->trim_radius < 7)
    return FALSE;
  out->trim = (RwBenchPoint) { out->supply.x + make->left / 2, out->supply.y + make->pad + out->trim_radius };
  add_label (make, _ ("trim screw"), out->trim.x, out->trim.y + out->trim_radius + 4 + make->caption / 2, 0.5,
             make->left, -1);
  return TRUE;
}

/* --- spots --------------------------------------------------------------------------------------- */

static double
row_y (Make *make,
       guint row)
{
  return make->out->supply.y + make->pad + (row + 0.5) * make->out->pitch;
}

/* How many of its part come before it. */
static guint
place_in_part (Make *make,
               guint index)
{
  guint n = 0;

  for (guint i = 0; i < index; i++)
    n += make->scene->nodes[i].part == make->scene->nodes[index].part;
  return n;
}

static void
place_cover (Make *make)
{
  RwBenchLayout *out = make->out;
  const double bottom = rw_rect_bottom (&out->supply) - make->pad / 2;
  const double height = make->count[RW_BENCH_MAINS] * out->pitch + make->caption + make->pad;
  const double left = out->supply.x + make->left + make->pad / 2;

  if (make->count[RW_BENCH_MAINS] == 0)
    return;
  out->cover = (RwRect) { left, bottom - height, rw_rect_right (&out->supply) + out->spot + 3 - left, height };
  add_label (make, _ ("mains, covered"), out->cover.x + 4, out->cover.y + make->pad / 2 + make->caption / 2, 0,
             out->cover.width - 6, -1);
}

/* A column of spots with their names beside them; @nth: 0.5, 1.5 … of @n between @top and @bottom. */
static void
place_listed (Make  *make,
              guint  i,
              double nth,
              double x,
              double top,
              double bottom)
{
  RwBenchLayout *out = make->out;
  const guint n = make->count[make->scene->nodes[i].part];
  const double pitch = MIN (out->pitch, (bottom - top) / n);

  out->node[i] = (RwBenchPoint) { x + make->pad + out->spot, top + nth * pitch };
  add_label (make, make->scene->nodes[i].label, out->node[i].x + out->spot + 5, out->node[i].y, 0, out->width, (int) i);
}

static void
place_node (Make *make,
            guint i)
{
  RwBenchLayout *out = make->out;
  const RwBenchNode *node = &make->scene->nodes[i];
  const double right = rw_rect_right (&out->supply), y = row_y (make, node->row), gap = out->spot + 5;
  const double nth = place_in_part (make, i) + 0.5;

  switch (node->part)
    {
    case RW_BENCH_STRIP:
      out->node[i] = (RwBenchPoint) { right, y };
      add_label (make, node->label, right - gap, y, 1, make->strip, (int) i);
      break;
    case RW_BENCH_MAINS:
      out->node[i] = (RwBenchPoint) { right, rw_rect_bottom (&out->cover) - make->pad / 2
                                                 - (make->count[RW_BENCH_MAINS] - nth) * out->pitch };
      add_label (make, node->label, right - gap, out->node[i].y, 1, make->strip, (int) i);
      break;
    case RW_BENCH_INSIDE:
      place_listed (make, i, nth, out->supply.x, out->trim.y + out->trim_radius + 4 + make->caption + make->pad,
                    rw_rect_bottom (&out->supply) - make->pad / 2);
      break;
    case RW_BENCH_CABINET:
      place_listed (make, i, nth, out->cabinet.x, out->cabinet.y + make->pad / 2,
                    rw_rect_bottom (&out->cabinet) - make->pad / 2);
      break;
    case RW_BENCH_LUG:
      out->node[i] = (RwBenchPoint) { right + 3 * out->spot, y };
      break;
    case RW_BENCH_PLUG:
      out->node[i] = (RwBenchPoint) { out->plug.x, y };
      break;
    case RW_BENCH_EDGE:
      out->node[i] = (RwBenchPoint) { out->board.x, y };
      add_label (make, node->label, out->board.x + gap, y, 0, out->board.width, (int) i);
      break;
    case RW_BENCH_CHIP:
      out->node[i] = (RwBenchPoint) { out->chip.x, out->chip.y + (nth + 0.15) * out->pitch };
      add_label (make, node->label, out->chip.x + gap, out->node[i].y, 0, out->chip.width, (int) i);
      break;
    case RW_BENCH_SOUND:
      out->node[i] = (RwBenchPoint) { out->amplifier.x, rw_rect_bottom (&out->amplifier) - make->pad / 4
                                                            - (make->count[RW_BENCH_SOUND] - nth) * out->pitch };
      add_label (make, node->label, out->amplifier.x + gap, out->node[i].y, 0, out->amplifier.width, (int) i);
      break;
    case RW_N_BENCH_PARTS:
    default:
      break;
    }
}

static void
name_parts (Make *make)
{
  RwBenchLayout *out = make->out;
  const RwBenchScene *scene = make->scene;
  const double title = make->pad + make->caption / 2;
  const char *board = scene->fitted ? _ ("board") : _ ("board, out");
  const double board_width = caption_width (make, board);
  const double harness = out->plug.x - rw_rect_right (&out->supply);

  add_label (make, scene->power ? _ ("supply ● power on") : _ ("supply ⊘ power off"), out->supply.x, title, 0,
             out->supply.width, -1);
  add_label (make, _ ("harness"), out->plug.x - harness / 2, title, 0.5, harness - 2 * make->pad, -1);
  add_label (make, board, out->board.x, title, 0, board_width, -1);
  add_label (make, scene->board_words, rw_rect_right (&out->board), title, 1,
             out->board.width - board_width - 2 * make->pad, -1);
  add_label (make, _ ("plug"), out->plug.x + out->plug.width / 2,
             rw_rect_bottom (&out->plug) + 3 + make->caption / 2, 0.5,
             2 * make->pad + out->plug.width, -1);
  if (make->count[RW_BENCH_CHIP] > 0)
    add_label (make, _ ("far chip"), rw_rect_right (&out->chip), out->chip.y - make->caption / 2 - 1, 1,
               out->chip.width, -1);
  add_label (make, _ ("amplifier"), rw_rect_right (&out->amplifier) - make->pad / 2,
             out->amplifier.y + make->pad / 2 + make->caption / 2, 1, out->amplifier.width - make->pad, -1);
  if (make->count[RW_BENCH_CABINET] > 0)
    add_label (make, _ ("cabinet"), out->cabinet.x, out->cabinet.y - make->caption / 2 - 2, 0, out->cabinet.width, -1);
  add_label (make, _ ("speaker"), out->speaker.x, out->speaker.y + out->speaker_size / 2 + 2 + make->caption / 2, 0.5,
             out->amplifier.width, -1);
  add_label (make, scene->mode, out->meter.x + out->meter.width / 2,
             rw_rect_bottom (&out->meter) - make->pad / 2 - make->caption / 2, 0.5, out->meter.width - 2 * make->pad, -1);
}

/* --- all ----------------------------------------------------------------------------------------- */

static gboolean
make_at (const RwBenchScene         *scene,
         const PangoFontDescription *font,
         double                      text_scale,
         gboolean                    draw,
         double                      width,
         double                      height,
         RwBenchLayout              *out)
{
  g_autoptr (RwChartText) text = rw_chart_text_new (font, text_scale, draw);
  Make make = { .scene = scene, .text = text, .out = out };

  *out = (RwBenchLayout) { .width = width, .height = height, .text_scale = text_scale };
  make.pad = pad_by_text * text_scale;
  make.body = rw_chart_text_height (text, RW_TEXT_BODY);
  make.caption = rw_chart_text_height (text, RW_TEXT_CAPTION);
  measure (&make);
  if (!place_rows (&make) || !place_columns (&make) || !place_sound (&make) || !place_cabinet (&make)
      || !place_meter (&make) || !place_trim (&make))
    return FALSE;
  place_cover (&make);
  for (guint i = 0; i < scene->n_nodes; i++)
    place_node (&make, i);
  name_parts (&make);
  return TRUE;
}

gboolean
rw_bench_layout_make (const RwBenchScene         *scene,
                      const PangoFontDescription *font,
                      double                      text_scale,
                      gboolean                    draw,
                      double                      width,
                      double                      height,
                      RwBenchLayout              *out)
{
  g_return_val_if_fail (scene != NULL && scene->n_nodes <= RW_BENCH_MAX_NODES && out != NULL, FALSE);

  *out = (RwBenchLayout) { 0 };
  if (!(width > 0) || !(height > 0) || !(text_scale > 0) || isinf (width) || isinf (height) || isinf (text_scale))
    return FALSE;
  for (double share = 1; share >= smallest; share *= smaller)
    if (make_at (scene, font, text_scale * share, draw, width, height, out))
      return TRUE;
  *out = (RwBenchLayout) { .width = width, .height = height };
  return FALSE;
}

/* --- asking -------------------------------------------------------------------------------------- */

int
rw_bench_layout_hit (const RwBenchLayout *self,
                     guint                n_nodes,
                     double               x,
                     double               y)
{
  double least = MAX (self->pitch * 0.6, 12 * self->text_scale);
  int found = -1;

  if (self->n_labels == 0)
    return -1;
  for (guint i = 0; i < MIN (n_nodes, RW_BENCH_MAX_NODES); i++)
    {
      const double far = hypot (self->node[i].x - x, self->node[i].y - y);

      if (far < least)
        {
          least = far;
          found = (int) i;
        }
    }
  return found;
}

/* How far it is that way: what lies straight ahead is nearer than what lies aside. INFINITY: not that way. */
static double
effort (RwBenchPoint from,
        RwBenchPoint to,
        RwBenchWay   way)
{
  const gboolean across = way == RW_BENCH_LEFT || way == RW_BENCH_RIGHT;
  const double sign = way == RW_BENCH_LEFT || way == RW_BENCH_UP ? -1 : 1;
  const double ahead = sign * (across ? to.x - from.x : to.y - from.y);
  const double aside = fabs (across ? to.y - from.y : to.x - from.x);

  if (ahead < 1 || aside > 3 * ahead)
    return INFINITY;
  return ahead + 2.5 * aside;
}

int
rw_bench_layout_step (const RwBenchLayout *self,
                      guint                n_nodes,
                      int                  from,
                      RwBenchWay           way)
{
  double least = INFINITY;
  int found = from;

  g_return_val_if_fail (from < (int) RW_BENCH_MAX_NODES, from);
  if (from < 0)
    return n_nodes > 0 ? 0 : -1;
  for (guint i = 0; i < MIN (n_nodes, RW_BENCH_MAX_NODES); i++)
    {
      const double cost = (int) i != from ? effort (self->node[from], self->node[i], way) : (double) INFINITY;

      if (cost < least)
        {
          least = cost;
          found = (int) i;
        }
    }
  return found;
}
