/* trim-supply.h: simulated supplies with one screw, and a meter on them, for tests of the trim.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Written from the physics alone: it shares no code with the program's practice cabinet.
 */
#pragma once

#include "rw-trim-set.h"

#define SUPPLY_MAX_RAILS 5
#define SUPPLY_MAX_POSITIONS 5

/* V = offset + slope·x, volts; x is rail 0. */
typedef struct
{
  const char *id;
  double      nominal;
  RwFollows   follows; /* what its profile says */
  double      offset, slope;
  double      lo, hi;
} SupplyRail;

/* A meter of ±(percent + counts), its smallest range and its counts. */
typedef struct
{
  double percent, counts;
  double range, full; /* volts of the smallest range; counts of a full range */
  double scale;       /* what it shows for one volt: 1 ± percent, the same for every reading */
} SupplyMeter;

typedef struct
{
  guint       n_rails, n_positions;
  SupplyRail  rails[SUPPLY_MAX_RAILS];
  double      x[SUPPLY_MAX_POSITIONS];
  SupplyMeter meter;
  RwProfile  *profile;
} Supply;

/* 3–5 rails; follows and limits drawn with them. */
void supply_init (Supply *self, guint n_positions, GRand *random);
void supply_clear (Supply *self);

/* What the meter would show without its own error when the reference shows @x. */
double supply_shown (const Supply *self, guint rail, double x);

/* A reading: one of the digits within the counts of what it should show, each as likely. *u: its
 * own standard uncertainty. */
double supply_read (const Supply *self, double shown, double *u, GRand *random);

/* What is known after reading every rail at every position with the chance @share; the reference
 * at the first position always. */
RwTrimSet *supply_measure (const Supply *self, double share, GRand *random);
