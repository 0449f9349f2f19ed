/* study-job.c: a job at a virtual cabinet, done by a technician who follows the program or a list.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The program: take the check that is suggested, do the repair when that is suggested; a check that
 * the cabinet cannot answer, or that was answered and is suggested again at once, is skipped as a
 * person would ("ask another way").
 *
 * A list: the checks in a fixed order, whatever they showed. After each one the technician weighs all that
 * was seen as well as the program does, and repairs what is at least 90 % sure; after the last one,
 * what is likeliest. A printed list has no such weighing: the comparison favours it.
 */
#include "config.h"

#include "study-job.h"

#include <stdlib.h>

#include "study-advise.h"
#include "study-hands.h"

static const guint most_actions = 60, most_list_repairs = 20;
static const double list_sure = 0.90;

const char *
study_way_get_label (StudyWay way)
{
  static const char *const labels[] = { "the program", "the program as in the window",
                                        "list in the order of the files", "list, shortest first",
                                        "list in the order of work" };

  return labels[way];
}

void
study_job_clear (StudyJob *self)
{
  if (self->log != NULL)
    g_string_free (self->log, TRUE);
  self->log = NULL;
}

static void G_GNUC_PRINTF (2, 3)
note (StudyJob   *out,
      const char *format,
      ...)
{
  va_list args;

  if (out->log == NULL)
    return;
  va_start (args, format);
  g_string_append_vprintf (out->log, format, args);
  va_end (args);
}

static void
note_leaders (StudyJob *out,
              RwBelief *belief)
{
  for (guint rank = 0; rank < 3 && rank < rw_belief_get_n_causes (belief); rank++)
    {
      const RwCauseBelief *it = rw_belief_get_cause (belief, rank);

      note (out, "%s%s %.2f", rank > 0 ? ", " : "      ", it->cause->id, it->p);
    }
  note (out, "\n");
}

/* Rank of the likeliest fault that is there, from 1. */
static guint
rank_of_fault (const StudyCase *job,
               RwBelief        *belief)
{
  const guint n = rw_belief_get_n_causes (belief);

  for (guint rank = 0; rank < n; rank++)
    if (study_case_has (job, rw_belief_get_cause (belief, rank)->cause->id))
      return rank + 1;
  return n + 1;
}

void
study_job_look_at (StudyJob        *self,
                   const StudyCase *job,
                   RwBelief        *belief,
                   StudyMoment      moment)
{
  const RwCauseBelief *leader = rw_belief_get_cause (belief, 0);

  if (self->rank[moment] > 0)
    return;
  self->rank[moment] = rank_of_fault (job, belief);
  self->first[moment] = leader->cause->id;
}

/* It was not mended yet. */
static gboolean
is_there (StudyHands *hands,
          const char *fault)
{
  for (guint i = 0; i < rw_practice_cabinet_get_true_n_faults (hands->hands.cabinet); i++)
    if (g_str_equal (rw_practice_cabinet_get_true_fault (hands->hands.cabinet, i)->id, fault))
      return TRUE;
  return FALSE;
}

static void
look_at_each (StudyJob        *self,
              const StudyCase *job,
              RwBelief        *belief)
{
  for (guint i = 0; self->n_repairs == 0 && i < job->n_faults; i++)
    for (guint rank = 0; rank < rw_belief_get_n_causes (belief); rank++)
      if (g_str_equal (rw_belief_get_cause (belief, rank)->cause->id, job->faults[i].id))
        self->own_rank[i] = rank + 1;
}

static void
look_at_rest (StudyJob   *self,
              StudyHands *hands,
              RwBelief   *belief)
{
  guint rank = 0;

  if (self->rest_rank > 0 || hands->job->n_faults != 2 || rw_practice_cabinet_get_true_n_faults (hands->hands.cabinet) != 1)
    return;

  const char *left = rw_practice_cabinet_get_true_fault (hands->hands.cabinet, 0)->id;

  for (guint i = 0; i < rw_belief_get_n_causes (belief) && self->rest_rank == 0; i++)
    {
      const RwCauseBelief *it = rw_belief_get_cause (belief, i);

      rank += !it->tried;
      if (g_str_equal (it->cause->id, left))
        self->rest_rank = rank + it->tried;
    }
}

static void
look_what_is_mended (StudyJob   *self,
                     StudyHands *hands)
{
  for (guint i = 0; i < hands->job->n_faults; i++)
    self->mended[i] = !is_there (hands, hands->job->faults[i].id);
}

static void
claim (StudyJob   *out,
       StudyHands *hands,
       RwBelief   *belief)
{
  const RwCauseBelief *leader = rw_belief_get_cause (belief, 0);

  if (out->n_claims < STUDY_MAX_STEPS)
    out->claims[out->n_claims++] = (StudyClaim) { leader->p, is_there (hands, leader->cause->id) };
  if (out->n_checks == 0)
    study_job_look_at (out, hands->job, belief, STUDY_AFTER_SYMPTOMS);
  if (out->n_checks == 3)
    study_job_look_at (out, hands->job, belief, STUDY_AFTER_THREE);
  note_leaders (out, belief);
}

/* Before anything is mended; what the beliefs lead up to. */
static void
repair (StudyJob      *out,
        StudyHands    *hands,
        RwKnowledge   *knowledge,
        RwBelief      *belief,
        const RwCause *cause)
{
  study_job_look_at (out, hands->job, belief, STUDY_AFTER_THREE);
  study_job_look_at (out, hands->job, belief, STUDY_BEFORE_REPAIR);
  look_at_each (out, hands->job, belief);
  look_at_rest (out, hands, belief);
  out->n_repairs++;
  out->fixed = study_hands_repair (hands, knowledge, cause);
  note (out, "%6.1f repair %s: %s\n", hands->minutes, cause->id, out->fixed ? "fixed" : "no");
}

static gboolean
check (StudyJob      *out,
       StudyHands    *hands,
       const RwCheck *it)
{
  const RwOutcome *outcome = study_hands_check (hands, it);

  if (outcome == NULL)
    {
      out->n_skipped++;
      return FALSE;
    }
  out->n_checks++;
  note (out, "%6.1f %s: %s\n", hands->minutes, it->id, outcome->id);
  return TRUE;
}

/* --- the program --------------------------------------------------------------------------------- */

/* The likeliest that was not tried. */
static const RwCauseBelief *
likeliest_untried (RwBelief *belief)
{
  for (guint rank = 0; rank < rw_belief_get_n_causes (belief); rank++)
    if (!rw_belief_get_cause (belief, rank)->tried)
      return rw_belief_get_cause (belief, rank);
  return NULL;
}

/* Nobody does in vain twice what was done in vain once: the likeliest other one instead. */
static const RwCause *
not_again (StudyJob          *out,
           const StudyAdvice *advice)
{
  const RwCauseBelief *it = rw_belief_find_cause (advice->belief, advice->repair->id);

  if (it == NULL || !it->tried)
    return advice->repair;
  out->n_again++;
  it = likeliest_untried (advice->belief);
  return it != NULL ? it->cause : advice->repair;
}

static gboolean
follow_once (StudyJob          *out,
             StudyHands        *hands,
             RwKnowledge       *knowledge,
             const StudyAdvice *advice,
             GHashTable        *skipped,
             const char       **last)
{
  switch (advice->kind)
    {
    case RW_ADVICE_CHECK:
      claim (out, hands, advice->belief);
      if (advice->check->id == *last || !check (out, hands, advice->check))
        g_hash_table_add (skipped, (gpointer) advice->check->id);
      *last = advice->check->id;
      return TRUE;

    case RW_ADVICE_REPAIR:
      claim (out, hands, advice->belief);
      repair (out, hands, knowledge, advice->belief, not_again (out, advice));
      *last = NULL;
      return !out->fixed;

    case RW_ADVICE_DONE:
    case RW_ADVICE_NOTHING:
    default:
      out->half = rw_practice_cabinet_get_true_n_faults (hands->hands.cabinet) > 0;
      return FALSE;
    }
}

static void
follow_program (StudyJob    *out,
                StudyHands  *hands,
                RwKnowledge *whole,
                gboolean     screen)
{
  g_autoptr (RwKnowledge) knowledge = rw_knowledge_for_profile (whole, hands->job->profile);
  g_autoptr (GHashTable) skipped = g_hash_table_new (g_str_hash, g_str_equal);
  const char *last = NULL;
  gboolean goes_on = TRUE;

  while (goes_on && out->n_checks + out->n_repairs + out->n_skipped < most_actions)
    {
      StudyAdvice advice;

      study_advise (&advice, knowledge, hands->hands.session, skipped, screen);
      out->slowest = MAX (out->slowest, advice.spent);
      out->advising += advice.spent;
      out->n_advised++;
      goes_on = follow_once (out, hands, knowledge, &advice, skipped, &last);
      study_advice_clear (&advice);
    }
}

/* --- lists --------------------------------------------------------------------------------------- */

static int
compare_minutes (gconstpointer a,
                 gconstpointer b)
{
  const RwCheck *x = *(const RwCheck *const *) a, *y = *(const RwCheck *const *) b;

  return (x->minutes > y->minutes) - (x->minutes < y->minutes);
}

/* Looking unplugged, the supply alone, the board in and the meter on it, joints, then the rest. */
static int
stage_of (const RwCheck *it)
{
  if (rw_check_is_reserved (it))
    return 6;
  if (it->power == RW_SAID_NO)
    return 0;
  if (it->board == RW_SAID_NO)
    return 1;
  if (it->measures)
    return it->place == RW_PLACE_WIRE ? 3 : 2;
  return it->warm == RW_SAID_YES ? 5 : 4;
}

static int
compare_stages (gconstpointer a,
                gconstpointer b)
{
  const RwCheck *x = *(const RwCheck *const *) a, *y = *(const RwCheck *const *) b;
  const int sx = stage_of (x), sy = stage_of (y);

  return sx != sy ? sx - sy : compare_minutes (a, b);
}

/* (transfer container) g_ptr_array_sort () is stable: ties stay in the order of the files. */
static GPtrArray *
list_checks (const RwKnowledge *knowledge,
             StudyWay           way)
{
  GPtrArray *list = g_ptr_array_new ();

  for (guint j = 0; j < rw_knowledge_get_n_checks (knowledge); j++)
    g_ptr_array_add (list, (gpointer) rw_knowledge_get_check (knowledge, j));
  if (way == STUDY_LIST_MINUTES)
    g_ptr_array_sort (list, compare_minutes);
  else if (way == STUDY_LIST_TRADE)
    g_ptr_array_sort (list, compare_stages);
  return list;
}

static RwBelief *
weigh (StudyHands  *hands,
       RwKnowledge *knowledge)
{
  g_autoptr (RwBenchState) state = rw_bench_state_new (hands->hands.session);

  return rw_belief_new (knowledge, state);
}

/* TRUE when the job is over. */
static gboolean
repair_if_sure (StudyJob    *out,
                StudyHands  *hands,
                RwKnowledge *knowledge,
                double       sure)
{
  g_autoptr (RwBelief) belief = weigh (hands, knowledge);
  const RwCauseBelief *leader;

  if (rw_belief_get_fixed (belief) != NULL)
    {
      out->half = rw_practice_cabinet_get_true_n_faults (hands->hands.cabinet) > 0;
      return TRUE;
    }
  leader = likeliest_untried (belief);
  claim (out, hands, belief);
  if (leader == NULL)
    return TRUE;
  if (leader->p >= sure)
    repair (out, hands, knowledge, belief, leader->cause);
  return out->fixed;
}

static void
follow_list (StudyJob    *out,
             StudyHands  *hands,
             RwKnowledge *whole,
             StudyWay     way)
{
  g_autoptr (RwKnowledge) knowledge = rw_knowledge_for_profile (whole, hands->job->profile);
  g_autoptr (GPtrArray) list = list_checks (knowledge, way);

  for (guint j = 0; j < list->len; j++)
    if (check (out, hands, list->pdata[j])
        && repair_if_sure (out, hands, knowledge, list_sure))
      return;
  for (guint n = 0; n < most_list_repairs; n++)
    if (repair_if_sure (out, hands, knowledge, 0))
      return;
}

void
study_job_run (StudyJob        *out,
               const StudyCase *job,
               StudyWay         way,
               RwKnowledge     *knowledge,
               gboolean         log)
{
  StudyHands hands;

  *out = (StudyJob) { .log = log ? g_string_new (NULL) : NULL };
  study_hands_init (&hands, job);
  study_hands_tell_symptoms (&hands);
  if (way == STUDY_PROGRAM || way == STUDY_SCREEN)
    follow_program (out, &hands, knowledge, way == STUDY_SCREEN);
  else
    follow_list (out, &hands, knowledge, way);
  out->minutes = hands.minutes;
  look_what_is_mended (out, &hands);
  study_hands_clear (&hands);
}
