/* rw-projector-words.h: texts of the projector as pango lays them out: values, words, and blocks of words.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <pango/pangocairo.h>

#include "rw-projection-content.h"
#include "rw-rect.h"

G_BEGIN_DECLS

/* One line at a size in pixels. @text: (nullable): empty. (transfer full) */
PangoLayout *rw_projector_words (PangoContext *context, const char *text, double size, gboolean bold);
PangoLayout *rw_projector_value (PangoContext *context, const char *text, double size); /* its unit smaller */

double rw_projector_size (PangoLayout *layout); /* of its font, pixels */
void   rw_projector_measure (PangoLayout *layout, double *width, double *height);

/* With zeros for its digits. */
void rw_projector_measure_steady (PangoLayout *layout, double *width, double *height);

/* Of the widest verdict that comes often. */
double rw_projector_width_of_verdicts (PangoContext *context, double size);

typedef struct
{
  PangoLayout *layout; /* owned */
  double       x, y, width;
  gboolean     quiet;
} RwProjectorBlock;

/* Title, lines and table of @content in @box, as large as fit, at most 10 % of the height. *fits: with letters as
 * large as must be read from afar. (transfer full) (element-type RwProjectorBlock) */
GArray *rw_projector_lay_words (PangoContext *context, const RwProjectionContent *content, RwRect box, gboolean *fits);
void    rw_projector_free_blocks (GArray *blocks);

G_END_DECLS
