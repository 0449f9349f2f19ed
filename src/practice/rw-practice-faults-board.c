/* rw-practice-faults-board.c: faults of a practice cabinet's board and sound.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-practice-faults-private.h"

static RwPracticeRail *
reference_of (RwPracticeParams *params)
{
  return &params->rail[params->reference];
}

static gboolean
fits_any (const RwPracticeParams *params)
{
  return TRUE;
}

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
}

static void
audio_ground_loop (RwPracticeParams *params,
                   double            strength)
{
  params->own_hum_volts += 0.3 * strength;
}

static void
board_short (RwPracticeParams *params,
             double            strength)
{
  reference_of (params)->load_amps *= 1 + 10 * strength;
  reference_of (params)->load_follow = 1;
}

static void
board_trace_loss (RwPracticeParams *params,
                  double            strength)
{
  reference_of (params)->path.trace_ohms += 0.080 * strength;
}

static void
memory_bad (RwPracticeParams *params,
            double            strength)
{
  params->own_garble = strength > 0;
}

static void
socket_oxidised (RwPracticeParams *params,
                 double            strength)
{
  params->own_garble = strength > 0.5;
  params->own_reset_rate += 0.03 * strength;
}

/* Nothing wrong with the supply: the board resets by itself. */
static void
board_resets (RwPracticeParams *params,
              double            strength)
{
  params->own_reset_rate += 0.10 * strength;
}

const RwPracticeFaultKind rw_practice_faults_board[] = {
  { "audio-filter-tired", fits_audio, audio_filter_tired },
  { "audio-amp-bad", fits_audio, audio_amp_bad },
  { "audio-ground-loop", fits_audio, audio_ground_loop },
  { "board-short", fits_any, board_short },
  { "board-trace-loss", fits_any, board_trace_loss },
  { "memory-bad", fits_any, memory_bad },
  { "socket-oxidised", fits_any, socket_oxidised },
  { "supply-fine", fits_any, board_resets },
  { NULL, NULL, NULL },
};
