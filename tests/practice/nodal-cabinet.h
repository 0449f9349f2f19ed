/* nodal-cabinet.h: a cabinet's circuit drawn anew from its parameters, and solved by nodal analysis.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-practice-model.h"

typedef struct
{
  double fold;
  double ground; /* volts of the board's ground above the supply's 0 V */
  double terminal[RW_PRACTICE_MAX_RAILS], finger[RW_PRACTICE_MAX_RAILS]; /* above the supply's 0 V */
  double chip[RW_PRACTICE_MAX_RAILS]; /* above the board's ground */
} NodalAnswer;

/* Takes parameters, and of the state only what moves slowly: power, level, warmth, wanderings, load step. FALSE: it did
 * not settle. */
gboolean nodal_cabinet_solve (const RwPracticeParams *params, const RwPracticeState *state, NodalAnswer *out);
