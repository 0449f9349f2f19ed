/* rw-compare-causes.h: what was held likely at the end of two sessions, then and now.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-advice.h"
#include "rw-compare.h"

G_BEGIN_DECLS

typedef struct
{
  const RwCause *cause;
  double         then, now; /* chances, 0 … 1 */
} RwCompareCause;

typedef struct
{
  RwKnowledge *knowledge[2]; /* what the causes are borrowed from; (nullable) */
  GArray      *causes;       /* of RwCompareCause, the likeliest of either first */
} RwCompareCauses;

/* Causes that are among the three likeliest of one session, and there at least 5 % likely. @knowledge: (nullable): none.
 * Works out the advice of both: some hundredths of a second. (transfer full) */
RwCompareCauses *rw_compare_causes_new (const RwCompare *compare, RwKnowledge *knowledge);
void             rw_compare_causes_free (RwCompareCauses *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwCompareCauses, rw_compare_causes_free)

/* "62 % then, < 1 % now". (transfer full) */
char *rw_compare_causes_words (const RwCompareCause *cause);

G_END_DECLS
