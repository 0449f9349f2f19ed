/* rw-practice-view-looks.h: what eyes, ears and hands find at a practice cabinet, in words.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-job.h"
#include "rw-practice-nodes.h"

G_BEGIN_DECLS

typedef enum
{
  RW_PRACTICE_LOOKING,
  RW_PRACTICE_WIGGLING
} RwPracticeTask;

/* Interned ids, for a finding. */
typedef struct
{
  const char *check, *outcome;
} RwPracticeSeen;

/* What is found at @node (nullable: at the cabinet as a whole); with every call the next thing, then the first again.
 * *seen is what a finding would be, ids NULL when there is nothing to write down. (transfer full) */
char *rw_practice_looks_take (RwJob *job, const RwPracticeNode *node, RwPracticeTask sense, guint *turn,
                              RwPracticeSeen *seen);

/* What is heard, in words. (transfer full) */
char *rw_practice_looks_listen (RwJob *job, RwPracticeSeen *seen);

G_END_DECLS
