/* test-bench-state.c: what the events say: staleness, retracts, setup, verdicts, warnings.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "fixtures.h"
#include "rw-bench-state.h"

static guint
add (RwSession *session,
     RwEvent    event)
{
  const guint index = rw_session_add (session, &event);

  return rw_session_get_event (session, index)->n;
}

static guint
read_at (RwSession  *session,
         const char *rail,
         RwPlace     place,
         RwKind      kind,
         double      value)
{
  const RwReading reading = rw_reading_make (rail, place, kind, value, 0.01, "m1");

  return add (session, rw_event_make_reading (rw_session_get_end (session) + 1, &reading));
}

static guint
read_dc (RwSession  *session,
         const char *rail,
         double      value)
{
  return read_at (session, rail, RW_PLACE_BOARD, RW_KIND_DC, value);
}

static guint
set_up (RwSession *session,
        RwSaid     power,
        RwSaid     board,
        RwSaid     warm)
{
  return add (session, rw_event_make_setup (rw_session_get_end (session) + 1,
                                            (RwSetup){ power, board, warm }));
}

static const RwSpotState *
p5_of (const RwBenchState *state)
{
  return rw_bench_state_find_spot (state, "p5", RW_PLACE_BOARD, RW_KIND_DC);
}

static void
test_nothing_happened (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  g_autoptr (RwBenchState) state = rw_bench_state_new (session);
  const RwSetup setup = rw_bench_state_get_setup (state);

  g_assert_cmpint (setup.power_on, ==, RW_SAID_NOT);
  g_assert_cmpint (setup.board_fitted, ==, RW_SAID_NOT);
  g_assert_cmpint (setup.warm, ==, RW_SAID_NOT);
  g_assert_cmpuint (rw_bench_state_get_n_spots (state), ==, 0);
  g_assert_cmpuint (rw_bench_state_get_n_symptoms (state), ==, 0);
  g_assert_cmpuint (rw_bench_state_get_n_findings (state), ==, 0);
  g_assert_cmpuint (rw_bench_state_get_n_repairs (state), ==, 0);
  g_assert_cmpuint (rw_bench_state_get_n_warnings (state), ==, 0);
  g_assert_cmpuint (rw_bench_state_get_n_trims (state), ==, 0);
  g_assert_null (rw_bench_state_get_stage (state));
  g_assert_null (rw_bench_state_find_rail (state, "p5"));
  g_assert_true (rw_bench_state_get_profile (state) == rw_session_get_profile (session));
}

static void
test_a_reading_is_judged (void)
{
  g_autoptr (RwSession) session = fixture_session ();

  read_dc (session, "p5", 5.05);
  read_dc (session, "m5", -5.25);
  read_dc (session, "p12", 14.5);

  g_autoptr (RwBenchState) state = rw_bench_state_new (session);
  const RwSpotState *p5 = p5_of (state), *m5 = rw_bench_state_find_rail (state, "m5");
  const RwSpotState *p12 = rw_bench_state_find_rail (state, "p12");

  g_assert_cmpuint (p5->n, ==, 1);
  g_assert_cmpfloat (p5->reading.value, ==, 5.05);
  g_assert_true (p5->rail == rw_profile_find_rail (rw_session_get_profile (session), "p5"));
  g_assert_true (p5->lo == 4.9 && p5->hi == 5.2);
  g_assert_cmpfloat_with_epsilon (p5->position, 0, 1e-12);
  g_assert_cmpfloat_with_epsilon (p5->margin, 1, 1e-12);
  /* ±(0.5 % + 2 counts of 10 mV), a rectangle. */
  g_assert_cmpfloat_with_epsilon (p5->u, (0.005 * 5.05 + 0.02) / sqrt (3), 1e-12);
  g_assert_cmpfloat_with_epsilon (p5->u_own, 0.02 / sqrt (3), 1e-12);
  g_assert_cmpint (p5->verdict, ==, RW_VERDICT_INSIDE);
  g_assert_false (p5->stale);
  g_assert_false (p5->changed_since);

  /* The more negative limit is the strong one. */
  g_assert_cmpfloat_with_epsilon (m5->position, 0.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (m5->margin, 0.5, 1e-12);
  g_assert_cmpint (p12->verdict, ==, RW_VERDICT_OUTSIDE);
  g_assert_cmpfloat_with_epsilon (p12->position, 2.5 / 1.2, 1e-12);
}

static void
test_spots_without_a_verdict (void)
{
  g_autoptr (RwSession) session = fixture_session ();

  read_at (session, "p5", RW_PLACE_BOARD, RW_KIND_OHMS, 47);
  read_dc (session, "p5", NAN);
  read_dc (session, "p24", 24.1);
  read_at (session, "p5", RW_PLACE_BOARD, RW_KIND_RIPPLE, 0.01);
  read_at (session, "gnd", RW_PLACE_WIRE, RW_KIND_DC, 0.20);
  read_at (session, "m5", RW_PLACE_WIRE, RW_KIND_DC, 0.02);

  g_autoptr (RwBenchState) state = rw_bench_state_new (session);
  const RwSpotState *ohms = rw_bench_state_find_spot (state, "p5", RW_PLACE_BOARD, RW_KIND_OHMS);
  const RwSpotState *over = p5_of (state), *stranger = rw_bench_state_find_rail (state, "p24");
  const RwSpotState *ripple = rw_bench_state_find_spot (state, "p5", RW_PLACE_BOARD,
                                                        RW_KIND_RIPPLE);
  const RwSpotState *ground = rw_bench_state_find_spot (state, "gnd", RW_PLACE_WIRE, RW_KIND_DC);
  const RwSpotState *drop = rw_bench_state_find_spot (state, "m5", RW_PLACE_WIRE, RW_KIND_DC);

  g_assert_cmpint (ohms->verdict, ==, RW_VERDICT_NONE);
  g_assert_true (isnan (ohms->lo) && isnan (ohms->hi) && isnan (ohms->margin)
                 && isnan (ohms->position));
  g_assert_cmpint (over->verdict, ==, RW_VERDICT_NONE);
  g_assert_true (isnan (over->u) && isnan (over->margin) && over->lo == 4.9);
  g_assert_null (stranger->rail);
  g_assert_cmpint (stranger->verdict, ==, RW_VERDICT_NONE);
  g_assert_cmpint (ripple->verdict, ==, RW_VERDICT_INSIDE);
  g_assert_cmpfloat_with_epsilon (ripple->margin, 0.8, 1e-12);
  g_assert_cmpint (ground->verdict, ==, RW_VERDICT_OUTSIDE);
  g_assert_null (ground->rail);
  /* A drop has no sign to turn round. */
  g_assert_cmpfloat_with_epsilon (drop->position, 0.2, 1e-12);
}

static void
test_last_reading_wins (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  const guint first = read_dc (session, "p5", 4.7), second = read_dc (session, "p5", 5.0);

  read_at (session, "p5", RW_PLACE_TERMINALS, RW_KIND_DC, 5.3);
  read_at (session, "p5", RW_PLACE_WIRE, RW_KIND_DC, 0.3);

  g_autoptr (RwBenchState) state = rw_bench_state_new (session);

  g_assert_cmpuint (p5_of (state)->n, ==, second);
  g_assert_cmpuint (rw_bench_state_get_n_spots (state), ==, 3);

  /* Of a rail, wherever, but not along a wire. */
  g_assert_cmpfloat (rw_bench_state_find_rail (state, "p5")->reading.value, ==, 5.3);

  add (session, rw_event_make_retract (9, second));

  g_autoptr (RwBenchState) again = rw_bench_state_new (session);

  g_assert_cmpuint (p5_of (again)->n, ==, first);
  g_assert_cmpfloat (p5_of (again)->reading.value, ==, 4.7);
}

typedef void (*Deed) (RwSession *session);

static void
turn_trim (RwSession *session)
{
  add (session, rw_event_make_trim (9));
}

static void
touch_trim (RwSession *session)
{
  RwEvent event = rw_event_make_trim (9);

  event.trim.moved = FALSE;
  add (session, event);
}

static void
power_off (RwSession *session)
{
  set_up (session, RW_SAID_NO, RW_SAID_NOT, RW_SAID_NOT);
}

static void
pull_board (RwSession *session)
{
  set_up (session, RW_SAID_NOT, RW_SAID_NO, RW_SAID_NOT);
}

static void
say_the_same (RwSession *session)
{
  set_up (session, RW_SAID_YES, RW_SAID_YES, RW_SAID_NO);
}

static void
warm_up (RwSession *session)
{
  set_up (session, RW_SAID_NOT, RW_SAID_NOT, RW_SAID_YES);
}

static void
repair_fixed (RwSession *session)
{
  add (session, rw_event_make_repair (9, "edge-connector", RW_REPAIR_FIXED));
}

static void
repair_in_vain (RwSession *session)
{
  add (session, rw_event_make_repair (9, "edge-connector", RW_REPAIR_NO_CHANGE));
}

static void
see_symptom (RwSession *session)
{
  add (session, rw_event_make_symptom (9, "resets", RW_SYMPTOM_PRESENT));
}

static void
find_something (RwSession *session)
{
  add (session, rw_event_make_finding (9, "edge-connector-look", "dark"));
}

static void
write_words (RwSession *session)
{
  add (session, rw_event_make_note (9, "fan is noisy"));
  add (session, rw_event_make_mark (9, "reset seen"));
  add (session, rw_event_make_gap (9, "m1", "unplugged"));
  add (session, rw_event_make_stage (9, "under-load"));
  add (session, fixture_event ("{\"n\":90,\"t\":9,\"weather\":{}}"));
}

static void
read_another_spot (RwSession *session)
{
  read_dc (session, "p12", 11.9);
  read_at (session, "p5", RW_PLACE_CHIP, RW_KIND_DC, 5.0);
}

static void
test_what_makes_stale (void)
{
  static const struct
  {
    const char *what;
    Deed        deed;
    gboolean    stale, changed;
  } rows[] = {
    { "trim turned", turn_trim, TRUE, TRUE },
    { "trim touched, not turned", touch_trim, FALSE, FALSE },
    { "power off", power_off, TRUE, FALSE },
    { "board pulled", pull_board, TRUE, FALSE },
    { "setup said again", say_the_same, FALSE, FALSE },
    { "warmed up", warm_up, FALSE, FALSE },
    { "repair that helped", repair_fixed, TRUE, TRUE },
    { "repair in vain", repair_in_vain, TRUE, FALSE },
    { "symptom", see_symptom, FALSE, FALSE },
    { "finding", find_something, FALSE, FALSE },
    { "words, gap, stage, unknown", write_words, FALSE, FALSE },
    { "other readings", read_another_spot, FALSE, FALSE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (RwSession) session = fixture_session ();

      g_test_message ("%s", rows[i].what);
      set_up (session, RW_SAID_YES, RW_SAID_YES, RW_SAID_NO);
      read_dc (session, "p5", 5.0);

      const guint before = rw_session_get_n_events (session);

      rows[i].deed (session);

      g_autoptr (RwBenchState) state = rw_bench_state_new (session);

      g_assert_cmpint (p5_of (state)->stale, ==, rows[i].stale);
      g_assert_cmpint (p5_of (state)->changed_since, ==, rows[i].changed);

      /* Taken again: fresh. */
      g_autoptr (RwBenchState) fresh = NULL;

      read_dc (session, "p5", 5.1);
      fresh = rw_bench_state_new (session);
      g_assert_false (p5_of (fresh)->stale);
      g_assert_false (p5_of (fresh)->changed_since);

      /* All of it taken back: as if it had not been. */
      for (guint k = rw_session_get_n_events (session); k-- > before;)
        add (session, rw_event_make_retract (20, rw_session_get_event (session, k)->n));

      g_autoptr (RwBenchState) back = rw_bench_state_new (session);

      g_assert_cmpfloat (p5_of (back)->reading.value, ==, 5.0);
      g_assert_false (p5_of (back)->stale);
      g_assert_cmpuint (rw_bench_state_get_n_trims (back), ==, 0);
      g_assert_cmpuint (rw_bench_state_get_n_repairs (back), ==, 0);
      g_assert_null (rw_bench_state_get_stage (back));
    }
}

static void
test_setup_is_remembered_with_each_reading (void)
{
  g_autoptr (RwSession) session = fixture_session ();

  set_up (session, RW_SAID_YES, RW_SAID_NO, RW_SAID_NO);
  read_at (session, "p5", RW_PLACE_TERMINALS, RW_KIND_DC, 5.1);
  set_up (session, RW_SAID_NOT, RW_SAID_YES, RW_SAID_NOT);
  read_dc (session, "p5", 5.0);
  set_up (session, RW_SAID_NOT, RW_SAID_NOT, RW_SAID_YES);
  read_dc (session, "p12", 12);

  g_autoptr (RwBenchState) state = rw_bench_state_new (session);
  const RwSetup bare = rw_bench_state_find_spot (state, "p5", RW_PLACE_TERMINALS,
                                                 RW_KIND_DC)->setup;
  const RwSetup loaded = p5_of (state)->setup;
  const RwSetup warm = rw_bench_state_find_rail (state, "p12")->setup;

  g_assert_true (bare.power_on == RW_SAID_YES && bare.board_fitted == RW_SAID_NO
                 && bare.warm == RW_SAID_NO);
  g_assert_true (loaded.power_on == RW_SAID_YES && loaded.board_fitted == RW_SAID_YES
                 && loaded.warm == RW_SAID_NO);
  g_assert_true (warm.power_on == RW_SAID_YES && warm.board_fitted == RW_SAID_YES
                 && warm.warm == RW_SAID_YES);
  g_assert_true (rw_bench_state_find_spot (state, "p5", RW_PLACE_TERMINALS, RW_KIND_DC)->stale);
  g_assert_false (p5_of (state)->stale);
}

static void
test_spots_stand_in_the_order_of_the_profile (void)
{
  static const char *const rails[] = { "zz", "gnd", "m5", "aa", "p5", "p12" };
  static const char *const wanted[] = { "p5", "p12", "m5", "gnd" };
  g_autoptr (GRand) random = g_rand_new_with_seed (83);

  for (guint round = 0; round < 200; round++)
    {
      g_autoptr (RwSession) session = fixture_session ();

      for (guint i = 0; i < 40; i++)
        read_at (session, rails[g_rand_int_range (random, 0, 6)],
                 (RwPlace) g_rand_int_range (random, 0, RW_N_PLACES),
                 (RwKind) g_rand_int_range (random, 0, RW_N_KINDS), 1);

      g_autoptr (RwBenchState) state = rw_bench_state_new (session);
      guint rank = 0;

      for (guint i = 0; i < rw_bench_state_get_n_spots (state); i++)
        {
          const RwSpotState *spot = rw_bench_state_get_spot (state, i);

          /* Once only, and the last. */
          for (guint k = 0; k < i; k++)
            g_assert_false (rw_reading_same_spot (&spot->reading,
                                                  &rw_bench_state_get_spot (state, k)->reading));
          for (guint k = spot->n; k < rw_session_get_n_events (session); k++)
            g_assert_false (rw_reading_same_spot (&spot->reading,
                                                  &rw_session_get_event (session, k)->reading));
          while (rank < G_N_ELEMENTS (wanted) && !g_str_equal (spot->reading.rail, wanted[rank]))
            rank++;
          if (rank == G_N_ELEMENTS (wanted))
            g_assert_true (g_str_equal (spot->reading.rail, "zz")
                           || g_str_equal (spot->reading.rail, "aa"));
        }
    }
}

static void
test_symptoms_findings_repairs (void)
{
  g_autoptr (RwSession) session = fixture_session ();

  add (session, rw_event_make_symptom (1, "resets", RW_SYMPTOM_PRESENT));
  add (session, rw_event_make_symptom (2, "hum", RW_SYMPTOM_ABSENT));
  add (session, rw_event_make_finding (3, "edge-connector-look", "dark"));
  add (session, rw_event_make_finding (4, "fuse-look", "good"));
  add (session, rw_event_make_repair (5, "edge-connector", RW_REPAIR_FIXED));
  add (session, rw_event_make_finding (6, "edge-connector-look", "bright"));

  const guint cured = add (session, rw_event_make_symptom (7, "resets", RW_SYMPTOM_CURED));

  add (session, rw_event_make_stage (8, "bare"));
  add (session, rw_event_make_stage (9, "under-load"));
  turn_trim (session);
  turn_trim (session);
  touch_trim (session);

  g_autoptr (RwBenchState) state = rw_bench_state_new (session);

  g_assert_cmpuint (rw_bench_state_get_n_symptoms (state), ==, 2);
  g_assert_cmpstr (rw_bench_state_get_symptom (state, 0)->id, ==, "resets");
  g_assert_cmpint (rw_bench_state_get_symptom (state, 0)->state, ==, RW_SYMPTOM_CURED);
  g_assert_cmpuint (rw_bench_state_get_symptom (state, 0)->n, ==, cured);
  g_assert_cmpint (rw_bench_state_get_symptom (state, 1)->state, ==, RW_SYMPTOM_ABSENT);
  g_assert_cmpuint (rw_bench_state_get_n_findings (state), ==, 2);
  g_assert_cmpstr (rw_bench_state_get_finding (state, 0)->outcome, ==, "bright");
  /* The first was looked at again since the repair. */
  g_assert_false (rw_bench_state_get_finding (state, 0)->changed_since);
  g_assert_true (rw_bench_state_get_finding (state, 1)->changed_since);
  g_assert_cmpuint (rw_bench_state_get_n_repairs (state), ==, 1);
  g_assert_cmpstr (rw_bench_state_get_repair (state, 0)->cause, ==, "edge-connector");
  g_assert_cmpint (rw_bench_state_get_repair (state, 0)->result, ==, RW_REPAIR_FIXED);
  g_assert_cmpstr (rw_bench_state_get_stage (state), ==, "under-load");
  g_assert_cmpuint (rw_bench_state_get_n_trims (state), ==, 2);

  add (session, rw_event_make_retract (10, cured));

  g_autoptr (RwBenchState) back = rw_bench_state_new (session);

  g_assert_cmpint (rw_bench_state_get_symptom (back, 0)->state, ==, RW_SYMPTOM_PRESENT);
}

static void
test_warnings (void)
{
  static const struct
  {
    const char *rail;
    RwPlace     place;
    RwKind      kind;
    double      value;
    const char *id; /* NULL: none */
    gboolean    danger;
    const char *says;
  } rows[] = {
    { "p5", RW_PLACE_BOARD, RW_KIND_DC, 5.5, NULL, FALSE, NULL },
    { "p5", RW_PLACE_BOARD, RW_KIND_DC, 5.51, "never-above", TRUE, "Power off" },
    { "p5", RW_PLACE_TERMINALS, RW_KIND_DC, 5.9, "never-above", TRUE, "+5 V" },
    { "m5", RW_PLACE_BOARD, RW_KIND_DC, -7.01, "never-above", TRUE, "−5 V" },
    { "m5", RW_PLACE_BOARD, RW_KIND_DC, -6.9, NULL, FALSE, NULL },
    { "p12", RW_PLACE_CHIP, RW_KIND_DC, 15.1, "never-above", TRUE, "+12 V" },
    { "p12", RW_PLACE_BOARD, RW_KIND_DC, -15.1, "never-above", TRUE, "past" },
    { "p5", RW_PLACE_BOARD, RW_KIND_DC, -5.0, "leads-reversed", FALSE, "wrong way" },
    { "m5", RW_PLACE_BOARD, RW_KIND_DC, 4.9, "leads-reversed", FALSE, "−5 V" },
    { "m5", RW_PLACE_BOARD, RW_KIND_DC, 0.4, NULL, FALSE, NULL }, /* dead, not reversed */
    { "p5", RW_PLACE_WIRE, RW_KIND_DC, -0.3, NULL, FALSE, NULL },
    { "p5", RW_PLACE_BOARD, RW_KIND_OHMS, 1200, NULL, FALSE, NULL },
    { "p5", RW_PLACE_CHIP, RW_KIND_CELSIUS, 95, NULL, FALSE, NULL },
    { "p5", RW_PLACE_BOARD, RW_KIND_DC, NAN, "overload", FALSE, "+5 V" },
    { "p5", RW_PLACE_BOARD, RW_KIND_DC, 60, "never-above", TRUE, "+5 V" },
    { "p5", RW_PLACE_BOARD, RW_KIND_DC, 60.1, "mains-sized", TRUE, "Stop" },
    { "p12", RW_PLACE_BOARD, RW_KIND_DC, -325, "mains-sized", TRUE, "pull the plug" },
    { "gnd", RW_PLACE_BOARD, RW_KIND_DC, 230, "mains-sized", TRUE, "ground" },
    { "gnd", RW_PLACE_WIRE, RW_KIND_DC, 120, "mains-sized", TRUE, "ground" },
    { "p24", RW_PLACE_BOARD, RW_KIND_DC, 230, "mains-sized", TRUE, "p24" },
    { "p5", RW_PLACE_BOARD, RW_KIND_RIPPLE, 230, "mains-sized", TRUE, "+5 V" }, /* mains is AC */
    { "p5", RW_PLACE_BOARD, RW_KIND_RIPPLE, 7, "dc-mode-for-ripple", FALSE, "+5 V" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (RwSession) session = fixture_session ();
      const guint n = read_at (session, rows[i].rail, rows[i].place, rows[i].kind, rows[i].value);
      g_autoptr (RwBenchState) state = rw_bench_state_new (session);

      g_test_message ("%s %s %g", rows[i].rail, rw_kind_to_id (rows[i].kind), rows[i].value);
      g_assert_cmpuint (rw_bench_state_get_n_warnings (state), ==, rows[i].id != NULL);
      if (rows[i].id == NULL)
        continue;

      const RwWarning *warning = rw_bench_state_get_warning (state, 0);

      g_test_message ("%s", warning->text);
      g_assert_cmpstr (warning->id, ==, rows[i].id);
      g_assert_cmpint (warning->danger, ==, rows[i].danger);
      g_assert_cmpuint (warning->n, ==, n);
      g_assert_nonnull (strstr (warning->text, rows[i].says));

      /* It lasts until the cause is gone: read again, or the setup changed, or the reading taken
       * back. */
      g_autoptr (RwBenchState) after = NULL;

      if (i % 3 == 0)
        read_at (session, rows[i].rail, rows[i].place, rows[i].kind, 0.01);
      else if (i % 3 == 1)
        power_off (session);
      else
        add (session, rw_event_make_retract (9, n));
      after = rw_bench_state_new (session);
      g_assert_cmpuint (rw_bench_state_get_n_warnings (after), ==, 0);
    }
}

/* A pure function: the same events, live or read from a file or after going back, give the same
 * state. */
static void
test_state_depends_on_events_alone (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (89);

  for (guint round = 0; round < 60; round++)
    {
      g_autoptr (RwSession) live = fixture_session (), replay = fixture_session ();

      for (guint i = 0; i < 80; i++)
        {
          RwEvent event = fixture_random_event (random, i, i);

          add (replay, rw_event_copy (&event));
          rw_session_add (live, &event);
        }

      /* A state outlives what happens to its session. */
      g_autoptr (RwBenchState) state = rw_bench_state_new (live);

      for (guint i = 0; i < 20; i++)
        add (replay, fixture_random_event (random, 100, 50));
      rw_session_rewind (replay, 80);

      g_autoptr (RwBenchState) again = rw_bench_state_new (replay);

      g_clear_object (&live);
      g_assert_cmpuint (rw_bench_state_get_n_spots (state), ==, rw_bench_state_get_n_spots (again));
      for (guint i = 0; i < rw_bench_state_get_n_spots (state); i++)
        {
          const RwSpotState *a = rw_bench_state_get_spot (state, i);
          const RwSpotState *b = rw_bench_state_get_spot (again, i);

          g_assert_true (a->n == b->n && a->stale == b->stale
                         && a->changed_since == b->changed_since);
          g_assert_true (a->verdict == b->verdict
                         && rw_reading_same_spot (&a->reading, &b->reading));
          g_assert_true (a->u == b->u || (isnan (a->u) && isnan (b->u)));
        }
      g_assert_cmpuint (rw_bench_state_get_n_warnings (state), ==,
                        rw_bench_state_get_n_warnings (again));
      g_assert_cmpuint (rw_bench_state_get_n_trims (state), ==, rw_bench_state_get_n_trims (again));
      g_assert_cmpuint (rw_bench_state_get_n_findings (state), ==,
                        rw_bench_state_get_n_findings (again));
      g_assert_cmpstr (rw_bench_state_get_stage (state), ==, rw_bench_state_get_stage (again));
    }
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/bench-state/nothing-happened", test_nothing_happened);
  g_test_add_func ("/bench-state/a-reading-is-judged", test_a_reading_is_judged);
  g_test_add_func ("/bench-state/spots-without-a-verdict", test_spots_without_a_verdict);
  g_test_add_func ("/bench-state/last-reading-wins", test_last_reading_wins);
  g_test_add_func ("/bench-state/what-makes-stale", test_what_makes_stale);
  g_test_add_func ("/bench-state/setup-is-remembered-with-each-reading",
                   test_setup_is_remembered_with_each_reading);
  g_test_add_func ("/bench-state/spots-stand-in-the-order-of-the-profile",
                   test_spots_stand_in_the_order_of_the_profile);
  g_test_add_func ("/bench-state/symptoms-findings-repairs", test_symptoms_findings_repairs);
  g_test_add_func ("/bench-state/warnings", test_warnings);
  g_test_add_func ("/bench-state/state-depends-on-events-alone",
                   test_state_depends_on_events_alone);
  return g_test_run ();
}
