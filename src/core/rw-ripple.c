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

#include "rw-quantity.h"

static const double one_sided = 1.6448536269514722; /* Φ⁻¹(0.95) */
static const double mains_band = 1000;              /* Hz, below which a band reaches mains ripple only */

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
rw_ripple_rms (const RwReading    *ac,
               const RwMeterFacts *facts)
{
  return scale (ac, facts, 1, RW_RIPPLE_TROUGH_AVERAGE / RW_RIPPLE_TROUGH_RMS);
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

double
rw_ripple_alias (double frequency,
                 double rate)
{
  if (!(rate > 0) || !isfinite (rate) || !isfinite (frequency))
    return (double) NAN;
  return fabs (frequency - rate * round (frequency / rate));
}

RwRippleBand
rw_ripple_band (double bandwidth_hz,
                double switching_hz)
{
  if (!(bandwidth_hz > 0))
    return RW_RIPPLE_BAND_UNSTATED;
  return bandwidth_hz >= MAX (switching_hz, mains_band) ? RW_RIPPLE_BAND_WIDE : RW_RIPPLE_BAND_MAINS;
}

double
rw_ripple_would_show (RwRippleBand band,
                      gboolean     switching)
{
  if (!switching || band == RW_RIPPLE_BAND_WIDE)
    return 0.9;
  return band == RW_RIPPLE_BAND_UNSTATED ? 0.3 : 0.1;
}

static const char *
what_it_cannot (RwRippleBand band,
                gboolean     switching)
{
  if (!switching || band == RW_RIPPLE_BAND_WIDE)
    return _("This meter sees ripple of this pace.");
  if (band == RW_RIPPLE_BAND_MAINS)
    return _("This meter's AC range ends below the switching frequency: it cannot see switching ripple, and a low "
             "reading says almost nothing about the capacitors.");
  return _("Nothing is stated about how fast this meter's AC range is: it may not see switching ripple at all. A low "
           "reading is weak evidence that the capacitors are good.");
}

static const char *
how_it_reads (const RwMeterFacts *facts)
{
  if (facts != NULL && facts->ac == RW_METER_AC_TRUE_RMS)
    return _("true RMS");
  if (facts != NULL && facts->ac == RW_METER_AC_AVERAGING)
    return _("averaging meter, right for a sine wave only");
  return _("averaging or true RMS: not known");
}

char *
rw_ripple_describe (const RwReading    *ac,
                    const RwMeterFacts *facts,
                    RwRippleBand        band,
                    gboolean            switching,
                    double              limit)
{
  const RwRippleNumber half = rw_ripple_half_peak (ac, facts);

  if (isnan (half.value))
    return g_strdup (_("The ripple reading is out of range: choose a higher AC volts range and read again."));

  g_autofree char *shown = rw_quantity_format (ac->value, ac->step, RW_KIND_RIPPLE);
  g_autofree char *peak = rw_quantity_format (2 * half.value, ac->step, RW_KIND_RIPPLE);
  g_autofree char *error = rw_quantity_format_u (2 * half.u, RW_KIND_RIPPLE);
  g_autofree char *limit_text = isfinite (limit) ? rw_quantity_format (limit, ac->step, RW_KIND_RIPPLE) : NULL;
  g_autofree char *beyond = limit_text != NULL && ac->value > limit
    ? g_strdup_printf (_(" It is above the limit of %s."), limit_text) : g_strdup ("");

  /* Translators: reading, how the meter reads, peak to peak and its error, a sentence or nothing, a sentence. */
  return g_strdup_printf (_("Ripple %s (%s): about %s from peak to trough (%s) if it is a sawtooth.%s %s"), shown,
                          how_it_reads (facts), peak, error, beyond, what_it_cannot (band, switching));
}

char *
rw_ripple_describe_trough (RwRippleNumber trough,
                           double         least)
{
  const RwTroughVerdict verdict = rw_ripple_trough_verdict (trough, least);

  if (verdict == RW_TROUGH_UNKNOWN)
    return g_strdup (_("The trough cannot be told: it needs a DC and an AC reading of the same spot."));

  g_autofree char *value = rw_quantity_format (trough.value, 0.01, RW_KIND_DC);
  g_autofree char *error = rw_quantity_format_u (trough.u, RW_KIND_DC);
  g_autofree char *needed = rw_quantity_format (least, 0.01, RW_KIND_DC);

  if (verdict == RW_TROUGH_HOLDS)
    return g_strdup_printf (_("The trough is %s (%s): the regulator has the %s it needs."), value, error, needed);
  if (verdict == RW_TROUGH_TOO_LOW)
    return g_strdup_printf (_("The trough is %s (%s): below the %s the regulator needs, so its output dips with the "
                              "ripple."), value, error, needed);
  return g_strdup_printf (_("The trough is %s (%s): too close to the needed %s to call."), value, error, needed);
}

char *
rw_ripple_describe_stream (double rate)
{
  if (!(rate > 0) || !isfinite (rate))
    return g_strdup (_("A stream of DC readings cannot show ripple: use the AC volts range."));
  return g_strdup_printf (_("At %.1f readings a second this stream shows slow hum or a beat of the ripple at best, never "
                            "its size: use the AC volts range."), rate);
}
