/* rw-trim-set.c: everything known of the trim at one place, with the board in or out.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The priors. Windings share volts a turn, so a follower moves in proportion to its nominal volts, within
 * what diode drops, loads and winding resistances make of it: taken as ± 30 % (one standard deviation). An
 * output with a regulator of its own stands still but for line regulation: 0 ± 3 % of that. Where nobody
 * knows, half of it ± half: either is one standard deviation away. All are wide beside what two positions
 * a tenth of a volt apart say, so they matter for the first position only.
 */
#include "config.h"

#include "rw-trim-set.h"

#include <math.h>
#include <string.h>

#include "rw-trim-set-private.h"

static const double prior_yes_u = 0.30;
static const double prior_no_u = 0.03;
static const double prior_unknown = 0.5;

/* A slope known to this share of a follower's own would be seen if there were one. */
static const double seen_share = 0.25;

/* Rails a window can have: the bits of kept. */
enum
{
  MAX_RAILS = 64
};

RwTrimPrior
rw_trim_prior (const RwRail *rail,
               const RwRail *reference)
{
  const double ratio = rail->nominal / reference->nominal;

  switch (rail->follows_trim)
    {
    case RW_FOLLOWS_YES:
      return (RwTrimPrior){ ratio, prior_yes_u * fabs (ratio) };
    case RW_FOLLOWS_NO:
      return (RwTrimPrior){ 0, prior_no_u * fabs (ratio) };
    case RW_FOLLOWS_UNKNOWN:
    default:
      return (RwTrimPrior){ prior_unknown * ratio, prior_unknown * fabs (ratio) };
    }
}

/* --- making ------------------------------------------------------------------------------------- */

RwTrimFit *
rw_trim_set_fit (const RwTrimSetInput *input,
                 RwTrimSearch         *search)
{
  const guint reference
      = (guint) rw_profile_index_of (input->profile, rw_profile_get_reference (input->profile)->id);
  const guint n_rails = rw_profile_get_n_rails (input->profile);
  g_autofree RwTrimPrior *priors = g_new (RwTrimPrior, n_rails);
  g_autofree RwTrimReading *readings = g_new (RwTrimReading, MAX (input->n_points, 1));

  for (guint i = 0; i < n_rails; i++)
    priors[i] = rw_trim_prior (rw_profile_get_rail (input->profile, i),
                               rw_profile_get_rail (input->profile, reference));
  for (guint i = 0; i < input->n_points; i++)
    readings[i] = (RwTrimReading){ input->points[i].rail, input->points[i].position, input->points[i].value,
                                   input->points[i].u, input->normal != NULL && input->normal[i] };
  return rw_trim_fit_search (n_rails, reference, priors, input->n_positions, readings, input->n_points, search);
}

static void
take_positions (RwTrimSet            *self,
                const RwTrimSetInput *input)
{
  self->positions = g_array_sized_new (FALSE, FALSE, sizeof (RwTrimPosition), input->n_positions);
  for (guint i = 0; i < input->n_positions; i++)
    {
      RwTrimPosition position = { input->starts[i], input->ends[i], NAN, NAN };

      if (!rw_trim_fit_get_x (self->fit, i, &position.x, &position.u_x))
        position.x = position.u_x = NAN;
      g_array_append_val (self->positions, position);
    }
  self->is_current = input->is_current && input->n_positions > 0;
  self->x = self->u_x = NAN;
  if (self->is_current)
    {
      const RwTrimPosition *now = &g_array_index (self->positions, RwTrimPosition, input->n_positions - 1);

      self->x = now->x;
      self->u_x = now->u_x;
    }
}

static void
take_points (RwTrimSet            *self,
             const RwTrimSetInput *input)
{
  self->points = g_array_sized_new (FALSE, FALSE, sizeof (RwTrimPoint), input->n_points);
  g_array_append_vals (self->points, input->points, input->n_points);
  for (guint i = 0; i < input->n_points; i++)
    {
      RwTrimPoint *point = &g_array_index (self->points, RwTrimPoint, i);
      const RwTrimPosition *at = &g_array_index (self->positions, RwTrimPosition, point->position);

      point->x = at->x;
      point->u_x = at->u_x;
      point->outlier = FALSE;
    }
  for (guint i = 0; i < rw_trim_fit_get_n_outliers (self->fit); i++)
    g_array_index (self->points, RwTrimPoint, rw_trim_fit_get_outlier (self->fit, i)).outlier = TRUE;
}

static void
take_limits (RwTrimSet *self)
{
  const guint n = rw_profile_get_n_rails (self->profile);

  self->lo = g_new (double, n);
  self->hi = g_new (double, n);
  for (guint i = 0; i < n; i++)
    {
      const RwRail *rail = rw_profile_get_rail (self->profile, i);

      if (!rw_rail_limits_at (rail, rail->id, self->place, RW_KIND_DC, &self->lo[i], &self->hi[i]))
        self->lo[i] = self->hi[i] = NAN;
    }
}

/* A slope that the data cannot tell from none, though they would have seen one of a rail that follows, is
 * none: the rail stands still. Taken at its word it would ask for a reference hundreds of volts away. */
static void
stand_still (const RwTrimSet *self,
             guint            rail,
             RwTrimLine      *line)
{
  const double ratio = rw_profile_get_rail (self->profile, rail)->nominal
                       / rw_profile_get_rail (self->profile, self->reference)->nominal;
  double sum = 0;
  guint n = 0;

  if (rail == self->reference || fabs (line->slope) > 2 * line->slope_u || line->slope_u > seen_share * fabs (ratio))
    return;
  for (guint i = 0; i < self->positions->len; i++)
    {
      const double x = g_array_index (self->positions, RwTrimPosition, i).x;

      if (isnan (x))
        continue;
      sum += x;
      n++;
    }
  if (n > 0)
    line->offset += line->slope * sum / n;
  line->slope = 0;
}

/* The window over the rails that have a line and limits, told in indices of the profile. */
static void
find_window (RwTrimSet *self)
{
  RwTrimRail rails[MAX_RAILS];
  guint index[MAX_RAILS];
  guint n = 0;
  guint64 kept = 0;

  for (guint i = 0; i < rw_profile_get_n_rails (self->profile) && n < MAX_RAILS; i++)
    {
      RwTrimLine line;

      if (!rw_trim_fit_get_line (self->fit, i, &line))
        continue;
      self->n_lined++;
      if (isnan (self->lo[i]))
        continue;
      stand_still (self, i, &line);
      index[n] = i;
      rails[n++] = (RwTrimRail){ line.offset, line.slope, self->lo[i], self->hi[i],
                                 rw_profile_get_rail (self->profile, i)->priority };
    }
  rw_trim_window_solve (rails, n, &self->window);
  if (self->window.low_rail >= 0)
    self->window.low_rail = (int) index[self->window.low_rail];
  if (self->window.high_rail >= 0)
    self->window.high_rail = (int) index[self->window.high_rail];
  for (guint i = 0; i < n; i++)
    if ((self->window.kept >> i & 1) != 0 && index[i] < MAX_RAILS)
      kept |= G_GUINT64_CONSTANT (1) << index[i];
  self->window.kept = kept;
}

/* The own uncertainty with which the reference is read: that of its last reading; the inferred one where it
 * was never read. */
static double
setting_u (const RwTrimSet *self)
{
  for (guint i = self->points->len; i-- > 0;)
    {
      const RwTrimPoint *point = &g_array_index (self->points, RwTrimPoint, i);

      if (point->rail == self->reference)
        return point->u;
    }
  return isnan (self->u_x) ? 0 : self->u_x;
}

static void
predict (RwTrimSet *self)
{
  self->predicted = g_array_new (FALSE, FALSE, sizeof (RwTrimPredicted));
  self->chance = NAN;
  if (!isfinite (self->window.best))
    return;
  self->chance = rw_trim_window_chance (self->fit, self->lo, self->hi, self->window.best, setting_u (self),
                                        self->percent);
  for (guint i = 0; i < rw_profile_get_n_rails (self->profile); i++)
    {
      RwTrimPredicted it = { .rail = i, .margin = NAN };

      if (i == self->reference
          || !rw_trim_fit_expect (self->fit, i, self->window.best, 0, &it.expected))
        continue;
      it.u_common = self->percent / 100 * fabs (it.expected.value) / sqrt (3);
      if (!isnan (self->lo[i]))
        it.margin = rw_margin (it.expected.value, self->lo[i], self->hi[i]);
      g_array_append_val (self->predicted, it);
    }
}

RwTrimSet *
rw_trim_set_new (const RwTrimSetInput *input)
{
  RwTrimSet *self = g_atomic_rc_box_new0 (RwTrimSet);
  g_auto (RwTrimSearch) search;

  self->profile = rw_profile_ref (input->profile);
  self->place = input->place;
  self->board = input->board;
  self->percent = input->percent;
  self->reference = (guint) rw_profile_index_of (self->profile, rw_profile_get_reference (self->profile)->id);
  self->fit = rw_trim_set_fit (input, &search);
  take_positions (self, input);
  take_points (self, input);
  take_limits (self);
  find_window (self);
  self->complete = self->n_lined == rw_profile_get_n_rails (self->profile);
  predict (self);
  return self;
}

static void
clear_set (gpointer data)
{
  RwTrimSet *self = data;

  rw_profile_unref (self->profile);
  rw_trim_fit_unref (self->fit);
  g_array_unref (self->points);
  g_array_unref (self->positions);
  g_array_unref (self->predicted);
  g_free (self->lo);
  g_free (self->hi);
}

RwTrimSet *
rw_trim_set_ref (RwTrimSet *self)
{
  return g_atomic_rc_box_acquire (self);
}

void
rw_trim_set_unref (RwTrimSet *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full (self, clear_set);
}

/* --- live --------------------------------------------------------------------------------------- */

void
rw_trim_live_init (RwTrimLive      *out,
                   const RwTrimSet *set,
                   guint            from,
                   double           value,
                   double           u)
{
  RwTrimExpected reference;

  out->n_rails = rw_profile_get_n_rails (set->profile);
  out->from = from;
  out->x = out->u_x = NAN;
  out->rails = g_new (RwTrimExpected, out->n_rails);
  if (rw_trim_fit_expect_from (set->fit, set->reference, from, value, u, &reference))
    {
      out->x = reference.value;
      out->u_x = reference.u;
    }
  for (guint i = 0; i < out->n_rails; i++)
    if (i == from)
      out->rails[i] = (RwTrimExpected){ value, u, value - u * sqrt (3), value + u * sqrt (3) };
    else if (!rw_trim_fit_expect_from (set->fit, i, from, value, u, &out->rails[i]))
      out->rails[i] = (RwTrimExpected){ NAN, NAN, NAN, NAN };
}

void
rw_trim_live_clear (RwTrimLive *self)
{
  g_clear_pointer (&self->rails, g_free);
}
