/* rw-bench-walk.c: the bench state after each landmark of a session in turn.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One state is carried forward. What is taken back is a matter of the past: every so many landmarks a mark is set, and
 * the walk returns to the last one before what was taken back (or given back by taking back a retraction) and goes on
 * from there, so that the usual undo costs a few landmarks. New facts of a meter hold for all its readings, so then it
 * returns to the first of them.
 *
 * An event is live unless a live retraction names it. Of each event that is named the live ones that do are counted;
 * one that comes or goes changes the count of its own target, and so on along the chain.
 */
#include "config.h"

#include "rw-bench-walk.h"

#include <string.h>

#include "rw-bench-state-private.h"
#include "rw-mistakes-private.h"
#include "rw-slope-watch.h"
#include "rw-trim-book.h"

/* Landmarks from mark to mark. */
enum
{
  MARK_EVERY = 64
};

/* The state and the books, as they were there. */
typedef struct
{
  RwBenchState    state; /* its warnings, mistakes, profile and trim sets are not the mark's */
  guint           n_repairs;
  RwMistakesMark *mistakes;
  RwTrimBookMark *trims;
} Mark;

struct _RwBenchWalk
{
  RwSession    *session;
  RwSession    *part;    /* up to here */
  RwBenchState *state;
  RwTrimBook   *trims;
  guint         n_done;  /* landmarks behind */
  GPtrArray    *marks;   /* of Mark: before landmark 0, MARK_EVERY, … */
  GHashTable   *named;   /* event index → how many live retractions name it */
  RwSlopeWatch *slopes;
  GHashTable   *first;   /* id of a meter → 1 + the first landmark that is a reading of it */
};

/* --- marks ---------------------------------------------------------------------------------------- */

static void
copy_lists (RwBenchState       *out,
            const RwBenchState *state)
{
  out->spots = g_array_copy (state->spots);
  out->views = g_array_copy (state->views);
  out->symptoms = g_array_copy (state->symptoms);
  out->findings = g_array_copy (state->findings);
}

static void
drop_lists (RwBenchState *state)
{
  g_array_unref (state->spots);
  g_array_unref (state->views);
  g_array_unref (state->symptoms);
  g_array_unref (state->findings);
}

static void
mark_free (gpointer data)
{
  Mark *mark = data;

  drop_lists (&mark->state);
  rw_mistakes_mark_free (mark->mistakes);
  rw_trim_book_mark_free (mark->trims);
  g_free (mark);
}

static void
set_mark (RwBenchWalk *self)
{
  Mark *mark = g_new (Mark, 1);

  *mark = (Mark){ *self->state, self->state->repairs->len, rw_mistakes_book_mark (self->state->mistakes),
                  rw_trim_book_mark (self->trims) };
  copy_lists (&mark->state, self->state);
  g_ptr_array_add (self->marks, mark);
}

/* To the last mark before landmark @i, or at it. */
static void
return_before (RwBenchWalk *self,
               guint        i)
{
  const guint k = i / MARK_EVERY;
  const Mark *mark = self->marks->pdata[k];
  RwBenchState *state = self->state;
  const RwBenchState kept = *state;

  drop_lists (state);
  *state = mark->state;
  copy_lists (state, &mark->state);
  state->warnings = kept.warnings;
  state->trim_sets = kept.trim_sets;
  g_array_set_size (state->repairs, mark->n_repairs);
  rw_mistakes_book_return (state->mistakes, mark->mistakes);
  rw_trim_book_return (self->trims, mark->trims);
  rw_slope_watch_return (self->slopes, self->trims);
  g_ptr_array_set_size (self->marks, (int) k + 1);
  self->n_done = k * MARK_EVERY;
}

/* --- what is live --------------------------------------------------------------------------------- */

static guint
count_names (RwBenchWalk *self,
             guint        index)
{
  return GPOINTER_TO_UINT (g_hash_table_lookup (self->named, GUINT_TO_POINTER (index)));
}

/* A retraction at @index has come to life, or died. Returns the first event whose life that changed. */
static guint
pass_on (RwBenchWalk *self,
         guint        index,
         gboolean     lives)
{
  guint earliest = index;

  for (;;)
    {
      const RwEvent *event = rw_session_get_event (self->part, index);
      const int target = event->type == RW_EVENT_RETRACT ? rw_session_find (self->part, event->retract.n) : -1;

      if (target < 0 || (guint) target >= index)
        return earliest;

      const guint names = count_names (self, (guint) target) + (lives ? 1 : -1);

      g_hash_table_insert (self->named, GINT_TO_POINTER (target), GUINT_TO_POINTER (names));
      if (names != (lives ? 1 : 0))
        return earliest;
      lives = !lives;
      index = (guint) target;
      earliest = MIN (earliest, index);
    }
}

/* --- going on ------------------------------------------------------------------------------------- */

static void
take (RwBenchWalk *self)
{
  const guint index = rw_session_get_landmark (self->session, self->n_done);
  const RwEvent *event = rw_session_get_event (self->session, index);

  if (self->n_done % MARK_EVERY == 0 && self->marks->len == self->n_done / MARK_EVERY)
    set_mark (self);
  self->n_done++;
  if (count_names (self, index) > 0)
    return;
  rw_bench_state_take (self->state, self->part, event);
  rw_trim_book_take (self->trims, self->part, event, &self->state->setup);
}

/* The first landmark at or after the event. */
static guint
landmark_at (RwBenchWalk *self,
             guint        index)
{
  guint low = 0, high = self->n_done;

  while (low < high)
    {
      const guint middle = low + (high - low) / 2;

      if (rw_session_get_landmark (self->session, middle) < index)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

/* The first landmark that has to be taken anew, with the one at @index next. */
static guint
find_changed (RwBenchWalk *self,
              guint        index)
{
  const RwEvent *event = rw_session_get_event (self->session, index);

  if (event->type == RW_EVENT_RETRACT)
    return landmark_at (self, pass_on (self, index, TRUE));
  if (event->type == RW_EVENT_METER)
    {
      const guint first = GPOINTER_TO_UINT (g_hash_table_lookup (self->first, event->meter->id));

      return first > 0 ? first - 1 : self->n_done;
    }
  if (event->type == RW_EVENT_READING && event->reading.meter != NULL
      && !g_hash_table_contains (self->first, event->reading.meter))
    g_hash_table_insert (self->first, (gpointer) event->reading.meter, GUINT_TO_POINTER (self->n_done + 1));
  return self->n_done;
}

gboolean
rw_bench_walk_step (RwBenchWalk *self,
                    guint       *index)
{
  if (self->n_done >= rw_session_get_n_landmarks (self->session))
    return FALSE;
  *index = rw_session_get_landmark (self->session, self->n_done);
  rw_session_advance (self->part, *index + 1);

  const guint goal = self->n_done + 1, changed = find_changed (self, *index);

  if (changed < self->n_done)
    return_before (self, changed);
  while (self->n_done < goal)
    take (self);
  return TRUE;
}

static gboolean
may_warn (RwTrimBook *book,
          RwPlace     place,
          RwSaid      board,
          gpointer    data)
{
  const RwBenchWalk *self = data;

  return rw_mistakes_may_have_slopes (self->state, book, place, board)
         && rw_slope_watch_may_warn (self->slopes, book, self->state->profile, place, board);
}

void
rw_bench_walk_look (RwBenchWalk *self)
{
  RwBenchState *state = self->state;

  g_array_set_size (state->warnings, 0);
  g_clear_pointer (&state->trim_sets, g_ptr_array_unref);
  state->trim_sets = rw_trim_book_make_sets_for (self->trims, may_warn, self);
  rw_mistakes_look (state, state->mistakes, state->warnings);
}

/* --- the whole ------------------------------------------------------------------------------------ */

RwBenchWalk *
rw_bench_walk_new (RwSession *session)
{
  RwBenchWalk *self = g_new0 (RwBenchWalk, 1);
  RwProfile *profile = rw_session_get_profile (session);

  self->session = g_object_ref (session);
  self->part = rw_session_new_part (session);
  self->state = rw_bench_state_begin (profile);
  self->trims = rw_trim_book_new (profile);
  self->slopes = rw_slope_watch_new ();
  self->marks = g_ptr_array_new_with_free_func (mark_free);
  self->named = g_hash_table_new (g_direct_hash, g_direct_equal);
  self->first = g_hash_table_new (g_str_hash, g_str_equal);
  return self;
}

void
rw_bench_walk_free (RwBenchWalk *self)
{
  g_object_unref (self->session);
  g_object_unref (self->part);
  rw_bench_state_unref (self->state);
  rw_trim_book_free (self->trims);
  rw_slope_watch_free (self->slopes);
  g_ptr_array_unref (self->marks);
  g_hash_table_unref (self->named);
  g_hash_table_unref (self->first);
  g_free (self);
}

RwSession *
rw_bench_walk_get_part (RwBenchWalk *self)
{
  return self->part;
}

const RwBenchState *
rw_bench_walk_get_state (const RwBenchWalk *self)
{
  return self->state;
}
