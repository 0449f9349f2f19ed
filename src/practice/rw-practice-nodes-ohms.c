/* rw-practice-nodes-ohms.c: the resistors that a meter finds in a practice cabinet without power.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Conductors have the ohms that they have under power, cold or warm. The rest are figures of trade practice: a healthy
 * board's inputs read 8–100 Ω on +5, more than 50 Ω on +12, more than 500 Ω on a small negative rail, some fifteen
 * times what nominal volts over running current would say, since chips at half a volt do not conduct; a short does, and
 * is a resistor. A supply's outputs read their bleed resistors, a lamp a tenth of its hot ohms, a loudspeaker 0.8 of what
 * it says. Diodes and regulators read open: a leak of 1 GΩ.
 */
#include "config.h"

#include "rw-practice-nodes-private.h"

#include <math.h>

#include "rw-practice-net.h"
#include "rw-practice-parts.h"

static const double junction_ohms = 1e9;
static const double leak_ohms = 1e5;      /* across an output without a bleed resistor; 0 V to the cabinet's metal */
static const double chip_share = 1 / 15.0; /* of its running conductance a board shows to a meter */
static const double resistor_from = 0.5;  /* share that follows the volts; above, part of the load is a resistor */
static const double lug_ohms = 0.005;
static const double open_ohms = 1e12; /* as much is broken */
static const double sense_wire_ohms = 0.2, sense_link_ohms = 0.01;
static const double raw_bleed_ohms = 1000;
static const double lamp_cold_ohms = 8;
static const double video_ohms = 0.1; /* from the monitor's plug to the board's ground */
static const double speaker_wire_ohms = 0.2, sound_ground_ohms = 0.01;

typedef struct
{
  const RwPracticeCabinet *cabinet;
  const RwPracticeModel   *model;
  RwPracticeNet            net;
} Wiring;

G_STATIC_ASSERT (RW_PRACTICE_MOST_NODES <= RW_PRACTICE_NET_MOST);

/* Nothing happens when this cabinet has not both points. */
static void
join (Wiring         *wiring,
      RwPracticePoint a,
      int             a_rail,
      RwPracticePoint b,
      int             b_rail,
      double          ohms)
{
  const int i = rw_practice_nodes_find_point (wiring->cabinet->nodes, a, a_rail);
  const int j = rw_practice_nodes_find_point (wiring->cabinet->nodes, b, b_rail);

  if (i >= 0 && j >= 0 && ohms < open_ohms)
    rw_practice_net_join (&wiring->net, (guint) i, (guint) j, ohms);
}

/* Two points that belong to no rail. */
static void
join_parts (Wiring         *wiring,
            RwPracticePoint a,
            RwPracticePoint b,
            double          ohms)
{
  join (wiring, a, RW_PRACTICE_NO_RAIL, b, RW_PRACTICE_NO_RAIL, ohms);
}

static const RwPracticePath *
path_of (const RwPracticeModel *model,
         int                    rail)
{
  return rail == RW_PRACTICE_GROUND ? &model->params.ground : &model->params.rail[rail].path;
}

double
rw_practice_nodes_path_ohms (const RwPracticeModel *model,
                             int                    rail)
{
  return rw_practice_path_ohms (path_of (model, rail), &model->state);
}

double
rw_practice_nodes_way_ohms (const RwPracticeModel *model,
                            const RwPracticeTouch *touch)
{
  RwPracticePath part = *path_of (model, touch->rail);

  if (touch->point == RW_PRACTICE_POINT_STRIP)
    return 0;
  if (touch->point == RW_PRACTICE_POINT_HARNESS_SUPPLY)
    {
      part.fuse_ohms = part.crimp_ohms = part.wire_ohms = part.contact_ohms = 0;
      part.jerks = FALSE; /* what jerks lies between the crimps */
    }
  if (touch->point == RW_PRACTICE_POINT_HARNESS_BOARD)
    part.contact_ohms = 0;
  return rw_practice_path_ohms (&part, &model->state);
}

static void
wire_path (Wiring *wiring,
           int     rail)
{
  const RwPracticePath *path = path_of (wiring->model, rail);
  const RwPracticeTouch lug = { .point = RW_PRACTICE_POINT_HARNESS_SUPPLY, .rail = rail };
  const RwPracticeTouch plug = { .point = RW_PRACTICE_POINT_HARNESS_BOARD, .rail = rail };
  const double at_lug = rw_practice_nodes_way_ohms (wiring->model, &lug);
  const double at_plug = rw_practice_nodes_way_ohms (wiring->model, &plug);
  const double at_edge = rw_practice_nodes_path_ohms (wiring->model, rail);

  join (wiring, RW_PRACTICE_POINT_STRIP, rail, RW_PRACTICE_POINT_HARNESS_SUPPLY, rail, at_lug);
  join (wiring, RW_PRACTICE_POINT_HARNESS_SUPPLY, rail, RW_PRACTICE_POINT_HARNESS_BOARD, rail,
        path->open ? (double) INFINITY : at_plug - at_lug);
  if (wiring->model->state.fitted)
    join (wiring, RW_PRACTICE_POINT_HARNESS_BOARD, rail, RW_PRACTICE_POINT_EDGE, rail, at_edge - at_plug);
  join (wiring, RW_PRACTICE_POINT_EDGE, rail, RW_PRACTICE_POINT_CHIP, rail, path->trace_ohms);
}

static double
board_ohms (const RwPracticeRail *rail)
{
  const double resistor = CLAMP ((rail->load_follow - resistor_from) / (1 - resistor_from), 0, 1);
  const double share = chip_share + (1 - chip_share) * resistor;

  return MIN (leak_ohms, rail->nominal / MAX (1e-9, rail->load_amps * share));
}

static void
wire_rail (Wiring *wiring,
           int     i)
{
  const RwPracticeRail *rail = &wiring->model->params.rail[i];
  const double bleed = rail->nominal / MAX (1e-9, rail->bleed_amps);

  wire_path (wiring, i);
  join (wiring, RW_PRACTICE_POINT_STRIP, i, RW_PRACTICE_POINT_STRIP, RW_PRACTICE_GROUND, MIN (leak_ohms, bleed));
  join (wiring, RW_PRACTICE_POINT_CHIP, i, RW_PRACTICE_POINT_CHIP, RW_PRACTICE_GROUND, board_ohms (rail));
}

static void
wire_supply (Wiring *wiring)
{
  const RwPracticeParams *params = &wiring->model->params;
  const int reference = (int) params->reference;
  const RwPracticePoint strip = RW_PRACTICE_POINT_STRIP;
  const RwPracticePoint plus = RW_PRACTICE_POINT_RAW_PLUS, minus = RW_PRACTICE_POINT_RAW_MINUS;
  const RwPracticePoint sense = RW_PRACTICE_POINT_SENSE;

  if (params->sense == RW_PRACTICE_SENSE_BOARD && wiring->model->state.fitted)
    join (wiring, sense, RW_PRACTICE_NO_RAIL, RW_PRACTICE_POINT_EDGE, reference, sense_wire_ohms);
  if (params->sense == RW_PRACTICE_SENSE_NONE)
    join (wiring, sense, RW_PRACTICE_NO_RAIL, strip, reference, sense_link_ohms);
  else
    join (wiring, sense, RW_PRACTICE_NO_RAIL, strip, reference, RW_PRACTICE_CATCH_OHMS);
  join_parts (wiring, plus, minus, raw_bleed_ohms);
  join (wiring, minus, RW_PRACTICE_NO_RAIL, strip, RW_PRACTICE_GROUND, lug_ohms);
  join (wiring, plus, RW_PRACTICE_NO_RAIL, strip, reference, junction_ohms);
  join_parts (wiring, RW_PRACTICE_POINT_AC1, RW_PRACTICE_POINT_AC2, params->rail[reference].raw.winding_ohms);
  join_parts (wiring, RW_PRACTICE_POINT_AC1, RW_PRACTICE_POINT_FUSE1, lug_ohms);
  join_parts (wiring, RW_PRACTICE_POINT_FUSE1, RW_PRACTICE_POINT_FUSE2, params->fuse_ohms);
  join_parts (wiring, RW_PRACTICE_POINT_FUSE2, plus, junction_ohms);
  join_parts (wiring, RW_PRACTICE_POINT_FUSE2, minus, junction_ohms);
  join_parts (wiring, RW_PRACTICE_POINT_AC2, plus, junction_ohms);
  join_parts (wiring, RW_PRACTICE_POINT_AC2, minus, junction_ohms);
}

static void
wire_rest (Wiring *wiring)
{
  const RwPracticePoint strip = RW_PRACTICE_POINT_STRIP;
  const int none = RW_PRACTICE_NO_RAIL, ground = RW_PRACTICE_GROUND;
  const RwPracticeParams *params = &wiring->model->params;
  const int lamp = (int) rw_practice_params_lamp_rail (params);
  const double across_lamp = 1 / (1 / lamp_cold_ohms + params->lamp_amps / params->rail[lamp].nominal);

  join_parts (wiring, RW_PRACTICE_POINT_EARTH, RW_PRACTICE_POINT_CHASSIS, params->earth_ohms);
  join (wiring, RW_PRACTICE_POINT_CHASSIS, none, strip, ground, leak_ohms);
  join (wiring, RW_PRACTICE_POINT_LAMP_PLUS, none, strip, lamp,
        params->lamp_fuse_open ? (double) INFINITY : RW_PRACTICE_LAMP_WIRE_OHMS);
  join_parts (wiring, RW_PRACTICE_POINT_LAMP_PLUS, RW_PRACTICE_POINT_LAMP_MINUS, across_lamp);
  join (wiring, RW_PRACTICE_POINT_LAMP_MINUS, none, strip, ground, RW_PRACTICE_LAMP_WIRE_OHMS);
  join (wiring, RW_PRACTICE_POINT_SOUND_GROUND, none, RW_PRACTICE_POINT_CHIP, ground, sound_ground_ohms);
  join_parts (wiring, RW_PRACTICE_POINT_SPEAKER_PLUS, RW_PRACTICE_POINT_SPEAKER_MINUS,
              RW_PRACTICE_SPEAKER_SHARE * params->speaker_ohms);
  if (!wiring->model->state.fitted)
    return;
  join (wiring, RW_PRACTICE_POINT_MONITOR, none, RW_PRACTICE_POINT_EDGE, ground,
        MAX (video_ohms, params->video_ground_ohms));
  join_parts (wiring, RW_PRACTICE_POINT_SPEAKER_MINUS, RW_PRACTICE_POINT_SOUND_GROUND, speaker_wire_ohms);
}

static void
wire_all (Wiring                  *wiring,
          const RwPracticeCabinet *cabinet)
{
  wiring->cabinet = cabinet;
  wiring->model = &cabinet->model;
  rw_practice_net_start (&wiring->net, cabinet->nodes->len);
  wire_path (wiring, RW_PRACTICE_GROUND);
  for (guint i = 0; i < wiring->model->params.n_rails; i++)
    wire_rail (wiring, (int) i);
  wire_supply (wiring);
  wire_rest (wiring);
}

double
rw_practice_nodes_ohms (const RwPracticeCabinet *self,
                        guint                    a,
                        guint                    b)
{
  Wiring wiring;

  wire_all (&wiring, self);
  return rw_practice_net_ohms (&wiring.net, a, b);
}

gboolean
rw_practice_nodes_are_joined (const RwPracticeCabinet *self,
                              guint                    a,
                              guint                    b)
{
  Wiring wiring;

  wire_all (&wiring, self);
  return rw_practice_net_has_way (&wiring.net, a, b);
}
