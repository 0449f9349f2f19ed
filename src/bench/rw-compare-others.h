/* rw-compare-others.h: the sessions of the same cabinet that lie in a folder, to compare with.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

#include "rw-session.h"

G_BEGIN_DECLS

typedef struct
{
  char      *path;
  GDateTime *started;
} RwCompareOther;

void rw_compare_other_free (RwCompareOther *self);

/* Files of @folder whose header has the name and tag of @header's cabinet, the newest first; without the session of
 * @header itself. Reads nothing but first lines, of the RW_COMPARE_OTHERS_MOST files that were written last.
 * (transfer full) (element-type RwCompareOther) */
GPtrArray *rw_compare_others_list (const char *folder, const RwSessionHeader *header);

#define RW_COMPARE_OTHERS_MOST 500

G_END_DECLS
