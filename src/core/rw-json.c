/* rw-json.c: reading JSON that somebody else wrote, without trusting its types.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-json.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-json-check.h"
#include "rw-plain-text.h"

JsonNode *
rw_json_parse (const char *tainted,
               gsize       length,
               GError    **error)
{
  if (length > RW_JSON_MAX_BYTES)
    {
      g_set_error (error, JSON_PARSER_ERROR, JSON_PARSER_ERROR_PARSE, _ ("longer than %d bytes"),
                   RW_JSON_MAX_BYTES);
      return NULL;
    }
  if (!g_utf8_validate_len (tainted, length, NULL))
    {
      g_set_error_literal (error, JSON_PARSER_ERROR, JSON_PARSER_ERROR_PARSE, _ ("not UTF-8 text"));
      return NULL;
    }
  if (!rw_json_check (tainted, length, error))
    return NULL;

  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GError) problem = NULL;

  if (!json_parser_load_from_data (parser, tainted, (gssize) length, &problem))
    {
      g_autofree char *plain = rw_plain_text_dup (problem->message, RW_PLAIN_NAME);

      g_set_error (error, JSON_PARSER_ERROR, problem->code, _ ("not JSON: %s"), plain);
      return NULL;
    }

  JsonNode *root = json_parser_steal_root (parser);

  if (root == NULL)
    g_set_error_literal (error, JSON_PARSER_ERROR, JSON_PARSER_ERROR_PARSE, _ ("empty"));
  return root;
}

JsonNode *
rw_json_parse_file (const char *path,
                    GError    **error)
{
  g_autofree char *tainted = NULL;
  gsize length = 0;

  if (!g_file_get_contents (path, &tainted, &length, error))
    return NULL;

  JsonNode *root = rw_json_parse (tainted, length, error);

  if (root == NULL)
    g_prefix_error (error, "%s: ", path);
  return root;
}

gboolean
rw_json_node_get_number (JsonNode *node,
                         double   *out)
{
  if (node == NULL || !JSON_NODE_HOLDS_VALUE (node))
    return FALSE;

  const GType type = json_node_get_value_type (node);

  if (type != G_TYPE_DOUBLE && type != G_TYPE_INT64)
    return FALSE;

  const double value = json_node_get_double (node);

  if (!isfinite (value))
    return FALSE;
  *out = value;
  return TRUE;
}

gboolean
rw_json_get_number (JsonObject *object,
                    const char *key,
                    double     *out)
{
  return rw_json_node_get_number (json_object_get_member (object, key), out);
}

const char *
rw_json_get_string (JsonObject *object,
                    const char *key,
                    const char *fallback)
{
  JsonNode *node = json_object_get_member (object, key);

  if (node == NULL || !JSON_NODE_HOLDS_VALUE (node)
      || json_node_get_value_type (node) != G_TYPE_STRING)
    return fallback;
  return json_node_get_string (node);
}

gboolean
rw_json_get_boolean (JsonObject *object,
                     const char *key,
                     gboolean    fallback)
{
  JsonNode *node = json_object_get_member (object, key);

  if (node == NULL || !JSON_NODE_HOLDS_VALUE (node)
      || json_node_get_value_type (node) != G_TYPE_BOOLEAN)
    return fallback;
  return json_node_get_boolean (node);
}

JsonObject *
rw_json_get_object (JsonObject *object,
                    const char *key)
{
  JsonNode *node = json_object_get_member (object, key);

  return node != NULL && JSON_NODE_HOLDS_OBJECT (node) ? json_node_get_object (node) : NULL;
}

JsonArray *
rw_json_get_array (JsonObject *object,
                   const char *key)
{
  JsonNode *node = json_object_get_member (object, key);

  return node != NULL && JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;
}

void
rw_json_append_string (GString    *out,
                       const char *text)
{
  g_string_append_c (out, '"');
  for (const char *p = text; *p != '\0'; p++)
    switch (*p)
      {
      case '"':
      case '\\':
        g_string_append_c (out, '\\');
        g_string_append_c (out, *p);
        break;
      case '\n':
        g_string_append (out, "\\n");
        break;
      case '\t':
        g_string_append (out, "\\t");
        break;
      default:
        if ((guchar) *p < 0x20)
          g_string_append_printf (out, "\\u%04x", (guint) (guchar) *p);
        else
          g_string_append_c (out, *p);
      }
  g_string_append_c (out, '"');
}

void
rw_json_append_number (GString *out,
                       double   value)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  if (!isfinite (value))
    {
      g_string_append (out, "null");
      return;
    }
  /* The shortest of the forms that reads back as the same number. */
  for (int digits = 6; digits <= 17; digits++)
    {
      char format[8];

      g_snprintf (format, sizeof format, "%%.%dg", digits);
      g_ascii_formatd (text, sizeof text, format, value);
      if (g_ascii_strtod (text, NULL) == value)
        break;
    }
  g_string_append (out, text);
}

void
rw_json_append_node (GString  *out,
                     JsonNode *node)
{
  g_autofree char *text = json_to_string (node, FALSE);

  g_string_append (out, text);
}
