/* rw-class-session.c: a copy of a session that holds only what a class may see.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Invariant after a catch-up: the copy holds exactly the public ones of the source's first n_seen events, in order;
 * origins[i] is where the i-th of them stands in the source. A rewind of the source meanwhile is remembered in n_valid:
 * how many of the n_seen events still are what they were.
 */
#include "config.h"

#include "rw-class-session.h"

#include <glib/gi18n-lib.h>

#include "rw-live.h"

struct _RwClassSession
{
  RwSession  *source;
  RwSession  *copy;
  GHashTable *hidden;  /* set of interned ids */
  gboolean    rehide;  /* the set changed since the last catch-up */
  GArray     *origins; /* of guint */
  guint       n_seen;
  guint       n_valid;
};

static void
rewound_cb (RwClassSession *self,
            guint           n_events)
{
  self->n_valid = MIN (self->n_valid, n_events);
}

RwClassSession *
rw_class_session_new (RwSession *source)
{
  RwClassSession *self = g_new0 (RwClassSession, 1);

  self->source = g_object_ref (source);
  self->copy = rw_session_new (rw_session_header_copy (rw_session_get_header (source)));
  self->hidden = g_hash_table_new (NULL, NULL);
  self->origins = g_array_new (FALSE, FALSE, sizeof (guint));
  g_signal_connect_swapped (source, "rewound", G_CALLBACK (rewound_cb), self);
  return self;
}

void
rw_class_session_free (RwClassSession *self)
{
  g_signal_handlers_disconnect_by_data (self->source, self);
  g_object_unref (self->source);
  g_object_unref (self->copy);
  g_hash_table_unref (self->hidden);
  g_array_unref (self->origins);
  g_free (self);
}

RwSession *
rw_class_session_get_session (RwClassSession *self)
{
  return self->copy;
}

void
rw_class_session_set_hidden (RwClassSession *self,
                             GHashTable     *hidden)
{
  GHashTableIter iter;
  gpointer id;
  gboolean same = g_hash_table_size (hidden) == g_hash_table_size (self->hidden);

  g_hash_table_iter_init (&iter, hidden);
  while (g_hash_table_iter_next (&iter, &id, NULL))
    same = same && g_hash_table_contains (self->hidden, g_intern_string (id));
  if (same)
    return;
  g_hash_table_remove_all (self->hidden);
  g_hash_table_iter_init (&iter, hidden);
  while (g_hash_table_iter_next (&iter, &id, NULL))
    g_hash_table_add (self->hidden, (gpointer) g_intern_string (id));
  self->rehide = TRUE;
}

/* --- what is public ------------------------------------------------------------------------------- */

static const gboolean harmless[RW_N_EVENT_TYPES] = {
  [RW_EVENT_SETUP] = TRUE, [RW_EVENT_TRIM] = TRUE,    [RW_EVENT_REPAIR] = TRUE,
  [RW_EVENT_GAP] = TRUE,   [RW_EVENT_RETRACT] = TRUE, [RW_EVENT_METER] = TRUE,
};

static gboolean
is_public (RwClassSession *self,
           const RwEvent  *event)
{
  if (event->type == RW_EVENT_READING || event->type == RW_EVENT_SAMPLE)
    return event->reading.rail != NULL && !g_str_equal (event->reading.rail, RW_LIVE_SOMEWHERE)
           && !g_hash_table_contains (self->hidden, event->reading.rail);
  if (event->type == RW_EVENT_MARK)
    return g_strcmp0 (event->words.text, _ ("reset seen")) == 0;
  return (guint) event->type < RW_N_EVENT_TYPES && harmless[event->type];
}

/* Takes what is private out of a public event. */
static void
make_harmless (RwEvent *event)
{
  g_clear_pointer (&event->line, g_free);
  if (event->type == RW_EVENT_REPAIR)
    event->repair.cause = g_intern_string (_ ("repair"));
  else if (event->type == RW_EVENT_GAP)
    {
      g_free (event->gap.why);
      event->gap.why = g_strdup ("");
    }
}

/* --- catching up ---------------------------------------------------------------------------------- */

/* Drops what stems from the source's events from @n on. TRUE: anything but samples went. */
static gboolean
drop_from (RwClassSession *self,
           guint           n)
{
  const guint landmarks = rw_session_get_n_landmarks (self->copy);
  guint keep = self->origins->len;

  while (keep > 0 && g_array_index (self->origins, guint, keep - 1) >= n)
    keep--;
  g_array_set_size (self->origins, keep);
  rw_session_rewind (self->copy, keep);
  self->n_seen = MIN (self->n_seen, n);
  return rw_session_get_n_landmarks (self->copy) != landmarks;
}

static void
take (RwClassSession *self,
      guint           index)
{
  const RwEvent *event = rw_session_get_event (self->source, index);

  if (!is_public (self, event))
    return;

  RwEvent copy = rw_event_copy (event);

  make_harmless (&copy);
  g_array_append_val (self->origins, index);
  rw_session_add (self->copy, &copy);
}

gboolean
rw_class_session_catch_up (RwClassSession *self)
{
  const guint n = rw_session_get_n_events (self->source);
  gboolean changed = FALSE;

  if (self->rehide || self->n_valid < self->n_seen)
    changed = drop_from (self, self->rehide ? 0 : self->n_valid);

  const guint landmarks = rw_session_get_n_landmarks (self->copy);

  for (guint i = self->n_seen; i < n; i++)
    take (self, i);
  self->n_seen = self->n_valid = n;
  self->rehide = FALSE;
  return changed || rw_session_get_n_landmarks (self->copy) != landmarks;
}
