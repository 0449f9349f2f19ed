/* rw-session-from-private.h: where a session was branched from, in its header line. For rw-session-header alone.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <json-glib/json-glib.h>

#include "rw-session.h"

G_BEGIN_DECLS

/* @object: (nullable). NULL unless it names a session. (transfer full) */
RwSessionFrom *rw_session_from_read (JsonObject *object);

/* Appends ,"from":{…} */
void rw_session_from_append (const RwSessionFrom *self, GString *out);

G_END_DECLS
