/* plan-fixtures.h: what the tests of problems and plans share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-plan-search.h"
#include "rw-plan-tree.h"

/* Full path of a file of tests/advice. (transfer full) */
char *fixture_path (const char *name);

/* A problem of one of the collections there, which must be good. */
RwProblem *fixture_problem (const char *collection, guint index);

/* An answer that the collection gives for it. */
double fixture_answer (const char *collection, guint index, const char *key);

/* Fills a problem from plain tables. @chance: [outcome][cause] one row after another. */
void fixture_cause (RwProblem *problem, guint index, double weight, double minutes);
void fixture_check (RwProblem *problem, guint index, double minutes, guint n_outcomes,
                    const double *chance);

/* Random but repeatable: checks of two or three outcomes; @exact: without errors. */
RwProblem *fixture_random_problem (GRand *random, guint n_causes, guint n_checks, gboolean exact);

/* E12 of the worked examples: fuse, regulator, capacitor, transistor, connector; Vin, Vout, ohm. */
RwProblem *fixture_bench_example (void);

/* E17: two causes, six independent readings that are each right with 0.7. */
RwProblem *fixture_myopic_trap (void);

/* Expected minutes of a plan in its JSON form, worked out cause by cause from the problem
 * alone. Fails when the plan leaves a cause unrepaired, takes a check twice or names what is
 * not there. */
double fixture_plan_cost (const char *json, const RwProblem *problem);

/* The optimum by trying everything, without any table: for very small problems. */
double fixture_brute_force (const RwProblem *problem, const RwPlanState *state);

/* Solves the whole problem into JSON. (transfer full) */
char *fixture_solve (const RwProblem *problem, const RwPlanBudget *budget,
                     const RwPlanLimits *limits);
