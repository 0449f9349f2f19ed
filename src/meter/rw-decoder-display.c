/* rw-decoder-display.c: what one frame of a meter's display says.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-decoder-display.h"

#include <math.h>

#include "rw-number.h"

static const gsize max_digits = 9; /* fit 32 bits */

static gboolean
says_the_same_around_the_digits (const RwDecoderDisplay *a,
                                 const RwDecoderDisplay *b)
{
  return a->unit == b->unit && a->mode == b->mode && a->power == b->power
         && a->negative == b->negative && a->fahrenheit == b->fahrenheit && a->over == b->over
         && a->low_battery == b->low_battery && a->hold == b->hold && a->place == b->place;
}

gboolean
rw_decoder_display_equal (const RwDecoderDisplay *a,
                          const RwDecoderDisplay *b)
{
  return says_the_same_around_the_digits (a, b) && a->counts == b->counts;
}

gboolean
rw_decoder_display_is_alike (const RwDecoderDisplay *a,
                             const RwDecoderDisplay *b)
{
  return says_the_same_around_the_digits (a, b) && !a->over;
}

gboolean
rw_decoder_display_set_digits (RwDecoderDisplay *self,
                               const char       *digits,
                               gsize             n)
{
  guint32 counts = 0;

  if (n == 0 || n > max_digits)
    return FALSE;
  for (gsize i = 0; i < n; i++)
    {
      if (!g_ascii_isdigit (digits[i]))
        return FALSE;
      counts = counts * 10 + (guint32) (digits[i] - '0');
    }
  self->counts = counts;
  return TRUE;
}

void
rw_decoder_display_get_value (const RwDecoderDisplay *self,
                              RwMeterValue           *value)
{
  RwNumber number = { .negative = self->negative, .power = self->power };

  *value = (RwMeterValue){ .value = NAN,
                           .unit = self->unit,
                           .mode = self->mode,
                           .over = self->over,
                           .low_battery = self->low_battery,
                           .hold = self->hold };
  if (self->over)
    return;
  g_snprintf (number.digits, sizeof number.digits, "%u", self->counts);
  rw_number_get (&number, 0, &value->value, &value->step);
  if (self->fahrenheit) /* °C = (°F − 32)/1.8, exactly by definition */
    {
      value->value = (value->value - 32) / 1.8;
      value->step /= 1.8;
    }
}
