/* rw-check-card.c: what to do next.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * States: offered (hazard, title, why, what each outcome would tell) → taken (steps and picture, outcomes to choose
 * or the entry to fill) → the finding or reading is an event, the advice changes, and the next check is offered.
 * A repair goes the same way: offered → taken (steps) → "Did it cure it?".
 *
 * What is shown is the suggestion unless somebody chose another check, or the repair of a cause.
 */
#include "config.h"

#include "rw-check-card.h"

#include <glib/gi18n-lib.h>

#include "rw-card-outcomes.h"
#include "rw-card-words.h"
#include "rw-cure-question.h"
#include "rw-lead-view.h"
#include "rw-other-ways.h"
#include "rw-practice-look.h"
#include "rw-quantity.h"
#include "rw-set-aside.h"

struct _RwCheckCard
{
  GtkWidget       parent_instance;
  RwJob          *job;
  const char     *taken;  /* interned id of the check or cause that was taken; NULL: offered */
  const char     *chosen; /* interned id of the check that was chosen instead; NULL: the suggested one */
  const char     *cause;  /* interned id of the cause whose repair was asked for; NULL: as suggested */
  gboolean        roomy;
  GtkWidget      *box;
  GtkLabel       *hazard;
  GtkLabel       *safety;
  GtkLabel       *kicker;
  GtkLabel       *title;
  GtkLabel       *facts;
  GtkWidget      *setup_row;
  GtkLabel       *setup;
  GtkWidget      *setup_done;
  RwLeadView     *picture;
  GtkLabel       *steps;
  GtkButton      *first;
  GtkButton      *second;
  RwSetAside     *aside;
  RwCureQuestion *question;
  GtkLabel       *why;
  GtkLabel       *account;
  GtkWidget      *outcomes;
  GtkToggleButton *unfold;
  RwOtherWays    *others;
};

static guint aimed_signal;

G_DEFINE_FINAL_TYPE (RwCheckCard, rw_check_card, GTK_TYPE_WIDGET)

static void refresh (RwCheckCard *self);

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

/* --- what is offered ------------------------------------------------------------------------------ */

static RwAdvice *
get_advice (RwCheckCard *self)
{
  return self->job != NULL ? rw_job_get_advice (self->job) : NULL;
}

/* The check that is shown; NULL: a repair or nothing is. */
static const RwAdviceCheck *
get_offer (RwCheckCard *self)
{
  RwAdvice *advice = get_advice (self);

  if (advice == NULL || self->cause != NULL)
    return NULL;
  for (guint i = 0; self->chosen != NULL && i < rw_advice_get_n_checks (advice); i++)
    if (rw_advice_get_ranked (advice, i)->check->id == self->chosen)
      return rw_advice_get_ranked (advice, i);
  return rw_advice_get_kind (advice) == RW_ADVICE_CHECK ? rw_advice_get_check (advice) : NULL;
}

static const RwCheck *
get_check (RwCheckCard *self)
{
  const RwAdviceCheck *offer = get_offer (self);

  return offer != NULL ? offer->check : NULL;
}

static const RwCause *
get_repair (RwCheckCard *self)
{
  RwAdvice *advice = get_advice (self);

  if (advice == NULL || get_offer (self) != NULL)
    return NULL;
  if (self->cause != NULL)
    return rw_knowledge_find_cause (rw_advice_get_knowledge (advice), self->cause);
  return rw_advice_get_kind (advice) == RW_ADVICE_REPAIR ? rw_advice_get_repair (advice) : NULL;
}

/* What was chosen by hand holds until it is answered, set aside or gone back from. */
static void
forget_choice (RwCheckCard *self)
{
  self->taken = NULL;
  self->chosen = NULL;
  self->cause = NULL;
}

static void
drop_stale_choice (RwCheckCard *self,
                   RwAdvice    *advice)
{
  const RwCheck *check = get_check (self);
  const RwCause *repair = get_repair (self);

  if (self->chosen != NULL && (check == NULL || check->id != self->chosen))
    self->chosen = NULL;
  if (self->cause != NULL && (repair == NULL || rw_advice_get_kind (advice) == RW_ADVICE_DONE))
    self->cause = NULL;
  check = get_check (self);
  repair = get_repair (self);
  if (self->taken != NULL && (check == NULL || check->id != self->taken) && (repair == NULL || repair->id != self->taken))
    self->taken = NULL;
}

/* --- the setup a check wants --------------------------------------------------------------------- */

static RwSetup
missing_setup (RwCheckCard   *self,
               const RwCheck *check)
{
  return rw_card_words_missing (check, rw_bench_state_get_setup (rw_job_get_state (self->job)));
}

static void
show_setup (RwCheckCard   *self,
            const RwCheck *check)
{
  const RwSetup missing = missing_setup (self, check);
  const RwSetup now = rw_bench_state_get_setup (rw_job_get_state (self->job));
  const gboolean any = missing.power_on != RW_SAID_NOT || missing.board_fitted != RW_SAID_NOT
                       || missing.warm != RW_SAID_NOT;
  g_autofree char *way = rw_card_words_way_there (&missing, &now);
  RwEvent wanted = rw_event_make_setup (0, missing);
  g_autofree char *words = rw_event_describe (&wanted, NULL);
  /* Translators: power, board, warm, as the check needs them. */
  g_autofree char *needs = g_strdup_printf (_ ("It needs: %s."), words);

  show_text (self->setup, way != NULL ? way : needs);
  gtk_widget_set_visible (self->setup_row, any);
}

static void
setup_done_cb (RwCheckCard *self)
{
  const RwCheck *check = get_check (self);

  if (check != NULL)
    rw_job_set_setup (self->job, missing_setup (self, check));
}

/* --- showing -------------------------------------------------------------------------------------- */

static void
outcome_cb (const char *outcome,
            gpointer    data)
{
  RwCheckCard *self = data;
  RwEvent event = rw_event_make_finding (0, self->taken, outcome);

  forget_choice (self);
  rw_job_add (self->job, &event);
  g_signal_emit (self, aimed_signal, 0); /* the button goes; the keyboard must not go with it */
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

static void
show_account (RwCheckCard         *self,
              RwAdvice            *advice,
              const RwAdviceCheck *offer)
{
  g_autofree char *account = rw_card_words_account (advice, offer);
  g_autofree char *reach = rw_advice_dup_reach (advice);
  g_autofree char *all = reach != NULL && self->chosen == NULL ? g_strdup_printf ("%s. %s", account, reach)
                                                               : g_strdup_printf ("%s.", account);

  show_text (self->account, all);
}

static void
show_check (RwCheckCard         *self,
            RwAdvice            *advice,
            const RwAdviceCheck *offer)
{
  const RwCheck *check = offer->check;
  const gboolean taken = self->taken == check->id;
  const gboolean unfolded = taken || self->roomy || gtk_toggle_button_get_active (self->unfold);
  const RwSetup missing = missing_setup (self, check);
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
  show_button (self->first, !taken ? _ ("Take it") : check->measures ? _ ("To the entry") : NULL);
  show_button (self->second, taken || self->chosen != NULL ? _ ("Back") : NULL);
  rw_set_aside_show (self->aside, self->job, taken ? NULL : check);
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
  g_autofree char *steps = rw_card_words_steps (cause->repair.steps);
  g_autofree char *facts = rw_card_words_repair_facts (advice, cause);
  g_autofree char *kicker = rw_card_words_repair_kicker (advice, cause);
  g_autofree char *safety = rw_card_words_repair_safety (cause);
  g_autofree char *why = rw_card_words_repair_why (advice, cause, self->cause != NULL);
  g_autofree char *recheck = rw_card_words_recheck (advice, cause);

  show_hazard (self, cause->repair.hazard, cause->repair.who, safety);
  show_text (self->kicker, kicker);
  show_text (self->title, cause->repair.title);
  show_text (self->facts, facts);
  gtk_widget_set_visible (self->setup_row, FALSE);
  rw_lead_view_show (self->picture, self->job, NULL);
  show_text (self->steps, unfolded ? steps : NULL);
  show_button (self->first, taken ? NULL : _ ("Do it"));
  show_button (self->second, taken || self->cause != NULL ? _ ("Back") : NULL);
  rw_set_aside_show (self->aside, self->job, NULL);
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
  show_button (self->first, NULL);
  show_button (self->second, NULL);
  rw_set_aside_show (self->aside, self->job, NULL);
  rw_cure_question_ask (self->question, self->job, NULL);
  show_text (self->why, why);
  show_text (self->account, NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->unfold), FALSE);
  rw_other_ways_show (self->others, NULL);
}

/* While something dangerous is on the leads there is nothing to be done but to stop. (nullable) */
static const RwWarning *
find_danger (RwCheckCard *self)
{
  RwBenchState *state = rw_job_get_state (self->job);

  for (guint i = 0; i < rw_bench_state_get_n_warnings (state); i++)
    if (rw_bench_state_get_warning (state, i)->danger)
      return rw_bench_state_get_warning (state, i);
  return NULL;
}

static void
show_advice (RwCheckCard *self,
             RwAdvice    *advice)
{
  const RwAdviceCheck *offer = get_offer (self);
  const RwCause *repair = get_repair (self);

  if (offer != NULL)
    show_check (self, advice, offer);
  else if (repair != NULL)
    show_repair (self, advice, repair);
  else if (rw_advice_get_kind (advice) == RW_ADVICE_DONE)
    show_words (self, _ ("Fixed"), _ ("Measure every rail once more, let it warm up, and write down what was done."));
  else
    show_words (self, _ ("Nothing more to suggest"),
                _ ("What was seen fits no cause known for this cabinet. Ask somebody, and keep the session as the record."));
}

static void
refresh (RwCheckCard *self)
{
  RwAdvice *advice = get_advice (self);

  rw_card_outcomes_clear (self->outcomes);
  if (advice == NULL)
    {
      const char *problem = self->job != NULL ? rw_job_get_advice_problem (self->job) : NULL;

      show_words (self, problem != NULL ? _ ("No advice") : _ ("Thinking…"), problem);
      return;
    }
  if (find_danger (self) != NULL)
    {
      forget_choice (self);
      show_words (self, _ ("Stop first"), _ ("No check is suggested until the danger above is over and the rail was measured "
                                             "again, or a slip of typing was taken back."));
      return;
    }
  drop_stale_choice (self, advice);
  show_advice (self, advice);
  gtk_widget_set_sensitive (GTK_WIDGET (self->first), rw_job_can_write (self->job));
  gtk_widget_set_sensitive (GTK_WIDGET (self->second), rw_job_can_write (self->job));
  gtk_widget_set_sensitive (GTK_WIDGET (self->others), rw_job_can_write (self->job));
  gtk_widget_set_sensitive (self->setup_done, rw_job_can_write (self->job));
}

/* --- what people do ------------------------------------------------------------------------------- */

static gboolean
can_act (RwCheckCard *self)
{
  return self->job != NULL && rw_job_can_write (self->job) && get_advice (self) != NULL && find_danger (self) == NULL;
}

static void
take_check (RwCheckCard   *self,
            const RwCheck *check)
{
  self->taken = check->id;
  refresh (self);
  if (!check->measures)
    {
      rw_card_outcomes_focus (self->outcomes);
      return;
    }
  rw_job_set_spot (self->job, check->rail, check->place, check->kind);
  g_signal_emit (self, aimed_signal, 0);
}

void
rw_check_card_take (RwCheckCard *self)
{
  g_return_if_fail (RW_IS_CHECK_CARD (self));
  if (!can_act (self))
    return;

  const RwCheck *check = get_check (self);
  const RwCause *cause = get_repair (self);

  if (check != NULL)
    take_check (self, check);
  else if (cause != NULL && self->taken == cause->id)
    rw_cure_question_yes (self->question);
  else if (cause != NULL)
    {
      self->taken = cause->id;
      rw_job_repair (self->job, cause->id);
      refresh (self);
      rw_cure_question_focus (self->question);
    }
}

static void
choose (RwCheckCard *self,
        const char  *check)
{
  if (!can_act (self))
    return;
  self->cause = NULL;
  self->chosen = g_intern_string (check);
  if (get_check (self) != NULL)
    take_check (self, get_check (self));
}

void
rw_check_card_take_other (RwCheckCard *self,
                          guint        i)
{
  g_return_if_fail (RW_IS_CHECK_CARD (self) && i < RW_N_OTHER_WAYS);

  const char *check = rw_other_ways_get (self->others, i);

  if (check != NULL)
    choose (self, check);
}

static void
back_cb (RwCheckCard *self)
{
  forget_choice (self);
  refresh (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->first));
}

void
rw_check_card_ask_another (RwCheckCard *self)
{
  g_return_if_fail (RW_IS_CHECK_CARD (self));
  if (!can_act (self))
    return;
  self->taken = NULL;
  refresh (self);
  rw_set_aside_open (self->aside);
}

void
rw_check_card_show_repair (RwCheckCard *self,
                           const char  *cause)
{
  g_return_if_fail (RW_IS_CHECK_CARD (self));
  if (!can_act (self))
    return;
  forget_choice (self);
  self->cause = g_intern_string (cause);
  refresh (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->first));
}

static void
answered_cb (RwCheckCard *self)
{
  forget_choice (self);
  g_signal_emit (self, aimed_signal, 0);
}

static void
unfold_cb (RwCheckCard *self)
{
  const gboolean open = gtk_toggle_button_get_active (self->unfold);

  gtk_button_set_label (GTK_BUTTON (self->unfold), open ? _ ("Less") : _ ("How it is done"));
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->unfold), GTK_ACCESSIBLE_STATE_EXPANDED, open, -1);
  refresh (self);
}

void
rw_check_card_set_roomy (RwCheckCard *self,
                         gboolean     roomy)
{
  g_return_if_fail (RW_IS_CHECK_CARD (self));
  if (self->roomy == roomy)
    return;
  self->roomy = roomy;
  refresh (self);
}

void
rw_check_card_set_job (RwCheckCard *self,
                       RwJob       *job)
{
  g_return_if_fail (RW_IS_CHECK_CARD (self));
  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (self->job, self);
  forget_choice (self);
  g_set_object (&self->job, job);
  if (job != NULL)
    g_signal_connect_object (job, "advice", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  refresh (self);
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_check_card_dispose (GObject *object)
{
  RwCheckCard *self = RW_CHECK_CARD (object);

  g_clear_object (&self->job);
  gtk_widget_dispose_template (GTK_WIDGET (self), RW_TYPE_CHECK_CARD);
  G_OBJECT_CLASS (rw_check_card_parent_class)->dispose (object);
}

static void
rw_check_card_class_init (RwCheckCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_check_card_dispose;
  aimed_signal = g_signal_new ("aimed", RW_TYPE_CHECK_CARD, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                               G_TYPE_NONE, 0);
  g_type_ensure (RW_TYPE_LEAD_VIEW);
  g_type_ensure (RW_TYPE_SET_ASIDE);
  g_type_ensure (RW_TYPE_CURE_QUESTION);
  g_type_ensure (RW_TYPE_OTHER_WAYS);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-check-card.ui");
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, box);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, hazard);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, safety);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, kicker);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, title);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, facts);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, setup_row);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, setup);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, setup_done);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, picture);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, steps);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, first);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, second);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, aside);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, question);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, why);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, account);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, outcomes);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, unfold);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, others);
}

static void
chosen_cb (RwCheckCard *self,
           const char  *check)
{
  choose (self, check);
}

static void
rw_check_card_init (RwCheckCard *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_swapped (self->first, "clicked", G_CALLBACK (rw_check_card_take), self);
  g_signal_connect_swapped (self->second, "clicked", G_CALLBACK (back_cb), self);
  g_signal_connect_swapped (self->setup_done, "clicked", G_CALLBACK (setup_done_cb), self);
  g_signal_connect_swapped (self->others, "chosen", G_CALLBACK (chosen_cb), self);
  g_signal_connect_swapped (self->question, "answered", G_CALLBACK (answered_cb), self);
  g_signal_connect_swapped (self->aside, "done", G_CALLBACK (answered_cb), self);
  g_signal_connect_swapped (self->unfold, "toggled", G_CALLBACK (unfold_cb), self);
}
