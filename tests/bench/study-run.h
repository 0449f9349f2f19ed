/* study-run.h: the study itself: many cases, each done in several ways, on two threads.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "study-job.h"
#include "study-rows.h"

typedef struct
{
  guint    n[STUDY_N_FAMILIES]; /* cases of each family; of every pair at most as many as there are */
  guint    every[STUDY_N_WAYS]; /* this way at each such case of a family; 0: never */
  gboolean survey;              /* also take every check at each cabinet, every pair left out */
  gboolean log;                 /* keep protocols of the program's jobs */
} StudyPlan;

typedef struct
{
  StudyCase job;
  StudyJob  done[STUDY_N_WAYS];
  gboolean  gone[STUDY_N_WAYS]; /* done holds something */
} StudyResult;

typedef struct
{
  StudyPlan    plan;
  RwKnowledge *knowledge;
  GPtrArray   *profiles;
  GArray      *pairs;   /* of StudyPair */
  GArray      *results; /* of StudyResult, the families one after the other */
  StudyRows   *rows;    /* NULL without a survey */
  double       seconds; /* by the wall */
} Study;

/* Loads the shipped knowledge and does all of it; the same plan gives the same results whatever the
 * threads do. */
void study_run (Study *out, const StudyPlan *plan);
void study_clear (Study *self);

static inline const StudyResult *
study_result (const Study *self,
              guint        i)
{
  return &g_array_index (self->results, StudyResult, i);
}
