/* rw-mistakes-mode.c: the meter in the wrong mode, and points or units that slipped.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a meter in AC mode shows on a clean DC rail: about nothing when it blocks DC; 1.11 times the volts, or
 * 2.22 times with a half-wave rectifier, when it does not (it shows the mean of what it rectifies as if it were
 * a sine: π/(2√2), and twice that).
 */
#include "config.h"

#include "rw-mistakes-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-ripple.h"
#include "rw-typed-check.h"

/* Shares of the rail's volts. A rail straight from the rectifier may carry ripple of half its volts (a full
 * wave without a capacitor: 0.48), a regulated one never a fifth. */
static const double most_ripple = 0.20, most_raw_ripple = 0.60;

/* Shares that a meter in AC mode may show, see above; and live, where the meter says that it is. */
static const double ac_full_from = 1.07, ac_full_to = 1.15, ac_half_from = 1.9, ac_half_to = 2.5;
static const double ac_live_from = 0.8;

static const double slip_from = 3.0;

/* No volts at all, as a meter that blocks DC shows them: volts and share of the nominal ones. */
static const double nothing = 0.1, nothing_share = 0.03;

/* How near the value must come to the nominal volts when its point is moved. */
static const double slip_share = 0.15;

/* What the rail carries where the ripple was read; the nominal volts when nobody looked. */
static double
dc_beside (const RwMistakes  *self,
           const RwSpotState *spot,
           gboolean          *collapsed)
{
  const RwSpotState *dc = rw_mistakes_fresh (self, spot->reading.rail, spot->reading.place, RW_KIND_DC);

  *collapsed = dc != NULL && !rw_mistakes_is_alive (dc);
  return fabs (dc != NULL && !*collapsed ? dc->reading.value : spot->rail->nominal);
}

static void
warn_ac_mode (RwMistakes        *self,
              const RwSpotState *spot)
{
  g_autofree char *value = rw_mistakes_value (spot);

  rw_mistakes_warn (self, spot, "ac-mode", FALSE,
                    /* Translators: value, rail. */
                    g_strdup_printf (_ ("%s AC on %s is no ripple: in AC mode some meters show a DC rail once or twice "
                                        "over. Set the meter to DC volts and read the rail first."),
                                     value, rw_mistakes_label (spot)));
}

static void
warn_rail_as_ripple (RwMistakes        *self,
                     const RwSpotState *spot,
                     double             share)
{
  g_autofree char *value = rw_mistakes_value (spot);

  if (share > slip_from)
    rw_mistakes_warn (self, spot, "unit-slip", FALSE,
                      /* Translators: value, rail. */
                      g_strdup_printf (_ ("%s of ripple on %s is more than the rail itself: were millivolts meant, or "
                                          "did the point slip? Read the display again, unit and all."),
                                       value, rw_mistakes_label (spot)));
  else
    rw_mistakes_warn (self, spot, "dc-mode-for-ripple", FALSE,
                      /* Translators: value, rail. */
                      g_strdup_printf (_ ("%s on %s is the rail itself and no ripple: set the meter to AC millivolts "
                                          "and read again."),
                                       value, rw_mistakes_label (spot)));
}

static gboolean
is_ac_share (double share)
{
  return (share >= ac_full_from && share <= ac_full_to) || (share >= ac_half_from && share <= ac_half_to);
}

static gboolean
is_ripple (const RwSpotState *spot)
{
  return spot->reading.kind == RW_KIND_RIPPLE && !spot->reading.over && spot->rail != NULL
         && spot->setup.power_on != RW_SAID_NO;
}

gboolean
rw_mistakes_look_at_ripple (RwMistakes        *self,
                            const RwSpotState *spot)
{
  gboolean collapsed;

  if (!is_ripple (spot))
    return FALSE;

  const double share = fabs (spot->reading.value) / dc_beside (self, spot, &collapsed);
  const double error = sqrt (3) * spot->u / fabs (spot->rail->nominal);

  /* A supply that ticks shows as AC. */
  if (collapsed || !(share - error > (rw_ripple_is_raw (spot->rail) ? most_raw_ripple : most_ripple)))
    return FALSE;
  if (is_ac_share (share))
    warn_ac_mode (self, spot);
  else
    warn_rail_as_ripple (self, spot, share);
  return TRUE;
}

gboolean
rw_mistakes_look_at_ac (RwMistakes        *self,
                        const RwSpotState *spot)
{
  gboolean collapsed;

  if (!is_ripple (spot) || !(fabs (spot->reading.value) / dc_beside (self, spot, &collapsed) > ac_live_from))
    return FALSE;
  warn_ac_mode (self, spot);
  return TRUE;
}

/* --- no volts where there must be some ---------------------------------------------------------- */

/* Farther from the supply the rail is there: it cannot be missing nearer to it. (nullable) */
static const RwSpotState *
find_downstream (const RwMistakes  *self,
                 const RwSpotState *spot)
{
  for (guint place = spot->reading.place + 1; place < RW_PLACE_WIRE; place++)
    {
      const RwSpotState *other = rw_mistakes_fresh (self, spot->reading.rail, place, RW_KIND_DC);

      if (other != NULL && rw_mistakes_is_alive (other))
        return other;
    }
  return NULL;
}

/* The supply is led by the reference: while the rails that follow it are there, so is it. At the board a
 * broken wire would look the same, so there both others must be there and the terminals not read. (nullable) */
static const RwSpotState *
find_follower (const RwMistakes  *self,
               const RwSpotState *spot)
{
  RwProfile *profile = rw_bench_state_get_profile (self->state);
  const guint wanted = spot->reading.place == RW_PLACE_TERMINALS ? 1 : 2;
  const RwSpotState *alive = NULL;
  guint n = 0;

  if (spot->rail != rw_profile_get_reference (profile))
    return NULL;
  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    {
      const RwRail *rail = rw_profile_get_rail (profile, i);
      const RwSpotState *other = rw_mistakes_fresh (self, rail->id, spot->reading.place, RW_KIND_DC);

      if (rail == spot->rail || rail->follows_trim == RW_FOLLOWS_NO || other == NULL)
        continue;
      if (!rw_mistakes_is_alive (other))
        return NULL;
      alive = other;
      n++;
    }
  if (spot->reading.place != RW_PLACE_TERMINALS
      && rw_mistakes_fresh (self, spot->reading.rail, RW_PLACE_TERMINALS, RW_KIND_DC) != NULL)
    return NULL;
  return n >= wanted ? alive : NULL;
}

gboolean
rw_mistakes_look_at_zero (RwMistakes        *self,
                          const RwSpotState *spot)
{
  const double value = fabs (spot->reading.value);

  if (spot->rail == NULL || spot->reading.kind != RW_KIND_DC || spot->reading.place == RW_PLACE_WIRE
      || spot->reading.over || spot->setup.power_on == RW_SAID_NO
      || !(value < nothing && value < nothing_share * fabs (spot->rail->nominal)))
    return FALSE;

  const RwSpotState *downstream = find_downstream (self, spot);
  const RwSpotState *there = downstream != NULL ? downstream : find_follower (self, spot);

  if (there == NULL)
    return FALSE;

  g_autofree char *shown = rw_mistakes_value (spot);
  g_autofree char *beside = rw_mistakes_value (there);

  rw_mistakes_warn (self, spot, "ac-mode", FALSE,
                    /* Translators: value, rail, value of the other, the other rail, its place. */
                    g_strdup_printf (_ ("%s on %s, with %s on %s (%s): is the meter in AC mode, or a lead off its "
                                        "point? Set it to DC volts and read again before the rail is called dead."),
                                     shown, rw_mistakes_label (spot), beside, rw_mistakes_label (there),
                                     rw_place_get_label (there->reading.place)));
  return TRUE;
}

/* --- points and units --------------------------------------------------------------------------- */

/* A drop greater than what drives it. */
static gboolean
is_no_drop (const RwMistakes  *self,
            const RwSpotState *spot)
{
  const RwRail *rail = spot->rail != NULL ? spot->rail
                                          : rw_profile_get_reference (rw_bench_state_get_profile (self->state));

  return fabs (spot->reading.value) > 1.2 * fabs (rail->nominal);
}

gboolean
rw_mistakes_look_at_slip (RwMistakes        *self,
                          const RwSpotState *spot)
{
  const RwReading *reading = &spot->reading;
  const RwQuantityTyped typed = { .value = reading->value, .step = reading->step, .over = reading->over };
  const gboolean on_wire = reading->place == RW_PLACE_WIRE;
  double meant = NAN;

  if (reading->kind != RW_KIND_DC || reading->over || fabs (reading->value) > RW_MISTAKES_MAINS
      || (on_wire ? !is_no_drop (self, spot) : spot->rail == NULL)
      || rw_typed_check (spot->rail, reading->rail, reading->place, reading->kind, &typed, &meant) != RW_SLIP_SCALE)
    return FALSE;
  if (!on_wire && !(fabs (meant / spot->rail->nominal - 1) < slip_share))
    return FALSE;

  g_autofree char *value = rw_mistakes_value (spot);

  rw_mistakes_warn (self, spot, "unit-slip", FALSE,
                    /* Translators: value, rail. */
                    g_strdup_printf (_ ("%s on %s looks like a slip of the point or of the unit. Do not touch anything "
                                        "until the display has been read again, unit and all."),
                                     value, rw_mistakes_label (spot)));
  return TRUE;
}
