/* test-projection-hold.c: a picture that is frozen, blank, spoken over or lit from one side; the teacher is told.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <string.h>

#include "class-fixture.h"

/* --- freeze and blank ----------------------------------------------------------------------------- */

static void
test_freeze_holds (void)
{
  g_auto (Class) class = { 0 };
  g_autofree char *words = NULL, *words_later = NULL, *map_words = NULL, *map_words_later = NULL;

  class_init (&class);
  class_fill (&class, TRUE);
  rw_projection_set_part (class.projection, RW_PROJECTION_CHART);
  rw_projection_set_frozen (class.projection, TRUE);

  g_autofree char *text = class_dup_text (&class);
  g_autofree char *chart = class_draw_chart (&class, &words);
  g_autofree char *map = class_draw_map (&class, &map_words);

  class_add_value (&class, 0, 50, "p5", 5.31, FALSE);
  class_add_value (&class, 0, 51, "p5", 5.32, TRUE);
  class_add (&class, 0, 52, rw_event_make_trim (0));
  class_add (&class, 0, 53, rw_event_make_note (0, "later"));
  rw_view_set_horizon (rw_job_get_view (class.job), 500);
  rw_job_set_spot (class.job, "p12", RW_PLACE_TERMINALS, RW_KIND_DC);
  class_settle ();
  rw_projection_set_part (class.projection, RW_PROJECTION_VALUES);
  rw_projection_set_enlarged (class.projection, TRUE);
  rw_projection_set_spotlight (class.projection, "p12");
  rw_projection_hide_rail (class.projection, "p12", TRUE);
  rw_projection_send (class.projection, RW_SENT_NOTE);
  class_settle ();

  g_autofree char *text_later = class_dup_text (&class);
  g_autofree char *chart_later = class_draw_chart (&class, &words_later);
  g_autofree char *map_later = class_draw_map (&class, &map_words_later);

  g_assert_cmpstr (text, ==, text_later);
  g_assert_cmpstr (chart, ==, chart_later);
  g_assert_cmpstr (words, ==, words_later);
  g_assert_cmpstr (map, ==, map_later);
  g_assert_cmpstr (map_words, ==, map_words_later);
  rw_projection_set_frozen (class.projection, FALSE);
  class_assert_says (&class, "later", TRUE);
  rw_projection_set_enlarged (class.projection, FALSE);
  class_assert_says (&class, "5.320", TRUE);
  class_assert_says (&class, "+12 V", FALSE);
}

/* A projector that is closed and opened again does not let a frozen picture go. */
static void
test_freeze_outlasts_the_window (void)
{
  g_auto (Class) class = { 0 };

  class_init (&class);
  class_fill (&class, TRUE);
  rw_projection_set_frozen (class.projection, TRUE);
  rw_projection_set_open (class.projection, FALSE);
  class_add_value (&class, 0, 50, "p5", 5.31, TRUE);
  class_settle ();
  rw_projection_set_open (class.projection, TRUE);
  class_assert_says (&class, "5.021", TRUE);
  class_assert_says (&class, "5.31", FALSE);
  rw_projection_set_frozen (class.projection, FALSE);
  class_assert_says (&class, "5.31", TRUE);
}

static void
test_blank_shows_nothing (void)
{
  static const char *const lines[] = { "line", NULL };
  g_auto (Class) class = { 0 };

  class_init (&class);
  class_fill (&class, TRUE);
  rw_projection_show_text (class.projection, "title", lines, NULL, 0, FALSE);
  rw_projection_set_frozen (class.projection, TRUE);
  rw_projection_set_blank (class.projection, TRUE);

  const RwProjectionContent *content = rw_projection_get_content (class.projection);
  g_autofree char *text = class_dup_text (&class);

  g_assert_true (content->blank);
  g_assert_cmpstr (text, ==, "");
  g_assert_cmpuint (content->rails->len + content->shown->len, ==, 0);
  g_assert_null (content->title);
  g_assert_null (content->lines);
  rw_projection_set_blank (class.projection, FALSE);
  class_assert_says (&class, "title", TRUE);
}

/* --- the rest ------------------------------------------------------------------------------------- */

static void
test_text_beside_and_alone (void)
{
  static const char *const lines[] = { "What will it read?", NULL };
  static const char *const cells[] = { "Who", "Volts", "Team A", "4.95", NULL };
  g_auto (Class) class = { 0 };

  class_init (&class);
  class_fill (&class, TRUE);
  rw_projection_show_text (class.projection, "Call it first", lines, cells, 2, FALSE);
  class_assert_says (&class, "Call it first", TRUE);
  class_assert_says (&class, "Team A, 4.95", TRUE);
  class_assert_says (&class, "+12 V", TRUE);
  rw_projection_show_text (class.projection, "Call it first", lines, NULL, 0, TRUE);
  class_assert_says (&class, "+12 V", FALSE);
  class_assert_says (&class, "Team A", FALSE);
  g_assert_true (rw_projection_has_text (class.projection));
  rw_projection_clear_text (class.projection);
  class_assert_says (&class, "Call it first", FALSE);
  class_assert_says (&class, "+12 V", TRUE);
}

static void
test_spotlight_and_enlarge (void)
{
  g_auto (Class) class = { 0 };

  class_init (&class);
  class_fill (&class, TRUE);
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
  class_assert_says (&class, "+12 V", FALSE);
  rw_projection_set_part (class.projection, RW_PROJECTION_CHART);
  g_assert_cmpuint (rw_projection_get_content (class.projection)->shown->len, ==, 0);
  rw_projection_set_part (class.projection, RW_PROJECTION_VALUES);
  rw_projection_set_enlarged (class.projection, FALSE);
  content = rw_projection_get_content (class.projection);
  g_assert_cmpuint (content->shown->len, ==, 2);
  for (guint i = 0; i < 2; i++) /* a light on what is hidden would tell that something is */
    g_assert_false (((const RwProjectionRail *) content->shown->pdata[i])->dim);
}

/* Its view is its own: what the class looks at changes nothing in the main window, and what the teacher points at
 * nothing there. */
static void
test_view_of_its_own (void)
{
  g_auto (Class) class = { 0 };

  class_init (&class);
  class_fill (&class, TRUE);

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
  g_test_add_func ("/projection/freeze holds exactly what was shown, then catches up", test_freeze_holds);
  g_test_add_func ("/projection/a frozen picture outlasts its window", test_freeze_outlasts_the_window);
  g_test_add_func ("/projection/blank shows nothing, frozen or not", test_blank_shows_nothing);
  g_test_add_func ("/projection/a text stands beside the values or alone", test_text_beside_and_alone);
  g_test_add_func ("/projection/one rail in the spotlight, one part enlarged", test_spotlight_and_enlarge);
  g_test_add_func ("/projection/it looks through a view of its own", test_view_of_its_own);
  g_test_add_func ("/projection/the teacher is told what the class sees", test_tells_the_teacher);
  return g_test_run ();
}
