/* rw-chart.h: the chart over time: what a session and a view look like, inked with cairo.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signal "changed": the picture is no longer what was last inked. Emitted once, then not again
 * until the next ink, so that a widget may simply queue a redraw. Nothing is worked out before
 * somebody inks or asks.
 *
 * Coordinates are pixels from the upper left corner of the picture; time runs left to right always.
 *
 * What is drawn. In position: every rail's volts at terminals, board and chip; ripple only
 * of the chosen rail, and drops along a wire only while the leads are there (the view's rail and
 * place), as position between their own limits. In volts: the chosen
 * rail (the reference rail when none is chosen) at terminals, board and chip; of ground, its
 * drop. Ohms, amperes and temperatures are not drawn.
 *
 * What nobody measured but the trim tells (rw_chart_set_state ()) is drawn as expected: a thin line
 * of short dashes in a band that holds the truth 95 % of the time.
 */
#pragma once

#include <cairo.h>
#include <pango/pango.h>

#include "rw-bench-state.h"
#include "rw-rect.h"
#include "rw-view.h"

G_BEGIN_DECLS

typedef enum
{
  RW_INK_SCREEN, /* dense traces by the span rasteriser; the picture is kept and painted again */
  RW_INK_VECTOR, /* everything as paths and text: SVG, PDF, print */
} RwInkTarget;

typedef enum
{
  RW_HIT_READING,
  RW_HIT_SAMPLE,
  RW_HIT_VERTICAL, /* a trim, mark, note, symptom, repair, gap or change of setup */
  RW_HIT_EXPECTED, /* a value that nobody measured but the trim tells */
} RwHitKind;

typedef struct
{
  RwHitKind   kind;
  guint       n;       /* event number; 0 for what is expected */
  double      t;       /* seconds since the session started */
  double      x, y;    /* pixels: where it is drawn */
  const char *rail;    /* interned; NULL for a vertical */
  RwPlace     place;   /* of a reading, a sample or what is expected */
  RwKind      what;    /* likewise */
  double      value;   /* base unit; NaN for a vertical and for an overload */
  double      u;       /* standard uncertainty; NaN when not known */
  RwVerdict   verdict; /* RW_VERDICT_NONE for a vertical, what is expected, or where no limits are */
  char       *text;    /* one translated line, ready to show; owned */
} RwChartHit;

void rw_chart_hit_clear (RwChartHit *hit);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (RwChartHit, rw_chart_hit_clear)

/* Words for an id that only the knowledge can name: @type is RW_EVENT_SYMPTOM, RW_EVENT_REPAIR
 * (id of a cause). (transfer full) (nullable): NULL shows the id itself. */
typedef char *(*RwChartNameFunc) (RwEventType type, const char *id, gpointer user_data);

#define RW_TYPE_CHART (rw_chart_get_type ())
G_DECLARE_FINAL_TYPE (RwChart, rw_chart, RW, CHART, GObject)

/* Refs both. The view may look at another session later: the chart keeps to @session. */
RwChart *rw_chart_new (RwSession *session, RwView *view);

RwSession *rw_chart_get_session (RwChart *self); /* borrowed */
RwView    *rw_chart_get_view (RwChart *self);    /* borrowed */

/* Pixels of the picture, at least 1 × 1 each. */
void rw_chart_set_size (RwChart *self, double width, double height);

/* Device pixels a pixel (a window's scale factor), for RW_INK_SCREEN. 1 at first; clamped to 1…8.
 */
void rw_chart_set_device_scale (RwChart *self, double scale);

/* Family and weight of the text; its size is left out of account (the view's text scale rules).
 * @font: (nullable): the default. */
void rw_chart_set_font (RwChart *self, const PangoFontDescription *font);

/* FALSE: no text is drawn, and room for it is reckoned without any font, so that the picture is
 * the same on every machine. */
void rw_chart_set_draw_text (RwChart *self, gboolean draw_text);

/* Bold line above the picture, and a quiet one at its right end. Both (nullable). */
void rw_chart_set_title (RwChart *self, const char *title, const char *aside);

/* The ends of the vertical scale, in what it shows (position or volts), so that two pictures can share one; not
 * finite or @lo ≥ @hi: as far as what is seen asks for. Get: as the picture has them now. */
void rw_chart_set_range (RwChart *self, double lo, double hi);
void rw_chart_get_range (RwChart *self, double *lo, double *hi);

void rw_chart_set_name_func (RwChart *self, RwChartNameFunc func, gpointer user_data,
                             GDestroyNotify destroy);

/* What the events say: from its trim sets follow the expected values. Refs it. @state: (nullable):
 * nothing is expected. It is for the session as it is now: whoever sets it sets a new one after
 * each landmark; samples need no new one. */
void rw_chart_set_state (RwChart *self, RwBenchState *state);

/* TRUE when the next ink would differ from the last one. */
gboolean rw_chart_needs_ink (RwChart *self);

/* Draws the whole picture, ground included, into [0, width] × [0, height]; sets the size. The
 * cairo state is left as it was found. Cost on screen does not grow with the number of samples. */
void rw_chart_ink (RwChart *self, cairo_t *cr, double width, double height, RwInkTarget target);

/* Over the inked picture: a hairline through @hit, a ring round it, and its text where it covers
 * least. */
void rw_chart_ink_cursor (RwChart *self, cairo_t *cr, const RwChartHit *hit);

/* What lies at (x, y), the nearest within a finger's breadth. FALSE: nothing; *hit is untouched.
 * Clear *hit when done. */
gboolean rw_chart_lookup (RwChart *self, double x, double y, RwChartHit *hit);

/* Where event @n is drawn now. FALSE when it is not on the picture. */
gboolean rw_chart_locate (RwChart *self, guint n, RwChartHit *hit);

/* For the arrow keys: the visible reading or vertical next to event @n in time (0: start at the
 * end that @forward comes from). FALSE: there is none further. */
gboolean rw_chart_step (RwChart *self, guint n, gboolean forward, RwChartHit *hit);

double rw_chart_time_at (RwChart *self, double x); /* seconds; also outside the plot */
double rw_chart_x_at (RwChart *self, double t);    /* pixels; also outside the plot */
void   rw_chart_get_plot (RwChart *self, RwRect *plot);

/* A few translated sentences for people who hear the picture. (transfer full) */
char *rw_chart_dup_summary (RwChart *self);

G_END_DECLS
