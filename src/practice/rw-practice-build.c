/* rw-practice-build.c: a healthy cabinet made from a profile, no two alike.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The figures are what good machines show (trade practice; estimates unless a data sheet says
 * so): copper 21.0 mΩ/m (AWG 18) and 33.3 mΩ/m (AWG 20) at 20 °C; a clean contact 5–20 mΩ, four
 * or more fingers in parallel on +5 and eight on ground, one each on the others; so +5 loses
 * 20–100 mV and ground 10–50 mV on the way. +5 draws 2.5–4 A, a sound rail 0.4–0.9 A, a small
 * negative rail tens of mA. Supply: ±10 % adjustment, ±1 % load regulation, ±0.02 %/°C,
 * over-voltage latch at 6.0–6.4 V (switcher) or 7.0 V (linear), a raw capacitor of 27 000 µF
 * and 2 V of drop-out (linear).
 *
 * The turns and the trim are not drawn but solved for: the followers stand near their nominals
 * when the reference rail is right at the loaded, warm board. A few rounds suffice, all being
 * nearly linear.
 */
#include "config.h"

#include "rw-practice-build.h"

#include <math.h>
#include <string.h>

#include "rw-json.h"
#include "rw-practice-circuit.h"
#include "rw-practice-parts.h"

static const double small_rail_volts = 7; /* below: logic or bias; above: sound, fans */
static const double
    tight_limits = 0.06; /* half-width over nominal at which a bias rail is a memory's */
static const double set_point = 1.008; /* 5.04 V for +5 */
static const guint rounds = 12;

static double
spread (RwPracticeRandom *random,
        double            lo,
        double            hi)
{
  return rw_practice_random_between (random, lo, hi);
}

static RwPracticePath
build_path (RwPracticeRandom *random,
            double            metre_ohms,
            guint             wires,
            guint             fingers)
{
  const double metres = spread (random, 0.8, 1.3);
  RwPracticePath path = { 0 };

  path.screw_ohms = spread (random, 0.0004, 0.0010);
  path.crimp_ohms = spread (random, 0.002, 0.004) / wires;
  path.wire_ohms = metres * metre_ohms / wires;
  path.contact_ohms = spread (random, 0.006, 0.014) / fingers;
  path.contact_hot = 1.0 / fingers;
  path.trace_ohms = spread (random, 0.008, 0.014);
  path.contact_warm = spread (random, 0.01, 0.05);
  path.wander = 0.002;
  return path;
}

static void
build_reference (RwPracticeRail   *rail,
                 RwPracticeRandom *random)
{
  rail->feed = RW_PRACTICE_REFERENCE;
  rail->turns = 1;
  rail->diode_volts = spread (random, 0.36, 0.44);
  rail->ohms = spread (random, 0.015, 0.030);
  rail->load_ohms = spread (random, 0.004, 0.008);
  rail->dynamic_ohms = spread (random, 0.010, 0.020);
  rail->minimum_amps = spread (random, 0.6, 1.0);
  rail->bleed_amps = 0.62 * rail->minimum_amps;
  rail->switch_ripple_volts = spread (random, 0.005, 0.010);
  rail->load_amps = spread (random, 2.5, 4.0);
  rail->load_follow = spread (random, 0.2, 0.4);
  rail->path = build_path (random, 0.0210, 2, 4);
}

static void
build_small (RwPracticeRail   *rail,
             RwPracticeRandom *random)
{
  rail->diode_volts = spread (random, 0.65, 0.75);
  rail->ohms = spread (random, 0.3, 0.8);
  rail->minimum_amps = spread (random, 0.015, 0.025);
  rail->bleed_amps = 0.8 * rail->minimum_amps;
  rail->peak_share = spread (random, 0.2, 0.3);
  rail->load_amps = spread (random, 0.020, 0.045);
  rail->load_follow = 0.5;
  rail->switch_ripple_volts = spread (random, 0.004, 0.008);
  rail->path = build_path (random, 0.0333, 1, 1);
}

static void
build_large (RwPracticeRail   *rail,
             RwPracticeRandom *random)
{
  rail->diode_volts = spread (random, 0.70, 0.80);
  rail->ohms = spread (random, 0.05, 0.10);
  rail->minimum_amps = spread (random, 0.05, 0.10);
  rail->bleed_amps = 0.8 * rail->minimum_amps;
  rail->peak_share = spread (random, 0.05, 0.10);
  rail->load_amps = spread (random, 0.4, 0.9) * MIN (1, 15 / rail->nominal);
  rail->load_follow = spread (random, 0.1, 0.3);
  rail->switch_ripple_volts = spread (random, 0.006, 0.012);
  rail->path = build_path (random, 0.0333, 1, 1);
}

/* A raw capacitor whose mean is @volts while it gives @amps. */
static RwPracticeRaw
build_raw (const RwPracticeParams *params,
           double                  volts,
           double                  amps,
           double                  farads,
           double                  winding_ohms)
{
  RwPracticeRaw raw = { 0 };

  raw.farads = farads;
  raw.winding_ohms = winding_ohms;
  raw.bridge_volts = 1.8;

  const double pp = amps / (2 * params->mains_hertz * farads);

  raw.winding_volts = (volts + pp / 2 + amps * winding_ohms + raw.bridge_volts) / M_SQRT2;
  return raw;
}

static RwPracticeFeed
feed_of (const RwPracticeParams *params,
         const RwRail           *rail,
         double                  chance)
{
  if (params->supply == RW_PRACTICE_LINEAR)
    return fabs (rail->nominal) > small_rail_volts && rail->nominal > 0
               ? RW_PRACTICE_UNREGULATED
               : RW_PRACTICE_REGULATED;
  if (rail->follows_trim == RW_FOLLOWS_UNKNOWN)
    return chance < 0.5 ? RW_PRACTICE_REGULATED : RW_PRACTICE_FOLLOWER;
  return rail->follows_trim == RW_FOLLOWS_YES ? RW_PRACTICE_FOLLOWER : RW_PRACTICE_REGULATED;
}

static void
build_rail (RwPracticeParams *params,
            guint             i,
            const RwRail     *from,
            RwPracticeRandom *random)
{
  RwPracticeRail *rail = &params->rail[i];

  rail->id = from->id;
  rail->sign = from->nominal < 0 ? -1 : 1;
  rail->nominal = fabs (from->nominal);
  rail->alive = 1;
  rail->ghost_volts = spread (random, 0.3, 0.7);
  if (i == params->reference)
    build_reference (rail, random);
  else if (rail->nominal > small_rail_volts)
    build_large (rail, random);
  else
    build_small (rail, random);
  if (i == params->reference && params->supply == RW_PRACTICE_LINEAR)
    {
      const double ohms = spread (random, 0.10, 0.14); /* one draw after the other, on every compiler */
      const double volts = spread (random, 8.6, 9.0);

      rail->raw = build_raw (params, volts, rail->load_amps, 0.027, ohms);
    }
  if (i == params->reference)
    return;

  rail->feed = feed_of (params, from, rw_practice_random_uniform (random));
  rail->fixed_volts = rail->nominal * spread (random, 0.99, 1.01);
  if (rail->feed == RW_PRACTICE_REGULATED)
    rail->load_ohms = spread (random, 0.01, 0.03);
  if (rail->feed == RW_PRACTICE_UNREGULATED)
    rail->raw = build_raw (params, rail->fixed_volts, rail->load_amps, 0.0068,
                           spread (random, 0.3, 0.5));
  /* Memory that takes its bias from here dies without it, and its limits say so. */
  if (rail->sign < 0 && (from->hi - from->lo) / 2 <= tight_limits * rail->nominal)
    params->needs_bias = TRUE;
}

/* The amplifier hangs on the highest positive rail that is not the logic's. */
static void
build_audio (RwPracticeParams *params,
             RwPracticeRandom *random)
{
  params->audio = -1;
  for (guint i = 0; i < params->n_rails; i++)
    if (i != params->reference && params->rail[i].sign > 0
        && (params->audio < 0 || params->rail[i].nominal > params->rail[params->audio].nominal))
      params->audio = (int)i;

  const double pulse = spread (random, 0.12, 0.20), filter = spread (random, 0.03, 0.06);

  if (params->audio < 0)
    return;
  params->rail[params->audio].pulse_amps = pulse;
  params->rail[params->audio].filter_ohms = filter;
}

/* ±0.02 %/°C over some 10–20 °C: 0.2 % is usual and 0.4 % the most. */
static double
drift_of_good_supply (double gauss)
{
  return CLAMP (0.002 * gauss, -0.004, 0.004);
}

static void
build_supply (RwPracticeParams *params,
              RwPracticeRandom *random)
{
  const RwPracticeRail *reference = &params->rail[params->reference];
  const gboolean linear = params->supply == RW_PRACTICE_LINEAR;

  params->trim_lo_volts = 0.90 * reference->nominal;
  params->trim_hi_volts = 1.14 * reference->nominal;
  params->sense = linear ? RW_PRACTICE_SENSE_BOARD : RW_PRACTICE_SENSE_NONE;
  params->dropout_volts = linear ? 2.0 : 0;
  params->ripple_rejection = 0.0005; /* 66 dB */
  params->over_volts = (linear ? 1.40 : spread (random, 1.20, 1.28)) * reference->nominal;
  params->over_rest_seconds = 60;
  params->mains_share = 1;
  params->mains_needed = spread (random, 0.83, 0.87);
  params->full_amps = reference->load_amps;
  params->sink_share = spread (random, 0.30, 0.40);
  params->tick_share = 0.08;
  params->warm_seconds = spread (random, 500, 800);
  params->warm_reference = drift_of_good_supply (rw_practice_random_gauss (random));
  params->reference_noise = 0.0004;
  params->load_noise = 0.001;
  if (linear) /* needs no load, and passes no switching frequency */
    for (guint i = 0; i < params->n_rails; i++)
      {
        params->rail[i].minimum_amps = 0;
        params->rail[i].bleed_amps *= 0.1;
        params->rail[i].switch_ripple_volts = 0.0005;
      }
}

static void
build_board (RwPracticeParams *params,
             RwPracticeRandom *random)
{
  const double unit = params->rail[params->reference].nominal / 5;

  params->step_rate = 0.15;
  params->step_share = spread (random, 0.12, 0.20);
  params->reset_below_volts = spread (random, 4.62, 4.68) * unit;
  params->reset_hold_seconds = 0.02;
  params->start_above_volts = params->reset_below_volts - 0.15 * unit;
  params->reset_seconds = spread (random, 0.9, 1.5);
  params->dead_below_volts = 4.0 * unit;
  params->garble_below_volts = 4.75 * unit;
}

/* Turns that put the followers at @stands while the reference is where it is now. */
static void
solve_turns (RwPracticeModel *model,
             const double    *stands)
{
  const RwPracticeParams *params = &model->params;
  const RwPracticeRail *reference = &params->rail[params->reference];
  const RwPracticeFlow *first = &model->state.flow[params->reference];
  const double winding = fabs (first->terminal_volts) + reference->diode_volts
                         + (first->amps + reference->bleed_amps) * reference->ohms;

  for (guint i = 0; i < params->n_rails; i++)
    {
      RwPracticeRail *rail = &model->params.rail[i];
      const double amps = model->state.flow[i].amps + rail->bleed_amps;

      if (rail->feed == RW_PRACTICE_FOLLOWER)
        rail->turns = (stands[i] + rail->diode_volts + amps * rail->ohms) / winding;
    }
}

/* What the supply gives at full load; of a linear one only the reference counts. */
static double
watts_of (const RwPracticeModel *model)
{
  const RwPracticeParams *params = &model->params;
  double watts = 0;

  for (guint i = 0; i < params->n_rails; i++)
    if (params->supply == RW_PRACTICE_SWITCHER || i == params->reference)
      watts += fabs (model->state.flow[i].terminal_volts)
               * (model->state.flow[i].amps + params->rail[i].bleed_amps);
  return watts;
}

/* Drawn last, so that cabinets of old seeds keep their volts. */
static void
build_habits (RwPracticeParams *params,
              RwPracticeRandom *random)
{
  params->lamps_on_supply = rw_practice_random_uniform (random) < 0.45;
  params->amp_beside = rw_practice_random_uniform (random) < 0.40;
  params->crack_on_board = rw_practice_random_uniform (random) < 0.45;
  params->tap_high = rw_practice_random_uniform (random) < 0.40;
  params->pass_shorts = rw_practice_random_uniform (random) < 0.40;
  params->drifts_up = rw_practice_random_uniform (random) < 0.30;
  params->barks = rw_practice_random_uniform (random) < 0.25;
  params->coin_switch = rw_practice_random_uniform (random) < 0.40;
  params->colour_wire = rw_practice_random_uniform (random) < 0.30;
  params->dull_fingers = rw_practice_random_uniform (random) < 0.30;
  params->trim_touched = rw_practice_random_uniform (random) < 0.35;
  params->bulges = rw_practice_random_uniform (random) < 0.50;
}

/* Lamps, controls, loudspeaker, monitor, earth and fuse in good order. */
static void
build_rest (RwPracticeParams *params)
{
  params->battery_volts = 3.6;
  params->fuse_ohms = 0.02;
  params->tap_ratio = 1;
  params->earth_ohms = 0.1;
  params->panel_ground_ohms = 0.05;
  params->switch_ohms = 0.5;
  params->speaker_ohms = 8;
  params->tube_share = 1;
  params->video_ground_ohms = 0.05;
  params->meter_gain = 1;
}

/* Finds the trim, the turns and what follows from full load, with the circuit itself. */
static void
solve_set_point (RwPracticeParams *params,
                 RwPracticeRandom *random)
{
  const double nominal = params->rail[params->reference].nominal;
  const double target = nominal * (set_point + spread (random, -0.003, 0.003));
  const double travel = params->trim_hi_volts - params->trim_lo_volts;
  double stands[RW_PRACTICE_MAX_RAILS];
  RwPracticeModel model = { .params = *params };

  for (guint i = 0; i < params->n_rails; i++)
    stands[i] = params->rail[i].nominal * (1 + spread (random, -0.018, 0.018));
  rw_practice_model_start (&model, 0);
  model.state.power = TRUE;
  model.state.level = 1;
  model.state.warm = 1;
  model.state.board = RW_PRACTICE_BOARD_RUNNING;
  for (guint round = 0; round < rounds; round++)
    {
      const RwPracticeFlow *first = &model.state.flow[params->reference];

      rw_practice_circuit_solve (&model);
      solve_turns (&model, stands);
      model.state.trim += (target - fabs (first->finger_volts - model.state.ground_volts)) / travel;
      model.state.trim = CLAMP (model.state.trim, 0, 1);
    }
  rw_practice_circuit_solve (&model);
  *params = model.params;
  params->trim_start = model.state.trim;
  params->limit_watts = 1.5 * watts_of (&model);
  if (params->audio >= 0)
    params->hum_volts = 0.04 + 1.5 * rw_practice_circuit_hum (&model, (guint) params->audio);
}

void
rw_practice_build (RwPracticeParams *out,
                   const RwProfile  *profile,
                   guint64           seed)
{
  RwPracticeRandom random;
  const int reference = rw_profile_index_of (profile, rw_profile_get_reference (profile)->id);
  JsonObject *object = json_node_get_object (rw_profile_get_node ((RwProfile *)profile));

  memset (out, 0, sizeof *out);
  rw_practice_random_seed (&random, seed);
  out->supply = g_str_equal (rw_json_get_string (object, "supply", "switcher"), "linear")
                    ? RW_PRACTICE_LINEAR
                    : RW_PRACTICE_SWITCHER;
  out->n_rails = MIN (rw_profile_get_n_rails (profile), RW_PRACTICE_MAX_RAILS);
  out->reference = (guint)reference;
  out->mains_hertz = 50;
  out->mains_share = 1;
  for (guint i = 0; i < out->n_rails; i++)
    build_rail (out, i, rw_profile_get_rail (profile, i), &random);
  out->ground = build_path (&random, 0.0210, 4, 8);
  out->ground.trace_ohms = 0;
  build_audio (out, &random);
  build_supply (out, &random);
  build_board (out, &random);
  solve_set_point (out, &random);
  build_habits (out, &random);
  build_rest (out);
}
