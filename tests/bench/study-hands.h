/* study-hands.h: a technician's hands, eyes and ears at a virtual cabinet; what they do becomes events.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-advice.h"
#include "rw-practice-hands.h"
#include "study-case.h"

typedef struct
{
  const StudyCase *job;
  RwPracticeHands  hands;
  RwPracticeRandom random;
  double           minutes; /* spent: checks, changes of setup, repairs and their proof */
} StudyHands;

/* The cabinet stands there off and cold, board fitted, and nothing has been said. */
void study_hands_init (StudyHands *self, const StudyCase *job);
void study_hands_clear (StudyHands *self);

/* Tells the symptoms that were seen, and some that were not. */
void study_hands_tell_symptoms (StudyHands *self);

/* Takes a check: changes the setup, measures or looks, and adds the event. Returns the outcome, or NULL
 * when this cabinet cannot answer. A value that reads overload has the outcome of the highest values. */
const RwOutcome *study_hands_check (StudyHands *self, const RwCheck *check);

/* Does the repair that mends @cause, tells what came of it and proves it. @knowledge: where the checks
 * that prove it are found. TRUE: no fault and no symptom is left. */
gboolean study_hands_repair (StudyHands *self, const RwKnowledge *knowledge, const RwCause *cause);

/* Power on with the board fitted, and some seconds to see. */
void study_hands_run (StudyHands *self);

/* Leads there; what the display says once it has settled (at most 15 s). FALSE: no such spot. */
gboolean study_hands_read (StudyHands *self, const char *rail, RwPlace place, RwKind kind, RwReading *out);

/* Sets the trim at the board, as the program advises. FALSE: the reference cannot be read there. */
gboolean study_trim_set (StudyHands *self);
