/* rw-json-out.h: putting JSON together, a member at a time.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Commas come by themselves: every function looks at what stands before it. Values are written by
 * core/rw-json.h, so numbers never obey the locale, and NaN and infinities become null.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Begins an object ('{') or an array ('['); ends one ('}' or ']'). */
void rw_json_out_open (GString *out, char bracket);
void rw_json_out_close (GString *out, char bracket);

/* The key of the next value. */
void rw_json_out_key (GString *out, const char *key);

/* Members of an object. @text may be NULL: null. */
void rw_json_out_string (GString *out, const char *key, const char *text);
void rw_json_out_number (GString *out, const char *key, double value);
void rw_json_out_count (GString *out, const char *key, guint value);
void rw_json_out_boolean (GString *out, const char *key, gboolean value);
void rw_json_out_null (GString *out, const char *key);

/* Elements of an array. */
void rw_json_out_add_number (GString *out, double value);
void rw_json_out_add_string (GString *out, const char *text);
void rw_json_out_add_null (GString *out);

G_END_DECLS
