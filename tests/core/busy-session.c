/* busy-session.c: sessions made at random that look like work at a cabinet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "busy-session.h"

#include <math.h>

#include "fixtures.h"

static const char *const rails[] = { "p5", "p12", "m5" };
static const double nominal[] = { 5.02, 11.9, -4.97 }, slopes[] = { 1, 2.4, -0.9 };

/* Of the meter's last digits. */
static const double step = 0.001, counts = 2;

typedef struct
{
  RwSession       *session;
  GRand           *random;
  const BusyStyle *style;
  double           t;
  double           x;    /* volts of +5 V over its nominal ones */
  guint            n_readings;
} Busy;

static gboolean
one_in (Busy *self,
        int   n)
{
  return g_rand_int_range (self->random, 0, n) == 0;
}

static void
add (Busy   *self,
     RwEvent event)
{
  rw_session_add (self->session, &event);
}

static double
volts_of (Busy   *self,
          guint   rail,
          RwPlace place)
{
  const double slope = slopes[rail] * (rail == 1 ? self->style->slope : 1);
  const double creeps = rail == 1 ? self->style->drift * self->n_readings : 0;
  const double lost = place == RW_PLACE_TERMINALS ? 0.05 : place == RW_PLACE_CHIP ? -0.02 : 0;
  const double error = g_rand_double_range (self->random, -1, 1) * counts * step * self->style->noise;

  return nominal[rail] + slope * self->x + creeps + (rail == 2 ? -lost : lost) + error;
}

static RwReading
make_reading (Busy *self)
{
  static const char *const meters[] = { "m1", "m1", "m1", "m1", "m2", NULL };
  const guint rail = (guint) g_rand_int_range (self->random, 0, 3);
  const RwPlace place = self->style->places > 1 ? (RwPlace) g_rand_int_range (self->random, 0, RW_N_PLACES) : RW_PLACE_BOARD;
  const double volts = place == RW_PLACE_WIRE ? g_rand_double_range (self->random, 0, 0.1) : volts_of (self, rail, place);

  return rw_reading_make (place == RW_PLACE_WIRE && one_in (self, 2) ? "gnd" : rails[rail], place, RW_KIND_DC,
                          round (volts / step) * step, step,
                          self->style->places > 1 ? meters[g_rand_int_range (self->random, 0, G_N_ELEMENTS (meters))] : "m1");
}

static void
spoil (Busy      *self,
       RwReading *reading)
{
  switch (g_rand_int_range (self->random, 0, 9))
    {
    case 0:
      reading->over = TRUE;
      reading->value = NAN;
      break;
    case 1:
      reading->value = -reading->value;
      break;
    case 2:
      reading->value *= 10;
      break;
    case 3:
      reading->value += g_rand_double_range (self->random, -0.3, 0.3);
      break;
    case 4:
      reading->rail = g_intern_string (rails[g_rand_int_range (self->random, 0, 3)]);
      break;
    case 5:
      reading->kind = (RwKind) g_rand_int_range (self->random, 0, RW_N_KINDS);
      break;
    case 6:
      reading->low_battery = TRUE;
      break;
    case 7:
      reading->u = g_rand_double_range (self->random, 0, 0.01);
      break;
    default:
      reading->value *= 0.3;
      break;
    }
}

static void
read_rail (Busy    *self,
           gboolean spoilt)
{
  RwReading reading = make_reading (self);

  if (spoilt)
    spoil (self, &reading);
  self->n_readings++;
  add (self, rw_event_make_reading (self->t, &reading));
}

static void
turn (Busy *self)
{
  RwEvent event = rw_event_make_trim (self->t);

  if (one_in (self, 12))
    event.trim.moved = FALSE;
  else
    self->x = g_rand_double_range (self->random, -0.2, 0.2);
  add (self, event);
}

static void
take_back (Busy *self)
{
  const guint n = rw_session_get_n_events (self->session);

  if (n == 0)
    return;

  const guint index = !self->style->orderly && one_in (self, 4) ? (guint) g_rand_int_range (self->random, 0, (int) n) : n - 1;

  add (self, rw_event_make_retract (self->t, rw_session_get_event (self->session, index)->n));
}

static void
change (Busy *self)
{
  const RwSetup setup = { (RwSaid) g_rand_int_range (self->random, -1, 2), (RwSaid) g_rand_int_range (self->random, -1, 2),
                          (RwSaid) g_rand_int_range (self->random, -1, 2) };
  const RwMeterFacts facts = { .id = (char *) (one_in (self, 2) ? "m1" : "m2"), .name = (char *) "meter",
                               .percent = g_rand_double_range (self->random, 0, 1),
                               .counts = g_rand_int_range (self->random, 1, 5) };

  if (one_in (self, 3))
    add (self, rw_event_make_repair (self->t, "trim-low", one_in (self, 2) ? RW_REPAIR_FIXED : RW_REPAIR_NO_CHANGE));
  else if (!self->style->orderly && one_in (self, 6))
    add (self, rw_event_make_meter (self->t, &facts));
  else if (one_in (self, 2))
    add (self, rw_event_make_setup (self->t, (RwSetup){ RW_SAID_YES, RW_SAID_YES, RW_SAID_NOT }));
  else
    add (self, rw_event_make_setup (self->t, setup));
}

static void
do_other (Busy *self)
{
  const RwReading sample = make_reading (self);

  switch (g_rand_int_range (self->random, 0, 6))
    {
    case 0:
      add (self, rw_event_make_mark (self->t, "another look"));
      break;
    case 1:
      add (self, rw_event_make_stage (self->t, "under-load"));
      break;
    case 2:
      add (self, rw_event_make_finding (self->t, "edge-connector-look", "dark"));
      break;
    case 3:
      add (self, rw_event_make_symptom (self->t, "resets", RW_SYMPTOM_PRESENT));
      break;
    default:
      add (self, rw_event_make_sample (self->t, &sample));
      break;
    }
}

BusyStyle
busy_style (GRand *random,
            guint  n_events)
{
  static const double noises[] = { 0.8, 1, 1, 1.5, 3 }, over[] = { 0, 0.2, 0.34, 0.36, 1, 1, 1, 1.9, 2.1, 2.5 };

  return (BusyStyle){
    .n_events = n_events,
    .noise = noises[g_rand_int_range (random, 0, G_N_ELEMENTS (noises))],
    .slope = over[g_rand_int_range (random, 0, G_N_ELEMENTS (over))],
    .drift = g_rand_int_range (random, 0, 4) == 0 ? g_rand_double_range (random, -1e-4, 1e-4) : 0,
    .turns = (guint) g_rand_int_range (random, 0, 35),
    .mishaps = g_rand_boolean (random) ? 0 : (guint) g_rand_int_range (random, 1, 12),
    .retracts = (guint) g_rand_int_range (random, 0, 10),
    .changes = g_rand_boolean (random) ? 0 : (guint) g_rand_int_range (random, 1, 10),
    .others = (guint) g_rand_int_range (random, 0, 20),
    .places = g_rand_boolean (random) ? 1 : 4,
  };
}

RwSession *
busy_session_new (GRand           *random,
                  const BusyStyle *style)
{
  Busy self = { .session = fixture_session (), .random = random, .style = style };

  while (rw_session_get_n_events (self.session) < style->n_events)
    {
      guint what = (guint) g_rand_int_range (random, 0, 100);

      self.t += g_rand_double_range (random, 0, one_in (&self, 10) ? 90 : 8);
      if (what < style->turns)
        turn (&self);
      else if ((what -= style->turns) < style->mishaps)
        read_rail (&self, TRUE);
      else if ((what -= style->mishaps) < style->retracts)
        take_back (&self);
      else if ((what -= style->retracts) < style->changes)
        change (&self);
      else if ((what -= style->changes) < style->others)
        do_other (&self);
      else
        read_rail (&self, FALSE);
    }
  return self.session;
}
