/* rw-belief.c: how likely each cause is, given everything seen.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One cause is present, or two at once (rw-hypotheses.c has which, and their priors); things seen are independent
 * given what is present:
 *   w_h ∝ prior_h ∏_e L_e (h),  in the order of the events; p_i = Σ w_h of the hypotheses that hold i.
 *
 * A repair of i changes what is present. With ρ the chance that a repair is done badly, and just as well that a
 * symptom goes by itself at that moment (RW_REPAIR_RESIDUAL),
 *   it changed nothing:  w_{i,j} → (1 − ρ) of it to w_j, ρ stays;  w_i → ρ w_i;  the rest as it is.
 *   it helped in part:   w_{i,j} → (1 − ρ) of it to w_j, ρ² stays; w_i → ρ w_i;  the rest → ρ of it,
 * since what is left after i was cured must be another fault, and i must have been one. What is seen later is so
 * seen of the cabinet without i.
 *
 * Factors. The odds that i is there against its not being there, after a thing seen, over those before it; so
 * prior odds times all factors are the posterior odds exactly. For hypotheses of single causes this is
 *   L_e (i) / (Σ_{k≠i} w_k L_e (k) / Σ_{k≠i} w_k).
 *
 * Conflict (F. V. Jensen): log2 ∏ P (e) / P (all e), with the listed causes one at a time: neither pairs nor
 * "other", which are there to explain what no single cause does.
 *
 * Where no listed hypothesis can show a thing seen together with the rest, its likelihoods are
 * lifted to a small floor, and it is marked strange: somebody should look again, but the
 * beliefs must not fall to nothing.
 */
#include "config.h"

#include "rw-belief.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "rw-belief-rank.h"
#include "rw-evidence.h"

static const double floor_when_strange = 1e-6;

struct _RwBelief
{
  RwKnowledge   *knowledge; /* owns causes and checks pointed to */
  RwHypotheses  *hypotheses;
  guint          n;
  double        *w;        /* [all hypotheses] */
  RwCauseBelief *causes;   /* [n], the likeliest first */
  double        *p;        /* [n], by index in the knowledge */
  GArray        *pairs;    /* of RwPairBelief */
  GPtrArray     *evidence; /* of RwObservation */
  double        *factors;  /* [evidence · n + index] */
  double         conflict;
  const RwCause *fixed;
};

static void
clear_belief (gpointer data)
{
  RwBelief *self = data;

  g_clear_pointer (&self->hypotheses, rw_hypotheses_free);
  g_clear_pointer (&self->knowledge, rw_knowledge_unref);
  g_clear_pointer (&self->evidence, g_ptr_array_unref);
  g_clear_pointer (&self->pairs, g_array_unref);
  g_free (self->w);
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

/* --- Bayes -------------------------------------------------------------------------------------- */

static gboolean
holds (const RwHypotheses *hypotheses,
       guint               hypothesis,
       guint               cause)
{
  if (hypothesis < hypotheses->n)
    return hypothesis == cause;

  const RwTwoCauses pair = hypotheses->pairs[hypothesis - hypotheses->n];

  return pair.a == cause || pair.b == cause;
}

static double
sum_of (const double *values,
        guint         n)
{
  double sum = 0;

  for (guint i = 0; i < n; i++)
    sum += values[i];
  return sum;
}

/* Weight of the hypotheses that hold each cause. */
static void
fill_present (const RwHypotheses *hypotheses,
              const double       *w,
              double             *present)
{
  memcpy (present, w, hypotheses->n * sizeof *present);
  for (guint k = 0; k < hypotheses->n_pairs; k++)
    {
      present[hypotheses->pairs[k].a] += w[hypotheses->n + k];
      present[hypotheses->pairs[k].b] += w[hypotheses->n + k];
    }
}

/* Odds that each cause is there. What is not @present is summed by itself where a difference would lose digits. */
static void
fill_odds (const RwHypotheses *hypotheses,
           const double       *w,
           double             *odds)
{
  const double sum = sum_of (w, hypotheses->n_all);

  fill_present (hypotheses, w, odds);
  for (guint i = 0; i < hypotheses->n; i++)
    {
      double absent = sum - odds[i];

      if (odds[i] > sum / 4)
        {
          absent = 0;
          for (guint h = 0; h < hypotheses->n_all; h++)
            if (!holds (hypotheses, h, i))
              absent += w[h];
        }
      odds[i] = absent > 0 ? odds[i] / absent : (double) INFINITY;
    }
}

/* The head comment's two cases of a repair that was no cure. */
static void
take_repair (const RwHypotheses  *hypotheses,
             const RwObservation *it,
             double              *w)
{
  const guint i = (guint) it->repaired;
  const double done_badly = it->partly ? RW_REPAIR_RESIDUAL * RW_REPAIR_RESIDUAL : RW_REPAIR_RESIDUAL;

  for (guint h = 0; h < hypotheses->n; h++)
    w[h] *= h == i || it->partly ? RW_REPAIR_RESIDUAL : 1;
  for (guint k = 0; k < hypotheses->n_pairs; k++)
    {
      const RwTwoCauses pair = hypotheses->pairs[k];
      double *both = &w[hypotheses->n + k];

      if (pair.a != i && pair.b != i)
        {
          *both *= it->partly ? RW_REPAIR_RESIDUAL : 1;
          continue;
        }
      w[pair.a == i ? pair.b : pair.a] += (1 - RW_REPAIR_RESIDUAL) * *both;
      *both *= done_badly;
    }
}

/* @w: after the things before it, sum 1; afterwards not normalised. */
static void
apply (const RwHypotheses *hypotheses,
       RwObservation      *it,
       double             *w)
{
  double seen = 0;

  if (it->repaired >= 0)
    {
      take_repair (hypotheses, it, w);
      return;
    }
  for (guint h = 0; h < hypotheses->n_all; h++)
    seen += w[h] * it->likelihood[h];
  it->shown.strange = !(seen > 0);
  for (guint h = 0; h < hypotheses->n_all; h++)
    w[h] *= it->shown.strange ? MAX (it->likelihood[h], floor_when_strange) : it->likelihood[h];
}

/* TRUE, and sum 1, when there is anything to scale. */
static gboolean
normalise (double *w,
           guint   n)
{
  const double sum = sum_of (w, n);

  for (guint i = 0; i < n && sum > 0; i++)
    w[i] /= sum;
  return sum > 0;
}

static void
learn (RwBelief *self)
{
  const RwHypotheses *hypotheses = self->hypotheses;
  g_autofree double *before = g_new (double, self->n);
  g_autofree double *after = g_new (double, self->n);

  self->factors = g_new (double, MAX (1, self->evidence->len * self->n));
  fill_odds (hypotheses, self->w, before);
  for (guint e = 0; e < self->evidence->len; e++)
    {
      apply (hypotheses, self->evidence->pdata[e], self->w);
      normalise (self->w, hypotheses->n_all);
      fill_odds (hypotheses, self->w, after);
      for (guint i = 0; i < self->n; i++)
        {
          const gboolean told = before[i] > 0 && !isinf (before[i]);

          self->factors[e * self->n + i] = told ? after[i] / before[i] : 1;
        }
      memcpy (before, after, self->n * sizeof *before);
    }
}

/* --- conflict ----------------------------------------------------------------------------------- */

/* P (seen) under the listed causes one at a time, weighted by @w. */
static double
chance_of (const RwBelief      *self,
           const RwObservation *it,
           const double        *w)
{
  double seen = 0;

  for (guint i = 0; i < self->n; i++)
    seen += w[i] * it->likelihood[i];
  return seen;
}

/* Of what no listed cause can show P counts as the floor. */
static void
measure_conflict (RwBelief *self)
{
  g_autofree double *prior = g_new0 (double, self->n);

  for (guint i = 0; i < self->n; i++)
    prior[i] = self->hypotheses->broad[i] ? 0 : self->hypotheses->prior[i];
  if (!normalise (prior, self->n))
    return;

  g_autofree double *w = g_memdup2 (prior, self->n * sizeof *prior);

  for (guint e = 0; e < self->evidence->len; e++)
    {
      const RwObservation *it = self->evidence->pdata[e];
      const double usual = chance_of (self, it, prior);
      const double seen = chance_of (self, it, w);

      self->conflict += log2 ((usual > 0 ? usual : floor_when_strange)
                              / (seen > 0 ? seen : floor_when_strange));
      for (guint i = 0; i < self->n && seen > 0; i++)
        w[i] *= it->likelihood[i] / seen;
    }
}

/* --- ranking ------------------------------------------------------------------------------------ */

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

      self->causes[i] = (RwCauseBelief) { cause, i, self->p[i], prior[i], was_tried (self, cause),
                                          self->w[i] };
    }
  if (self->n > 1)
    qsort (self->causes, self->n, sizeof *self->causes, compare_causes);
}

/* The repair that fixed is proof: the cause is known, whatever was likely before. */
static void
settle_on_fix (RwBelief *self)
{
  if (self->fixed == NULL)
    return;
  for (guint h = 0; h < self->hypotheses->n_all; h++)
    self->w[h] = h < self->n && rw_knowledge_get_cause (self->knowledge, h) == self->fixed ? 1 : 0;
}

RwBelief *
rw_belief_new (RwKnowledge  *knowledge,
               RwBenchState *state)
{
  RwBelief *self = g_atomic_rc_box_new0 (RwBelief);
  const guint n = rw_knowledge_get_n_causes (knowledge);
  g_autofree double *prior = g_new0 (double, MAX (1, n));

  self->knowledge = rw_knowledge_ref (knowledge);
  self->hypotheses = rw_hypotheses_new (knowledge, RW_SECOND_FAULT);
  self->n = n;
  self->w = g_memdup2 (self->hypotheses->prior, MAX (1, self->hypotheses->n_all) * sizeof (double));
  self->p = g_new0 (double, MAX (1, n));
  self->evidence = rw_evidence_gather (self->hypotheses, state, &self->fixed);
  fill_present (self->hypotheses, self->w, prior);
  if (n > 0)
    {
      learn (self);
      measure_conflict (self);
    }
  settle_on_fix (self);
  fill_present (self->hypotheses, self->w, self->p);
  rank_causes (self, prior);
  self->pairs = rw_belief_rank_pairs (self->hypotheses, self->w, self->p);
  return self;
}

/* --- getters ------------------------------------------------------------------------------------ */

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

double
rw_belief_get_alone (const RwBelief *self,
                     guint           index)
{
  g_return_val_if_fail (index < self->n, 0);
  return self->w[index];
}

guint
rw_belief_get_n_pairs (const RwBelief *self)
{
  return self->pairs->len;
}

const RwPairBelief *
rw_belief_get_pair (const RwBelief *self,
                    guint           i)
{
  g_return_val_if_fail (i < self->pairs->len, NULL);
  return &g_array_index (self->pairs, RwPairBelief, i);
}

double
rw_belief_get_two (const RwBelief *self)
{
  return sum_of (self->w + self->n, self->hypotheses->n_pairs);
}

double
rw_belief_get_other (const RwBelief *self)
{
  double sum = 0;

  for (guint i = 0; i < self->n; i++)
    if (self->hypotheses->broad[i])
      sum += self->w[i];
  return sum;
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

      if ((it->kind == RW_EVIDENCE_FINDING || it->kind == RW_EVIDENCE_READING) && !it->outdated
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

static gboolean
is_any_strange (const RwBelief *self)
{
  for (guint e = 0; e < self->evidence->len; e++)
    if (rw_belief_get_evidence (self, e)->strange)
      return TRUE;
  return FALSE;
}

gboolean
rw_belief_says_no_fit (const RwBelief *self)
{
  return self->fixed == NULL && self->conflict > 0
         && (rw_belief_get_other (self) >= RW_BELIEF_OTHER_HIGH || is_any_strange (self));
}

char *
rw_belief_dup_no_fit (const RwBelief *self)
{
  if (!rw_belief_says_no_fit (self))
    return NULL;
  return g_strdup (_ ("These findings do not fit one cause I know. Take the strangest of them again before you "
                      "repair on the strength of it."));
}

static gboolean
is_listed (const RwBelief *self,
           RwTwoCauses     pair)
{
  for (guint k = 0; k < self->pairs->len; k++)
    {
      const RwPairBelief *listed = rw_belief_get_pair (self, k);

      if (MIN (listed->index_a, listed->index_b) == pair.a && MAX (listed->index_a, listed->index_b) == pair.b)
        return TRUE;
    }
  return FALSE;
}

void
rw_belief_add_rest (const RwBelief *self,
                    double         *first)
{
  for (guint k = 0; k < self->hypotheses->n_pairs; k++)
    if (self->w[self->n + k] > 0 && !is_listed (self, self->hypotheses->pairs[k]))
      first[rw_belief_pair_of (self->hypotheses, k, self->w, self->p).index_a] += self->w[self->n + k];
}

const RwHypotheses *
rw_belief_get_hypotheses (const RwBelief *self)
{
  return self->hypotheses;
}
