/* rw-json-out.c: putting JSON together, a member at a time.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A value or key needs a comma before it unless it is the first of its object or array, or
 * follows its key. What was written last tells: '{', '[', ':' or nothing at all. A string cannot
 * fool this, it ends in '"'.
 */
#include "config.h"

#include "rw-json-out.h"

#include <string.h>

#include "rw-json.h"

static void
separate (GString *out)
{
  if (out->len > 0 && strchr ("{[:\n", out->str[out->len - 1]) == NULL)
    g_string_append_c (out, ',');
}

void
rw_json_out_open (GString *out,
                  char     bracket)
{
  separate (out);
  g_string_append_c (out, bracket);
}

void
rw_json_out_close (GString *out,
                   char     bracket)
{
  g_string_append_c (out, bracket);
}

void
rw_json_out_key (GString    *out,
                 const char *key)
{
  separate (out);
  rw_json_append_string (out, key);
  g_string_append_c (out, ':');
}

void
rw_json_out_string (GString    *out,
                    const char *key,
                    const char *text)
{
  rw_json_out_key (out, key);
  if (text != NULL)
    rw_json_append_string (out, text);
  else
    g_string_append (out, "null");
}

void
rw_json_out_number (GString    *out,
                    const char *key,
                    double      value)
{
  rw_json_out_key (out, key);
  rw_json_append_number (out, value);
}

void
rw_json_out_count (GString    *out,
                   const char *key,
                   guint       value)
{
  rw_json_out_key (out, key);
  g_string_append_printf (out, "%u", value);
}

void
rw_json_out_boolean (GString    *out,
                     const char *key,
                     gboolean    value)
{
  rw_json_out_key (out, key);
  g_string_append (out, value ? "true" : "false");
}

void
rw_json_out_null (GString    *out,
                  const char *key)
{
  rw_json_out_key (out, key);
  g_string_append (out, "null");
}

void
rw_json_out_add_number (GString *out,
                        double   value)
{
  separate (out);
  rw_json_append_number (out, value);
}

void
rw_json_out_add_string (GString    *out,
                        const char *text)
{
  separate (out);
  rw_json_append_string (out, text);
}

void
rw_json_out_add_null (GString *out)
{
  separate (out);
  g_string_append (out, "null");
}
