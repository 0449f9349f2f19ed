/* rw-practice-look.h: what looking, listening and feeling show at a practice cabinet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-practice-cabinet.h"

G_BEGIN_DECLS

/* The outcome id that check @check would show now, drawn from the cabinet's parameters and state;
 * NULL for a check that this cabinet cannot answer (unknown, or a measuring one). Static string. */
const char *rw_practice_look (RwPracticeCabinet *cabinet, const char *check);

G_END_DECLS
