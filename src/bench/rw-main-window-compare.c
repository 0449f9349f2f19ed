/* rw-main-window-compare.c: "Compare with…".
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A replay is compared as the whole file that it plays; a job as it is at this moment, and again with each value kept.
 */
#include "config.h"

#include "rw-main-window-private.h"

#include <glib/gi18n-lib.h>

#include "rw-compare-chooser.h"
#include "rw-compare-window.h"
#include "rw-journal-reader.h"

static RwSession *
dup_session (RwJob *job)
{
  RwReplay *replay = rw_job_get_replay (job);

  return replay != NULL ? g_object_ref (rw_replay_get_source (replay))
                        : rw_compare_window_copy_session (rw_job_get_session (job));
}

static void
chosen (const char *path,
        gpointer    data)
{
  RwMainWindow *self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (RwJournalRead) read = rw_journal_read_file (path, &error);

  if (self->job == NULL)
    return;
  if (read == NULL)
    {
      rw_banner_show (self->banner, RW_BANNER_WARNING, error->message, _ ("All right"), NULL);
      return;
    }

  g_autoptr (RwSession) own = dup_session (self->job);
  g_autofree char *report
      = read->damaged->len > 0 || read->torn_tail
            /* Translators: path of a file. */
            ? g_strdup_printf (_ ("%s is damaged: what could be read of it is compared."), path)
            : NULL;

  GtkWidget *window = rw_compare_window_new (GTK_WINDOW (self), own, read->session, report);

  if (rw_job_get_replay (self->job) == NULL)
    rw_compare_window_follow (RW_COMPARE_WINDOW (window), rw_job_get_session (self->job));
  gtk_window_present (GTK_WINDOW (window));
}

void
rw_main_window_compare (GtkWidget  *widget,
                        const char *name,
                        GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);
  RwReplay *replay = rw_job_get_replay (self->job);
  RwSession *session = replay != NULL ? rw_replay_get_source (replay) : rw_job_get_session (self->job);

  rw_compare_chooser_ask (GTK_WINDOW (self), rw_session_get_header (session), chosen, self);
}
