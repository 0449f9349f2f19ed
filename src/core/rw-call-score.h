/* rw-call-score.h: how good calls were: how close, and how sure with reason.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A value. "11.9 ± 0.1" is taken for a normal distribution with mean μ = 11.9 and σ = 0.1 / 1.645, since the caller is
 * 90 % sure of the range; without ± it is a step at 11.9. Its continuous ranked probability score against the reading x is
 *
 *   CRPS = ∫ (F(y) − [y ≥ x])² dy = σ ( z (2 Φ(z) − 1) + 2 φ(z) − 1/√π ),  z = (x − μ)/σ;   |x − μ| for a step
 *
 * in volts, 0 at best (Matheson and Winkler 1976, Management Science 22, 1087; the closed form: Gneiting and Raftery
 * 2007, J. Am. Stat. Assoc. 102, 359, section 4.2). It is proper: over many calls nobody does better than by saying what
 * they truly believe, spread included.
 *
 * Points. So that they run from 0 to 100 and stay proper, the integral is taken over a stretch that is fixed beforehand
 * (threshold weighting: Gneiting and Ranjan 2011, J. Bus. Econ. Stat. 29, 411): the rail's window and once its width on
 * either side, [a, b] = [lo − w, hi + w], w = hi − lo.
 *
 *   points = 100 (1 − ∫ₐᵇ (F(y) − [y ≥ x])² dy / (b − a))
 *
 * With G(z) = z Φ(z)² + 2 Φ(z) φ(z) − Φ(√2 z)/√π, whose derivative is Φ(z)², the integral below x is σ G from a to x, and
 * the one above, of (1 − Φ)² = Φ(−z)², the same mirrored. (Clipping the CRPS at 0 instead would make wild guesses free.)
 * Beyond the stretch all values are alike: "far too low" is one answer.
 *
 * Hands. The shares of lower, same, higher are the class's chances for three outcomes in order. The ranked probability
 * score (Epstein 1969, J. Appl. Meteorol. 8, 985; Murphy 1971, ibid. 10, 155), divided by 2 so that it lies in 0 … 1:
 *
 *   RPS = ((P₁ − O₁)² + (P₁ + P₂ − O₁ − O₂)²) / 2,   points = 100 (1 − RPS)
 *
 * "Same" is what the meter cannot tell from the value last shown: a difference within 1.96 √(u₁² + u₂²), u the own part
 * of each reading's standard uncertainty (the scale error is common to both readings of one meter).
 */
#pragma once

#include "rw-call-predict.h"

G_BEGIN_DECLS

/* σ of a call: @give / 1.645; 0 when @give is NaN. */
double rw_call_sd (double give);

/* ≥ 0, in the unit of the values. @sd ≥ 0. NaN when an argument is. */
double rw_call_crps (double value, double sd, double answer);

/* 0 … 100 for a rail with the window @lo … @hi. NaN when an argument is, or no window is laid down (lo < hi). */
double rw_call_points (double value, double sd, double answer, double lo, double hi);

/* Where the answer lies against what was shown. FALSE: nothing was shown, or there is no answer. */
gboolean rw_call_round_get_side (const RwCallRound *round, RwCallSide *side);

/* 0 … 100; NaN when no hand was raised. */
double rw_call_hands_points (const guint hands[RW_N_CALL_SIDES], RwCallSide side);

/* The window that points of a round are measured by: the limits at its spot. One-sided limits begin at 0. FALSE: none are
 * laid down. */
gboolean rw_call_round_get_window (const RwCallRound *round, const RwProfile *profile, double *lo, double *hi);

/* Points of a call of a round, NaN when it has no answer or no window. */
double rw_call_round_score (const RwCallRound *round, const RwProfile *profile, const RwCall *call);

/* --- over the lesson --------------------------------------------------------------------------- */

typedef enum
{
  RW_CALLER_NAMED,
  RW_CALLER_HANDS,  /* the show of hands */
  RW_CALLER_PROGRAM
} RwCallerKind;

/* One caller over all rounds that have an answer. */
typedef struct
{
  RwCallerKind kind;
  char        *by;     /* owned; NULL unless NAMED */
  guint        n;      /* rounds that they called and that could be scored */
  double       points; /* mean over those, 0 … 100; NaN when n is 0 */
} RwCallStanding;

/* (transfer full) (element-type RwCallStanding) best mean first, more rounds first among equals; callers without a scored
 * round are left out. Works out the program's prediction of every answered round. */
GPtrArray *rw_call_standings (const RwCallBook *book, RwSession *session);

G_END_DECLS
