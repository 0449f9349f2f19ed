/* rw-practice-look-board.c: what looking and listening show at the board and its sound.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-practice-look-private.h"

#include <math.h>

#include "rw-practice-circuit.h"
#include "rw-practice-symptoms-private.h"
#include "rw-practice-try.h"

static const double fed_volts = 4.7, dip_volts = 4.75, still_volts = 0.03; /* of +5 */
static const double lost_share = 0.5;
static const double bob_seconds = 30; /* from reset to reset, to be called bobbing */
static const double most_offset_share = 0.3; /* of its rail, across a dead amplifier's speaker */

static const char *
board_input_ohms (const RwPracticeLook *look)
{
  return look->reference->load_amps > 2 * look->params->full_amps ? "short" : "normal";
}

static const char *
tap_test (const RwPracticeLook *look)
{
  static const char *const in_supply[] = { "cracked-joint", "trim-worn", "fuse-holder-tired",
                                           NULL };

  if (look->params->knock_resets
      || (rw_practice_look_has (look, "cracked-joint") && look->params->crack_on_board))
    return "board";
  return rw_practice_look_has_any (look, in_supply) ? "supply" : "still";
}

/* First +5 V: a pin says nothing on a board that is not fed. */
static const char *
reset_pin (const RwPracticeLook *look)
{
  const double unit = look->reference->nominal / 5;

  if (fabs (look->flow->finger_volts - look->state->ground_volts) < fed_volts * unit)
    return "unfed";
  if (look->state->reset_age <= bob_seconds && look->state->reset_gap <= bob_seconds)
    return "bobbing";
  return look->state->board == RW_PRACTICE_BOARD_RUNNING ? "steady" : "stuck";
}

/* Memory that has lost its bias altogether does not get as far as a test. */
static gboolean
lacks_bias (const RwPracticeLook *look)
{
  if (look->params->needs_bias)
    for (guint i = 0; i < look->params->n_rails; i++)
      if (look->params->rail[i].sign < 0
          && rw_practice_symptoms_board_share (look->model, i) < lost_share)
        return TRUE;
  return FALSE;
}

static const char *
self_test (const RwPracticeLook *look)
{
  if (look->state->board != RW_PRACTICE_BOARD_RUNNING || lacks_bias (look)
      || rw_practice_symptoms_present (look->model, "boot-loop"))
    return "refuses";
  if (rw_practice_symptoms_present (look->model, "garbled-graphics")
      && !look->params->own_picture)
    return "names";
  return rw_practice_symptoms_present (look->model, "scores-lost") ? "forgets" : "passes";
}

static const char *
socket_reseat (const RwPracticeLook *look)
{
  return rw_practice_look_has (look, "socket-oxidised") ? "better" : "same";
}

static const char *
board_swap (const RwPracticeLook *look)
{
  static const char *const on_board[] = { "supply-fine", "reset-part-bad",   "socket-oxidised",
                                          "memory-bad",       "board-short",
                                          "board-trace-loss", "board-corroded",
                                          "scores-battery-flat", NULL };
  static const char *const in_sound[] = { "audio-filter-tired", "audio-amp-bad", NULL };

  return rw_practice_look_has_any (look, on_board)
                 || (!look->params->amp_beside && rw_practice_look_has_any (look, in_sound))
             ? "gone"
             : "stays";
}

static const char *
speaker_path (const RwPracticeLook *look)
{
  return look->params->speaker_loss > 0 ? "bad" : "good";
}

static const char *
meter_check (const RwPracticeLook *look)
{
  return fabs (look->params->meter_gain - 1) > 0.01 ? "fails" : "passes";
}

/* The cabinet as it was before the board came out, nothing else moved. */
static RwPracticeModel
with_board (const RwPracticeLook *look)
{
  RwPracticeModel on = *look->model;

  on.state.fitted = TRUE;
  on.state.level = 1;
  on.state.board = RW_PRACTICE_BOARD_RUNNING;
  rw_practice_circuit_solve (&on);
  return on;
}

static const char *
bars_board_out (const RwPracticeLook *look)
{
  const RwPracticeModel on = with_board (look);

  if (look->params->monitor_hum_share >= 1)
    return "stays";
  if (rw_practice_symptoms_present (&on, "picture-bars"))
    return "gone";
  return rw_practice_symptoms_present (&on, "picture-dim") ? "dim" : "without";
}

/* At the edge, where the leads are; whether it resets just then or not. */
static const char *
lowest_at_reset (const RwPracticeLook *look)
{
  const RwPracticeState *state = look->state;
  const double unit = look->reference->nominal / 5;
  const double lowest = MIN (state->edge_lowest, state->edge_shown);

  if (lowest * look->params->meter_gain < dip_volts * unit)
    return "dip";
  return state->edge_usual - lowest > still_volts * unit ? "small" : "none";
}

static gboolean
hums (const RwPracticeLook *look)
{
  const RwPracticeModel on = with_board (look);

  return rw_practice_symptoms_present (&on, "audio-hum");
}

static const char *
hum_at_zero (const RwPracticeLook *look)
{
  const RwPracticeModel on = with_board (look);

  if (hums (look))
    return "stays";
  return rw_practice_symptoms_present (&on, "hum-with-volume") ? "goes" : "quiet";
}

/* An amplifier on the board goes with it. */
static const char *
hum_board_out (const RwPracticeLook *look)
{
  const RwPracticeModel on = with_board (look);

  if (rw_practice_symptoms_present (&on, "hum-with-volume"))
    return "gone"; /* what comes before the volume is the board's */
  if (!hums (look))
    return "without";
  return look->params->amp_beside ? "stays" : "gone";
}

static const char *
amp_input_short (const RwPracticeLook *look)
{
  const RwPracticeModel on = with_board (look);

  if (rw_practice_symptoms_present (&on, "hum-with-volume"))
    return "stops";
  if (!hums (look))
    return "without";
  return look->params->loop_volts > 0 ? "stops" : "stays";
}

static const char *
speaker_dc (const RwPracticeLook *look)
{
  const int audio = look->params->audio;
  const double volts = audio < 0 ? 0
                                 : most_offset_share * look->params->amp_loss
                                       * fabs (look->state->flow[audio].chip_volts);

  if (volts > 0.3)
    return "offset";
  return volts > 0.05 ? "some" : "none";
}

static const char *
audio_ground (const RwPracticeLook *look)
{
  const double volts = rw_practice_circuit_ripple (look->model, -1, RW_PLACE_WIRE)
                       + look->params->loop_volts;

  if (volts > 0.020)
    return "high";
  return volts > 0.005 ? "some" : "good";
}

static const char *
audio_loud (const RwPracticeLook *look)
{
  const int audio = look->params->audio;

  if (look->state->board != RW_PRACTICE_BOARD_RUNNING)
    return NULL; /* nothing to make it loud with */

  const double sag = rw_practice_try_loud (look->model);
  const double usual = rw_practice_try_loud_usual (look->model);

  if (audio >= 0
      && fabs (look->state->flow[audio].finger_volts)
             < lost_share * look->params->rail[audio].nominal)
    return "collapses";
  if (sag > usual + 0.5)
    return "collapses";
  return sag > usual ? "sags" : "steady";
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
  { "meter-self-check", FALSE, meter_check },
  { "p5-minmax-reset", TRUE, lowest_at_reset },
  { "reset-pin", TRUE, reset_pin },
  { "self-test", TRUE, self_test },
  { "socket-reseat", FALSE, socket_reseat },
  { "speaker-dc", TRUE, speaker_dc },
  { "speaker-path", FALSE, speaker_path },
  { "tap-test", TRUE, tap_test },
  { NULL, FALSE, NULL },
};
