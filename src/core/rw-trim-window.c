/* rw-trim-window.c: where the one screw should stand so that every rail is inside its limits.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A rail's limits bound x from both sides; the window is what all intervals share. A rail's margin
 * 1 − |V − middle| / half is the smaller of two straight lines in x (its *pieces*: one rises, one falls),
 * so the smallest margin of all rails is the lower envelope of all pieces: concave and piecewise linear.
 *
 * Its top is found from both sides at once. Take the steepest rising and the steepest falling piece and
 * the x where they cross. If no piece is lower there, this is the top. Else the lowest one replaces the
 * piece of its own direction: it is no steeper (the steepest were taken first), so it is below the one it
 * replaces on the whole side that is left, and the bracket closes in. Every step uses up a piece, so the
 * end is exact and comes after n steps at most, mostly two or three. Level pieces (rails that do not move)
 * only cut the top off: then all x between the places where that height is crossed are equally good.
 */
#include "config.h"

#include "rw-trim-window.h"

#include <math.h>

#include "rw-profile.h"

#define MAX_RAILS 64

/* Volts a volt: less moves no rail by what any meter shows. */
static const double still = 1e-12;

typedef struct
{
  double height; /* at x = 0 */
  double slope;
} Piece;

/* The x that suit some rails, and the rails that bound them. */
typedef struct
{
  double lo, hi;
  int    low_rail, high_rail; /* −1: none */
} Bounds;

static double
at (const Piece *piece,
    double       x)
{
  return piece->height + piece->slope * x;
}

/* FALSE: a rail to pass over. */
static gboolean
get_limits (const RwTrimRail *rail,
            double           *lo,
            double           *hi)
{
  *lo = isnan (rail->lo) ? (double) -INFINITY : rail->lo;
  *hi = isnan (rail->hi) ? (double) INFINITY : rail->hi;
  return *lo < *hi && isfinite (rail->offset) && isfinite (rail->slope);
}

static gboolean
moves (const RwTrimRail *rail)
{
  return fabs (rail->slope) > still;
}

/* A share of a limit of zero says nothing, so such a rail bounds x but has no margin. */
static gboolean
has_margin (double lo,
            double hi)
{
  return !(isinf (lo) && hi == 0) && !(isinf (hi) && lo == 0);
}

/* The x that suit one rail; lo > hi when it stands still outside. */
static void
get_interval (const RwTrimRail *rail,
              double            v_lo,
              double            v_hi,
              double           *lo,
              double           *hi)
{
  const gboolean inside = rail->offset >= v_lo && rail->offset <= v_hi;

  if (moves (rail))
    {
      const double a = (v_lo - rail->offset) / rail->slope;
      const double b = (v_hi - rail->offset) / rail->slope;

      *lo = MIN (a, b);
      *hi = MAX (a, b);
      return;
    }
  *lo = inside ? -INFINITY : INFINITY;
  *hi = -*lo;
}

static void
narrow (Bounds *self,
        double  lo,
        double  hi,
        guint   rail)
{
  if (lo > self->lo)
    {
      self->lo = lo;
      self->low_rail = (int) rail;
    }
  if (hi < self->hi)
    {
      self->hi = hi;
      self->high_rail = (int) rail;
    }
}

/* The two pieces of the margin as in rw_position (): each falls by one from @zero, where the margin is 1,
 * over @unit volts. */
static guint
get_pieces (const RwTrimRail *rail,
            Piece            *out)
{
  double lo, hi;

  if (!get_limits (rail, &lo, &hi) || !has_margin (lo, hi))
    return 0;

  const gboolean both = isfinite (lo) && isfinite (hi);
  const double unit = both ? (hi - lo) / 2 : fabs (isinf (lo) ? hi : lo);
  const double zero = both ? lo + unit : 0;
  const double place = (rail->offset - zero) / unit; /* 0 without limits: unit is infinite */
  const double slope = moves (rail) ? rail->slope / unit : 0;

  out[0] = (Piece){ 1 - place, -slope };
  out[1] = (Piece){ 1 + place, slope };
  return 2;
}

/* Where the envelope of the pieces that move is highest, and how high. FALSE: none moves. */
static gboolean
find_top (const Piece *pieces,
          guint        n,
          double      *x,
          double      *height)
{
  const Piece *up = &pieces[0], *down = &pieces[0];

  for (guint i = 1; i < n; i++)
    {
      const Piece *it = &pieces[i];

      if (it->slope > up->slope)
        up = it;
      if (it->slope < down->slope)
        down = it;
    }
  if (n == 0 || up->slope <= 0 || down->slope >= 0)
    return FALSE;
  for (guint step = 0; step <= n; step++)
    {
      const Piece *lowest = up;

      *x = (down->height - up->height) / (up->slope - down->slope);
      for (guint i = 0; i < n; i++)
        if (pieces[i].slope != 0 && at (&pieces[i], *x) < at (lowest, *x))
          lowest = &pieces[i];
      *height = at (lowest, *x);
      if (lowest == up || lowest == down)
        break;
      if (lowest->slope > 0)
        up = lowest;
      else
        down = lowest;
    }
  return TRUE;
}

/* All x at which the smallest margin is largest. FALSE: it is the same everywhere. */
static gboolean
find_plateau (const Piece *pieces,
              guint        n,
              double      *lo,
              double      *hi)
{
  double ceiling = INFINITY, x, height;

  if (!find_top (pieces, n, &x, &height))
    return FALSE;
  *lo = *hi = x;
  for (guint i = 0; i < n; i++)
    if (pieces[i].slope == 0)
      ceiling = MIN (ceiling, pieces[i].height);
  if (ceiling >= height)
    return TRUE;
  *lo = -INFINITY;
  *hi = INFINITY;
  for (guint i = 0; i < n; i++)
    if (pieces[i].slope > 0)
      *lo = MAX (*lo, (ceiling - pieces[i].height) / pieces[i].slope);
    else if (pieces[i].slope < 0)
      *hi = MIN (*hi, (ceiling - pieces[i].height) / pieces[i].slope);
  return TRUE;
}

/* The x within [lo, hi] that makes the smallest margin of the kept rails largest. A concave function is best
 * at the point of an interval that is nearest to where it is best without. */
static double
find_best (const RwTrimRail *rails,
           guint             n,
           guint64           kept,
           double            lo,
           double            hi)
{
  Piece pieces[2 * MAX_RAILS];
  guint n_pieces = 0;
  double from = -INFINITY, to = INFINITY;

  for (guint i = 0; i < n; i++)
    if ((kept >> i & 1) != 0)
      n_pieces += get_pieces (&rails[i], &pieces[n_pieces]);
  find_plateau (pieces, n_pieces, &from, &to);
  if (from > hi)
    return hi;
  if (to < lo)
    return lo;
  from = MAX (from, lo);
  to = MIN (to, hi);
  return isfinite (from) && isfinite (to) ? from + (to - from) / 2 : (double) NAN;
}

/* Indices by priority, then index. */
static void
sort_rails (const RwTrimRail *rails,
            guint             n,
            guint            *order)
{
  for (guint i = 0; i < n; i++)
    {
      guint k = i;

      for (; k > 0 && rails[order[k - 1]].priority > rails[i].priority; k--)
        order[k] = order[k - 1];
      order[k] = i;
    }
}

/* Narrows @all by every rail and @good by those that still leave an x; sets kept, and the pair when one that
 * stands still is outside. Returns the rails that counted. */
static guint64
intersect (const RwTrimRail *rails,
           guint             n,
           Bounds           *all,
           Bounds           *good,
           RwTrimWindow     *out)
{
  guint order[MAX_RAILS];
  guint64 counted = 0;

  sort_rails (rails, n, order);
  for (guint k = 0; k < n; k++)
    {
      const guint i = order[k];
      double lo, hi;

      if (!get_limits (&rails[i], &lo, &hi))
        continue;
      get_interval (&rails[i], lo, hi, &lo, &hi);
      counted |= G_GUINT64_CONSTANT (1) << i;
      if (MAX (lo, good->lo) <= MIN (hi, good->hi))
        {
          narrow (good, lo, hi, i);
          out->kept |= G_GUINT64_CONSTANT (1) << i;
        }
      if (lo <= hi)
        narrow (all, lo, hi, i);
      else if (out->gap == 0)
        {
          out->gap = INFINITY;
          out->low_rail = out->high_rail = (int) i;
        }
    }
  return counted;
}

void
rw_trim_window_solve (const RwTrimRail *rails,
                      guint             n,
                      RwTrimWindow     *out)
{
  Bounds all = { -INFINITY, INFINITY, -1, -1 };
  Bounds good = all;

  *out = (RwTrimWindow){ .lo = NAN, .hi = NAN, .low_rail = -1, .high_rail = -1, .best = NAN, .margin = NAN,
                         .compromise = NAN };
  g_return_if_fail (n <= MAX_RAILS);

  const guint64 counted = intersect (rails, n, &all, &good, out);

  out->exists = counted == out->kept;
  if (out->gap == 0)
    {
      out->low_rail = all.low_rail;
      out->high_rail = all.high_rail;
      out->gap = MAX (all.lo - all.hi, 0);
    }
  if (out->exists)
    {
      out->lo = all.lo;
      out->hi = all.hi;
    }
  out->best = find_best (rails, n, out->kept, good.lo, good.hi);
  if (!isnan (out->best))
    out->margin = rw_trim_window_margin (rails, n, out->kept, out->best);
  out->compromise = out->exists ? out->best : find_best (rails, n, counted, -INFINITY, INFINITY);
}

double
rw_trim_window_margin (const RwTrimRail *rails,
                       guint             n,
                       guint64           kept,
                       double            x)
{
  double smallest = INFINITY;

  g_return_val_if_fail (n <= MAX_RAILS, NAN);
  if (isnan (x))
    return NAN;
  for (guint i = 0; i < n; i++)
    {
      double lo, hi;

      if ((kept >> i & 1) == 0 || !get_limits (&rails[i], &lo, &hi) || !has_margin (lo, hi))
        continue;
      smallest = MIN (smallest, rw_margin (rails[i].offset + rails[i].slope * x, lo, hi));
    }
  return smallest;
}
