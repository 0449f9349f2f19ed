/* rw-trim-map.h: the chart of the trim: what one turn of the screw does to every rail.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The reference rail's volts run across, every rail's position (−1 weak limit, +1 strong limit) up.
 * Each rail is a line with its 95 % band; readings are marks with their 95 % bars both ways; the
 * window is a shaded band and the set point a vertical. Signal "changed" as with RwChart: emitted
 * once, then not again until the next ink. Nothing is worked out before somebody inks or asks.
 *
 * Coordinates are pixels from the upper left corner of the picture; volts run left to right always.
 */
#pragma once

#include <cairo.h>
#include <pango/pango.h>

#include "rw-rect.h"
#include "rw-trim-set.h"
#include "rw-view.h"

G_BEGIN_DECLS

typedef enum
{
  RW_TRIM_HIT_READING,
  RW_TRIM_HIT_SET_POINT,
  RW_TRIM_HIT_NEEDLE, /* where the screw stands now */
  RW_TRIM_HIT_BOUND,  /* no window: what one of the two rails asks for */
  RW_TRIM_HIT_LINE,   /* a rail's line */
  RW_TRIM_HIT_WINDOW, /* inside the band */
} RwTrimHitKind;

typedef struct
{
  RwTrimHitKind kind;
  guint         n;        /* event number; 0 for anything but a reading */
  int           rail;     /* index in the profile; −1 for set point, needle and window */
  double        x, y;     /* pixels: where it is drawn */
  double        volts;    /* of the reference, at x */
  double        value;    /* volts of the rail, as read or by its line; NaN without a rail */
  double        position; /* of value between the rail's limits; NaN without a rail */
  gboolean      outlier;  /* a reading that was left out of the lines */
  char         *text;     /* one translated line, ready to show; owned */
} RwTrimMapHit;

void rw_trim_map_hit_clear (RwTrimMapHit *hit);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (RwTrimMapHit, rw_trim_map_hit_clear)

/* How far the picture reaches. */
typedef struct
{
  double volts_lo, volts_hi; /* of the reference, across */
  double lo, hi;             /* position, up */
} RwTrimMapRange;

#define RW_TYPE_TRIM_MAP (rw_trim_map_get_type ())
G_DECLARE_FINAL_TYPE (RwTrimMap, rw_trim_map, RW, TRIM_MAP, GObject)

/* Refs @view: its theme, text scale and chosen rail rule. */
RwTrimMap *rw_trim_map_new (RwView *view);
RwView    *rw_trim_map_get_view (RwTrimMap *self); /* borrowed */

/* @set: (nullable): nothing was read yet, and the picture says so in words. Refs it. */
void             rw_trim_map_set_set (RwTrimMap *self, const RwTrimSet *set);
const RwTrimSet *rw_trim_map_get_set (RwTrimMap *self); /* borrowed (nullable) */

/* What the meter says just now: the needle and where every rail is expected. Copied. (nullable):
 * none; then the needle stands where the readings of this position say, paler. */
void rw_trim_map_set_live (RwTrimMap *self, const RwTrimLive *live);

/* TRUE: the picture is of an earlier visit, and its words say where that one ended, not where the screw is now. */
void rw_trim_map_set_past (RwTrimMap *self, gboolean past);

/* How far the picture is to reach, so that two can share one scale; a pair of ends that are equal, or not finite: as
 * far as what is seen asks for. Get: as the picture has it now; FALSE, *out untouched, without a set. */
void     rw_trim_map_set_range (RwTrimMap *self, const RwTrimMapRange *range);
gboolean rw_trim_map_get_range (RwTrimMap *self, RwTrimMapRange *out);

/* Pixels of the picture, at least 1 × 1 each. */
void rw_trim_map_set_size (RwTrimMap *self, double width, double height);

/* As in rw_chart_set_font (), rw_chart_set_draw_text () and rw_chart_set_title (). */
void rw_trim_map_set_font (RwTrimMap *self, const PangoFontDescription *font);
void rw_trim_map_set_draw_text (RwTrimMap *self, gboolean draw_text);
void rw_trim_map_set_title (RwTrimMap *self, const char *title, const char *aside);

/* Whether the picture and its summary name the rails that are not on it, as they do at first. */
void rw_trim_map_set_note (RwTrimMap *self, gboolean note);

/* TRUE when the next ink would differ from the last one. */
gboolean rw_trim_map_needs_ink (RwTrimMap *self);

/* Draws the whole picture, ground included, into [0, width] × [0, height]; sets the size. The
 * cairo state is left as it was found. Paths and text on any surface: there are few marks. */
void rw_trim_map_ink (RwTrimMap *self, cairo_t *cr, double width, double height);

/* Over the inked picture: a hairline through @hit, a ring round it, and its text beside it. */
void rw_trim_map_ink_cursor (RwTrimMap *self, cairo_t *cr, const RwTrimMapHit *hit);

/* What lies at (x, y): the nearest reading within a finger's breadth; else the nearest of needle, set
 * point, bounds and lines; else the window if the point is inside. FALSE: nothing; *hit is untouched.
 * Clear *hit when done. */
gboolean rw_trim_map_lookup (RwTrimMap *self, double x, double y, RwTrimMapHit *hit);

/* Where the reading of event @n is drawn now. FALSE when it is not on the picture. */
gboolean rw_trim_map_locate (RwTrimMap *self, guint n, RwTrimMapHit *hit);

/* For the arrow keys: the reading next to that of event @n from left to right (0: start at the end
 * that @forward comes from). FALSE: there is none further. */
gboolean rw_trim_map_step (RwTrimMap *self, guint n, gboolean forward, RwTrimMapHit *hit);

double rw_trim_map_volts_at (RwTrimMap *self, double x); /* of the reference; NaN without a set */
double rw_trim_map_x_at (RwTrimMap *self, double volts); /* pixels; NaN without a set */
void   rw_trim_map_get_plot (RwTrimMap *self, RwRect *plot); /* empty without a set */

/* A few translated sentences for people who hear the picture: window, set point, margin, and every
 * rail's line. (transfer full) */
char *rw_trim_map_dup_summary (RwTrimMap *self);

G_END_DECLS
