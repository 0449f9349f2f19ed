/* rw-stages-asked.c: what a stage still asks: spots to read, questions to answer.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Warm-up: when a reading counts for a minute stands in rw-warm-up.c; of several the nearest counts. A minute that went by
 * without a reading is missed, not made up.
 */
#include "config.h"

#include "rw-stages-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"
#include "rw-warm-up.h"

/* --- judging ------------------------------------------------------------------------------------ */

/* Against the limits of its spot; at the terminals those are the bare ones, since the wiring's share is still to come. */
static RwVerdict
judge (const RwAsked *asked)
{
  double lo, hi;

  if (isnan (asked->value)
      || !rw_rail_limits_at (asked->rail, asked->rail_id, asked->place, asked->kind, &lo, &hi))
    return RW_VERDICT_NONE;
  return rw_verdict_judge (asked->value, asked->u, lo, hi);
}

static void
show (RwAsked           *asked,
      const RwStageRead *read)
{
  asked->n = read->n;
  asked->value = read->reading.over ? (double) NAN : read->reading.value;
  asked->step = read->reading.step;
  asked->u = read->u;
  asked->verdict = judge (asked);
}

static RwAsked
make_asked (const char           *rail_id,
            const RwRail         *rail,
            const RwStageMeasure *measure)
{
  return (RwAsked){ .rail_id = rail_id, .rail = rail, .place = measure->place, .kind = measure->kind,
                    .bare = measure->bare, .minutes = NAN, .state = RW_ASKED_UNREAD, .value = NAN, .u = NAN,
                    .verdict = RW_VERDICT_NONE };
}

static void
ask_once (const RwStagesBook   *self,
          const char           *rail_id,
          const RwRail         *rail,
          const RwStageMeasure *measure,
          GArray               *spots)
{
  const RwStageRead *read = rw_stages_book_find (self, rail_id, measure->place, measure->kind, measure->bare);
  RwAsked asked = make_asked (rail_id, rail, measure);

  if (read != NULL)
    {
      show (&asked, read);
      asked.state = read->stale ? RW_ASKED_STALE : read->reading.over ? RW_ASKED_OVER : RW_ASKED_READ;
    }
  g_array_append_val (spots, asked);
}

/* --- warm-up ------------------------------------------------------------------------------------ */

double
rw_stages_warm_from (const RwStagesBook *self)
{
  if (self->entered[RW_STAGE_WARM_UP] == 0)
    return NAN;
  return isnan (self->power_on) ? self->entered_t[RW_STAGE_WARM_UP]
                                : MAX (self->power_on, self->entered_t[RW_STAGE_WARM_UP]);
}

static RwAskedState
wait_for (const RwStagesBook   *self,
          double                elapsed,
          const RwWarmUpMinute *minute)
{
  if (isnan (elapsed) || self->setup.power_on == RW_SAID_NO)
    return RW_ASKED_UNREAD;
  if (elapsed < 60 * minute->from)
    return RW_ASKED_LATER;
  return elapsed <= 60 * minute->to ? RW_ASKED_DUE : RW_ASKED_MISSED;
}

/* The nearest reading that counts for a minute; an overload only where there is no other. (nullable) */
static const RwStageRead *
find_for_minute (const RwStagesBook   *self,
                 double                start,
                 const RwWarmUpMinute *minute)
{
  const RwStageRead *nearest = NULL;
  double least = INFINITY;

  for (guint i = 0; i < self->warm->len; i++)
    {
      const RwStageRead *read = &g_array_index (self->warm, RwStageRead, i);
      const double t = read->t - start;
      const double off = fabs (t - 60 * minute->minutes) + (read->reading.over ? 1e6 : 0);

      if (!(t >= 60 * minute->from && t <= 60 * minute->to) || off >= least)
        continue;
      nearest = read;
      least = off;
    }
  return nearest;
}

static void
ask_minutes (const RwStagesBook   *self,
             const char           *rail_id,
             const RwRail         *rail,
             const RwStageMeasure *measure,
             GArray               *spots)
{
  const double start = rw_stages_warm_from (self);

  for (guint i = 0; i < measure->minutes->len; i++)
    {
      const RwWarmUpMinute *minute = rw_warm_up_find_minute (g_array_index (measure->minutes, double, i));
      const RwStageRead *read = find_for_minute (self, start, minute);
      RwAsked asked = make_asked (rail_id, rail, measure);

      asked.minutes = minute->minutes;
      asked.state = wait_for (self, self->now - start, minute);
      if (read != NULL)
        {
          show (&asked, read);
          asked.state = read->reading.over ? RW_ASKED_OVER : RW_ASKED_READ;
        }
      g_array_append_val (spots, asked);
    }
}

/* --- all of it ---------------------------------------------------------------------------------- */

static void
ask_rail (const RwStagesBook   *self,
          const char           *rail_id,
          const RwRail         *rail,
          const RwStageMeasure *measure,
          GArray               *spots)
{
  if (measure->kind == RW_KIND_RIPPLE && rail != NULL && isinf (rail->ripple_limit))
    return;
  if (measure->minutes->len > 0)
    ask_minutes (self, rail_id, rail, measure, spots);
  else
    ask_once (self, rail_id, rail, measure, spots);
}

static void
ask_measure (const RwStagesBook   *self,
             const RwStageMeasure *measure,
             GArray               *spots)
{
  const RwRail *reference = rw_profile_get_reference (self->profile);

  if (measure->rails == RW_STAGE_RAIL_REFERENCE)
    ask_rail (self, reference->id, reference, measure, spots);
  else if (measure->rails == RW_STAGE_RAIL_GROUND)
    ask_rail (self, g_intern_static_string (RW_RAIL_GROUND), NULL, measure, spots);
  else
    for (guint i = 0; i < rw_profile_get_n_rails (self->profile); i++)
      {
        const RwRail *rail = rw_profile_get_rail (self->profile, i);

        if (measure->rails == RW_STAGE_RAIL_EVERY || rw_stages_is_guard (self->profile, i))
          ask_rail (self, rail->id, rail, measure, spots);
      }
}

static void
ask_questions (const RwStagesBook *self,
               RwStageState       *state)
{
  for (guint i = 0; i < state->words->questions->len; i++)
    {
      const RwStageQuestion *question = &g_array_index (state->words->questions, RwStageQuestion, i);
      const RwStageAnswer *answer = rw_stages_book_find_answer (self, question->id);
      RwQuestioned questioned = { question, RW_ANSWER_NONE, 0 };

      if (question->supply != NULL && g_strcmp0 (question->supply, self->supply) != 0)
        continue;
      if (answer != NULL)
        {
          questioned.answer = answer->yes ? RW_ANSWER_YES : RW_ANSWER_NO;
          questioned.n = answer->n;
        }
      g_array_append_val (state->questions, questioned);
    }
}

void
rw_stages_ask (const RwStagesBook *self,
               RwStageState       *state)
{
  guint n_unread = 0;

  for (guint i = 0; i < state->words->measure->len; i++)
    ask_measure (self, &g_array_index (state->words->measure, RwStageMeasure, i), state->spots);
  ask_questions (self, state);
  for (guint i = 0; i < state->spots->len; i++)
    {
      const RwAskedState asked = g_array_index (state->spots, RwAsked, i).state;

      n_unread += asked != RW_ASKED_READ;
      state->n_open += asked != RW_ASKED_READ && asked != RW_ASKED_LATER && asked != RW_ASKED_MISSED;
    }
  for (guint i = 0; i < state->questions->len; i++)
    if (g_array_index (state->questions, RwQuestioned, i).answer == RW_ANSWER_NONE)
      {
        n_unread++;
        state->n_open++;
      }
  state->complete = n_unread == 0;
}

/* --- words -------------------------------------------------------------------------------------- */

static char *
describe_place (const RwAsked *self)
{
  const char *rail = self->rail != NULL ? self->rail->label : _ ("ground");

  if (self->place == RW_PLACE_WIRE)
    /* Translators: rail. */
    return g_strdup_printf (_ ("drop along the wire of %s"), rail);
  if (self->kind == RW_KIND_RIPPLE)
    /* Translators: rail, place: "ripple on +5 V, board". */
    return g_strdup_printf (_ ("ripple on %s, %s"), rail, rw_place_get_label (self->place));
  /* Translators: rail, place: "+5 V, terminals". */
  return g_strdup_printf (_ ("%s, %s"), rail, rw_place_get_label (self->place));
}

char *
rw_asked_describe (const RwAsked *self)
{
  g_autofree char *place = describe_place (self);

  if (!isnan (self->minutes))
    {
      g_autofree char *minutes = rw_quantity_format_number (self->minutes, 0);

      /* Translators: a spot, minutes: "+5 V, board, after 15 min". */
      return g_strdup_printf (_ ("%s, after %s min"), place, minutes);
    }
  /* Translators: a spot: "+5 V, terminals, board out". */
  return self->bare ? g_strdup_printf (_ ("%s, board out"), place) : g_steal_pointer (&place);
}
