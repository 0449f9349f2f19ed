/* rw-plan-exact.c: the optimal plan of a small problem, by dynamic programming.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * With weights left unnormalised, the least expected minutes × weight of a state are
 *   U = min { t_j W + Σ_o U (after outcome o of check j) ; c_i W + U (without cause i) },
 *   U (∅) = 0.
 *
 * A state is (history, set, setup):
 *  - history: a number whose digit of check j is 0 while j is not taken and o + 1 after its
 *    outcome o. Only checks that err for some living cause have a digit; an outcome of an
 *    exact check only cuts the set down, and taking it again cannot split what is left, so
 *    it needs no memory.
 *  - set: bit k is the k-th cause that had weight at the start.
 * A check lifts the history or cuts the set, a repair cuts the set; so histories from the
 * last to the first, and within one the sets in rising order, meet every successor before
 * they need it.
 * Size: ∏ (outcomes + 1) · 2^causes · setups.
 */
#include "config.h"

#include "rw-plan-exact.h"

#include <math.h>
#include <string.h>

#define MAX_LIVE 24

typedef enum
{
  CHECK_USELESS, /* the same chances for every living cause, or already used */
  CHECK_EXACT,   /* each living cause has one outcome for certain */
  CHECK_ERRING,
} CheckClass;

typedef struct
{
  CheckClass class;
  gsize      radix;                          /* ERRING: weight of its digit */
  guint32    masks[RW_PROBLEM_MAX_OUTCOMES]; /* EXACT: the causes that show the outcome */
  double     minutes[RW_PROBLEM_MAX_SETUPS]; /* from a setup */
  guint      after[RW_PROBLEM_MAX_SETUPS];   /* the setup it leaves */
} CheckInfo;

struct _RwPlanExact
{
  const RwProblem *problem;
  guint            n;              /* living causes */
  guint            cause[MAX_LIVE]; /* index in the problem */
  double           weight[MAX_LIVE];
  double           minutes[MAX_LIVE]; /* of repair */
  guint            setup;
  CheckInfo       *checks;      /* [n_checks] */
  guint           *exact;       /* [n_exact]: the exact checks */
  guint            n_exact;
  gsize            n_histories;
  double          *value;       /* [((history · setups) + setup) << n | set] */
  double          *mass;        /* scratch while solving, [1 << n] */
  double          *offer;       /* the same */
};

static CheckClass
classify (const RwPlanExact *self,
          guint              check)
{
  const RwProblem *problem = self->problem;
  gboolean same = TRUE;
  gboolean exact = TRUE;

  for (guint o = 0; o < problem->checks[check].n_outcomes; o++)
    {
      const double first = rw_problem_chance (problem, check, o, self->cause[0]);

      for (guint k = 0; k < self->n; k++)
        {
          const double p = rw_problem_chance (problem, check, o, self->cause[k]);

          same = same && p == first;
          exact = exact && (p == 0 || p == 1);
        }
    }
  return same ? CHECK_USELESS : exact ? CHECK_EXACT : CHECK_ERRING;
}

static void
describe_check (RwPlanExact *self,
                guint        check)
{
  CheckInfo *info = &self->checks[check];

  for (guint s = 0; s < self->problem->n_setups; s++)
    info->minutes[s] = rw_problem_minutes (self->problem, check, s, &info->after[s]);
  if (info->class != CHECK_EXACT)
    return;
  for (guint o = 0; o < self->problem->checks[check].n_outcomes; o++)
    for (guint k = 0; k < self->n; k++)
      if (rw_problem_chance (self->problem, check, o, self->cause[k]) > 0)
        info->masks[o] |= 1u << k;
}

/* FALSE when the table would not fit. */
static gboolean
size_up (RwPlanExact       *self,
         const RwPlanState *state,
         gsize              max_states)
{
  const RwProblem *problem = self->problem;

  for (guint i = 0; i < problem->n_causes; i++)
    if (state->weights[i] > 0)
      {
        if (self->n == MAX_LIVE)
          return FALSE;
        self->cause[self->n] = i;
        self->minutes[self->n] = problem->causes[i].repair_minutes;
        self->weight[self->n++] = state->weights[i];
      }
  if (self->n == 0)
    return FALSE;

  const gsize room = max_states / problem->n_setups >> self->n;

  self->n_histories = 1;
  for (guint j = 0; j < problem->n_checks; j++)
    {
      CheckInfo *info = &self->checks[j];

      info->class = state->used[j] ? CHECK_USELESS : classify (self, j);
      describe_check (self, j);
      if (info->class == CHECK_EXACT)
        self->exact[self->n_exact++] = j;
      if (info->class != CHECK_ERRING)
        continue;
      info->radix = self->n_histories;
      self->n_histories *= problem->checks[j].n_outcomes + 1;
      if (self->n_histories > room)
        return FALSE;
    }
  return self->n_histories <= room;
}

static inline double *
block (const RwPlanExact *self,
       gsize              history,
       guint              setup)
{
  return self->value + ((history * self->problem->n_setups + setup) << self->n);
}

static inline guint
digit (const RwPlanExact *self,
       gsize              history,
       guint              check)
{
  return (guint) (history / self->checks[check].radix
                  % (self->problem->checks[check].n_outcomes + 1));
}

/* Weight of a living cause after a history. */
static double
weight_after (const RwPlanExact *self,
              gsize              history,
              guint              k)
{
  double w = self->weight[k];

  for (guint j = 0; history > 0 && j < self->problem->n_checks; j++)
    {
      const guint d = self->checks[j].class == CHECK_ERRING ? digit (self, history, j) : 0;

      if (d > 0)
        w *= rw_problem_chance (self->problem, j, d - 1, self->cause[k]);
    }
  return w;
}

/* mass[set] for every set: the sum without its lowest cause, plus that cause. */
static void
fill_mass (RwPlanExact *self,
           gsize        history)
{
  double w[MAX_LIVE];

  for (guint k = 0; k < self->n; k++)
    w[k] = weight_after (self, history, k);
  self->mass[0] = 0;
  for (guint32 set = 1; set < 1u << self->n; set++)
    self->mass[set] = self->mass[set & (set - 1)] + w[__builtin_ctz (set)];
}

/* Lowers the values of one history and setup by every erring check that is still to be had.
 * One outcome at a time over all sets, since a processor adds in rows. */
static void
take_erring (RwPlanExact *self,
             gsize        history,
             guint        setup)
{
  double *value = block (self, history, setup);
  const guint32 n_sets = 1u << self->n;

  for (guint j = 0; j < self->problem->n_checks; j++)
    {
      const CheckInfo *info = &self->checks[j];
      const double minutes = info->minutes[setup];

      if (info->class != CHECK_ERRING || digit (self, history, j) != 0)
        continue;
      for (guint32 set = 0; set < n_sets; set++)
        self->offer[set] = minutes * self->mass[set];
      for (guint o = 0; o < self->problem->checks[j].n_outcomes; o++)
        {
          const double *after = block (self, history + (o + 1) * info->radix, info->after[setup]);

          for (guint32 set = 0; set < n_sets; set++)
            self->offer[set] += after[set];
        }
      for (guint32 set = 0; set < n_sets; set++)
        value[set] = MIN (value[set], self->offer[set]);
    }
}

/* Value of an exact check; INFINITY when it cannot split the set. */
static double
exact_check_value (const RwPlanExact *self,
                   const CheckInfo   *info,
                   guint              n_outcomes,
                   gsize              history,
                   guint32            set,
                   guint              setup,
                   double             mass)
{
  const double *value = block (self, history, info->after[setup]);
  double v = info->minutes[setup] * mass;

  for (guint o = 0; o < n_outcomes; o++)
    {
      if ((set & info->masks[o]) == set)
        return INFINITY;
      v += value[set & info->masks[o]];
    }
  return v;
}

/* The least over exact checks and repairs of one set. */
static double
cut_set (const RwPlanExact *self,
         gsize              history,
         guint32            set,
         guint              setup)
{
  const double *value = block (self, history, setup);
  const double mass = self->mass[set];
  double best = INFINITY;

  for (guint32 left = set; left != 0; left &= left - 1)
    {
      const double v = self->minutes[__builtin_ctz (left)] * mass + value[set & ~(left & -left)];

      best = MIN (best, v);
    }
  for (guint e = 0; e < self->n_exact; e++)
    {
      const guint j = self->exact[e];
      const double v = exact_check_value (self, &self->checks[j],
                                          self->problem->checks[j].n_outcomes, history, set,
                                          setup, mass);

      best = MIN (best, v);
    }
  return best;
}

static void
solve_history (RwPlanExact *self,
               gsize        history)
{
  const guint32 n_sets = 1u << self->n;
  const guint n_setups = self->problem->n_setups;

  fill_mass (self, history);
  for (guint s = 0; s < n_setups; s++)
    {
      double *value = block (self, history, s);

      for (guint32 set = 0; set < n_sets; set++)
        value[set] = INFINITY;
      take_erring (self, history, s);
      value[0] = 0;
    }
  for (guint32 set = 1; set < n_sets; set++)
    for (guint s = 0; s < n_setups; s++)
      {
        double *value = block (self, history, s);
        const double v = cut_set (self, history, set, s);

        value[set] = MIN (value[set], v);
      }
}

RwPlanExact *
rw_plan_exact_new (const RwProblem   *problem,
                   const RwPlanState *state,
                   gsize              max_states)
{
  g_autoptr (RwPlanExact) self = g_new0 (RwPlanExact, 1);

  self->problem = problem;
  self->setup = state->setup;
  self->checks = g_new0 (CheckInfo, problem->n_checks);
  self->exact = g_new (guint, problem->n_checks);
  if (!size_up (self, state, max_states))
    return NULL;

  const gsize n_states = (self->n_histories * problem->n_setups) << self->n;

  self->value = g_try_new (double, n_states);
  self->mass = g_try_new (double, (gsize) 1 << self->n);
  self->offer = g_try_new (double, (gsize) 1 << self->n);
  if (self->value == NULL || self->mass == NULL || self->offer == NULL)
    return NULL;
  for (gsize h = self->n_histories; h-- > 0;)
    solve_history (self, h);
  return g_steal_pointer (&self);
}

void
rw_plan_exact_free (RwPlanExact *self)
{
  if (self == NULL)
    return;
  g_free (self->checks);
  g_free (self->exact);
  g_free (self->value);
  g_free (self->mass);
  g_free (self->offer);
  g_free (self);
}

RwPlanSpot
rw_plan_exact_start (const RwPlanExact *self)
{
  return (RwPlanSpot) { 0, (1u << self->n) - 1, self->setup };
}

double
rw_plan_exact_value (const RwPlanExact *self,
                     RwPlanSpot         spot)
{
  return block (self, spot.history, spot.setup)[spot.set];
}

double
rw_plan_exact_mass (const RwPlanExact *self,
                    RwPlanSpot         spot)
{
  double mass = 0;

  for (guint k = 0; k < self->n; k++)
    if ((spot.set & (1u << k)) != 0)
      mass += weight_after (self, spot.history, k);
  return mass;
}

/* INFINITY when it would tell nothing. */
static double
telling_value (const RwPlanExact *self,
               RwPlanSpot         spot,
               guint              check)
{
  const CheckInfo *info = &self->checks[check];
  const guint n_outcomes = self->problem->checks[check].n_outcomes;
  const double mass = rw_plan_exact_mass (self, spot);

  if (info->class == CHECK_EXACT)
    return exact_check_value (self, info, n_outcomes, spot.history, spot.set, spot.setup, mass);
  if (info->class != CHECK_ERRING || digit (self, spot.history, check) != 0)
    return INFINITY;

  double v = info->minutes[spot.setup] * mass;

  for (guint o = 0; o < n_outcomes; o++)
    v += rw_plan_exact_value (self, rw_plan_exact_after_check (self, spot, check, o));
  return v;
}

double
rw_plan_exact_check_value (const RwPlanExact *self,
                           RwPlanSpot         spot,
                           guint              check)
{
  const double v = telling_value (self, spot, check);

  if (isfinite (v))
    return v;

  const double minutes = self->checks[check].minutes[spot.setup];

  spot.setup = self->checks[check].after[spot.setup];
  return minutes * rw_plan_exact_mass (self, spot) + rw_plan_exact_value (self, spot);
}

int
rw_plan_exact_best_repair (const RwPlanExact *self,
                           RwPlanSpot         spot,
                           double            *value)
{
  const double mass = rw_plan_exact_mass (self, spot);
  int best = -1;

  *value = INFINITY;
  for (guint k = 0; k < self->n; k++)
    {
      const guint32 bit = 1u << k;

      if ((spot.set & bit) == 0)
        continue;

      const double v = self->problem->causes[self->cause[k]].repair_minutes * mass
                       + block (self, spot.history, spot.setup)[spot.set & ~bit];

      if (best < 0 || v < *value - 1e-12 * fabs (*value))
        {
          *value = v;
          best = (int) self->cause[k];
        }
    }
  return best;
}

RwActionKind
rw_plan_exact_best (const RwPlanExact *self,
                    RwPlanSpot         spot,
                    guint             *index)
{
  double repair_value = INFINITY;
  const int repair = rw_plan_exact_best_repair (self, spot, &repair_value);
  double best = INFINITY;

  if (repair < 0)
    return RW_ACTION_NONE;
  for (guint j = 0; j < self->problem->n_checks; j++)
    {
      const double v = telling_value (self, spot, j);

      if (isfinite (v) && (isinf (best) || v < best - 1e-12 * best))
        {
          best = v;
          *index = j;
        }
    }
  if (best < repair_value * (1 - 1e-12))
    return RW_ACTION_CHECK;
  *index = (guint) repair;
  return RW_ACTION_REPAIR;
}

RwPlanSpot
rw_plan_exact_after_check (const RwPlanExact *self,
                           RwPlanSpot         spot,
                           guint              check,
                           guint              outcome)
{
  const CheckInfo *info = &self->checks[check];

  spot.setup = info->after[spot.setup];
  if (info->class == CHECK_EXACT)
    spot.set &= info->masks[outcome];
  else if (info->class == CHECK_ERRING)
    spot.history += (outcome + 1) * info->radix;
  return spot;
}

RwPlanSpot
rw_plan_exact_after_repair (const RwPlanExact *self,
                            RwPlanSpot         spot,
                            guint              cause)
{
  for (guint k = 0; k < self->n; k++)
    if (self->cause[k] == cause)
      spot.set &= ~(1u << k);
  return spot;
}
