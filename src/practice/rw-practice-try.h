/* rw-practice-try.h: what would happen if: experiments on a copy of the cabinet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each works on a copy, so nothing moves in the cabinet itself. Volts are magnitudes of the
 * reference rail unless said otherwise.
 */
#pragma once

#include "rw-practice-model.h"

G_BEGIN_DECLS

typedef struct
{
  double   terminal_volts;
  double   board_volts; /* at the board's fingers; NaN with the board out */
  gboolean ticks;
} RwPracticeTry;

/* Powered and running at this warmth (0 … 1). */
RwPracticeTry rw_practice_try_warmth (const RwPracticeModel *model, double warm);

/* Powered, board out, a resistor of @amps across the reference rail's terminals; 0: none. */
RwPracticeTry rw_practice_try_dummy (const RwPracticeModel *model, double amps);

/* Volts that the terminals move per volt that the trim is turned by. */
double rw_practice_try_trim (const RwPracticeModel *model);

/* Volts by which the sound rail falls at the board in a loud passage; 0 when there is no sound
 * rail. */
double rw_practice_try_loud (const RwPracticeModel *model);

G_END_DECLS
