/* rw-foresight.c: the lines of the trim as the readings told them at any moment of a session.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Invariant: kept->fits[m − 1] is NULL or the fit of points [0, m) of the longest set known so far,
 * of which the points of the set in use are the first. The fit of all of a set is its own.
 *
 * What is kept goes on from state to state, also when a replay goes back to where there is no set yet:
 * what was fitted once is not fitted again when it comes forward.
 */
#include "config.h"

#include "rw-foresight.h"

#include <math.h>

#include "rw-trim-book.h"

/* Fits of a set that grows: shared by all its states. */
typedef struct
{
  RwTrimSet *longest;
  GPtrArray *fits; /* of RwTrimFit or NULL, a number of points */
} Kept;

/* One set as it is now. */
typedef struct
{
  RwTrimSet *set;
  double     until; /* seconds */
  Kept      *kept;
  guint     *known; /* a position: points by which its reference was known; 0: not asked yet */
} Lines;

struct _RwForesight
{
  GPtrArray *sets; /* of Lines, in order of time */
  GPtrArray *kept; /* of Kept, also of sets that are not there now; the newest last */
};

/* More sets than a session has that is not made up: the oldest are let go. */
static const guint most_kept = 32;

static void
unref_fit (gpointer data)
{
  if (data != NULL)
    rw_trim_fit_unref (data);
}

static void
clear_kept (gpointer data)
{
  Kept *self = data;

  rw_trim_set_unref (self->longest);
  g_ptr_array_unref (self->fits);
}

static void
unref_kept (gpointer data)
{
  g_rc_box_release_full (data, clear_kept);
}

static void
free_lines (gpointer data)
{
  Lines *self = data;

  rw_trim_set_unref (self->set);
  unref_kept (self->kept);
  g_free (self->known);
  g_free (self);
}

static const RwTrimPoint *
point_at (const RwTrimSet *set,
          guint            i)
{
  return &g_array_index (set->points, RwTrimPoint, i);
}

/* Points at the start of both that are the same, with all that a fit takes from them. */
static guint
count_common (const RwTrimSet *a,
              const RwTrimSet *b)
{
  const guint n = MIN (a->points->len, b->points->len);

  for (guint i = 0; i < n; i++)
    {
      const RwTrimPoint *one = point_at (a, i), *other = point_at (b, i);

      if (one->n != other->n || one->position != other->position || one->rail != other->rail
          || one->value != other->value || one->u != other->u)
        return i;
    }
  return n;
}

static gboolean
is_of_one_spot (const RwTrimSet *a,
                const RwTrimSet *b)
{
  return a->place == b->place && a->board == b->board && a->profile == b->profile;
}

static Kept *
make_kept (const RwTrimSet *set)
{
  Kept *self = g_rc_box_new0 (Kept);

  self->longest = rw_trim_set_ref ((RwTrimSet *) set);
  self->fits = g_ptr_array_new_with_free_func (unref_fit);
  g_ptr_array_set_size (self->fits, (int) set->points->len);
  return self;
}

static void
lengthen (Kept            *self,
          const RwTrimSet *set)
{
  if (set->points->len <= self->longest->points->len)
    return;
  rw_trim_set_unref (self->longest);
  self->longest = rw_trim_set_ref ((RwTrimSet *) set);
  g_ptr_array_set_size (self->fits, (int) set->points->len);
}

static void
copy_fits (Kept       *self,
           const Kept *from,
           guint       n)
{
  for (guint m = 0; m < n; m++)
    if (from->fits->pdata[m] != NULL && self->fits->pdata[m] == NULL)
      self->fits->pdata[m] = rw_trim_fit_ref (from->fits->pdata[m]);
}

/* That of which one goes on where the other ends; else a new one, with what the others have in common with it.
 * (transfer full) */
static Kept *
find_kept (RwForesight     *self,
           const RwTrimSet *set)
{
  Kept *made = make_kept (set);

  for (guint i = self->kept->len; i-- > 0;)
    {
      Kept *kept = self->kept->pdata[i];
      const guint n = is_of_one_spot (kept->longest, set) ? count_common (kept->longest, set) : 0;

      if (n > 0 && n == MIN (kept->longest->points->len, set->points->len))
        {
          unref_kept (made);
          lengthen (kept, set);
          return g_rc_box_acquire (kept);
        }
      copy_fits (made, kept, n);
    }
  g_ptr_array_add (self->kept, g_rc_box_acquire (made));
  if (self->kept->len > most_kept)
    g_ptr_array_remove_index (self->kept, 0);
  return made;
}

static void
add_set (RwForesight     *self,
         const RwTrimSet *set,
         double           until)
{
  Lines *lines = g_new0 (Lines, 1);
  const guint n = set->points->len;

  lines->set = rw_trim_set_ref ((RwTrimSet *) set);
  lines->until = until;
  lines->known = g_new0 (guint, set->positions->len + 1);
  lines->kept = find_kept (self, set);
  if (n > 0 && lines->kept->fits->pdata[n - 1] == NULL)
    lines->kept->fits->pdata[n - 1] = rw_trim_fit_ref (set->fit);
  g_ptr_array_add (self->sets, lines);
}

static void
take_setup (RwSetup       *setup,
            const RwSetup *said)
{
  if (said->power_on != RW_SAID_NOT)
    setup->power_on = said->power_on;
  if (said->board_fitted != RW_SAID_NOT)
    setup->board_fitted = said->board_fitted;
  if (said->warm != RW_SAID_NOT)
    setup->warm = said->warm;
}

/* A repair that helped changed the cabinet: the sets up to it. */
static void
end_sets (RwForesight *self,
          RwTrimBook  *book,
          double       until)
{
  g_autoptr (GPtrArray) sets = rw_trim_book_make_sets (book);

  for (guint i = 0; i < sets->len; i++)
    add_set (self, sets->pdata[i], until);
}

static void
collect_past (RwForesight *self,
              RwSession   *session)
{
  g_autoptr (RwTrimBook) book = rw_trim_book_new (rw_session_get_profile (session));
  RwSetup setup = { RW_SAID_NOT, RW_SAID_NOT, RW_SAID_NOT };

  for (guint i = 0; i < rw_session_get_n_landmarks (session); i++)
    {
      const guint index = rw_session_get_landmark (session, i);
      const RwEvent *event = rw_session_get_event (session, index);

      if (!rw_session_is_live (session, index))
        continue;
      if (event->type == RW_EVENT_SETUP)
        take_setup (&setup, &event->setup);
      if (event->type == RW_EVENT_REPAIR && event->repair.result == RW_REPAIR_FIXED)
        end_sets (self, book, event->t);
      rw_trim_book_take (book, session, event, &setup);
    }
}

RwForesight *
rw_foresight_new (RwSession          *session,
                  const RwBenchState *state,
                  const RwForesight  *before)
{
  RwForesight *self = g_new0 (RwForesight, 1);

  self->sets = g_ptr_array_new_with_free_func (free_lines);
  self->kept = g_ptr_array_new_with_free_func (unref_kept);
  for (guint i = 0; before != NULL && i < before->kept->len; i++)
    g_ptr_array_add (self->kept, g_rc_box_acquire (before->kept->pdata[i]));
  collect_past (self, session);
  for (guint i = 0; i < rw_bench_state_get_n_trim_sets (state); i++)
    add_set (self, rw_bench_state_get_trim_set (state, i), INFINITY);
  return self;
}

void
rw_foresight_free (RwForesight *self)
{
  if (self == NULL)
    return;
  g_ptr_array_unref (self->sets);
  g_ptr_array_unref (self->kept);
  g_free (self);
}

guint
rw_foresight_get_n_sets (const RwForesight *self)
{
  return self->sets->len;
}

const RwTrimSet *
rw_foresight_get_set (const RwForesight *self,
                      guint              set)
{
  return ((const Lines *) self->sets->pdata[set])->set;
}

double
rw_foresight_get_until (const RwForesight *self,
                        guint              set)
{
  return ((const Lines *) self->sets->pdata[set])->until;
}

guint
rw_foresight_count_until (const RwForesight *self,
                          guint              set,
                          guint              position)
{
  const RwTrimSet *it = rw_foresight_get_set (self, set);
  guint n = it->points->len;

  while (n > 0 && point_at (it, n - 1)->position > position)
    n--;
  return n;
}

guint
rw_foresight_count_known (RwForesight *self,
                          guint        set,
                          guint        position)
{
  Lines *lines = self->sets->pdata[set];
  const guint end = rw_foresight_count_until (self, set, position);
  double      x, u_x;
  guint n = position > 0 ? rw_foresight_count_until (self, set, position - 1) : 0;

  if (lines->known[position] > 0)
    return lines->known[position];
  do
    n++;
  while (n < end && !rw_trim_fit_get_x (rw_foresight_get_fit (self, set, n), position, &x, &u_x));
  lines->known[position] = MIN (n, end);
  return lines->known[position];
}

/* As the set itself is fitted, but that the shape of each reading's error is taken as a meter's
 * counts: the points do not say. */
static RwTrimFit *
fit_first (const RwTrimSet *set,
           guint            n_points)
{
  const guint n_rails = rw_profile_get_n_rails (set->profile);
  g_autofree RwTrimPrior   *priors = g_new (RwTrimPrior, n_rails);
  g_autofree RwTrimReading *readings = g_new (RwTrimReading, n_points);

  for (guint i = 0; i < n_rails; i++)
    priors[i] = rw_trim_prior (rw_profile_get_rail (set->profile, i),
                               rw_profile_get_rail (set->profile, set->reference));
  for (guint i = 0; i < n_points; i++)
    {
      const RwTrimPoint *point = point_at (set, i);

      readings[i] = (RwTrimReading){ point->rail, point->position, point->value, point->u, FALSE };
    }
  return rw_trim_fit_new (n_rails, set->reference, priors,
                          point_at (set, n_points - 1)->position + 1, readings, n_points);
}

const RwTrimFit *
rw_foresight_get_fit (RwForesight *self,
                      guint        set,
                      guint        n_points)
{
  Lines *lines = self->sets->pdata[set];

  g_return_val_if_fail (n_points > 0 && n_points <= lines->set->points->len, NULL);
  if (n_points == lines->set->points->len)
    return lines->set->fit;

  gpointer *fit = &lines->kept->fits->pdata[n_points - 1];

  if (*fit == NULL)
    *fit = fit_first (lines->set, n_points);
  return *fit;
}
