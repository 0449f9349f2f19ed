/* rw-call-score.c: how good calls were. The formulas and their sources stand in rw-call-score.h.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-call-score.h"

#include <math.h>
#include <string.h>

#include "rw-verdict.h"

/* The 95 % quantile of the standard normal: 90 % lie within ± this. */
#define Z90 1.6448536269514722

static double
normal_pdf (double z)
{
  return exp (-z * z / 2) / sqrt (2 * G_PI);
}

double
rw_call_sd (double give)
{
  return isfinite (give) ? give / Z90 : 0;
}

double
rw_call_crps (double value,
              double sd,
              double answer)
{
  if (!(sd > 0))
    return fabs (answer - value);

  const double z = (answer - value) / sd;

  return sd * (z * (2 * rw_normal_cdf (z) - 1) + 2 * normal_pdf (z) - 1 / sqrt (G_PI));
}

/* G of the head comment. */
static double
primitive (double z)
{
  const double p = rw_normal_cdf (z);

  return z * p * p + 2 * p * normal_pdf (z) - rw_normal_cdf (G_SQRT2 * z) / sqrt (G_PI);
}

/* ∫ Φ(z)² dy, from → to with y = μ + σ z. */
static double
below (double value,
       double sd,
       double from,
       double to)
{
  return sd * (primitive ((to - value) / sd) - primitive ((from - value) / sd));
}

double
rw_call_points (double value,
                double sd,
                double answer,
                double lo,
                double hi)
{
  const double a = lo - (hi - lo), b = hi + (hi - lo);

  if (!(lo < hi) || !isfinite (a) || !isfinite (b) || isnan (answer) || isnan (value))
    return NAN;

  const double x = CLAMP (answer, a, b);
  const double lost = sd > 0 ? below (value, sd, a, x) + below (-value, sd, -b, -x) : fabs (x - CLAMP (value, a, b));

  return 100 * CLAMP (1 - lost / (b - a), 0, 1);
}

gboolean
rw_call_round_get_side (const RwCallRound *round,
                        RwCallSide        *side)
{
  if (isnan (round->was) || isnan (round->answer))
    return FALSE;

  const double answer_u = isfinite (round->answer_u) ? round->answer_u : 0;
  const double was_u = isfinite (round->was_u) ? round->was_u : answer_u;
  const double difference = round->answer - round->was;

  /* Two equal readings of a meter that nothing is known of are the same, rounding apart. */
  if (fabs (difference) <= 1.96 * hypot (answer_u, was_u) + 1e-9)
    *side = RW_CALL_SAME;
  else
    *side = difference < 0 ? RW_CALL_LOWER : RW_CALL_HIGHER;
  return TRUE;
}

double
rw_call_hands_points (const guint hands[RW_N_CALL_SIDES],
                      RwCallSide  side)
{
  const double n = (double) hands[0] + hands[1] + hands[2];

  if (!(n > 0))
    return NAN;

  const double first = hands[RW_CALL_LOWER] / n - (side == RW_CALL_LOWER);
  const double second = (hands[RW_CALL_LOWER] + hands[RW_CALL_SAME]) / n - (side != RW_CALL_HIGHER);

  return 100 * (1 - (first * first + second * second) / 2);
}

gboolean
rw_call_round_get_window (const RwCallRound *round,
                          const RwProfile   *profile,
                          double            *lo,
                          double            *hi)
{
  const RwRail *rail = rw_profile_find_rail (profile, round->rail);

  if (!rw_rail_limits_at (rail, round->rail, round->place, round->kind, lo, hi))
    return FALSE;
  if (isinf (*lo))
    *lo = MIN (0, *hi);
  if (isinf (*hi))
    *hi = MAX (0, *lo);
  return *lo < *hi;
}

double
rw_call_round_score (const RwCallRound *round,
                     const RwProfile   *profile,
                     const RwCall      *call)
{
  double lo, hi;

  if (round->answer_n == 0 || !rw_call_round_get_window (round, profile, &lo, &hi))
    return NAN;
  return rw_call_points (call->value, rw_call_sd (call->give), round->answer, lo, hi);
}

/* --- over the lesson --------------------------------------------------------------------------- */

static void
standing_free (gpointer data)
{
  RwCallStanding *standing = data;

  g_free (standing->by);
  g_free (standing);
}

static gboolean
is_of (const RwCallStanding *standing,
       RwCallerKind          kind,
       const char           *by)
{
  if (standing->kind != kind)
    return FALSE;
  if (kind != RW_CALLER_NAMED)
    return TRUE;

  g_autofree char *a = g_utf8_casefold (standing->by, -1);
  g_autofree char *b = g_utf8_casefold (by, -1);

  return g_str_equal (a, b);
}

/* points holds the sum until all rounds are in. */
static void
count (GPtrArray   *standings,
       RwCallerKind kind,
       const char  *by,
       double       points)
{
  RwCallStanding *standing = NULL;

  if (isnan (points))
    return;
  for (guint i = 0; i < standings->len && standing == NULL; i++)
    if (is_of (standings->pdata[i], kind, by))
      standing = standings->pdata[i];
  if (standing == NULL)
    {
      standing = g_new0 (RwCallStanding, 1);
      standing->kind = kind;
      standing->by = g_strdup (by);
      g_ptr_array_add (standings, standing);
    }
  standing->n++;
  standing->points += points;
}

static void
count_round (GPtrArray         *standings,
             const RwCallRound *round,
             RwSession         *session)
{
  const RwProfile *profile = rw_session_get_profile (session);
  RwCallPrediction predicted;
  RwCallSide side;
  double lo, hi;

  for (guint i = 0; i < round->calls->len; i++)
    {
      const RwCall *call = round->calls->pdata[i];

      count (standings, RW_CALLER_NAMED, call->by, rw_call_round_score (round, profile, call));
    }
  if (round->has_hands && rw_call_round_get_side (round, &side))
    count (standings, RW_CALLER_HANDS, NULL, rw_call_hands_points (round->hands, side));
  if (rw_call_round_get_window (round, profile, &lo, &hi) && rw_call_predict (round, session, &predicted))
    count (standings, RW_CALLER_PROGRAM, NULL,
           rw_call_points (predicted.value, predicted.u, round->answer, lo, hi));
}

static int
compare_standings (gconstpointer a,
                   gconstpointer b)
{
  const RwCallStanding *first = *(const RwCallStanding *const *) a, *second = *(const RwCallStanding *const *) b;

  if (first->points != second->points)
    return first->points > second->points ? -1 : 1;
  if (first->n != second->n)
    return first->n > second->n ? -1 : 1;
  return first->kind != second->kind ? (int) first->kind - (int) second->kind : g_strcmp0 (first->by, second->by);
}

GPtrArray *
rw_call_standings (const RwCallBook *book,
                   RwSession        *session)
{
  GPtrArray *standings = g_ptr_array_new_with_free_func (standing_free);

  for (guint i = 0; i < rw_call_book_get_n_rounds (book); i++)
    {
      const RwCallRound *round = rw_call_book_get_round (book, i);

      if (round->answer_n > 0)
        count_round (standings, round, session);
    }
  for (guint i = 0; i < standings->len; i++)
    {
      RwCallStanding *standing = standings->pdata[i];

      standing->points /= standing->n;
    }
  g_ptr_array_sort (standings, compare_standings);
  return standings;
}
