/* rw-trim-map-private.h: the inside of RwTrimMap, for the two files that implement it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-trim-map-layout.h"
#include "rw-trim-map.h"

G_BEGIN_DECLS

/* What the picture takes from the view; a change of anything else does not matter to it. */
typedef struct
{
  double      text_scale;
  const char *rail;
  RwThemeId   theme;
} RwTrimMapLook;

/* Invariant: laid_out says that layout is that of now; without it layout holds nothing. */
struct _RwTrimMap
{
  GObject               parent_instance;
  RwView               *view;
  RwTrimMapLook         look;
  RwTrimSet            *set;      /* (nullable) */
  RwTrimLive            live;     /* a copy; its rails NULL: none */
  gboolean              past;     /* the visit is over */
  double                width, height; /* pixels */
  PangoFontDescription *font;     /* (nullable) */
  RwChartText          *text;     /* NULL: to be made anew */
  gboolean              draw_text;
  char                 *title, *aside;
  RwTrimMapRange        given; /* ends equal: none */
  RwTrimMapLayout       layout;
  gboolean              without_note;
  gboolean              laid_out;
  gboolean              needs_ink;
};

/* The layout of now, worked out if it is not there. Borrowed, until anything changes. */
const RwTrimMapLayout *rw_trim_map_get_layout (RwTrimMap *self);

/* NULL when there is none. */
const RwTrimLive *rw_trim_map_get_live (RwTrimMap *self);

G_END_DECLS
