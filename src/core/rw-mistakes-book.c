/* rw-mistakes-book.c: the readings and turns of a session in order.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-mistakes-book.h"

RwMistakesBook *
rw_mistakes_book_new (void)
{
  RwMistakesBook *self = g_new0 (RwMistakesBook, 1);

  self->past = g_array_new (FALSE, FALSE, sizeof (RwPast));
  self->turns = g_array_new (FALSE, FALSE, sizeof (RwTurn));
  return self;
}

void
rw_mistakes_book_free (RwMistakesBook *self)
{
  g_array_unref (self->past);
  g_array_unref (self->turns);
  g_free (self);
}

void
rw_mistakes_book_take_reading (RwMistakesBook    *self,
                               const RwSpotState *spot,
                               gboolean           known)
{
  const RwPast past = { *spot, known, self->epoch, self->stretch, self->turns->len, self->fixes };

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
}

void
rw_mistakes_book_take_deed (RwMistakesBook *self,
                            double          t)
{
  self->deeds++;
  self->last_t = t;
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

const RwTurn *
rw_mistakes_book_get_last_turn (const RwMistakesBook *self)
{
  return self->turns->len > 0 ? &g_array_index (self->turns, RwTurn, self->turns->len - 1) : NULL;
}
