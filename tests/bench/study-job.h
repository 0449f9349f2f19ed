/* study-job.h: a job at a virtual cabinet, done by a technician who follows the program or a list.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-belief.h"
#include "study-case.h"

/* More than any job takes. */
#define STUDY_MAX_STEPS 200

/* What the technician goes by. */
typedef enum
{
  STUDY_PROGRAM,       /* the advice, with a smaller budget than the window's */
  STUDY_SCREEN,        /* the advice as the window asks for it */
  STUDY_LIST_FILES,    /* every check in the order of the knowledge's files */
  STUDY_LIST_MINUTES,  /* the same, the shortest first */
  STUDY_LIST_TRADE,    /* as a careful technician works: looking, supply alone, board in, drops, joints */
  STUDY_N_WAYS
} StudyWay;

const char *study_way_get_label (StudyWay way);

/* When the beliefs are looked at. */
typedef enum
{
  STUDY_AFTER_SYMPTOMS,
  STUDY_AFTER_THREE,    /* three checks, or the first repair when that comes sooner */
  STUDY_BEFORE_REPAIR,  /* the first one */
  STUDY_AFTER_ALL,      /* every check taken that the cabinet can answer; from the survey */
  STUDY_N_MOMENTS
} StudyMoment;

/* A belief said aloud: the chance of the leading cause, and whether it is (still) there. */
typedef struct
{
  double   p;
  gboolean right;
} StudyClaim;

typedef struct
{
  gboolean    fixed;      /* every fault is gone and no symptom is left */
  gboolean    half;       /* symptoms are gone but a second fault is left */
  guint       n_checks, n_repairs, n_skipped;
  guint       n_again;    /* repairs that were suggested again though they had been no cure */
  double      minutes;
  guint       rank[STUDY_N_MOMENTS];  /* of the fault (the better one of two), 1 is first; 0: not known */
  const char *first[STUDY_N_MOMENTS]; /* id of the leading cause */
  guint       own_rank[STUDY_MAX_FAULTS]; /* of each fault, before the first repair; 0: none was done */
  gboolean    mended[STUDY_MAX_FAULTS];   /* in the end */
  guint       rest_rank; /* of the fault that is left when one of two was mended, among causes whose repair was not
                          * tried, before the next repair; 0: there was none */
  StudyClaim  claims[STUDY_MAX_STEPS];
  guint       n_claims;
  double      slowest;    /* milliseconds of the slowest advice */
  double      advising;   /* milliseconds of all of them */
  guint       n_advised;
  GString    *log;        /* a line a step; NULL unless asked for */
} StudyJob;

/* @knowledge: whole. @log: keep a protocol. */
void study_job_run (StudyJob *out, const StudyCase *job, StudyWay way, RwKnowledge *knowledge,
                    gboolean log);
void study_job_clear (StudyJob *self);

/* Rank and leader at a moment, once. */
void study_job_look_at (StudyJob *self, const StudyCase *job, RwBelief *belief, StudyMoment moment);
