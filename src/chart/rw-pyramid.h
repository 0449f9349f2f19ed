/* rw-pyramid.h: a stream kept so that any stretch of it is summed up at once.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct _RwPyramid RwPyramid;

/* What the stream's line covers within one column of a picture. */
typedef struct
{
  double   lo, hi;  /* in the stream's unit; NaN when the line is not there */
  gboolean through; /* it only passes: enters at one of them and leaves at the other */
} RwSpan;

#define RW_PYRAMID_REDUCTION 4

RwPyramid *rw_pyramid_new (void);

/* Children a node, ≥ 2: smaller makes the boundaries come sooner (tests). */
RwPyramid *rw_pyramid_new_full (guint reduction);
/* The first samples of @whole, none at first, without copying them. @whole may go before it, and may grow, but must not
 * be truncated. */
RwPyramid *rw_pyramid_new_part (const RwPyramid *whole);
void       rw_pyramid_free (RwPyramid *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwPyramid, rw_pyramid_free)

/* Appends a sample. @t: seconds; one that runs back is moved up to the last. NaN value: a hole,
 * across which no line runs. @tag: whatever the caller finds its sample by, never falling.
 * Amortised O(1). */
void rw_pyramid_push (RwPyramid *self, double t, double value, guint tag);

/* Keeps the first @n. O(log n). The rest is as if it had never been pushed. */
void rw_pyramid_truncate (RwPyramid *self, guint n);

/* Of a part: it sees the first @n samples of the whole now. O(log n). */
void rw_pyramid_see (RwPyramid *self, guint n);

guint  rw_pyramid_get_n (const RwPyramid *self);
double rw_pyramid_get_time (const RwPyramid *self, guint i);
double rw_pyramid_get_value (const RwPyramid *self, guint i); /* NaN: a hole */
guint  rw_pyramid_get_tag (const RwPyramid *self, guint i);

/* First sample at @t or later (n when there is none). O(log n) */
guint rw_pyramid_find_time (const RwPyramid *self, double t);

/* First sample with that tag or a greater one. O(log n) */
guint rw_pyramid_find_tag (const RwPyramid *self, guint tag);

/* Least and greatest of samples [from, to), holes left out. FALSE when there are none. O(log n) */
gboolean rw_pyramid_range (const RwPyramid *self, guint from, guint to, double *lo, double *hi);

/* The line through the samples, cut into @n_columns columns of @width seconds from @start on:
 * each span is the range of the samples in its column and of the line where it crosses the
 * column's edges. O(n_columns · log n) */
void rw_pyramid_columns (const RwPyramid *self, double start, double width, guint n_columns,
                         RwSpan *out);

G_END_DECLS
