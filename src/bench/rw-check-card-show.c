/* rw-check-card-show.c: what the card of the next step shows.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-check-card-private.h"

#include <glib/gi18n-lib.h>

#include "rw-card-outcomes.h"
#include "rw-card-words.h"
#include "rw-job-practice.h"
#include "rw-practice-look.h"

static void
show_text (GtkLabel   *label,
           const char *text)
{
  gtk_label_set_text (label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (label), text != NULL && *text != '\0');
}

static void
show_button (GtkButton  *button,
             const char *text)
{
  gtk_button_set_label (button, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (button), text != NULL);
}

static void
show_buttons (RwCheckCard   *self,
              const char    *first,
              const char    *second,
              const RwCheck *aside)
{
  show_button (self->first, first);
  show_button (self->second, second);
  rw_set_aside_show (self->aside, self->job, aside);
  gtk_widget_set_visible (self->buttons, first != NULL || second != NULL || aside != NULL);
}

/* --- a check -------------------------------------------------------------------------------------- */

static void
show_setup (RwCheckCard   *self,
            const RwCheck *check)
{
  const RwSetup missing = rw_check_card_missing_setup (self, check);
  const RwSetup now = rw_bench_state_get_setup (rw_job_get_state (self->job));
  const gboolean any = missing.power_on != RW_SAID_NOT || missing.board_fitted != RW_SAID_NOT
                       || missing.warm != RW_SAID_NOT;
  g_autofree char *way = rw_card_words_way_there (&missing, &now);
  RwEvent wanted = rw_event_make_setup (0, missing);
  g_autofree char *words = rw_event_describe (&wanted, NULL);
  /* Translators: power, board, warm, as the check needs them. */
  g_autofree char *needs = g_strdup_printf (_ ("It needs: %s."), words);

  show_text (self->setup, way != NULL ? way : needs);
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self->setup_row),
                                  way != NULL ? GTK_ORIENTATION_VERTICAL : GTK_ORIENTATION_HORIZONTAL);
  gtk_widget_set_visible (self->setup_row, any);
}

static void
outcome_cb (const char *outcome,
            gpointer    data)
{
  rw_check_card_answer (data, outcome);
}

static void
show_outcomes (RwCheckCard   *self,
               RwAdvice      *advice,
               const RwCheck *check,
               gboolean       unfolded)
{
  RwPracticeCabinet *cabinet = rw_job_get_cabinet (self->job);

  if (self->taken == NULL || check->measures)
    rw_card_outcomes_foretell (self->outcomes, advice, check, unfolded);
  else
    rw_card_outcomes_choose (self->outcomes, check, cabinet != NULL ? rw_practice_look (cabinet, check->id) : NULL,
                             outcome_cb, self);
}

static void
show_hazard (RwCheckCard *self,
             RwHazard     hazard,
             RwWho        who,
             const char  *safety)
{
  g_autofree char *words = rw_card_words_hazard (hazard, who);

  show_text (self->hazard, words);
  if (hazard > RW_HAZARD_LOW_VOLTAGE || who != RW_WHO_ANYONE)
    gtk_widget_add_css_class (GTK_WIDGET (self->hazard), "safety");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->hazard), "safety");
  show_text (self->safety, safety);
}

/* What the suggestion rests on; of a check chosen instead, what it costs. */
static void
show_account (RwCheckCard         *self,
              RwAdvice            *advice,
              const RwAdviceCheck *offer)
{
  g_autofree char *account = self->chosen != NULL ? rw_card_words_account (advice, offer)
                                                  : rw_card_words_sure (advice);

  show_text (self->account, account);
}

static void
show_check (RwCheckCard         *self,
            RwAdvice            *advice,
            const RwAdviceCheck *offer)
{
  const RwCheck *check = offer->check;
  const gboolean taken = self->taken == check->id;
  const gboolean unfolded = taken || self->roomy || gtk_toggle_button_get_active (self->unfold);
  const RwSetup missing = rw_check_card_missing_setup (self, check);
  g_autofree char *facts = rw_card_words_time (offer, &missing);
  g_autofree char *steps = rw_card_words_steps (check->how);
  g_autofree char *why = rw_card_words_why (advice, offer);

  show_hazard (self, check->hazard, check->who, check->safety);
  show_text (self->kicker, self->chosen != NULL ? _ ("Chosen instead") : _ ("Next check"));
  show_text (self->title, check->title);
  show_text (self->facts, facts);
  show_setup (self, check);
  rw_lead_view_show (self->picture, self->job, unfolded ? check : NULL);
  show_text (self->steps, unfolded ? steps : NULL);
  show_buttons (self, !taken ? _ ("Take it") : check->measures ? _ ("To the entry") : NULL,
                taken || self->chosen != NULL ? _ ("Back") : NULL, taken ? NULL : check);
  rw_cure_question_ask (self->question, self->job, NULL);
  show_text (self->why, taken ? NULL : why);
  show_account (self, advice, offer);
  show_outcomes (self, advice, check, unfolded);
  gtk_widget_set_visible (GTK_WIDGET (self->unfold), !taken && !self->roomy);
  rw_other_ways_show (self->others, taken ? NULL : advice);
}

static void
show_repair (RwCheckCard   *self,
             RwAdvice      *advice,
             const RwCause *cause)
{
  const gboolean taken = self->taken == cause->id;
  const gboolean unfolded = taken || self->roomy || gtk_toggle_button_get_active (self->unfold);
  g_autofree char *facts = rw_card_words_repair_facts (advice, cause);
  g_autofree char *kicker = rw_card_words_repair_kicker (advice, cause);
  g_autofree char *safety = rw_card_words_repair_safety (cause);
  g_autofree char *why = rw_card_words_repair_why (advice, cause, self->cause != NULL);
  g_autofree char *recheck = rw_card_words_recheck (rw_job_get_knowledge (self->job), cause);
  g_autofree char *steps = rw_card_words_repair_steps (cause);

  show_hazard (self, cause->repair.hazard, cause->repair.who, safety);
  show_text (self->kicker, kicker);
  show_text (self->title, cause->repair.title);
  show_text (self->facts, facts);
  gtk_widget_set_visible (self->setup_row, FALSE);
  rw_lead_view_show (self->picture, self->job, NULL);
  show_text (self->steps, unfolded ? steps : NULL);
  show_buttons (self, taken ? NULL : _ ("Do it"), taken || self->cause != NULL ? _ ("Back") : NULL, NULL);
  rw_cure_question_ask (self->question, self->job, taken ? cause->id : NULL);
  show_text (self->why, why);
  show_text (self->account, recheck);
  gtk_widget_set_visible (GTK_WIDGET (self->unfold), !taken && !self->roomy && *steps != '\0');
  rw_other_ways_show (self->others, taken || self->cause != NULL ? NULL : advice);
}

static void
show_words (RwCheckCard *self,
            const char  *title,
            const char  *why)
{
  show_text (self->hazard, NULL);
  show_text (self->safety, NULL);
  show_text (self->kicker, NULL);
  show_text (self->title, title);
  show_text (self->facts, NULL);
  gtk_widget_set_visible (self->setup_row, FALSE);
  rw_lead_view_show (self->picture, self->job, NULL);
  show_text (self->steps, NULL);
  show_buttons (self, NULL, NULL, NULL);
  rw_cure_question_ask (self->question, self->job, NULL);
  show_text (self->why, why);
  show_text (self->account, NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->unfold), FALSE);
  rw_other_ways_show (self->others, NULL);
}

/* What it was, and what is left to do. */
static void
show_fixed (RwCheckCard   *self,
            const RwCause *cause)
{
  RwKnowledge *knowledge = rw_job_get_knowledge (self->job);
  g_autofree char *was = cause != NULL ? rw_card_words_was (cause) : NULL;
  g_autofree char *recheck = cause != NULL ? rw_card_words_recheck (knowledge, cause) : NULL;

  show_words (self, _ ("Fixed"), _ ("Measure every rail once more, let it warm up, and write down what was done."));
  show_text (self->facts, was);
  show_text (self->account, recheck);
}

static void
show_advice (RwCheckCard *self,
             RwAdvice    *advice)
{
  const RwAdviceCheck *offer = rw_check_card_get_offer (self);
  const RwCause *repair = rw_check_card_get_repair (self);

  if (offer != NULL)
    show_check (self, advice, offer);
  else if (repair != NULL)
    show_repair (self, advice, repair);
  else if (rw_advice_get_kind (advice) == RW_ADVICE_DONE)
    show_fixed (self, rw_advice_get_repair (advice));
  else
    show_words (self, _ ("Nothing more to suggest"),
                _ ("What was seen fits no cause known for this cabinet. Ask somebody, and keep the session as the record."));
}

/* --- without advice ------------------------------------------------------------------------------- */

/* The cause whose repair was the cure, by the person's word. (nullable) */
static const RwCause *
find_cured (RwCheckCard *self)
{
  RwBenchState *state = rw_job_get_state (self->job);
  RwKnowledge *knowledge = rw_job_get_knowledge (self->job);
  const guint n = rw_bench_state_get_n_repairs (state);
  const RwRepairSeen *last = n > 0 ? rw_bench_state_get_repair (state, n - 1) : NULL;

  return last != NULL && last->result == RW_REPAIR_FIXED && knowledge != NULL
             ? rw_knowledge_find_cause (knowledge, last->cause)
             : NULL;
}

/* Worked without suggestions: a repair is done when the person asks for it. */
static void
show_unadvised (RwCheckCard *self)
{
  const RwCause *repair = rw_check_card_get_repair (self), *cured = find_cured (self);

  if (repair != NULL)
    show_repair (self, NULL, repair);
  else if (cured != NULL)
    show_fixed (self, cured);
  else
    show_words (self, _ ("Without suggestions"), rw_job_get_advice_problem (self->job));
}

static void
show_no_advice (RwCheckCard *self)
{
  const char *problem = self->job != NULL ? rw_job_get_advice_problem (self->job) : NULL;

  show_words (self, problem != NULL ? _ ("No advice") : _ ("Thinking…"), problem);
}

/* --- all of it ------------------------------------------------------------------------------------ */

void
rw_check_card_refresh (RwCheckCard *self)
{
  RwAdvice *advice = rw_check_card_get_advice (self);
  const gboolean unadvised = self->job != NULL && !rw_job_gives_advice (self->job);

  rw_card_outcomes_clear (self->outcomes);
  if (advice == NULL && !unadvised)
    {
      show_no_advice (self);
      return;
    }
  if (rw_check_card_find_danger (self) != NULL)
    {
      rw_check_card_forget_choice (self);
      show_words (self, _ ("Stop first"), _ ("No check is suggested until the danger above is over and the rail was measured "
                                             "again, or a slip of typing was taken back."));
      return;
    }
  rw_check_card_drop_stale_choice (self, advice);
  if (advice != NULL)
    show_advice (self, advice);
  else
    show_unadvised (self);
  gtk_widget_set_sensitive (GTK_WIDGET (self->first), rw_job_can_write (self->job));
  gtk_widget_set_sensitive (GTK_WIDGET (self->second), rw_job_can_write (self->job));
  gtk_widget_set_sensitive (GTK_WIDGET (self->others), rw_job_can_write (self->job));
  gtk_widget_set_sensitive (self->setup_done, rw_job_can_write (self->job));
}
