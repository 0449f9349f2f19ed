/* rw-trim-book.c: sorts readings into trim sets and positions.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A position is the stretch between two turns of the trim. Warming up also begins a new one: the
 * reference may have drifted, and the rails still say what it became. Switching off and on does not.
 *
 * Not every reading is of use: one along a wire is a drop, one with the power off or with the leads the
 * wrong way round says nothing of the lines, and an output that is dead does not follow anything.
 *
 * The scale error is common to the readings of one meter only. Those of a second meter get their common
 * part as if it were their own, which it is beside the first.
 */
#include "config.h"

#include "rw-trim-book.h"

#include <math.h>

/* Shares of the nominal volts below which an output counts as dead. */
static const double dead_below = 0.25;

/* Of a value of which neither step nor meter is known, the share of it taken as its uncertainty: a meter
 * with a spare digit at 2000 counts. */
static const double unknown_u = 0.001;

typedef struct
{
  RwTrimPoint point; /* position: of the book */
  RwReading   reading;
  RwSaid      board;
} Entry;

struct _RwTrimBook
{
  RwProfile  *profile;
  RwSession  *session;   /* borrowed while events are taken; NULL before */
  GArray     *entries;   /* of Entry */
  GArray     *starts;    /* of double: seconds, a position */
  RwSaid      warm;
};

RwTrimBook *
rw_trim_book_new (RwProfile *profile)
{
  const double first = 0;
  RwTrimBook *self = g_new0 (RwTrimBook, 1);

  self->profile = rw_profile_ref (profile);
  self->entries = g_array_new (FALSE, FALSE, sizeof (Entry));
  self->starts = g_array_new (FALSE, FALSE, sizeof (double));
  g_array_append_val (self->starts, first);
  self->warm = RW_SAID_NOT;
  return self;
}

void
rw_trim_book_free (RwTrimBook *self)
{
  rw_profile_unref (self->profile);
  g_array_unref (self->entries);
  g_array_unref (self->starts);
  g_free (self);
}

RwSaid
rw_trim_book_board_at (RwPlace place,
                       RwSaid  board_fitted)
{
  if (board_fitted == RW_SAID_NOT && place != RW_PLACE_TERMINALS)
    return RW_SAID_YES;
  return board_fitted;
}

static gboolean
is_of_use (const RwReading *reading,
           const RwRail    *rail,
           const RwSetup   *setup)
{
  return rail != NULL && reading->kind == RW_KIND_DC && reading->place != RW_PLACE_WIRE && !reading->over
         && setup->power_on != RW_SAID_NO && isfinite (reading->value)
         && reading->value * (rail->nominal < 0 ? -1 : 1) > dead_below * fabs (rail->nominal);
}

static void
take_reading (RwTrimBook    *self,
              const RwEvent *event,
              const RwSetup *setup)
{
  const RwReading *reading = &event->reading;
  const int rail = rw_profile_index_of (self->profile, reading->rail);

  if (rail < 0 || !is_of_use (reading, rw_profile_get_rail (self->profile, (guint) rail), setup))
    return;

  const Entry entry = {
    .point = { .n = event->n, .t = event->t, .rail = (guint) rail, .position = self->starts->len - 1,
               .value = reading->value, .x = NAN, .u_x = NAN },
    .reading = *reading,
    .board = rw_trim_book_board_at (reading->place, setup->board_fitted),
  };

  g_array_append_val (self->entries, entry);
}

static void
start_position (RwTrimBook *self,
                double      t)
{
  g_array_append_val (self->starts, t);
}

void
rw_trim_book_take (RwTrimBook    *self,
                   RwSession     *session,
                   const RwEvent *event,
                   const RwSetup *setup)
{
  self->session = session;
  if (event->type == RW_EVENT_READING)
    take_reading (self, event, setup);
  else if (event->type == RW_EVENT_TRIM && event->trim.moved)
    start_position (self, event->t);
  else if (event->type == RW_EVENT_REPAIR && event->repair.result == RW_REPAIR_FIXED)
    {
      g_array_set_size (self->entries, 0);
      start_position (self, event->t);
    }
  else if (event->type == RW_EVENT_SETUP && setup->warm != self->warm)
    {
      if (self->warm != RW_SAID_NOT)
        start_position (self, event->t);
      self->warm = setup->warm;
    }
}

/* --- making the sets ---------------------------------------------------------------------------- */

/* The meter with the most readings of the set; NULL when none says. */
static const char *
find_main_meter (RwTrimBook *self,
                 RwPlace     place,
                 RwSaid      board)
{
  g_autoptr (GHashTable) counts = g_hash_table_new (g_direct_hash, g_direct_equal);
  const char *best = NULL;
  guint most = 0;

  for (guint i = 0; i < self->entries->len; i++)
    {
      const Entry *entry = &g_array_index (self->entries, Entry, i);

      if (entry->reading.place != place || entry->board != board || entry->reading.meter == NULL)
        continue;

      const guint count = GPOINTER_TO_UINT (g_hash_table_lookup (counts, entry->reading.meter)) + 1;

      g_hash_table_insert (counts, (gpointer) entry->reading.meter, GUINT_TO_POINTER (count));
      if (count > most)
        {
          most = count;
          best = entry->reading.meter;
        }
    }
  return best;
}

static double
own_u (RwTrimBook   *self,
       const Entry  *entry,
       const char   *main_meter)
{
  const RwMeterFacts *meter = rw_session_find_meter (self->session, entry->reading.meter);
  const double own = rw_meter_facts_u_own (meter, &entry->reading);

  const double u = entry->reading.meter == main_meter
                     ? own
                     : hypot (own, rw_meter_facts_u_common (meter, &entry->reading));

  return u > 0 ? u : unknown_u * fabs (entry->reading.value);
}

static double
position_end (RwTrimBook *self,
              guint       position)
{
  return position + 1 < self->starts->len ? g_array_index (self->starts, double, position + 1)
                                            : (double) INFINITY;
}

/* @board, @place: of the set. NULL when nothing was read there. */
static RwTrimSet *
make_set (RwTrimBook *self,
          RwPlace     place,
          RwSaid      board)
{
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (RwTrimPoint));
  g_autoptr (GArray) normal = g_array_new (FALSE, FALSE, sizeof (gboolean));
  g_autoptr (GArray) starts = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (GArray) ends = g_array_new (FALSE, FALSE, sizeof (double));
  const char *main_meter = find_main_meter (self, place, board);
  const RwMeterFacts *meter = main_meter != NULL ? rw_session_find_meter (self->session, main_meter) : NULL;
  guint last = G_MAXUINT;

  for (guint i = 0; i < self->entries->len; i++)
    {
      const Entry *entry = &g_array_index (self->entries, Entry, i);
      RwTrimPoint point = entry->point;
      const gboolean is_normal = !isnan (entry->reading.u);

      if (entry->reading.place != place || entry->board != board)
        continue;
      if (point.position != last)
        {
          const double end = position_end (self, point.position);

          g_array_append_val (starts, g_array_index (self->starts, double, point.position));
          g_array_append_val (ends, end);
        }
      last = point.position;
      point.position = starts->len - 1;
      point.u = own_u (self, entry, main_meter);
      g_array_append_val (points, point);
      g_array_append_val (normal, is_normal);
    }
  if (points->len == 0)
    return NULL;
  return rw_trim_set_new (&(RwTrimSetInput){
    .profile = self->profile,
    .place = place,
    .board = board,
    .points = (const RwTrimPoint *) (gconstpointer) points->data,
    .n_points = points->len,
    .normal = (const gboolean *) (gconstpointer) normal->data,
    .starts = (const double *) (gconstpointer) starts->data,
    .ends = (const double *) (gconstpointer) ends->data,
    .n_positions = starts->len,
    .is_current = last == self->starts->len - 1,
    .percent = meter != NULL ? meter->percent : 0,
  });
}

GPtrArray *
rw_trim_book_make_sets (RwTrimBook *self)
{
  static const RwPlace places[] = { RW_PLACE_BOARD, RW_PLACE_TERMINALS, RW_PLACE_CHIP };
  static const RwSaid boards[] = { RW_SAID_YES, RW_SAID_NO, RW_SAID_NOT };
  GPtrArray *sets = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_trim_set_unref);

  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    for (guint k = 0; k < G_N_ELEMENTS (boards); k++)
      {
        RwTrimSet *set = make_set (self, places[i], boards[k]);

        if (set != NULL)
          g_ptr_array_add (sets, set);
      }
  return sets;
}
