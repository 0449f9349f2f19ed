/* rw-practice-faults-board.c: faults of a practice cabinet's board and sound.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-practice-faults-private.h"

static gboolean
fits_audio (const RwPracticeParams *params)
{
  return params->audio >= 0;
}

static void
audio_filter_tired (RwPracticeParams *params,
                    double            strength)
{
  RwPracticeRail *rail = &params->rail[params->audio];

  rail->filter_ohms += 1.5 * strength;
  if (rail->feed == RW_PRACTICE_UNREGULATED)
    rail->raw.farads *= 1 - 0.75 * strength;
}

static void
audio_amp_bad (RwPracticeParams *params,
               double            strength)
{
  params->rail[params->audio].load_amps += 0.6 * strength;
  params->own_hum_volts += 0.5 * strength;
  params->amp_loss = MAX (params->amp_loss, strength);
}

static void
audio_ground_loop (RwPracticeParams *params,
                   double            strength)
{
  params->own_hum_volts += 0.3 * strength;
  params->loop_volts += 0.03 * strength;
}

static void
board_short (RwPracticeParams *params,
             double            strength)
{
  rw_practice_faults_reference (params)->load_amps *= 1 + 10 * strength;
  rw_practice_faults_reference (params)->load_follow = 1;
}

static void
board_trace_loss (RwPracticeParams *params,
                  double            strength)
{
  rw_practice_faults_reference (params)->path.trace_ohms += 0.120 * strength;
}

static void
memory_bad (RwPracticeParams *params,
            double            strength)
{
  params->own_garble = strength > 0;
  params->own_palette = strength > 0.2 && strength < 0.6; /* the chip that holds the colours */
  params->own_reset_rate += strength > 0.85 ? 1 : 0; /* it never gets past its own test */
}

static void
socket_oxidised (RwPracticeParams *params,
                 double            strength)
{
  params->own_garble = strength > 0.5;
  params->own_reset_rate += strength > 0.85 ? 1 : 0.03 * strength;
  params->knock_resets = params->knock_resets || strength > 0.2;
}

/* Supply and wiring are fine. The game's own logic is at fault: its picture is wrong though its
 * memory passes, or its processor is lost again and again and the watchdog starts it anew. A weak one
 * shows nothing while it is watched. */
static void
board_logic_bad (RwPracticeParams *params,
                 double            strength)
{
  params->own_picture = params->own_picture || (strength > 0.3 && strength <= 0.65);
  if (strength > 0.65)
    {
      params->own_reset_rate = 2 + 4 * strength;
      params->reset_seconds = 0.15;
    }
}

/* The board resets by itself, whatever its rails do; or its reset is over too soon, and only a second
 * switch-on starts it. */
static void
reset_part_bad (RwPracticeParams *params,
                double            strength)
{
  params->slow_start = strength > 0.7;
  if (params->slow_start)
    return;
  params->own_reset_rate += 0.10 * strength;
  if (params->barks && strength > 0.2)
    {
      params->own_reset_rate = 3 + 3 * strength;
      params->reset_seconds = 0.15;
    }
}

/* A leaked battery, damp or old foam: salts conduct once it is warm. */
static void
board_corroded (RwPracticeParams *params,
                double            strength)
{
  params->own_reset_warm += 0.05 * strength;
  params->own_garble = params->own_garble || strength > 0.6;
  params->knock_resets = params->knock_resets || strength > 0.4;
  params->battery_volts *= 1 - 0.6 * strength;
  params->panel_ground_ohms += strength > 0.8 ? 250 : 0;
}

static void
scores_battery_flat (RwPracticeParams *params,
                     double            strength)
{
  params->battery_volts *= 1 - strength;
}

const RwPracticeFaultKind rw_practice_faults_board[] = {
  /* F35: hum whatever the volume, ripple at the sound rail, sags when loud. */
  { "audio-filter-tired", fits_audio, audio_filter_tired },
  /* F36: DC at the loudspeaker, hot, low or rough sound. */
  { "audio-amp-bad", fits_audio, audio_amp_bad },
  /* F37: AC along the sound's ground. */
  { "audio-ground-loop", fits_audio, audio_ground_loop },
  /* F29, F30: supply right with the board out, collapses or ticks with it; latched chip: current up. */
  { "board-short", rw_practice_faults_fit_any, board_short },
  /* F33: edge right, far chip more than 0.1 V lower. */
  { "board-trace-loss", rw_practice_faults_fit_any, board_trace_loss },
  /* F31: rails right, self-test names a chip. */
  { "memory-bad", rw_practice_faults_fit_any, memory_bad },
  /* F32: rails right, answers to a tap, a re-seat helps. */
  { "socket-oxidised", rw_practice_faults_fit_any, socket_oxidised },
  /* F48, F49: rails right and steady, picture wrong or watchdog barking; or nothing to be found. */
  { "supply-fine", rw_practice_faults_fit_any, board_logic_bad },
  /* F34: no dip while it resets, reset pin bobs or is stuck, second switch-on works. */
  { "reset-part-bad", rw_practice_faults_fit_any, reset_part_bad },
  /* F46: crust; rails right; resets after some minutes. */
  { "board-corroded", rw_practice_faults_fit_any, board_corroded },
  /* Y33: settings do not stay. */
  { "scores-battery-flat", rw_practice_faults_fit_any, scores_battery_flat },
  { NULL, NULL, NULL },
};
