/* rw-tone.h: what a job sounds like, as samples. No device, no clock.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define RW_TONE_RATE 48000 /* samples a second, mono */

/* Short signals over the tone; a later one is the more urgent. */
typedef enum
{
  RW_SOUND_KEPT,    /* two quick notes, rising */
  RW_SOUND_ASKED,   /* two long notes, level */
  RW_SOUND_OUTSIDE, /* three quick harsh low ones */
  RW_SOUND_DANGER,  /* four long harsh low ones */
  RW_N_SOUND_EVENTS
} RwSoundEvent;

typedef struct _RwTone RwTone;

RwTone *rw_tone_new (void);
void    rw_tone_free (RwTone *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwTone, rw_tone_free)

/* @has: there is something to follow. @distance: from the set point, > 0: more than wanted, sounds higher; any unit.
 * @half_window: same unit, > 0: how far off is still good. @inside: good; sounds unbroken. Numbers that make no sense
 * are as good as none: silence. */
void rw_tone_set_target (RwTone *self, gboolean has, double distance, double half_window, gboolean inside);

/* 0…1; the loudness heard goes about evenly with it. */
void rw_tone_set_volume (RwTone *self, double volume);

/* Cuts a less urgent one short; waits for the end of one that is not. One waits at most, the most urgent. */
void rw_tone_play (RwTone *self, RwSoundEvent event);

/* The next @n samples. O(n). */
void rw_tone_render (RwTone *self, gint16 *out, gsize n);

/* Nothing sounds and nothing waits: what comes next is zeros until something is set. */
gboolean rw_tone_is_silent (const RwTone *self);

/* Pitch of the tone, hertz, at @distance/@half_window; strictly rising. */
double rw_tone_get_pitch (double halves);

/* How often it is broken a second, outside the window; the farther the fewer. */
double rw_tone_get_pulses (double halves);

/* Seconds that a signal lasts. */
double rw_tone_get_length (RwSoundEvent event);

G_END_DECLS
