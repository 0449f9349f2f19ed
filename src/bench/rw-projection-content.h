/* rw-projection-content.h: what stands on the projector, in words; no widget, no pixels.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-verdict.h"

G_BEGIN_DECLS

typedef enum
{
  RW_PROJECTION_VALUES,
  RW_PROJECTION_TRIM,  /* the trim map */
  RW_PROJECTION_CHART, /* over time */
  RW_PROJECTION_CHECK, /* the next check: title and outcomes, no beliefs */
  RW_N_PROJECTION_PARTS
} RwProjectionPart;

typedef enum
{
  RW_SENT_NOTHING,
  RW_SENT_NOTE,    /* the last one */
  RW_SENT_BELIEFS, /* the likely causes */
  RW_SENT_ANSWER,  /* what it was: of the practice cabinet, or the repair that fixed it */
  RW_N_PROJECTION_SENT
} RwProjectionSent;

/* One rail. Texts owned, translated. */
typedef struct
{
  const char *rail;    /* interned */
  char       *label;   /* "−5 V" */
  char       *place;   /* "board", "board · live" */
  char       *value;   /* number, narrow space, unit; "—" when there is none */
  char       *verdict; /* shape and word; NULL: none */
  RwVerdict   look;
  gboolean    stale;
  gboolean    lit; /* in the spotlight */
  gboolean    dim; /* another is */
} RwProjectionRail;

typedef struct
{
  gboolean         blank;
  RwProjectionPart part;
  gboolean         enlarged;
  GPtrArray       *rails; /* (element-type RwProjectionRail) that are not hidden, in the order of the profile */
  GPtrArray       *shown; /* (element-type RwProjectionRail) borrowed: those to be drawn */

  gboolean   has_text; /* words of somebody stand in place of the part */
  gboolean   alone;    /* they do without values */
  char      *title;    /* (nullable) */
  char     **lines;    /* (nullable) */
  char     **cells;    /* (nullable) */
  guint      n_columns;
} RwProjectionContent;

RwProjectionContent *rw_projection_content_new (void);
void                 rw_projection_content_free (RwProjectionContent *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwProjectionContent, rw_projection_content_free)
gboolean rw_projection_content_equal (const RwProjectionContent *a, const RwProjectionContent *b);

RwProjectionRail *rw_projection_rail_new (const char *rail);

/* Words stand where the part is: somebody's, the next check's, or why there is no picture. */
gboolean rw_projection_content_is_words (const RwProjectionContent *self);

/* All texts of it, as sentences, for who cannot see it. (transfer full) */
char *rw_projection_content_dup_text (const RwProjectionContent *self);

G_END_DECLS
