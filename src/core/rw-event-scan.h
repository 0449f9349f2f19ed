/* rw-event-scan.h: samples and readings in our own writing, read fast. For rw-event-json alone.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-event.h"

G_BEGIN_DECLS

/* TRUE when the line had the fixed form: *event is complete then. FALSE: nothing is known of the line, and
 * *event holds rubbish but owns nothing. */
gboolean rw_event_scan (const char *line, gsize length, RwEvent *event);

G_END_DECLS
