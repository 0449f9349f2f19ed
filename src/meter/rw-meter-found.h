/* rw-meter-found.h: collects what the steps of a search say, and makes answers of it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One collection is one port. The same format may have been heard at several speeds (some adapters do not
 * care): the speed that speaks most for it counts, and the chance is among all formats heard on the port.
 */
#pragma once

#include "rw-meter-finder.h"
#include "rw-search-plan.h"

G_BEGIN_DECLS

RwMeterFound *rw_meter_found_copy (const RwMeterFound *self);
void          rw_meter_found_free (RwMeterFound *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwMeterFound, rw_meter_found_free)

/* An answer is sure enough to end the search. */
gboolean rw_meter_found_is_sure (const RwMeterFound *self);

typedef struct _RwMeterFinds RwMeterFinds;

/* (transfer full) */
RwMeterFinds *rw_meter_finds_new (const RwMeterAddress *address);
void          rw_meter_finds_free (RwMeterFinds *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwMeterFinds, rw_meter_finds_free)

/* @ranking (of RwMeterGuess) is of all that @step has brought so far. TRUE when the step is worth staying
 * with: some format explains part of it, and is not much less likely than none. */
gboolean rw_meter_finds_take_ranking (RwMeterFinds *self, const RwSearchStep *step, const GArray *ranking);

/* The instrument that answered @step with its name, such as "Quayside M3". */
void rw_meter_finds_take_name (RwMeterFinds *self, const RwSearchStep *step, const char *name);

/* The likeliest first, those with any chance worth telling. (transfer full) (element-type RwMeterFound) */
GPtrArray *rw_meter_finds_list (const RwMeterFinds *self);

G_END_DECLS
