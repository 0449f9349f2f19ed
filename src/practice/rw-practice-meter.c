/* rw-practice-meter.c: a hand-held meter on the leads of a practice cabinet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * From probe to digits, every step of the cabinet:
 *
 *     spot ─▶ + contact ─▶ front end ─▶ mean since the last value ─▶ its error ─▶ whole counts
 *
 * contact    an offset that is drawn anew whenever the leads move, and a tremble;
 * front end  first order, 0.1 s for DC, 0.4 s for AC, so a value creeps up after the leads moved;
 * mean       ripple is left over only as far as the window is not whole periods of it (the mains
 *            are never quite at their frequency); a dip shorter than the window (0.25–0.33 s) is
 *            shown damped;
 * error      v·(1 + s) + (o + e) counts with |s| ≤ 0.9·percent, |o| ≤ 0.8·(counts − 1), |e| ≤ 0.5
 *            and half a count of rounding: never more than ±(percent + counts).
 *
 * Ranges: the lowest volt range has as many counts as fit below ten volts with a decimal step
 * (6000 counts: 6 V by 1 mV; 4000 counts: 4 V by 1 mV, so 5 V is read on 40 V by 10 mV), then
 * tens of it; a millivolt range a tenth of it serves AC and drops along a wire. A value past
 * the range shows OL once, and then the next range.
 */
#include "config.h"

#include "rw-practice-meter-private.h"

#include <math.h>

static const guint least_interval = 25; /* steps */
static const double front_dc_seconds = 0.10, front_ac_seconds = 0.40;
static const double usual_contact_volts = 0.001;
static const double flicker = 0.2; /* counts, standard deviation */
static const double down_share = 0.09; /* of full range: time for the next lower one */
static const double most_volts = 1000;
static const int most_ohms_range = 5, most_amps_range = 1;
static const double ohms_per_volt = 100; /* full of the lowest ohms range over full of the lowest volt range */
static const double least_lead_ohms = 0.2, most_lead_ohms = 0.5;

G_DEFINE_FINAL_TYPE (RwPracticeMeter, rw_practice_meter, G_TYPE_OBJECT)

static void
rw_practice_meter_dispose (GObject *object)
{
  RwPracticeMeter *self = RW_PRACTICE_METER (object);

  if (self->cabinet != NULL)
    {
      const RwPracticeDial none = { .shunt_ohms = INFINITY };

      rw_practice_cabinet_set_step_func (self->cabinet, NULL, NULL);
      rw_practice_cabinet_set_dial (self->cabinet, &none);
    }
  g_clear_object (&self->cabinet);
  G_OBJECT_CLASS (rw_practice_meter_parent_class)->dispose (object);
}

static void
rw_practice_meter_finalize (GObject *object)
{
  RwPracticeMeter *self = RW_PRACTICE_METER (object);

  g_clear_pointer (&self->facts, rw_meter_facts_free);
  g_clear_pointer (&self->shown, g_array_unref);
  G_OBJECT_CLASS (rw_practice_meter_parent_class)->finalize (object);
}

static void
rw_practice_meter_class_init (RwPracticeMeterClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);

  object_class->dispose = rw_practice_meter_dispose;
  object_class->finalize = rw_practice_meter_finalize;
}

static void
rw_practice_meter_init (RwPracticeMeter *self)
{
  self->shown = g_array_new (FALSE, FALSE, sizeof (RwPracticeShown));
  self->contact_volts = usual_contact_volts;
  self->fixed_range = RW_PRACTICE_RANGE_AUTO;
}

static double
full_volts (RwPracticeMeter *self,
            int              range)
{
  double volts = self->full_counts / self->volt_counts;

  if (range < 0)
    return volts / 10;
  for (int i = 0; i < range; i++)
    volts *= 10;
  return volts;
}

/* Counts in a volt on a range; a power of ten, below 1 on the highest. */
static double
counts_per_volt (RwPracticeMeter *self,
                 int              range)
{
  double counts = self->volt_counts;

  if (range < 0)
    return counts * 10;
  for (int i = 0; i < range; i++)
    counts /= 10;
  return counts;
}

static double
scale_of (RwKind kind)
{
  return kind == RW_KIND_OHMS ? ohms_per_volt : 1;
}

/* The lowest range that the dial stands on: millivolts for AC and drops, volts, ohms or amperes for the rest. */
int
rw_practice_meter_lowest_range (RwPlace place,
                                RwKind  kind)
{
  return kind == RW_KIND_RIPPLE || (kind == RW_KIND_DC && place == RW_PLACE_WIRE) ? -1 : 0;
}

int
rw_practice_meter_highest_range (RwPracticeMeter *self,
                                 RwKind           kind)
{
  int range = 0;

  if (kind == RW_KIND_OHMS)
    return most_ohms_range;
  if (kind == RW_KIND_AMPS)
    return most_amps_range;
  while (full_volts (self, range) < most_volts)
    range++;
  return range;
}

static void
push_shown (RwPracticeMeter       *self,
            const RwPracticeShown *shown)
{
  if (self->shown->len >= RW_PRACTICE_METER_KEEP)
    g_array_remove_index (self->shown, 0);
  g_array_append_vals (self->shown, shown, 1);
}

/* Before the value is taken: the lowest range it fits into well. */
static void
choose_range (RwPracticeMeter *self,
              RwPlace          place,
              RwKind           kind)
{
  const int lowest = rw_practice_meter_lowest_range (place, kind);

  if (self->fixed_range != RW_PRACTICE_RANGE_AUTO)
    return;
  self->range = MAX (self->range, lowest);
  while (self->range > lowest
         && fabs (self->input) < down_share * full_volts (self, self->range) * scale_of (kind))
    self->range--;
}

static void
show_value (RwPracticeMeter *self,
            RwPlace          place,
            RwKind           kind)
{
  const double gauss = rw_practice_random_gauss (&self->random);
  const double noise = CLAMP (flicker * gauss, -0.5, 0.5);
  double sum = 0;

  for (guint i = 0; i < self->interval; i++)
    sum += self->ring[i];
  self->input = sum / self->interval;
  choose_range (self, place, kind);

  const double per_unit = counts_per_volt (self, self->range) / scale_of (kind);
  const double room = MIN (
      1, 2 * (self->facts->counts - 0.5)); /* below one count even the flicker shrinks */
  const double counts = floor (self->input * (1 + self->scale) * per_unit + self->offset
                               + noise * room + 0.5);
  /* Plus nought: a display knows no minus nought. */
  RwPracticeShown shown = { .t = rw_practice_cabinet_get_seconds (self->cabinet),
                            .value = counts / per_unit + 0.0,
                            .step = 1 / per_unit,
                            .ac = kind == RW_KIND_RIPPLE,
                            .milli = self->range < 0,
                            .kind = kind,
                            .range = self->range };

  /* An AC value has no sign. */
  if (shown.ac && shown.value < 0)
    shown.value = 0;
  if (fabs (counts) > self->full_counts)
    {
      shown.over = TRUE;
      shown.value = NAN;
      if (self->fixed_range == RW_PRACTICE_RANGE_AUTO
          && self->range < rw_practice_meter_highest_range (self, kind))
        self->range++;
    }
  push_shown (self, &shown);
}

/* Leads on a new spot: another touch, and the dial is turned if need be. */
static void
notice_leads (RwPracticeMeter *self,
              RwPlace          place,
              RwKind           kind)
{
  const guint serial = rw_practice_cabinet_get_leads_serial (self->cabinet);

  if (serial == self->leads_serial)
    return;
  self->leads_serial = serial;
  self->contact = rw_practice_random_gauss (&self->random);
  if (self->range < 0 && self->fixed_range == RW_PRACTICE_RANGE_AUTO)
    self->range = rw_practice_meter_lowest_range (place, kind);
}

static void
step_cb (RwPracticeCabinet *cabinet,
         gpointer           data)
{
  RwPracticeMeter *self = data;
  RwPlace place;
  RwKind kind;

  rw_practice_cabinet_get_leads (cabinet, &place, &kind);
  notice_leads (self, place, kind);

  const double volts = rw_practice_meter_probe (self, kind);
  const double seconds = kind == RW_KIND_RIPPLE ? front_ac_seconds : front_dc_seconds;

  rw_practice_meter_heat_fuse (self);
  self->front += (volts - self->front) * (RW_PRACTICE_STEP / seconds);
  self->ring[self->next] = self->front;
  self->next = (self->next + 1) % self->interval;
  if (--self->due > 0)
    return;
  self->due = self->interval;
  show_value (self, place, kind);
}

/* From a stream of its own, so that nothing else is drawn otherwise. */
static double
draw_lead_ohms (guint64 seed)
{
  RwPracticeRandom random;

  rw_practice_random_seed (&random, seed ^ G_GUINT64_CONSTANT (0x6c65616473));
  return rw_practice_random_between (&random, least_lead_ohms, most_lead_ohms);
}

RwPracticeMeter *
rw_practice_meter_new (RwPracticeCabinet *cabinet,
                       const char        *id,
                       const char        *name,
                       double             percent,
                       double             counts,
                       guint              full_counts,
                       guint64            seed)
{
  g_return_val_if_fail (RW_IS_PRACTICE_CABINET (cabinet), NULL);
  g_return_val_if_fail (percent >= 0 && counts >= 0.5 && full_counts >= 200, NULL);

  RwPracticeMeter *self = g_object_new (RW_TYPE_PRACTICE_METER, NULL);
  RwPracticeRandom *random = &self->random;

  rw_practice_random_seed (random, seed);
  self->cabinet = g_object_ref (cabinet);
  self->facts = rw_meter_facts_new (id, name, percent, counts);
  self->full_counts = full_counts;
  for (self->volt_counts = 1; self->volt_counts * 10 <= full_counts;)
    self->volt_counts *= 10;
  self->scale = 0.9 * percent / 100 * rw_practice_random_between (random, -1, 1);
  self->offset = 0.8 * MAX (0, counts - 1) * rw_practice_random_between (random, -1, 1);
  self->ripple_hertz = 100 * (1 + 0.001 * rw_practice_random_between (random, -1, 1));
  self->interval = least_interval
                   + (guint)(rw_practice_random_uniform (random)
                             * (RW_PRACTICE_MOST_INTERVAL - least_interval + 1));
  self->due = self->interval;
  self->lead_ohms = draw_lead_ohms (seed);
  rw_practice_cabinet_set_step_func (cabinet, step_cb, self);
  return self;
}

const RwMeterFacts *
rw_practice_meter_get_facts (RwPracticeMeter *self)
{
  return self->facts;
}

double
rw_practice_meter_get_interval (RwPracticeMeter *self)
{
  return self->interval * RW_PRACTICE_STEP;
}

void
rw_practice_meter_set_contact_volts (RwPracticeMeter *self,
                                     double           volts)
{
  g_return_if_fail (volts >= 0);
  self->contact_volts = volts;
}

GArray *
rw_practice_meter_take_shown (RwPracticeMeter *self)
{
  GArray *taken = self->shown;

  self->shown = g_array_new (FALSE, FALSE, sizeof (RwPracticeShown));
  return taken;
}

double
rw_practice_meter_get_true_input (RwPracticeMeter *self)
{
  return self->input;
}
