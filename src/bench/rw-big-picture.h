/* rw-big-picture.h: where everything of the big view stands at a size, and the ink.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <pango/pangocairo.h>

#include "rw-big-content.h"
#include "rw-rect.h"
#include "rw-theme.h"

G_BEGIN_DECLS

typedef enum
{
  RW_BIG_WHERE,
  RW_BIG_VALUE,
  RW_BIG_VERDICT,
  RW_BIG_TODO,
  RW_BIG_MESSAGE,
  RW_N_BIG_LINES
} RwBigLineId;

/* A text and its box. Owned; layout NULL: not there. */
typedef struct
{
  PangoLayout *layout;
  double       x, y; /* of the layout's upper left corner */
  RwRect       ink;  /* what it covers */
  double       capital; /* height of a digit, pixels */
} RwBigLine;

typedef struct
{
  double    width, height;
  RwBigLine lines[RW_N_BIG_LINES];
  RwRect    bar;  /* 0 wide: none */
  RwRect    band; /* behind verdict, or verdict and todo; 0 wide: none */
} RwBigLayout;

/* Every text as large as its share of the height and the width allow, so nothing is ever cut off. @context: font. */
void rw_big_layout_init (RwBigLayout *out, PangoContext *context, const RwBigContent *content, double width,
                         double height);
void rw_big_layout_clear (RwBigLayout *self);

/* Paints the whole ground, too. */
void rw_big_layout_ink (const RwBigLayout *self, cairo_t *cr, const RwBigContent *content, const RwTheme *theme);

G_END_DECLS
