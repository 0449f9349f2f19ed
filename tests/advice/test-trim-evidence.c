/* test-trim-evidence.c: a window of the trim, or none, speaks for its causes, once and mildly.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "job-fixtures.h"
#include "rw-advice.h"
#include "rw-trim-evidence.h"

#define CAUSE(id, prior)                                                                                     \
  "{\"id\":\"" id "\",\"title\":\"" id "\",\"area\":\"supply\",\"part\":\"one\",\"prior\":" prior "," \
  "\"repair\":{\"title\":\"R\",\"minutes\":9,\"hazard\":\"none\",\"who\":\"anyone\"}}"
#define OUTCOMES                                                                                             \
  "\"outcomes\":[{\"id\":\"none-suits\",\"title\":\"None\"},{\"id\":\"higher-suits\",\"title\":\"Higher\"},"  \
  "{\"id\":\"lower-suits\",\"title\":\"Lower\"},{\"id\":\"this-suits\",\"title\":\"This\"}]"
#define CHANCE                                                                                               \
  "\"chance\":{\"default\":[0.1,0.1,0.1,0.7],\"low\":[0.1,0.6,0.1,0.2],\"high\":[0.1,0.1,0.5,0.3],"            \
  "\"minus\":[0.6,0.1,0.1,0.2]}"
#define AT(place)                                                                                            \
  "{\"id\":\"at-" place "\",\"title\":\"At " place "\",\"of\":\"trim-window\",\"place\":\"" place "\","      \
  OUTCOMES "," CHANCE ",\"source\":\"estimate\"}"

static const char knowledge_text[] =
    "{\"causes\":[" CAUSE ("low", "2") "," CAUSE ("high", "1") "," CAUSE ("minus", "1") "," CAUSE ("rest", "4")
    "],\"computed\":[" AT ("board") "," AT ("terminals") "]}";

/* --- jobs --------------------------------------------------------------------------------------- */

typedef struct
{
  RwSession    *job;
  RwKnowledge  *knowledge;
  RwBenchState *state;
  RwBelief     *belief;
} Case;

static void
read_pair (RwSession *job,
           RwPlace    place,
           double     plus,
           double     minus)
{
  fixture_reading (job, "p5", place, RW_KIND_DC, plus, 0.001);
  fixture_reading (job, "m5", place, RW_KIND_DC, minus, 0.001);
}

/* Two positions at the board, the board fitted: +5 V and −5 V at each. */
static RwSession *
two_positions (double plus,
               double minus,
               double plus_then,
               double minus_then)
{
  RwSession *job = fixture_job ();

  fixture_setup (job, RW_SAID_YES, RW_SAID_YES, RW_SAID_NOT);
  read_pair (job, RW_PLACE_BOARD, plus, minus);
  fixture_trim (job);
  read_pair (job, RW_PLACE_BOARD, plus_then, minus_then);
  return job;
}

/* −5 V moves by 0.75 V a volt and would need +5 V at 5.6 V. */
static RwSession *
no_window (void)
{
  return two_positions (4.95, -4.0, 5.15, -4.15);
}

/* −5 V as large as +5 V less 0.3 V: the window is 4.90 to 5.20 V. */
static RwSession *
window (double now)
{
  return two_positions (5.05, -4.75, now, 0.3 - now);
}

/* Takes @job. */
static Case
believe (RwSession *job)
{
  Case it = { .job = job };

  it.knowledge = fixture_knowledge_from (knowledge_text);
  it.state = rw_bench_state_new (job);
  it.belief = rw_belief_new (it.knowledge, it.state);
  return it;
}

static void
case_clear (Case *it)
{
  rw_belief_unref (it->belief);
  rw_bench_state_unref (it->state);
  rw_knowledge_unref (it->knowledge);
  g_object_unref (it->job);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Case, case_clear)

static const RwEvidence *
computed (const Case *it)
{
  const RwEvidence *found = NULL;

  for (guint i = 0; i < rw_belief_get_n_evidence (it->belief); i++)
    if (rw_belief_get_evidence (it->belief, i)->kind == RW_EVIDENCE_COMPUTED)
      {
        g_assert_null (found);
        found = rw_belief_get_evidence (it->belief, i);
      }
  return found;
}

/* It must be there. */
static const RwEvidence *
counted (const Case *it)
{
  g_assert_nonnull (computed (it));
  return computed (it);
}

static double
odds (const Case *it,
      const char *one,
      const char *other)
{
  return rw_belief_find_cause (it->belief, one)->p / rw_belief_find_cause (it->belief, other)->p;
}

/* --- what it does to the beliefs ---------------------------------------------------------------- */

static void
test_no_window_blames_the_rails (void)
{
  g_auto (Case) it = believe (no_window ());

  g_assert_cmpstr (counted (&it)->id, ==, "at-board");
  g_assert_cmpstr (counted (&it)->answer, ==, "none-suits");
  g_assert_cmpstr (counted (&it)->title, ==, "At board: None (−5 V and +5 V rule each other out)");
  g_assert_false (counted (&it)->fence);

  /* Prior 1 to 4, chances 0.6 to 0.1: nothing else was seen. */
  g_assert_cmpfloat_with_epsilon (odds (&it, "minus", "rest"), 1 / 4.0 * 6, 1e-3);
  g_assert_cmpfloat_with_epsilon (odds (&it, "low", "rest"), 2 / 4.0, 1e-3);
}

static void
test_window_above_blames_a_low_trim (void)
{
  g_auto (Case) it = believe (window (4.85));

  g_assert_cmpstr (counted (&it)->answer, ==, "higher-suits");
  g_assert_nonnull (strstr (counted (&it)->title, "+5 V"));
  g_assert_cmpfloat_with_epsilon (odds (&it, "low", "rest"), 2 / 4.0 * 6, 1e-3);
}

static void
test_window_below_blames_a_high_trim (void)
{
  g_auto (Case) it = believe (window (5.3));

  g_assert_cmpstr (counted (&it)->answer, ==, "lower-suits");
  g_assert_cmpfloat_with_epsilon (odds (&it, "high", "rest"), 1 / 4.0 * 5, 1e-3);
}

static void
test_standing_in_the_window_blames_nobody (void)
{
  g_auto (Case) it = believe (window (5.0));

  g_assert_cmpstr (counted (&it)->answer, ==, "this-suits");
  g_assert_cmpfloat_with_epsilon (odds (&it, "low", "rest"), 2 / 4.0 * 2 / 7, 1e-3);
}

/* The screw on the window's edge, 4.90 V: half as much each. */
static void
test_edge_counts_as_both (void)
{
  g_auto (Case) it = believe (window (4.9));
  double weights[RW_N_TRIM_OUTCOMES];

  rw_trim_evidence_weigh (rw_trim_evidence_find (it.state), weights);
  g_assert_cmpfloat_with_epsilon (weights[RW_TRIM_HIGHER_SUITS], 0.5, 0.1);
  g_assert_cmpfloat_with_epsilon (weights[RW_TRIM_THIS_SUITS], 0.5, 0.1);
  g_assert_cmpfloat_with_epsilon (weights[0] + weights[1] + weights[2] + weights[3], 1, 1e-9);
  g_assert_true (counted (&it)->fence);
}

/* A gap of 3 mV, with readings no better than ±20 mV, proves nothing: the larger the doubt, the less. */
static void
test_gap_within_the_doubt_proves_little (void)
{
  RwSession *job = fixture_job ();
  double weights[RW_N_TRIM_OUTCOMES];

  fixture_reading (job, "p5", RW_PLACE_BOARD, RW_KIND_DC, 5.1, 0.02);
  fixture_reading (job, "m5", RW_PLACE_BOARD, RW_KIND_DC, -4.397, 0.02);
  fixture_trim (job);
  fixture_reading (job, "p5", RW_PLACE_BOARD, RW_KIND_DC, 5.2, 0.02);
  fixture_reading (job, "m5", RW_PLACE_BOARD, RW_KIND_DC, -4.497, 0.02);

  g_auto (Case) it = believe (job);
  const RwTrimSet *set = rw_trim_evidence_find (it.state);

  g_assert_false (set->window.exists);
  rw_trim_evidence_weigh (set, weights);
  g_assert_cmpfloat (weights[RW_TRIM_NONE_SUITS], >, 0.2);
  g_assert_cmpfloat (weights[RW_TRIM_NONE_SUITS], <, 0.9);
}

/* --- which sets --------------------------------------------------------------------------------- */

static void
test_rail_not_read_says_nothing (void)
{
  RwSession *job = fixture_job ();

  fixture_reading (job, "p5", RW_PLACE_BOARD, RW_KIND_DC, 4.8, 0.001);
  fixture_trim (job);
  fixture_reading (job, "p5", RW_PLACE_BOARD, RW_KIND_DC, 4.9, 0.001);

  g_auto (Case) it = believe (job);

  g_assert_null (rw_trim_evidence_find (it.state));
  g_assert_null (computed (&it));
}

static void
test_board_out_says_nothing (void)
{
  RwSession *job = fixture_job ();

  fixture_setup (job, RW_SAID_YES, RW_SAID_NO, RW_SAID_NOT);
  read_pair (job, RW_PLACE_TERMINALS, 4.95, -4.0);
  fixture_trim (job);
  read_pair (job, RW_PLACE_TERMINALS, 5.15, -4.15);

  g_auto (Case) it = believe (job);

  g_assert_cmpuint (rw_bench_state_get_n_trim_sets (it.state), >, 0);
  g_assert_null (computed (&it));
}

static void
test_newest_place_counts_alone (void)
{
  RwSession *job = no_window ();

  read_pair (job, RW_PLACE_TERMINALS, 5.15, -4.85);
  fixture_trim (job);
  read_pair (job, RW_PLACE_TERMINALS, 5.05, -4.75);

  g_auto (Case) it = believe (job);

  g_assert_cmpstr (counted (&it)->id, ==, "at-terminals");
  g_assert_cmpstr (counted (&it)->answer, ==, "this-suits");
}

static void
test_repair_outdates_it (void)
{
  RwSession *job = no_window ();

  fixture_repair (job, "minus", RW_REPAIR_FIXED);
  fixture_symptom (job, "resets", RW_SYMPTOM_PRESENT);

  g_auto (Case) it = believe (job);

  g_assert_null (computed (&it));
}

/* Right after a turn a window says nothing of where the screw stands; that there is none still holds. */
static void
test_turn_outdates_where_it_stands (void)
{
  RwSession *with = window (4.85);
  RwSession *without = no_window ();

  fixture_trim (with);
  fixture_trim (without);

  g_auto (Case) some = believe (with);
  g_auto (Case) none = believe (without);

  g_assert_null (computed (&some));
  g_assert_cmpstr (counted (&none)->answer, ==, "none-suits");
}

/* One position: the slope of −5 V is the profile's word only, and this far off it needs no more. */
static void
test_one_position_must_be_sure (void)
{
  RwSession *doubtful = fixture_job ();
  RwSession *sure = fixture_job ();

  read_pair (doubtful, RW_PLACE_BOARD, 4.8, -4.4);
  read_pair (sure, RW_PLACE_BOARD, 5.19, -3.2);

  g_auto (Case) one = believe (doubtful);
  g_auto (Case) other = believe (sure);

  g_assert_cmpuint (rw_bench_state_get_n_trim_sets (one.state), ==, 1);
  g_assert_null (computed (&one));
  g_assert_cmpstr (counted (&other)->answer, ==, "none-suits");
}

static void
test_never_offered_as_a_check (void)
{
  g_auto (Case) it = believe (no_window ());
  g_autoptr (RwAdvice) advice = rw_advice_new (it.knowledge, it.state, NULL);

  g_assert_nonnull (computed (&it));
  g_assert_cmpuint (rw_knowledge_get_n_checks (it.knowledge), ==, 0);
  g_assert_cmpuint (rw_advice_get_n_checks (advice), ==, 0);
  g_assert_cmpint (rw_advice_get_kind (advice), ==, RW_ADVICE_REPAIR);
}

/* --- words -------------------------------------------------------------------------------------- */

/* Takes @job. (transfer full) */
static char *
why (RwSession *job)
{
  g_auto (Case) it = believe (job);

  return rw_trim_evidence_why (rw_bench_state_get_trim_set (it.state, 0));
}

static void
test_words_fit_the_pattern (void)
{
  g_autofree char *weak = why (no_window ());
  g_autofree char *still = why (two_positions (4.95, -4.0, 5.15, -4.001));
  g_autofree char *strong = why (two_positions (4.7, -5.6, 4.8, -5.7));
  g_autofree char *strong_still = why (two_positions (4.95, -5.8, 5.15, -5.801));
  g_autofree char *fits = why (window (5.0));

  g_assert_nonnull (strstr (weak, "tired −5 V output"));
  g_assert_nonnull (strstr (weak, "minimum load"));
  g_assert_nonnull (strstr (weak, "contact on its way to the board"));
  g_assert_nonnull (strstr (still, "hardly moves −5 V"));
  g_assert_nonnull (strstr (still, "overloaded"));
  g_assert_nonnull (strstr (strong, "too little load on −5 V"));
  g_assert_nonnull (strstr (strong_still, "nothing draws on it"));
  g_assert_null (fits);
}

static void
test_terminals_are_not_blamed_on_wires (void)
{
  RwSession *job = fixture_job ();

  fixture_setup (job, RW_SAID_YES, RW_SAID_YES, RW_SAID_NOT);
  read_pair (job, RW_PLACE_TERMINALS, 4.95, -3.8);
  fixture_trim (job);
  read_pair (job, RW_PLACE_TERMINALS, 5.15, -3.95);

  g_autofree char *text = why (job);

  g_assert_nonnull (strstr (text, "tired −5 V output"));
  g_assert_null (strstr (text, "contact"));
}

static void
test_still_rail_is_named_alone (void)
{
  g_auto (Case) it = believe (two_positions (4.95, -4.0, 5.15, -4.001));

  g_assert_cmpstr (counted (&it)->title, ==, "At board: None (−5 V is outside at every one)");
}

/* --- knowledge ---------------------------------------------------------------------------------- */

static const char shuffled[] =
    "{\"causes\":[" CAUSE ("low", "2") "],\"computed\":[{\"id\":\"c\",\"title\":\"C\",\"of\":\"trim-window\","
    "\"place\":\"board\",\"outcomes\":[{\"id\":\"this-suits\",\"title\":\"This\"},"
    "{\"id\":\"none-suits\",\"title\":\"None\"},{\"id\":\"lower-suits\",\"title\":\"Lower\"},"
    "{\"id\":\"higher-suits\",\"title\":\"Higher\"}],"
    "\"chance\":{\"default\":[0.4,0.3,0.2,0.1],\"low\":[0.1,0.2,0.3,0.4]}}]}";

static void
test_order_of_the_list_is_free (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge_from (shuffled);
  const RwComputed *it = rw_knowledge_find_computed (knowledge, "trim-window", RW_PLACE_BOARD, NULL);
  const double *other = rw_chance_table_get (&it->chance, "somebody");
  const double *low = rw_chance_table_get (&it->chance, "low");

  g_assert_cmpstr (it->outcomes[RW_TRIM_NONE_SUITS].title, ==, "None");
  g_assert_cmpstr (it->outcomes[RW_TRIM_HIGHER_SUITS].title, ==, "Higher");
  g_assert_cmpfloat_with_epsilon (other[RW_TRIM_NONE_SUITS], 0.3, 1e-12);
  g_assert_cmpfloat_with_epsilon (other[RW_TRIM_HIGHER_SUITS], 0.1, 1e-12);
  g_assert_cmpfloat_with_epsilon (other[RW_TRIM_LOWER_SUITS], 0.2, 1e-12);
  g_assert_cmpfloat_with_epsilon (low[RW_TRIM_THIS_SUITS], 0.1, 1e-12);
  g_assert_null (rw_knowledge_find_computed (knowledge, "trim-window", RW_PLACE_TERMINALS, NULL));
}

static const struct
{
  const char *piece;
  const char *instead;
  const char *where; /* in the message */
  const char *key;
} wrong[] = {
  { "\"id\":\"c\",", "", "computed[0]", "“id”" },
  { "\"title\":\"C\"", "\"title\":\"\"", "computed[0]", "“title”" },
  { "trim-window", "weather", "computed[0]", "“of”" },
  { "\"place\":\"board\"", "\"place\":\"wire\"", "computed[0]", "“place”" },
  { "\"outcomes\":[", "\"outcomes\":[{},", "computed[0]", "“outcomes”" },
  { "\"id\":\"this-suits\"", "\"id\":\"perhaps\"", "computed[0]: outcomes[0]", "“id”" },
  { "\"id\":\"this-suits\"", "\"id\":\"none-suits\"", "computed[0]: outcomes[1]", "“id”" },
  { "\"title\":\"Lower\"", "\"title\":4", "computed[0]: outcomes[2]", "“title”" },
  { "[0.4,0.3,0.2,0.1]", "[0.4,0.6]", "computed[0]: chance", "“default”" },
  { "[0.1,0.2,0.3,0.4]", "[0.1,0.2,0.3,0.5]", "computed[0]: chance", "“low”" },
  { "\"low\":[", "\"nobody\":[", "computed[0]", "“nobody”" },
};

static void
test_wrong_entry_is_named (void)
{
  for (guint k = 0; k < G_N_ELEMENTS (wrong); k++)
    {
      const char *at = strstr (shuffled, wrong[k].piece);
      g_autofree char *text = g_strdup_printf ("%.*s%s%s", (int) (at - shuffled), shuffled,
                                               wrong[k].instead, at + strlen (wrong[k].piece));
      g_autoptr (GError) error = NULL;
      g_autoptr (RwKnowledge) knowledge = fixture_try_knowledge (text, &error);

      g_assert_null (knowledge);
      g_test_message ("%s", error->message);
      g_assert_error (error, RW_KNOWLEDGE_ERROR, RW_KNOWLEDGE_ERROR_FORMAT);
      g_assert_nonnull (strstr (error->message, wrong[k].where));
      g_assert_nonnull (strstr (error->message, wrong[k].key));
    }
}

/* Without an entry for the place, a window is nothing to the beliefs. */
static void
test_no_entry_no_evidence (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge ();
  g_autoptr (RwSession) job = no_window ();
  g_autoptr (RwBenchState) state = rw_bench_state_new (job);
  g_autoptr (RwBelief) belief = rw_belief_new (knowledge, state);

  g_assert_nonnull (rw_trim_evidence_find (state));
  for (guint i = 0; i < rw_belief_get_n_evidence (belief); i++)
    g_assert_cmpint (rw_belief_get_evidence (belief, i)->kind, !=, RW_EVIDENCE_COMPUTED);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define TEST(name, f) g_test_add_func ("/trim evidence/" name, f)
  TEST ("no window blames the rails that drifted apart", test_no_window_blames_the_rails);
  TEST ("a window above blames a low trim", test_window_above_blames_a_low_trim);
  TEST ("a window below blames a high trim", test_window_below_blames_a_high_trim);
  TEST ("standing in the window blames nobody", test_standing_in_the_window_blames_nobody);
  TEST ("on the edge of the window counts as both", test_edge_counts_as_both);
  TEST ("a gap within the doubt proves little", test_gap_within_the_doubt_proves_little);
  TEST ("a rail not read says nothing", test_rail_not_read_says_nothing);
  TEST ("the board out says nothing", test_board_out_says_nothing);
  TEST ("the newest place counts alone", test_newest_place_counts_alone);
  TEST ("a repair that fixed outdates it", test_repair_outdates_it);
  TEST ("a turn outdates where the screw stands", test_turn_outdates_where_it_stands);
  TEST ("one position must be sure", test_one_position_must_be_sure);
  TEST ("it is never offered as a check", test_never_offered_as_a_check);
  TEST ("the words fit the pattern", test_words_fit_the_pattern);
  TEST ("at the terminals no wire is blamed", test_terminals_are_not_blamed_on_wires);
  TEST ("a rail that stands still is named alone", test_still_rail_is_named_alone);
  TEST ("the order of the list is free", test_order_of_the_list_is_free);
  TEST ("a wrong entry is named", test_wrong_entry_is_named);
  TEST ("no entry, no evidence", test_no_entry_no_evidence);
#undef TEST
  return g_test_run ();
}
