/* rw-practice-faults-rest.c: faults beside supply and board: lamps, controls, picture, earth, meter.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-practice-faults-private.h"

/* A crushed wire or a socket full of solder: it draws as much as all the rest, until its own fuse
 * goes. */
static void
lamp_circuit_short (RwPracticeParams *params,
                    double            strength)
{
  params->lamps_on_supply = TRUE;
  params->lamp_fuse_open = strength > 0.75;
  if (params->lamp_fuse_open)
    return;
  params->lamp_amps = 0.8 + 2.4 * strength;
  params->rail[rw_practice_params_lamp_rail (params)].bleed_amps += params->lamp_amps;
}

static void
panel_ground_open (RwPracticeParams *params,
                   double            strength)
{
  params->panel_ground_ohms += 60 + 3000 * strength * strength;
}

static void
switch_bad (RwPracticeParams *params,
            double            strength)
{
  params->switch_ohms += 100 + 5000 * strength * strength;
}

static void
speaker_path_open (RwPracticeParams *params,
                   double            strength)
{
  params->speaker_loss = MAX (params->speaker_loss, strength);
  if (strength > 0.4)
    params->speaker_ohms = G_MAXDOUBLE;
}

static void
monitor_filter_tired (RwPracticeParams *params,
                      double            strength)
{
  params->monitor_hum_share += 0.6 + 2 * strength;
  params->tube_share *= 1 - 0.25 * strength;
}

static void
monitor_worn (RwPracticeParams *params,
              double            strength)
{
  params->tube_share *= 1 - 0.75 * strength;
}

static void
video_ground_open (RwPracticeParams *params,
                   double            strength)
{
  params->video_ground_ohms += 0.2 + 20 * strength * strength;
}

static void
earth_missing (RwPracticeParams *params,
               double            strength)
{
  params->earth_ohms = strength > 0.5 ? G_MAXDOUBLE : 1.5 + 20 * strength;
  params->own_hum_volts += 0.10 * strength;
}

/* A flat battery in the meter: everything reads high. */
static void
meter_bad (RwPracticeParams *params,
           double            strength)
{
  params->meter_gain = 1 + 0.015 + 0.06 * strength;
}

static gboolean
fits_audio (const RwPracticeParams *params)
{
  return params->audio >= 0;
}

const RwPracticeFaultKind rw_practice_faults_rest[] = {
  /* F41: rails low until the coin door is unplugged; its fuse. */
  { "lamp-circuit-short", rw_practice_faults_fit_any, lamp_circuit_short },
  /* F40: a pressed switch leaves 0.5 to 2 V, several controls. */
  { "panel-ground-open", rw_practice_faults_fit_any, panel_ground_open },
  /* Y25, Y26: one control, or the coin switch. */
  { "switch-bad", rw_practice_faults_fit_any, switch_bad },
  /* Y21: no sound, game plays; path open. */
  { "speaker-path-open", fits_audio, speaker_path_open },
  /* F38: bars stay with the board out, rails right. */
  { "monitor-filter-tired", rw_practice_faults_fit_any, monitor_filter_tired },
  /* Y15: dim, rails right. */
  { "monitor-worn", rw_practice_faults_fit_any, monitor_worn },
  /* F39: ohms from monitor to board ground; picture shifts, rolls or lacks a colour. */
  { "video-ground-open", rw_practice_faults_fit_any, video_ground_open },
  /* F45: no earth; tingle, hum. */
  { "earth-missing", rw_practice_faults_fit_any, earth_missing },
  /* F47: every reading high by one factor; fails against a reference. */
  { "meter-or-leads", rw_practice_faults_fit_any, meter_bad },
  { NULL, NULL, NULL },
};
