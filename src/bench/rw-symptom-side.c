/* rw-symptom-side.c: the side of the window that thinks.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-symptom-side.h"

#include "rw-cause-list.h"
#include "rw-check-card.h"
#include "rw-plan-view.h"
#include "rw-repair-picker.h"
#include "rw-symptom-picker.h"

struct _RwSymptomSide
{
  GtkWidget        parent_instance;
  GtkWidget       *box;
  RwSymptomPicker *picker;
  RwCheckCard     *card;
  RwRepairPicker  *repairs;
  GtkWidget       *cause_scroller;
  RwCauseList     *causes;
  GtkWidget       *plan_box;
  RwPlanView      *plan;
};

/* Pixels: of the side, of the causes at most, of a step's card at least, of a card without a step at most. Roomy is where the plan has a column of its own. */
static const int narrow_width = 340, roomy_width = 400;
static const int narrow_causes = 150, roomy_causes = 330;
static const int least_card = 105, most_words = 240;

static guint aimed_signal;

G_DEFINE_FINAL_TYPE (RwSymptomSide, rw_symptom_side, GTK_TYPE_WIDGET)

static void
aimed_cb (RwSymptomSide *self)
{
  g_signal_emit (self, aimed_signal, 0);
}

/* With nothing to do the card is as tall as its words, and the path taken has the room. */
static void
fit_card (RwSymptomSide *self)
{
  rw_check_card_fit (self->card, least_card, most_words);
  gtk_widget_set_vexpand (self->plan_box, !rw_check_card_has_step (self->card));
}

/* New advice is read from its top. */
static void
scroll_up (RwSymptomSide *self)
{
  fit_card (self);
  rw_check_card_scroll_up (self->card);
}

void
rw_symptom_side_set_job (RwSymptomSide *self,
                         RwJob         *job)
{
  g_return_if_fail (RW_IS_SYMPTOM_SIDE (self));
  rw_symptom_picker_set_job (self->picker, job);
  rw_check_card_set_job (self->card, job);
  if (job != NULL) /* after the card, so that it has the new advice */
    g_signal_connect_object (job, "advice", G_CALLBACK (scroll_up), self, G_CONNECT_SWAPPED);
  rw_cause_list_set_job (self->causes, job);
  rw_repair_picker_set_job (self->repairs, job);
  rw_plan_view_set_job (self->plan, job);
}

void
rw_symptom_side_set_shows_plan (RwSymptomSide *self,
                                gboolean       shows_plan)
{
  g_return_if_fail (RW_IS_SYMPTOM_SIDE (self));
  gtk_widget_set_visible (self->plan_box, shows_plan);
  gtk_widget_set_size_request (GTK_WIDGET (self), shows_plan ? narrow_width : roomy_width, -1);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (self->cause_scroller),
                                              shows_plan ? narrow_causes : roomy_causes);
  rw_check_card_set_roomy (self->card, !shows_plan);
}

void
rw_symptom_side_open_symptoms (RwSymptomSide *self)
{
  rw_symptom_picker_open (self->picker);
}

void
rw_symptom_side_open_repairs (RwSymptomSide *self)
{
  rw_repair_picker_open (self->repairs);
}

void
rw_symptom_side_take_other (RwSymptomSide *self,
                            guint          i)
{
  rw_check_card_take_other (self->card, i);
}

void
rw_symptom_side_ask_another (RwSymptomSide *self)
{
  rw_check_card_ask_another (self->card);
}

void
rw_symptom_side_take_check (RwSymptomSide *self)
{
  rw_check_card_take (self->card);
}

static void
rw_symptom_side_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), RW_TYPE_SYMPTOM_SIDE);
  G_OBJECT_CLASS (rw_symptom_side_parent_class)->dispose (object);
}

static void
rw_symptom_side_class_init (RwSymptomSideClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_symptom_side_dispose;
  aimed_signal = g_signal_new ("aimed", RW_TYPE_SYMPTOM_SIDE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                               G_TYPE_NONE, 0);
  g_type_ensure (RW_TYPE_SYMPTOM_PICKER);
  g_type_ensure (RW_TYPE_CHECK_CARD);
  g_type_ensure (RW_TYPE_REPAIR_PICKER);
  g_type_ensure (RW_TYPE_CAUSE_LIST);
  g_type_ensure (RW_TYPE_PLAN_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-symptom-side.ui");
  gtk_widget_class_bind_template_child (widget_class, RwSymptomSide, box);
  gtk_widget_class_bind_template_child (widget_class, RwSymptomSide, picker);
  gtk_widget_class_bind_template_child (widget_class, RwSymptomSide, card);
  gtk_widget_class_bind_template_child (widget_class, RwSymptomSide, repairs);
  gtk_widget_class_bind_template_child (widget_class, RwSymptomSide, cause_scroller);
  gtk_widget_class_bind_template_child (widget_class, RwSymptomSide, causes);
  gtk_widget_class_bind_template_child (widget_class, RwSymptomSide, plan_box);
  gtk_widget_class_bind_template_child (widget_class, RwSymptomSide, plan);
}

static void
repair_cb (RwSymptomSide *self,
           const char    *cause)
{
  rw_check_card_show_repair (self->card, cause);
  scroll_up (self);
}

static void
rw_symptom_side_init (RwSymptomSide *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_swapped (self->card, "aimed", G_CALLBACK (aimed_cb), self);
  g_signal_connect_swapped (self->causes, "repair", G_CALLBACK (repair_cb), self);
  g_signal_connect_swapped (self->repairs, "repair", G_CALLBACK (repair_cb), self);
  g_signal_connect_swapped (self->repairs, "closed", G_CALLBACK (aimed_cb), self);
  g_signal_connect_swapped (self->picker, "closed", G_CALLBACK (aimed_cb), self);
}
