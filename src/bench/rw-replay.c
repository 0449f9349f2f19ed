/* rw-replay.c: feeds the events of a saved session into another one.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Invariant: the target holds copies of exactly the first n_events (target) events of the source, and the
 * position lies at or after the last of them and before the next.
 */
#include "config.h"

#include "rw-replay.h"

struct _RwReplay
{
  GObject    parent_instance;
  RwSession *source;
  RwSession *target;
  double     position;
  double     speed;
  gboolean   playing;
};

static guint moved_signal, speed_signal;

G_DEFINE_FINAL_TYPE (RwReplay, rw_replay, G_TYPE_OBJECT)

static void
rw_replay_finalize (GObject *object)
{
  RwReplay *self = RW_REPLAY (object);

  g_clear_object (&self->source);
  g_clear_object (&self->target);
  G_OBJECT_CLASS (rw_replay_parent_class)->finalize (object);
}

static void
rw_replay_class_init (RwReplayClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rw_replay_finalize;
  moved_signal = g_signal_new ("moved", RW_TYPE_REPLAY, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                               G_TYPE_NONE, 0);
  speed_signal = g_signal_new ("speed-changed", RW_TYPE_REPLAY, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
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
  self->target = rw_session_new (rw_session_header_copy (rw_session_get_header (source)));
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

static void
feed_one (RwReplay *self)
{
  RwEvent copy = rw_event_copy (rw_session_get_event (self->source, rw_session_get_n_events (self->target)));

  rw_session_add (self->target, &copy);
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
  if (n_events < rw_session_get_n_events (self->target))
    rw_session_rewind (self->target, n_events);
  while (rw_session_get_n_events (self->target) < n_events)
    feed_one (self);
  self->position = position;
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
  g_signal_emit (self, speed_signal, 0);
  g_signal_emit (self, moved_signal, 0);
}

void
rw_replay_advance (RwReplay *self,
                   double    seconds)
{
  if (!self->playing)
    return;

  const double position = self->position + seconds * self->speed;

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
