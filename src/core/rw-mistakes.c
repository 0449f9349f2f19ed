/* rw-mistakes.c: mistakes of measuring, recognised from the readings alone.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The ids, and where each is looked for:
 *   spot:         mains-sized (danger), never-above (danger), leads-reversed, wrong-terminal, overload,
 *                 ohms-power-on
 *   mode:         ac-mode, dc-mode-for-ripple, unit-slip
 *   conservation: terminal-as-board, zero-drop, chassis-ground, drop-skipped, chip-above-board
 *   meter:        meters-disagree, reading-in-change, low-battery
 *   trim:         trim-no-load, chasing-drop, chasing-minus, stale-after-trim
 *   slope:        slope-odd
 *
 * Rules that hold for all of them:
 *  1. Only readings that still hold count; a warning carries the event number of the newest one concerned.
 *  2. A danger is said whatever else there is. Of the others a reading gets the most specific one, and a
 *     reading that is not what it is taken for is compared with nothing.
 *  3. Nothing is said within the meters' errors. Two readings of one meter are compared by their own parts,
 *     since its scale error is in both; those of two meters by all of their errors, so that a difference
 *     between meters is never taken for a change of the cabinet.
 *  4. A rail that is really dead or low is a fault and no mistake: nothing is said of a lone value that a
 *     fault could give as well.
 *
 * Figures are estimates of the trade. What a session does not hold cannot be looked for: the AC ahead of a
 * rectifier, the resistance of a wire, single fingers of a connector.
 */
#include "config.h"

#include "rw-mistakes-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"

/* Of a meter of which nothing is known: a common one, ±(0.5 % + 2 counts). */
static const double usual_share = 0.005;
static const double usual_counts = 2;

/* The share of the value taken for its last digit when nobody said. */
static const double unknown_step = 0.001;

static const double sqrt_3 = 1.7320508075688772;

void
rw_warning_clear (RwWarning *self)
{
  g_clear_pointer (&self->text, g_free);
}

/* --- telling ------------------------------------------------------------------------------------ */

void
rw_mistakes_warn (RwMistakes        *self,
                  const RwSpotState *spot,
                  const char        *id,
                  gboolean           danger,
                  char              *text)
{
  const RwWarning warning = { spot->n, id, danger, text };

  g_array_append_val (self->warnings, warning);
}

gboolean
rw_mistakes_is_spoilt (const RwMistakes *self,
                       guint             n)
{
  for (guint i = 0; i < self->warnings->len; i++)
    {
      const RwWarning *warning = &g_array_index (self->warnings, RwWarning, i);

      if (warning->n == n && !g_str_equal (warning->id, "never-above"))
        return TRUE;
    }
  return FALSE;
}

const char *
rw_mistakes_label (const RwSpotState *spot)
{
  if (spot->rail != NULL)
    return spot->rail->label;
  return g_str_equal (spot->reading.rail, RW_RAIL_GROUND) ? _ ("ground") : spot->reading.rail;
}

char *
rw_mistakes_value (const RwSpotState *spot)
{
  return rw_quantity_format (spot->reading.value, spot->reading.step, spot->reading.kind);
}

/* --- comparing ---------------------------------------------------------------------------------- */

const RwSpotState *
rw_mistakes_fresh (const RwMistakes *self,
                   const char       *rail,
                   RwPlace           place,
                   RwKind            kind)
{
  const RwSpotState *spot = rw_bench_state_find_spot (self->state, rail, place, kind);

  if (spot == NULL || spot->stale || spot->reading.over || !isfinite (spot->reading.value)
      || spot->setup.power_on == RW_SAID_NO || rw_mistakes_is_spoilt (self, spot->n))
    return NULL;
  return spot;
}

static double
error_of (const RwSpotState *spot,
          gboolean           one_meter)
{
  const double value = fabs (spot->reading.value);
  const double step = spot->reading.step > 0 ? spot->reading.step : unknown_step * value;
  const double own = usual_counts * step / sqrt_3;

  if (!isnan (spot->reading.u))
    return spot->reading.u;
  if (one_meter)
    return MAX (spot->u_own, own);
  return spot->reading.meter != NULL ? MAX (spot->u, own)
                                     : MAX (spot->u, own + usual_share * value / sqrt_3);
}

double
rw_mistakes_tolerance (const RwSpotState *const *spots,
                       guint                     n)
{
  gboolean one_meter = TRUE;
  double squares = 0, bounds = 0;

  for (guint i = 1; i < n; i++)
    one_meter = one_meter && spots[i]->reading.meter == spots[0]->reading.meter;
  for (guint i = 0; i < n; i++)
    {
      const double u = error_of (spots[i], one_meter);

      squares += u * u;
      bounds += sqrt_3 * u;
    }
  return MAX (3 * sqrt (squares), bounds);
}

double
rw_mistakes_tolerance_2 (const RwSpotState *a,
                         const RwSpotState *b)
{
  const RwSpotState *both[] = { a, b };

  return rw_mistakes_tolerance (both, 2);
}

gboolean
rw_mistakes_is_alive (const RwSpotState *spot)
{
  return spot->rail != NULL && spot->reading.value / spot->rail->nominal > 0.5;
}

/* --- all of it ---------------------------------------------------------------------------------- */

static gboolean
look_at_value (RwMistakes        *self,
               const RwSpotState *spot)
{
  if (rw_mistakes_look_at_danger (self, spot))
    {
      /* What was touched, or typed, instead: of use beside the danger, but not beside mains. */
      if (rw_mistakes_is_spoilt (self, spot->n))
        return TRUE;
      return rw_mistakes_look_at_terminal (self, spot) || rw_mistakes_look_at_slip (self, spot) || TRUE;
    }
  return rw_mistakes_look_at_terminal (self, spot) || rw_mistakes_look_at_reversed (self, spot)
         || rw_mistakes_look_at_ripple (self, spot) || rw_mistakes_look_at_slip (self, spot);
}

static int
by_weight (gconstpointer a,
           gconstpointer b)
{
  const RwWarning *one = a, *other = b;

  if (one->danger != other->danger)
    return one->danger ? -1 : 1;
  return one->n < other->n ? 1 : one->n > other->n ? -1 : 0;
}

void
rw_mistakes_look (const RwBenchState   *state,
                  const RwMistakesBook *book,
                  GArray               *warnings)
{
  RwMistakes self = { state, book, warnings };
  const guint n_spots = rw_bench_state_get_n_spots (state);

  for (guint i = 0; i < n_spots; i++)
    {
      const RwSpotState *spot = rw_bench_state_get_spot (state, i);

      if (!spot->stale && !rw_mistakes_look_at_overload (&self, spot) && !rw_mistakes_look_at_ohms (&self, spot))
        look_at_value (&self, spot);
    }
  for (guint i = 0; i < n_spots; i++)
    if (!rw_bench_state_get_spot (state, i)->stale)
      rw_mistakes_look_at_zero (&self, rw_bench_state_get_spot (state, i));
  rw_mistakes_look_at_repeats (&self);
  rw_mistakes_look_at_drops (&self);
  rw_mistakes_look_at_chips (&self);
  rw_mistakes_look_at_turns (&self);
  rw_mistakes_look_at_slopes (&self);
  rw_mistakes_look_at_batteries (&self);
  g_array_sort (warnings, by_weight);
}

/* Live, a value of another rail may be one, with the leads on their way: no matter for a danger of this one. */
static gboolean
look_at_live_value (RwMistakes        *self,
                    const RwSpotState *spot)
{
  const RwRail *other = rw_mistakes_find_other_rail (self, spot);

  if (fabs (spot->reading.value) <= RW_MISTAKES_MAINS && other != NULL)
    return FALSE;
  return rw_mistakes_look_at_danger (self, spot) || rw_mistakes_look_at_reversed (self, spot)
         || rw_mistakes_look_at_ac (self, spot);
}

gboolean
rw_mistakes_look_live (const RwBenchState *state,
                       const RwReading    *sample,
                       RwWarning          *out)
{
  g_autoptr (GArray) warnings = g_array_new (FALSE, FALSE, sizeof (RwWarning));
  RwMistakes self = { state, NULL, warnings };
  const RwSpotState spot = {
    .reading = *sample,
    .rail = rw_profile_find_rail (rw_bench_state_get_profile (state), sample->rail),
    .setup = rw_bench_state_get_setup (state),
    .u = sample->step,
    .u_own = sample->step,
  };

  if (!rw_mistakes_look_at_overload (&self, &spot) && !rw_mistakes_look_at_ohms (&self, &spot)
      && !look_at_live_value (&self, &spot))
    rw_mistakes_look_at_battery (&self, &spot);
  if (warnings->len == 0)
    return FALSE;
  *out = g_array_index (warnings, RwWarning, 0);
  return TRUE;
}
