/* rw-replay.c: shows a saved session again, by a clock of its own.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Invariant: the target holds exactly the first n_events (target) events of the source, and the position lies at or
 * after the last of them and before the next; several events may share a second, and then the target may end between
 * them.
 *
 * The clock is of play time: with the waiting skipped it runs by rw-idle, else by the session's own seconds.
 */
#include "config.h"

#include "rw-replay.h"

#include <math.h>

const double rw_replay_speeds[RW_REPLAY_N_SPEEDS] = { RW_REPLAY_MIN_SPEED, 0.5, 1, 2, 5, 15, RW_REPLAY_MAX_SPEED };

/* A chapter that is played for so many real seconds is begun again by "previous". */
static const double begun = 2;

struct _RwReplay
{
  GObject    parent_instance;
  RwSession *source;
  RwSession *target;
  double     position;
  double     speed;
  gboolean   playing;
  gboolean   skips;
  RwIdle    *idle;     /* NULL until it is asked for */
  RwChapters *chapters; /* (nullable) */
};

static guint moved_signal, settings_signal, chapters_signal;

G_DEFINE_FINAL_TYPE (RwReplay, rw_replay, G_TYPE_OBJECT)

static void
rw_replay_finalize (GObject *object)
{
  RwReplay *self = RW_REPLAY (object);

  g_clear_object (&self->source);
  g_clear_object (&self->target);
  g_clear_pointer (&self->idle, rw_idle_free);
  g_clear_pointer (&self->chapters, rw_chapters_unref);
  G_OBJECT_CLASS (rw_replay_parent_class)->finalize (object);
}

static void
rw_replay_class_init (RwReplayClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rw_replay_finalize;
  moved_signal = g_signal_new ("moved", RW_TYPE_REPLAY, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                               G_TYPE_NONE, 0);
  chapters_signal = g_signal_new ("chapters-changed", RW_TYPE_REPLAY, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 0);
  settings_signal = g_signal_new ("settings-changed", RW_TYPE_REPLAY, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 0);
}

static void
rw_replay_init (RwReplay *self)
{
  self->speed = 1;
}

RwReplay *
rw_replay_new (RwSession *source)
{
  RwReplay *self = g_object_new (RW_TYPE_REPLAY, NULL);

  self->source = g_object_ref (source);
  self->target = rw_session_new_part (source);
  return self;
}

RwSession *
rw_replay_get_target (RwReplay *self)
{
  return self->target;
}

RwSession *
rw_replay_get_source (RwReplay *self)
{
  return self->source;
}

double
rw_replay_get_position (RwReplay *self)
{
  return self->position;
}

double
rw_replay_get_length (RwReplay *self)
{
  return rw_session_get_end (self->source);
}

gboolean
rw_replay_get_playing (RwReplay *self)
{
  return self->playing;
}

double
rw_replay_get_speed (RwReplay *self)
{
  return self->speed;
}

static gboolean
is_done (RwReplay *self)
{
  return rw_session_get_n_events (self->target) >= rw_session_get_n_events (self->source);
}

/* First source event that happens after @t. Times rise in a session; a damaged file may disobey, and then
 * the order of the file is what counts. */
static guint
count_until (RwReplay *self,
             double    t)
{
  const guint n = rw_session_get_n_events (self->source);
  guint low = 0, high = n;

  while (low < high)
    {
      const guint middle = low + (high - low) / 2;

      if (rw_session_get_event (self->source, middle)->t <= t)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

static void
move_to (RwReplay *self,
         guint     n_events,
         double    position)
{
  self->position = position;
  rw_session_rewind (self->target, n_events);
  rw_session_advance (self->target, n_events);
  g_signal_emit (self, moved_signal, 0);
}

void
rw_replay_seek (RwReplay *self,
                double    t)
{
  const double position = CLAMP (t, 0, rw_replay_get_length (self));

  move_to (self, count_until (self, position), position);
}

void
rw_replay_go_to (RwReplay *self,
                 guint     n_events,
                 double    t)
{
  g_return_if_fail (RW_IS_REPLAY (self));
  move_to (self, MIN (n_events, rw_session_get_n_events (self->source)), CLAMP (t, 0, rw_replay_get_length (self)));
}

void
rw_replay_set_playing (RwReplay *self,
                       gboolean  playing)
{
  if (self->playing == playing)
    return;
  self->playing = playing;
  if (playing && is_done (self))
    rw_replay_seek (self, 0);
  g_signal_emit (self, moved_signal, 0);
}

void
rw_replay_set_speed (RwReplay *self,
                     double    speed)
{
  const double clamped = CLAMP (speed, RW_REPLAY_MIN_SPEED, RW_REPLAY_MAX_SPEED);

  if (self->speed == clamped)
    return;
  self->speed = clamped;
  g_signal_emit (self, settings_signal, 0);
  g_signal_emit (self, moved_signal, 0);
}

guint
rw_replay_get_nearest_speed (RwReplay *self)
{
  guint best = 0;

  for (guint i = 1; i < RW_REPLAY_N_SPEEDS; i++)
    if (fabs (log (rw_replay_speeds[i] / self->speed)) < fabs (log (rw_replay_speeds[best] / self->speed)))
      best = i;
  return best;
}

void
rw_replay_change_speed (RwReplay *self,
                        int       by)
{
  g_return_if_fail (RW_IS_REPLAY (self));

  const int at = (int) rw_replay_get_nearest_speed (self) + by;

  rw_replay_set_speed (self, rw_replay_speeds[CLAMP (at, 0, RW_REPLAY_N_SPEEDS - 1)]);
}

/* --- skipping the waiting ------------------------------------------------------------------------- */

const RwIdle *
rw_replay_get_idle (RwReplay *self)
{
  g_return_val_if_fail (RW_IS_REPLAY (self), NULL);
  if (self->idle == NULL)
    self->idle = rw_idle_new (self->source);
  return self->idle;
}

gboolean
rw_replay_get_skips_waiting (RwReplay *self)
{
  g_return_val_if_fail (RW_IS_REPLAY (self), FALSE);
  return self->skips;
}

void
rw_replay_set_skips_waiting (RwReplay *self,
                             gboolean  skips)
{
  g_return_if_fail (RW_IS_REPLAY (self));
  if (self->skips == skips)
    return;
  self->skips = skips;
  g_signal_emit (self, settings_signal, 0);
  g_signal_emit (self, moved_signal, 0);
}

/* Where the clock stands when it has run on from the position. @seconds: of play time. */
static double
position_after (RwReplay *self,
                double    seconds)
{
  if (!self->skips)
    return self->position + seconds;

  const RwIdle *idle = rw_replay_get_idle (self);

  return rw_idle_to_session (idle, rw_idle_to_play (idle, self->position) + seconds);
}

void
rw_replay_advance (RwReplay *self,
                   double    seconds)
{
  if (!self->playing)
    return;

  const double position = position_after (self, seconds * self->speed);

  if (position >= rw_replay_get_length (self))
    self->playing = FALSE;
  rw_replay_seek (self, position);
}

static void
step_forward (RwReplay *self)
{
  guint n = rw_session_get_n_events (self->target);

  while (n < rw_session_get_n_events (self->source)
         && rw_session_get_event (self->source, n)->type == RW_EVENT_SAMPLE)
    n++;
  n = MIN (n + 1, rw_session_get_n_events (self->source));
  if (n > 0)
    move_to (self, n, rw_session_get_event (self->source, n - 1)->t);
}

static void
step_back (RwReplay *self)
{
  guint n = rw_session_get_n_events (self->target);

  while (n > 0 && rw_session_get_event (self->source, n - 1)->type == RW_EVENT_SAMPLE)
    n--;
  n = n > 0 ? n - 1 : 0;
  move_to (self, n, n > 0 ? rw_session_get_event (self->source, n - 1)->t : 0);
}

void
rw_replay_step (RwReplay *self,
                gboolean  forward)
{
  self->playing = FALSE;
  if (forward && !is_done (self))
    step_forward (self);
  else if (!forward)
    step_back (self);
}

/* --- chapters and moments ------------------------------------------------------------------------- */

RwChapters *
rw_replay_get_chapters (RwReplay *self)
{
  g_return_val_if_fail (RW_IS_REPLAY (self), NULL);
  return self->chapters;
}

/* @chapters: taken. */
static void
set_chapters (RwReplay   *self,
              RwChapters *chapters)
{
  g_clear_pointer (&self->chapters, rw_chapters_unref);
  self->chapters = chapters;
  g_signal_emit (self, chapters_signal, 0);
}

/* What the thread works on: nobody else has this part. */
typedef struct
{
  RwChapters *quick;
  RwSession  *part;
} Search;

static void
search_free (gpointer data)
{
  Search *search = data;

  rw_chapters_unref (search->quick);
  g_object_unref (search->part);
  g_free (search);
}

static void
search (GTask        *task,
        gpointer      source,
        gpointer      data,
        GCancellable *cancellable)
{
  const Search *job = data;

  g_task_return_pointer (task, rw_chapters_new_looked (job->quick, job->part), (GDestroyNotify) rw_chapters_unref);
}

static void
found_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  set_chapters (RW_REPLAY (source), g_task_propagate_pointer (G_TASK (result), NULL));
}

void
rw_replay_look_for_chapters (RwReplay         *self,
                             RwChapterDescribe describe,
                             gpointer          data)
{
  g_return_if_fail (RW_IS_REPLAY (self));

  g_autoptr (GTask) task = g_task_new (self, NULL, found_cb, NULL);
  Search *job = g_new0 (Search, 1);

  set_chapters (self, rw_chapters_new_quick (self->source, describe, data));
  job->quick = rw_chapters_ref (self->chapters);
  job->part = rw_session_new_part (self->source);
  rw_session_advance (job->part, rw_session_get_n_events (self->source));
  g_task_set_task_data (task, job, search_free);
  g_task_run_in_thread (task, search);
}

const RwChapter *
rw_replay_get_chapter (RwReplay *self,
                       guint    *index)
{
  g_return_val_if_fail (RW_IS_REPLAY (self), NULL);
  if (self->chapters == NULL)
    return NULL;

  const guint at = rw_chapters_find (self->chapters, rw_session_get_n_events (self->target));

  if (index != NULL)
    *index = at;
  return rw_chapters_get (self->chapters, at);
}

void
rw_replay_go_to_chapter (RwReplay *self,
                         guint     index)
{
  g_return_if_fail (RW_IS_REPLAY (self) && self->chapters != NULL);

  const RwChapter *chapter = rw_chapters_get (self->chapters, index);

  if (chapter != NULL)
    rw_replay_go_to (self, chapter->n_events, chapter->t);
}

static gboolean
jump_to_chapter (RwReplay *self,
                 gboolean  forward)
{
  guint index;
  const RwChapter *chapter = rw_replay_get_chapter (self, &index);
  const gboolean is_begun = self->playing ? self->position - chapter->t >= begun * self->speed
                                          : rw_session_get_n_events (self->target) > chapter->n_events
                                                || self->position > chapter->t;

  if (forward ? index + 1 >= rw_chapters_get_n (self->chapters) : index == 0 && !is_begun)
    return FALSE;
  rw_replay_go_to_chapter (self, forward ? index + 1 : is_begun ? index : index - 1);
  return TRUE;
}

gboolean
rw_replay_jump (RwReplay    *self,
                RwReplayGoal goal,
                gboolean     forward)
{
  static const RwMomentKind kinds[] = {
    [RW_REPLAY_WARNING] = RW_MOMENT_WARNING,
    [RW_REPLAY_TRIM] = RW_MOMENT_TRIM,
    [RW_REPLAY_KEEP] = RW_MOMENT_KEEP,
  };

  g_return_val_if_fail (RW_IS_REPLAY (self), FALSE);
  if (self->chapters == NULL)
    return FALSE;
  if (goal == RW_REPLAY_CHAPTER)
    return jump_to_chapter (self, forward);

  const guint n = rw_session_get_n_events (self->target);
  const RwMoment *moment = forward ? rw_chapters_next_moment (self->chapters, kinds[goal], n)
                                   : rw_chapters_previous_moment (self->chapters, kinds[goal], n);

  if (moment == NULL)
    return FALSE;
  rw_replay_go_to (self, moment->n_events, moment->t);
  return TRUE;
}
