/* rw-report-text-next.h: the part of the text report that needs the knowledge.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For rw-report-text alone.
 */
#pragma once

#include "rw-summary.h"

G_BEGIN_DECLS

/* Symptoms, findings and repairs; nothing when there are none. Without knowledge they go by their
 * ids. */
void rw_report_text_append_seen (const RwSummary *summary, GString *out);

/* Likely causes and what to do next, each step's danger before the step. Nothing without
 * knowledge. */
void rw_report_text_append_next (const RwSummary *summary, GString *out);

G_END_DECLS
