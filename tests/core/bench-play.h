/* bench-play.h: a session out of a few words, and the ids of what is warned of then.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words between semicolons, each three seconds after the one before:
 *   on, off, fitted, out, warm   setup
 *   turn, fixed, vain            the trim, a repair that helped or did not
 *   find, seen, note             a finding, a symptom, a note
 *   undo                         takes the last reading back
 *   wait SECONDS
 *   m1 … m3, nobody              whose readings follow; m1, m2: ±(0.5 % + 2), m3: ±(0.05 % + 3)
 *   step VOLTS                   value of the last digit of the readings that follow; 0.001 at first
 *   low                          the next reading says that the battery is low
 *   RAIL PLACE VALUE [KIND]      a reading; OL for overload
 */
#pragma once

#include "rw-mistakes.h"

/* FIXTURE_PROFILE, @profile NULL. */
RwSession *bench_play (const char *script, const char *profile);

/* "never-above wrong-terminal", in their order; "" for none. (transfer full) */
char *bench_ids (const RwBenchState *state);

/* Adds what @script says to a session that there is. */
void bench_go_on (RwSession *session, const char *script);

/* Each warning is about a live reading or turn, is told once, has words, and stands in order. */
void bench_assert_sound (RwSession *session, const RwBenchState *state);

typedef struct
{
  const char *claim;
  const char *script;
  const char *ids;  /* of all warnings, "" for none */
  const char *says; /* in the words of the first; NULL: no matter */
} BenchCase;

/* Plays each; a warning must be about a reading or a turn of the script, and go when that is taken back. */
void bench_check (const BenchCase *cases, guint n, const char *profile);
