/* rw-practice-view-scene.h: the practice cabinet of a job as a picture's scene.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-bench-picture.h"
#include "rw-job.h"
#include "rw-practice-nodes.h"

G_BEGIN_DECLS

typedef struct
{
  RwBenchScene          scene; /* points into what follows */
  RwBenchNode           nodes[RW_BENCH_MAX_NODES];
  const RwPracticeNode *of[RW_BENCH_MAX_NODES]; /* the cabinet's, borrowed */
  char                 *value, *mode;           /* owned */
  char                 *short_names[RW_BENCH_MAX_NODES]; /* owned */
} RwPracticeScene;

/* Spots of the job's cabinet; the rest as rw_practice_scene_refresh () says. @job: a practice job. (transfer full) */
RwPracticeScene *rw_practice_scene_new (RwJob *job);
void             rw_practice_scene_free (RwPracticeScene *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwPracticeScene, rw_practice_scene_free)

/* Tips, power, board, screw, value, words. Returns FALSE when nothing that is drawn has changed. */
gboolean rw_practice_scene_refresh (RwPracticeScene *self, RwJob *job);

/* Index of the node that a lead is on, −1: none. */
int rw_practice_scene_lead (const RwPracticeScene *self, RwPracticeLead lead);

/* What the screen does, in words. Static. */
const char *rw_practice_scene_board_words (RwPracticeCabinet *cabinet);

/* What the meter shows now: "5.02 V", "OL", "". (transfer full) */
char *rw_practice_scene_dup_value (RwJob *job);

/* The same picture in one paragraph, for whoever cannot see it. (transfer full) */
char *rw_practice_scene_describe (const RwPracticeScene *self);

/* A spot with what is on it: "+5 V, edge finger on the board. Low voltage. The red tip is here." (transfer full) */
char *rw_practice_scene_describe_node (const RwPracticeScene *self, guint i);

G_END_DECLS
