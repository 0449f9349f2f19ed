/* rw-trim-map-layout.h: where everything on the trim map goes, in plain numbers.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *     ┌ picture ───────────────────────────────────────────────┐
 *     │ title                                            aside │
 *     │                  5.06 V set point       (label lanes)  │
 *     │          4.98 V ├──── window ────┤ 5.14 V              │
 *     │              ┌ plot ──────▽───────────────┐            │
 *     │ strong limit ├────────────────────────────┤            │
 *     │ middle       │        lines, readings     │ ● +5 V     │
 *     │ weak limit   ├────────────────────────────┤ ▲ −5 V     │
 *     │              └──────────────────△─────────┘            │
 *     │               4.9     5.0   (now 5.08 V)   5.2 V       │
 *     │ Not read yet: +12 V          Reference +5 V, at the board
 *     └────────────────────────────────────────────────────────┘
 *
 * A set is of one place, so readings are solid and what is hollow was never measured. A picture
 * too low for all of its rows sheds lanes first, then the bottom row.
 */
#pragma once

#include "rw-axis.h"
#include "rw-layer-axes.h"
#include "rw-layer-limits.h"
#include "rw-trim-map-values.h"
#include "rw-trim-map.h"

G_BEGIN_DECLS

#define RW_TRIM_MAP_STEPS 33 /* places across at which a band is worked out */
#define RW_TRIM_MAP_LANES 3

/* What the picture is made from; borrowed while the layout lives. */
typedef struct
{
  const RwTrimSet  *set;  /* (nullable) */
  const RwTrimLive *live; /* (nullable) */
  gboolean          past; /* the visit is over */
  RwView           *view;
  RwChartText      *text;
  double            width, height; /* pixels */
  const char       *title, *aside; /* (nullable) */
  gboolean          without_note;
  RwTrimMapRange    given; /* each way: its ends equal: its own */
} RwTrimMapInput;

/* A rail that has a line and limits. */
typedef struct
{
  guint         rail;
  RwSeriesStyle style;
  gboolean      chosen;
  gboolean      seen;           /* some of it is on the plot */
  double        x0, y0, x1, y1; /* that part, from left to right */
  int           beyond;         /* at the right edge: −1 below the plot, 1 above, 0 on it */
  gboolean      banded;         /* not for the reference, which is exact */
  double        lo[RW_TRIM_MAP_STEPS], hi[RW_TRIM_MAP_STEPS]; /* pixels, close to the plot */
  double        end, end_y;        /* position at the right edge; its pixels, clamped to the plot */
  double        marker_x, label_y; /* middle of the marker beside the plot, moved off the others */
  double        name_x;
  char         *name; /* NULL when there is no room */
} RwTrimMapLine;

typedef struct
{
  guint         index; /* in the set's points */
  guint         rail;
  RwSeriesStyle style;
  double        x, y;               /* clamped to the plot */
  int           beyond_x, beyond_y; /* −1 left or below, 1 right or above, 0 on it */
  double        x_lo, x_hi, y_lo, y_hi; /* ends of the bars, clamped; y_lo is the lower value */
  gboolean      outlier;
  gboolean      newest; /* of the trim position that lasts */
} RwTrimMapMark;

/* A line of words in one of the lanes. */
typedef struct
{
  char *words;
  double x, y; /* left end, middle */
  double width;
  RwColor color;
} RwTrimMapLabel;

/* A vertical band; open where it runs on past the picture. */
typedef struct
{
  gboolean shown;
  double   x0, x1;
  gboolean open0, open1;
} RwTrimMapBand;

/* What one of two rails that rule each other out asks for. */
typedef struct
{
  guint         rail;
  RwSeriesStyle style;
  double        volts;
  double        x;      /* NaN: not on the picture */
  gboolean      lower;  /* needs this or more; FALSE: allows this or less */
} RwTrimMapBound;

typedef struct
{
  guint         rail;
  RwSeriesStyle style;
  gboolean      measured; /* by the meter just now */
  double        y, y_lo, y_hi; /* clamped to the plot */
} RwTrimMapDiamond;

typedef struct
{
  RwTrimMapNow now;
  gboolean     shown;
  double       x;      /* clamped to the plot */
  int          beyond; /* −1 left of it, 1 right of it */
  char        *words;
  RwRect       plate; /* under the words */
  GArray      *diamonds; /* of RwTrimMapDiamond */
} RwTrimMapNeedle;

typedef struct
{
  RwTrimMapInput in;
  RwScene        scene; /* the frame alone, no traces: so that layers of the other chart serve too */
  GPtrArray     *instead; /* lines of a sentence in the middle; NULL when there is a picture */
  RwAxis         volts; /* of the reference → x */
  guint          n_lanes;
  double         lane_y[RW_TRIM_MAP_LANES]; /* the lowest first; middles */
  RwLimitsLayer  limits;
  gboolean       limits_named; /* there is room for their names */
  GArray        *ticks; /* of RwAxisTick, across */
  double         ticks_y;
  char          *axis_words, *note_words; /* (nullable) */
  double         axis_x, note_x, foot_y;  /* right end, left end, middle */
  GArray        *lines;  /* of RwTrimMapLine in drawing order, the chosen one last */
  GArray        *marks;  /* of RwTrimMapMark, from left to right */
  GArray        *labels; /* of RwTrimMapLabel */
  RwTrimMapBand  window, gap;
  RwTrimMapBound bounds[2]; /* the needing one first; meant only when n_bounds is 2 */
  guint          n_bounds;
  double         set_x; /* NaN: there is none, or not on the picture */
  RwTrimMapNeedle needle;
} RwTrimMapLayout;

void rw_trim_map_layout_init (RwTrimMapLayout *self, const RwTrimMapInput *input);
void rw_trim_map_layout_clear (RwTrimMapLayout *self);

/* --- parts, each in a file of its own ----------------------------------------------------- */

/* The range across and the range up. Needs the plot. */
void rw_trim_map_layout_set_ranges (RwTrimMapLayout *self);

void rw_trim_map_layout_place_lines (RwTrimMapLayout *self);
void rw_trim_map_layout_place_marks (RwTrimMapLayout *self);

/* Window, set point and bounds, with their labels. Needs the ranges and the lanes. FALSE: there was
 * no room for some label. */
gboolean rw_trim_map_layout_place_verticals (RwTrimMapLayout *self);

void rw_trim_map_layout_place_needle (RwTrimMapLayout *self);

/* Pixels of a position, clamped to the plot; *beyond as in RwTrimMapMark. */
double rw_trim_map_layout_y (const RwTrimMapLayout *self, double position, int *beyond);
double rw_trim_map_layout_x (const RwTrimMapLayout *self, double volts, int *beyond);

RwSeriesStyle rw_trim_map_layout_style (const RwTrimMapLayout *self, guint rail);

void rw_trim_map_layout_ink (const RwTrimMapLayout *self, cairo_t *cr);

G_END_DECLS
