/* plan-family.h: random problems of seven families, solved exactly.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Priors are normalised exponentials; minutes are log-uniform. Half of the families have checks
 * that never err, the others miss an abnormal outcome (2–15 %) and raise false alarms (1–8 %).
 */
#pragma once

#include "rw-problem.h"

typedef enum
{
  FAMILY_EXACT_2,     /* 12 causes, 10 checks of two outcomes */
  FAMILY_EXACT_23,    /* 14, 12, of two or three */
  FAMILY_CHAIN,       /* 14, 12: stages in a row, probed between them */
  FAMILY_NOISY_2,     /* 10, 8 */
  FAMILY_NOISY_2_12,  /* 12, 8 */
  FAMILY_NOISY_23,    /* 10, 8 */
  FAMILY_NOISY_CHAIN, /* 10, 8 */
  N_FAMILIES,
} Family;

typedef enum
{
  REGIME_CHEAP, /* checks 1–5 min, repairs 10–60 */
  REGIME_MID,   /* 2–15, 5–60 */
  REGIME_DEAR,  /* 5–30, 2–30 */
  N_REGIMES,
  REGIME_LARGE = N_REGIMES, /* 1–5, 5–60: of the large problems; the families above do not use it */
  N_ALL_REGIMES,
} Regime;

const char *family_title (Family family);
const char *regime_title (Regime regime);
gboolean    family_is_noisy (Family family);

/* (transfer full) */
RwProblem *family_problem (GRand *random, Family family, Regime regime);

/* The same kind of problem of another size. (transfer full) */
RwProblem *family_problem_sized (GRand *random, Family family, Regime regime, guint n_causes,
                                 guint n_checks);

/* What somebody believes who is wrong by one standard deviation of a factor of @chances in
 * priors and in the two error rates of each check (misses, false alarms), and of @minutes in
 * all minutes. (transfer full) */
RwProblem *family_mistaken (GRand *random, const RwProblem *truth, double chances,
                            double minutes);

double random_normal (GRand *random);
double random_log_uniform (GRand *random, double least, double most);

/* The least expected minutes, by dynamic programming over causes left and outcomes seen,
 * written apart from the program's own. Up to 24 causes; the table must fit into memory. */
double family_optimum (const RwProblem *problem);
