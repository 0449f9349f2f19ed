/* rw-number.c: numbers as instruments write them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-number.h"

#include <float.h>
#include <math.h>
#include <string.h>

#define MINUS_SIGN "\xE2\x88\x92" /* U+2212 */

static const int max_exponent = 32000;

/* What is still to be read. */
typedef struct
{
  const char *at;
  const char *end;
} Cursor;

static char
peek (const Cursor *cursor)
{
  return cursor->at < cursor->end ? *cursor->at : '\0';
}

static gboolean
take_minus_sign (Cursor *cursor)
{
  const gsize n = strlen (MINUS_SIGN);

  if ((gsize) (cursor->end - cursor->at) < n || memcmp (cursor->at, MINUS_SIGN, n) != 0)
    return FALSE;
  cursor->at += n;
  return TRUE;
}

static void
skip_blanks (Cursor *cursor)
{
  while (cursor->at < cursor->end && (guchar) *cursor->at <= ' ' && *cursor->at != '\n')
    cursor->at++;
}

/* Appends a run of digits to the mantissa; how many there were. */
static guint
take_digits (Cursor   *cursor,
             RwNumber *number,
             guint    *stored)
{
  guint n = 0;

  for (; g_ascii_isdigit (peek (cursor)); cursor->at++, n++)
    if (*stored + n < RW_NUMBER_MAX_DIGITS)
      number->digits[*stored + n] = *cursor->at;
  *stored += n;
  return n;
}

/* Reads the mantissa; FALSE when there is none. */
static gboolean
take_mantissa (Cursor   *cursor,
               char      mark,
               RwNumber *number)
{
  guint stored = 0;
  const gboolean foreign_minus = take_minus_sign (cursor);

  number->negative = foreign_minus || peek (cursor) == '-';
  if (!foreign_minus && (peek (cursor) == '-' || peek (cursor) == '+'))
    cursor->at++;

  const guint whole = take_digits (cursor, number, &stored);
  const gboolean marked = peek (cursor) == mark;

  if (marked)
    cursor->at++;

  const guint decimals = marked ? take_digits (cursor, number, &stored) : 0;

  if (stored == 0 || stored > RW_NUMBER_MAX_DIGITS)
    return FALSE;
  number->digits[stored] = '\0';
  number->power = -(int) decimals;
  number->forms = foreign_minus ? 0 : RW_NUMBER_NRF;
  if (!foreign_minus && !marked)
    number->forms |= RW_NUMBER_NR1;
  if (!foreign_minus && mark == '.' && whole > 0 && decimals > 0)
    number->forms |= RW_NUMBER_NR2;
  if (mark != '.' && marked)
    number->forms = 0;
  return TRUE;
}

/* Reads an exponent. TRUE when there was a whole one; else the cursor stays. FALSE too when
 * it is beyond what IEEE 488.2 allows, which leaves its E for the caller to stumble over. */
static gboolean
take_exponent (Cursor   *cursor,
               gboolean  blanks,
               RwNumber *number)
{
  Cursor c = *cursor;
  int exponent = 0;

  if (blanks)
    skip_blanks (&c);
  if (peek (&c) != 'E' && peek (&c) != 'e')
    return FALSE;

  const gboolean capital = *c.at == 'E';

  c.at++;
  if (blanks)
    skip_blanks (&c);

  const char sign = peek (&c);

  if (sign == '+' || sign == '-')
    c.at++;
  if (!g_ascii_isdigit (peek (&c)))
    return FALSE;
  for (; g_ascii_isdigit (peek (&c)) && exponent <= max_exponent; c.at++)
    exponent = exponent * 10 + (*c.at - '0');
  if (exponent > max_exponent)
    return FALSE;

  const gboolean nr3 = (number->forms & RW_NUMBER_NR2) && capital && (sign == '+' || sign == '-');

  number->power += sign == '-' ? -exponent : exponent;
  number->forms = (number->forms & RW_NUMBER_NRF) | (nr3 ? RW_NUMBER_NR3 : 0);
  *cursor = c;
  return TRUE;
}

gsize
rw_number_scan (const char *text,
                gsize       n,
                char        mark,
                RwNumber   *number)
{
  Cursor cursor = { text, text + n };

  if (!take_mantissa (&cursor, mark, number))
    return 0;
  take_exponent (&cursor, FALSE, number);
  return (gsize) (cursor.at - text);
}

RwNumberStatus
rw_number_parse (const char *text,
                 gsize       n,
                 RwNumber   *number)
{
  Cursor cursor = { text, text + n };

  if (!take_mantissa (&cursor, '.', number))
    return RW_NUMBER_NOT_ONE;
  take_exponent (&cursor, TRUE, number);
  if (cursor.at != cursor.end || !(number->forms & RW_NUMBER_NRF))
    return RW_NUMBER_NOT_ONE;
  return RW_NUMBER_GOOD;
}

static gboolean
is_zero (const RwNumber *number)
{
  return number->digits[strspn (number->digits, "0")] == '\0';
}

RwNumberStatus
rw_number_get (const RwNumber *number,
               int             shift,
               double         *value,
               double         *step)
{
  char text[RW_NUMBER_MAX_DIGITS + 16];

  g_snprintf (text, sizeof text, "%s%se%d", number->negative ? "-" : "", number->digits,
              number->power + shift);

  const double whole = g_ascii_strtod (text, NULL);

  g_snprintf (text, sizeof text, "1e%d", number->power + shift);

  const double last = g_ascii_strtod (text, NULL);

  if (isinf (whole) || isinf (last))
    return RW_NUMBER_TOO_LARGE;
  if (whole == 0 && !is_zero (number))
    return RW_NUMBER_TOO_SMALL;
  if (value != NULL)
    *value = whole == 0 ? 0 : whole;
  if (step != NULL)
    *step = MAX (last, DBL_TRUE_MIN);
  return RW_NUMBER_GOOD;
}

gboolean
rw_number_is_sentinel (double value)
{
  return fabs (value) >= RW_NUMBER_SENTINEL;
}

/* --- overload ------------------------------------------------------------------------ */

/* OL and 0L with a decimal point at any place, as a display's segments show it. */
static gsize
scan_segments (const char *text,
               gsize       n)
{
  char word[3] = "";
  guint letters = 0;
  guint points = 0;
  gsize i;

  for (i = 0; i < n && letters < 2; i++)
    {
      if (text[i] == '.' && points == 0)
        points++;
      else if (strchr ("Oo0Ll", text[i]) != NULL && text[i] != '\0')
        word[letters++] = g_ascii_toupper (text[i]);
      else
        return 0;
    }
  if (!g_str_equal (word, "OL") && !g_str_equal (word, "0L"))
    return 0;
  return i + (points == 0 && i < n && text[i] == '.');
}

/* A whole word of letters. */
static gsize
scan_word (const char *text,
           gsize       n)
{
  static const char *const words[] = { "OVERLOAD", "OVLD", "OVER", "OVL" };

  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    {
      const gsize length = strlen (words[i]);

      if (length <= n && g_ascii_strncasecmp (text, words[i], length) == 0
          && (length == n || !g_ascii_isalnum (text[length])))
        return length;
    }
  return 0;
}

/* ----, 1----, --.-- : dashes where digits would be. */
static gsize
scan_dashes (const char *text,
             gsize       n)
{
  guint dashes = 0;
  guint points = 0;
  gsize i = n > 0 && g_ascii_isdigit (text[0]) ? 1 : 0;

  for (; i < n && (text[i] == '-' || (text[i] == '.' && points == 0)); i++)
    *(text[i] == '-' ? &dashes : &points) += 1;
  if (dashes < 2 || (i < n && (g_ascii_isdigit (text[i]) || text[i] == '.' || text[i] == ',')))
    return 0;
  return i;
}

gsize
rw_number_scan_overload (const char *text,
                         gsize       n)
{
  const gsize dashes = scan_dashes (text, n);

  if (dashes > 0)
    return dashes;

  Cursor cursor = { text, text + n };

  if (!take_minus_sign (&cursor) && (peek (&cursor) == '-' || peek (&cursor) == '+'))
    cursor.at++;

  const gsize rest = (gsize) (cursor.end - cursor.at);
  const gsize segments = scan_segments (cursor.at, rest);
  const gsize length = segments > 0 ? segments : scan_word (cursor.at, rest);

  return length > 0 ? (gsize) (cursor.at - text) + length : 0;
}
