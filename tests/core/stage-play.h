/* stage-play.h: sessions for the tests of stages, written as a line of short commands.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "fixtures.h"
#include "rw-stages.h"

/* Commands, with semicolons between; each takes one second:
 *   on off in out       setup; several in one command are one event
 *   r RAIL PLACE VALUE  a reading of meter m1, step 1 mV; "ac" for ripple, "o RAIL PLACE" for overload
 *   trim                fixed CAUSE   failed CAUSE
 *   a QUESTION yes|no   an answer
 *   y SYMPTOM           seen; absent SYMPTOM   not there; gone SYMPTOM   cured
 *   s STAGE             read STAGE   against STAGE WORDS
 *   t SECONDS           the clock stands there
 *   undo                retracts the event before
 * The profile: +5 V (4.90 to 5.20, bare 4.75 to 5.40, never above 5.5, ripple 0.05), +12 V (bare 10.8 to 13.2, never 15),
 * −5 V (bare −6.5 to −4.5, never 7, guards memory); a switcher. */
RwSession *stage_play_session (const char *commands);

/* What the stages are at @now, or after the last event if that is later. (transfer full) */
RwStages *stage_play (const char *commands, double now);
/* The same on a linear supply. */
RwStages *stage_play_linear (const char *commands, double now);

RwProfile *stage_play_profile (void);
/* +12 V is the reference of this one. */
RwProfile *stage_play_profile_12 (void);

/* The reason of that id, covered or not. (nullable) */
const RwGateReason *stage_play_find (const RwStages *stages, RwStage stage, const char *id);
