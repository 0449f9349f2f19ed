/* rw-meter-preset.c: sensible facts by class of meter.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Figures for DC volts that are typical of the class in the repair trade: what a handheld of so many counts
 * claims for a year. The meter's own sheet is better. A pointer instrument has no counts: its error is a
 * share of full scale, which a share of the reading understates low on the scale, so the figure is the one
 * for a third of the scale (3 % of full scale).
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "rw-meter-book.h"

static const RwMeterPreset presets[] = {
  { "counts-2000", N_ ("Simple meter, 2000 counts, averaging: typically 0.5 % + 2"), 0.5, 2,
    RW_METER_AC_AVERAGING },
  { "counts-4000-plain", N_ ("Plain meter, 4000 counts, averaging: typically 0.8 % + 3"), 0.8, 3,
    RW_METER_AC_AVERAGING },
  { "counts-4000", N_ ("Handheld meter, 4000 counts, true RMS: typically 0.5 % + 2"), 0.5, 2,
    RW_METER_AC_TRUE_RMS },
  { "counts-6000", N_ ("Handheld meter, 6000 counts, true RMS: typically 0.5 % + 2"), 0.5, 2,
    RW_METER_AC_TRUE_RMS },
  { "counts-6000-good", N_ ("Good handheld meter, 6000 counts, true RMS: typically 0.09 % + 2"), 0.09, 2,
    RW_METER_AC_TRUE_RMS },
  { "counts-20000", N_ ("Fine meter, 20 000 or 22 000 counts, true RMS: typically 0.05 % + 3"), 0.05, 3,
    RW_METER_AC_TRUE_RMS },
  { "counts-50000", N_ ("Bench meter, 50 000 or 60 000 counts, true RMS: typically 0.03 % + 3"), 0.03, 3,
    RW_METER_AC_TRUE_RMS },
  { "analogue", N_ ("Old pointer meter, or one nobody knows: typically 9 per cent"), 9, 0,
    RW_METER_AC_UNKNOWN },
};

const RwMeterPreset *
rw_meter_preset_list (guint *n)
{
  *n = G_N_ELEMENTS (presets);
  return presets;
}
