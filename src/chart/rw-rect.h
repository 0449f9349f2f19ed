/* rw-rect.h: a rectangle in pixels, y downwards.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct
{
  double x, y, width, height;
} RwRect;

static inline double
rw_rect_right (const RwRect *rect)
{
  return rect->x + rect->width;
}

static inline double
rw_rect_bottom (const RwRect *rect)
{
  return rect->y + rect->height;
}

/* Edges belong to it. NaN is nowhere. */
static inline gboolean
rw_rect_contains (const RwRect *rect,
                  double        x,
                  double        y)
{
  return x >= rect->x && x <= rw_rect_right (rect) && y >= rect->y && y <= rw_rect_bottom (rect);
}

/* Share more than an edge. */
static inline gboolean
rw_rect_overlap (const RwRect *a,
                 const RwRect *b)
{
  return a->x < rw_rect_right (b) && b->x < rw_rect_right (a) && a->y < rw_rect_bottom (b)
         && b->y < rw_rect_bottom (a);
}

G_END_DECLS
