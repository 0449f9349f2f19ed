/* rw-meter-facts-json.h: a meter's facts as the object that session files hold, and back.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   {"id":"m1","name":"bench meter","percent":0.5,"counts":2,"ac":"true-rms"}
 */
#pragma once

#include <json-glib/json-glib.h>

#include "rw-meter-facts.h"

G_BEGIN_DECLS

/* A missing or negative figure counts as 0, so that only resolution is known. NULL without an id.
 * (transfer full) (nullable) */
RwMeterFacts *rw_meter_facts_from_object (JsonObject *object);

/* The members without the braces around them. */
void rw_meter_facts_append_members (const RwMeterFacts *self, GString *out);

/* "averaging", "true-rms"; NULL for unknown. Static. */
const char *rw_meter_ac_to_id (RwMeterAc ac);

/* UNKNOWN for anything else; @id may be NULL. */
RwMeterAc rw_meter_ac_from_id (const char *id);

G_END_DECLS
