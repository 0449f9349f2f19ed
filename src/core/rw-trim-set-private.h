/* rw-trim-set-private.h: the lines of a trim set alone. For rw-trim-book.c.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-trim-fit-private.h"
#include "rw-trim-set.h"

G_BEGIN_DECLS

/* The fit of the set that @input makes, and how it came about; clear *search when done. (transfer full) */
RwTrimFit *rw_trim_set_fit (const RwTrimSetInput *input, RwTrimSearch *search);

G_END_DECLS
