/* rw-unit-text.h: units as meters write them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two spellings. Meter text has the case of the SI: mV, µV (U+00B5 or U+03BC), kΩ (U+03A9 or
 * U+2126), MΩ. SCPI suffixes have no case (SCPI-1999 vol. 1, 7.2 and table 7-1):
 *
 *   EX 10^18 · PE 15 · T 12 · G 9 · MA 6 · K 3 · M −3 · U −6 · N −9 · P −12 · F −15 · A −18
 *
 * where M is 10^6 in MHZ and MOHM, and MA alone is the milliampere. Text all in capitals is
 * read that way. "mohm" and "mhz", all small, could be meant either way, a factor 10^9 apart:
 * they are no unit here.
 */
#pragma once

#include "rw-meter-value.h"

G_BEGIN_DECLS

/* A unit word taken apart. A plain value. */
typedef struct
{
  RwMeterUnit unit;
  int         power;      /* of ten, to the base unit */
  RwMeterMode mode;       /* DC or AC when the word says so ("VDC"); else NONE */
  gboolean    fahrenheit; /* the number has still to be made °C */
} RwUnitText;

/* Reads a whole word (UTF-8, no blanks) such as "mV", "VDC", "kOhm", "MOHM", "°C". FALSE: not
 * a unit. */
gboolean rw_unit_text_read (const char *word, gsize n, RwUnitText *out);

/* Splits a SCPI suffix such as "MV" or "K" into its power of ten and its unit ("V", "A",
 * "OHM", "F", "HZ", "S" or ""; a static string). FALSE: not a suffix. */
gboolean rw_unit_text_split_suffix (const char *suffix, gsize n, int *power, const char **unit);

G_END_DECLS
