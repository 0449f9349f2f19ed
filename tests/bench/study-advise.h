/* study-advise.h: what the program says next, with the screen's budget or with a smaller one.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-advice.h"

typedef struct
{
  RwAdviceKind   kind;
  const RwCheck *check;  /* CHECK */
  const RwCause *repair; /* REPAIR */
  RwBelief      *belief; /* owned */
  double         spent;  /* milliseconds */
} StudyAdvice;

/* @knowledge: restricted to the profile. @screen: all that the window asks for, by rw_advice_new ();
 * else the same beliefs and the same search with the budget of one node of a tree, and no explanations. */
void study_advise (StudyAdvice *out, RwKnowledge *knowledge, RwSession *session, GHashTable *skipped,
                   gboolean screen);
void study_advice_clear (StudyAdvice *self);
