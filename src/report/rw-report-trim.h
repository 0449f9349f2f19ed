/* rw-report-trim.h: what a session says of the trim, as JSON and as text.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-summary.h"

G_BEGIN_DECLS

/* The value of the summary's "trim": an array with an object a set. */
void rw_report_trim_append_json (const RwBenchState *state, GString *out);

/* A section of the text summary; nothing when there is no set that ties two rails together. */
void rw_report_trim_append_text (const RwBenchState *state, GString *out);

G_END_DECLS
