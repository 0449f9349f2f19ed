/* rw-scpi-talk.c: what to say to a SCPI instrument, and when.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-scpi-talk.h"

#include <string.h>

#include "rw-line-buffer.h"
#include "rw-line-text.h"

/* Commands without an answer get this long to be carried out; there is no flow control to
 * wait for. */
static const gint64 pause_us = 100 * 1000;

static const gint64 longest_wait_us = 60 * G_USEC_PER_SEC;
static const gint64 name_wait_us = G_USEC_PER_SEC;
static const guint name_tries = 2;
static const guint value_tries = 3;

typedef enum
{
  STATE_CLEAR,
  STATE_ASK_NAME,
  STATE_AWAIT_NAME,
  STATE_CONFIGURE,
  STATE_ASK,
  STATE_AWAIT
} State;

struct _RwScpiTalk
{
  State        state;
  gint64       due_us;      /* when the state ends by itself */
  gint64       patience_us; /* the first wait for a value */
  gint64       asked_us;    /* when the value under way was first asked for */
  guint        tries;       /* how often the name or value under way was asked for */
  char        *name;
  RwLineBuffer lines;
};

RwScpiTalk *
rw_scpi_talk_new (gint64 patience_us)
{
  RwScpiTalk *self = g_new0 (RwScpiTalk, 1);

  self->patience_us = patience_us;
  return self;
}

void
rw_scpi_talk_free (RwScpiTalk *self)
{
  if (self == NULL)
    return;
  g_free (self->name);
  g_free (self);
}

static void
go (RwScpiTalk *self,
    State       state,
    gint64      due_us)
{
  self->state = state;
  self->due_us = due_us;
}

void
rw_scpi_talk_restart (RwScpiTalk *self,
                      gint64      now_us)
{
  rw_line_buffer_restart (&self->lines, FALSE);
  self->tries = 0;
  go (self, STATE_CLEAR, now_us);
}

static const char *
ask_name (RwScpiTalk *self,
          gint64      now_us)
{
  self->tries++;
  rw_line_buffer_restart (&self->lines, FALSE);
  go (self, STATE_AWAIT_NAME, now_us + MIN (name_wait_us, self->patience_us));
  return "*IDN?\n";
}

static const char *
ask_value (RwScpiTalk *self,
           gint64      now_us)
{
  const gint64 wait_us = self->patience_us << self->tries;

  if (self->tries == 0)
    self->asked_us = now_us;
  self->tries++;
  go (self, STATE_AWAIT, now_us + MIN (wait_us, longest_wait_us));
  return "READ?\n";
}

const char *
rw_scpi_talk_next (RwScpiTalk *self,
                   gint64      now_us,
                   gint64     *due_us)
{
  const char *text = NULL;

  while (text == NULL && now_us >= self->due_us)
    switch (self->state)
      {
      case STATE_CLEAR:
        text = "*CLS\n";
        self->tries = 0;
        go (self, STATE_ASK_NAME, now_us + pause_us);
        break;
      case STATE_ASK_NAME:
        text = ask_name (self, now_us);
        break;
      case STATE_AWAIT_NAME:
        go (self, self->tries < name_tries ? STATE_ASK_NAME : STATE_CONFIGURE, now_us);
        break;
      case STATE_CONFIGURE:
        text = "CONF:VOLT:DC\n";
        self->tries = 0;
        go (self, STATE_ASK, now_us + pause_us);
        break;
      case STATE_ASK:
        text = ask_value (self, now_us);
        break;
      case STATE_AWAIT:
        go (self, self->tries < value_tries ? STATE_ASK : STATE_CLEAR, now_us);
        break;
      default:
        g_assert_not_reached ();
      }
  *due_us = self->due_us;
  return text;
}

/* Four fields, no quotes: the answer to *IDN?, and not some number or message that was still
 * on its way. */
static char *
read_name (const char *clean)
{
  g_auto (GStrv) fields = g_strsplit (clean, ",", -1);

  if (g_strv_length (fields) != 4 || strpbrk (clean, "\"'") != NULL)
    return NULL;
  return g_strstrip (g_strdup_printf ("%s %s", g_strstrip (fields[0]), g_strstrip (fields[1])));
}

static void
line_cb (const char *tainted_line,
         gsize       n,
         gpointer    data)
{
  RwScpiTalk *self = data;
  char clean[RW_LINE_TEXT_MAX];
  gsize clean_n;
  char *name;

  if (!rw_line_text_clean (tainted_line, n, clean, &clean_n))
    return;
  name = read_name (clean);
  if (name == NULL)
    return;
  g_free (self->name);
  self->name = name;
  go (self, STATE_CONFIGURE, 0);
}

RwScpiHeard
rw_scpi_talk_hear (RwScpiTalk   *self,
                   const guint8 *tainted,
                   gsize         n)
{
  if (self->state > STATE_AWAIT_NAME)
    return RW_SCPI_HEARD_OTHERS;
  if (self->state == STATE_AWAIT_NAME)
    rw_line_buffer_feed (&self->lines, tainted, n, line_cb, self);
  return self->state > STATE_AWAIT_NAME ? RW_SCPI_HEARD_NAME : RW_SCPI_HEARD_OWN;
}

void
rw_scpi_talk_answered (RwScpiTalk *self,
                       gint64      now_us)
{
  const gint64 took_us = now_us - self->asked_us;

  if (self->state == STATE_AWAIT && self->tries == 1)
    go (self, STATE_ASK, now_us);
  else if (self->state == STATE_AWAIT)
    {
      self->patience_us = CLAMP (2 * took_us, self->patience_us, longest_wait_us);
      go (self, STATE_ASK, now_us + took_us + pause_us);
    }
  self->tries = 0;
}

const char *
rw_scpi_talk_get_name (const RwScpiTalk *self)
{
  return self->name;
}
