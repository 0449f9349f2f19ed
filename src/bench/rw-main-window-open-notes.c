/* rw-main-window-open-notes.c: a file of notes is opened: its session is, wherever it lies.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Notes show nothing without their session. Those that lie beside it come in with it; of any others it is asked whether
 * to take them in, since opening a file must not write to another one.
 */
#include "config.h"

#include "rw-main-window-private.h"

#include <glib/gi18n-lib.h>

#include "rw-job-annotations.h"
#include "rw-notes-session.h"
#include "rw-plain-text.h"

static void
say (RwMainWindow *self,
     RwBannerStyle style,
     const char   *text)
{
  rw_banner_show (self->banner, style, text, _ ("All right"), NULL);
}

/* --- taking them in ------------------------------------------------------------------------------- */

static void
offer_response_cb (RwMainWindow *self,
                   gboolean      first)
{
  g_autofree char *path = g_steal_pointer (&self->notes_offered);
  g_autofree char *words = NULL;

  rw_banner_show (self->offer, RW_BANNER_QUIET, NULL, NULL, NULL);
  if (!first || path == NULL || self->job == NULL)
    return;

  const gboolean done = rw_job_take_in_annotations (self->job, path, &words);

  say (self, done ? RW_BANNER_QUIET : RW_BANNER_WARNING, words);
}

/* Of the job that is open now. */
static void
offer (RwMainWindow *self,
       const char   *path)
{
  RwAnnotations *notes = self->job != NULL ? rw_job_get_annotations (self->job) : NULL;
  g_autofree char *base = g_path_get_basename (path);
  g_autofree char *name = rw_plain_text_dup_path (base);
  g_autoptr (GError) error = NULL;
  guint n = 0;

  if (notes == NULL || rw_annotations_has_file (notes, path))
    return;
  if (!rw_annotations_count_new (notes, path, &n, &error))
    {
      say (self, RW_BANNER_WARNING, error->message);
      return;
    }
  if (n == 0)
    return;

  /* Translators: count of notes, file that they stand in. */
  g_autofree char *words = g_strdup_printf (ngettext ("%u note of %s is not among those of this session yet.",
                                                      "%u notes of %s are not among those of this session yet.", n),
                                            n, name);

  self->notes_offered = g_strdup (path);
  rw_banner_show (self->offer, RW_BANNER_QUIET, words, _ ("Take in"), _ ("Not now"));
}

/* --- looking for the session ---------------------------------------------------------------------- */

typedef struct
{
  RwMainWindow     *window; /* held: it may be closed meanwhile */
  char             *path;
  RwAnnotationsHead head;
} Opening;

static void
opening_free (Opening *opening)
{
  g_object_unref (opening->window);
  g_free (opening->path);
  rw_annotations_head_clear (&opening->head);
  g_free (opening);
}
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Opening, opening_free)

static void
found_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  g_autoptr (Opening) opening = data;
  RwMainWindow *self = opening->window;
  g_autoptr (GError) error = NULL;
  g_autofree char *session = rw_notes_session_find_finish (result, &error);

  if (error != NULL) /* something else was opened, or the window closed */
    return;
  g_clear_object (&self->looking);
  if (session == NULL)
    {
      g_autofree char *words = rw_notes_session_describe_missing (opening->path, &opening->head);

      say (self, RW_BANNER_WARNING, words);
      return;
    }
  if (rw_main_window_open_session (self, session))
    offer (self, opening->path);
}

/* Of a file whose first line says nothing. Beside its session, that tells what is wrong. */
static void
open_damaged (RwMainWindow *self,
              const char   *path,
              const char   *message)
{
  g_autofree char *session = rw_annotations_dup_session_path (path);

  if (g_file_test (session, G_FILE_TEST_IS_REGULAR))
    rw_main_window_open_session (self, session);
  else
    say (self, RW_BANNER_WARNING, message);
}

void
rw_main_window_open_notes (RwMainWindow *self,
                           const char   *path)
{
  RwAnnotationsHead head;
  g_autoptr (GError) error = NULL;

  rw_main_window_show_open_notes (self);
  if (!rw_annotations_read_head (path, &head, &error))
    {
      open_damaged (self, path, error->message);
      return;
    }

  Opening *opening = g_new0 (Opening, 1);

  opening->window = g_object_ref (self);
  opening->path = g_strdup (path);
  opening->head = head;
  self->looking = g_cancellable_new ();
  rw_notes_session_find_async (path, head.session, self->looking, found_cb, opening);
}

/* --- the window ----------------------------------------------------------------------------------- */

void
rw_main_window_add_open_notes (RwMainWindow *self)
{
  g_signal_connect_swapped (self->offer, "response", G_CALLBACK (offer_response_cb), self);
}

void
rw_main_window_show_open_notes (RwMainWindow *self)
{
  rw_main_window_drop_open_notes (self);
  rw_banner_show (self->offer, RW_BANNER_QUIET, NULL, NULL, NULL);
}

void
rw_main_window_drop_open_notes (RwMainWindow *self)
{
  g_cancellable_cancel (self->looking);
  g_clear_object (&self->looking);
  g_clear_pointer (&self->notes_offered, g_free);
}
