/* rw-lesson-begin.c: the job that a lesson is held on.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-lesson-begin.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-drill.h"
#include "rw-job-annotations.h"
#include "rw-job-practice.h"

static RwJob *
open_session (const RwLesson *lesson,
              GError        **error)
{
  g_autofree char *path = rw_lesson_find_session (lesson);
  g_autofree char *report = NULL; /* a demo that is damaged still teaches what is left of it */

  if (path == NULL)
    {
      g_set_error (error, RW_LESSON_ERROR, RW_LESSON_ERROR_READ,
                   _ ("The session “%s” of this lesson was not found. Put %s.rwlog beside the lesson’s own file."),
                   lesson->session, lesson->session);
      return NULL;
    }

  RwJob *job = rw_job_new_replay (path, &report, error);

  if (job == NULL)
    return NULL;
  rw_job_begin_class (job);
  rw_replay_seek (rw_job_get_replay (job), 0);
  return job;
}

static RwProfile *
find_profile (const char *id,
              GError    **error)
{
  g_autoptr (GPtrArray) profiles = rw_profile_list (NULL);

  for (guint i = 0; i < profiles->len; i++)
    if (g_str_equal (rw_profile_get_id (profiles->pdata[i]), id))
      return rw_profile_ref (profiles->pdata[i]);
  g_set_error (error, RW_LESSON_ERROR, RW_LESSON_ERROR_FORMAT, _ ("There is no profile “%s”, which this lesson wants."), id);
  return NULL;
}

static char *
new_path (const RwLesson *lesson)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *stamp = g_date_time_format (now, "%Y-%m-%d-%H%M%S");
  g_autofree char *name = g_strdup_printf ("%s-lesson-%s.rwlog", stamp, lesson->id);

  return g_build_filename (g_get_user_state_dir (), "railwright", "practice", name, NULL);
}

static RwJob *
open_cabinet (const RwLesson *lesson,
              GError        **error)
{
  g_autoptr (RwProfile) profile = find_profile (lesson->profile, error);
  g_autoptr (GArray) faults = g_array_new (FALSE, FALSE, sizeof (RwPracticeFault));
  g_autofree char *path = new_path (lesson);

  if (profile == NULL)
    return NULL;
  for (guint i = 0; i < lesson->faults->len; i++)
    {
      const RwLessonFault *fault = &g_array_index (lesson->faults, RwLessonFault, i);
      const RwPracticeFault planted = { fault->id, fault->strength };

      g_array_append_val (faults, planted);
    }

  g_autoptr (RwPracticeCabinet) cabinet
      = rw_practice_cabinet_new (profile, lesson->seed, (const RwPracticeFault *) (gpointer) faults->data, faults->len,
                                 lesson->cabinet, error);
  RwJob *job = cabinet != NULL ? rw_job_new_practice (cabinet, path, error) : NULL;

  if (job == NULL)
    return NULL;

  /* Translators: title of a lesson. */
  g_autofree char *note = g_strdup_printf (_ ("Lesson: %s."), lesson->title);

  rw_job_note (job, note);
  rw_job_set_setup (job, (RwSetup){ RW_SAID_YES, RW_SAID_YES, RW_SAID_NO });
  return job;
}

RwJob *
rw_lesson_begin (const RwLesson *lesson,
                 GError        **error)
{
  g_autoptr (RwJob) job = lesson->session != NULL ? open_session (lesson, error)
                          : lesson->drill > 0     ? rw_drill_begin (lesson->drill, lesson->seed, TRUE, error)
                                                  : open_cabinet (lesson, error);
  const char *stranger = job != NULL ? rw_lesson_find_stranger (lesson, rw_job_get_profile (job)) : NULL;

  if (stranger == NULL)
    return g_steal_pointer (&job);
  g_set_error (error, RW_LESSON_ERROR, RW_LESSON_ERROR_FORMAT,
               _ ("%s: a step speaks of the rail “%s”, which this cabinet does not have."), lesson->path, stranger);
  return NULL;
}

/* --- where a step wants a replay to be ------------------------------------------------------------- */

static RwChapters *
chapters_of (RwReplay *replay)
{
  RwChapters *known = rw_replay_get_chapters (replay);

  return known != NULL ? rw_chapters_ref (known) : rw_chapters_new (rw_replay_get_source (replay), NULL, NULL);
}

static gboolean
go_to_chapter (RwReplay   *replay,
               const char *title)
{
  g_autoptr (RwChapters) chapters = chapters_of (replay);

  for (guint i = 0; i < rw_chapters_get_n (chapters); i++)
    {
      const RwChapter *chapter = rw_chapters_get (chapters, i);

      if (g_str_equal (chapter->title, title))
        {
          rw_replay_go_to (replay, chapter->n_events, chapter->t);
          return TRUE;
        }
    }
  return FALSE;
}

gboolean
rw_lesson_go (RwJob              *job,
              const RwLessonStep *step)
{
  RwReplay *replay = rw_job_get_replay (job);

  if (replay == NULL || (step->chapter == NULL && isnan (step->t)))
    return TRUE;
  rw_replay_set_playing (replay, FALSE);
  if (step->chapter != NULL)
    return go_to_chapter (replay, step->chapter);
  rw_replay_seek (replay, step->t);
  return TRUE;
}
