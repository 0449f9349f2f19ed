/* rw-practice-faults.h: what can be wrong with a practice cabinet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A fault changes parameters of the model, never a reading: what it shows follows from the physics.
 * Ids are the cause ids of data/knowledge.
 */
#pragma once

#include "rw-practice-model.h"

G_BEGIN_DECLS

/* One fault of a cabinet. */
typedef struct
{
  const char *id;
  double      strength; /* 0: hardly there … 1: as bad as it comes */
} RwPracticeFault;

guint       rw_practice_faults_get_n (void);
const char *rw_practice_faults_get_id (guint index); /* static */
gboolean    rw_practice_faults_has (const char *id);

/* TRUE when this kind of supply, with these rails, can have the fault. */
gboolean rw_practice_faults_fit (const char *id, const RwPracticeParams *params);

/* Strength is clamped to 0 … 1. FALSE, and nothing done, when unknown or it does not fit. */
gboolean rw_practice_faults_apply (const char *id, double strength, RwPracticeParams *params);

G_END_DECLS
