/* rw-practice-random.c: chance that comes out alike on every machine.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sources, both placed in the public domain by their authors:
 *
 *  splitmix64    Steele, Lea, Flood: Fast splittable pseudorandom number generators, OOPSLA 2014;
 *                z = (state += 0x9e3779b97f4a7c15), then two rounds of xor-shift and multiply, and
 *                a last xor-shift.
 *  xoshiro256**  Blackman, Vigna: Scrambled linear pseudorandom number generators, ACM TOMS 47
 *                (2021) 36; output rotl (s1·5, 7)·9, period 2^256 − 1. Its authors advise seeding
 *                by splitmix64.
 *
 * Only integers, sums and products of doubles are used: all machines with IEEE 754 doubles agree.
 */
#include "config.h"

#include "rw-practice-random.h"

guint64
rw_practice_splitmix (guint64 *state)
{
  guint64 z = (*state += G_GUINT64_CONSTANT (0x9e3779b97f4a7c15));

  z = (z ^ (z >> 30)) * G_GUINT64_CONSTANT (0xbf58476d1ce4e5b9);
  z = (z ^ (z >> 27)) * G_GUINT64_CONSTANT (0x94d049bb133111eb);
  return z ^ (z >> 31);
}

void
rw_practice_random_seed (RwPracticeRandom *self,
                         guint64           seed)
{
  for (guint i = 0; i < G_N_ELEMENTS (self->s); i++)
    self->s[i] = rw_practice_splitmix (&seed);
}

static guint64
rotl (guint64 x,
      int     by)
{
  return (x << by) | (x >> (64 - by));
}

guint64
rw_practice_random_next (RwPracticeRandom *self)
{
  guint64 *s = self->s;
  const guint64 result = rotl (s[1] * 5, 7) * 9;
  const guint64 t = s[1] << 17;

  s[2] ^= s[0];
  s[3] ^= s[1];
  s[1] ^= s[2];
  s[0] ^= s[3];
  s[2] ^= t;
  s[3] = rotl (s[3], 45);
  return result;
}

double
rw_practice_random_uniform (RwPracticeRandom *self)
{
  return (double)(rw_practice_random_next (self) >> 11) * 0x1p-53;
}

double
rw_practice_random_between (RwPracticeRandom *self,
                            double            lo,
                            double            hi)
{
  return lo + (hi - lo) * rw_practice_random_uniform (self);
}

double
rw_practice_random_gauss (RwPracticeRandom *self)
{
  double sum = -6.0;

  for (guint i = 0; i < 12; i++)
    sum += rw_practice_random_uniform (self);
  return sum;
}
