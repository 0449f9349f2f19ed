/* rw-chart-private.h: the inside of RwChart, for the two files that implement it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-chart-words.h"
#include "rw-chart.h"
#include "rw-layer-axes.h"
#include "rw-layer-ends.h"
#include "rw-layer-expected.h"
#include "rw-layer-limits.h"
#include "rw-layer-readings.h"
#include "rw-layer-samples.h"
#include "rw-layer-verticals.h"

G_BEGIN_DECLS

/* What the picture takes from the view; a change of anything else does not matter to it. */
typedef struct
{
  double      start, end, text_scale;
  const char *rail;
  RwPlace     place;
  RwThemeId   theme;
  RwViewMode  mode;
} RwChartLook;

typedef struct
{
  RwScene          scene;
  RwAxesLayer      axes;
  RwLimitsLayer    limits;
  RwVerticalsLayer verticals;
  RwReadingsLayer  readings;
  RwSamplesLayer   samples;
  RwEndsLayer      ends;
  RwExpectedLayer  expected;
} RwChartLayout;

/* Invariants:
 *  1. laid_out says that layout is that of now; without it layout holds nothing;
 *  2. kept is the picture of a layout that was of now when it was inked; needs_ink says that it
 *     no longer is. */
struct _RwChart
{
  GObject               parent_instance;
  RwSession            *session;
  RwView               *view;
  RwChartData          *data;
  RwChartLook           look;
  double                width, height; /* pixels */
  double                device_scale;
  PangoFontDescription *font; /* (nullable) */
  RwChartText          *text; /* NULL: to be made anew */
  gboolean              draw_text;
  char                 *title, *aside;
  double                given_lo, given_hi; /* equal: none */
  RwBenchState         *state;     /* (nullable) */
  RwForesight          *foresight; /* of state; NULL without */
  RwChartNamer          namer;
  GDestroyNotify        namer_destroy;
  RwChartLayout         layout;
  gboolean              laid_out;
  cairo_surface_t      *kept; /* (nullable) */
  gboolean              needs_ink;
};

/* The layout of now, worked out if it is not there. Borrowed, until anything changes. */
const RwChartLayout *rw_chart_get_layout (RwChart *self);

G_END_DECLS
