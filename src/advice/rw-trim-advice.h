/* rw-trim-advice.h: what to do with the trim, if anything.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Turning the screw is never advised with the board out, to make up for a drop on the way to the board, or
 * when it would take a rail past what a board survives: what to do instead is said.
 */
#pragma once

#include "rw-bench-state.h"

G_BEGIN_DECLS

typedef enum
{
  RW_TRIM_SAYS_NOTHING,   /* too little was read, or the trim is not what matters now */
  RW_TRIM_SAYS_READ,      /* a rail has to be read first */
  RW_TRIM_SAYS_LOAD,      /* the board is out */
  RW_TRIM_SAYS_BOARD,     /* read at the terminals only */
  RW_TRIM_SAYS_TERMINALS, /* up, but nobody knows the drop: read the terminals first */
  RW_TRIM_SAYS_WIRING,    /* the drop is the trouble */
  RW_TRIM_SAYS_NEVER,     /* a rail would pass what a board survives */
  RW_TRIM_SAYS_NO_WINDOW, /* no position suits all rails */
  RW_TRIM_SAYS_TURN,
  RW_TRIM_SAYS_LEAVE,     /* it stands well */
} RwTrimSays;

typedef struct
{
  RwTrimSays       says;
  const RwTrimSet *set;   /* borrowed from the state; NULL for NOTHING */
  guint            watch; /* TURN: the rail to watch while turning, index in the profile */
  double           x;     /* the reference now, volts; NaN when not known */
  double           now;   /* TURN: what it shows now, volts; may be an expected value */
  double           to;    /* TURN: what it is to show, volts */
  gboolean         up;    /* TURN: up or down, the magnitude */
  guint            rail;  /* READ, NEVER, TERMINALS, WIRING: the rail it is about */
  double           drop;  /* WIRING: terminals less board, volts */
} RwTrimAdvice;

/* @on_rail: the rail that the meter is on (nullable). @live: what it shows now, worked out for the set at the
 * same place (nullable). */
void rw_trim_advice_work_out (const RwBenchState *state, const char *on_rail, const RwTrimLive *live,
                              RwTrimAdvice *out);

/* One translated sentence or two; NULL for NOTHING. (transfer full) */
char *rw_trim_advice_say (const RwTrimAdvice *advice);

/* While the screw is turned: a rail that nobody is probing is expected to pass a limit, or what a board
 * survives (*danger). NULL: none. (transfer full) */
char *rw_trim_live_warn (const RwTrimSet *set, const RwTrimLive *live, gboolean *danger);

G_END_DECLS
