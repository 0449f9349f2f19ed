/* rw-practice-parts.c: the laws of single parts: a load, a winding, a capacitor, a conductor.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Copper: +0.39 % per kelvin. Raw capacitor: ripple I/(f·C), peak to peak. An averaging meter
 * shows the mean absolute deviation times π/(2√2), so that a sine reads true: a saw-tooth of
 * peak-to-peak P reads 0.278 P.
 */
#include "config.h"

#include "rw-practice-parts.h"

#include <math.h>

static const double max_copper_rise = 15 * 0.0039;        /* 15 K at +0.39 %/K */
static const double averaging_scale = 1.1107207345395915; /* π/(2√2) */

double
rw_practice_path_ohms (const RwPracticePath  *path,
                       const RwPracticeState *state)
{
  const double joints = path->screw_ohms + path->fuse_ohms + path->crimp_ohms + path->contact_ohms;
  const double wander = MAX (0.2, 1 + path->wander * state->wander_contact);

  return path->wire_ohms * (1 + max_copper_rise * state->warm)
         + joints * (1 + path->contact_warm * state->warm) * wander
         + (path->jerks ? state->jerk_ohms : 0);
}

double
rw_practice_path_hot_watts (const RwPracticePath *path,
                            double                amps,
                            double                warm)
{
  const double worst = MAX (path->contact_ohms * path->contact_hot,
                            MAX (path->crimp_ohms, path->screw_ohms));

  return amps * amps * worst * (1 + path->contact_warm * warm);
}

double
rw_practice_load (double volts,
                  double ohms,
                  double amps,
                  double nominal,
                  double follow)
{
  if (volts <= 0 || amps <= 0)
    return 0;

  const double fixed = amps * (1 - follow), slope = amps * follow / nominal;
  const double at_load = (volts - ohms * fixed) / (1 + ohms * slope);

  if (at_load >= nominal / 2)
    return fixed + slope * at_load;

  const double siemens = (fixed + slope * nominal / 2) / (nominal / 2);

  return siemens * volts / (1 + ohms * siemens);
}

double
rw_practice_sink (const RwPracticeParams *params,
                  double                  reference_amps)
{
  const double minimum = params->rail[params->reference].minimum_amps;

  if (minimum <= 0 || reference_amps >= minimum)
    return 0;

  const double missing = 1 - MAX (0, reference_amps) / minimum;

  return params->sink_share * missing * missing * missing;
}

void
rw_practice_raw (const RwPracticeRaw    *raw,
                 const RwPracticeParams *params,
                 double                  amps,
                 double                 *peak,
                 double                 *pp)
{
  const double hertz = params->mains_hertz * (raw->half_wave ? 1 : 2);
  /* Half the pulses: each is twice as large. */
  const double ohms = raw->winding_ohms * (raw->half_wave ? 2 : 1);

  *peak = MAX (0, M_SQRT2 * raw->winding_volts * params->mains_share - raw->bridge_volts
                      - amps * ohms);
  *pp = MIN (*peak, amps / (hertz * raw->farads));
}

double
rw_practice_dropout (double  peak,
                     double  pp,
                     double  needed,
                     double *loss)
{
  const double below = needed - (peak - pp);

  if (below <= 0)
    {
      *loss = 0;
      return 0;
    }
  if (below >= pp)
    {
      *loss = below - pp / 2;
      return pp;
    }
  *loss = below * below / (2 * pp);
  return below;
}

double
rw_practice_sawtooth_reading (double pp,
                              double depth)
{
  if (pp <= 0 || depth <= 0)
    return 0;

  const double share = 1 - MIN (depth, pp) / (2 * pp);

  return averaging_scale * (MIN (depth, pp) * MIN (depth, pp) / pp) * share * share;
}
