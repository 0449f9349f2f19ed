/* rw-chart-data.c: what there is to draw of a session.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A sample goes into the pyramid of its channel; a landmark that can be drawn becomes a reading
 * or a vertical. Everything carries the index of its event, so that going back is cutting each
 * list at an index.
 *
 * The session's signals and rw_chart_data_catch_up () do the same thing, so it does not matter
 * who of several listeners is told first: whoever draws catches up before he looks.
 *
 * A retract may take out anything before it. Readings and verticals are then collected afresh
 * from the landmarks; samples only when a sample or a gap came or went.
 *
 * Of a session that is a part of another (a replay), the samples are not collected at all: the whole session has
 * data of its own, and each channel sees as many of its samples as have happened, so that a jump costs what lies
 * between of landmarks alone. That goes as long as a session's samples are the first of the whole's, which a retract
 * of a sample or of a gap would break: no program of ours writes one, and with one all goes the slow way.
 */
#include "config.h"

#include "rw-chart-data.h"

#include <math.h>

struct _RwChartData
{
  GObject    parent_instance;
  RwSession *session;
  RwChartData *whole;      /* of the session that ours is a part of; NULL: the samples are our own */
  GPtrArray *channels;     /* of RwChartChannel, in order of appearance */
  GArray    *verticals;    /* of RwChartVertical */
  guint      n_trims;
  RwSetup    setup;        /* all that is known at the end */
  guint      last_retract; /* index + 1 of the last retract event; 0: none */
  guint      n_seen;       /* events of the session that are in here */
  guint      n_landmarks;  /* landmarks among them */
};

static guint changed_signal;

G_DEFINE_FINAL_TYPE (RwChartData, rw_chart_data, G_TYPE_OBJECT)

static const RwSetup nothing_said = { RW_SAID_NOT, RW_SAID_NOT, RW_SAID_NOT };

static RwChartChannel *
find_channel (RwChartData *self,
              const char  *rail,
              RwPlace      place,
              RwKind       kind)
{
  for (guint i = 0; i < self->channels->len; i++)
    {
      RwChartChannel *channel = self->channels->pdata[i];

      if (channel->rail == rail && channel->place == place && channel->kind == kind)
        return channel;
    }
  return NULL;
}

/* NULL for what is not drawn: ohms, amperes, temperatures. */
static RwChartChannel *
channel_of (RwChartData     *self,
            const RwReading *reading)
{
  if (reading->kind != RW_KIND_DC && reading->kind != RW_KIND_RIPPLE)
    return NULL;

  RwChartChannel *channel = find_channel (self, reading->rail, reading->place, reading->kind);

  if (channel == NULL)
    {
      const RwChartChannel *whole
          = self->whole != NULL ? find_channel (self->whole, reading->rail, reading->place, reading->kind) : NULL;

      channel = whole != NULL ? rw_chart_channel_new_part (whole)
                              : rw_chart_channel_new (rw_session_get_profile (self->session), reading);
      g_ptr_array_add (self->channels, channel);
    }
  return channel;
}

/* What @now says that @before did not. */
static RwSaid
news_of (RwSaid  now,
         RwSaid *before)
{
  if (now == RW_SAID_NOT || now == *before)
    return RW_SAID_NOT;
  *before = now;
  return now;
}

/* FALSE when the event says nothing new. */
static gboolean
take_setup (RwChartData     *self,
            const RwSetup   *setup,
            RwChartVertical *vertical)
{
  vertical->news.power_on = news_of (setup->power_on, &self->setup.power_on);
  vertical->news.board_fitted = news_of (setup->board_fitted, &self->setup.board_fitted);
  vertical->news.warm = news_of (setup->warm, &self->setup.warm);
  vertical->after = self->setup;
  return vertical->news.power_on != RW_SAID_NOT || vertical->news.board_fitted != RW_SAID_NOT
         || vertical->news.warm != RW_SAID_NOT;
}

static gboolean
is_vertical (RwEventType type)
{
  return type == RW_EVENT_SETUP || type == RW_EVENT_TRIM || type == RW_EVENT_SYMPTOM
         || type == RW_EVENT_REPAIR || type == RW_EVENT_MARK || type == RW_EVENT_NOTE
         || type == RW_EVENT_GAP;
}

static void
add_vertical (RwChartData   *self,
              const RwEvent *event,
              guint          index)
{
  RwChartVertical vertical = { event->t, index, event->type, 0, nothing_said, nothing_said };

  if (!isfinite (event->t))
    return;
  if (event->type == RW_EVENT_SETUP && !take_setup (self, &event->setup, &vertical))
    return;
  if (event->type == RW_EVENT_TRIM)
    vertical.count = ++self->n_trims;
  g_array_append_val (self->verticals, vertical);
}

static void
add_landmark (RwChartData   *self,
              const RwEvent *event,
              guint          index)
{
  if (is_vertical (event->type))
    add_vertical (self, event, index);
  if (event->type != RW_EVENT_READING)
    return;

  RwChartChannel *channel = channel_of (self, &event->reading);

  if (channel != NULL)
    rw_chart_channel_add_reading (channel, event, index,
                                  rw_session_find_meter (self->session, event->reading.meter));
}

/* Breaks the line of every channel that @event's meter was on last. */
static void
break_streams (RwChartData   *self,
               const RwEvent *event,
               guint          index)
{
  for (guint i = 0; i < self->channels->len; i++)
    {
      RwChartChannel *channel = self->channels->pdata[i];
      const guint n = rw_pyramid_get_n (channel->samples);

      if (n == 0)
        continue;

      const guint last = rw_pyramid_get_tag (channel->samples, n - 1);
      const RwEvent *sample = rw_session_get_event (self->session, last);

      if (sample->type == RW_EVENT_SAMPLE && sample->reading.meter == event->gap.meter)
        rw_chart_channel_break (channel, event->t, index);
    }
}

static void
add_to_streams (RwChartData   *self,
                const RwEvent *event,
                guint          index)
{
  if (event->type == RW_EVENT_GAP)
    break_streams (self, event, index);
  if (event->type != RW_EVENT_SAMPLE)
    return;

  RwChartChannel *channel = channel_of (self, &event->reading);

  if (channel != NULL)
    rw_chart_channel_add_sample (channel, event, index);
}

static void
forget_landmarks (RwChartData *self)
{
  for (guint i = 0; i < self->channels->len; i++)
    g_array_set_size (((RwChartChannel *) self->channels->pdata[i])->readings, 0);
  g_array_set_size (self->verticals, 0);
  self->n_trims = 0;
  self->setup = nothing_said;
}

static void
collect_landmarks (RwChartData *self)
{
  const guint n = rw_session_get_n_landmarks (self->session);

  forget_landmarks (self);
  for (guint i = 0; i < n; i++)
    {
      const guint index = rw_session_get_landmark (self->session, i);
      const RwEvent *event = rw_session_get_event (self->session, index);

      if (event->type == RW_EVENT_RETRACT)
        self->last_retract = index + 1;
      if (rw_session_is_live (self->session, index))
        add_landmark (self, event, index);
    }
}

/* Of a part: its channels see as many samples as have happened; one that had none yet appears with its first. */
static void
see_streams (RwChartData *self)
{
  const guint n = rw_session_get_n_events (self->session);

  for (guint i = 0; i < self->whole->channels->len; i++)
    {
      const RwChartChannel *whole = self->whole->channels->pdata[i];
      RwChartChannel *channel = find_channel (self, whole->rail, whole->place, whole->kind);

      if (channel == NULL && rw_pyramid_get_n (whole->samples) > 0 && rw_pyramid_get_tag (whole->samples, 0) < n)
        {
          channel = rw_chart_channel_new_part (whole);
          g_ptr_array_add (self->channels, channel);
        }
      if (channel != NULL)
        rw_chart_channel_see (channel, n);
    }
}

static void
collect_all (RwChartData *self)
{
  const guint n = rw_session_get_n_events (self->session);

  g_ptr_array_set_size (self->channels, 0);
  self->last_retract = 0;
  for (guint i = 0; i < n && self->whole == NULL; i++)
    if (rw_session_is_live (self->session, i))
      add_to_streams (self, rw_session_get_event (self->session, i), i);
  if (self->whole != NULL)
    see_streams (self);
  collect_landmarks (self);
}

/* What a retract is about in the end: it may name a retract that names a retract. */
static RwEventType
retracted_type (RwSession     *session,
                const RwEvent *event)
{
  while (event->type == RW_EVENT_RETRACT)
    {
      const int target = rw_session_find (session, event->retract.n);

      if (target < 0)
        return RW_EVENT_UNKNOWN;

      const RwEvent *named = rw_session_get_event (session, (guint) target);

      if (named->n >= event->n) /* only earlier events can be retracted */
        return RW_EVENT_UNKNOWN;
      event = named;
    }
  return event->type;
}

static void
take_retract (RwChartData   *self,
              const RwEvent *event,
              guint          index)
{
  const RwEventType type = retracted_type (self->session, event);

  self->last_retract = index + 1;
  if (type == RW_EVENT_SAMPLE || type == RW_EVENT_GAP)
    collect_all (self);
  else if (type == RW_EVENT_READING || is_vertical (type))
    collect_landmarks (self);
}

/* Whether a retract came since. More than one event at once, and what it took out may come after what is here. */
static gboolean
has_retract_since (RwChartData *self)
{
  const guint n = rw_session_get_n_landmarks (self->session);

  for (guint i = self->n_landmarks; i < n; i++)
    if (rw_session_get_event (self->session, rw_session_get_landmark (self->session, i))->type == RW_EVENT_RETRACT)
      return TRUE;
  return FALSE;
}

/* Of a part: what lies between of landmarks. */
static void
take_landmarks (RwChartData *self)
{
  const guint n = rw_session_get_n_landmarks (self->session);

  if (has_retract_since (self))
    {
      collect_landmarks (self);
      return;
    }
  for (guint i = self->n_landmarks; i < n; i++)
    {
      const guint index = rw_session_get_landmark (self->session, i);

      add_landmark (self, rw_session_get_event (self->session, index), index);
    }
}

static void
take_event (RwChartData *self,
            guint        index)
{
  const RwEvent *event = rw_session_get_event (self->session, index);

  add_to_streams (self, event, index);
  add_landmark (self, event, index);
  if (event->type == RW_EVENT_RETRACT)
    take_retract (self, event, index);
}

static void
truncate_verticals (RwChartData *self,
                    guint        n_events)
{
  GArray *verticals = self->verticals;

  while (verticals->len > 0
         && g_array_index (verticals, RwChartVertical, verticals->len - 1).index >= n_events)
    g_array_set_size (verticals, verticals->len - 1);
  self->n_trims = 0;
  self->setup = nothing_said;
  for (guint i = 0; i < verticals->len; i++)
    {
      const RwChartVertical *vertical = &g_array_index (verticals, RwChartVertical, i);

      self->n_trims += vertical->type == RW_EVENT_TRIM ? 1 : 0;
      if (vertical->type == RW_EVENT_SETUP)
        self->setup = vertical->after;
    }
}

static void
go_back (RwChartData *self,
         guint        n_events)
{
  self->n_seen = n_events;
  self->n_landmarks = rw_session_get_n_landmarks (self->session);
  if (self->last_retract > n_events) /* what it took out is back */
    {
      collect_all (self);
      return;
    }
  for (guint i = 0; i < self->channels->len; i++)
    rw_chart_channel_truncate (self->channels->pdata[i], n_events);
  truncate_verticals (self, n_events);
}

/* The session has grown to @n events. */
static void
go_on (RwChartData *self,
       guint        n)
{
  if (self->whole != NULL)
    {
      see_streams (self);
      take_landmarks (self);
    }
  else if (n > self->n_seen + 1 && has_retract_since (self))
    collect_all (self);
  else
    for (guint i = self->n_seen; i < n; i++)
      take_event (self, i);
  self->n_seen = n;
  self->n_landmarks = rw_session_get_n_landmarks (self->session);
}

void
rw_chart_data_catch_up (RwChartData *self)
{
  g_return_if_fail (RW_IS_CHART_DATA (self));

  const guint n = rw_session_get_n_events (self->session);

  if (n == self->n_seen)
    return;
  if (n < self->n_seen)
    go_back (self, n);
  else
    go_on (self, n);
  g_signal_emit (self, changed_signal, 0);
}

static void
rw_chart_data_dispose (GObject *object)
{
  RwChartData *self = RW_CHART_DATA (object);

  if (self->session != NULL)
    g_signal_handlers_disconnect_by_data (self->session, self);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (rw_chart_data_parent_class)->dispose (object);
}

static void
rw_chart_data_finalize (GObject *object)
{
  RwChartData *self = RW_CHART_DATA (object);

  g_clear_pointer (&self->channels, g_ptr_array_unref); /* before the whole, that they look into */
  g_clear_pointer (&self->verticals, g_array_unref);
  g_clear_object (&self->whole);
  G_OBJECT_CLASS (rw_chart_data_parent_class)->finalize (object);
}

static void
rw_chart_data_class_init (RwChartDataClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_chart_data_dispose;
  G_OBJECT_CLASS (klass)->finalize = rw_chart_data_finalize;
  changed_signal = g_signal_new ("changed", RW_TYPE_CHART_DATA, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                 NULL, G_TYPE_NONE, 0);
}

static void
rw_chart_data_init (RwChartData *self)
{
  self->channels = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_chart_channel_free);
  self->verticals = g_array_new (FALSE, FALSE, sizeof (RwChartVertical));
  self->setup = nothing_said;
}

/* The samples that a part of @source holds are always the first that it holds. */
static gboolean
has_steady_streams (RwSession *source)
{
  for (guint i = 0; i < rw_session_get_n_landmarks (source); i++)
    {
      const RwEvent *event = rw_session_get_event (source, rw_session_get_landmark (source, i));

      if (event->type != RW_EVENT_RETRACT)
        continue;

      const RwEventType type = retracted_type (source, event);

      if (type == RW_EVENT_SAMPLE || type == RW_EVENT_GAP)
        return FALSE;
    }
  return TRUE;
}

RwChartData *
rw_chart_data_new (RwSession *session)
{
  g_return_val_if_fail (RW_IS_SESSION (session), NULL);

  RwChartData *self = g_object_new (RW_TYPE_CHART_DATA, NULL);
  RwSession *source = rw_session_get_source (session);

  self->session = g_object_ref (session);
  if (source != NULL && has_steady_streams (source))
    self->whole = rw_chart_data_for (source);
  collect_all (self);
  self->n_seen = rw_session_get_n_events (session);
  self->n_landmarks = rw_session_get_n_landmarks (session);
  g_signal_connect_swapped (session, "added", G_CALLBACK (rw_chart_data_catch_up), self);
  g_signal_connect_swapped (session, "rewound", G_CALLBACK (rw_chart_data_catch_up), self);
  return self;
}

static void
weak_ref_free (gpointer data)
{
  g_weak_ref_clear (data);
  g_free (data);
}

/* The session knows of its shared data without holding it: the data holds the session. */
RwChartData *
rw_chart_data_for (RwSession *session)
{
  static const char *const key = "rw-chart-data";

  g_return_val_if_fail (RW_IS_SESSION (session), NULL);

  GWeakRef *weak = g_object_get_data (G_OBJECT (session), key);

  if (weak == NULL)
    {
      weak = g_new0 (GWeakRef, 1);
      g_weak_ref_init (weak, NULL);
      g_object_set_data_full (G_OBJECT (session), key, weak, weak_ref_free);
    }

  RwChartData *shared = g_weak_ref_get (weak);

  if (shared == NULL)
    {
      shared = rw_chart_data_new (session);
      g_weak_ref_set (weak, shared);
    }
  return shared;
}

RwSession *
rw_chart_data_get_session (RwChartData *self)
{
  g_return_val_if_fail (RW_IS_CHART_DATA (self), NULL);
  return self->session;
}

guint
rw_chart_data_get_n_channels (RwChartData *self)
{
  g_return_val_if_fail (RW_IS_CHART_DATA (self), 0);
  return self->channels->len;
}

const RwChartChannel *
rw_chart_data_get_channel (RwChartData *self,
                           guint        i)
{
  g_return_val_if_fail (RW_IS_CHART_DATA (self) && i < self->channels->len, NULL);
  return self->channels->pdata[i];
}

const RwChartChannel *
rw_chart_data_find_channel (RwChartData *self,
                            const char  *rail,
                            RwPlace      place,
                            RwKind       kind)
{
  g_return_val_if_fail (RW_IS_CHART_DATA (self), NULL);
  return find_channel (self, g_intern_string (rail), place, kind);
}

guint
rw_chart_data_get_n_verticals (RwChartData *self)
{
  g_return_val_if_fail (RW_IS_CHART_DATA (self), 0);
  return self->verticals->len;
}

const RwChartVertical *
rw_chart_data_get_vertical (RwChartData *self,
                            guint        i)
{
  g_return_val_if_fail (RW_IS_CHART_DATA (self) && i < self->verticals->len, NULL);
  return &g_array_index (self->verticals, RwChartVertical, i);
}
