/* rw-practice-look-supply.c: what looking and feeling show at the supply.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-practice-look-private.h"

#include <math.h>

#include "rw-practice-parts.h"
#include "rw-practice-try.h"

static const char *
trim_seal (const RwPracticeLook *look)
{
  static const char *const turned[] = { "trim-low", "trim-high", NULL };

  return rw_practice_cabinet_get_trim_turned (look->cabinet)
                 || rw_practice_look_has_any (look, turned)
             ? "turned"
             : "sealed";
}

static const char *
always_match (const RwPracticeLook *look)
{
  return "match";
}

static const char *
warm_up_drift (const RwPracticeLook *look)
{
  const RwPracticeTry cold = rw_practice_try_warmth (look->model, 0);
  const RwPracticeTry warm = rw_practice_try_warmth (look->model, 1);

  if (cold.terminal_volts - warm.terminal_volts >= 0.08)
    return "both";
  return cold.board_volts - warm.board_volts >= 0.08 ? "board" : "steady";
}

static const char *
current (const RwPracticeLook *look)
{
  if (look->flow->amps < 0.1)
    return "none";
  return look->state->fold < 0.995 || look->flow->amps > 1.15 * look->params->full_amps
             ? "near"
             : "normal";
}

static const char *
dummy_load (const RwPracticeLook *look)
{
  const RwPracticeTry bare = rw_practice_try_dummy (look->model, 0);
  const RwPracticeTry loaded = rw_practice_try_dummy (look->model, 1);

  if (loaded.terminal_volts < 1 || loaded.ticks)
    return "dead";
  if (loaded.terminal_volts > 5.40)
    return "over";
  if (bare.ticks)
    return "starts";
  if (bare.terminal_volts - loaded.terminal_volts > 0.15
      || rw_practice_look_has (look, "trim-worn"))
    return "falls";
  return loaded.terminal_volts < 4.95 ? "low" : "steady";
}

static const char *
trim_response (const RwPracticeLook *look)
{
  if (rw_practice_look_has (look, "trim-worn"))
    return "jumps";
  return look->params->sense == RW_PRACTICE_SENSE_OPEN
                 || rw_practice_try_trim (look->model) < 0.5
             ? "none"
             : "smooth";
}

static const char *
split_load (const RwPracticeLook *look)
{
  if (rw_practice_look_has (look, "board-short"))
    return "board";
  return rw_practice_look_has (look, "supply-overloaded") ? "any" : "same";
}

static const char *
unplug_wait (const RwPracticeLook *look)
{
  const gboolean dead = look->reference->alive <= 0 || look->params->mains_share <= 0;

  if (look->params->latched_start)
    return "back";
  return dead ? "dead" : "alive";
}

static const char *
supply_heat (const RwPracticeLook *look)
{
  static const char *const heating[] = { "supply-overloaded", "trim-high", "board-short",
                                         NULL };

  if (rw_practice_look_has (look, "supply-overheats"))
    return "still";
  return rw_practice_look_has_any (look, heating) ? "hot" : "cool";
}

static const char *
supply_swap (const RwPracticeLook *look)
{
  static const char *const in_supply[] = { "trim-low",
                                           "trim-high",
                                           "trim-worn",
                                           "output-capacitors-tired",
                                           "minimum-load-missing",
                                           "supply-overloaded",
                                           "supply-overheats",
                                           "supply-primary-dead",
                                           "p12-lost-supply",
                                           "p24-lost-supply",
                                           "minus5-lost-supply",
                                           "minus12-lost-supply",
                                           "raw-capacitor-tired",
                                           "bridge-diode-open",
                                           "pass-transistor-bad",
                                           "regulator-drifted",
                                           "protection-latched",
                                           "loose-terminal-screw",
                                           NULL };

  return rw_practice_look_has_any (look, in_supply) ? "gone" : "stays";
}

static const char *
mains_outlet (const RwPracticeLook *look)
{
  /* A path that is open lies behind the outlet. */
  return look->params->mains_share > 0 && look->params->mains_share < 0.9 ? "low" : "right";
}

static const char *
mains_path (const RwPracticeLook *look)
{
  return look->params->mains_share > 0 ? "through" : "open";
}

static const char *
secondary_volts (const RwPracticeLook *look)
{
  if (look->params->supply != RW_PRACTICE_LINEAR)
    return NULL;
  if (look->params->mains_share <= 0)
    return "none";
  return look->params->mains_share < 0.9 ? "low" : "right";
}

static const char *
big_capacitor_ripple (const RwPracticeLook *look)
{
  if (look->params->supply != RW_PRACTICE_LINEAR)
    return NULL;
  if (look->state->raw_volts < 1)
    return "none";

  const double volts = rw_practice_sawtooth_reading (look->state->raw_ripple,
                                                     look->state->raw_ripple);

  if (volts < 0.70 && !look->reference->raw.half_wave)
    return "usual";
  return look->reference->raw.half_wave ? "single" : "double";
}

static const char *
big_capacitor_dc (const RwPracticeLook *look)
{
  const double volts = look->state->raw_volts;

  if (look->params->supply != RW_PRACTICE_LINEAR)
    return NULL;
  if (volts < 1)
    return "none";
  if (volts < 8)
    return "low";
  return volts > 11.5 ? "high" : "right";
}

const RwPracticeLookKind rw_practice_looks_supply[] = {
  { "bigcap-dc", TRUE, big_capacitor_dc },
  { "bigcap-ripple", TRUE, big_capacitor_ripple },
  { "mains-outlet-volts", FALSE, mains_outlet },
  { "mains-path-ohms", FALSE, mains_path },
  { "p5-current", TRUE, current },
  { "p5-dummy-load", FALSE, dummy_load },
  { "secondary-volts", TRUE, secondary_volts },
  { "selector-look", FALSE, always_match },
  { "split-load", FALSE, split_load },
  { "supply-heat", FALSE, supply_heat },
  { "supply-swap", FALSE, supply_swap },
  { "trim-response", FALSE, trim_response },
  { "trim-seal-look", FALSE, trim_seal },
  { "unplug-wait", FALSE, unplug_wait },
  { "warm-up-drift", FALSE, warm_up_drift },
  { NULL, FALSE, NULL },
};
