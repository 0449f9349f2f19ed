/* rw-mistakes-book.h: the readings and turns of a session in order, for mistakes that show over time.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Private to rw-bench-*.c and rw-mistakes*.c. What is asked for is linked when a reading is taken down, so that no look
 * goes through all of them.
 */
#pragma once

#include "rw-bench-state.h"

G_BEGIN_DECLS

/* No reading has this index. */
#define RW_NO_PAST G_MAXUINT

/* A kept reading, as it was when it was kept. The counters count what happened before it; the links are indices of
 * earlier readings that have a value (are not over), or RW_NO_PAST. */
typedef struct
{
  RwSpotState spot;
  gboolean    known;   /* its meter's facts are known */
  guint       epoch;   /* whatever makes readings stale: turns, power, board, repairs */
  guint       stretch; /* the same without turns */
  guint       turns;
  guint       fixes;   /* repairs that fixed something */

  guint  before;       /* the newest of the same spot */
  guint  before_own;   /* … and of the same meter */
  guint  before_other; /* … and of another meter */
  guint  before_alive; /* … of the same meter, of a rail that is alive */
  guint  unloaded;     /* this one, or the newest of the same spot, with the board out */
  guint  weak_before;  /* the newest of the same rail, of an earlier epoch, that is weak; set for a weak one only */
  double least, most;  /* of the values of this epoch along before_alive; INFINITY, −INFINITY when there is none */
} RwPast;

/* What was read at one spot. */
typedef struct
{
  guint last;  /* newest reading */
  guint alive; /* newest DC reading with a value that says that the rail is alive */
  guint first; /* first reading with a value, of the stretch that it is of */
} RwPastSpot;

typedef struct
{
  guint   n;
  double  t;
  RwSetup setup;
} RwTurn;

/* How far the readings of a stretch were searched for a loss between terminals and board; indices. */
typedef struct
{
  guint    at;    /* the next to look at */
  guint    epoch;
  guint    terminals, board;
  gboolean found; /* by these two */
} RwPastLoss;

typedef struct
{
  const RwRail *reference; /* of the profile, borrowed */
  GArray *past;   /* of RwPast */
  GArray *turns;  /* of RwTurn */
  GArray *spots;  /* of RwPastSpot, the one that was read last first */
  GArray *meters; /* of guint: the newest reading of each, the newest first */
  GArray *weak;   /* of guint: the newest weak reading of each rail that had one */
  RwPastLoss loss;
  guint   epoch, stretch, fixes; /* as they are now */
  guint   turned_at_stretch; /* when the last turn was made */
  guint   deeds;   /* findings and symptoms since the last turn */
  double  last_t;  /* seconds of the newest reading, finding or symptom */
} RwMistakesBook;

RwMistakesBook *rw_mistakes_book_new (const RwRail *reference);
void            rw_mistakes_book_free (RwMistakesBook *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwMistakesBook, rw_mistakes_book_free)

void rw_mistakes_book_take_reading (RwMistakesBook *self, const RwSpotState *spot, gboolean known);
void rw_mistakes_book_take_turn (RwMistakesBook *self, guint n, double t, const RwSetup *setup);
/* Power, board or a repair. */
void rw_mistakes_book_take_change (RwMistakesBook *self, gboolean fixed);
void rw_mistakes_book_take_deed (RwMistakesBook *self, double t);

guint         rw_mistakes_book_get_n_past (const RwMistakesBook *self);
const RwPast *rw_mistakes_book_get_past (const RwMistakesBook *self, guint i);
/* The same; NULL for RW_NO_PAST. */
const RwPast *rw_mistakes_book_find_past (const RwMistakesBook *self, guint i);
/* (nullable) */
const RwPastSpot *rw_mistakes_book_find_spot (const RwMistakesBook *self, const char *rail, RwPlace place, RwKind kind);
const RwTurn *rw_mistakes_book_get_last_turn (const RwMistakesBook *self); /* (nullable) */

/* A place to come back to. O(spots). What was taken after it is forgotten then. (transfer full) */
typedef struct _RwMistakesMark RwMistakesMark;
RwMistakesMark *rw_mistakes_book_mark (const RwMistakesBook *self);
void            rw_mistakes_book_return (RwMistakesBook *self, const RwMistakesMark *mark);
void            rw_mistakes_mark_free (RwMistakesMark *mark);

/* Appends the warnings to @warnings (of RwWarning): dangers first, then the newest reading first.
 * O(spots²), however many readings there were. */
void rw_mistakes_look (const RwBenchState *state, const RwMistakesBook *book, GArray *warnings);

G_END_DECLS
