/* rw-port-ear.c: what one opening of a port has brought in a search, and whether to stay.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-port-ear.h"

#include "rw-line-buffer.h"
#include "rw-line-text.h"
#include "rw-scpi-answer.h"

#define MS G_GINT64_CONSTANT (1000)

static const gint64 torn_us = 50 * MS;      /* see rw-link-worker.c */
static const gint64 pause_us = 80 * MS;     /* parts two frames, at any usual speed and adapter */
static const gint64 quiet_us = 1750 * MS;
static const gint64 talking_us = 2500 * MS; /* the same where somebody was heard, at 600 baud too */
static const gint64 flood_us = 500 * MS;    /* without a pause that is … */
static const guint flood_bytes = 64;        /* … and at least so many bytes */
static const guint glitch_bytes = 2;        /* nobody's frame */
static const gint64 useless_us = 3500 * MS;
static const gint64 settle_us = 150 * MS;
static const gint64 value_wait_us = 750 * MS; /* 0.5 s to measure and 14 characters at 600 baud */
static const gint64 name_wait_us = 1000 * MS;
static const gint64 again_us = 60 * MS;       /* from an answer's end to the next question */
static const guint max_tries = 2;
static const guint max_bytes = 4096;
static const gsize stranger_least = 16;
static const gsize stranger_most = 60;

void
rw_port_ear_init (RwPortEar          *self,
                  const RwSearchStep *step,
                  RwBytePort         *port)
{
  *self = (RwPortEar){ .step = *step, .port = port, .bytes = g_byte_array_new () };
}

void
rw_port_ear_clear (RwPortEar *self)
{
  g_clear_pointer (&self->bytes, g_byte_array_unref);
}

void
rw_port_ear_hear (RwPortEar *self)
{
  guint8 tainted[1024];
  const gssize n = self->port->class->read (self->port, tainted, sizeof tainted);
  const gint64 now_us = g_get_monotonic_time ();

  if (n <= 0)
    {
      self->lost = TRUE;
      return;
    }
  if (now_us - MAX (self->last_us, self->opened_us) >= pause_us)
    self->stretches++;
  if (self->first_us == 0)
    self->first_us = now_us;
  self->last_us = now_us;
  g_byte_array_append (self->bytes, tainted, (guint) n);
}

gboolean
rw_port_ear_is_torn (const RwPortEar *self)
{
  return self->asked_us == 0 && self->first_us - self->opened_us < torn_us;
}

gboolean
rw_port_ear_is_talked_to (const RwPortEar *self)
{
  return self->last_us - self->opened_us >= torn_us;
}

gboolean
rw_port_ear_is_done (const RwPortEar *self,
                     gint64           now_us,
                     gboolean         talks)
{
  const gint64 silent_us = now_us - MAX (self->last_us, self->opened_us);
  const gboolean enough = self->bytes->len > glitch_bytes || self->stretches > 1;
  const gboolean whole = self->stretches > 0 && enough && silent_us >= pause_us;
  const gboolean flood = self->bytes->len >= flood_bytes && now_us - self->first_us >= flood_us;

  if (silent_us >= (talks ? talking_us : quiet_us) || self->bytes->len >= max_bytes)
    return TRUE;
  return !self->stay && (whole || flood || now_us - self->opened_us >= useless_us);
}

/* --- questions ----------------------------------------------------------------------- */

/* The time for (another) question has come. */
static gboolean
is_due (const RwPortEar *self,
        gint64           now_us)
{
  if (self->asked_us == 0)
    return now_us - self->opened_us >= settle_us;
  if (self->last_us > self->asked_us && self->stay)
    return now_us - self->last_us >= again_us;
  if (self->step.kind == RW_SEARCH_ASK_NAME)
    return now_us - self->asked_us >= name_wait_us;
  return now_us - MAX (self->asked_us, self->last_us) >= value_wait_us;
}

RwPortEarAnswer
rw_port_ear_judge_answer (RwPortEar *self,
                          gint64     now_us)
{
  const gboolean good = self->asked_us > 0 && self->last_us > self->asked_us && self->stay;

  if (!is_due (self, now_us))
    return RW_PORT_EAR_WAIT;
  if (self->asked_us == 0 && rw_port_ear_is_talked_to (self))
    return RW_PORT_EAR_LEAVE; /* somebody talks, and is not ours to interrupt */
  if (self->asked_us == 0)
    {
      /* What came with the cable's power. */
      g_byte_array_set_size (self->bytes, 0);
      self->weighed = 0;
    }
  else if (self->step.kind == RW_SEARCH_ASK_NAME || self->bytes->len >= max_bytes)
    return RW_PORT_EAR_LEAVE;
  self->tries = good ? 1 : self->tries + 1;
  if (self->tries > max_tries)
    return RW_PORT_EAR_LEAVE;
  self->asked_us = now_us;
  return RW_PORT_EAR_ASK;
}

static void
name_cb (const char *tainted_line,
         gsize       n,
         gpointer    data)
{
  char **name = data;
  char clean[RW_LINE_TEXT_MAX];
  gsize clean_n;

  if (*name == NULL && rw_line_text_clean (tainted_line, n, clean, &clean_n))
    *name = rw_scpi_answer_read_name (clean);
}

char *
rw_port_ear_read_name (const RwPortEar *self)
{
  RwLineBuffer lines = { .n = 0 };
  char *name = NULL;

  if (self->asked_us > 0)
    rw_line_buffer_feed (&lines, self->bytes->data, self->bytes->len, name_cb, &name);
  return name;
}

/* --- strangers ----------------------------------------------------------------------- */

char *
rw_port_ear_dup_stranger (const RwPortEar *self)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < self->bytes->len && text->len < stranger_most; i++)
    {
      const char c = (char) self->bytes->data[i];

      if (g_ascii_isprint (c))
        g_string_append_c (text, c);
      else if (text->len >= stranger_least)
        break;
      else
        g_string_truncate (text, 0);
    }
  return text->len >= stranger_least && !self->stay ? g_strdup (text->str) : NULL;
}
