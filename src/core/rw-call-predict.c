/* rw-call-predict.c: what the program itself would have called.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-call-predict.h"

#include <math.h>

#include "rw-bench-state.h"

/* The landmarks before event @n, as a session of their own. */
static RwSession *
before (RwSession *session,
        guint      n)
{
  RwSession *past = rw_session_new (rw_session_header_copy (rw_session_get_header (session)));

  for (guint i = 0; i < rw_session_get_n_landmarks (session); i++)
    {
      const RwEvent *event = rw_session_get_event (session, rw_session_get_landmark (session, i));

      if (event->n >= n)
        break;

      RwEvent copy = rw_event_copy (event);

      rw_session_add (past, &copy);
    }
  return past;
}

/* Own standard uncertainty of the reading that is called: of the answer, else of a meter that shows what the last one
 * showed. */
static double
reading_u (const RwCallRound *round)
{
  const double u = isfinite (round->answer_u) ? round->answer_u : round->was_u;

  return isfinite (u) ? u : 0;
}

gboolean
rw_call_predict (const RwCallRound *round,
                 RwSession         *session,
                 RwCallPrediction  *out)
{
  g_autoptr (RwSession) past = before (session, round->answer_n > 0 ? round->answer_n : G_MAXUINT);
  g_autoptr (RwBenchState) state = rw_bench_state_new (past);
  const RwTrimSet *set = rw_bench_state_find_trim_set (state, round->place);
  const int rail = rw_profile_index_of (rw_session_get_profile (session), round->rail);
  const double u = reading_u (round);
  RwTrimExpected expected;

  if (round->kind != RW_KIND_DC || set == NULL || rail < 0 || !set->is_current || !isfinite (set->x)
      || !rw_trim_fit_expect (set->fit, (guint) rail, set->x, set->u_x, &expected))
    return FALSE;
  out->value = expected.value;
  out->u = hypot (expected.u, u);
  out->lo = out->value - hypot (out->value - expected.lo, 1.96 * u);
  out->hi = out->value + hypot (expected.hi - out->value, 1.96 * u);
  return isfinite (out->lo) && isfinite (out->hi);
}
