/* rw-big-content.h: what the big view says, in words and positions; no widget, no pixels.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-job.h"
#include "rw-verdict.h"

G_BEGIN_DECLS

/* The bar under the needle; positions as in rw_position (). */
typedef struct
{
  gboolean shown;
  gboolean open_low; /* no lower limit */
  double   value;    /* NaN: no needle */
  double   aim;      /* NaN: none */
  double   window_lo, window_hi; /* ordered; NaN: none */
} RwBigBar;

/* Owned texts, translated; NULL: that line is not there. Without a value only todo and message are. */
typedef struct
{
  char     *where;   /* rail and place */
  char     *value;   /* number, narrow space, unit */
  char     *verdict; /* shape and word */
  char     *todo;    /* what to do about it, or first */
  char     *message;
  RwVerdict look;    /* the colour */
  gboolean  stale;
  gboolean  danger;
  RwBigBar  bar;
} RwBigContent;

/* What there is to say of @job (nullable) now. @message: (nullable). Clear *out when done. */
void     rw_big_content_init (RwBigContent *out, RwJob *job, const char *message);
void     rw_big_content_clear (RwBigContent *self);
gboolean rw_big_content_equal (const RwBigContent *a, const RwBigContent *b);

/* All of it as one sentence, for who cannot see it. (transfer full) */
char *rw_big_content_dup_text (const RwBigContent *self);

G_END_DECLS
