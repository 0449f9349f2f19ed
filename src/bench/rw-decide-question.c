/* rw-decide-question.c: what to do next at a moment of a session, as a question with a short list of answers.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The list: what the program suggests, what was done, and the next best of the rest, those first that anybody may do.
 * It is put in the order of the titles, which tells nothing. A check is counted as the card of the next check counts
 * it (RwAdviceCheck: expected); a repair as "the best repair first, then what is best". What was answered already
 * stands in no ranking: taken again it costs its own minutes on top of the best way.
 */
#include "config.h"

#include "rw-decide-question.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-card-words.h"
#include "rw-quantity.h"
#include "rw-setups.h"
#include "rw-skipped.h"

static void
option_free (gpointer data)
{
  RwDecideOption *option = data;

  g_free (option->why);
  g_free (option);
}

void
rw_decide_question_free (RwDecideQuestion *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->options, g_ptr_array_unref);
  g_clear_pointer (&self->advice, rw_advice_unref);
  g_free (self);
}

/* --- what was done -------------------------------------------------------------------------------- */

/* The most particular check that a reading answers, as the evidence has it. (nullable) */
static const RwCheck *
check_of_reading (const RwKnowledge *knowledge,
                  const RwReading   *reading,
                  RwSetup            setup)
{
  const RwSetup whole = rw_belief_complete_setup (setup, reading->place, reading->kind);
  const RwCheck *best = NULL;

  for (guint i = 0; i < rw_knowledge_get_n_checks (knowledge); i++)
    {
      const RwCheck *check = rw_knowledge_get_check (knowledge, i);

      if (check->measures && g_strcmp0 (check->rail, reading->rail) == 0 && check->place == reading->place
          && check->kind == reading->kind && rw_setups_match (check, whole)
          && (best == NULL || rw_setups_strictness (check) > rw_setups_strictness (best)))
        best = check;
    }
  return best;
}

static const RwCheck *
check_of_deed (const RwKnowledge *knowledge,
               const RwEvent     *deed,
               RwSetup            setup)
{
  if (deed->type == RW_EVENT_FINDING && g_strcmp0 (deed->finding.outcome, RW_SKIPPED_OUTCOME) != 0)
    return rw_knowledge_find_check (knowledge, deed->finding.check);
  return deed->type == RW_EVENT_READING ? check_of_reading (knowledge, &deed->reading, setup) : NULL;
}

/* --- the list ------------------------------------------------------------------------------------- */

static RwDecideOption *
find_check (const RwDecideQuestion *self,
            const RwCheck          *check)
{
  for (guint i = 0; i < self->options->len; i++)
    {
      RwDecideOption *option = self->options->pdata[i];

      if (option->check != NULL && option->check == check)
        return option;
    }
  return NULL;
}

static RwDecideOption *
add_offer (RwDecideQuestion    *self,
           const RwAdviceCheck *offer)
{
  RwDecideOption *option = find_check (self, offer->check);

  if (option != NULL)
    return option;
  option = g_new0 (RwDecideOption, 1);
  option->check = offer->check;
  option->title = offer->check->title;
  option->minutes = offer->minutes;
  option->expected = offer->expected;
  option->why = rw_card_words_why (self->advice, offer);
  g_ptr_array_add (self->options, option);
  return option;
}

static RwDecideOption *
add_repair (RwDecideQuestion *self)
{
  const RwCause *cause = rw_advice_get_repair (self->advice);
  RwDecideOption *option = g_new0 (RwDecideOption, 1);

  option->repair = cause;
  option->title = cause->repair.title;
  option->minutes = rw_advice_get_repair_minutes (self->advice, cause, NULL);
  option->expected = rw_advice_get_repair_first (self->advice);
  option->why = rw_card_words_repair_why (self->advice, cause, TRUE);
  g_ptr_array_add (self->options, option);
  return option;
}

static RwDecideOption *
add_again (RwDecideQuestion *self,
           const RwCheck    *check)
{
  RwDecideOption *option = g_new0 (RwDecideOption, 1);

  option->check = check;
  option->title = check->title;
  option->minutes = check->minutes;
  option->expected = rw_advice_get_expected (self->advice) + check->minutes;
  option->again = TRUE;
  option->why = g_strdup (_ ("It was answered before: as things stand it tells nothing new, and costs its time."));
  g_ptr_array_add (self->options, option);
  return option;
}

static const RwAdviceCheck *
find_offer (const RwAdvice *advice,
            const RwCheck  *check)
{
  for (guint i = 0; i < rw_advice_get_n_checks (advice); i++)
    if (rw_advice_get_ranked (advice, i)->check == check)
      return rw_advice_get_ranked (advice, i);
  return NULL;
}

static void
add_others (RwDecideQuestion *self,
            gboolean          reserved)
{
  for (guint i = 0; i < rw_advice_get_n_checks (self->advice) && self->options->len < RW_DECIDE_OPTIONS; i++)
    {
      const RwAdviceCheck *offer = rw_advice_get_ranked (self->advice, i);

      if (rw_check_is_reserved (offer->check) == reserved)
        add_offer (self, offer);
    }
}

static int
compare_titles (gconstpointer a,
                gconstpointer b)
{
  const RwDecideOption *first = *(RwDecideOption *const *) a, *second = *(RwDecideOption *const *) b;

  return g_utf8_collate (first->title, second->title);
}

static void
fill (RwDecideQuestion *self,
      const RwCheck    *taken)
{
  const RwAdviceCheck *offer = find_offer (self->advice, taken);
  RwDecideOption *done = offer != NULL ? add_offer (self, offer) : add_again (self, taken);
  RwDecideOption *best = rw_advice_get_kind (self->advice) == RW_ADVICE_REPAIR
                             ? add_repair (self)
                             : add_offer (self, rw_advice_get_check (self->advice));

  done->taken = TRUE;
  best->suggested = TRUE;
  add_others (self, FALSE);
  add_others (self, TRUE);
  g_ptr_array_sort (self->options, compare_titles);
}

/* What was set aside, but for what was done after all. */
static GHashTable *
gather_skipped (const RwBenchState *state,
                const RwCheck      *taken)
{
  GHashTable *skipped = rw_skipped_gather (state);

  g_hash_table_remove (skipped, taken->id);
  return skipped;
}

static gboolean
can_ask (const RwAdvice *advice)
{
  return (rw_advice_get_kind (advice) == RW_ADVICE_CHECK && rw_advice_get_check (advice) != NULL)
         || (rw_advice_get_kind (advice) == RW_ADVICE_REPAIR && rw_advice_get_repair (advice) != NULL);
}

RwDecideQuestion *
rw_decide_question_new (RwKnowledge   *knowledge,
                        RwSession     *before,
                        const RwEvent *deed)
{
  g_return_val_if_fail (knowledge != NULL && RW_IS_SESSION (before) && deed != NULL, NULL);

  g_autoptr (RwBenchState) state = rw_bench_state_new (before);
  g_autoptr (RwKnowledge) ours = rw_knowledge_for_profile (knowledge, rw_session_get_profile (before));
  const RwCheck *taken = check_of_deed (ours, deed, rw_bench_state_get_setup (state));

  if (taken == NULL)
    return NULL;

  g_autoptr (GHashTable) skipped = gather_skipped (state, taken);
  g_autoptr (RwAdvice) advice = rw_advice_new (knowledge, state, skipped);

  if (!can_ask (advice))
    return NULL;

  RwDecideQuestion *self = g_new0 (RwDecideQuestion, 1);

  self->advice = g_steal_pointer (&advice);
  self->options = g_ptr_array_new_with_free_func (option_free);
  self->n_events = rw_session_get_n_events (before);
  self->t = deed->t;
  self->chosen = -1;
  fill (self, taken);
  return self;
}

/* --- asking it ------------------------------------------------------------------------------------ */

guint
rw_decide_question_get_n (const RwDecideQuestion *self)
{
  return self->options->len;
}

const RwDecideOption *
rw_decide_question_get (const RwDecideQuestion *self,
                        guint                   i)
{
  g_return_val_if_fail (i < self->options->len, NULL);
  return self->options->pdata[i];
}

const RwDecideOption *
rw_decide_question_get_taken (const RwDecideQuestion *self)
{
  for (guint i = 0; i < self->options->len; i++)
    if (rw_decide_question_get (self, i)->taken)
      return rw_decide_question_get (self, i);
  return NULL;
}

const RwDecideOption *
rw_decide_question_get_suggested (const RwDecideQuestion *self)
{
  for (guint i = 0; i < self->options->len; i++)
    if (rw_decide_question_get (self, i)->suggested)
      return rw_decide_question_get (self, i);
  return NULL;
}

const RwDecideOption *
rw_decide_question_get_chosen (const RwDecideQuestion *self)
{
  return self->chosen >= 0 ? rw_decide_question_get (self, (guint) self->chosen) : NULL;
}

static double
best_of (const RwDecideQuestion *self)
{
  double best = INFINITY;

  for (guint i = 0; i < self->options->len; i++)
    best = fmin (best, rw_decide_question_get (self, i)->expected);
  return best;
}

double
rw_decide_question_get_lost (const RwDecideQuestion *self,
                             const RwDecideOption   *option)
{
  const double lost = option->expected - best_of (self);

  /* What the program suggests is never held against anybody: of equals it takes the one that risks least. */
  return option->suggested || !(lost >= RW_DECIDE_AS_GOOD) ? 0 : lost;
}

static char *
format_minutes (double minutes)
{
  return rw_quantity_format_number (minutes, minutes < 9.95 ? 1 : 0);
}

char *
rw_decide_question_say (const RwDecideQuestion *self,
                        const RwDecideOption   *option)
{
  g_autofree char *expected = format_minutes (option->expected);
  const double lost = rw_decide_question_get_lost (self, option);
  g_autofree char *more = format_minutes (lost);

  if (lost == 0)
    /* Translators: minutes. */
    return g_strdup_printf (_ ("%s min expected in all: none is better"), expected);
  /* Translators: minutes, minutes. */
  return g_strdup_printf (_ ("%s min expected in all, %s min more than the best"), expected, more);
}

/* --- the score ------------------------------------------------------------------------------------ */

void
rw_decide_score_add (RwDecideScore          *self,
                     const RwDecideQuestion *question)
{
  const RwDecideOption *chosen = rw_decide_question_get_chosen (question);

  if (chosen == NULL)
    return;

  const double lost = rw_decide_question_get_lost (question, chosen);
  const double taken = rw_decide_question_get_lost (question, rw_decide_question_get_taken (question));

  self->n++;
  self->n_best += lost == 0;
  self->taken_best += taken == 0;
  self->lost += lost;
  self->taken_lost += taken;
}

char *
rw_decide_score_say (const RwDecideScore *self)
{
  if (self->n == 0)
    return g_strdup (_ ("No decision has been answered yet."));

  g_autofree char *lost = format_minutes (self->lost);
  g_autofree char *taken = format_minutes (self->taken_lost);

  /* Translators: how many answers were as good as the best, of how many; minutes; the same of what was done. */
  return g_strdup_printf (_ ("You: %u of %u as good as the best, %s min lost in all. What was done: %u of %u, %s min lost."),
                          self->n_best, self->n, lost, self->taken_best, self->n, taken);
}
