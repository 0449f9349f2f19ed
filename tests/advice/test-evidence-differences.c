/* test-evidence-differences.c: what two readings of one rail say together, and what outdates what.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One cause at a time, so that likelihoods can be told from odds by hand: "wire" against "rest", which has the default
 * rows everywhere, with equal priors.
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "job-fixtures.h"
#include "rw-belief.h"

#define CAUSE(id) \
  "{\"id\":\"" id "\",\"title\":\"" id "\",\"area\":\"wiring\",\"part\":\"one\",\"prior\":1,\"repair\":{\"title\":\"r\"," \
  "\"minutes\":5,\"hazard\":\"none\",\"who\":\"anyone\"}}"
#define CHECK(id, rail, place, setup, at, keys, chance) \
  "{\"id\":\"" id "\",\"title\":\"" id "\",\"minutes\":1,\"hazard\":\"none\",\"who\":\"anyone\"," setup keys \
  "\"measure\":{\"rail\":\"" rail "\",\"place\":\"" place "\",\"kind\":\"dc\"}," \
  "\"outcomes\":[{\"id\":\"under\",\"title\":\"u\",\"to\":" at "},{\"id\":\"over\",\"title\":\"o\",\"from\":" at "}]," \
  "\"chance\":{\"default\":[0.5,0.5]," chance "}}"
#define LOADED "\"setup\":{\"power\":\"on\",\"board\":\"fitted\"},"
#define BARE "\"setup\":{\"power\":\"on\",\"board\":\"out\"},"
#define DIFFERENCE(id, of, place, rail, at, chance) \
  "{\"id\":\"" id "\",\"title\":\"" id "\",\"of\":\"" of "\",\"place\":\"" place "\",\"rail\":\"" rail "\"," \
  "\"outcomes\":[{\"id\":\"usual\",\"title\":\"u\",\"to\":" at "},{\"id\":\"large\",\"title\":\"l\",\"from\":" at "}]," \
  "\"chance\":{\"default\":[0.8,0.2]," chance "}}"
#define COMPUTED \
  DIFFERENCE ("drop-p5", "drop", "board", "p5", "0.15", "\"wire\":[0.1,0.9]") "," \
  DIFFERENCE ("drop-chip", "drop", "chip", "p5", "0.05", "\"wire\":[0.6,0.4]") "," \
  DIFFERENCE ("fall-p5", "fall", "terminals", "p5", "0.1", "\"wire\":[0.4,0.6]") "," \
  DIFFERENCE ("tracking-m5", "tracking", "board", "m5", "0.4", "\"wire\":[0.9,0.1]") ",{\"id\":\"line\",\"title\":\"line\",\"of\":\"trim-line\",\"place\":\"board\"," \
  "\"outcomes\":[{\"id\":\"off-line\",\"title\":\"off\"},{\"id\":\"on-line\",\"title\":\"on\"}]," \
  "\"chance\":{\"default\":[0.1,0.9],\"wire\":[0.3,0.7]}}"
#define HEAD "{\"causes\":[" CAUSE ("wire") "," CAUSE ("rest") "],\"checks\":["
#define CHECKS \
  CHECK ("board", "p5", "board", LOADED, "4.8", , "\"wire\":[0.9,0.1]") "," \
  CHECK ("terminals", "p5", "terminals", LOADED, "4.9", , "\"wire\":[0.2,0.8]") "," \
  CHECK ("bare", "p5", "terminals", BARE, "4.9", , "\"wire\":[0.3,0.7]") "," \
  CHECK ("chip", "p5", "chip", LOADED, "4.75", , "\"wire\":[0.7,0.3]") "," \
  CHECK ("drop", "p5", "wire", LOADED, "0.1", , "\"wire\":[0.2,0.8]") "," \
  CHECK ("ground", "gnd", "wire", LOADED, "0.1", , "\"wire\":[0.6,0.4]") "," \
  CHECK ("minus", "m5", "board", LOADED, "-4.5", , "\"wire\":[0.4,0.6]") "," \
  CHECK ("minus-out", "m5", "terminals", LOADED, "-4.5", , "\"wire\":[0.6,0.4]") ",{\"id\":\"wiggle\",\"title\":\"w\",\"minutes\":1,\"hazard\":\"none\",\"who\":\"anyone\",\"contact\":true," \
  "\"outcomes\":[{\"id\":\"still\",\"title\":\"s\"},{\"id\":\"moves\",\"title\":\"m\"}]," \
  "\"chance\":{\"default\":[0.5,0.5],\"wire\":[0.1,0.9]}}"

static const char whole[] = HEAD CHECKS "],\"computed\":[" COMPUTED "]}";
static const char without_differences[] = HEAD CHECKS "]}";

/* Odds of "wire" against "rest": the likelihoods' ratio, since the priors are equal. */
static double
ratio (RwSession  *job,
       const char *text)
{
  g_autoptr (RwKnowledge) all = fixture_knowledge_from (text);
  g_autoptr (RwBenchState) state = rw_bench_state_new (job);
  g_autoptr (RwKnowledge) knowledge = rw_knowledge_for_profile (all, rw_bench_state_get_profile (state));
  g_autoptr (RwBelief) belief = rw_belief_new (knowledge, state);

  return rw_belief_find_cause (belief, "wire")->p / rw_belief_find_cause (belief, "rest")->p;
}

static void
read_p5 (RwSession *job,
         RwPlace    place,
         double     value)
{
  fixture_reading (job, "p5", place, RW_KIND_DC, value, 0.001);
}

static RwSession *
running (void)
{
  RwSession *job = fixture_job ();

  fixture_setup (job, RW_SAID_YES, RW_SAID_YES, RW_SAID_NO);
  return job;
}

/* Together the weight of one reading, and the difference in full. */
static void
test_two_count_as_one_and_their_difference (void)
{
  g_autoptr (RwSession) job = running ();

  read_p5 (job, RW_PLACE_BOARD, 4.6);
  g_assert_cmpfloat_with_epsilon (ratio (job, whole), 0.9 / 0.5, 1e-9);
  read_p5 (job, RW_PLACE_TERMINALS, 5.1);
  g_assert_cmpfloat_with_epsilon (ratio (job, whole), sqrt (1.8 * 1.6) * (0.9 / 0.2), 1e-9);
  read_p5 (job, RW_PLACE_TERMINALS, 4.65);
  g_assert_cmpfloat_with_epsilon (ratio (job, whole), sqrt (1.8 * 0.4) * (0.1 / 0.8), 1e-9);
  read_p5 (job, RW_PLACE_CHIP, 4.59);
  g_assert_cmpfloat_with_epsilon (ratio (job, whole), cbrt (1.8 * 0.4 * 1.4) * (0.1 / 0.8) * (0.6 / 0.8), 1e-9);
}

static void
test_readings_are_told_apart (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge_from (whole);
  g_autoptr (RwSession) job = running ();

  read_p5 (job, RW_PLACE_BOARD, 4.6);
  read_p5 (job, RW_PLACE_TERMINALS, 5.1);

  g_autoptr (RwBenchState) state = rw_bench_state_new (job);
  g_autoptr (RwBelief) belief = rw_belief_new (knowledge, state);
  guint computed = 0;

  g_assert_cmpuint (rw_belief_get_n_evidence (belief), ==, 3);
  g_assert_true (rw_belief_is_answered (belief, "board"));
  g_assert_true (rw_belief_is_answered (belief, "terminals"));
  for (guint i = 0; i < 3; i++)
    {
      const RwEvidence *it = rw_belief_get_evidence (belief, i);

      if (it->kind == RW_EVIDENCE_COMPUTED)
        {
          computed++;
          g_assert_cmpstr (it->id, ==, "drop-p5");
          g_assert_cmpstr (it->answer, ==, "large");
          g_assert_cmpuint (it->n, ==, 3);
          g_assert_nonnull (strstr (it->title, "0.5"));
        }
      else
        g_assert_true (it->dependent);
    }
  g_assert_cmpuint (computed, ==, 1);
}

static void
test_order_does_not_matter (void)
{
  static const struct
  {
    RwPlace place;
    double  value;
  } readings[] = { { RW_PLACE_BOARD, 4.6 }, { RW_PLACE_TERMINALS, 5.1 }, { RW_PLACE_CHIP, 4.52 } };
  double first = 0;

  for (guint k = 0; k < 6; k++)
    {
      const guint a = k / 2, b = (a + 1 + k % 2) % 3, c = 3 - a - b;
      g_autoptr (RwSession) job = running ();

      read_p5 (job, readings[a].place, readings[a].value);
      read_p5 (job, readings[b].place, readings[b].value);
      read_p5 (job, readings[c].place, readings[c].value);
      first = k == 0 ? ratio (job, whole) : first;
      g_assert_cmpfloat_with_epsilon (ratio (job, whole), first, 1e-12);
    }
  g_assert_cmpfloat_with_epsilon (first, cbrt (1.8 * 1.6 * 1.4) * 4.5 * 2, 1e-9);
}

/* 0.15 V with √2 · 0.01 V: half and half. */
static void
test_a_difference_on_the_fence (void)
{
  g_autoptr (RwSession) job = running ();

  fixture_reading (job, "p5", RW_PLACE_BOARD, RW_KIND_DC, 4.6, 0.01);
  fixture_reading (job, "p5", RW_PLACE_TERMINALS, RW_KIND_DC, 4.75, 0.01);
  g_assert_cmpfloat_with_epsilon (ratio (job, whole), sqrt (1.8 * 0.4) * (0.5 / 0.5), 1e-9);
  fixture_reading (job, "p5", RW_PLACE_TERMINALS, RW_KIND_DC, 4.75 + 0.01 * sqrt (2), 0.01);

  const double phi = 0.841344746068543;

  g_assert_cmpfloat_with_epsilon (ratio (job, whole),
                                  sqrt (1.8 * 0.4) * ((1 - phi) * 0.1 + phi * 0.9) / ((1 - phi) * 0.8 + phi * 0.2), 1e-9);
}

/* Half way between one reading and two where nothing is known of the difference. */
static void
test_without_a_table_half_a_weight_more (void)
{
  g_autoptr (RwSession) job = running ();

  read_p5 (job, RW_PLACE_BOARD, 4.6);
  read_p5 (job, RW_PLACE_TERMINALS, 5.1);
  g_assert_cmpfloat_with_epsilon (ratio (job, without_differences), pow (1.8 * 1.6, 0.75), 1e-9);
}

static void
test_what_comes_between (void)
{
  g_autoptr (RwSession) job = running ();

  read_p5 (job, RW_PLACE_BOARD, 4.6);
  fixture_setup (job, RW_SAID_NOT, RW_SAID_NO, RW_SAID_NOT);
  fixture_setup (job, RW_SAID_NOT, RW_SAID_YES, RW_SAID_NOT);
  read_p5 (job, RW_PLACE_TERMINALS, 5.1);
  g_assert_cmpfloat_with_epsilon (ratio (job, whole), pow (1.8 * 1.6, 0.75), 1e-9);

  /* Warm is another state than cold. */
  read_p5 (job, RW_PLACE_BOARD, 4.6);
  g_assert_cmpfloat_with_epsilon (ratio (job, whole), sqrt (1.8 * 1.6) * 4.5, 1e-9);
  fixture_setup (job, RW_SAID_NOT, RW_SAID_NOT, RW_SAID_YES);
  read_p5 (job, RW_PLACE_TERMINALS, 5.1);
  g_assert_cmpfloat_with_epsilon (ratio (job, whole), pow (1.8 * 1.6, 0.75), 1e-9);

  /* A turn of the trim leaves only what is read after it. */
  fixture_trim (job);
  read_p5 (job, RW_PLACE_TERMINALS, 5.1);
  g_assert_cmpfloat_with_epsilon (ratio (job, whole), 0.8 / 0.5, 1e-9);
}

/* 0.5 V in all; 0.45 V along the wire and 0.04 V along ground tell it. */
static void
test_wires_that_tell_the_same (void)
{
  g_autoptr (RwSession) job = running ();
  const double alone = sqrt (1.8 * 1.6) * (0.8 / 0.5);

  read_p5 (job, RW_PLACE_BOARD, 4.6);
  read_p5 (job, RW_PLACE_TERMINALS, 5.1);
  fixture_reading (job, "p5", RW_PLACE_WIRE, RW_KIND_DC, -0.45, 0.001);
  g_assert_cmpfloat_with_epsilon (ratio (job, whole), alone, 1e-9);
  fixture_reading (job, "gnd", RW_PLACE_WIRE, RW_KIND_DC, 0.04, 0.001);
  g_assert_cmpfloat_with_epsilon (ratio (job, whole), alone * (0.6 / 0.5), 1e-9);

  /* 0.02 V along the wire leaves most of it untold. */
  fixture_reading (job, "p5", RW_PLACE_WIRE, RW_KIND_DC, 0.02, 0.001);
  g_assert_cmpfloat_with_epsilon (ratio (job, whole), sqrt (1.8 * 1.6) * (0.2 / 0.5) * (0.6 / 0.5) * 4.5, 1e-9);
}

static void
test_a_clicked_drop_tells_it (void)
{
  g_autoptr (RwSession) job = running ();

  read_p5 (job, RW_PLACE_BOARD, 4.6);
  read_p5 (job, RW_PLACE_TERMINALS, 5.1);
  fixture_finding (job, "drop", "over");
  g_assert_cmpfloat_with_epsilon (ratio (job, whole), sqrt (1.8 * 1.6) * (0.8 / 0.5), 1e-9);
}

/* A loaded reading leaves the bare one standing as evidence, by their difference. */
static void
test_bare_and_loaded (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  fixture_setup (job, RW_SAID_YES, RW_SAID_NO, RW_SAID_NO);
  read_p5 (job, RW_PLACE_TERMINALS, 5.1);
  g_assert_cmpfloat_with_epsilon (ratio (job, whole), 0.7 / 0.5, 1e-9);
  fixture_setup (job, RW_SAID_NOT, RW_SAID_YES, RW_SAID_NOT);
  read_p5 (job, RW_PLACE_TERMINALS, 4.85);
  g_assert_cmpfloat_with_epsilon (ratio (job, whole), sqrt (0.4 * 1.4) * (0.6 / 0.2), 1e-9);
  read_p5 (job, RW_PLACE_TERMINALS, 5.06);
  g_assert_cmpfloat_with_epsilon (ratio (job, whole), sqrt (1.6 * 1.4) * (0.4 / 0.8), 1e-9);

  g_autoptr (RwBenchState) state = rw_bench_state_new (job);
  const RwSpotState *bare = rw_bench_state_find_view (state, "p5", RW_PLACE_TERMINALS, RW_KIND_DC, TRUE);
  const RwSpotState *loaded = rw_bench_state_find_view (state, "p5", RW_PLACE_TERMINALS, RW_KIND_DC, FALSE);

  g_assert_cmpuint (rw_bench_state_get_n_spots (state), ==, 1);
  g_assert_cmpuint (rw_bench_state_get_n_views (state), ==, 2);
  g_assert_cmpfloat (bare->reading.value, ==, 5.1);
  g_assert_true (bare->stale);
  g_assert_false (bare->changed_since);
  g_assert_cmpfloat (loaded->reading.value, ==, 5.06);
  g_assert_cmpuint (rw_bench_state_get_plugged (state), ==, 3);
  g_assert_cmpuint (rw_bench_state_get_turned (state), ==, 0);
}

/* −5.0 V at the terminals, −4.0 V at the board: 1 V is lost, but the knowledge has no table for it. */
static void
test_another_rail_has_its_own (void)
{
  g_autoptr (RwSession) job = running ();

  read_p5 (job, RW_PLACE_BOARD, 4.6);
  fixture_reading (job, "m5", RW_PLACE_BOARD, RW_KIND_DC, -4.0, 0.001);
  fixture_reading (job, "m5", RW_PLACE_TERMINALS, RW_KIND_DC, -5.0, 0.001);
  g_assert_cmpfloat_with_epsilon (ratio (job, whole), 1.8 * pow (1.2 * 1.2, 0.75), 1e-9);
}

static void
test_minus_rails_lose_by_size (void)
{
  static const char minus[] = HEAD CHECKS "],\"computed\":[" DIFFERENCE ("d", "drop", "board", "m5", "0.5",
                                                                         "\"wire\":[0.1,0.9]") "]}";
  g_autoptr (RwSession) job = running ();

  fixture_reading (job, "m5", RW_PLACE_BOARD, RW_KIND_DC, -4.0, 0.001);
  fixture_reading (job, "m5", RW_PLACE_TERMINALS, RW_KIND_DC, -5.0, 0.001);
  g_assert_cmpfloat_with_epsilon (ratio (job, minus), sqrt (1.2 * 1.2) * 4.5, 1e-9);
}

/* --- what outdates what ------------------------------------------------------------------------- */

static void
test_plugging_outdates_the_contact (void)
{
  g_autoptr (RwSession) job = running ();

  fixture_reading (job, "p5", RW_PLACE_WIRE, RW_KIND_DC, 0.3, 0.001);
  fixture_finding (job, "wiggle", "moves");
  fixture_finding (job, "ground", "over");
  read_p5 (job, RW_PLACE_BOARD, 4.6);
  g_assert_cmpfloat_with_epsilon (ratio (job, whole), 1.6 * 1.8 * 0.8 * 1.8, 1e-9);
  fixture_setup (job, RW_SAID_NO, RW_SAID_NO, RW_SAID_NOT);
  g_assert_cmpfloat_with_epsilon (ratio (job, whole), 1.6 * 1.8 * 0.8 * 1.8, 1e-9);
  fixture_setup (job, RW_SAID_NOT, RW_SAID_YES, RW_SAID_NOT);
  g_assert_cmpfloat_with_epsilon (ratio (job, whole), 1.8, 1e-9);
  fixture_finding (job, "wiggle", "still");
  g_assert_cmpfloat_with_epsilon (ratio (job, whole), 1.8 * (0.1 / 0.5), 1e-9);
}

static void
test_a_turn_outdates_clicked_readings (void)
{
  g_autoptr (RwSession) job = running ();

  fixture_finding (job, "board", "under");
  fixture_finding (job, "wiggle", "moves");
  g_assert_cmpfloat_with_epsilon (ratio (job, whole), 1.8 * 1.8, 1e-9);
  fixture_trim (job);
  g_assert_cmpfloat_with_epsilon (ratio (job, whole), 1.8, 1e-9);
}

/* What was read before a repair that helped in part counts for what was, and is worth reading again. */
static void
test_a_repair_that_helped_asks_again (void)
{
  static const char signs[] = HEAD CHECKS "],\"symptoms\":[{\"id\":\"x\",\"title\":\"x\",\"group\":\"game\",\"chance\":{\"default\":0.5}},"
                                          "{\"id\":\"y\",\"title\":\"y\",\"group\":\"game\",\"chance\":{\"default\":0.5}}]}";
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge_from (signs);
  g_autoptr (RwSession) job = running ();

  read_p5 (job, RW_PLACE_BOARD, 4.6);
  fixture_symptom (job, "y", RW_SYMPTOM_PRESENT);
  fixture_repair (job, "rest", RW_REPAIR_NO_CHANGE);

  g_autoptr (RwBenchState) in_vain = rw_bench_state_new (job);
  g_autoptr (RwBelief) before = rw_belief_new (knowledge, in_vain);

  g_assert_true (rw_belief_is_answered (before, "board"));
  fixture_symptom (job, "x", RW_SYMPTOM_CURED);

  g_autoptr (RwBenchState) helped = rw_bench_state_new (job);
  g_autoptr (RwBelief) after = rw_belief_new (knowledge, helped);

  g_assert_false (rw_belief_is_answered (after, "board"));
  read_p5 (job, RW_PLACE_BOARD, 4.6);

  g_autoptr (RwBenchState) again = rw_bench_state_new (job);
  g_autoptr (RwBelief) taken = rw_belief_new (knowledge, again);

  g_assert_true (rw_belief_is_answered (taken, "board"));
}

/* --- the trim's lines --------------------------------------------------------------------------- */

static const RwEvidence *
find_computed (RwBelief   *belief,
               const char *id,
               double     *factor)
{
  for (guint i = 0; i < rw_belief_get_n_evidence (belief); i++)
    if (g_str_equal (rw_belief_get_evidence (belief, i)->id, id))
      {
        const RwCauseBelief *wire = rw_belief_find_cause (belief, "wire");

        for (guint rank = 0; rank < rw_belief_get_n_causes (belief); rank++)
          if (rw_belief_get_cause (belief, rank) == wire)
            *factor = rw_belief_get_factor (belief, rank, i);
        return rw_belief_get_evidence (belief, i);
      }
  return NULL;
}

/* Four positions at the board; −5 V at the third is off its line by @off. */
static RwSession *
four_positions (double off)
{
  RwSession *job = running ();

  for (guint k = 0; k < 4; k++)
    {
      if (k > 0)
        fixture_trim (job);
      fixture_reading (job, "p5", RW_PLACE_BOARD, RW_KIND_DC, 4.9 + 0.1 * k, 0.001);
      fixture_reading (job, "m5", RW_PLACE_BOARD, RW_KIND_DC, -4.9 - 0.1 * k + (k == 2 ? off : 0), 0.001);
    }
  return job;
}

static void
assert_line (double      off,
             const char *answer,
             double      expected)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge_from (whole);
  g_autoptr (RwSession) job = four_positions (off);
  g_autoptr (RwBenchState) state = rw_bench_state_new (job);
  g_autoptr (RwBelief) belief = rw_belief_new (knowledge, state);
  double factor = 0;
  const RwEvidence *it = find_computed (belief, "line", &factor);

  g_assert_nonnull (it);
  g_assert_cmpstr (it->answer, ==, answer);
  g_assert_cmpfloat_with_epsilon (factor, expected, 1e-9);
}

static void
test_readings_off_the_line (void)
{
  assert_line (0, "on-line", 0.7 / 0.9);
  assert_line (0.08, "off-line", 0.3 / 0.1);
}

/* −5 V that should follow and does, or stands still. */
static RwSession *
tracking_job (double share)
{
  static const char text[] = "{\"id\":\"two\",\"title\":\"Two\",\"rails\":["
                             "{\"id\":\"p5\",\"label\":\"+5 V\",\"nominal\":5,\"limits\":[4.9,5.2],\"follows_trim\":\"yes\"},"
                             "{\"id\":\"m5\",\"label\":\"−5 V\",\"nominal\":-5,\"limits\":[-5.5,-4.5],\"follows_trim\":\"yes\"}]}";
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) node = json_from_string (text, &error);
  g_autoptr (RwProfile) profile = rw_profile_new_from_node (node, "two", &error);
  g_autoptr (GDateTime) started = g_date_time_new_utc (2026, 3, 14, 9, 30, 0);

  g_assert_no_error (error);

  RwSession *job = rw_session_new (rw_session_header_new (profile, "Tidepool Racer", "B-07", NULL, started));

  fixture_setup (job, RW_SAID_YES, RW_SAID_YES, RW_SAID_NO);
  for (guint k = 0; k < 2; k++)
    {
      if (k > 0)
        fixture_trim (job);
      fixture_reading (job, "p5", RW_PLACE_BOARD, RW_KIND_DC, 4.9 + 0.3 * k, 0.001);
      fixture_reading (job, "m5", RW_PLACE_BOARD, RW_KIND_DC, -4.9 - share * 0.3 * k, 0.001);
    }
  return job;
}

static void
assert_tracking (double      share,
                 const char *answer,
                 double      expected)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge_from (whole);
  g_autoptr (RwSession) job = tracking_job (share);
  g_autoptr (RwBenchState) state = rw_bench_state_new (job);
  g_autoptr (RwBelief) belief = rw_belief_new (knowledge, state);
  double factor = 0;
  const RwEvidence *it = find_computed (belief, "tracking-m5", &factor);

  g_assert_nonnull (it);
  g_assert_cmpstr (it->answer, ==, answer);
  g_assert_cmpfloat_with_epsilon (factor, expected, 1e-9);
}

static void
test_a_minus_rail_that_tracks (void)
{
  assert_tracking (1, "large", 0.1 / 0.2);
  assert_tracking (0.02, "usual", 0.9 / 0.8);
}

/* Where nobody knows whether it should follow, it says nothing. */
static void
test_a_rail_that_need_not_track (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge_from (whole);
  g_autoptr (RwSession) job = four_positions (0);
  g_autoptr (RwBenchState) state = rw_bench_state_new (job);
  g_autoptr (RwBelief) belief = rw_belief_new (knowledge, state);
  double factor = 0;

  g_assert_null (find_computed (belief, "tracking-m5", &factor));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/differences/two count as one and their difference", test_two_count_as_one_and_their_difference);
  g_test_add_func ("/differences/readings are told apart", test_readings_are_told_apart);
  g_test_add_func ("/differences/their order does not matter", test_order_does_not_matter);
  g_test_add_func ("/differences/on the fence they count as both", test_a_difference_on_the_fence);
  g_test_add_func ("/differences/without a table half a weight more", test_without_a_table_half_a_weight_more);
  g_test_add_func ("/differences/not across what comes between", test_what_comes_between);
  g_test_add_func ("/differences/wires that tell the same are not counted twice", test_wires_that_tell_the_same);
  g_test_add_func ("/differences/a clicked drop tells it", test_a_clicked_drop_tells_it);
  g_test_add_func ("/differences/bare and loaded both count", test_bare_and_loaded);
  g_test_add_func ("/differences/another rail has its own", test_another_rail_has_its_own);
  g_test_add_func ("/differences/minus rails lose by size", test_minus_rails_lose_by_size);
  g_test_add_func ("/differences/plugging outdates the contact", test_plugging_outdates_the_contact);
  g_test_add_func ("/differences/a turn outdates clicked readings", test_a_turn_outdates_clicked_readings);
  g_test_add_func ("/differences/a repair that helped asks again", test_a_repair_that_helped_asks_again);
  g_test_add_func ("/differences/readings off the trim's line", test_readings_off_the_line);
  g_test_add_func ("/differences/a minus rail that tracks, or not", test_a_minus_rail_that_tracks);
  g_test_add_func ("/differences/a rail that need not track", test_a_rail_that_need_not_track);
  return g_test_run ();
}
