/* rw-plan-live.c: the causes still alive in one branch of the look-ahead.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Causes with next to no weight in a branch are left out of its search and charged as if
 * they were repaired last: w_d (c_d + Σ c of those kept).
 */
#include "config.h"

#include "rw-plan-live.h"

void
rw_plan_live_init (RwPlanLive *self,
                   guint       room)
{
  self->n = 0;
  self->w = g_new (double, room);
  self->c = g_new (double, room);
  self->cause = g_new (guint, room);
  self->key = 0;
}

void
rw_plan_live_clear (RwPlanLive *self)
{
  g_clear_pointer (&self->w, g_free);
  g_clear_pointer (&self->c, g_free);
  g_clear_pointer (&self->cause, g_free);
}

void
rw_plan_live_start (RwPlanLive        *self,
                    const RwProblem   *problem,
                    const RwPlanState *state)
{
  self->n = 0;
  self->key = 0;
  for (guint i = 0; i < problem->n_causes; i++)
    if (state->weights[i] > 0)
      {
        self->w[self->n] = state->weights[i];
        self->c[self->n] = problem->causes[i].repair_minutes;
        self->cause[self->n++] = i;
      }
}

double
rw_plan_live_mass (const RwPlanLive *self)
{
  double mass = 0;

  for (guint k = 0; k < self->n; k++)
    mass += self->w[k];
  return mass;
}

/* Without branches: which causes fall out is as good as random to a processor. */
double
rw_plan_live_narrow (const RwPlanLive *parent,
                     const double     *chance,
                     double            tiny,
                     RwPlanLive       *out,
                     double           *known)
{
  double dropped_w = 0, dropped_cw = 0, kept_c = 0, all_cw = 0;
  guint n = 0;

  for (guint k = 0; k < parent->n; k++)
    {
      const double w = parent->w[k] * chance[parent->cause[k]];
      const double c = parent->c[k];
      const gboolean keep = w > tiny;
      const double lost = keep ? 0 : w;

      out->w[n] = w;
      out->c[n] = c;
      out->cause[n] = parent->cause[k];
      n += (guint) keep;
      dropped_w += lost;
      dropped_cw += lost * c;
      kept_c += keep ? c : 0;
      all_cw += w * c;
    }
  out->n = n;
  if (known != NULL)
    *known = all_cw;
  return dropped_w * kept_c + dropped_cw;
}

void
rw_plan_live_without (const RwPlanLive *parent,
                      guint             which,
                      RwPlanLive       *out)
{
  guint n = 0;

  for (guint k = 0; k < parent->n; k++)
    if (k != which)
      {
        out->w[n] = parent->w[k];
        out->c[n] = parent->c[k];
        out->cause[n++] = parent->cause[k];
      }
  out->n = n;
}
