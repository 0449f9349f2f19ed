/* rw-plan-save.c: "Save the plan…".
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The advice is immutable, so the thread shares it without a lock.
 */
#include "config.h"

#include "rw-plan-save.h"

#include <glib/gi18n-lib.h>

#include "rw-job-practice.h"
#include "rw-report-plan-page.h"

typedef struct
{
  RwAdvice         *advice;
  RwSession        *session;
  char             *path;
  RwPlanTroubleFunc trouble;
  GWeakRef          owner;
} Save;

static void
save_free (gpointer data)
{
  Save *save = data;

  g_clear_pointer (&save->advice, rw_advice_unref);
  g_clear_object (&save->session);
  g_weak_ref_clear (&save->owner);
  g_free (save->path);
  g_free (save);
}

static gboolean
is_text (const char *path)
{
  g_autofree char *lower = g_ascii_strdown (path, -1);

  return g_str_has_suffix (lower, ".txt");
}

static void
work (GTask        *task,
      gpointer      source,
      gpointer      data,
      GCancellable *cancellable)
{
  Save *save = data;
  g_autoptr (RwReportPlan) plan = rw_report_plan_new (save->advice, RW_REPORT_PLAN_DEPTH);
  g_autoptr (GError) error = NULL;
  g_autoptr (GString) text = is_text (save->path) ? rw_report_plan_to_text (plan) : NULL;
  const gboolean done = text != NULL ? g_file_set_contents (save->path, text->str, (gssize) text->len, &error)
                                     : rw_report_plan_save_pdf (plan, save->session, save->path, &error);

  if (done)
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, g_steal_pointer (&error));
}

static void
done_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  Save *save = g_task_get_task_data (G_TASK (result));
  g_autoptr (GError) error = NULL;
  g_autoptr (GObject) owner = g_weak_ref_get (&save->owner);

  if (!g_task_propagate_boolean (G_TASK (result), &error) && owner != NULL)
    save->trouble (error->message, owner);
}

void
rw_plan_save (RwJob            *job,
              const char       *path,
              RwPlanTroubleFunc trouble,
              gpointer          owner)
{
  g_return_if_fail (RW_IS_JOB (job) && path != NULL && G_IS_OBJECT (owner));

  RwAdvice *advice = rw_job_get_advice (job);

  if (advice == NULL)
    {
      trouble (rw_job_gives_advice (job) ? _ ("There is no plan yet.")
                                         : _ ("This drill is worked without suggestions: there is no plan to save."),
               owner);
      return;
    }

  g_autoptr (GTask) task = g_task_new (NULL, NULL, done_cb, NULL);
  Save *save = g_new0 (Save, 1);

  save->advice = rw_advice_ref (advice);
  save->session = g_object_ref (rw_job_get_session (job));
  save->path = g_strdup (path);
  save->trouble = trouble;
  g_weak_ref_init (&save->owner, owner);
  g_task_set_task_data (task, save, save_free);
  g_task_run_in_thread (task, work);
}
