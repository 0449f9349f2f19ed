/* rw-stage-say.h: the bring-up in short words and shapes, for lists and cards.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-stages.h"

G_BEGIN_DECLS

/* "○ +5 V, terminals, board out: not read yet", "● +5 V, board: 5.02 V, inside". (transfer full) */
char *rw_stage_say_asked (const RwAsked *asked);

/* "Stop: …", "Careful: …", "Gone past: …", with a shape. (transfer full) */
char *rw_stage_say_reason (const RwGateReason *reason);

/* What stands above a caution: "beside bare mains parts · for trained people only". (transfer full) */
char *rw_stage_say_hazard (const RwStageText *words);

G_END_DECLS
