/* test-complaints.c: what somebody before a faulty practice cabinet complains of follows from the fault.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "practice-fixtures.h"
#include "rw-practice-look.h"
#include "rw-practice-meter.h"
#include "rw-practice-symptoms.h"

#define CLASSIC "classic-5-12-m5"
#define LINEAR "linear-5-audio"

typedef struct
{
  const char *fault;
  const char *profile;
  double      strength;
  const char *symptom;
} Complaint;

static const Complaint complaints[] = {
  { "trim-low", CLASSIC, 0.75, "resets" },
  { "edge-oxidised", CLASSIC, 0.95, "resets" },
  { "ground-wire-poor", CLASSIC, 0.7, "picture-bars" },
  { "reset-part-bad", CLASSIC, 0.6, "resets" },
  { "audio-filter-tired", CLASSIC, 0.6, "audio-hum" },
  { "audio-filter-tired", LINEAR, 0.8, "audio-hum" },
  { "audio-amp-bad", CLASSIC, 0.6, "audio-hum" },
  { "audio-ground-loop", CLASSIC, 0.6, "audio-hum" },
  { "minus5-lost-supply", "dram-5-12-m5", 0.5, "garbled-graphics" },
  { "memory-bad", CLASSIC, 0.5, "garbled-graphics" },
  { "memory-bad", CLASSIC, 0.4, "palette-wrong" },
  { "reset-part-bad", CLASSIC, 0.9, "cold-start" },
  { "trim-high", CLASSIC, 0.9, "chips-hot" },
  { "sense-open", CLASSIC, 0.9, "chips-hot" },
  { "p12-lost-supply", CLASSIC, 1.0, "no-sound" },
  { "mains-path-open", CLASSIC, 1.0, "dead" },
  { "poor-crimp", CLASSIC, 0.8, "burning-smell" },
  { "low-mains", LINEAR, 0.5, "lamps-dim" },
  { "panel-ground-open", CLASSIC, 0.8, "controls-erratic" },
  { "scores-battery-flat", CLASSIC, 0.8, "scores-lost" },
  { "speaker-path-open", CLASSIC, 0.8, "no-sound" },
  { "speaker-path-open", CLASSIC, 0.3, "distorted-sound" },
  { "audio-amp-bad", CLASSIC, 0.9, "no-sound" },
  { "audio-amp-bad", CLASSIC, 0.5, "distorted-sound" },
  { "audio-amp-bad", CLASSIC, 0.5, "amp-hot" },
  { "audio-filter-tired", CLASSIC, 0.9, "distorted-sound" },
  { "monitor-filter-tired", CLASSIC, 0.5, "picture-bars" },
  { "monitor-worn", CLASSIC, 0.6, "picture-dim" },
  { "earth-missing", CLASSIC, 0.6, "tingle" },
  { "fuse-blown", LINEAR, 0.3, "fuse-blows" },
  { "fuse-blown", LINEAR, 0.3, "board-dead" },
  { "fuse-blown", CLASSIC, 0.3, "mains-fuse-blows" },
  { "fuse-holder-tired", CLASSIC, 0.5, "fuse-later" },
  { "lamp-circuit-short", CLASSIC, 0.7, "lamps-dim" },
  { "lamp-circuit-short", CLASSIC, 0.7, "burning-smell" },
  { "connector-shifted", CLASSIC, 0.3, "board-dead" },
  { "board-short", CLASSIC, 0.8, "supply-ticks" },
  { "supply-primary-dead", CLASSIC, 0.1, "supply-ticks" },
  { "supply-overheats", CLASSIC, 1.0, "warm-freeze" },
  { "raw-capacitor-tired", LINEAR, 0.8, "evening-fails" },
  { "board-trace-loss", CLASSIC, 0.7, "sprites-wrong" },
  { "ground-wire-poor", CLASSIC, 0.7, "sound-bars" },
  { "minus12-lost-supply", "switcher-5-12-m12", 0.6, "hum-with-volume" },
};

static void
faults_bring_their_complaints (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (complaints); i++)
    {
      const Complaint *c = &complaints[i];
      g_autoptr (RwPracticeCabinet) healthy = practice_running (c->profile, 3, NULL, 0, 60);
      g_autoptr (RwPracticeCabinet)
          faulty = practice_running (c->profile, 3, c->fault, c->strength, 60);

      g_test_message ("%s: %s", c->fault, c->symptom);
      g_assert_true (rw_practice_cabinet_knows_symptom (c->symptom));
      g_assert_false (rw_practice_cabinet_has_symptom (healthy, c->symptom));
      g_assert_true (rw_practice_cabinet_has_symptom (faulty, c->symptom));
    }
}

/* Lamps on the supply go out with it; lamps on the mains transformer stay on. Never both. */
static void
dead_supply_takes_its_own_lamps_along (void)
{
  guint dark = 0;

  for (guint64 seed = 1; seed <= 12; seed++)
    {
      g_autoptr (RwPracticeCabinet)
          cabinet = practice_running (CLASSIC, seed, "supply-primary-dead", 1, 30);
      const gboolean dead = rw_practice_cabinet_has_symptom (cabinet, "dead");

      dark += dead;
      g_assert_cmpint (dead, !=, rw_practice_cabinet_has_symptom (cabinet, "board-dead"));
      g_assert_cmpstr (rw_practice_look (cabinet, "reset-pin"), ==, "unfed");
    }
  g_assert_cmpuint (dark, >, 1);
  g_assert_cmpuint (dark, <, 11);
}

/* How many of twelve cabinets, run warm, have the symptom. */
static guint
count_warm (const char *fault,
            double      strength,
            const char *symptom)
{
  guint n = 0;

  for (guint64 seed = 1; seed <= 12; seed++)
    {
      g_autoptr (RwPracticeCabinet) cabinet = practice_running (CLASSIC, seed, fault, strength, 1500);

      n += rw_practice_cabinet_has_symptom (cabinet, symptom);
    }
  return n;
}

/* Smell comes from one hot spot: a film spreads its heat over every finger, a burnt finger does not. */
static void
one_hot_spot_smells (void)
{
  g_assert_cmpuint (count_warm ("edge-oxidised", 0.9, "burning-smell"), <=, 1);
  g_assert_cmpuint (count_warm ("edge-burnt", 0.9, "burning-smell"), >=, 7);
  g_assert_cmpuint (count_warm ("poor-crimp", 0.9, "burning-smell"), >=, 7);
}

static double
shown_volts (RwPracticeCabinet *cabinet)
{
  g_autoptr (RwPracticeMeter)
      meter = rw_practice_meter_new (cabinet, "m1", "bench meter", 0, 1, 6000, 7);

  rw_practice_meter_set_contact_volts (meter, 0);
  g_assert_true (rw_practice_cabinet_set_leads (cabinet, "p5", RW_PLACE_BOARD, RW_KIND_DC));
  rw_practice_cabinet_advance (cabinet, 3);

  g_autoptr (GBytes) bytes = rw_practice_meter_take_bytes (meter);
  g_autofree char *text = g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
  const char *last = g_strrstr_len (text, (gssize) strlen (text) - 2, "\n");

  g_assert_nonnull (last);
  return g_ascii_strtod (last + 1, NULL);
}

/* A flat battery in the meter: what is there stays, what it shows is a few per cent high. */
static void
flat_meter_battery_reads_high (void)
{
  g_autoptr (RwPracticeCabinet) flat = practice_running (CLASSIC, 4, "meter-or-leads", 0.6, 10);
  g_autoptr (RwPracticeCabinet) good = practice_running (CLASSIC, 4, NULL, 0, 10);
  const double gain = 1 + 0.015 + 0.06 * 0.6;

  g_assert_cmpfloat (fabs (shown_volts (good) - practice_dc (good, "p5", RW_PLACE_BOARD)), <, 0.012);
  g_assert_cmpfloat (fabs (shown_volts (flat) - gain * practice_dc (flat, "p5", RW_PLACE_BOARD)), <,
                     0.012);
}

/* Switching noise of some 40 kHz makes no bars; ripple of the mains that the regulator lets through does. */
static void
only_slow_ripple_makes_bars (void)
{
  g_autoptr (RwPracticeCabinet)
      linear = practice_running (LINEAR, 3, "bridge-diode-open", 1, 30);

  g_assert_cmpuint (count_warm ("output-capacitors-tired", 0.7, "picture-bars"), ==, 0);
  g_assert_true (rw_practice_cabinet_has_symptom (linear, "picture-bars"));
}

/* A load step now and then is no boot loop; a rail that is too low all the time is one. */
static void
a_boot_loop_never_gets_anywhere (void)
{
  g_autoptr (RwPracticeCabinet)
      loops = practice_running (CLASSIC, 3, "trim-low", 1, 30);

  g_assert_true (rw_practice_cabinet_has_symptom (loops, "boot-loop")
                 || rw_practice_cabinet_has_symptom (loops, "board-dead"));
  g_assert_cmpuint (count_warm ("output-capacitors-tired", 0.7, "boot-loop"), <=, 2);
}
int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, func) g_test_add_func ("/practice/complaints/" name, func)
  ADD ("faults-bring-their-complaints", faults_bring_their_complaints);
  ADD ("dead-supply-takes-its-own-lamps-along", dead_supply_takes_its_own_lamps_along);
  ADD ("one-hot-spot-smells", one_hot_spot_smells);
  ADD ("flat-meter-battery-reads-high", flat_meter_battery_reads_high);
  ADD ("only-slow-ripple-makes-bars", only_slow_ripple_makes_bars);
  ADD ("a-boot-loop-never-gets-anywhere", a_boot_loop_never_gets_anywhere);
#undef ADD
  return g_test_run ();
}
