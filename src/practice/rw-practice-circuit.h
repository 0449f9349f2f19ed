/* rw-practice-circuit.h: the circuit of a cabinet at one instant.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-practice-model.h"

G_BEGIN_DECLS

/* Fills state.flow, fold, ground_volts and the raw capacitor from parameters and state; moves no
 * time. */
void rw_practice_circuit_solve (RwPracticeModel *model);

/* TRUE when the supply ticks: a switcher far below its minimum load. */
gboolean rw_practice_circuit_ticks (const RwPracticeModel *model);

/* Where the loop holds the reference rail's terminals at @amps, as long as the supply can. Volts. */
double rw_practice_circuit_regulated (const RwPracticeModel *model, double amps);

/* AC volts of an averaging meter at a solved spot. @rail: index, −1 for the ground return. */
double rw_practice_circuit_ripple (const RwPracticeModel *model, int rail, RwPlace place);

/* The same at the board, without the switching frequency, which no ear hears. */
double rw_practice_circuit_hum (const RwPracticeModel *model, guint rail);

G_END_DECLS
