/* rw-keys.h: the keys that a JSON object must have, read with messages that name file and key.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <json-glib/json-glib.h>

G_BEGIN_DECLS

/* An object being read. A plain value; borrows everything. */
typedef struct
{
  JsonObject *object;
  const char *where;  /* file and path in it: "faults.json: causes[3]" */
  GQuark      domain; /* of the errors */
  int         code;
} RwKeys;

/* Sets "WHERE: key “KEY” …" and returns FALSE. */
gboolean rw_keys_fail (const RwKeys *self, const char *key, GError **error, const char *format,
                       ...) G_GNUC_PRINTF (4, 5);

/* @node as an object to read. */
gboolean rw_keys_init (RwKeys *self, JsonNode *node, const char *where, GQuark domain, int code,
                       GError **error);

/* Is the key there, and not null? */
gboolean rw_keys_has (const RwKeys *self, const char *key);

/* Required: a number from lo to hi. */
gboolean rw_keys_number (const RwKeys *self, const char *key, double lo, double hi, double *out,
                         GError **error);

/* Required: a string that is not empty; borrowed, NULL on error. */
const char *rw_keys_string (const RwKeys *self, const char *key, GError **error);

/* Optional: a string; @fallback when the key is missing. FALSE when it is something else. */
gboolean rw_keys_optional_string (const RwKeys *self, const char *key, const char *fallback,
                                  const char **out, GError **error);

/* Optional: true or false; FALSE in *out when the key is missing. */
gboolean rw_keys_optional_flag (const RwKeys *self, const char *key, gboolean *out, GError **error);

/* Required: an array; borrowed, NULL on error. */
JsonArray *rw_keys_array (const RwKeys *self, const char *key, GError **error);

/* Optional: an array of strings, none empty; *out is NULL-terminated, empty when the key is
 * missing. (transfer full) */
gboolean rw_keys_strings (const RwKeys *self, const char *key, char ***out, GError **error);

/* @node: an array of exactly @n numbers from lo to hi; @key is for the message. */
gboolean rw_keys_row (const RwKeys *self, const char *key, JsonNode *node, guint n, double lo,
                      double hi, double *out, GError **error);

/* Required: one of @words (NULL-terminated); *out is its index. @fallback ≥ 0: when the key
 * is missing. */
gboolean rw_keys_choice (const RwKeys *self, const char *key, const char *const *words,
                         int fallback, int *out, GError **error);

G_END_DECLS
