/* rw-together.h: how surely dips and marks ("reset seen") go together.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * If marks had nothing to do with dips, each would fall anywhere in the watched time with equal chance (a Poisson
 * process of marks, given their number), so the number within the covered share is binomial: exact, and no feeling.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  RW_TOGETHER_TOO_FEW, /* even all of them together could not have shown it at 1 in 100 */
  RW_TOGETHER_NO,      /* p above 5 %: nothing shown */
  RW_TOGETHER_LIKELY,  /* p at most 5 % */
  RW_TOGETHER_SURE,    /* p at most 1 % */
} RwTogetherVerdict;

typedef struct
{
  guint             n_dips, n_marks; /* within the watched time */
  guint             n_hits;          /* marks within @window after a dip */
  double            window;          /* seconds */
  double            share;           /* of the watched time that the windows cover, overlaps once */
  double            p;               /* chance of so many hits or more if they are strangers; 1 when none */
  double            p_best;          /* of all marks' hitting: what could be shown at all */
  RwTogetherVerdict verdict;
} RwTogether;

/* @dips: rising starts; @marks: any order; both in seconds; those outside [@from, @to] are left out. @window > 0 must
 * be chosen before looking (1 s for a key pressed by hand and a meter of a few readings a second). O(n log n). */
RwTogether rw_together_test (const double *dips, guint n_dips, const double *marks, guint n_marks,
                             double from, double to, double window);

/* "All 5 resets came within 1 s of a dip: chance alone does that once in 40 000". (transfer full) */
char *rw_together_describe (const RwTogether *self);

/* The chance of @k or more successes out of @n with chance @p each, summed exactly; 1 for k = 0. */
double rw_binomial_tail (guint k, guint n, double p);

G_END_DECLS
