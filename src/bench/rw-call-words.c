/* rw-call-words.c: rounds of calls in words.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-call-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"

/* Calls are typed to the hundredth more often than not; a prediction is worth no more. */
static const double shown_step = 0.01;

void
rw_call_words_clear (RwCallWords *self)
{
  g_clear_pointer (&self->title, g_free);
  g_clear_pointer (&self->lines, g_strfreev);
  g_clear_pointer (&self->cells, g_strfreev);
}

static const char *
label_of (const RwCallRound *round,
          const RwProfile   *profile)
{
  const RwRail *rail = rw_profile_find_rail (profile, round->rail);

  return rail != NULL ? rail->label : round->rail;
}

/* As many decimals as the number was given with, two at least, three at most. */
static char *
format (double value,
        RwKind kind)
{
  const gboolean fine = fabs (value * 100 - round (value * 100)) > 1e-6;

  return rw_quantity_format (value, fine ? shown_step / 10 : shown_step, kind);
}

char *
rw_call_words_call (const RwCall *call,
                    RwKind        kind)
{
  g_autofree char *value = format (call->value, kind);
  g_autofree char *give = isfinite (call->give) ? format (call->give, kind) : NULL;

  /* Translators: a called value and how far it may be off, both with units. */
  return give != NULL ? g_strdup_printf (_ ("%s ± %s"), value, give) : g_steal_pointer (&value);
}

static char *
format_points (double points)
{
  return isnan (points) ? g_strdup ("–") : rw_quantity_format_number (points, 0);
}

static char **
take_strings (GPtrArray *strings)
{
  g_ptr_array_add (strings, NULL);
  return (char **) g_ptr_array_free (strings, FALSE);
}

/* --- while it is open ------------------------------------------------------------------------------ */

static char *
describe_callers (const RwCallRound *round)
{
  g_autoptr (GString) names = g_string_new (NULL);

  for (guint i = 0; i < round->calls->len; i++)
    g_string_append_printf (names, "%s%s", i > 0 ? " · " : "", ((const RwCall *) round->calls->pdata[i])->by);

  /* Translators: names of those who have called. */
  return g_strdup_printf (_ ("Called: %s"), names->str);
}

static char *
describe_hands (const RwCallRound *round)
{
  /* Translators: numbers of raised hands. */
  return g_strdup_printf (_ ("Hands: lower %u · the same %u · higher %u"), round->hands[RW_CALL_LOWER],
                          round->hands[RW_CALL_SAME], round->hands[RW_CALL_HIGHER]);
}

void
rw_call_words_ask (RwCallWords       *out,
                   const RwCallRound *round,
                   const RwProfile   *profile)
{
  GPtrArray *lines = g_ptr_array_new ();

  /* Translators: rail, place: a question to a class. */
  out->title = g_strdup_printf (_ ("What will %s, %s, read?"), label_of (round, profile), rw_place_get_label (round->place));
  if (isfinite (round->was))
    {
      g_autofree char *was = format (round->was, round->kind);

      /* Translators: a value. */
      g_ptr_array_add (lines, g_strdup_printf (_ ("Last shown: %s. Lower, the same, or higher?"), was));
    }
  else
    g_ptr_array_add (lines, g_strdup (_ ("Call a value, and how far it may be off.")));
  if (round->calls->len > 0)
    g_ptr_array_add (lines, describe_callers (round));
  if (round->has_hands)
    g_ptr_array_add (lines, describe_hands (round));
  out->lines = take_strings (lines);
  out->cells = NULL;
  out->n_columns = 0;
}

/* --- after the reveal ------------------------------------------------------------------------------ */

typedef struct
{
  char  *who, *called;
  double points;
} Row;

static void
clear_row (gpointer data)
{
  g_free (((Row *) data)->who);
  g_free (((Row *) data)->called);
}

/* NaN last. */
static int
compare_rows (gconstpointer a,
              gconstpointer b)
{
  const double first = ((const Row *) a)->points, second = ((const Row *) b)->points;

  if (isnan (first) || isnan (second))
    return isnan (first) - isnan (second);
  return first > second ? -1 : first < second;
}

static void
add_row (GArray *rows,
         char   *who,
         char   *called,
         double  points)
{
  const Row row = { who, called, points };

  g_array_append_val (rows, row);
}

static void
add_prediction (GArray            *rows,
                GPtrArray         *lines,
                const RwCallRound *round,
                RwSession         *session)
{
  double lo, hi, points = NAN;
  RwCallPrediction predicted;

  if (!rw_call_predict (round, session, &predicted))
    {
      g_ptr_array_add (lines, g_strdup (_ ("The program could not tell: too little had been read at this place since "
                                           "the last turn.")));
      return;
    }

  g_autofree char *value = rw_quantity_format (predicted.value, shown_step, round->kind);
  g_autofree char *from = rw_quantity_format (predicted.lo, shown_step, round->kind);
  g_autofree char *to = rw_quantity_format (predicted.hi, shown_step, round->kind);

  /* Translators: value, lower and upper end of its 95 % band. */
  g_ptr_array_add (lines, g_strdup_printf (_ ("The program expected %s: from %s to %s with 95 %%."), value, from, to));
  if (rw_call_round_get_window (round, rw_session_get_profile (session), &lo, &hi))
    points = rw_call_points (predicted.value, predicted.u, round->answer, lo, hi);
  add_row (rows, g_strdup (_ ("the program")), g_steal_pointer (&value), points);
}

static void
add_hands (GArray            *rows,
           const RwCallRound *round)
{
  RwCallSide side;
  const gboolean known = rw_call_round_get_side (round, &side);

  /* Translators: numbers of raised hands: lower, the same, higher. */
  char *called = g_strdup_printf (_ ("%u lower · %u same · %u higher"), round->hands[RW_CALL_LOWER],
                                  round->hands[RW_CALL_SAME], round->hands[RW_CALL_HIGHER]);

  add_row (rows, g_strdup (_ ("show of hands")), called, known ? rw_call_hands_points (round->hands, side) : (double) NAN);
}

static char *
describe_side (const RwCallRound *round)
{
  RwCallSide side;

  if (!rw_call_round_get_side (round, &side))
    return NULL;

  g_autofree char *was = format (round->was, round->kind);

  if (side == RW_CALL_LOWER)
    return g_strdup_printf (_ ("Lower than %s, which was shown last."), was);
  if (side == RW_CALL_HIGHER)
    return g_strdup_printf (_ ("Higher than %s, which was shown last."), was);
  return g_strdup_printf (_ ("The same as %s, as far as the meter can tell."), was);
}

static char **
table (GArray *rows)
{
  GPtrArray *cells = g_ptr_array_new ();

  g_ptr_array_add (cells, g_strdup (_ ("Who")));
  g_ptr_array_add (cells, g_strdup (_ ("Called")));
  g_ptr_array_add (cells, g_strdup (_ ("Points")));
  for (guint i = 0; i < rows->len; i++)
    {
      const Row *row = &g_array_index (rows, Row, i);

      g_ptr_array_add (cells, g_strdup (row->who));
      g_ptr_array_add (cells, g_strdup (row->called));
      g_ptr_array_add (cells, format_points (row->points));
    }
  return take_strings (cells);
}

void
rw_call_words_reveal (RwCallWords       *out,
                      const RwCallRound *round,
                      RwSession         *session)
{
  const RwProfile *profile = rw_session_get_profile (session);
  g_autoptr (GArray) rows = g_array_new (FALSE, FALSE, sizeof (Row));
  GPtrArray *lines = g_ptr_array_new ();
  g_autofree char *answer = format (round->answer, round->kind);
  char *side = describe_side (round);

  g_array_set_clear_func (rows, clear_row);
  /* Translators: rail, place, value. */
  out->title = g_strdup_printf (_ ("%s, %s: %s"), label_of (round, profile), rw_place_get_label (round->place), answer);
  if (side != NULL)
    g_ptr_array_add (lines, side);
  for (guint i = 0; i < round->calls->len; i++)
    {
      const RwCall *call = round->calls->pdata[i];

      add_row (rows, g_strdup (call->by), rw_call_words_call (call, round->kind),
               rw_call_round_score (round, profile, call));
    }
  if (round->has_hands)
    add_hands (rows, round);
  add_prediction (rows, lines, round, session);
  g_array_sort (rows, compare_rows);
  out->lines = take_strings (lines);
  out->cells = rows->len > 0 ? table (rows) : NULL;
  out->n_columns = rows->len > 0 ? 3 : 0;
}

/* --- over the lesson ------------------------------------------------------------------------------- */

static const char *
who (const RwCallStanding *standing)
{
  return standing->kind == RW_CALLER_NAMED ? standing->by
         : standing->kind == RW_CALLER_HANDS ? _ ("show of hands")
                                             : _ ("the program");
}

void
rw_call_words_standings (RwCallWords *out,
                         GPtrArray   *standings)
{
  GPtrArray *cells;

  *out = (RwCallWords){ 0 };
  out->title = g_strdup (_ ("The score"));
  out->lines = g_new0 (char *, 2);
  out->lines[0] = g_strdup (standings->len > 0 ? _ ("Points are means over the rounds: 100 for close and sure.")
                                               : _ ("No round of calls has been revealed yet."));
  if (standings->len == 0)
    return;
  cells = g_ptr_array_new ();
  g_ptr_array_add (cells, g_strdup (_ ("Who")));
  g_ptr_array_add (cells, g_strdup (_ ("Rounds")));
  g_ptr_array_add (cells, g_strdup (_ ("Points")));
  for (guint i = 0; i < standings->len; i++)
    {
      const RwCallStanding *standing = standings->pdata[i];

      g_ptr_array_add (cells, g_strdup (who (standing)));
      g_ptr_array_add (cells, rw_quantity_format_number (standing->n, 0));
      g_ptr_array_add (cells, format_points (standing->points));
    }
  out->cells = take_strings (cells);
  out->n_columns = 3;
}
