/* practice-fixtures.h: what the tests of the practice cabinet share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-practice-cabinet.h"

/* A shipped profile. (transfer full) */
RwProfile *practice_profile (const char *id);

/* A cabinet with one fault (NULL: none), power off. (transfer full) */
RwPracticeCabinet *practice_cabinet (const char *profile, guint64 seed, const char *fault,
                                     double strength);

/* The same, on for @seconds. */
RwPracticeCabinet *practice_running (const char *profile, guint64 seed, const char *fault,
                                     double strength, double seconds);

/* True volts. */
double practice_dc (RwPracticeCabinet *cabinet, const char *rail, RwPlace place);
double practice_ripple (RwPracticeCabinet *cabinet, const char *rail, RwPlace place);

/* A bare switcher without wiring, load, drift or noise: 5 turns and 12 turns, diodes of 0.40 V
 * and 0.75 V, at the values of the published multi-output model; rails p5, p12, m12. Solved at
 * @volts on p5. */
void practice_bare_switcher (RwPracticeModel *model, double volts);

/* Power off, board out, power on again; @seconds later. */
void practice_pull_board (RwPracticeCabinet *cabinet, double seconds);
