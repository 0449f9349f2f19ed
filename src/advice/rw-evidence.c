/* rw-evidence.c: what was seen, as likelihoods of each hypothesis.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Symptom present: P (symptom | hypothesis); absent: 1 − that; cured: nothing.
 * Finding of a check: P (outcome | hypothesis).
 * Readings: rw-evidence-reading.c; one that finds a supply alive again after a rest answers the check that would ask
 *   for the rest (check->returns). What the trim shows: rw-evidence-trim.c.
 * Repair that changed nothing, or that helped in part (a symptom was cured after it and before the next repair,
 *   and another stays): rw-belief.c has what follows.
 * Repair that fixed: its cause for certain, until a symptom is seen or another repair tried
 *   afterwards. Then the first fault is gone and there was a second one: its cause keeps the
 *   residual, and what was seen before the fix, of another fault, counts no more.
 *
 * What counts no more, because it no longer shows:
 *   after a repair that fixed something, all readings and findings (changed_since);
 *   after a turn of the trim, readings, and clicks on checks that ask for one;
 *   after the board was plugged in again, what hangs on how the connector sits (check->contact): drops along wires,
 *   and findings that the knowledge marks so.
 */
#include "config.h"

#include "rw-evidence.h"

#include <glib/gi18n-lib.h>

#include "rw-evidence-private.h"
#include "rw-problem.h"

void
rw_observation_free (RwObservation *self)
{
  g_free (self->shown.title);
  g_free (self->likelihood);
  g_free (self);
}

/* --- gathering ---------------------------------------------------------------------------------- */

RwObservation *
rw_gathering_observe (RwGathering   *self,
                      RwEvidenceKind kind,
                      guint          n,
                      double         t,
                      const char    *id,
                      const char    *answer,
                      char          *title)
{
  RwObservation *it = g_new0 (RwObservation, 1);
  const guint n_all = self->hypotheses->n_all;

  it->shown = (RwEvidence) { .kind = kind,
                             .n = n,
                             .t = t,
                             .id = g_intern_string (id),
                             .answer = g_intern_string (answer),
                             .title = title,
                             .outdated = (kind == RW_EVIDENCE_READING || kind == RW_EVIDENCE_FINDING)
                                         && n < self->helped };
  it->repaired = -1;
  it->likelihood = g_new (double, MAX (1, n_all));
  for (guint h = 0; h < n_all; h++)
    it->likelihood[h] = 1;
  g_ptr_array_add (self->list, it);
  return it;
}

gboolean
rw_gathering_is_told (const RwGathering *self,
                      RwEvidenceKind     kind,
                      const char        *id)
{
  for (guint i = 0; i < self->list->len; i++)
    {
      const RwObservation *it = self->list->pdata[i];

      if (it->shown.kind == kind && g_str_equal (it->shown.id, id))
        return TRUE;
    }
  return FALSE;
}

void
rw_gathering_take (const RwGathering   *self,
                   RwObservation       *it,
                   const RwChanceTable *table,
                   const double        *weights)
{
  rw_hypotheses_fill (self->hypotheses, table, weights, it->likelihood);
}

guint
rw_evidence_likeliest (const double *weights,
                       guint         n)
{
  guint best = 0;

  for (guint o = 1; o < n; o++)
    if (weights[o] > weights[best])
      best = o;
  return best;
}

/* --- repairs ------------------------------------------------------------------------------------ */

/* The last repair that fixed; NULL when there is none. */
static const RwRepairSeen *
last_fix (const RwBenchState *state)
{
  for (guint i = rw_bench_state_get_n_repairs (state); i-- > 0;)
    {
      const RwRepairSeen *repair = rw_bench_state_get_repair (state, i);

      if (repair->result == RW_REPAIR_FIXED)
        return repair;
    }
  return NULL;
}

static gboolean
is_contradicted (const RwBenchState *state,
                 const RwRepairSeen *fix)
{
  for (guint i = 0; i < rw_bench_state_get_n_symptoms (state); i++)
    {
      const RwSymptomSeen *symptom = rw_bench_state_get_symptom (state, i);

      if (symptom->state == RW_SYMPTOM_PRESENT && symptom->n > fix->n)
        return TRUE;
    }
  for (guint i = 0; i < rw_bench_state_get_n_repairs (state); i++)
    if (rw_bench_state_get_repair (state, i)->n > fix->n)
      return TRUE;
  return FALSE;
}

const RwRepairSeen *
rw_evidence_find_fix (const RwBenchState *state)
{
  const RwRepairSeen *fix = last_fix (state);

  return fix != NULL && !is_contradicted (state, fix) ? fix : NULL;
}

static guint
next_repair (const RwBenchState *state,
             guint               i)
{
  return i + 1 < rw_bench_state_get_n_repairs (state) ? rw_bench_state_get_repair (state, i + 1)->n
                                                      : G_MAXUINT;
}

/* A symptom was cured after repair @i and before the next, and another is still there. */
static gboolean
has_helped (const RwBenchState *state,
            guint               i)
{
  const RwRepairSeen *repair = rw_bench_state_get_repair (state, i);
  gboolean cured = FALSE;
  gboolean stays = FALSE;

  if (repair->result != RW_REPAIR_NO_CHANGE)
    return FALSE;
  for (guint k = 0; k < rw_bench_state_get_n_symptoms (state); k++)
    {
      const RwSymptomSeen *seen = rw_bench_state_get_symptom (state, k);

      cured = cured || (seen->state == RW_SYMPTOM_CURED && seen->n > repair->n
                        && seen->n < next_repair (state, i));
      stays = stays || seen->state == RW_SYMPTOM_PRESENT;
    }
  return cured && stays;
}

static guint
last_help (const RwBenchState *state)
{
  for (guint i = rw_bench_state_get_n_repairs (state); i-- > 0;)
    if (has_helped (state, i))
      return rw_bench_state_get_repair (state, i)->n;
  return 0;
}

static void
observe_repair (RwGathering  *self,
                guint         i,
                guint         index)
{
  const RwRepairSeen *repair = rw_bench_state_get_repair (self->state, i);
  const RwCause *cause = rw_knowledge_get_cause (self->knowledge, index);
  const gboolean partly = has_helped (self->state, i);
  char *title = g_strdup_printf (partly
                                     /* Translators: a repair, "Set the trim at the board" */
                                     ? _ ("%s: helped in part")
                                     /* Translators: a repair, "Set the trim at the board" */
                                     : _ ("%s: no cure"),
                                 cause->repair.title);
  RwObservation *it = rw_gathering_observe (self, RW_EVIDENCE_REPAIR, repair->n, repair->t, repair->cause,
                                            partly ? "partly" : "no-change", title);

  it->repaired = (int) index;
  it->partly = partly;
  for (guint k = 0; k < self->hypotheses->n; k++)
    it->likelihood[k] = k == index || partly ? RW_REPAIR_RESIDUAL : 1;
}

/* A repair done twice is no second proof, so each cause counts once. */
static void
gather_repairs (RwGathering   *self,
                const RwCause *fixed)
{
  for (guint i = 0; i < rw_bench_state_get_n_repairs (self->state); i++)
    {
      const RwRepairSeen *repair = rw_bench_state_get_repair (self->state, i);
      const int index = rw_knowledge_index_of_cause (self->knowledge, repair->cause);

      if (index >= 0 && rw_knowledge_get_cause (self->knowledge, (guint) index) != fixed
          && !rw_gathering_is_told (self, RW_EVIDENCE_REPAIR, repair->cause))
        observe_repair (self, i, (guint) index);
    }
}

/* --- symptoms and findings ---------------------------------------------------------------------- */

static void
gather_symptoms (RwGathering *self,
                 guint        after)
{
  for (guint k = 0; k < rw_bench_state_get_n_symptoms (self->state); k++)
    {
      const RwSymptomSeen *seen = rw_bench_state_get_symptom (self->state, k);
      const RwSymptom *symptom = rw_knowledge_find_symptom (self->knowledge, seen->id);
      const gboolean present = seen->state == RW_SYMPTOM_PRESENT;
      const double weights[2] = { present ? 1 : 0, present ? 0 : 1 };

      if (symptom == NULL || seen->state == RW_SYMPTOM_CURED || seen->n < after)
        continue;

      /* Translators: a symptom, "Resets by itself" */
      char *title = g_strdup_printf (present ? _ ("%s: yes") : _ ("%s: no"), symptom->title);

      rw_gathering_take (self,
                         rw_gathering_observe (self, RW_EVIDENCE_SYMPTOM, seen->n, seen->t, seen->id,
                                               present ? "present" : "absent", title),
                         &symptom->chance, weights);
    }
}

/* Something was done since that changes what the check would show. */
static gboolean
is_outdated (const RwBenchState  *state,
             const RwFindingSeen *seen,
             const RwCheck       *check)
{
  return seen->changed_since
         || (check->measures && check->kind != RW_KIND_OHMS && seen->n < rw_bench_state_get_turned (state))
         || (check->contact && seen->n < rw_bench_state_get_plugged (state));
}

static void
gather_findings (RwGathering *self)
{
  for (guint k = 0; k < rw_bench_state_get_n_findings (self->state); k++)
    {
      const RwFindingSeen *seen = rw_bench_state_get_finding (self->state, k);
      const RwCheck *check = rw_knowledge_find_check (self->knowledge, seen->check);
      const int outcome = check != NULL ? rw_check_find_outcome (check, seen->outcome) : -1;
      double weights[RW_PROBLEM_MAX_OUTCOMES] = { 0 };

      if (outcome < 0 || is_outdated (self->state, seen, check)
          || rw_gathering_is_told (self, RW_EVIDENCE_READING, seen->check))
        continue;
      weights[outcome] = 1;
      /* Translators: a check and what it showed */
      char *title = g_strdup_printf (_ ("%s: %s"), check->title, check->outcomes[outcome].title);

      rw_gathering_take (self,
                         rw_gathering_observe (self, RW_EVIDENCE_FINDING, seen->n, seen->t, seen->check,
                                               seen->outcome, title),
                         &check->chance, weights);
    }
}

/* --- a supply that came back --------------------------------------------------------------------- */

/* The newest reading that found a supply alive which had been dead. (nullable) */
static const RwSpotState *
find_returned (const RwBenchState *state)
{
  const RwSpotState *last = NULL;

  for (guint i = 0; i < rw_bench_state_get_n_views (state); i++)
    {
      const RwSpotState *view = rw_bench_state_get_view (state, i);

      if (view->came_back && !view->changed_since && (last == NULL || view->n > last->n))
        last = view;
    }
  return last;
}

/* What a pause without power would be made to find out has been seen already, and would be lost with the reading that
 * took the dead one's place. */
static void
gather_return (RwGathering *self)
{
  const RwSpotState *returned = find_returned (self->state);

  for (guint j = 0; returned != NULL && j < rw_knowledge_get_n_checks (self->knowledge); j++)
    {
      const RwCheck *check = rw_knowledge_get_check (self->knowledge, j);
      double weights[RW_PROBLEM_MAX_OUTCOMES] = { 0 };

      if (check->returns < 0 || rw_gathering_is_told (self, RW_EVIDENCE_READING, check->id))
        continue;
      weights[check->returns] = 1;
      rw_gathering_take (self,
                         rw_gathering_observe (self, RW_EVIDENCE_READING, returned->n, returned->t, check->id,
                                               check->outcomes[check->returns].id,
                                               g_strdup_printf (_ ("%s: %s"), check->title,
                                                                check->outcomes[check->returns].title)),
                         &check->chance, weights);
    }
}

/* --- all of it ---------------------------------------------------------------------------------- */

static int
compare_observations (gconstpointer a,
                      gconstpointer b)
{
  const RwObservation *x = *(const RwObservation *const *) a;
  const RwObservation *y = *(const RwObservation *const *) b;

  if (x->shown.n != y->shown.n)
    return x->shown.n < y->shown.n ? -1 : 1;
  return g_strcmp0 (x->shown.id, y->shown.id);
}

GPtrArray *
rw_evidence_gather (const RwHypotheses *hypotheses,
                    const RwBenchState *state,
                    const RwCause     **fixed)
{
  const RwRepairSeen *last = last_fix (state);
  const RwRepairSeen *fix = rw_evidence_find_fix (state);
  RwGathering self = { .hypotheses = hypotheses,
                       .knowledge = hypotheses->knowledge,
                       .state = state,
                       .helped = last_help (state) };

  self.list = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_observation_free);
  *fixed = fix != NULL ? rw_knowledge_find_cause (self.knowledge, fix->cause) : NULL;
  gather_symptoms (&self, last != NULL && fix == NULL ? last->n : 0);
  rw_evidence_gather_readings (&self);
  gather_return (&self);
  gather_findings (&self);
  rw_evidence_gather_trim (&self);
  gather_repairs (&self, *fixed);
  g_ptr_array_sort (self.list, compare_observations);
  return self.list;
}
