/* rw-decide-question.h: what to do next at a moment of a session, as a question with a short list of answers.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * No widget. All figures come from the advice that the events before the moment give, and from nothing later.
 */
#pragma once

#include "rw-advice.h"
#include "rw-session.h"

G_BEGIN_DECLS

#define RW_DECIDE_OPTIONS 5

/* Expected minutes that differ by less than this count as the same. */
#define RW_DECIDE_AS_GOOD 0.05

typedef struct
{
  const RwCheck *check;     /* NULL: it is a repair */
  const RwCause *repair;    /* NULL: it is a check */
  const char    *title;     /* borrowed */
  double         minutes;   /* of it alone, change of setup included */
  double         expected;  /* minutes until fixed when it is done first */
  char          *why;       /* translated */
  gboolean       again;     /* answered before: done again it costs its minutes and tells nothing new */
  gboolean       suggested; /* by the program */
  gboolean       taken;     /* what was done */
} RwDecideOption;

typedef struct
{
  RwAdvice      *advice;
  GPtrArray     *options;   /* of RwDecideOption, 2 … RW_DECIDE_OPTIONS, by title */
  guint          n_events;  /* that have happened */
  double         t;         /* seconds */
  int            chosen;    /* index, −1: not yet */
} RwDecideQuestion;

/* @before: what has happened so far; @deed: what was done then. NULL when there is nothing to ask: the deed is no check
 * of the knowledge, or the program has nothing to say. (transfer full) (nullable) */
RwDecideQuestion *rw_decide_question_new (RwKnowledge *knowledge, RwSession *before, const RwEvent *deed);
void              rw_decide_question_free (RwDecideQuestion *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwDecideQuestion, rw_decide_question_free)

guint                 rw_decide_question_get_n (const RwDecideQuestion *self);
const RwDecideOption *rw_decide_question_get (const RwDecideQuestion *self, guint i);
const RwDecideOption *rw_decide_question_get_taken (const RwDecideQuestion *self);
const RwDecideOption *rw_decide_question_get_suggested (const RwDecideQuestion *self);
const RwDecideOption *rw_decide_question_get_chosen (const RwDecideQuestion *self); /* (nullable) */

/* Expected minutes that an answer costs more than the best one of the list; never below 0. */
double rw_decide_question_get_lost (const RwDecideQuestion *self, const RwDecideOption *option);

/* "45 min expected in all: the best there is" or "47 min expected in all, 2.1 min more than the best", translated.
 * (transfer full) */
char *rw_decide_question_say (const RwDecideQuestion *self, const RwDecideOption *option);

/* Over the questions that were answered. */
typedef struct
{
  guint  n;
  guint  n_best;    /* answers as good as the program's */
  guint  taken_best; /* what was done was as good */
  double lost;      /* expected minutes that the answers cost more, all together */
  double taken_lost; /* that what was done cost more */
} RwDecideScore;

void  rw_decide_score_add (RwDecideScore *self, const RwDecideQuestion *question);
char *rw_decide_score_say (const RwDecideScore *self); /* translated. (transfer full) */

G_END_DECLS
