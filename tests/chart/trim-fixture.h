/* trim-fixture.h: made-up trim sets for the tests of the trim map.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-trim-map.h"

/* Rails by index: 0 +5 V (reference, 4.90 to 5.20), 1 +12 V (11.4 to 12.6), 2 −5 V (−5.25 to
 * −4.75), 3 −12 V (−13.2 to −10.8). */
#define FIXTURE_RAILS 4

/* Three positions of all rails but −12 V, which was read at none of them; at the second +12 V is
 * missing. Inside somewhere. Events are numbered from 11 up in the order position by position. */
RwTrimSet *fixture_trim_usual (void);

/* −5 V needs about 5.31 V on the reference, +12 V allows about 5.12 V. */
RwTrimSet *fixture_trim_conflict (void);

/* One position, no −5 V: lines from what profiles say. */
RwTrimSet *fixture_trim_once (void);

/* Five positions; the reading of −5 V at the third (event 21) is far off. */
RwTrimSet *fixture_trim_outlier (void);

/* Only −5 V was read. */
RwTrimSet *fixture_trim_untied (void);

/* All four rails at the terminals, board out, six positions. */
RwTrimSet *fixture_trim_full (void);

/* @values: FIXTURE_RAILS a position, NaN for none. */
RwTrimSet *fixture_trim_of (RwPlace place, RwSaid board, const double *values, guint n_positions);

/* A map of @set, which it takes, 860 × 330, with guessed text sizes. */
RwTrimMap *fixture_trim_map (RwTrimSet *set);

/* The meter is on @rail and shows @value. */
void fixture_trim_live (RwTrimMap *map, guint rail, double value);

/* The sets that make a picture. */
typedef RwTrimSet *(*FixtureTrimFunc) (void);
#define FIXTURE_TRIM_DRAWN 5
extern const FixtureTrimFunc fixture_trim_drawn[FIXTURE_TRIM_DRAWN];
