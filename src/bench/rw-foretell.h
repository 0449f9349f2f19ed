/* rw-foretell.h: what each outcome of any check would mean, and what would follow it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The advice says so for the check that it suggests; this does for one that somebody takes instead.
 */
#pragma once

#include "rw-advice.h"

G_BEGIN_DECLS

/* (transfer full) (element-type RwAdviceOutcome) in the order of the check's outcomes, those that cannot happen
 * too. Texts are borrowed from the advice. Empty when the check is not of its knowledge. Takes some ten milliseconds
 * for a check that is not the suggested one. */
GArray *rw_foretell (const RwAdvice *advice, const RwCheck *check);

G_END_DECLS
