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

#include "rw-check-card-private.h"

#include <glib/gi18n-lib.h>

#include "rw-card-outcomes.h"
#include "rw-card-words.h"
#include "rw-job-practice.h"
#include "rw-wrap-box.h"

static guint aimed_signal;

static const int narrow = 314; /* pixels that the narrow side leaves the words in width */

G_DEFINE_FINAL_TYPE (RwCheckCard, rw_check_card, GTK_TYPE_WIDGET)

/* --- what is offered ------------------------------------------------------------------------------ */

RwAdvice *
rw_check_card_get_advice (RwCheckCard *self)
{
  return self->job != NULL ? rw_job_get_advice (self->job) : NULL;
}

const RwAdviceCheck *
rw_check_card_get_offer (RwCheckCard *self)
{
  RwAdvice *advice = rw_check_card_get_advice (self);

  if (advice == NULL || self->cause != NULL)
    return NULL;
  for (guint i = 0; self->chosen != NULL && i < rw_advice_get_n_checks (advice); i++)
    if (rw_advice_get_ranked (advice, i)->check->id == self->chosen)
      return rw_advice_get_ranked (advice, i);
  return rw_advice_get_kind (advice) == RW_ADVICE_CHECK ? rw_advice_get_check (advice) : NULL;
}

const RwCheck *
rw_check_card_get_check (RwCheckCard *self)
{
  const RwAdviceCheck *offer = rw_check_card_get_offer (self);

  return offer != NULL ? offer->check : NULL;
}

const RwCause *
rw_check_card_get_repair (RwCheckCard *self)
{
  RwAdvice *advice = rw_check_card_get_advice (self);
  RwKnowledge *knowledge = advice != NULL      ? rw_advice_get_knowledge (advice)
                           : self->job != NULL ? rw_job_get_knowledge (self->job)
                                               : NULL;

  if (knowledge == NULL || rw_check_card_get_offer (self) != NULL)
    return NULL;
  if (self->cause != NULL)
    return rw_knowledge_find_cause (knowledge, self->cause);
  return advice != NULL && rw_advice_get_kind (advice) == RW_ADVICE_REPAIR ? rw_advice_get_repair (advice) : NULL;
}

void
rw_check_card_forget_choice (RwCheckCard *self)
{
  self->taken = NULL;
  self->chosen = NULL;
  self->cause = NULL;
}

void
rw_check_card_drop_stale_choice (RwCheckCard *self,
                                 RwAdvice    *advice)
{
  const gboolean done = advice != NULL && rw_advice_get_kind (advice) == RW_ADVICE_DONE;
  const RwCheck *check = rw_check_card_get_check (self);
  const RwCause *repair = rw_check_card_get_repair (self);

  if (self->chosen != NULL && (check == NULL || check->id != self->chosen))
    self->chosen = NULL;
  if (self->cause != NULL && (repair == NULL || done))
    self->cause = NULL;
  check = rw_check_card_get_check (self);
  repair = rw_check_card_get_repair (self);
  if (self->taken != NULL && (check == NULL || check->id != self->taken) && (repair == NULL || repair->id != self->taken))
    self->taken = NULL;
}

RwSetup
rw_check_card_missing_setup (RwCheckCard   *self,
                             const RwCheck *check)
{
  return rw_card_words_missing (check, rw_bench_state_get_setup (rw_job_get_state (self->job)));
}

const RwWarning *
rw_check_card_find_danger (RwCheckCard *self)
{
  return rw_bench_state_find_danger (rw_job_get_state (self->job));
}

/* --- what people do ------------------------------------------------------------------------------- */

static void
setup_done_cb (RwCheckCard *self)
{
  const RwCheck *check = rw_check_card_get_check (self);

  if (check != NULL)
    rw_job_set_setup (self->job, rw_check_card_missing_setup (self, check));
}

void
rw_check_card_answer (RwCheckCard *self,
                      const char  *outcome)
{
  RwEvent event = rw_event_make_finding (0, self->taken, outcome);

  rw_check_card_forget_choice (self);
  rw_job_add (self->job, &event);
  g_signal_emit (self, aimed_signal, 0); /* the button goes; the keyboard must not go with it */
}

/* Without advice the repairs are still there to be done. */
static gboolean
can_act (RwCheckCard *self)
{
  return self->job != NULL && rw_job_can_write (self->job)
         && (rw_check_card_get_advice (self) != NULL || !rw_job_gives_advice (self->job))
         && rw_check_card_find_danger (self) == NULL;
}

static void
take_check (RwCheckCard   *self,
            const RwCheck *check)
{
  self->taken = check->id;
  rw_check_card_refresh (self);
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

  const RwCheck *check = rw_check_card_get_check (self);
  const RwCause *cause = rw_check_card_get_repair (self);

  if (check != NULL)
    take_check (self, check);
  else if (cause != NULL && self->taken == cause->id)
    rw_cure_question_yes (self->question);
  else if (cause != NULL)
    {
      self->taken = cause->id;
      rw_job_repair (self->job, cause->id);
      rw_check_card_refresh (self);
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
  if (rw_check_card_get_check (self) != NULL)
    take_check (self, rw_check_card_get_check (self));
}

void
rw_check_card_take_other (RwCheckCard *self,
                          guint        i)
{
  g_return_if_fail (RW_IS_CHECK_CARD (self) && i < RW_N_OTHER_WAYS);

  if (!can_act (self))
    return;
  if (self->taken != NULL) /* the other ways are told beside what is suggested */
    {
      rw_check_card_forget_choice (self);
      rw_check_card_refresh (self);
    }

  const char *check = rw_other_ways_get (self->others, i);

  if (check != NULL)
    choose (self, check);
}

static void
back_cb (RwCheckCard *self)
{
  rw_check_card_forget_choice (self);
  rw_check_card_refresh (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->first));
}

void
rw_check_card_ask_another (RwCheckCard *self)
{
  g_return_if_fail (RW_IS_CHECK_CARD (self));
  if (!can_act (self))
    return;
  self->taken = NULL;
  rw_check_card_refresh (self);
  rw_set_aside_open (self->aside);
}

void
rw_check_card_show_repair (RwCheckCard *self,
                           const char  *cause)
{
  g_return_if_fail (RW_IS_CHECK_CARD (self));
  if (!can_act (self))
    return;
  rw_check_card_forget_choice (self);
  self->cause = g_intern_string (cause);
  rw_check_card_refresh (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->first));
}

static void
answered_cb (RwCheckCard *self)
{
  rw_check_card_forget_choice (self);
  g_signal_emit (self, aimed_signal, 0);
}

static void
unfold_cb (RwCheckCard *self)
{
  const gboolean open = gtk_toggle_button_get_active (self->unfold);

  gtk_button_set_label (GTK_BUTTON (self->unfold), open ? _ ("Less") : _ ("How it is done"));
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->unfold), GTK_ACCESSIBLE_STATE_EXPANDED, open, -1);
  rw_check_card_refresh (self);
}

gboolean
rw_check_card_has_step (RwCheckCard *self)
{
  g_return_val_if_fail (RW_IS_CHECK_CARD (self), FALSE);
  if (self->job == NULL || rw_check_card_find_danger (self) != NULL)
    return FALSE;
  return rw_check_card_get_offer (self) != NULL || rw_check_card_get_repair (self) != NULL;
}

/* Pixels that the words want at their present width. (A scrolled window asks only what it wants at its widest.) */
static int
height_inside (RwCheckCard *self)
{
  const int width = gtk_widget_get_width (self->inside);
  int height = 0;

  gtk_widget_measure (self->inside, GTK_ORIENTATION_VERTICAL, width > 0 ? width : narrow, NULL, &height, NULL, NULL);
  return height;
}

void
rw_check_card_fit (RwCheckCard *self,
                   int          least,
                   int          most)
{
  g_return_if_fail (RW_IS_CHECK_CARD (self));

  const gboolean has_step = rw_check_card_has_step (self);

  gtk_widget_set_vexpand (GTK_WIDGET (self), has_step);
  gtk_scrolled_window_set_min_content_height (self->scroller, has_step ? least : MIN (height_inside (self), most));
}

void
rw_check_card_scroll_up (RwCheckCard *self)
{
  g_return_if_fail (RW_IS_CHECK_CARD (self));
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scroller), 0);
}

void
rw_check_card_set_roomy (RwCheckCard *self,
                         gboolean     roomy)
{
  g_return_if_fail (RW_IS_CHECK_CARD (self));
  if (self->roomy == roomy)
    return;
  self->roomy = roomy;
  rw_check_card_refresh (self);
}

void
rw_check_card_set_job (RwCheckCard *self,
                       RwJob       *job)
{
  g_return_if_fail (RW_IS_CHECK_CARD (self));
  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (self->job, self);
  rw_check_card_forget_choice (self);
  g_set_object (&self->job, job);
  if (job != NULL)
    g_signal_connect_object (job, "advice", G_CALLBACK (rw_check_card_refresh), self, G_CONNECT_SWAPPED);
  rw_check_card_refresh (self);
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
  g_type_ensure (RW_TYPE_WRAP_BOX);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-check-card.ui");
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, box);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, scroller);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, inside);
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
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, buttons);
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
