/* study-pairs.h: every two faults that one cabinet can have at once.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Numbers of two faults. */
typedef struct
{
  guint a, b;
} StudyPair;

/* Each pair once, those left out that none of the profiles can have. In the order of their distance, so that
 * any beginning of the list meets the faults about equally often. @profiles: of RwProfile.
 * (transfer full) (element-type StudyPair) */
GArray *study_pairs_new (GPtrArray *profiles);

G_END_DECLS
