/* rw-sound-follow.c: what a job sounds like.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-sound-follow.h"

#include "rw-live-target.h"

/* Seconds between two alarms while a live value is past what a board survives. */
static const gint64 alarm_every = 4 * G_USEC_PER_SEC;

struct _RwSoundFollow
{
  GObject  parent_instance;
  RwSound *sound;
  RwJob   *job;      /* (nullable) */
  guint    kept;     /* events up to this number were listened to */
  guint    warned;   /* newest event that a danger was told of */
  char    *question; /* that was asked for; NULL: none */
  gint64   alarmed;  /* monotonic µs */
};

G_DEFINE_FINAL_TYPE (RwSoundFollow, rw_sound_follow, G_TYPE_OBJECT)

/* --- the tone ------------------------------------------------------------------------------------- */

static void
raise_alarm (RwSoundFollow *self)
{
  const gint64 now = g_get_monotonic_time ();

  if (self->alarmed != 0 && now - self->alarmed < alarm_every)
    return;
  self->alarmed = now;
  rw_sound_play (self->sound, RW_SOUND_DANGER);
}

/* Nobody can be led by a value that is old, of leads in the air or the wrong way round, or of a rail that is not
 * known. */
static void
show_live (RwSoundFollow *self)
{
  RwTarget target;
  double age;

  if (self->job == NULL || !rw_live_target (self->job, &target, &age) || age > RW_LIVE_TARGET_OLD)
    {
      rw_sound_set_target (self->sound, FALSE, 0, 0, FALSE);
      return;
    }
  if (target.danger)
    raise_alarm (self);
  rw_sound_set_target (self->sound, target.from != RW_TARGET_NONE && target.touched && !target.reversed,
                       target.distance, target.half, target.inside);
}

/* --- signals -------------------------------------------------------------------------------------- */

static gboolean
is_outside (RwSoundFollow *self,
            const RwEvent *event)
{
  const RwReading *reading = &event->reading;
  const RwSpotState *spot = rw_bench_state_find_spot (rw_job_get_state (self->job), reading->rail, reading->place,
                                                      reading->kind);

  return spot != NULL && spot->n == event->n && (spot->verdict == RW_VERDICT_OUTSIDE || reading->over);
}

/* Of several readings that reach the disk at once the newest is told. */
static void
kept_cb (RwSoundFollow *self,
         guint          n)
{
  RwSession *session = rw_job_get_session (self->job);

  for (guint i = rw_session_get_n_landmarks (session); i-- > 0;)
    {
      const guint index = rw_session_get_landmark (session, i);
      const RwEvent *event = rw_session_get_event (session, index);

      if (event->n <= self->kept)
        break;
      if (event->n > n || event->type != RW_EVENT_READING || !rw_session_is_live (session, index))
        continue;
      rw_sound_play (self->sound, is_outside (self, event) ? RW_SOUND_OUTSIDE : RW_SOUND_KEPT);
      break;
    }
  self->kept = MAX (self->kept, n);
}

static guint
newest_danger (RwJob *job)
{
  RwBenchState *state = rw_job_get_state (job);
  guint newest = 0;

  for (guint i = 0; i < rw_bench_state_get_n_warnings (state); i++)
    {
      const RwWarning *warning = rw_bench_state_get_warning (state, i);

      if (warning->danger)
        newest = MAX (newest, warning->n);
    }
  return newest;
}

static void
changed_cb (RwSoundFollow *self)
{
  const guint newest = newest_danger (self->job);

  if (newest > self->warned)
    rw_sound_play (self->sound, RW_SOUND_DANGER);
  self->warned = newest;
  show_live (self);
}

static void
hands_cb (RwSoundFollow *self)
{
  const RwJobQuestion *question = rw_job_get_question (self->job);

  if (question != NULL && g_strcmp0 (question->text, self->question) != 0)
    rw_sound_play (self->sound, RW_SOUND_ASKED);
  g_free (self->question);
  self->question = g_strdup (question != NULL ? question->text : NULL);
}

/* --- the type ------------------------------------------------------------------------------------- */

static guint
last_n (RwSession *session)
{
  const guint n = rw_session_get_n_events (session);

  return n > 0 ? rw_session_get_event (session, n - 1)->n : 0;
}

void
rw_sound_follow_set_job (RwSoundFollow *self,
                         RwJob         *job)
{
  g_return_if_fail (RW_IS_SOUND_FOLLOW (self));
  if (self->job == job)
    return;
  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (self->job, self);
  g_set_object (&self->job, job);
  g_clear_pointer (&self->question, g_free);
  self->alarmed = 0;
  if (job != NULL)
    {
      self->kept = last_n (rw_job_get_session (job));
      self->warned = newest_danger (job);
      g_signal_connect_object (job, "live", G_CALLBACK (show_live), self, G_CONNECT_SWAPPED);
      g_signal_connect_object (job, "tick", G_CALLBACK (show_live), self, G_CONNECT_SWAPPED);
      g_signal_connect_object (job, "kept", G_CALLBACK (kept_cb), self, G_CONNECT_SWAPPED);
      g_signal_connect_object (job, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
      g_signal_connect_object (job, "hands", G_CALLBACK (hands_cb), self, G_CONNECT_SWAPPED);
    }
  show_live (self);
}

static void
rw_sound_follow_dispose (GObject *object)
{
  RwSoundFollow *self = RW_SOUND_FOLLOW (object);

  if (self->sound != NULL)
    rw_sound_follow_set_job (self, NULL);
  g_clear_object (&self->sound);
  G_OBJECT_CLASS (rw_sound_follow_parent_class)->dispose (object);
}

static void
rw_sound_follow_class_init (RwSoundFollowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_sound_follow_dispose;
}

static void
rw_sound_follow_init (RwSoundFollow *self)
{
}

RwSoundFollow *
rw_sound_follow_new (RwSound *sound)
{
  RwSoundFollow *self = g_object_new (RW_TYPE_SOUND_FOLLOW, NULL);

  self->sound = g_object_ref (sound);
  return self;
}
