/* rw-verdict.h: is a value within its limits, and how sure is that?
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * JCGM 106:2012 clauses 7 and 8, ISO 14253-1: with value y and standard uncertainty u the chance of
 * being inside is Φ((hi − y)/u) − Φ((lo − y)/u).
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  RW_VERDICT_NONE,    /* no limits are laid down, or no value */
  RW_VERDICT_INSIDE,  /* chance inside ≥ 0.95 */
  RW_VERDICT_CLOSE,   /* too close to call */
  RW_VERDICT_OUTSIDE, /* chance beyond ≥ 0.95 */
  RW_VERDICT_BLIND,   /* limits closer than 3.92 u: no reading of this meter could show it */
  RW_N_VERDICTS
} RwVerdict;

#define RW_VERDICT_SURE 0.95

/* Standard normal distribution function, accurate in both tails. */
double rw_normal_cdf (double z);

/* 0…1. lo may be −INFINITY, hi INFINITY. u = 0: a step. */
double rw_chance_inside (double value, double u, double lo, double hi);

/* NaN value: RW_VERDICT_NONE. A value far outside is OUTSIDE even for a meter too coarse to prove
 * "inside"; BLIND is for the rest of such cases. */
RwVerdict rw_verdict_judge (double value, double u, double lo, double hi);

const char *rw_verdict_to_id (RwVerdict verdict);     /* "inside", "close", "outside", "blind", "none" */
const char *rw_verdict_get_label (RwVerdict verdict); /* translated word */
const char *rw_verdict_get_glyph (RwVerdict verdict); /* ● ◐ ▲ ⊘ – */

G_END_DECLS
