/* test-sound-follow.c: what a job sounds like, heard at the device.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every case runs in a process of its own (wav-device.h).
 */
#include "config.h"

#include <glib.h>
#include <glib/gstdio.h>

#include "rw-sound-follow.h"
#include "wav-device.h"

#ifdef HAVE_ALSA

typedef struct
{
  char          *path;
  RwJob         *job;
  RwSound       *sound;
  RwSoundFollow *follow;
} Bench;

static void
bench_init (Bench *self)
{
  g_autofree char *profile_path = g_build_filename (g_getenv ("RAILWRIGHT_DATA_DIR"), "profiles", "classic-5-12-m5.json",
                                                    NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (RwProfile) profile = rw_profile_load (profile_path, &error);
  g_autoptr (GPtrArray) meters = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_meter_facts_free);
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();

  g_assert_no_error (error);
  self->path = g_strconcat (g_getenv (WAV_PATH_VARIABLE), ".rwlog", NULL);
  g_ptr_array_add (meters, rw_meter_facts_new ("m1", "bench", 0.2, 1));
  self->job = rw_job_new_bench (rw_session_header_new (profile, "Tidepool Racer", "B-07", meters, now), self->path, &error);
  g_assert_no_error (error);
  self->sound = rw_sound_new ();
  wav_wait_for (self->sound);
  self->follow = rw_sound_follow_new (self->sound);
  rw_sound_follow_set_job (self->follow, self->job);
}

/* Until the device is closed, so that the file is whole. */
static void
bench_clear (Bench *self)
{
  rw_sound_follow_set_job (self->follow, NULL);
  wav_run_for (1500);
  g_assert_finalize_object (self->follow);
  g_assert_finalize_object (self->sound);
  g_clear_object (&self->job);
  g_unlink (self->path);
  g_free (self->path);
}

static RwReading
reads (double value)
{
  return rw_reading_make ("p5", RW_PLACE_BOARD, RW_KIND_DC, value, 0.01, "m1");
}

/* As a meter that reads ten times a second. */
static void
show_for (Bench *bench,
          double value,
          guint  msec)
{
  const RwReading sample = reads (value);

  for (guint i = 0; i < msec / 100; i++)
    {
      RwEvent event = rw_event_make_sample (rw_job_get_now (bench->job), &sample);

      rw_session_add (rw_job_get_session (bench->job), &event);
      wav_run_for (100);
    }
}

static void
keep (Bench *bench,
      double value)
{
  const RwReading reading = reads (value);
  RwEvent event = rw_event_make_reading (0, &reading);

  rw_job_add (bench->job, &event);
}

static void
listen (double *seconds,
        double *hertz)
{
  g_auto (WavDevice) device = { 0 };
  gsize n;

  wav_device_init (&device);
  wav_run_again (&device);

  g_autofree gint16 *samples = wav_device_read (&device, &n);

  wav_look_at (samples, n, seconds, hertz);
}

/* The middle of the limits is 5.05 V, half of their width 0.15 V. */
static void
test_inside (void)
{
  Bench bench;
  double seconds, hertz;

  if (!g_test_subprocess ())
    {
      listen (&seconds, &hertz);
      g_assert_cmpfloat (seconds, >, 0.7);
      g_assert_cmpfloat_with_epsilon (hertz, rw_tone_get_pitch (0.05 / 0.15), 5);
      return;
    }
  bench_init (&bench);
  show_for (&bench, 5.10, 1000);
  bench_clear (&bench);
}

/* Old, in the air, the wrong way round: nothing to be led by. */
static void
test_nothing_to_follow (void)
{
  Bench bench;
  double seconds, hertz;

  if (!g_test_subprocess ())
    {
      listen (&seconds, &hertz);
      g_assert_cmpfloat (seconds, ==, 0);
      return;
    }
  bench_init (&bench);
  show_for (&bench, 0.01, 300);
  show_for (&bench, -5.02, 300);

  const RwReading sample = reads (5.05);
  RwEvent event = rw_event_make_sample (rw_job_get_now (bench.job) - 10, &sample);

  rw_session_add (rw_job_get_session (bench.job), &event);
  wav_run_for (300);
  bench_clear (&bench);
}

static void
test_ends_when_old (void)
{
  Bench bench;
  double seconds, hertz;

  if (!g_test_subprocess ())
    {
      listen (&seconds, &hertz);
      g_assert_cmpfloat (seconds, >, 2.5);
      g_assert_cmpfloat (seconds, <, 4.5);
      return;
    }
  bench_init (&bench);
  show_for (&bench, 5.10, 200);
  wav_run_for (4500);
  bench_clear (&bench);
}

static void
test_kept (void)
{
  Bench bench;
  double seconds, hertz;

  if (!g_test_subprocess ())
    {
      listen (&seconds, &hertz);
      g_assert_cmpfloat_with_epsilon (seconds, rw_tone_get_length (RW_SOUND_KEPT) - 0.05, 0.02);
      return;
    }
  bench_init (&bench);
  keep (&bench, 5.05);
  wav_run_for (800);
  bench_clear (&bench);
}

static void
test_kept_outside (void)
{
  Bench bench;
  double seconds, hertz;

  if (!g_test_subprocess ())
    {
      listen (&seconds, &hertz);
      g_assert_cmpfloat_with_epsilon (seconds, rw_tone_get_length (RW_SOUND_OUTSIDE) - 0.10, 0.02);
      return;
    }
  bench_init (&bench);
  keep (&bench, 4.60);
  wav_run_for (800);
  bench_clear (&bench);
}

/* A kept value that the board does not survive is both outside and a danger: the danger is what is heard first. */
static void
test_danger (void)
{
  Bench bench;
  double seconds, hertz;

  if (!g_test_subprocess ())
    {
      listen (&seconds, &hertz);
      g_assert_cmpfloat (seconds, >, rw_tone_get_length (RW_SOUND_DANGER) - 0.3);
      g_assert_cmpfloat (hertz, <, 250);
      return;
    }
  bench_init (&bench);
  keep (&bench, 5.70);
  wav_run_for (3500);
  bench_clear (&bench);
}

/* What was in the file when it was opened. */
static void
test_the_past_is_quiet (void)
{
  Bench bench;
  double seconds, hertz;

  if (!g_test_subprocess ())
    {
      listen (&seconds, &hertz);
      g_assert_cmpfloat (seconds, ==, 0);
      return;
    }
  bench_init (&bench);
  rw_sound_follow_set_job (bench.follow, NULL);
  keep (&bench, 5.70);
  rw_sound_follow_set_job (bench.follow, bench.job);
  wav_run_for (800);
  bench_clear (&bench);
}

#endif

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
#ifdef HAVE_ALSA
  g_test_add_func ("/sound-follow/a live value is heard at its distance", test_inside);
  g_test_add_func ("/sound-follow/nobody is led by nothing", test_nothing_to_follow);
  g_test_add_func ("/sound-follow/an old value falls silent", test_ends_when_old);
  g_test_add_func ("/sound-follow/kept", test_kept);
  g_test_add_func ("/sound-follow/kept outside", test_kept_outside);
  g_test_add_func ("/sound-follow/danger", test_danger);
  g_test_add_func ("/sound-follow/what was before is quiet", test_the_past_is_quiet);
#endif
  return g_test_run ();
}
