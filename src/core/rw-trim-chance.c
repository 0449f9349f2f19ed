/* rw-trim-chance.c: the chance that all rails are inside at once when the screw is set.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two errors are common to all rails: the meter's scale (it shows V·(1 + s)) and the setting (the reference
 * stands at x + e). In units of their half-widths both lie in [−1, 1], so the chance is the mean over a
 * square of the product of the rails' own chances. A limit L is one *edge*: the rail is on the right side of
 * it by d = L·(1 + s) − value − slope·e, a linear function on the square, with the chance Φ (d / u).
 *
 * u may be small against what the common errors do, and is 0 for the reference itself: Φ is then a steep
 * step that fixed nodes would miss. So edges that decide nothing anywhere on the square are dropped, and
 * Gauss–Legendre nodes are laid between the places where the remaining ones step: along the axis that moves
 * the edges most (inner), and for its integral along the other one (outer), which has a kink where a step
 * enters or leaves the square and where two steps meet.
 */
#include "config.h"

#include "rw-trim-chance-private.h"
#include "rw-trim-window.h"

#include <math.h>

#include "rw-verdict.h"

enum { SCALE, SETTING, N_AXES };

/* Beyond so many standard deviations Φ is 0 or 1 to 1e-10. */
static const double certain = 6.5;
/* A step is resolved between −reach and +reach standard deviations; the rest is worth 1e-6. */
static const double reach = 5;

/* Nodes of an integral from −1 to 1: Abramowitz and Stegun, table 25.4. */
typedef struct
{
  guint  n;
  double at[5];
  double weight[5];
} Rule;

static const Rule inner_rule = {
  5,
  { -0.906179845938664, -0.538469310105683, 0, 0.538469310105683, 0.906179845938664 },
  { 0.236926885056189, 0.478628670499366, 0.568888888888889, 0.478628670499366, 0.236926885056189 },
};

/* What the inner mean leaves is smoother. Tried against 36 times as many nodes: with 5 twice as slow, with 3
 * off by 7e-4 at worst, with 4 by 2e-4. */
static const Rule outer_rule = {
  4,
  { -0.861136311594053, -0.339981043584856, 0.339981043584856, 0.861136311594053 },
  { 0.347854845137454, 0.652145154862546, 0.652145154862546, 0.347854845137454 },
};

/* d = d0 + c[SCALE]·s + c[SETTING]·e on the square. */
typedef struct
{
  double   d0;
  double   c[N_AXES];
  gboolean active; /* FALSE: surely on the right side */
} Edge;

typedef struct
{
  Edge   low, high;
  double var[3]; /* by powers of e on the square */
} Part;

typedef struct
{
  Part    *parts;          /* those with an active edge */
  guint    n;
  gboolean used[N_AXES];   /* the axis has a width */
  int      inner;          /* axis */
  double  *breaks[N_AXES]; /* room for those along an axis */
} Square;

typedef double (*PointFunc) (const Square *self, double *p);

static double
part_u (const Part *part,
        double      e)
{
  return sqrt (MAX (0, part->var[0] + e * (part->var[1] + e * part->var[2])));
}

static double
step (double d,
      double u)
{
  if (d >= certain * u)
    return 1;
  return d <= -certain * u ? 0 : rw_normal_cdf (d / u);
}

static double
edge_chance (const Edge   *edge,
             const double *p,
             double        u)
{
  return edge->active ? step (edge->d0 + edge->c[SCALE] * p[SCALE] + edge->c[SETTING] * p[SETTING], u) : 1;
}

/* The product of the rails' chances at a point of the square. */
static double
chance_at (const Square *self,
           double       *p)
{
  double product = 1;

  for (guint i = 0; i < self->n && product > 0; i++)
    {
      const Part *part = &self->parts[i];
      const double u = part_u (part, p[SETTING]);

      product *= MAX (0, edge_chance (&part->low, p, u) + edge_chance (&part->high, p, u) - 1);
    }
  return product;
}

static void
add_break (double *breaks,
           guint  *n,
           double  at)
{
  guint k = *n;

  if (!(at > -1 && at < 1))
    return;
  for (; k > 0 && breaks[k - 1] > at; k--)
    breaks[k] = breaks[k - 1];
  breaks[k] = at;
  ++*n;
}

/* A step at @at, as wide as @u seen along an axis that moves it by @c. Left alone where it is gentle. */
static void
add_step (double *breaks,
          guint  *n,
          double  at,
          double  u,
          double  c)
{
  const double half = reach * u / fabs (c);

  if (half > 2)
    return;
  add_break (breaks, n, at);
  add_break (breaks, n, at - half);
  add_break (breaks, n, at + half);
}

/* The mean of @func along an axis through @p, by nodes between the breaks. */
static double
mean_between (const Square *self,
              double       *p,
              int           axis,
              guint         n_breaks,
              PointFunc     func)
{
  const Rule *rule = axis == self->inner ? &inner_rule : &outer_rule;
  const double *breaks = self->breaks[axis];
  double sum = 0, from = -1;

  for (guint i = 0; i <= n_breaks; i++)
    {
      const double to = i < n_breaks ? breaks[i] : 1;
      const double half = (to - from) / 2;

      for (guint k = 0; k < rule->n && half > 1e-9; k++)
        {
          p[axis] = from + half * (1 + rule->at[k]);
          sum += rule->weight[k] * half * func (self, p);
        }
      from = to;
    }
  return sum / 2;
}

static void
add_inner_break (const Square *self,
                 const Edge   *edge,
                 const double *p,
                 double        u,
                 guint        *n)
{
  const int outer = 1 - self->inner;
  const double c = edge->c[self->inner];

  if (edge->active && c != 0)
    add_step (self->breaks[self->inner], n, -(edge->d0 + edge->c[outer] * p[outer]) / c, u, c);
}

static double
mean_inner (const Square *self,
            double       *p)
{
  guint n = 0;

  p[self->inner] = 0;
  if (!self->used[self->inner])
    return chance_at (self, p);
  for (guint i = 0; i < self->n; i++)
    {
      const double u = part_u (&self->parts[i], p[SETTING]);

      add_inner_break (self, &self->parts[i].low, p, u, &n);
      add_inner_break (self, &self->parts[i].high, p, u, &n);
    }
  return mean_between (self, p, self->inner, n, chance_at);
}

/* Where an edge's step enters and leaves the square. The inner mean has a kink there, or a step of its own
 * when the edge runs along the inner axis. */
static void
add_outer_breaks (const Square *self,
                  const Edge   *edge,
                  double        u,
                  guint        *n)
{
  const double c = edge->c[1 - self->inner];
  const double tilt = fabs (edge->c[self->inner]);

  if (!edge->active || c == 0)
    return;
  for (int end = -1; end <= 1; end += 2)
    {
      const double at = (-edge->d0 + end * tilt) / c;

      if (tilt > reach * u)
        add_break (self->breaks[1 - self->inner], n, at);
      else
        add_step (self->breaks[1 - self->inner], n, at, u, c);
    }
}

static double
mean_outer (const Square *self)
{
  double p[N_AXES] = { 0, 0 };
  guint n = 0;

  if (!self->used[1 - self->inner])
    return mean_inner (self, p);
  for (guint i = 0; i < self->n; i++)
    {
      const double u = part_u (&self->parts[i], 0);

      add_outer_breaks (self, &self->parts[i].low, u, &n);
      add_outer_breaks (self, &self->parts[i].high, u, &n);
    }
  return mean_between (self, p, 1 - self->inner, n, mean_inner);
}

/* @u: the largest on the square. FALSE: surely on the wrong side, all over it. */
static gboolean
edge_init (Edge  *self,
           double d0,
           double c_scale,
           double c_setting,
           double u)
{
  const double spread = fabs (c_scale) + fabs (c_setting);

  *self = (Edge){ d0, { c_scale, c_setting }, d0 - spread < certain * u };
  return d0 + spread >= -certain * u;
}

/* FALSE: surely outside. */
static gboolean
part_init (Part                   *self,
           const RwTrimChanceRail *rail,
           double                  half_scale,
           double                  half_setting)
{
  const double tilt = rail->slope * half_setting;

  *self = (Part){ .var = { rail->var, rail->var1 * half_setting, rail->var2 * half_setting * half_setting } };

  const double u = sqrt (MAX (0, self->var[0]) + fabs (self->var[1]) + fabs (self->var[2]));

  return (isinf (rail->lo) || edge_init (&self->low, rail->value - rail->lo, -rail->lo * half_scale, tilt, u))
         && (isinf (rail->hi)
             || edge_init (&self->high, rail->hi - rail->value, rail->hi * half_scale, -tilt, u));
}

/* The axis that moves the edges most. */
static int
pick_inner (const Square *self)
{
  double most[N_AXES] = { 0, 0 };

  for (guint i = 0; i < self->n; i++)
    for (int axis = 0; axis < N_AXES; axis++)
      {
        most[axis] = MAX (most[axis], fabs (self->parts[i].low.c[axis]));
        most[axis] = MAX (most[axis], fabs (self->parts[i].high.c[axis]));
      }
  return most[SCALE] >= most[SETTING] ? SCALE : SETTING;
}

double
rw_trim_chance_all (const RwTrimChanceRail *rails,
                    guint                   n,
                    double                  half_scale,
                    double                  half_setting)
{
  g_autofree Part *parts = g_new (Part, n);
  Square self = { .parts = parts, .used = { half_scale > 0, half_setting > 0 } };

  for (guint i = 0; i < n; i++)
    {
      Part *part = &parts[self.n];

      if (!part_init (part, &rails[i], half_scale, half_setting))
        return 0;
      if (part->low.active || part->high.active)
        self.n++;
    }
  if (self.n == 0)
    return 1;

  /* Two edges a rail: three breaks each along the inner axis, six along the outer one. */
  g_autofree double *breaks = g_new (double, 18 * self.n);

  self.inner = pick_inner (&self);
  self.breaks[self.inner] = breaks;
  self.breaks[1 - self.inner] = breaks + 6 * self.n;
  return CLAMP (mean_outer (&self), 0, 1);
}

/* FALSE: nothing to count: no line or no limits. */
static gboolean
take_rail (const RwTrimFit  *fit,
           guint             rail,
           double            lo,
           double            hi,
           double            x,
           RwTrimChanceRail *out)
{
  RwTrimLine line;

  if ((isnan (lo) && isnan (hi)) || !rw_trim_fit_get_line (fit, rail, &line))
    return FALSE;

  const double var_slope = line.slope_u * line.slope_u;

  *out = (RwTrimChanceRail){
    .value = line.offset + line.slope * x,
    .slope = line.slope,
    .var = line.offset_u * line.offset_u + x * (2 * line.cov + x * var_slope),
    .var1 = 2 * (line.cov + x * var_slope),
    .var2 = var_slope,
    .lo = isnan (lo) ? (double) -INFINITY : lo,
    .hi = isnan (hi) ? (double) INFINITY : hi,
  };
  return TRUE;
}

double
rw_trim_window_chance (const RwTrimFit *fit,
                       const double    *lo,
                       const double    *hi,
                       double           x,
                       double           u_x,
                       double           percent)
{
  const guint n = rw_trim_fit_get_n_rails (fit);
  g_autofree RwTrimChanceRail *rails = g_new (RwTrimChanceRail, n);
  guint n_counted = 0;

  if (!isfinite (x))
    return NAN;
  for (guint i = 0; i < n; i++)
    if (take_rail (fit, i, lo[i], hi[i], x, &rails[n_counted]))
      n_counted++;
  return rw_trim_chance_all (rails, n_counted, percent > 0 ? percent / 100 : 0, u_x > 0 ? sqrt (3) * u_x : 0);
}
