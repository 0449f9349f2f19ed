/* rw-rail-guess.c: which rail are the leads on?
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bayes over the hypotheses "this rail at this place, leads so or reversed" and "none of these":
 *   p (h | value) = prior (h)·density (value | h) / Σ of the same over all h.
 * The densities are those of rw-rail-density.h.
 *
 * Prior: 0.70 for what was asked, 0.03 for none. What is left goes half to the other places of the rail that was
 * asked (the right wire, the wrong end) and half to all other spots; without a question all of it goes to all
 * spots alike. Where the person said at which place the leads are put, only 0.02 goes to all other places
 * (somebody forgot to say), and what is left to the other rails there. Within each share chips count half (a fiddly touch), a drop along a wire a fifth unless it was a
 * drop that was asked for, and a spot read a moment ago (its reading is not stale) a third. One touch in thirty
 * is the wrong way round, where that makes a difference: volts, and not along a wire.
 *
 * DC volts are found at the terminals, and at board and chips unless the board is known to be out. Ripple
 * likewise, but its size tells rails apart poorly. Of other kinds the value tells nothing of the rail.
 */
#include "config.h"

#include "rw-rail-guess.h"

#include <math.h>
#include <stdlib.h>

#include "rw-rail-density.h"

static const double asked_share = 0.70, none_share = 0.03;
static const double other_place_share = 0.02;
static const double reversed_share = 1.0 / 30;
static const double chip_weight = 0.5, wire_weight = 0.2, read_weight = 1.0 / 3;

typedef struct
{
  const RwRail *rail; /* NULL: ground, or none */
  RwRailGuess   guess;
  double        weight; /* within its share */
} Spot;

/* --- spots and their prior ---------------------------------------------------------------------- */

static gboolean
is_asked (const RwRailGuessInput *input,
          const char             *rail,
          RwPlace                 place)
{
  return g_strcmp0 (input->asked_rail, rail) == 0 && input->asked_place == place;
}

static double
get_weight (const RwRailGuessInput *input,
            const char             *rail,
            RwPlace                 place)
{
  const RwSpotState *spot = rw_bench_state_find_spot (input->state, rail, place, input->kind);
  double weight = place == RW_PLACE_CHIP ? chip_weight : 1;

  if (place == RW_PLACE_WIRE && (input->asked_rail == NULL || input->asked_place != RW_PLACE_WIRE))
    weight = wire_weight;
  if (spot != NULL && !spot->stale)
    weight *= read_weight;
  return weight;
}

static void
add_spot (GArray                 *spots,
          const RwRailGuessInput *input,
          const RwRail           *rail,
          RwPlace                 place)
{
  const char *id = rail != NULL ? rail->id : g_intern_static_string (RW_RAIL_GROUND);
  Spot spot = { .rail = rail, .guess = { .rail = id, .place = place }, .weight = get_weight (input, id, place) };

  g_array_append_val (spots, spot);
}

static gboolean
is_measured_at (const RwRailGuessInput *input,
                RwPlace                 place)
{
  if (place == RW_PLACE_TERMINALS)
    return TRUE;
  if (place == RW_PLACE_WIRE && input->kind != RW_KIND_DC)
    return FALSE;
  return rw_bench_state_get_setup (input->state).board_fitted != RW_SAID_NO;
}

static GArray *
list_spots (const RwRailGuessInput *input)
{
  const RwProfile *profile = rw_bench_state_get_profile (input->state);
  GArray *spots = g_array_new (FALSE, FALSE, sizeof (Spot));

  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    for (RwPlace place = 0; place < RW_N_PLACES; place++)
      {
        const RwRail *rail = rw_profile_get_rail (profile, i);

        if (is_measured_at (input, place) || is_asked (input, rail->id, place))
          add_spot (spots, input, rail, place);
      }
  if (is_measured_at (input, RW_PLACE_WIRE) || is_asked (input, RW_RAIL_GROUND, RW_PLACE_WIRE))
    add_spot (spots, input, NULL, RW_PLACE_WIRE);
  return spots;
}

typedef enum
{
  SHARE_ASKED,
  SHARE_SAME_RAIL,  /* at another place */
  SHARE_OTHER,
  SHARE_SAME_PLACE, /* which was said: another rail */
  N_SHARES
} Share;

static Share
share_of (const RwRailGuessInput *input,
          const Spot             *spot)
{
  if (is_asked (input, spot->guess.rail, spot->guess.place))
    return SHARE_ASKED;
  if (input->place_said && spot->guess.place == input->asked_place)
    return SHARE_SAME_PLACE;
  return g_strcmp0 (spot->guess.rail, input->asked_rail) == 0 ? SHARE_SAME_RAIL : SHARE_OTHER;
}

/* Into p of each; what a share without spots would have had goes to the others. */
static void
give_priors (const RwRailGuessInput *input,
             GArray                 *spots)
{
  const double rest = 1 - asked_share - none_share;
  const double elsewhere = input->place_said ? other_place_share : rest;
  const double shares[N_SHARES] = { asked_share, elsewhere / 2, elsewhere / 2, rest - elsewhere };
  double weights[N_SHARES] = { 0 }, sum = 0;

  for (guint i = 0; i < spots->len; i++)
    weights[share_of (input, &g_array_index (spots, Spot, i))] += g_array_index (spots, Spot, i).weight;
  for (Share k = 0; k < N_SHARES; k++)
    if (weights[k] > 0)
      sum += shares[k];
  for (guint i = 0; i < spots->len; i++)
    {
      Spot *spot = &g_array_index (spots, Spot, i);
      const Share share = share_of (input, spot);

      spot->guess.p = (1 - none_share) * shares[share] / sum * spot->weight / weights[share];
    }
}

/* --- Bayes -------------------------------------------------------------------------------------- */

static double
get_density (const RwRailGuessInput *input,
             const Spot             *spot,
             double                  value)
{
  switch (input->kind)
    {
    case RW_KIND_DC:
      return rw_rail_density_dc (input->state, spot->rail, spot->guess.place, value, input->u_own);
    case RW_KIND_RIPPLE:
      return spot->rail != NULL ? rw_rail_density_ripple (spot->rail, value) : 1e-9;
    case RW_KIND_OHMS:
    case RW_KIND_AMPS:
    case RW_KIND_CELSIUS:
    case RW_N_KINDS:
    default:
      return 1;
    }
}

static double
get_density_of_none (const RwRailGuessInput *input)
{
  return input->kind == RW_KIND_DC || input->kind == RW_KIND_RIPPLE ? rw_rail_density_none (input->value) : 1;
}

static GArray *
weigh (const RwRailGuessInput *input,
       GArray                 *spots)
{
  GArray *guesses = g_array_new (FALSE, FALSE, sizeof (RwRailGuess));
  RwRailGuess none = { .p = none_share * get_density_of_none (input) };

  for (guint i = 0; i < spots->len; i++)
    {
      const Spot *spot = &g_array_index (spots, Spot, i);
      const gboolean turns = input->kind == RW_KIND_DC && spot->guess.place != RW_PLACE_WIRE;
      RwRailGuess guess = spot->guess;

      guess.p = spot->guess.p * (turns ? 1 - reversed_share : 1) * get_density (input, spot, input->value);
      g_array_append_val (guesses, guess);
      if (!turns)
        continue;
      guess.reversed = TRUE;
      guess.p = spot->guess.p * reversed_share * get_density (input, spot, -input->value);
      g_array_append_val (guesses, guess);
    }
  g_array_append_val (guesses, none);
  return guesses;
}

static int
likelier_first (const void *a,
                const void *b)
{
  const double x = ((const RwRailGuess *) a)->p, y = ((const RwRailGuess *) b)->p;

  return (x < y) - (x > y);
}

guint
rw_rail_guess (const RwRailGuessInput *input,
               RwRailGuess            *out,
               guint                   max)
{
  if (!isfinite (input->value) || max == 0)
    return 0;

  g_autoptr (GArray) spots = list_spots (input);

  give_priors (input, spots);

  g_autoptr (GArray) guesses = weigh (input, spots);
  const guint n = MIN (guesses->len, max);
  double sum = 0;

  for (guint i = 0; i < guesses->len; i++)
    sum += g_array_index (guesses, RwRailGuess, i).p;
  g_array_sort (guesses, likelier_first);
  for (guint i = 0; i < n; i++)
    {
      out[i] = g_array_index (guesses, RwRailGuess, i);
      out[i].p /= sum;
    }
  return n;
}
