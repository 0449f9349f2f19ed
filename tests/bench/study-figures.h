/* study-figures.h: what a study says, in figures and in tables.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "study-run.h"

#define STUDY_DECILES 10

typedef struct
{
  guint  n, fixed, half;
  double first[STUDY_N_MOMENTS];       /* shares of n */
  double among_three[STUDY_N_MOMENTS];
  double first_alike[STUDY_N_MOMENTS]; /* causes that nothing can tell apart count as one */
  guint  gone[STUDY_N_WAYS];           /* cases done this way */
  double minutes[STUDY_N_WAYS];        /* their means; 0 for none */
  double against[STUDY_N_WAYS];        /* mean minutes of the program at the same cases */
  double checks, repairs, again;       /* means, the program */
  double first_there[STUDY_N_WAYS];    /* shares of gone: first before the repair that way */
  double first_against[STUDY_N_WAYS];  /* and by the program at the same cases */
} StudyFigures;

typedef struct
{
  guint  n;
  double stated; /* mean chance stated */
  double right;  /* share */
} StudyDecile;

/* Of one family, and of one fault when @fault is not NULL. */
void study_figures (const Study *study, StudyFamily family, const char *fault, StudyFigures *out);

/* Of every claim of the program in a family: the chance of the leading cause by tenths. */
void study_calibration (const Study *study, StudyFamily family, StudyDecile out[STUDY_DECILES]);

/* Causes that a technician cannot tell apart by anything that can be done at a cabinet. */
gboolean study_alike (const char *a, const char *b);

/* Tables in Markdown. */
void study_append_families (const Study *study, GString *out);
void study_append_ways (const Study *study, GString *out);
void study_append_calibration (const Study *study, GString *out);
void study_append_faults (const Study *study, StudyFamily family, GString *out);
void study_append_alike (GString *out);
void study_append_pairs (const Study *study, GString *out);
void study_append_each_fault (const Study *study, GString *out);
