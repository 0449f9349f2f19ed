/* rw-stages-power.c: what a board under power does not stand: "off now".
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * With the board fitted, by the newest reading of each rail that still holds:
 *   off-now        the reference surely outside 80 to 110 per cent of nominal (4.0 to 5.5 V of 5), or overload on it
 *   never-above    any rail surely past the magnitude that the profile never allows
 *   guard-missing  a rail without which memory is destroyed, surely below half its nominal volts
 *   sign           any rail surely the wrong way round by more than a tenth of its nominal volts
 * What is neither surely beyond nor surely inside is too close to call, and warns ("…-close"). The spans are
 * estimates of the trade.
 */
#include "config.h"

#include "rw-stages-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-never-above.h"

static const double least_share = 0.8, most_share = 1.1;
static const double guard_share = 0.5;
static const double wrong_share = 0.1;

typedef struct
{
  const RwProfile   *profile;
  const RwRail      *rail;
  guint              index;
  const RwStageRead *read;
  gboolean           on; /* the power is not said to be off */
  GArray            *reasons;
} Look;

/* @text: (transfer full) */
static void
say_off (const Look *look,
         const char *id,
         char       *text)
{
  rw_stages_add_reason (look->reasons, id, RW_GATE_STOP, look->rail, look->read->n, text)->off = look->on;
}

static void
say_close (const Look *look,
           const char *id,
           char       *text)
{
  rw_stages_add_reason (look->reasons, id, RW_GATE_WARN, look->rail, look->read->n, text);
}

static double
get_forward (const Look *look)
{
  return look->rail->nominal < 0 ? -look->read->reading.value : look->read->reading.value;
}

/* The chance that the rail stands below a share of its nominal volts. */
static double
get_chance_below (const Look *look,
                  double      share)
{
  return rw_chance_inside (get_forward (look), look->read->u, -INFINITY, share * fabs (look->rail->nominal));
}

/* --- the looks: TRUE when something was said ---------------------------------------------------- */

static gboolean
look_for_overload (const Look *look)
{
  if (!look->read->reading.over)
    return FALSE;
  if (look->rail == rw_profile_get_reference (look->profile))
    say_off (look, "off-now",
             /* Translators: rail. */
             g_strdup_printf (_ ("Off now: the meter shows overload on %s with the board on it."), look->rail->label));
  else
    say_close (look, "never-close",
               g_strdup_printf (_ ("The meter shows overload on %s with the board on it, and nobody knows how much that "
                                   "is: choose a higher range at once."),
                                look->rail->label));
  return TRUE;
}

static gboolean
look_for_sign (const Look *look)
{
  if (get_chance_below (look, -wrong_share) < RW_VERDICT_SURE)
    return FALSE;

  g_autofree char *value = rw_stages_dup_value (look->read);

  say_off (look, "sign",
           /* Translators: rail, value. */
           g_strdup_printf (_ ("Off now unless the leads are the wrong way round: %s reads %s at the board."),
                            look->rail->label, value));
  return TRUE;
}

static gboolean
look_for_never_above (const Look *look)
{
  const double most = look->rail->never_above;
  const RwVerdict verdict = rw_never_above_judge (look->rail, look->read->reading.value, look->read->u);

  if (verdict != RW_VERDICT_OUTSIDE && verdict != RW_VERDICT_CLOSE)
    return FALSE;

  g_autofree char *value = rw_stages_dup_value (look->read);
  g_autofree char *limit = rw_stages_dup_volts (look->rail->nominal < 0 ? -most : most);

  if (verdict == RW_VERDICT_OUTSIDE)
    say_off (look, "never-above",
             /* Translators: rail, value, limit. */
             g_strdup_printf (_ ("Off now: %s stands at %s with the board on it, past %s."), look->rail->label, value,
                              limit));
  else
    say_close (look, "never-close",
               g_strdup_printf (_ ("%s at %s is too close to call against %s, past which a board is destroyed: switch "
                                   "off, and read it with a finer range."),
                                look->rail->label, value, limit));
  return TRUE;
}

static gboolean
look_at_reference (const Look *look)
{
  if (look->rail != rw_profile_get_reference (look->profile))
    return FALSE;

  const double nominal = look->rail->nominal;
  const double a = least_share * nominal, b = most_share * nominal;
  const RwVerdict verdict = rw_verdict_judge (look->read->reading.value, look->read->u, MIN (a, b), MAX (a, b));

  if (verdict == RW_VERDICT_INSIDE)
    return FALSE;

  g_autofree char *value = rw_stages_dup_value (look->read);
  g_autofree char *least = rw_stages_dup_volts (a);
  g_autofree char *most = rw_stages_dup_volts (b);

  if (verdict == RW_VERDICT_OUTSIDE)
    say_off (look, "off-now",
             /* Translators: rail, value, lower and upper limit. */
             g_strdup_printf (_ ("Off now: %s stands at %s with the board on it, outside %s to %s."), look->rail->label,
                              value, least, most));
  else
    say_close (look, "off-close",
               g_strdup_printf (_ ("%s at %s is too close to call against %s to %s: switch off, and see what the supply "
                                   "does without the board."),
                                look->rail->label, value, least, most));
  return TRUE;
}

static gboolean
look_at_guard (const Look *look)
{
  const double chance = get_chance_below (look, guard_share);

  if (!rw_stages_is_guard (look->profile, look->index) || chance <= 1 - RW_VERDICT_SURE)
    return FALSE;

  g_autofree char *value = rw_stages_dup_value (look->read);

  if (chance >= RW_VERDICT_SURE)
    say_off (look, "guard-missing",
             /* Translators: rail, value. */
             g_strdup_printf (_ ("Off now: %s is missing at the board (%s), and memory is destroyed while the other "
                                 "rails are on."),
                              look->rail->label, value));
  else
    say_close (look, "guard-close",
               g_strdup_printf (_ ("%s at %s may be missing, and memory is destroyed without it: switch off, and look at "
                                   "its wire and its regulator."),
                                look->rail->label, value));
  return TRUE;
}

static void
look_at (const Look *look)
{
  if (!look_for_overload (look) && !look_for_sign (look) && !look_for_never_above (look)
      && !look_at_reference (look))
    look_at_guard (look);
}

/* --- all of it ---------------------------------------------------------------------------------- */

/* The newest DC reading of a rail with the board fitted that still holds, overload included. (nullable) */
static const RwStageRead *
find_newest (const RwStagesBook *book,
             const char         *rail)
{
  const RwStageRead *newest = NULL;

  for (RwPlace place = 0; place < RW_N_PLACES; place++)
    {
      const RwStageRead *read = rw_stages_book_find (book, rail, place, RW_KIND_DC, FALSE);

      if (place != RW_PLACE_WIRE && read != NULL && !read->stale && (newest == NULL || read->n > newest->n))
        newest = read;
    }
  return newest;
}

void
rw_stages_add_power (const RwStagesBook *self,
                     GArray             *reasons)
{
  if (self->setup.board_fitted == RW_SAID_NO)
    return;
  for (guint i = 0; i < rw_profile_get_n_rails (self->profile); i++)
    {
      const RwRail *rail = rw_profile_get_rail (self->profile, i);
      const RwStageRead *read = find_newest (self, rail->id);
      const Look look = { self->profile, rail, i, read, self->setup.power_on != RW_SAID_NO, reasons };

      if (read != NULL)
        look_at (&look);
    }
}

gboolean
rw_stages_look_live (const RwProfile *profile,
                     RwSetup          setup,
                     const RwReading *sample,
                     double           u,
                     RwGateReason    *out)
{
  const int index = rw_profile_index_of (profile, sample->rail);
  const RwStageRead read = { .reading = *sample, .u = u };
  g_autoptr (GArray) reasons = g_array_new (FALSE, FALSE, sizeof (RwGateReason));

  if (index < 0 || setup.board_fitted == RW_SAID_NO || setup.power_on == RW_SAID_NO || sample->kind != RW_KIND_DC
      || sample->place == RW_PLACE_WIRE)
    return FALSE;

  const Look look = { profile, rw_profile_get_rail (profile, (guint) index), (guint) index, &read, TRUE, reasons };
  gboolean off = FALSE;

  look_at (&look);
  for (guint i = 0; i < reasons->len; i++)
    {
      RwGateReason *reason = &g_array_index (reasons, RwGateReason, i);

      if (reason->off && !off)
        *out = *reason;
      else
        rw_gate_reason_clear (reason);
      off = off || reason->off;
    }
  return off;
}

static void
stop_stage (RwStages           *self,
            RwStage             stage,
            const RwGateReason *reason)
{
  RwStageState *state = &self->stages[stage];
  RwGateReason copy = *reason;

  copy.text = g_strdup (reason->text);
  g_array_prepend_val (state->reasons, copy);
  state->gate = RW_GATE_STOP;
  if (self->current == (int) stage)
    state->status = RW_STAGE_BLOCKED;
}

void
rw_stages_take_live (RwStages           *self,
                     const RwGateReason *reason)
{
  stop_stage (self, RW_STAGE_FIRST_POWER, reason);
  if (self->current >= 0 && self->current != RW_STAGE_FIRST_POWER)
    stop_stage (self, (RwStage) self->current, reason);
}
