/* study-case.h: the virtual cabinets that the study of the diagnosis is made with.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-practice-cabinet.h"
#include "study-pairs.h"

#define STUDY_MAX_FAULTS 2
#define STUDY_MAX_SYMPTOMS 40

/* How the faults of a family are drawn. */
typedef enum
{
  STUDY_AS_THEY_COME, /* as often as they come into a workshop */
  STUDY_EACH_ALIKE,   /* each fault as often as any other */
  STUDY_PAIRS,        /* two faults at once, each as often as it comes in */
  STUDY_EVERY_PAIR,   /* every two that one supply can have, one pair after the other */
  STUDY_N_FAMILIES
} StudyFamily;

const char *study_family_get_label (StudyFamily family);

/* A cabinet with something to complain of. A plain value; strings are static or interned. */
typedef struct
{
  StudyFamily     family;
  guint           index;
  RwProfile      *profile; /* borrowed from the profiles */
  guint64         seed;
  RwPracticeFault faults[STUDY_MAX_FAULTS];
  guint           n_faults;
  double          percent, counts; /* the meter's specification */
  guint           full_counts;
  gboolean        shows;           /* a symptom, or a rail outside its limits */
  guint           redrawn;         /* times that a draw showed nothing */
  const char     *symptoms[STUDY_MAX_SYMPTOMS]; /* seen cold or warm */
  guint           n_symptoms;
  gboolean        plays;           /* the game ran while it was watched warm */
} StudyCase;

/* The shipped profiles, sorted by id. (transfer full) (element-type RwProfile) */
GPtrArray *study_profiles_new (void);

/* The same family and index give the same case on every machine. @pairs: of the profiles, by study_pairs_new (). */
void study_case_draw (StudyCase *out, StudyFamily family, guint index, GPtrArray *profiles, const GArray *pairs);

/* (transfer full) Off, cold, fitted. */
RwPracticeCabinet *study_case_open (const StudyCase *self);

gboolean study_case_has (const StudyCase *self, const char *fault);
