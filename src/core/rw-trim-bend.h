/* rw-trim-bend.h: does a rail lie on a straight line in the reference at all?
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-trim-set.h"

G_BEGIN_DECLS

/* TRUE when the readings of @rail at four trim positions or more, where the reference was read too, do not
 * lie on a straight line (chance below 1 %): a regulator that gives up part of the way, an output that
 * limits. A single outlier is left out. */
gboolean rw_trim_bend_is_curved (const RwTrimSet *set, guint rail);

G_END_DECLS
