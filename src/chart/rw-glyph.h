/* rw-glyph.h: small pictures that stand at the top of a vertical and say what happened there.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <cairo.h>

#include "rw-event.h"
#include "rw-theme.h"

G_BEGIN_DECLS

/* Inks the sign of @event about (x, y), about @size wide, in @color on @paper. A trim is a screw
 * head whose slot stands a little further round with each turn (@count). Cairo's state is left as
 * it was. */
void rw_glyph_ink (cairo_t *cr, const RwEvent *event, guint count, double x, double y,
                   double size, RwColor color, RwColor paper);

G_END_DECLS
