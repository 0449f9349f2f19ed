/* rw-json-check.h: is this text JSON to the letter? For rw-json alone.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* One value as RFC 8259 has it and nothing behind it, nested at most RW_JSON_MAX_DEPTH deep. @tainted must
 * be UTF-8. The message names the place (domain JSON_PARSER_ERROR). O(length), no recursion. */
gboolean rw_json_check (const char *tainted, gsize length, GError **error);

G_END_DECLS
