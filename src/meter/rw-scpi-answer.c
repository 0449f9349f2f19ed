/* rw-scpi-answer.c: the answers of a SCPI instrument that are no values.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-scpi-answer.h"

#include <string.h>

static const glong max_words = 120;

/* A code has five digits by the book. */
static const guint max_digits = 9;

char *
rw_scpi_answer_read_name (const char *clean)
{
  g_auto (GStrv) fields = g_strsplit (clean, ",", -1);

  if (g_strv_length (fields) != 4 || strpbrk (clean, "\"'") != NULL)
    return NULL;
  return g_strstrip (g_strdup_printf ("%s %s", g_strstrip (fields[0]), g_strstrip (fields[1])));
}

/* The text of a quoted string, in which a quote stands doubled; NULL when it does not end, or
 * something follows. (transfer full) */
static char *
unquote (const char *text)
{
  const char quote = *text;
  g_autoptr (GString) words = g_string_new (NULL);

  for (text++; *text != '\0'; text++)
    {
      if (*text == quote && text[1] == quote)
        text++;
      else if (*text == quote)
        break;
      g_string_append_c (words, *text);
    }
  if (*text != quote || text[1 + strspn (text + 1, " \t")] != '\0')
    return NULL;
  return g_string_free (g_steal_pointer (&words), FALSE);
}

gboolean
rw_scpi_answer_read_error (const char *clean,
                           int        *code,
                           char      **words)
{
  const char *digits = clean + strspn (clean, "+-");
  const gsize n = strspn (digits, "0123456789");
  const char *rest = digits + n;
  g_autofree char *text = NULL;

  if (digits - clean > 1 || n == 0 || n > max_digits)
    return FALSE;
  rest += strspn (rest, " ");
  if (*rest != ',')
    return FALSE;
  rest += 1 + strspn (rest + 1, " ");
  /* Some leave the quotes out. */
  if (*rest == '"' || *rest == '\'')
    text = unquote (rest);
  else if (g_ascii_isalpha (*rest))
    text = g_strdup (rest);
  if (text == NULL)
    return FALSE;
  *code = (int) g_ascii_strtoll (clean, NULL, 10);
  *words = g_utf8_substring (text, 0, MIN (g_utf8_strlen (text, -1), max_words));
  return TRUE;
}

gboolean
rw_scpi_answer_is_number (const char *clean)
{
  const char *digits = clean + strspn (clean, "+-");

  return g_ascii_isdigit (*digits) || *digits == '.';
}
