/* rw-projection.h: what a class sees of a job on the projector; no widget.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Everything a teacher has not sent over is private: notes, likely causes, the answer. A hidden rail appears nowhere:
 * the projection reads a session of its own, to which events of hidden rails and private events never come, and looks
 * at it with a view of its own.
 *
 * What was asked for is shown at once, but for a frozen projection: that stays exactly what it was, whatever happens
 * or is asked for meanwhile, until it is let go; then it catches up. Blank works at any time and shows nothing.
 *
 * Signals:
 *  "changed"  there is something else to show
 *  "asked"    what was asked for changed, shown or not (rw_projection_dup_words () says it)
 */
#pragma once

#include "rw-class-trim.h"
#include "rw-job.h"
#include "rw-projection-content.h"

G_BEGIN_DECLS

#define RW_TYPE_PROJECTION (rw_projection_get_type ())
G_DECLARE_FINAL_TYPE (RwProjection, rw_projection, RW, PROJECTION, GObject)

RwProjection *rw_projection_new (void);

/* @job: (nullable): shows nothing. A new job begins with nothing hidden, sent, blank or frozen. */
void   rw_projection_set_job (RwProjection *self, RwJob *job);
RwJob *rw_projection_get_job (RwProjection *self); /* (nullable) borrowed */

/* While nobody looks it does no work, and "changed" is not emitted. */
void     rw_projection_set_open (RwProjection *self, gboolean open);
gboolean rw_projection_get_open (RwProjection *self);

/* --- what the teacher asks for ------------------------------------------------------------------- */

void             rw_projection_set_part (RwProjection *self, RwProjectionPart part);
RwProjectionPart rw_projection_get_part (RwProjection *self);
void             rw_projection_next_part (RwProjection *self); /* wraps round */

/* Only the part, without the values above it; of the values, only the chosen or spotlighted rail. */
void     rw_projection_set_enlarged (RwProjection *self, gboolean enlarged);
gboolean rw_projection_get_enlarged (RwProjection *self);

/* @rail: an id of the profile. */
void     rw_projection_hide_rail (RwProjection *self, const char *rail, gboolean hide);
gboolean rw_projection_is_hidden (RwProjection *self, const char *rail);
void     rw_projection_show_all_rails (RwProjection *self);

void        rw_projection_set_spotlight (RwProjection *self, const char *rail); /* (nullable) */
const char *rw_projection_get_spotlight (RwProjection *self);                   /* (nullable) interned */

void     rw_projection_set_blank (RwProjection *self, gboolean blank);
gboolean rw_projection_get_blank (RwProjection *self);
void     rw_projection_set_frozen (RwProjection *self, gboolean frozen);
gboolean rw_projection_get_frozen (RwProjection *self);

/* Light on dark, or dark on light. Also while frozen: it is how, not what. */
void     rw_projection_set_dark (RwProjection *self, gboolean dark);
gboolean rw_projection_get_dark (RwProjection *self);

/* Sends something private over, or takes it back. One at a time. */
void             rw_projection_send (RwProjection *self, RwProjectionSent what); /* RW_SENT_NOTHING: back */
RwProjectionSent rw_projection_get_sent (RwProjection *self);
gboolean         rw_projection_can_send (RwProjection *self, RwProjectionSent what); /* is there one now? */

/* While somebody is asked what to do next, the next check and the likely causes are not shown, whatever was asked for,
 * and cannot be sent. */
void     rw_projection_set_deciding (RwProjection *self, gboolean deciding);

/* Words for the class in place of the part (@alone), or in its place below the values: a question, calls, a reveal,
 * a step of a lesson. All shown as they are: who calls this keeps hidden things out of it.
 * @title: (nullable); @lines: (nullable) (array zero-terminated=1), each a paragraph;
 * @cells: (nullable) (array zero-terminated=1) texts of a table, row by row, the first row its head;
 * @n_columns: of the table, 0 without. All are copied. */
void     rw_projection_show_text (RwProjection *self, const char *title, const char *const *lines,
                                  const char *const *cells, guint n_columns, gboolean alone);
void     rw_projection_clear_text (RwProjection *self);
gboolean rw_projection_has_text (RwProjection *self);

/* What the class sees now, for the teacher: "The class sees: chart over time · −5 V hidden". (transfer full) */
char *rw_projection_dup_words (RwProjection *self);

/* --- what is shown ------------------------------------------------------------------------------- */

/* Borrowed, until "changed". Empty while blank or without a job. */
const RwProjectionContent *rw_projection_get_content (RwProjection *self);

/* For the pictures of the chart and the trim map. Borrowed. The session and the state hold nothing that may not be
 * seen. (nullable) without a job. */
RwSession    *rw_projection_get_session (RwProjection *self);
RwView       *rw_projection_get_view (RwProjection *self);
RwBenchState *rw_projection_get_state (RwProjection *self);
/* What the trim map shows; of a frozen projection that of then. Borrowed, until "changed". */
const RwClassTrim *rw_projection_get_trim (RwProjection *self);

G_END_DECLS
