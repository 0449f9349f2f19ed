/* rw-compare-picture-private.h: the inside of RwComparePicture, for the two files that implement it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-compare-picture.h"

G_BEGIN_DECLS

/* Of one session. */
typedef struct
{
  RwView    *view;
  RwChart   *chart;
  RwTrimMap *map;
  RwRect     at; /* on the picture */
} RwCompareHalf;

struct _RwComparePicture
{
  RwCompare            *compare;
  RwCompareHalf         half[2]; /* then, now */
  RwViewChart           which;
  RwThemeId             theme;
  double                text_scale;
  PangoFontDescription *font; /* (nullable) */
  gboolean              draw_text;
  RwComparePictureFunc  changed; /* (nullable) */
  gpointer              user_data;
  double                width, height; /* of the layout */
  gboolean              laid_out;
  gboolean              laying_out; /* what changes now is of our own doing */
};

/* Sizes and places of both halves, on one scale. */
void rw_compare_picture_lay_out (RwComparePicture *self, double width, double height);

G_END_DECLS
