/* rw-robust-kendall.c: does one thing rise with another? Kendall's S and Mann's test for a trend.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Var S with ties t in x and u in y (Kendall, Rank Correlation Methods, 4.3–4.4):
 *   [n(n−1)(2n+5) − Σt(t−1)(2t+5) − Σu(u−1)(2u+5)]/18
 *   + Σt(t−1)(t−2) Σu(u−1)(u−2) / (9n(n−1)(n−2)) + Σt(t−1) Σu(u−1) / (2n(n−1))
 * Without ties S = N − 2·inversions, and the number of inversions of a random order of n is that of n − 1 plus a
 * number that is even on 0 … n − 1: so its distribution is built up, exactly but for rounding.
 */
#include "config.h"

#include "rw-robust.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

typedef struct
{
  double pairs, triples, weighed; /* Σt(t−1), Σt(t−1)(t−2), Σt(t−1)(2t+5) */
} Ties;

static int
compare (const void *a,
         const void *b)
{
  const double x = *(const double *) a;
  const double y = *(const double *) b;

  return (x > y) - (x < y);
}

static Ties
count_ties (const double *values,
            guint         n)
{
  g_autofree double *in_order = g_new (double, n + 1);
  Ties ties = { 0 };

  if (n > 0)
    memcpy (in_order, values, n * sizeof *values);
  qsort (in_order, n, sizeof *in_order, compare);
  for (guint i = 0, end; i < n; i = end)
    {
      for (end = i + 1; end < n && !(in_order[end] > in_order[i]);)
        end++;

      const double t = end - i;

      ties.pairs += t * (t - 1);
      ties.triples += t * (t - 1) * (t - 2);
      ties.weighed += t * (t - 1) * (2 * t + 5);
    }
  return ties;
}

static double
variance_of (double      n,
             const Ties *x,
             const Ties *y)
{
  double variance = (n * (n - 1) * (2 * n + 5) - x->weighed - y->weighed) / 18;

  if (n > 2)
    variance += x->triples * y->triples / (9 * n * (n - 1) * (n - 2));
  if (n > 1)
    variance += x->pairs * y->pairs / (2 * n * (n - 1));
  return MAX (variance, 0);
}

/* Chance of at most @most inversions in a random order of @n. */
static double
inversions_at_most (guint n,
                    guint most)
{
  g_autofree double *now = g_new0 (double, most + 1);
  g_autofree double *next = g_new0 (double, most + 1);
  double sum = 0;

  now[0] = 1;
  for (guint size = 2; size <= n; size++)
    {
      for (guint k = 0; k <= most; k++)
        {
          next[k] = 0;
          for (guint j = 0; j < size && j <= k; j++)
            next[k] += now[k - j] / size;
        }
      memcpy (now, next, (most + 1) * sizeof *now);
    }
  for (guint k = 0; k <= most; k++)
    sum += now[k];
  return MIN (sum, 1);
}

static gint64
score (const double *x,
       const double *y,
       guint         n)
{
  gint64 s = 0;

  for (guint i = 0; i < n; i++)
    for (guint j = i + 1; j < n; j++)
      s += ((x[j] > x[i]) - (x[j] < x[i])) * ((y[j] > y[i]) - (y[j] < y[i]));
  return s;
}

RwMannKendall
rw_mann_kendall (const double *x,
                 const double *y,
                 guint         n)
{
  const Ties ties_x = count_ties (x, n);
  const Ties ties_y = count_ties (y, n);
  const double twice = (double) n * (n - 1.0);
  RwMannKendall self = { .s = score (x, y, n), .variance = variance_of (n, &ties_x, &ties_y), .p_normal = 1 };
  const gint64 size = ABS (self.s);

  self.tau_a = n > 1 ? 2 * (double) self.s / twice : (double) NAN;
  self.tau_b = 2 * (double) self.s / sqrt ((twice - ties_x.pairs) * (twice - ties_y.pairs));
  if (size > 0 && self.variance > 0)
    self.z = (self.s > 0 ? 1 : -1) * ((double) size - 1) / sqrt (self.variance);
  self.p_normal = erfc (fabs (self.z) / M_SQRT2);
  self.exact = n > 1 && n <= RW_MANN_KENDALL_EXACT && !(ties_x.pairs > 0) && !(ties_y.pairs > 0);
  self.p_one_exact = self.p_two_exact = (double) NAN;
  if (self.exact)
    {
      self.p_one_exact = inversions_at_most (n, (guint) ((gint64) n * (n - 1) / 2 - size) / 2);
      self.p_two_exact = size == 0 ? 1 : MIN (2 * self.p_one_exact, 1);
    }
  return self;
}
