/* rw-poll-talk.c: asks a meter the same thing over and over.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-poll-talk.h"

static const gint64 quiet_us = 50 * 1000;
static const gint64 pace_us = 250 * 1000;
static const gint64 gap_us = 150 * 1000; /* no answer has a longer one in it */
static const gint64 longest_wait_us = 4 * G_USEC_PER_SEC;

/* After so many questions in vain the meter was off, not slow. */
static const guint slow_tries = 3;

typedef enum
{
  STATE_QUIET,
  STATE_ASK,
  STATE_AWAIT
} State;

typedef struct
{
  RwTalk   parent;
  char    *question;
  State    state;
  gint64   due_us;   /* when the state ends by itself */
  gint64   wait_us;  /* the first wait for a value */
  gint64   first_us; /* when the value under way was first asked for */
  gint64   asked_us; /* when it was asked for last */
  guint    tries;    /* how often the value under way was asked for */
  gboolean heard;    /* bytes came since it was asked for last */
} RwPollTalk;

static void
go (RwPollTalk *self,
    State       state,
    gint64      due_us)
{
  self->state = state;
  self->due_us = due_us;
}

static void
poll_restart (RwTalk *talk,
              gint64  now_us)
{
  RwPollTalk *self = (RwPollTalk *) talk;

  self->tries = 0;
  go (self, STATE_QUIET, now_us + quiet_us);
}

static const char *
ask (RwPollTalk *self,
     gint64      now_us)
{
  const gint64 wait_us = self->wait_us << MIN (self->tries, 8);

  if (self->tries == 0)
    self->first_us = now_us;
  self->asked_us = now_us;
  self->heard = FALSE;
  self->tries++;
  go (self, STATE_AWAIT, now_us + CLAMP (wait_us, pace_us, longest_wait_us));
  return self->question;
}

static const char *
poll_next (RwTalk *talk,
           gint64  now_us,
           gint64 *due_us)
{
  RwPollTalk *self = (RwPollTalk *) talk;
  const char *text = NULL;

  if (now_us >= self->due_us)
    {
      /* An answer that makes no value, or none yet, is no silence. */
      if (self->heard)
        self->tries = 0;
      text = ask (self, now_us);
    }
  *due_us = self->due_us;
  return text;
}

static void
poll_hear (RwTalk       *talk,
           const guint8 *tainted,
           gsize         n,
           gint64        now_us,
           RwTalkFunc    values,
           gpointer      data)
{
  RwPollTalk *self = (RwPollTalk *) talk;

  if (self->state == STATE_QUIET)
    go (self, STATE_QUIET, now_us + quiet_us);
  else
    {
      self->heard = TRUE;
      values (tainted, n, data);
    }
  if (self->state == STATE_AWAIT)
    self->due_us = MAX (now_us + gap_us, self->asked_us + pace_us);
}

static void
poll_answered (RwTalk *talk,
               gint64  now_us)
{
  RwPollTalk *self = (RwPollTalk *) talk;
  const gint64 took_us = now_us - self->first_us;

  if (self->state != STATE_AWAIT)
    return;
  if (self->tries == 1 || self->tries > slow_tries)
    go (self, STATE_ASK, MAX (self->asked_us + pace_us, now_us));
  else
    {
      self->wait_us = MAX (2 * took_us, self->wait_us);
      go (self, STATE_ASK, now_us + MAX (took_us, pace_us));
    }
  self->tries = 0;
}

static void
poll_free (RwTalk *talk)
{
  RwPollTalk *self = (RwPollTalk *) talk;

  g_free (self->question);
  g_free (self);
}

static const RwTalkClass poll_class = {
  .restart = poll_restart,
  .next = poll_next,
  .hear = poll_hear,
  .answered = poll_answered,
  .free = poll_free,
};

RwTalk *
rw_poll_talk_new (const char *question,
                  gint64      wait_us)
{
  RwPollTalk *self = g_new0 (RwPollTalk, 1);

  self->parent.class = &poll_class;
  self->question = g_strdup (question);
  self->wait_us = wait_us;
  return &self->parent;
}
