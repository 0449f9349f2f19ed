/* rw-compare-side.c: one of two sessions that are compared: the last reading of every spot and setup, and the trim.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The trim's lines belong to the supply and outlive a turn of the screw. A repair that fixed something starts them
 * afresh in the bench state; here the last ones that are known are kept, with a sign that the repair followed. Lines
 * whose slopes are still the profile's guess, since the screw hardly moved, tell nothing and replace none.
 */
#include "config.h"

#include "rw-compare-private.h"

#include <glib/gi18n-lib.h>

#include "rw-trim-book.h"

/* Of the profile's guess of a slope, how much may be left of its uncertainty. */
static const double guess_share = 0.5;

static gboolean
same_setup (const RwSetup *a,
            const RwSetup *b)
{
  return a->power_on == b->power_on && a->board_fitted == b->board_fitted && a->warm == b->warm;
}

static void
take_reading (RwCompareSide *self,
              const RwEvent *event,
              const RwSetup *setup)
{
  const RwCompareSpot spot = {
    .reading = event->reading,
    .setup = *setup,
    .n = event->n,
    .t = event->t,
  };

  for (guint i = 0; i < self->spots->len; i++)
    {
      RwCompareSpot *other = &g_array_index (self->spots, RwCompareSpot, i);

      if (!rw_reading_same_spot (&other->reading, &spot.reading) || !same_setup (&other->setup, setup))
        continue;
      *other = spot;
      return;
    }
  g_array_append_val (self->spots, spot);
}

/* @fitted_only: those with the board out still hold. */
static void
outdate (RwCompareSide *self,
         gboolean       fitted_only)
{
  for (guint i = 0; i < self->spots->len; i++)
    {
      RwCompareSpot *spot = &g_array_index (self->spots, RwCompareSpot, i);

      if (!fitted_only || spot->setup.board_fitted != RW_SAID_NO)
        spot->outdated = TRUE;
    }
}

static void
take_setup (RwCompareSide *self,
            const RwSetup *said,
            RwSetup       *setup)
{
  if (setup->board_fitted == RW_SAID_NO && said->board_fitted == RW_SAID_YES)
    outdate (self, TRUE);
  if (said->power_on != RW_SAID_NOT)
    setup->power_on = said->power_on;
  if (said->board_fitted != RW_SAID_NOT)
    setup->board_fitted = said->board_fitted;
  if (said->warm != RW_SAID_NOT)
    setup->warm = said->warm;
}

gboolean
rw_compare_tells_slope (const RwTrimSet *set,
                        guint            rail)
{
  const RwRail *it = rw_profile_get_rail (set->profile, rail);
  RwTrimLine line;

  return rail != set->reference && rw_trim_fit_get_line (set->fit, rail, &line)
         && line.slope_u < guess_share * rw_trim_prior (it, rw_profile_get_rail (set->profile, set->reference)).slope_u;
}

static gboolean
tells_any (const RwTrimSet *set)
{
  for (guint i = 0; i < rw_profile_get_n_rails (set->profile); i++)
    if (rw_compare_tells_slope (set, i))
      return TRUE;
  return FALSE;
}

/* Keeps the sets that tell of slopes, in place of those kept before. */
static void
keep_sets (RwCompareSide *self,
           RwTrimBook    *book,
           gboolean       aged)
{
  g_autoptr (GPtrArray) sets = rw_trim_book_make_sets (book);

  for (guint i = 0; i < sets->len; i++)
    {
      RwTrimSet *set = sets->pdata[i];
      guint k = 0;

      if (!tells_any (set))
        continue;
      while (k < self->sets->len)
        {
          const RwTrimSet *old = self->sets->pdata[k];

          if (old->place == set->place && old->board == set->board)
            {
              g_ptr_array_remove_index (self->sets, k);
              g_array_remove_index (self->aged, k);
            }
          else
            k++;
        }
      g_ptr_array_add (self->sets, rw_trim_set_ref (set));
      g_array_append_val (self->aged, aged);
    }
}

static void
take_event (RwCompareSide *self,
            RwTrimBook    *book,
            const RwEvent *event,
            RwSetup       *setup)
{
  const gboolean fixed = event->type == RW_EVENT_REPAIR && event->repair.result == RW_REPAIR_FIXED;

  if (event->type == RW_EVENT_SETUP)
    take_setup (self, &event->setup, setup);
  else if (event->type == RW_EVENT_READING)
    take_reading (self, event, setup);
  else if (fixed || (event->type == RW_EVENT_TRIM && event->trim.moved))
    outdate (self, FALSE);
  if (fixed)
    keep_sets (self, book, TRUE);
  rw_trim_book_take (book, self->session, event, setup);
}

void
rw_compare_side_init (RwCompareSide *self,
                      RwSession     *session)
{
  g_autoptr (RwTrimBook) book = rw_trim_book_new (rw_session_get_profile (session));
  RwSetup setup = { RW_SAID_NOT, RW_SAID_NOT, RW_SAID_NOT };

  self->session = g_object_ref (session);
  self->state = rw_bench_state_new (session);
  self->spots = g_array_new (FALSE, FALSE, sizeof (RwCompareSpot));
  self->sets = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_trim_set_unref);
  self->aged = g_array_new (FALSE, FALSE, sizeof (gboolean));
  for (guint i = 0; i < rw_session_get_n_landmarks (session); i++)
    {
      const guint index = rw_session_get_landmark (session, i);

      if (rw_session_is_live (session, index))
        take_event (self, book, rw_session_get_event (session, index), &setup);
    }
  keep_sets (self, book, FALSE);
  /* Only now: the facts of a meter are those of its last event. */
  for (guint i = 0; i < self->spots->len; i++)
    {
      RwCompareSpot *spot = &g_array_index (self->spots, RwCompareSpot, i);

      spot->meter = rw_session_find_meter (session, spot->reading.meter);
    }
}

void
rw_compare_side_clear (RwCompareSide *self)
{
  g_clear_object (&self->session);
  g_clear_pointer (&self->state, rw_bench_state_unref);
  g_clear_pointer (&self->spots, g_array_unref);
  g_clear_pointer (&self->sets, g_ptr_array_unref);
  g_clear_pointer (&self->aged, g_array_unref);
}

char *
rw_compare_dup_label (RwProfile  *profile,
                      const char *rail)
{
  const RwRail *known = rw_profile_find_rail (profile, rail);

  if (known != NULL)
    return g_strdup (known->label);
  return g_strdup (g_str_equal (rail, RW_RAIL_GROUND) ? _ ("ground") : rail);
}
