/* study-rows.h: how often the physics shows an outcome, against what the knowledge says of it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-knowledge.h"
#include "study-job.h"

/* Counts of what cabinets showed. */
typedef struct _StudyRows StudyRows;

StudyRows *study_rows_new (RwKnowledge *knowledge);
void       study_rows_free (StudyRows *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (StudyRows, study_rows_free)

/* Takes every check at a cabinet and, when it has a single fault, counts what it showed. What is
 * believed in the end goes to @out. Safe in threads. */
void study_rows_survey (StudyRows *self, const StudyCase *job, StudyJob *out);

/* The @most rows that cost most bits in all, the worst first, as text; @fault NULL: of all faults. */
void study_rows_append (StudyRows *self, GString *out, const char *fault, guint most);
