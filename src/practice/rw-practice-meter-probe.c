/* rw-practice-meter-probe.c: what reaches a practice meter through its leads.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Ohms are what volts over a known current say: 1 mA on the lowest range, a tenth of it on each further one. Volts that
 * are there anyway count in full, so that a live or charged circuit shows nonsense: OL, less than nothing, or a value
 * that creeps while a capacitor empties. Leads add 0.2–0.5 Ω unless they are zeroed.
 *
 * AC: a coupling capacitor keeps DC out, unless the meter is a cheap one that rectifies half the wave of whatever comes:
 * twice π/(2√2) = 2.22 times the DC with one polarity, nothing with the other.
 *
 * The amps jack is 0.05 Ω with a fuse of 10 A in it, which melts at 40 A²s above its rating: some 60 ms of a short.
 */
#include "config.h"

#include <math.h>

#include "rw-practice-meter-private.h"
#include "rw-practice-nodes-private.h"

static const double
    wire_contact = 0.2; /* of it, for a drop: both probes press on metal side by side */
static const double tremble = 0.3; /* of it, each step */
static const double ac_floor_volts = 0.0002;
static const double open_ac_volts = 0.025; /* pick-up of leads that touch nothing */
static const double open_ohms = 1e9;
static const double ohms_shake = 0.3; /* of the AC across a resistor, each step */
static const double half_wave_scale = 2.2214414690791831;
static const double jack_ohms = 0.05;
static const double fuse_amps = 10, fuse_heat = 40; /* A²s */

/* Integral from 0 to @periods of a triangle wave between −1 and +1, of period 1: 0 after whole
 * periods. */
static double
triangle_integral (double periods)
{
  const double p = periods - floor (periods);

  /* Up from −1 in the first half, down from +1 in the second. */
  if (p < 0.5)
    return -p + 2 * p * p;
  return (p - 0.5) - 2 * (p - 0.5) * (p - 0.5);
}

/* What is left of a ripple after averaging it over one step; @volts: as an averaging meter
 * shows it. */
static double
leftover_ripple (RwPracticeMeter *self,
                 double           volts)
{
  const double amplitude = volts / 0.278 / 2;
  const double to = rw_practice_cabinet_get_seconds (self->cabinet) * self->ripple_hertz;
  const double from = to - RW_PRACTICE_STEP * self->ripple_hertz;

  return amplitude * (triangle_integral (to) - triangle_integral (from)) / (to - from);
}

/* Volts between the leads; FALSE: nothing joins them. DC and ripple of a reading are the cabinet's own. */
static gboolean
get_volts (RwPracticeMeter *self,
           double          *dc,
           double          *ripple)
{
  RwPracticeCabinet *cabinet = self->cabinet;
  RwPracticePair pair;

  if (self->jack == RW_PRACTICE_JACK_AMPS)
    return FALSE;
  if (cabinet->rail != NULL)
    {
      *dc = rw_practice_cabinet_get_true_volts (cabinet, cabinet->rail, cabinet->place, RW_KIND_DC);
      *ripple = rw_practice_cabinet_get_true_volts (cabinet, cabinet->rail, cabinet->place, RW_KIND_RIPPLE);
      *dc *= cabinet->reversed ? -1 : 1;
      return !isnan (*dc);
    }
  rw_practice_nodes_measure_volts (cabinet, cabinet->lead[RW_PRACTICE_RED], cabinet->lead[RW_PRACTICE_BLACK], &pair);
  *dc = pair.dc;
  *ripple = pair.ac;
  return !pair.open;
}

static double
probe_dc (RwPracticeMeter *self)
{
  const gboolean wire = self->cabinet->rail != NULL && self->cabinet->place == RW_PLACE_WIRE;
  const double contact = self->contact_volts * (wire ? wire_contact : 1);
  const double shake = rw_practice_random_gauss (&self->random);
  double dc, ripple;

  if (!get_volts (self, &dc, &ripple))
    return 0;
  return dc + contact * (self->contact + tremble * shake) + leftover_ripple (self, ripple);
}

static double
probe_ac (RwPracticeMeter *self)
{
  double dc, ripple;

  if (!get_volts (self, &dc, &ripple))
    return open_ac_volts * (1 + 0.1 * rw_practice_random_gauss (&self->random));
  if (self->half_wave && dc > 0)
    ripple += half_wave_scale * dc;
  return sqrt (ripple * ripple + ac_floor_volts * ac_floor_volts);
}

/* Amperes that the ohms range sends through what it measures. */
static double
test_amps (int range)
{
  double amps = 0.001;

  for (int i = 0; i < range; i++)
    amps /= 10;
  return amps;
}

static double
probe_ohms (RwPracticeMeter *self)
{
  const double amps = test_amps (self->range);
  const double shake = rw_practice_random_gauss (&self->random);
  RwPracticePair pair;

  rw_practice_cabinet_measure (self->cabinet, self->cabinet->lead[RW_PRACTICE_RED],
                               self->cabinet->lead[RW_PRACTICE_BLACK], &pair);
  if (pair.open || self->jack == RW_PRACTICE_JACK_AMPS)
    return open_ohms;

  const double seen = pair.ohms + (self->zeroed ? 0 : self->lead_ohms) + (pair.dc + ohms_shake * shake * pair.ac) / amps;

  return CLAMP (seen, -open_ohms, open_ohms);
}

double
rw_practice_meter_probe (RwPracticeMeter *self,
                         RwKind           kind)
{
  switch (kind)
    {
    case RW_KIND_RIPPLE:
      return probe_ac (self) * self->cabinet->model.params.meter_gain;

    case RW_KIND_OHMS:
      return probe_ohms (self);

    case RW_KIND_AMPS:
      return rw_practice_cabinet_get_shunt_amps (self->cabinet);

    case RW_KIND_DC:
    case RW_KIND_CELSIUS:
    case RW_N_KINDS:
    default:
      return probe_dc (self) * self->cabinet->model.params.meter_gain;
    }
}

void
rw_practice_meter_tell_dial (RwPracticeMeter *self)
{
  static const RwKind kinds[] = { RW_KIND_DC, RW_KIND_DC, RW_KIND_RIPPLE, RW_KIND_OHMS, RW_KIND_AMPS };
  const gboolean shorts = self->jack == RW_PRACTICE_JACK_AMPS && !self->fuse_blown;
  const RwPracticeDial dial = { .by_hand = self->mode != RW_PRACTICE_MODE_FOLLOW,
                                .kind = kinds[self->mode],
                                .amps_jack = self->jack == RW_PRACTICE_JACK_AMPS,
                                .shunt_ohms = shorts ? jack_ohms : (double) INFINITY };

  rw_practice_cabinet_set_dial (self->cabinet, &dial);
}

void
rw_practice_meter_heat_fuse (RwPracticeMeter *self)
{
  if (self->jack != RW_PRACTICE_JACK_AMPS || self->fuse_blown)
    return;

  const double amps = fabs (rw_practice_cabinet_get_shunt_amps (self->cabinet));

  self->fuse_heat = amps > fuse_amps ? self->fuse_heat + amps * amps * RW_PRACTICE_STEP : 0;
  if (self->fuse_heat < fuse_heat)
    return;
  self->fuse_blown = TRUE;
  rw_practice_meter_tell_dial (self);
}
