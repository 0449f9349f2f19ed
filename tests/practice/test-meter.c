/* test-meter.c: the practice meter keeps to its specification, its digits and its pace.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <locale.h>
#include <math.h>
#include <string.h>

#include "practice-fixtures.h"
#include "rw-decoder.h"
#include "rw-practice-meter.h"
#include "rw-practice-random.h"

#define CLASSIC "classic-5-12-m5"
#define LINEAR "linear-5-audio"

static RwPracticeMeter *
meter_on (RwPracticeCabinet *cabinet,
          double             percent,
          double             counts,
          guint              full,
          guint64            seed)
{
  return rw_practice_meter_new (cabinet, "m1", "bench meter", percent, counts, full, seed);
}

static char *
take_text (RwPracticeMeter *meter)
{
  g_autoptr (GBytes) bytes = rw_practice_meter_take_bytes (meter);

  return g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
}

static void
drain (RwPracticeMeter *meter)
{
  g_array_unref (rw_practice_meter_take_shown (meter));
}

/* Leads on nothing, so only the meter's own digits are seen. Worked out by a second
 * implementation of the generator and the meter's arithmetic. */
static void
pinned_seed_gives_pinned_bytes (void)
{
  static const char *const wanted[] = {
    "0.001 V DC\r\n0.001 V DC\r\n0.000 V DC\r\n0.001 V DC\r\n0.000 V DC\r\n0.001 V DC\r\n0.001 V DC\r\n"
    "0.001 V DC\r\n0.000 V DC\r\n0.000 V DC\r\n0.000 V DC\r\n0.001 V DC\r\n",
    "-0.007 V DC\r\n-0.007 V DC\r\n-0.007 V DC\r\n-0.007 V DC\r\n-0.008 V DC\r\n-0.007 V DC\r\n-0.007 V DC\r\n"
    "-0.007 V DC\r\n-0.007 V DC\r\n-0.007 V DC\r\n-0.007 V DC\r\n-0.007 V DC\r\n"
  };
  static const guint64 seeds[] = { 99, 11 };
  static const double counts[] = { 6, 12 }, intervals[] = { 0.32, 0.28 };

  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    {
      g_autoptr (RwPracticeCabinet) cabinet = practice_cabinet (CLASSIC, 1, NULL, 0);
      g_autoptr (RwPracticeMeter) meter = meter_on (cabinet, 0.5, counts[i], 6000, seeds[i]);

      g_assert_cmpfloat_with_epsilon (rw_practice_meter_get_interval (meter), intervals[i],
                                      1e-9);
      rw_practice_cabinet_advance (cabinet, 12 * intervals[i]);

      g_autofree char *text = take_text (meter);

      g_assert_cmpstr (text, ==, wanted[i]);
    }
}

static char *
one_life (guint64 seed)
{
  g_autoptr (RwPracticeCabinet)
      cabinet = practice_running (CLASSIC, seed, "edge-oxidised", 0.7, 2);
  g_autoptr (RwPracticeMeter) meter = meter_on (cabinet, 0.5, 2, 6000, seed);

  rw_practice_cabinet_set_leads (cabinet, "p5", RW_PLACE_BOARD, RW_KIND_DC);
  rw_practice_cabinet_advance (cabinet, 20);
  rw_practice_cabinet_set_leads (cabinet, "p12", RW_PLACE_BOARD, RW_KIND_RIPPLE);
  rw_practice_cabinet_advance (cabinet, 20);
  return take_text (meter);
}

static void
same_seed_gives_the_same_bytes (void)
{
  g_autofree char *a = one_life (4);
  g_autofree char *b = one_life (4);
  g_autofree char *c = one_life (5);

  g_assert_cmpuint (strlen (a), >, 1000);
  g_assert_cmpstr (a, ==, b);
  g_assert_cmpstr (a, !=, c);
}

typedef struct
{
  double percent, counts;
  guint  full;
} Specification;

static const Specification specifications[] = {
  { 0.5, 2, 6000 },   { 0.5, 2, 2000 },  { 0.8, 3, 4000 },  { 0.09, 2, 6000 },
  { 0.05, 3, 20000 }, { 0, 0.5, 50000 }, { 1.5, 10, 6000 },
};

typedef struct
{
  const char *rail;
  RwPlace     place;
  RwKind      kind;
} Spot;

static const Spot spots[] = {
  { "p5", RW_PLACE_TERMINALS, RW_KIND_DC },
  { "p5", RW_PLACE_BOARD, RW_KIND_DC },
  { "p12", RW_PLACE_BOARD, RW_KIND_DC },
  { "m5", RW_PLACE_BOARD, RW_KIND_DC },
  { "p5", RW_PLACE_CHIP, RW_KIND_DC },
  { "p5", RW_PLACE_WIRE, RW_KIND_DC },
  { RW_RAIL_GROUND, RW_PLACE_WIRE, RW_KIND_DC },
  { "p12", RW_PLACE_BOARD, RW_KIND_RIPPLE },
  { "p5", RW_PLACE_TERMINALS, RW_KIND_RIPPLE },
  { RW_RAIL_GROUND, RW_PLACE_WIRE, RW_KIND_RIPPLE },
};

/* Always, settled or not: what it shows lies within ±(percent + counts) of what reached its
 * converter. */
static void
error_stays_within_the_specification (void)
{
  guint checked = 0;

  for (guint seed = 0; seed < 42; seed++)
    {
      const Specification *spec = &specifications[seed % G_N_ELEMENTS (specifications)];
      g_autoptr (RwPracticeCabinet) cabinet = practice_running (
          CLASSIC, seed, seed % 3 == 0 ? "poor-crimp" : NULL, 0.8, 1);
      g_autoptr (RwPracticeMeter)
          meter = meter_on (cabinet, spec->percent, spec->counts, spec->full, seed);

      for (guint s = 0; s < G_N_ELEMENTS (spots); s++)
        {
          g_assert_true (rw_practice_cabinet_set_leads (cabinet, spots[s].rail, spots[s].place,
                                                        spots[s].kind));
          for (guint i = 0; i < 400; i++)
            {
              rw_practice_cabinet_advance (cabinet, 0.01);

              g_autoptr (GArray) shown = rw_practice_meter_take_shown (meter);

              if (shown->len == 0)
                continue;

              const RwPracticeShown *value = &g_array_index (shown, RwPracticeShown, 0);
              const double input = rw_practice_meter_get_true_input (meter);

              g_assert_cmpuint (shown->len, ==, 1);
              g_assert_cmpint (value->ac, ==, spots[s].kind == RW_KIND_RIPPLE);
              if (value->over)
                continue;
              g_assert_cmpfloat (fabs (value->value - input), <=,
                                 spec->percent / 100 * fabs (input)
                                     + (spec->counts + 1e-6) * value->step);
              checked++;
            }
        }
    }
  g_assert_cmpuint (checked, >, 4000);
}

/* Settled, with clips, at a place that is at rest: within the specification of the truth
 * itself. */
static void
settled_value_is_the_truth_within_the_specification (void)
{
  for (guint seed = 0; seed < 30; seed++)
    {
      g_autoptr (RwPracticeCabinet) cabinet = practice_running (CLASSIC, seed, NULL, 0, 1);
      g_autoptr (RwPracticeMeter) meter = meter_on (cabinet, 0.5, 2, 6000, seed);

      rw_practice_meter_set_contact_volts (meter, 0);
      for (guint s = 0; s < G_N_ELEMENTS (spots); s++)
        {
          double truth = 0;
          guint n = 0;

          rw_practice_cabinet_set_leads (cabinet, spots[s].rail, spots[s].place, spots[s].kind);
          rw_practice_cabinet_advance (cabinet, 6);

          g_autoptr (GArray) old = rw_practice_meter_take_shown (meter);

          for (; rw_practice_meter_get_interval (meter) > n * 0.01; n++)
            {
              rw_practice_cabinet_advance (cabinet, 0.01);
              truth += rw_practice_cabinet_get_true_volts (cabinet, spots[s].rail,
                                                           spots[s].place, spots[s].kind);
            }
          truth /= n;

          g_autoptr (GArray) shown = rw_practice_meter_take_shown (meter);
          const RwPracticeShown *value = &g_array_index (shown, RwPracticeShown,
                                                         shown->len - 1);
          /* What the rail itself does within a window: half a per mille, and a dip of the load.
           */
          const double moves = 0.0005 * fabs (truth) + 0.010 * (fabs (truth) > 1) + 0.001;

          g_assert_false (value->over);
          g_assert_cmpfloat (fabs (value->value - truth), <=,
                             0.005 * fabs (truth) + 2 * value->step + moves);
        }
    }
}

/* Two meters of one kind disagree; each disagrees with the truth in its own way, and stays so.
 */
static void
scale_error_is_the_meters_own (void)
{
  double lowest = INFINITY, highest = -INFINITY;

  for (guint seed = 0; seed < 40; seed++)
    {
      g_autoptr (RwPracticeCabinet) cabinet = practice_running (CLASSIC, 6, NULL, 0, 1);
      g_autoptr (RwPracticeMeter) meter = meter_on (cabinet, 0.5, 2, 6000, seed);

      rw_practice_cabinet_set_leads (cabinet, "p5", RW_PLACE_TERMINALS, RW_KIND_DC);
      rw_practice_cabinet_advance (cabinet, 4);

      g_autoptr (GArray) shown = rw_practice_meter_take_shown (meter);
      const double value = g_array_index (shown, RwPracticeShown, shown->len - 1).value;

      lowest = fmin (lowest, value);
      highest = fmax (highest, value);
    }
  /* ±0.45 % of 5.1 V is ±23 mV; forty uniform draws reach most of it. */
  g_assert_cmpfloat (highest - lowest, >, 0.030);
  g_assert_cmpfloat (highest - lowest, <, 0.056);
}

typedef struct
{
  guint       full;
  const char *rail;
  RwPlace     place;
  RwKind      kind;
  double      step;
} Resolution;

static void
last_digit_is_that_of_the_range (void)
{
  static const Resolution table[] = {
    { 6000, "p5", RW_PLACE_BOARD, RW_KIND_DC, 0.001 },
    { 6000, "p12", RW_PLACE_BOARD, RW_KIND_DC, 0.01 },
    { 6000, "p5", RW_PLACE_WIRE, RW_KIND_DC, 0.0001 },
    { 6000, "p5", RW_PLACE_BOARD, RW_KIND_RIPPLE, 0.0001 },
    { 4000, "p5", RW_PLACE_BOARD, RW_KIND_DC, 0.01 },
    { 2000, "p5", RW_PLACE_BOARD, RW_KIND_DC, 0.01 },
    { 2000, "p12", RW_PLACE_BOARD, RW_KIND_DC, 0.01 },
    { 20000, "p5", RW_PLACE_BOARD, RW_KIND_DC, 0.001 },
    { 50000, "p5", RW_PLACE_BOARD, RW_KIND_DC, 0.001 },
    { 6000, "m5", RW_PLACE_BOARD, RW_KIND_DC, 0.001 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (table); i++)
    {
      const Resolution *row = &table[i];
      g_autoptr (RwPracticeCabinet) cabinet = practice_running (CLASSIC, 3, NULL, 0, 1);
      g_autoptr (RwPracticeMeter) meter = meter_on (cabinet, 0.5, 2, row->full, 3);

      rw_practice_cabinet_set_leads (cabinet, row->rail, row->place, row->kind);
      rw_practice_cabinet_advance (cabinet, 5);

      g_autoptr (GArray) old = rw_practice_meter_take_shown (meter);

      rw_practice_cabinet_advance (cabinet, 10);

      g_autoptr (GArray) shown = rw_practice_meter_take_shown (meter);

      g_assert_cmpuint (shown->len, >, 25);
      for (guint k = 0; k < shown->len; k++)
        {
          const RwPracticeShown *value = &g_array_index (shown, RwPracticeShown, k);
          const double counts = value->value / value->step;

          g_assert_cmpfloat_with_epsilon (value->step, row->step, 1e-12);
          g_assert_cmpfloat_with_epsilon (counts, round (counts), 1e-6);
          g_assert_cmpfloat (fabs (counts), <=, row->full);
        }
    }
}

static void
shows_three_to_four_values_a_second (void)
{
  for (guint seed = 0; seed < 50; seed++)
    {
      g_autoptr (RwPracticeCabinet) cabinet = practice_cabinet (CLASSIC, 1, NULL, 0);
      g_autoptr (RwPracticeMeter) meter = meter_on (cabinet, 0.5, 2, 6000, seed);
      const double interval = rw_practice_meter_get_interval (meter);

      rw_practice_cabinet_advance (cabinet, 60);

      g_autoptr (GArray) shown = rw_practice_meter_take_shown (meter);

      g_assert_cmpuint (shown->len, >=, 180);
      g_assert_cmpuint (shown->len, <=, 240);
      for (guint i = 1; i < shown->len; i++)
        g_assert_cmpfloat_with_epsilon (g_array_index (shown, RwPracticeShown, i).t
                                            - g_array_index (shown, RwPracticeShown, i - 1).t,
                                        interval, 1e-9);
    }
}

/* From +5 to +12: once past the range of 6 V, then the next one. */
static void
past_the_range_it_says_so_once (void)
{
  g_autoptr (RwPracticeCabinet) cabinet = practice_running (CLASSIC, 3, NULL, 0, 3);
  g_autoptr (RwPracticeMeter) meter = meter_on (cabinet, 0.5, 2, 6000, 3);

  rw_practice_cabinet_set_leads (cabinet, "p5", RW_PLACE_BOARD, RW_KIND_DC);
  rw_practice_cabinet_advance (cabinet, 5);
  drain (meter);
  rw_practice_cabinet_set_leads (cabinet, "p12", RW_PLACE_BOARD, RW_KIND_DC);
  rw_practice_cabinet_advance (cabinet, 5);

  g_autofree char *text = take_text (meter);
  g_auto (GStrv) parts = g_strsplit (text, "OL V DC\r\n", -1);

  g_assert_cmpuint (g_strv_length (parts), ==, 2);
  g_assert_cmpfloat_with_epsilon (g_ascii_strtod (strrchr (g_strchomp (parts[1]), '\n'), NULL), 12, 0.5);

  /* And back: a reading is never coarser than it need be. */
  rw_practice_cabinet_set_leads (cabinet, "p5", RW_PLACE_BOARD, RW_KIND_DC);
  rw_practice_cabinet_advance (cabinet, 5);
  drain (meter);
  rw_practice_cabinet_advance (cabinet, 1);

  g_autoptr (GArray) shown = rw_practice_meter_take_shown (meter);

  g_assert_cmpfloat_with_epsilon (g_array_index (shown, RwPracticeShown, 0).step, 0.001, 1e-12);
}

static void
creeps_up_after_the_leads_moved (void)
{
  g_autoptr (RwPracticeCabinet) cabinet = practice_running (CLASSIC, 3, NULL, 0, 3);
  g_autoptr (RwPracticeMeter) meter = meter_on (cabinet, 0.5, 2, 6000, 3);

  rw_practice_cabinet_set_leads (cabinet, "p5", RW_PLACE_BOARD, RW_KIND_DC);
  rw_practice_cabinet_advance (cabinet, 4);

  g_autoptr (GArray) shown = rw_practice_meter_take_shown (meter);

  g_assert_cmpfloat (g_array_index (shown, RwPracticeShown, 0).value, <, 4.8);
  g_assert_cmpfloat_with_epsilon (g_array_index (shown, RwPracticeShown, 5).value,
                                  g_array_index (shown, RwPracticeShown, shown->len - 1).value,
                                  0.006);
}

/* A dip of 50 ms shows as a fifth of itself on a meter that averages over 250 ms, less when it
 * falls into two windows; never as more, and never not at all. */
static void
short_dips_are_shown_damped (void)
{
  g_autoptr (RwPracticeCabinet) cabinet = practice_running (LINEAR, 3, NULL, 0, 3);
  g_autoptr (RwPracticeMeter) meter = meter_on (cabinet, 0, 0.5, 50000, 3);
  double lowest_true = INFINITY, lowest_shown = INFINITY;

  rw_practice_meter_set_contact_volts (meter, 0);
  rw_practice_cabinet_set_leads (cabinet, "p5", RW_PLACE_TERMINALS, RW_KIND_DC);
  rw_practice_cabinet_advance (cabinet, 5);

  g_autoptr (GArray) before = rw_practice_meter_take_shown (meter);
  const double steady = g_array_index (before, RwPracticeShown, before->len - 1).value;
  const double to = 0.4; /* half a volt of a travel of 1.2 V */

  rw_practice_cabinet_turn_trim (cabinet, -to);
  g_assert_cmpfloat (rw_practice_cabinet_get_trim (cabinet), >, 0);
  for (guint i = 0; i < 5; i++)
    {
      rw_practice_cabinet_advance (cabinet, 0.01);
      lowest_true = fmin (lowest_true, practice_dc (cabinet, "p5", RW_PLACE_TERMINALS));
    }
  rw_practice_cabinet_turn_trim (cabinet, to);
  rw_practice_cabinet_advance (cabinet, 2);

  g_autoptr (GArray) shown = rw_practice_meter_take_shown (meter);

  for (guint i = 0; i < shown->len; i++)
    lowest_shown = fmin (lowest_shown, g_array_index (shown, RwPracticeShown, i).value);

  const double depth = steady - lowest_true;

  g_assert_cmpfloat (depth, >, 0.3);
  g_assert_cmpfloat (steady - lowest_shown, >, depth * 0.05);
  g_assert_cmpfloat (steady - lowest_shown, <, depth * 0.25);
}

/* A raw rail with a third of a volt of ripple stands still on a DC range: the window takes it
 * out. */
static void
ripple_is_averaged_away (void)
{
  g_autoptr (RwPracticeCabinet) cabinet = practice_running (LINEAR, 3, NULL, 0, 3);
  g_autoptr (RwPracticeMeter) meter = meter_on (cabinet, 0, 0.5, 50000, 3);
  double lo = INFINITY, hi = -INFINITY;

  rw_practice_meter_set_contact_volts (meter, 0);
  rw_practice_cabinet_set_leads (cabinet, "raw12", RW_PLACE_TERMINALS, RW_KIND_DC);
  rw_practice_cabinet_advance (cabinet, 5);

  g_autoptr (GArray) old = rw_practice_meter_take_shown (meter);

  rw_practice_cabinet_advance (cabinet, 30);

  g_autoptr (GArray) shown = rw_practice_meter_take_shown (meter);

  for (guint i = 0; i < shown->len; i++)
    {
      lo = fmin (lo, g_array_index (shown, RwPracticeShown, i).value);
      hi = fmax (hi, g_array_index (shown, RwPracticeShown, i).value);
    }
  g_assert_cmpfloat (practice_ripple (cabinet, "raw12", RW_PLACE_TERMINALS), >, 0.2);
  g_assert_cmpfloat (hi - lo, <, 0.010);
}

static void
collect_cb (const RwMeterValue *value,
            gpointer            data)
{
  g_array_append_vals (data, value, 1);
}

/* The very decoder that real meters use reads the same numbers back. */
static void
decoder_reads_what_was_shown (void)
{
  g_autoptr (RwPracticeCabinet) cabinet = practice_running (CLASSIC, 3, NULL, 0, 3);
  g_autoptr (RwPracticeMeter) meter = meter_on (cabinet, 0.5, 2, 6000, 3);
  g_autoptr (RwPracticeCabinet) twin = practice_running (CLASSIC, 3, NULL, 0, 3);
  g_autoptr (RwPracticeMeter) other = meter_on (twin, 0.5, 2, 6000, 3);
  g_autoptr (RwDecoder) decoder = rw_decoder_new ("lines");

  for (guint s = 0; s < G_N_ELEMENTS (spots); s++)
    {
      g_autoptr (GArray) values = g_array_new (FALSE, FALSE, sizeof (RwMeterValue));

      rw_practice_cabinet_set_leads (cabinet, spots[s].rail, spots[s].place, spots[s].kind);
      rw_practice_cabinet_set_leads (twin, spots[s].rail, spots[s].place, spots[s].kind);
      rw_practice_cabinet_advance (cabinet, 5);
      rw_practice_cabinet_advance (twin, 5);

      g_autoptr (GBytes) bytes = rw_practice_meter_take_bytes (meter);
      g_autoptr (GArray) shown = rw_practice_meter_take_shown (other);

      rw_decoder_feed (decoder, g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes),
                       collect_cb, values);
      g_assert_cmpuint (values->len, ==, shown->len);
      for (guint i = 0; i < shown->len; i++)
        {
          const RwMeterValue *got = &g_array_index (values, RwMeterValue, i);
          const RwPracticeShown *want = &g_array_index (shown, RwPracticeShown, i);

          g_assert_cmpint (got->over, ==, want->over);
          if (want->over)
            continue;
          g_assert_cmpfloat_with_epsilon (got->value, want->value, 1e-12);
          g_assert_cmpfloat_with_epsilon (got->step, want->step, 1e-12);
          g_assert_cmpint (got->unit, ==, RW_METER_UNIT_VOLT);
          g_assert_cmpint (got->mode, ==, want->ac ? RW_METER_MODE_AC : RW_METER_MODE_DC);
        }
    }
}

static void
what_is_taken_is_gone (void)
{
  g_autoptr (RwPracticeCabinet) cabinet = practice_cabinet (CLASSIC, 3, NULL, 0);
  g_autoptr (RwPracticeMeter) meter = meter_on (cabinet, 0.5, 2, 6000, 3);

  rw_practice_cabinet_advance (cabinet, 3);

  g_autofree char *first = take_text (meter);
  g_autofree char *second = take_text (meter);

  g_assert_cmpuint (strlen (first), >, 0);
  g_assert_cmpstr (second, ==, "");

  /* Nobody took any for an hour: the newest are kept. */
  rw_practice_cabinet_advance (cabinet, 3600);

  g_autoptr (GArray) shown = rw_practice_meter_take_shown (meter);

  g_assert_cmpuint (shown->len, ==, RW_PRACTICE_METER_KEEP);
  g_assert_cmpfloat (g_array_index (shown, RwPracticeShown, shown->len - 1).t, >, 3602);
}

static void
facts_say_what_was_asked_for (void)
{
  g_autoptr (RwPracticeCabinet) cabinet = practice_cabinet (CLASSIC, 3, NULL, 0);
  g_autoptr (RwPracticeMeter) meter = meter_on (cabinet, 0.8, 3, 4000, 3);
  const RwMeterFacts *facts = rw_practice_meter_get_facts (meter);

  g_assert_cmpstr (facts->id, ==, "m1");
  g_assert_cmpstr (facts->name, ==, "bench meter");
  g_assert_cmpfloat (facts->percent, ==, 0.8);
  g_assert_cmpfloat (facts->counts, ==, 3);
}

/* A meter that is gone is not called any more. */
static void
cabinet_outlives_its_meter (void)
{
  g_autoptr (RwPracticeCabinet) cabinet = practice_cabinet (CLASSIC, 3, NULL, 0);
  RwPracticeMeter *meter = meter_on (cabinet, 0.5, 2, 6000, 3);

  rw_practice_cabinet_advance (cabinet, 1);
  g_assert_finalize_object (meter);
  rw_practice_cabinet_advance (cabinet, 1);
  g_assert_cmpfloat_with_epsilon (rw_practice_cabinet_get_seconds (cabinet), 2, 1e-9);
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
#define ADD(name, func) g_test_add_func ("/practice/meter/" name, func)
  ADD ("pinned-seed-gives-pinned-bytes", pinned_seed_gives_pinned_bytes);
  ADD ("same-seed-gives-the-same-bytes", same_seed_gives_the_same_bytes);
  ADD ("error-stays-within-the-specification", error_stays_within_the_specification);
  ADD ("settled-value-is-the-truth-within-the-specification",
       settled_value_is_the_truth_within_the_specification);
  ADD ("scale-error-is-the-meters-own", scale_error_is_the_meters_own);
  ADD ("last-digit-is-that-of-the-range", last_digit_is_that_of_the_range);
  ADD ("shows-three-to-four-values-a-second", shows_three_to_four_values_a_second);
  ADD ("past-the-range-it-says-so-once", past_the_range_it_says_so_once);
  ADD ("creeps-up-after-the-leads-moved", creeps_up_after_the_leads_moved);
  ADD ("short-dips-are-shown-damped", short_dips_are_shown_damped);
  ADD ("ripple-is-averaged-away", ripple_is_averaged_away);
  ADD ("decoder-reads-what-was-shown", decoder_reads_what_was_shown);
  ADD ("what-is-taken-is-gone", what_is_taken_is_gone);
  ADD ("facts-say-what-was-asked-for", facts_say_what_was_asked_for);
  ADD ("cabinet-outlives-its-meter", cabinet_outlives_its_meter);
#undef ADD
  return g_test_run ();
}
