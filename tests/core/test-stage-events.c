/* test-stage-events.c: stages as events enter, block, pass, leave and skip them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "rw-stage-record.h"
#include "rw-warm-up.h"
#include "stage-play.h"

#define LOOK_DONE "read look; a stage-plug-out yes; a stage-earth-good yes; a stage-mains-covered yes; " \
                  "a stage-looks-sound yes; "
#define BARE_DONE "off out; read bare-supply; a stage-dummy-load yes; on; r p5 terminals 5.05; r p12 terminals 12.0; " \
                  "r m5 terminals -5.0; ac p5 terminals 0.010; off; "
#define FIT_DONE "read fit-board; a stage-rails-fallen yes; a stage-key-checked yes; a stage-own-board yes; in; "
#define POWER_DONE "read first-power; on; r p5 board 5.02; r m5 board -5.0; "
#define LOAD_DONE "read under-load; r p5 terminals 5.08; r p12 terminals 12.0; r m5 terminals -5.0; r p5 board 5.02; " \
                  "r p12 board 12.0; r m5 board -5.0; r p5 wire 0.040; r gnd wire 0.020; ac p5 board 0.010; "

static RwStageStatus
status_of (const char *commands,
           RwStage     stage)
{
  g_autoptr (RwStages) stages = stage_play (commands, 0);

  return stages->stages[stage].status;
}

static void
test_nothing_begun (void)
{
  g_autoptr (RwStages) stages = stage_play ("r p5 board 5.02", 0);
  const RwAsked *spot = NULL;
  const RwQuestioned *question = NULL;

  g_assert_cmpint (stages->current, ==, -1);
  for (guint i = 0; i < RW_N_STAGES; i++)
    g_assert_cmpint (stages->stages[i].status, ==, RW_STAGE_AHEAD);
  g_assert_cmpuint (stages->unproven->len, ==, 0);
  rw_stages_get_next (stages, &spot, &question);
  g_assert_true (spot == NULL && question == NULL);
}

/* Every stage states its hazard, so every stage is blocked until it was read. */
static void
test_unread_hazard_blocks (void)
{
  for (guint i = 0; i < RW_N_STAGES; i++)
    {
      const char *id = rw_stage_to_id ((RwStage) i);
      g_autofree char *entered = g_strdup_printf ("off out; s %s", id);
      g_autofree char *against = g_strdup_printf ("off out; s %s; against %s I know it", id, id);
      g_autoptr (RwStages) plain = stage_play (entered, 0), pushed = stage_play (against, 0);

      g_assert_cmpint (plain->stages[i].status, ==, RW_STAGE_BLOCKED);
      g_assert_cmpint (pushed->stages[i].status, ==, RW_STAGE_BLOCKED);
      g_assert_cmpstr (rw_stages_get_reason (pushed, (RwStage) i)->id, ==, "hazard-unread");
      g_assert_true (rw_stages_get_reason (pushed, (RwStage) i)->hard);
    }
}

static void
test_read_unblocks_and_lasts (void)
{
  g_assert_cmpint (status_of ("off; s look; read look", RW_STAGE_LOOK), ==, RW_STAGE_CURRENT);
  g_assert_cmpint (status_of ("off; read look", RW_STAGE_LOOK), ==, RW_STAGE_CURRENT);
  g_assert_cmpint (status_of ("off; read look; s bare-supply; s look", RW_STAGE_LOOK), ==, RW_STAGE_CURRENT);
  g_assert_cmpint (status_of ("off; read look; s bare-supply", RW_STAGE_BARE_SUPPLY), ==, RW_STAGE_BLOCKED);
  g_assert_cmpint (status_of ("off; s look; read look; undo", RW_STAGE_LOOK), ==, RW_STAGE_BLOCKED);
}

/* A stop is passed with a reason, kept with what had been advised; without one it is not. */
static void
test_against_advice (void)
{
  const char *start = "off out; on; r p5 terminals 5.44; off; s fit-board; read fit-board; ";
  g_autofree char *reasoned = g_strconcat (start, "against fit-board it was always so", NULL);
  g_autofree char *empty = g_strconcat (start, "against fit-board    ", NULL);
  g_autoptr (RwStages) stages = stage_play (reasoned, 0);
  const RwAgainst *against = &g_array_index (stages->against, RwAgainst, 0);

  g_assert_cmpint (status_of (start, RW_STAGE_FIT_BOARD), ==, RW_STAGE_BLOCKED);
  g_assert_cmpint (status_of (empty, RW_STAGE_FIT_BOARD), ==, RW_STAGE_BLOCKED);
  g_assert_cmpint (stages->stages[RW_STAGE_FIT_BOARD].status, ==, RW_STAGE_CURRENT);
  g_assert_cmpuint (stages->against->len, ==, 1);
  g_assert_cmpint (against->stage, ==, RW_STAGE_FIT_BOARD);
  g_assert_nonnull (strstr (against->why, "it was always so"));
  g_assert_nonnull (strstr (against->advice, "5.44"));
  g_assert_true (stage_play_find (stages, RW_STAGE_FIT_BOARD, "bare-beyond")->covered);
}

/* What was known is covered, at the next stage too; a newer reading is not. */
static void
test_against_covers_what_was_known (void)
{
  const char *start = "off out; on; r p5 terminals 5.44; off; read fit-board; against fit-board so be it; ";
  g_autofree char *further = g_strconcat (start, "in; read first-power", NULL);
  g_autofree char *worse = g_strconcat (start, "on; r p5 terminals 5.47; off", NULL);

  g_assert_cmpint (status_of (further, RW_STAGE_FIRST_POWER), ==, RW_STAGE_CURRENT);
  g_assert_cmpint (status_of (worse, RW_STAGE_FIT_BOARD), ==, RW_STAGE_BLOCKED);
}

static void
test_danger_blocks_the_current_stage (void)
{
  const char *start = "off out; off in; on; read under-load; ";
  g_autofree char *good = g_strconcat (start, "r p5 board 5.0", NULL);
  g_autofree char *bad = g_strconcat (start, "r p5 board 5.0; r p5 board 5.9", NULL);

  g_assert_cmpint (status_of (good, RW_STAGE_UNDER_LOAD), ==, RW_STAGE_CURRENT);
  g_assert_cmpint (status_of (bad, RW_STAGE_UNDER_LOAD), ==, RW_STAGE_BLOCKED);
}

/* From the first stage to under load, everything answered: all done, nothing unproven. */
static void
test_orderly_job_is_done (void)
{
  g_autoptr (RwStages) stages
      = stage_play (LOOK_DONE BARE_DONE FIT_DONE POWER_DONE LOAD_DONE "read trim", 0);

  for (guint i = 0; i < RW_STAGE_TRIM; i++)
    {
      if (stages->stages[i].status != RW_STAGE_DONE)
        g_test_message ("%s: %s", rw_stage_to_id ((RwStage) i),
                        rw_stages_get_reason (stages, (RwStage) i) != NULL
                            ? rw_stages_get_reason (stages, (RwStage) i)->text
                            : "");
      g_assert_cmpint (stages->stages[i].status, ==, RW_STAGE_DONE);
    }
  g_assert_cmpint (stages->stages[RW_STAGE_TRIM].status, ==, RW_STAGE_CURRENT);
  g_assert_cmpint (stages->stages[RW_STAGE_TRIM].gate, ==, RW_GATE_OPEN);
  g_assert_cmpuint (stages->unproven->len, ==, 0);
}

/* A quick job: what was skipped is said once a stage, and it stops nothing. */
static void
test_quick_job (void)
{
  g_autoptr (RwStages) stages = stage_play ("on in; read under-load; r p5 board 5.02", 0);

  g_assert_cmpint (stages->stages[RW_STAGE_UNDER_LOAD].status, ==, RW_STAGE_CURRENT);
  g_assert_cmpint (stages->stages[RW_STAGE_UNDER_LOAD].gate, ==, RW_GATE_OPEN);
  g_assert_cmpuint (stages->unproven->len, ==, 4);
  for (guint i = 0; i < stages->unproven->len; i++)
    {
      const RwUnproven *unproven = &g_array_index (stages->unproven, RwUnproven, i);

      g_assert_cmpint (unproven->stage, ==, (RwStage) i);
      g_assert_cmpint (stages->stages[i].status, ==, RW_STAGE_SKIPPED);
      g_assert_cmpstr (unproven->text, ==, stages->stages[i].words->unproven);
    }
}

/* Readings taken without a word of stages count all the same. */
static void
test_facts_without_entering (void)
{
  g_autoptr (RwStages) stages
      = stage_play ("off out; on; a stage-dummy-load yes; r p5 terminals 5.05; r p12 terminals 12.0; r m5 terminals -5.0; "
                    "ac p5 terminals 0.01; off; in; s first-power", 0);

  g_assert_cmpint (stages->stages[RW_STAGE_BARE_SUPPLY].status, ==, RW_STAGE_DONE);
  g_assert_cmpint (stages->stages[RW_STAGE_LOOK].status, ==, RW_STAGE_SKIPPED);
}

static void
test_left_open (void)
{
  g_autoptr (RwStages) stages = stage_play ("off out; read bare-supply; on; r p5 terminals 5.05; off; s fit-board", 0);
  const RwUnproven *unproven = NULL;

  g_assert_cmpint (stages->stages[RW_STAGE_BARE_SUPPLY].status, ==, RW_STAGE_LEFT);
  for (guint i = 0; i < stages->unproven->len; i++)
    if (g_array_index (stages->unproven, RwUnproven, i).stage == RW_STAGE_BARE_SUPPLY)
      unproven = &g_array_index (stages->unproven, RwUnproven, i);
  g_assert_nonnull (unproven);
  g_assert_nonnull (strstr (unproven->text, "+12 V"));
  g_assert_null (strstr (unproven->text, "+5 V, terminals, board out;"));
}

/* The trim makes every reading stale, with the board out as well; power makes none. */
static void
test_what_is_asked_follows_the_trim (void)
{
  g_autoptr (RwStages) before = stage_play (BARE_DONE "in; on; " LOAD_DONE, 0);
  g_autoptr (RwStages) cycled = stage_play (BARE_DONE "in; on; " LOAD_DONE "off; on", 0);
  g_autoptr (RwStages) turned = stage_play (BARE_DONE "in; on; " LOAD_DONE "trim", 0);

  g_assert_cmpuint (before->stages[RW_STAGE_UNDER_LOAD].n_open, ==, 0);
  g_assert_cmpuint (cycled->stages[RW_STAGE_UNDER_LOAD].n_open, ==, 0);
  g_assert_cmpuint (turned->stages[RW_STAGE_UNDER_LOAD].n_open, ==, 9);
  g_assert_cmpint (g_array_index (turned->stages[RW_STAGE_RECHECK].spots, RwAsked, 0).state, ==, RW_ASKED_STALE);
}

static void
test_next_in_order (void)
{
  g_autoptr (RwStages) stages = stage_play ("off out; read bare-supply; on; r p5 terminals 5.05", 0);
  g_autoptr (RwStages) look = stage_play ("off; read look; a stage-plug-out yes", 0);
  const RwAsked *spot = NULL;
  const RwQuestioned *question = NULL;

  rw_stages_get_next (stages, &spot, &question);
  g_assert_cmpstr (spot->rail_id, ==, "p12");
  g_assert_true (spot->bare);
  rw_stages_get_next (look, &spot, &question);
  g_assert_null (spot);
  g_assert_cmpstr (question->question->id, ==, "stage-earth-good");
}

/* Entering a stage again asks its questions again. */
static void
test_answers_last_until_the_next_visit (void)
{
  g_autoptr (RwStages) once = stage_play ("off out; read fit-board; a stage-rails-fallen yes; s first-power", 0);
  g_autoptr (RwStages) again
      = stage_play ("off out; read fit-board; a stage-rails-fallen yes; s first-power; s fit-board", 0);

  g_assert_cmpint (g_array_index (once->stages[RW_STAGE_FIT_BOARD].questions, RwQuestioned, 0).answer, ==, RW_ANSWER_YES);
  g_assert_cmpint (g_array_index (again->stages[RW_STAGE_FIT_BOARD].questions, RwQuestioned, 0).answer, ==,
                   RW_ANSWER_NONE);
}

/* --- warm-up ------------------------------------------------------------------------------------ */

#define WARM "off in; t 10; on; t 10; s warm-up; "

static void
assert_minutes (const RwStages     *stages,
                const RwAskedState *wanted)
{
  const GArray *spots = stages->stages[RW_STAGE_WARM_UP].spots;

  g_assert_cmpuint (spots->len, ==, 5);
  for (guint i = 0; i < spots->len; i++)
    g_assert_cmpint (g_array_index (spots, RwAsked, i).state, ==, wanted[i]);
}

static void
test_warm_up_minutes (void)
{
  static const struct
  {
    const char  *events;
    double       now;
    RwAskedState wanted[5];
    double       next;
  } cases[] = {
    { WARM, 10, { RW_ASKED_DUE, RW_ASKED_LATER, RW_ASKED_LATER, RW_ASKED_LATER, RW_ASKED_LATER }, 250 },
    { WARM "t 20; r p5 board 5.0", 20, { RW_ASKED_READ, RW_ASKED_LATER, RW_ASKED_LATER, RW_ASKED_LATER, RW_ASKED_LATER }, 250 },
    { WARM, 249, { RW_ASKED_MISSED, RW_ASKED_LATER, RW_ASKED_LATER, RW_ASKED_LATER, RW_ASKED_LATER }, 250 },
    { WARM, 250, { RW_ASKED_MISSED, RW_ASKED_DUE, RW_ASKED_LATER, RW_ASKED_LATER, RW_ASKED_LATER }, 730 },
    { WARM "t 130; r p5 board 5.0", 0, { RW_ASKED_READ, RW_ASKED_LATER, RW_ASKED_LATER, RW_ASKED_LATER, RW_ASKED_LATER }, 250 },
    { WARM "t 131; r p5 board 5.0", 0, { RW_ASKED_MISSED, RW_ASKED_LATER, RW_ASKED_LATER, RW_ASKED_LATER, RW_ASKED_LATER }, 250 },
    { WARM "t 260; r p5 board 5.0", 0, { RW_ASKED_MISSED, RW_ASKED_READ, RW_ASKED_LATER, RW_ASKED_LATER, RW_ASKED_LATER }, 730 },
    { WARM "t 260; o p5 board", 0, { RW_ASKED_MISSED, RW_ASKED_OVER, RW_ASKED_LATER, RW_ASKED_LATER, RW_ASKED_LATER }, 730 },
    { WARM "t 310; o p5 board; t 400; r p5 board 5", 0,
      { RW_ASKED_MISSED, RW_ASKED_READ, RW_ASKED_LATER, RW_ASKED_LATER, RW_ASKED_LATER }, 730 },
    { WARM, 4511, { RW_ASKED_MISSED, RW_ASKED_MISSED, RW_ASKED_MISSED, RW_ASKED_MISSED, RW_ASKED_MISSED }, NAN },
    { WARM "t 20; r p5 board 5; t 310; r p5 board 5; t 910; r p5 board 5; t 1810; r p5 board 5; t 3610; r p5 board 5", 0,
      { RW_ASKED_READ, RW_ASKED_READ, RW_ASKED_READ, RW_ASKED_READ, RW_ASKED_READ }, NAN },
    { WARM "t 20; r p5 board 5; off; t 400; on", 0,
      { RW_ASKED_DUE, RW_ASKED_LATER, RW_ASKED_LATER, RW_ASKED_LATER, RW_ASKED_LATER }, 640 },
    { WARM "t 20; r p5 board 5; trim", 0,
      { RW_ASKED_DUE, RW_ASKED_LATER, RW_ASKED_LATER, RW_ASKED_LATER, RW_ASKED_LATER }, 250 },
    { "off in; s warm-up", 100,
      { RW_ASKED_UNREAD, RW_ASKED_UNREAD, RW_ASKED_UNREAD, RW_ASKED_UNREAD, RW_ASKED_UNREAD }, NAN },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (RwStages) stages = stage_play (cases[i].events, cases[i].now);

      g_test_message ("%s", cases[i].events);
      assert_minutes (stages, cases[i].wanted);
      if (isnan (cases[i].next))
        g_assert_true (isnan (stages->next_due));
      else
        g_assert_cmpfloat (stages->next_due, ==, cases[i].next);
    }
}

/* The bring-up and the watch of the drift count the same readings for the same minutes, whenever they were taken. */
static void
test_warm_up_has_one_table (void)
{
  for (int t = 0; t < 5400; t += 47)
    {
      g_autofree char *commands = g_strdup_printf ("off in; t 10; on; t 10; s warm-up; t %d; r p5 board 5", 11 + t);
      g_autoptr (RwSession) session = stage_play_session (commands);
      g_autoptr (RwStages) stages = stage_play (commands, 0);
      const RwWarmUp read = rw_warm_up_read (session, "p5", RW_PLACE_BOARD, rw_session_get_end (session));
      const GArray *spots = stages->stages[RW_STAGE_WARM_UP].spots;

      for (guint i = 0; i < RW_WARM_UP_N_POINTS; i++)
        {
          const RwAsked *asked = &g_array_index (spots, RwAsked, i);
          const RwWarmUpPoint *point = &read.points[i];

          g_assert_cmpfloat (asked->minutes, ==, point->minutes);
          g_assert_cmpuint (asked->n, ==, point->n);
          g_assert_cmpint (asked->state == RW_ASKED_READ, ==, point->state == RW_WARM_UP_IN);
          g_assert_cmpint (asked->state == RW_ASKED_LATER, ==, point->state == RW_WARM_UP_LATER);
        }
    }
}

/* An hour done stays done, whatever the cold starts after it. */
static void
test_warm_up_done_survives_cold_starts (void)
{
  const char *hour = "off in; on; read warm-up; r p5 board 5; t 310; r p5 board 5; t 910; r p5 board 5; t 1810; "
                     "r p5 board 5; t 3610; r p5 board 5; a stage-connector-cool yes; ";
  g_autofree char *after = g_strconcat (hour, "s exercise; off; on; off; on", NULL);
  g_autofree char *short_of = g_strconcat ("off in; on; read warm-up; r p5 board 5; a stage-connector-cool yes; ",
                                           "s exercise", NULL);

  g_assert_cmpint (status_of (after, RW_STAGE_WARM_UP), ==, RW_STAGE_DONE);
  g_assert_cmpint (status_of (short_of, RW_STAGE_WARM_UP), ==, RW_STAGE_LEFT);
}

/* --- the record --------------------------------------------------------------------------------- */

static guint
count_lines (const GArray *lines,
             RwRecordKind  kind,
             const char   *words)
{
  guint n = 0;

  for (guint i = 0; i < lines->len; i++)
    n += g_array_index (lines, RwRecordLine, i).kind == kind
         && (words == NULL || strstr (g_array_index (lines, RwRecordLine, i).text, words) != NULL);
  return n;
}

/* Passed, skipped, gone on against advice and why, unproven; nothing of a stage still ahead. */
static void
test_record (void)
{
  g_autoptr (RwStages) stages
      = stage_play ("off out; read look; s fit-board; read fit-board; against fit-board it was always so; s first-power", 0);
  g_autoptr (RwStages) none = stage_play ("on in", 0);
  g_autoptr (GArray) lines = rw_stage_record_list (stages), nothing = rw_stage_record_list (none);

  g_assert_cmpuint (nothing->len, ==, 0);
  g_assert_cmpuint (count_lines (lines, RW_RECORD_STAGE, NULL), ==, 4);
  g_assert_cmpuint (count_lines (lines, RW_RECORD_AGAINST, "it was always so"), ==, 1);
  g_assert_cmpuint (count_lines (lines, RW_RECORD_ADVICE, "Do not fit the board"), ==, 1);
  g_assert_cmpuint (count_lines (lines, RW_RECORD_UNPROVEN, NULL), ==, stages->unproven->len);
  g_assert_cmpuint (count_lines (lines, RW_RECORD_STOP, "Read what can hurt"), ==, 1);
  g_assert_cmpint (g_array_index (lines, RwRecordLine, 1).status, ==, RW_STAGE_LEFT);
  g_assert_cmpint (g_array_index (lines, RwRecordLine, 2).status, ==, RW_STAGE_SKIPPED);
  for (guint i = 0; i + 1 < lines->len; i++)
    g_assert_false (g_array_index (lines, RwRecordLine, i).kind == RW_RECORD_HEADING
                    && g_array_index (lines, RwRecordLine, i + 1).kind == RW_RECORD_HEADING);
  g_assert_cmpint (g_array_index (lines, RwRecordLine, lines->len - 1).kind, !=, RW_RECORD_HEADING);
}

/* --- complaints --------------------------------------------------------------------------------- */

static const char *
shout (const char *id,
       gpointer    data)
{
  return g_str_equal (id, "resets") ? "RESETS BY ITSELF" : id;
}

/* Closing names each complaint that is still there; a reason goes past those known by then, a new one objects again. */
static void
test_closing_names_complaints (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RwStageWords) words = rw_stage_words_load_shipped (&error);
  g_autoptr (RwSession) session = stage_play_session ("off in; y resets; y hum; read close");
  g_autoptr (RwStages) stages = rw_stages_new_named (session, words, 0, shout, NULL);
  const RwStageState *close = &stages->stages[RW_STAGE_CLOSE];
  g_autoptr (RwStages) passed = stage_play ("off in; y resets; read close; against close the owner wants it", 0);
  g_autoptr (RwStages) another = stage_play ("off in; y resets; read close; against close the owner wants it; y hum", 0);

  g_assert_no_error (error);
  g_assert_cmpint (close->status, ==, RW_STAGE_BLOCKED);
  g_assert_nonnull (strstr (g_array_index (close->reasons, RwGateReason, 0).text, "“RESETS BY ITSELF”"));
  g_assert_nonnull (strstr (g_array_index (close->reasons, RwGateReason, 1).text, "“hum”"));
  g_assert_false (g_array_index (close->reasons, RwGateReason, 0).hard);
  g_assert_cmpint (passed->stages[RW_STAGE_CLOSE].status, ==, RW_STAGE_CURRENT);
  g_assert_nonnull (strstr (g_array_index (passed->against, RwAgainst, 0).advice, "“resets”"));
  g_assert_cmpint (another->stages[RW_STAGE_CLOSE].status, ==, RW_STAGE_BLOCKED);
}

/* --- the words ---------------------------------------------------------------------------------- */

static void
test_ids (void)
{
  RwStage stage = RW_STAGE_CLOSE;

  for (guint i = 0; i < RW_N_STAGES; i++)
    {
      g_assert_true (rw_stage_from_id (rw_stage_to_id ((RwStage) i), &stage));
      g_assert_cmpint (stage, ==, (RwStage) i);
    }
  g_assert_false (rw_stage_from_id ("lift-off", &stage));
  g_assert_false (rw_stage_from_id (NULL, &stage));
}

/* A stage of another program is kept in the file, and says nothing here. */
static void
test_stranger_is_ignored (void)
{
  g_autoptr (RwStages) stages = stage_play ("off; read look; s lift-off", 0);

  g_assert_cmpint (stages->current, ==, RW_STAGE_LOOK);
}

/* The shipped file with one thing changed is refused with a message that names the key. */
static void
test_wrong_files_are_refused (void)
{
  static const struct
  {
    const char *from, *to, *key;
  } changes[] = {
    { "\"id\": \"look\"", "\"id\": \"lock\"", "“id”" },
    { "\"hazard\": \"low-voltage\"", "\"hazard\": \"bad\"", "“hazard”" },
    { "\"caution\": \"Mains kills", "\"warning\": \"Mains kills", "“caution”" },
    { "\"id\": \"stage-plug-out\"", "\"id\": \"plug-out\"", "“id”" },
    { "\"who\": \"anyone\"", "\"who\": \"nobody\"", "“who”" },
    { "\"no_gate\": \"stop\"", "\"no_gate\": \"go\"", "“no_gate”" },
    { "\"place\": \"terminals\"", "\"place\": \"moon\"", "“place”" },
    { "[0, 5, 15, 30, 60]", "[0, 15, 5]", "“minutes”" },
    { "[0, 5, 15, 30, 60]", "[0, 7, 15]", "“minutes”" },
    { "\"unproven\": \"Nobody looked", "\"proven\": \"Nobody looked", "“unproven”" },
    { "\"stages\": [", "\"stage\": [", "“stages”" },
    { "{\n  \"about\"", "\n  \"about\"", "JSON" },
  };
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "stages.json", NULL);
  g_autofree char *shipped = g_build_filename (g_getenv ("RAILWRIGHT_DATA_DIR"), "stages", "stages.json", NULL);
  g_autofree char *text = NULL;

  g_assert_true (g_file_get_contents (shipped, &text, NULL, NULL));
  for (guint i = 0; i < G_N_ELEMENTS (changes); i++)
    {
      g_autoptr (GString) wrong = g_string_new (text);
      g_autoptr (GError) error = NULL;

      g_assert_cmpuint (g_string_replace (wrong, changes[i].from, changes[i].to, 1), ==, 1);
      g_assert_true (g_file_set_contents (path, wrong->str, -1, NULL));
      g_assert_null (rw_stage_words_load (path, &error));
      g_assert_error (error, RW_STAGE_ERROR, RW_STAGE_ERROR_FORMAT);
      g_assert_nonnull (strstr (error->message, changes[i].key));
    }
  fixture_remove (folder);
}

static void
test_no_file (void)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (rw_stage_words_load ("/nowhere/stages.json", &error));
  g_assert_error (error, RW_STAGE_ERROR, RW_STAGE_ERROR_READ);
}

/* Any events in any order: no crash, and the rules of the header hold. */
static void
test_random_sessions (void)
{
  static const char *const commands[]
      = { "on", "off", "in", "out", "off out", "on in", "trim", "fixed x", "failed x", "undo", "r p5 terminals 5.05",
          "r p5 board 5.0", "r p5 board 5.9", "r m5 board 0.1", "o p5 board", "r gnd wire 0.2", "r x9 board 3",
          "a stage-plug-out no", "a stage-own-board no", "a other yes", "s look", "read look", "s warm-up", "read trim",
          "against trim why not", "y resets", "gone resets", "against close end", "s close", "s fit-board", "read first-power", "s moon" };
  g_autoptr (GRand) random = g_rand_new_with_seed (7);

  for (guint run = 0; run < 150; run++)
    {
      g_autoptr (GString) text = g_string_new (NULL);

      for (guint i = 0; i < 30; i++)
        g_string_append_printf (text, "%s; ", commands[g_rand_int_range (random, 0, G_N_ELEMENTS (commands))]);

      g_autoptr (RwStages) stages = stage_play (text->str, g_rand_double_range (random, 0, 5000));

      for (guint i = 0; i < RW_N_STAGES; i++)
        {
          const RwStageState *state = &stages->stages[i];
          const gboolean current = stages->current == (int) i;
          RwGate worst = RW_GATE_OPEN;

          for (guint k = 0; k < state->reasons->len; k++)
            {
              const RwGateReason *reason = &g_array_index (state->reasons, RwGateReason, k);

              g_assert_true (reason->gate != RW_GATE_OPEN && *reason->text != '\0');
              g_assert_false (reason->hard && reason->covered);
              if (!reason->covered)
                worst = MAX (worst, reason->gate);
            }
          g_assert_cmpint (state->gate, ==, worst);
          g_assert_cmpint (current && worst == RW_GATE_STOP, ==, state->status == RW_STAGE_BLOCKED);
          g_assert_cmpint (current && worst != RW_GATE_STOP, ==, state->status == RW_STAGE_CURRENT);
        }
    }
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/stage-events/nothing-begun-nothing-asked", test_nothing_begun);
  g_test_add_func ("/stage-events/unread-hazard-blocks-whatever-the-reason", test_unread_hazard_blocks);
  g_test_add_func ("/stage-events/read-unblocks-and-lasts", test_read_unblocks_and_lasts);
  g_test_add_func ("/stage-events/against-advice-needs-a-reason-and-is-kept", test_against_advice);
  g_test_add_func ("/stage-events/against-covers-only-what-was-known", test_against_covers_what_was_known);
  g_test_add_func ("/stage-events/danger-blocks-the-current-stage", test_danger_blocks_the_current_stage);
  g_test_add_func ("/stage-events/orderly-job-is-done", test_orderly_job_is_done);
  g_test_add_func ("/stage-events/quick-job-says-what-is-unproven-and-stops-nothing", test_quick_job);
  g_test_add_func ("/stage-events/facts-count-without-entering", test_facts_without_entering);
  g_test_add_func ("/stage-events/left-open-is-unproven", test_left_open);
  g_test_add_func ("/stage-events/what-is-asked-follows-the-trim", test_what_is_asked_follows_the_trim);
  g_test_add_func ("/stage-events/next-comes-in-order", test_next_in_order);
  g_test_add_func ("/stage-events/answers-last-until-the-next-visit", test_answers_last_until_the_next_visit);
  g_test_add_func ("/stage-events/warm-up-minutes", test_warm_up_minutes);
  g_test_add_func ("/stage-events/warm-up-has-one-table", test_warm_up_has_one_table);
  g_test_add_func ("/stage-events/warm-up-done-survives-cold-starts", test_warm_up_done_survives_cold_starts);
  g_test_add_func ("/stage-events/record-tells-what-was-passed-and-what-was-not", test_record);
  g_test_add_func ("/stage-events/closing-names-complaints", test_closing_names_complaints);
  g_test_add_func ("/stage-events/ids-round-trip", test_ids);
  g_test_add_func ("/stage-events/stranger-is-ignored", test_stranger_is_ignored);
  g_test_add_func ("/stage-events/wrong-files-are-refused", test_wrong_files_are_refused);
  g_test_add_func ("/stage-events/missing-file-is-told", test_no_file);
  g_test_add_func ("/stage-events/random-sessions-keep-the-rules", test_random_sessions);
  return g_test_run ();
}
