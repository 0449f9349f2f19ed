/* rw-sound.h: the tone and the signals of a job on the machine's sound device.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A thread of its own plays; no call here waits for it. Without a device, or built without sound, every call does
 * nothing.
 *
 * Signal "available": rw_sound_is_available () answers otherwise than before.
 */
#pragma once

#include <glib-object.h>

#include "rw-tone.h"

G_BEGIN_DECLS

#define RW_TYPE_SOUND (rw_sound_get_type ())
G_DECLARE_FINAL_TYPE (RwSound, rw_sound, RW, SOUND, GObject)

/* Looks for a device at once, in its thread. Enabled, at half volume. */
RwSound *rw_sound_new (void);

/* FALSE also while it is still being looked for. */
gboolean rw_sound_is_available (RwSound *self);

/* Why not, translated; NULL when it is. Borrowed until the next signal. */
const char *rw_sound_get_problem (RwSound *self);

/* Switching on looks for a device again when there was none. */
void     rw_sound_set_enabled (RwSound *self, gboolean enabled);
gboolean rw_sound_get_enabled (RwSound *self);
void     rw_sound_set_volume (RwSound *self, double volume); /* 0…1 */
double   rw_sound_get_volume (RwSound *self);

/* As rw_tone_set_target (), rw_tone_play (). Nothing is remembered while switched off. */
void rw_sound_set_target (RwSound *self, gboolean has, double distance, double half_window, gboolean inside);
void rw_sound_play (RwSound *self, RwSoundEvent event);

G_END_DECLS
