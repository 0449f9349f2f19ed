/* rw-practice-steps-call.c: the steps of a script that tell of a class: it calls a reading first.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What people call is their own; the answer is what the meter then shows.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "rw-call.h"
#include "rw-practice-script-private.h"

static gboolean
say (RwPracticeRun    *run,
     const RwCallSaid *said)
{
  RwEvent event = rw_event_make_call (rw_practice_cabinet_get_seconds (run->cabinet), said);

  rw_session_add (run->session, &event);
  return TRUE;
}

/* What the class was shown of a spot last; NaN when nothing was. */
static double
shown_last (RwPracticeRun   *run,
            const RwReading *spot)
{
  for (guint i = rw_session_get_n_landmarks (run->session); i-- > 0;)
    {
      const guint index = rw_session_get_landmark (run->session, i);
      const RwEvent *event = rw_session_get_event (run->session, index);

      if (event->type == RW_EVENT_READING && rw_session_is_live (run->session, index)
          && rw_reading_same_spot (&event->reading, spot))
        return event->reading.over ? (double) NAN : event->reading.value;
    }
  return NAN;
}

static gboolean
ask (RwPracticeRun *run,
     char         **words,
     GError       **error)
{
  RwPlace place;

  if (words[2] == NULL || words[3] == NULL || !rw_place_from_id (words[3], &place))
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT, _ ("“call ask” needs a rail and a place."));
  if (rw_profile_find_rail (run->profile, words[2]) == NULL)
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT, _ ("This cabinet has no rail “%s”."), words[2]);

  const RwReading spot = rw_reading_make (g_intern_string (words[2]), place, RW_KIND_DC, NAN, 0, NULL);
  const RwCallSaid said = rw_call_said_ask (spot.rail, place, RW_KIND_DC, shown_last (run, &spot));

  return say (run, &said);
}

/* call value 11.9 0.1 Mia's table; "-" for no range. */
static gboolean
call_value (RwPracticeRun *run,
            char         **words,
            GError       **error)
{
  double value = 0, give = NAN;

  if (words[2] == NULL || words[3] == NULL || words[4] == NULL)
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT,
                                 _ ("“call value” needs a value, its range or “-”, and who calls."));
  if (!rw_practice_run_number (run, words[2], -1000, 1000, &value, error)
      || (!g_str_equal (words[3], "-") && !rw_practice_run_number (run, words[3], 1e-6, 1000, &give, error)))
    return FALSE;

  g_autofree char *by = g_strjoinv (" ", words + 4);
  RwCallSaid said = rw_call_said_value (by, value, give);

  say (run, &said);
  rw_call_said_clear (&said);
  return TRUE;
}

static gboolean
hands (RwPracticeRun *run,
       char         **words,
       GError       **error)
{
  double n[RW_N_CALL_SIDES] = { 0 };

  for (guint i = 0; i < RW_N_CALL_SIDES; i++)
    if (words[2 + i] == NULL)
      return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT,
                                   _ ("“call hands” needs three counts: lower, same, higher."));
    else if (!rw_practice_run_number (run, words[2 + i], 0, RW_CALL_MAX_HANDS, &n[i], error))
      return FALSE;

  const RwCallSaid said = rw_call_said_hands ((guint) n[0], (guint) n[1], (guint) n[2]);

  return say (run, &said);
}

/* By the last reading of what was asked. */
static gboolean
reveal (RwPracticeRun *run,
        GError       **error)
{
  g_autoptr (RwCallBook) book = rw_call_book_new (run->session, NULL);
  const guint n_rounds = rw_call_book_get_n_rounds (book);
  const RwCallRound *round = n_rounds > 0 ? rw_call_book_get_round (book, n_rounds - 1) : NULL;

  if (round == NULL || round->end != RW_CALL_OPEN)
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_STATE, _ ("Nothing was asked that could be revealed."));
  for (guint i = rw_session_get_n_events (run->session); i-- > 0;)
    {
      const RwEvent *event = rw_session_get_event (run->session, i);

      if (event->n <= round->n)
        break;
      if (event->type != RW_EVENT_READING || event->reading.rail != round->rail || event->reading.place != round->place
          || event->reading.kind != round->kind)
        continue;

      const RwCallSaid said = rw_call_said_reveal (event->n);

      return say (run, &said);
    }
  return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_STATE,
                               _ ("What was asked has not been read since: there is nothing to reveal."));
}

gboolean
rw_practice_step_call (RwPracticeRun *run,
                       char         **words,
                       const char    *rest,
                       GError       **error)
{
  if (g_str_equal (words[1], "ask"))
    return ask (run, words, error);
  if (g_str_equal (words[1], "value"))
    return call_value (run, words, error);
  if (g_str_equal (words[1], "hands"))
    return hands (run, words, error);
  if (g_str_equal (words[1], "reveal"))
    return reveal (run, error);
  if (g_str_equal (words[1], "drop"))
    {
      const RwCallSaid said = rw_call_said_drop ();

      return say (run, &said);
    }
  return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT,
                               _ ("“%s” is none of ask, value, hands, reveal, drop."), words[1]);
}
