/* rw-set-aside.c: "ask another way".
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-set-aside.h"

#include <glib/gi18n-lib.h>

#include "rw-skipped.h"

struct _RwSetAside
{
  GtkWidget   parent_instance;
  GtkWidget  *button;
  GtkWidget  *popover;
  GtkWidget  *reasons; /* what sets aside */
  GtkWidget  *first;   /* of the reasons */
  GtkWidget  *words;   /* a reason of one's own */
  GtkWidget  *back;    /* what brings back */
  RwJob      *job;
  const char *check; /* interned; NULL: nothing to set aside */
};

static const char *const reasons[] = {
  N_ ("no access"),
  N_ ("no tool for it"),
  N_ ("not allowed to"),
  N_ ("would rather not"),
};

static guint done_signal;

G_DEFINE_FINAL_TYPE (RwSetAside, rw_set_aside, GTK_TYPE_WIDGET)

static void
set_aside (RwSetAside *self,
           const char *reason)
{
  const char *check = self->check;

  gtk_popover_popdown (GTK_POPOVER (self->popover));
  gtk_editable_set_text (GTK_EDITABLE (self->words), "");
  if (self->job == NULL || check == NULL)
    return;
  self->check = NULL;
  rw_job_skip_check (self->job, check, reason);
  g_signal_emit (self, done_signal, 0);
}

static void
reason_cb (GtkWidget  *button,
           RwSetAside *self)
{
  set_aside (self, gtk_button_get_label (GTK_BUTTON (button)));
}

static void
words_cb (RwSetAside *self)
{
  g_autofree char *words = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->words)));

  set_aside (self, g_strstrip (words));
}

/* --- what was set aside ---------------------------------------------------------------------------- */

static void
back_cb (GtkWidget  *button,
         RwSetAside *self)
{
  const guint n = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "event"));

  gtk_popover_popdown (GTK_POPOVER (self->popover));
  rw_job_retract (self->job, n);
  g_signal_emit (self, done_signal, 0);
}

static void
add_back (RwSetAside          *self,
          RwKnowledge         *knowledge,
          const RwFindingSeen *seen)
{
  const RwCheck *check = rw_knowledge_find_check (knowledge, seen->check);
  /* Translators: title of a check. */
  g_autofree char *text = g_strdup_printf (_ ("Ask again: %s"), check != NULL ? check->title : seen->check);
  GtkWidget *button = gtk_button_new_with_label (text);
  GtkWidget *label = gtk_button_get_child (GTK_BUTTON (button));

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 36);
  gtk_widget_add_css_class (button, "flat");
  g_object_set_data (G_OBJECT (button), "event", GUINT_TO_POINTER (seen->n));
  g_signal_connect (button, "clicked", G_CALLBACK (back_cb), self);
  gtk_box_append (GTK_BOX (self->back), button);
}

static guint
fill_back (RwSetAside *self)
{
  RwAdvice *advice = self->job != NULL ? rw_job_get_advice (self->job) : NULL;
  GtkWidget *child;
  guint n = 0;

  while ((child = gtk_widget_get_first_child (self->back)) != NULL)
    gtk_box_remove (GTK_BOX (self->back), child);
  if (advice == NULL)
    return 0;

  RwBenchState *state = rw_job_get_state (self->job);

  for (guint i = 0; i < rw_bench_state_get_n_findings (state); i++)
    if (rw_skipped_is (rw_bench_state_get_finding (state, i)))
      {
        add_back (self, rw_advice_get_knowledge (advice), rw_bench_state_get_finding (state, i));
        n++;
      }
  return n;
}

void
rw_set_aside_show (RwSetAside    *self,
                   RwJob         *job,
                   const RwCheck *check)
{
  g_return_if_fail (RW_IS_SET_ASIDE (self));
  g_set_object (&self->job, job);
  self->check = check != NULL ? check->id : NULL;

  const guint n = fill_back (self);
  g_autofree char *count = n > 0 ? g_strdup_printf (_ ("Ask another way (%u set aside)"), n) : NULL;
  const char *label = count != NULL ? count : _ ("Ask another way");

  gtk_widget_set_visible (self->reasons, check != NULL);
  gtk_widget_set_visible (self->back, n > 0);
  gtk_menu_button_set_label (GTK_MENU_BUTTON (self->button), check != NULL ? _ ("Ask another way") : label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->button), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  gtk_widget_set_sensitive (self->button, job != NULL && rw_job_can_write (job));
  gtk_widget_set_visible (GTK_WIDGET (self), check != NULL || n > 0);
}

void
rw_set_aside_open (RwSetAside *self)
{
  g_return_if_fail (RW_IS_SET_ASIDE (self));
  if (!gtk_widget_get_visible (GTK_WIDGET (self)) || !gtk_widget_get_sensitive (self->button))
    return;
  gtk_menu_button_popup (GTK_MENU_BUTTON (self->button));
  gtk_widget_grab_focus (gtk_widget_get_visible (self->reasons) ? self->first : gtk_widget_get_first_child (self->back));
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_set_aside_dispose (GObject *object)
{
  RwSetAside *self = RW_SET_ASIDE (object);

  g_clear_object (&self->job);
  g_clear_pointer (&self->button, gtk_widget_unparent);
  G_OBJECT_CLASS (rw_set_aside_parent_class)->dispose (object);
}

static void
rw_set_aside_class_init (RwSetAsideClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_set_aside_dispose;
  done_signal = g_signal_new ("done", RW_TYPE_SET_ASIDE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "setaside");
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
add_reasons (RwSetAside *self)
{
  GtkWidget *title = gtk_label_new (_ ("Not asked again in this job, because:"));

  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_box_append (GTK_BOX (self->reasons), title);
  for (guint i = 0; i < G_N_ELEMENTS (reasons); i++)
    {
      GtkWidget *button = gtk_button_new_with_label (_ (reasons[i]));

      g_signal_connect (button, "clicked", G_CALLBACK (reason_cb), self);
      gtk_box_append (GTK_BOX (self->reasons), button);
      if (i == 0)
        self->first = button;
    }
  self->words = gtk_entry_new ();
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->words), _ ("another reason, then Enter"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->words), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Another reason"), -1);
  g_signal_connect_swapped (self->words, "activate", G_CALLBACK (words_cb), self);
  gtk_box_append (GTK_BOX (self->reasons), self->words);
}

static void
rw_set_aside_init (RwSetAside *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  self->reasons = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->back = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  add_reasons (self);
  gtk_box_append (GTK_BOX (box), self->reasons);
  gtk_box_append (GTK_BOX (box), self->back);
  self->popover = gtk_popover_new ();
  gtk_popover_set_child (GTK_POPOVER (self->popover), box);
  self->button = gtk_menu_button_new ();
  gtk_menu_button_set_label (GTK_MENU_BUTTON (self->button), _ ("Ask another way"));
  gtk_menu_button_set_popover (GTK_MENU_BUTTON (self->button), self->popover);
  gtk_widget_set_tooltip_text (self->button, _ ("This check cannot be done: set it aside (Q)"));
  gtk_widget_set_parent (self->button, GTK_WIDGET (self));
}
