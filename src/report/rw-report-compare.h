/* rw-report-compare.h: what changed between two sessions, as text and as JSON.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-compare-causes.h"

G_BEGIN_DECLS

/* @causes: (nullable). @knowledge: (nullable): names symptoms. (transfer full) */
GString *rw_report_compare_text (const RwCompare *compare, const RwCompareCauses *causes, RwKnowledge *knowledge);

/* One object and a newline. The locale must write numbers with a point inside the sentences. (transfer full) */
GString *rw_report_compare_json (const RwCompare *compare, const RwCompareCauses *causes);

G_END_DECLS
