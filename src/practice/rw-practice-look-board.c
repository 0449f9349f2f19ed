/* rw-practice-look-board.c: what looking and listening show at the board and its sound.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-practice-look-private.h"

#include <math.h>

#include "rw-practice-circuit.h"
#include "rw-practice-symptoms.h"
#include "rw-practice-try.h"

static const char *
board_input_ohms (const RwPracticeLook *look)
{
  return look->reference->load_amps > 2 * look->params->full_amps ? "short" : "normal";
}

static const char *
tap_test (const RwPracticeLook *look)
{
  static const char *const in_supply[] = { "cracked-joint", "trim-worn", NULL };

  if (rw_practice_look_has (look, "socket-oxidised"))
    return "board";
  return rw_practice_look_has_any (look, in_supply) ? "supply" : "still";
}

static const char *
reset_pin (const RwPracticeLook *look)
{
  if (look->state->reset_age <= RW_PRACTICE_WATCH)
    return "bobbing";
  return look->state->board == RW_PRACTICE_BOARD_RUNNING ? "steady" : "stuck";
}

static const char *
self_test (const RwPracticeLook *look)
{
  if (look->state->board != RW_PRACTICE_BOARD_RUNNING
      || rw_practice_symptoms_present (look->model, "boot-loop"))
    return "refuses";
  return rw_practice_symptoms_present (look->model, "garbled-graphics") ? "names" : "passes";
}

static const char *
socket_reseat (const RwPracticeLook *look)
{
  return rw_practice_look_has (look, "socket-oxidised") ? "better" : "same";
}

static const char *
board_swap (const RwPracticeLook *look)
{
  static const char *const on_board[] = { "supply-fine",      "socket-oxidised",
                                          "memory-bad",       "board-short",
                                          "board-trace-loss", "audio-filter-tired",
                                          "audio-amp-bad",    NULL };

  return rw_practice_look_has_any (look, on_board) ? "gone" : "stays";
}

/* Nothing in a practice cabinet can be wrong with these. */
static const char *
always_good (const RwPracticeLook *look)
{
  return "good";
}

static const char *
always_passes (const RwPracticeLook *look)
{
  return "passes";
}

static const char *
bars_board_out (const RwPracticeLook *look)
{
  static const char *const makes[] = { "ground-wire-poor", "audio-ground-loop", NULL };

  return rw_practice_look_has_any (look, makes) ? "gone" : "without";
}

static const char *
lowest_at_reset (const RwPracticeLook *look)
{
  const double steady = fabs (look->flow->chip_volts);

  if (look->state->reset_chip_volts <= 0
      || look->state->reset_chip_volts >= look->params->reset_below_volts)
    return "none";
  /* A dip of some 60 ms in a window of 250 ms shows as a quarter of itself. */
  if (look->state->reset_in_step
      && steady - (steady - look->state->reset_chip_volts) / 4 >= 4.75)
    return "small";
  return "dip";
}

static gboolean
hums (const RwPracticeLook *look)
{
  RwPracticeModel on = *look->model;

  /* Asked with the board out: was there a hum before? */
  on.state.fitted = TRUE;
  on.state.level = 1;
  on.state.board = RW_PRACTICE_BOARD_RUNNING;
  rw_practice_circuit_solve (&on);
  return rw_practice_symptoms_present (&on, "audio-hum");
}

static const char *
hum_at_zero (const RwPracticeLook *look)
{
  return hums (look) ? "stays" : "quiet";
}

/* The amplifier sits on the board here; a loop through the monitor's ground stays when it is
 * gone. */
static const char *
hum_board_out (const RwPracticeLook *look)
{
  if (!hums (look))
    return "without";
  return rw_practice_look_has (look, "audio-ground-loop") ? "stays" : "gone";
}

static const char *
amp_input_short (const RwPracticeLook *look)
{
  if (!hums (look))
    return "without";
  return rw_practice_look_has (look, "audio-ground-loop") ? "stops" : "stays";
}

static const char *
speaker_dc (const RwPracticeLook *look)
{
  return rw_practice_look_has (look, "audio-amp-bad") ? "offset" : "none";
}

static const char *
audio_ground (const RwPracticeLook *look)
{
  const double loop = rw_practice_look_has (look, "audio-ground-loop")
                          ? look->params->own_hum_volts / 10
                          : 0;
  const double volts = rw_practice_circuit_ripple (look->model, -1, RW_PLACE_WIRE) + loop;

  if (volts > 0.020)
    return "high";
  return volts > 0.005 ? "some" : "good";
}

static const char *
audio_loud (const RwPracticeLook *look)
{
  const double sag = rw_practice_try_loud (look->model);

  if (sag > 1)
    return "collapses";
  return sag > 0.5 ? "sags" : "steady";
}

const RwPracticeLookKind rw_practice_looks_board[] = {
  { "amp-input-short", TRUE, amp_input_short },
  { "audio-ground-drop", TRUE, audio_ground },
  { "audio-rail-loud", TRUE, audio_loud },
  { "bars-board-out", FALSE, bars_board_out },
  { "board-input-ohms", FALSE, board_input_ohms },
  { "board-swap-donor", FALSE, board_swap },
  { "hum-board-out", FALSE, hum_board_out },
  { "hum-volume-zero", TRUE, hum_at_zero },
  { "meter-self-check", FALSE, always_passes },
  { "p5-minmax-reset", TRUE, lowest_at_reset },
  { "reset-pin", TRUE, reset_pin },
  { "self-test", TRUE, self_test },
  { "socket-reseat", FALSE, socket_reseat },
  { "speaker-dc", TRUE, speaker_dc },
  { "speaker-path", FALSE, always_good },
  { "tap-test", TRUE, tap_test },
  { NULL, FALSE, NULL },
};
