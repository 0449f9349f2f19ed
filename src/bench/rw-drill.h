/* rw-drill.h: a drill as a job, and what its end says.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A drill is a practice job like any other: an ordinary session file, with its level and seed in the cabinet's name and
 * in the first note.
 */
#pragma once

#include "rw-job.h"
#include "rw-practice-drill.h"

G_BEGIN_DECLS

/* Draws the drill and begins its job: power on, the complaint noted. @suggestions: FALSE: the job gives no advice.
 * (transfer full) */
RwJob *rw_drill_begin (guint level, guint64 seed, gboolean suggestions, GError **error);

/* (nullable) borrowed: the drill that this job is. */
const RwPracticeDrill *rw_drill_of (RwJob *job);

/* What its player noticed, one sentence. NULL: the job is no drill. (nullable) (transfer full) */
char *rw_drill_dup_complaint (RwJob *job);

/* What came of it. Owned strings, translated. */
typedef struct
{
  char      *faults;  /* what was planted */
  char      *verdict; /* whether the person's was right */
  char      *spent;   /* minutes */
  char      *best;    /* what the advised order would have cost */
  GPtrArray *steps;   /* of char *: that order */
  char      *decided; /* which check decided */
  char      *stopped; /* dangerous things that were stopped; (nullable) none */
} RwDrillEnd;

void rw_drill_end_free (RwDrillEnd *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwDrillEnd, rw_drill_end_free)

/* Works it out in a thread. @verdict: (nullable) cause id that the person says it is. */
void        rw_drill_end_async (RwJob *job, const char *verdict, GCancellable *cancellable, GAsyncReadyCallback callback,
                                gpointer data);
RwDrillEnd *rw_drill_end_finish (RwJob *job, GAsyncResult *result, GError **error); /* (transfer full) */

G_END_DECLS
