/* contact-sim.c: hands with leads and a meter, simulated: streams of contacts whose truth is known.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The leads see, in steps of 10 ms: in the air a wandering ±0.5 V (first-order, 0.5–4 s) or 50 Hz pick-up that
 * the meter shows as a beat; on a spot its volts. The meter: a filter (SimMeter), 2–10 readings a second,
 * 2000–50000 counts, a range by itself (up at overload, with one or two OL or wild values; down below 9 %;
 * each range has an error of its own of up to two counts) or a fixed one, noise of up to 1.5 counts (standard
 * deviation: six counts from end to end), up to 2 on a meter of 10000 counts and more.
 */
#include "config.h"

#include "contact-sim.h"

#include <math.h>

enum
{
  MOST_CONVERSIONS = 4
};

static const double tick = 0.01; /* seconds */

struct _ContactSim
{
  GRand   *random; /* borrowed */
  double   t, next;
  SimMeter meter;
  double   rate, tau, counts, lowest, noise;
  gboolean ranges;
  int      range;
  guint    n_wild;         /* values to come that mean nothing */
  double   range_error[8]; /* counts */
  double   filtered;       /* volts */
  double   sum;            /* volts × ticks of the conversion that runs */
  guint    n_ticks;
  double   conversions[MOST_CONVERSIONS]; /* newest first */
  guint    n_mean;
  double   held; /* what the display makes its digits of */
  double   air, air_tau;
  gboolean pickup;
  double   beat, beat_size;
};

/* One contact in the making. */
typedef struct
{
  SimKind kind;
  double  volts, to_go, tau, drift, ripple, hertz, phase;
  double  off_from, off_until, off_level; /* seconds after the touch; share of the volts */
  double  turn_at, turn_seconds, turn_by;
  double  seconds;
  int     odd_after; /* samples after the touch; −1: never */
  int     n_odd;
} Spot;

static double
uniform (ContactSim *self,
         double      low,
         double      high)
{
  return g_rand_double_range (self->random, low, high);
}

static gboolean
chance (ContactSim *self,
        double      p)
{
  return g_rand_double (self->random) < p;
}

static double
normal (ContactSim *self)
{
  const double u = 1 - g_rand_double (self->random), v = g_rand_double (self->random);

  return sqrt (-2 * log (u)) * cos (2 * G_PI * v);
}

const char *
contact_sim_kind_name (SimKind kind)
{
  static const char *const names[]
      = { "plain", "glitch", "slip", "double", "slow", "warm", "ripple", "turn", "drop", "dead" };

  return names[kind];
}

const char *
contact_sim_meter_name (SimMeter meter)
{
  static const char *const names[] = { "filter", "boxcar", "bare" };

  return names[meter];
}

ContactSim *
contact_sim_new (GRand *random)
{
  static const double counts[] = { 2000, 4000, 6000, 10000, 22000, 50000 };
  static const SimMeter meters[] = { SIM_FILTER, SIM_FILTER, SIM_BOXCAR, SIM_BARE };
  ContactSim *self = g_new0 (ContactSim, 1);

  self->random = random;
  self->meter = meters[g_rand_int_range (random, 0, G_N_ELEMENTS (meters))];
  self->rate = chance (self, 0.5) ? uniform (self, 2, 5) : uniform (self, 2, 10);
  self->tau = uniform (self, 0.2, 0.8);
  self->n_mean = self->meter == SIM_BOXCAR ? (guint) g_rand_int_range (random, 2, 5) : 1;
  self->counts = counts[g_rand_int_range (random, 0, G_N_ELEMENTS (counts))];
  self->lowest = self->counts / (self->counts < 10000 ? 10000 : 100000);
  self->noise = chance (self, 0.7) ? uniform (self, 0, 0.5) : uniform (self, 0.5, self->counts < 10000 ? 1.5 : 2);
  self->ranges = chance (self, 0.75);
  self->range = self->ranges ? 0 : 2;
  for (guint i = 0; i < G_N_ELEMENTS (self->range_error); i++)
    self->range_error[i] = uniform (self, -2, 2);
  self->air_tau = uniform (self, 0.5, 4);
  return self;
}

void
contact_sim_free (ContactSim *self)
{
  g_free (self);
}

static double
full_scale (const ContactSim *self)
{
  return self->lowest * pow (10, self->range);
}

/* A tick of volts at the leads. */
static void
take_in (ContactSim *self,
         double      volts)
{
  self->filtered = volts + (self->filtered - volts) * exp (-tick / self->tau);
  self->sum += volts;
  self->n_ticks++;
  self->t += tick;
}

/* The end of a conversion. */
static void
convert (ContactSim *self)
{
  double sum = 0;

  for (guint i = MOST_CONVERSIONS; --i > 0;)
    self->conversions[i] = self->conversions[i - 1];
  self->conversions[0] = self->sum / self->n_ticks;
  self->sum = 0;
  self->n_ticks = 0;
  for (guint i = 0; i < self->n_mean; i++)
    sum += self->conversions[i];
  self->held = self->meter == SIM_FILTER ? self->filtered : sum / self->n_mean;
}

/* What the display makes of what the filter holds. */
static SimSample
show (ContactSim *self,
      double      ripple,
      gboolean    touched)
{
  SimSample sample = { .t = self->t, .quiet = self->held, .touched = touched, .shown = NAN };
  const gboolean up = self->ranges && fabs (self->held) > full_scale (self) && self->range < 5;

  if (!up && self->ranges && self->range > 0 && fabs (self->held) < 0.09 * full_scale (self))
    self->range--;
  sample.step = full_scale (self) / self->counts;
  sample.offset = self->range_error[self->range] * sample.step;
  if (up)
    self->n_wild = 1 + chance (self, 0.4);
  while (up && fabs (self->held) > full_scale (self))
    self->range++;
  if (self->n_wild > 0)
    {
      self->n_wild--;
      sample.wild = TRUE;
      if (chance (self, 0.3))
        sample.shown = round (uniform (self, -1, 1) * self->counts) * sample.step;
    }
  else if (fabs (self->held) <= full_scale (self))
    sample.shown = round ((self->held + ripple + sample.offset) / sample.step + self->noise * normal (self)) * sample.step;
  return sample;
}

static double
leads_in_air (ContactSim *self)
{
  self->air += -self->air * tick / self->air_tau + 0.17 * sqrt (2 * tick / self->air_tau) * normal (self);
  self->air = CLAMP (self->air, -0.5, 0.5);
  return self->pickup ? self->beat_size * sin (2 * G_PI * self->beat * self->t) : self->air;
}

/* What the spot shows in the end, as it is turned and as it drifts. */
static double
aim_of (const Spot *spot,
        double      since)
{
  double volts = spot->volts * (1 + spot->drift * since);

  if (spot->turn_seconds > 0 && since > spot->turn_at)
    volts += spot->turn_by * MIN ((since - spot->turn_at) / spot->turn_seconds, 1);
  return volts;
}

static double
volts_of (const Spot *spot,
          double      since)
{
  const double volts = aim_of (spot, since) - spot->to_go * exp (-since / spot->tau);

  return since >= spot->off_from && since < spot->off_until ? volts * spot->off_level : volts;
}

static SimKind
draw_kind (ContactSim *self)
{
  static const double shares[SIM_N_KINDS] = { 0.60, 0.06, 0.05, 0.04, 0.03, 0.03, 0.03, 0.06, 0.06, 0.04 };
  double p = g_rand_double (self->random);
  guint kind = 0;

  while (kind < SIM_N_KINDS - 1 && p >= shares[kind])
    p -= shares[kind++];
  return kind;
}

static Spot
draw_spot (ContactSim *self)
{
  static const double rails[] = { 5, 5, 5, 12, 12, -5, -12, 24, 13 };
  Spot spot = { .tau = 1, .seconds = uniform (self, 6, 12), .odd_after = -1 };

  do
    spot.volts = rails[g_rand_int_range (self->random, 0, G_N_ELEMENTS (rails))] * uniform (self, 0.93, 1.05);
  while (!self->ranges && fabs (spot.volts) > 0.85 * full_scale (self));
  spot.kind = draw_kind (self);
  return spot;
}

static void
leave_and_return (ContactSim *self,
                  Spot       *spot)
{
  if (spot->kind == SIM_SLIP)
    {
      spot->off_from = uniform (self, 0.5, 5);
      spot->off_until = spot->off_from + uniform (self, 0.1, 0.4);
      spot->off_level = uniform (self, 0, 0.97);
    }
  else
    {
      spot->off_from = uniform (self, 0.1, 0.6);
      spot->off_until = spot->off_from + uniform (self, 0.1, 0.45);
      spot->off_level = uniform (self, -0.02, 0.02);
    }
}

static void
give_peculiarity (ContactSim *self,
                  Spot       *spot)
{
  switch (spot->kind)
    {
    case SIM_GLITCH:
      spot->odd_after = g_rand_int_range (self->random, 1, 15);
      spot->n_odd = g_rand_int_range (self->random, 1, 3);
      break;
    case SIM_SLIP:
    case SIM_DOUBLE:
      leave_and_return (self, spot);
      break;
    case SIM_SLOW:
      spot->tau = uniform (self, 2, 12);
      spot->to_go = uniform (self, 0, 0.16) * spot->volts;
      spot->seconds = 8 * spot->tau + 8;
      break;
    case SIM_WARM:
      spot->drift = (chance (self, 0.5) ? 1 : -1) * 0.001 / 60;
      spot->seconds = uniform (self, 20, 40);
      break;
    case SIM_RIPPLE:
      spot->ripple = uniform (self, 0.001, 0.006) * fabs (spot->volts);
      spot->hertz = uniform (self, 0.03, 0.5) * self->rate;
      spot->phase = uniform (self, 0, 6.28);
      spot->seconds = 8 + 40 / self->rate;
      break;
    case SIM_TURN:
      spot->turn_at = uniform (self, 8, 12);
      spot->turn_seconds = uniform (self, 1, 4);
      spot->turn_by = (chance (self, 0.5) ? 1 : -1) * uniform (self, 0.012, 0.05) * spot->volts;
      spot->seconds = spot->turn_at + spot->turn_seconds + 10;
      break;
    case SIM_DROP:
      spot->volts = uniform (self, 0.005, 0.3);
      spot->seconds = 12;
      break;
    case SIM_DEAD:
      spot->volts = 0;
      spot->seconds = 12;
      break;
    case SIM_PLAIN:
    case SIM_N_KINDS:
    default:
      break;
    }
}

/* @spot NULL: in the air. */
static void
run (ContactSim *self,
     GArray     *samples,
     const Spot *spot,
     double      seconds)
{
  const guint first = samples->len;
  const double began = self->t;

  while (self->t < began + seconds)
    {
      take_in (self, spot != NULL ? volts_of (spot, self->t - began) : leads_in_air (self));
      if (self->t < self->next)
        continue;
      self->next = self->t + uniform (self, 0.95, 1.05) / self->rate;
      convert (self);

      /* The beat arises in the sampling: the filter takes nothing from it. */
      const double ripple = spot == NULL ? 0
                            : spot->ripple * sin (2 * G_PI * spot->hertz * self->t + spot->phase);
      SimSample sample = show (self, ripple, spot != NULL);
      const int at = (int) (samples->len - first);

      sample.aim = spot != NULL ? aim_of (spot, self->t - began) : 0;
      if (spot != NULL && spot->odd_after >= 0 && at >= spot->odd_after && at < spot->odd_after + spot->n_odd)
        sample.shown = round (spot->volts * uniform (self, 0, 0.97) / sample.step) * sample.step;
      g_array_append_val (samples, sample);
    }
}

/* The last of [first, end) at which the truth is not yet there, plus one. The coarsest digit shown counts, and
 * nothing is there before the range stands. */
static SimRest
find_rest (GArray *samples,
           guint   first,
           guint   end)
{
  guint at = first;

  for (guint i = first; i < end; i++)
    {
      const SimSample *sample = &g_array_index (samples, SimSample, i);

      if (fabs (sample->quiet - sample->aim) > MAX (1.5 * sample->step, 0.0005 * fabs (sample->aim)))
        at = i + 1;
      if (i > first && sample->step != sample[-1].step)
        at = MAX (at, i);
      if (sample->wild || isnan (sample->shown))
        at = i + 1;
    }
  return (SimRest){ at, end };
}

/* The first sample at least @seconds after the touch. */
static guint
find_sample (GArray           *samples,
             const SimContact *contact,
             double            t)
{
  guint i = contact->first;

  while (i < contact->end && g_array_index (samples, SimSample, i).t <= t)
    i++;
  return i;
}

static void
find_rests (GArray     *samples,
            const Spot *spot,
            SimContact *contact,
            double      touched_at)
{
  contact->n_rests = 1;
  contact->rests[0] = find_rest (samples, contact->first, contact->end);
  if (spot->turn_seconds > 0)
    {
      const double turned = touched_at + spot->turn_at + spot->turn_seconds;

      contact->rests[0] = find_rest (samples, contact->first, find_sample (samples, contact, touched_at + spot->turn_at));
      contact->rests[1] = find_rest (samples, find_sample (samples, contact, turned), contact->end);
      contact->n_rests = 2;
    }
  if (spot->off_until > 0)
    {
      /* Long enough at rest before it left: that one counts. */
      const SimRest before
          = find_rest (samples, contact->first, find_sample (samples, contact, touched_at + spot->off_from));

      if (before.settles + 5 <= before.end)
        contact->rests[0].settles = before.settles;
    }
}

void
contact_sim_next (ContactSim *self,
                  GArray     *samples,
                  SimContact *contact)
{
  Spot spot = draw_spot (self);

  g_array_set_size (samples, 0);
  give_peculiarity (self, &spot);
  self->pickup = chance (self, 0.25);
  self->beat = uniform (self, 0.03, 0.5) * self->rate;
  self->beat_size = uniform (self, 0.02, 0.5);
  run (self, samples, NULL, uniform (self, 0.8, 3));

  const double touched_at = self->t;

  *contact = (SimContact){ .kind = spot.kind, .meter = self->meter, .rate = self->rate, .tau = self->tau,
                           .noise = self->noise, .first = samples->len };
  run (self, samples, &spot, spot.seconds);
  contact->end = samples->len;
  find_rests (samples, &spot, contact, touched_at);
  run (self, samples, NULL, uniform (self, 0.6, 2));
}
