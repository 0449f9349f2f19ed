/* decode-streams.h: what meters of each format send, written by an encoder of its own.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Appends what a meter of the format sends for @counts, −9999 to 9999, on a DC range whose last
 * digit is 1 mV. FALSE when the format has no stream here: then the benchmark lacks it. */
gboolean decode_streams_append (const char *format_id, int counts, GString *out);

G_END_DECLS
