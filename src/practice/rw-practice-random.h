/* rw-practice-random.h: chance that comes out alike on every machine.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* xoshiro256** state; a plain value, copy it to fork a stream. Never all zero. */
typedef struct
{
  guint64 s[4];
} RwPracticeRandom;

/* One step of splitmix64: moves *state on and returns 64 mixed bits. */
guint64 rw_practice_splitmix (guint64 *state);

/* Fills the state with four splitmix64 numbers, so that seeds 1, 2, 3 give unlike streams. */
void rw_practice_random_seed (RwPracticeRandom *self, guint64 seed);

/* 64 random bits. */
guint64 rw_practice_random_next (RwPracticeRandom *self);

/* In [0, 1), from the upper 53 bits. */
double rw_practice_random_uniform (RwPracticeRandom *self);

/* In [lo, hi). */
double rw_practice_random_between (RwPracticeRandom *self, double lo, double hi);

/* Mean 0, variance 1, never beyond ±6: the sum of twelve uniforms less six (Irwin–Hall). No libm
 * call, so the digits do not depend on whose libm it is. */
double rw_practice_random_gauss (RwPracticeRandom *self);

G_END_DECLS
