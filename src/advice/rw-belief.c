/* rw-belief.c: how likely each cause is, given everything seen.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Exactly one cause is taken to be present ("other" and "nothing wrong with the supply" are
 * causes like the rest), and things seen are independent given the cause:
 *   p_i ∝ prior_i ∏_e L_e (i).
 *
 * Factors. With w the beliefs before e, the odds of cause i against all others change by
 *   L_e (i) / (Σ_{k≠i} w_k L_e (k) / Σ_{k≠i} w_k),
 * which is taken in the order of the events, so that prior odds times all factors are the
 * posterior odds exactly.
 *
 * Where no listed cause can show a thing seen together with the rest, its likelihoods are
 * lifted to a small floor, and it is marked strange: somebody should look again, but the
 * beliefs must not fall to nothing.
 */
#include "config.h"

#include "rw-belief.h"

#include <math.h>
#include <stdlib.h>

#include "rw-evidence.h"

static const double floor_when_strange = 1e-6;

struct _RwBelief
{
  RwKnowledge   *knowledge; /* owns causes and checks pointed to */
  guint          n;
  RwCauseBelief *causes;   /* [n], the likeliest first */
  double        *p;        /* [n], by index in the knowledge */
  GPtrArray     *evidence; /* of RwObservation */
  double        *factors;  /* [evidence · n + index] */
  double         conflict;
  const RwCause *fixed;
};

static void
clear_belief (gpointer data)
{
  RwBelief *self = data;

  g_clear_pointer (&self->knowledge, rw_knowledge_unref);
  g_clear_pointer (&self->evidence, g_ptr_array_unref);
  g_free (self->causes);
  g_free (self->p);
  g_free (self->factors);
}

RwBelief *
rw_belief_ref (RwBelief *self)
{
  return g_atomic_rc_box_acquire (self);
}

void
rw_belief_unref (RwBelief *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full (self, clear_belief);
}

static void
fill_priors (RwBelief *self,
             double   *prior)
{
  double sum = 0;

  for (guint i = 0; i < self->n; i++)
    sum += rw_knowledge_get_cause (self->knowledge, i)->prior;
  for (guint i = 0; i < self->n; i++)
    prior[i] = rw_knowledge_get_cause (self->knowledge, i)->prior / sum;
}

static double
mean_likelihood (const double *p,
                 const double *likelihood,
                 guint         n)
{
  double sum = 0;

  for (guint i = 0; i < n; i++)
    sum += p[i] * likelihood[i];
  return sum;
}

/* What each cause's odds are multiplied by; p are the beliefs before. */
static void
fill_factors (double       *factor,
              const double *p,
              const double *likelihood,
              guint         n)
{
  for (guint i = 0; i < n; i++)
    {
      double rest = 0;
      double rest_seen = 0;

      for (guint k = 0; k < n; k++)
        if (k != i)
          {
            rest += p[k];
            rest_seen += p[k] * likelihood[k];
          }
      factor[i] = rest > 0 ? likelihood[i] * rest / rest_seen : 1;
    }
}

/* Bayes, one thing seen after the other, normalised each time so that nothing underflows. */
static void
learn (RwBelief     *self,
       const double *prior)
{
  self->factors = g_new (double, MAX (1, self->evidence->len * self->n));
  for (guint e = 0; e < self->evidence->len; e++)
    {
      RwObservation *it = self->evidence->pdata[e];

      if (!(mean_likelihood (self->p, it->likelihood, self->n) > 0))
        {
          it->shown.strange = TRUE;
          for (guint i = 0; i < self->n; i++)
            it->likelihood[i] = MAX (it->likelihood[i], floor_when_strange);
        }
      fill_factors (self->factors + e * self->n, self->p, it->likelihood, self->n);

      const double seen = mean_likelihood (self->p, it->likelihood, self->n);

      self->conflict += log2 (mean_likelihood (prior, it->likelihood, self->n) / seen);
      for (guint i = 0; i < self->n; i++)
        self->p[i] *= it->likelihood[i] / seen;
    }
}

static gboolean
was_tried (const RwBelief *self,
           const RwCause  *cause)
{
  for (guint e = 0; e < self->evidence->len; e++)
    {
      const RwObservation *it = self->evidence->pdata[e];

      if (it->shown.kind == RW_EVIDENCE_REPAIR && it->shown.id == cause->id)
        return TRUE;
    }
  return FALSE;
}

static int
compare_causes (const void *a,
                const void *b)
{
  const RwCauseBelief *x = a;
  const RwCauseBelief *y = b;

  if (x->p != y->p)
    return x->p > y->p ? -1 : 1;
  return (x->index > y->index) - (x->index < y->index);
}

static void
rank_causes (RwBelief     *self,
             const double *prior)
{
  self->causes = g_new (RwCauseBelief, MAX (1, self->n));
  for (guint i = 0; i < self->n; i++)
    {
      const RwCause *cause = rw_knowledge_get_cause (self->knowledge, i);

      self->causes[i] = (RwCauseBelief) { cause, i, self->p[i], prior[i], was_tried (self, cause) };
    }
  if (self->n > 1)
    qsort (self->causes, self->n, sizeof *self->causes, compare_causes);
}

/* The repair that fixed is proof: the cause is known, whatever was likely before. */
static void
settle_on_fix (RwBelief *self)
{
  for (guint i = 0; i < self->n && self->fixed != NULL; i++)
    self->p[i] = rw_knowledge_get_cause (self->knowledge, i) == self->fixed ? 1 : 0;
}

RwBelief *
rw_belief_new (RwKnowledge  *knowledge,
               RwBenchState *state)
{
  RwBelief *self = g_atomic_rc_box_new0 (RwBelief);
  const guint n = rw_knowledge_get_n_causes (knowledge);
  g_autofree double *prior = g_new0 (double, MAX (1, n));

  self->knowledge = rw_knowledge_ref (knowledge);
  self->n = n;
  fill_priors (self, prior);
  self->p = g_memdup2 (prior, MAX (1, n) * sizeof (double));
  self->evidence = rw_evidence_gather (knowledge, state, &self->fixed);
  if (n > 0)
    learn (self, prior);
  settle_on_fix (self);
  rank_causes (self, prior);
  return self;
}

guint
rw_belief_get_n_causes (const RwBelief *self)
{
  return self->n;
}

const RwCauseBelief *
rw_belief_get_cause (const RwBelief *self,
                     guint           rank)
{
  g_return_val_if_fail (rank < self->n, NULL);
  return &self->causes[rank];
}

const RwCauseBelief *
rw_belief_find_cause (const RwBelief *self,
                      const char     *cause)
{
  for (guint rank = 0; rank < self->n; rank++)
    if (g_strcmp0 (self->causes[rank].cause->id, cause) == 0)
      return &self->causes[rank];
  return NULL;
}

double
rw_belief_get_p (const RwBelief *self,
                 guint           index)
{
  g_return_val_if_fail (index < self->n, 0);
  return self->p[index];
}

guint
rw_belief_get_n_evidence (const RwBelief *self)
{
  return self->evidence->len;
}

const RwEvidence *
rw_belief_get_evidence (const RwBelief *self,
                        guint           i)
{
  g_return_val_if_fail (i < self->evidence->len, NULL);
  return &((const RwObservation *) self->evidence->pdata[i])->shown;
}

double
rw_belief_get_factor (const RwBelief *self,
                      guint           rank,
                      guint           i)
{
  g_return_val_if_fail (rank < self->n && i < self->evidence->len, 1);
  return self->factors[i * self->n + self->causes[rank].index];
}

const RwCause *
rw_belief_get_fixed (const RwBelief *self)
{
  return self->fixed;
}

gboolean
rw_belief_is_answered (const RwBelief *self,
                       const char     *check)
{
  for (guint e = 0; e < self->evidence->len; e++)
    {
      const RwEvidence *it = rw_belief_get_evidence (self, e);

      if ((it->kind == RW_EVIDENCE_FINDING || it->kind == RW_EVIDENCE_READING)
          && g_str_equal (it->id, check))
        return TRUE;
    }
  return FALSE;
}

double
rw_belief_get_conflict (const RwBelief *self)
{
  return self->conflict;
}
