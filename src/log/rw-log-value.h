/* rw-log-value.h: one value of a meter, as a line for people or for programs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-meter-value.h"

G_BEGIN_DECLS

/* "5.012 V dc", "35.2 mV dc, hold", "OL Ω", and a newline; numbers as the locale writes them. */
void rw_log_value_append_text (const RwMeterValue *value, GString *out);

/* One JSON object and a newline: value in the base unit, null when over; unit, mode, step, over,
 * low_battery, hold. */
void rw_log_value_append_json (const RwMeterValue *value, GString *out);

G_END_DECLS
