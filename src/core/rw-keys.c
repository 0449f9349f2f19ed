/* rw-keys.c: the keys that a JSON object must have, read with messages that name file and key.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-keys.h"

#include <glib/gi18n-lib.h>

#include "rw-json.h"

gboolean
rw_keys_fail (const RwKeys *self,
              const char   *key,
              GError      **error,
              const char   *format,
              ...)
{
  va_list arguments;

  va_start (arguments, format);
  g_autofree char *what = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  /* Translators: the file and the place in it, the key, what is wrong with its value */
  g_set_error (error, self->domain, self->code, _ ("%s: key “%s” %s"), self->where, key, what);
  return FALSE;
}

gboolean
rw_keys_init (RwKeys     *self,
              JsonNode   *node,
              const char *where,
              GQuark      domain,
              int         code,
              GError    **error)
{
  if (node == NULL || !JSON_NODE_HOLDS_OBJECT (node))
    {
      g_set_error (error, domain, code, _ ("%s: must be an object {…}"), where);
      return FALSE;
    }
  *self = (RwKeys) { json_node_get_object (node), where, domain, code };
  return TRUE;
}

gboolean
rw_keys_has (const RwKeys *self,
             const char   *key)
{
  JsonNode *node = json_object_get_member (self->object, key);

  return node != NULL && !JSON_NODE_HOLDS_NULL (node);
}

gboolean
rw_keys_number (const RwKeys *self,
                const char   *key,
                double        lo,
                double        hi,
                double       *out,
                GError      **error)
{
  double value = 0;

  if (!rw_json_get_number (self->object, key, &value) || value < lo || value > hi)
    return rw_keys_fail (self, key, error, _ ("must be a number from %g to %g"), lo, hi);
  *out = value;
  return TRUE;
}

const char *
rw_keys_string (const RwKeys *self,
                const char   *key,
                GError      **error)
{
  const char *text = rw_json_get_string (self->object, key, NULL);

  if (text != NULL && *text != '\0')
    return text;
  rw_keys_fail (self, key, error, _ ("must be text that is not empty"));
  return NULL;
}

gboolean
rw_keys_optional_string (const RwKeys *self,
                         const char   *key,
                         const char   *fallback,
                         const char  **out,
                         GError      **error)
{
  *out = fallback;
  if (!json_object_has_member (self->object, key))
    return TRUE;

  const char *text = rw_json_get_string (self->object, key, NULL);

  if (text == NULL)
    return rw_keys_fail (self, key, error, _ ("must be text"));
  *out = text;
  return TRUE;
}

gboolean
rw_keys_optional_flag (const RwKeys *self,
                       const char   *key,
                       gboolean     *out,
                       GError      **error)
{
  *out = FALSE;
  if (!json_object_has_member (self->object, key))
    return TRUE;

  JsonNode *node = json_object_get_member (self->object, key);

  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_BOOLEAN)
    return rw_keys_fail (self, key, error, _ ("must be true or false"));
  *out = json_node_get_boolean (node);
  return TRUE;
}

JsonArray *
rw_keys_array (const RwKeys *self,
               const char   *key,
               GError      **error)
{
  JsonArray *array = rw_json_get_array (self->object, key);

  if (array == NULL)
    rw_keys_fail (self, key, error, _ ("must be a list […]"));
  return array;
}

/* Borrowed; NULL when it is no string or an empty one. */
static const char *
text_of (JsonNode *node)
{
  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_STRING)
    return NULL;

  const char *text = json_node_get_string (node);

  return *text != '\0' ? text : NULL;
}

gboolean
rw_keys_strings (const RwKeys *self,
                 const char   *key,
                 char       ***out,
                 GError      **error)
{
  JsonArray *array = NULL;

  if (json_object_has_member (self->object, key)
      && (array = rw_keys_array (self, key, error)) == NULL)
    return FALSE;

  const guint n = array != NULL ? json_array_get_length (array) : 0;
  g_auto (GStrv) texts = g_new0 (char *, n + 1);

  for (guint i = 0; i < n; i++)
    {
      const char *text = text_of (json_array_get_element (array, i));

      if (text == NULL)
        return rw_keys_fail (self, key, error, _ ("must list texts that are not empty"));
      texts[i] = g_strdup (text);
    }
  *out = g_steal_pointer (&texts);
  return TRUE;
}

gboolean
rw_keys_row (const RwKeys *self,
             const char   *key,
             JsonNode     *node,
             guint         n,
             double        lo,
             double        hi,
             double       *out,
             GError      **error)
{
  JsonArray *array = JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;

  if (array == NULL || json_array_get_length (array) != n)
    return rw_keys_fail (self, key, error, _ ("must have %u numbers in each row"), n);
  for (guint i = 0; i < n; i++)
    if (!rw_json_node_get_number (json_array_get_element (array, i), &out[i]) || out[i] < lo
        || out[i] > hi)
      return rw_keys_fail (self, key, error, _ ("must hold numbers from %g to %g"), lo, hi);
  return TRUE;
}

gboolean
rw_keys_choice (const RwKeys      *self,
                const char        *key,
                const char *const *words,
                int                fallback,
                int               *out,
                GError           **error)
{
  if (fallback >= 0 && !json_object_has_member (self->object, key))
    {
      *out = fallback;
      return TRUE;
    }

  const char *word = rw_json_get_string (self->object, key, NULL);

  for (int i = 0; word != NULL && words[i] != NULL; i++)
    if (g_str_equal (word, words[i]))
      {
        *out = i;
        return TRUE;
      }

  g_autofree char *all = g_strjoinv (", ", (char **) words);

  return rw_keys_fail (self, key, error, _ ("must be one of: %s"), all);
}
