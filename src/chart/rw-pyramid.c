/* rw-pyramid.c: a stream kept so that any stretch of it is summed up at once.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Level 0 is the samples: time, value, tag. A node of level k + 1 sums up `reduction` neighbours
 * of level k:
 *
 *     level 2   ├───────────────0───────────────┤├─────── 1 (not full yet)
 *     level 1   ├───0───┤├───1───┤├───2───┤├───3───┤├───4───┤├─ 5
 *     level 0   0 1 2 3  4 5 6 7  …
 *
 * Invariants, with r = reduction and n samples:
 *  1. level k ≥ 1 has ceil(n / r^k) nodes; the last one may stand for fewer children;
 *  2. a level has another above it exactly when it has more than r nodes;
 *  3. a node's lo and hi are NaN exactly when all samples below it are;
 *  4. times and tags never fall.
 *
 * A push touches the last node of each level, a truncation recomputes it: both O(log n).
 *
 * A part shares the samples and nodes of another pyramid and sees the first n samples of it. Every node of it but
 * the last of each level stands for samples that it sees alone; those last ones it keeps itself (tails).
 */
#include "config.h"

#include "rw-pyramid.h"

#include <math.h>

typedef struct
{
  double t;
  double value;
  guint  tag;
} Sample;

typedef struct
{
  double lo, hi;
} Node;

/* As many levels as 2³² samples have when each halves the one below. */
#define MOST_LEVELS 33

struct _RwPyramid
{
  guint      reduction;
  guint      n;        /* samples */
  guint      n_levels; /* above the samples */
  gboolean   is_part;
  GArray    *samples; /* of Sample */
  GPtrArray *levels;  /* of GArray of Node; levels[0] is level 1 */
  guint      lengths[MOST_LEVELS]; /* of a part: nodes of each level */
  Node       tails[MOST_LEVELS];   /* of a part: the last of them */
};

static const Node nothing = { NAN, NAN };

static inline const Sample *
sample_at (const RwPyramid *self,
           guint            i)
{
  return &g_array_index (self->samples, Sample, i);
}

/* fmin and fmax drop a NaN in favour of the other number, which is what a hole asks for. */
static inline void
join (Node       *into,
      const Node *more)
{
  into->lo = fmin (into->lo, more->lo);
  into->hi = fmax (into->hi, more->hi);
}

RwPyramid *
rw_pyramid_new_full (guint reduction)
{
  RwPyramid *self = g_new0 (RwPyramid, 1);

  self->reduction = MAX (reduction, 2);
  self->samples = g_array_new (FALSE, FALSE, sizeof (Sample));
  self->levels = g_ptr_array_new_with_free_func ((GDestroyNotify) g_array_unref);
  return self;
}

RwPyramid *
rw_pyramid_new_part (const RwPyramid *whole)
{
  RwPyramid *self = g_new0 (RwPyramid, 1);

  self->reduction = whole->reduction;
  self->is_part = TRUE;
  self->samples = g_array_ref (whole->samples);
  self->levels = g_ptr_array_ref (whole->levels);
  return self;
}

RwPyramid *
rw_pyramid_new (void)
{
  return rw_pyramid_new_full (RW_PYRAMID_REDUCTION);
}

void
rw_pyramid_free (RwPyramid *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->samples);
  g_ptr_array_unref (self->levels);
  g_free (self);
}

/* Nodes of level k (0: samples). */
static guint
level_length (const RwPyramid *self,
              guint            k)
{
  if (k == 0)
    return self->n;
  return self->is_part ? self->lengths[k] : ((GArray *) self->levels->pdata[k - 1])->len;
}

static Node
node_at (const RwPyramid *self,
         guint            k,
         guint            i)
{
  if (k == 0)
    return (Node){ sample_at (self, i)->value, sample_at (self, i)->value };
  if (self->is_part && i + 1 == self->lengths[k])
    return self->tails[k];
  return g_array_index ((GArray *) self->levels->pdata[k - 1], Node, i);
}

/* Node i of level k + 1, from its children. */
static Node
sum_up (const RwPyramid *self,
        guint            k,
        guint            i)
{
  const guint first = i * self->reduction;
  const guint end = MIN (first + self->reduction, level_length (self, k));
  Node sum = nothing;

  for (guint child = first; child < end; child++)
    {
      const Node node = node_at (self, k, child);

      join (&sum, &node);
    }
  return sum;
}

/* Adds level @k, built from the one below. */
static void
add_level (RwPyramid *self,
           guint      k)
{
  GArray *level = g_array_new (FALSE, FALSE, sizeof (Node));

  g_ptr_array_add (self->levels, level);
  self->n_levels = k;
  for (guint i = 0; i * self->reduction < level_length (self, k - 1); i++)
    {
      const Node node = sum_up (self, k - 1, i);

      g_array_append_val (level, node);
    }
}

/* Tells every level of the newest sample. */
static void
lift (RwPyramid  *self,
      const Node *newest)
{
  guint index = self->n - 1;

  for (guint k = 1; k <= self->n_levels; k++)
    {
      GArray *level = self->levels->pdata[k - 1];

      index /= self->reduction;
      if (index == level->len)
        g_array_append_val (level, *newest);
      else
        join (&g_array_index (level, Node, index), newest);
    }
}

void
rw_pyramid_push (RwPyramid *self,
                 double     t,
                 double     value,
                 guint      tag)
{
  g_return_if_fail (self != NULL && !self->is_part);

  const guint n = self->n;
  const double last = n > 0 ? sample_at (self, n - 1)->t : (double) -INFINITY;
  const double sure = isfinite (value) ? value : (double) NAN;
  const Sample sample = { isfinite (t) ? MAX (t, last) : MAX (last, 0), sure, tag };
  const Node node = { sure, sure };

  g_array_append_val (self->samples, sample);
  self->n++;
  lift (self, &node);
  if (level_length (self, self->n_levels) > self->reduction)
    add_level (self, self->n_levels + 1);
}

void
rw_pyramid_truncate (RwPyramid *self,
                     guint      n)
{
  g_return_if_fail (self != NULL && !self->is_part);
  if (n >= self->n)
    return;
  g_array_set_size (self->samples, n);
  self->n = n;

  guint below = n;

  for (guint k = 1; k <= self->n_levels; k++)
    {
      GArray *level = self->levels->pdata[k - 1];

      if (below <= self->reduction)
        {
          g_ptr_array_set_size (self->levels, (int) k - 1);
          self->n_levels = k - 1;
          return;
        }
      below = (below + self->reduction - 1) / self->reduction;
      g_array_set_size (level, below);
      g_array_index (level, Node, below - 1) = sum_up (self, k - 1, below - 1);
    }
}

void
rw_pyramid_see (RwPyramid *self,
                guint      n)
{
  g_return_if_fail (self != NULL && self->is_part);
  self->n = MIN (n, self->samples->len);
  self->lengths[0] = self->n;
  self->n_levels = 0;
  for (guint k = 0; self->lengths[k] > self->reduction; k++)
    {
      const guint length = (self->lengths[k] - 1) / self->reduction + 1;

      self->tails[k + 1] = sum_up (self, k, length - 1);
      self->lengths[k + 1] = length;
      self->n_levels = k + 1;
    }
}

guint
rw_pyramid_get_n (const RwPyramid *self)
{
  return self->n;
}

double
rw_pyramid_get_time (const RwPyramid *self,
                     guint            i)
{
  g_return_val_if_fail (i < self->n, NAN);
  return sample_at (self, i)->t;
}

double
rw_pyramid_get_value (const RwPyramid *self,
                      guint            i)
{
  g_return_val_if_fail (i < self->n, NAN);
  return sample_at (self, i)->value;
}

guint
rw_pyramid_get_tag (const RwPyramid *self,
                    guint            i)
{
  g_return_val_if_fail (i < self->n, 0);
  return sample_at (self, i)->tag;
}

guint
rw_pyramid_find_time (const RwPyramid *self,
                      double           t)
{
  guint low = 0, high = self->n;

  while (low < high)
    {
      const guint middle = low + (high - low) / 2;

      if (sample_at (self, middle)->t < t)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

guint
rw_pyramid_find_tag (const RwPyramid *self,
                     guint            tag)
{
  guint low = 0, high = self->n;

  while (low < high)
    {
      const guint middle = low + (high - low) / 2;

      if (sample_at (self, middle)->tag < tag)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

/* Adds nodes [from, to) of one level. */
static void
join_nodes (const RwPyramid *self,
            guint            k,
            guint            from,
            guint            to,
            Node            *sum)
{
  for (guint i = from; i < to; i++)
    {
      const Node node = node_at (self, k, i);

      join (sum, &node);
    }
}

gboolean
rw_pyramid_range (const RwPyramid *self,
                  guint            from,
                  guint            to,
                  double          *lo,
                  double          *hi)
{
  const guint r = self->reduction;
  Node sum = nothing;

  to = MIN (to, self->n);
  /* At each level take the odd ones at both ends, then go on with the whole parents between. */
  for (guint k = 0; from < to; k++)
    {
      const guint first = (from + r - 1) / r, last = to / r;

      if (k == self->n_levels || first >= last)
        {
          join_nodes (self, k, from, to, &sum);
          break;
        }
      join_nodes (self, k, from, first * r, &sum);
      join_nodes (self, k, last * r, to, &sum);
      from = first;
      to = last;
    }
  if (isnan (sum.lo))
    return FALSE;
  *lo = sum.lo;
  *hi = sum.hi;
  return TRUE;
}

/* Where the line stands at time @t, @next being the first sample at @t or later; NaN where there
 * is none. */
static double
line_at (const RwPyramid *self,
         guint            next,
         double           t)
{
  if (next >= self->n)
    return NAN;

  const Sample *b = sample_at (self, next);

  if (next == 0 || b->t <= t)
    return b->t <= t ? b->value : (double) NAN;

  const Sample *a = sample_at (self, next - 1);

  return a->value + (b->value - a->value) * ((t - a->t) / (b->t - a->t));
}

void
rw_pyramid_columns (const RwPyramid *self,
                    double           start,
                    double           width,
                    guint            n_columns,
                    RwSpan          *out)
{
  guint from = rw_pyramid_find_time (self, start);
  double left = line_at (self, from, start);

  for (guint i = 0; i < n_columns; i++)
    {
      const double edge = start + (i + 1) * width;
      const guint to = rw_pyramid_find_time (self, edge);
      const double right = line_at (self, to, edge);
      double lo = NAN, hi = NAN;

      rw_pyramid_range (self, from, to, &lo, &hi);
      out[i].lo = fmin (lo, fmin (left, right));
      out[i].hi = fmax (hi, fmax (left, right));
      out[i].through = out[i].lo == fmin (left, right) && out[i].hi == fmax (left, right)
                       && !isnan (left + right);
      from = to;
      left = right;
    }
}
