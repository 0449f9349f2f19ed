/* rw-practice-faults-supply.c: faults of a practice cabinet's supply and its mains.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-practice-faults-private.h"

static const double lost_fall = 0.075; /* of its volts, that a dying rail falls under its own load */

static gboolean
fits_switcher (const RwPracticeParams *params)
{
  return params->supply == RW_PRACTICE_SWITCHER;
}

static gboolean
fits_m12 (const RwPracticeParams *params)
{
  return rw_practice_faults_has_rail (params, "m12");
}

static gboolean
fits_p12 (const RwPracticeParams *params)
{
  return rw_practice_faults_has_rail (params, "p12");
}

static gboolean
fits_p24 (const RwPracticeParams *params)
{
  return rw_practice_faults_has_rail (params, "p24");
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
  params->trim_touched = TRUE;
  turn_start (params, -0.10 * strength);
}

static void
trim_high (RwPracticeParams *params,
           double            strength)
{
  params->trim_touched = TRUE;
  turn_start (params, 0.11 * strength);
}

/* A dirty track under the wiper: the reference wanders, and jumps where the wiper lifts. */
static void
trim_worn (RwPracticeParams *params,
           double            strength)
{
  params->reference_noise += 0.06 * strength;
  params->jerk_rate += 0.03 * strength;
  params->jerk_volts = MAX (params->jerk_volts, 0.5 * strength);
}

/* ESR up: more ripple, worse regulation, deeper dips, and a loop that works harder for the same
 * volts. */
static void
output_capacitors_tired (RwPracticeParams *params,
                         double            strength)
{
  RwPracticeRail *reference = rw_practice_faults_reference (params);

  reference->ohms += 0.050 * strength;
  reference->load_ohms += 0.055 * strength;
  reference->dynamic_ohms += 0.700 * strength;
  params->light_rise += 0.45 * strength;
  params->cold_share = MAX (params->cold_share, 0.25 * strength);
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
  rw_practice_faults_reference (params)->bleed_amps *= 1 - strength;
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
  params->warm_reference -= 0.015 * strength;
  params->limit_warm = 0.55 * strength;
}

/* Its start-up part goes first: it tries, and tries again. */
static void
supply_dead (RwPracticeParams *params,
             double            strength)
{
  params->start_weak = strength > 0 && strength < 0.25;
  if (params->start_weak)
    return;
  for (guint i = 0; i < params->n_rails; i++)
    params->rail[i].alive = strength > 0 ? 0 : 1;
}

/* Its diode, capacitor or regulator goes; what is left of it ripples, and falls when asked. */
static void
lose_rail (RwPracticeRail *rail,
           double          strength)
{
  const double ohms = lost_fall * rail->nominal / MAX (1e-3, rail->load_amps) * strength;

  rail->alive = strength > 0.95 ? 0 : 1 - strength;
  rail->switch_ripple_volts *= 1 + 40 * strength;
  if (rail->feed == RW_PRACTICE_FOLLOWER)
    rail->ohms += ohms;
  else
    rail->load_ohms += ohms;
}

static void
p12_lost (RwPracticeParams *params,
          double            strength)
{
  lose_rail (rw_practice_faults_rail (params, "p12"), strength);
}

static void
p24_lost (RwPracticeParams *params,
          double            strength)
{
  lose_rail (rw_practice_faults_rail (params, "p24"), strength);
}

static void
m5_lost (RwPracticeParams *params,
         double            strength)
{
  lose_rail (rw_practice_faults_rail (params, "m5"), strength);
}

static void
m12_lost (RwPracticeParams *params,
          double            strength)
{
  lose_rail (rw_practice_faults_rail (params, "m12"), strength);
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
  params->trim_touched = params->trim_touched || strength > 0.5;
  params->over_rest_seconds = 240;
}

static void
low_mains (RwPracticeParams *params,
           double            strength)
{
  params->mains_share *= 1 - 0.24 * strength;
}

static void
mains_path_open (RwPracticeParams *params,
                 double            strength)
{
  params->mains_share *= strength > 0 ? 0 : 1;
}

const RwPracticeFaultKind rw_practice_faults_supply[] = {
  /* F01: all rails low in proportion, drops and ripple as ever, trim smooth. */
  { "trim-low", rw_practice_faults_fit_any, trim_low },
  /* F02: all rails that follow high, supply hot. */
  { "trim-high", rw_practice_faults_fit_any, trim_high },
  /* F03: trim jumps, rails wander, spikes with a tap. */
  { "trim-worn", rw_practice_faults_fit_any, trim_worn },
  /* F04: ripple, dips at load steps, more fall under load, worse cold. */
  { "output-capacitors-tired", fits_switcher, output_capacitors_tired },
  /* F11: odd or ticking with the board out, right with a dummy load. */
  { "minimum-load-missing", fits_switcher, minimum_load_missing },
  /* F12: all rails low, only loaded; current at the label; hot. */
  { "supply-overloaded", rw_practice_faults_fit_any, supply_overloaded },
  /* F13: falls after 20 to 40 minutes, no air. */
  { "supply-overheats", rw_practice_faults_fit_any, supply_overheats },
  /* F14: every rail 0, or ticking; mains there. */
  { "supply-primary-dead", fits_switcher, supply_dead },
  /* F15: +12 low or 0, rippling; +5 right. */
  { "p12-lost-supply", fits_p12, p12_lost },
  { "p24-lost-supply", fits_p24, p24_lost },
  /* F16: −5 low or 0 at the terminals, board out; others right. */
  { "minus5-lost-supply", rw_practice_faults_fit_m5, m5_lost },
  { "minus12-lost-supply", fits_m12, m12_lost },
  /* F23: terminals high or wandering, trim without a say. */
  { "sense-open", rw_practice_faults_fit_any, sense_open },
  /* F43: all 0; comes back after some minutes unplugged. */
  { "protection-latched", rw_practice_faults_fit_any, protection_latched },
  /* F27: mains low; raw rails low in ratio. */
  { "low-mains", rw_practice_faults_fit_any, low_mains },
  /* F28: no mains at the supply, no lamp. */
  { "mains-path-open", rw_practice_faults_fit_any, mains_path_open },
  { NULL, NULL, NULL },
};
