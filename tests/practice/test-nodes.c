/* test-nodes.c: leads anywhere on a practice cabinet read what a bench would read.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "practice-bench.h"
#include "rw-decoder.h"
#include "rw-practice-net.h"

#define CLASSIC "classic-5-12-m5"
#define LINEAR "linear-5-audio"

static const char *const profiles[] = { "classic-5-12-m5",   "dram-5-12-m5",  "linear-5-audio",
                                        "switcher-5-12-m12", "switcher-5-12", "switcher-5-12-24" };

/* --- the network --------------------------------------------------------------------------------- */

/* Textbook bridges: balanced 10-10-10-10 with anything across is 10; a cube of 1 Ω edges is 5/6 along its diagonal,
 * 7/12 along an edge and 3/4 across a face. */
static void
networks_of_the_textbook (void)
{
  RwPracticeNet *net = g_new (RwPracticeNet, 1);

  rw_practice_net_start (net, 4);
  rw_practice_net_join (net, 0, 1, 10);
  rw_practice_net_join (net, 1, 3, 10);
  rw_practice_net_join (net, 0, 2, 10);
  rw_practice_net_join (net, 2, 3, 10);
  rw_practice_net_join (net, 1, 2, 0.37);
  g_assert_cmpfloat_with_epsilon (rw_practice_net_ohms (net, 0, 3), 10, 1e-12);

  rw_practice_net_start (net, 8);
  for (guint a = 0; a < 8; a++)
    for (guint bit = 1; bit < 8; bit *= 2)
      if ((a & bit) == 0)
        rw_practice_net_join (net, a, a | bit, 1);
  g_assert_cmpfloat_with_epsilon (rw_practice_net_ohms (net, 0, 7), 5.0 / 6, 1e-12);
  g_assert_cmpfloat_with_epsilon (rw_practice_net_ohms (net, 0, 1), 7.0 / 12, 1e-12);
  g_assert_cmpfloat_with_epsilon (rw_practice_net_ohms (net, 0, 3), 3.0 / 4, 1e-12);
  g_free (net);
}

static void
networks_apart_have_no_way (void)
{
  RwPracticeNet *net = g_new (RwPracticeNet, 1);

  rw_practice_net_start (net, 5);
  rw_practice_net_join (net, 0, 1, 1e-3);
  rw_practice_net_join (net, 1, 2, 1e9);
  rw_practice_net_join (net, 3, 4, 1);
  rw_practice_net_join (net, 2, 3, INFINITY);
  g_assert_true (rw_practice_net_has_way (net, 0, 2));
  g_assert_false (rw_practice_net_has_way (net, 2, 3));
  g_assert_true (isinf (rw_practice_net_ohms (net, 0, 4)));
  g_assert_cmpfloat_with_epsilon (rw_practice_net_ohms (net, 0, 2) / 1e9, 1, 1e-9);
  g_assert_cmpfloat_with_epsilon (rw_practice_net_ohms (net, 0, 1), 1e-3, 1e-15);
  g_assert_cmpfloat (rw_practice_net_ohms (net, 3, 3), ==, 0);
  g_free (net);
}

/* --- nodes --------------------------------------------------------------------------------------- */

/* Which points there are tells nothing of what is wrong. */
static void
points_do_not_tell_the_fault (void)
{
  for (guint p = 0; p < G_N_ELEMENTS (profiles); p++)
    for (guint f = 0; f < rw_practice_faults_get_n (); f++)
      {
        g_autoptr (RwProfile) profile = practice_profile (profiles[p]);
        g_autoptr (RwPracticeCabinet) good = practice_cabinet (profiles[p], 3, NULL, 0);
        const RwPracticeFault fault = { rw_practice_faults_get_id (f), 0.9 };
        g_autoptr (RwPracticeCabinet) bad = rw_practice_cabinet_new (profile, 3, &fault, 1, NULL, NULL);

        if (bad == NULL)
          continue;
        g_assert_cmpuint (rw_practice_cabinet_get_n_nodes (bad), ==, rw_practice_cabinet_get_n_nodes (good));
        for (guint i = 0; i < rw_practice_cabinet_get_n_nodes (good); i++)
          {
            const RwPracticeNode *a = rw_practice_cabinet_get_node (good, i);
            const RwPracticeNode *b = rw_practice_cabinet_get_node (bad, i);

            g_assert_cmpstr (a->id, ==, b->id);
            g_assert_cmpstr (a->label, ==, b->label);
            g_assert_cmpint (a->hazard, ==, b->hazard);
          }
      }
}

static void
every_point_is_drawn_once (void)
{
  for (guint p = 0; p < G_N_ELEMENTS (profiles); p++)
    {
      g_autoptr (RwPracticeCabinet) cabinet = practice_cabinet (profiles[p], 3, NULL, 0);
      g_autoptr (GHashTable) ids = g_hash_table_new (g_str_hash, g_str_equal);
      g_autoptr (GHashTable) labels = g_hash_table_new (g_str_hash, g_str_equal);
      guint next[RW_PRACTICE_N_AREAS] = { 0 };

      for (guint i = 0; i < rw_practice_cabinet_get_n_nodes (cabinet); i++)
        {
          const RwPracticeNode *node = rw_practice_cabinet_get_node (cabinet, i);

          g_assert_true (g_hash_table_add (ids, (gpointer) node->id));
          g_assert_true (g_hash_table_add (labels, node->label));
          g_assert_null (strstr (node->label, "{}"));
          g_assert_true (rw_practice_cabinet_find_node (cabinet, node->id) == node);
          g_assert_cmpuint (node->column, ==, next[node->area]);
          if (node->area != RW_PRACTICE_AREA_HARNESS || node->row == 1)
            next[node->area]++;
          g_assert_true ((node->hazard == RW_PRACTICE_HAZARD_MAINS)
                         == (g_str_has_prefix (node->id, "mains:") && !g_str_equal (node->id, "mains:earth")));
          g_assert_cmpuint (strlen (rw_practice_hazard_get_label (node->hazard)), >, 0);
          g_assert_cmpuint (strlen (rw_practice_area_get_label (node->area)), >, 0);
        }
      for (guint area = 0; area < RW_PRACTICE_N_AREAS; area++)
        g_assert_cmpuint (next[area], >, 0);
    }
}

/* Whatever is wrong, on or off, fitted or not: a number or a clean open, and the same both ways round. */
static void
every_pair_is_a_number_or_open (void)
{
  guint pairs = 0;

  for (guint round = 0; round < 48; round++)
    {
      const char *profile = profiles[round % G_N_ELEMENTS (profiles)];
      g_autoptr (RwProfile) its = practice_profile (profile);
      const RwPracticeFault fault
          = { rw_practice_faults_get_id (round % rw_practice_faults_get_n ()), round % 11 / 10.0 };
      g_autoptr (RwPracticeCabinet) made = rw_practice_cabinet_new (its, round, &fault, 1, NULL, NULL);
      g_autoptr (RwPracticeCabinet) cabinet
          = made != NULL ? g_steal_pointer (&made) : practice_cabinet (profile, round, NULL, 0);
      const guint n = rw_practice_cabinet_get_n_nodes (cabinet);

      rw_practice_cabinet_set_power (cabinet, TRUE);
      rw_practice_cabinet_advance (cabinet, 2);
      rw_practice_cabinet_set_power (cabinet, round % 3 != 0);
      rw_practice_cabinet_set_board_fitted (cabinet, round % 4 != 0);
      rw_practice_cabinet_advance (cabinet, 0.5);
      for (guint a = 0; a < n; a++)
        for (guint b = 0; b < n; b += 1 + (a + round) % 3)
          {
            const RwPracticeNode *red = rw_practice_cabinet_get_node (cabinet, a);
            const RwPracticeNode *black = rw_practice_cabinet_get_node (cabinet, b);
            RwPracticePair pair, back;

            rw_practice_cabinet_measure (cabinet, red->id, black->id, &pair);
            rw_practice_cabinet_measure (cabinet, black->id, red->id, &back);
            g_assert_true (isfinite (pair.dc) && isfinite (pair.ac) && pair.ac >= 0);
            g_assert_true (pair.open ? isinf (pair.ohms) && pair.dc == 0 && pair.ac == 0
                                     : isfinite (pair.ohms) && pair.ohms >= 0);
            g_assert_cmpfloat (fabs (pair.dc), <, 60);
            g_assert_cmpint (pair.open, ==, back.open);
            g_assert_cmpfloat_with_epsilon (pair.dc, -back.dc, 1e-12);
            g_assert_cmpfloat_with_epsilon (pair.ac, back.ac, 1e-12);
            if (!pair.open)
              g_assert_cmpfloat_with_epsilon (pair.ohms, back.ohms, 1e-9 * (1 + pair.ohms));
            g_assert_true (pair.rail == back.rail);
            if (pair.rail != NULL)
              g_assert_true (pair.reversed != back.reversed);
            if (red->hazard == RW_PRACTICE_HAZARD_MAINS || black->hazard == RW_PRACTICE_HAZARD_MAINS)
              g_assert_true (pair.open && pair.rail == NULL);
            if (a == b && red->hazard != RW_PRACTICE_HAZARD_MAINS)
              g_assert_true (!pair.open && pair.dc == 0 && pair.ohms == 0);
            pairs++;
          }
    }
  g_assert_cmpuint (pairs, >, 20000);
}

/* Kirchhoff's voltage law: round any three points the volts add up to nothing. */
static void
volts_add_up_round_any_triangle (void)
{
  for (guint seed = 0; seed < 12; seed++)
    {
      g_autoptr (RwPracticeCabinet) cabinet
          = practice_running (profiles[seed % G_N_ELEMENTS (profiles)], seed, "edge-oxidised", 0.7, 2);
      const guint n = rw_practice_cabinet_get_n_nodes (cabinet);

      for (guint i = 0; i < 4000; i++)
        {
          const char *a = rw_practice_cabinet_get_node (cabinet, i * 7 % n)->id;
          const char *b = rw_practice_cabinet_get_node (cabinet, i * 13 % n)->id;
          const char *c = rw_practice_cabinet_get_node (cabinet, i / 7 % n)->id;
          RwPracticePair ab, bc, ca;

          if (i % 16 != seed)
            continue;
          rw_practice_cabinet_measure (cabinet, a, b, &ab);
          rw_practice_cabinet_measure (cabinet, b, c, &bc);
          rw_practice_cabinet_measure (cabinet, c, a, &ca);
          if (!ab.open && !bc.open && !ca.open)
            g_assert_cmpfloat_with_epsilon (ab.dc + bc.dc + ca.dc, 0, 1e-12);
        }
    }
}

/* The short way and two leads are the same reading; the other way round it has the other sign. */
static void
leads_on_a_readings_points_are_that_reading (void)
{
  for (guint p = 0; p < G_N_ELEMENTS (profiles); p++)
    {
      g_autoptr (RwPracticeCabinet) cabinet = practice_running (profiles[p], 5, "poor-crimp", 0.6, 3);
      RwProfile *profile = rw_practice_cabinet_get_profile (cabinet);
      const guint n = rw_profile_get_n_rails (profile);

      for (guint r = 0; r < n + 2; r++)
        for (RwPlace place = 0; place < RW_N_PLACES; place++)
          {
            const char *rail = r < n ? rw_profile_get_rail (profile, r)->id : r == n ? RW_RAIL_GROUND : "raw";
            const char *red, *black;
            RwPlace is_place;
            RwPracticePair pair;

            if (!rw_practice_cabinet_find_pair (cabinet, rail, place, &red, &black))
              continue;
            rw_practice_cabinet_measure (cabinet, red, black, &pair);
            g_assert_cmpstr (pair.rail, ==, rail);
            g_assert_cmpint (pair.place, ==, place);
            g_assert_false (pair.reversed);
            g_assert_cmpfloat_with_epsilon (pair.dc, practice_dc (cabinet, rail, place), 1e-12);

            rw_practice_cabinet_set_leads (cabinet, rail, place, RW_KIND_DC);
            g_assert_cmpstr (rw_practice_cabinet_get_lead (cabinet, RW_PRACTICE_RED), ==, red);
            g_assert_cmpstr (rw_practice_cabinet_get_lead (cabinet, RW_PRACTICE_BLACK), ==, black);
            rw_practice_cabinet_set_leads (cabinet, NULL, 0, 0);
            g_assert_null (rw_practice_cabinet_get_lead (cabinet, RW_PRACTICE_RED));

            rw_practice_cabinet_put_lead (cabinet, RW_PRACTICE_BLACK, red);
            rw_practice_cabinet_put_lead (cabinet, RW_PRACTICE_RED, black);
            g_assert_cmpstr (rw_practice_cabinet_get_leads (cabinet, &is_place, NULL), ==, rail);
            g_assert_cmpint (is_place, ==, place);
          }
    }
}

static void
leads_in_the_air_touch_nothing (void)
{
  g_autoptr (PracticeBench) bench = practice_bench_new (CLASSIC, 3, NULL, 0);
  const guint serial = rw_practice_cabinet_get_leads_serial (bench->cabinet);

  practice_bench_set (bench, RW_PRACTICE_MODE_DC);
  practice_bench_put (bench, "strip:p5", NULL);
  g_assert_cmpfloat (fabs (practice_bench_look (bench).value), <=, 0.003);
  practice_bench_set (bench, RW_PRACTICE_MODE_AC); /* pick-up of the mains */
  g_assert_cmpfloat_with_epsilon (practice_bench_look (bench).value, 0.025, 0.008);
  practice_bench_set (bench, RW_PRACTICE_MODE_OHMS);
  g_assert_true (practice_bench_look (bench).over);
  g_assert_false (rw_practice_meter_get_beeps (bench->meter));

  g_assert_false (rw_practice_cabinet_put_lead (bench->cabinet, RW_PRACTICE_BLACK, "strip:p99"));
  g_assert_null (rw_practice_cabinet_get_lead (bench->cabinet, RW_PRACTICE_BLACK));
  g_assert_cmpuint (rw_practice_cabinet_get_leads_serial (bench->cabinet), ==, serial + 2);
}

/* --- ohms ---------------------------------------------------------------------------------------- */

static double
ohms (RwPracticeCabinet *cabinet,
      const char        *a,
      const char        *b)
{
  RwPracticePair pair;

  rw_practice_cabinet_measure (cabinet, a, b, &pair);
  return pair.ohms;
}

/* What trade practice says of a good machine, and of faults that ohms can see. */
static void
ohms_are_those_of_a_good_machine (void)
{
  for (guint seed = 1; seed <= 30; seed++)
    {
      g_autoptr (RwPracticeCabinet) good = practice_cabinet (CLASSIC, seed, NULL, 0);
      g_autoptr (RwPracticeCabinet) linear = practice_cabinet (LINEAR, seed, NULL, 0);
      g_autoptr (RwPracticeCabinet) shorted = practice_cabinet (CLASSIC, seed, "board-short", 1);
      g_autoptr (RwPracticeCabinet) broken = practice_cabinet (CLASSIC, seed, "minus5-open-wire", 1);

      g_assert_cmpfloat (ohms (good, "strip:gnd", "edge:gnd"), <, 0.2);
      g_assert_cmpfloat (ohms (good, "cabinet:chassis", "mains:earth"), <, 0.5);
      g_assert_cmpfloat (ohms (linear, "supply:fuse1", "supply:fuse2"), <=, 0.02);
      g_assert_cmpfloat (ohms (linear, "supply:fuse1", "supply:fuse2"), >=, 0.01);
      g_assert_cmpfloat (ohms (good, "harness:p5:supply", "harness:p5:board"), <, 0.05);
      g_assert_cmpfloat (ohms (good, "harness:m5:supply", "harness:m5:board"), <, 0.1);
      g_assert_cmpfloat (ohms (broken, "harness:m5:supply", "harness:m5:board"), >, 10);
      rw_practice_cabinet_set_board_fitted (good, FALSE);
      rw_practice_cabinet_set_board_fitted (shorted, FALSE);
      g_assert_cmpfloat (ohms (good, "edge:p5", "edge:gnd"), >=, 8);
      g_assert_cmpfloat (ohms (good, "edge:p5", "edge:gnd"), <=, 100);
      g_assert_cmpfloat (ohms (good, "edge:p12", "edge:gnd"), >, 50);
      g_assert_cmpfloat (ohms (good, "edge:m5", "edge:gnd"), >, 500);
      g_assert_cmpfloat (ohms (shorted, "edge:p5", "edge:gnd"), <, 2);
      g_assert_true (isinf (ohms (good, "strip:p5", "edge:p5")));
    }
}

/* What a linear supply has inside: winding, fuse, raw capacitor, by the rule raw ≈ √2·VAC − 2 − half its ripple. */
static void
inside_a_linear_supply (void)
{
  g_autoptr (PracticeBench) bench = practice_bench_new (LINEAR, 3, NULL, 0);
  double winding, raw, ripple, fuse;

  practice_bench_set (bench, RW_PRACTICE_MODE_AC);
  practice_bench_put (bench, "supply:ac1", "supply:ac2");
  winding = practice_bench_look (bench).value;
  practice_bench_put (bench, "supply:fuse1", "supply:fuse2");
  fuse = practice_bench_look (bench).value;
  practice_bench_put (bench, "supply:raw+", "supply:raw-");
  ripple = practice_bench_look (bench).value;
  practice_bench_set (bench, RW_PRACTICE_MODE_DC);
  raw = practice_bench_look (bench).value;
  g_assert_cmpfloat_with_epsilon (raw, 1.414 * winding - 2 - 1.80 * ripple, 0.4);
  g_assert_cmpfloat (fuse, >, 0.02);
  g_assert_cmpfloat (fuse, <, 0.150);
  practice_bench_put (bench, "strip:p5", "strip:gnd");
  practice_bench_put (bench, "supply:sense", "edge:p5");
  g_assert_cmpfloat (fabs (practice_bench_look (bench).value), <, 0.020);
}

static void
collect_cb (const RwMeterValue *value,
            gpointer            data)
{
  g_array_append_vals (data, value, 1);
}

/* Ohms, kilohms, megohms, amperes and OL are read back by the decoder that real meters use. */
static void
decoder_reads_ohms_and_amps (void)
{
  static const char *const pairs[][2] = { { "cabinet:lamp+", "cabinet:lamp-" }, { "edge:m5", "edge:gnd" },
                                          { "cabinet:chassis", "strip:gnd" },   { "strip:p5", "sound:speaker+" },
                                          { "strip:p5", NULL } };
  g_autoptr (PracticeBench) bench = practice_bench_new (CLASSIC, 3, NULL, 0);
  g_autoptr (PracticeBench) twin = practice_bench_new (CLASSIC, 3, NULL, 0);
  PracticeBench *both[] = { bench, twin };
  g_autoptr (RwDecoder) decoder = rw_decoder_new ("lines");
  g_autoptr (GArray) values = g_array_new (FALSE, FALSE, sizeof (RwMeterValue));

  for (guint i = 0; i < 2; i++)
    {
      practice_bench_power (both[i], FALSE, 100);
      rw_practice_cabinet_set_board_fitted (both[i]->cabinet, FALSE);
      g_array_unref (rw_practice_meter_take_shown (both[i]->meter));
      practice_bench_set (both[i], RW_PRACTICE_MODE_OHMS);
      for (guint k = 0; k < G_N_ELEMENTS (pairs); k++)
        {
          practice_bench_put (both[i], pairs[k][0], pairs[k][1]);
          rw_practice_cabinet_advance (both[i]->cabinet, 6);
        }
      practice_bench_set (both[i], RW_PRACTICE_MODE_AMPS);
      rw_practice_cabinet_advance (both[i]->cabinet, 2);
    }

  g_autoptr (GBytes) bytes = rw_practice_meter_take_bytes (bench->meter);
  g_autoptr (GArray) shown = rw_practice_meter_take_shown (twin->meter);
  guint ranges = 0;

  rw_decoder_feed (decoder, g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), collect_cb, values);
  g_assert_cmpuint (values->len, ==, shown->len);
  for (guint i = 0; i < shown->len; i++)
    {
      const RwMeterValue *got = &g_array_index (values, RwMeterValue, i);
      const RwPracticeShown *want = &g_array_index (shown, RwPracticeShown, i);

      g_assert_cmpint (got->over, ==, want->over);
      g_assert_cmpint (got->unit, ==,
                       want->kind == RW_KIND_OHMS ? RW_METER_UNIT_OHM : RW_METER_UNIT_AMPERE);
      if (want->over)
        continue;
      g_assert_cmpfloat_with_epsilon (got->value, want->value, 1e-9 * (1 + fabs (want->value)));
      g_assert_cmpfloat_with_epsilon (got->step, want->step, 1e-9 * want->step);
      ranges |= 1u << want->range;
    }
  g_assert_cmpuint (ranges & 0xb, ==, 0xb); /* ohms, kilohms, hundreds of them */
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, func) g_test_add_func ("/practice/nodes/" name, func)
  ADD ("networks-of-the-textbook", networks_of_the_textbook);
  ADD ("networks-apart-have-no-way", networks_apart_have_no_way);
  ADD ("points-do-not-tell-the-fault", points_do_not_tell_the_fault);
  ADD ("every-point-is-drawn-once", every_point_is_drawn_once);
  ADD ("every-pair-is-a-number-or-open", every_pair_is_a_number_or_open);
  ADD ("volts-add-up-round-any-triangle", volts_add_up_round_any_triangle);
  ADD ("leads-on-a-readings-points-are-that-reading", leads_on_a_readings_points_are_that_reading);
  ADD ("leads-in-the-air-touch-nothing", leads_in_the_air_touch_nothing);
  ADD ("ohms-are-those-of-a-good-machine", ohms_are_those_of_a_good_machine);
  ADD ("inside-a-linear-supply", inside_a_linear_supply);
  ADD ("decoder-reads-ohms-and-amps", decoder_reads_ohms_and_amps);
#undef ADD
  return g_test_run ();
}
