/* rw-compare-private.h: what the files that compare two sessions share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-compare.h"

G_BEGIN_DECLS

/* The last reading of a spot in one setup. */
typedef struct
{
  RwReading           reading;
  const RwMeterFacts *meter; /* (nullable) of the session */
  RwSetup             setup;
  guint               n;
  double              t;
  gboolean            outdated; /* no longer valid at the end */
} RwCompareSpot;

/* One session, walked through. */
typedef struct
{
  RwSession    *session;
  RwBenchState *state;
  GArray       *spots; /* of RwCompareSpot, in the order of their first reading */
  GPtrArray    *sets;  /* of RwTrimSet that tell of a slope, one a place and board */
  GArray       *aged;  /* of gboolean, a set: a repair that fixed something followed */
} RwCompareSide;

void rw_compare_side_init (RwCompareSide *self, RwSession *session);
void rw_compare_side_clear (RwCompareSide *self);

/* "+5 V", "ground", or the bare id. (transfer full) */
char *rw_compare_dup_label (RwProfile *profile, const char *rail);

/* Appends an item for every spot that both have, and a left one for the others. */
void rw_compare_pair_spots (const RwCompareSide *then, const RwCompareSide *now, RwCompareMeters meters, GArray *items,
                            GArray *left);

/* The readings, not the profile, say how @rail follows the reference. */
gboolean rw_compare_tells_slope (const RwTrimSet *set, guint rail);

/* Appends slopes and levels of every rail of which both tell a slope. */
void rw_compare_pair_lines (const RwCompareSide *then, const RwCompareSide *now, RwCompareMeters meters, GArray *items);

/* Fills in p, p_adjusted, result and why of all, and puts them in order. Returns how many were tested. */
guint rw_compare_judge (GArray *items);

/* @meters says, or their names and figures do. */
gboolean rw_compare_same_meter (const RwMeterFacts *a, const RwMeterFacts *b, RwCompareMeters meters);

G_END_DECLS
