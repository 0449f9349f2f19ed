/* rw-scene-watched.h: which rail the meter was on, column by column of the picture.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A column shows the middle of what the stream covers there, known to within half of it. One in which
 * the stream covers much, or lies near zero, says nothing: a probe slipped, or the screw was turned far
 * within it.
 */
#pragma once

#include "rw-scene.h"

G_BEGIN_DECLS

typedef struct
{
  gboolean is_there; /* a rail of the set was streamed at its place */
  guint    rail;     /* index in the profile */
  double   value, u; /* volts; own standard uncertainty */
} RwWatched;

/* One of them for each of @n_columns columns, which share the scene's span of time. With two meters at
 * work the one on the reference counts. O(rails · n_columns · log samples). (transfer full) */
RwWatched *rw_scene_watch (const RwScene *self, const RwTrimSet *set, guint n_columns);

G_END_DECLS
