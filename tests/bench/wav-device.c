/* wav-device.c: a sound device that writes what is played into a file.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "wav-device.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

void
wav_device_init (WavDevice *self)
{
  g_autoptr (GError) error = NULL;

  self->folder = g_dir_make_tmp ("rw-sound-XXXXXX", &error);
  g_assert_no_error (error);
  self->config = g_build_filename (self->folder, "asound.conf", NULL);
  self->wav = g_build_filename (self->folder, "played.wav", NULL);

  g_autofree char *text = g_strdup_printf ("pcm.!default { type plug slave.pcm \"rec\" }\n"
                                           "pcm.rec { type file slave.pcm \"null\" file \"%s\" format \"wav\" }\n"
                                           "pcm.null { type null }\n",
                                           self->wav);

  g_file_set_contents (self->config, text, -1, &error);
  g_assert_no_error (error);
}

void
wav_device_clear (WavDevice *self)
{
  g_unlink (self->config);
  g_unlink (self->wav);
  g_rmdir (self->folder);
  g_free (self->folder);
  g_free (self->config);
  g_free (self->wav);
}

void
wav_run_again (WavDevice *device)
{
  g_setenv ("ALSA_CONFIG_PATH", device != NULL ? device->config : "/dev/null", TRUE);
  g_setenv (WAV_PATH_VARIABLE, device != NULL ? device->wav : "", TRUE);
  g_test_trap_subprocess (NULL, 30 * G_USEC_PER_SEC, 0);
  g_test_trap_assert_passed ();
  g_test_trap_assert_stderr ("");
}

gint16 *
wav_device_read (WavDevice *self,
                 gsize     *n)
{
  g_autofree char *bytes = NULL;
  g_autoptr (GError) error = NULL;
  gsize length;
  guint32 rate;
  guint16 channels;

  g_file_get_contents (self->wav, &bytes, &length, &error);
  g_assert_no_error (error);
  g_assert_cmpint (length, >=, WAV_HEADER_BYTES);
  memcpy (&channels, bytes + 22, sizeof channels);
  memcpy (&rate, bytes + 24, sizeof rate);
  g_assert_cmpint (GUINT16_FROM_LE (channels), ==, 1);
  g_assert_cmpint (GUINT32_FROM_LE (rate), ==, RW_TONE_RATE);
  *n = (length - WAV_HEADER_BYTES) / sizeof (gint16);
  return g_memdup2 (bytes + WAV_HEADER_BYTES, *n * sizeof (gint16));
}

/* Seconds from the first to the last sample that is heard, and the pitch between them. */
void
wav_look_at (const gint16 *samples,
             gsize         n,
             double       *seconds,
             double       *hertz)
{
  gsize first = n, last = 0, first_wave = 0, last_wave = 0;
  guint waves = 0;

  for (gsize i = 1; i < n; i++)
    {
      if (ABS (samples[i]) > 50)
        {
          first = MIN (first, i);
          last = i;
        }
      if (samples[i - 1] < 0 && samples[i] >= 0)
        {
          first_wave = waves == 0 ? i : first_wave;
          last_wave = i;
          waves++;
        }
    }
  *seconds = last > first ? (double) (last - first) / RW_TONE_RATE : 0;
  *hertz = waves > 1 ? (waves - 1) * (double) RW_TONE_RATE / (double) (last_wave - first_wave) : (double) NAN;
}

/* --- the main loop -------------------------------------------------------------------------------- */

static gboolean
over_cb (gpointer data)
{
  *(gboolean *) data = TRUE;
  return G_SOURCE_REMOVE;
}

void
wav_run_for (guint msec)
{
  gboolean over = FALSE;

  g_timeout_add (msec, over_cb, &over);
  while (!over)
    g_main_context_iteration (NULL, TRUE);
}

void
wav_wait_for (RwSound *sound)
{
  g_autofree char *first = g_strdup (rw_sound_get_problem (sound));

  for (guint i = 0; i < 500 && g_strcmp0 (first, rw_sound_get_problem (sound)) == 0; i++)
    wav_run_for (10);
  g_assert_cmpstr (first, !=, rw_sound_get_problem (sound));
}
