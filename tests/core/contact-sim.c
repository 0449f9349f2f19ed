/* contact-sim.c: hands with leads and a meter, simulated: streams of contacts whose truth is known.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The leads see, in steps of 10 ms: in the air a wandering ±0.3 V (first-order, 0.5–4 s) or 50 Hz pick-up that
 * the meter shows as a beat; on a spot its volts. The meter: a first-order filter of 0.2–0.8 s, 2–10 readings a
 * second, 2000–50000 counts, a range by itself (up at overload, with an OL or one wild value; down below 9 %;
 * each range has an error of its own of up to two counts) or a fixed one, noise of up to 1.5 counts (standard deviation: six counts from end to end).
 */
#include "config.h"

#include "contact-sim.h"

#include <math.h>

static const double tick = 0.01; /* seconds */

struct _ContactSim
{
  GRand   *random; /* borrowed */
  double   t, next;
  double   rate, tau, counts, lowest, noise;
  gboolean ranges;
  int      range;
  double   range_error[8]; /* counts */
  double   held;           /* volts behind the filter */
  double   air, air_tau;
  gboolean pickup;
  double   beat, beat_size;
};

/* One contact in the making. */
typedef struct
{
  SimKind kind;
  double  volts, to_go, tau, ripple, hertz, phase;
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
  static const char *const names[] = { "plain", "skid", "slow", "ripple", "turn", "drop", "dead" };

  return names[kind];
}

ContactSim *
contact_sim_new (GRand *random)
{
  static const double counts[] = { 2000, 4000, 6000, 10000, 22000, 50000 };
  ContactSim *self = g_new0 (ContactSim, 1);

  self->random = random;
  self->rate = chance (self, 0.5) ? uniform (self, 2, 5) : uniform (self, 2, 10);
  self->tau = uniform (self, 0.2, 0.8);
  self->counts = counts[g_rand_int_range (random, 0, G_N_ELEMENTS (counts))];
  self->lowest = self->counts / (self->counts < 10000 ? 10000 : 100000);
  self->noise = chance (self, 0.7) ? uniform (self, 0, 0.5) : uniform (self, 0.5, 1.5);
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

/* What the display makes of what the filter holds. */
static SimSample
show (ContactSim *self,
      double      ripple,
      gboolean    touched)
{
  SimSample sample = { .t = self->t, .quiet = self->held, .touched = touched };
  const gboolean up = self->ranges && fabs (self->held) > full_scale (self) && self->range < 5;

  if (!up && self->ranges && self->range > 0 && fabs (self->held) < 0.09 * full_scale (self))
    self->range--;
  sample.step = full_scale (self) / self->counts;
  sample.shown = NAN;
  if (fabs (self->held) <= full_scale (self))
    sample.shown = round ((self->held + ripple) / sample.step + self->range_error[self->range] + self->noise * normal (self))
                   * sample.step;
  if (up)
    {
      while (fabs (self->held) > full_scale (self))
        self->range++;
      if (chance (self, 0.3))
        sample.shown = round (uniform (self, -1, 1) * self->counts) * sample.step;
    }
  return sample;
}

static double
leads_in_air (ContactSim *self)
{
  self->air += -self->air * tick / self->air_tau + 0.12 * sqrt (2 * tick / self->air_tau) * normal (self);
  self->air = CLAMP (self->air, -0.3, 0.3);
  return self->pickup ? self->beat_size * sin (2 * G_PI * self->beat * self->t) : self->air;
}

static double
volts_of (const Spot *spot,
          double      since)
{
  double volts = spot->volts - spot->to_go * exp (-since / spot->tau);

  if (spot->turn_seconds > 0 && since > spot->turn_at)
    volts += spot->turn_by * MIN ((since - spot->turn_at) / spot->turn_seconds, 1);
  return volts;
}

static Spot
draw_spot (ContactSim *self)
{
  static const double rails[] = { 5, 5, 5, 12, 12, -5, -12, 24, 13 };
  const double kind = g_rand_double (self->random);
  Spot spot = { .tau = 1, .seconds = uniform (self, 6, 12), .odd_after = -1 };

  do
    spot.volts = rails[g_rand_int_range (self->random, 0, G_N_ELEMENTS (rails))] * uniform (self, 0.93, 1.05);
  while (!self->ranges && fabs (spot.volts) > 0.85 * full_scale (self));
  spot.kind = kind < 0.72   ? SIM_PLAIN
              : kind < 0.82 ? SIM_SKID
              : kind < 0.84 ? SIM_SLOW
              : kind < 0.86 ? SIM_RIPPLE
              : kind < 0.91 ? SIM_TURN
              : kind < 0.97 ? SIM_DROP
                            : SIM_DEAD;
  return spot;
}

static void
give_peculiarity (ContactSim *self,
                  Spot       *spot)
{
  switch (spot->kind)
    {
    case SIM_SKID:
      spot->odd_after = g_rand_int_range (self->random, 1, 15);
      spot->n_odd = g_rand_int_range (self->random, 1, 3);
      break;
    case SIM_SLOW:
      spot->tau = uniform (self, 2, 12);
      spot->to_go = copysign (uniform (self, 0, 0.16) * fabs (spot->volts), spot->volts);
      spot->seconds = 8 * spot->tau + 8;
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
  const double began = self->t, keep = exp (-tick / self->tau);

  while (self->t < began + seconds)
    {
      const double input = spot != NULL ? volts_of (spot, self->t - began) : leads_in_air (self);

      self->held = input + (self->held - input) * keep;
      self->t += tick;
      if (self->t < self->next)
        continue;
      self->next = self->t + uniform (self, 0.95, 1.05) / self->rate;

      /* The beat arises in the sampling: the filter takes nothing from it. */
      const double ripple = spot == NULL ? 0
                            : spot->ripple * sin (2 * G_PI * spot->hertz * self->t + spot->phase);
      SimSample sample = show (self, ripple, spot != NULL);
      const int at = (int) (samples->len - first);

      if (spot != NULL && spot->odd_after >= 0 && at >= spot->odd_after && at < spot->odd_after + spot->n_odd)
        sample.shown = round (spot->volts * uniform (self, 0, 0.97) / sample.step) * sample.step;
      g_array_append_val (samples, sample);
    }
}

/* The last of [first, end) at which the truth is not yet there, plus one. The coarsest digit shown counts, and
 * nothing is there before the range stands. */
static guint
find_settling (GArray *samples,
               guint   first,
               guint   end,
               double  final)
{
  guint at = first;

  for (guint i = first; i < end; i++)
    {
      const SimSample *sample = &g_array_index (samples, SimSample, i);

      if (fabs (sample->quiet - final) > MAX (1.5 * sample->step, 0.0005 * fabs (final)))
        at = i + 1;
      if (i > first && sample->step != sample[-1].step)
        at = MAX (at, i);
      if (isnan (sample->shown))
        at = i + 1;
    }
  return at;
}

static void
find_turn (GArray     *samples,
           const Spot *spot,
           SimContact *contact,
           double      touched_at)
{
  contact->turn_first = contact->turn_end = contact->end;
  if (spot->turn_seconds <= 0)
    return;
  for (guint i = contact->end; i-- > contact->first;)
    {
      const double since = g_array_index (samples, SimSample, i).t - touched_at;

      if (since > spot->turn_at)
        contact->turn_first = i;
      if (since > spot->turn_at + spot->turn_seconds)
        contact->turn_end = i;
    }
  contact->final = spot->volts + spot->turn_by;
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
  self->beat_size = uniform (self, 0.02, 0.3);
  run (self, samples, NULL, uniform (self, 0.8, 3));

  const double touched_at = self->t;

  *contact = (SimContact){ .kind = spot.kind, .rate = self->rate, .tau = self->tau, .noise = self->noise, .first = samples->len,
                           .final = spot.volts, .before = spot.volts };
  run (self, samples, &spot, spot.seconds);
  contact->end = samples->len;
  find_turn (samples, &spot, contact, touched_at);
  contact->settles = find_settling (samples, contact->first, contact->turn_first, contact->before);
  contact->settles_again = find_settling (samples, contact->turn_end, contact->end, contact->final);
  run (self, samples, NULL, uniform (self, 0.6, 2));
}
