/* rw-main-window-hands.c: hands-free, its questions, warnings in a quiet banner, sound, and the big view.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Nothing here is ever a box in the way: a question waits in a banner and has keys, a warning stays until it is
 * put away or no longer holds.
 */
#include "config.h"

#include "rw-main-window-private.h"

#include <glib/gi18n-lib.h>

#include "rw-meter-listen.h"
#include "rw-mistakes.h"

/* --- the question --------------------------------------------------------------------------------- */

static char *
say_choice (RwMainWindow *self,
            guint         i,
            const char   *key)
{
  const RwJobQuestion *question = rw_job_get_question (self->job);

  if (question == NULL || i >= question->n)
    return NULL;

  const RwRail *rail = rw_profile_find_rail (rw_job_get_profile (self->job), question->guess[i].rail);

  /* Translators: rail, place, key that chooses it. */
  return g_strdup_printf (_ ("%s, %s (%s)"), rail != NULL ? rail->label : question->guess[i].rail,
                          rw_place_get_label (question->guess[i].place), key);
}

static void
show_question (RwMainWindow *self)
{
  const char *words = self->job != NULL ? rw_job_get_hands_words (self->job) : NULL;
  g_autofree char *first = self->job != NULL ? say_choice (self, 0, "Y") : NULL;
  g_autofree char *second = self->job != NULL ? say_choice (self, 1, "E") : NULL;
  const gboolean asks = first != NULL;

  rw_banner_show (self->asking, asks ? RW_BANNER_QUIET : RW_BANNER_WARNING, words, asks ? first : _ ("Close"), second);
  rw_big_view_set_message (self->big, words);
}

static void
asking_response_cb (RwMainWindow *self,
                    gboolean      first)
{
  if (rw_job_get_question (self->job) != NULL)
    rw_job_answer (self->job, first ? 0 : 1);
  else
    rw_job_drop_question (self->job);
}

void
rw_main_window_answer (RwMainWindow *self,
                       guint         i)
{
  if (rw_job_get_question (self->job) != NULL)
    rw_job_answer (self->job, i);
  else
    rw_main_window_answer_stage (self, i == 0);
}

static void
hands_cb (RwMainWindow *self)
{
  const gboolean on = self->job != NULL && rw_job_get_hands_free (self->job);

  gtk_toggle_button_set_active (self->hands_button, on);
  gtk_button_set_label (GTK_BUTTON (self->hands_button), on ? _ ("Hands-free: on") : _ ("Hands-free"));
  show_question (self);
}

void
rw_main_window_toggle_hands (RwMainWindow *self)
{
  const gboolean on = !rw_job_get_hands_free (self->job);

  rw_job_set_hands_free (self->job, on);
  if (self->settings != NULL)
    g_settings_set_boolean (self->settings, "hands-free", on);
}

/* --- warnings ------------------------------------------------------------------------------------- */

/* Which warning: its id and event. (transfer full) */
static char *
name_warning (const RwWarning *warning)
{
  return g_strdup_printf ("%s %u", warning->id, warning->n);
}

static gboolean
is_put_away (RwMainWindow    *self,
             const RwWarning *warning)
{
  g_autofree char *name = name_warning (warning);

  return g_hash_table_contains (self->put_away, name);
}

/* The newest that is no danger (a danger has a banner of its own) and was not put away. (nullable) */
static const RwWarning *
find_warning (RwMainWindow *self)
{
  RwBenchState *state = rw_job_get_state (self->job);

  for (guint i = rw_bench_state_get_n_warnings (state); i-- > 0;)
    {
      const RwWarning *warning = rw_bench_state_get_warning (state, i);

      if (!warning->danger && !is_put_away (self, warning))
        return warning;
    }
  return NULL;
}

static void
show_warning (RwMainWindow *self)
{
  const RwWarning *warning = self->job != NULL ? find_warning (self) : NULL;

  g_clear_pointer (&self->warning_shown, g_free);
  if (warning != NULL)
    self->warning_shown = name_warning (warning);
  rw_banner_show (self->warning, RW_BANNER_WARNING, warning != NULL ? warning->text : NULL, _ ("Put away"), NULL);
}

static void
warning_response_cb (RwMainWindow *self,
                     gboolean      first)
{
  if (self->warning_shown != NULL)
    g_hash_table_add (self->put_away, g_strdup (self->warning_shown));
  show_warning (self);
}

/* What must be said before anything is kept. */
static void
show_live_warning (RwMainWindow *self)
{
  const RwLive *live = rw_job_get_live (self->job);
  RwWarning warning = { 0 };
  const gboolean warns = live->has_value && rw_job_can_write (self->job)
                         && !g_str_equal (live->sample.rail, RW_LIVE_SOMEWHERE)
                         && rw_mistakes_look_live (rw_job_get_state (self->job), &live->sample, &warning);

  rw_banner_show (self->live_warning, warns && warning.danger ? RW_BANNER_DANGER : RW_BANNER_WARNING,
                  warns ? warning.text : NULL, NULL, NULL);
  rw_warning_clear (&warning);
}

/* --- the big view and the sound ------------------------------------------------------------------- */

void
rw_main_window_toggle_big (RwMainWindow *self)
{
  const gboolean big = g_strcmp0 (gtk_stack_get_visible_child_name (self->stack), "big") == 0;

  gtk_stack_set_visible_child_name (self->stack, big ? "bench" : "big");
  if (!big)
    gtk_widget_grab_focus (GTK_WIDGET (self->big));
  else if (rw_job_can_write (self->job))
    rw_entry_row_focus (self->entry);
  else
    gtk_widget_grab_focus (GTK_WIDGET (self->chart));
}

void
rw_main_window_toggle_sound (RwMainWindow *self)
{
  const gboolean on = !rw_sound_get_enabled (self->sound);

  if (on && !rw_sound_is_available (self->sound) && rw_sound_get_problem (self->sound) != NULL)
    {
      rw_banner_show (self->banner, RW_BANNER_QUIET, rw_sound_get_problem (self->sound), _ ("Close"), NULL);
      return;
    }
  rw_sound_set_enabled (self->sound, on);
  if (self->settings != NULL)
    g_settings_set_boolean (self->settings, "sound", on);
  rw_banner_show (self->banner, RW_BANNER_QUIET,
                  on ? _ ("Sound is on: the tone rises with the volts, beats faster towards the set point and is steady "
                          "inside.")
                     : _ ("Sound is off."),
                  _ ("Close"), NULL);
}

/* --- the job -------------------------------------------------------------------------------------- */

void
rw_main_window_add_hands (RwMainWindow *self)
{
  self->put_away = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  self->sound = rw_sound_new ();
  self->sound_follow = rw_sound_follow_new (self->sound);
  g_signal_connect_swapped (self->asking, "response", G_CALLBACK (asking_response_cb), self);
  g_signal_connect_swapped (self->warning, "response", G_CALLBACK (warning_response_cb), self);
}

void
rw_main_window_show_hands (RwMainWindow *self)
{
  g_hash_table_remove_all (self->put_away);
  rw_sound_follow_set_job (self->sound_follow, self->job);
  rw_big_view_set_job (self->big, self->job);
  if (self->job != NULL)
    {
      g_signal_connect_object (self->job, "hands", G_CALLBACK (hands_cb), self, G_CONNECT_SWAPPED);
      g_signal_connect_object (self->job, "changed", G_CALLBACK (show_warning), self, G_CONNECT_SWAPPED);
      g_signal_connect_object (self->job, "live", G_CALLBACK (show_live_warning), self, G_CONNECT_SWAPPED);
      if (self->settings != NULL && rw_job_get_mode (self->job) == RW_JOB_BENCH)
        rw_job_set_hands_free (self->job, g_settings_get_boolean (self->settings, "hands-free"));
      if (self->settings != NULL && rw_job_get_mode (self->job) != RW_JOB_PRACTICE)
        g_settings_bind (self->settings, "own-record", self->job, "uses-record", G_SETTINGS_BIND_DEFAULT);
      rw_meter_resume (self->job, self->settings);
      rw_sound_set_enabled (self->sound, self->settings != NULL && g_settings_get_boolean (self->settings, "sound"));
    }
  gtk_widget_set_visible (GTK_WIDGET (self->hands_button), self->job != NULL && rw_job_can_write (self->job));
  hands_cb (self);
  show_warning (self);
}

void
rw_main_window_drop_hands (RwMainWindow *self)
{
  g_clear_object (&self->sound_follow);
  g_clear_object (&self->sound);
  g_clear_pointer (&self->put_away, g_hash_table_unref);
  g_clear_pointer (&self->warning_shown, g_free);
}
