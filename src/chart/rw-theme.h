/* rw-theme.h: colours, dashes and markers of every picture.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A rail is told apart three ways: colour, dash and marker, all by its place in the profile. The
 * series colours were chosen for at least 4.5:1 against the paper (WCAG 2.1, 1.4.3: good for text
 * too) and for the largest least difference (CIEDE2000) under normal and the three kinds of
 * impaired colour vision.
 */
#pragma once

#include "rw-profile.h"
#include "rw-verdict.h"

G_BEGIN_DECLS

typedef enum
{
  RW_THEME_LIGHT,
  RW_THEME_DARK,
  RW_THEME_LIGHT_CONTRAST, /* high contrast: no see-through, thicker lines */
  RW_THEME_DARK_CONTRAST,
  RW_N_THEMES
} RwThemeId;

/* 0…1, not premultiplied. */
typedef struct
{
  double r, g, b, a;
} RwColor;

typedef enum
{
  RW_MARKER_CIRCLE,
  RW_MARKER_SQUARE,
  RW_MARKER_TRIANGLE,
  RW_MARKER_DIAMOND,
  RW_MARKER_SALTIRE, /* a fat x */
  RW_MARKER_CROSS,   /* a fat + */
  RW_N_MARKERS
} RwMarker;

#define RW_MAX_DASHES 4

typedef struct
{
  RwColor  color;
  RwMarker marker;
  double   dashes[RW_MAX_DASHES]; /* on, off, … in pixels at text scale 1 */
  int      n_dashes;              /* 0: solid */
} RwSeriesStyle;

#define RW_N_SERIES 6

typedef struct
{
  RwColor       paper;  /* the ground everything is drawn on */
  RwColor       ink;    /* text and markers without a rail */
  RwColor       quiet;  /* second-rank text; at least 4.5:1 */
  RwColor       line;   /* limits, axes, verticals; at least 3:1 */
  RwColor       grid;   /* decoration only */
  RwColor       tint;   /* laid over the space outside the limits */
  RwColor       hatch;  /* its hatching */
  RwColor       accent; /* keyboard and pointer cursor */
  RwColor       verdicts[RW_N_VERDICTS];
  RwSeriesStyle series[RW_N_SERIES];
  double        weight; /* factor on every line width: 1, or more in high contrast */
} RwTheme;

/* Static; never NULL (an id out of range gives the light one). */
const RwTheme *rw_theme_get (RwThemeId id);

/* Place of a rail in the order of styles: its index in the profile; then ground; then strangers.
 * @rail_id may be any string. */
guint rw_theme_series_index (const RwProfile *profile, const char *rail_id);

/* Any index: past the sixth the colours come again with other dashes and markers, so that the first
 * 36 styles all differ. */
RwSeriesStyle rw_theme_series (const RwTheme *theme, guint index);

/* WCAG 2.1 contrast ratio of two opaque colours, 1…21. */
double rw_color_contrast (RwColor a, RwColor b);

G_END_DECLS
