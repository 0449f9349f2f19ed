/* test-projection.c: a class sees what it was shown, and nothing else.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * That a hidden rail appears nowhere is shown the hard way: chart and trim map of a session with a hidden rail are, pixel
 * for pixel, those of a session in which the rail was never read.
 */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>

#include "class-fixture.h"
#include "rw-class-session.h"
#include "rw-projection-words.h"

/* --- hidden rails --------------------------------------------------------------------------------- */

static void
test_hidden_rail_is_nowhere (void)
{
  g_auto (Class) with = { 0 };
  g_auto (Class) without = { 0 };
  g_autofree char *chart_words = NULL, *map_words = NULL, *bare_words = NULL, *bare_map_words = NULL;
  g_autofree char *open_words = NULL;

  class_init (&with);
  class_init (&without);
  class_fill (&with, TRUE);
  class_fill (&without, FALSE);
  rw_view_set_horizon (rw_job_get_view (with.job), 60);
  rw_view_set_horizon (rw_job_get_view (without.job), 60);
  rw_projection_hide_rail (without.projection, "m5", TRUE);

  g_autofree char *shown = class_draw_chart (&with, &open_words);

  g_assert_nonnull (strstr (open_words, "−5 V"));
  rw_projection_hide_rail (with.projection, "m5", TRUE);
  g_assert_true (rw_projection_is_hidden (with.projection, "m5"));

  g_autofree char *chart = class_draw_chart (&with, &chart_words);
  g_autofree char *bare = class_draw_chart (&without, &bare_words);
  g_autofree char *map = class_draw_map (&with, &map_words);
  g_autofree char *bare_map = class_draw_map (&without, &bare_map_words);

  g_assert_cmpstr (chart, ==, bare);
  g_assert_cmpstr (chart, !=, shown);
  g_assert_cmpstr (chart_words, ==, bare_words);
  g_assert_cmpstr (map, ==, bare_map);
  g_assert_cmpstr (map_words, ==, bare_map_words);
  g_assert_null (strstr (chart_words, "−5"));
  g_assert_null (strstr (map_words, "−5"));
  g_assert_nonnull (strstr (map_words, "+12 V"));
  for (guint part = 0; part < RW_N_PROJECTION_PARTS; part++)
    for (int enlarged = 0; enlarged < 2; enlarged++)
      {
        rw_projection_set_part (with.projection, part);
        rw_projection_set_enlarged (with.projection, enlarged);
        class_assert_says (&with, "−5", FALSE);
        class_assert_says (&with, "4.769", FALSE);
      }
}

static void
test_shown_again (void)
{
  g_auto (Class) class = { 0 };
  g_autofree char *before_words = NULL, *after_words = NULL;

  class_init (&class);
  class_fill (&class, TRUE);

  g_autofree char *before = class_draw_chart (&class, &before_words);

  rw_projection_hide_rail (class.projection, "m5", TRUE);
  class_assert_says (&class, "−4.769", FALSE);
  rw_projection_hide_rail (class.projection, "m5", FALSE);

  g_autofree char *after = class_draw_chart (&class, &after_words);

  class_assert_says (&class, "−4.769", TRUE);
  g_assert_cmpstr (before, ==, after);
  rw_projection_hide_rail (class.projection, "p12", TRUE);
  rw_projection_hide_rail (class.projection, "m5", TRUE);
  rw_projection_show_all_rails (class.projection);
  class_assert_says (&class, "−4.769", TRUE);
  class_assert_says (&class, "+12 V", TRUE);
}

/* Every other rail is drawn against it, so its value could be read off the axis. */
static void
test_hidden_reference_leaves_no_map (void)
{
  g_auto (Class) class = { 0 };

  class_init (&class);
  class_fill (&class, TRUE);
  rw_projection_set_part (class.projection, RW_PROJECTION_TRIM);
  class_assert_says (&class, "Trim map", TRUE);
  rw_projection_hide_rail (class.projection, "p5", TRUE);
  class_assert_says (&class, "hidden rail", TRUE);
  class_assert_says (&class, "+5", FALSE);

  const RwTrimSet *set = rw_projection_get_trim (class.projection)->set;

  for (guint i = 0; set != NULL && i < set->points->len; i++)
    g_assert_cmpuint (g_array_index (set->points, RwTrimPoint, i).rail, !=, set->reference);
}

/* Whatever is added, taken back, rewound, hidden and shown: the copy is what a copy made from scratch would be. */
static void
test_copy_follows (void)
{
  static const char *const rails[] = { "p5", "p12", "m5", "?" };
  g_auto (Class) class = { 0 };
  g_autoptr (GHashTable) hidden = g_hash_table_new (g_str_hash, g_str_equal);

  class_init (&class);

  RwSession *source = rw_job_get_session (class.job);
  g_autoptr (RwClassSession) copy = rw_class_session_new (source);

  for (int step = 0; step < 400; step++)
    {
      const guint n = rw_session_get_n_events (source);
      const int what = g_test_rand_int_range (0, 12);

      if (what == 0 && n > 0)
        rw_session_rewind (source, (guint) g_test_rand_int_range (0, (int) n));
      else if (what == 1)
        g_hash_table_add (hidden, (gpointer) rails[g_test_rand_int_range (0, 3)]);
      else if (what == 2)
        g_hash_table_remove (hidden, rails[g_test_rand_int_range (0, 3)]);
      else if (what == 3)
        class_add (&class, 0, step, rw_event_make_note (0, "private"));
      else if (what == 4 && n > 0)
        class_add (&class, 0, step, rw_event_make_retract (0, (guint) g_test_rand_int_range (1, (int) n + 1)));
      else
        class_add_value (&class, 0, step, rails[g_test_rand_int_range (0, 4)], step * 0.01, what > 8);
      if (g_test_rand_int_range (0, 3) == 0)
        continue;
      rw_class_session_set_hidden (copy, hidden);
      rw_class_session_catch_up (copy);

      RwSession *seen = rw_class_session_get_session (copy);
      guint k = 0;

      for (guint i = 0; i < rw_session_get_n_events (source); i++)
        {
          const RwEvent *event = rw_session_get_event (source, i);
          const gboolean read = event->type == RW_EVENT_READING || event->type == RW_EVENT_SAMPLE;

          if (event->type == RW_EVENT_NOTE
              || (read && (g_str_equal (event->reading.rail, "?") || g_hash_table_contains (hidden, event->reading.rail))))
            continue;
          g_assert_cmpuint (k, <, rw_session_get_n_events (seen));
          g_assert_cmpuint (rw_session_get_event (seen, k)->n, ==, event->n);
          g_assert_cmpint (rw_session_is_live (seen, k), ==, rw_session_is_live (source, i));
          k++;
        }
      g_assert_cmpuint (k, ==, rw_session_get_n_events (seen));
    }
}

static void
test_words_about_hidden_rails (void)
{
  g_auto (Class) class = { 0 };
  g_autoptr (GHashTable) hidden = g_hash_table_new (g_str_hash, g_str_equal);

  class_init (&class);

  const RwProfile *profile = rw_job_get_profile (class.job);

  g_assert_false (rw_projection_words_tell (profile, hidden, "−5 V is low"));
  g_hash_table_add (hidden, (gpointer) g_intern_static_string ("m5"));
  g_assert_true (rw_projection_words_tell (profile, hidden, "−5 V is low"));
  g_assert_true (rw_projection_words_tell (profile, hidden, "the - 5V regulator"));
  g_assert_true (rw_projection_words_tell (profile, hidden, "Read -5."));
  g_assert_false (rw_projection_words_tell (profile, hidden, "−50 mV lost"));
  g_assert_false (rw_projection_words_tell (profile, hidden, "+5 V and +12 V"));
  g_assert_false (rw_projection_words_tell (profile, hidden, NULL));
  g_hash_table_add (hidden, (gpointer) g_intern_static_string ("p12"));
  g_assert_true (rw_projection_words_tell (profile, hidden, "+5 V and +12 V"));
}

/* --- private things ------------------------------------------------------------------------------- */

/* In no text of the projection, and in no event of the session that its pictures are made of. */
static void
assert_secret (Class      *self,
               const char *secret)
{
  RwSession *session = rw_projection_get_session (self->projection);
  g_autofree char *summary = NULL;
  g_autofree char *picture = class_draw_chart (self, &summary);

  for (guint part = 0; part < RW_N_PROJECTION_PARTS; part++)
    {
      rw_projection_set_part (self->projection, part);
      class_assert_says (self, secret, FALSE);
    }
  g_assert_null (strstr (summary, secret));
  for (guint i = 0; i < rw_session_get_n_events (session); i++)
    {
      g_autofree char *words = rw_event_describe (rw_session_get_event (session, i), NULL);

      g_assert_null (strstr (words, secret));
    }
}

static void
test_private_unless_sent (void)
{
  g_auto (Class) class = { 0 };

  class_init (&class);
  class_add (&class, 0, 0.1, rw_event_make_symptom (0, "resets", RW_SYMPTOM_PRESENT));
  class_fill (&class, TRUE);
  class_add (&class, 0, 40, rw_event_make_note (0, "It is the edge.\nDo not tell."));
  class_add (&class, 0, 41, rw_event_make_mark (0, "here it showed"));
  class_add (&class, 0, 42, rw_event_make_finding (0, "wiggle-edge", "moves"));
  class_add (&class, 0, 43, rw_event_make_repair (0, "edge-oxidised", RW_REPAIR_FIXED));
  class_wait_for_advice (&class);
  assert_secret (&class, "edge");
  assert_secret (&class, "Do not tell");
  assert_secret (&class, "here it showed");
  assert_secret (&class, "resets");
  assert_secret (&class, "%");

  g_assert_true (rw_projection_can_send (class.projection, RW_SENT_NOTE));
  rw_projection_send (class.projection, RW_SENT_NOTE);
  class_assert_says (&class, "Do not tell.", TRUE);
  rw_projection_send (class.projection, RW_SENT_ANSWER);
  class_assert_says (&class, "Do not tell.", FALSE);
  class_assert_says (&class, rw_job_cause_title (class.job, "edge-oxidised"), TRUE);
  rw_projection_send (class.projection, RW_SENT_BELIEFS);
  class_assert_says (&class, "Likely causes", TRUE);
  class_assert_says (&class, "%", TRUE);
  rw_projection_set_deciding (class.projection, TRUE); /* while it is asked what to do next */
  class_assert_says (&class, "%", FALSE);
  g_assert_false (rw_projection_can_send (class.projection, RW_SENT_BELIEFS));
  rw_projection_set_deciding (class.projection, FALSE);
  class_assert_says (&class, "%", TRUE);
  rw_projection_send (class.projection, RW_SENT_NOTHING);
  assert_secret (&class, "edge");
  assert_secret (&class, "%");
}

static void
test_nothing_to_send (void)
{
  g_auto (Class) class = { 0 };

  class_init (&class);
  class_fill (&class, TRUE);
  g_assert_false (rw_projection_can_send (class.projection, RW_SENT_NOTE));
  g_assert_false (rw_projection_can_send (class.projection, RW_SENT_ANSWER));
  rw_projection_send (class.projection, RW_SENT_NOTE);
  class_assert_says (&class, "+12 V", TRUE);
}

static void
test_sent_things_cover_hidden_rails (void)
{
  g_auto (Class) class = { 0 };

  class_init (&class);
  class_fill (&class, TRUE);
  class_add (&class, 0, 40, rw_event_make_note (0, "Good.\nThe −5 V will not follow."));
  class_settle ();
  rw_projection_hide_rail (class.projection, "m5", TRUE);
  rw_projection_send (class.projection, RW_SENT_NOTE);
  class_assert_says (&class, "Good.", TRUE);
  class_assert_says (&class, "follow", FALSE);
  rw_projection_hide_rail (class.projection, "m5", FALSE);
  class_assert_says (&class, "follow", TRUE);
}

/* --- the next check ------------------------------------------------------------------------------- */

static void
test_check_without_beliefs (void)
{
  g_auto (Class) class = { 0 };

  class_init (&class);
  class_add (&class, 0, 0.1, rw_event_make_symptom (0, "resets", RW_SYMPTOM_PRESENT));
  class_wait_for_advice (&class);

  const RwAdviceCheck *next = rw_advice_get_check (rw_job_get_advice (class.job));

  g_assert_nonnull (next);
  rw_projection_set_part (class.projection, RW_PROJECTION_CHECK);
  class_assert_says (&class, next->check->title, TRUE);
  class_assert_says (&class, rw_hazard_get_label (next->check->hazard), TRUE);
  class_assert_says (&class, rw_who_get_label (next->check->who), TRUE);
  for (guint i = 0; i < next->check->n_outcomes; i++)
    class_assert_says (&class, next->check->outcomes[i].title, TRUE);
  class_assert_says (&class, "%", FALSE);
  rw_projection_set_deciding (class.projection, TRUE);
  class_assert_says (&class, next->check->title, FALSE);
  rw_projection_set_deciding (class.projection, FALSE);
  class_assert_says (&class, next->check->title, TRUE);
  if (next->check->measures && rw_profile_find_rail (rw_job_get_profile (class.job), next->check->rail) != NULL)
    {
      rw_projection_hide_rail (class.projection, next->check->rail, TRUE);
      class_assert_says (&class, next->check->title, FALSE);
      class_assert_says (&class, "hidden rail", TRUE);
    }
}

/* The advice may still name a check: the class is told to stop, as the teacher is. */
static void
test_no_check_past_a_danger (void)
{
  g_auto (Class) class = { 0 };

  class_init (&class);
  class_add (&class, 0, 0.1, rw_event_make_symptom (0, "resets", RW_SYMPTOM_PRESENT));
  class_wait_for_advice (&class);
  rw_projection_set_part (class.projection, RW_PROJECTION_CHECK);
  class_assert_says (&class, "Next check", TRUE);
  class_add_value (&class, 0, 1, "p5", 140, FALSE);
  class_settle ();

  const RwWarning *danger = rw_bench_state_find_danger (rw_job_get_state (class.job));

  g_assert_nonnull (danger);
  class_assert_says (&class, "Next check", FALSE);
  class_assert_says (&class, "Stop first", TRUE);
  class_assert_says (&class, danger->text, TRUE);
  class_wait_for_advice (&class);
  class_assert_says (&class, "Next check", FALSE);
}

int
main (int    argc,
      char **argv)
{
  g_autofree char *home = g_dir_make_tmp ("class-home-XXXXXX", NULL);
  g_autofree char *record = g_build_filename (home, "railwright", "record.json", NULL);

  /* The own record of repairs would come to know what a class is asked here. */
  g_setenv ("XDG_DATA_HOME", home, TRUE);
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/projection/a hidden rail appears nowhere", test_hidden_rail_is_nowhere);
  g_test_add_func ("/projection/a rail that is shown again is there as before", test_shown_again);
  g_test_add_func ("/projection/with a hidden reference there is no trim map", test_hidden_reference_leaves_no_map);
  g_test_add_func ("/projection/the copy follows whatever happens to the session", test_copy_follows);
  g_test_add_func ("/projection/words about a hidden rail are found", test_words_about_hidden_rails);
  g_test_add_func ("/projection/private things show only while they are sent over", test_private_unless_sent);
  g_test_add_func ("/projection/what is not there cannot be sent", test_nothing_to_send);
  g_test_add_func ("/projection/what is sent over says nothing of hidden rails", test_sent_things_cover_hidden_rails);
  g_test_add_func ("/projection/the next check comes without beliefs", test_check_without_beliefs);
  g_test_add_func ("/projection/no check is named past a danger", test_no_check_past_a_danger);

  const int status = g_test_run ();
  g_autofree char *folder = g_path_get_dirname (record);

  g_unlink (record);
  g_rmdir (folder);
  g_rmdir (home);
  return status;
}
