/* rw-rail-density.c: how likely is a value at a spot, from all that is known of the cabinet?
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every spot's density is a mixture: what is expected there, with the share that the best knowledge of it
 * deserves, and the *broad* density of a supply nobody has looked at, for all that may have changed. The best
 * knowledge is the first of
 *  1. a reading there that is not stale: normal, of its error and the new one's, 0.1 % and 2 mV (contacts, drift);
 *  2. the trim's line of that rail at that place, at the reference as it stands now (u of the line included);
 *  3. the same of another place, 1 or 2, less the drop between: from terminals to board, and from board to chip,
 *     exponential with a mean of 60 mV, and with one in ten spread evenly over 0–0.6 V (a bad connector). Upstream
 *     likewise. The sum of an exponential of mean m and a normal of σ has the density
 *       exp (σ²/2m² − d/m)·Φ(d/σ − σ/m)/m;
 *  4. a stale reading there: normal, 4 % wide.
 *
 * Broad: 70 % healthy (normal about the middle of the limits, half their width to two standard deviations, and
 * no less than 2 % of the nominal), 20 % off (Laplace about the same middle, 10 % of the nominal), 5 % dead
 * (Laplace about 0, 30 mV), 5 % somewhere (even, from a fifth of the nominal the wrong way round to 1.6 times).
 * The shares are guesses from trade practice; what hangs on them is how soon a rail is called by its name.
 */
#include "config.h"

#include "rw-rail-density.h"

#include <math.h>

static const double sure_reading = 0.95, sure_line = 0.95, sure_drop = 0.90, sure_stale = 0.60;
static const double drift_share = 0.001, contact_volts = 0.002;
static const double drop_mean = 0.06, bad_drop = 0.6, bad_share = 0.1;
static const double stale_share = 0.04;
static const double least = 1e-9; /* a volt: nothing is impossible */

/* What is known of a value: normal. */
typedef struct
{
  double value, u; /* NaN: nothing */
  double sure;
} Known;

static double
normal (double x,
        double sigma)
{
  return exp (-x * x / (2 * sigma * sigma)) / (sigma * sqrt (2 * G_PI));
}

static double
laplace (double x,
         double scale)
{
  return exp (-fabs (x) / scale) / (2 * scale);
}

/* Exponential of mean @m plus a normal error. */
static double
exponential (double x,
             double m,
             double sigma)
{
  return exp (MIN (sigma * sigma / (2 * m * m) - x / m, 300)) * rw_normal_cdf (x / sigma - sigma / m) / m;
}

/* From 0 to @width plus a normal error. */
static double
even (double x,
      double width,
      double sigma)
{
  return (rw_normal_cdf (x / sigma) - rw_normal_cdf ((x - width) / sigma)) / width;
}

static double
broad (const RwRail *rail,
       RwPlace       place,
       double        value)
{
  const double size = fabs (rail->nominal);
  double lo = rail->nominal, hi = rail->nominal;

  rw_rail_limits_at (rail, rail->id, place, RW_KIND_DC, &lo, &hi);

  const double middle = (lo + hi) / 2, along = value / rail->nominal;
  const double somewhere = along > -0.2 && along < 1.6 ? 1 / (1.8 * size) : 0;

  return 0.70 * normal (value - middle, MAX ((hi - lo) / 4, 0.02 * size)) + 0.20 * laplace (value - middle, 0.1 * size)
         + 0.05 * laplace (value, 0.03) + 0.05 * somewhere;
}

/* 1 and 2 of the head. */
static Known
know_spot (const RwBenchState *state,
           const RwRail       *rail,
           RwPlace             place)
{
  const RwSpotState *spot = rw_bench_state_find_spot (state, rail->id, place, RW_KIND_DC);

  if (spot != NULL && !spot->stale && !spot->reading.over)
    return (Known){ spot->reading.value, spot->u_own, sure_reading };

  const RwTrimSet *set = rw_bench_state_find_trim_set (state, place);
  const int index = rw_profile_index_of (rw_bench_state_get_profile (state), rail->id);
  RwTrimExpected expected;

  if (set != NULL && set->is_current && index >= 0 && !isnan (set->x)
      && rw_trim_fit_expect (set->fit, (guint) index, set->x, set->u_x, &expected))
    return (Known){ expected.value, expected.u, sure_line };
  return (Known){ NAN, NAN, 0 };
}

static double
sigma_of (const Known *known,
          double       u)
{
  const double drift = drift_share * known->value;

  return sqrt (known->u * known->u + u * u + drift * drift + contact_volts * contact_volts);
}

/* 3 of the head: @steps places further from the supply than what is known; below 0: nearer. */
static double
along_the_way (const Known *known,
               int          steps,
               double       value,
               double       u,
               double       nominal)
{
  const double mean = drop_mean * abs (steps), sigma = sigma_of (known, u);
  double drop = nominal > 0 ? known->value - value : value - known->value;

  if (steps < 0)
    drop = -drop;
  return (1 - bad_share) * exponential (drop, mean, sigma) + bad_share * even (drop, bad_drop, sigma);
}

/* The nearest place of which something is known; its distance in places. */
static Known
know_elsewhere (const RwBenchState *state,
                const RwRail       *rail,
                RwPlace             place,
                int                *steps)
{
  for (int far = 1; far <= 2; far++)
    for (int sign = -1; sign <= 1; sign += 2)
      {
        const int other = (int) place - sign * far;

        if (other < RW_PLACE_TERMINALS || other > RW_PLACE_CHIP)
          continue;

        const Known known = know_spot (state, rail, (RwPlace) other);

        *steps = sign * far;
        if (!isnan (known.value))
          return known;
      }
  return (Known){ NAN, NAN, 0 };
}

static double
density_at_place (const RwBenchState *state,
                  const RwRail       *rail,
                  RwPlace             place,
                  double              value,
                  double              u)
{
  const double otherwise = broad (rail, place, value);
  const Known here = know_spot (state, rail, place);
  int steps = 0;

  if (!isnan (here.value))
    return here.sure * normal (value - here.value, sigma_of (&here, u)) + (1 - here.sure) * otherwise;

  const Known elsewhere = know_elsewhere (state, rail, place, &steps);

  if (!isnan (elsewhere.value))
    return sure_drop * along_the_way (&elsewhere, steps, value, u, rail->nominal) + (1 - sure_drop) * otherwise;

  const RwSpotState *spot = rw_bench_state_find_spot (state, rail->id, place, RW_KIND_DC);

  if (spot != NULL && !spot->reading.over)
    return sure_stale * normal (value - spot->reading.value, stale_share * fabs (rail->nominal))
           + (1 - sure_stale) * otherwise;
  return otherwise;
}

/* A drop along a wire; its sign is a matter of how the leads are held. */
static double
density_along_wire (const RwBenchState *state,
                    const char         *rail_id,
                    double              value,
                    double              u)
{
  const RwSpotState *spot = rw_bench_state_find_spot (state, rail_id, RW_PLACE_WIRE, RW_KIND_DC);
  const double fresh = 0.9 * exponential (value, drop_mean, MAX (u, 0.001)) + 0.1 * laplace (value, bad_drop / 2);

  if (spot == NULL || spot->stale || spot->reading.over)
    return fresh;

  const Known known = { spot->reading.value, spot->u_own, sure_reading };

  return sure_reading * normal (value - known.value, MAX (sigma_of (&known, u), 0.05 * fabs (known.value)))
         + (1 - sure_reading) * fresh;
}

double
rw_rail_density_dc (const RwBenchState *state,
                    const RwRail       *rail,
                    RwPlace             place,
                    double              value,
                    double              u)
{
  if (place == RW_PLACE_WIRE || rail == NULL)
    return least + density_along_wire (state, rail != NULL ? rail->id : RW_RAIL_GROUND, value, u);
  return least + density_at_place (state, rail, place, value, MAX (u, 0));
}

double
rw_rail_density_ripple (const RwRail *rail,
                        double        value)
{
  const double scale = isfinite (rail->ripple_limit) ? rail->ripple_limit / 2 : 0.05;

  return least + (value < 0 ? 0 : 0.9 * exp (-value / scale) / scale + 0.1 * exp (-value / (10 * scale)) / (10 * scale));
}

double
rw_rail_density_none (double value)
{
  return least + 0.4 * laplace (value, 0.15) + 0.3 * laplace (value, 8) + 0.3 * laplace (value, 60);
}
