/* rw-never-above.h: is a rail past what a board survives, and how sure is that?
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The one answer for whatever speaks of it: the warning of a reading, the gate of a supply without its board, "off now".
 */
#pragma once

#include "rw-profile.h"
#include "rw-verdict.h"

G_BEGIN_DECLS

/* @volts: read at a point of the rail, of either sign; @u: their standard uncertainty. INSIDE: surely below the magnitude
 * that the profile never allows (chance ≥ 0.95); OUTSIDE: surely past it; CLOSE: neither; NONE: no such magnitude. */
RwVerdict rw_never_above_judge (const RwRail *rail, double volts, double u);

G_END_DECLS
