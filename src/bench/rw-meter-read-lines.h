/* rw-meter-read-lines.h: what each line of a captured text is read as.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* One line out for each line in that is not empty, @most at most: "5.012 V DC, step 0.001 V", "overload", "not
 * understood: …". @pattern: (nullable) free text. NULL with the pattern's error. (transfer full) */
char *rw_meter_read_lines (const char *text, const char *pattern, char mark, guint most, GError **error);

G_END_DECLS
