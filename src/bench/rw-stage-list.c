/* rw-stage-list.c: the ten stages in a column.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-stage-list.h"

#include <glib/gi18n-lib.h>

#include "rw-stage-record.h"

struct _RwStageList
{
  GtkWidget  parent_instance;
  GtkWidget *box;
  GtkWidget *rows[RW_N_STAGES];
  GtkWidget *shapes[RW_N_STAGES];
  GtkWidget *titles[RW_N_STAGES];
  GtkWidget *states[RW_N_STAGES];
};

static guint chosen_signal;

G_DEFINE_FINAL_TYPE (RwStageList, rw_stage_list, GTK_TYPE_WIDGET)

static void
set_class (GtkWidget  *widget,
           const char *style,
           gboolean    on)
{
  if (on)
    gtk_widget_add_css_class (widget, style);
  else
    gtk_widget_remove_css_class (widget, style);
}

static void
show_row (RwStageList    *self,
          const RwStages *stages,
          guint           i,
          gboolean        shown)
{
  const RwStageState *state = &stages->stages[i];
  const char *word = rw_stage_status_get_label (state->status);
  /* Translators: title of a stage of the bring-up, how it stands. */
  g_autofree char *name = g_strdup_printf (_ ("Stage: %s, %s"), state->words->title, word);

  gtk_label_set_text (GTK_LABEL (self->shapes[i]), rw_stage_status_get_glyph (state->status));
  gtk_label_set_text (GTK_LABEL (self->titles[i]), state->words->title);
  gtk_label_set_text (GTK_LABEL (self->states[i]), word);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->rows[i]), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  set_class (self->rows[i], "shown", shown);
  set_class (self->titles[i], "strong", state->status == RW_STAGE_CURRENT || state->status == RW_STAGE_BLOCKED);
  set_class (self->shapes[i], "inside", state->status == RW_STAGE_DONE);
  set_class (self->shapes[i], "outside", state->status == RW_STAGE_BLOCKED);
}

void
rw_stage_list_show (RwStageList    *self,
                    const RwStages *stages,
                    RwStage         shown)
{
  g_return_if_fail (RW_IS_STAGE_LIST (self));
  for (guint i = 0; i < RW_N_STAGES; i++)
    show_row (self, stages, i, i == shown);
}

static void
clicked_cb (GtkWidget   *row,
            RwStageList *self)
{
  for (guint i = 0; i < RW_N_STAGES; i++)
    if (self->rows[i] == row)
      g_signal_emit (self, chosen_signal, 0, i);
}

static void
rw_stage_list_dispose (GObject *object)
{
  RwStageList *self = RW_STAGE_LIST (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS (rw_stage_list_parent_class)->dispose (object);
}

static void
rw_stage_list_class_init (RwStageListClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_stage_list_dispose;
  chosen_signal = g_signal_new ("chosen", RW_TYPE_STAGE_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                G_TYPE_UINT);
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "stagelist");
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
add_row (RwStageList *self,
         guint        i)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  self->rows[i] = gtk_button_new ();
  self->shapes[i] = gtk_label_new ("");
  self->titles[i] = gtk_label_new ("");
  self->states[i] = gtk_label_new ("");
  gtk_widget_set_size_request (self->shapes[i], 18, -1);
  gtk_label_set_xalign (GTK_LABEL (self->titles[i]), 0);
  gtk_label_set_wrap (GTK_LABEL (self->titles[i]), TRUE);
  gtk_widget_set_hexpand (self->titles[i], TRUE);
  gtk_widget_add_css_class (self->states[i], "caption");
  gtk_box_append (GTK_BOX (line), self->shapes[i]);
  gtk_box_append (GTK_BOX (line), self->titles[i]);
  gtk_box_append (GTK_BOX (line), self->states[i]);
  gtk_button_set_child (GTK_BUTTON (self->rows[i]), line);
  gtk_button_set_has_frame (GTK_BUTTON (self->rows[i]), FALSE);
  gtk_widget_add_css_class (self->rows[i], "stage-row");
  g_signal_connect (self->rows[i], "clicked", G_CALLBACK (clicked_cb), self);
  gtk_box_append (GTK_BOX (self->box), self->rows[i]);
}

static void
rw_stage_list_init (RwStageList *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  for (guint i = 0; i < RW_N_STAGES; i++)
    add_row (self, i);
}
