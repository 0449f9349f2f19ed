/* rw-evidence-difference.c: which readings of one rail hang together, and what their difference is.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Links between a rail's DC readings:
 *
 *   terminals, fitted   on the board           "drop" at the board    terminals − board
 *   chip                on the board           "drop" at the chip     board − chip
 *   chip                on the terminals       (no table)
 *   terminals, out      on the terminals       "fall" at the terminals   out − fitted
 *   terminals, out      on the board           "fall" at the board       out − fitted
 *
 * each to the first of those that was read. Differences are of sizes: of a minus rail how much less negative. Those
 * between two places with the board fitted need one state of the connector, and all need the same warmth and no repair
 * between the two readings (a turn of the trim makes the earlier one count no more anyway).
 *
 * Uncertainty. The meter's common part scales both readings alike and hardly touches their difference, so each
 * reading's own part is taken, √(u_a² + u_b²); of two meters the total parts.
 *
 * Drops that were measured along the wires (the rail's and ground's, with their leads on both ends) tell what
 * terminals − board tells: their sum. Where they agree with it, within three standard uncertainties and 50 mV for the
 * stretch that is in only one of them, and where a drop of the rail was clicked by hand, the difference counts no
 * more. Where they do not agree, something lies in what was not measured, and it counts.
 */
#include "config.h"

#include "rw-evidence-private.h"

#include <math.h>

static const double stretch = 0.05; /* volts */

static gboolean
is_rail_volts (const RwAnswer *answer)
{
  const RwReading *reading = &answer->spot->reading;

  return reading->kind == RW_KIND_DC && reading->place != RW_PLACE_WIRE && !reading->over
         && answer->spot->rail != NULL;
}

static gboolean
is_bare (const RwAnswer *answer)
{
  return answer->spot->setup.board_fitted == RW_SAID_NO;
}

/* The rail's reading at @place with the board fitted. (nullable) */
static const RwAnswer *
loaded_at (const RwAnswer *answers,
           guint           n,
           const RwAnswer *like,
           RwPlace         place)
{
  for (guint i = 0; i < n; i++)
    if (&answers[i] != like && is_rail_volts (&answers[i]) && !is_bare (&answers[i])
        && answers[i].spot->reading.place == place && answers[i].spot->rail == like->spot->rail)
      return &answers[i];
  return NULL;
}

/* The first of the head comment's list that it hangs on. (nullable) */
static const RwAnswer *
find_base (const RwAnswer *answers,
           guint           n,
           const RwAnswer *it)
{
  const RwAnswer *board = loaded_at (answers, n, it, RW_PLACE_BOARD);
  const RwAnswer *terminals = loaded_at (answers, n, it, RW_PLACE_TERMINALS);

  if (!is_rail_volts (it))
    return NULL;
  if (is_bare (it))
    return terminals != NULL ? terminals : board;
  if (it->spot->reading.place == RW_PLACE_TERMINALS)
    return board;
  if (it->spot->reading.place == RW_PLACE_CHIP)
    return board != NULL ? board : terminals;
  return NULL;
}

static gboolean
is_between (guint event,
            guint a,
            guint b)
{
  return event > MIN (a, b) && event < MAX (a, b);
}

/* Nothing between the two readings makes their difference meaningless. */
static gboolean
can_compare (const RwBenchState *state,
             const RwAnswer     *a,
             const RwAnswer     *b)
{
  const RwSetup one = rw_belief_complete_setup (a->spot->setup, a->spot->reading.place, RW_KIND_DC);
  const RwSetup other = rw_belief_complete_setup (b->spot->setup, b->spot->reading.place, RW_KIND_DC);

  if (one.warm != other.warm
      || (!is_bare (a) && is_between (rw_bench_state_get_plugged (state), a->spot->n, b->spot->n)))
    return FALSE;
  for (guint i = 0; i < rw_bench_state_get_n_repairs (state); i++)
    if (is_between (rw_bench_state_get_repair (state, i)->n, a->spot->n, b->spot->n))
      return FALSE;
  return TRUE;
}

static const RwComputed *
table_for (const RwGathering *self,
           const RwAnswer    *it,
           const RwAnswer    *base)
{
  const char *rail = it->spot->rail->id;
  const RwPlace base_place = base->spot->reading.place;

  if (is_bare (it))
    return rw_knowledge_find_computed (self->knowledge, "fall", base_place, rail);
  if (it->spot->reading.place == RW_PLACE_CHIP && base_place != RW_PLACE_BOARD)
    return NULL;
  return rw_knowledge_find_computed (self->knowledge, "drop",
                                     it->spot->reading.place == RW_PLACE_CHIP ? RW_PLACE_CHIP : RW_PLACE_BOARD,
                                     rail);
}

static void
fill_difference (RwDependence   *out,
                 const RwAnswer *it,
                 const RwAnswer *base)
{
  const RwSpotState *far = it->spot;
  const RwSpotState *near = base->spot;
  const double sign = far->rail->nominal < 0 ? -1 : 1;
  const gboolean one_meter = far->reading.meter == near->reading.meter;
  const double difference = sign * (far->reading.value - near->reading.value);

  out->value = far->reading.place == RW_PLACE_CHIP ? -difference : difference;
  out->u = one_meter ? hypot (far->u_own, near->u_own) : hypot (far->u, near->u);
}

/* --- drops along the wires ---------------------------------------------------------------------- */

static const RwAnswer *
wire_of (const RwAnswer *answers,
         guint           n,
         const char     *rail)
{
  for (guint i = 0; i < n; i++)
    if (answers[i].spot->reading.place == RW_PLACE_WIRE && answers[i].spot->reading.kind == RW_KIND_DC
        && !answers[i].spot->reading.over && g_str_equal (answers[i].spot->reading.rail, rail))
      return &answers[i];
  return NULL;
}

/* Somebody clicked what the drop of the rail was, after the board went in. */
static gboolean
was_clicked (const RwGathering *self,
             const char        *rail)
{
  for (guint i = 0; i < rw_bench_state_get_n_findings (self->state); i++)
    {
      const RwFindingSeen *seen = rw_bench_state_get_finding (self->state, i);
      const RwCheck *check = rw_knowledge_find_check (self->knowledge, seen->check);

      if (check != NULL && check->measures && check->place == RW_PLACE_WIRE && check->kind == RW_KIND_DC
          && g_str_equal (check->rail, rail) && !seen->changed_since
          && seen->n > rw_bench_state_get_turned (self->state)
          && seen->n > rw_bench_state_get_plugged (self->state))
        return TRUE;
    }
  return FALSE;
}

static gboolean
is_told_by_wires (const RwGathering  *self,
                  const RwAnswer     *answers,
                  guint               n,
                  const RwAnswer     *it,
                  const RwDependence *on)
{
  const RwAnswer *rail = wire_of (answers, n, it->spot->rail->id);
  const RwAnswer *ground = wire_of (answers, n, RW_RAIL_GROUND);

  if (is_bare (it) || it->spot->reading.place != RW_PLACE_TERMINALS)
    return FALSE;
  if (rail == NULL)
    return was_clicked (self, it->spot->rail->id);

  const double known = fabs (rail->spot->reading.value)
                       + (ground != NULL ? fabs (ground->spot->reading.value) : 0);
  const double u = hypot (hypot (on->u, rail->spot->u), ground != NULL ? ground->spot->u : 0);

  return fabs (on->value - known) <= 3 * u + stretch;
}

void
rw_evidence_find_dependence (const RwGathering *self,
                             const RwAnswer    *answers,
                             guint              n,
                             guint              i,
                             RwDependence      *out)
{
  const RwAnswer *it = &answers[i];
  const RwAnswer *base = find_base (answers, n, it);

  *out = (RwDependence) { .base = base != NULL ? (int) (base - answers) : -1 };
  if (base == NULL || !can_compare (self->state, it, base))
    return;
  fill_difference (out, it, base);
  out->computed = table_for (self, it, base);
  out->told = is_told_by_wires (self, answers, n, it, out);
}
