/* rw-mistakes-spot.c: dangers, and what one reading shows by itself: sign, size, overload, ohms.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-mistakes-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-never-above.h"
#include "rw-quantity.h"

/* Share of its nominal volts within which a value is taken for that rail's. */
static const double near_share = 0.10;

/* Once that rail was read, its reading is what the value has to match, but for changes of load. */
static const double same_share = 0.03;

/* A rail this far off its nominal volts is hardly just a little off. */
static const double far_share = 0.25;

/* By how much the one reading of a sign must fit better than the other. */
static const double clearly = 0.01;

static gboolean
is_at_a_point (const RwSpotState *spot)
{
  return spot->rail != NULL && spot->reading.place != RW_PLACE_WIRE && spot->reading.kind == RW_KIND_DC
         && !spot->reading.over && isfinite (spot->reading.value);
}

/* --- dangers ------------------------------------------------------------------------------------ */

static void
warn_never_above (RwMistakes        *self,
                  const RwSpotState *spot)
{
  const gboolean sure = rw_never_above_judge (spot->rail, spot->reading.value, spot->u) == RW_VERDICT_OUTSIDE;
  g_autofree char *value = rw_mistakes_value (spot);
  g_autofree char *limit = rw_quantity_format (spot->rail->never_above, 0.1, RW_KIND_DC);

  rw_mistakes_warn (self, spot, "never-above", TRUE,
                    sure
                        /* Translators: value, rail, limit. */
                        ? g_strdup_printf (_ ("%s on %s is past %s. Power off now, and keep the board out until the "
                                              "supply is put right."),
                                           value, rw_mistakes_label (spot), limit)
                        : g_strdup_printf (_ ("%s on %s reads past %s, by less than this meter can tell. Power off now, "
                                              "keep the board out, and read it with a finer range."),
                                           value, rw_mistakes_label (spot), limit));
}

gboolean
rw_mistakes_look_at_danger (RwMistakes        *self,
                            const RwSpotState *spot)
{
  const RwReading *reading = &spot->reading;

  /* Mains is AC: it shows where ripple is measured. */
  if ((reading->kind != RW_KIND_DC && reading->kind != RW_KIND_RIPPLE) || reading->over)
    return FALSE;

  g_autofree char *value = rw_mistakes_value (spot);

  if (fabs (reading->value) > RW_MISTAKES_MAINS)
    {
      rw_mistakes_warn (self, spot, "mains-sized", TRUE,
                        /* Translators: value, rail. */
                        g_strdup_printf (_ ("Stop: %s on %s is a mains-sized voltage. Take the leads away, pull the "
                                            "plug, and find out what was touched before going on."),
                                         value, rw_mistakes_label (spot)));
      return TRUE;
    }
  if (!is_at_a_point (spot) || fabs (reading->value) <= spot->rail->never_above)
    return FALSE;
  warn_never_above (self, spot);
  return TRUE;
}

/* --- sign and screw ----------------------------------------------------------------------------- */

static gboolean
is_reversed (const RwSpotState *spot)
{
  return is_at_a_point (spot) && spot->reading.value / spot->rail->nominal < -0.5
         && fabs (spot->reading.value) <= spot->rail->never_above;
}

/* What the rail was read to be, at another spot than @spot, the nearest to @value; its nominal volts when it was
 * not read. */
static double
volts_of (const RwMistakes  *self,
          const RwRail      *rail,
          const RwSpotState *spot,
          double             value,
          gboolean          *read)
{
  double nearest = NAN;

  for (guint place = 0; place < RW_PLACE_WIRE; place++)
    {
      const RwSpotState *other = rw_mistakes_fresh (self, rail->id, place, RW_KIND_DC);

      if (other == NULL || rw_reading_same_spot (&other->reading, &spot->reading) || !rw_mistakes_is_alive (other))
        continue;
      if (isnan (nearest) || fabs (other->reading.value - value) < fabs (nearest - value))
        nearest = other->reading.value;
    }
  *read = !isnan (nearest);
  return *read ? nearest : rail->nominal;
}

/* How well the value fits the rail, as a share; INFINITY: not at all. */
static double
misfit_of (const RwMistakes  *self,
           const RwRail      *rail,
           const RwSpotState *spot)
{
  const double value = spot->reading.value;
  gboolean read;
  const double volts = volts_of (self, rail, spot, value, &read);
  const double misfit = fabs (value - volts) / fabs (rail->nominal);

  if (fabs (value - rail->nominal) > near_share * fabs (rail->nominal) || (read && misfit > same_share))
    return INFINITY;
  return misfit;
}

/* The same odd value at another place of the rail, whenever that was: then the rail really is odd. */
static gboolean
is_seen_elsewhere (const RwMistakes  *self,
                   const RwSpotState *spot)
{
  for (guint place = 0; place < RW_PLACE_WIRE; place++)
    {
      const RwSpotState *other = rw_bench_state_find_spot (self->state, spot->reading.rail, place, RW_KIND_DC);

      if (other != NULL && place != spot->reading.place
          && fabs (other->reading.value - spot->reading.value) < near_share * fabs (spot->reading.value))
        return TRUE;
    }
  return FALSE;
}

const RwRail *
rw_mistakes_find_other_rail (const RwMistakes  *self,
                             const RwSpotState *spot)
{
  RwProfile *profile = rw_bench_state_get_profile (self->state);
  const RwRail *best = NULL;
  double least = INFINITY;

  if (!is_at_a_point (spot)
      || fabs (spot->reading.value - spot->rail->nominal) <= far_share * fabs (spot->rail->nominal)
      || is_seen_elsewhere (self, spot))
    return NULL;
  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    {
      const RwRail *rail = rw_profile_get_rail (profile, i);
      const double misfit = rail != spot->rail ? misfit_of (self, rail, spot) : (double) INFINITY;

      if (misfit < least)
        {
          least = misfit;
          best = rail;
        }
    }
  if (best == NULL || !is_reversed (spot))
    return best;

  /* Leads the wrong way round would do as well, and are likelier until the other rail was read. */
  gboolean own_read, read;
  const double value = spot->reading.value;
  const double own = fabs (value + volts_of (self, spot->rail, spot, -value, &own_read));

  volts_of (self, best, spot, value, &read);
  return read && least < own / fabs (spot->rail->nominal) - clearly ? best : NULL;
}

gboolean
rw_mistakes_look_at_terminal (RwMistakes        *self,
                              const RwSpotState *spot)
{
  const RwRail *other = rw_mistakes_find_other_rail (self, spot);

  if (other == NULL)
    return FALSE;

  g_autofree char *value = rw_mistakes_value (spot);

  rw_mistakes_warn (self, spot, "wrong-terminal", FALSE,
                    /* Translators: value, rail, the other rail. */
                    g_strdup_printf (_ ("%s on %s is what %s carries: was the lead on the wrong point? Look where it "
                                        "is before anything is connected or turned, and read again."),
                                     value, rw_mistakes_label (spot), other->label));
  return TRUE;
}

gboolean
rw_mistakes_look_at_reversed (RwMistakes        *self,
                              const RwSpotState *spot)
{
  if (!is_reversed (spot))
    return FALSE;

  g_autofree char *value = rw_mistakes_value (spot);

  rw_mistakes_warn (self, spot, "leads-reversed", FALSE,
                    /* Translators: value, rail. */
                    g_strdup_printf (_ ("%s on %s has the wrong sign: are the leads the wrong way round? Black to "
                                        "0 V, red to the rail, and read again."),
                                     value, rw_mistakes_label (spot)));
  return TRUE;
}

/* --- overload and ohms -------------------------------------------------------------------------- */

gboolean
rw_mistakes_look_at_overload (RwMistakes        *self,
                              const RwSpotState *spot)
{
  const RwKind kind = spot->reading.kind;

  /* Of ohms it is an answer: an open path. */
  if (!spot->reading.over || (kind != RW_KIND_DC && kind != RW_KIND_RIPPLE && kind != RW_KIND_AMPS))
    return FALSE;
  rw_mistakes_warn (self, spot, "overload", FALSE,
                    kind == RW_KIND_AMPS
                      /* Translators: rail. */
                      ? g_strdup_printf (_ ("The meter shows overload on %s: more than its range, not without end. "
                                            "Power off first, then use its highest range for amperes."),
                                         rw_mistakes_label (spot))
                      /* Translators: rail. */
                      : g_strdup_printf (_ ("The meter shows overload on %s: more than its range, and nobody knows how "
                                            "much more. Take the leads away, choose the highest range or automatic, "
                                            "and look what they touch before reading again."),
                                         rw_mistakes_label (spot)));
  return TRUE;
}

gboolean
rw_mistakes_look_at_ohms (RwMistakes        *self,
                          const RwSpotState *spot)
{
  const RwReading *reading = &spot->reading;

  if (reading->kind != RW_KIND_OHMS)
    return FALSE;
  if (spot->setup.power_on == RW_SAID_YES)
    {
      rw_mistakes_warn (self, spot, "ohms-power-on", FALSE,
                        /* Translators: rail. */
                        g_strdup_printf (_ ("Ohms on %s with the power on: take the leads away. Pull the plug, wait "
                                            "until the rails have fallen below 0.5 V, and only then measure "
                                            "resistance."),
                                         rw_mistakes_label (spot)));
      return TRUE;
    }
  if (reading->over || !(reading->value < -sqrt (3) * MAX (spot->u_own, reading->step)))
    return FALSE;

  g_autofree char *value = rw_mistakes_value (spot);

  rw_mistakes_warn (self, spot, "ohms-power-on", FALSE,
                    /* Translators: value, rail. */
                    g_strdup_printf (_ ("%s on %s: no resistance is negative, something there still carries a voltage. "
                                        "Take the leads away, see that the plug is out, and measure volts until they "
                                        "are below 0.5 V."),
                                     value, rw_mistakes_label (spot)));
  return TRUE;
}
