/* rw-line-words.c: finds the one number and its unit in a line of free text.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-line-words.h"

#include <string.h>

#include "rw-line-text.h"

#define MINUS_SIGN "\u2212"

typedef struct
{
  const char   *at;
  gsize         n;    /* bytes left */
  char          mark;
  gboolean      glued; /* a word ended just here */
  RwLineFields *fields;
} Reader;

typedef enum
{
  STEP_NONE, /* not this kind of thing */
  STEP_TAKEN,
  STEP_FAIL
} Step;

static void
advance (Reader  *self,
         gsize    bytes,
         gboolean glued)
{
  self->at += bytes;
  self->n -= bytes;
  self->glued = glued;
}

static gboolean
has_value (const Reader *self)
{
  return self->fields->has_number || self->fields->over;
}

static gboolean
is_digit_at (const Reader *self,
             gsize         offset)
{
  return offset < self->n && g_ascii_isdigit (self->at[offset]);
}

/* An overload word; a unit may be glued to it ("OLkΩ"), any other letters make it another
 * word ("OLD"). */
static Step
take_overload (Reader *self)
{
  const gsize bytes = rw_number_scan_overload (self->at, self->n);

  if (bytes == 0)
    return STEP_NONE;

  const gsize glued = rw_line_text_word (self->at + bytes, self->n - bytes);
  RwLineFields trial = *self->fields;

  if (glued > 0 && rw_line_fields_take_word (&trial, self->at + bytes, glued) != RW_LINE_WORD_TAKEN)
    return STEP_NONE;
  if (!rw_line_text_ends_number (self->at + bytes, self->n - bytes) || has_value (self))
    return STEP_FAIL;
  self->fields->over = TRUE;
  advance (self, bytes, FALSE);
  return STEP_TAKEN;
}

/* A number; what is glued to it must be a unit or mode. */
static Step
take_number (Reader *self)
{
  RwNumber *number = &self->fields->number;

  if (has_value (self))
    {
      RwNumber second;

      return rw_number_scan (self->at, self->n, self->mark, &second) > 0 ? STEP_FAIL : STEP_NONE;
    }

  const gsize bytes = rw_number_scan (self->at, self->n, self->mark, number);
  const gboolean own_sign = bytes > 0 && !g_ascii_isdigit (*self->at) && *self->at != self->mark;

  if (bytes == 0)
    return STEP_NONE;
  if (own_sign && self->fields->signed_apart)
    return STEP_FAIL;
  advance (self, bytes, FALSE);

  const gsize glued = rw_line_text_word (self->at, self->n);

  self->fields->has_number = TRUE;
  if (!rw_line_text_ends_number (self->at, self->n))
    return STEP_FAIL;
  if (glued > 0 && rw_line_fields_take_word (self->fields, self->at, glued) != RW_LINE_WORD_TAKEN)
    return STEP_FAIL;
  advance (self, glued, glued > 0);
  return STEP_TAKEN;
}

/* A sign with a blank behind it belongs to the number that follows; one between letters is
 * punctuation. */
static Step
take_sign (Reader *self)
{
  const gboolean minus_sign = self->n >= strlen (MINUS_SIGN)
                              && memcmp (self->at, MINUS_SIGN, strlen (MINUS_SIGN)) == 0;
  const gsize bytes = minus_sign ? strlen (MINUS_SIGN) : 1;

  if (!minus_sign && *self->at != '-' && *self->at != '+')
    return STEP_NONE;
  if (self->glued && rw_line_text_word (self->at + bytes, self->n - bytes) > 0)
    {
      advance (self, bytes, FALSE);
      return STEP_TAKEN;
    }
  if (self->fields->signed_apart || has_value (self)
      || rw_line_text_blanks (self->at + bytes, self->n - bytes) == 0)
    return STEP_FAIL;
  self->fields->signed_apart = TRUE;
  self->fields->negative = *self->at != '+';
  advance (self, bytes, FALSE);
  return STEP_TAKEN;
}

/* Bytes of letters, digits, points and underscores: the rest of a name such as "Ch1". */
static gsize
scan_name (const Reader *self)
{
  gsize bytes = 0;

  while (bytes < self->n
         && (g_ascii_isalnum (self->at[bytes]) || strchr ("._", self->at[bytes]) != NULL))
    bytes++;
  return bytes;
}

/* A word nobody knows: passed over, unless it may change what the number means. */
static Step
pass_over (Reader *self,
           gsize   bytes)
{
  const gboolean in_between = has_value (self) && !self->fields->has_unit;

  advance (self, bytes, TRUE);

  const gboolean digits
      = is_digit_at (self, 0) || (self->n > 0 && *self->at == '.' && is_digit_at (self, 1));
  const gboolean hyphen = self->n > 0 && strchr ("+-", *self->at) != NULL && is_digit_at (self, 1);

  /* "Reading-5.0": a hyphen or a minus? */
  if (in_between || hyphen || (digits && has_value (self)))
    return STEP_FAIL;
  if (digits)
    advance (self, scan_name (self), TRUE);
  return STEP_TAKEN;
}

static Step
take_word (Reader *self)
{
  const gsize bytes = rw_line_text_word (self->at, self->n);

  if (bytes == 0)
    return STEP_NONE;
  if (self->fields->signed_apart && !has_value (self))
    return STEP_FAIL;
  switch (rw_line_fields_take_word (self->fields, self->at, bytes))
    {
    case RW_LINE_WORD_TAKEN:
      advance (self, bytes, TRUE);
      return STEP_TAKEN;
    case RW_LINE_WORD_AGAINST:
      return STEP_FAIL;
    case RW_LINE_WORD_UNKNOWN:
    default:
      return pass_over (self, bytes);
    }
}

/* A comma before a digit parts two fields ("DC,5.012") or is a decimal mark (",5"). */
static Step
take_comma (Reader *self)
{
  if (self->mark == ',')
    return self->glued ? STEP_FAIL : STEP_NONE;
  if (!self->glued)
    return STEP_FAIL;
  advance (self, 1, FALSE);
  return STEP_TAKEN;
}

static Step
take_punctuation (Reader *self)
{
  const gsize blanks = rw_line_text_blanks (self->at, self->n);
  const gboolean stop = *self->at == '.' && self->glued && !is_digit_at (self, 1);

  if (*self->at == ',' && is_digit_at (self, 1))
    return take_comma (self);
  if (blanks == 0 && !stop && strchr (",;:=()[]|/_#", *self->at) == NULL)
    return STEP_NONE;
  advance (self, MAX (blanks, 1), FALSE);
  return STEP_TAKEN;
}

gboolean
rw_line_words_read (const char   *clean,
                    gsize         n,
                    char          mark,
                    RwLineFields *fields)
{
  static Step (*const steps[]) (Reader *)
      = { take_punctuation, take_overload, take_number, take_sign, take_word };
  Reader reader = { clean, n, mark, FALSE, fields };

  memset (fields, 0, sizeof *fields);
  while (reader.n > 0)
    {
      Step step = STEP_NONE;

      for (guint i = 0; i < G_N_ELEMENTS (steps) && step == STEP_NONE; i++)
        step = steps[i](&reader);
      if (step != STEP_TAKEN)
        return FALSE;
    }
  return has_value (&reader);
}
