/* rw-session.c: everything that happened on one job, in order.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Events stand by value in one array (a sample costs no allocation). Beside it lists of indices:
 *  landmarks    all events but samples
 *  meters       those that tell of a meter
 *  retracts     those that take something back
 *  dead         the set of those that a live retract names; worked out when asked for, in one pass from the
 *               end, since only later events can retract an earlier one
 * Numbers rise in every file we write. A damaged digit can break that; then events are looked for one by one.
 *
 * A session that shows part of another shares its arrays and has ends of its own in them, so that moving about in
 * a million events costs a few searches by halves.
 */
#include "config.h"

#include "rw-session.h"

/* Rising indices of events, of which the first n have happened. */
typedef struct
{
  GArray *indices; /* of guint */
  guint   n;
} List;

struct _RwSession
{
  GObject          parent_instance;
  RwSessionHeader *header;
  RwSession       *source;    /* whose arrays these are; NULL: our own */
  GArray          *events;    /* of RwEvent */
  List             landmarks;
  List             meters;
  List             retracts;
  guint            n_events;  /* of events, that have happened */
  guint            last_n;    /* the highest number so far */
  gboolean         unordered; /* numbers do not rise all the way */
  GHashTable      *dead;      /* set of indices */
  gboolean         dead_known; /* dead is true of what the events say */
};

static const guint absurd_n = 3000000000U;

/* A replay that moves on by no more than so many tells of each event; of a longer jump it tells once. */
static const guint most_told = 64;

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
  g_clear_pointer (&self->landmarks.indices, g_array_unref);
  g_clear_pointer (&self->meters.indices, g_array_unref);
  g_clear_pointer (&self->retracts.indices, g_array_unref);
  g_clear_pointer (&self->dead, g_hash_table_unref);
  g_clear_object (&self->source);
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
  self->dead = g_hash_table_new (g_direct_hash, g_direct_equal);
}

/* --- lists of indices ----------------------------------------------------------------------------- */

static inline guint
list_at (const List *list,
         guint       i)
{
  return g_array_index (list->indices, guint, i);
}

static void
list_add (List *list,
          guint index)
{
  g_array_append_val (list->indices, index);
  list->n++;
}

/* Those below @n_events have happened. */
static void
list_move (List *list,
           guint n_events)
{
  guint low = 0, high = list->indices->len;

  while (low < high)
    {
      const guint middle = low + (high - low) / 2;

      if (list_at (list, middle) < n_events)
        low = middle + 1;
      else
        high = middle;
    }
  list->n = low;
}

static List
list_share (const List *list)
{
  return (List){ g_array_ref (list->indices), 0 };
}

static List
list_make (void)
{
  return (List){ g_array_new (FALSE, FALSE, sizeof (guint)), 0 };
}

/* --- making --------------------------------------------------------------------------------------- */

RwSession *
rw_session_new (RwSessionHeader *header)
{
  g_return_val_if_fail (header != NULL, NULL);

  RwSession *self = g_object_new (RW_TYPE_SESSION, NULL);

  self->header = header;
  self->events = g_array_new (FALSE, FALSE, sizeof (RwEvent));
  g_array_set_clear_func (self->events, clear_event);
  self->landmarks = list_make ();
  self->meters = list_make ();
  self->retracts = list_make ();
  return self;
}

RwSession *
rw_session_new_part (RwSession *source)
{
  g_return_val_if_fail (RW_IS_SESSION (source), NULL);

  RwSession *self = g_object_new (RW_TYPE_SESSION, NULL);

  self->source = g_object_ref (source);
  self->header = rw_session_header_copy (source->header);
  self->events = g_array_ref (source->events);
  self->landmarks = list_share (&source->landmarks);
  self->meters = list_share (&source->meters);
  self->retracts = list_share (&source->retracts);
  self->unordered = source->unordered;
  return self;
}

RwSession *
rw_session_get_source (RwSession *self)
{
  g_return_val_if_fail (RW_IS_SESSION (self), NULL);
  return self->source;
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

static inline const RwEvent *
event_at (const RwSession *self,
          guint            index)
{
  return &g_array_index (self->events, RwEvent, index);
}

const RwMeterFacts *
rw_session_find_meter (RwSession  *self,
                       const char *id)
{
  g_return_val_if_fail (RW_IS_SESSION (self), NULL);
  if (id == NULL)
    return NULL;
  for (guint i = self->meters.n; i-- > 0;)
    {
      const RwMeterFacts *facts = event_at (self, list_at (&self->meters, i))->meter;

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
  g_hash_table_remove_all (self->dead);
  for (guint i = self->retracts.n; i-- > 0;)
    {
      const guint index = list_at (&self->retracts, i);

      if (g_hash_table_contains (self->dead, GUINT_TO_POINTER (index)))
        continue;

      const int target = rw_session_find (self, event_at (self, index)->retract.n);

      if (target >= 0 && (guint) target < index)
        g_hash_table_add (self->dead, GINT_TO_POINTER (target));
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
  g_return_val_if_fail (RW_IS_SESSION (self) && self->source == NULL, 0);

  const guint index = self->n_events++;

  if (event->n == 0)
    event->n = self->last_n + 1;
  note_number (self, event->n);
  g_array_append_vals (self->events, event, 1);
  if (event->type != RW_EVENT_SAMPLE)
    list_add (&self->landmarks, index);
  if (event->type == RW_EVENT_METER)
    list_add (&self->meters, index);
  if (event->type == RW_EVENT_RETRACT)
    {
      list_add (&self->retracts, index);
      self->dead_known = FALSE;
    }
  *event = (RwEvent){ 0 }; /* its text is ours now */
  g_signal_emit (self, signals[SIGNAL_ADDED], 0, index);
  return index;
}

guint
rw_session_get_n_events (RwSession *self)
{
  g_return_val_if_fail (RW_IS_SESSION (self), 0);
  return self->n_events;
}

const RwEvent *
rw_session_get_event (RwSession *self,
                      guint      index)
{
  g_return_val_if_fail (index < self->n_events, NULL);
  return event_at (self, index);
}

/* Index of the first event whose number is n or more; the numbers rise. */
static guint
find_by_halves (RwSession *self,
                guint      n)
{
  /* With skipped lines an event stands below its number, never above it. */
  guint low = 0, high = MIN (self->n_events, n);

  while (low < high)
    {
      const guint middle = low + (high - low) / 2;

      if (event_at (self, middle)->n < n)
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

  while (i < self->n_events && event_at (self, i)->n != n)
    i++;
  return i;
}

int
rw_session_find (RwSession *self,
                 guint      n)
{
  g_return_val_if_fail (RW_IS_SESSION (self), -1);

  const guint found = self->unordered ? find_one_by_one (self, n) : find_by_halves (self, n);

  return found < self->n_events && event_at (self, found)->n == n ? (int) found : -1;
}

gboolean
rw_session_is_live (RwSession *self,
                    guint      index)
{
  g_return_val_if_fail (index < self->n_events, FALSE);
  if (self->retracts.n == 0)
    return TRUE;
  work_out_dead (self);
  return !g_hash_table_contains (self->dead, GUINT_TO_POINTER (index));
}

guint
rw_session_get_n_landmarks (RwSession *self)
{
  g_return_val_if_fail (RW_IS_SESSION (self), 0);
  return self->landmarks.n;
}

guint
rw_session_get_landmark (RwSession *self,
                         guint      i)
{
  g_return_val_if_fail (i < self->landmarks.n, 0);
  return list_at (&self->landmarks, i);
}

double
rw_session_get_end (RwSession *self)
{
  g_return_val_if_fail (RW_IS_SESSION (self), 0);
  return self->n_events > 0 ? event_at (self, self->n_events - 1)->t : 0;
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
  for (guint i = self->landmarks.n; i-- > 0;)
    {
      const guint index = list_at (&self->landmarks, i);
      const RwEvent *event = event_at (self, index);

      if (is_deed (event) && rw_session_is_live (self, index))
        return event->n;
    }
  return 0;
}

guint
rw_session_get_redo (RwSession *self)
{
  g_return_val_if_fail (RW_IS_SESSION (self), 0);
  for (guint i = self->landmarks.n; i-- > 0;)
    {
      const guint index = list_at (&self->landmarks, i);
      const RwEvent *event = event_at (self, index);

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

/* --- going back, and about in another session ------------------------------------------------------- */

static void
move_lists (RwSession *self,
            guint      n_events)
{
  const guint n_retracts = self->retracts.n;

  list_move (&self->landmarks, n_events);
  list_move (&self->meters, n_events);
  list_move (&self->retracts, n_events);
  self->n_events = n_events;
  self->dead_known = self->dead_known && self->retracts.n == n_retracts;
}

/* Ours alone: what is cut off is gone. */
static void
forget_rest (RwSession *self)
{
  g_array_set_size (self->events, self->n_events);
  g_array_set_size (self->landmarks.indices, self->landmarks.n);
  g_array_set_size (self->meters.indices, self->meters.n);
  g_array_set_size (self->retracts.indices, self->retracts.n);
  self->last_n = 0;
  self->unordered = FALSE;
  for (guint i = 0; i < self->n_events; i++)
    note_number (self, event_at (self, i)->n);
}

void
rw_session_rewind (RwSession *self,
                   guint      n_events)
{
  g_return_if_fail (RW_IS_SESSION (self));
  if (n_events >= self->n_events)
    return;
  move_lists (self, n_events);
  if (self->source == NULL)
    forget_rest (self);
  g_signal_emit (self, signals[SIGNAL_REWOUND], 0, n_events);
}

void
rw_session_advance (RwSession *self,
                    guint      n_events)
{
  g_return_if_fail (RW_IS_SESSION (self) && self->source != NULL);

  const guint to = MIN (n_events, self->source->n_events);

  if (to <= self->n_events)
    return;
  if (to - self->n_events > most_told)
    {
      move_lists (self, to);
      g_signal_emit (self, signals[SIGNAL_REWOUND], 0, to);
      return;
    }
  while (self->n_events < to)
    {
      move_lists (self, self->n_events + 1);
      g_signal_emit (self, signals[SIGNAL_ADDED], 0, self->n_events - 1);
    }
}
