/* rw-advice-reach.c: whether one reading alone can be worth taking, and what is sure enough, in words.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One-step value of check j (Heckerman, Breese & Rommelse 1995), U the cost of repairing straight away:
 *   U (w) − Σ_o U (w ∘ L_jo) − t_j Σ w,
 * t_j with the change of setup. The gross part is never below 0, and is exactly 0 where no outcome changes the order
 * of the repairs, even if two readings together would. So where this is 0 or below for every check and the search
 * suggests one all the same, it is the first of two or more that pay together. Reserved checks count only when it is
 * one of them that is suggested: else they are not to be considered.
 */
#include "config.h"

#include "rw-advice-reach.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"
#include "rw-repair-order.h"

static const double least_value = 1e-9; /* minutes: rounding */

/* The causes with any weight, close together. *w, *c: [n_causes]; their number. */
static guint
gather_live (const RwProblem   *problem,
             const RwPlanState *state,
             double            *w,
             double            *c,
             guint             *live)
{
  guint n = 0;

  for (guint i = 0; i < problem->n_causes; i++)
    if (state->weights[i] > 0)
      {
        w[n] = state->weights[i];
        c[n] = problem->causes[i].repair_minutes;
        live[n++] = i;
      }
  return n;
}

static gboolean
pays_alone (const RwProblem   *problem,
            const RwPlanState *state,
            guint              check)
{
  g_autofree double *w = g_new (double, MAX (1, problem->n_causes));
  g_autofree double *c = g_new (double, MAX (1, problem->n_causes));
  g_autofree double *after = g_new (double, MAX (1, problem->n_causes));
  g_autofree guint *live = g_new (guint, MAX (1, problem->n_causes));
  const guint n = gather_live (problem, state, w, c, live);
  const double mass = rw_plan_state_mass (state, problem);
  double value = rw_repair_cost (n, w, c)
                 - mass * rw_problem_minutes (problem, check, state->setup, NULL);

  for (guint o = 0; o < problem->checks[check].n_outcomes && value > 0; o++)
    {
      for (guint k = 0; k < n; k++)
        after[k] = w[k] * rw_problem_chance (problem, check, o, live[k]);
      value -= rw_repair_cost (n, after, c);
    }
  return value > least_value * mass;
}

RwAdviceReach
rw_advice_reach_of (const RwProblem    *problem,
                    const RwPlanState  *state,
                    const RwPlanOption *best)
{
  const gboolean reserved = best->kind == RW_ACTION_CHECK && problem->checks[best->index].reserved;

  for (guint j = 0; j < problem->n_checks; j++)
    if (!state->used[j] && (reserved || !problem->checks[j].reserved) && pays_alone (problem, state, j))
      return RW_ADVICE_ONE_READING;
  return best->kind == RW_ACTION_CHECK ? RW_ADVICE_TWO_READINGS : RW_ADVICE_NO_READING;
}

/* --- words -------------------------------------------------------------------------------------- */

static gboolean
has_a_choice (const RwAdvice *self)
{
  return rw_advice_get_kind (self) == RW_ADVICE_CHECK || rw_advice_get_kind (self) == RW_ADVICE_REPAIR;
}

/* (transfer full) */
static char *
dup_minutes (double minutes)
{
  return rw_quantity_format_number (minutes, minutes < 9.95 && minutes != (int) minutes);
}

char *
rw_advice_dup_sure (const RwAdvice *self)
{
  const RwAdviceCheck *check = rw_advice_get_n_checks (self) > 0 ? rw_advice_get_ranked (self, 0) : NULL;

  if (!has_a_choice (self))
    return NULL;

  g_autofree char *repair = dup_minutes (rw_advice_get_repair_first (self));
  const char *title = rw_advice_get_repair (self)->repair.title;

  if (check == NULL)
    /* Translators: a repair, "Set the trim at the board", and minutes */
    return g_strdup_printf (_ ("“%s” is the thing to do now, about %s min until it is fixed: no check is left that "
                               "could tell more."),
                            title, repair);

  g_autofree char *measure = dup_minutes (rw_advice_get_check_first (self));

  if (rw_advice_is_sure_enough (self))
    /* Translators: a repair, minutes, a check, and minutes */
    return g_strdup_printf (_ ("Sure enough to repair: “%s” now takes about %s min until it is fixed, “%s” first "
                               "about %s min."),
                            title, repair, check->check->title, measure);
  /* Translators: a repair, minutes, a check, and minutes */
  return g_strdup_printf (_ ("Not sure enough to repair: “%s” now would take about %s min until it is fixed, “%s” "
                             "first about %s min."),
                          title, repair, check->check->title, measure);
}

char *
rw_advice_dup_reach (const RwAdvice *self)
{
  if (!has_a_choice (self) || rw_advice_get_reach (self) == RW_ADVICE_ONE_READING)
    return NULL;
  if (rw_advice_get_reach (self) == RW_ADVICE_TWO_READINGS)
    /* Translators: a check */
    return g_strdup_printf (_ ("No single reading can change the next step enough to be worth its minutes, but two "
                               "together can: start with “%s”."),
                            rw_advice_get_check (self)->check->title);
  return g_strdup (_ ("No reading can change the next step enough to be worth its minutes."));
}
