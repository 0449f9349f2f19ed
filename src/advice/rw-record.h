/* rw-record.h: which causes one restorer's closed jobs had, and what that makes of the chances.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each job counts once, under its own name, with the causes confirmed in it; when the job is opened again and its
 * end changes, its line here changes with it.
 */
#pragma once

#include "rw-bench-state.h"
#include "rw-knowledge.h"

G_BEGIN_DECLS

typedef enum
{
  RW_RECORD_ERROR_READ,   /* the file could not be read */
  RW_RECORD_ERROR_FORMAT, /* damaged; it was set aside where that was possible */
  RW_RECORD_ERROR_WRITE,
} RwRecordError;
#define RW_RECORD_ERROR (rw_record_error_quark ())
GQuark rw_record_error_quark (void);

/* How many jobs the shipped chances are worth against the restorer's own. */
#define RW_RECORD_SHIPPED_JOBS 30

typedef struct _RwRecord RwRecord;

RwRecord *rw_record_new (void); /* empty */
void      rw_record_free (RwRecord *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwRecord, rw_record_free)

/* Job @job ended in the repair of @cause; NULL: no cause was confirmed, and it counts no more. TRUE when that
 * changed anything. */
gboolean rw_record_set (RwRecord *self, const char *job, const char *cause);

/* The same from the state of the job: the repair that fixed it and was not contradicted later. */
gboolean rw_record_take (RwRecord *self, const char *job, const RwBenchState *state);

guint rw_record_get_count (const RwRecord *self, const char *cause); /* jobs with that cause */
guint rw_record_get_n_jobs (const RwRecord *self);                   /* jobs with any */

/* record.json in the user's data folder. (transfer full) */
char *rw_record_dup_path (void);

/* No file yet: an empty record. A damaged file is renamed to end in ".damaged", *error says so, and the record is
 * empty: never NULL. Where a file could not be read or renamed the record is not written over it. (transfer full) */
RwRecord *rw_record_load (const char *path, GError **error);

/* Atomically; makes the folder. FALSE with *error. */
gboolean rw_record_save (const RwRecord *self, const char *path, GError **error);

/* The knowledge with priors (a·p_i + n_i) / (a + N): p_i the shipped chance among listed causes, n_i of N jobs of
 * the record had it, a = RW_RECORD_SHIPPED_JOBS (the mean of a Dirichlet distribution). Broad causes keep their
 * share, and jobs whose cause the knowledge does not have count for nothing. @record NULL or empty: @knowledge
 * itself. (transfer full) */
RwKnowledge *rw_knowledge_with_record (RwKnowledge *knowledge, const RwRecord *record);

G_END_DECLS
