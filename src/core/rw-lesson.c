/* rw-lesson.c: finding lessons, and what they hold. Reading the JSON: rw-lesson-read.c.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-lesson-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "rw-paths.h"

G_DEFINE_QUARK (rw_lesson_error, rw_lesson_error)

static void
step_free (gpointer data)
{
  RwLessonStep *step = data;

  g_free (step->title);
  g_free (step->say);
  g_free (step->words);
  g_free (step->ask);
  g_free (step->caution);
  g_free (step->chapter);
  g_ptr_array_unref (step->hide);
  g_free (step);
}

RwLessonStep *
rw_lesson_step_new (void)
{
  RwLessonStep *step = g_new0 (RwLessonStep, 1);

  step->hide = g_ptr_array_new ();
  return step;
}

RwLesson *
rw_lesson_new (const char *path)
{
  RwLesson *self = g_atomic_rc_box_new0 (RwLesson);

  self->path = g_strdup (path);
  self->faults = g_array_new (FALSE, FALSE, sizeof (RwLessonFault));
  self->steps = g_ptr_array_new_with_free_func (step_free);
  return self;
}

RwLesson *
rw_lesson_ref (RwLesson *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
lesson_clear (gpointer data)
{
  RwLesson *self = data;

  g_free (self->title);
  g_free (self->about);
  g_free (self->caution);
  g_free (self->path);
  g_free (self->cabinet);
  g_array_unref (self->faults);
  g_ptr_array_unref (self->steps);
}

void
rw_lesson_unref (RwLesson *self)
{
  g_atomic_rc_box_release_full (self, lesson_clear);
}

/* --- finding ------------------------------------------------------------------------------------ */

static gboolean
has_id (GPtrArray  *lessons,
        const char *id)
{
  for (guint i = 0; i < lessons->len; i++)
    if (((RwLesson *) lessons->pdata[i])->id == id)
      return TRUE;
  return FALSE;
}

static int
compare_titles (gconstpointer a,
                gconstpointer b)
{
  return g_utf8_collate ((*(const RwLesson *const *) a)->title, (*(const RwLesson *const *) b)->title);
}

static void
list_folder (GPtrArray  *all,
             const char *folder,
             GPtrArray  *problems)
{
  g_autoptr (GPtrArray) paths = rw_paths_list (folder, ".json");
  g_autoptr (GPtrArray) found = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_lesson_unref);

  for (guint i = 0; i < paths->len; i++)
    {
      g_autoptr (GError) error = NULL;
      RwLesson *lesson = rw_lesson_load (paths->pdata[i], &error);

      if (lesson == NULL && problems != NULL)
        g_ptr_array_add (problems, g_strdup (error->message));
      else if (lesson != NULL && (has_id (all, lesson->id) || has_id (found, lesson->id)))
        rw_lesson_unref (lesson);
      else if (lesson != NULL)
        g_ptr_array_add (found, lesson);
    }
  g_ptr_array_sort (found, compare_titles);
  for (guint i = 0; i < found->len; i++)
    g_ptr_array_add (all, rw_lesson_ref (found->pdata[i]));
}

GPtrArray *
rw_lesson_list (GPtrArray *problems)
{
  GPtrArray *all = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_lesson_unref);
  g_autofree char *own = rw_paths_dup_user ("lessons");
  g_autofree char *shipped = rw_paths_dup_shipped ("lessons");

  list_folder (all, own, problems);
  list_folder (all, shipped, problems);
  return all;
}

char *
rw_lesson_find_session (const RwLesson *self)
{
  g_autofree char *beside = g_path_get_dirname (self->path);
  g_autofree char *own = rw_paths_dup_user ("demo-sessions");
  g_autofree char *shipped = rw_paths_dup_shipped ("demo-sessions");
  g_autofree char *tree = rw_paths_dup_shipped ("../demo-sessions"); /* as a build tree has them */
  const char *const folders[] = { beside, own, shipped, tree };

  if (self->session == NULL)
    return NULL;

  g_autofree char *name = g_strconcat (self->session, ".rwlog", NULL);

  for (guint i = 0; i < G_N_ELEMENTS (folders); i++)
    {
      g_autofree char *path = g_build_filename (folders[i], name, NULL);

      if (g_file_test (path, G_FILE_TEST_IS_REGULAR))
        return g_steal_pointer (&path);
    }
  return NULL;
}

const char *
rw_lesson_find_stranger (const RwLesson  *self,
                         const RwProfile *profile)
{
  for (guint i = 0; i < self->steps->len; i++)
    {
      const RwLessonStep *step = self->steps->pdata[i];

      for (guint r = 0; r < step->hide->len; r++)
        if (rw_profile_find_rail (profile, step->hide->pdata[r]) == NULL)
          return step->hide->pdata[r];
      if (step->spotlight != NULL && rw_profile_find_rail (profile, step->spotlight) == NULL)
        return step->spotlight;
      if (step->call_rail != NULL && rw_profile_find_rail (profile, step->call_rail) == NULL)
        return step->call_rail;
    }
  return NULL;
}

const char *
rw_lesson_until_get_label (RwLessonUntil until)
{
  static const char *const labels[] = {
    NULL,
    N_ ("Go on when a reading was kept."),
    N_ ("Go on when the trim was turned."),
    N_ ("Go on when the moment was marked."),
    N_ ("Go on when what was found is written down."),
    N_ ("Go on when the repair was done."),
    N_ ("Go on when the calls were revealed."),
  };

  return until < G_N_ELEMENTS (labels) && labels[until] != NULL ? _ (labels[until]) : NULL;
}
