/* rw-scpi-talk.c: what to say to a SCPI instrument, and when.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-scpi-talk.h"

#include <glib/gi18n-lib.h>

#include "rw-line-buffer.h"
#include "rw-line-text.h"
#include "rw-scpi-answer.h"

/* Commands without an answer get this long to be carried out; there is no flow control to
 * wait for. */
static const gint64 pause_us = 100 * 1000;

static const gint64 longest_wait_us = 60 * G_USEC_PER_SEC;
static const gint64 side_wait_us = G_USEC_PER_SEC; /* for a name or an error */
static const gint64 refused_us = 5 * G_USEC_PER_SEC;
static const guint name_tries = 2;
static const guint value_tries = 3;
static const guint max_errors = 16;
static const guint mute_tries = 2;

typedef enum
{
  STATE_CLEAR,
  STATE_ASK_NAME,
  STATE_AWAIT_NAME,
  STATE_CHANGE,
  STATE_CONFIGURE,
  STATE_ASK_ERROR,
  STATE_AWAIT_ERROR,
  STATE_REFUSED,
  STATE_ASK,
  STATE_AWAIT
} State;

typedef struct
{
  RwTalk       parent;
  State        state;
  RwKind       wanted;      /* parent.kind is what it was configured for */
  gint64       due_us;      /* when the state ends by itself */
  gint64       now_us;      /* during hear () */
  gint64       patience_us; /* the first wait for a value */
  gint64       asked_us;    /* when the value under way was first asked for */
  guint        tries;       /* how often the name or value under way was asked for */
  guint        open;        /* READ? whose answers may still come */
  guint        stale;       /* of those, answers that are not what parent.kind says */
  gboolean     asked;       /* READ? was said since CONF */
  gboolean     got_value;   /* since the line that is being handed on began */
  RwLineBuffer lines;
  RwTalkFunc   values;      /* during hear () */
  gpointer     data;

  gboolean checking;     /* this round of errors follows CONF, not a question in vain */
  gboolean redone;       /* CONF was said once more, since its errors were not told */
  gboolean unproven;     /* the queue was not seen empty since CONF */
  guint    open_errors;  /* SYST:ERR? whose answers may still come */
  guint    vain_errors;  /* SYST:ERR? in a row without an answer */
  gboolean mute;         /* it knows no SYST:ERR? */
  guint    n_errors;     /* read in this round */
  gboolean refused;      /* one of them was the answer to CONFIGURE */
  char    *first_error;  /* of this round: the code and words */
  gboolean passing;      /* the trouble is over with the next value */
} RwScpiTalk;

static void
go (RwScpiTalk *self,
    State       state,
    gint64      due_us)
{
  self->state = state;
  self->due_us = due_us;
}

static void
scpi_restart (RwTalk *talk,
              gint64  now_us)
{
  RwScpiTalk *self = (RwScpiTalk *) talk;

  rw_line_buffer_restart (&self->lines, FALSE);
  self->tries = self->open_errors = self->vain_errors = 0;
  self->mute = FALSE;
  rw_talk_take_trouble (talk, NULL);
  go (self, STATE_CLEAR, now_us);
}

/* What is left of a line may be the first half of a late answer: it must not be joined with
 * the next one, nor its second half be taken for one. */
static void
drop_half_line (RwScpiTalk *self)
{
  if (self->lines.n > 0)
    rw_line_buffer_restart (&self->lines, TRUE);
}

/* --- errors -------------------------------------------------------------------------- */

static void
begin_errors (RwScpiTalk *self,
              gboolean    checking,
              gint64      due_us)
{
  self->checking = checking;
  self->n_errors = 0;
  self->refused = FALSE;
  g_clear_pointer (&self->first_error, g_free);
  go (self, STATE_ASK_ERROR, due_us);
}

/* The sentence for the errors of this round; NULL for none. (transfer full) */
static char *
make_trouble (const RwScpiTalk *self)
{
  if (self->n_errors == 0)
    return NULL;
  if (self->refused)
    /* Translators: the instrument's own error code and text. */
    return g_strdup_printf (_ ("The instrument refuses to measure this: %s"), self->first_error);
  if (self->n_errors == 1)
    /* Translators: the instrument's own error code and text. */
    return g_strdup_printf (_ ("The instrument reports: %s"), self->first_error);
  /* Translators: how many errors, and the first one's own code and text. */
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "The instrument reports %u error, first: %s",
                                       "The instrument reports %u errors, first: %s",
                                       self->n_errors),
                          self->n_errors, self->first_error);
}

/* Where it goes on when the question was in vain, or the value came late. */
static void
ask_again (RwScpiTalk *self,
           gint64      now_us)
{
  go (self, self->tries < value_tries ? STATE_ASK : STATE_CLEAR, now_us);
}

static void
end_errors (RwScpiTalk *self,
            gint64      now_us)
{
  self->redone = FALSE;
  if (self->checking || self->n_errors > 0)
    {
      rw_talk_take_trouble (&self->parent, make_trouble (self));
      self->passing = !self->checking;
    }
  if (self->refused)
    {
      self->asked = FALSE;
      go (self, STATE_REFUSED, now_us + refused_us);
    }
  else
    ask_again (self, now_us);
}

static const char *
ask_error (RwScpiTalk *self,
           gint64      now_us)
{
  self->open_errors++;
  go (self, STATE_AWAIT_ERROR, now_us + MIN (side_wait_us, self->patience_us));
  return "SYST:ERR?\n";
}

/* The first errors after *CLS and CONF are CONF's: command or execution error? */
static gboolean
is_refusal (const RwScpiTalk *self,
            int               code)
{
  return self->unproven && code <= -100 && code > -300;
}

/* An answer that was given up comes after all, still before any value that was asked for
 * after it. */
static void
refused_late (RwScpiTalk *self)
{
  const gboolean configured = self->state == STATE_ASK || self->state == STATE_AWAIT
                              || self->state == STATE_ASK_ERROR;

  if (configured && self->refused)
    end_errors (self, self->now_us);
}

/* Takes words. */
static void
error_cb (RwScpiTalk *self,
          int         code,
          char       *words)
{
  g_autofree char *text = words;

  self->open_errors--;
  self->vain_errors = 0;
  /* It answers in order: no value that was asked for before comes any more. */
  if (self->open_errors == 0)
    self->open = self->stale = 0;
  if (self->open_errors == 0 && code == 0)
    self->unproven = FALSE;
  if (code != 0)
    {
      self->n_errors++;
      self->refused |= is_refusal (self, code);
      if (self->first_error == NULL)
        self->first_error = g_strdup_printf ("%d “%s”", code, text);
    }
  if (self->state != STATE_AWAIT_ERROR)
    refused_late (self);
  else if (self->open_errors > 0 && !self->refused)
    return; /* that of this round is to come */
  else if (code != 0 && self->n_errors < max_errors)
    go (self, STATE_ASK_ERROR, self->now_us);
  else
    end_errors (self, self->now_us);
}

static void
error_in_vain (RwScpiTalk *self,
               gint64      now_us)
{
  self->vain_errors++;
  drop_half_line (self);
  /* The answer may be lost, and with it what CONF made wrong. */
  if (self->checking && self->unproven && !self->redone)
    {
      self->redone = TRUE;
      go (self, STATE_CHANGE, now_us);
    }
  else
    end_errors (self, now_us);
}

/* --- asking -------------------------------------------------------------------------- */

static const char *
ask_name (RwScpiTalk *self,
          gint64      now_us)
{
  self->tries++;
  drop_half_line (self);
  go (self, STATE_AWAIT_NAME, now_us + MIN (side_wait_us, self->patience_us));
  return "*IDN?\n";
}

static const char *
configure (RwScpiTalk *self,
           gint64      now_us)
{
  static const char *const commands[RW_N_KINDS] = { [RW_KIND_DC] = "CONF:VOLT:DC\n",
                                                    [RW_KIND_RIPPLE] = "CONF:VOLT:AC\n",
                                                    [RW_KIND_OHMS] = "CONF:RES\n" };

  if (self->wanted != self->parent.kind)
    self->stale = self->open;
  self->parent.kind = self->wanted;
  self->asked = FALSE;
  self->unproven = TRUE;
  self->tries = 0;
  if (self->mute)
    go (self, STATE_ASK, now_us + pause_us);
  else
    begin_errors (self, TRUE, now_us + pause_us);
  return commands[self->parent.kind];
}

static const char *
ask_value (RwScpiTalk *self,
           gint64      now_us)
{
  const gint64 wait_us = self->patience_us << self->tries;

  /* What was repeated before had its time to be answered. */
  if (self->tries == 0)
    {
      self->asked_us = now_us;
      self->open = self->stale;
    }
  self->tries++;
  self->open++;
  self->asked = TRUE;
  go (self, STATE_AWAIT, now_us + MIN (wait_us, longest_wait_us));
  return "READ?\n";
}

static void
value_in_vain (RwScpiTalk *self,
               gint64      now_us)
{
  drop_half_line (self);
  if (self->mute)
    ask_again (self, now_us);
  else
    begin_errors (self, FALSE, now_us);
}

static const char *
clear (RwScpiTalk *self,
       State       next,
       gint64      now_us)
{
  self->tries = 0;
  go (self, next, now_us + pause_us);
  return "*CLS\n";
}

/* The due state ends: what is said, or NULL. */
static const char *
step (RwScpiTalk *self,
      gint64      now_us)
{
  switch (self->state)
    {
    case STATE_CLEAR:
      self->vain_errors = 0;
      self->mute = FALSE;
      self->open = MIN (self->open, value_tries);
      return clear (self, STATE_ASK_NAME, now_us);
    case STATE_CHANGE:
      return clear (self, STATE_CONFIGURE, now_us);
    case STATE_ASK_NAME:
      return ask_name (self, now_us);
    case STATE_CONFIGURE:
      return configure (self, now_us);
    case STATE_ASK_ERROR:
      return ask_error (self, now_us);
    case STATE_ASK:
      return ask_value (self, now_us);
    case STATE_AWAIT_NAME:
      go (self, self->tries < name_tries ? STATE_ASK_NAME : STATE_CHANGE, now_us);
      return NULL;
    case STATE_AWAIT_ERROR:
      error_in_vain (self, now_us);
      return NULL;
    case STATE_REFUSED:
      go (self, STATE_CHANGE, now_us);
      return NULL;
    case STATE_AWAIT:
      value_in_vain (self, now_us);
      return NULL;
    default:
      g_assert_not_reached ();
    }
}

/* Between two questions is the time for a change. */
static void
look_for_change (RwScpiTalk *self,
                 gint64      now_us)
{
  const gboolean between = self->state == STATE_ASK || self->state == STATE_ASK_ERROR;

  if (self->wanted != self->parent.kind && (between || self->state == STATE_REFUSED))
    go (self, STATE_CHANGE, MIN (self->due_us, now_us + pause_us));
}

static const char *
scpi_next (RwTalk *talk,
           gint64  now_us,
           gint64 *due_us)
{
  RwScpiTalk *self = (RwScpiTalk *) talk;
  const char *text = NULL;

  look_for_change (self, now_us);
  while (text == NULL && now_us >= self->due_us)
    {
      text = step (self, now_us);
      look_for_change (self, now_us);
    }
  *due_us = self->due_us;
  return text;
}

static void
scpi_set_kind (RwTalk *talk,
               RwKind  kind,
               gint64  now_us)
{
  RwScpiTalk *self = (RwScpiTalk *) talk;

  if (kind != RW_KIND_DC && kind != RW_KIND_RIPPLE && kind != RW_KIND_OHMS)
    return;
  self->wanted = kind;
  /* Not the whole of a long wait. */
  if (self->state == STATE_AWAIT && kind != self->parent.kind)
    self->due_us = MIN (self->due_us, now_us + self->patience_us);
}

/* --- hearing ------------------------------------------------------------------------- */

/* The value that was asked for is there, late or in time. */
static void
value_came (RwScpiTalk *self)
{
  const gint64 now_us = self->now_us;
  const gint64 took_us = now_us - self->asked_us;
  const gboolean repeated = self->open > 0; /* and the repetition's value may come yet */

  if (self->vain_errors >= mute_tries)
    self->mute = TRUE;
  if (self->passing)
    rw_talk_take_trouble (&self->parent, NULL);
  self->passing = FALSE;
  if (self->tries > 0 && (repeated || self->state != STATE_AWAIT))
    self->patience_us = CLAMP (2 * took_us, self->patience_us, longest_wait_us);
  if (self->state == STATE_AWAIT)
    go (self, STATE_ASK, repeated ? now_us + took_us + pause_us : now_us);
  self->tries = 0;
}

/* A number came: whether it is what parent.kind says, to a question that was asked. */
static gboolean
is_current (RwScpiTalk *self)
{
  /* The answer to the newest question: those to older ones are lost. */
  if (self->state == STATE_AWAIT && self->open == 1)
    self->open_errors = 0;
  if (self->open > 0)
    self->open--;
  if (self->stale > 0)
    {
      self->stale--;
      return FALSE;
    }
  return self->asked && self->state > STATE_AWAIT_NAME;
}

static void
hand_on (RwScpiTalk *self,
         const char *tainted_line,
         gsize       n)
{
  self->got_value = FALSE;
  self->values ((const guint8 *) tainted_line, n, self->data);
  self->values ((const guint8 *) "\n", 1, self->data);
  if (self->got_value)
    value_came (self);
}

static void
name_came (RwScpiTalk *self,
           char       *name)
{
  rw_talk_take_name (&self->parent, name);
  self->open = self->stale = 0;
  go (self, STATE_CHANGE, self->now_us);
}

static void
line_cb (const char *tainted_line,
         gsize       n,
         gpointer    data)
{
  RwScpiTalk *self = data;
  char clean[RW_LINE_TEXT_MAX];
  gsize clean_n;
  const gboolean is_text = rw_line_text_clean (tainted_line, n, clean, &clean_n);
  char *text = NULL;
  int code;

  if (self->state == STATE_AWAIT_NAME && is_text)
    text = rw_scpi_answer_read_name (clean);
  if (text != NULL)
    name_came (self, text);
  else if (is_text && self->open_errors > 0 && rw_scpi_answer_read_error (clean, &code, &text))
    error_cb (self, code, text);
  else if (is_text && rw_scpi_answer_is_number (clean) ? is_current (self)
                                                       : self->state > STATE_AWAIT_NAME)
    hand_on (self, tainted_line, n);
}

static void
scpi_hear (RwTalk       *talk,
           const guint8 *tainted,
           gsize         n,
           gint64        now_us,
           RwTalkFunc    values,
           gpointer      data)
{
  RwScpiTalk *self = (RwScpiTalk *) talk;

  self->now_us = now_us;
  self->values = values;
  self->data = data;
  rw_line_buffer_feed (&self->lines, tainted, n, line_cb, self);
}

static void
scpi_answered (RwTalk *talk,
               gint64  now_us)
{
  ((RwScpiTalk *) talk)->got_value = TRUE;
}

static void
scpi_free (RwTalk *talk)
{
  RwScpiTalk *self = (RwScpiTalk *) talk;

  g_free (self->first_error);
  g_free (self);
}

static const RwTalkClass scpi_class = {
  .restart = scpi_restart,
  .next = scpi_next,
  .hear = scpi_hear,
  .answered = scpi_answered,
  .set_kind = scpi_set_kind,
  .free = scpi_free,
};

RwTalk *
rw_scpi_talk_new (gint64 patience_us)
{
  RwScpiTalk *self = g_new0 (RwScpiTalk, 1);

  self->parent.class = &scpi_class;
  self->parent.kind = self->wanted = RW_KIND_DC;
  self->patience_us = patience_us;
  return &self->parent;
}
