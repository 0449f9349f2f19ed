/* rw-drill-window.c: the end of a drill.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two pages: the person names the fault, or says that they do not know; then everything is told, while a thread works
 * the same cabinet in the order that the program advises. The verdict is noted in the session.
 */
#include "config.h"

#include "rw-drill-window.h"

#include <glib/gi18n-lib.h>

#include "rw-compat.h"
#include "rw-drill.h"
#include "rw-job-practice.h"
#include "rw-window-size.h"

struct _RwDrillWindow
{
  GtkWindow     parent_instance;
  RwJob        *job;
  GtkStack     *pages;
  GtkDropDown  *verdict;
  GPtrArray    *causes; /* of ids, static; index 0 of the drop-down is none */
  GtkBox       *told;
  GCancellable *cancellable;
};

G_DEFINE_FINAL_TYPE (RwDrillWindow, rw_drill_window, GTK_TYPE_WINDOW)

/* --- what it was ---------------------------------------------------------------------------------- */

static void
add_words (RwDrillWindow *self,
           const char    *title,
           const char    *words)
{
  if (words == NULL)
    return;

  GtkWidget *head = gtk_label_new (title), *label = gtk_label_new (words);

  gtk_label_set_xalign (GTK_LABEL (head), 0);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 64);
  gtk_widget_add_css_class (head, "strong");
  gtk_widget_set_margin_top (head, 6);
  gtk_box_append (self->told, head);
  gtk_box_append (self->told, label);
}

static void
clear_told (RwDrillWindow *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->told))) != NULL)
    gtk_box_remove (self->told, child);
}

static void
tell (RwDrillWindow    *self,
      const RwDrillEnd *end)
{
  g_autoptr (GString) steps = g_string_new (NULL);

  for (guint i = 0; i < end->steps->len; i++)
    g_string_append_printf (steps, "%s%u. %s", i > 0 ? "\n" : "", i + 1, (const char *) end->steps->pdata[i]);
  clear_told (self);
  add_words (self, _ ("What was wrong"), end->faults);
  add_words (self, _ ("Your verdict"), end->verdict);
  add_words (self, _ ("You spent"), end->spent);
  add_words (self, _ ("The program's own order would have cost"), end->best);
  add_words (self, _ ("Which check decided"), end->decided);
  add_words (self, _ ("Stopped"), end->stopped);
  add_words (self, _ ("That order, on this very cabinet"), steps->len > 0 ? steps->str : NULL);
}

static void
ended_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  g_autoptr (RwDrillWindow) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (RwDrillEnd) end = rw_drill_end_finish (RW_JOB (source), result, &error);

  if (self->job == NULL)
    return; /* closed meanwhile */
  if (end != NULL)
    tell (self, end);
  else
    {
      clear_told (self);
      add_words (self, _ ("That could not be worked out"), error->message);
    }
}

static void
note_verdict (RwDrillWindow *self,
              const char    *cause)
{
  /* Translators: what the person thinks is wrong. */
  g_autofree char *text = cause != NULL ? g_strdup_printf (_ ("End of the drill. Verdict: %s."),
                                                           rw_job_cause_title (self->job, cause))
                                        : g_strdup (_ ("End of the drill, without a verdict."));

  rw_job_note (self->job, text);
}

static void
show_cb (RwDrillWindow *self)
{
  const guint chosen = gtk_drop_down_get_selected (self->verdict);
  const char *cause = chosen > 0 && chosen <= self->causes->len ? self->causes->pdata[chosen - 1] : NULL;

  note_verdict (self, cause);
  add_words (self, _ ("Working the same cabinet in the program's own order…"), "");
  gtk_stack_set_visible_child_name (self->pages, "told");
  rw_drill_end_async (self->job, cause, self->cancellable, ended_cb, g_object_ref (self));
}

/* --- what it is thought to be --------------------------------------------------------------------- */

/* The last cause that a repair fixed, or that was repaired at all, is offered. */
static guint
guess (RwDrillWindow *self)
{
  const RwBenchState *state = rw_job_get_state (self->job);
  const guint n = rw_bench_state_get_n_repairs (state);

  for (guint i = 0; n > 0 && i < self->causes->len; i++)
    if (g_str_equal (self->causes->pdata[i], rw_bench_state_get_repair (state, n - 1)->cause))
      return i + 1;
  return 0;
}

static void
fill_causes (RwDrillWindow *self)
{
  RwKnowledge *whole = rw_job_get_knowledge (self->job);
  g_autoptr (RwKnowledge) knowledge
      = whole != NULL ? rw_knowledge_for_profile (whole, rw_job_get_profile (self->job)) : NULL;
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  gtk_string_list_append (names, _ ("I do not know"));
  for (guint i = 0; knowledge != NULL && i < rw_knowledge_get_n_causes (knowledge); i++)
    {
      gtk_string_list_append (names, rw_knowledge_get_cause (knowledge, i)->title);
      g_ptr_array_add (self->causes, (gpointer) rw_knowledge_get_cause (knowledge, i)->id);
    }
  gtk_drop_down_set_model (self->verdict, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->verdict, guess (self));
}

static GtkWidget *
make_question (RwDrillWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *words = gtk_label_new (_ ("What is wrong with this cabinet?"));
  GtkWidget *show = gtk_button_new_with_label (_ ("Show what it was"));

  self->verdict = GTK_DROP_DOWN (gtk_drop_down_new (NULL, gtk_property_expression_new (GTK_TYPE_STRING_OBJECT, NULL,
                                                                                         "string")));
  gtk_drop_down_set_enable_search (self->verdict, TRUE);
  rw_compat_name_drop_down (self->verdict, _ ("Your verdict"));
  gtk_label_set_xalign (GTK_LABEL (words), 0);
  gtk_widget_add_css_class (words, "section");
  gtk_widget_add_css_class (show, "suggested-action");
  gtk_widget_set_halign (show, GTK_ALIGN_END);
  g_signal_connect_swapped (show, "clicked", G_CALLBACK (show_cb), self);
  gtk_box_append (GTK_BOX (box), words);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->verdict));
  gtk_box_append (GTK_BOX (box), show);
  gtk_window_set_default_widget (GTK_WINDOW (self), show);
  return box;
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_drill_window_dispose (GObject *object)
{
  RwDrillWindow *self = RW_DRILL_WINDOW (object);

  g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->job);
  G_OBJECT_CLASS (rw_drill_window_parent_class)->dispose (object);
}

static void
rw_drill_window_finalize (GObject *object)
{
  g_object_unref (RW_DRILL_WINDOW (object)->cancellable);
  g_ptr_array_unref (RW_DRILL_WINDOW (object)->causes);
  G_OBJECT_CLASS (rw_drill_window_parent_class)->finalize (object);
}

static void
rw_drill_window_class_init (RwDrillWindowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_drill_window_dispose;
  G_OBJECT_CLASS (klass)->finalize = rw_drill_window_finalize;
  gtk_widget_class_add_binding_action (GTK_WIDGET_CLASS (klass), GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
rw_drill_window_init (RwDrillWindow *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();

  self->cancellable = g_cancellable_new ();
  self->causes = g_ptr_array_new ();
  self->told = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 3));
  self->pages = GTK_STACK (gtk_stack_new ());
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), GTK_WIDGET (self->told));
  gtk_stack_add_named (self->pages, make_question (self), "question");
  gtk_stack_add_named (self->pages, scroller, "told");
  gtk_widget_set_margin_top (GTK_WIDGET (self->pages), 18);
  gtk_widget_set_margin_bottom (GTK_WIDGET (self->pages), 18);
  gtk_widget_set_margin_start (GTK_WIDGET (self->pages), 18);
  gtk_widget_set_margin_end (GTK_WIDGET (self->pages), 18);
  gtk_window_set_child (GTK_WINDOW (self), GTK_WIDGET (self->pages));
  rw_window_size_set (GTK_WINDOW (self), 560, 560);
}

GtkWidget *
rw_drill_window_new (GtkWindow *parent,
                     RwJob     *job)
{
  RwDrillWindow *self = g_object_new (RW_TYPE_DRILL_WINDOW, "transient-for", parent, NULL);

  self->job = g_object_ref (job);
  /* Translators: name of a drill. */
  g_autofree char *title = g_strdup_printf (_ ("The end of this drill: %s"),
                                            rw_session_get_header (rw_job_get_session (job))->cabinet_name);

  gtk_window_set_title (GTK_WINDOW (self), title);
  fill_causes (self);
  return GTK_WIDGET (self);
}
