/* rw-projector-picture.h: where everything on the projector stands, and the ink; no widget.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Laid out for a picture RW_PROJECTOR_HEIGHT high, whatever the screen: whoever inks it scales. From ten metres a
 * letter's size must be 7 % of the height of a picture that is 2 m wide (20 minutes of arc for a capital); a value is
 * at least 12 %, but 7 % in the strip above another part; lines are at least 0.5 % wide. Only where more is said than
 * such letters can hold are they smaller.
 */
#pragma once

#include <pango/pangocairo.h>

#include "rw-projection-content.h"
#include "rw-rect.h"
#include "rw-theme.h"

G_BEGIN_DECLS

#define RW_PROJECTOR_HEIGHT 720.0
#define RW_PROJECTOR_READ (0.07 * RW_PROJECTOR_HEIGHT)  /* pixels of what must be read */
#define RW_PROJECTOR_VALUE (0.12 * RW_PROJECTOR_HEIGHT) /* pixels of a value that is the part shown */
#define RW_PROJECTOR_LINE (0.005 * RW_PROJECTOR_HEIGHT)

/* Factor on the text of charts (rw_view_set_text_scale ()) for the same size. */
#define RW_PROJECTOR_TEXT_SCALE (RW_PROJECTOR_READ / (0.85 * 13.5))

typedef enum
{
  RW_PROJECTOR_INK,
  RW_PROJECTOR_QUIET,
  RW_PROJECTOR_VERDICT, /* by look */
} RwProjectorRole;

typedef struct
{
  PangoLayout    *layout; /* owned */
  double          x, y;   /* of its upper left corner */
  RwRect          box;    /* what it takes up, logically */
  double          size;   /* of the font, pixels */
  gboolean        value;
  RwProjectorRole role;
  RwVerdict       look;
  gboolean        dim;
} RwProjectorText;

typedef struct
{
  double  width;
  GArray *texts;  /* of RwProjectorText */
  GArray *frames; /* of RwRect: round what is in the spotlight */
  GArray *lines;  /* of RwRect: between rows */
  RwRect  part;   /* for the chart or the trim map; 0 wide: none */
} RwProjectorLayout;

/* @width: of a picture of that height. @rtl: rows begin on the right. */
void rw_projector_layout_init (RwProjectorLayout *out, PangoContext *context, const RwProjectionContent *content,
                               double width, gboolean rtl);
void rw_projector_layout_clear (RwProjectorLayout *self);

/* Ground and texts; the part is left to its own picture. */
void rw_projector_layout_ink (const RwProjectorLayout *self, cairo_t *cr, const RwTheme *theme);

G_END_DECLS
