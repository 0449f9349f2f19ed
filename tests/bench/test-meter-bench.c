/* test-meter-bench.c: meters in words, tried lines, captured text, and the next job listening by itself.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib/gstdio.h>
#include <math.h>

#include "bench-folder.h"
#include "rw-decoder.h"
#include "rw-meter-books.h"
#include "rw-meter-capture.h"
#include "rw-meter-listen.h"
#include "rw-meter-read-lines.h"
#include "rw-meter-words.h"

#define THIN "\u202f"

static void
assert_taken (char       *made,
              const char *wanted)
{
  g_assert_cmpstr (made, ==, wanted);
  g_free (made);
}

/* --- words ---------------------------------------------------------------------------------------- */

static void
test_figures (void)
{
  double value = NAN;
  g_autoptr (GError) error = NULL;

  assert_taken (rw_meter_words_figure (0.5), "0.5");
  assert_taken (rw_meter_words_figure (2), "2");
  assert_taken (rw_meter_words_figure (0.025), "0.025");
  assert_taken (rw_meter_words_figure (0), "0");
  g_assert_true (rw_meter_words_read_figure (" 0,05 % ", &value, &error));
  g_assert_cmpfloat (value, ==, 0.05);
  for (guint i = 0; i < 6; i++)
    {
      const char *const wrong[] = { "", "%", "-1", "OL", "3 V", "inf" };

      g_assert_false (rw_meter_words_read_figure (wrong[i], &value, &error));
      g_assert_nonnull (strstr (error->message, wrong[i]));
      g_clear_error (&error);
    }
  g_assert_cmpfloat (value, ==, 0.05);
}

static void
test_facts (void)
{
  g_autoptr (RwMeterFacts) facts = rw_meter_facts_new ("m2", "Yellow meter", 0.5, 2);

  assert_taken (rw_meter_words_facts (facts), "±(0.5 % + 2)");
  facts->ac = RW_METER_AC_TRUE_RMS;
  assert_taken (rw_meter_words_facts (facts), "±(0.5 % + 2), true RMS");
  facts->percent = facts->counts = 0;
  assert_taken (rw_meter_words_facts (facts), "accuracy not known, true RMS");
}

static void
test_sure (void)
{
  assert_taken (rw_meter_words_sure (0.95), "95 % sure");
  assert_taken (rw_meter_words_sure (1), "more than 99 % sure");
}

static void
test_stay (void)
{
  RwPlace place = RW_PLACE_WIRE;

  assert_taken (rw_meter_stay_to_text (NULL, RW_PLACE_TERMINALS), NULL);
  for (guint i = 0; i < RW_N_PLACES; i++)
    {
      g_autofree char *text = rw_meter_stay_to_text ("m5", (RwPlace) i);

      assert_taken (rw_meter_stay_from_text (text, &place), "m5");
      g_assert_cmpint (place, ==, i);
    }
  assert_taken (rw_meter_stay_from_text ("p5", &place), "p5");
  g_assert_cmpint (place, ==, RW_PLACE_BOARD);
  assert_taken (rw_meter_stay_from_text ("p5@nowhere", &place), NULL);
  assert_taken (rw_meter_stay_from_text (NULL, &place), NULL);
}

/* --- lines ---------------------------------------------------------------------------------------- */

static void
test_lines (void)
{
  g_autoptr (GError) error = NULL;

  assert_taken (rw_meter_read_lines ("5.012 VDC\r\n\r\n0.L V\nhello\n", NULL, '.', 9, &error),
                "5.012" THIN "V DC, step 0.001" THIN "V\noverload\nnot understood: “hello”");
  g_assert_no_error (error);
  assert_taken (rw_meter_read_lines ("a;-;1,5;V\nb;+;2,50;V\n", "{any};{sign};{number};{unit}", ',', 1, &error),
                "−1.5" THIN "V, step 0.1" THIN "V");
  g_assert_null (rw_meter_read_lines ("5 V", "{number", '.', 9, &error));
  g_assert_error (error, RW_DECODER_ERROR, RW_DECODER_ERROR_PATTERN);
}

/* What one line says does not change what another is read as. */
static void
test_lines_alone (void)
{
  g_autofree char *there = rw_meter_read_lines ("5.0 V\n500.0 V\n-5.0 V\n", NULL, '.', 9, NULL);
  g_autofree char *first = rw_meter_read_lines ("5.0 V\n", NULL, '.', 9, NULL);
  g_autofree char *second = rw_meter_read_lines ("500.0 V\n", NULL, '.', 9, NULL);
  g_autofree char *third = rw_meter_read_lines ("-5.0 V\n", NULL, '.', 9, NULL);
  g_autofree char *apart = g_strjoin ("\n", first, second, third, NULL);

  g_assert_cmpstr (there, ==, apart);
}

static void
test_captured (void)
{
  static const guint8 bytes[] = "\x02" "5.0 V\r\n6.0 V\r7.0 V\n\xff\t8\0" "9";

  assert_taken (rw_meter_capture_to_text (bytes, sizeof bytes - 1), "5.0 V\n6.0 V\n7.0 V\n\ufffd\t8\ufffd9");
  assert_taken (rw_meter_capture_to_text (NULL, 0), "");
}

/* --- the next job --------------------------------------------------------------------------------- */

static RwJob *
make_job (const char *name)
{
  g_autofree char *path = g_test_build_filename (G_TEST_BUILT, name, NULL);
  g_autoptr (GPtrArray) profiles = rw_profile_list (NULL);
  g_autoptr (GPtrArray) meters = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_meter_facts_free);
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();
  g_autoptr (GError) error = NULL;

  g_remove (path);

  RwJob *job = rw_job_new_bench (rw_session_header_new (profiles->pdata[0], "Pier Pilot", "", meters, now), path, &error);

  g_assert_no_error (error);
  return job;
}

static RwKnownMeter *
put_meter (const char *id,
           const char *name,
           const char *port)
{
  static const RwSerialSettings line = { .baud = 9600, .bits = 8, .stop_bits = 1 };
  g_autoptr (RwMeterFacts) facts = rw_meter_facts_new (id, name, 0.5, 2);
  RwKnownMeter *meter = rw_known_meter_new (facts);

  if (port != NULL)
    {
      meter->address = rw_meter_address_new_serial (port, &line);
      meter->format = g_strdup ("lines");
    }
  rw_meter_books_put (meter);
  g_assert_null (rw_meter_books_get_problem ());
  return meter;
}

static void
test_resume (void)
{
  g_autoptr (GSettings) settings = g_settings_new ("org.railwright.bench");
  g_autoptr (RwKnownMeter) eye = put_meter ("m1", "Bench meter", NULL);
  g_autoptr (RwKnownMeter) left = put_meter ("m2", "Left meter", "/dev/no-such-port-a");
  g_autoptr (RwKnownMeter) right = put_meter ("m3", "Right meter", "/dev/no-such-port-b");
  g_autoptr (RwJob) first = make_job ("resume-1.rwlog");
  g_autoptr (RwJob) second = make_job ("resume-2.rwlog");
  g_autoptr (RwJob) third = make_job ("resume-3.rwlog");
  RwJobMeterInfo info;
  g_autoptr (GError) error = NULL;

  rw_meter_resume (first, settings);
  g_assert_cmpuint (rw_job_get_n_meters (first), ==, 0);
  g_assert_false (rw_meter_listen (first, eye, settings, &error));
  g_assert_error (error, RW_DECODER_ERROR, RW_DECODER_ERROR_OPTION);
  right->rail = rw_meter_stay_to_text (rw_profile_get_rail (rw_job_get_profile (first), 0)->id, RW_PLACE_TERMINALS);
  rw_meter_books_put (right);
  g_assert_true (rw_meter_listen (first, left, settings, NULL));
  g_assert_true (rw_meter_listen (first, right, settings, NULL));

  rw_meter_resume (second, settings);
  g_assert_cmpuint (rw_job_get_n_meters (second), ==, 2);
  g_assert_true (rw_meter_is_listened_to (second, "m3", &info));
  g_assert_cmpstr (info.rail, ==, rw_profile_get_rail (rw_job_get_profile (first), 0)->id);
  g_assert_cmpint (info.place, ==, RW_PLACE_TERMINALS);
  g_assert_nonnull (rw_session_find_meter (rw_job_get_session (second), "m2"));

  rw_meter_let_go (second, "m2", settings);
  rw_meter_books_remove ("m3");
  rw_meter_resume (third, settings);
  g_assert_cmpuint (rw_job_get_n_meters (third), ==, 0);
}

int
main (int    argc,
      char **argv)
{
  g_autofree char *home = g_dir_make_tmp ("meter-home-XXXXXX", NULL);
  int status;

  /* GLib's own isolation of folders leaks, which a run with sanitizers would count. */
  g_setenv ("XDG_DATA_HOME", home, TRUE);
  g_setenv ("XDG_CONFIG_HOME", home, TRUE);
  g_test_init (&argc, &argv, NULL);

  /* As the build tree has it. */
  g_autofree char *schemas = g_test_build_filename (G_TEST_BUILT, "..", "data", NULL);

  g_setenv ("GSETTINGS_SCHEMA_DIR", schemas, TRUE);
  g_test_add_func ("/meter-bench/figures are shown and read as data sheets write them", test_figures);
  g_test_add_func ("/meter-bench/facts in short", test_facts);
  g_test_add_func ("/meter-bench/nothing is ever wholly sure", test_sure);
  g_test_add_func ("/meter-bench/where a meter stays survives the book", test_stay);
  g_test_add_func ("/meter-bench/each tried line says what it is read as", test_lines);
  g_test_add_func ("/meter-bench/tried lines are read each for itself", test_lines_alone);
  g_test_add_func ("/meter-bench/captured bytes become clean text", test_captured);
  g_test_add_func ("/meter-bench/the next job listens to what was listened to last, where it stays", test_resume);
  status = g_test_run ();
  remove_folder (home);
  return status;
}
