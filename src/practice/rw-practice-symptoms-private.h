/* rw-practice-symptoms-private.h: the table of symptoms, kept in two parts.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-practice-symptoms.h"

G_BEGIN_DECLS

typedef struct
{
  const char *id; /* a symptom id of data/knowledge */
  gboolean (*present) (const RwPracticeModel *model);
} RwPracticeSymptomKind;

/* Ends with a NULL id. */
extern const RwPracticeSymptomKind rw_practice_symptoms_rest[];

/* The board is in and runs. */
gboolean rw_practice_symptoms_plays (const RwPracticeModel *model);

/* The watchdog starts the board again several times a second. */
gboolean rw_practice_symptoms_bark (const RwPracticeModel *model);

/* A rail at the board's finger over its nominal; negative when it has the wrong sign. */
double rw_practice_symptoms_board_share (const RwPracticeModel *model, guint rail);

G_END_DECLS
