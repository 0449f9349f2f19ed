/* rw-chapters-private.h: what the files of rw-chapters share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-chapters.h"

G_BEGIN_DECLS

struct _RwChapters
{
  GArray *chapters;                   /* of RwChapter */
  GArray *moments[RW_N_MOMENT_KINDS]; /* of RwMoment, n_events rising */
};

/* Turns, readings and decisions. */
void rw_chapters_look_at_deeds (RwChapters *self, RwSession *session);

/* What only the bench state tells: warnings, and the verdicts of the chapters, whose bounds are there. */
void rw_chapters_look_at_states (RwChapters *self, RwSession *session);

G_END_DECLS
