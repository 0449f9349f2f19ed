/* rw-projection-private.h: what the two halves of a projection share. For rw-projection*.c alone.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-class-session.h"
#include "rw-class-trim.h"
#include "rw-projection.h"

G_BEGIN_DECLS

struct _RwProjection
{
  GObject              parent_instance;
  RwJob               *job; /* (nullable) */
  gboolean             open;
  gboolean             blank;
  gboolean             frozen;
  gboolean             dark;

  /* asked for */
  RwProjectionPart     part;
  gboolean             enlarged;
  GHashTable          *hidden;    /* set of interned ids */
  const char          *spotlight; /* interned (nullable) */
  RwProjectionSent     sent;
  gboolean             deciding;  /* the class is asked what to do next */
  RwProjectionContent *said;      /* (nullable) words to be shown: title, lines, cells, n_columns, alone */

  /* shown */
  RwClassSession      *class_session; /* NULL without a job, or while it was never open */
  RwView              *view;
  RwBenchState        *state;
  RwProjectionContent *content;
  RwClassTrim          trim;
  RwProjectionContent *nothing; /* for the blank */
  RwProjectionPart     part_shown;
};

/* Takes in what was asked for and what happened, unless it is frozen or not open; tells "asked". */
void rw_projection_ask (RwProjection *self);

/* The looks changed, or blank did: tells "changed". */
void rw_projection_touch (RwProjection *self);

/* Not open, and frozen no more: what was shown is dropped. */
void rw_projection_end (RwProjection *self);

G_END_DECLS
