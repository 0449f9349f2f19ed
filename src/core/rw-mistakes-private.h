/* rw-mistakes-private.h: what the files of rw-mistakes share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-mistakes-book.h"
#include "rw-mistakes.h"
#include "rw-trim-book.h"
#include "rw-trim-screen.h"

G_BEGIN_DECLS

typedef struct
{
  const RwBenchState   *state;
  const RwMistakesBook *book;
  GArray               *warnings; /* of RwWarning */
} RwMistakes;

/* Nothing on the DC side of a cabinet carries more (extra-low voltage). */
#define RW_MISTAKES_MAINS 60.0

/* --- telling: @text (transfer full) --- */

void rw_mistakes_warn (RwMistakes *self, const RwSpotState *spot, const char *id, gboolean danger, char *text);

/* A warning says that this reading is not what it is taken for. Past a limit it still is. */
gboolean rw_mistakes_is_spoilt (const RwMistakes *self, guint n);

const char *rw_mistakes_label (const RwSpotState *spot);
char       *rw_mistakes_value (const RwSpotState *spot); /* (transfer full) */

/* --- comparing --- */

/* The last reading there, when it still holds, has a value and is not spoilt. (nullable) */
const RwSpotState *rw_mistakes_fresh (const RwMistakes *self, const char *rail, RwPlace place, RwKind kind);

/* How far a sum or difference of these readings may be off by the meters' errors: 3·√Σu² or, if larger, the
 * sum of their bounds; their own parts within one meter, all of their errors between meters. */
double rw_mistakes_tolerance (const RwSpotState *const *spots, guint n);
double rw_mistakes_tolerance_2 (const RwSpotState *a, const RwSpotState *b);

/* More than half of the nominal volts, the right way round. */
gboolean rw_mistakes_is_alive (const RwSpotState *spot);

/* A minus rail that is outside its limits, towards 0 V. */
gboolean rw_mistakes_is_weak (const RwSpotState *spot);

/* Goes on searching the readings up to now for the first loss between terminals and board that is a matter of wiring. */
void rw_mistakes_find_loss (RwMistakesBook *book);

/* --- the themes --- */

/* One reading by itself. TRUE: a warning was given. @mistakes may carry a book of NULL. */
gboolean rw_mistakes_look_at_danger (RwMistakes *self, const RwSpotState *spot);
gboolean rw_mistakes_look_at_reversed (RwMistakes *self, const RwSpotState *spot);
gboolean rw_mistakes_look_at_terminal (RwMistakes *self, const RwSpotState *spot);
gboolean rw_mistakes_look_at_overload (RwMistakes *self, const RwSpotState *spot);
gboolean rw_mistakes_look_at_ohms (RwMistakes *self, const RwSpotState *spot);
gboolean rw_mistakes_look_at_ripple (RwMistakes *self, const RwSpotState *spot);
/* Live: the meter is in AC mode for certain, and shows a rail. */
gboolean rw_mistakes_look_at_ac (RwMistakes *self, const RwSpotState *spot);
gboolean rw_mistakes_look_at_zero (RwMistakes *self, const RwSpotState *spot);
gboolean rw_mistakes_look_at_slip (RwMistakes *self, const RwSpotState *spot);
gboolean rw_mistakes_look_at_battery (RwMistakes *self, const RwSpotState *spot);

/* A rail that fits the value better than the reading's own does; NULL: none, or no better than its own. */
const RwRail *rw_mistakes_find_other_rail (const RwMistakes *self, const RwSpotState *spot);

/* Readings of several places, of several meters, and over time. */
void rw_mistakes_look_at_drops (RwMistakes *self);
void rw_mistakes_look_at_chips (RwMistakes *self);
void rw_mistakes_look_at_repeats (RwMistakes *self);
void rw_mistakes_look_at_batteries (RwMistakes *self);
void rw_mistakes_look_at_turns (RwMistakes *self);
void rw_mistakes_look_at_slopes (RwMistakes *self);

/* FALSE: nothing can be said of the slopes of that set, whatever its lines are. O(rails · spots). */
gboolean rw_mistakes_may_have_slopes (const RwBenchState *state, const RwTrimBook *book, RwPlace place, RwSaid board);
/* Whether these lines have a slope that would be told of, once its rail is read. */
gboolean rw_mistakes_has_odd_slope (RwProfile *profile, const RwTrimFit *fit);
/* No slope, wherever the screen leaves it, is or comes close to being odd. */
gboolean rw_mistakes_are_slopes_usual (RwProfile *profile, const RwTrimScreen *screen);

G_END_DECLS
