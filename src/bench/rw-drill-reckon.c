/* rw-drill-reckon.c: what the work of a session comes to, in minutes of the knowledge.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-drill-reckon.h"

#include "rw-setups.h"

static const double usual_check_minutes = 2;

static double
reading_minutes (RwKnowledge     *knowledge,
                 const RwReading *reading)
{
  for (guint i = 0; i < rw_knowledge_get_n_checks (knowledge); i++)
    {
      const RwCheck *check = rw_knowledge_get_check (knowledge, i);

      if (check->measures && check->rail == reading->rail && check->place == reading->place
          && check->kind == reading->kind)
        return check->minutes;
    }
  return usual_check_minutes;
}

static void
change (RwSetup       *setup,
        const RwSetup *to)
{
  if (to->power_on != RW_SAID_NOT)
    setup->power_on = to->power_on;
  if (to->board_fitted != RW_SAID_NOT)
    setup->board_fitted = to->board_fitted;
  if (to->warm != RW_SAID_NOT)
    setup->warm = to->warm;
}

static double
event_minutes (const RwEvent *event,
               RwKnowledge   *knowledge,
               RwSetup       *setup)
{
  const guint from = rw_setups_index (*setup);
  const RwCheck *check;
  const RwCause *cause;

  switch ((int) event->type)
    {
    case RW_EVENT_READING:
      return reading_minutes (knowledge, &event->reading);
    case RW_EVENT_FINDING:
      check = rw_knowledge_find_check (knowledge, event->finding.check);
      return check != NULL && rw_check_find_outcome (check, event->finding.outcome) >= 0 ? check->minutes : 0;
    case RW_EVENT_REPAIR:
      cause = rw_knowledge_find_cause (knowledge, event->repair.cause);
      return (cause != NULL ? cause->repair.minutes : 0) + RW_DRILL_PROOF_MINUTES;
    case RW_EVENT_SETUP:
      change (setup, &event->setup);
      return rw_setups_minutes (from, rw_setups_index (*setup));
    default:
      return 0;
    }
}

double
rw_drill_reckon (RwSession   *session,
                 RwKnowledge *knowledge)
{
  RwSetup setup = { RW_SAID_YES, RW_SAID_YES, RW_SAID_NO };
  double minutes = 0;

  for (guint i = 0; i < rw_session_get_n_landmarks (session); i++)
    {
      const guint index = rw_session_get_landmark (session, i);

      if (rw_session_is_live (session, index))
        minutes += event_minutes (rw_session_get_event (session, index), knowledge, &setup);
    }
  return minutes;
}
