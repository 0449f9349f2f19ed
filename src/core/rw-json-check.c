/* rw-json-check.c: is this text JSON to the letter?
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The parser behind rw_json_parse is lenient where we cannot be: it takes comments, octal and hexadecimal
 * numbers, other quotes, and text behind the value (so that of two events on one line the second would be lost
 * in silence); a whole number past 64 bits comes out of it as −1; a NUL escape cuts a string short; and it
 * reads nested values by recursion. So the text is walked here first (RFC 8259), with a small stack and
 * one word of what must come next:
 *
 *   VALUE ──scalar──► AFTER ──','──► VALUE or KEY       KEY ──string──► COLON ──':'──► VALUE
 *     └──'[' '{'──► FIRST_VALUE, FIRST_KEY (may close at once)      AFTER ──last ']' '}'──► DONE
 */
#include "config.h"

#include "rw-json-check.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "rw-json.h"
#include "rw-plain-text.h"

typedef enum
{
  VALUE,
  FIRST_VALUE,
  KEY,
  FIRST_KEY,
  COLON,
  AFTER,
  DONE
} Expect;

typedef struct
{
  const char *at;
  const char *end;
  Expect      expect;
  guint       depth;
  char        open[RW_JSON_MAX_DEPTH]; /* '[' or '{' of each level */
} Check;

/* The parser keeps whole numbers in 64 bits. */
static const guint max_digits = 18;

static gboolean
refuse (GError    **error,
        const char *message)
{
  g_set_error_literal (error, JSON_PARSER_ERROR, JSON_PARSER_ERROR_PARSE, message);
  return FALSE;
}

/* Says which character is wrong, in the terms of an editor when the text has several lines. */
static gboolean
refuse_here (const char *start,
             const char *at,
             const char *end,
             GError    **error)
{
  if (at >= end)
    return refuse (error, _ ("not JSON: it ends too early"));

  g_autofree char *raw = (guchar) *at < 0x20 ? g_strdup ("?") : g_utf8_substring (at, 0, 1);
  g_autofree char *what = rw_plain_text_dup (raw, RW_PLAIN_NAME);
  const char *line = start;
  guint number = 1;

  for (const char *p = start; p < at; p++)
    if (*p == '\n')
      {
        number++;
        line = p + 1;
      }

  const guint byte = (guint) (at - line) + 1;

  if (number == 1)
    g_set_error (error, JSON_PARSER_ERROR, JSON_PARSER_ERROR_PARSE,
                 /* Translators: one character, its place in the text. */
                 _ ("not JSON: “%s” at byte %u does not belong there"), what, byte);
  else
    g_set_error (error, JSON_PARSER_ERROR, JSON_PARSER_ERROR_PARSE,
                 /* Translators: one character, number of the line, place in the line. */
                 _ ("not JSON: “%s” in line %u at byte %u does not belong there"), what, number, byte);
  return FALSE;
}

/* The four digits behind \\u; -1 when they are not there. Moves on. */
static int
take_hex4 (Check *check)
{
  int value = 0;

  for (guint i = 0; i < 4; i++, check->at++)
    {
      if (check->at >= check->end || !g_ascii_isxdigit (*check->at))
        return -1;
      value = value * 16 + g_ascii_xdigit_value (*check->at);
    }
  return value;
}

/* Half a pair (RFC 7493, 2.1) comes out of the parser as text that is not UTF-8. */
static gboolean
take_unicode (Check   *check,
              GError **error)
{
  const int value = take_hex4 (check);

  if (value < 0)
    return FALSE;
  if (value == 0)
    return refuse (error, _ ("holds a NUL character"));
  if (value < 0xd800 || value > 0xdfff)
    return TRUE;
  if (value < 0xdc00 && check->end - check->at > 2 && memcmp (check->at, "\\u", 2) == 0)
    {
      check->at += 2;

      const int low = take_hex4 (check);

      if (low >= 0xdc00 && low <= 0xdfff)
        return TRUE;
    }
  return refuse (error, _ ("holds half of a character (\\ud800 to \\udfff without its other half)"));
}

static gboolean
take_escape (Check   *check,
             GError **error)
{
  const char c = check->at < check->end ? *check->at : '\0';

  if (c == '\0' || strchr ("\"\\/bfnrtu", c) == NULL)
    return FALSE;
  check->at++;
  return c != 'u' || take_unicode (check, error);
}

static gboolean
take_string (Check   *check,
             GError **error)
{
  for (check->at++; check->at < check->end; check->at++)
    {
      if (*check->at == '"')
        {
          check->at++;
          return TRUE;
        }
      if ((guchar) *check->at < 0x20)
        return FALSE;
      if (*check->at != '\\')
        continue;
      check->at++;
      if (!take_escape (check, error))
        return FALSE;
      check->at--;
    }
  return FALSE;
}

static guint
take_digits (Check *check)
{
  const char *first = check->at;

  while (check->at < check->end && g_ascii_isdigit (*check->at))
    check->at++;
  return (guint) (check->at - first);
}

static gboolean
take_char (Check *check,
           char   c)
{
  if (check->at >= check->end || *check->at != c)
    return FALSE;
  check->at++;
  return TRUE;
}

static gboolean
take_number (Check   *check,
             GError **error)
{
  take_char (check, '-');

  const char *first = check->at;
  const guint digits = take_digits (check);
  gboolean whole = TRUE;

  if (digits == 0)
    return FALSE;
  if (*first == '0' && digits > 1)
    {
      check->at = first;
      return FALSE;
    }
  if (take_char (check, '.'))
    {
      whole = FALSE;
      if (take_digits (check) == 0)
        return FALSE;
    }
  if (take_char (check, 'e') || take_char (check, 'E'))
    {
      whole = FALSE;
      if (!take_char (check, '+'))
        take_char (check, '-');
      if (take_digits (check) == 0)
        return FALSE;
    }
  if (whole && digits > max_digits)
    return refuse (error, _ ("holds a whole number that is too long"));
  return TRUE;
}

static gboolean
take_word (Check *check)
{
  static const char *const words[] = { "true", "false", "null" };

  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    {
      const gsize length = strlen (words[i]);

      if ((gsize) (check->end - check->at) >= length && memcmp (check->at, words[i], length) == 0)
        {
          check->at += length;
          return TRUE;
        }
    }
  return FALSE;
}

static gboolean
open_level (Check   *check,
            GError **error)
{
  if (check->depth == RW_JSON_MAX_DEPTH)
    {
      g_set_error (error, JSON_PARSER_ERROR, JSON_PARSER_ERROR_PARSE, _ ("nested deeper than %d"),
                   RW_JSON_MAX_DEPTH);
      return FALSE;
    }
  check->open[check->depth++] = *check->at;
  check->expect = *check->at++ == '[' ? FIRST_VALUE : FIRST_KEY;
  return TRUE;
}

static gboolean
take_value (Check   *check,
            GError **error)
{
  if (*check->at == '[' || *check->at == '{')
    return open_level (check, error);
  check->expect = check->depth > 0 ? AFTER : DONE;
  if (*check->at == '"')
    return take_string (check, error);
  if (*check->at == '-' || g_ascii_isdigit (*check->at))
    return take_number (check, error);
  return take_word (check);
}

/* A comma, or the bracket that ends the level. */
static gboolean
take_after (Check *check)
{
  const gboolean array = check->open[check->depth - 1] == '[';

  if (take_char (check, array ? ']' : '}'))
    {
      check->depth--;
      check->expect = check->depth > 0 ? AFTER : DONE;
      return TRUE;
    }
  check->expect = array ? VALUE : KEY;
  return take_char (check, ',');
}

static gboolean
take_next (Check   *check,
           GError **error)
{
  switch (check->expect)
    {
    case FIRST_VALUE:
    case FIRST_KEY:
      if (*check->at == (check->expect == FIRST_KEY ? '}' : ']'))
        return take_after (check);
      check->expect = check->expect == FIRST_KEY ? KEY : VALUE;
      return take_next (check, error);
    case VALUE:
      return take_value (check, error);
    case KEY:
      check->expect = COLON;
      return *check->at == '"' && take_string (check, error);
    case COLON:
      check->expect = VALUE;
      return take_char (check, ':');
    case AFTER:
      return take_after (check);
    case DONE:
    default:
      return FALSE;
    }
}

gboolean
rw_json_check (const char *tainted,
               gsize       length,
               GError    **error)
{
  Check check = { .at = tainted, .end = tainted + length, .expect = VALUE };
  g_autoptr (GError) problem = NULL;

  for (;;)
    {
      while (check.at < check.end && strchr (" \t\r\n", *check.at) != NULL)
        check.at++;
      if (check.at == check.end)
        break;
      if (take_next (&check, &problem))
        continue;
      if (problem == NULL)
        return refuse_here (tainted, check.at, check.end, error);
      g_propagate_error (error, g_steal_pointer (&problem));
      return FALSE;
    }
  if (check.expect == DONE)
    return TRUE;
  return check.depth == 0 ? refuse (error, _ ("empty"))
                          : refuse_here (tainted, check.at, check.end, error);
}
