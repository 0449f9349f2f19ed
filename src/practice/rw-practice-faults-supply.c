/* rw-practice-faults-supply.c: faults of a practice cabinet's supply and its mains.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-practice-faults-private.h"

static RwPracticeRail *
reference_of (RwPracticeParams *params)
{
  return &params->rail[params->reference];
}

/* The knowledge speaks of rails by id; a fault is planted in the rail of that id. */
static gboolean
has_rail (const RwPracticeParams *params,
          const char             *rail)
{
  const int i = rw_practice_params_index_of (params, rail);

  return i >= 0 && (guint)i != params->reference;
}

static RwPracticeRail *
rail_of (RwPracticeParams *params,
         const char       *rail)
{
  return &params->rail[rw_practice_params_index_of (params, rail)];
}

static gboolean
fits_any (const RwPracticeParams *params)
{
  return TRUE;
}

static gboolean
fits_switcher (const RwPracticeParams *params)
{
  return params->supply == RW_PRACTICE_SWITCHER;
}

static gboolean
fits_linear (const RwPracticeParams *params)
{
  return params->supply == RW_PRACTICE_LINEAR;
}

static gboolean
fits_m5 (const RwPracticeParams *params)
{
  return has_rail (params, "m5");
}

static gboolean
fits_m12 (const RwPracticeParams *params)
{
  return has_rail (params, "m12");
}

static gboolean
fits_p12 (const RwPracticeParams *params)
{
  return has_rail (params, "p12");
}

static gboolean
fits_p24 (const RwPracticeParams *params)
{
  return has_rail (params, "p24");
}

static void
turn_start (RwPracticeParams *params,
            double            share_of_nominal)
{
  const double travel = params->trim_hi_volts - params->trim_lo_volts;
  const double volts = share_of_nominal * params->rail[params->reference].nominal;

  params->trim_start = CLAMP (params->trim_start + volts / travel, 0, 1);
}

static void
trim_low (RwPracticeParams *params,
          double            strength)
{
  turn_start (params, -0.10 * strength);
}

static void
trim_high (RwPracticeParams *params,
           double            strength)
{
  turn_start (params, 0.11 * strength);
}

/* A dirty track under the wiper: the reference jumps about. */
static void
trim_worn (RwPracticeParams *params,
           double            strength)
{
  params->reference_noise += 0.06 * strength;
}

/* ESR up: more ripple, worse regulation, deeper dips, and a loop that works harder for the same
 * volts. */
static void
output_capacitors_tired (RwPracticeParams *params,
                         double            strength)
{
  RwPracticeRail *reference = reference_of (params);

  reference->ohms += 0.050 * strength;
  reference->load_ohms += 0.055 * strength;
  reference->dynamic_ohms += 0.700 * strength;
  for (guint i = 0; i < params->n_rails; i++)
    {
      params->rail[i].switch_ripple_volts *= 1 + 10 * strength;
      if (i != params->reference)
        params->rail[i].ohms *= 1 + 0.5 * strength;
    }
}

static void
minimum_load_missing (RwPracticeParams *params,
                      double            strength)
{
  reference_of (params)->bleed_amps *= 1 - strength;
  for (guint i = 0; i < params->n_rails; i++)
    if (i != params->reference
        && params->rail[i].load_amps
               < 2 * params->rail[i].minimum_amps + params->rail[i].bleed_amps)
      {
        params->rail[i].bleed_amps *= 1 - strength;
        params->rail[i].load_amps *= 1 - 0.98 * strength;
      }
}

/* A board set that asks for more than the supply was made for. */
static void
supply_overloaded (RwPracticeParams *params,
                   double            strength)
{
  for (guint i = 0; i < params->n_rails; i++)
    params->rail[i].load_amps *= 1.25;
  params->limit_watts *= (1.25 / 1.5) * (1.00 - 0.10 * strength);
}

static void
supply_overheats (RwPracticeParams *params,
                  double            strength)
{
  params->warm_reference -= 0.010 * strength;
  params->limit_warm = 0.40 * strength;
}

static void
supply_dead (RwPracticeParams *params,
             double            strength)
{
  for (guint i = 0; i < params->n_rails; i++)
    params->rail[i].alive = strength > 0 ? 0 : 1;
}

/* Its diode, capacitor or regulator goes; what is left of it ripples. */
static void
lose_rail (RwPracticeRail *rail,
           double          strength)
{
  rail->alive = strength > 0.95 ? 0 : 1 - strength;
  rail->switch_ripple_volts *= 1 + 8 * strength;
}

static void
p12_lost (RwPracticeParams *params,
          double            strength)
{
  lose_rail (rail_of (params, "p12"), strength);
}

static void
p24_lost (RwPracticeParams *params,
          double            strength)
{
  lose_rail (rail_of (params, "p24"), strength);
}

static void
m5_lost (RwPracticeParams *params,
         double            strength)
{
  lose_rail (rail_of (params, "m5"), strength);
}

static void
m12_lost (RwPracticeParams *params,
          double            strength)
{
  lose_rail (rail_of (params, "m12"), strength);
}

static void
raw_capacitor_tired (RwPracticeParams *params,
                     double            strength)
{
  reference_of (params)->raw.farads *= 1 - 0.9 * strength;
}

/* A diode is open or it is not. */
static void
bridge_diode_open (RwPracticeParams *params,
                   double            strength)
{
  reference_of (params)->raw.half_wave = strength > 0;
}

static void
pass_transistor_open (RwPracticeParams *params,
                      double            strength)
{
  reference_of (params)->alive = strength > 0 ? 0 : 1;
}

/* The reference sinks, sinks further when warm, and the trim has little say. */
static void
regulator_drifted (RwPracticeParams *params,
                   double            strength)
{
  const double middle = (params->trim_lo_volts + params->trim_hi_volts) / 2;
  const double half = (params->trim_hi_volts - params->trim_lo_volts) / 2
                      * (1 - 0.8 * strength);

  params->trim_lo_volts = middle * (1 - 0.06 * strength) - half;
  params->trim_hi_volts = middle * (1 - 0.06 * strength) + half;
  params->warm_reference -= 0.020 * strength;
}

static void
sense_open (RwPracticeParams *params,
            double            strength)
{
  params->sense = RW_PRACTICE_SENSE_OPEN;
  params->sense_catch_share = 0.04 + 0.10 * strength;
}

static void
protection_latched (RwPracticeParams *params,
                    double            strength)
{
  params->latched_start = strength > 0;
  params->over_rest_seconds = 240;
}

static void
low_mains (RwPracticeParams *params,
           double            strength)
{
  params->mains_share *= 1 - 0.30 * strength;
}

static void
mains_path_open (RwPracticeParams *params,
                 double            strength)
{
  params->mains_share *= strength > 0 ? 0 : 1;
}

const RwPracticeFaultKind rw_practice_faults_supply[] = {
  { "trim-low", fits_any, trim_low },
  { "trim-high", fits_any, trim_high },
  { "trim-worn", fits_any, trim_worn },
  { "output-capacitors-tired", fits_switcher, output_capacitors_tired },
  { "minimum-load-missing", fits_switcher, minimum_load_missing },
  { "supply-overloaded", fits_any, supply_overloaded },
  { "supply-overheats", fits_any, supply_overheats },
  { "supply-primary-dead", fits_switcher, supply_dead },
  { "p12-lost-supply", fits_p12, p12_lost },
  { "p24-lost-supply", fits_p24, p24_lost },
  { "minus5-lost-supply", fits_m5, m5_lost },
  { "minus12-lost-supply", fits_m12, m12_lost },
  { "raw-capacitor-tired", fits_linear, raw_capacitor_tired },
  { "bridge-diode-open", fits_linear, bridge_diode_open },
  { "pass-transistor-bad", fits_linear, pass_transistor_open },
  { "regulator-drifted", fits_linear, regulator_drifted },
  { "sense-open", fits_any, sense_open },
  { "protection-latched", fits_any, protection_latched },
  { "low-mains", fits_any, low_mains },
  { "mains-path-open", fits_any, mains_path_open },
  { NULL, NULL, NULL },
};
