/* rw-quantity.h: numbers as people read and type them. The one place that obeys the locale.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-kinds.h"

G_BEGIN_DECLS

typedef enum
{
  RW_QUANTITY_ERROR_EMPTY,
  RW_QUANTITY_ERROR_NUMBER, /* not a number; the message shows what was typed */
  RW_QUANTITY_ERROR_UNIT,   /* a unit that does not fit what is measured */
} RwQuantityError;
#define RW_QUANTITY_ERROR (rw_quantity_error_quark ())
GQuark rw_quantity_error_quark (void);

typedef struct
{
  double   value;     /* in base units (volts, ohms, …); NaN when over */
  double   step;      /* value of the last digit typed, base units */
  gboolean over;      /* an overload word was typed: OL, O.L, 0L, OVLD, ---- */
  gboolean has_sign;  /* a sign was typed */
  gboolean has_unit;  /* a unit was typed */
} RwQuantityTyped;

/* Takes a decimal comma or point whatever the locale, a minus of any kind (U+002D, U+2212, dashes), spaces
 * of any kind around the sign and before the unit, units V mV µV kV Ω mΩ kΩ MΩ A mA °C with either code
 * point of µ and Ω. Rejects inf, nan, hex, exponents, two marks, spaces within the digits. *out holds rubbish
 * after an error. */
gboolean rw_quantity_parse (const char *text, RwKind kind, RwQuantityTyped *out, GError **error);

/* Decimals that a last-digit step asks for: 0.01 → 2, 0.001 → 3; 0 (unknown) → 3. */
int rw_quantity_decimals (double step);

/* A number alone, true minus sign, decimal mark of the locale. (transfer full) */
char *rw_quantity_format_number (double value, int decimals);

/* Number and unit with a narrow no-break space: "5.02 V", "−35 mV" (below 0.2 V with a fine step, below 1 V on a
 * meter's millivolt range). @over gives "OL". (transfer full) */
char *rw_quantity_format (double value, double step, RwKind kind);

/* With an explicit plus for positive numbers. (transfer full) */
char *rw_quantity_format_signed (double value, double step, RwKind kind);

/* "±0.02 V" at 95 %: 1.96·u, two significant digits at most. (transfer full) */
char *rw_quantity_format_u (double u, RwKind kind);

/* "1:23", "1:02:45". Seconds since the start. (transfer full) */
char *rw_quantity_format_clock (double seconds);

/* "12 s", "3 min", "2 h": how old. (transfer full) */
char *rw_quantity_format_age (double seconds);

/* Percent for people, 0…1 in: "62 %", "< 1 %". (transfer full) */
char *rw_quantity_format_chance (double share);

G_END_DECLS
