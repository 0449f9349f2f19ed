/* rw-sound-device.c: the machine's sound device, through the ALSA library.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "default" reaches the desktop's sound server through the library's own plugins. The library prints what it does
 * not like on standard error unless it is told not to.
 */
#include "config.h"

#include "rw-sound-device.h"

#include <glib/gi18n-lib.h>

#ifdef HAVE_ALSA

#include <alsa/asoundlib.h>

#include "rw-tone.h"

static const guint latency_us = 40000;

struct _RwSoundDevice
{
  snd_pcm_t *pcm;
};

static void
say_nothing (const char *file,
             int         line,
             const char *function,
             int         err,
             const char *format,
             ...)
{
}

/* Opened without waiting, since another program may hold a device for itself; written to with waiting. */
static int
open_pcm (snd_pcm_t **pcm)
{
  int err = snd_pcm_open (pcm, "default", SND_PCM_STREAM_PLAYBACK, SND_PCM_NONBLOCK);

  if (err < 0)
    return err;
  err = snd_pcm_nonblock (*pcm, 0);
  if (err >= 0)
    err = snd_pcm_set_params (*pcm, SND_PCM_FORMAT_S16, SND_PCM_ACCESS_RW_INTERLEAVED, 1, RW_TONE_RATE, 1,
                              latency_us);
  if (err < 0)
    snd_pcm_close (*pcm);
  return err;
}

RwSoundDevice *
rw_sound_device_open (char **why)
{
  snd_pcm_t *pcm = NULL;
  int err;

  snd_lib_error_set_handler (say_nothing);
  err = open_pcm (&pcm);
  if (err < 0)
    {
      *why = err == -EBUSY ? g_strdup (_ ("Another program holds the sound device for itself."))
                           : g_strdup (_ ("This machine has no sound device that can be played on."));
      return NULL;
    }

  RwSoundDevice *self = g_new0 (RwSoundDevice, 1);

  self->pcm = pcm;
  return self;
}

void
rw_sound_device_close (RwSoundDevice *self)
{
  snd_pcm_drop (self->pcm);
  snd_pcm_close (self->pcm);
  g_free (self);
}

gboolean
rw_sound_device_write (RwSoundDevice *self,
                       const gint16  *samples,
                       gsize          n)
{
  for (guint attempts = 0; n > 0 && attempts < 4;)
    {
      snd_pcm_sframes_t written = snd_pcm_writei (self->pcm, samples, n);

      if (written < 0)
        {
          attempts++;
          if (snd_pcm_recover (self->pcm, (int) written, 1) < 0)
            return FALSE;
          continue;
        }
      samples += written;
      n -= (gsize) written;
      attempts += written == 0;
    }
  return n == 0;
}

#else

RwSoundDevice *
rw_sound_device_open (char **why)
{
  *why = g_strdup (_ ("This Railwright was built without sound."));
  return NULL;
}

void
rw_sound_device_close (RwSoundDevice *self)
{
}

gboolean
rw_sound_device_write (RwSoundDevice *self,
                       const gint16  *samples,
                       gsize          n)
{
  return FALSE;
}

#endif
