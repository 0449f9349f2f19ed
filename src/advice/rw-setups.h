/* rw-setups.h: the setups of a cabinet as numbers, and what changing from one to another costs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bit 0: power on, bit 1: board fitted, bit 2: warm.
 */
#pragma once

#include "rw-knowledge.h"
#include "rw-problem.h"

G_BEGIN_DECLS

#define RW_N_SETUPS 8

/* Nothing said: off, board fitted, cold, as a cabinet comes in. */
guint rw_setups_index (RwSetup setup);

/* All three said. */
RwSetup rw_setups_get_setup (guint index);

/* Bits of the setups a check can be taken in. */
guint rw_setups_wanted (const RwCheck *check);

/* Minutes from one setup to another. */
double rw_setups_minutes (guint from, guint to);

/* The one of the bits @wanted that costs least to change to; @from when there is none. */
guint rw_setups_find_nearest (guint from, guint wanted);

/* Does a reading taken in this setup answer the check? All three must be said. */
gboolean rw_setups_match (const RwCheck *check, RwSetup setup);

/* How particular a check is: the number of things it wants to be so. */
guint rw_setups_strictness (const RwCheck *check);

G_END_DECLS
