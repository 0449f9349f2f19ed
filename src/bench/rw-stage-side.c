/* rw-stage-side.c: the side of the window that leads through the bring-up.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A spot that was taken is followed: once it is read, the next open one of the stage is aimed at, so that a stage is
 * read from its first spot to its last with no key but those of the readings.
 */
#include "config.h"

#include "rw-stage-side.h"

#include <glib/gi18n-lib.h>

#include "rw-job-stages.h"
#include "rw-stage-card.h"
#include "rw-label-box.h"
#include "rw-record-box.h"
#include "rw-stage-list.h"

struct _RwStageSide
{
  GtkWidget     parent_instance;
  RwJob        *job;
  RwStages     *stages;  /* (nullable) */
  int           shown;   /* RwStage; −1: the current one, or the first */
  gboolean      taking;  /* spots are taken one after another */
  gboolean      said;    /* the banner has words from here */
  gboolean      off_live; /* the power must go off, by what a meter shows */

  GtkWidget    *box;
  GtkWidget    *problem;
  RwStageList  *list;
  GtkWidget    *scroller;
  RwStageCard  *card;
  RwLabelBox   *label;
  GtkWidget    *spot; /* the first that is to be read */
  GtkWidget    *spot_words;
  GtkWidget    *question; /* the first that is open */
  GtkWidget    *question_words;
  GtkWidget    *yes;
  GtkWidget    *no;
  GtkWidget    *go_on;
  GtkWidget    *against;
  GtkWidget    *why;
  RwRecordBox  *record;
};

static guint aimed_signal, say_signal;

G_DEFINE_FINAL_TYPE (RwStageSide, rw_stage_side, GTK_TYPE_WIDGET)

static RwStage
get_shown (RwStageSide *self)
{
  return self->shown >= 0              ? (RwStage) self->shown
         : self->stages->current >= 0 ? (RwStage) self->stages->current
                                      : RW_STAGE_LOOK;
}

static gboolean
is_current (RwStageSide *self)
{
  return self->stages->current == (int) get_shown (self);
}

static void
say (RwStageSide *self,
     gboolean     trouble,
     const char  *text)
{
  self->said = text != NULL;
  g_signal_emit (self, say_signal, 0, trouble, text);
}

/* The stage shown is the current one, its hazards were read, and the power may stay: it may ask. */
static gboolean
may_ask (RwStageSide *self)
{
  const RwGateReason *reason = rw_stages_get_reason (self->stages, get_shown (self));

  return is_current (self) && self->stages->stages[get_shown (self)].hazard_read && (reason == NULL || !reason->off);
}

/* The first open question of the current stage. (nullable) */
static const RwQuestioned *
find_question (RwStageSide *self)
{
  const GArray *questions = self->stages->stages[get_shown (self)].questions;

  for (guint i = 0; may_ask (self) && i < questions->len; i++)
    if (g_array_index (questions, RwQuestioned, i).answer == RW_ANSWER_NONE)
      return &g_array_index (questions, RwQuestioned, i);
  return NULL;
}

/* (nullable) */
static const RwAsked *
find_spot (RwStageSide *self)
{
  const RwAsked *spot = NULL;
  const RwQuestioned *question;

  if (may_ask (self))
    rw_stages_get_next (self->stages, &spot, &question);
  return spot;
}

/* --- the buttons ---------------------------------------------------------------------------------- */

/* What the one big button says; NULL: there is nothing to go on to. (transfer full) */
static char *
say_go_on (RwStageSide *self)
{
  const RwStage shown = get_shown (self);
  const RwStageState *state = &self->stages->stages[shown];

  if (!is_current (self))
    /* Translators: title of a stage. */
    return g_strdup_printf (_ ("Go to “%s” (O)"), state->words->title);
  if (!state->hazard_read)
    return g_strdup (_ ("I have read this (O)"));
  if (shown + 1 >= RW_N_STAGES)
    return NULL;

  const char *next = self->stages->stages[shown + 1].words->title;

  if (state->n_open > 0)
    /* Translators: number of readings and answers, title of a stage. */
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Leave %u open, next: %s (O)", "Leave %u open, next: %s (O)",
                                         state->n_open),
                            state->n_open, next);
  /* Translators: title of a stage. */
  return g_strdup_printf (_ ("Next stage: %s (O)"), next);
}

static gboolean
can_go_on (RwStageSide *self)
{
  const RwStageState *state = &self->stages->stages[get_shown (self)];

  return rw_job_can_write (self->job)
         && (!is_current (self) || !state->hazard_read || state->status != RW_STAGE_BLOCKED);
}

static gboolean
can_go_against (RwStageSide *self)
{
  const RwStageState *state = &self->stages->stages[get_shown (self)];

  return rw_job_can_write (self->job) && is_current (self) && state->hazard_read && state->status == RW_STAGE_BLOCKED;
}

static void
set_words (GtkWidget  *button,
           const char *words)
{
  gtk_button_set_label (GTK_BUTTON (button), words);

  GtkWidget *label = gtk_button_get_child (GTK_BUTTON (button));

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_justify (GTK_LABEL (label), GTK_JUSTIFY_CENTER);
}

static void
show_buttons (RwStageSide *self)
{
  const RwStageState *state = &self->stages->stages[get_shown (self)];
  const gboolean against = can_go_against (self);
  g_autofree char *words = say_go_on (self);

  set_words (self->go_on, words != NULL ? words : "");
  gtk_widget_set_visible (self->go_on, words != NULL && can_go_on (self));
  if (is_current (self) && state->hazard_read && state->n_open > 0)
    gtk_widget_remove_css_class (self->go_on, "suggested-action");
  else
    gtk_widget_add_css_class (self->go_on, "suggested-action");
  gtk_widget_set_visible (self->against, against && !gtk_widget_get_visible (self->why));
  if (!against)
    gtk_widget_set_visible (self->why, FALSE);
}

/* What the keys mean is always in sight. */
static void
show_next (RwStageSide *self)
{
  const gboolean can = rw_job_can_write (self->job);
  const RwAsked *spot = can ? find_spot (self) : NULL;
  const RwQuestioned *questioned = can ? find_question (self) : NULL;

  if (spot != NULL)
    {
      g_autofree char *where = rw_asked_describe (spot);
      /* Translators: a spot to be measured. */
      g_autofree char *words = g_strdup_printf (_ ("Read %s (C)"), where);

      gtk_label_set_text (GTK_LABEL (self->spot_words), words);
      gtk_accessible_update_property (GTK_ACCESSIBLE (self->spot), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
    }
  if (questioned != NULL)
    gtk_label_set_text (GTK_LABEL (self->question_words), questioned->question->text);
  gtk_widget_set_visible (self->spot, spot != NULL);
  gtk_widget_set_visible (self->question, questioned != NULL);
}

/* --- following the job ---------------------------------------------------------------------------- */

static void
aim (RwStageSide   *self,
     const RwAsked *asked)
{
  rw_job_set_spot (self->job, asked->rail != NULL ? asked->rail_id : RW_RAIL_GROUND, asked->place, asked->kind);
  g_signal_emit (self, aimed_signal, 0);
}

static gboolean
is_aimed (RwStageSide   *self,
          const RwAsked *asked)
{
  return g_strcmp0 (rw_job_get_rail (self->job), asked->rail != NULL ? asked->rail_id : RW_RAIL_GROUND) == 0
         && rw_job_get_place (self->job) == asked->place && rw_job_get_kind (self->job) == asked->kind;
}

static void
follow_spots (RwStageSide *self)
{
  const RwAsked *spot = find_spot (self);

  if (spot == NULL && self->taking)
    {
      self->taking = FALSE; /* back to what is measured mostly */
      rw_job_set_spot (self->job, rw_job_get_rail (self->job), rw_job_get_place (self->job), RW_KIND_DC);
    }
  else if (spot != NULL && self->taking && !is_aimed (self, spot))
    aim (self, spot);
}

static void
show_all (RwStageSide *self)
{
  g_autoptr (GError) error = NULL;

  g_clear_pointer (&self->stages, rw_stages_unref);
  self->stages = rw_job_dup_stages (self->job, &error);
  gtk_widget_set_visible (self->problem, self->stages == NULL);
  gtk_widget_set_visible (self->box, self->stages != NULL);
  if (self->stages == NULL)
    {
      gtk_label_set_text (GTK_LABEL (self->problem), error->message);
      return;
    }
  rw_stage_list_show (self->list, self->stages, get_shown (self));
  rw_stage_card_show (self->card, self->stages, get_shown (self), rw_job_can_write (self->job));
  gtk_widget_set_visible (GTK_WIDGET (self->label), get_shown (self) == RW_STAGE_CLOSE
                                                        && self->stages->stages[RW_STAGE_CLOSE].status == RW_STAGE_CURRENT);
  rw_label_box_refresh (self->label);
  show_next (self);
  show_buttons (self);
  rw_record_box_show (self->record, self->job, self->stages);
}

static void
scroll_up (RwStageSide *self)
{
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->scroller)), 0);
}

static void
changed_cb (RwStageSide *self)
{
  const int before = self->stages != NULL ? self->stages->current : -1;

  show_all (self);
  if (self->stages == NULL)
    return;
  if (self->stages->current != before)
    {
      self->shown = -1;
      self->taking = FALSE;
      if (self->said)
        say (self, FALSE, NULL);
      show_all (self);
      scroll_up (self);
    }
  follow_spots (self);
}

/* A live value stops a stage, or does no longer. */
static void
live_cb (RwStageSide *self)
{
  RwGateReason reason;
  const gboolean off = rw_job_look_live (self->job, &reason);

  if (off)
    rw_gate_reason_clear (&reason);
  if (off == self->off_live)
    return;
  self->off_live = off;
  changed_cb (self);
}

/* Only the warm-up goes on by the clock. */
static void
tick_cb (RwStageSide *self)
{
  if (self->stages != NULL && self->stages->current == RW_STAGE_WARM_UP)
    changed_cb (self);
}

void
rw_stage_side_set_job (RwStageSide *self,
                       RwJob       *job)
{
  g_return_if_fail (RW_IS_STAGE_SIDE (self));
  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (self->job, self);
  g_set_object (&self->job, job);
  g_clear_pointer (&self->stages, rw_stages_unref);
  self->shown = -1;
  self->taking = FALSE;
  self->off_live = FALSE;
  rw_label_box_set_job (self->label, job);
  if (job == NULL)
    return;
  g_signal_connect_object (job, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (job, "live", G_CALLBACK (live_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (job, "tick", G_CALLBACK (tick_cb), self, G_CONNECT_SWAPPED);
  changed_cb (self);
}

/* --- what people do ------------------------------------------------------------------------------- */

void
rw_stage_side_go_on (RwStageSide *self)
{
  g_return_if_fail (RW_IS_STAGE_SIDE (self));
  if (self->stages == NULL)
    return;

  const RwStage shown = get_shown (self);

  if (!can_go_on (self))
    say (self, TRUE, _ ("This stage is stopped: put right what it says, or go on against its advice with a reason (F7)."));
  else if (!is_current (self))
    rw_job_enter_stage (self->job, shown);
  else if (!self->stages->stages[shown].hazard_read)
    rw_job_read_hazard (self->job, shown);
  else if (shown + 1 < RW_N_STAGES)
    rw_job_enter_stage (self->job, shown + 1);
}

void
rw_stage_side_ask_why (RwStageSide *self)
{
  g_return_if_fail (RW_IS_STAGE_SIDE (self));
  if (self->stages == NULL || !can_go_against (self))
    return;

  const gboolean asks = !gtk_widget_get_visible (self->why);

  gtk_widget_set_visible (self->why, asks);
  gtk_widget_set_visible (self->against, !asks);
  gtk_widget_grab_focus (asks ? self->why : self->against);
}

static void
why_cb (RwStageSide *self)
{
  g_autofree char *why = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->why))));

  if (*why == '\0' || self->stages == NULL || !can_go_against (self))
    return;
  gtk_editable_set_text (GTK_EDITABLE (self->why), "");
  gtk_widget_set_visible (self->why, FALSE);
  rw_job_go_against (self->job, get_shown (self), why);
  g_signal_emit (self, aimed_signal, 0);
}

void
rw_stage_side_take_spot (RwStageSide *self)
{
  g_return_if_fail (RW_IS_STAGE_SIDE (self));
  if (self->stages == NULL)
    return;

  const RwAsked *spot = find_spot (self);

  self->taking = spot != NULL;
  if (spot != NULL)
    aim (self, spot);
  else
    say (self, FALSE, _ ("This stage asks for no reading now."));
}

gboolean
rw_stage_side_answer (RwStageSide *self,
                      gboolean     yes)
{
  g_return_val_if_fail (RW_IS_STAGE_SIDE (self), FALSE);

  const RwQuestioned *questioned = self->stages != NULL ? find_question (self) : NULL;

  if (questioned != NULL)
    rw_job_answer_stage (self->job, questioned->question, yes);
  return questioned != NULL;
}

void
rw_stage_side_save_record (RwStageSide *self)
{
  g_return_if_fail (RW_IS_STAGE_SIDE (self));
  rw_record_box_save (self->record);
}

void
rw_stage_side_save_label (RwStageSide *self)
{
  g_return_if_fail (RW_IS_STAGE_SIDE (self));
  rw_label_box_save (self->label);
}

static void
chosen_cb (RwStageSide *self,
           guint        stage)
{
  if (self->stages == NULL)
    return;
  self->shown = (int) stage == self->stages->current ? -1 : (int) stage;
  show_all (self);
  scroll_up (self);
}

static void
spot_cb (RwStageSide *self,
         guint        i)
{
  self->taking = TRUE;
  aim (self, &g_array_index (self->stages->stages[get_shown (self)].spots, RwAsked, i));
}

static void
answer_cb (RwStageSide *self,
           guint        i,
           gboolean     yes)
{
  rw_job_answer_stage (self->job,
                       g_array_index (self->stages->stages[get_shown (self)].questions, RwQuestioned, i).question, yes);
}

static void
yes_cb (RwStageSide *self)
{
  rw_stage_side_answer (self, TRUE);
}

static void
no_cb (RwStageSide *self)
{
  rw_stage_side_answer (self, FALSE);
}

static void
trouble_cb (RwStageSide *self,
            const char  *text)
{
  say (self, TRUE, text);
}

static void
done_cb (RwStageSide *self,
         const char  *text)
{
  say (self, FALSE, text);
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_stage_side_dispose (GObject *object)
{
  RwStageSide *self = RW_STAGE_SIDE (object);

  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (self->job, self);
  g_clear_object (&self->job);
  g_clear_pointer (&self->stages, rw_stages_unref);
  gtk_widget_dispose_template (GTK_WIDGET (object), RW_TYPE_STAGE_SIDE);
  G_OBJECT_CLASS (rw_stage_side_parent_class)->dispose (object);
}

static void
rw_stage_side_class_init (RwStageSideClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_stage_side_dispose;
  aimed_signal = g_signal_new ("aimed", RW_TYPE_STAGE_SIDE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  say_signal = g_signal_new ("say", RW_TYPE_STAGE_SIDE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 2,
                             G_TYPE_BOOLEAN, G_TYPE_STRING);
  g_type_ensure (RW_TYPE_STAGE_LIST);
  g_type_ensure (RW_TYPE_STAGE_CARD);
  g_type_ensure (RW_TYPE_LABEL_BOX);
  g_type_ensure (RW_TYPE_RECORD_BOX);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-stage-side.ui");
  gtk_widget_class_bind_template_child (widget_class, RwStageSide, box);
  gtk_widget_class_bind_template_child (widget_class, RwStageSide, problem);
  gtk_widget_class_bind_template_child (widget_class, RwStageSide, list);
  gtk_widget_class_bind_template_child (widget_class, RwStageSide, scroller);
  gtk_widget_class_bind_template_child (widget_class, RwStageSide, card);
  gtk_widget_class_bind_template_child (widget_class, RwStageSide, label);
  gtk_widget_class_bind_template_child (widget_class, RwStageSide, spot);
  gtk_widget_class_bind_template_child (widget_class, RwStageSide, spot_words);
  gtk_widget_class_bind_template_child (widget_class, RwStageSide, question);
  gtk_widget_class_bind_template_child (widget_class, RwStageSide, question_words);
  gtk_widget_class_bind_template_child (widget_class, RwStageSide, yes);
  gtk_widget_class_bind_template_child (widget_class, RwStageSide, no);
  gtk_widget_class_bind_template_child (widget_class, RwStageSide, go_on);
  gtk_widget_class_bind_template_child (widget_class, RwStageSide, against);
  gtk_widget_class_bind_template_child (widget_class, RwStageSide, why);
  gtk_widget_class_bind_template_child (widget_class, RwStageSide, record);
}

static void
rw_stage_side_init (RwStageSide *self)
{
  self->shown = -1;
  gtk_widget_init_template (GTK_WIDGET (self));
  set_words (self->against, _ ("Go on against this advice… (F7)"));
  g_signal_connect_swapped (self->list, "chosen", G_CALLBACK (chosen_cb), self);
  g_signal_connect_swapped (self->card, "spot", G_CALLBACK (spot_cb), self);
  g_signal_connect_swapped (self->card, "answer", G_CALLBACK (answer_cb), self);
  g_signal_connect_swapped (self->label, "trouble", G_CALLBACK (trouble_cb), self);
  g_signal_connect_swapped (self->label, "done", G_CALLBACK (done_cb), self);
  g_signal_connect_swapped (self->record, "trouble", G_CALLBACK (trouble_cb), self);
  g_signal_connect_swapped (self->record, "done", G_CALLBACK (done_cb), self);
  g_signal_connect_swapped (self->spot, "clicked", G_CALLBACK (rw_stage_side_take_spot), self);
  g_signal_connect_swapped (self->yes, "clicked", G_CALLBACK (yes_cb), self);
  g_signal_connect_swapped (self->no, "clicked", G_CALLBACK (no_cb), self);
  g_signal_connect_swapped (self->go_on, "clicked", G_CALLBACK (rw_stage_side_go_on), self);
  g_signal_connect_swapped (self->against, "clicked", G_CALLBACK (rw_stage_side_ask_why), self);
  g_signal_connect_swapped (self->why, "activate", G_CALLBACK (why_cb), self);
}
