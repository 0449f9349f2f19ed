/* rw-trim-screen.h: what a fit of trim lines will surely say with a few readings more, without fitting anew.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-trim-fit-private.h"

G_BEGIN_DECLS

typedef struct _RwTrimScreen RwTrimScreen;

/* From how rw_trim_fit_search () of @readings, in order of their positions, came about. NULL: nothing can be told from
 * that. (transfer full) */
RwTrimScreen *rw_trim_screen_new (const RwTrimSearch *search, const RwTrimReading *readings, guint n_readings);
RwTrimScreen *rw_trim_screen_copy (const RwTrimScreen *self); /* with what was added. (transfer full) */
void          rw_trim_screen_free (RwTrimScreen *self);

/* A further reading, at the last position or, @opens, at one after it. O(rails²). */
void rw_trim_screen_add (RwTrimScreen *self, const RwTrimReading *reading, gboolean opens);

/* What is sure of the fit with all that was added. */
typedef enum
{
  RW_TRIM_SCREEN_UNSURE, /* only a fit tells */
  RW_TRIM_SCREEN_MISFIT, /* its readings do not lie on lines, and no outlier is named: p < 0.01 */
  RW_TRIM_SCREEN_FIT     /* the lines, as far as there are any that fit, have slopes within those below */
} RwTrimScreenSays;

RwTrimScreenSays rw_trim_screen_judge (RwTrimScreen *self);

/* After RW_TRIM_SCREEN_FIT. FALSE: the rail has no line. */
gboolean rw_trim_screen_get_slope (const RwTrimScreen *self, guint rail, double *least, double *most);

G_END_DECLS
