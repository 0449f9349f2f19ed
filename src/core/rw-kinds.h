/* rw-kinds.h: the fixed words of a reading: where the leads touch, and what is measured.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Where the leads touch. */
typedef enum
{
  RW_PLACE_TERMINALS, /* at the supply's screws */
  RW_PLACE_BOARD,     /* at the board's edge connector */
  RW_PLACE_CHIP,      /* at a chip far from the edge */
  RW_PLACE_WIRE,      /* along one conductor, terminal to board: the drop itself */
  RW_N_PLACES
} RwPlace;

/* What is measured. The unit of a value follows from it: volts, volts (AC), ohms, amperes, °C. */
typedef enum
{
  RW_KIND_DC,
  RW_KIND_RIPPLE,
  RW_KIND_OHMS,
  RW_KIND_AMPS,
  RW_KIND_CELSIUS,
  RW_N_KINDS
} RwKind;

/* The rail id of the ground return; its drop is measured at RW_PLACE_WIRE. */
#define RW_RAIL_GROUND "gnd"

/* Ids as files write them ("terminals", "dc"). The strings are static. */
const char *rw_place_to_id (RwPlace place);
const char *rw_kind_to_id (RwKind kind);

/* FALSE, and *out untouched, when the id is not one of ours. */
gboolean rw_place_from_id (const char *id, RwPlace *out);
gboolean rw_kind_from_id (const char *id, RwKind *out);

/* Translated words for people: "at the terminals", "board". Static strings. */
const char *rw_place_get_label (RwPlace place);

/* Unit symbol, untranslated: "V", "V", "Ω", "A", "°C". */
const char *rw_kind_get_unit (RwKind kind);

G_END_DECLS
