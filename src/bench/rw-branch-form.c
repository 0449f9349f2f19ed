/* rw-branch-form.c: asks how to go on from a moment of a replay.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-branch-form.h"

#include <glib/gi18n-lib.h>

#include "rw-branch.h"
#include "rw-compat.h"
#include "rw-quantity.h"

struct _RwBranchForm
{
  GtkWindow       parent_instance;
  GtkCheckButton *by_hand;
  GtkCheckButton *practice;
  GtkDropDown    *fault;
  GPtrArray      *faults; /* of static ids; the drop-down has "healthy" before them */
};

static guint chosen_signal;

G_DEFINE_FINAL_TYPE (RwBranchForm, rw_branch_form, GTK_TYPE_WINDOW)

static void
go_cb (RwBranchForm *self)
{
  const guint selected = gtk_drop_down_get_selected (self->fault);
  const char *fault = selected > 0 && selected <= self->faults->len ? self->faults->pdata[selected - 1] : NULL;

  g_signal_emit (self, chosen_signal, 0, gtk_check_button_get_active (self->practice), fault);
  gtk_window_destroy (GTK_WINDOW (self));
}

static void
toggled_cb (RwBranchForm *self)
{
  gtk_widget_set_sensitive (GTK_WIDGET (self->fault), gtk_check_button_get_active (self->practice));
}

/* Enter on a choice means it, as it would in a line of text. */
static gboolean
entered_cb (GtkWidget *widget,
            GVariant  *arguments,
            gpointer   data)
{
  if (!GTK_IS_CHECK_BUTTON (gtk_root_get_focus (GTK_ROOT (widget))))
    return FALSE;
  go_cb (RW_BRANCH_FORM (widget));
  return TRUE;
}

static void
add_enter (RwBranchForm *self)
{
  GtkEventController *keys = gtk_shortcut_controller_new ();

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (keys),
      gtk_shortcut_new (gtk_shortcut_trigger_parse_string ("Return|KP_Enter"),
                        gtk_callback_action_new (entered_cb, NULL, NULL)));
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

static void
rw_branch_form_finalize (GObject *object)
{
  g_clear_pointer (&RW_BRANCH_FORM (object)->faults, g_ptr_array_unref);
  G_OBJECT_CLASS (rw_branch_form_parent_class)->finalize (object);
}

static void
rw_branch_form_class_init (RwBranchFormClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rw_branch_form_finalize;
  chosen_signal = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 2,
                                G_TYPE_BOOLEAN, G_TYPE_STRING);
  gtk_widget_class_add_binding_action (GTK_WIDGET_CLASS (klass), GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
rw_branch_form_init (RwBranchForm *self)
{
  gtk_window_set_title (GTK_WINDOW (self), _ ("Go on from here"));
  gtk_window_set_modal (GTK_WINDOW (self), TRUE);
  gtk_window_set_default_size (GTK_WINDOW (self), 480, -1);
  add_enter (self);
}

static void
make_fault (RwBranchForm *self,
            RwJob        *replay)
{
  g_autoptr (GPtrArray) titles = g_ptr_array_new ();

  self->faults = rw_branch_list_faults (rw_job_get_profile (replay));
  g_ptr_array_add (titles, (gpointer) _ ("Healthy"));
  for (guint i = 0; i < self->faults->len; i++)
    g_ptr_array_add (titles, (gpointer) rw_job_cause_title (replay, self->faults->pdata[i]));
  g_ptr_array_add (titles, NULL);
  self->fault = GTK_DROP_DOWN (gtk_drop_down_new_from_strings ((const char *const *) titles->pdata));
  rw_compat_name_drop_down (self->fault, _ ("What is wrong with it"));
  gtk_widget_set_sensitive (GTK_WIDGET (self->fault), FALSE);
}

static void
add_words (GtkWidget  *box,
           const char *text,
           const char *css)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 56);
  if (css != NULL)
    gtk_widget_add_css_class (label, css);
  gtk_box_append (GTK_BOX (box), label);
}

static GtkWidget *
make_buttons (RwBranchForm *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *cancel = gtk_button_new_with_label (_ ("Cancel")), *go = gtk_button_new_with_label (_ ("Go on from here"));

  gtk_widget_set_halign (box, GTK_ALIGN_END);
  gtk_widget_add_css_class (go, "suggested-action");
  g_signal_connect_swapped (cancel, "clicked", G_CALLBACK (gtk_window_destroy), self);
  g_signal_connect_swapped (go, "clicked", G_CALLBACK (go_cb), self);
  gtk_box_append (GTK_BOX (box), cancel);
  gtk_box_append (GTK_BOX (box), go);
  gtk_window_set_default_widget (GTK_WINDOW (self), go);
  return box;
}

static void
fill (RwBranchForm *self,
      RwJob        *replay)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  g_autofree char *clock = rw_quantity_format_clock (rw_replay_get_position (rw_job_get_replay (replay)));
  /* Translators: minutes and seconds. */
  g_autofree char *words = g_strdup_printf (
      _ ("What happened up to %s is copied into a new session, which says where it came from. This file stays as it is."),
      clock);

  gtk_widget_set_margin_top (box, 18);
  gtk_widget_set_margin_bottom (box, 18);
  gtk_widget_set_margin_start (box, 18);
  gtk_widget_set_margin_end (box, 18);
  add_words (box, words, NULL);
  self->by_hand = GTK_CHECK_BUTTON (gtk_check_button_new_with_mnemonic (_ ("By _hand, at a real bench")));
  self->practice = GTK_CHECK_BUTTON (gtk_check_button_new_with_mnemonic (_ ("On a _practice cabinet set up the same way")));
  gtk_check_button_set_group (self->practice, self->by_hand);
  gtk_check_button_set_active (self->by_hand, TRUE);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->by_hand));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->practice));
  make_fault (self, replay);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->fault));
  add_words (box, _ ("A practice cabinet takes over power, board, warmth and the trim. It cannot know what else was wrong."),
             "quiet");
  gtk_box_append (GTK_BOX (box), make_buttons (self));
  g_signal_connect_swapped (self->practice, "toggled", G_CALLBACK (toggled_cb), self);
  gtk_window_set_child (GTK_WINDOW (self), box);
  gtk_widget_grab_focus (GTK_WIDGET (self->by_hand));
}

GtkWidget *
rw_branch_form_new (GtkWindow *parent,
                    RwJob     *replay)
{
  RwBranchForm *self = g_object_new (RW_TYPE_BRANCH_FORM, "transient-for", parent, NULL);

  rw_replay_set_playing (rw_job_get_replay (replay), FALSE);
  fill (self, replay);
  return GTK_WIDGET (self);
}
