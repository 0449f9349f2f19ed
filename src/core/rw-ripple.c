/* rw-ripple.c: what an AC volts reading on a rail says, and what it cannot say.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Factors as derived in the header. The kind of an unknown meter is one of two: the middle of the two factors, with a
 * rectangular bound of half their distance (JCGM 100:2008, 4.3.7).
 */
#include "config.h"

#include "rw-ripple.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-json.h"
#include "rw-quantity.h"

static const double one_sided = 1.6448536269514722; /* Φ⁻¹(0.95) */
static const double raw_limit_share = 0.03;

static RwRippleNumber
scale (const RwReading    *ac,
       const RwMeterFacts *facts,
       double              rms,
       double              average)
{
  const RwRippleNumber none = { (double) NAN, (double) NAN };

  if (ac->over || !isfinite (ac->value) || ac->value < 0)
    return none;

  const double u = rw_meter_facts_u_total (facts, ac);

  if (facts != NULL && facts->ac == RW_METER_AC_TRUE_RMS)
    return (RwRippleNumber){ ac->value * rms, u * rms };
  if (facts != NULL && facts->ac == RW_METER_AC_AVERAGING)
    return (RwRippleNumber){ ac->value * average, u * average };

  const double factor = (rms + average) / 2;

  return (RwRippleNumber){ ac->value * factor,
                           hypot (u * factor, ac->value * fabs (average - rms) / 2 / sqrt (3)) };
}

RwRippleNumber
rw_ripple_half_peak (const RwReading    *ac,
                     const RwMeterFacts *facts)
{
  return scale (ac, facts, RW_RIPPLE_TROUGH_RMS, RW_RIPPLE_TROUGH_AVERAGE);
}

RwRippleNumber
rw_ripple_trough (const RwReading    *dc,
                  const RwReading    *ac,
                  const RwMeterFacts *dc_facts,
                  const RwMeterFacts *ac_facts)
{
  const RwRippleNumber half = rw_ripple_half_peak (ac, ac_facts);

  if (dc->over || !isfinite (dc->value) || isnan (half.value))
    return (RwRippleNumber){ (double) NAN, (double) NAN };
  return (RwRippleNumber){ dc->value < 0 ? dc->value + half.value : dc->value - half.value,
                           hypot (rw_meter_facts_u_total (dc_facts, dc), half.u) };
}

RwTroughVerdict
rw_ripple_trough_verdict (RwRippleNumber trough,
                          double         least)
{
  const double above = fabs (trough.value) - least;

  if (!isfinite (trough.value) || !isfinite (trough.u))
    return RW_TROUGH_UNKNOWN;
  if (above >= one_sided * trough.u)
    return RW_TROUGH_HOLDS;
  return above <= -one_sided * trough.u ? RW_TROUGH_TOO_LOW : RW_TROUGH_TOO_CLOSE;
}

gboolean
rw_ripple_is_raw (const RwRail *rail)
{
  return isfinite (rail->ripple_limit) && rail->ripple_limit > raw_limit_share * fabs (rail->nominal);
}

RwRippleSupply
rw_ripple_supply_of (const RwProfile *profile)
{
  const char *supply = rw_json_get_string (json_node_get_object (rw_profile_get_node (profile)), "supply", "");

  return g_str_equal (supply, "linear")     ? RW_RIPPLE_SUPPLY_LINEAR
         : g_str_equal (supply, "switcher") ? RW_RIPPLE_SUPPLY_SWITCHER
                                            : RW_RIPPLE_SUPPLY_UNSAID;
}

/* --- words -------------------------------------------------------------------------------------- */

static const char *
what_it_sees (RwRippleSupply supply,
              const RwRail  *rail,
              gboolean       beyond)
{
  if (rail != NULL && rw_ripple_is_raw (rail))
    return _ ("A raw rail rises and falls at twice the mains, 100 or 120 Hz, which this meter sees. At 50 or 60 Hz, where "
              "it can show hertz, half of the rectifier is missing.");
  if (supply == RW_RIPPLE_SUPPLY_LINEAR)
    return beyond ? _ ("From a linear supply this is hum at 100 or 120 Hz: the regulator runs out of volts between the "
                       "peaks, or has failed. Look at the raw rail ahead of it.")
                  : _ ("A linear supply has no switching noise: its ripple is hum at 100 or 120 Hz, twice the mains, and "
                       "this meter sees all of it.");
  return supply == RW_RIPPLE_SUPPLY_SWITCHER
             ? _ ("Hum at 100 or 120 Hz this meter sees. Switching noise, at tens of kilohertz, it sees in part or not at "
                  "all: how fast its AC range is nobody stated, so that a low reading is weak evidence that the capacitors "
                  "are good.")
             : _ ("Hum at 100 or 120 Hz this meter sees. If the supply is a switcher, there is noise at tens of kilohertz as "
                  "well, which it sees in part or not at all: a low reading is then weak evidence that the capacitors are "
                  "good.");
}

static const char *
how_it_reads (const RwMeterFacts *facts)
{
  if (facts != NULL && facts->ac == RW_METER_AC_TRUE_RMS)
    return _ ("true RMS");
  if (facts != NULL && facts->ac == RW_METER_AC_AVERAGING)
    return _ ("averaging meter, right for a sine wave only");
  return _ ("averaging or true RMS: not known");
}

char *
rw_ripple_describe (const RwReading    *ac,
                    const RwMeterFacts *facts,
                    RwRippleSupply      supply,
                    const RwRail       *rail)
{
  const RwRippleNumber half = rw_ripple_half_peak (ac, facts);
  const gboolean beyond = rail != NULL && isfinite (rail->ripple_limit) && ac->value > rail->ripple_limit;

  if (isnan (half.value))
    return g_strdup (_ ("The ripple reading is out of range: choose a higher AC volts range and read again."));

  g_autofree char *shown = rw_quantity_format (ac->value, ac->step, RW_KIND_RIPPLE);
  g_autofree char *peak = rw_quantity_format (2 * half.value, ac->step, RW_KIND_RIPPLE);
  g_autofree char *error = rw_quantity_format_u (2 * half.u, RW_KIND_RIPPLE);
  g_autofree char *limit = beyond ? rw_quantity_format (rail->ripple_limit, ac->step, RW_KIND_RIPPLE) : NULL;
  g_autofree char *over = beyond ? g_strdup_printf (_ (" It is above the limit of %s."), limit) : g_strdup ("");

  /* Translators: reading, how the meter reads, peak to peak and its error, a sentence or nothing, a sentence. */
  return g_strdup_printf (_ ("Ripple %s (%s): about %s from peak to trough (%s) if it is a sawtooth.%s %s"), shown,
                          how_it_reads (facts), peak, error, over, what_it_sees (supply, rail, beyond));
}

char *
rw_ripple_describe_meter (const RwMeterFacts *facts,
                          RwRippleSupply      supply)
{
  if (facts != NULL && facts->ac == RW_METER_AC_TRUE_RMS)
    return g_strdup (supply == RW_RIPPLE_SUPPLY_LINEAR
                         ? _ ("This meter shows true RMS on AC: right for the sawtooth of a linear supply.")
                         : _ ("This meter shows true RMS on AC: right for every shape, as far as it is fast enough."));
  if (facts != NULL && facts->ac == RW_METER_AC_AVERAGING)
    return g_strdup (supply == RW_RIPPLE_SUPPLY_LINEAR
                         ? _ ("This meter shows a rectified average on AC, right for a sine wave only: a sawtooth reads 4 per "
                              "cent low.")
                         : _ ("This meter shows a rectified average on AC, right for a sine wave only: a sawtooth reads 4 per "
                              "cent low, the narrow spikes of a switcher far lower."));
  return g_strdup (_ ("Nobody said whether this meter shows true RMS or an average on AC: say so under Meters."));
}

char *
rw_ripple_describe_trough (RwRippleNumber trough)
{
  const RwTroughVerdict verdict = rw_ripple_trough_verdict (trough, RW_RIPPLE_RAW_LEAST);

  if (verdict == RW_TROUGH_UNKNOWN)
    return g_strdup (_ ("How far the rail falls between two peaks can be told once its DC volts were read at the same "
                        "spot."));

  g_autofree char *value = rw_quantity_format (trough.value, 0.01, RW_KIND_DC);
  g_autofree char *error = rw_quantity_format_u (trough.u, RW_KIND_DC);
  g_autofree char *needed = rw_quantity_format (RW_RIPPLE_RAW_LEAST, 0.1, RW_KIND_DC);

  if (verdict == RW_TROUGH_HOLDS)
    /* Translators: volts, their error, volts. */
    return g_strdup_printf (_ ("Between two peaks the rail falls to %s (%s): a +5 V regulator on it has the %s it needs."),
                            value, error, needed);
  if (verdict == RW_TROUGH_TOO_LOW)
    return g_strdup_printf (_ ("Between two peaks the rail falls to %s (%s), below the %s that a +5 V regulator needs: if "
                               "one hangs on it, its output dips with the ripple."),
                            value, error, needed);
  return g_strdup_printf (_ ("Between two peaks the rail falls to %s (%s), too close to call against the %s that a +5 V "
                             "regulator needs."),
                          value, error, needed);
}

char *
rw_ripple_describe_stream (double rate)
{
  if (!(rate > 0) || !isfinite (rate))
    return g_strdup (_ ("A stream of DC readings cannot show ripple: use the AC volts range."));
  return g_strdup_printf (_ ("At %.1f readings a second this stream shows slow hum or a beat of the ripple at best, never "
                             "its size: use the AC volts range."), rate);
}
