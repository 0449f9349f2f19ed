/* rw-mistakes-meter.c: what the meters themselves do: differ, catch a change, run out of battery.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Of two meters that differ within their errors nothing is said: neither is wrong, and nothing moved.
 */
#include "config.h"

#include "rw-mistakes-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"
#include "rw-ripple.h"

/* Later, the cabinet may have moved; and so much may it even sooner: a share of the nominal volts, of a drop. */
static const double meters_within = 300, meters_share = 0.002, drop_share = 0.10, drop_volts = 0.001;

/* A repeat: seconds, last digits, and the share of the nominal volts by which loads move a rail anyway. */
static const double repeat_within = 10, repeat_counts = 5, repeat_share = 0.002;

/* Farther apart, the first was of something else, and the second mends it. */
static const double most_share = 0.25;

/* A reference that creeps with the battery: shares of the nominal volts. */
static const double creep_from = 0.025, creep_spread = 0.006;

/* --- two readings of one spot ------------------------------------------------------------------- */

/* The reading @i, unless something was changed since. (nullable) */
static const RwPast *
of_the_same_time (const RwMistakesBook *book,
                  const RwPast         *newest,
                  guint                 i)
{
  const RwPast *past = rw_mistakes_book_find_past (book, i);

  return past != NULL && past->epoch == newest->epoch ? past : NULL;
}

static gboolean
are_of_one_thing (const RwPast *one,
                  const RwPast *other)
{
  const double a = one->spot.reading.value, b = other->spot.reading.value;

  return fabs (a - b) <= most_share * MAX (fabs (a), fabs (b));
}

/* How far a load moves it between two readings. */
static double
moves_by (const RwSpotState *spot)
{
  if (spot->reading.place == RW_PLACE_WIRE)
    return drop_volts + drop_share * fabs (spot->reading.value);
  return meters_share * fabs (spot->rail != NULL ? spot->rail->nominal : spot->reading.value);
}

static void
look_at_two_meters (RwMistakes   *self,
                    const RwPast *one,
                    const RwPast *other)
{
  const double apart = fabs (one->spot.reading.value - other->spot.reading.value);
  const double tolerance = rw_mistakes_tolerance_2 (&one->spot, &other->spot);

  if (!one->known || !other->known || !are_of_one_thing (one, other)
      || one->spot.t - other->spot.t > meters_within
      || one->spot.setup.warm != other->spot.setup.warm
      || !(apart > tolerance + moves_by (&one->spot)))
    return;

  g_autofree char *value = rw_mistakes_value (&one->spot);
  g_autofree char *before = rw_mistakes_value (&other->spot);
  g_autofree char *allowed = rw_quantity_format (tolerance, one->spot.reading.step, one->spot.reading.kind);

  rw_mistakes_warn (self, &one->spot, "meters-disagree", FALSE,
                    /* Translators: rail, value, value of the other meter, sum of both errors. */
                    g_strdup_printf (_ ("Two meters on %s show %s and %s, farther apart than their errors together (%s): "
                                        "one is out, or they were not on the same spot. Read both again with the leads "
                                        "side by side, and go on with the one that a known voltage proves right."),
                                     rw_mistakes_label (&one->spot), value, before, allowed));
}

static void
look_at_two_values (RwMistakes   *self,
                    const RwPast *one,
                    const RwPast *other)
{
  const double step = MAX (one->spot.reading.step, other->spot.reading.step);
  const double apart = fabs (one->spot.reading.value - other->spot.reading.value);
  const double loads = repeat_share * (one->spot.rail != NULL ? fabs (one->spot.rail->nominal) : 0);
  const double most = MAX (MAX (repeat_counts * step, loads), rw_mistakes_tolerance_2 (&one->spot, &other->spot));

  if (!(step > 0) || !are_of_one_thing (one, other) || one->spot.t - other->spot.t > repeat_within
      || !(apart > most * (1 + 1e-9)))
    return;

  g_autofree char *value = rw_mistakes_value (&one->spot);
  g_autofree char *before = rw_mistakes_value (&other->spot);

  rw_mistakes_warn (self, &one->spot, "reading-in-change", FALSE,
                    /* Translators: rail, first value, second value. */
                    g_strdup_printf (_ ("%s read %s, then %s within seconds: it was caught while it changed, or a lead "
                                        "slipped. Hold the leads still, read three times, and keep the middle one."),
                                     rw_mistakes_label (&one->spot), before, value));
}

static void
look_at_repeat (RwMistakes   *self,
                const RwPast *past)
{
  const RwReading *reading = &past->spot.reading;
  const RwSpotState *now = rw_mistakes_fresh (self, reading->rail, reading->place, reading->kind);

  if (reading->kind != RW_KIND_DC || now == NULL || now->n != past->spot.n)
    return;

  const RwPast *other = of_the_same_time (self->book, past, past->before_other);
  const RwPast *same
      = reading->place != RW_PLACE_WIRE ? of_the_same_time (self->book, past, past->before_own) : NULL;

  if (other != NULL)
    look_at_two_meters (self, past, other);
  if (same != NULL && (other == NULL || same > other))
    look_at_two_values (self, past, same);
}

/* The newest reading of every spot that still holds is compared with the one before it, the newest of all first. */
void
rw_mistakes_look_at_repeats (RwMistakes *self)
{
  const RwMistakesBook *book = self->book;

  for (guint i = 0; i < book->spots->len; i++)
    {
      const RwPast *past = rw_mistakes_book_get_past (book, g_array_index (book->spots, RwPastSpot, i).last);

      if (past->epoch != book->epoch)
        return;
      look_at_repeat (self, past);
    }
}

/* --- the battery -------------------------------------------------------------------------------- */

gboolean
rw_mistakes_look_at_battery (RwMistakes        *self,
                             const RwSpotState *spot)
{
  if (!spot->reading.low_battery)
    return FALSE;
  rw_mistakes_warn (self, spot, "low-battery", FALSE,
                    g_strdup (_ ("The meter says that its battery is low: it may read a few per cent high. Take the "
                                 "leads away, change the battery, and read again before anything is turned.")));
  return TRUE;
}

/* The newest reading of each meter says how its battery is. */
static void
look_at_flags (RwMistakes *self)
{
  for (guint i = 0; i < self->book->meters->len; i++)
    rw_mistakes_look_at_battery (
        self, &rw_mistakes_book_get_past (self->book, g_array_index (self->book->meters, guint, i))->spot);
}

/* A rail of its own regulation, which the trim does not move: what moves it like the others is the meter. */
static gboolean
is_independent (const RwRail *rail)
{
  return rail->follows_trim == RW_FOLLOWS_NO && !rw_ripple_is_raw (rail);
}

/* All rails at @place, of one meter, high by the same factor, one of them independent of the trim. */
static void
look_at_common_factor (RwMistakes *self,
                       RwPlace     place)
{
  RwProfile *profile = rw_bench_state_get_profile (self->state);
  const RwSpotState *newest = NULL;
  double least = INFINITY, most = -INFINITY;
  guint n = 0, independent = 0;

  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    {
      const RwRail *rail = rw_profile_get_rail (profile, i);
      const RwSpotState *spot = rw_mistakes_fresh (self, rail->id, place, RW_KIND_DC);

      if (spot == NULL || rw_ripple_is_raw (rail))
        continue;
      if (newest != NULL && newest->reading.meter != spot->reading.meter)
        return;
      least = MIN (least, spot->reading.value / rail->nominal);
      most = MAX (most, spot->reading.value / rail->nominal);
      independent += is_independent (rail);
      newest = newest == NULL || spot->n > newest->n ? spot : newest;
      n++;
    }
  if (n < 3 || independent == 0 || most - least > creep_spread
      || least - 1 - sqrt (3) * newest->u / fabs (newest->reading.value) < creep_from)
    return;

  g_autofree char *by = rw_quantity_format_chance ((least + most) / 2 - 1);

  rw_mistakes_warn (self, newest, "low-battery", FALSE,
                    /* Translators: per cent. */
                    g_strdup_printf (_ ("Every rail reads %s high alike, even one that the trim does not move: that is "
                                        "how a meter with a tired battery reads. Measure a fresh battery or a known "
                                        "voltage before anything is turned."),
                                     by));
}

void
rw_mistakes_look_at_batteries (RwMistakes *self)
{
  look_at_flags (self);
  for (guint place = 0; place < RW_PLACE_WIRE; place++)
    look_at_common_factor (self, place);
}
