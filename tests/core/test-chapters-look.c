/* test-chapters-look.c: the walk through a session finds what a state made afresh at every landmark finds.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The plain way is that of the definition: the session up to a landmark, a state of it with all its fits, and the next.
 */
#include "config.h"

#include <string.h>

#include "busy-session.h"
#include "fixtures.h"
#include "rw-bench-state.h"
#include "rw-bench-walk.h"
#include "rw-chapters.h"

/* --- the plain way -------------------------------------------------------------------------------- */

static char *
name_warning (RwSession       *session,
              const RwWarning *warning)
{
  const int index = rw_session_find (session, warning->n);
  const RwEvent *event = index >= 0 ? rw_session_get_event (session, (guint) index) : NULL;

  return g_strdup_printf ("%s of %s", warning->id,
                          event != NULL && event->type == RW_EVENT_READING ? event->reading.rail : "none");
}

/* The names of all warnings. (transfer full) */
static GHashTable *
list_warnings (RwSession          *session,
               const RwBenchState *state)
{
  GHashTable *names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < rw_bench_state_get_n_warnings (state); i++)
    g_hash_table_add (names, name_warning (session, rw_bench_state_get_warning (state, i)));
  return names;
}

static gboolean
is_of_state (const RwEvent *event)
{
  return event->type != RW_EVENT_MARK && event->type != RW_EVENT_NOTE && event->type != RW_EVENT_GAP
         && event->type != RW_EVENT_STAGE && event->type != RW_EVENT_CALL && event->type != RW_EVENT_UNKNOWN;
}

static void
append_new (GString    *out,
            GHashTable *before,
            GHashTable *now,
            guint       index)
{
  g_autoptr (GList) names = g_list_sort (g_hash_table_get_keys (now), (GCompareFunc) g_strcmp0);

  for (GList *name = names; name != NULL; name = name->next)
    if (!g_hash_table_contains (before, name->data))
      g_string_append_printf (out, "%u %s\n", index, (char *) name->data);
}

/* "INDEX ID of RAIL" of each warning that comes up, in lines. (transfer full) */
static char *
find_plainly (RwSession *session)
{
  g_autoptr (RwSession) part = rw_session_new_part (session);
  g_autoptr (GHashTable) before = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < rw_session_get_n_landmarks (session); i++)
    {
      const guint index = rw_session_get_landmark (session, i);

      rw_session_advance (part, index + 1);
      if (!is_of_state (rw_session_get_event (session, index)))
        continue;

      g_autoptr (RwBenchState) state = rw_bench_state_new (part);
      g_autoptr (GHashTable) now = list_warnings (part, state);

      append_new (out, before, now, index);
      g_hash_table_unref (before);
      before = g_steal_pointer (&now);
    }
  return g_string_free (out, FALSE);
}

/* What the chapters say of the same: without rails. (transfer full) */
static char *
without_rails (const char *plain)
{
  g_autoptr (GRegex) rail = g_regex_new (" of [^\n]*", 0, 0, NULL);

  return g_regex_replace_literal (rail, plain, -1, 0, "", 0, NULL);
}

static int
compare_lines (gconstpointer a,
               gconstpointer b)
{
  return g_strcmp0 (*(char *const *) a, *(char *const *) b);
}

static char *
sort_lines (const char *text)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  qsort (lines, g_strv_length (lines), sizeof (char *), compare_lines);
  return g_strjoinv ("\n", lines);
}

/* --- comparing ------------------------------------------------------------------------------------ */

static char *
list_moments (const RwChapters *chapters)
{
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < rw_chapters_get_n_moments (chapters, RW_MOMENT_WARNING); i++)
    {
      const RwMoment *moment = rw_chapters_get_moment (chapters, RW_MOMENT_WARNING, i);

      g_string_append_printf (out, "%u %s\n", moment->index, moment->warning);
    }
  return g_string_free (out, FALSE);
}

static RwVerdict
verdict_of (const RwBenchState *state,
            const char         *rail)
{
  const RwSpotState *spot = rw_bench_state_find_rail (state, rail);

  return spot != NULL ? spot->verdict : RW_VERDICT_NONE;
}

/* Of each chapter, the verdicts with which it began and ended. */
static void
assert_verdicts (RwSession        *session,
                 const RwChapters *chapters)
{
  for (guint i = 0; i < rw_chapters_get_n (chapters); i++)
    {
      const RwChapter *chapter = rw_chapters_get (chapters, i);
      g_autoptr (RwSession) from = rw_session_new_part (session), to = rw_session_new_part (session);
      RwProfile *profile = rw_session_get_profile (session);
      guint n_changed = 0;

      rw_session_advance (from, chapter->index);
      rw_session_advance (to, chapter->until);

      g_autoptr (RwBenchState) before = rw_bench_state_new (from), after = rw_bench_state_new (to);

      for (guint k = 0; k < rw_profile_get_n_rails (profile); k++)
        {
          const char *rail = rw_profile_get_rail (profile, k)->id;

          if (verdict_of (before, rail) == verdict_of (after, rail))
            continue;
          g_assert_cmpuint (n_changed, <, chapter->verdicts->len);

          const RwChapterVerdict *change = &g_array_index (chapter->verdicts, RwChapterVerdict, n_changed++);

          g_assert_cmpstr (change->rail, ==, rail);
          g_assert_cmpint (change->before, ==, verdict_of (before, rail));
          g_assert_cmpint (change->after, ==, verdict_of (after, rail));
        }
      g_assert_cmpuint (n_changed, ==, chapter->verdicts->len);
    }
}

/* Returns how many warnings came up. */
static guint
assert_same (RwSession *session,
             guint      seed)
{
  g_autoptr (RwChapters) chapters = rw_chapters_new (session, NULL, NULL);
  g_autofree char *plain = find_plainly (session), *bare = without_rails (plain), *expected = sort_lines (bare);
  g_autofree char *moments = list_moments (chapters), *found = sort_lines (moments);

  if (!g_str_equal (expected, found))
    g_error ("session %u: not the same warnings:\n%s\nbut\n%s", seed, found, expected);
  assert_verdicts (session, chapters);
  return rw_chapters_get_n_moments (chapters, RW_MOMENT_WARNING);
}

static void
check_styles (guint first_seed,
              guint n,
              guint n_events)
{
  guint n_seen = 0;

  for (guint seed = first_seed; seed < first_seed + n; seed++)
    {
      g_autoptr (GRand) random = g_rand_new_with_seed (seed);
      const BusyStyle style = busy_style (random, n_events);
      g_autoptr (RwSession) session = busy_session_new (random, &style);

      n_seen += assert_same (session, seed);
    }
  g_test_message ("%u warnings", n_seen);
  g_assert_cmpuint (n_seen, >, n);
}

static void
test_short (void)
{
  check_styles (1000, 80, 120);
}

/* Long enough for lines that are not fitted anew each time. */
static void
test_long (void)
{
  check_styles (2000, 6, 500);
}

static void
test_anything (void)
{
  for (guint seed = 0; seed < 60; seed++)
    {
      g_autoptr (GRand) random = g_rand_new_with_seed (seed);
      g_autoptr (RwSession) session = fixture_session ();
      double t = 0;

      for (guint i = 0; i < 120; i++)
        {
          t += g_rand_double_range (random, 0, 20);
          rw_session_add (session, &(RwEvent[]){ fixture_random_event (random, t, i) }[0]);
        }
      assert_same (session, seed);
    }
}

/* Slopes that are odd, just odd, and just not, in the same session as the noise that hides it. */
static void
test_slopes (void)
{
  static const double slopes[] = { 0.3, 0.345, 0.35, 0.355, 0.4, 1.95, 1.99, 2, 2.01, 2.1 };
  guint n_odd = 0;

  for (guint i = 0; i < G_N_ELEMENTS (slopes); i++)
    {
      g_autoptr (GRand) random = g_rand_new_with_seed (i);
      const BusyStyle style = { .n_events = 400, .noise = 0.9, .slope = slopes[i], .turns = 15, .places = 1 };
      g_autoptr (RwSession) session = busy_session_new (random, &style);
      g_autofree char *plain = find_plainly (session);

      assert_same (session, i);
      n_odd += strstr (plain, "slope-odd") != NULL;
    }
  g_assert_cmpuint (n_odd, >=, 5);
}

/* --- the walk ------------------------------------------------------------------------------------- */

static void
assert_same_spots (const RwBenchState *a,
                   const RwBenchState *b)
{
  g_assert_cmpuint (rw_bench_state_get_n_spots (a), ==, rw_bench_state_get_n_spots (b));
  g_assert_cmpuint (rw_bench_state_get_n_views (a), ==, rw_bench_state_get_n_views (b));
  g_assert_cmpuint (rw_bench_state_get_n_repairs (a), ==, rw_bench_state_get_n_repairs (b));
  g_assert_cmpuint (rw_bench_state_get_n_findings (a), ==, rw_bench_state_get_n_findings (b));
  g_assert_cmpuint (rw_bench_state_get_n_symptoms (a), ==, rw_bench_state_get_n_symptoms (b));
  g_assert_cmpuint (rw_bench_state_get_n_trims (a), ==, rw_bench_state_get_n_trims (b));
  g_assert_cmpuint (rw_bench_state_get_turned (a), ==, rw_bench_state_get_turned (b));
  g_assert_cmpuint (rw_bench_state_get_plugged (a), ==, rw_bench_state_get_plugged (b));
  for (guint i = 0; i < rw_bench_state_get_n_spots (a); i++)
    {
      const RwSpotState *x = rw_bench_state_get_spot (a, i), *y = rw_bench_state_get_spot (b, i);

      g_assert_cmpuint (x->n, ==, y->n);
      g_assert_cmpint (x->verdict, ==, y->verdict);
      g_assert_cmpint (x->stale, ==, y->stale);
      g_assert_cmpint (x->changed_since, ==, y->changed_since);
      g_assert_true (x->u == y->u || x->reading.over);
    }
}

static void
test_walk (void)
{
  for (guint seed = 3000; seed < 3040; seed++)
    {
      g_autoptr (GRand) random = g_rand_new_with_seed (seed);
      BusyStyle style = busy_style (random, 250);

      style.retracts = 12;
      style.changes = 8;

      g_autoptr (RwSession) session = busy_session_new (random, &style);
      g_autoptr (RwBenchWalk) walk = rw_bench_walk_new (session);
      guint index, n = 0;

      for (; rw_bench_walk_step (walk, &index); n++)
        {
          g_assert_cmpuint (index, ==, rw_session_get_landmark (session, n));

          g_autoptr (RwBenchState) state = rw_bench_state_new (rw_bench_walk_get_part (walk));

          assert_same_spots (rw_bench_walk_get_state (walk), state);
        }
      g_assert_cmpuint (n, ==, rw_session_get_n_landmarks (session));
    }
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/chapters-look/short sessions of any style, as by a state at each landmark", test_short);
  g_test_add_func ("/chapters-look/long ones", test_long);
  g_test_add_func ("/chapters-look/sessions of anything at all", test_anything);
  g_test_add_func ("/chapters-look/slopes close to a bound", test_slopes);
  g_test_add_func ("/chapters-look/the walk holds the same state, whatever is taken back", test_walk);
  return g_test_run ();
}
