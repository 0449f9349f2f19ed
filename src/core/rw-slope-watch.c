/* rw-slope-watch.c: whether the lines of a trim set have an odd slope, while readings come in one by one.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Of each set the last fit is kept, and what came since goes through its screen (rw-trim-screen.h). Only where the
 * screen is not sure the lines are fitted anew; since a fit of twice as many readings takes twice as many to become
 * unsure, the cost of all fits grows little faster than the readings do.
 *
 * The screen takes the uncertainties of a set for granted, which depend on the meter that most of its readings are of:
 * it is used for fewer readings than that meter leads the next one by.
 */
#include "config.h"

#include "rw-slope-watch.h"

#include "rw-mistakes-private.h"
#include "rw-trim-book-private.h"

enum
{
  N_SETS = RW_N_PLACES * 3
};

/* What is kept of a set. */
typedef struct
{
  RwTrimScreen  *base;   /* as it was when it was fitted; NULL: nothing is known */
  RwTrimScreen  *screen; /* with what came since */
  RwTrimBookLine fitted, seen;
  guint          n_since; /* readings */
} Watched;

struct _RwSlopeWatch
{
  Watched sets[N_SETS];
};

static void
forget (Watched *self)
{
  g_clear_pointer (&self->base, rw_trim_screen_free);
  g_clear_pointer (&self->screen, rw_trim_screen_free);
}

RwSlopeWatch *
rw_slope_watch_new (void)
{
  return g_new0 (RwSlopeWatch, 1);
}

void
rw_slope_watch_free (RwSlopeWatch *self)
{
  for (guint i = 0; i < N_SETS; i++)
    forget (&self->sets[i]);
  g_free (self);
}

static void
start_over (Watched *self)
{
  g_clear_pointer (&self->screen, rw_trim_screen_free);
  self->screen = rw_trim_screen_copy (self->base);
  self->seen = self->fitted;
  self->n_since = 0;
}

void
rw_slope_watch_return (RwSlopeWatch     *self,
                       const RwTrimBook *book)
{
  for (guint i = 0; i < N_SETS; i++)
    {
      Watched *set = &self->sets[i];

      if (set->base == NULL)
        continue;
      if (!rw_trim_book_holds (book, &set->fitted))
        forget (set);
      else if (!rw_trim_book_holds (book, &set->seen))
        start_over (set);
    }
}

/* FALSE: what came since is too much. */
static gboolean
catch_up (Watched    *self,
          RwTrimBook *book,
          RwPlace     place,
          RwSaid      board)
{
  RwTrimReading reading;
  gboolean opens;

  while (rw_trim_book_next (book, place, board, &self->seen, &reading, &opens))
    {
      rw_trim_screen_add (self->screen, &reading, opens);
      self->n_since++;
    }
  return self->n_since < self->fitted.lead;
}

static gboolean
is_surely_quiet (Watched    *self,
                 RwTrimBook *book,
                 RwProfile  *profile,
                 RwPlace     place,
                 RwSaid      board)
{
  if (self->base == NULL || !rw_trim_book_holds (book, &self->fitted) || !catch_up (self, book, place, board))
    return FALSE;

  const RwTrimScreenSays says = rw_trim_screen_judge (self->screen);

  return says == RW_TRIM_SCREEN_MISFIT
         || (says == RW_TRIM_SCREEN_FIT && rw_mistakes_are_slopes_usual (profile, self->screen));
}

static gboolean
fit_anew (Watched    *self,
          RwTrimBook *book,
          RwProfile  *profile,
          RwPlace     place,
          RwSaid      board)
{
  g_auto (RwTrimSearch) search;
  g_autoptr (RwTrimFit) fit = rw_trim_book_fit (book, place, board, &search, &self->fitted);
  g_autoptr (GArray) readings = g_steal_pointer (&self->fitted.readings);

  forget (self);
  self->base = self->fitted.meter != NULL
                 ? rw_trim_screen_new (&search, (const RwTrimReading *) (gconstpointer) readings->data, readings->len)
                 : NULL;
  if (self->base != NULL)
    start_over (self);
  return rw_mistakes_has_odd_slope (profile, fit);
}

gboolean
rw_slope_watch_may_warn (RwSlopeWatch *self,
                         RwTrimBook   *book,
                         RwProfile    *profile,
                         RwPlace       place,
                         RwSaid        board)
{
  Watched *set = &self->sets[(guint) place * 3 + (guint) (board + 1)];

  return !is_surely_quiet (set, book, profile, place, board) && fit_anew (set, book, profile, place, board);
}
