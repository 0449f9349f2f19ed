/* rw-plan-look.c: the value of a branch, looked at a few steps ahead.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * With weights left unnormalised, W their sum, and U the cost of repairing straight away
 * (rw-repair-order):
 *   V_0 = U;
 *   V_d (w) = min { U (w), min_j t_j W + Σ_o V_{d−1} (w · L_jo), c_i W + V_{d−1} (w without i) }.
 * Every V_d is the cost of a plan that exists, so it is never below the optimum and never
 * above one step.
 *
 * A beam keeps it affordable. At a node all checks are screened by the bits they tell a
 * minute. Of check j, with P_o the weight of outcome o and h_j (i) = −Σ_o L_jo(i) log2 L_jo(i)
 * the doubt about the outcome that is left when the cause is i, they are times W
 *   W log2 W − Σ_o P_o log2 P_o − Σ_i w_i h_j (i);
 * the h are worked out once, so a check takes a logarithm an outcome (Cover & Thomas, Elements
 * of Information Theory: I (X; Y) = H (Y) − H (Y | X)). The best few are weighed by one step
 * of V, and the best of those by minutes saved a minute are expanded; of repairs only the
 * first by weight/minutes.
 *
 * A branch is cut once what it has cost, plus Σ c w of the outcomes yet to come (the cost if
 * their cause were known), reaches the best. The same outcomes in another order give the
 * same weights, so values are remembered under a key that does not depend on the order
 * (Zobrist 1970).
 */
#include "config.h"

#include "rw-plan-look.h"

#include <math.h>
#include <string.h>

#include "rw-repair-order.h"

enum
{
  N_KNOWN = 1 << 14, /* branches remembered */
};

static const double negligible = 3e-4;    /* share of the parent's weight */
/* What a branch and an outcome cost however few causes are alive, so that work stays in
 * proportion to time. */
static const guint node_work = 8;
static const guint outcome_work = 3;

static const double least_minutes = 0.05; /* a check that costs nothing must not divide by it */

typedef struct
{
  guint64 key;
  double  value;
} Known;

struct _RwPlanLook
{
  const RwProblem  *problem;
  guint             setup;      /* at the root */
  double            repairs;    /* U at the root */
  double           *minutes;    /* [check · n_setups + setup] */
  guint            *after;      /* [check · n_setups + setup]: the setup it leaves */
  gboolean         *used;       /* [n_checks], on the way to the branch looked at */
  guint             n_levels;
  RwPlanLive       *levels;     /* [n_levels], the root first */
  RwPlanCandidate **candidates; /* [n_levels][n_checks] */
  RwPlanLive        scratch;    /* for leaves */
  double           *doubt;      /* [check · n_causes + cause]: h of the head comment */
  guint64          *marks;      /* [check · MAX_OUTCOMES + outcome], then [cause]: for keys */
  Known            *known;      /* [N_KNOWN] */
  RwPlanWidth       width;
  guint64           work_left;
  gboolean          spent;
  gboolean          cut_off;
};

/* Steele, Lea & Flood 2014, "SplitMix": a fixed sequence, so that searches repeat exactly. */
static guint64
split_mix (guint64 *seed)
{
  guint64 z = (*seed += 0x9e3779b97f4a7c15u);

  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
  z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
  return z ^ (z >> 31);
}

static void
make_marks (RwPlanLook *self)
{
  const guint n = self->problem->n_checks * RW_PROBLEM_MAX_OUTCOMES + self->problem->n_causes;
  guint64 seed = 1;

  self->marks = g_new (guint64, n);
  for (guint k = 0; k < n; k++)
    self->marks[k] = split_mix (&seed);
}

static inline guint64
mark_of_outcome (const RwPlanLook *self,
                 guint             check,
                 guint             outcome)
{
  return self->marks[check * RW_PROBLEM_MAX_OUTCOMES + outcome];
}

static inline guint64
mark_of_cause (const RwPlanLook *self,
               guint             cause)
{
  return self->marks[self->problem->n_checks * RW_PROBLEM_MAX_OUTCOMES + cause];
}

static inline double
x_log_x (double x)
{
  return x > 0 ? x * log2 (x) : 0;
}

static void
make_doubts (RwPlanLook *self)
{
  const guint n = self->problem->n_causes;

  self->doubt = g_new0 (double, self->problem->n_checks * n);
  for (guint j = 0; j < self->problem->n_checks; j++)
    for (guint o = 0; o < self->problem->checks[j].n_outcomes; o++)
      for (guint i = 0; i < n; i++)
        self->doubt[j * n + i] -= x_log_x (rw_problem_chance (self->problem, j, o, i));
}

/* Where a branch is remembered; *key: what must stand there. */
static Known *
known_slot (const RwPlanLook *self,
            const RwPlanLive *live,
            guint             setup,
            guint             depth,
            guint64          *key)
{
  guint64 seed = live->key + depth * RW_PROBLEM_MAX_SETUPS + setup;

  *key = split_mix (&seed);
  return &self->known[*key % N_KNOWN];
}

RwPlanLook *
rw_plan_look_new (const RwProblem   *problem,
                  const RwPlanState *state,
                  guint              depth)
{
  RwPlanLook *self = g_new0 (RwPlanLook, 1);
  const guint n_setups = problem->n_setups;

  self->problem = problem;
  self->setup = state->setup;
  self->minutes = g_new (double, problem->n_checks * n_setups);
  self->after = g_new (guint, problem->n_checks * n_setups);
  for (guint j = 0; j < problem->n_checks; j++)
    for (guint s = 0; s < n_setups; s++)
      self->minutes[j * n_setups + s] = rw_problem_minutes (problem, j, s,
                                                            &self->after[j * n_setups + s]);
  self->used = g_memdup2 (state->used, problem->n_checks * sizeof (gboolean));
  self->n_levels = depth + 1;
  self->levels = g_new0 (RwPlanLive, self->n_levels);
  self->candidates = g_new0 (RwPlanCandidate *, self->n_levels);
  for (guint l = 0; l < self->n_levels; l++)
    {
      rw_plan_live_init (&self->levels[l], problem->n_causes);
      self->candidates[l] = g_new (RwPlanCandidate, problem->n_checks);
    }
  rw_plan_live_init (&self->scratch, problem->n_causes);
  rw_plan_live_start (&self->levels[0], problem, state);
  self->repairs = rw_repair_cost (self->levels[0].n, self->levels[0].w, self->levels[0].c);
  make_marks (self);
  make_doubts (self);
  self->known = g_new0 (Known, N_KNOWN);
  self->work_left = G_MAXUINT64;
  return self;
}

void
rw_plan_look_free (RwPlanLook *self)
{
  if (self == NULL)
    return;
  for (guint l = 0; l < self->n_levels; l++)
    {
      rw_plan_live_clear (&self->levels[l]);
      g_free (self->candidates[l]);
    }
  rw_plan_live_clear (&self->scratch);
  g_free (self->levels);
  g_free (self->candidates);
  g_free (self->minutes);
  g_free (self->after);
  g_free (self->used);
  g_free (self->doubt);
  g_free (self->marks);
  g_free (self->known);
  g_free (self);
}

const RwPlanLive *
rw_plan_look_get_root (const RwPlanLook *self)
{
  return &self->levels[0];
}

void
rw_plan_look_set_work (RwPlanLook *self,
                       guint64     work)
{
  self->work_left = work;
}

guint64
rw_plan_look_get_work (const RwPlanLook *self)
{
  return self->work_left;
}

gboolean
rw_plan_look_is_spent (const RwPlanLook *self)
{
  return self->spent;
}

void
rw_plan_look_set_width (RwPlanLook *self,
                        RwPlanWidth width)
{
  self->width = width;
  self->cut_off = FALSE;
  memset (self->known, 0, N_KNOWN * sizeof *self->known);
}

gboolean
rw_plan_look_is_cut_off (const RwPlanLook *self)
{
  return self->cut_off;
}

double
rw_plan_look_minutes (const RwPlanLook *self,
                      guint             check,
                      guint             setup)
{
  return self->minutes[check * self->problem->n_setups + setup];
}

static inline const double *
chance_row (const RwPlanLook *self,
            guint             check,
            guint             outcome)
{
  return self->problem->checks[check].chance + outcome * self->problem->n_causes;
}

static void
spend (RwPlanLook *self,
       guint64     work)
{
  if (work > self->work_left)
    self->spent = TRUE;
  else
    self->work_left -= work;
}

static double
leaf (RwPlanLook       *self,
      const RwPlanLive *live)
{
  spend (self, node_work + live->n + (guint64) live->n * live->n / 2);
  return rw_repair_cost (live->n, live->w, live->c);
}

/* t W + Σ U of the outcomes. */
static double
one_step (RwPlanLook       *self,
          const RwPlanLive *live,
          double            mass,
          guint             check,
          guint             setup)
{
  double value = rw_plan_look_minutes (self, check, setup) * mass;

  for (guint o = 0; o < self->problem->checks[check].n_outcomes; o++)
    {
      value += rw_plan_live_narrow (live, chance_row (self, check, o), negligible * mass,
                                    &self->scratch, NULL);
      value += leaf (self, &self->scratch);
    }
  return value;
}

/* Bits × weight that a check tells; 0 when it tells nothing. @all: W log2 W. */
static double
told (RwPlanLook       *self,
      const RwPlanLive *live,
      double            mass,
      double            all,
      guint             check)
{
  const double *doubt = self->doubt + check * self->problem->n_causes;
  double bits = all;

  spend (self, (guint64) (live->n + outcome_work) * self->problem->checks[check].n_outcomes);
  for (guint o = 0; o < self->problem->checks[check].n_outcomes; o++)
    {
      const double *row = chance_row (self, check, o);
      double p = 0;

      for (guint k = 0; k < live->n; k++)
        p += live->w[k] * row[live->cause[k]];
      bits -= x_log_x (p);
    }
  for (guint k = 0; k < live->n; k++)
    bits -= live->w[k] * doubt[live->cause[k]];
  return bits > 1e-12 * mass ? bits : 0;
}

static inline gboolean
precedes (const RwPlanCandidate *a,
          const RwPlanCandidate *b)
{
  return a->score > b->score || (a->score == b->score && a->check < b->check);
}

/* Few of many are wanted, so picking them one by one beats sorting. */
guint
rw_plan_candidates_front (RwPlanCandidate *candidates,
                          guint            n,
                          guint            want)
{
  const guint m = MIN (n, want);

  for (guint k = 0; k < m; k++)
    {
      guint best = k;

      for (guint l = k + 1; l < n; l++)
        if (precedes (&candidates[l], &candidates[best]))
          best = l;

      const RwPlanCandidate it = candidates[best];

      candidates[best] = candidates[k];
      candidates[k] = it;
    }
  return m;
}

static guint
screen (RwPlanLook       *self,
        const RwPlanLive *live,
        double            mass,
        guint             setup,
        RwPlanCandidate  *out)
{
  const double all = x_log_x (mass);
  guint n = 0;

  for (guint j = 0; j < self->problem->n_checks; j++)
    {
      const double gain = self->used[j] ? 0 : told (self, live, mass, all, j);

      if (gain > 0)
        out[n++] = (RwPlanCandidate) {
          j, gain / (rw_plan_look_minutes (self, j, setup) + least_minutes), 0
        };
    }
  return n;
}

/* Returns the least value, or @repairs (U of what is alive) when that is less. */
static double
weigh (RwPlanLook       *self,
       const RwPlanLive *live,
       double            mass,
       double            repairs,
       guint             setup,
       RwPlanCandidate  *candidates,
       guint             n)
{
  double best = repairs;

  for (guint k = 0; k < n; k++)
    {
      RwPlanCandidate *it = &candidates[k];
      const double minutes = rw_plan_look_minutes (self, it->check, setup);

      it->value = one_step (self, live, mass, it->check, setup);
      it->score = (repairs - (it->value - minutes * mass)) / ((minutes + least_minutes) * mass);
      best = MIN (best, it->value);
    }
  return best;
}

guint
rw_plan_look_screen (RwPlanLook      *self,
                     RwPlanCandidate *out)
{
  const RwPlanLive *root = &self->levels[0];

  return screen (self, root, rw_plan_live_mass (root), self->setup, out);
}

void
rw_plan_look_weigh (RwPlanLook      *self,
                    RwPlanCandidate *candidates,
                    guint            n)
{
  const RwPlanLive *root = &self->levels[0];

  weigh (self, root, rw_plan_live_mass (root), self->repairs, self->setup, candidates, n);
}

static double look (RwPlanLook *self,
                    guint       level,
                    guint       setup,
                    guint       depth);

/* Value of a check with @depth − 1 steps after it; stops early once it cannot be below @best. */
static double
check_then (RwPlanLook *self,
            guint       level,
            guint       setup,
            guint       depth,
            guint       check,
            double      best)
{
  const RwPlanLive *live = &self->levels[level];
  RwPlanLive *child = &self->levels[level + 1];
  const double mass = rw_plan_live_mass (live);
  const guint after = self->after[check * self->problem->n_setups + setup];
  double bound = rw_plan_look_minutes (self, check, setup) * mass
                 + rw_repair_cost_known (live->n, live->w, live->c);

  self->used[check] = TRUE;
  for (guint o = 0; o < self->problem->checks[check].n_outcomes && bound < best
       && !self->spent; o++)
    {
      double known = 0;

      bound += rw_plan_live_narrow (live, chance_row (self, check, o), negligible * mass, child,
                                    &known);
      child->key = live->key ^ mark_of_outcome (self, check, o);
      bound += look (self, level + 1, after, depth - 1) - known;
    }
  self->used[check] = FALSE;
  return bound;
}

/* Value of a repair with @depth − 1 steps after it failed. */
static double
repair_then (RwPlanLook *self,
             guint       level,
             guint       setup,
             guint       depth,
             guint       which)
{
  const RwPlanLive *live = &self->levels[level];
  RwPlanLive *child = &self->levels[level + 1];

  rw_plan_live_without (live, which, child);
  child->key = live->key ^ mark_of_cause (self, live->cause[which]);
  return live->c[which] * rw_plan_live_mass (live) + look (self, level + 1, setup, depth - 1);
}

/* V_depth of a branch not met before; depth ≥ 1, two causes or more alive. */
static double
look_afresh (RwPlanLook *self,
             guint       level,
             guint       setup,
             guint       depth)
{
  const RwPlanLive *live = &self->levels[level];
  RwPlanCandidate *candidates = self->candidates[level];
  const double mass = rw_plan_live_mass (live);
  const double repairs = leaf (self, live);
  guint n = screen (self, live, mass, setup, candidates);

  if (n > (depth > 1 ? self->width.expanded : 0))
    self->cut_off = TRUE;
  n = rw_plan_candidates_front (candidates, n,
                                depth > 1 ? self->width.screened : self->width.screened_last);

  double best = weigh (self, live, mass, repairs, setup, candidates, n);

  if (depth == 1)
    return best;
  n = rw_plan_candidates_front (candidates, n, self->width.expanded);
  for (guint k = 0; k < n; k++)
    {
      const double value = check_then (self, level, setup, depth, candidates[k].check, best);

      best = MIN (best, value);
    }

  const int first = rw_repair_best (live->n, live->w, live->c);
  const double value = repair_then (self, level, setup, depth, (guint) first);

  return MIN (best, value);
}

static double
look (RwPlanLook *self,
      guint       level,
      guint       setup,
      guint       depth)
{
  const RwPlanLive *live = &self->levels[level];

  if (depth == 0 || live->n < 2 || self->spent)
    return leaf (self, live);

  guint64 key = 0;
  Known *slot = known_slot (self, live, setup, depth, &key);

  if (slot->key == key)
    return slot->value;

  const double value = look_afresh (self, level, setup, depth);

  if (!self->spent)
    *slot = (Known) { key, value };
  return value;
}

double
rw_plan_look_check (RwPlanLook *self,
                    guint       check,
                    guint       depth)
{
  return check_then (self, 0, self->setup, depth, check, (double) INFINITY);
}

double
rw_plan_look_repair (RwPlanLook *self,
                     guint       which,
                     guint       depth)
{
  return repair_then (self, 0, self->setup, depth, which);
}
