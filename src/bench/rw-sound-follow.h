/* rw-sound-follow.h: what a job sounds like.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *  while something is live      the tone, by rw_live_target ()
 *  a reading reached the disk   kept, or outside when that is its verdict
 *  hands-free has a question    asked
 *  a danger, live or warned of  danger, again every few seconds while it is live
 */
#pragma once

#include "rw-job.h"
#include "rw-sound.h"

G_BEGIN_DECLS

#define RW_TYPE_SOUND_FOLLOW (rw_sound_follow_get_type ())
G_DECLARE_FINAL_TYPE (RwSoundFollow, rw_sound_follow, RW, SOUND_FOLLOW, GObject)

RwSoundFollow *rw_sound_follow_new (RwSound *sound); /* holds a reference */

/* @job: (nullable): silence. What happened in it before makes no sound. */
void rw_sound_follow_set_job (RwSoundFollow *self, RwJob *job);

G_END_DECLS
