/* rw-together.c: how surely dips and marks ("reset seen") go together.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Given their number, the marks of a Poisson process fall evenly over the watched time, each for itself: the number
 * within the union of the windows after dips is binomial with the share that the union covers. The dips may come as
 * they like. p = P(at least as many) is exact; being of a count, it is at most as often below a level as the level says.
 */
#include "config.h"

#include "rw-together.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

static const double sure_below = 0.01;
static const double likely_below = 0.05;

double
rw_binomial_tail (guint  k,
                  guint  n,
                  double p)
{
  double sum = 0;
  int sign;

  if (k == 0)
    return 1;
  if (k > n || !(p > 0))
    return 0;
  if (p >= 1)
    return 1;
  for (guint i = n; i >= k; i--)
    sum += exp (lgamma_r (n + 1.0, &sign) - lgamma_r (i + 1.0, &sign) - lgamma_r (n - i + 1.0, &sign)
                + i * log (p) + (n - i) * log1p (-p));
  return MIN (sum, 1);
}

/* Dips are rising, so overlaps are met in order. */
static double
covered (const double *dips,
         guint         n,
         double        from,
         double        to,
         double        window)
{
  double sum = 0;
  double done = from;

  for (guint i = 0; i < n; i++)
    {
      const double begin = MAX (dips[i], done);
      const double end = MIN (dips[i] + window, to);

      if (dips[i] < from || dips[i] > to || end <= begin)
        continue;
      sum += end - begin;
      done = end;
    }
  return sum;
}

static gboolean
hits (double        mark,
      const double *dips,
      guint         n,
      double        from,
      double        window)
{
  guint lo = 0, hi = n;

  while (lo < hi)
    {
      const guint mid = lo + (hi - lo) / 2;

      if (dips[mid] <= mark)
        lo = mid + 1;
      else
        hi = mid;
    }
  return lo > 0 && dips[lo - 1] >= from && mark - dips[lo - 1] <= window;
}

static RwTogetherVerdict
judge (const RwTogether *self)
{
  if (self->n_marks == 0 || self->p_best > sure_below)
    return RW_TOGETHER_TOO_FEW;
  if (self->p <= sure_below)
    return RW_TOGETHER_SURE;
  return self->p <= likely_below ? RW_TOGETHER_LIKELY : RW_TOGETHER_NO;
}

RwTogether
rw_together_test (const double *dips,
                  guint         n_dips,
                  const double *marks,
                  guint         n_marks,
                  double        from,
                  double        to,
                  double        window)
{
  RwTogether self = { .window = window, .p = 1, .p_best = 1 };

  if (!(to > from) || !(window > 0))
    return self;
  for (guint i = 0; i < n_dips; i++)
    self.n_dips += dips[i] >= from && dips[i] <= to;
  for (guint i = 0; i < n_marks; i++)
    if (marks[i] >= from && marks[i] <= to)
      {
        self.n_marks++;
        self.n_hits += hits (marks[i], dips, n_dips, from, window);
      }
  self.share = MIN (covered (dips, n_dips, from, to, window) / (to - from), 1);
  self.p = rw_binomial_tail (self.n_hits, self.n_marks, self.share);
  self.p_best = rw_binomial_tail (self.n_marks, self.n_marks, self.share);
  self.verdict = judge (&self);
  return self;
}

/* One significant digit, thousands apart: "40 000". */
static char *
once_in (double p)
{
  const double one = 1 / p;
  const double scale = pow (10, floor (log10 (one)));
  g_autofree char *digits = g_strdup_printf ("%.0f", floor (one / scale) * scale);
  const gsize n = strlen (digits);
  g_autoptr (GString) text = g_string_new (NULL);

  for (gsize i = 0; i < n; i++)
    {
      if (i > 0 && (n - i) % 3 == 0)
        g_string_append (text, "\u202f");
      g_string_append_c (text, digits[i]);
    }
  return g_strdup (text->str);
}

static char *
describe_hits (const RwTogether *self)
{
  if (self->n_hits == self->n_marks && self->n_marks == 1)
    return g_strdup_printf (_("The one reset came within %g s of a dip"), self->window);
  if (self->n_hits == self->n_marks)
    return g_strdup_printf (_("The %u resets all came within %g s of a dip"), self->n_marks, self->window);
  return g_strdup_printf (ngettext ("%u of %u reset came within %g s of a dip",
                                    "%u of %u resets came within %g s of a dip", self->n_marks),
                          self->n_hits, self->n_marks, self->window);
}

char *
rw_together_describe (const RwTogether *self)
{
  if (self->n_marks == 0)
    return g_strdup (_("No reset was marked: nothing to compare with the dips."));
  if (self->n_dips == 0)
    return g_strdup_printf (ngettext ("%u reset was marked and no dip was seen. This meter misses dips shorter than a "
                                      "tenth of a second.",
                                      "%u resets were marked and no dip was seen. This meter misses dips shorter than "
                                      "a tenth of a second.", self->n_marks), self->n_marks);

  g_autofree char *counted = describe_hits (self);

  if (self->verdict == RW_TOGETHER_TOO_FEW)
    return g_strdup_printf (_("%s: too few to say whether they go together."), counted);
  if (self->verdict == RW_TOGETHER_NO)
    return g_strdup_printf (_("%s: chance alone does that easily. Nothing is shown."), counted);
  if (self->p < 1e-6)
    return g_strdup_printf (_("%s: chance alone does that less than once in a million."), counted);

  g_autofree char *once = once_in (self->p);

  return g_strdup_printf (_("%s: chance alone does that once in %s."), counted, once);
}
