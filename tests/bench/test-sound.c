/* test-sound.c: what is played reaches the device, and a machine without one is left in peace.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every case runs in a process of its own (wav-device.h).
 */
#include "config.h"

#include <glib.h>
#include <glib/gstdio.h>
#include <sys/resource.h>

#include "wav-device.h"

/* --- helpers -------------------------------------------------------------------------------------- */

static double
cpu_seconds (void)
{
  struct rusage usage;

  getrusage (RUSAGE_SELF, &usage);
  return (double) (usage.ru_utime.tv_sec + usage.ru_stime.tv_sec)
         + 1e-6 * (double) (usage.ru_utime.tv_usec + usage.ru_stime.tv_usec);
}

/* Whoever waits for it must not hang: the window is closing. */
static void
drop (RwSound *sound)
{
  const gint64 before = g_get_monotonic_time ();

  g_assert_finalize_object (sound);
  g_assert_cmpint (g_get_monotonic_time () - before, <, G_USEC_PER_SEC / 10);
}

/* --- no device ------------------------------------------------------------------------------------ */

static void
test_no_device (void)
{
  if (!g_test_subprocess ())
    {
      wav_run_again (NULL);
      return;
    }

  RwSound *sound = rw_sound_new ();

  wav_wait_for (sound);
  g_assert_false (rw_sound_is_available (sound));
  g_assert_nonnull (rw_sound_get_problem (sound));
  for (int event = 0; event < RW_N_SOUND_EVENTS; event++)
    rw_sound_play (sound, event);
  rw_sound_set_target (sound, TRUE, 0.1, 0.05, FALSE);
  rw_sound_set_volume (sound, 1);

  const double before = cpu_seconds ();

  wav_run_for (400);
  g_assert_cmpfloat (cpu_seconds () - before, <, 0.1);
  rw_sound_set_enabled (sound, FALSE);
  rw_sound_set_enabled (sound, TRUE);
  wav_run_for (50);
  g_assert_false (rw_sound_is_available (sound));
  drop (sound);
}

#ifdef HAVE_ALSA

static void
test_tone_reaches_device (void)
{
  if (!g_test_subprocess ())
    {
      g_auto (WavDevice) device = { 0 };
      double seconds, hertz;
      gsize n;

      wav_device_init (&device);
      wav_run_again (&device);

      g_autofree gint16 *samples = wav_device_read (&device, &n);

      /* a third of a second, as fast as the clock, not as fast as a file can be written */
      wav_look_at (samples, n, &seconds, &hertz);
      g_assert_cmpfloat (seconds, >, 0.25);
      g_assert_cmpfloat (seconds, <, 0.6);
      g_assert_cmpfloat_with_epsilon (hertz, rw_tone_get_pitch (0.5), 3);
      g_assert_cmpint (n, <, 3 * RW_TONE_RATE);
      return;
    }

  RwSound *sound = rw_sound_new ();

  wav_wait_for (sound);
  g_assert_true (rw_sound_is_available (sound));
  g_assert_null (rw_sound_get_problem (sound));
  rw_sound_set_target (sound, TRUE, 0.05, 0.1, TRUE);
  wav_run_for (350);
  rw_sound_set_target (sound, FALSE, 0, 0, FALSE);
  wav_run_for (1400);
  drop (sound);
}

static void
test_signal_reaches_device (void)
{
  if (!g_test_subprocess ())
    {
      g_auto (WavDevice) device = { 0 };
      double seconds, hertz;
      gsize n;

      wav_device_init (&device);
      wav_run_again (&device);

      g_autofree gint16 *samples = wav_device_read (&device, &n);

      wav_look_at (samples, n, &seconds, &hertz);
      g_assert_cmpfloat_with_epsilon (seconds, rw_tone_get_length (RW_SOUND_ASKED) - 0.10, 0.02);
      return;
    }

  RwSound *sound = rw_sound_new ();

  wav_wait_for (sound);
  rw_sound_play (sound, RW_SOUND_ASKED);
  wav_run_for (2000);
  drop (sound);
}

/* The device is closed after a second, and nothing runs any more. */
static void
test_silence_costs_nothing (void)
{
  if (!g_test_subprocess ())
    {
      g_auto (WavDevice) device = { 0 };

      wav_device_init (&device);
      wav_run_again (&device);
      return;
    }

  RwSound *sound = rw_sound_new ();
  GStatBuf then, now;

  wav_wait_for (sound);
  rw_sound_play (sound, RW_SOUND_KEPT);
  wav_run_for (1600);
  g_assert_cmpint (g_stat (g_getenv (WAV_PATH_VARIABLE), &then), ==, 0);
  g_assert_cmpint (then.st_size, >, WAV_HEADER_BYTES);

  const double before = cpu_seconds ();

  wav_run_for (600);
  g_assert_cmpfloat (cpu_seconds () - before, <, 0.02);
  g_assert_cmpint (g_stat (g_getenv (WAV_PATH_VARIABLE), &now), ==, 0);
  g_assert_cmpint (now.st_size, ==, then.st_size);
  drop (sound);
}

static void
test_switched_off_is_silent (void)
{
  if (!g_test_subprocess ())
    {
      g_auto (WavDevice) device = { 0 };
      double seconds = 0, hertz;
      gsize n = 0;

      wav_device_init (&device);
      wav_run_again (&device);
      if (g_file_test (device.wav, G_FILE_TEST_EXISTS))
        {
          g_autofree gint16 *samples = wav_device_read (&device, &n);

          wav_look_at (samples, n, &seconds, &hertz);
        }
      g_assert_cmpfloat (seconds, ==, 0);
      return;
    }

  RwSound *sound = rw_sound_new ();

  wav_wait_for (sound);
  rw_sound_set_enabled (sound, FALSE);
  rw_sound_set_target (sound, TRUE, 0.05, 0.1, TRUE);
  rw_sound_play (sound, RW_SOUND_DANGER);
  wav_run_for (300);
  drop (sound);
}

/* Thrown away in the middle of a signal, nothing waits for its end. */
static void
test_dropped_while_it_sounds (void)
{
  if (!g_test_subprocess ())
    {
      g_auto (WavDevice) device = { 0 };

      wav_device_init (&device);
      wav_run_again (&device);
      return;
    }

  for (guint i = 0; i < 20; i++)
    {
      RwSound *sound = rw_sound_new ();

      rw_sound_play (sound, RW_SOUND_DANGER);
      wav_run_for (i);
      drop (sound);
    }
  wav_run_for (200);
}

#endif

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sound/a machine without a device is left in peace", test_no_device);
#ifdef HAVE_ALSA
  g_test_add_func ("/sound/the tone reaches the device", test_tone_reaches_device);
  g_test_add_func ("/sound/a signal reaches the device", test_signal_reaches_device);
  g_test_add_func ("/sound/silence costs nothing", test_silence_costs_nothing);
  g_test_add_func ("/sound/switched off it is silent", test_switched_off_is_silent);
  g_test_add_func ("/sound/dropped while it sounds nothing hangs", test_dropped_while_it_sounds);
#endif
  return g_test_run ();
}
