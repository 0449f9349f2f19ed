/* rw-mistakes.h: mistakes of measuring, recognised from the readings alone, and what to do about each.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every mistake has a stable id; see rw-mistakes.c for the list.
 */
#pragma once

#include "rw-bench-state.h"

G_BEGIN_DECLS

/* What must be said before anything is kept: mains-sized, never-above, leads-reversed, ohms-power-on, overload,
 * ac-mode, low-battery; the gravest one. @sample carries the spot that the leads are taken to be on.
 * FALSE, and *out untouched: nothing. *out has n = 0; free with rw_warning_clear (). O(spots). */
gboolean rw_mistakes_look_live (const RwBenchState *state, const RwReading *sample, RwWarning *out);

void rw_warning_clear (RwWarning *self);

G_END_DECLS
