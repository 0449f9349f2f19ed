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

#include "rw-trim-book-private.h"

#include <math.h>
#include <string.h>

#include "rw-trim-set-private.h"

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
  guint       n_of_rail;   /* entries of its rail in its set, with this one */
  guint       n_positions; /* positions of its set, with that of this one */
} Entry;

enum
{
  N_PLACES = 3,
  N_BOARDS = 3,
  N_SETS = N_PLACES * N_BOARDS
};

static const RwPlace places[N_PLACES] = { RW_PLACE_BOARD, RW_PLACE_TERMINALS, RW_PLACE_CHIP };
static const RwSaid boards[N_BOARDS] = { RW_SAID_YES, RW_SAID_NO, RW_SAID_NOT };

static const guint no_entry = G_MAXUINT;

struct _RwTrimBook
{
  RwProfile  *profile;
  RwSession  *session;   /* borrowed while events are taken; NULL before */
  GArray     *entries;   /* of Entry */
  guint       first;     /* entry since the last repair that fixed something */
  guint      *newest;    /* entry of each rail in each set, then of each set, or no_entry */
  GArray     *starts;    /* of double: seconds, a position */
  RwSaid      warm;
};

static guint
n_newest (const RwTrimBook *self)
{
  return N_SETS * (rw_profile_get_n_rails (self->profile) + 1);
}

static guint *
newest_of_rail (const RwTrimBook *self,
                guint             set,
                guint             rail)
{
  return &self->newest[set * rw_profile_get_n_rails (self->profile) + rail];
}

static guint *
newest_of_set (const RwTrimBook *self,
               guint             set)
{
  return &self->newest[N_SETS * rw_profile_get_n_rails (self->profile) + set];
}

/* What was read before tells nothing of the lines. */
static void
forget_entries (RwTrimBook *self)
{
  self->first = self->entries->len;
  for (guint i = 0; i < n_newest (self); i++)
    self->newest[i] = no_entry;
}

RwTrimBook *
rw_trim_book_new (RwProfile *profile)
{
  const double first = 0;
  RwTrimBook *self = g_new0 (RwTrimBook, 1);

  self->profile = rw_profile_ref (profile);
  self->entries = g_array_new (FALSE, FALSE, sizeof (Entry));
  self->newest = g_new (guint, n_newest (self));
  forget_entries (self);
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
  g_free (self->newest);
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

static guint
set_of (RwPlace place,
        RwSaid  board)
{
  guint i = 0, k = 0;

  while (i + 1 < N_PLACES && places[i] != place)
    i++;
  while (k + 1 < N_BOARDS && boards[k] != board)
    k++;
  return i * N_BOARDS + k;
}

static const Entry *
get_entry (const RwTrimBook *self,
           guint             i)
{
  return i != no_entry ? &g_array_index (self->entries, Entry, i) : NULL;
}

static void
add_entry (RwTrimBook *self,
           Entry      *entry)
{
  const guint set = set_of (entry->reading.place, entry->board);
  guint *of_rail = newest_of_rail (self, set, entry->point.rail), *of_set = newest_of_set (self, set);
  const Entry *same_rail = get_entry (self, *of_rail), *same_set = get_entry (self, *of_set);

  entry->n_of_rail = same_rail != NULL ? same_rail->n_of_rail + 1 : 1;
  entry->n_positions = same_set == NULL ? 1
                                        : same_set->n_positions + (same_set->point.position != entry->point.position);
  *of_rail = *of_set = self->entries->len;
  g_array_append_vals (self->entries, entry, 1);
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

  Entry entry = {
    .point = { .n = event->n, .t = event->t, .rail = (guint) rail, .position = self->starts->len - 1,
               .value = reading->value, .x = NAN, .u_x = NAN },
    .reading = *reading,
    .board = rw_trim_book_board_at (reading->place, setup->board_fitted),
  };

  add_entry (self, &entry);
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
      forget_entries (self);
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

static gboolean
is_in_set (const Entry *entry,
           RwPlace      place,
           RwSaid       board)
{
  return entry->reading.place == place && entry->board == board;
}

/* The meter with the most readings of the set; NULL when none says. @lead: (nullable) its readings less those of the
 * next meter. */
static const char *
find_main_meter (RwTrimBook *self,
                 RwPlace     place,
                 RwSaid      board,
                 guint      *lead)
{
  g_autoptr (GHashTable) counts = g_hash_table_new (g_direct_hash, g_direct_equal);
  const char *best = NULL;
  GHashTableIter iter;
  gpointer meter, number;
  guint most = 0, next = 0;

  for (guint i = self->first; i < self->entries->len; i++)
    {
      const Entry *entry = &g_array_index (self->entries, Entry, i);

      if (!is_in_set (entry, place, board) || entry->reading.meter == NULL)
        continue;

      const guint count = GPOINTER_TO_UINT (g_hash_table_lookup (counts, entry->reading.meter)) + 1;

      g_hash_table_insert (counts, (gpointer) entry->reading.meter, GUINT_TO_POINTER (count));
      if (count > most)
        {
          most = count;
          best = entry->reading.meter;
        }
    }
  g_hash_table_iter_init (&iter, counts);
  while (g_hash_table_iter_next (&iter, &meter, &number))
    if (meter != best)
      next = MAX (next, GPOINTER_TO_UINT (number));
  if (lead != NULL)
    *lead = most - next;
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

/* What a set is made from. */
typedef struct
{
  GArray     *points; /* of RwTrimPoint */
  GArray     *normal; /* of gboolean */
  GArray     *starts, *ends; /* of double */
  const char *main_meter; /* (nullable) */
  guint       lead;
  gboolean    is_current;
} Gathered;

static void
gathered_clear (Gathered *self)
{
  g_array_unref (self->points);
  g_array_unref (self->normal);
  g_array_unref (self->starts);
  g_array_unref (self->ends);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Gathered, gathered_clear)

static void
gather (RwTrimBook *self,
        RwPlace     place,
        RwSaid      board,
        Gathered   *out)
{
  guint last = G_MAXUINT;

  *out = (Gathered){ .points = g_array_new (FALSE, FALSE, sizeof (RwTrimPoint)),
                     .normal = g_array_new (FALSE, FALSE, sizeof (gboolean)),
                     .starts = g_array_new (FALSE, FALSE, sizeof (double)),
                     .ends = g_array_new (FALSE, FALSE, sizeof (double)) };
  out->main_meter = find_main_meter (self, place, board, &out->lead);
  for (guint i = self->first; i < self->entries->len; i++)
    {
      const Entry *entry = &g_array_index (self->entries, Entry, i);
      RwTrimPoint point = entry->point;
      const gboolean is_normal = !isnan (entry->reading.u);

      if (!is_in_set (entry, place, board))
        continue;
      if (point.position != last)
        {
          const double end = position_end (self, point.position);

          g_array_append_val (out->starts, g_array_index (self->starts, double, point.position));
          g_array_append_val (out->ends, end);
        }
      last = point.position;
      point.position = out->starts->len - 1;
      point.u = own_u (self, entry, out->main_meter);
      g_array_append_val (out->points, point);
      g_array_append_val (out->normal, is_normal);
    }
  out->is_current = last == self->starts->len - 1;
}

static RwTrimSetInput
make_input (RwTrimBook     *self,
            RwPlace         place,
            RwSaid          board,
            const Gathered *gathered)
{
  const RwMeterFacts *meter
      = gathered->main_meter != NULL ? rw_session_find_meter (self->session, gathered->main_meter) : NULL;

  return (RwTrimSetInput){
    .profile = self->profile,
    .place = place,
    .board = board,
    .points = (const RwTrimPoint *) (gconstpointer) gathered->points->data,
    .n_points = gathered->points->len,
    .normal = (const gboolean *) (gconstpointer) gathered->normal->data,
    .starts = (const double *) (gconstpointer) gathered->starts->data,
    .ends = (const double *) (gconstpointer) gathered->ends->data,
    .n_positions = gathered->starts->len,
    .is_current = gathered->is_current,
    .percent = meter != NULL ? meter->percent : 0,
  };
}

/* @board, @place: of the set, in which there is a reading at least. */
static RwTrimSet *
make_set (RwTrimBook *self,
          RwPlace     place,
          RwSaid      board)
{
  g_auto (Gathered) gathered;

  gather (self, place, board, &gathered);

  const RwTrimSetInput input = make_input (self, place, board, &gathered);

  return rw_trim_set_new (&input);
}

GPtrArray *
rw_trim_book_make_sets_for (RwTrimBook      *self,
                            RwTrimBookWanted wanted,
                            gpointer         data)
{
  GPtrArray *sets = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_trim_set_unref);

  for (guint i = 0; i < N_SETS; i++)
    {
      const RwPlace place = places[i / N_BOARDS];
      const RwSaid board = boards[i % N_BOARDS];

      if (*newest_of_set (self, i) != no_entry && (wanted == NULL || wanted (self, place, board, data)))
        g_ptr_array_add (sets, make_set (self, place, board));
    }
  return sets;
}

GPtrArray *
rw_trim_book_make_sets (RwTrimBook *self)
{
  return rw_trim_book_make_sets_for (self, NULL, NULL);
}

guint
rw_trim_book_count_positions (const RwTrimBook *self,
                              RwPlace           place,
                              RwSaid            board)
{
  const Entry *newest = get_entry (self, *newest_of_set (self, set_of (place, board)));

  return newest != NULL ? newest->n_positions : 0;
}

guint
rw_trim_book_count_readings (const RwTrimBook *self,
                             RwPlace           place,
                             RwSaid            board,
                             guint             rail,
                             guint            *newest)
{
  const Entry *entry = get_entry (self, *newest_of_rail (self, set_of (place, board), rail));

  if (entry == NULL)
    return 0;
  *newest = entry->point.n;
  return entry->n_of_rail;
}

/* --- lines alone, and what is added to them ------------------------------------------------------- */

static RwTrimReading
reading_of (const RwTrimPoint *point,
            gboolean           is_normal)
{
  return (RwTrimReading){ point->rail, point->position, point->value, point->u, is_normal };
}

RwTrimFit *
rw_trim_book_fit (RwTrimBook     *self,
                  RwPlace         place,
                  RwSaid          board,
                  RwTrimSearch   *search,
                  RwTrimBookLine *out)
{
  g_auto (Gathered) gathered;

  gather (self, place, board, &gathered);

  const RwTrimSetInput input = make_input (self, place, board, &gathered);

  *out = (RwTrimBookLine){
    .readings = g_array_sized_new (FALSE, FALSE, sizeof (RwTrimReading), input.n_points),
    .meter = gathered.main_meter,
    .lead = gathered.lead,
    .at = self->entries->len,
    .first = self->first,
    .position = get_entry (self, *newest_of_set (self, set_of (place, board)))->point.position,
  };
  for (guint i = 0; i < input.n_points; i++)
    {
      const RwTrimReading reading = reading_of (&input.points[i], input.normal[i]);

      g_array_append_val (out->readings, reading);
    }
  return rw_trim_set_fit (&input, search);
}

gboolean
rw_trim_book_next (RwTrimBook     *self,
                   RwPlace         place,
                   RwSaid          board,
                   RwTrimBookLine *line,
                   RwTrimReading  *out,
                   gboolean       *opens)
{
  while (line->at < self->entries->len)
    {
      const Entry *entry = &g_array_index (self->entries, Entry, line->at++);
      RwTrimPoint point = entry->point;

      if (!is_in_set (entry, place, board))
        continue;
      point.u = own_u (self, entry, line->meter);
      *opens = point.position != line->position;
      line->position = point.position;
      *out = reading_of (&point, !isnan (entry->reading.u));
      return TRUE;
    }
  return FALSE;
}

gboolean
rw_trim_book_holds (const RwTrimBook     *self,
                    const RwTrimBookLine *line)
{
  return line->first == self->first && line->at <= self->entries->len;
}

/* --- coming back -------------------------------------------------------------------------------- */

struct _RwTrimBookMark
{
  guint  n_entries, n_starts, first;
  guint *newest;
  RwSaid warm;
};

RwTrimBookMark *
rw_trim_book_mark (const RwTrimBook *self)
{
  RwTrimBookMark *mark = g_new (RwTrimBookMark, 1);

  *mark = (RwTrimBookMark){ self->entries->len, self->starts->len, self->first,
                            g_memdup2 (self->newest, n_newest (self) * sizeof (guint)), self->warm };
  return mark;
}

void
rw_trim_book_return (RwTrimBook           *self,
                     const RwTrimBookMark *mark)
{
  g_array_set_size (self->entries, mark->n_entries);
  g_array_set_size (self->starts, mark->n_starts);
  self->first = mark->first;
  memcpy (self->newest, mark->newest, n_newest (self) * sizeof (guint));
  self->warm = mark->warm;
}

void
rw_trim_book_mark_free (RwTrimBookMark *mark)
{
  g_free (mark->newest);
  g_free (mark);
}
