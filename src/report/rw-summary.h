/* rw-summary.h: what a session shows, gathered once, so that text and JSON say the same.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-advice.h"
#include "rw-journal-reader.h"

G_BEGIN_DECLS

/* A plain value, read-only once made. */
typedef struct
{
  RwSession    *session;
  RwBenchState *state;
  RwAdvice     *advice;        /* (nullable): made without knowledge */
  guint         n_events;      /* all read, retracted and not understood ones too */
  guint         n_readings;    /* readings kept, live and retracted alike */
  guint         n_samples;     /* samples, live and retracted alike */
  guint         n_unknown;     /* events not understood */
  guint         n_retracted;   /* events that a live retract names */
  double        seconds;       /* of the last event, since the session's start */
  GArray       *skipped_lines; /* of guint: damaged lines, rising; the header is line 1 */
  gboolean      torn_tail;     /* the file ended in the middle of a line */
} RwSummary;

/* Of a session in memory. @knowledge: (nullable): whole or restricted; without it causes and next
 * checks stay empty. Refs what it keeps: the session must not change while the summary lives.
 * (transfer full) O(events). */
RwSummary *rw_summary_new (RwSession *session, RwKnowledge *knowledge);

/* Of a session file, its damage included. (transfer full) */
RwSummary *rw_summary_new_from_read (const RwJournalRead *read, RwKnowledge *knowledge);

void rw_summary_free (RwSummary *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwSummary, rw_summary_free)

/* Checks worth naming next, the suggested one first: its alternatives are those that save minutes
 * too. Alternatives on the mains side, near the picture tube or for trained people only are left
 * out: such a check is never named without its hazard, so it stands here only when it is the
 * suggestion itself. Empty when no check pays. (transfer container) (element-type RwAdviceCheck) */
GPtrArray *rw_summary_list_next (const RwSummary *self);

/* The DC readings: one a rail and place, the last live one of each, rails in the order of the
 * profile, then ground, then rails the profile does not have. (transfer container) (element-type
 * RwSpotState) */
GPtrArray *rw_summary_list_rails (const RwSummary *self);

G_END_DECLS
