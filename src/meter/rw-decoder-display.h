/* rw-decoder-display.h: what one frame of a meter's display says.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The frame formats read their frames into this; the guard compares it (rw-decoder-guard.h);
 * what is believed becomes a value.
 */
#pragma once

#include "rw-meter-value.h"

G_BEGIN_DECLS

/* A meter can show as many values at once. */
#define RW_DECODER_DISPLAY_PLACES 3

/* A plain value. The reading is ±counts · 10^power in the unit's base size. */
typedef struct
{
  RwMeterUnit unit;
  RwMeterMode mode;
  guint32     counts;      /* the digits without their point; 0 when over */
  int         power;       /* of ten, of the last digit; 0 when over */
  gboolean    negative;
  gboolean    fahrenheit;  /* the counts are °F, the unit is RW_METER_UNIT_CELSIUS */
  gboolean    over;
  gboolean    low_battery;
  gboolean    hold;
  guint       place;       /* of the values a meter shows at once: 0 is the main one */
} RwDecoderDisplay;

/* Everything that both say is the same. */
gboolean rw_decoder_display_equal (const RwDecoderDisplay *a, const RwDecoderDisplay *b);

/* Everything but the digits is the same, and neither is over. */
gboolean rw_decoder_display_is_alike (const RwDecoderDisplay *a, const RwDecoderDisplay *b);

/* Takes decimal digits; FALSE when there is anything else, none, or more than 9. */
gboolean rw_decoder_display_set_digits (RwDecoderDisplay *self, const char *digits, gsize n);

/* The double nearest to what is shown: 1.23 mV is the same double as 0.00123 V. */
void rw_decoder_display_get_value (const RwDecoderDisplay *self, RwMeterValue *value);

G_END_DECLS
