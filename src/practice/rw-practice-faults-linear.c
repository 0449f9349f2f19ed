/* rw-practice-faults-linear.c: faults of a linear supply: transformer, bridge, capacitor, regulator.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-practice-faults-private.h"

static void
raw_capacitor_tired (RwPracticeParams *params,
                     double            strength)
{
  rw_practice_faults_reference (params)->raw.farads *= 1 - 0.75 * strength;
}

/* A diode is open or it is not. */
static void
bridge_diode_open (RwPracticeParams *params,
                   double            strength)
{
  rw_practice_faults_reference (params)->raw.half_wave = strength > 0;
}

/* Half of every winding's cycles goes into the bridge itself: the fuse goes, or, in a bad bridge
 * that still has some ohms, what is left is half a wave behind a hot transformer. */
static void
bridge_diode_shorted (RwPracticeParams *params,
                      double            strength)
{
  RwPracticeRaw *raw = &rw_practice_faults_reference (params)->raw;

  raw->half_wave = strength > 0;
  raw->winding_ohms *= 1 + strength;
  raw->winding_volts *= 1 - 0.06 * strength;
  if (strength > 0.35)
    rw_practice_faults_blow_fuse (params);
}

/* Open: nothing comes through. Shorted: all of the raw volts do, until the crowbar blows the
 * fuse. */
static void
pass_transistor_bad (RwPracticeParams *params,
                     double            strength)
{
  RwPracticeRail *reference = rw_practice_faults_reference (params);

  if (strength <= 0)
    return;
  if (!params->pass_shorts)
    {
      reference->alive = 0;
      return;
    }
  params->trim_lo_volts = 2.9 * reference->nominal;
  params->trim_hi_volts = 3.1 * reference->nominal;
  params->dropout_volts = 0.2;
  params->limit_watts = 0;
  params->over_volts = 0;
  params->own_dead = TRUE; /* no logic lives through that */
  if (strength > 0.5)
    rw_practice_faults_blow_fuse (params);
}

/* The reference sinks (or climbs), sinks further when warm, the trim has little say, and the loop
 * is weak: it gives way to the load and lets ripple through. */
static void
regulator_drifted (RwPracticeParams *params,
                   double            strength)
{
  const double middle = (params->trim_lo_volts + params->trim_hi_volts) / 2;
  const double half = (params->trim_hi_volts - params->trim_lo_volts) / 2
                      * (1 - 0.8 * strength);

  const double off = (params->drifts_up ? 0.12 : -0.06) * strength;

  params->trim_lo_volts = middle * (1 + off) - half;
  params->trim_hi_volts = middle * (1 + off) + half;
  params->warm_reference -= 0.030 * strength;
  params->ripple_rejection += 0.06 * strength;
  params->light_rise += 0.25 * strength;
  rw_practice_faults_reference (params)->load_ohms += 0.03 * strength;
  if (strength > 0.85) /* and in the end it gives nothing */
    rw_practice_faults_reference (params)->alive = 0;
}

/* A wrong tap: a fixed ratio, too low or too high. In the end the selector plug is missing. */
static void
wrong_tap (RwPracticeParams *params,
           double            strength)
{
  const double off = 0.08 + 0.12 * strength;

  params->tap_ratio = strength > 0.85 ? 0 : params->tap_high ? 1 + off : 1 - off;
  for (guint i = 0; i < params->n_rails; i++)
    {
      params->rail[i].raw.winding_volts *= params->tap_ratio;
      if (params->tap_ratio <= 0)
        params->rail[i].alive = 0;
    }
}

const RwPracticeFaultKind rw_practice_faults_linear[] = {
  /* F18: raw a little low, ripple above 0.7 V at twice the mains frequency, worse with low mains. */
  { "raw-capacitor-tired", rw_practice_faults_fit_linear, raw_capacitor_tired },
  /* F19: twice the ripple, at mains frequency; raw 1 to 2 V low. */
  { "bridge-diode-open", rw_practice_faults_fit_linear, bridge_diode_open },
  /* F20: fuse gone, or winding low, transformer hot, dips on +5. */
  { "bridge-diode-shorted", rw_practice_faults_fit_linear, bridge_diode_shorted },
  /* F21: open: +5 gone, raw high; shorted: +5 as high as raw, or the crowbar's fuse. */
  { "pass-transistor-bad", rw_practice_faults_fit_linear, pass_transistor_bad },
  /* F22: +5 off, trim weak, drifts as it warms. */
  { "regulator-drifted", rw_practice_faults_fit_linear, regulator_drifted },
  /* F26: windings off by a fixed ratio, mains right. */
  { "wrong-tap", rw_practice_faults_fit_linear, wrong_tap },
  { NULL, NULL, NULL },
};
