/* rw-practice-nodes.h: the points of a practice cabinet that a lead can touch, and what is between any two.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Ids, with R a rail id of the profile or "gnd":
 *
 *     strip:R                                       screws of the supply's strip
 *     mains:l  mains:n  mains:earth                 on the same strip
 *     supply:sense                                  on the same strip
 *     supply:raw+  supply:raw-                      linear: the raw capacitor of the reference rail
 *     supply:ac1  supply:ac2                        linear: the winding of the transformer
 *     supply:fuse1  supply:fuse2                    linear: ends of the fuse holder behind ac1
 *     mains:fuse1  mains:fuse2                      switcher: its fuse is on the mains side
 *     harness:R:supply  harness:R:board             crimps at both ends of a wire
 *     edge:R  chip:R                                the board's own finger, a far chip's pin
 *     sound:gnd  sound:speaker+  sound:speaker-     amplifier's ground, loudspeaker
 *     cabinet:chassis  cabinet:monitor              bare metal, the ground of the monitor's plug
 *     cabinet:lamp+  cabinet:lamp-                  a lamp holder
 */
#pragma once

#include "rw-practice-cabinet.h"

G_BEGIN_DECLS

/* Which part of the picture it belongs to. */
typedef enum
{
  RW_PRACTICE_AREA_STRIP,
  RW_PRACTICE_AREA_SUPPLY, /* inside the supply's case */
  RW_PRACTICE_AREA_HARNESS,
  RW_PRACTICE_AREA_EDGE,
  RW_PRACTICE_AREA_BOARD,
  RW_PRACTICE_AREA_SOUND,
  RW_PRACTICE_AREA_CABINET,
  RW_PRACTICE_N_AREAS
} RwPracticeArea;

typedef enum
{
  RW_PRACTICE_HAZARD_NONE,
  RW_PRACTICE_HAZARD_LOW,          /* low voltage */
  RW_PRACTICE_HAZARD_BESIDE_MAINS, /* low voltage, mains within a hand's breadth */
  RW_PRACTICE_HAZARD_MAINS,        /* live: no lead ever goes there */
  RW_PRACTICE_HAZARD_TUBE,         /* low voltage, picture tube near */
  RW_PRACTICE_N_HAZARDS
} RwPracticeHazard;

typedef struct
{
  const char      *id;     /* interned */
  char            *label;  /* translated: "+5 V, screw at the supply" */
  const char      *rail;   /* interned rail id or "gnd"; NULL when it belongs to none */
  RwPracticeArea   area;
  guint            column; /* 0 …: order within the area, left to right, without gaps */
  guint            row;    /* 0, or 1 for the board's end of a harness wire, of the same column */
  RwPracticeHazard hazard;
} RwPracticeNode;

/* What stands between two points now, red against black. */
typedef struct
{
  gboolean    open; /* nothing joins them: a lead in the air, or two things that do not touch */
  double      dc;   /* volts; 0 when open */
  double      ac;   /* volts of an averaging meter; 0 when open */
  double      ohms; /* with all volts gone; INFINITY when open */
  gboolean    live; /* power is on there: its ohms are nonsense */
  gboolean    charged; /* power is off, but a capacitor still holds volts: so they are */
  const char *rail; /* the reading of a session that this is (interned); NULL: none */
  RwPlace     place;
  gboolean    reversed; /* red and black the wrong way round for that reading */
} RwPracticePair;

/* Translated: "low voltage, mains beside it". Static string. */
const char *rw_practice_hazard_get_label (RwPracticeHazard hazard);

/* Translated: "Supply strip". Static string. */
const char *rw_practice_area_get_label (RwPracticeArea area);

/* The points of this cabinet, by area and column; they stay the same as long as it lives, whatever is wrong with
 * it. Borrowed. */
guint                 rw_practice_cabinet_get_n_nodes (RwPracticeCabinet *self);
const RwPracticeNode *rw_practice_cabinet_get_node (RwPracticeCabinet *self, guint i);
const RwPracticeNode *rw_practice_cabinet_find_node (RwPracticeCabinet *self,
                                                     const char        *id); /* (nullable) */

/* @red, @black: ids; NULL or one that is not there: in the air. O(n³) for ohms of n points, a fraction of a
 * millisecond. A mains point is open: nobody measures there. */
void rw_practice_cabinet_measure (RwPracticeCabinet *self,
                                  const char        *red,
                                  const char        *black,
                                  RwPracticePair    *out);

/* The two points of a reading of a session. FALSE, and both NULL, when there is no such reading here. */
gboolean rw_practice_cabinet_find_pair (RwPracticeCabinet *self,
                                        const char        *rail,
                                        RwPlace            place,
                                        const char       **red,
                                        const char       **black);

G_END_DECLS
