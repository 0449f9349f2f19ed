/* rw-layer-ends.h: the name of each line at its right end, instead of a legend.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Beside the name stands the line's marker, so that it also says what a filled or hollow one
 * means. A faint dotted line leads from the newest value to the name, as long as that value still
 * holds. A place whose last reading is stale while another place of the same rail has a newer one
 * is named, but quietly. A rail that nobody measured since the trim is named at what is expected of it,
 * with an empty marker and that word. Where the plot is too low for all names, those of the chosen
 * rail are kept first, of these that of the chosen place, then the ones that are in date and
 * measured, then the earlier in the profile.
 */
#pragma once

#include "rw-scene.h"

G_BEGIN_DECLS

typedef struct
{
  guint    trace;
  double   x, y;     /* newest visible or expected value of the trace: where its line ends */
  double   until;    /* where the value stops to hold: x of a change, or the plot's right edge */
  gboolean holds;    /* it does to the edge */
  gboolean quiet;    /* out of date, and another place has taken over */
  gboolean left_out; /* there is no room for its name and marker */
  double   marker_x; /* middle of the marker */
  double   name_x;   /* left end of the name */
  double   label_y;  /* middle of marker and name, moved so that names do not overlap */
  char    *name;     /* cut to the room there is; NULL when there is none */
  gboolean expected; /* nobody measured that value */
  char    *place;    /* after the name, with "expected"; NULL when it need not be said or there is no room */
  double   place_x;
} RwEndLabel;

typedef struct
{
  GArray *labels; /* of RwEndLabel, from top to bottom */
} RwEndsLayer;

void rw_ends_layer_layout (RwEndsLayer *self, const RwScene *scene);
void rw_ends_layer_clear (RwEndsLayer *self);
void rw_ends_layer_ink (const RwEndsLayer *self, const RwScene *scene, cairo_t *cr);

/* Moves @n rising numbers by as little as possible (least squares) so that neighbours are at
 * least @spacing apart and all lie in [@lo, @hi]. When they cannot all fit, they are spaced
 * evenly over it. O(n) */
void rw_ends_spread (double *y, guint n, double spacing, double lo, double hi);

G_END_DECLS
