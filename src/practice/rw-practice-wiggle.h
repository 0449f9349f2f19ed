/* rw-practice-wiggle.h: moving a plug, a screw or a board of a practice cabinet with a dry stick.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-practice-cabinet.h"

G_BEGIN_DECLS

typedef enum
{
  RW_PRACTICE_SPOT_EDGE,    /* the edge connector */
  RW_PRACTICE_SPOT_HARNESS, /* plugs, crimps and headers between supply and board */
  RW_PRACTICE_SPOT_SCREWS,  /* wires at the supply's DC screws */
  RW_PRACTICE_SPOT_BOARD,   /* a tap on the game board */
  RW_PRACTICE_SPOT_SUPPLY,  /* a tap on the supply's closed case */
  RW_PRACTICE_N_SPOTS
} RwPracticeSpot;

/* Translated: "Edge connector". Static string. */
const char *rw_practice_spot_get_label (RwPracticeSpot spot);

/* "edge", "harness", "screws", "board", "supply"; RW_PRACTICE_N_SPOTS when it is none. */
RwPracticeSpot rw_practice_spot_from_id (const char *id);
const char    *rw_practice_spot_to_id (RwPracticeSpot spot);

/* Shakes it for some tenths of a second from now: a joint that is bad there moves by tens of
 * milliohms, a cracked one opens, a dirty trim jumps, a board that minds a tap resets; what is good
 * moves by less than a millivolt or two. It shows while time advances; the draw is the cabinet's
 * own, so the same hands at the same moment give the same. Nothing happens to a spot that is not
 * there (the edge or the board, when the board is out). */
void rw_practice_cabinet_wiggle (RwPracticeCabinet *self, RwPracticeSpot spot);

G_END_DECLS
