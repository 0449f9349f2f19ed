/* rw-session.c: everything that happened on one job, in order.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Events stand by value in one array (a sample costs no allocation). Beside it two arrays of the same
 * length and one of landmarks:
 *  dead[i]      a live retract names event i; worked out when asked for, in one pass from the end, since
 *               only later events can retract an earlier one
 *  landmarks    indices of all events but samples
 * Numbers rise in every file we write. A damaged digit can break that; then events are looked for one by one.
 */
#include "config.h"

#include "rw-session.h"

#include <string.h>

struct _RwSession
{
  GObject          parent_instance;
  RwSessionHeader *header;
  GArray          *events;    /* of RwEvent */
  GArray          *dead;      /* of guint8, one an event */
  GArray          *landmarks; /* of guint */
  GArray          *meters;    /* of guint: indices of the events that tell of a meter */
  guint            last_n;   /* the highest number so far */
  gboolean         unordered; /* numbers do not rise all the way */
  gboolean         dead_known; /* dead[] is true of what the events say */
};

static const guint absurd_n = 3000000000U;

enum
{
  SIGNAL_ADDED,
  SIGNAL_REWOUND,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (RwSession, rw_session, G_TYPE_OBJECT)

static void
clear_event (gpointer data)
{
  rw_event_clear (data);
}

static void
rw_session_finalize (GObject *object)
{
  RwSession *self = RW_SESSION (object);

  g_clear_pointer (&self->header, rw_session_header_free);
  g_clear_pointer (&self->events, g_array_unref);
  g_clear_pointer (&self->dead, g_array_unref);
  g_clear_pointer (&self->landmarks, g_array_unref);
  g_clear_pointer (&self->meters, g_array_unref);
  G_OBJECT_CLASS (rw_session_parent_class)->finalize (object);
}

static void
rw_session_class_init (RwSessionClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rw_session_finalize;
  signals[SIGNAL_ADDED] = g_signal_new ("added", RW_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                        G_TYPE_NONE, 1, G_TYPE_UINT);
  signals[SIGNAL_REWOUND] = g_signal_new ("rewound", RW_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                          NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
}

static void
rw_session_init (RwSession *self)
{
  self->events = g_array_new (FALSE, FALSE, sizeof (RwEvent));
  g_array_set_clear_func (self->events, clear_event);
  self->dead = g_array_new (FALSE, TRUE, sizeof (guint8));
  self->landmarks = g_array_new (FALSE, FALSE, sizeof (guint));
  self->meters = g_array_new (FALSE, FALSE, sizeof (guint));
}

RwSession *
rw_session_new (RwSessionHeader *header)
{
  g_return_val_if_fail (header != NULL, NULL);

  RwSession *self = g_object_new (RW_TYPE_SESSION, NULL);

  self->header = header;
  return self;
}

const RwSessionHeader *
rw_session_get_header (RwSession *self)
{
  g_return_val_if_fail (RW_IS_SESSION (self), NULL);
  return self->header;
}

RwProfile *
rw_session_get_profile (RwSession *self)
{
  g_return_val_if_fail (RW_IS_SESSION (self), NULL);
  return self->header->profile;
}

const RwMeterFacts *
rw_session_find_meter (RwSession  *self,
                       const char *id)
{
  g_return_val_if_fail (RW_IS_SESSION (self), NULL);
  if (id == NULL)
    return NULL;
  for (guint i = self->meters->len; i-- > 0;)
    {
      const RwMeterFacts *facts
          = g_array_index (self->events, RwEvent, g_array_index (self->meters, guint, i)).meter;

      if (g_str_equal (facts->id, id))
        return facts;
    }
  for (guint i = 0; i < self->header->meters->len; i++)
    {
      const RwMeterFacts *facts = self->header->meters->pdata[i];

      if (g_str_equal (facts->id, id))
        return facts;
    }
  return NULL;
}

static void
work_out_dead (RwSession *self)
{
  if (self->dead_known)
    return;
  if (self->dead->len > 0)
    memset (self->dead->data, 0, self->dead->len);
  for (guint i = self->landmarks->len; i-- > 0;)
    {
      const guint index = g_array_index (self->landmarks, guint, i);
      const RwEvent *event = &g_array_index (self->events, RwEvent, index);

      if (event->type != RW_EVENT_RETRACT || g_array_index (self->dead, guint8, index))
        continue;

      const int target = rw_session_find (self, event->retract.n);

      if (target >= 0 && (guint) target < index)
        g_array_index (self->dead, guint8, target) = 1;
    }
  self->dead_known = TRUE;
}

/* A damaged number close to the end of the range must not use the range up for the events to come. */
static void
note_number (RwSession *self,
             guint      n)
{
  const gboolean absurd = n > absurd_n;

  self->unordered = self->unordered || absurd || n <= self->last_n;
  if (!absurd)
    self->last_n = MAX (self->last_n, n);
}

guint
rw_session_add (RwSession *self,
                RwEvent   *event)
{
  g_return_val_if_fail (RW_IS_SESSION (self), 0);

  const guint index = self->events->len;
  const guint8 none = 0;

  if (event->n == 0)
    event->n = self->last_n + 1;
  note_number (self, event->n);
  g_array_append_vals (self->events, event, 1);
  g_array_append_vals (self->dead, &none, 1);
  if (event->type != RW_EVENT_SAMPLE)
    g_array_append_vals (self->landmarks, &index, 1);
  if (event->type == RW_EVENT_RETRACT)
    self->dead_known = FALSE;
  if (event->type == RW_EVENT_METER)
    g_array_append_vals (self->meters, &index, 1);
  *event = (RwEvent){ 0 }; /* its text is ours now */
  g_signal_emit (self, signals[SIGNAL_ADDED], 0, index);
  return index;
}

guint
rw_session_get_n_events (RwSession *self)
{
  g_return_val_if_fail (RW_IS_SESSION (self), 0);
  return self->events->len;
}

const RwEvent *
rw_session_get_event (RwSession *self,
                      guint      index)
{
  g_return_val_if_fail (index < self->events->len, NULL);
  return &g_array_index (self->events, RwEvent, index);
}

/* Index of the first event whose number is n or more; the numbers rise. */
static guint
find_by_halves (RwSession *self,
                guint      n)
{
  /* With skipped lines an event stands below its number, never above it. */
  guint low = 0, high = MIN (self->events->len, n);

  while (low < high)
    {
      const guint middle = low + (high - low) / 2;

      if (g_array_index (self->events, RwEvent, middle).n < n)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

/* Index of the first event with number n, or the length. */
static guint
find_one_by_one (RwSession *self,
                 guint      n)
{
  guint i = 0;

  while (i < self->events->len && g_array_index (self->events, RwEvent, i).n != n)
    i++;
  return i;
}

int
rw_session_find (RwSession *self,
                 guint      n)
{
  g_return_val_if_fail (RW_IS_SESSION (self), -1);

  const guint found = self->unordered ? find_one_by_one (self, n) : find_by_halves (self, n);

  return found < self->events->len && g_array_index (self->events, RwEvent, found).n == n ? (int) found : -1;
}

gboolean
rw_session_is_live (RwSession *self,
                    guint      index)
{
  g_return_val_if_fail (index < self->dead->len, FALSE);
  work_out_dead (self);
  return !g_array_index (self->dead, guint8, index);
}

guint
rw_session_get_n_landmarks (RwSession *self)
{
  g_return_val_if_fail (RW_IS_SESSION (self), 0);
  return self->landmarks->len;
}

guint
rw_session_get_landmark (RwSession *self,
                         guint      i)
{
  g_return_val_if_fail (i < self->landmarks->len, 0);
  return g_array_index (self->landmarks, guint, i);
}

double
rw_session_get_end (RwSession *self)
{
  g_return_val_if_fail (RW_IS_SESSION (self), 0);
  return self->events->len > 0 ? g_array_index (self->events, RwEvent, self->events->len - 1).t : 0;
}

/* What a person did, as against what a meter or the program wrote. */
static gboolean
is_deed (const RwEvent *event)
{
  return event->type != RW_EVENT_SAMPLE && event->type != RW_EVENT_GAP
         && event->type != RW_EVENT_METER && event->type != RW_EVENT_RETRACT && event->type != RW_EVENT_UNKNOWN;
}

guint
rw_session_get_undo (RwSession *self)
{
  g_return_val_if_fail (RW_IS_SESSION (self), 0);
  for (guint i = self->landmarks->len; i-- > 0;)
    {
      const guint index = g_array_index (self->landmarks, guint, i);
      const RwEvent *event = rw_session_get_event (self, index);

      if (is_deed (event) && rw_session_is_live (self, index))
        return event->n;
    }
  return 0;
}

guint
rw_session_get_redo (RwSession *self)
{
  g_return_val_if_fail (RW_IS_SESSION (self), 0);
  for (guint i = self->landmarks->len; i-- > 0;)
    {
      const guint index = g_array_index (self->landmarks, guint, i);
      const RwEvent *event = rw_session_get_event (self, index);

      if (is_deed (event) && rw_session_is_live (self, index))
        return 0; /* something new was done, or nothing is undone past here */
      if (event->type != RW_EVENT_RETRACT || !rw_session_is_live (self, index))
        continue;

      const int target = rw_session_find (self, event->retract.n);

      if (target >= 0 && is_deed (rw_session_get_event (self, (guint) target)))
        return event->n;
    }
  return 0;
}

/* @indices rise. */
static void
forget_from (GArray *indices,
             guint   n_events)
{
  while (indices->len > 0 && g_array_index (indices, guint, indices->len - 1) >= n_events)
    g_array_set_size (indices, indices->len - 1);
}

void
rw_session_rewind (RwSession *self,
                   guint      n_events)
{
  g_return_if_fail (RW_IS_SESSION (self));
  if (n_events >= self->events->len)
    return;
  forget_from (self->landmarks, n_events);
  forget_from (self->meters, n_events);
  g_array_set_size (self->events, n_events);
  g_array_set_size (self->dead, n_events);
  self->dead_known = FALSE;
  self->last_n = 0;
  self->unordered = FALSE;
  for (guint i = 0; i < n_events; i++)
    note_number (self, g_array_index (self->events, RwEvent, i).n);
  g_signal_emit (self, signals[SIGNAL_REWOUND], 0, n_events);
}
