/* plan-rivals.c: simple rules for the next action, to compare with.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bits told by a check: H(b) − Σ P(o) H(b|o); unnormalised W H = W log W − Σ w log w. One step:
 * Q_j = t_j W + Σ_o U(w L_jo), U the cost of repairing straight away.
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "plan-policy.h"
#include "rw-repair-order.h"

#define MOST_CAUSES 64
#define MOST_CHECKS 64

static const double sure = 0.95, dull = 0.005;

/* Living causes only, as a compact list: what all rules look at. */
typedef struct
{
  guint  n;
  guint  cause[MOST_CAUSES];
  double w[MOST_CAUSES], c[MOST_CAUSES];
  double mass;
} Live;

static void
gather (Live              *self,
        const RwProblem   *problem,
        const RwPlanState *state)
{
  self->n = 0;
  self->mass = 0;
  for (guint i = 0; i < problem->n_causes; i++)
    if (state->weights[i] > 0)
      {
        self->cause[self->n] = i;
        self->w[self->n] = state->weights[i];
        self->c[self->n++] = problem->causes[i].repair_minutes;
        self->mass += state->weights[i];
      }
}

/* After an outcome. Weights up to @tiny are forgotten. */
static void
narrow (const Live      *self,
        const RwProblem *problem,
        guint            check,
        guint            outcome,
        double           tiny,
        Live            *out)
{
  out->n = 0;
  out->mass = 0;
  for (guint k = 0; k < self->n; k++)
    {
      const double w = self->w[k] * rw_problem_chance (problem, check, outcome, self->cause[k]);

      if (!(w > tiny))
        continue;
      out->cause[out->n] = self->cause[k];
      out->w[out->n] = w;
      out->c[out->n++] = self->c[k];
      out->mass += w;
    }
}

static double
repairs (const Live *self)
{
  return rw_repair_cost (self->n, self->w, self->c);
}

static PolicyMove
first_repair (const Live *self)
{
  return (PolicyMove){ RW_ACTION_REPAIR, self->cause[rw_repair_best (self->n, self->w, self->c)] };
}

/* Bits × weight. */
static double
doubt (const Live *self)
{
  double sum = self->mass > 0 ? self->mass * log2 (self->mass) : 0;

  for (guint k = 0; k < self->n; k++)
    sum -= self->w[k] * log2 (self->w[k]);
  return sum;
}

/* Bits told by a check × weight. */
static double
bits_told (const Live      *self,
           const RwProblem *problem,
           guint            check)
{
  double bits = doubt (self);
  Live after;

  for (guint o = 0; o < problem->checks[check].n_outcomes; o++)
    {
      narrow (self, problem, check, o, 0, &after);
      bits -= doubt (&after);
    }
  return bits;
}

/* Minutes × weight when a check is taken first, then repairs. */
static double
one_step (const Live      *self,
          const RwProblem *problem,
          guint            check)
{
  double value = problem->checks[check].minutes * self->mass;
  Live after;

  for (guint o = 0; o < problem->checks[check].n_outcomes; o++)
    {
      narrow (self, problem, check, o, 0, &after);
      value += repairs (&after);
    }
  return value;
}

typedef enum
{
  BY_BITS,
  BY_BITS_A_MINUTE,
  BY_ONE_STEP,
} Score;

/* The best check by a score, if any passes the gate. */
static PolicyMove
best_check (const RwProblem   *problem,
            const RwPlanState *state,
            Score              score,
            gboolean           gated)
{
  PolicyMove best = { RW_ACTION_NONE, 0 };
  double top = -INFINITY;
  Live live;

  gather (&live, problem, state);

  const double stay = repairs (&live) * (1 - 1e-12);

  for (guint j = 0; j < problem->n_checks; j++)
    {
      double s;

      if (state->used[j])
        continue;

      const double bits = bits_told (&live, problem, j);
      const double value = gated ? one_step (&live, problem, j) : 0;

      s = score == BY_BITS ? bits : score == BY_ONE_STEP ? -value : bits / problem->checks[j].minutes;
      if ((gated ? value >= stay : bits < dull * live.mass) || s <= top)
        continue;
      top = s;
      best = (PolicyMove){ RW_ACTION_CHECK, j };
    }
  return best.kind != RW_ACTION_NONE ? best : first_repair (&live);
}

PolicyMove
policy_gain (const RwProblem   *problem,
             const RwPlanState *state,
             gconstpointer      data)
{
  return best_check (problem, state, BY_BITS, TRUE);
}

PolicyMove
policy_gain_per_minute (const RwProblem   *problem,
                        const RwPlanState *state,
                        gconstpointer      data)
{
  return best_check (problem, state, BY_BITS_A_MINUTE, TRUE);
}

PolicyMove
policy_one_step (const RwProblem   *problem,
                 const RwPlanState *state,
                 gconstpointer      data)
{
  return best_check (problem, state, BY_ONE_STEP, TRUE);
}

PolicyMove
policy_gain_sure (const RwProblem   *problem,
                  const RwPlanState *state,
                  gconstpointer      data)
{
  Live live;

  gather (&live, problem, state);
  for (guint k = 0; k < live.n; k++)
    if (live.w[k] >= sure * live.mass)
      return first_repair (&live);
  return best_check (problem, state, BY_BITS, FALSE);
}

PolicyMove
policy_likeliest (const RwProblem   *problem,
                  const RwPlanState *state,
                  gconstpointer      data)
{
  guint best = 0;

  for (guint i = 1; i < problem->n_causes; i++)
    if (state->weights[i] > state->weights[best])
      best = i;
  return (PolicyMove){ RW_ACTION_REPAIR, best };
}

/* The cheapest thing that can still make a difference. */
PolicyMove
policy_cheapest (const RwProblem   *problem,
                 const RwPlanState *state,
                 gconstpointer      data)
{
  PolicyMove best = { RW_ACTION_NONE, 0 };
  double least = INFINITY;
  Live live;

  gather (&live, problem, state);
  for (guint k = 0; k < live.n; k++)
    if (live.c[k] < least)
      {
        least = live.c[k];
        best = (PolicyMove){ RW_ACTION_REPAIR, live.cause[k] };
      }
  for (guint j = 0; j < problem->n_checks; j++)
    {
      if (state->used[j] || problem->checks[j].minutes >= least
          || bits_told (&live, problem, j) < 1e-9 * live.mass)
        continue;
      least = problem->checks[j].minutes;
      best = (PolicyMove){ RW_ACTION_CHECK, j };
    }
  return best;
}

/* --- four steps --------------------------------------------------------------------------------- */

static const double forgotten = 1e-4; /* share of the mass of a node */

enum
{
  STEPS = 4,
  WEIGHED = 10,
  FOLLOWED = 4,
};

typedef struct
{
  guint  check;
  double score;
} Ranked;

/* Brings the best @want to the front. */
static guint
front (Ranked *list,
       guint   n,
       guint   want)
{
  for (guint k = 0; k < MIN (n, want); k++)
    for (guint l = k + 1; l < n; l++)
      if (list[l].score > list[k].score)
        {
          const Ranked it = list[k];

          list[k] = list[l];
          list[l] = it;
        }
  return MIN (n, want);
}

/* The checks to follow: of those that tell most a minute, those that save most a minute.
 * *least: the lowest one-step value or the present one. */
static guint
pick (const Live      *live,
      const RwProblem *problem,
      const gboolean  *used,
      Ranked          *list,
      double          *least,
      PolicyMove      *move)
{
  const double stay = *least;
  guint n = 0;

  for (guint j = 0; j < problem->n_checks; j++)
    {
      const double bits = used[j] ? 0 : bits_told (live, problem, j);

      if (bits > 1e-12 * live->mass)
        list[n++] = (Ranked){ j, bits / problem->checks[j].minutes };
    }
  n = front (list, n, WEIGHED);
  for (guint k = 0; k < n; k++)
    {
      const guint j = list[k].check;
      const double minutes = problem->checks[j].minutes;
      const double value = one_step (live, problem, j);

      if (value < *least * (1 - 1e-12))
        {
          *least = value;
          *move = (PolicyMove){ RW_ACTION_CHECK, j };
        }
      list[k].score = (stay - (value - minutes * live->mass)) / minutes;
    }
  return front (list, n, FOLLOWED);
}

/* V_steps and its first move. */
static double
look (const Live      *live,
      const RwProblem *problem,
      gboolean        *used,
      guint            steps,
      PolicyMove      *move)
{
  Ranked list[MOST_CHECKS];
  double best = repairs (live);
  PolicyMove below;
  Live next;

  if (live->n == 0)
    return 0;
  *move = first_repair (live);
  if (steps == 0 || live->n < 2)
    return best;

  const guint n = pick (live, problem, used, list, &best, move);

  for (guint k = 0; k < n && steps > 1; k++)
    {
      const guint j = list[k].check;
      double v = problem->checks[j].minutes * live->mass;

      used[j] = TRUE;
      for (guint o = 0; o < problem->checks[j].n_outcomes && v < best; o++)
        {
          narrow (live, problem, j, o, forgotten * live->mass, &next);
          v += look (&next, problem, used, steps - 1, &below);
        }
      used[j] = FALSE;
      if (v < best * (1 - 1e-12))
        {
          best = v;
          *move = (PolicyMove){ RW_ACTION_CHECK, j };
        }
    }

  const guint r = (guint) rw_repair_best (live->n, live->w, live->c);
  const double c = live->c[r];

  next = *live;
  next.mass -= next.w[r];
  next.n--;
  memmove (next.w + r, next.w + r + 1, (next.n - r) * sizeof (double));
  memmove (next.c + r, next.c + r + 1, (next.n - r) * sizeof (double));
  memmove (next.cause + r, next.cause + r + 1, (next.n - r) * sizeof (guint));

  const double v = steps > 1 ? c * live->mass + look (&next, problem, used, steps - 1, &below)
                             : (double) INFINITY;

  if (v < best * (1 - 1e-12))
    {
      best = v;
      *move = first_repair (live);
    }
  return best;
}

PolicyMove
policy_four_step (const RwProblem   *problem,
                  const RwPlanState *state,
                  gconstpointer      data)
{
  g_autofree gboolean *used = g_memdup2 (state->used, problem->n_checks * sizeof (gboolean));
  PolicyMove move = { RW_ACTION_NONE, 0 };
  Live live;

  gather (&live, problem, state);
  look (&live, problem, used, STEPS, &move);
  return move;
}
