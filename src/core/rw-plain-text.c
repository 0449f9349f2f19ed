/* rw-plain-text.c: a stranger's words made fit to be shown.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-plain-text.h"

#include <string.h>

#include "rw-limits.h"

#define SUBSTITUTE 0xfffd

static gboolean
is_between (gunichar c,
            gunichar first,
            gunichar last)
{
  return c >= first && c <= last;
}

static gboolean
is_hidden (gunichar c)
{
  return c < 0x20 || is_between (c, 0x7f, 0x9f) || is_between (c, 0x202a, 0x202e)
         || is_between (c, 0x2066, 0x2069) || c == 0xfeff || is_between (c, 0xfff9, 0xfffb)
         || is_between (c, 0xe0000, 0xe0fff) || is_between (c, 0xfdd0, 0xfdef) || (c & 0xfffe) == 0xfffe;
}

/* What stands for the character at @p; itself when it may stay. */
static gunichar
show_as (const char *p,
         RwPlainKind kind)
{
  const gunichar c = g_utf8_get_char (p);

  if (c == '\r' && p[1] == '\n' && kind == RW_PLAIN_TEXT)
    return c; /* a line end, as some systems write it */
  if (c == 0x2028 || c == 0x2029)
    return ' ';
  if (c == '\n' || c == '\t')
    return kind == RW_PLAIN_TEXT ? c : ' ';
  return is_hidden (c) ? SUBSTITUTE : c;
}

static guint
longest (RwPlainKind kind)
{
  return kind == RW_PLAIN_NAME ? RW_LIMIT_NAME_CHARS : RW_LIMIT_TEXT_CHARS;
}

gboolean
rw_plain_text_is (const char *tainted,
                  RwPlainKind kind)
{
  guint n = 0;

  for (const char *p = tainted; *p != '\0'; p = g_utf8_next_char (p), n++)
    if (n == longest (kind) || show_as (p, kind) != g_utf8_get_char (p))
      return FALSE;
  return TRUE;
}

char *
rw_plain_text_dup (const char *tainted,
                   RwPlainKind kind)
{
  if (tainted == NULL || rw_plain_text_is (tainted, kind))
    return g_strdup (tainted);

  GString *out = g_string_new (NULL);
  guint n = 0;

  for (const char *p = tainted; *p != '\0'; p = g_utf8_next_char (p), n++)
    {
      if (n == longest (kind) - 1 && *g_utf8_next_char (p) != '\0')
        {
          g_string_append (out, "…");
          break;
        }
      g_string_append_unichar (out, show_as (p, kind));
    }
  return g_string_free (out, FALSE);
}

char *
rw_plain_text_dup_path (const char *path)
{
  g_autofree char *name = g_filename_display_name (path);

  return rw_plain_text_dup (name, RW_PLAIN_TEXT);
}
