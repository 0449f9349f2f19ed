/* rw-event-json.h: an event as a line of a session file, and back.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-event.h"

G_BEGIN_DECLS

typedef enum
{
  RW_EVENT_ERROR_FORMAT, /* not JSON, no n or t, or a payload whose value is not what it must be */
} RwEventError;
#define RW_EVENT_ERROR (rw_event_error_quark ())
GQuark rw_event_error_quark (void);

/* Reads one line (no newline needed) into *event. An unknown payload key gives RW_EVENT_UNKNOWN, never
 * an error. O(length). */
gboolean rw_event_from_line (const char *line, gsize length, RwEvent *event, GError **error);

/* Appends the line with its newline. t with microseconds where it needs them, three decimals at least;
 * numbers never obey the locale. An event with `line` is written as it was read. */
void rw_event_append_line (const RwEvent *event, GString *out);

G_END_DECLS
