/* wav-device.h: a sound device that writes what is played into a file, and one process for every case.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The sound library reads its configuration once a process, so a case runs again in a process of its own, with the
 * library's plugin that writes a WAV file, or with no configuration, which is a machine without a device.
 */
#pragma once

#include <glib.h>

#include "rw-sound.h"

G_BEGIN_DECLS

#define WAV_HEADER_BYTES 44
#define WAV_PATH_VARIABLE "RW_TEST_WAV" /* in the process of a case: the file's path */

typedef struct
{
  char *folder;
  char *config;
  char *wav;
} WavDevice;

void wav_device_init (WavDevice *self);
void wav_device_clear (WavDevice *self);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (WavDevice, wav_device_clear)

/* Runs the present test again, with this device, or with none. It must pass and print no complaint. */
void wav_run_again (WavDevice *device);

/* What was played, 48 kHz, mono. (transfer full) (nullable) */
gint16 *wav_device_read (WavDevice *self, gsize *n);

/* Seconds from the first to the last sample that is heard, and the pitch between them. */
void wav_look_at (const gint16 *samples, gsize n, double *seconds, double *hertz);

/* The main loop, for so long; until it is known whether there is a device. */
void wav_run_for (guint msec);
void wav_wait_for (RwSound *sound);

G_END_DECLS
