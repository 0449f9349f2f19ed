/* rw-log-plan.h: the other half of the plan command. For rw-log-plan alone.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-log.h"

G_BEGIN_DECLS

/* Prints the whole plan of each bare problem in a file, one JSON object a line, in the order of
 * the file: the file is one problem, or a collection {"problems":[…]}. A problem that is not
 * understood is said on standard error and leaves a line "null". Returns an RwLogStatus. */
int rw_log_plan_problems (const char *path);

G_END_DECLS
