/* rw-view.h: what is looked at, beside the session and in no widget: time, rail, place, theme.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How the visible span moves (fit, follow, or staying put) is told in rw-time-span.h.
 *
 * Properties: session, rail, place, hovered, theme, mode, chart, text-scale, horizon (all with
 * EXPLICIT_NOTIFY), and start, end, follow, fit, which are set through the functions below.
 *
 * Signal "changed": anything changed; once for each call that changed something.
 */
#pragma once

#include "rw-session.h"
#include "rw-theme.h"
#include "rw-time-span.h"

G_BEGIN_DECLS

typedef enum
{
  RW_VIEW_POSITION, /* every rail on one scale, limits as two straight lines */
  RW_VIEW_VOLTS,    /* the chosen rail alone, in volts */
  RW_N_VIEW_MODES
} RwViewMode;

typedef enum
{
  RW_VIEW_TIME, /* the chart over time */
  RW_VIEW_TRIM, /* the trim map */
  RW_N_VIEW_CHARTS
} RwViewChart;

#define RW_VIEW_MIN_TEXT_SCALE 0.5
#define RW_VIEW_MAX_TEXT_SCALE 8.0

#define RW_TYPE_VIEW (rw_view_get_type ())
G_DECLARE_FINAL_TYPE (RwView, rw_view, RW, VIEW, GObject)

/* @session: (nullable). A new view fits the whole session, in position, at the board, light. */
RwView *rw_view_new (RwSession *session);

/* A view of its own that starts out the same, for a second window or an export. (transfer full) */
RwView *rw_view_dup (RwView *self);

RwSession *rw_view_get_session (RwView *self); /* (nullable) borrowed */
void rw_view_set_session (RwView *self,
                          RwSession *session); /* another session: fits it; unhovers */

/* Seconds up to which the session reaches: its last event or the horizon, whichever is later. */
double rw_view_get_extent (RwView *self);

/* Seconds up to which time is known to reach although no event says so: the clock of a live job,
 * or the whole length of a file being replayed. 0: none. */
double rw_view_get_horizon (RwView *self);
void   rw_view_set_horizon (RwView *self, double seconds);

double   rw_view_get_start (RwView *self);
double   rw_view_get_end (RwView *self);
gboolean rw_view_get_follow (RwView *self);
gboolean rw_view_get_fit (RwView *self);

/* Shows [start, end], clamped to the session; leaves fit unless all of it is shown. Not finite or
 * reversed: ignored. Follows when it reaches the newest event. */
void rw_view_set_span (RwView *self, double start, double end);
void rw_view_set_follow (RwView *self, gboolean follow); /* FALSE also leaves fit */
void rw_view_fit (RwView *self);

/* @factor < 1 looks closer, > 1 shows more. @about: seconds that stay where they are on the
 * picture; while following it is the end that stays. */
void rw_view_zoom (RwView *self, double factor, double about);

/* @share of the visible length, > 0 towards later. */
void rw_view_pan (RwView *self, double share);

const char *rw_view_get_rail (RwView *self); /* interned id, or NULL */
void        rw_view_set_rail (RwView *self, const char *rail); /* (nullable) */
RwPlace     rw_view_get_place (RwView *self);
void        rw_view_set_place (RwView *self, RwPlace place);

guint rw_view_get_hovered (RwView *self); /* number of an event; 0: none */
void  rw_view_set_hovered (RwView *self, guint n);

RwThemeId  rw_view_get_theme (RwView *self);
void       rw_view_set_theme (RwView *self, RwThemeId theme);
RwViewMode rw_view_get_mode (RwView *self);
void       rw_view_set_mode (RwView *self, RwViewMode mode);

/* Which of the two charts is looked at. */
RwViewChart rw_view_get_chart (RwView *self);
void        rw_view_set_chart (RwView *self, RwViewChart chart);

/* Factor on text, lines and markers, clamped to the range above. */
double rw_view_get_text_scale (RwView *self);
void   rw_view_set_text_scale (RwView *self, double scale);

G_END_DECLS
