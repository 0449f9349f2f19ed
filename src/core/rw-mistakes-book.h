/* rw-mistakes-book.h: the readings and turns of a session in order, for mistakes that show over time.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Private to rw-bench-state.c and rw-mistakes*.c.
 */
#pragma once

#include "rw-bench-state.h"

G_BEGIN_DECLS

/* A kept reading, as it was when it was kept. The counters count what happened before it. */
typedef struct
{
  RwSpotState spot;
  gboolean    known;   /* its meter's facts are known */
  guint       epoch;   /* whatever makes readings stale: turns, power, board, repairs */
  guint       stretch; /* the same without turns */
  guint       turns;
  guint       fixes;   /* repairs that fixed something */
} RwPast;

typedef struct
{
  guint   n;
  double  t;
  RwSetup setup;
} RwTurn;

typedef struct
{
  GArray *past;  /* of RwPast */
  GArray *turns; /* of RwTurn */
  guint   epoch, stretch, fixes; /* as they are now */
  guint   turned_at_stretch; /* when the last turn was made */
  guint   deeds;   /* findings and symptoms since the last turn */
  double  last_t;  /* seconds of the newest reading, finding or symptom */
} RwMistakesBook;

RwMistakesBook *rw_mistakes_book_new (void);
void            rw_mistakes_book_free (RwMistakesBook *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwMistakesBook, rw_mistakes_book_free)

void rw_mistakes_book_take_reading (RwMistakesBook *self, const RwSpotState *spot, gboolean known);
void rw_mistakes_book_take_turn (RwMistakesBook *self, guint n, double t, const RwSetup *setup);
/* Power, board or a repair. */
void rw_mistakes_book_take_change (RwMistakesBook *self, gboolean fixed);
void rw_mistakes_book_take_deed (RwMistakesBook *self, double t);

guint         rw_mistakes_book_get_n_past (const RwMistakesBook *self);
const RwPast *rw_mistakes_book_get_past (const RwMistakesBook *self, guint i);
const RwTurn *rw_mistakes_book_get_last_turn (const RwMistakesBook *self); /* (nullable) */

/* Appends the warnings to @warnings (of RwWarning): dangers first, then the newest reading first.
 * O(readings · spots). */
void rw_mistakes_look (const RwBenchState *state, const RwMistakesBook *book, GArray *warnings);

G_END_DECLS
