/* rw-stages-trim.c: gates around the trim: load first, wiring before turning, every rail again after it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Shares of the reference's nominal volts, estimates of the trade, given for 5 V:
 *   terminals past 5.30 V while the board stands below 5.15 V, or 0.25 V lost between them: wiring, not trim;
 *   a drop past the limits of its spot (rw_rail_limits_at) warns, past twice that stops.
 * A difference of two readings of one meter is judged by their own parts, since the scale error is in both; that of two
 * meters by all of their errors.
 */
#include "config.h"

#include "rw-stages-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const double terminals_share = 5.30 / 5, board_share = 5.15 / 5, lost_share = 0.25 / 5;

/* The chance that a value lies above a bound. */
static double
get_chance_above (double value,
                  double u,
                  double bound)
{
  return 1 - rw_chance_inside (value, u, -INFINITY, bound);
}

/* STOP when both are sure, WARN when both may be, else OPEN. */
static RwGate
get_gate (double one,
          double other)
{
  const double least = MIN (one, other);

  return least >= RW_VERDICT_SURE ? RW_GATE_STOP : least > 1 - RW_VERDICT_SURE ? RW_GATE_WARN : RW_GATE_OPEN;
}

/* --- wiring or trim ----------------------------------------------------------------------------- */

static double
get_u_of_difference (const RwStageRead *a,
                     const RwStageRead *b)
{
  const gboolean one_meter = a->reading.meter != NULL && a->reading.meter == b->reading.meter;

  return one_meter ? hypot (a->u_own, b->u_own) : hypot (a->u, b->u);
}

static RwGate
judge_wiring (const RwRail      *reference,
              const RwStageRead *terminals,
              const RwStageRead *board)
{
  const double sign = reference->nominal < 0 ? -1 : 1, nominal = fabs (reference->nominal);
  const double at_terminals = sign * terminals->reading.value, at_board = sign * board->reading.value;
  const double lost
      = get_chance_above (at_terminals - at_board, get_u_of_difference (terminals, board), lost_share * nominal);
  const RwGate chased = get_gate (get_chance_above (at_terminals, terminals->u, terminals_share * nominal),
                                  1 - get_chance_above (at_board, board->u, board_share * nominal));

  return MAX (chased, get_gate (lost, 1));
}

static void
add_wiring (const RwStagesBook *self,
            GArray             *reasons)
{
  const RwRail *reference = rw_profile_get_reference (self->profile);
  const RwStageRead *terminals
      = rw_stages_book_fresh (self, reference->id, RW_PLACE_TERMINALS, RW_KIND_DC, FALSE);
  const RwStageRead *board = rw_stages_book_fresh (self, reference->id, RW_PLACE_BOARD, RW_KIND_DC, FALSE);
  const RwGate gate
      = terminals != NULL && board != NULL ? judge_wiring (reference, terminals, board) : RW_GATE_OPEN;

  if (gate == RW_GATE_OPEN)
    return;

  g_autofree char *from = rw_stages_dup_value (terminals);
  g_autofree char *to = rw_stages_dup_value (board);
  const guint n = MAX (terminals->n, board->n);

  if (gate == RW_GATE_STOP)
    rw_stages_add_reason (reasons, "wiring-not-trim", gate, reference, n,
                          /* Translators: rail, value at the terminals, value at the board. */
                          g_strdup_printf (_ ("Leave the trim: %s stands at %s at the terminals and %s at the board. "
                                              "That is wiring; power off and mend plugs and wires first."),
                                           reference->label, from, to));
  else
    rw_stages_add_reason (reasons, "wiring-close", gate, reference, n,
                          g_strdup_printf (_ ("%s at %s at the terminals and %s at the board: too close to call between "
                                              "wiring and trim. Read both drops before it is turned."),
                                           reference->label, from, to));
}

/* --- drops -------------------------------------------------------------------------------------- */

static void
add_drop (const RwStagesBook *self,
          const char         *rail_id,
          const RwRail       *rail,
          GArray             *reasons)
{
  const char *label = rail != NULL ? rail->label : _ ("ground");
  const RwStageRead *read = rw_stages_book_find (self, rail_id, RW_PLACE_WIRE, RW_KIND_DC, FALSE);
  double lo, hi;

  if (read == NULL || read->changed || read->reading.over)
    {
      rw_stages_add_reason (reasons, "drop-unread", RW_GATE_WARN, rail, 0,
                            /* Translators: rail. */
                            g_strdup_printf (_ ("Nobody read the drop along %s: what the wiring loses would be made up by "
                                                "the trim."),
                                             label));
      return;
    }
  if (!rw_rail_limits_at (rail, rail_id, RW_PLACE_WIRE, RW_KIND_DC, &lo, &hi)
      || rw_verdict_judge (read->reading.value, read->u, lo, hi) == RW_VERDICT_INSIDE)
    return;

  const gboolean gross = rw_verdict_judge (read->reading.value, read->u, 2 * lo, 2 * hi) == RW_VERDICT_OUTSIDE;
  const gboolean sure = rw_verdict_judge (read->reading.value, read->u, lo, hi) == RW_VERDICT_OUTSIDE;
  g_autofree char *value = rw_stages_dup_value (read);

  if (sure)
    rw_stages_add_reason (reasons, "drop-beyond", gross ? RW_GATE_STOP : RW_GATE_WARN, rail, read->n,
                          /* Translators: rail, value. */
                          g_strdup_printf (_ ("%s loses %s on its way: mend plugs and wires before the trim is turned."),
                                           label, value));
  else
    rw_stages_add_reason (reasons, "drop-close", RW_GATE_WARN, rail, read->n,
                          g_strdup_printf (_ ("%s loses %s on its way, too close to call good: read it on the millivolt "
                                              "range before the trim is turned."),
                                           label, value));
}

/* --- before ------------------------------------------------------------------------------------- */

static void
add_load (const RwStagesBook *self,
          GArray             *reasons)
{
  const RwRail *reference = rw_profile_get_reference (self->profile);
  const RwStageRead *board = rw_stages_book_find (self, reference->id, RW_PLACE_BOARD, RW_KIND_DC, FALSE);

  if (self->setup.board_fitted == RW_SAID_NO)
    rw_stages_add_reason (reasons, "trim-before-load", RW_GATE_STOP, NULL, self->setup_n,
                          g_strdup (_ ("Leave the trim: the board is out, and a set point without load says nothing.")));
  else if (board == NULL || board->changed || board->reading.over)
    rw_stages_add_reason (reasons, "load-unread", RW_GATE_STOP, reference, board != NULL ? board->n : 0,
                          /* Translators: rail. */
                          g_strdup_printf (_ ("Leave the trim: %s was not read at the board under load."),
                                           reference->label));
}

void
rw_stages_add_trim (const RwStagesBook *self,
                    GArray             *reasons)
{
  const RwRail *reference = rw_profile_get_reference (self->profile);

  add_load (self, reasons);
  add_wiring (self, reasons);
  add_drop (self, reference->id, reference, reasons);
  add_drop (self, g_intern_static_string (RW_RAIL_GROUND), NULL, reasons);
}

/* --- after -------------------------------------------------------------------------------------- */

void
rw_stages_add_no_load (const RwStagesBook *self,
                       GArray             *reasons)
{
  if (self->turned != 0 && self->turned_bare)
    rw_stages_add_reason (reasons, "trim-no-load", RW_GATE_WARN, NULL, self->turned,
                          g_strdup (_ ("The trim was last turned with the board out: set it again at the board, under "
                                       "load.")));
}

/* Labels of the rails without a reading at the board that still holds. (transfer full) */
static GString *
list_unread (const RwStagesBook *self)
{
  GString *labels = g_string_new (NULL);

  for (guint i = 0; i < rw_profile_get_n_rails (self->profile); i++)
    {
      const RwRail *rail = rw_profile_get_rail (self->profile, i);

      if (rw_stages_book_fresh (self, rail->id, RW_PLACE_BOARD, RW_KIND_DC, FALSE) == NULL)
        g_string_append_printf (labels, "%s%s", labels->len > 0 ? ", " : "", rail->label);
    }
  return labels;
}

void
rw_stages_add_recheck (const RwStagesBook *self,
                       GArray             *reasons)
{
  g_autoptr (GString) labels = list_unread (self);

  if (self->turned != 0 && labels->len > 0)
    rw_stages_add_reason (reasons, "recheck-due", RW_GATE_STOP, NULL, self->turned,
                          /* Translators: rails, with commas between. */
                          g_strdup_printf (_ ("The trim was turned, and not read again at the board since: %s. One screw "
                                              "moves several rails."),
                                           labels->str));
}

void
rw_stages_add_unread (const RwStagesBook *self,
                      GArray             *reasons)
{
  g_autoptr (GString) labels = list_unread (self);

  if (self->turned == 0 && labels->len > 0)
    rw_stages_add_reason (reasons, "board-unread", RW_GATE_WARN, NULL, 0,
                          /* Translators: rails, with commas between. */
                          g_strdup_printf (_ ("Not read at the board under load: %s."), labels->str));
}

void
rw_stages_add_limits (const RwStagesBook *self,
                      RwGate              gate,
                      GArray             *reasons)
{
  for (guint i = 0; i < rw_profile_get_n_rails (self->profile); i++)
    {
      const RwRail *rail = rw_profile_get_rail (self->profile, i);
      const RwStageRead *read = rw_stages_book_fresh (self, rail->id, RW_PLACE_BOARD, RW_KIND_DC, FALSE);
      const RwVerdict verdict = read != NULL ? rw_verdict_judge (read->reading.value, read->u, rail->lo, rail->hi)
                                             : RW_VERDICT_INSIDE;

      if (verdict == RW_VERDICT_INSIDE)
        continue;

      g_autofree char *value = rw_stages_dup_value (read);
      g_autofree char *lo = rw_stages_dup_volts (rail->lo);
      g_autofree char *hi = rw_stages_dup_volts (rail->hi);

      if (verdict == RW_VERDICT_OUTSIDE)
        rw_stages_add_reason (reasons, "rail-outside", gate, rail, read->n,
                              /* Translators: rail, value, lower and upper limit. */
                              g_strdup_printf (_ ("%s stands at %s at the board, outside %s to %s."), rail->label, value,
                                               lo, hi));
      else
        rw_stages_add_reason (reasons, "rail-close", RW_GATE_WARN, rail, read->n,
                              g_strdup_printf (_ ("%s at %s at the board is too close to call against %s to %s."),
                                               rail->label, value, lo, hi));
    }
}
