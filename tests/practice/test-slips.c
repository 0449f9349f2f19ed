/* test-slips.c: mistakes that people make with a meter show at a practice cabinet as on a bench, and are caught.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Those that a practice cabinet can make, by their numbers in the trade's list:
 *
 *   caught by the mistakes of a session:  1 AC mode on DC, 2 DC mode for ripple, 3 range too low, 4 leads reversed, 5 wrong
 *     screw, 6 black on the chassis, 7 terminals for board, 8 both leads on one side, 9 crimp for finger, 10 trimmed
 *     without load, 11 drop chased, 12 −5 chased, 13 others not read again, 15 ohms with power on, 23 read while it changes
 *   stopped, or said by the meter:        14 mains, 16 capacitor not discharged, 17 amps jack across a rail
 *   shown as they are, for the advice:    19 the beeper's yes, 20 leads not zeroed, 24 and 25 everything high by one
 *     share, 28 no ripple on a switcher, 29 a bare switcher
 *
 * Not here: those of typing (26, 27) and of keeping books (22, 30, 31, 34, 35), and what cannot be done at these
 * points (18 a meter in series, 21 diodes in circuit, 32 a second board, 33 plugging live).
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "practice-bench.h"

#define CLASSIC "classic-5-12-m5"
#define LINEAR "linear-5-audio"

static const char *const profiles[] = { "classic-5-12-m5",   "dram-5-12-m5",  "linear-5-audio",
                                        "switcher-5-12-m12", "switcher-5-12", "switcher-5-12-24" };

/* Leads of 0.2–0.5 Ω are in every reading until they are zeroed: a fuse and a bad one look alike (E19, E20). */
static void
leads_count_until_they_are_zeroed (void)
{
  g_autoptr (PracticeBench) bench = practice_bench_new (LINEAR, 3, NULL, 0);
  RwPracticeShown shown;

  practice_bench_power (bench, FALSE, 300);
  practice_bench_set (bench, RW_PRACTICE_MODE_OHMS);
  practice_bench_put (bench, "cabinet:chassis", "cabinet:chassis");
  shown = practice_bench_look (bench);
  g_assert_cmpfloat (shown.value, >=, 0.1);
  g_assert_cmpfloat (shown.value, <=, 0.6);
  g_assert_cmpfloat_with_epsilon (shown.step, 0.1, 1e-12);
  practice_bench_put (bench, "supply:fuse1", "supply:fuse2");
  g_assert_cmpfloat_with_epsilon (practice_bench_look (bench).value, shown.value, 0.2);
  rw_practice_meter_set_zeroed (bench->meter, TRUE);
  g_assert_cmpfloat (fabs (practice_bench_look (bench).value), <=, 0.2);
  g_assert_null (rw_practice_meter_get_caution (bench->meter));

  /* A lamp is no good connection, and it beeps all the same. */
  practice_bench_put (bench, "cabinet:lamp+", "cabinet:lamp-");
  g_assert_cmpfloat_with_epsilon (practice_bench_look (bench).value, 7.5, 1);
  g_assert_true (rw_practice_meter_get_beeps (bench->meter));
  practice_bench_put (bench, "sound:speaker+", "supply:raw+");
  practice_bench_look (bench);
  g_assert_false (rw_practice_meter_get_beeps (bench->meter));
}

/* E01: millivolts of AC where 5 V stand and the board runs; a cheap meter shows 2.22 times the volts, or nothing. */
static void
e01_ac_mode_on_a_dc_rail (void)
{
  g_autoptr (PracticeBench) bench = practice_bench_new (CLASSIC, 3, NULL, 0);

  practice_bench_set (bench, RW_PRACTICE_MODE_DC);
  practice_bench_read (bench, "chip:p5", "chip:gnd", "p5", RW_PLACE_CHIP, RW_KIND_DC);
  practice_bench_set (bench, RW_PRACTICE_MODE_AC);
  g_assert_cmpfloat (practice_bench_read (bench, "edge:p5", "edge:gnd", "p5", RW_PLACE_BOARD, RW_KIND_DC), <, 0.03);
  g_assert_true (practice_bench_warned (bench, "ac-mode"));

  rw_practice_meter_set_half_wave (bench->meter, TRUE);
  g_assert_cmpfloat_with_epsilon (
      practice_bench_read (bench, "edge:p5", "edge:gnd", "p5", RW_PLACE_BOARD, RW_KIND_RIPPLE), 2.22 * 5.04, 0.3);
  g_assert_true (practice_bench_warned (bench, "ac-mode"));
  practice_bench_put (bench, "edge:gnd", "edge:p5");
  g_assert_cmpfloat (practice_bench_look (bench).value, <, 0.05);
}

/* E02: the rail itself where its ripple was asked for. */
static void
e02_dc_mode_for_ripple (void)
{
  g_autoptr (PracticeBench) bench = practice_bench_new (CLASSIC, 3, NULL, 0);

  practice_bench_set (bench, RW_PRACTICE_MODE_DC);
  g_assert_cmpfloat_with_epsilon (
      practice_bench_read (bench, "edge:p5", "edge:gnd", "p5", RW_PLACE_BOARD, RW_KIND_RIPPLE), 5.04, 0.08);
  g_assert_true (practice_bench_warned (bench, "dc-mode-for-ripple"));
  practice_bench_set (bench, RW_PRACTICE_MODE_AC);
  practice_bench_claim (bench, "p5", RW_PLACE_BOARD, RW_KIND_RIPPLE);
  g_assert_cmpuint (practice_bench_n_warnings (bench), ==, 0);
}

/* E03: past a fixed range it says OL for good; by itself it goes on with a coarser last digit. */
static void
e03_range_too_low (void)
{
  g_autoptr (PracticeBench) bench = practice_bench_new (CLASSIC, 3, NULL, 0);
  RwPracticeShown shown;

  practice_bench_set (bench, RW_PRACTICE_MODE_DC);
  rw_practice_meter_set_range (bench->meter, 0);
  practice_bench_put (bench, "strip:p12", "strip:gnd");
  g_assert_true (practice_bench_look (bench).over);
  practice_bench_claim (bench, "p12", RW_PLACE_TERMINALS, RW_KIND_DC);
  g_assert_true (practice_bench_warned (bench, "overload"));
  rw_practice_meter_set_range (bench->meter, 1);
  shown = practice_bench_look (bench);
  g_assert_cmpfloat_with_epsilon (shown.value, 12, 0.5);
  g_assert_cmpfloat_with_epsilon (shown.step, 0.01, 1e-12);
  rw_practice_meter_set_range (bench->meter, 2);
  g_assert_cmpfloat_with_epsilon (practice_bench_look (bench).step, 0.1, 1e-12);
  practice_bench_put (bench, "strip:p5", "strip:gnd");
  rw_practice_meter_set_range (bench->meter, RW_PRACTICE_RANGE_AUTO);
  practice_bench_look (bench);
  g_assert_cmpfloat_with_epsilon (practice_bench_look (bench).step, 0.001, 1e-12);
  rw_practice_meter_set_range (bench->meter, -1);
  g_assert_true (practice_bench_look (bench).over);
}

/* E04 and E05: the other sign; another rail's volts. */
static void
e04_e05_reversed_leads_and_wrong_screw (void)
{
  g_autoptr (PracticeBench) bench = practice_bench_new (CLASSIC, 3, NULL, 0);

  practice_bench_set (bench, RW_PRACTICE_MODE_DC);
  practice_bench_read (bench, "strip:m5", "strip:gnd", "m5", RW_PLACE_TERMINALS, RW_KIND_DC);
  g_assert_cmpuint (practice_bench_n_warnings (bench), ==, 0);
  g_assert_cmpfloat_with_epsilon (
      practice_bench_read (bench, "edge:gnd", "edge:p5", "p5", RW_PLACE_BOARD, RW_KIND_DC), -5.04, 0.08);
  g_assert_true (practice_bench_warned (bench, "leads-reversed"));
  practice_bench_read (bench, "edge:p5", "edge:gnd", "p5", RW_PLACE_BOARD, RW_KIND_DC);
  g_assert_cmpuint (practice_bench_n_warnings (bench), ==, 0);
  practice_bench_read (bench, "strip:p12", "strip:gnd", "p5", RW_PLACE_TERMINALS, RW_KIND_DC);
  g_assert_true (practice_bench_warned (bench, "wrong-terminal"));
}

/* E06: 0.05–1 V off, with AC on it, drifting; and the drops do not add up. */
static void
e06_black_on_the_chassis (void)
{
  guint caught = 0;

  for (guint seed = 1; seed <= 20; seed++)
    {
      g_autoptr (PracticeBench) bench = practice_bench_new (CLASSIC, seed, NULL, 0);
      RwPracticePair pair;
      double right, wrong, later;

      rw_practice_cabinet_measure (bench->cabinet, "edge:p5", "cabinet:chassis", &pair);
      g_assert_null (pair.rail);
      g_assert_cmpfloat (pair.ac, >, 0.02);
      practice_bench_set (bench, RW_PRACTICE_MODE_DC);
      practice_bench_read (bench, "strip:p5", "strip:gnd", "p5", RW_PLACE_TERMINALS, RW_KIND_DC);
      practice_bench_read (bench, "strip:p5", "edge:p5", "p5", RW_PLACE_WIRE, RW_KIND_DC);
      practice_bench_read (bench, "edge:gnd", "strip:gnd", RW_RAIL_GROUND, RW_PLACE_WIRE, RW_KIND_DC);
      right = practice_bench_read (bench, "edge:p5", "edge:gnd", "p5", RW_PLACE_BOARD, RW_KIND_DC);
      g_assert_false (practice_bench_warned (bench, "chassis-ground"));
      wrong = practice_bench_read (bench, "edge:p5", "cabinet:chassis", "p5", RW_PLACE_BOARD, RW_KIND_DC);
      g_assert_cmpfloat (fabs (wrong - right), >, 0.02);
      g_assert_cmpfloat (fabs (wrong - right), <, 1);
      caught += practice_bench_warned (bench, "chassis-ground") || practice_bench_warned (bench, "terminal-as-board")
                || practice_bench_warned (bench, "never-above");
      rw_practice_cabinet_advance (bench->cabinet, 15);
      later = practice_bench_look (bench).value;
      g_assert_cmpfloat (fabs (later - wrong), >, 0.001);
    }
  g_assert_cmpuint (caught, >=, 18);
}

/* E07: the terminals' value written down for the board, where a poor crimp costs 0.2 V. */
static void
e07_terminals_taken_for_the_board (void)
{
  g_autoptr (PracticeBench) bench = practice_bench_new (CLASSIC, 3, "poor-crimp", 0.7);

  practice_bench_set (bench, RW_PRACTICE_MODE_DC);
  practice_bench_read (bench, "strip:p5", "edge:p5", "p5", RW_PLACE_WIRE, RW_KIND_DC);
  practice_bench_read (bench, "edge:gnd", "strip:gnd", RW_RAIL_GROUND, RW_PLACE_WIRE, RW_KIND_DC);
  practice_bench_read (bench, "strip:p5", "strip:gnd", "p5", RW_PLACE_TERMINALS, RW_KIND_DC);
  practice_bench_claim (bench, "p5", RW_PLACE_BOARD, RW_KIND_DC);
  g_assert_true (practice_bench_warned (bench, "terminal-as-board")
                 || practice_bench_warned (bench, "chassis-ground"));
  practice_bench_read (bench, "edge:p5", "edge:gnd", "p5", RW_PLACE_BOARD, RW_KIND_DC);
  g_assert_cmpuint (practice_bench_n_warnings (bench), ==, 0);
}

/* E08: both leads on the supply's side of the wire: next to nothing, while the board draws amperes. */
static void
e08_both_leads_on_one_side (void)
{
  g_autoptr (PracticeBench) bench = practice_bench_new (CLASSIC, 3, "poor-crimp", 0.7);

  practice_bench_set (bench, RW_PRACTICE_MODE_DC);
  practice_bench_read (bench, "strip:p5", "strip:gnd", "p5", RW_PLACE_TERMINALS, RW_KIND_DC);
  practice_bench_read (bench, "edge:p5", "edge:gnd", "p5", RW_PLACE_BOARD, RW_KIND_DC);
  practice_bench_put (bench, "harness:p5:board", "harness:p5:board");
  rw_practice_meter_set_range (bench->meter, -1);
  practice_bench_claim (bench, "p5", RW_PLACE_WIRE, RW_KIND_DC);
  g_assert_true (practice_bench_warned (bench, "zero-drop"));
  rw_practice_meter_set_range (bench->meter, RW_PRACTICE_RANGE_AUTO);
  g_assert_cmpfloat (practice_bench_read (bench, "strip:p5", "edge:p5", "p5", RW_PLACE_WIRE, RW_KIND_DC), >, 0.1);
  g_assert_false (practice_bench_warned (bench, "zero-drop"));
}

/* E09: at the wire's crimp the edge looks good; the chip tells. */
static void
e09_the_crimp_taken_for_the_finger (void)
{
  g_autoptr (PracticeBench) bench = practice_bench_new (CLASSIC, 3, "edge-burnt", 1);
  double crimp, finger;

  practice_bench_set (bench, RW_PRACTICE_MODE_DC);
  crimp = practice_bench_read (bench, "harness:p5:board", "harness:gnd:board", "p5", RW_PLACE_BOARD, RW_KIND_DC);
  practice_bench_read (bench, "chip:p5", "chip:gnd", "p5", RW_PLACE_CHIP, RW_KIND_DC);
  g_assert_true (practice_bench_warned (bench, "drop-skipped"));
  finger = practice_bench_read (bench, "edge:p5", "edge:gnd", "p5", RW_PLACE_BOARD, RW_KIND_DC);
  g_assert_cmpfloat (crimp - finger, >, 0.15);
  g_assert_false (practice_bench_warned (bench, "drop-skipped"));
}

/* E10: trimmed with the board out. */
static void
e10_trimmed_without_load (void)
{
  g_autoptr (PracticeBench) bench = practice_bench_new (CLASSIC, 3, "output-capacitors-tired", 1);
  double bare;

  practice_bench_set (bench, RW_PRACTICE_MODE_DC);
  practice_bench_fit (bench, FALSE);
  bare = practice_bench_read (bench, "strip:p5", "strip:gnd", "p5", RW_PLACE_TERMINALS, RW_KIND_DC);
  practice_bench_turn (bench, 5.0 - bare);
  practice_bench_read (bench, "strip:p5", "strip:gnd", "p5", RW_PLACE_TERMINALS, RW_KIND_DC);
  practice_bench_fit (bench, TRUE);
  g_assert_cmpfloat (practice_bench_read (bench, "strip:p5", "strip:gnd", "p5", RW_PLACE_TERMINALS, RW_KIND_DC), <,
                     4.9);
  g_assert_true (practice_bench_warned (bench, "trim-no-load"));
}

/* E11: turned up until the board had its 5 V through a bad crimp. */
static void
e11_the_drop_chased_with_the_trim (void)
{
  g_autoptr (PracticeBench) bench = practice_bench_new (CLASSIC, 3, "poor-crimp", 1);
  double board;

  practice_bench_set (bench, RW_PRACTICE_MODE_DC);
  board = practice_bench_read (bench, "edge:p5", "edge:gnd", "p5", RW_PLACE_BOARD, RW_KIND_DC);
  practice_bench_turn (bench, 5.0 - board);
  practice_bench_read (bench, "edge:p5", "edge:gnd", "p5", RW_PLACE_BOARD, RW_KIND_DC);
  g_assert_cmpfloat (practice_bench_read (bench, "strip:p5", "strip:gnd", "p5", RW_PLACE_TERMINALS, RW_KIND_DC), >,
                     5.25);
  g_assert_true (practice_bench_warned (bench, "chasing-drop"));
}

/* E12: −5 low and not of the trim; +5 is turned up for it. */
static void
e12_minus_five_chased_with_the_trim (void)
{
  g_autoptr (PracticeBench) bench = practice_bench_new (CLASSIC, 3, "minus5-lost-supply", 0.25);
  double low, after;

  practice_bench_set (bench, RW_PRACTICE_MODE_DC);
  practice_bench_read (bench, "edge:p5", "edge:gnd", "p5", RW_PLACE_BOARD, RW_KIND_DC);
  low = practice_bench_read (bench, "edge:m5", "edge:gnd", "m5", RW_PLACE_BOARD, RW_KIND_DC);
  g_assert_cmpfloat (low, >, -4.5);
  practice_bench_turn (bench, 0.30);
  practice_bench_read (bench, "edge:p5", "edge:gnd", "p5", RW_PLACE_BOARD, RW_KIND_DC);
  after = practice_bench_read (bench, "edge:m5", "edge:gnd", "m5", RW_PLACE_BOARD, RW_KIND_DC);
  g_assert_cmpfloat (fabs (after - low), <, 0.4);
  g_assert_true (practice_bench_warned (bench, "chasing-minus"));
}

/* E13: after a turn the other rails are as they were written down no more. */
static void
e13_the_others_not_read_again (void)
{
  g_autoptr (PracticeBench) bench = practice_bench_new (CLASSIC, 3, NULL, 0);

  practice_bench_set (bench, RW_PRACTICE_MODE_DC);
  practice_bench_read (bench, "edge:p12", "edge:gnd", "p12", RW_PLACE_BOARD, RW_KIND_DC);
  practice_bench_read (bench, "edge:p5", "edge:gnd", "p5", RW_PLACE_BOARD, RW_KIND_DC);
  practice_bench_turn (bench, 0.05);
  practice_bench_read (bench, "edge:p5", "edge:gnd", "p5", RW_PLACE_BOARD, RW_KIND_DC);

  g_autoptr (RwBenchState) state = rw_bench_state_new (bench->session);

  g_assert_true (rw_bench_state_find_spot (state, "p12", RW_PLACE_BOARD, RW_KIND_DC)->stale);
  g_assert_false (rw_bench_state_find_spot (state, "p5", RW_PLACE_BOARD, RW_KIND_DC)->stale);
}

/* E14: stopped, explained, counted; the leads stay where they are, whatever the meter is set for, on or off. */
static void
e14_mains_is_never_touched (void)
{
  static const struct
  {
    RwPracticeMode mode;
    RwPracticeJack jack;
    const char    *says;
  } settings[] = { { RW_PRACTICE_MODE_DC, RW_PRACTICE_JACK_VOLTS, "live with the switch off" },
                   { RW_PRACTICE_MODE_OHMS, RW_PRACTICE_JACK_VOLTS, "Ohms across mains" },
                   { RW_PRACTICE_MODE_AMPS, RW_PRACTICE_JACK_AMPS, "short circuit" } };

  for (guint p = 0; p < G_N_ELEMENTS (profiles); p++)
    for (guint s = 0; s < G_N_ELEMENTS (settings); s++)
      {
        g_autoptr (PracticeBench) bench = practice_bench_new (profiles[p], 3, NULL, 0);
        guint stopped = 0;

        rw_practice_meter_set_mode (bench->meter, settings[s].mode, settings[s].jack);
        practice_bench_put (bench, "cabinet:chassis", "edge:gnd");
        if (p % 2 == 0)
          practice_bench_power (bench, FALSE, 100);

        const guint serial = rw_practice_cabinet_get_leads_serial (bench->cabinet);

        for (guint i = 0; i < rw_practice_cabinet_get_n_nodes (bench->cabinet); i++)
          {
            const RwPracticeNode *node = rw_practice_cabinet_get_node (bench->cabinet, i);

            if (node->hazard != RW_PRACTICE_HAZARD_MAINS)
              continue;
            g_assert_false (rw_practice_cabinet_put_lead (bench->cabinet, i % 2, node->id));
            g_assert_nonnull (bench->lethal_text);
            g_assert_nonnull (strstr (bench->lethal_text, settings[s].says));
            stopped++;
          }
        g_assert_cmpuint (stopped, >=, 2);
        g_assert_cmpuint (bench->n_lethal, ==, stopped);
        g_assert_cmpuint (rw_practice_cabinet_get_n_lethal (bench->cabinet), ==, stopped);
        g_assert_cmpuint (rw_practice_cabinet_get_leads_serial (bench->cabinet), ==, serial);
        g_assert_cmpstr (rw_practice_cabinet_get_lead (bench->cabinet, RW_PRACTICE_RED), ==, "cabinet:chassis");
        g_assert_cmpstr (rw_practice_cabinet_get_lead (bench->cabinet, RW_PRACTICE_BLACK), ==, "edge:gnd");
      }
}

/* E15: OL or less than nothing where 25 Ω are, and a caution. */
static void
e15_ohms_with_power_on (void)
{
  g_autoptr (PracticeBench) bench = practice_bench_new (CLASSIC, 3, NULL, 0);

  practice_bench_set (bench, RW_PRACTICE_MODE_OHMS);
  practice_bench_put (bench, "edge:p5", "edge:gnd");
  g_assert_true (practice_bench_look (bench).over);
  g_assert_nonnull (strstr (rw_practice_meter_get_caution (bench->meter), "power on"));
  practice_bench_claim (bench, "p5", RW_PLACE_BOARD, RW_KIND_OHMS);
  g_assert_true (practice_bench_warned (bench, "ohms-power-on"));

  /* Red on the board's end of the drop: its volts count downwards. */
  practice_bench_put (bench, "edge:p5", "strip:p5");
  g_assert_cmpfloat (practice_bench_look (bench).value, <, -5);
  practice_bench_power (bench, FALSE, 120);
  practice_bench_put (bench, "edge:p5", "edge:gnd");
  practice_bench_look (bench);

  const RwPracticeShown shown = practice_bench_look (bench);

  g_assert_false (shown.over);
  g_assert_cmpfloat (shown.value, >, 4);
  g_assert_cmpfloat (shown.value, <, 100);
  g_assert_null (rw_practice_meter_get_caution (bench->meter));
}

/* E16: more than 10 % a second in one direction until the capacitor is empty. */
static void
e16_a_capacitor_not_discharged (void)
{
  g_autoptr (PracticeBench) bench = practice_bench_new (LINEAR, 3, NULL, 0);

  practice_bench_fit (bench, FALSE);
  practice_bench_set (bench, RW_PRACTICE_MODE_OHMS);
  practice_bench_put (bench, "supply:raw+", "supply:raw-");
  practice_bench_power (bench, FALSE, 7);
  g_assert_nonnull (strstr (rw_practice_meter_get_caution (bench->meter), "capacitor"));
  g_array_unref (rw_practice_meter_take_shown (bench->meter));
  rw_practice_cabinet_advance (bench->cabinet, 4);

  g_autoptr (GArray) shown = rw_practice_meter_take_shown (bench->meter);
  const RwPracticeShown *last = NULL;
  guint creeps = 0;

  for (guint i = 0; i < shown->len; i++)
    {
      const RwPracticeShown *now = &g_array_index (shown, RwPracticeShown, i);

      if (now->over)
        continue;
      if (last != NULL)
        {
          g_assert_cmpfloat (now->value, <, last->value);
          creeps += (last->value - now->value) / last->value / (now->t - last->t) > 0.10;
        }
      last = now;
    }
  g_assert_cmpuint (creeps, >=, 3);
  rw_practice_cabinet_advance (bench->cabinet, 60);
  g_assert_null (rw_practice_meter_get_caution (bench->meter));
  g_assert_cmpfloat_with_epsilon (practice_bench_look (bench).value, 1000, 30);
}

/* E17: volts with the lead in the amps jack: the rail goes down, the board resets, 0.00 is shown, and the meter's fuse
 * is gone. */
static void
e17_amps_jack_across_a_rail (void)
{
  for (guint p = 0; p < G_N_ELEMENTS (profiles); p++)
    {
      g_autoptr (PracticeBench) bench = practice_bench_new (profiles[p], 4, NULL, 0);
      double lowest = INFINITY;

      g_assert_cmpint (rw_practice_cabinet_get_board_state (bench->cabinet), ==, RW_PRACTICE_BOARD_RUNNING);
      rw_practice_meter_set_mode (bench->meter, RW_PRACTICE_MODE_DC, RW_PRACTICE_JACK_AMPS);
      g_assert_nonnull (strstr (rw_practice_meter_get_caution (bench->meter), "short circuit"));
      practice_bench_put (bench, p % 2 == 0 ? "edge:p5" : "strip:p5", p % 2 == 0 ? "edge:gnd" : "strip:gnd");
      for (guint i = 0; i < 100; i++)
        {
          rw_practice_cabinet_advance (bench->cabinet, 0.01);
          lowest = fmin (lowest, practice_dc (bench->cabinet, "p5", RW_PLACE_CHIP));
        }
      g_assert_cmpfloat (lowest, <, 3.5);
      g_assert_true (rw_practice_meter_get_fuse_blown (bench->meter));
      g_assert_nonnull (strstr (rw_practice_meter_get_caution (bench->meter), "blown"));
      g_assert_cmpfloat (fabs (practice_bench_look (bench).value), <=, 0.003);

      /* The rail is back, the board started again, and without that fuse nothing more happens. */
      g_assert_cmpfloat_with_epsilon (practice_dc (bench->cabinet, "p5", RW_PLACE_BOARD), 5.04, 0.08);
      rw_practice_meter_set_mode (bench->meter, RW_PRACTICE_MODE_DC, RW_PRACTICE_JACK_VOLTS);
      g_assert_cmpfloat_with_epsilon (practice_bench_look (bench).value, 5.05, 0.2);
      g_assert_null (rw_practice_meter_get_caution (bench->meter));
      rw_practice_meter_replace_fuse (bench->meter);
      g_assert_false (rw_practice_meter_get_fuse_blown (bench->meter));
    }
}

/* Amperes beside a wire are a share of its current: V/(R + 0.05 Ω), and no rail suffers. */
static void
amps_beside_a_wire_take_a_share (void)
{
  g_autoptr (PracticeBench) bench = practice_bench_new (CLASSIC, 3, "poor-crimp", 1);
  RwPracticePair pair;
  RwPracticeShown shown;

  rw_practice_meter_set_mode (bench->meter, RW_PRACTICE_MODE_AMPS, RW_PRACTICE_JACK_AMPS);
  practice_bench_put (bench, "strip:p5", "edge:p5");
  shown = practice_bench_look (bench);
  rw_practice_cabinet_measure (bench->cabinet, "strip:p5", "edge:p5", &pair);
  g_assert_cmpint (shown.kind, ==, RW_KIND_AMPS);
  /* The joint trembles while it is read. */
  g_assert_cmpfloat_with_epsilon (shown.value, pair.dc / (pair.ohms + 0.05), 0.05 * shown.value);
  g_assert_cmpfloat (shown.value, >, 1);
  g_assert_false (rw_practice_meter_get_fuse_blown (bench->meter));
  rw_practice_meter_set_mode (bench->meter, RW_PRACTICE_MODE_AMPS, RW_PRACTICE_JACK_VOLTS);
  g_assert_cmpfloat (fabs (practice_bench_look (bench).value), <=, 0.003);
  g_assert_nonnull (rw_practice_meter_get_caution (bench->meter));
}

static void
keep_shown (PracticeBench         *bench,
            const RwPracticeShown *shown)
{
  const RwReading reading = rw_reading_make ("p5", RW_PLACE_BOARD, RW_KIND_DC, shown->value, shown->step, "m1");
  RwEvent event = rw_event_make_reading (shown->t, &reading);

  rw_session_add (bench->session, &event);
}

/* E23: the first values after the leads moved are on their way. */
static void
e23_read_while_it_changes (void)
{
  g_autoptr (PracticeBench) bench = practice_bench_new (CLASSIC, 3, NULL, 0);

  practice_bench_set (bench, RW_PRACTICE_MODE_DC);
  practice_bench_put (bench, "edge:p5", "edge:gnd");
  rw_practice_cabinet_advance (bench->cabinet, 4);

  g_autoptr (GArray) shown = rw_practice_meter_take_shown (bench->meter);

  const RwPracticeShown *last = &g_array_index (shown, RwPracticeShown, shown->len - 1);
  const RwPracticeShown *early = &g_array_index (shown, RwPracticeShown, 0);

  while (early->value < 0.8 * last->value)
    early++;
  g_assert_cmpfloat (early->value, <, last->value - 0.05);
  keep_shown (bench, early);
  keep_shown (bench, last);
  g_assert_true (practice_bench_warned (bench, "reading-in-change"));
}

/* E24, E25: a meter with a flat battery: every rail is high by one and the same share, one that the trim does not move
 * as well, and so is the winding of a transformer. */
static void
e24_everything_high_by_one_share (void)
{
  static const char *const pairs[][2]
      = { { "strip:p5", "strip:gnd" }, { "strip:raw12", "strip:gnd" }, { "supply:raw+", "supply:raw-" } };
  g_autoptr (PracticeBench) bench = practice_bench_new (LINEAR, 3, "meter-or-leads", 0.6);

  practice_bench_set (bench, RW_PRACTICE_MODE_DC);
  for (guint i = 0; i < G_N_ELEMENTS (pairs); i++)
    {
      RwPracticePair pair;

      practice_bench_put (bench, pairs[i][0], pairs[i][1]);

      const double shown = practice_bench_look (bench).value;

      rw_practice_cabinet_measure (bench->cabinet, pairs[i][0], pairs[i][1], &pair);
      g_assert_cmpfloat_with_epsilon (shown / pair.dc, 1.015 + 0.06 * 0.6, 0.006);
    }
}

/* E28: hardly any AC on a switcher whose capacitors are tired: as on a bench, no proof of anything. */
static void
e28_a_switcher_shows_little_ripple (void)
{
  g_autoptr (PracticeBench) bench = practice_bench_new (CLASSIC, 3, NULL, 0);

  practice_bench_set (bench, RW_PRACTICE_MODE_AC);
  practice_bench_put (bench, "strip:p5", "strip:gnd");
  g_assert_cmpfloat (practice_bench_look (bench).value, <, 0.020);
}

/* E29: without a load it ticks or strays, and nothing is wrong with it. */
static void
e29_a_bare_switcher_looks_bad (void)
{
  guint odd = 0;

  for (guint seed = 1; seed <= 20; seed++)
    {
      g_autoptr (PracticeBench) bench = practice_bench_new (CLASSIC, seed, NULL, 0);
      double loaded, bare;

      practice_bench_set (bench, RW_PRACTICE_MODE_DC);
      practice_bench_put (bench, "strip:p12", "strip:gnd");
      loaded = practice_bench_look (bench).value;
      practice_bench_fit (bench, FALSE);
      bare = practice_bench_look (bench).value;
      odd += rw_practice_cabinet_get_ticking (bench->cabinet) || fabs (bare - loaded) > 0.3;
    }
  g_assert_cmpuint (odd, >=, 5);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, func) g_test_add_func ("/practice/slips/" name, func)
  ADD ("leads-count-until-they-are-zeroed", leads_count_until_they_are_zeroed);
  ADD ("ac-mode-on-a-dc-rail", e01_ac_mode_on_a_dc_rail);
  ADD ("dc-mode-for-ripple", e02_dc_mode_for_ripple);
  ADD ("range-too-low", e03_range_too_low);
  ADD ("reversed-leads-and-wrong-screw", e04_e05_reversed_leads_and_wrong_screw);
  ADD ("black-on-the-chassis", e06_black_on_the_chassis);
  ADD ("terminals-taken-for-the-board", e07_terminals_taken_for_the_board);
  ADD ("both-leads-on-one-side", e08_both_leads_on_one_side);
  ADD ("the-crimp-taken-for-the-finger", e09_the_crimp_taken_for_the_finger);
  ADD ("trimmed-without-load", e10_trimmed_without_load);
  ADD ("the-drop-chased-with-the-trim", e11_the_drop_chased_with_the_trim);
  ADD ("minus-five-chased-with-the-trim", e12_minus_five_chased_with_the_trim);
  ADD ("the-others-not-read-again", e13_the_others_not_read_again);
  ADD ("mains-is-never-touched", e14_mains_is_never_touched);
  ADD ("ohms-with-power-on", e15_ohms_with_power_on);
  ADD ("a-capacitor-not-discharged", e16_a_capacitor_not_discharged);
  ADD ("amps-jack-across-a-rail", e17_amps_jack_across_a_rail);
  ADD ("amps-beside-a-wire-take-a-share", amps_beside_a_wire_take_a_share);
  ADD ("read-while-it-changes", e23_read_while_it_changes);
  ADD ("everything-high-by-one-share", e24_everything_high_by_one_share);
  ADD ("a-switcher-shows-little-ripple", e28_a_switcher_shows_little_ripple);
  ADD ("a-bare-switcher-looks-bad", e29_a_bare_switcher_looks_bad);
#undef ADD
  return g_test_run ();
}
