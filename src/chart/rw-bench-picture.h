/* rw-bench-picture.h: a whole supply, its harness and a board, as a picture with spots that leads can touch.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Left the supply: its strip of screws, below them the mains screws under a cover, beside them the trim screw and what
 * is inside. In the middle the harness with its plug, the edge connector; right the board with a chip far from the
 * edge, the sound amplifier and the speaker. Below all the meter with its two leads:
 *
 *   supply ● on            plug        board
 *   ┌──────────────┐        ┌┐┌────────────────────┐
 *   │ (/)    +5 V ◎━◎━━━━━━━◎◎◎ +5 V   ┌ far chip ┐│
 *   │ trim   0 V  ◎━◎━━━━━━━◎◎◎ 0 V    ◎ +5 V     ││
 *   │             ┌┄┄┄┄┐    └┘│        ◎ 0 V      ││
 *   │ fuse ◎      ┊▨▨▨▨┊      │        └──────────┘│
 *   └─────────────└┄┄┄┄┘      │        amplifier   │
 *                             └────────────┬───────┘
 *   frame ◎    ┌ meter  5.02 V DC ┐         ◁ speaker
 *
 * The layout is worked out from the size, the size of text and the scene alone: no two labels share a pixel, and
 * when a label has no room the text of the whole picture gets smaller. Nothing here knows of a toolkit.
 */
#pragma once

#include <cairo.h>
#include <pango/pango.h>

#include "rw-chart-text.h"
#include "rw-rect.h"
#include "rw-theme.h"

G_BEGIN_DECLS

/* Where a spot is. */
typedef enum
{
  RW_BENCH_STRIP,  /* a screw of the supply's strip */
  RW_BENCH_MAINS,  /* a screw under the mains cover: named, never touched */
  RW_BENCH_INSIDE, /* a part inside the supply */
  RW_BENCH_LUG,    /* a crimp at the supply's end of the harness */
  RW_BENCH_PLUG,   /* a crimp at the plug */
  RW_BENCH_EDGE,   /* a finger of the board */
  RW_BENCH_CHIP,   /* a pin of the far chip */
  RW_BENCH_SOUND,  /* the sound amplifier */
  RW_BENCH_CABINET, /* bare metal and lamps of the cabinet */
  RW_N_BENCH_PARTS
} RwBenchPart;

/* Past any supply with eight rails. */
#define RW_BENCH_MAX_NODES 64

/* A spot. Borrows its text. Wires join strip, lug, plug, edge and chip of the same row. */
typedef struct
{
  RwBenchPart part;
  const char *label;  /* short: "+5 V"; what it belongs to is told by where it is */
  guint       row;
  guint       series; /* rw_theme_series_index () of its rail */
  gboolean    hazard; /* not to be touched: hatched */
} RwBenchNode;

/* What is seen. Borrows everything. */
typedef struct
{
  const RwBenchNode *nodes;
  guint              n_nodes; /* at most RW_BENCH_MAX_NODES */
  int                red, black; /* index of the node that the tip is on; −1: hangs at the meter */
  int                selected;   /* −1: none */
  gboolean           power, fitted;
  double             trim;       /* 0 … 1: how far the screw is turned */
  const char        *value;      /* what the meter shows, in words; "" when nothing */
  const char        *mode;       /* what it is set to: "DC V · auto" */
  const char        *board_words; /* what the screen does; "" when the board is out */
  guint              sound;      /* arcs at the speaker, 0 … 3 */
} RwBenchScene;

typedef struct
{
  double x, y;
} RwBenchPoint;

/* One line of words. */
typedef struct
{
  RwRect      rect;
  const char *text;  /* borrowed from the scene, or translated and static */
  double      align; /* 0, 0.5 or 1 within the rectangle */
  int         node;  /* whose it is, −1: of a part */
  gboolean    quiet;
} RwBenchLabel;

#define RW_BENCH_MAX_LABELS (RW_BENCH_MAX_NODES + 16)

/* Where everything is, in pixels. */
typedef struct
{
  double       width, height;
  double       text_scale; /* as used; at most what was asked for */
  double       pitch;      /* between rows */
  double       spot;       /* radius of a node */
  RwRect       supply, cover, plug, board, chip, amplifier, meter, cabinet;
  RwBenchPoint trim, speaker;
  double       trim_radius, speaker_size;
  RwBenchPoint node[RW_BENCH_MAX_NODES];
  RwBenchPoint jack[2]; /* red, black: where the leads leave the meter */
  RwBenchPoint park[2]; /* where the tips hang when they touch nothing */
  RwRect       value;   /* room for what the meter shows */
  RwBenchLabel labels[RW_BENCH_MAX_LABELS];
  guint        n_labels;
} RwBenchLayout;

/* FALSE: too small for anything to be read, *out is without labels. @font: (nullable), as the text will be drawn;
 * @text_scale: 1 is RW_TEXT_BODY_PIXELS; @draw: FALSE reckons sizes without fonts. */
gboolean rw_bench_layout_make (const RwBenchScene *scene, const PangoFontDescription *font, double text_scale,
                               gboolean draw, double width, double height, RwBenchLayout *out);

/* The node at x, y, or −1. */
int rw_bench_layout_hit (const RwBenchLayout *self, guint n_nodes, double x, double y);

typedef enum
{
  RW_BENCH_LEFT,
  RW_BENCH_RIGHT,
  RW_BENCH_UP,
  RW_BENCH_DOWN
} RwBenchWay;

/* The node that an arrow key leads to from node @from; @from itself when there is none that way. */
int rw_bench_layout_step (const RwBenchLayout *self, guint n_nodes, int from, RwBenchWay way);

/* Draws into 0, 0 … width, height of the layout and leaves cairo's state as it was. The ground is not painted. */
void rw_bench_picture_draw (cairo_t *cr, const RwTheme *theme, const PangoFontDescription *font,
                            const RwBenchScene *scene, const RwBenchLayout *layout);

G_END_DECLS
