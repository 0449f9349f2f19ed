/* test-decide.c: a replay asks before each check, from what was known then, and counts fairly.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "rw-decide.h"
#include "rw-journal-reader.h"
#include "rw-skipped.h"

static RwKnowledge *knowledge;

static RwSession *
load (const char *name)
{
  g_autofree char *path = g_build_filename (g_getenv ("RAILWRIGHT_SRC_ROOT"), "demo-sessions", name, NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (RwJournalRead) read = rw_journal_read_file (path, &error);

  g_assert_no_error (error);
  return g_object_ref (read->session);
}

static const char *const demos[] = { "lantern-drift-wiring.rwlog", "foghorn-alley-hum.rwlog", "kelp-gardens-minus-five.rwlog" };

/* A session of its own with the first @n events alone. */
static RwSession *
cut (RwSession *source,
     guint      n)
{
  RwSession *session = rw_session_new (rw_session_header_copy (rw_session_get_header (source)));

  for (guint i = 0; i < n; i++)
    {
      RwEvent copy = rw_event_copy (rw_session_get_event (source, i));

      rw_session_add (session, &copy);
    }
  return session;
}

typedef void (*QuestionFunc) (RwSession        *source,
                              const RwMoment   *moment,
                              RwDecideQuestion *question,
                              gpointer          data);

static void
for_all_questions (QuestionFunc func,
                   gpointer     data)
{
  for (guint d = 0; d < G_N_ELEMENTS (demos); d++)
    {
      g_autoptr (RwSession) source = load (demos[d]);
      g_autoptr (RwChapters) chapters = rw_chapters_new (source, NULL, NULL);
      guint asked = 0;

      for (guint i = 0; i < rw_chapters_get_n_moments (chapters, RW_MOMENT_DECISION); i++)
        {
          const RwMoment *moment = rw_chapters_get_moment (chapters, RW_MOMENT_DECISION, i);
          g_autoptr (RwSession) part = rw_session_new_part (source);

          rw_session_advance (part, moment->n_events);

          g_autoptr (RwDecideQuestion) question
              = rw_decide_question_new (knowledge, part, rw_session_get_event (source, moment->index));

          if (question != NULL)
            {
              asked++;
              func (source, moment, question, data);
            }
        }
      g_test_message ("%s: %u questions", demos[d], asked);
      g_assert_cmpuint (asked, >, 0);
    }
}

static void
check_list (RwSession        *source,
            const RwMoment   *moment,
            RwDecideQuestion *question,
            gpointer          data)
{
  guint *places = data;
  const guint n = rw_decide_question_get_n (question);

  g_assert_cmpuint (n, >=, 2);
  g_assert_cmpuint (n, <=, RW_DECIDE_OPTIONS);
  g_assert_nonnull (rw_decide_question_get_taken (question));
  g_assert_nonnull (rw_decide_question_get_suggested (question));
  g_assert_null (rw_decide_question_get_chosen (question));
  for (guint i = 0; i < n; i++)
    {
      const RwDecideOption *option = rw_decide_question_get (question, i);

      g_assert_true ((option->check == NULL) != (option->repair == NULL));
      g_assert_true (isfinite (option->expected) && option->expected > 0);
      g_assert_cmpuint (strlen (option->why), >, 0);
      places[i] += option->suggested;
      if (i > 0)
        g_assert_cmpint (g_utf8_collate (rw_decide_question_get (question, i - 1)->title, option->title), <=, 0);
    }
}

/* Its place in the list must not give the suggestion away. */
static void
test_the_list_tells_nothing (void)
{
  guint places[RW_DECIDE_OPTIONS] = { 0 };
  guint used = 0, all = 0;

  for_all_questions (check_list, places);
  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    {
      used += places[i] > 0;
      all += places[i];
    }
  g_assert_cmpuint (used, >=, 3);
  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    g_assert_cmpuint (places[i], <, all);
}

static void
check_figures (RwSession        *source,
               const RwMoment   *moment,
               RwDecideQuestion *question,
               gpointer          data)
{
  g_autoptr (RwSession) alone = cut (source, moment->n_events); /* nothing later exists at all */
  g_autoptr (RwBenchState) state = rw_bench_state_new (alone);
  g_autoptr (GHashTable) skipped = rw_skipped_gather (state);
  guint *compared = data;

  if (g_hash_table_size (skipped) > 0)
    return; /* what was set aside and done after all is offered again */

  g_autoptr (RwAdvice) advice = rw_advice_new (knowledge, state, NULL);

  for (guint i = 0; i < rw_decide_question_get_n (question); i++)
    {
      const RwDecideOption *option = rw_decide_question_get (question, i);

      for (guint j = 0; j < rw_advice_get_n_checks (advice); j++)
        if (option->check != NULL && g_str_equal (rw_advice_get_ranked (advice, j)->check->id, option->check->id))
          {
            g_assert_cmpfloat (rw_advice_get_ranked (advice, j)->expected, ==, option->expected);
            g_assert_cmpfloat (rw_advice_get_ranked (advice, j)->minutes, ==, option->minutes);
            ++*compared;
          }
      if (option->suggested && option->check != NULL)
        g_assert_cmpstr (rw_advice_get_check (advice)->check->id, ==, option->check->id);
      if (option->again)
        g_assert_cmpfloat_with_epsilon (option->expected - option->check->minutes, rw_advice_get_expected (advice), 1e-9);
    }
}

static void
test_figures_are_the_cards_and_of_that_moment (void)
{
  guint compared = 0;

  for_all_questions (check_figures, &compared);
  g_assert_cmpuint (compared, >, 20);
}

static void
check_score (RwSession        *source,
             const RwMoment   *moment,
             RwDecideQuestion *question,
             gpointer          data)
{
  double best = INFINITY;

  for (guint i = 0; i < rw_decide_question_get_n (question); i++)
    best = fmin (best, rw_decide_question_get (question, i)->expected);
  for (guint i = 0; i < rw_decide_question_get_n (question); i++)
    {
      const RwDecideOption *option = rw_decide_question_get (question, i);
      const double lost = rw_decide_question_get_lost (question, option);
      RwDecideScore score = { 0 };

      g_assert_cmpfloat (lost, >=, 0);
      if (option->suggested)
        g_assert_cmpfloat (lost, ==, 0);
      else if (option->expected - best >= RW_DECIDE_AS_GOOD)
        g_assert_cmpfloat (lost, ==, option->expected - best);
      question->chosen = (int) i;
      rw_decide_score_add (&score, question);
      g_assert_cmpuint (score.n, ==, 1);
      g_assert_cmpuint (score.n_best, ==, lost == 0);
      g_assert_cmpfloat (score.lost, ==, lost);
      g_assert_cmpfloat (score.taken_lost, ==,
                         rw_decide_question_get_lost (question, rw_decide_question_get_taken (question)));
    }
  question->chosen = -1;
}

static void
test_the_score_is_what_it_costs (void)
{
  RwDecideScore none = { 0 };
  g_autofree char *words = rw_decide_score_say (&none);

  g_assert_cmpstr (words, ==, "No decision has been answered yet.");
  for_all_questions (check_score, NULL);
}

static void
test_what_is_no_check_is_not_asked (void)
{
  g_autoptr (RwSession) source = load (demos[0]);
  g_autoptr (RwSession) part = rw_session_new_part (source);
  RwEvent deeds[] = { rw_event_make_note (1, "x"), rw_event_make_trim (1), rw_event_make_finding (1, "nobody-knows", "it"),
                      rw_event_make_finding (1, "edge-connector-look", RW_SKIPPED_OUTCOME) };

  for (guint i = 0; i < G_N_ELEMENTS (deeds); i++)
    {
      g_assert_null (rw_decide_question_new (knowledge, part, &deeds[i]));
      rw_event_clear (&deeds[i]);
    }
}

/* --- the replay ----------------------------------------------------------------------------------- */

static RwReplay *
replay_of (RwSession *source)
{
  RwReplay *replay = rw_replay_new (source);

  rw_replay_look_for_chapters (replay, NULL, NULL);
  while (rw_chapters_get_n_moments (rw_replay_get_chapters (replay), RW_MOMENT_DECISION) == 0)
    g_main_context_iteration (NULL, TRUE);
  return replay;
}

static void
count_cb (RwSession        *source,
          const RwMoment   *moment,
          RwDecideQuestion *question,
          gpointer          data)
{
  ++*(guint *) data;
}

/* So much had happened when it was decided, and no more. */
static void
assert_is_decision (RwReplay *replay,
                    guint     n_events)
{
  RwChapters *chapters = rw_replay_get_chapters (replay);
  gboolean found = FALSE;

  for (guint i = 0; i < rw_chapters_get_n_moments (chapters, RW_MOMENT_DECISION); i++)
    found = found || rw_chapters_get_moment (chapters, RW_MOMENT_DECISION, i)->n_events == n_events;
  g_assert_true (found);
}

/* Plays to the end, in strides of @seconds, answering everything with the first option. */
static guint
play_through (RwReplay *replay,
              RwDecide *decide,
              double    seconds)
{
  RwSession *source = rw_replay_get_source (replay), *target = rw_replay_get_target (replay);
  guint asked = 0, last = 0;

  rw_replay_seek (replay, 0);
  rw_replay_set_playing (replay, TRUE);
  while (rw_replay_get_playing (replay) || rw_decide_get_question (decide) != NULL)
    {
      const RwDecideQuestion *question = rw_decide_get_question (decide);

      if (question == NULL)
        {
          rw_replay_advance (replay, seconds);
          continue;
        }
      asked++;
      g_assert_false (rw_replay_get_playing (replay));
      g_assert_cmpuint (rw_session_get_n_events (target), ==, question->n_events);
      g_assert_cmpuint (question->n_events, >=, last);
      last = question->n_events;
      assert_is_decision (replay, last);

      /* What was done is still to come. */
      g_assert_cmpuint (last, <, rw_session_get_n_events (source));
      rw_decide_choose (decide, 0);
      g_assert_cmpint (rw_decide_get_question (decide)->chosen, ==, 0);
      rw_decide_go_on (decide);
      if (rw_session_get_n_events (target) == rw_session_get_n_events (source))
        break;
    }
  return asked;
}

static void
test_the_replay_stops_before_each_check (void)
{
  g_autoptr (RwSession) source = load (demos[0]);
  g_autoptr (RwReplay) replay = replay_of (source);
  g_autoptr (RwDecide) decide = rw_decide_new (replay, knowledge);
  guint all = 0, others = 0;

  /* Off, it never stops. */
  g_assert_cmpuint (play_through (replay, decide, 5), ==, 0);
  for_all_questions (count_cb, &all);
  for (guint d = 1; d < G_N_ELEMENTS (demos); d++)
    {
      g_autoptr (RwSession) other = load (demos[d]);
      g_autoptr (RwReplay) second = replay_of (other);
      g_autoptr (RwDecide) asker = rw_decide_new (second, knowledge);

      rw_decide_set_on (asker, TRUE);
      others += play_through (second, asker, 3);
    }
  rw_decide_set_on (decide, TRUE);
  g_assert_cmpuint (play_through (replay, decide, 0.1) + others, ==, all);
  g_assert_cmpuint (play_through (replay, decide, 1e6) + others, ==, all); /* in one stride, none is passed over */
  g_assert_cmpuint (rw_decide_get_score (decide)->n, ==, 2 * (all - others));
}

static void
test_moving_the_replay_drops_the_question (void)
{
  g_autoptr (RwSession) source = load (demos[0]);
  g_autoptr (RwReplay) replay = replay_of (source);
  g_autoptr (RwDecide) decide = rw_decide_new (replay, knowledge);

  rw_decide_set_on (decide, TRUE);
  rw_replay_set_playing (replay, TRUE);
  rw_replay_advance (replay, 1e6);
  g_assert_nonnull (rw_decide_get_question (decide));

  const guint at = rw_decide_get_question (decide)->n_events;

  rw_replay_seek (replay, rw_replay_get_length (replay));
  g_assert_null (rw_decide_get_question (decide)); /* and a paused replay asks nothing */
  rw_replay_seek (replay, 0);
  rw_replay_set_playing (replay, TRUE);
  rw_replay_advance (replay, 1e6);
  g_assert_cmpuint (rw_decide_get_question (decide)->n_events, ==, at);
  rw_decide_choose (decide, 0);
  rw_decide_choose (decide, 1); /* once only */
  g_assert_cmpint (rw_decide_get_question (decide)->chosen, ==, 0);
  g_assert_cmpuint (rw_decide_get_score (decide)->n, ==, 1);
  rw_decide_set_on (decide, FALSE);
  g_assert_null (rw_decide_get_question (decide));
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (GError) error = NULL;

  g_test_init (&argc, &argv, NULL);
  knowledge = rw_knowledge_load (NULL, &error);
  g_assert_no_error (error);
  g_test_add_func ("/decide/the list holds both and tells neither", test_the_list_tells_nothing);
  g_test_add_func ("/decide/the figures are the card's, of that moment", test_figures_are_the_cards_and_of_that_moment);
  g_test_add_func ("/decide/the score is what it costs", test_the_score_is_what_it_costs);
  g_test_add_func ("/decide/what is no check is not asked", test_what_is_no_check_is_not_asked);
  g_test_add_func ("/decide/the replay stops before each check", test_the_replay_stops_before_each_check);
  g_test_add_func ("/decide/moving the replay drops the question", test_moving_the_replay_drops_the_question);

  const int status = g_test_run ();

  rw_knowledge_unref (knowledge);
  return status;
}
