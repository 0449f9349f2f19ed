/* rw-main-window-notes.c: what a viewer of a replay does: decides first, writes notes on it, goes on from it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-main-window-private.h"

#include <glib/gi18n-lib.h>

#include "rw-annotation-form.h"
#include "rw-annotation-list.h"
#include "rw-branch-form.h"
#include "rw-branch.h"
#include "rw-job-annotations.h"
#include "rw-job-practice.h"
#include "rw-paths.h"

static const char *const names[] = { "win.decide", "win.branch", "win.annotate", "win.annotations" };

static gboolean
is_replay (RwMainWindow *self)
{
  return self->job != NULL && rw_job_get_replay (self->job) != NULL;
}

static void
say (RwMainWindow *self,
     gboolean      warning,
     const char   *text)
{
  rw_banner_show (self->banner, warning ? RW_BANNER_WARNING : RW_BANNER_QUIET, text, _ ("Close"), NULL);
}

/* --- deciding first ------------------------------------------------------------------------------- */

/* What the program would do is neither on the screen nor before the class while it asks, nor a click away. */
static void
withhold (RwMainWindow *self,
          gboolean      asking)
{
  gtk_widget_set_visible (GTK_WIDGET (self->plan), !asking);
  rw_projection_set_deciding (self->projection, asking);
  gtk_stack_page_set_visible (gtk_stack_get_page (self->sides, self->side_bin), !asking);
  gtk_widget_set_visible (GTK_WIDGET (self->side), !asking);
}

static void
decide_changed_cb (RwMainWindow *self)
{
  const gboolean on = self->decide != NULL && rw_decide_get_on (self->decide);
  const RwDecideQuestion *question = on ? rw_decide_get_question (self->decide) : NULL;

  rw_replay_bar_set_veiled (self->replay_bar, on);
  if (!on)
    {
      withhold (self, FALSE);
      if (g_strcmp0 (gtk_stack_get_visible_child_name (self->sides), "decide") == 0)
        gtk_stack_set_visible_child_name (self->sides, "diagnosis");
      return;
    }
  gtk_stack_set_visible_child_name (self->sides, "decide");
  withhold (self, question != NULL && question->chosen < 0); /* once it is not in sight itself */
  if (question == NULL)
    {
      /* Where the space bar plays, whatever had the focus. */
      gtk_window_set_focus (GTK_WINDOW (self), NULL);
      return;
    }
  rw_main_window_show_side (self, TRUE);
  rw_decide_panel_focus (self->decide_panel);
}

/* The record of the restorer's other jobs counts here as it does on the card. (transfer full) (nullable) */
static RwKnowledge *
knowledge_of (RwJob *job)
{
  RwAdvice *advice = rw_job_get_advice (job);
  RwKnowledge *knowledge = advice != NULL ? rw_advice_get_knowledge (advice) : rw_job_get_knowledge (job);

  return knowledge != NULL ? rw_knowledge_ref (knowledge) : NULL;
}

static gboolean
make_decide (RwMainWindow *self)
{
  g_autoptr (RwKnowledge) knowledge = knowledge_of (self->job);

  if (self->decide != NULL)
    return TRUE;
  if (knowledge == NULL)
    return FALSE;
  self->decide = rw_decide_new (rw_job_get_replay (self->job), knowledge);
  rw_decide_panel_set_decide (self->decide_panel, self->decide);
  g_signal_connect_object (self->decide, "changed", G_CALLBACK (decide_changed_cb), self, G_CONNECT_SWAPPED);
  return TRUE;
}

static void
toggle_decide (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);

  if (!is_replay (self))
    return;
  if (!make_decide (self))
    {
      say (self, TRUE, rw_job_get_advice_problem (self->job));
      return;
    }

  const gboolean on = !rw_decide_get_on (self->decide);

  if (on)
    rw_main_window_show_side (self, TRUE);
  rw_decide_set_on (self->decide, on);
  say (self, FALSE, on ? _ ("What would you do now? The replay pauses at each decision (Ctrl+D ends it).") : NULL);
}

/* --- notes ---------------------------------------------------------------------------------------- */

static void
annotate (GtkWidget  *widget,
          const char *name,
          GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);

  if (is_replay (self))
    gtk_window_present (GTK_WINDOW (rw_annotation_form_new (GTK_WINDOW (self), self->job)));
}

static void
list_annotations (GtkWidget  *widget,
                  const char *name,
                  GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);

  if (is_replay (self))
    gtk_window_present (GTK_WINDOW (rw_annotation_list_new (GTK_WINDOW (self), self->job)));
}

/* --- going on from here --------------------------------------------------------------------------- */

static char *
folder_of (gboolean practice)
{
  return practice ? rw_paths_dup_practice () : rw_paths_dup_sessions ();
}

static void
branch_chosen_cb (RwMainWindow *self,
                  gboolean      practice,
                  const char   *fault)
{
  g_autofree char *folder = folder_of (practice);
  g_autoptr (GError) error = NULL;

  if (!is_replay (self))
    return;

  const RwSessionHeader *header = rw_session_get_header (rw_job_get_session (self->job));
  g_autofree char *path = rw_main_window_new_path (folder, header->cabinet_name);
  RwJob *job = practice ? rw_branch_practice (self->job, fault, g_random_int_range (1, 10000), path, &error)
                        : rw_branch_bench (self->job, path, &error);

  if (job == NULL)
    {
      say (self, TRUE, error->message);
      return;
    }
  rw_main_window_set_job (self, job);

  g_autofree char *from = rw_session_from_describe (rw_session_get_header (rw_job_get_session (job))->from);
  /* Translators: "branched from …". */
  g_autofree char *words = g_strdup_printf (_ ("This is a new session, %s."), from);

  say (self, FALSE, words);
}

static void
branch (GtkWidget  *widget,
        const char *name,
        GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);

  if (!is_replay (self))
    return;

  GtkWidget *form = rw_branch_form_new (GTK_WINDOW (self), self->job);

  g_signal_connect_object (form, "chosen", G_CALLBACK (branch_chosen_cb), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (form));
}

/* --- the window ----------------------------------------------------------------------------------- */

void
rw_main_window_install_notes_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.decide", NULL, toggle_decide);
  gtk_widget_class_install_action (widget_class, "win.branch", NULL, branch);
  gtk_widget_class_install_action (widget_class, "win.annotate", NULL, annotate);
  gtk_widget_class_install_action (widget_class, "win.annotations", NULL, list_annotations);
}

static void
drop_decide (RwMainWindow *self)
{
  if (self->decide == NULL)
    return;
  g_signal_handlers_disconnect_by_data (self->decide, self);
  rw_decide_panel_set_decide (self->decide_panel, NULL);
  g_clear_object (&self->decide);
  decide_changed_cb (self);
}

void
rw_main_window_show_notes (RwMainWindow *self)
{
  drop_decide (self);
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    gtk_widget_action_set_enabled (GTK_WIDGET (self), names[i], is_replay (self));
  if (!is_replay (self))
    return;

  const char *report = rw_annotations_get_report (rw_job_get_annotations (self->job));

  if (report != NULL)
    say (self, TRUE, report);
}

void
rw_main_window_drop_notes (RwMainWindow *self)
{
  g_clear_object (&self->decide);
}
