/* plan-levels.h: large random problems whose checks read a value, and jobs run on them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A check has 2–4 levels; a cause puts the reading at one of them, ± an error with a standard
 * deviation of 0.15–0.35 of a level; in 5 % of cabinets the level is another one. Beliefs are
 * updated by the density of the value read; the look-ahead sees the levels as outcomes.
 */
#pragma once

#include "plan-family.h"
#include "plan-policy.h"

typedef struct _Levels Levels;

Levels          *levels_new (GRand *random, Regime regime, guint n_causes, guint n_checks);
void             levels_free (Levels *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Levels, levels_free)

const RwProblem *levels_get_problem (const Levels *self);

/* One broken cabinet: its cause, and what every check would read. */
typedef struct
{
  guint   cause;
  double *value; /* [n_checks], owned */
} LevelsCase;

LevelsCase levels_draw (const Levels *self, GRand *random);

/* Minutes until a policy has fixed it. */
double levels_run (const Levels *self, const LevelsCase *broken, Policy policy,
                   gconstpointer data);
