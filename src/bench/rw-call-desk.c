/* rw-call-desk.c: "call it first" at a job.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-call-desk.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-call-words.h"
#include "rw-job-annotations.h"

struct _RwCallDesk
{
  GObject       parent_instance;
  RwProjection *projection;
  RwJob        *job;      /* (nullable) */
  GArray       *beside;   /* of RwEvent: calls over a replay */
  RwCallBook   *book;     /* NULL without a job */
  gboolean      waiting;  /* for the reading that answers */
  gboolean      telling;  /* our words stand on the projector */
  guint         shown_n;  /* the answer of the round that is shown; 0: none */
  char         *hidden;   /* (nullable) the rail that we hid */
  guint         idle;     /* source: the awaited reading is there */
};

G_DEFINE_FINAL_TYPE (RwCallDesk, rw_call_desk, G_TYPE_OBJECT)

enum
{
  SIGNAL_CHANGED,
  SIGNAL_SAY,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static GArray *
new_beside (void)
{
  GArray *beside = g_array_new (FALSE, FALSE, sizeof (RwEvent));

  g_array_set_clear_func (beside, (GDestroyNotify) rw_event_clear);
  return beside;
}

static RwSession *
session_of (RwCallDesk *self)
{
  return rw_job_get_session (self->job);
}

/* What the rounds are judged by: of a replay the whole file once the class calls over it, so that going back and forth
 * changes no score. */
static RwSession *
judged_by (RwCallDesk *self)
{
  return self->beside->len > 0 ? rw_replay_get_source (rw_job_get_replay (self->job)) : session_of (self);
}

static void
say (RwCallDesk *self,
     const char *text)
{
  g_signal_emit (self, signals[SIGNAL_SAY], 0, text);
}

/* --- the class ------------------------------------------------------------------------------------ */

static void
hide (RwCallDesk *self,
      const char *rail)
{
  if (self->hidden != NULL)
    rw_projection_hide_rail (self->projection, self->hidden, FALSE);
  g_free (self->hidden);
  self->hidden = g_strdup (rail);
  if (rail != NULL)
    rw_projection_hide_rail (self->projection, rail, TRUE);
}

static void
tell (RwCallDesk  *self,
      RwCallWords *words,
      gboolean     alone)
{
  rw_projection_show_text (self->projection, words->title, (const char *const *) words->lines,
                           (const char *const *) words->cells, words->n_columns, alone);
  self->telling = TRUE;
}

static void
tell_what_is (RwCallDesk *self)
{
  const RwCallRound *open = rw_call_desk_get_open (self), *shown = rw_call_desk_get_shown (self);
  g_auto (RwCallWords) words = { 0 };

  if (open != NULL)
    {
      rw_call_words_ask (&words, open, rw_job_get_profile (self->job));
      tell (self, &words, FALSE);
    }
  else if (shown != NULL)
    {
      rw_call_words_reveal (&words, shown, judged_by (self));
      tell (self, &words, TRUE);
    }
  else if (self->telling)
    {
      rw_projection_clear_text (self->projection);
      self->telling = FALSE;
    }
}

/* --- the rounds ----------------------------------------------------------------------------------- */

static void
look_again (RwCallDesk *self)
{
  const RwCallRound *open;

  g_clear_pointer (&self->book, rw_call_book_unref);
  if (self->job != NULL)
    self->book = rw_call_book_new (judged_by (self), self->beside->len > 0 ? self->beside : NULL);
  open = rw_call_desk_get_open (self);
  if (open != NULL)
    self->shown_n = 0;
  self->waiting = self->waiting && open != NULL;
  if (open == NULL || g_strcmp0 (open->rail, self->hidden) != 0)
    hide (self, open != NULL ? open->rail : NULL);
  if (self->job != NULL)
    tell_what_is (self);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

/* Beside the file, to be there when it is opened again. When that fails the call lasts as long as the replay is open. */
static void
keep_beside (RwCallDesk       *self,
             const RwEvent    *event)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();
  g_autoptr (GError) error = NULL;

  if (rw_annotations_add_call (rw_job_get_annotations (self->job), event->t, event->n, &event->call, now, &error) == 0)
    say (self, error->message);
}

static void
write_down (RwCallDesk       *self,
            const RwCallSaid *said)
{
  RwSession *session = session_of (self);
  RwEvent event = rw_event_make_call (rw_job_get_now (self->job), said);

  if (rw_job_can_write (self->job))
    {
      rw_job_add (self->job, &event); /* "added" looks again */
      return;
    }

  const guint n_events = rw_session_get_n_events (session);

  event.n = n_events > 0 ? rw_session_get_event (session, n_events - 1)->n : 0;
  keep_beside (self, &event);
  g_array_append_val (self->beside, event);
  look_again (self);
}

void
rw_call_desk_ask (RwCallDesk *self,
                  const char *rail,
                  RwPlace     place)
{
  g_return_if_fail (RW_IS_CALL_DESK (self) && rail != NULL);
  if (self->job == NULL)
    return;

  const RwEvent *last = rw_call_last_reading (session_of (self), rail, place, RW_KIND_DC);
  const RwCallSaid said = rw_call_said_ask (rail, place, RW_KIND_DC, last != NULL ? last->reading.value : (double) NAN);

  write_down (self, &said);
}

void
rw_call_desk_call (RwCallDesk *self,
                   const char *by,
                   double      value,
                   double      give)
{
  g_return_if_fail (RW_IS_CALL_DESK (self));
  if (rw_call_desk_get_open (self) == NULL)
    return;

  RwCallSaid said = rw_call_said_value (by, value, give);

  write_down (self, &said);
  rw_call_said_clear (&said);
}

void
rw_call_desk_count (RwCallDesk *self,
                    guint       lower,
                    guint       same,
                    guint       higher)
{
  const RwCallSaid said = rw_call_said_hands (lower, same, higher);

  g_return_if_fail (RW_IS_CALL_DESK (self));
  if (rw_call_desk_get_open (self) != NULL)
    write_down (self, &said);
}

void
rw_call_desk_drop (RwCallDesk *self)
{
  const RwCallSaid said = rw_call_said_drop ();

  g_return_if_fail (RW_IS_CALL_DESK (self));
  if (rw_call_desk_get_open (self) != NULL)
    write_down (self, &said);
}

void
rw_call_desk_clear (RwCallDesk *self)
{
  g_return_if_fail (RW_IS_CALL_DESK (self));
  self->shown_n = 0;
  if (self->job != NULL && rw_call_desk_get_open (self) == NULL)
    tell_what_is (self);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

void
rw_call_desk_tell (RwCallDesk *self)
{
  g_return_if_fail (RW_IS_CALL_DESK (self));
  if (self->hidden != NULL)
    rw_projection_hide_rail (self->projection, self->hidden, TRUE);
  if (self->job != NULL && (rw_call_desk_get_open (self) != NULL || rw_call_desk_get_shown (self) != NULL))
    tell_what_is (self);
}

/* --- the reveal ----------------------------------------------------------------------------------- */

static void
reveal (RwCallDesk *self,
        guint       n)
{
  const RwCallSaid said = rw_call_said_reveal (n);

  self->waiting = FALSE;
  self->shown_n = n;
  write_down (self, &said);
}

/* The next reading of the round's spot that the file holds; NULL: it holds none. */
static const RwEvent *
next_in_file (RwCallDesk        *self,
              const RwCallRound *round)
{
  RwSession *source = rw_replay_get_source (rw_job_get_replay (self->job));

  for (guint i = 0; i < rw_session_get_n_landmarks (source); i++)
    {
      const guint index = rw_session_get_landmark (source, i);
      const RwEvent *event = rw_session_get_event (source, index);

      if (event->n > round->n && event->type == RW_EVENT_READING && event->reading.rail == round->rail
          && event->reading.place == round->place && event->reading.kind == round->kind
          && isfinite (event->reading.value) && rw_session_is_live (source, index))
        return event;
    }
  return NULL;
}

static void
reveal_in_replay (RwCallDesk        *self,
                  const RwCallRound *round)
{
  RwReplay *replay = rw_job_get_replay (self->job);
  const RwEvent *answer = next_in_file (self, round);

  if (answer == NULL)
    {
      say (self, _ ("This session has no later reading of that rail there: give the round up, or ask about another."));
      return;
    }

  const guint n = answer->n;

  rw_replay_set_playing (replay, FALSE);
  if (rw_session_find (session_of (self), n) < 0)
    rw_replay_go_to (replay, (guint) rw_session_find (rw_replay_get_source (replay), n) + 1, answer->t);
  reveal (self, n);
}

void
rw_call_desk_reveal (RwCallDesk *self)
{
  const RwCallRound *round = rw_call_desk_get_open (self);

  g_return_if_fail (RW_IS_CALL_DESK (self));
  if (round == NULL)
    {
      say (self, _ ("No round of calls is open: ask first (Ctrl+K)."));
      return;
    }
  if (rw_job_get_replay (self->job) != NULL)
    {
      reveal_in_replay (self, round);
      return;
    }

  const guint n = rw_call_round_find_answer (round, session_of (self));

  if (n > 0)
    {
      reveal (self, n);
      return;
    }
  self->waiting = TRUE;
  rw_job_set_spot (self->job, round->rail, round->place, round->kind);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

/* --- following the session ------------------------------------------------------------------------ */

/* Nothing is added while others are still being told of the reading. */
static gboolean
answered_cb (gpointer data)
{
  RwCallDesk *self = data;
  const RwCallRound *open = rw_call_desk_get_open (self);
  const guint n = open != NULL && self->waiting ? rw_call_round_find_answer (open, session_of (self)) : 0;

  self->idle = 0;
  if (n > 0)
    reveal (self, n);
  return G_SOURCE_REMOVE;
}

static void
added_cb (RwCallDesk *self,
          guint       index)
{
  const RwEventType type = rw_session_get_event (session_of (self), index)->type;

  if (self->beside->len > 0)
    return; /* the file itself does not change */

  if (type == RW_EVENT_CALL || type == RW_EVENT_RETRACT)
    look_again (self);
  if (type == RW_EVENT_READING && self->waiting && self->idle == 0)
    self->idle = g_idle_add (answered_cb, self);
}

static void
rewound_cb (RwCallDesk *self)
{
  if (self->beside->len == 0)
    look_again (self);
}

/* What was called over this replay before. A round that was left open then is given up: it must not hide a rail from
 * whoever opens the file next. */
static void
load_beside (RwCallDesk *self)
{
  RwReplay *replay = self->job != NULL ? rw_job_get_replay (self->job) : NULL;
  const RwCallSaid said = rw_call_said_drop ();

  g_clear_pointer (&self->beside, g_array_unref);
  self->beside = replay != NULL && !rw_job_began_class (self->job)
                     ? rw_annotations_dup_calls (rw_job_get_annotations (self->job))
                     : new_beside ();
  if (self->beside->len == 0)
    return;

  g_autoptr (RwCallBook) book = rw_call_book_new (rw_replay_get_source (replay), self->beside);
  RwEvent drop = rw_event_make_call (rw_job_get_now (self->job), &said);

  if (rw_call_book_get_open (book) != NULL)
    g_array_append_val (self->beside, drop);
}

void
rw_call_desk_set_job (RwCallDesk *self,
                      RwJob      *job)
{
  g_return_if_fail (RW_IS_CALL_DESK (self));
  if (self->job == job)
    return;
  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (session_of (self), self);
  g_clear_handle_id (&self->idle, g_source_remove);
  hide (self, NULL);
  self->waiting = FALSE;
  self->telling = FALSE;
  self->shown_n = 0;
  g_set_object (&self->job, job);
  load_beside (self);
  if (job != NULL)
    {
      g_signal_connect_object (session_of (self), "added", G_CALLBACK (added_cb), self, G_CONNECT_SWAPPED);
      g_signal_connect_object (session_of (self), "rewound", G_CALLBACK (rewound_cb), self, G_CONNECT_SWAPPED);
    }
  look_again (self);
}

RwJob *
rw_call_desk_get_job (RwCallDesk *self)
{
  return self->job;
}

RwCallBook *
rw_call_desk_get_book (RwCallDesk *self)
{
  return self->book;
}

const RwCallRound *
rw_call_desk_get_open (RwCallDesk *self)
{
  return self->book != NULL ? rw_call_book_get_open (self->book) : NULL;
}

const RwCallRound *
rw_call_desk_get_shown (RwCallDesk *self)
{
  const RwCallRound *last = self->book != NULL ? rw_call_book_get_last (self->book) : NULL;

  return last != NULL && last->answer_n == self->shown_n ? last : NULL;
}

gboolean
rw_call_desk_get_waiting (RwCallDesk *self)
{
  return self->waiting;
}

GPtrArray *
rw_call_desk_list_standings (RwCallDesk *self)
{
  return self->book != NULL ? rw_call_standings (self->book, judged_by (self)) : g_ptr_array_new ();
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_call_desk_dispose (GObject *object)
{
  RwCallDesk *self = RW_CALL_DESK (object);

  g_clear_handle_id (&self->idle, g_source_remove);
  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (session_of (self), self);
  g_clear_object (&self->job);
  g_clear_object (&self->projection);
  G_OBJECT_CLASS (rw_call_desk_parent_class)->dispose (object);
}

static void
rw_call_desk_finalize (GObject *object)
{
  RwCallDesk *self = RW_CALL_DESK (object);

  g_array_unref (self->beside);
  g_free (self->hidden);
  g_clear_pointer (&self->book, rw_call_book_unref);
  G_OBJECT_CLASS (rw_call_desk_parent_class)->finalize (object);
}

static void
rw_call_desk_class_init (RwCallDeskClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_call_desk_dispose;
  G_OBJECT_CLASS (klass)->finalize = rw_call_desk_finalize;
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", RW_TYPE_CALL_DESK, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);
  signals[SIGNAL_SAY] = g_signal_new ("say", RW_TYPE_CALL_DESK, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                      G_TYPE_STRING);
}

static void
rw_call_desk_init (RwCallDesk *self)
{
  self->beside = new_beside ();
}

RwCallDesk *
rw_call_desk_new (RwProjection *projection)
{
  RwCallDesk *self = g_object_new (RW_TYPE_CALL_DESK, NULL);

  self->projection = g_object_ref (projection);
  return self;
}
