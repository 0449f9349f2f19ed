/* rw-scene.h: everything the layers share: what is shown, on which axes, where on the picture.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *     ┌ picture ───────────────────────────────────────────────┐
 *     │ title                                            aside │
 *     │ labels of marks, notes, symptoms, … (one or two lanes) │
 *     │ screw heads of the trims            (trim lane)        │
 *     │              ┌ plot ──────────────────────┐            │
 *     │ strong limit ├────────────────────────────┤ +5 V       │
 *     │ middle       │                            │ −5 V       │
 *     │ weak limit   ├────────────────────────────┤ +12 V      │
 *     │              └────────────────────────────┘            │
 *     │              0:00      1:00      2:00      since start │
 *     └────────────────────────────────────────────────────────┘
 *
 * The vertical scale is position, or volts of one rail. Its range follows what is visible, but a
 * value more than RW_SCENE_FAR half bands from the middle is left out of account: it is drawn at
 * the edge with an arrow, so that one silly reading never squashes the picture.
 */
#pragma once

#include "rw-axis.h"
#include "rw-chart-data.h"
#include "rw-chart-text.h"
#include "rw-foresight.h"
#include "rw-rect.h"
#include "rw-view.h"

G_BEGIN_DECLS

#define RW_SCENE_LEAST 1.4 /* half bands always shown either side of the middle */
#define RW_SCENE_FAR 3.0   /* half bands past which a value no longer widens the range */
#define RW_SCENE_COVER 1.96 /* standard uncertainties either side of a reading: 95 % */
#define RW_SCENE_LANES 2
#define RW_SCENE_TIME_GAP 8 /* pixels between the plot and the times below it */
#define RW_SCENE_LABEL_ROOM 40 /* pixels beside a name right of the plot: leader, marker, edge */

/* A channel that is on the picture. */
typedef struct
{
  const RwChartChannel *channel;
  RwSeriesStyle         style;
  char                 *label;        /* "+5 V", "+5 V drop" */
  const char *place_label; /* "terminals"; NULL where there is but one place of this rail */
  double                gain, offset; /* what the scale shows = gain·value + offset */
  gboolean              chosen;       /* of the rail that the view has chosen */
  guint                 n_samples;    /* visible ones, holes included */
  guint                 first_sample; /* of those, in the pyramid */
  RwSpan *columns; /* n_columns of the scene, in the channel's unit; NULL without samples */
} RwTrace;

/* What a rail was expected to show at a moment. Volts. */
typedef struct
{
  double t; /* seconds */
  double value;
  double u;      /* standard uncertainty, the meter's common part included, as a reading's is */
  double lo, hi; /* hold the truth 95 % of the time; the common part included */
} RwExpectedKnot;

/* An unbroken line of them. */
typedef struct
{
  guint    trace;
  gboolean lasts; /* to now, or off the picture: nobody measured the rail meanwhile */
  GArray  *knots; /* of RwExpectedKnot, in order of time; at least two */
} RwExpectedStretch;

/* What the scene is made from; borrowed while it lives. */
typedef struct
{
  RwChartData *data;
  RwView      *view;
  RwChartText *text;
  double       width, height; /* pixels */
  double       device_scale;  /* columns a pixel */
  const char  *title;         /* (nullable) */
  const char  *aside;         /* (nullable) */
  RwForesight *foresight;     /* (nullable): nothing is expected */
  double       given_lo, given_hi; /* the scale's ends, so that two pictures share them; equal: its own */
} RwSceneInput;

typedef struct
{
  RwSceneInput   in;
  const RwTheme *theme;
  double         unit; /* text scale: factor on every length */
  RwViewMode     mode;
  const char    *rail; /* (nullable) chosen; in volts mode never NULL */
  RwRect         plot;
  double         title_y;                      /* middles of the rows above the plot */
  guint n_lanes; /* for labels of moments: 1, or 2 when they are many */
  double         lane_y[RW_SCENE_LANES];       /* the upper one first */
  double         trim_lane_y;
  RwAxis         time;                         /* seconds → x */
  RwAxis         scale;                        /* position or volts → y */
  gboolean       limited;                      /* the scale has limits to show */
  double weak, middle, strong; /* on the scale; weak is −∞ where the limits are one-sided */
  GArray        *traces;                       /* of RwTrace, chosen ones last */
  guint          n_columns;
  GArray        *changes; /* of double: seconds at which readings became stale, in order */
  GArray        *expected; /* of RwExpectedStretch */
} RwScene;

void rw_scene_init (RwScene *self, const RwSceneInput *input);
void rw_scene_clear (RwScene *self);

static inline const RwTrace *
rw_scene_trace (const RwScene *self,
                guint          i)
{
  return &g_array_index (self->traces, RwTrace, i);
}

static inline const RwExpectedStretch *
rw_scene_stretch (const RwScene *self,
                  guint          i)
{
  return &g_array_index (self->expected, RwExpectedStretch, i);
}

/* The end of what is expected of a trace now. (nullable) */
const RwExpectedKnot *rw_scene_expected_now (const RwScene *self, guint trace);

/* Pixels of a value of @trace: on the plot, clamped to its edge when beyond (−1 below, 1 above, 0
 * on it; NaN gives NaN). */
double rw_scene_y (const RwScene *self, const RwTrace *trace, double value, int *beyond);
double rw_scene_x (const RwScene *self, double t);

/* Name of a rail for people: "+5 V", "ground", or the bare id. Borrowed. */
const char *rw_scene_rail_label (const RwChartChannel *channel);

/* What stands behind the name of a trace: its place where it is worth saying, and "expected". (transfer
 * full) (nullable): nothing. */
char *rw_scene_dup_caption (const RwTrace *trace, gboolean expected);

/* Something follows @t that made readings stale: its time, or INFINITY. */
double rw_scene_next_change (const RwScene *self, double t);

G_END_DECLS
