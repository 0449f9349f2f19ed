/* test-projection.c: a class sees what it was shown, and nothing else.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * That a hidden rail appears nowhere is shown the hard way: chart and trim map of a session with a hidden rail are, pixel
 * for pixel, those of a session in which the rail was never read.
 */
#include "config.h"

#include <glib.h>
#include <glib/gstdio.h>
#include <string.h>

#include "rw-chart.h"
#include "rw-class-session.h"
#include "rw-projection-words.h"
#include "rw-projection.h"
#include "rw-trim-map.h"

/* --- a job ---------------------------------------------------------------------------------------- */

typedef struct
{
  char         *path;
  RwJob        *job;
  RwProjection *projection;
} Class;

static void
class_init (Class *self)
{
  g_autofree char *profile_path = g_build_filename (g_getenv ("RAILWRIGHT_DATA_DIR"), "profiles", "classic-5-12-m5.json",
                                                    NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (RwProfile) profile = rw_profile_load (profile_path, &error);
  g_autoptr (GPtrArray) meters = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_meter_facts_free);
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();
  const int file = g_file_open_tmp ("rw-class-XXXXXX", &self->path, &error);

  g_assert_no_error (error);
  g_close (file, NULL);
  g_unlink (self->path);
  g_ptr_array_add (meters, rw_meter_facts_new ("m1", "bench", 0.2, 1));
  self->job = rw_job_new_bench (rw_session_header_new (profile, "Tidepool Racer", "B-07", meters, now), self->path, &error);
  g_assert_no_error (error);
  self->projection = rw_projection_new ();
  rw_projection_set_job (self->projection, self->job);
  rw_projection_set_open (self->projection, TRUE);
}

static void
class_clear (Class *self)
{
  g_clear_object (&self->projection);
  g_clear_object (&self->job);
  g_unlink (self->path);
  g_clear_pointer (&self->path, g_free);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Class, class_clear)

/* What the job tells in idle time is told. */
static void
settle (void)
{
  while (g_main_context_iteration (NULL, FALSE))
    ;
}

static void
wait_for_advice (Class *self)
{
  const gint64 end = g_get_monotonic_time () + 20 * G_USEC_PER_SEC;

  settle ();
  while (rw_job_get_advice (self->job) == NULL && g_get_monotonic_time () < end)
    g_main_context_iteration (NULL, TRUE);
  g_assert_nonnull (rw_job_get_advice (self->job));
  settle ();
}

static void
add (Class  *self,
     guint   n,
     double  t,
     RwEvent event)
{
  event.n = n;
  event.t = t;
  rw_session_add (rw_job_get_session (self->job), &event);
}

static void
add_value (Class      *self,
           guint       n,
           double      t,
           const char *rail,
           double      value,
           gboolean    sample)
{
  const RwReading reading = rw_reading_make (rail, RW_PLACE_BOARD, RW_KIND_DC, value, 0.001, "m1");

  add (self, n, t, sample ? rw_event_make_sample (0, &reading) : rw_event_make_reading (0, &reading));
}

/* Two positions of the trim, with a stream on each rail. @minus: −5 V is read as well. Numbers and times are the same
 * either way. */
static void
fill (Class   *self,
      gboolean minus)
{
  guint n = 1;
  double t = 1;

  add (self, n++, t, rw_event_make_setup (0, (RwSetup){ RW_SAID_YES, RW_SAID_YES, RW_SAID_YES }));
  for (int turn = 0; turn < 2; turn++)
    {
      const double x = 4.90 + 0.12 * turn;
      const struct { const char *rail; double value; } reads[] = { { "p5", x }, { "p12", 2.4 * x }, { "m5", -0.95 * x } };

      for (guint i = 0; i < G_N_ELEMENTS (reads); i++)
        for (int k = 0; k < 5; k++, n++, t += 1)
          if (minus || !g_str_equal (reads[i].rail, "m5"))
            add_value (self, n, t, reads[i].rail, reads[i].value, k < 4);
      if (turn == 0)
        add (self, n++, t++, rw_event_make_trim (0));
    }
  add_value (self, n++, t++, "p5", 5.021, TRUE);
  settle ();
}

static char *
content_text (Class *self)
{
  return rw_projection_content_dup_text (rw_projection_get_content (self->projection));
}

static void
assert_says (Class      *self,
             const char *words,
             gboolean    says)
{
  g_autofree char *text = content_text (self);

  if ((strstr (text, words) != NULL) != says)
    g_error ("%s %s in: %s", words, says ? "is not" : "is", text);
}

/* --- pictures ------------------------------------------------------------------------------------- */

static char *
bytes_of (cairo_surface_t *surface)
{
  cairo_surface_flush (surface);

  char *sum = g_compute_checksum_for_data (G_CHECKSUM_SHA256, cairo_image_surface_get_data (surface),
                                           (gsize) cairo_image_surface_get_stride (surface)
                                               * (gsize) cairo_image_surface_get_height (surface));

  cairo_surface_destroy (surface);
  return sum;
}

/* Without text: room for it is the same on every machine. Checksum of the pixels, and the summary. */
static char *
draw_chart (Class *self,
            char **summary)
{
  g_autoptr (RwChart) chart = rw_chart_new (rw_projection_get_session (self->projection),
                                            rw_projection_get_view (self->projection));
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 640, 360);
  cairo_t *cr = cairo_create (surface);

  rw_chart_set_state (chart, rw_projection_get_state (self->projection));
  rw_chart_set_draw_text (chart, FALSE);
  rw_chart_ink (chart, cr, 640, 360, RW_INK_SCREEN);
  cairo_destroy (cr);
  *summary = rw_chart_dup_summary (chart);
  return bytes_of (surface);
}

static char *
draw_map (Class *self,
          char **summary)
{
  const RwClassTrim *trim = rw_projection_get_trim (self->projection);
  g_autoptr (RwTrimMap) map = rw_trim_map_new (rw_projection_get_view (self->projection));
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 640, 360);
  cairo_t *cr = cairo_create (surface);

  rw_trim_map_set_draw_text (map, FALSE);
  rw_trim_map_set_note (map, FALSE);
  rw_trim_map_set_set (map, trim->set);
  rw_trim_map_set_live (map, trim->has_live ? &trim->live : NULL);
  rw_trim_map_ink (map, cr, 640, 360);
  cairo_destroy (cr);
  *summary = rw_trim_map_dup_summary (map);
  return bytes_of (surface);
}

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
  fill (&with, TRUE);
  fill (&without, FALSE);
  rw_view_set_horizon (rw_job_get_view (with.job), 60);
  rw_view_set_horizon (rw_job_get_view (without.job), 60);
  rw_projection_hide_rail (without.projection, "m5", TRUE);

  g_autofree char *shown = draw_chart (&with, &open_words);

  g_assert_nonnull (strstr (open_words, "−5 V"));
  rw_projection_hide_rail (with.projection, "m5", TRUE);
  g_assert_true (rw_projection_is_hidden (with.projection, "m5"));

  g_autofree char *chart = draw_chart (&with, &chart_words);
  g_autofree char *bare = draw_chart (&without, &bare_words);
  g_autofree char *map = draw_map (&with, &map_words);
  g_autofree char *bare_map = draw_map (&without, &bare_map_words);

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
        assert_says (&with, "−5", FALSE);
        assert_says (&with, "4.769", FALSE);
      }
}

static void
test_shown_again (void)
{
  g_auto (Class) class = { 0 };
  g_autofree char *before_words = NULL, *after_words = NULL;

  class_init (&class);
  fill (&class, TRUE);

  g_autofree char *before = draw_chart (&class, &before_words);

  rw_projection_hide_rail (class.projection, "m5", TRUE);
  assert_says (&class, "−4.769", FALSE);
  rw_projection_hide_rail (class.projection, "m5", FALSE);

  g_autofree char *after = draw_chart (&class, &after_words);

  assert_says (&class, "−4.769", TRUE);
  g_assert_cmpstr (before, ==, after);
  rw_projection_hide_rail (class.projection, "p12", TRUE);
  rw_projection_hide_rail (class.projection, "m5", TRUE);
  rw_projection_show_all_rails (class.projection);
  assert_says (&class, "−4.769", TRUE);
  assert_says (&class, "+12 V", TRUE);
}

/* Every other rail is drawn against it, so its value could be read off the axis. */
static void
test_hidden_reference_leaves_no_map (void)
{
  g_auto (Class) class = { 0 };

  class_init (&class);
  fill (&class, TRUE);
  rw_projection_set_part (class.projection, RW_PROJECTION_TRIM);
  assert_says (&class, "Trim map", TRUE);
  rw_projection_hide_rail (class.projection, "p5", TRUE);
  assert_says (&class, "hidden rail", TRUE);
  assert_says (&class, "+5", FALSE);

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
        add (&class, 0, step, rw_event_make_note (0, "private"));
      else if (what == 4 && n > 0)
        add (&class, 0, step, rw_event_make_retract (0, (guint) g_test_rand_int_range (1, (int) n + 1)));
      else
        add_value (&class, 0, step, rails[g_test_rand_int_range (0, 4)], step * 0.01, what > 8);
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
  g_autofree char *picture = draw_chart (self, &summary);

  for (guint part = 0; part < RW_N_PROJECTION_PARTS; part++)
    {
      rw_projection_set_part (self->projection, part);
      assert_says (self, secret, FALSE);
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
  add (&class, 0, 0.1, rw_event_make_symptom (0, "resets", RW_SYMPTOM_PRESENT));
  fill (&class, TRUE);
  add (&class, 0, 40, rw_event_make_note (0, "It is the edge.\nDo not tell."));
  add (&class, 0, 41, rw_event_make_mark (0, "here it showed"));
  add (&class, 0, 42, rw_event_make_finding (0, "wiggle-edge", "moves"));
  add (&class, 0, 43, rw_event_make_repair (0, "edge-oxidised", RW_REPAIR_FIXED));
  wait_for_advice (&class);
  assert_secret (&class, "edge");
  assert_secret (&class, "Do not tell");
  assert_secret (&class, "here it showed");
  assert_secret (&class, "resets");
  assert_secret (&class, "%");

  g_assert_true (rw_projection_can_send (class.projection, RW_SENT_NOTE));
  rw_projection_send (class.projection, RW_SENT_NOTE);
  assert_says (&class, "Do not tell.", TRUE);
  rw_projection_send (class.projection, RW_SENT_ANSWER);
  assert_says (&class, "Do not tell.", FALSE);
  assert_says (&class, rw_job_cause_title (class.job, "edge-oxidised"), TRUE);
  rw_projection_send (class.projection, RW_SENT_BELIEFS);
  assert_says (&class, "Likely causes", TRUE);
  assert_says (&class, "%", TRUE);
  rw_projection_set_deciding (class.projection, TRUE); /* while it is asked what to do next */
  assert_says (&class, "%", FALSE);
  g_assert_false (rw_projection_can_send (class.projection, RW_SENT_BELIEFS));
  rw_projection_set_deciding (class.projection, FALSE);
  assert_says (&class, "%", TRUE);
  rw_projection_send (class.projection, RW_SENT_NOTHING);
  assert_secret (&class, "edge");
  assert_secret (&class, "%");
}

static void
test_nothing_to_send (void)
{
  g_auto (Class) class = { 0 };

  class_init (&class);
  fill (&class, TRUE);
  g_assert_false (rw_projection_can_send (class.projection, RW_SENT_NOTE));
  g_assert_false (rw_projection_can_send (class.projection, RW_SENT_ANSWER));
  rw_projection_send (class.projection, RW_SENT_NOTE);
  assert_says (&class, "+12 V", TRUE);
}

static void
test_sent_things_cover_hidden_rails (void)
{
  g_auto (Class) class = { 0 };

  class_init (&class);
  fill (&class, TRUE);
  add (&class, 0, 40, rw_event_make_note (0, "Good.\nThe −5 V will not follow."));
  settle ();
  rw_projection_hide_rail (class.projection, "m5", TRUE);
  rw_projection_send (class.projection, RW_SENT_NOTE);
  assert_says (&class, "Good.", TRUE);
  assert_says (&class, "follow", FALSE);
  rw_projection_hide_rail (class.projection, "m5", FALSE);
  assert_says (&class, "follow", TRUE);
}

/* --- the next check ------------------------------------------------------------------------------- */

static void
test_check_without_beliefs (void)
{
  g_auto (Class) class = { 0 };

  class_init (&class);
  add (&class, 0, 0.1, rw_event_make_symptom (0, "resets", RW_SYMPTOM_PRESENT));
  wait_for_advice (&class);

  const RwAdviceCheck *next = rw_advice_get_check (rw_job_get_advice (class.job));

  g_assert_nonnull (next);
  rw_projection_set_part (class.projection, RW_PROJECTION_CHECK);
  assert_says (&class, next->check->title, TRUE);
  for (guint i = 0; i < next->check->n_outcomes; i++)
    assert_says (&class, next->check->outcomes[i].title, TRUE);
  assert_says (&class, "%", FALSE);
  rw_projection_set_deciding (class.projection, TRUE);
  assert_says (&class, next->check->title, FALSE);
  rw_projection_set_deciding (class.projection, FALSE);
  assert_says (&class, next->check->title, TRUE);
  if (next->check->measures && rw_profile_find_rail (rw_job_get_profile (class.job), next->check->rail) != NULL)
    {
      rw_projection_hide_rail (class.projection, next->check->rail, TRUE);
      assert_says (&class, next->check->title, FALSE);
      assert_says (&class, "hidden rail", TRUE);
    }
}

/* --- freeze and blank ----------------------------------------------------------------------------- */

static void
test_freeze_holds (void)
{
  g_auto (Class) class = { 0 };
  g_autofree char *words = NULL, *words_later = NULL, *map_words = NULL, *map_words_later = NULL;

  class_init (&class);
  fill (&class, TRUE);
  rw_projection_set_part (class.projection, RW_PROJECTION_CHART);
  rw_projection_set_frozen (class.projection, TRUE);

  g_autofree char *text = content_text (&class);
  g_autofree char *chart = draw_chart (&class, &words);
  g_autofree char *map = draw_map (&class, &map_words);

  add_value (&class, 0, 50, "p5", 5.31, FALSE);
  add_value (&class, 0, 51, "p5", 5.32, TRUE);
  add (&class, 0, 52, rw_event_make_trim (0));
  add (&class, 0, 53, rw_event_make_note (0, "later"));
  rw_view_set_horizon (rw_job_get_view (class.job), 500);
  rw_job_set_spot (class.job, "p12", RW_PLACE_TERMINALS, RW_KIND_DC);
  settle ();
  rw_projection_set_part (class.projection, RW_PROJECTION_VALUES);
  rw_projection_set_enlarged (class.projection, TRUE);
  rw_projection_set_spotlight (class.projection, "p12");
  rw_projection_hide_rail (class.projection, "p12", TRUE);
  rw_projection_send (class.projection, RW_SENT_NOTE);
  settle ();

  g_autofree char *text_later = content_text (&class);
  g_autofree char *chart_later = draw_chart (&class, &words_later);
  g_autofree char *map_later = draw_map (&class, &map_words_later);

  g_assert_cmpstr (text, ==, text_later);
  g_assert_cmpstr (chart, ==, chart_later);
  g_assert_cmpstr (words, ==, words_later);
  g_assert_cmpstr (map, ==, map_later);
  g_assert_cmpstr (map_words, ==, map_words_later);
  rw_projection_set_frozen (class.projection, FALSE);
  assert_says (&class, "later", TRUE);
  rw_projection_set_enlarged (class.projection, FALSE);
  assert_says (&class, "5.320", TRUE);
  assert_says (&class, "+12 V", FALSE);
}

/* A projector that is closed and opened again does not let a frozen picture go. */
static void
test_freeze_outlasts_the_window (void)
{
  g_auto (Class) class = { 0 };

  class_init (&class);
  fill (&class, TRUE);
  rw_projection_set_frozen (class.projection, TRUE);
  rw_projection_set_open (class.projection, FALSE);
  add_value (&class, 0, 50, "p5", 5.31, TRUE);
  settle ();
  rw_projection_set_open (class.projection, TRUE);
  assert_says (&class, "5.021", TRUE);
  assert_says (&class, "5.31", FALSE);
  rw_projection_set_frozen (class.projection, FALSE);
  assert_says (&class, "5.31", TRUE);
}

static void
test_blank_shows_nothing (void)
{
  static const char *const lines[] = { "line", NULL };
  g_auto (Class) class = { 0 };

  class_init (&class);
  fill (&class, TRUE);
  rw_projection_show_text (class.projection, "title", lines, NULL, 0, FALSE);
  rw_projection_set_frozen (class.projection, TRUE);
  rw_projection_set_blank (class.projection, TRUE);

  const RwProjectionContent *content = rw_projection_get_content (class.projection);
  g_autofree char *text = content_text (&class);

  g_assert_true (content->blank);
  g_assert_cmpstr (text, ==, "");
  g_assert_cmpuint (content->rails->len + content->shown->len, ==, 0);
  g_assert_null (content->title);
  g_assert_null (content->lines);
  rw_projection_set_blank (class.projection, FALSE);
  assert_says (&class, "title", TRUE);
}

/* --- the rest ------------------------------------------------------------------------------------- */

static void
test_text_beside_and_alone (void)
{
  static const char *const lines[] = { "What will it read?", NULL };
  static const char *const cells[] = { "Who", "Volts", "Team A", "4.95", NULL };
  g_auto (Class) class = { 0 };

  class_init (&class);
  fill (&class, TRUE);
  rw_projection_show_text (class.projection, "Call it first", lines, cells, 2, FALSE);
  assert_says (&class, "Call it first", TRUE);
  assert_says (&class, "Team A, 4.95", TRUE);
  assert_says (&class, "+12 V", TRUE);
  rw_projection_show_text (class.projection, "Call it first", lines, NULL, 0, TRUE);
  assert_says (&class, "+12 V", FALSE);
  assert_says (&class, "Team A", FALSE);
  g_assert_true (rw_projection_has_text (class.projection));
  rw_projection_clear_text (class.projection);
  assert_says (&class, "Call it first", FALSE);
  assert_says (&class, "+12 V", TRUE);
}

static void
test_spotlight_and_enlarge (void)
{
  g_auto (Class) class = { 0 };

  class_init (&class);
  fill (&class, TRUE);
  rw_projection_set_spotlight (class.projection, "p12");

  const RwProjectionContent *content = rw_projection_get_content (class.projection);

  g_assert_cmpuint (content->shown->len, ==, 3);
  for (guint i = 0; i < 3; i++)
    {
      const RwProjectionRail *rail = content->shown->pdata[i];

      g_assert_cmpint (rail->lit, ==, g_str_equal (rail->rail, "p12"));
      g_assert_cmpint (rail->dim, ==, !g_str_equal (rail->rail, "p12"));
    }
  rw_projection_set_enlarged (class.projection, TRUE);
  content = rw_projection_get_content (class.projection);
  g_assert_cmpuint (content->shown->len, ==, 1);
  g_assert_cmpstr (((const RwProjectionRail *) content->shown->pdata[0])->rail, ==, "p12");
  rw_projection_hide_rail (class.projection, "p12", TRUE);
  assert_says (&class, "+12 V", FALSE);
  rw_projection_set_part (class.projection, RW_PROJECTION_CHART);
  g_assert_cmpuint (rw_projection_get_content (class.projection)->shown->len, ==, 0);
}

/* Its view is its own: what the class looks at changes nothing in the main window, and what the teacher points at
 * nothing there. */
static void
test_view_of_its_own (void)
{
  g_auto (Class) class = { 0 };

  class_init (&class);
  fill (&class, TRUE);

  RwView *main_view = rw_job_get_view (class.job), *view = rw_projection_get_view (class.projection);

  g_assert_true (main_view != view);
  rw_view_set_rail (main_view, "p5");
  rw_view_set_hovered (main_view, 3);
  rw_projection_set_spotlight (class.projection, "m5");
  rw_projection_set_dark (class.projection, FALSE);
  g_assert_cmpstr (rw_view_get_rail (main_view), ==, "p5");
  g_assert_cmpstr (rw_view_get_rail (view), ==, "m5");
  g_assert_cmpuint (rw_view_get_hovered (view), ==, 0);
  rw_projection_set_spotlight (class.projection, NULL);
  g_assert_null (rw_view_get_rail (view));
}

static void
assert_words (Class      *self,
              const char *words)
{
  g_autofree char *said = rw_projection_dup_words (self->projection);

  g_assert_cmpstr (said, ==, words);
}

static void
test_tells_the_teacher (void)
{
  g_auto (Class) class = { 0 };

  class_init (&class);
  assert_words (&class, "The class sees: values");
  rw_projection_next_part (class.projection);
  rw_projection_hide_rail (class.projection, "m5", TRUE);
  assert_words (&class, "The class sees: trim map · −5 V hidden");
  rw_projection_set_frozen (class.projection, TRUE);
  assert_words (&class, "The class sees a frozen picture, then: trim map · −5 V hidden");
  rw_projection_set_blank (class.projection, TRUE);
  assert_words (&class, "The class sees nothing (blank), then: trim map · −5 V hidden");
  rw_projection_set_job (class.projection, NULL);
  assert_words (&class, "The class sees nothing: no job is open");
}

int
main (int    argc,
      char **argv)
{
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
  g_test_add_func ("/projection/freeze holds exactly what was shown, then catches up", test_freeze_holds);
  g_test_add_func ("/projection/a frozen picture outlasts its window", test_freeze_outlasts_the_window);
  g_test_add_func ("/projection/blank shows nothing, frozen or not", test_blank_shows_nothing);
  g_test_add_func ("/projection/a text stands beside the values or alone", test_text_beside_and_alone);
  g_test_add_func ("/projection/one rail in the spotlight, one part enlarged", test_spotlight_and_enlarge);
  g_test_add_func ("/projection/it looks through a view of its own", test_view_of_its_own);
  g_test_add_func ("/projection/the teacher is told what the class sees", test_tells_the_teacher);
  return g_test_run ();
}
