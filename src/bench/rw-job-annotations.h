/* rw-job-annotations.h: the annotations of a replayed job.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-annotations.h"
#include "rw-job.h"

G_BEGIN_DECLS

/* Read when first asked for; follow its "changed". NULL unless @job is a replay. (nullable) borrowed */
RwAnnotations *rw_job_get_annotations (RwJob *job);

/* A session that a lesson brings is shared by every class: what is written on it stands in the user's data folder, and
 * each class begins without the calls of the one before. To be said before anything else asks for the annotations. */
void     rw_job_begin_class (RwJob *job);
gboolean rw_job_began_class (RwJob *job);

/* Writes one on the present moment of the replay, on the event that happened in it if there is one. */
gboolean rw_job_annotate (RwJob *job, const char *by, const char *text, GError **error);

/* Takes in what another file says on the session, and says how much that was, what of it was damaged, or why nothing came
 * (FALSE). *words: (transfer full) */
gboolean rw_job_take_in_annotations (RwJob *job, const char *path, char **words);

/* To the moment of an annotation; the replay pauses. */
void rw_job_show_annotation (RwJob *job, const RwAnnotation *annotation);

G_END_DECLS
