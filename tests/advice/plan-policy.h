/* plan-policy.h: what following a rule costs, and simple rules to compare with.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-plan-search.h"

typedef struct
{
  RwActionKind kind;
  guint        index;
} PolicyMove;

/* What is done in a state; weight is left in it. */
typedef PolicyMove (*Policy) (const RwProblem *problem, const RwPlanState *state,
                              gconstpointer data);

/* Expected minutes of following @policy until fixed, over all outcomes. The policy sees
 * @believed, the cabinet is @truth; both have the same causes, checks and outcomes. Branches
 * come to with a chance below 1e-6 are repaired through. */
double policy_cost (const RwProblem *believed, const RwProblem *truth, Policy policy,
                    gconstpointer data);

/* data: an RwPlanBudget. What the program does. */
PolicyMove policy_search (const RwProblem *problem, const RwPlanState *state, gconstpointer data);

/* The rules compared with; data: NULL. "Gated": only checks that lower the one-step cost. */
PolicyMove policy_cheapest (const RwProblem *problem, const RwPlanState *state, gconstpointer data);
PolicyMove policy_likeliest (const RwProblem *problem, const RwPlanState *state,
                             gconstpointer data);
PolicyMove policy_gain_sure (const RwProblem *problem, const RwPlanState *state,
                             gconstpointer data); /* until 95 % sure, or nothing tells 0.005 bit */
PolicyMove policy_gain (const RwProblem *problem, const RwPlanState *state, gconstpointer data);
PolicyMove policy_gain_per_minute (const RwProblem *problem, const RwPlanState *state,
                                   gconstpointer data);
PolicyMove policy_one_step (const RwProblem *problem, const RwPlanState *state,
                            gconstpointer data); /* Heckerman, Breese & Rommelse 1995 */

/* Four steps ahead, 10 candidates weighed, 4 checks and 1 repair followed, at every node; the
 * yardstick for problems that nobody can solve. */
PolicyMove policy_four_step (const RwProblem *problem, const RwPlanState *state,
                             gconstpointer data);

/* What a rule costs above the optimum, over many problems, in per cent. */
typedef struct
{
  double mean, p95, worst;
  double within; /* share within 1 % */
} PolicySummary;

/* Sorts @percent. */
PolicySummary policy_sum_up (double *percent, guint n);
