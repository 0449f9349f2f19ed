/* test-chapters.c: chapters and moments of sessions made by hand, and what holds for any session.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <string.h>

#include "fixtures.h"
#include "rw-bench-state.h"
#include "rw-chapters.h"

static void
add (RwSession *session,
     RwEvent    event)
{
  rw_session_add (session, &event);
}

static void
read_rail (RwSession  *session,
           double      t,
           const char *rail,
           double      value)
{
  const RwReading reading = rw_reading_make (rail, RW_PLACE_BOARD, RW_KIND_DC, value, 0.001, "m1");

  add (session, rw_event_make_reading (t, &reading));
}

/* "kind@t title" of each chapter, in lines. */
static char *
list (const RwChapters *chapters)
{
  static const char *const kinds[] = { "start", "mark", "stage", "trim" };
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < rw_chapters_get_n (chapters); i++)
    {
      const RwChapter *chapter = rw_chapters_get (chapters, i);

      g_string_append_printf (text, "%s@%g %s\n", kinds[chapter->kind], chapter->t, chapter->title);
    }
  return g_string_free (text, FALSE);
}

static void
assert_chapters (RwSession  *session,
                 const char *expected)
{
  g_autoptr (RwChapters) chapters = rw_chapters_new (session, NULL, NULL);
  g_autofree char *found = list (chapters);

  g_assert_cmpstr (found, ==, expected);
}

static void
test_marks (void)
{
  g_autoptr (RwSession) session = fixture_session ();

  add (session, rw_event_make_note (0, "came in"));
  add (session, rw_event_make_mark (5, "reset seen"));
  add (session, rw_event_make_note (6, "again"));
  add (session, rw_event_make_mark (9, "reset seen"));
  add (session, rw_event_make_mark (12, "low at the board"));
  add (session, rw_event_make_mark (20, "reset seen"));
  assert_chapters (session, "start@0 The beginning\n"
                            "mark@5 reset seen (2 times)\n"
                            "mark@12 low at the board\n"
                            "mark@20 reset seen\n");
}

static void
test_first (void)
{
  g_autoptr (RwSession) session = fixture_session (), empty = fixture_session ();

  add (session, rw_event_make_mark (3, "first of all"));
  read_rail (session, 4, "p5", 5.02);
  assert_chapters (session, "mark@0 first of all\n");
  assert_chapters (empty, "start@0 The beginning\n");
}

/* Turns with readings between them are one chapter; a repair or switching off ends the run; a mark that announces a
 * turn heads it. */
static void
test_runs (void)
{
  g_autoptr (RwSession) session = fixture_session ();

  read_rail (session, 1, "p5", 4.8);
  for (guint i = 0; i < 3; i++)
    {
      add (session, rw_event_make_trim (10 + 10 * i));
      read_rail (session, 15 + 10 * i, "p5", 4.9 + 0.05 * i);
    }
  add (session, rw_event_make_repair (40, "trim-low", RW_REPAIR_NO_CHANGE));
  add (session, rw_event_make_trim (50));
  read_rail (session, 55, "p5", 5.05);
  add (session, rw_event_make_mark (60, "Could the screw lift it?"));
  add (session, rw_event_make_trim (60));
  read_rail (session, 62, "m5", -4.6);
  add (session, rw_event_make_trim (64));
  add (session, rw_event_make_mark (70, "now the wiring"));
  read_rail (session, 71, "m5", -4.6);
  add (session, rw_event_make_trim (80));
  assert_chapters (session, "start@0 The beginning\n"
                            "trim@10 3 turns of the trim\n"
                            "trim@50 1 turn of the trim\n"
                            "mark@60 Could the screw lift it?\n"
                            "mark@70 now the wiring\n"
                            "trim@80 1 turn of the trim\n");
}

static char *
name_stage (const RwEvent *event,
            gpointer       data)
{
  return g_strdup_printf ("Stage %s", event->stage.id);
}

static void
test_stages (void)
{
  g_autoptr (RwSession) session = fixture_session ();

  add (session, rw_event_make_stage (2, "look"));
  add (session, rw_event_make_stage_read (30, "bare-supply"));
  add (session, rw_event_make_stage (31, "bare-supply"));
  add (session, rw_event_make_retract (32, rw_session_get_event (session, 0)->n));

  g_autoptr (RwChapters) chapters = rw_chapters_new (session, name_stage, NULL);
  g_autofree char *found = list (chapters);

  g_assert_cmpstr (found, ==, "start@0 The beginning\nstage@30 Stage bare-supply\n");
}

static void
test_changes (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  g_autoptr (RwProfile) profile = fixture_profile ();

  read_rail (session, 1, "p5", 4.6);
  add (session, rw_event_make_finding (2, "edge-connector-look", "bright"));
  add (session, rw_event_make_trim (10));
  read_rail (session, 12, "p5", 5.05);
  read_rail (session, 14, "p12", 12);

  g_autoptr (RwChapters) chapters = rw_chapters_new (session, NULL, NULL);
  const RwChapter *start = rw_chapters_get (chapters, 0), *trim = rw_chapters_get (chapters, 1);
  g_autofree char *first = rw_chapter_describe_change (start, profile);
  g_autofree char *second = rw_chapter_describe_change (trim, profile);

  g_assert_cmpstr (first, ==, "1 reading, 1 finding, +5 V: outside");
  g_assert_cmpstr (second, ==, "2 readings, +5 V: outside → inside, +12 V: inside");

  g_autofree char *without = rw_chapter_describe_change_without (trim, profile, "p5");

  g_assert_cmpstr (without, ==, "2 readings, +12 V: inside");
}

static void
test_a_title_that_names_a_hidden_rail_is_kept_back (void)
{
  g_autoptr (RwProfile) profile = fixture_profile ();
  char title[] = "+5 is low at the board";
  const RwChapter low = { .title = title };
  g_autofree char *kept_back = rw_chapter_dup_title_without (&low, profile, "p5");
  g_autofree char *other = rw_chapter_dup_title_without (&low, profile, "p12");
  g_autofree char *all = rw_chapter_dup_title_without (&low, profile, NULL);

  g_assert_cmpstr (kept_back, ==, "…");
  g_assert_cmpstr (other, ==, low.title);
  g_assert_cmpstr (all, ==, low.title);
}

static void
assert_moments (const RwChapters *chapters,
                RwMomentKind      kind,
                const char       *expected)
{
  g_autoptr (GString) found = g_string_new (NULL);

  for (guint i = 0; i < rw_chapters_get_n_moments (chapters, kind); i++)
    {
      const RwMoment *moment = rw_chapters_get_moment (chapters, kind, i);

      g_string_append_printf (found, "%u@%g>%u%s ", moment->n_events, moment->t, moment->index,
                              moment->warning != NULL ? moment->warning : "");
    }
  g_assert_cmpstr (found->str, ==, expected);
}

/* A mains-sized value is warned of when it is kept; a decision stands before the samples that gave it away. */
static void
test_moments (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  const RwReading sample = rw_reading_make ("p12", RW_PLACE_BOARD, RW_KIND_DC, 12, 0.01, "m1");

  read_rail (session, 1, "p5", 5.02);                            /* 0 */
  read_rail (session, 2, "p5", 5.02);                            /* 1: again, no decision */
  add (session, rw_event_make_note (3, "on to the next"));       /* 2 */
  add (session, rw_event_make_sample (4, &sample));              /* 3 */
  add (session, rw_event_make_sample (5, &sample));              /* 4 */
  read_rail (session, 6, "p12", 230);                            /* 5: mains-sized */
  add (session, rw_event_make_retract (7, 6));                   /* 6 */
  read_rail (session, 8, "p12", 12);                             /* 7 */
  add (session, rw_event_make_finding (9, "stage-look", "yes")); /* 8: answers a stage */
  add (session, rw_event_make_finding (10, "trim-seal-look", "turned")); /* 9 */
  add (session, rw_event_make_trim (11));                        /* 10 */

  g_autoptr (RwChapters) chapters = rw_chapters_new (session, NULL, NULL);

  assert_moments (chapters, RW_MOMENT_WARNING, "6@6>5mains-sized ");
  assert_moments (chapters, RW_MOMENT_TRIM, "11@11>10 ");
  assert_moments (chapters, RW_MOMENT_KEEP, "1@1>0 2@2>1 8@8>7 ");
  assert_moments (chapters, RW_MOMENT_DECISION, "0@0>0 7@7>7 9@9>9 ");
  g_assert_cmpuint (rw_chapters_next_moment (chapters, RW_MOMENT_KEEP, 1)->n_events, ==, 2);
  g_assert_cmpuint (rw_chapters_previous_moment (chapters, RW_MOMENT_KEEP, 2)->n_events, ==, 1);
  g_assert_null (rw_chapters_previous_moment (chapters, RW_MOMENT_KEEP, 1));
  g_assert_null (rw_chapters_next_moment (chapters, RW_MOMENT_KEEP, 8));
}

/* A trim event that says that nothing was moved heads nothing, counts for nothing and is no goal, and no run ends at
 * it. */
static void
test_unmoved (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  g_autoptr (RwProfile) profile = fixture_profile ();
  RwEvent still[] = { rw_event_make_trim (10), rw_event_make_trim (25) };

  still[0].trim.moved = still[1].trim.moved = FALSE;
  read_rail (session, 1, "p5", 5.02); /* 0 */
  add (session, still[0]);            /* 1 */
  add (session, rw_event_make_trim (20)); /* 2 */
  add (session, still[1]);                /* 3 */
  add (session, rw_event_make_trim (30)); /* 4 */
  assert_chapters (session, "start@0 The beginning\n"
                            "trim@20 2 turns of the trim\n");

  g_autoptr (RwChapters) chapters = rw_chapters_new (session, NULL, NULL);
  g_autofree char *start = rw_chapter_describe_change (rw_chapters_get (chapters, 0), profile);

  g_assert_cmpstr (start, ==, "1 reading, +5 V: inside");
  g_assert_cmpuint (rw_chapters_get (chapters, 0)->n_trims, ==, 0);
  g_assert_cmpuint (rw_chapters_get (chapters, 1)->n_trims, ==, 2);
  assert_moments (chapters, RW_MOMENT_TRIM, "3@20>2 5@30>4 ");
}

static void
read_overload (RwSession  *session,
               double      t,
               const char *rail)
{
  RwReading reading = rw_reading_make (rail, RW_PLACE_BOARD, RW_KIND_DC, 0, 0.01, "m1");

  reading.over = TRUE;
  add (session, rw_event_make_reading (t, &reading));
}

/* The same mistake on another rail is another warning; on the same rail again it is not, until it was gone. */
static void
test_one_warning_a_rail (void)
{
  g_autoptr (RwSession) session = fixture_session ();

  read_overload (session, 1, "p5");    /* 0 */
  read_overload (session, 2, "p12");   /* 1: another rail */
  read_overload (session, 3, "p5");    /* 2: still there */
  read_rail (session, 4, "p12", 12);   /* 3: gone */
  read_overload (session, 5, "m5");    /* 4 */
  read_overload (session, 6, "p12");   /* 5: again */

  g_autoptr (RwChapters) chapters = rw_chapters_new (session, NULL, NULL);

  assert_moments (chapters, RW_MOMENT_WARNING, "1@1>0overload 2@2>1overload 5@5>4overload 6@6>5overload ");
  g_assert_cmpuint (rw_chapters_get (chapters, 0)->n_warnings, ==, 4);
}

static RwSession *
make_random (GRand *random)
{
  RwSession *session = fixture_session ();
  double t = 0;

  for (guint i = 0; i < 80; i++)
    {
      t += g_rand_int_range (random, 0, 3) * g_rand_double (random) * 20;
      add (session, fixture_random_event (random, t, i));
    }
  return session;
}

static void
test_cover (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (7);

  for (guint round = 0; round < 60; round++)
    {
      g_autoptr (RwSession) session = make_random (random);
      g_autoptr (RwChapters) chapters = rw_chapters_new (session, NULL, NULL);
      const guint n = rw_chapters_get_n (chapters);

      g_assert_cmpfloat (rw_chapters_get (chapters, 0)->t, ==, 0);
      g_assert_cmpuint (rw_chapters_get (chapters, 0)->index, ==, 0);
      g_assert_cmpfloat (rw_chapters_get (chapters, n - 1)->end, ==, rw_session_get_end (session));
      g_assert_cmpuint (rw_chapters_get (chapters, n - 1)->until, ==, rw_session_get_n_events (session));
      for (guint i = 0; i < n; i++)
        {
          const RwChapter *chapter = rw_chapters_get (chapters, i), *next = rw_chapters_get (chapters, i + 1);

          g_assert_cmpfloat (chapter->t, <=, chapter->end);
          g_assert_nonnull (chapter->title);
          g_assert_cmpuint (rw_chapters_find (chapters, chapter->n_events), ==, i);
          if (next == NULL)
            continue;
          g_assert_cmpfloat (chapter->end, ==, next->t);
          g_assert_cmpuint (chapter->until, ==, next->index);
          g_assert_cmpuint (chapter->index, <, next->index);
          g_assert_cmpuint (rw_chapters_find (chapters, next->index), ==, i);
        }
    }
}

/* Of every live reading, turn, finding and repair exactly one chapter tells. */
static void
test_counts (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (8);

  for (guint round = 0; round < 40; round++)
    {
      g_autoptr (RwSession) session = make_random (random);
      g_autoptr (RwChapters) chapters = rw_chapters_new (session, NULL, NULL);
      guint counted[4] = { 0 }, there[4] = { 0 }, warnings = 0;

      for (guint i = 0; i < rw_chapters_get_n (chapters); i++)
        {
          const RwChapter *chapter = rw_chapters_get (chapters, i);

          counted[0] += chapter->n_readings;
          counted[1] += chapter->n_trims;
          counted[2] += chapter->n_findings;
          counted[3] += chapter->n_repairs;
          warnings += chapter->n_warnings;
        }
      for (guint i = 0; i < rw_session_get_n_events (session); i++)
        {
          const RwEventType type = rw_session_get_event (session, i)->type;

          if (!rw_session_is_live (session, i))
            continue;
          there[0] += type == RW_EVENT_READING;
          there[1] += type == RW_EVENT_TRIM;
          there[2] += type == RW_EVENT_FINDING;
          there[3] += type == RW_EVENT_REPAIR;
        }
      g_assert_cmpmem (counted, sizeof counted, there, sizeof there);
      g_assert_cmpuint (there[0], ==, rw_chapters_get_n_moments (chapters, RW_MOMENT_KEEP));
      g_assert_cmpuint (warnings, ==, rw_chapters_get_n_moments (chapters, RW_MOMENT_WARNING));
    }
}

/* Where a warning is said to come up, the state has it; just before, it does not have it of that rail. */
static void
test_warnings (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (9);
  guint n_seen = 0;

  for (guint round = 0; round < 20; round++)
    {
      g_autoptr (RwSession) session = make_random (random);
      g_autoptr (RwSession) part = rw_session_new_part (session);
      g_autoptr (RwChapters) chapters = rw_chapters_new (session, NULL, NULL);

      for (guint i = 0; i < rw_chapters_get_n_moments (chapters, RW_MOMENT_WARNING); i++)
        {
          const RwMoment *moment = rw_chapters_get_moment (chapters, RW_MOMENT_WARNING, i);
          gboolean there = FALSE;

          rw_session_rewind (part, 0);
          rw_session_advance (part, moment->n_events);

          g_autoptr (RwBenchState) state = rw_bench_state_new (part);

          for (guint k = 0; k < rw_bench_state_get_n_warnings (state); k++)
            there = there || g_str_equal (rw_bench_state_get_warning (state, k)->id, moment->warning);
          g_assert_true (there);
          n_seen++;
        }
    }
  g_assert_cmpuint (n_seen, >, 5);
}

/* In two goes, the second in a part, it is the same as in one. */
static void
test_two_goes (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (10);
  g_autoptr (RwSession) session = make_random (random);
  g_autoptr (RwSession) part = rw_session_new_part (session);
  g_autoptr (RwProfile) profile = fixture_profile ();
  g_autoptr (RwChapters) whole = rw_chapters_new (session, NULL, NULL);
  g_autoptr (RwChapters) quick = rw_chapters_new_quick (session, NULL, NULL);

  rw_session_advance (part, rw_session_get_n_events (session));

  g_autoptr (RwChapters) looked = rw_chapters_new_looked (quick, part);
  g_autofree char *one = list (whole), *other = list (looked);

  g_assert_cmpstr (one, ==, other);
  for (guint i = 0; i < rw_chapters_get_n (whole); i++)
    {
      g_autofree char *a = rw_chapter_describe_change (rw_chapters_get (whole, i), profile);
      g_autofree char *b = rw_chapter_describe_change (rw_chapters_get (looked, i), profile);

      g_assert_cmpstr (a, ==, b);
    }
  for (guint kind = 0; kind < RW_N_MOMENT_KINDS; kind++)
    g_assert_cmpuint (rw_chapters_get_n_moments (whole, kind), ==, rw_chapters_get_n_moments (looked, kind));
  g_assert_cmpuint (rw_chapters_get_n_moments (quick, RW_MOMENT_WARNING), ==, 0);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/chapters/marks head chapters, the same words in a row but one", test_marks);
  g_test_add_func ("/chapters/nothing comes before a heading that is the first event", test_first);
  g_test_add_func ("/chapters/a run of turns is one chapter, and ends with the work", test_runs);
  g_test_add_func ("/chapters/stages head chapters by their names, unless taken back", test_stages);
  g_test_add_func ("/chapters/each says what changed in it", test_changes);
  g_test_add_func ("/chapters/a title that names a hidden rail is kept back", test_a_title_that_names_a_hidden_rail_is_kept_back);
  g_test_add_func ("/chapters/moments lie where something happened, a decision before its samples", test_moments);
  g_test_add_func ("/chapters/a trim that was not moved is no turn", test_unmoved);
  g_test_add_func ("/chapters/a mistake on another rail is another warning", test_one_warning_a_rail);
  g_test_add_func ("/chapters/they cover the session in order", test_cover);
  g_test_add_func ("/chapters/everything live is counted once", test_counts);
  g_test_add_func ("/chapters/a warning comes up where the state has it", test_warnings);
  g_test_add_func ("/chapters/in two goes they are the same", test_two_goes);
  return g_test_run ();
}
