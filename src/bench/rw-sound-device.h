/* rw-sound-device.h: the machine's sound device: opened, written to, closed. Every call may block: not for the
 * main loop.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Samples written at once: 10 ms. */
#define RW_SOUND_BLOCK 480

typedef struct _RwSoundDevice RwSoundDevice;

/* What the desktop plays on, mono, RW_TONE_RATE, some 40 ms ahead. NULL: there is none, or this program was built
 * without; *why (translated) says so. Nothing is printed. */
RwSoundDevice *rw_sound_device_open (char **why);
void           rw_sound_device_close (RwSoundDevice *self); /* at once: what is not heard yet is dropped */

/* Waits until the device has room. After a gap it goes on by itself. FALSE: it is gone. */
gboolean rw_sound_device_write (RwSoundDevice *self, const gint16 *samples, gsize n) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
