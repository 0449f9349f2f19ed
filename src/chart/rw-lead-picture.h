/* rw-lead-picture.h: where the leads of a meter go for one reading, as a picture.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Left the supply with its terminal strip, in the middle the harness and the edge connector, right the board with a
 * chip far from the edge, below the meter. The red lead ends in a dot, the black one in a square, so that they are
 * told apart without colour. Nothing is to scale; the place of a point says which part it belongs to:
 *
 *   ┌ supply ┐              ┌┐ ┌ board ──────┐
 *   │   +5 V ●━━━━━━━━━━━━━━┿┿━┥             │
 *   │    0 V ●━━━━━━━━━━━━━━┿┿━┥     ┌chip┐  │
 *   │  mains ▨              └┘ │     └────┘  │
 *   └────────┘    ┌ meter ┐    └─────────────┘
 */
#pragma once

#include <cairo.h>
#include <pango/pango.h>

#include "rw-knowledge.h"
#include "rw-rect.h"
#include "rw-theme.h"

G_BEGIN_DECLS

/* One reading. Borrows its text. */
typedef struct
{
  const char *rail;   /* label: "+5 V"; NULL for the ground return */
  guint       series; /* rw_theme_series_index () of the rail */
  RwPlace     place;
  RwKind      kind;
  RwSaid      power;  /* as it is wanted */
  RwSaid      board;
} RwLeadScene;

typedef struct
{
  double x, y;
} RwLeadPoint;

/* Where everything is, in pixels. */
typedef struct
{
  RwRect      supply, edge, board, chip, meter;
  RwLeadPoint rail_screw, ground_screw, mains_screw;
  RwLeadPoint rail_contact, ground_contact; /* of the edge connector, on the side of the harness */
  RwLeadPoint rail_finger, ground_finger;   /* on the board's side of it */
  RwLeadPoint rail_pin, ground_pin;         /* of the far chip */
  RwLeadPoint red, black;                   /* the tips */
} RwLeadLayout;

/* FALSE, *out untouched: the check does not measure at one spot. *out borrows from both. */
gboolean rw_lead_scene_of_check (const RwCheck *check, const RwProfile *profile, RwLeadScene *out);

void rw_lead_layout_make (const RwLeadScene *scene, double width, double height, RwLeadLayout *out);

/* @font: (nullable); @text_scale: 1 is RW_TEXT_BODY_PIXELS. Draws into 0, 0 … @width, @height and leaves cairo's
 * state as it was; the ground is not painted. Too small to be read, nothing is drawn. */
void rw_lead_picture_draw (cairo_t *cr, const RwTheme *theme, const PangoFontDescription *font, double text_scale,
                           const RwLeadScene *scene, double width, double height);

/* The same in words, translated, for whoever cannot see it: "Red tip on the supply's +5 V screw, black tip on its
 * 0 V screw. Power on, board fitted." (transfer full) */
char *rw_lead_picture_describe (const RwLeadScene *scene);

G_END_DECLS
