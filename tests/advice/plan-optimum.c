/* plan-optimum.c: the least expected minutes of a random problem, solved apart from the program.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * U(w) = min { t_j W + Σ_o U(w L_jo) ; c_i W + U(w without i) }, w unnormalised. A state is the
 * causes left, as bits, and the outcomes seen, as the digits of a number in which every check
 * has a place (0: not taken). Checks that never err have no place: they split the causes left.
 */
#include "config.h"

#include <math.h>

#include "plan-family.h"

/* A check that never errs: which causes show which outcome. */
typedef struct
{
  double minutes;
  guint  n_parts;
  gsize  part[RW_PROBLEM_MAX_OUTCOMES];
} Split;

typedef struct
{
  const RwProblem *problem;
  guint            n;
  gsize            n_sets;
  gsize           *place; /* [n_checks]: worth of its digit; 0: never errs */
  Split           *splits;
  guint            n_splits;
  gsize            n_seen;
  double          *value; /* [seen · n_sets + set] */
  double          *mass;  /* [set], of the outcomes seen now */
  double          *offer; /* [set], scratch */
} Table;

static gboolean
never_errs (const RwProblem *problem,
            guint            check)
{
  for (guint k = 0; k < problem->checks[check].n_outcomes * problem->n_causes; k++)
    if (problem->checks[check].chance[k] > 0 && problem->checks[check].chance[k] < 1)
      return FALSE;
  return TRUE;
}

static guint
digit_of (const Table *self,
          gsize        seen,
          guint        check)
{
  return (guint) (seen / self->place[check] % (self->problem->checks[check].n_outcomes + 1));
}

static void
weigh_sets (Table *self,
            gsize  seen)
{
  self->mass[0] = 0;
  for (guint i = 0; i < self->n; i++)
    {
      const gsize bit = (gsize) 1 << i;
      double w = self->problem->causes[i].weight;

      for (guint j = 0; j < self->problem->n_checks; j++)
        if (self->place[j] > 0 && digit_of (self, seen, j) > 0)
          w *= rw_problem_chance (self->problem, j, digit_of (self, seen, j) - 1, i);
      for (gsize set = 0; set < bit; set++)
        self->mass[set | bit] = self->mass[set] + w;
    }
}

/* One check that may err, for all sets. */
static void
offer_noisy (Table *self,
             gsize  seen,
             guint  check)
{
  const RwProblemCheck *it = &self->problem->checks[check];
  double *here = self->value + seen * self->n_sets;

  for (gsize set = 0; set < self->n_sets; set++)
    self->offer[set] = it->minutes * self->mass[set];
  for (guint o = 0; o < it->n_outcomes; o++)
    {
      const double *after = self->value + (seen + (o + 1) * self->place[check]) * self->n_sets;

      for (gsize set = 0; set < self->n_sets; set++)
        self->offer[set] += after[set];
    }
  for (gsize set = 0; set < self->n_sets; set++)
    here[set] = MIN (here[set], self->offer[set]);
}

static double
split_set (const Table  *self,
           const double *here,
           const Split  *split,
           gsize         set)
{
  double v = split->minutes * self->mass[set];

  for (guint o = 0; o < split->n_parts; o++)
    {
      if ((set & split->part[o]) == set)
        return INFINITY;
      v += here[set & split->part[o]];
    }
  return v;
}

static void
solve_seen (Table *self,
            gsize  seen)
{
  double *here = self->value + seen * self->n_sets;

  weigh_sets (self, seen);
  for (gsize set = 0; set < self->n_sets; set++)
    here[set] = set == 0 ? 0 : (double) INFINITY;
  for (guint j = 0; j < self->problem->n_checks; j++)
    if (self->place[j] > 0 && digit_of (self, seen, j) == 0)
      offer_noisy (self, seen, j);
  for (gsize set = 1; set < self->n_sets; set++)
    {
      double best = here[set];

      for (gsize left = set; left != 0; left &= left - 1)
        {
          const double v = self->problem->causes[__builtin_ctzl (left)].repair_minutes
                           * self->mass[set]
                           + here[set & ~(left & -left)];

          best = MIN (best, v);
        }
      for (guint k = 0; k < self->n_splits; k++)
        {
          const double v = split_set (self, here, &self->splits[k], set);

          best = MIN (best, v);
        }
      here[set] = best;
    }
}

static void
add_split (Table *self,
           guint  check)
{
  const RwProblemCheck *it = &self->problem->checks[check];
  Split *split = &self->splits[self->n_splits++];

  split->minutes = it->minutes;
  split->n_parts = it->n_outcomes;
  for (guint o = 0; o < it->n_outcomes; o++)
    for (guint i = 0; i < self->n; i++)
      if (it->chance[o * self->n + i] > 0)
        split->part[o] |= (gsize) 1 << i;
}

double
family_optimum (const RwProblem *problem)
{
  g_autofree gsize *place = g_new0 (gsize, problem->n_checks);
  g_autofree Split *splits = g_new0 (Split, problem->n_checks);
  Table self = { .problem = problem,
                 .n = problem->n_causes,
                 .n_sets = (gsize) 1 << problem->n_causes,
                 .place = place,
                 .splits = splits,
                 .n_seen = 1 };

  g_assert_cmpuint (problem->n_causes, <=, 24);
  for (guint j = 0; j < problem->n_checks; j++)
    if (never_errs (problem, j))
      add_split (&self, j);
    else
      {
        place[j] = self.n_seen;
        self.n_seen *= problem->checks[j].n_outcomes + 1;
      }

  g_autofree double *value = g_new (double, self.n_seen * self.n_sets);
  g_autofree double *mass = g_new (double, 2 * self.n_sets);

  self.value = value;
  self.mass = mass;
  self.offer = mass + self.n_sets;
  for (gsize seen = self.n_seen; seen-- > 0;)
    solve_seen (&self, seen);
  return value[self.n_sets - 1] / mass[self.n_sets - 1];
}
