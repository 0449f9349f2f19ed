/* rw-class-trim.h: what the trim map shows a class.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-job.h"

G_BEGIN_DECLS

typedef struct
{
  RwTrimSet *set;      /* owned (nullable) */
  gboolean   has_live; /* live is of set */
  RwTrimLive live;
} RwClassTrim;

/* The set of @state at the place that @job looks at, and what the meter says of it now if it is on a rail that is not
 * in @hidden, a set of interned ids. TRUE: it differs from before. *self starts zeroed. */
gboolean rw_class_trim_take (RwClassTrim *self, RwJob *job, RwBenchState *state, GHashTable *hidden);
void     rw_class_trim_clear (RwClassTrim *self);

G_END_DECLS
