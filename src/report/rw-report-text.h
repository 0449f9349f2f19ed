/* rw-report-text.h: a session's summary for people, as plain text.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-summary.h"

G_BEGIN_DECLS

/* Translated UTF-8 text, numbers as the locale writes them: what stands in the file, how the
 * bench is set up, warnings, every last reading (ripple and other kinds too), symptoms, findings
 * and repairs, likely causes, and what to do next. What can hurt is said before the step that
 * meets it. Lines are not wrapped. (transfer full) */
GString *rw_report_text_summary (const RwSummary *summary);

G_END_DECLS
