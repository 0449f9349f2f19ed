/* rw-mistakes-book.c: the readings and turns of a session in order.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Readings are only ever added, each linked to those before it that a look may ask for. Coming back to a mark cuts off
 * what was added since; the lists of what is newest are copied into the mark, since they are short.
 */
#include "config.h"

#include "rw-mistakes-book.h"

#include <math.h>

#include "rw-mistakes-private.h"

RwMistakesBook *
rw_mistakes_book_new (const RwRail *reference)
{
  RwMistakesBook *self = g_new0 (RwMistakesBook, 1);

  self->reference = reference;
  self->past = g_array_new (FALSE, FALSE, sizeof (RwPast));
  self->turns = g_array_new (FALSE, FALSE, sizeof (RwTurn));
  self->spots = g_array_new (FALSE, FALSE, sizeof (RwPastSpot));
  self->meters = g_array_new (FALSE, FALSE, sizeof (guint));
  self->weak = g_array_new (FALSE, FALSE, sizeof (guint));
  self->loss = (RwPastLoss){ 0, G_MAXUINT, RW_NO_PAST, RW_NO_PAST, FALSE };
  return self;
}

void
rw_mistakes_book_free (RwMistakesBook *self)
{
  g_array_unref (self->past);
  g_array_unref (self->turns);
  g_array_unref (self->spots);
  g_array_unref (self->meters);
  g_array_unref (self->weak);
  g_free (self);
}

guint
rw_mistakes_book_get_n_past (const RwMistakesBook *self)
{
  return self->past->len;
}

const RwPast *
rw_mistakes_book_get_past (const RwMistakesBook *self,
                           guint                 i)
{
  return &g_array_index (self->past, RwPast, i);
}

const RwPast *
rw_mistakes_book_find_past (const RwMistakesBook *self,
                            guint                 i)
{
  return i != RW_NO_PAST ? rw_mistakes_book_get_past (self, i) : NULL;
}

const RwPastSpot *
rw_mistakes_book_find_spot (const RwMistakesBook *self,
                            const char           *rail,
                            RwPlace               place,
                            RwKind                kind)
{
  for (guint i = 0; i < self->spots->len; i++)
    {
      const RwPastSpot *spot = &g_array_index (self->spots, RwPastSpot, i);
      const RwReading *reading = &rw_mistakes_book_get_past (self, spot->last)->spot.reading;

      if (reading->rail == rail && reading->place == place && reading->kind == kind)
        return spot;
    }
  return NULL;
}

/* --- links ---------------------------------------------------------------------------------------- */

static gboolean
is_of_meter (const RwMistakesBook *self,
             guint                 i,
             const RwPast         *past)
{
  return rw_mistakes_book_get_past (self, i)->spot.reading.meter == past->spot.reading.meter;
}

static gboolean
says_alive (const RwPast *past)
{
  const RwReading *reading = &past->spot.reading;

  return reading->kind == RW_KIND_DC && reading->place != RW_PLACE_WIRE && !reading->over
         && rw_mistakes_is_alive (&past->spot);
}

/* What the rail moved by within the epoch, as far as its own meter saw. */
static void
link_alive (const RwMistakesBook *self,
            RwPast               *past)
{
  const RwPast *own = rw_mistakes_book_find_past (self, past->before_own);

  past->least = INFINITY;
  past->most = -INFINITY;
  if (own == NULL)
    return;
  past->before_alive = says_alive (own) ? past->before_own : own->before_alive;

  const RwPast *alive = rw_mistakes_book_find_past (self, past->before_alive);

  if (alive == NULL || alive->epoch != past->epoch)
    return;
  past->least = MIN (alive->least, alive->spot.reading.value);
  past->most = MAX (alive->most, alive->spot.reading.value);
}

/* @last: the reading of the same spot before this one. */
static void
link_spot (const RwMistakesBook *self,
           RwPast               *past,
           guint                 last)
{
  guint i = rw_mistakes_book_get_past (self, last)->spot.reading.over ? rw_mistakes_book_get_past (self, last)->before
                                                                      : last;

  past->before = i;
  if (i == RW_NO_PAST)
    return;
  past->before_other = is_of_meter (self, i, past) ? rw_mistakes_book_get_past (self, i)->before_other : i;
  /* All between a reading and the one of another meter before it are of its own meter. */
  while (i != RW_NO_PAST && !is_of_meter (self, i, past))
    i = rw_mistakes_book_get_past (self, i)->before_other;
  past->before_own = i;
  past->unloaded = rw_mistakes_book_get_past (self, past->before)->unloaded;
  link_alive (self, past);
}

/* A list of what is newest, that of @i moved to its head. */
static void
put_first (GArray       *list,
           guint         i,
           gconstpointer item)
{
  if (i < list->len)
    g_array_remove_index (list, i);
  g_array_insert_vals (list, 0, item, 1);
}

/* @at: its place among the spots, or their number. */
static void
note_spot (RwMistakesBook *self,
           const RwPast   *past,
           guint           at)
{
  const guint index = self->past->len;
  RwPastSpot spot = { RW_NO_PAST, RW_NO_PAST, RW_NO_PAST };

  if (at < self->spots->len)
    spot = g_array_index (self->spots, RwPastSpot, at);
  spot.last = index;
  if (says_alive (past))
    spot.alive = index;
  if (!past->spot.reading.over
      && (spot.first == RW_NO_PAST || rw_mistakes_book_get_past (self, spot.first)->stretch != self->stretch))
    spot.first = index;
  put_first (self->spots, at, &spot);
}

static guint
find_spot (const RwMistakesBook *self,
           const RwReading      *reading)
{
  guint i = 0;

  while (i < self->spots->len
         && !rw_reading_same_spot (
             &rw_mistakes_book_get_past (self, g_array_index (self->spots, RwPastSpot, i).last)->spot.reading, reading))
    i++;
  return i;
}

static void
note_meter (RwMistakesBook *self,
            const RwPast   *past)
{
  const guint index = self->past->len;
  guint i = 0;

  while (i < self->meters->len && !is_of_meter (self, g_array_index (self->meters, guint, i), past))
    i++;
  put_first (self->meters, i, &index);
}

static void
note_weak (RwMistakesBook *self,
           RwPast         *past)
{
  const guint index = self->past->len;

  if (!rw_mistakes_is_weak (&past->spot))
    return;
  for (guint i = 0; i < self->weak->len; i++)
    {
      guint *newest = &g_array_index (self->weak, guint, i);
      const RwPast *other = rw_mistakes_book_get_past (self, *newest);

      if (other->spot.rail != past->spot.rail)
        continue;
      past->weak_before = other->epoch != past->epoch ? *newest : other->weak_before;
      *newest = index;
      return;
    }
  g_array_append_val (self->weak, index);
}

/* --- taking down ---------------------------------------------------------------------------------- */

void
rw_mistakes_book_take_reading (RwMistakesBook    *self,
                               const RwSpotState *spot,
                               gboolean           known)
{
  RwPast past = { .spot = *spot, .known = known, .epoch = self->epoch, .stretch = self->stretch,
                  .turns = self->turns->len, .fixes = self->fixes, .before = RW_NO_PAST, .before_own = RW_NO_PAST,
                  .before_other = RW_NO_PAST, .before_alive = RW_NO_PAST, .unloaded = RW_NO_PAST,
                  .weak_before = RW_NO_PAST, .least = INFINITY, .most = -INFINITY };
  const guint at = find_spot (self, &spot->reading);

  if (at < self->spots->len)
    link_spot (self, &past, g_array_index (self->spots, RwPastSpot, at).last);
  if (spot->setup.board_fitted == RW_SAID_NO && !spot->reading.over)
    past.unloaded = self->past->len;
  note_spot (self, &past, at);
  note_meter (self, &past);
  note_weak (self, &past);
  g_array_append_val (self->past, past);
  self->last_t = spot->t;
}

void
rw_mistakes_book_take_turn (RwMistakesBook *self,
                            guint           n,
                            double          t,
                            const RwSetup  *setup)
{
  const RwTurn turn = { n, t, *setup };

  rw_mistakes_find_loss (self);
  g_array_append_val (self->turns, turn);
  self->epoch++;
  self->turned_at_stretch = self->stretch;
  self->deeds = 0;
}

void
rw_mistakes_book_take_change (RwMistakesBook *self,
                              gboolean        fixed)
{
  self->epoch++;
  self->stretch++;
  self->fixes += fixed;
  self->loss = (RwPastLoss){ self->past->len, G_MAXUINT, RW_NO_PAST, RW_NO_PAST, FALSE };
}

void
rw_mistakes_book_take_deed (RwMistakesBook *self,
                            double          t)
{
  self->deeds++;
  self->last_t = t;
}

const RwTurn *
rw_mistakes_book_get_last_turn (const RwMistakesBook *self)
{
  return self->turns->len > 0 ? &g_array_index (self->turns, RwTurn, self->turns->len - 1) : NULL;
}

/* --- coming back ---------------------------------------------------------------------------------- */

struct _RwMistakesMark
{
  RwMistakesBook book; /* its past and turns are those of the book, not the mark's */
  guint          n_past, n_turns;
};

RwMistakesMark *
rw_mistakes_book_mark (const RwMistakesBook *self)
{
  RwMistakesMark *mark = g_new (RwMistakesMark, 1);

  *mark = (RwMistakesMark){ *self, self->past->len, self->turns->len };
  mark->book.spots = g_array_copy (self->spots);
  mark->book.meters = g_array_copy (self->meters);
  mark->book.weak = g_array_copy (self->weak);
  return mark;
}

void
rw_mistakes_book_return (RwMistakesBook       *self,
                         const RwMistakesMark *mark)
{
  g_array_unref (self->spots);
  g_array_unref (self->meters);
  g_array_unref (self->weak);
  *self = mark->book;
  self->spots = g_array_copy (mark->book.spots);
  self->meters = g_array_copy (mark->book.meters);
  self->weak = g_array_copy (mark->book.weak);
  g_array_set_size (self->past, mark->n_past);
  g_array_set_size (self->turns, mark->n_turns);
}

void
rw_mistakes_mark_free (RwMistakesMark *mark)
{
  g_array_unref (mark->book.spots);
  g_array_unref (mark->book.meters);
  g_array_unref (mark->book.weak);
  g_free (mark);
}
