/* test-faults.c: each fault shows in the readings what trade practice says it shows.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every line compares a faulty cabinet with its healthy twin (same profile, seed and moment): a
 * spot goes up, goes down or stays. Faults of the board itself must leave every rail alone.
 */
#include "config.h"

#include <json-glib/json-glib.h>
#include <math.h>

#include "practice-fixtures.h"
#include "rw-practice-build.h"
#include "rw-practice-look.h"
#include "rw-practice-meter.h"
#include "rw-practice-symptoms.h"

typedef enum
{
  DOWN = -1,
  SAME = 0,
  UP = 1
} Way;

typedef struct
{
  const char *fault;
  const char *profile;
  double      strength;
  const char *rail;
  RwPlace     place;
  RwKind      kind;
  Way         way;
  double      volts; /* moves by at least, or stays within */
} Sign;

#define CLASSIC "classic-5-12-m5"
#define LINEAR "linear-5-audio"
#define TERMINALS RW_PLACE_TERMINALS, RW_KIND_DC
#define BOARD RW_PLACE_BOARD, RW_KIND_DC
#define WIRE RW_PLACE_WIRE, RW_KIND_DC
#define CHIP RW_PLACE_CHIP, RW_KIND_DC
#define RIPPLE_TERMINALS RW_PLACE_TERMINALS, RW_KIND_RIPPLE
#define RIPPLE_BOARD RW_PLACE_BOARD, RW_KIND_RIPPLE

static const Sign signs[] = {
  /* All rails low in proportion; drops and ripple as ever. */
  { "trim-low", CLASSIC, 0.6, "p5", TERMINALS, DOWN, 0.15 },
  { "trim-low", CLASSIC, 0.6, "p5", BOARD, DOWN, 0.15 },
  { "trim-low", CLASSIC, 0.6, "p5", WIRE, SAME, 0.010 },
  { "trim-low", CLASSIC, 0.6, "gnd", WIRE, SAME, 0.005 },
  { "trim-low", CLASSIC, 0.6, "p12", BOARD, DOWN, 0.35 },
  { "trim-low", CLASSIC, 0.6, "p5", RIPPLE_TERMINALS, SAME, 0.003 },
  { "trim-high", CLASSIC, 0.6, "p5", TERMINALS, UP, 0.15 },
  { "trim-high", CLASSIC, 0.6, "p12", BOARD, UP, 0.35 },
  { "trim-high", LINEAR, 0.6, "raw12", BOARD, SAME, 0.05 },
  /* Terminal right, board low: which drop tells which wire. */
  { "edge-oxidised", CLASSIC, 0.7, "p5", TERMINALS, SAME, 0.010 },
  { "edge-oxidised", CLASSIC, 0.7, "p5", BOARD, DOWN, 0.15 },
  { "edge-oxidised", CLASSIC, 0.7, "p5", WIRE, UP, 0.100 },
  { "edge-oxidised", CLASSIC, 0.7, "gnd", WIRE, UP, 0.040 },
  { "edge-oxidised", LINEAR, 0.7, "p5", BOARD, SAME, 0.010 },
  { "edge-oxidised", LINEAR, 0.7, "p5", TERMINALS, UP, 0.15 },
  { "edge-burnt", CLASSIC, 0.5, "p5", WIRE, UP, 0.100 },
  { "edge-burnt", CLASSIC, 0.5, "gnd", WIRE, SAME, 0.005 },
  { "poor-crimp", CLASSIC, 0.7, "p5", WIRE, UP, 0.100 },
  { "poor-crimp", CLASSIC, 0.7, "gnd", WIRE, SAME, 0.005 },
  { "poor-crimp", CLASSIC, 0.7, "p5", TERMINALS, SAME, 0.010 },
  { "cracked-joint", CLASSIC, 0.7, "p5", WIRE, UP, 0.020 },
  { "loose-terminal-screw", CLASSIC, 0.7, "p5", WIRE, UP, 0.080 },
  { "loose-terminal-screw", CLASSIC, 0.7, "p12", WIRE, SAME, 0.005 },
  { "plus5-wire-thin", CLASSIC, 0.7, "p5", WIRE, UP, 0.100 },
  { "plus5-wire-thin", CLASSIC, 0.7, "gnd", WIRE, SAME, 0.005 },
  { "ground-wire-poor", CLASSIC, 0.7, "gnd", WIRE, UP, 0.080 },
  { "ground-wire-poor", CLASSIC, 0.7, "p5", WIRE, SAME, 0.010 },
  { "ground-wire-poor", CLASSIC, 0.7, "p5", BOARD, DOWN, 0.080 },
  { "ground-wire-poor", CLASSIC, 0.7, "p5", RIPPLE_BOARD, UP, 0.004 },
  { "minus5-open-wire", CLASSIC, 0.9, "m5", TERMINALS, SAME, 0.40 },
  { "minus5-open-wire", CLASSIC, 0.9, "m5", BOARD, UP, 5.0 },
  /* The supply. */
  { "trim-worn", CLASSIC, 0.5, "p12", WIRE, SAME, 0.010 },
  { "output-capacitors-tired", CLASSIC, 0.7, "p5", RIPPLE_TERMINALS, UP, 0.020 },
  { "output-capacitors-tired", CLASSIC, 0.7, "p5", TERMINALS, DOWN, 0.050 },
  { "output-capacitors-tired", CLASSIC, 0.7, "p12", TERMINALS, SAME, 0.15 },
  { "minimum-load-missing", CLASSIC, 0.9, "p5", TERMINALS, SAME, 0.010 },
  { "minimum-load-missing", CLASSIC, 0.9, "m5", TERMINALS, DOWN, 0.40 },
  { "supply-overloaded", CLASSIC, 1.0, "p5", TERMINALS, DOWN, 0.08 },
  { "supply-overloaded", CLASSIC, 1.0, "p12", TERMINALS, DOWN, 0.15 },
  { "supply-overheats", CLASSIC, 1.0, "p5", TERMINALS, SAME, 0.012 },
  { "supply-primary-dead", CLASSIC, 0.5, "p5", TERMINALS, DOWN, 5.0 },
  { "supply-primary-dead", CLASSIC, 0.5, "p12", TERMINALS, DOWN, 11.0 },
  { "p12-lost-supply", CLASSIC, 1.0, "p12", TERMINALS, DOWN, 11.0 },
  { "p12-lost-supply", CLASSIC, 1.0, "p5", TERMINALS, SAME, 0.010 },
  { "p24-lost-supply", "switcher-5-12-24", 0.5, "p24", TERMINALS, DOWN, 8.0 },
  { "minus5-lost-supply", CLASSIC, 1.0, "m5", TERMINALS, UP, 4.5 },
  { "minus5-lost-supply", CLASSIC, 1.0, "p12", TERMINALS, SAME, 0.05 },
  { "minus12-lost-supply", "switcher-5-12-m12", 1.0, "m12", TERMINALS, UP, 11.0 },
  { "raw-capacitor-tired", LINEAR, 0.8, "raw", TERMINALS, DOWN, 0.5 },
  { "raw-capacitor-tired", LINEAR, 0.8, "raw", RIPPLE_TERMINALS, UP, 0.40 },
  { "raw-capacitor-tired", LINEAR, 0.8, "p5", RIPPLE_TERMINALS, UP, 0.010 },
  { "bridge-diode-open", LINEAR, 1.0, "raw", TERMINALS, DOWN, 0.5 },
  { "bridge-diode-open", LINEAR, 1.0, "raw", RIPPLE_TERMINALS, UP, 0.20 },
  { "bridge-diode-shorted", LINEAR, 0.3, "raw", TERMINALS, DOWN, 0.5 },
  { "bridge-diode-shorted", LINEAR, 0.3, "raw", RIPPLE_TERMINALS, UP, 0.20 },
  { "bridge-diode-shorted", LINEAR, 0.8, "raw", TERMINALS, DOWN, 8.0 },
  { "pass-transistor-bad", LINEAR, 1.0, "p5", TERMINALS, DOWN, 4.5 },
  { "pass-transistor-bad", LINEAR, 1.0, "raw12", TERMINALS, SAME, 0.2 },
  { "regulator-drifted", LINEAR, 0.7, "p5", RIPPLE_TERMINALS, UP, 0.005 },
  { "wrong-tap", LINEAR, 1.0, "raw", TERMINALS, DOWN, 8.0 },
  { "sense-open", CLASSIC, 0.7, "p5", TERMINALS, UP, 0.30 },
  { "sense-open", LINEAR, 0.7, "p5", TERMINALS, UP, 0.25 },
  { "protection-latched", CLASSIC, 1.0, "p5", TERMINALS, DOWN, 5.0 },
  { "low-mains", LINEAR, 0.4, "raw", TERMINALS, DOWN, 0.8 },
  { "low-mains", LINEAR, 0.4, "raw12", TERMINALS, DOWN, 1.0 },
  { "low-mains", CLASSIC, 1.0, "p12", TERMINALS, DOWN, 1.0 },
  { "mains-path-open", CLASSIC, 1.0, "p5", TERMINALS, DOWN, 5.0 },
  /* Sound and board. */
  { "audio-filter-tired", CLASSIC, 0.7, "p12", RIPPLE_BOARD, UP, 0.080 },
  { "audio-filter-tired", CLASSIC, 0.7, "p5", RIPPLE_BOARD, SAME, 0.002 },
  { "audio-filter-tired", LINEAR, 0.7, "raw12", RIPPLE_BOARD, UP, 0.20 },
  { "audio-amp-bad", CLASSIC, 0.7, "p5", BOARD, SAME, 0.020 },
  { "audio-ground-loop", CLASSIC, 0.7, "p12", RIPPLE_BOARD, SAME, 0.002 },
  { "board-short", CLASSIC, 0.5, "p5", TERMINALS, DOWN, 1.0 },
  { "board-trace-loss", CLASSIC, 0.7, "p5", CHIP, DOWN, 0.10 },
  { "board-trace-loss", CLASSIC, 0.7, "p5", BOARD, SAME, 0.010 },
  { "memory-bad", CLASSIC, 1.0, "p5", BOARD, SAME, 0.020 },
  { "socket-oxidised", CLASSIC, 1.0, "p5", BOARD, SAME, 0.020 },
  { "supply-fine", CLASSIC, 1.0, "p5", BOARD, SAME, 0.020 },
  { "supply-fine", CLASSIC, 1.0, "p12", TERMINALS, SAME, 0.05 },
  { "reset-part-bad", CLASSIC, 0.6, "p5", BOARD, SAME, 0.020 },
  { "board-corroded", CLASSIC, 1.0, "p5", BOARD, SAME, 0.020 },
  { "scores-battery-flat", CLASSIC, 1.0, "p5", BOARD, SAME, 0.005 },
  /* Fuses and plugs. */
  { "fuse-holder-tired", CLASSIC, 0.7, "p5", WIRE, UP, 0.150 },
  { "fuse-holder-tired", CLASSIC, 0.7, "p5", TERMINALS, SAME, 0.010 },
  { "fuse-holder-tired", LINEAR, 0.7, "raw", TERMINALS, DOWN, 0.3 },
  { "fuse-holder-tired", LINEAR, 0.7, "raw12", TERMINALS, SAME, 0.05 },
  { "fuse-blown", CLASSIC, 0.3, "p12", TERMINALS, DOWN, 11.0 },
  { "fuse-blown", LINEAR, 0.3, "raw", TERMINALS, DOWN, 8.0 },
  { "fuse-blown", LINEAR, 0.3, "raw12", TERMINALS, SAME, 0.3 },
  { "connector-shifted", CLASSIC, 0.3, "p5", BOARD, SAME, 0.15 },
  { "connector-shifted", CLASSIC, 0.3, "m5", BOARD, UP, 9.0 },
  { "connector-shifted", CLASSIC, 0.3, "p12", BOARD, DOWN, 11.0 },
  { "connector-shifted", CLASSIC, 0.8, "p5", TERMINALS, DOWN, 3.0 },
  /* Beside the board. */
  { "lamp-circuit-short", CLASSIC, 0.7, "p12", TERMINALS, DOWN, 0.5 },
  { "lamp-circuit-short", CLASSIC, 0.7, "p5", WIRE, SAME, 0.03 },
  { "panel-ground-open", CLASSIC, 1.0, "p5", BOARD, SAME, 0.005 },
  { "switch-bad", CLASSIC, 1.0, "p5", BOARD, SAME, 0.005 },
  { "speaker-path-open", CLASSIC, 1.0, "p12", BOARD, SAME, 0.005 },
  { "monitor-filter-tired", CLASSIC, 1.0, "p5", RIPPLE_BOARD, SAME, 0.001 },
  { "monitor-worn", CLASSIC, 1.0, "p5", BOARD, SAME, 0.005 },
  { "video-ground-open", CLASSIC, 1.0, "p5", BOARD, SAME, 0.005 },
  { "earth-missing", CLASSIC, 1.0, "p5", BOARD, SAME, 0.005 },
  { "meter-or-leads", CLASSIC, 1.0, "p5", BOARD, SAME, 0.005 },
};

static double
spot (RwPracticeCabinet *cabinet,
      const Sign        *sign)
{
  return rw_practice_cabinet_get_true_volts (cabinet, sign->rail, sign->place, sign->kind);
}

static void
check_sign (const Sign *sign,
            guint64     seed)
{
  g_autoptr (RwPracticeCabinet) healthy = practice_running (sign->profile, seed, NULL, 0, 4);
  g_autoptr (RwPracticeCabinet)
      faulty = practice_running (sign->profile, seed, sign->fault, sign->strength, 4);
  const double moved = spot (faulty, sign) - spot (healthy, sign);

  g_test_message ("%s, seed %" G_GUINT64_FORMAT ": %s at %s %s moved by %.4f V", sign->fault,
                  seed, sign->rail, rw_place_to_id (sign->place), rw_kind_to_id (sign->kind),
                  moved);
  if (sign->way == SAME)
    g_assert_cmpfloat (fabs (moved), <=, sign->volts);
  else
    g_assert_cmpfloat (moved * sign->way, >=, sign->volts);
}

static void
each_fault_shows_its_signature (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (signs); i++)
    for (guint64 seed = 1; seed <= 6; seed++)
      check_sign (&signs[i], seed);
}

static void
no_fault_is_without_a_signature (void)
{
  for (guint f = 0; f < rw_practice_faults_get_n (); f++)
    {
      guint n = 0;

      for (guint i = 0; i < G_N_ELEMENTS (signs); i++)
        n += g_str_equal (signs[i].fault, rw_practice_faults_get_id (f));
      g_test_message ("%s", rw_practice_faults_get_id (f));
      g_assert_cmpuint (n, >, 0);
    }
}

/* Open: nothing comes through and raw stands high. Shorted: +5 V is as high as raw, or the crowbar has
 * blown the fuse. Both kinds come in. */
static void
pass_transistor_goes_one_way_or_the_other (void)
{
  guint shorted = 0;

  for (guint64 seed = 1; seed <= 12; seed++)
    {
      g_autoptr (RwPracticeCabinet)
          cabinet = practice_running (LINEAR, seed, "pass-transistor-bad", 0.4, 10);
      g_autoptr (RwPracticeCabinet)
          worse = practice_running (LINEAR, seed, "pass-transistor-bad", 0.8, 10);
      g_autoptr (RwPracticeCabinet) healthy = practice_running (LINEAR, seed, NULL, 0, 10);
      const double p5 = practice_dc (cabinet, "p5", RW_PLACE_TERMINALS);
      const gboolean shorts = p5 > 7;

      shorted += shorts;
      if (!shorts)
        {
          g_assert_cmpfloat (p5, <, 0.1);
          g_assert_cmpfloat (practice_dc (cabinet, "raw", RW_PLACE_TERMINALS), >,
                             practice_dc (healthy, "raw", RW_PLACE_TERMINALS) + 0.5);
        }
      g_assert_cmpstr (rw_practice_look (worse, "fuse-ohms"), ==, shorts ? "open" : "good");
      g_assert_true (rw_practice_cabinet_get_board_state (cabinet) == RW_PRACTICE_BOARD_DEAD);
    }
  g_assert_cmpuint (shorted, >, 1);
  g_assert_cmpuint (shorted, <, 11);
}

static void
regulator_drifts_either_way (void)
{
  guint up = 0;

  for (guint64 seed = 1; seed <= 16; seed++)
    {
      g_autoptr (RwPracticeCabinet)
          cabinet = practice_running (LINEAR, seed, "regulator-drifted", 0.7, 4);
      g_autoptr (RwPracticeCabinet) healthy = practice_running (LINEAR, seed, NULL, 0, 4);
      const double moved = practice_dc (cabinet, "p5", RW_PLACE_TERMINALS)
                           - practice_dc (healthy, "p5", RW_PLACE_TERMINALS);

      g_assert_cmpfloat (fabs (moved), >, 0.10);
      up += moved > 0;
    }
  g_assert_cmpuint (up, >, 1);
  g_assert_cmpuint (up, <, 12);
}

/* −8 … −20 %, or as much too high: every winding, whatever the mains. */
static void
wrong_tap_shifts_every_winding (void)
{
  guint high = 0;

  for (guint64 seed = 1; seed <= 12; seed++)
    {
      g_autoptr (RwPracticeCabinet)
          cabinet = practice_running (LINEAR, seed, "wrong-tap", 0.5, 10);
      g_autoptr (RwPracticeCabinet) healthy = practice_running (LINEAR, seed, NULL, 0, 10);
      const double raw = practice_dc (cabinet, "raw", RW_PLACE_TERMINALS)
                         - practice_dc (healthy, "raw", RW_PLACE_TERMINALS);
      const double raw12 = practice_dc (cabinet, "raw12", RW_PLACE_TERMINALS)
                           - practice_dc (healthy, "raw12", RW_PLACE_TERMINALS);

      g_assert_cmpfloat (fabs (raw), >, 0.7);
      g_assert_cmpfloat (raw * raw12, >, 0);
      g_assert_cmpstr (rw_practice_look (cabinet, "secondary-volts"), ==, raw > 0 ? "high" : "low");
      g_assert_cmpstr (rw_practice_look (cabinet, "mains-outlet-volts"), ==, "right");
      g_assert_cmpstr (rw_practice_look (cabinet, "selector-look"), ==, "wrong");
      high += raw > 0;
    }
  g_assert_cmpuint (high, >, 1);
  g_assert_cmpuint (high, <, 11);
}

/* It starts at the second switch-on, when that comes at once. */
static void
bad_reset_part_wants_a_second_switch_on (void)
{
  g_autoptr (RwPracticeCabinet)
      cabinet = practice_running (CLASSIC, 4, "reset-part-bad", 0.9, 20);

  g_assert_cmpint (rw_practice_cabinet_get_board_state (cabinet), ==, RW_PRACTICE_BOARD_RESET);
  g_assert_cmpstr (rw_practice_look (cabinet, "reset-pin"), ==, "stuck");
  g_assert_true (rw_practice_cabinet_has_symptom (cabinet, "cold-start"));
  rw_practice_cabinet_set_power (cabinet, FALSE);
  rw_practice_cabinet_advance (cabinet, 3);
  rw_practice_cabinet_set_power (cabinet, TRUE);
  rw_practice_cabinet_advance (cabinet, 20);
  g_assert_cmpint (rw_practice_cabinet_get_board_state (cabinet), ==, RW_PRACTICE_BOARD_RUNNING);
  g_assert_cmpstr (rw_practice_look (cabinet, "reset-pin"), ==, "steady");
}

static void
corrosion_bites_when_warm (void)
{
  g_autoptr (RwPracticeCabinet)
      cabinet = practice_running (CLASSIC, 4, "board-corroded", 0.9, 60);
  const guint cold = rw_practice_cabinet_get_resets (cabinet);

  rw_practice_cabinet_advance (cabinet, 1800);
  g_assert_cmpuint (cold, <, 3);
  g_assert_cmpuint (rw_practice_cabinet_get_resets (cabinet), >, 15);
}

/* −5 open: +0.3 … +0.7 V at the board, pulled up through chips. */
static void
open_minus_five_is_lifted_by_the_board (void)
{
  for (guint64 seed = 1; seed <= 10; seed++)
    {
      g_autoptr (RwPracticeCabinet)
          cabinet = practice_running (CLASSIC, seed, "minus5-open-wire", 1, 4);

      g_assert_cmpfloat (practice_dc (cabinet, "m5", RW_PLACE_BOARD), >=, 0.3);
      g_assert_cmpfloat (practice_dc (cabinet, "m5", RW_PLACE_BOARD), <=, 0.7);
    }
}

/* The bigger the strength, the further: no fault turns round on its way. */
static void
strength_grows_the_drop (void)
{
  static const char *const wiring[] = { "edge-oxidised", "poor-crimp", "plus5-wire-thin",
                                        "loose-terminal-screw" };

  for (guint i = 0; i < G_N_ELEMENTS (wiring); i++)
    {
      double last = 0;

      for (guint step = 0; step <= 4; step++)
        {
          g_autoptr (RwPracticeCabinet)
              cabinet = practice_running (CLASSIC, 2, wiring[i], step / 4.0, 4);
          const double drop = practice_dc (cabinet, "p5", RW_PLACE_WIRE);

          g_assert_cmpfloat (drop, >, last);
          last = drop;
        }
    }
}

static void
minimum_load_shows_with_the_board_out (void)
{
  g_autoptr (RwPracticeCabinet) healthy = practice_running (CLASSIC, 2, NULL, 0, 4);
  g_autoptr (RwPracticeCabinet)
      faulty = practice_running (CLASSIC, 2, "minimum-load-missing", 0.8, 4);

  practice_pull_board (healthy, 5);
  practice_pull_board (faulty, 5);
  g_assert_cmpfloat (practice_dc (faulty, "p12", RW_PLACE_TERMINALS), <,
                     practice_dc (healthy, "p12", RW_PLACE_TERMINALS) - 1);
}

static void
hot_supply_sinks_and_drags_the_board (void)
{
  g_autoptr (RwPracticeCabinet) healthy = practice_running (CLASSIC, 2, NULL, 0, 3600);
  g_autoptr (RwPracticeCabinet)
      faulty = practice_running (CLASSIC, 2, "supply-overheats", 1, 3600);

  g_assert_cmpfloat (practice_dc (faulty, "p5", RW_PLACE_TERMINALS), <,
                     practice_dc (healthy, "p5", RW_PLACE_TERMINALS) - 0.04);
}

static void
worn_trim_wanders (void)
{
  double spread[2];

  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (RwPracticeCabinet)
          cabinet = practice_running (CLASSIC, 2, i == 0 ? NULL : "trim-worn", 0.7, 4);
      double lo = INFINITY, hi = -INFINITY;

      for (guint k = 0; k < 200; k++)
        {
          rw_practice_cabinet_advance (cabinet, 0.2);

          const double volts = practice_dc (cabinet, "p5", RW_PLACE_TERMINALS);

          lo = fmin (lo, volts);
          hi = fmax (hi, volts);
        }
      spread[i] = hi - lo;
    }
  g_assert_cmpfloat (spread[0], <, 0.020);
  g_assert_cmpfloat (spread[1], >, 0.050);
}

static const char *const profiles[] = {
  CLASSIC, "dram-5-12-m5", LINEAR, "switcher-5-12-24", "switcher-5-12-m12", "switcher-5-12"
};
static const char *const symptoms[] = { "resets",           "boot-loop",       "memory-error",
                                        "garbled-graphics", "picture-bars",    "audio-hum",
                                        "no-sound",         "distorted-sound", "dead",
                                        "board-dead",       "supply-ticks",    "lamps-dim",
                                        "burning-smell",    "chips-hot",
                                        "controls-erratic", "control-dead",    "coins-wrong",
                                        "scores-lost",      "watchdog-barks",  "thump-cures",
                                        "sprites-wrong",    "palette-wrong",   "colour-missing",  "picture-rolls",
                                        "picture-dim",      "sound-bars",      "hum-with-volume",
                                        "picture-buzz",     "amp-hot",         "cold-start",
                                        "warm-freeze",      "evening-fails",   "fuse-blows",
                                        "mains-fuse-blows", "fuse-later",      "tingle" };

static void
assert_inside (RwPracticeCabinet *cabinet,
               RwPlace            place)
{
  RwProfile *profile = rw_practice_cabinet_get_profile (cabinet);

  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    {
      const RwRail *rail = rw_profile_get_rail (profile, i);
      const double volts = practice_dc (cabinet, rail->id, place);
      const gboolean bare = place == RW_PLACE_TERMINALS;

      g_test_message ("%s %s %s: %.3f V", rw_profile_get_id (profile), rail->id,
                      rw_place_to_id (place), volts);
      g_assert_cmpfloat (volts, >=, bare ? rail->bare_lo : rail->lo);
      g_assert_cmpfloat (volts, <=, bare ? rail->bare_hi : rail->hi);
      if (!bare)
        g_assert_cmpfloat (practice_ripple (cabinet, rail->id, place), <=, rail->ripple_limit);
    }
}

/* Whatever profile and seed: a healthy cabinet is inside every limit, cold and warm, fitted and
 * bare, its drops are good ones, and nobody has anything to complain of. */
static void
healthy_cabinets_are_healthy (void)
{
  for (guint seed = 0; seed < 18; seed++)
    {
      g_autoptr (RwPracticeCabinet) cabinet = practice_running (
          profiles[seed % G_N_ELEMENTS (profiles)], seed, NULL, 0, 30);

      for (guint warm = 0; warm < 2; warm++)
        {
          assert_inside (cabinet, RW_PLACE_BOARD);
          g_assert_cmpfloat (practice_dc (cabinet, "p5", RW_PLACE_WIRE), >, 0.020);
          g_assert_cmpfloat (practice_dc (cabinet, "p5", RW_PLACE_WIRE), <, 0.100);
          g_assert_cmpfloat (practice_dc (cabinet, RW_RAIL_GROUND, RW_PLACE_WIRE), >, 0.010);
          g_assert_cmpfloat (practice_dc (cabinet, RW_RAIL_GROUND, RW_PLACE_WIRE), <, 0.060);
          for (guint i = 0; i < G_N_ELEMENTS (symptoms); i++)
            g_assert_false (rw_practice_cabinet_has_symptom (cabinet, symptoms[i]));
          rw_practice_cabinet_advance (cabinet, 700);
        }
      g_assert_cmpuint (rw_practice_cabinet_get_resets (cabinet), ==, 0);
      practice_pull_board (cabinet, 10);
      assert_inside (cabinet, RW_PLACE_TERMINALS);
    }
}

static void
same_seed_builds_the_same_cabinet (void)
{
  g_autoptr (RwProfile) profile = practice_profile (CLASSIC);
  RwPracticeParams a, b, c;

  rw_practice_build (&a, profile, 11);
  rw_practice_build (&b, profile, 11);
  rw_practice_build (&c, profile, 12);
  g_assert_cmpfloat (a.rail[0].load_amps, ==, b.rail[0].load_amps);
  g_assert_cmpfloat (a.rail[1].turns, ==, b.rail[1].turns);
  g_assert_cmpfloat (a.trim_start, ==, b.trim_start);
  g_assert_cmpfloat (a.rail[0].load_amps, !=, c.rail[0].load_amps);
}

static void
faults_that_do_not_fit_are_refused (void)
{
  static const char *const strangers[][2] = { { "bridge-diode-open", CLASSIC },
                                              { "minus5-lost-supply", LINEAR },
                                              { "output-capacitors-tired", LINEAR },
                                              { "flux-capacitor", CLASSIC } };

  for (guint i = 0; i < G_N_ELEMENTS (strangers); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (RwProfile) profile = practice_profile (strangers[i][1]);
      const RwPracticeFault fault = { strangers[i][0], 0.5 };

      g_assert_null (rw_practice_cabinet_new (profile, 1, &fault, 1, "x", &error));
      g_assert_error (error, RW_PRACTICE_ERROR, RW_PRACTICE_ERROR_FAULT);
      g_assert_nonnull (strstr (error->message, strangers[i][0]));
    }
}

static void
strengths_out_of_range_are_refused (void)
{
  static const double strengths[] = { -0.1, 1.1, NAN };

  for (guint i = 0; i < G_N_ELEMENTS (strengths); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (RwProfile) profile = practice_profile (CLASSIC);
      const RwPracticeFault fault = { "trim-low", strengths[i] };

      g_assert_null (rw_practice_cabinet_new (profile, 1, &fault, 1, "x", &error));
      g_assert_error (error, RW_PRACTICE_ERROR, RW_PRACTICE_ERROR_FAULT);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, func) g_test_add_func ("/practice/faults/" name, func)
  ADD ("each-fault-shows-its-signature", each_fault_shows_its_signature);
  ADD ("no-fault-is-without-a-signature", no_fault_is_without_a_signature);
  ADD ("pass-transistor-goes-one-way-or-the-other", pass_transistor_goes_one_way_or_the_other);
  ADD ("regulator-drifts-either-way", regulator_drifts_either_way);
  ADD ("wrong-tap-shifts-every-winding", wrong_tap_shifts_every_winding);
  ADD ("bad-reset-part-wants-a-second-switch-on", bad_reset_part_wants_a_second_switch_on);
  ADD ("corrosion-bites-when-warm", corrosion_bites_when_warm);
  ADD ("open-minus-five-is-lifted-by-the-board", open_minus_five_is_lifted_by_the_board);
  ADD ("strength-grows-the-drop", strength_grows_the_drop);
  ADD ("minimum-load-shows-with-the-board-out", minimum_load_shows_with_the_board_out);
  ADD ("hot-supply-sinks-and-drags-the-board", hot_supply_sinks_and_drags_the_board);
  ADD ("worn-trim-wanders", worn_trim_wanders);
  ADD ("healthy-cabinets-are-healthy", healthy_cabinets_are_healthy);
  ADD ("same-seed-builds-the-same-cabinet", same_seed_builds_the_same_cabinet);
  ADD ("faults-that-do-not-fit-are-refused", faults_that_do_not_fit_are_refused);
  ADD ("strengths-out-of-range-are-refused", strengths_out_of_range_are_refused);
#undef ADD
  return g_test_run ();
}
