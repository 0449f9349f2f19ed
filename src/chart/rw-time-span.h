/* rw-time-span.h: the visible stretch of a session, and how it moves. Pure functions.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   fit      the whole session is always visible; the end grows in round steps as the session grows
 *   follow   the length stays, the end stays just past the newest event (fit implies follow)
 *   neither  the span stays where it was put
 *
 * Panning or zooming leaves fit; panning away from the newest event leaves follow, panning back
 * to it takes it up again; zooming out to the whole session takes fit up again.
 *
 * Invariants: RW_TIME_SPAN_SHORTEST ≤ end − start; 0 ≤ start; end ≤ rw_time_span_fit_end (extent).
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define RW_TIME_SPAN_SHORTEST 5.0 /* seconds: no closer zoom */
#define RW_TIME_SPAN_EMPTY 60.0   /* seconds shown of a session with nothing in it */

typedef struct
{
  double   start, end; /* seconds since the session started */
  double   extent;     /* seconds up to which the session reaches */
  gboolean follow, fit;
} RwTimeSpan;

/* Fits an empty session. */
RwTimeSpan rw_time_span_make (void);

/* Where fit ends for a session of that extent: a round time a little past it. */
double rw_time_span_fit_end (double extent);

/* Each returns what the span is afterwards. Numbers that are not finite, or reversed, change
 * nothing. */
RwTimeSpan rw_time_span_with_extent (RwTimeSpan span,
                                     double extent); /* the session grew or shrank */
RwTimeSpan rw_time_span_moved (RwTimeSpan span, double start, double end);
RwTimeSpan rw_time_span_following (RwTimeSpan span, gboolean follow); /* FALSE also leaves fit */
RwTimeSpan rw_time_span_fitted (RwTimeSpan span);

/* @factor < 1 looks closer, > 1 shows more. @about: seconds that stay where they are on the
 * picture; while following it is the end that stays. */
RwTimeSpan rw_time_span_zoomed (RwTimeSpan span, double factor, double about);

/* @share of the visible length, > 0 towards later. */
RwTimeSpan rw_time_span_panned (RwTimeSpan span, double share);

G_END_DECLS
