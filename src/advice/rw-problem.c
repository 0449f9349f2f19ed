/* rw-problem.c: a bare diagnosis-and-repair problem.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-problem.h"

#include <math.h>

RwProblem *
rw_problem_new (guint n_causes,
                guint n_checks)
{
  RwProblem *self = g_new0 (RwProblem, 1);

  self->n_causes = n_causes;
  self->causes = g_new0 (RwProblemCause, n_causes);
  self->n_checks = n_checks;
  self->checks = g_new0 (RwProblemCheck, n_checks);
  self->n_setups = 1;
  return self;
}

void
rw_problem_free (RwProblem *self)
{
  if (self == NULL)
    return;
  for (guint i = 0; i < self->n_causes; i++)
    g_free (self->causes[i].id);
  for (guint j = 0; j < self->n_checks; j++)
    {
      g_free (self->checks[j].id);
      g_free (self->checks[j].chance);
    }
  g_free (self->causes);
  g_free (self->checks);
  g_free (self);
}

void
rw_problem_set_outcomes (RwProblem *self,
                         guint      check,
                         guint      n_outcomes)
{
  g_return_if_fail (check < self->n_checks && n_outcomes <= RW_PROBLEM_MAX_OUTCOMES);

  RwProblemCheck *it = &self->checks[check];

  g_free (it->chance);
  it->n_outcomes = n_outcomes;
  it->chance = g_new0 (double, n_outcomes * self->n_causes);
}

double
rw_problem_minutes (const RwProblem *self,
                    guint            check,
                    guint            setup,
                    guint           *after)
{
  const RwProblemCheck *it = &self->checks[check];
  double cheapest = INFINITY;
  guint best = setup;

  for (guint s = 0; s < self->n_setups; s++)
    if ((it->setups == 0 || (it->setups & (1u << s)) != 0) && self->change[setup][s] < cheapest)
      {
        cheapest = self->change[setup][s];
        best = s;
      }
  if (after != NULL)
    *after = best;
  return it->minutes + (isfinite (cheapest) ? cheapest : 0);
}
