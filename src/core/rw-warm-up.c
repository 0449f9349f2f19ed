/* rw-warm-up.c: how far a rail drifts while the cabinet warms up, and how surely.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Figures of trade practice for +5 V, taken as shares of nominal for other rails: within 0.03 V good, beyond 0.08 V bad.
 * A verdict is given when the drift lies beyond a figure by 1.645 u (95 %, one-sided).
 *
 * A reading counts for a minute when it is taken at 0–2, 4–7, 12–19, 25–38, 50–75 min: about a fifth early, a quarter
 * late, which moves an exponential drift of half an hour by less than a tenth of itself.
 *
 * Readings of one meter only are compared: those of the meter of the newest. A turn of the trim, a repair that fixed
 * something and the board's coming or going forget the readings before it; the clock goes on from power on.
 */
#include "config.h"

#include "rw-warm-up-private.h"

#include <math.h>

static const double good_share = 0.006;
static const double bad_share = 0.016;
static const double least_span = 900;               /* seconds */
static const double one_sided = 1.6448536269514722; /* Φ⁻¹(0.95) */

static const RwWarmUpMinute windows[RW_WARM_UP_N_POINTS]
    = { { 0, 0, 2 }, { 5, 4, 7 }, { 15, 12, 19 }, { 30, 25, 38 }, { 60, 50, 75 } };

const RwWarmUpMinute *
rw_warm_up_get_minute (guint i)
{
  g_return_val_if_fail (i < RW_WARM_UP_N_POINTS, NULL);
  return &windows[i];
}

const RwWarmUpMinute *
rw_warm_up_find_minute (double minutes)
{
  for (guint i = 0; i < RW_WARM_UP_N_POINTS; i++)
    if (fabs (windows[i].minutes - minutes) < 1e-6)
      return &windows[i];
  return NULL;
}

typedef struct
{
  GArray  *readings; /* of RwWarmUpReading */
  double   started, ended; /* seconds of the session; NaN: not */
  RwSetup  setup;
} Run;

static void
take_setup (Run           *run,
            const RwEvent *event)
{
  const RwSetup *setup = &event->setup;

  if (setup->power_on == RW_SAID_YES && run->setup.power_on != RW_SAID_YES)
    {
      run->started = event->t;
      run->ended = (double) NAN;
      g_array_set_size (run->readings, 0);
    }
  if (setup->power_on == RW_SAID_NO && isnan (run->ended))
    run->ended = event->t;
  if (setup->board_fitted != RW_SAID_NOT && setup->board_fitted != run->setup.board_fitted
      && run->setup.board_fitted != RW_SAID_NOT)
    g_array_set_size (run->readings, 0);
  if (setup->power_on != RW_SAID_NOT)
    run->setup.power_on = setup->power_on;
  if (setup->board_fitted != RW_SAID_NOT)
    run->setup.board_fitted = setup->board_fitted;
}

static void
take_reading (Run           *run,
              RwSession     *session,
              const RwEvent *event,
              const char    *rail,
              RwPlace        place)
{
  const RwReading *reading = &event->reading;

  if (run->setup.power_on == RW_SAID_NO || reading->kind != RW_KIND_DC || reading->place != place || reading->over
      || !isfinite (reading->value) || !g_str_equal (reading->rail, rail))
    return;
  if (isnan (run->started))
    run->started = event->t;

  const RwMeterFacts *facts = reading->meter != NULL ? rw_session_find_meter (session, reading->meter) : NULL;
  const double u_own = MAX (rw_meter_facts_u_own (facts, reading), isfinite (reading->u) ? reading->u : 0);
  const RwWarmUpReading kept = { event->t - run->started, reading->value, u_own, reading->step,
                                 facts != NULL ? facts->percent / 100 / sqrt (3) : 0, reading->meter, event->n };

  g_array_append_val (run->readings, kept);
}

static void
walk (Run        *run,
      RwSession  *session,
      const char *rail,
      RwPlace     place,
      double      now)
{
  for (guint i = 0; i < rw_session_get_n_landmarks (session); i++)
    {
      const guint index = rw_session_get_landmark (session, i);
      const RwEvent *event = rw_session_get_event (session, index);

      if (event->t > now)
        break;
      if (!rw_session_is_live (session, index))
        continue;
      if (event->type == RW_EVENT_SETUP)
        take_setup (run, event);
      else if (event->type == RW_EVENT_READING)
        take_reading (run, session, event, rail, place);
      else if (event->type == RW_EVENT_TRIM
               || (event->type == RW_EVENT_REPAIR && event->repair.result == RW_REPAIR_FIXED))
        g_array_set_size (run->readings, 0);
    }
}

static void
keep_one_meter (GArray *readings)
{
  const char *meter = readings->len > 0 ? g_array_index (readings, RwWarmUpReading, readings->len - 1).meter : NULL;

  for (guint i = readings->len; i > 0; i--)
    if (g_strcmp0 (g_array_index (readings, RwWarmUpReading, i - 1).meter, meter) != 0)
      g_array_remove_index (readings, i - 1);
}

static void
find_point (RwWarmUpPoint *point,
            const GArray  *readings,
            double         started,
            double         now)
{
  double nearest = INFINITY;

  for (guint i = 0; i < readings->len; i++)
    {
      const RwWarmUpReading *reading = &g_array_index (readings, RwWarmUpReading, i);
      const double at = reading->t + started;
      const double off = fabs (reading->t - 60 * point->minutes);

      if (at < point->from || at > point->to || off >= nearest)
        continue;
      nearest = off;
      point->state = RW_WARM_UP_IN;
      point->n = reading->n;
      point->value = reading->value;
      point->step = reading->step;
    }
  if (point->state == RW_WARM_UP_IN || isnan (started) || now < point->from)
    return;
  point->state = now <= point->to ? RW_WARM_UP_DUE : RW_WARM_UP_OVERDUE;
}

static RwWarmUpVerdict
judge (const RwWarmUp *self,
       double          nominal)
{
  const double size = fabs (self->drift);
  const double reach = one_sided * self->u;
  const double good = good_share * fabs (nominal);
  const double bad = bad_share * fabs (nominal);

  if (!isnan (self->step))
    return RW_WARM_UP_STEPPED;
  if (isnan (self->drift) || self->span < least_span)
    return RW_WARM_UP_TOO_FEW;
  if (size + reach <= good)
    return RW_WARM_UP_GOOD;
  if (size - reach > bad)
    return RW_WARM_UP_BAD;
  return size - reach > good && size + reach <= bad ? RW_WARM_UP_FAIR : RW_WARM_UP_UNSURE;
}

RwWarmUp
rw_warm_up_read (RwSession  *session,
                 const char *rail,
                 RwPlace     place,
                 double      now)
{
  g_autoptr (GArray) readings = g_array_new (FALSE, FALSE, sizeof (RwWarmUpReading));
  const RwRail *facts = rw_profile_find_rail (rw_session_get_profile (session), rail);
  const double nominal = facts != NULL ? facts->nominal : (double) NAN;
  Run run = { readings, (double) NAN, (double) NAN, { RW_SAID_NOT, RW_SAID_NOT, RW_SAID_NOT } };
  RwWarmUp self = { 0 };

  walk (&run, session, rail, place, now);
  keep_one_meter (readings);
  self.started = run.started;
  self.running = !isnan (run.started) && isnan (run.ended);
  self.n = readings->len;
  self.first = self.n > 0 ? g_array_index (readings, RwWarmUpReading, 0).t : (double) NAN;
  if (self.n > 0)
    self.span = g_array_index (readings, RwWarmUpReading, self.n - 1).t - self.first;
  rw_warm_up_fit (&self, (const RwWarmUpReading *) (gpointer) readings->data, self.n, nominal);
  self.verdict = isnan (nominal) ? RW_WARM_UP_TOO_FEW : judge (&self, nominal);
  for (int i = 0; i < RW_WARM_UP_N_POINTS; i++)
    {
      self.points[i] = (RwWarmUpPoint){ windows[i].minutes, run.started + 60 * windows[i].from,
                                        run.started + 60 * windows[i].to, RW_WARM_UP_LATER, 0, (double) NAN, 0 };
      find_point (&self.points[i], readings, run.started, isnan (run.ended) ? now : MIN (now, run.ended));
    }
  return self;
}

static RwWarmUpWhere
where_stepped (const RwWarmUp *board,
               const RwWarmUp *terminals)
{
  if (terminals->verdict == RW_WARM_UP_STEPPED)
    return board->step_from <= terminals->step_to && terminals->step_from <= board->step_to
               ? RW_WARM_UP_WHERE_STEP_BEFORE
               : RW_WARM_UP_WHERE_UNKNOWN;
  if ((terminals->verdict == RW_WARM_UP_GOOD || terminals->verdict == RW_WARM_UP_FAIR)
      && terminals->first <= board->step_from && terminals->first + terminals->span >= board->step_to)
    return RW_WARM_UP_WHERE_STEP_BEHIND;
  return RW_WARM_UP_WHERE_UNKNOWN;
}

RwWarmUpWhere
rw_warm_up_where (const RwWarmUp *board,
                  const RwWarmUp *terminals,
                  double          nominal)
{
  const double sign = nominal < 0 ? 1 : -1;
  const double least = good_share * fabs (nominal);
  const double at_board = sign * board->drift;
  const double at_terminals = sign * terminals->drift;

  if (board->verdict == RW_WARM_UP_TOO_FEW)
    return RW_WARM_UP_WHERE_UNKNOWN;
  if (board->verdict == RW_WARM_UP_STEPPED)
    return where_stepped (board, terminals);
  if (terminals->verdict == RW_WARM_UP_STEPPED)
    return RW_WARM_UP_WHERE_UNKNOWN;
  if (at_board + one_sided * board->u <= least)
    return RW_WARM_UP_WHERE_STILL;
  if (at_board - one_sided * board->u <= least || terminals->verdict == RW_WARM_UP_TOO_FEW)
    return RW_WARM_UP_WHERE_UNKNOWN;
  if (at_terminals - one_sided * terminals->u > least)
    return RW_WARM_UP_WHERE_SUPPLY;
  if (at_board - at_terminals - one_sided * hypot (board->u, terminals->u) > least)
    return RW_WARM_UP_WHERE_WIRING;
  return RW_WARM_UP_WHERE_UNKNOWN;
}
