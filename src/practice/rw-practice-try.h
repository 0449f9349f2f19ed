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
  double   board_ripple; /* AC there, averaging meter; 0 with the board out */
  gboolean ticks;
} RwPracticeTry;

/* Powered and running at this warmth (0 … 1). */
RwPracticeTry rw_practice_try_warmth (const RwPracticeModel *model, double warm);

/* Volts of the reference rail at the far chip, running at this warmth on this share of the mains
 * that there are now. */
double rw_practice_try_chip (const RwPracticeModel *model, double warm, double mains);

/* Powered, board out, a resistor of @amps across the reference rail's terminals; 0: none. */
RwPracticeTry rw_practice_try_dummy (const RwPracticeModel *model, double amps);

/* Running as it is now, with that share of the reference's load and all of the sound's unplugged;
 * 0: none. */
RwPracticeTry rw_practice_try_split (const RwPracticeModel *model, double share);

/* Heat in the supply over what is usual: of a switcher the watts that it gives, measured by what it
 * can give, of a linear one those in its regulator. 0 while it gives nothing. */
double rw_practice_try_heat (const RwPracticeModel *model);

/* Volts that the terminals move per volt that the trim is turned by. */
double rw_practice_try_trim (const RwPracticeModel *model);

/* Volts by which the sound rail falls at the board in a loud passage; 0 when there is no sound
 * rail. */
double rw_practice_try_loud (const RwPracticeModel *model);

/* Volts that it may fall by in good order. */
double rw_practice_try_loud_usual (const RwPracticeModel *model);

G_END_DECLS
