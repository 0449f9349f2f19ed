/* test-lesson.c: lessons out of their files, and what is refused.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#include "fixtures.h"
#include "rw-lesson.h"

#define HEAD "\"id\":\"a-b\",\"title\":\"A\",\"about\":\"What it is\",\"minutes\":5,"
#define ON "\"on\":{\"session\":\"demo-1\"},"

static RwLesson *
load (const char *folder,
      const char *text,
      GError    **error)
{
  g_autofree char *path = g_build_filename (folder, "lesson.json", NULL);

  g_assert_true (g_file_set_contents (path, text, -1, NULL));
  return rw_lesson_load (path, error);
}

static void
test_a_whole_lesson (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autoptr (GError) error = NULL;
  g_autoptr (RwLesson) lesson = load (
      folder,
      "{" HEAD "\"caution\":\"Mind\",\"unknown\":[1],\"on\":{\"practice\":{\"profile\":\"p-1\",\"cabinet\":\"C\",\"seed\":7,"
      "\"faults\":[{\"cause\":\"trim-low\",\"strength\":0.5},{\"cause\":\"x\"}]}},\"steps\":["
      "{\"title\":\"One\",\"say\":\"S\",\"class\":\"K\",\"ask\":\"Q?\",\"caution\":\"C\",\"hide\":[\"p12\",\"m5\"],\"show\":\"map\","
      "\"spotlight\":\"p5\",\"call\":{\"rail\":\"p12\",\"place\":\"chip\"},\"go\":{\"t\":12.5},\"until\":\"reveal\"},"
      "{\"title\":\"Two\",\"go\":{\"chapter\":\"reset seen\"}}]}",
      &error);

  g_assert_no_error (error);

  const RwLessonStep *one = lesson->steps->pdata[0], *two = lesson->steps->pdata[1];

  g_assert_cmpstr (lesson->id, ==, "a-b");
  g_assert_cmpstr (lesson->caution, ==, "Mind");
  g_assert_cmpfloat (lesson->minutes, ==, 5);
  g_assert_cmpstr (lesson->profile, ==, "p-1");
  g_assert_cmpuint (lesson->seed, ==, 7);
  g_assert_cmpfloat (g_array_index (lesson->faults, RwLessonFault, 0).strength, ==, 0.5);
  g_assert_cmpfloat (g_array_index (lesson->faults, RwLessonFault, 1).strength, ==, 1);
  g_assert_null (lesson->session);
  g_assert_cmpstr (one->words, ==, "K");
  g_assert_cmpstr (one->ask, ==, "Q?");
  g_assert_cmpuint (one->hide->len, ==, 2);
  g_assert_cmpint (one->show, ==, RW_LESSON_SHOW_MAP);
  g_assert_cmpstr (one->call_rail, ==, "p12");
  g_assert_cmpint (one->call_place, ==, RW_PLACE_CHIP);
  g_assert_cmpfloat (one->t, ==, 12.5);
  g_assert_cmpint (one->until, ==, RW_LESSON_UNTIL_REVEAL);
  g_assert_cmpstr (two->chapter, ==, "reset seen");
  g_assert_true (isnan (two->t));
  g_assert_cmpint (two->show, ==, RW_LESSON_SHOW_MAP); /* as the step before */
  g_assert_cmpuint (two->hide->len, ==, 0);
  g_assert_null (two->spotlight);
  g_assert_null (two->say);
  g_assert_cmpint (two->until, ==, RW_LESSON_UNTIL_NOTHING);
  fixture_remove (folder);
}

static void
test_a_lesson_on_a_drill (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autoptr (GError) error = NULL;
  g_autoptr (RwLesson) lesson = load (
      folder, "{" HEAD "\"on\":{\"practice\":{\"drill\":2,\"seed\":41}},\"steps\":[{\"title\":\"T\"}]}", &error);

  g_assert_no_error (error);
  g_assert_cmpuint (lesson->drill, ==, 2);
  g_assert_cmpuint (lesson->seed, ==, 41);
  g_assert_null (lesson->profile);
  fixture_remove (folder);
}

static void
test_what_is_wrong_is_named (void)
{
  static const struct
  {
    const char *text, *names;
  } rows[] = {
    { "", "empty" },
    { "[]", "object" },
    { "{\"title\":\"A\"}", "“id”" },
    { "{\"id\":\"../etc/passwd\"}", "“id”" },
    { "{\"id\":\"a\",\"title\":\"\"}", "“title”" },
    { "{\"id\":\"a\",\"title\":\"A\"}", "“about”" },
    { "{\"id\":\"a\",\"title\":\"A\",\"about\":\"B\",\"minutes\":\"5\"}", "“minutes”" },
    { "{" HEAD "\"steps\":[{\"title\":\"T\"}]}", "“on”" },
    { "{" HEAD "\"on\":{\"session\":\"a/b\"},\"steps\":[{\"title\":\"T\"}]}", "“session”" },
    { "{" HEAD "\"on\":{\"practice\":{\"cabinet\":\"C\"}},\"steps\":[{\"title\":\"T\"}]}", "“profile”" },
    { "{" HEAD "\"on\":{\"practice\":{\"drill\":4}},\"steps\":[{\"title\":\"T\"}]}", "“drill”" },
    { "{" HEAD "\"on\":{\"practice\":{\"profile\":\"p\",\"cabinet\":\"C\",\"faults\":[{\"cause\":\"x\",\"strength\":2}]}}}",
      "“strength”" },
    { "{" HEAD ON "\"steps\":[]}", "“steps”" },
    { "{" HEAD ON "\"steps\":{}}", "“steps”" },
    { "{" HEAD ON "\"steps\":[{\"title\":\"T\"},7]}", "steps[1]" },
    { "{" HEAD ON "\"steps\":[{\"title\":\"T\"},{\"say\":\"x\"}]}", "steps[1]: key “title”" },
    { "{" HEAD ON "\"steps\":[{\"title\":\"T\",\"say\":5}]}", "steps[0]: key “say”" },
    { "{" HEAD ON "\"steps\":[{\"title\":\"T\",\"show\":\"moon\"}]}", "“show”" },
    { "{" HEAD ON "\"steps\":[{\"title\":\"T\",\"until\":\"\"}]}", "“until”" },
    { "{" HEAD ON "\"steps\":[{\"title\":\"T\",\"hide\":\"p5\"}]}", "“hide”" },
    { "{" HEAD ON "\"steps\":[{\"title\":\"T\",\"hide\":[\"\"]}]}", "“hide”" },
    { "{" HEAD ON "\"steps\":[{\"title\":\"T\",\"spotlight\":5}]}", "“spotlight”" },
    { "{" HEAD ON "\"steps\":[{\"title\":\"T\",\"call\":{\"rail\":\"p5\",\"place\":\"moon\"}}]}", "“place”" },
    { "{" HEAD ON "\"steps\":[{\"title\":\"T\",\"call\":\"p5\"}]}", "“call”" },
    { "{" HEAD ON "\"steps\":[{\"title\":\"T\",\"call\":{\"rail\":\"../p5\",\"place\":\"board\"}}]}", "“rail”" },
    { "{" HEAD ON "\"steps\":[{\"title\":\"T\",\"go\":{}}]}", "“chapter”" },
    { "{" HEAD ON "\"steps\":[{\"title\":\"T\",\"go\":{\"t\":-1}}]}", "“t”" },
  };
  g_autofree char *folder = fixture_folder ();

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GError) error = NULL;

      if (load (folder, rows[i].text, &error) != NULL)
        g_error ("taken: %s", rows[i].text);
      g_test_message ("%s", error->message);
      g_assert_error (error, RW_LESSON_ERROR, RW_LESSON_ERROR_FORMAT);
      g_assert_nonnull (strstr (error->message, "lesson.json"));
      g_assert_nonnull (strstr (error->message, rows[i].names));
    }
  fixture_remove (folder);
}

static void
test_a_strangers_lesson_asks_for_little (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autoptr (GString) many = g_string_new ("{" HEAD ON "\"steps\":[{\"title\":\"T\"}");
  g_autoptr (GString) deep = g_string_new ("{\"id\":");
  g_autofree char *huge = g_strnfill (RW_LESSON_MAX_BYTES + 1, ' ');
  g_autofree char *long_text = g_strnfill (RW_LESSON_MAX_TEXT + 1, 'a');
  g_autofree char *wordy = g_strdup_printf ("{" HEAD ON "\"steps\":[{\"title\":\"T\",\"say\":\"%s\"}]}", long_text);

  for (guint i = 0; i < RW_LESSON_MAX_STEPS; i++)
    g_string_append (many, ",{\"title\":\"T\"}");
  g_string_append (many, "]}");
  for (guint i = 0; i < 1000; i++)
    g_string_append_c (deep, '[');

  const char *const texts[] = { many->str, deep->str, huge, wordy };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_null (load (folder, texts[i], &error));
      g_assert_error (error, RW_LESSON_ERROR, RW_LESSON_ERROR_FORMAT);
    }

  g_autoptr (GError) missing = NULL;

  g_assert_null (rw_lesson_load ("/nowhere/at-all.json", &missing));
  g_assert_error (missing, RW_LESSON_ERROR, RW_LESSON_ERROR_READ);
  fixture_remove (folder);
}

static void
test_words_are_made_plain (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autoptr (GError) error = NULL;
  g_autoptr (RwLesson) lesson = load (
      folder, "{" HEAD ON "\"steps\":[{\"title\":\"a\\u202eb\",\"say\":\"<b>x</b>\"}]}", &error);

  g_assert_no_error (error);
  g_assert_cmpstr (((RwLessonStep *) lesson->steps->pdata[0])->title, ==, "a\uFFFDb");
  g_assert_cmpstr (((RwLessonStep *) lesson->steps->pdata[0])->say, ==, "<b>x</b>");
  fixture_remove (folder);
}

static void
test_shipped_lessons_are_found_with_their_sessions (void)
{
  g_autoptr (GPtrArray) problems = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) lessons = rw_lesson_list (problems);

  g_assert_cmpuint (problems->len, ==, 0);
  g_assert_cmpuint (lessons->len, >=, 3);
  for (guint i = 0; i < lessons->len; i++)
    {
      const RwLesson *lesson = lessons->pdata[i];
      g_autofree char *path = rw_lesson_find_session (lesson);

      g_assert_true ((lesson->session != NULL) == (path != NULL));
    }
}

static void
test_a_rail_that_is_not_there_is_found (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autoptr (RwProfile) profile = fixture_profile ();
  g_autoptr (RwLesson) good = load (folder, "{" HEAD ON "\"steps\":[{\"title\":\"T\",\"hide\":[\"p12\"],\"spotlight\":\"p5\"}]}", NULL);
  g_autoptr (RwLesson) hide = load (folder, "{" HEAD ON "\"steps\":[{\"title\":\"T\"},{\"title\":\"T\",\"hide\":[\"p5\",\"q\"]}]}", NULL);
  g_autoptr (RwLesson) call
      = load (folder, "{" HEAD ON "\"steps\":[{\"title\":\"T\",\"call\":{\"rail\":\"r\",\"place\":\"board\"}}]}", NULL);

  g_assert_null (rw_lesson_find_stranger (good, profile));
  g_assert_cmpstr (rw_lesson_find_stranger (hide, profile), ==, "q");
  g_assert_cmpstr (rw_lesson_find_stranger (call, profile), ==, "r");
  fixture_remove (folder);
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/lesson/a-whole-lesson", test_a_whole_lesson);
  g_test_add_func ("/lesson/a-lesson-on-a-drill", test_a_lesson_on_a_drill);
  g_test_add_func ("/lesson/what-is-wrong-is-named", test_what_is_wrong_is_named);
  g_test_add_func ("/lesson/a-strangers-lesson-asks-for-little", test_a_strangers_lesson_asks_for_little);
  g_test_add_func ("/lesson/words-are-made-plain", test_words_are_made_plain);
  g_test_add_func ("/lesson/shipped-lessons-are-found-with-their-sessions",
                   test_shipped_lessons_are_found_with_their_sessions);
  g_test_add_func ("/lesson/a-rail-that-is-not-there-is-found", test_a_rail_that_is_not_there_is_found);
  return g_test_run ();
}
