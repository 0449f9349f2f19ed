/* rw-event-json-private.h: the words that reading and writing an event share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-event-json.h"

G_BEGIN_DECLS

/* By RwSymptomState, RwRepairResult; NULL-terminated. */
extern const char *const rw_event_symptom_words[];
extern const char *const rw_event_repair_words[];

G_END_DECLS
