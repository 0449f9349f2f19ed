/* rw-json.h: reading JSON that somebody else wrote, without trusting its types.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <json-glib/json-glib.h>

G_BEGIN_DECLS

/* Limits on what a stranger's text may ask of us. */
#define RW_JSON_MAX_BYTES (4 * 1024 * 1024)
#define RW_JSON_MAX_DEPTH 64

/* Parses text that may come from anybody: not UTF-8, over RW_JSON_MAX_BYTES or nested deeper than
 * RW_JSON_MAX_DEPTH is refused with a message (domain JSON_PARSER_ERROR). (transfer full) */
JsonNode *rw_json_parse (const char *tainted, gsize length, GError **error);

/* The same for a file; the message names it. */
JsonNode *rw_json_parse_file (const char *path, GError **error);

/* TRUE for a finite JSON number; *out untouched otherwise. @node may be NULL. */
gboolean rw_json_node_get_number (JsonNode *node, double *out);

/* The same for a member of an object. */
gboolean rw_json_get_number (JsonObject *object, const char *key, double *out);

/* The member when it is a string, else @fallback. Borrowed. */
const char *rw_json_get_string (JsonObject *object, const char *key, const char *fallback);

/* The member when it is a boolean, else @fallback. */
gboolean rw_json_get_boolean (JsonObject *object, const char *key, gboolean fallback);

/* The member when it is an object or an array, else NULL. Borrowed. */
JsonObject *rw_json_get_object (JsonObject *object, const char *key);
JsonArray  *rw_json_get_array (JsonObject *object, const char *key);

/* Appends a quoted JSON string with its escapes. @text is valid UTF-8. */
void rw_json_append_string (GString *out, const char *text);

/* Appends a number that reads back as the same double, as short as it can be; never obeys the locale.
 * Not a number or infinite: null. */
void rw_json_append_number (GString *out, double value);

/* Appends a node on one line. */
void rw_json_append_node (GString *out, JsonNode *node);

G_END_DECLS
