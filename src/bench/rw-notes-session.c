/* rw-notes-session.c: the session that a file of notes belongs to, wherever it lies.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-notes-session.h"

#include <glib/gi18n-lib.h>

#include "rw-paths.h"
#include "rw-plain-text.h"
#include "rw-session-files.h"

typedef struct
{
  char *notes;
  char *id;
} Wanted;

static void
wanted_free (gpointer data)
{
  Wanted *wanted = data;

  g_free (wanted->notes);
  g_free (wanted->id);
  g_free (wanted);
}

/* Most notes lie beside their session: then one line is read. (transfer full) (nullable) */
static char *
find_beside (const Wanted *wanted)
{
  g_autofree char *path = rw_annotations_dup_session_path (wanted->notes);
  g_autoptr (RwSessionHeader) header = path != NULL ? rw_session_files_read_header (path) : NULL;

  return header != NULL && g_str_equal (header->id, wanted->id) ? g_steal_pointer (&path) : NULL;
}

static void
search (GTask        *task,
        gpointer      source,
        gpointer      data,
        GCancellable *cancellable)
{
  const Wanted *wanted = data;
  char *found = find_beside (wanted);

  if (found == NULL)
    {
      g_autofree char *beside = g_path_get_dirname (wanted->notes);
      g_autofree char *sessions = rw_paths_dup_sessions ();
      g_autofree char *practice = rw_paths_dup_practice ();
      const char *const folders[] = { beside, sessions, practice, NULL };

      found = rw_session_files_find (folders, wanted->id, cancellable);
    }
  g_task_return_pointer (task, found, g_free);
}

void
rw_notes_session_find_async (const char         *notes,
                             const char         *id,
                             GCancellable       *cancellable,
                             GAsyncReadyCallback callback,
                             gpointer            user_data)
{
  g_return_if_fail (notes != NULL && id != NULL);

  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, user_data);
  Wanted *wanted = g_new0 (Wanted, 1);

  wanted->notes = g_strdup (notes);
  wanted->id = g_strdup (id);
  g_task_set_task_data (task, wanted, wanted_free);
  g_task_run_in_thread (task, search);
}

char *
rw_notes_session_find_finish (GAsyncResult *result,
                              GError      **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}

static char *
describe_wanted (const char              *notes,
                 const RwAnnotationsHead *head)
{
  g_autofree char *name = g_path_get_basename (notes);
  g_autofree char *shown = rw_plain_text_dup_path (name);

  if (head->cabinet != NULL && head->started != NULL)
    {
      g_autofree char *when = g_date_time_format (head->started, "%Y-%m-%d %H:%M UTC");

      /* Translators: a file of notes, name of a cabinet, date and time. */
      return g_strdup_printf (_ ("%s holds notes on the session of %s that began on %s."), shown, head->cabinet, when);
    }

  g_autofree char *session = rw_annotations_dup_session_path (shown);

  /* Translators: a file of notes, the file of the session it is named after, the session's id. */
  return g_strdup_printf (_ ("%s holds notes on a session that may be called %s (its id is %s)."), shown, session,
                          head->session);
}

char *
rw_notes_session_describe_missing (const char              *notes,
                                   const RwAnnotationsHead *head)
{
  g_return_val_if_fail (notes != NULL && head != NULL && head->session != NULL, NULL);

  g_autofree char *wanted = describe_wanted (notes, head);

  return g_strdup_printf ("%s %s", wanted,
                          _ ("Its file lies neither beside them nor among your own sessions. Ask for it where the "
                             "notes came from, put it beside them, and open them again. Or open it where it lies, and "
                             "take the notes in (Ctrl+Shift+A)."));
}
