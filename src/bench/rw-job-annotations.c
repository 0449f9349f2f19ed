/* rw-job-annotations.c: the annotations of a replayed job.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-job-annotations.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const char annotations_key[] = "rw-annotations", class_key[] = "rw-class";

/* An event and a moment of the clock that are no further apart are the same, seconds. */
static const double same_moment = 0.0005;

RwAnnotations *
rw_job_get_annotations (RwJob *job)
{
  g_return_val_if_fail (RW_IS_JOB (job), NULL);

  RwAnnotations *self = g_object_get_data (G_OBJECT (job), annotations_key);

  if (self != NULL || rw_job_get_replay (job) == NULL)
    return self;

  const RwSessionHeader *header = rw_session_get_header (rw_job_get_session (job));

  self = rw_annotations_new (header->id, rw_job_began_class (job) ? NULL : rw_job_get_path (job));
  rw_annotations_set_about (self, header->cabinet_name, header->started);
  g_object_set_data_full (G_OBJECT (job), annotations_key, self, g_object_unref);
  return self;
}

void
rw_job_begin_class (RwJob *job)
{
  g_return_if_fail (RW_IS_JOB (job));
  g_object_set_data (G_OBJECT (job), class_key, job);
}

gboolean
rw_job_began_class (RwJob *job)
{
  g_return_val_if_fail (RW_IS_JOB (job), FALSE);
  return g_object_get_data (G_OBJECT (job), class_key) != NULL;
}

/* The last thing that somebody did, when it was done at @t. */
static guint
event_at (RwSession *session,
          double     t)
{
  const guint n = rw_session_get_n_landmarks (session);
  const RwEvent *last = n > 0 ? rw_session_get_event (session, rw_session_get_landmark (session, n - 1)) : NULL;

  return last != NULL && fabs (last->t - t) <= same_moment ? last->n : 0;
}

gboolean
rw_job_annotate (RwJob      *job,
                 const char *by,
                 const char *text,
                 GError    **error)
{
  g_return_val_if_fail (RW_IS_JOB (job) && rw_job_get_replay (job) != NULL, FALSE);

  const double t = rw_replay_get_position (rw_job_get_replay (job));
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();

  return rw_annotations_add (rw_job_get_annotations (job), t, event_at (rw_job_get_session (job), t), by, text, now,
                             error)
         > 0;
}

gboolean
rw_job_take_in_annotations (RwJob      *job,
                            const char *path,
                            char      **words)
{
  g_return_val_if_fail (RW_IS_JOB (job) && rw_job_get_replay (job) != NULL && path != NULL && words != NULL, FALSE);

  g_autoptr (GError) error = NULL;
  g_autofree char *report = NULL;
  guint added;

  if (!rw_annotations_import (rw_job_get_annotations (job), path, &added, &report, &error))
    {
      *words = g_strdup (error->message);
      return FALSE;
    }

  /* Translators: how many notes came in from a file. */
  g_autofree char *came = g_strdup_printf (ngettext ("%u new note came in.", "%u new notes came in.", added), added);

  *words = report != NULL ? g_strdup_printf ("%s %s", came, report) : g_steal_pointer (&came);
  return TRUE;
}

void
rw_job_show_annotation (RwJob              *job,
                        const RwAnnotation *annotation)
{
  RwReplay *replay = rw_job_get_replay (job);
  RwSession *source = rw_replay_get_source (replay);
  const int index = annotation->at > 0 ? rw_session_find (source, annotation->at) : -1;

  rw_replay_set_playing (replay, FALSE);
  if (index >= 0)
    rw_replay_go_to (replay, (guint) index + 1, annotation->t);
  else
    rw_replay_seek (replay, annotation->t);
}
