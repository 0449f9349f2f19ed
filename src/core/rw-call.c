/* rw-call.c: the rounds of calls in a session.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-call.h"

#include <math.h>

struct _RwCallBook
{
  GPtrArray *rounds; /* of RwCallRound */
};

static void
call_free (gpointer data)
{
  RwCall *call = data;

  g_free (call->by);
  g_free (call);
}

static void
round_free (gpointer data)
{
  RwCallRound *round = data;

  g_ptr_array_unref (round->calls);
  g_free (round);
}

/* --- readings of a spot ------------------------------------------------------------------------- */

static gboolean
is_of_spot (const RwEvent *event,
            const char    *rail,
            RwPlace        place,
            RwKind         kind)
{
  return event->type == RW_EVENT_READING && event->reading.rail == rail && event->reading.place == place
         && event->reading.kind == kind && isfinite (event->reading.value);
}

/* The last live one whose number lies between @n_after and @n_before, both left out. */
static const RwEvent *
last_of_spot (RwSession  *session,
              guint       n_before,
              guint       n_after,
              const char *rail,
              RwPlace     place,
              RwKind      kind)
{
  for (guint i = rw_session_get_n_landmarks (session); i-- > 0;)
    {
      const guint index = rw_session_get_landmark (session, i);
      const RwEvent *event = rw_session_get_event (session, index);

      if (event->n <= n_after)
        return NULL;
      if (event->n < n_before && is_of_spot (event, rail, place, kind) && rw_session_is_live (session, index))
        return event;
    }
  return NULL;
}

const RwEvent *
rw_call_last_reading (RwSession  *session,
                      const char *rail,
                      RwPlace     place,
                      RwKind      kind)
{
  return last_of_spot (session, G_MAXUINT, 0, g_intern_string (rail), place, kind);
}

guint
rw_call_round_find_answer (const RwCallRound *self,
                           RwSession         *session)
{
  const RwEvent *event = last_of_spot (session, G_MAXUINT, self->n, self->rail, self->place, self->kind);

  return event != NULL ? event->n : 0;
}

static double
own_u (RwSession     *session,
       const RwEvent *event)
{
  return rw_meter_facts_u_own (rw_session_find_meter (session, event->reading.meter), &event->reading);
}

/* --- the events, one after the other -------------------------------------------------------------- */

static RwCallRound *
open_round (const RwCallBook *self)
{
  RwCallRound *last = self->rounds->len > 0 ? self->rounds->pdata[self->rounds->len - 1] : NULL;

  return last != NULL && last->end == RW_CALL_OPEN ? last : NULL;
}

static void
take_ask (RwCallBook    *self,
          RwSession     *session,
          const RwEvent *event,
          guint          n_before)
{
  RwCallRound *former = open_round (self);
  RwCallRound *round = g_new0 (RwCallRound, 1);
  const RwEvent *shown = last_of_spot (session, n_before, 0, event->call.ask.rail, event->call.ask.place,
                                       event->call.ask.kind);

  if (former != NULL)
    former->end = RW_CALL_DROPPED;
  round->n = event->n;
  round->t = event->t;
  round->rail = event->call.ask.rail;
  round->place = event->call.ask.place;
  round->kind = event->call.ask.kind;
  round->was = event->call.ask.was;
  round->was_u = shown != NULL ? own_u (session, shown) : (double) NAN;
  round->calls = g_ptr_array_new_with_free_func (call_free);
  round->answer = round->answer_u = NAN;
  g_ptr_array_add (self->rounds, round);
}

static gboolean
same_caller (const char *a,
             const char *b)
{
  g_autofree char *folded_a = g_utf8_casefold (a, -1);
  g_autofree char *folded_b = g_utf8_casefold (b, -1);

  return g_str_equal (folded_a, folded_b);
}

static void
take_value (RwCallRound      *round,
            const RwCallSaid *said)
{
  g_autofree char *by = g_strstrip (g_strdup (said->value.by));
  RwCall *call = NULL;

  for (guint i = 0; i < round->calls->len && call == NULL; i++)
    if (same_caller (((RwCall *) round->calls->pdata[i])->by, by))
      call = round->calls->pdata[i];
  if (call == NULL)
    {
      call = g_new0 (RwCall, 1);
      g_ptr_array_add (round->calls, call);
    }
  g_free (call->by);
  call->by = g_steal_pointer (&by);
  call->value = said->value.value;
  call->give = said->value.give;
}

static void
take_reveal (RwCallRound *round,
             RwSession   *session,
             guint        n)
{
  const int index = rw_session_find (session, n);
  const RwEvent *event = index >= 0 ? rw_session_get_event (session, (guint) index) : NULL;

  round->end = RW_CALL_REVEALED;
  if (event == NULL || event->n <= round->n || !rw_session_is_live (session, (guint) index)
      || !is_of_spot (event, round->rail, round->place, round->kind))
    return;
  round->answer_n = n;
  round->answer = event->reading.value;
  round->answer_u = own_u (session, event);
}

/* @n_before: readings with smaller numbers had happened. */
static void
take (RwCallBook    *self,
      RwSession     *session,
      const RwEvent *event,
      guint          n_before)
{
  RwCallRound *round = open_round (self);

  if (event->call.form == RW_CALL_ASK)
    take_ask (self, session, event, n_before);
  if (round == NULL)
    return;
  switch (event->call.form)
    {
    case RW_CALL_VALUE:
      take_value (round, &event->call);
      break;
    case RW_CALL_HANDS:
      round->has_hands = TRUE;
      for (guint i = 0; i < RW_N_CALL_SIDES; i++)
        round->hands[i] = event->call.hands[i];
      break;
    case RW_CALL_REVEAL:
      take_reveal (round, session, event->call.reveal);
      break;
    case RW_CALL_DROP:
      round->end = RW_CALL_DROPPED;
      break;
    case RW_CALL_ASK:
    default:
      break;
    }
}

static void
take_beside (RwCallBook *self,
             RwSession  *session,
             GArray     *beside)
{
  for (guint i = 0; i < beside->len; i++)
    {
      const RwEvent *event = &g_array_index (beside, RwEvent, i);

      if (event->type == RW_EVENT_CALL)
        take (self, session, event, event->n + 1);
    }
}

static void
take_own (RwCallBook *self,
          RwSession  *session)
{
  for (guint i = 0; i < rw_session_get_n_landmarks (session); i++)
    {
      const guint index = rw_session_get_landmark (session, i);
      const RwEvent *event = rw_session_get_event (session, index);

      if (event->type == RW_EVENT_CALL && rw_session_is_live (session, index))
        take (self, session, event, event->n);
    }
}

RwCallBook *
rw_call_book_new (RwSession *session,
                  GArray    *beside)
{
  RwCallBook *self = g_atomic_rc_box_new0 (RwCallBook);

  self->rounds = g_ptr_array_new_with_free_func (round_free);
  if (beside != NULL)
    take_beside (self, session, beside);
  else
    take_own (self, session);
  return self;
}

RwCallBook *
rw_call_book_ref (RwCallBook *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
book_clear (gpointer data)
{
  g_ptr_array_unref (((RwCallBook *) data)->rounds);
}

void
rw_call_book_unref (RwCallBook *self)
{
  g_atomic_rc_box_release_full (self, book_clear);
}

guint
rw_call_book_get_n_rounds (const RwCallBook *self)
{
  return self->rounds->len;
}

const RwCallRound *
rw_call_book_get_round (const RwCallBook *self,
                        guint             i)
{
  g_return_val_if_fail (i < self->rounds->len, NULL);
  return self->rounds->pdata[i];
}

const RwCallRound *
rw_call_book_get_open (const RwCallBook *self)
{
  return open_round (self);
}

const RwCallRound *
rw_call_book_get_last (const RwCallBook *self)
{
  for (guint i = self->rounds->len; i-- > 0;)
    {
      const RwCallRound *round = self->rounds->pdata[i];

      if (round->answer_n > 0)
        return round;
    }
  return NULL;
}
