/* rw-practice-look-supply.c: what looking and feeling show at the supply.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-practice-look-private.h"

#include <math.h>

#include "rw-practice-parts.h"
#include "rw-practice-try.h"

static const double blown_ohms = 1e6, slack_ohms = 0.06;
static const double hot_share = 1.15; /* of the heat that is usual */
static const double split_share = 0.45; /* of the board set that can be unplugged alone */
static const double split_volts = 0.15, split_some_volts = 0.05, split_ripple_volts = 0.05;
static const double restless_volts = 0.035; /* standard deviation: 0.15 V from end to end */

static const char *
trim_seal (const RwPracticeLook *look)
{
  return rw_practice_cabinet_get_trim_turned (look->cabinet) || look->params->trim_touched
             ? "turned"
             : "sealed";
}

static const char *
selector (const RwPracticeLook *look)
{
  return fabs (look->params->tap_ratio - 1) > 0.01 ? "wrong" : "match";
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
  return look->flow->amps > 1.15 * look->params->full_amps ? "near" : "normal";
}

static const char *
dummy_load (const RwPracticeLook *look)
{
  const RwPracticeTry bare = rw_practice_try_dummy (look->model, 0);
  const RwPracticeTry loaded = rw_practice_try_dummy (look->model, 1);
  const double shown = loaded.terminal_volts * look->params->meter_gain;

  if (loaded.terminal_volts < 1 || loaded.ticks)
    return "dead";
  if (shown > 5.40)
    return "over";
  if (bare.ticks)
    return "starts";
  if (bare.terminal_volts - loaded.terminal_volts > 0.15
      || look->params->reference_noise > restless_volts)
    return "falls";
  return shown < 4.95 ? "low" : "steady";
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
  if (look->params->lamp_amps > 0)
    return "lamps";

  const RwPracticeTry whole = rw_practice_try_split (look->model, 0);
  const RwPracticeTry part = rw_practice_try_split (look->model, split_share);
  const double gain = part.board_volts - whole.board_volts;

  if (part.board_ripple > split_ripple_volts && gain > split_some_volts)
    return "ripples";
  return gain > split_volts ? "any" : "same";
}

static const char *
unplug_wait (const RwPracticeLook *look)
{
  const gboolean dead = look->reference->alive <= 0 || look->params->mains_share <= 0
                        || look->params->fuse_ohms > blown_ohms;

  if (look->params->latched_start)
    return "back";
  return dead ? "dead" : "alive";
}

static const char *
supply_heat (const RwPracticeLook *look)
{
  if (rw_practice_look_has (look, "supply-overheats") || look->params->mains_share <= 0)
    return "still"; /* vents blocked, or a fan without mains */
  return rw_practice_try_heat (look->model) > hot_share
                 || (rw_practice_look_has (look, "bridge-diode-shorted")
                     && look->params->fuse_ohms < blown_ohms)
             ? "hot"
             : "cool";
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
                                           "bridge-diode-shorted",
                                           "wrong-tap",
                                           "pass-transistor-bad",
                                           "regulator-drifted",
                                           "protection-latched",
                                           "loose-terminal-screw",
                                           NULL };

  if (look->params->supply == RW_PRACTICE_LINEAR
      && rw_practice_look_has (look, "fuse-holder-tired"))
    return "gone"; /* its fuses come with it */
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

  const double share = look->params->mains_share * look->params->tap_ratio;

  if (share <= 0)
    return "none";
  if (look->reference->raw.winding_volts <= 0
      || rw_practice_look_has (look, "bridge-diode-shorted"))
    return "one";
  if (rw_practice_look_has (look, "fuse-holder-tired") && look->params->fuse_ohms > slack_ohms)
    return "one";
  if (share > 1.1)
    return "high";
  return share < 0.9 ? "low" : "right";
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
  const double volts = look->state->raw_volts * look->params->meter_gain;

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
  { "selector-look", FALSE, selector },
  { "split-load", FALSE, split_load },
  { "supply-heat", FALSE, supply_heat },
  { "supply-swap", FALSE, supply_swap },
  { "trim-response", FALSE, trim_response },
  { "trim-seal-look", FALSE, trim_seal },
  { "unplug-wait", FALSE, unplug_wait },
  { "warm-up-drift", FALSE, warm_up_drift },
  { NULL, FALSE, NULL },
};
