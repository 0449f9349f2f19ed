/* rw-rail-guess.h: which rail are the leads on? From the value, its sign, what the trim lines predict, what was
 * read before, and what was asked for.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bayes over all spots where a value of this kind can be measured, and "none of these". Two spots are told apart
 * only where what is known of them tells them apart: +12 and +13, or terminals and board, share a value until
 * readings or the trim's lines say otherwise.
 */
#pragma once

#include "rw-bench-state.h"

G_BEGIN_DECLS

/* A guess at least this sure is acted on; below, the program asks. */
#define RW_RAIL_GUESS_SURE 0.95

typedef struct
{
  const char *rail;     /* interned; NULL: none of the spots there are (a mistake, or leads in the air) */
  RwPlace     place;
  gboolean    reversed; /* the leads are the wrong way round on it */
  double      p;        /* posterior */
} RwRailGuess;

typedef struct
{
  const RwBenchState *state;
  const char         *asked_rail;  /* what was asked for next (nullable) */
  RwPlace             asked_place;
  gboolean            place_said;  /* the person said that this is where the leads are put, whatever the rail */
  RwKind              kind;
  double              value, u;    /* settled value, standard uncertainty (total), base units */
  double              u_own;       /* without the meter's common part */
} RwRailGuessInput;

/* Up to @max guesses, the likeliest first, into @out; returns how many, 0 for a value that is none (overload).
 * Their p with those left out sum to 1. O(rails). */
guint rw_rail_guess (const RwRailGuessInput *input, RwRailGuess *out, guint max);

G_END_DECLS
