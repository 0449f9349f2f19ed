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

#include "rw-practice-meter.h"

#include <math.h>

#define MOST_INTERVAL 33 /* steps between two values */

static const guint least_interval = 25; /* steps */
static const double front_dc_seconds = 0.10, front_ac_seconds = 0.40;
static const double usual_contact_volts = 0.001;
static const double
    wire_contact = 0.2; /* of it, for a drop: both probes press on metal side by side */
static const double tremble = 0.3; /* of it, each step */
static const double flicker = 0.2; /* counts, standard deviation */
static const double ac_floor_volts = 0.0002;
static const double open_ac_volts = 0.025; /* pick-up of leads that touch nothing */
static const double down_share = 0.09;     /* of full range: time for the next lower one */
static const double most_volts = 1000;

struct _RwPracticeMeter
{
  GObject            parent_instance;
  RwPracticeCabinet *cabinet;
  RwMeterFacts      *facts;
  guint              full_counts;
  double             volt_counts; /* counts in a volt on the lowest volt range; a power of ten */
  double             contact_volts;
  RwPracticeRandom   random;

  /* Where it errs. */
  double scale;        /* share */
  double offset;       /* counts */
  double ripple_hertz; /* of the mains it meets */

  /* Where it is. */
  guint   interval; /* steps */
  guint   due;      /* steps to the next value */
  guint   leads_serial;
  double  contact;             /* offset of this placement, in units of contact_volts */
  double  front;               /* volts behind the front end */
  double  ring[MOST_INTERVAL]; /* the last `interval` steps */
  guint   next;
  int     range; /* −1: millivolts; 0 … : volts, tens of the lowest */
  double  input; /* mean of the last value */
  GArray *shown; /* of RwPracticeShown, not yet taken */
};

G_DEFINE_FINAL_TYPE (RwPracticeMeter, rw_practice_meter, G_TYPE_OBJECT)

static void
rw_practice_meter_dispose (GObject *object)
{
  RwPracticeMeter *self = RW_PRACTICE_METER (object);

  if (self->cabinet != NULL)
    rw_practice_cabinet_set_step_func (self->cabinet, NULL, NULL);
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
}

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

static double
probe_dc (RwPracticeMeter *self,
          const char      *rail,
          RwPlace          place)
{
  const double true_volts = rw_practice_cabinet_get_true_volts (self->cabinet, rail, place,
                                                                RW_KIND_DC);
  const double ripple = rw_practice_cabinet_get_true_volts (self->cabinet, rail, place,
                                                            RW_KIND_RIPPLE);
  const double contact = self->contact_volts * (place == RW_PLACE_WIRE ? wire_contact : 1);
  const double shake = rw_practice_random_gauss (&self->random);

  if (isnan (true_volts))
    return 0;
  return true_volts + contact * (self->contact + tremble * shake)
         + leftover_ripple (self, ripple);
}

static double
probe_ac (RwPracticeMeter *self,
          const char      *rail,
          RwPlace          place)
{
  const double volts = rw_practice_cabinet_get_true_volts (self->cabinet, rail, place,
                                                           RW_KIND_RIPPLE);

  if (isnan (volts))
    return open_ac_volts * (1 + 0.1 * rw_practice_random_gauss (&self->random));
  return sqrt (volts * volts + ac_floor_volts * ac_floor_volts);
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

/* The lowest range that the dial stands on: millivolts for AC and drops, volts for the rest. */
static int
lowest_range (RwPlace place,
              RwKind  kind)
{
  return place == RW_PLACE_WIRE || kind == RW_KIND_RIPPLE ? -1 : 0;
}

static void
push_shown (RwPracticeMeter       *self,
            const RwPracticeShown *shown)
{
  if (self->shown->len >= RW_PRACTICE_METER_KEEP)
    g_array_remove_index (self->shown, 0);
  g_array_append_vals (self->shown, shown, 1);
}

static void
show_value (RwPracticeMeter *self,
            RwPlace          place,
            RwKind           kind)
{
  const int lowest = lowest_range (place, kind);
  const double gauss = rw_practice_random_gauss (&self->random);
  const double noise = CLAMP (flicker * gauss, -0.5, 0.5);
  double sum = 0;

  for (guint i = 0; i < self->interval; i++)
    sum += self->ring[i];
  self->input = sum / self->interval;
  self->range = MAX (self->range, lowest);
  while (self->range > lowest
         && fabs (self->input) < down_share * full_volts (self, self->range))
    self->range--;

  const double per_volt = counts_per_volt (self, self->range);
  const double room = MIN (
      1, 2 * (self->facts->counts - 0.5)); /* below one count even the flicker shrinks */
  const double counts = floor (self->input * (1 + self->scale) * per_volt + self->offset
                               + noise * room + 0.5);
  /* Plus nought: a display knows no minus nought. */
  RwPracticeShown shown = { rw_practice_cabinet_get_seconds (self->cabinet),
                            counts / per_volt + 0.0,
                            1 / per_volt,
                            FALSE,
                            kind == RW_KIND_RIPPLE,
                            self->range < 0 };

  /* An AC value has no sign. */
  if (shown.ac && shown.value < 0)
    shown.value = 0;
  if (fabs (counts) > self->full_counts)
    {
      shown.over = TRUE;
      shown.value = NAN;
      if (full_volts (self, self->range) < most_volts)
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
  if (self->range < 0)
    self->range = lowest_range (place, kind);
}

static void
step_cb (RwPracticeCabinet *cabinet,
         gpointer           data)
{
  RwPracticeMeter *self = data;
  RwPlace place;
  RwKind kind;
  const char *rail = rw_practice_cabinet_get_leads (cabinet, &place, &kind);

  notice_leads (self, place, kind);

  const double volts = kind == RW_KIND_RIPPLE ? probe_ac (self, rail, place)
                                              : probe_dc (self, rail, place);
  const double seconds = kind == RW_KIND_RIPPLE ? front_ac_seconds : front_dc_seconds;

  self->front += (volts - self->front) * (RW_PRACTICE_STEP / seconds);
  self->ring[self->next] = self->front;
  self->next = (self->next + 1) % self->interval;
  if (--self->due > 0)
    return;
  self->due = self->interval;
  show_value (self, place, kind);
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
                             * (MOST_INTERVAL - least_interval + 1));
  self->due = self->interval;
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

/* Decimals of a decimal step: 0.001 → 3. */
static int
decimals_of (double step)
{
  int decimals = 0;

  for (; step < 0.5; step *= 10)
    decimals++;
  return decimals;
}

static void
append_line (GString               *out,
             const RwPracticeShown *shown)
{
  const double unit = shown->milli ? 1000 : 1;
  char format[16], number[G_ASCII_DTOSTR_BUF_SIZE] = "OL";

  if (!shown->over)
    {
      g_snprintf (format, sizeof format, "%%.%df", decimals_of (shown->step * unit));
      g_ascii_formatd (number, sizeof number, format, shown->value * unit);
    }
  g_string_append_printf (out, "%s %s %s\r\n", number, shown->milli ? "mV" : "V",
                          shown->ac ? "AC" : "DC");
}

GBytes *
rw_practice_meter_take_bytes (RwPracticeMeter *self)
{
  g_autoptr (GArray) shown = rw_practice_meter_take_shown (self);
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < shown->len; i++)
    append_line (out, &g_array_index (shown, RwPracticeShown, i));
  return g_string_free_to_bytes (out);
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
