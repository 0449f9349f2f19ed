/* rw-line-text.c: one line from a meter made into clean text.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-line-text.h"

#include <string.h>

#define BYTE_ORDER_MARK "\xEF\xBB\xBF"

static const guint8 latin1_micro = 0xB5;
static const guint8 latin1_degree = 0xB0;

/* The character at the start and its bytes; FALSE when there is none or its bytes are bad. */
static gboolean
decode (const char *text,
        gsize       n,
        gunichar   *out,
        gsize      *bytes)
{
  if (n == 0)
    return FALSE;
  *out = g_utf8_get_char_validated (text, (gssize) MIN (n, 6));
  if (*out == (gunichar) -1 || *out == (gunichar) -2)
    return FALSE;
  *bytes = (gsize) (g_utf8_next_char (text) - text);
  return TRUE;
}

static gboolean
is_blank (gunichar c)
{
  return c == ' ' || c == '\t' || c == 0x00A0 || c == 0x2009 || c == 0x202F;
}

static gboolean
is_word_char (gunichar c)
{
  return g_unichar_isalpha (c) || c == 0x00B0 || c == 0x2103 || c == 0x2109 || c == '%';
}

/* Bytes of the run of characters at the start for which test holds. */
static gsize
run (const char *text,
     gsize       n,
     gboolean (*test) (gunichar))
{
  gsize at = 0;
  gsize bytes;
  gunichar c;

  while (decode (text + at, n - at, &c, &bytes) && test (c))
    at += bytes;
  return at;
}

gsize
rw_line_text_blanks (const char *text,
                     gsize       n)
{
  return run (text, n, is_blank);
}

gsize
rw_line_text_word (const char *text,
                   gsize       n)
{
  return run (text, n, is_word_char);
}

/* Takes what surrounds the text off both ends. */
static void
strip (const char **tainted,
       gsize       *n)
{
  const gsize mark = strlen (BYTE_ORDER_MARK);

  while (*n > 0 && (**tainted == '\0' || **tainted == ' ' || **tainted == '\t'))
    (*tainted)++, (*n)--;
  if (*n >= mark && memcmp (*tainted, BYTE_ORDER_MARK, mark) == 0)
    *tainted += mark, *n -= mark;
  while (*n > 0 && (**tainted == ' ' || **tainted == '\t'))
    (*tainted)++, (*n)--;
  while (*n > 0 && strchr (" \t", (*tainted)[*n - 1]) != NULL) /* finds the NUL too */
    (*n)--;
}

gboolean
rw_line_text_clean (const char *tainted,
                    gsize       n,
                    char        clean[RW_LINE_TEXT_MAX],
                    gsize      *clean_n)
{
  gsize out = 0;

  strip (&tainted, &n);
  for (gsize i = 0; i < n;)
    {
      const guint8 byte = (guint8) tainted[i];
      gunichar c;
      gsize bytes;

      if (byte < 0x80 && (!g_ascii_iscntrl (tainted[i]) || byte == '\t'))
        clean[out++] = tainted[i++];
      else if (byte >= 0x80 && decode (tainted + i, n - i, &c, &bytes))
        {
          memcpy (clean + out, tainted + i, bytes);
          out += bytes;
          i += bytes;
        }
      else if (byte == latin1_micro || byte == latin1_degree)
        {
          out += (gsize) g_unichar_to_utf8 (byte, clean + out);
          i++;
        }
      else
        return FALSE;
    }
  clean[out] = '\0';
  *clean_n = out;
  return TRUE;
}

gboolean
rw_line_text_ends_number (const char *rest,
                          gsize       n)
{
  gunichar c;
  gsize bytes;

  if (n == 0)
    return TRUE;
  if (!decode (rest, n, &c, &bytes))
    return FALSE;
  if (is_blank (c) || is_word_char (c))
    return TRUE;
  if (c >= 0x80 || strchr (".:+-/0123456789", (int) c) != NULL)
    return FALSE;
  return bytes == n || !g_ascii_isdigit (rest[bytes]);
}
