/* rw-practice-symptoms.h: what somebody standing before a practice cabinet notices.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-practice-model.h"

G_BEGIN_DECLS

/* TRUE when the symptom of that id (data/knowledge) can be seen or heard now. Resets count as
 * long as the last one is at most RW_PRACTICE_WATCH seconds old. */
#define RW_PRACTICE_WATCH 120.0
gboolean rw_practice_symptoms_present (const RwPracticeModel *model, const char *symptom);

/* FALSE for a symptom that the model has nothing to say of. */
gboolean rw_practice_symptoms_knows (const char *symptom);

/* AC volts that reach the loudspeaker's side whatever the volume is set to. */
double rw_practice_symptoms_hum_volts (const RwPracticeModel *model);

/* Heat in a single joint that browns its plug over the years; trade practice: 1.25 W browns
 * nylon, 0.6 W is hot to the finger. */
#define RW_PRACTICE_BROWN_WATTS 0.8

/* Heat that a finger on the reference rail's worst plug, edge connector or screw feels, watts: of
 * the edge connector all its fingers together, each at a distance. */
double rw_practice_symptoms_plug_watts (const RwPracticeModel *model);

G_END_DECLS
