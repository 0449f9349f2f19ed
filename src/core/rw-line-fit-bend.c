/* rw-line-fit-bend.c: are the points straight? The added-square test.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A curve that rises with x has an R² of nearly 1 against a straight line, so R² tells nothing. Instead a
 * square is added to the line and what it takes off the misfit is compared with what it would take by chance
 * (N. R. Draper, H. Smith, Applied Regression Analysis, "extra sum of squares").
 *
 * With residuals r, weights W and adjusted points x of the line, r is uncorrelated with 1 and with x in the
 * sense of ΣW, so only the part q of x² that 1 and x do not explain can take anything off:
 *
 *   coefficient c = ΣWrq / ΣWq²   u(c) = 1/√ΣWq²   fall of misfit D = (ΣWrq)² / ΣWq²
 *
 * Errors known: D is χ² with 1 degree of freedom (the score test of c = 0). Errors not known, W = 1:
 * F = D / [Σ(r − cq)² / (n − 3)].
 */
#include "config.h"

#include "rw-line-fit.h"

#include <float.h>
#include <math.h>

#include "rw-distribution.h"

/* Below this share of Σ W x⁴ the square is explained by 1 and x to rounding: two different x, not three. */
#define EXPLAINED 1e-22

/* A point seen from the line: its weight, its place along (then the square's own part q) and its residual. */
typedef struct
{
  double weight, along, q, left;
} Seen;

typedef struct
{
  Seen  *seen;
  guint  n;
  double size; /* x = x_mid + size·along */
} View;

static gboolean
errors_are_known (const RwLinePoint *points,
                  guint              n)
{
  for (guint i = 0; i < n; i++)
    if (points[i].ux > 0 || points[i].uy > 0)
      return TRUE;
  return FALSE;
}

/* Residuals, weights and adjusted points: x + W r (b ux² − cov) is Xm + β written without the means. */
static void
view_look (View              *self,
           const RwLinePoint *points,
           const RwLineFit   *line,
           gboolean           known)
{
  const double b = line->slope;

  for (guint i = 0; i < self->n; i++)
    {
      const RwLinePoint *point = &points[i];
      const double vx = point->ux * point->ux;
      const double variance = point->uy * point->uy + b * b * vx - 2 * b * point->cov;
      const double weight = known ? 1 / variance : 1;
      const double d = point->x - line->x_mid;
      const double left = point->y - line->y_mid - b * d;
      const double moved = known ? weight * left * (b * vx - point->cov) : 0;

      self->seen[i] = (Seen) { weight, d + moved, 0, left };
      self->size = MAX (self->size, fabs (d + moved));
    }
}

/* Fills in q. Returns Σ W q², or 0 when there is nothing of it. */
static double
view_square (View *self)
{
  double weights = 0, mean = 0, mean_square = 0;
  double both = 0, spread = 0, all = 0, own = 0;

  for (guint i = 0; i < self->n; i++)
    {
      Seen *seen = &self->seen[i];

      seen->along /= self->size;
      weights += seen->weight;
      mean += seen->weight * seen->along;
      mean_square += seen->weight * seen->along * seen->along;
    }
  mean /= weights;
  mean_square /= weights;
  for (guint i = 0; i < self->n; i++)
    {
      Seen *seen = &self->seen[i];
      const double d = seen->along - mean;

      seen->q = seen->along * seen->along - mean_square;
      all += seen->weight * seen->along * seen->along * seen->along * seen->along;
      spread += seen->weight * d * d;
      both += seen->weight * d * seen->q;
    }
  for (guint i = 0; i < self->n; i++)
    {
      Seen *seen = &self->seen[i];

      seen->q -= both / spread * (seen->along - mean);
      own += seen->weight * seen->q * seen->q;
    }
  return own > all * EXPLAINED ? own : 0;
}

/* Residuals of an exact line are rounding, and rounding has no shape worth naming. */
static gboolean
is_rounding (const RwLinePoint *points,
             const RwLineFit   *line)
{
  double largest = 0;

  for (guint i = 0; i < line->n; i++)
    largest = MAX (largest, MAX (fabs (points[i].y), fabs (line->slope * points[i].x)));
  return line->chi2 <= line->n * pow (8 * DBL_EPSILON * largest, 2);
}

/* Against what the square leaves over. */
static void
compare_with_rest (const View *self,
                   double      coefficient,
                   double      fall,
                   double      own,
                   RwLineBend *out)
{
  double rest = 0;

  for (guint i = 0; i < self->n; i++)
    {
      const double left = self->seen[i].left - coefficient * self->seen[i].q;

      rest += left * left;
    }
  out->dof = self->n - 3;
  out->statistic = rest > 0 ? fall / (rest / out->dof) : (double) INFINITY;
  out->p = rw_f_survival (out->statistic, 1, out->dof);
  out->square_u = sqrt (rest / out->dof / own) / (self->size * self->size);
}

static void
test_bend (const RwLinePoint *points,
           const RwLineFit   *line,
           gboolean           known,
           RwLineBend        *out)
{
  g_autofree Seen *seen = g_new (Seen, line->n);
  View view = { seen, line->n, 0 };
  double shared = 0;

  view_look (&view, points, line, known);

  const double own = view_square (&view);

  if (!(own > 0))
    return;
  for (guint i = 0; i < view.n; i++)
    shared += seen[i].weight * seen[i].left * seen[i].q;

  const double fall = shared * shared / own;

  out->square = shared / own / (view.size * view.size);
  if (known)
    {
      out->square_u = 1 / sqrt (own) / (view.size * view.size);
      out->statistic = fall;
      out->p = rw_chi2_survival (fall, 1);
    }
  else
    compare_with_rest (&view, shared / own, fall, own, out);
}

gboolean
rw_line_fit_is_curved (const RwLinePoint *points,
                       guint              n,
                       double             level,
                       RwLineBend        *out)
{
  const gboolean known = errors_are_known (points, n);
  RwLineBend bend = { NAN, NAN, NAN, 0, 1 };
  RwLineFit line;
  const RwLineFitResult result
      = known ? rw_line_fit (points, n, &line) : rw_line_fit_plain (points, n, FALSE, &line);

  if (result == RW_LINE_FIT_DONE && n >= (known ? 3 : 4)
      && (known || !is_rounding (points, &line)))
    test_bend (points, &line, known, &bend);
  if (out != NULL)
    *out = bend;
  return bend.p < level;
}
