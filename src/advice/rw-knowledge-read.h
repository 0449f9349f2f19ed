/* rw-knowledge-read.h: one entry out of a knowledge file. For rw-knowledge alone.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-keys.h"
#include "rw-knowledge.h"

G_BEGIN_DECLS

/* New entries, reference-counted (g_atomic_rc_box). NULL with an error that names file and key. */
RwSymptom  *rw_symptom_read (const RwKeys *keys, GError **error);
RwCause    *rw_cause_read (const RwKeys *keys, GError **error);
RwCheck    *rw_check_read (const RwKeys *keys, GError **error);
RwComputed *rw_computed_read (const RwKeys *keys, GError **error);

void rw_symptom_unref (RwSymptom *self);
void rw_cause_unref (RwCause *self);
void rw_check_unref (RwCheck *self);
void rw_computed_unref (RwComputed *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwSymptom, rw_symptom_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwCause, rw_cause_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwCheck, rw_check_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwComputed, rw_computed_unref)

/* A copy with another prior, reference-counted alike. */
RwCause *rw_cause_copy (const RwCause *cause, double prior);

/* Shared by the readers. */

/* An object below @outer. @where is the caller's, for as long as @keys is read. */
gboolean rw_read_object (const RwKeys *outer, const char *key, char **where, RwKeys *keys, GError **error);

/* Required text, translated; NULL on error. (transfer full) */
char *rw_read_text (const RwKeys *keys, const char *key, GError **error);

/* Optional text, translated, "" when missing; NULL on error. (transfer full) */
char *rw_read_optional_text (const RwKeys *keys, const char *key, GError **error);

/* Optional list of texts, translated; NULL on error. (transfer full) */
char **rw_read_texts (const RwKeys *keys, const char *key, GError **error);

/* Optional list of ids, interned, NULL-terminated; the array is the caller's. NULL on error. */
const char **rw_read_ids (const RwKeys *keys, const char *key, GError **error);

/* "outcomes", 2 … RW_PROBLEM_MAX_OUTCOMES of them. @of_value: they tile the real line. What was read is the
 * caller's even on error. */
gboolean rw_outcomes_read (RwOutcome **outcomes, guint *n_outcomes, const RwKeys *keys, gboolean of_value,
                           GError **error);
void     rw_outcomes_free (RwOutcome *outcomes, guint n);

/* "needs": rails and supply. */
gboolean rw_read_needs (const RwKeys *keys, const char ***rails, const char **supply,
                        GError **error);

gboolean rw_read_hazard (const RwKeys *keys, RwHazard *hazard, RwWho *who, GError **error);
gboolean rw_read_published (const RwKeys *keys, gboolean *published, GError **error);

/* "chance": rows of @n_outcomes; for 1 the rows are plain numbers and need not sum to 1. */
gboolean rw_chance_table_read (RwChanceTable *self, const RwKeys *keys, guint n_outcomes,
                               GError **error);
void     rw_chance_table_clear (RwChanceTable *self);

G_END_DECLS
