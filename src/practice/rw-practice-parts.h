/* rw-practice-parts.h: the laws of single parts: a load, a winding, a capacitor, a conductor.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-practice-model.h"

G_BEGIN_DECLS

/* Ohms from screw to finger as they are now: copper at 20 °C warmed by up to 15 K (+0.39 %/K),
 * joints by contact_warm, wandering by `wander`. */
double rw_practice_path_ohms (const RwPracticePath *path, const RwPracticeState *state);

/* Heat at the hottest single spot of a path, watts: its worst finger, its crimp or its screw. */
double rw_practice_path_hot_watts (const RwPracticePath *path, double amps, double warm);

/* Current of a load that draws @amps at @nominal volts, behind @ohms from a source of @volts. The
 * load is a straight line above half its nominal volts, following them by the share @follow, and
 * a resistor below; so the answer is exact. */
double rw_practice_load (double volts, double ohms, double amps, double nominal, double follow);

/* By how much (a share) the followers' windings sink when the reference rail draws @amps, less
 * than its minimum load: sink_share·(1 − amps/minimum)³. */
double rw_practice_sink (const RwPracticeParams *params, double amps);

/* Peak and peak-to-peak of a raw capacitor that gives @amps: peak = √2·VAC·mains − bridge − I·R,
 * peak-to-peak = I/(f·C) with f twice the mains frequency, or once when one diode is open. */
void rw_practice_raw (const RwPracticeRaw    *raw,
                      const RwPracticeParams *params,
                      double                  amps,
                      double                 *peak,
                      double                 *pp);

/* How deep the saw-tooth dips below the @needed volts of a regulator (at most @pp), and what that
 * costs the output on the average (*loss). */
double rw_practice_dropout (double peak, double pp, double needed, double *loss);

/* AC volts that an averaging meter shows of the lowest @depth of a saw-tooth of @pp, the rest
 * being flat: π/(2√2)·(depth²/pp)·(1 − depth/(2·pp))²; 0.278·pp when @depth is @pp. */
double rw_practice_sawtooth_reading (double pp, double depth);

G_END_DECLS
