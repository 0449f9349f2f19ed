/* chart-fixture.c: made-up sessions for the tests of the chart.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "chart-fixture.h"

#include <math.h>

static const char profile_text[] =
    "{\"id\":\"three-rails\",\"title\":\"Three rails\",\"reference\":\"p5\",\"rails\":["
    "{\"id\":\"p5\",\"label\":\"+5 V\",\"nominal\":5,\"limits\":[4.9,5.2],"
    "\"bare_limits\":[4.75,5.4],\"never_above\":5.5,\"priority\":1,\"follows_trim\":\"yes\","
    "\"feeds\":\"logic\",\"ripple_limit\":0.05},"
    "{\"id\":\"p12\",\"label\":\"+12 V\",\"nominal\":12,\"limits\":[11.4,12.8],"
    "\"bare_limits\":[11,13.5],\"never_above\":15,\"priority\":2,\"follows_trim\":\"yes\","
    "\"feeds\":\"sound\",\"ripple_limit\":0.15},"
    "{\"id\":\"m5\",\"label\":\"−5 V\",\"nominal\":-5,\"limits\":[-5.5,-4.5],"
    "\"bare_limits\":[-6,-4.4],\"never_above\":6.5,\"priority\":3,\"follows_trim\":\"unknown\","
    "\"feeds\":\"memory\"}]}";

static RwProfile *
load_profile (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) node = json_from_string (profile_text, &error);

  g_assert_no_error (error);

  RwProfile *profile = rw_profile_new_from_node (node, "fixture", &error);

  g_assert_no_error (error);
  return profile;
}

RwSession *
fixture_empty (void)
{
  g_autoptr (RwProfile) profile = load_profile ();
  GDestroyNotify free_meter = (GDestroyNotify) rw_meter_facts_free;
  g_autoptr (GPtrArray) meters = g_ptr_array_new_with_free_func (free_meter);
  g_autoptr (GDateTime) started = g_date_time_new_utc (2026, 3, 14, 9, 30, 0);

  g_ptr_array_add (meters, rw_meter_facts_new ("m1", "bench meter", 0.5, 2));
  return rw_session_new (
      rw_session_header_new (profile, "Tidepool Racer", "B-07", meters, started));
}

void
fixture_event (RwSession *session,
               RwEvent    event)
{
  rw_session_add (session, &event);
}

void
fixture_reading (RwSession  *session,
                 double      t,
                 const char *rail,
                 RwPlace     place,
                 double      value)
{
  const RwReading reading = rw_reading_make (rail, place, RW_KIND_DC, value,
                                             fabs (value) < 10 ? 0.001 : 0.01, "m1");

  fixture_event (session, rw_event_make_reading (t, &reading));
}

void
fixture_sample (RwSession  *session,
                double      t,
                const char *rail,
                RwPlace     place,
                double      value)
{
  const RwReading sample = rw_reading_make (rail, place, RW_KIND_DC, value, 0.001, "m1");

  fixture_event (session, rw_event_make_sample (t, &sample));
}

/* One set of readings at the board: what the rails are at trim setting @x volts of +5. */
static double
add_set (RwSession *session,
         double     t,
         double     x)
{
  fixture_reading (session, t, "p5", RW_PLACE_BOARD, x);
  fixture_reading (session, t + 9, "p12", RW_PLACE_BOARD, 2.36 * x + 0.05);
  fixture_reading (session, t + 17, "m5", RW_PLACE_BOARD, -1.06 * x + 0.42);
  return t + 17;
}

static void
start_bare (RwSession *session)
{
  fixture_event (session,
                 rw_event_make_setup (0, (RwSetup){ RW_SAID_YES, RW_SAID_NO, RW_SAID_NO }));
  fixture_reading (session, 12, "p5", RW_PLACE_TERMINALS, 5.06);
  fixture_reading (session, 22, "p12", RW_PLACE_TERMINALS, 12.31);
  fixture_reading (session, 31, "m5", RW_PLACE_TERMINALS, -4.98);
  fixture_event (session,
                 rw_event_make_setup (58, (RwSetup){ RW_SAID_YES, RW_SAID_YES, RW_SAID_NOT }));
}

RwSession *
fixture_trims (void)
{
  static const double settings[] = { 4.93, 4.99, 5.17, 5.11, 5.08 };
  RwSession *session = fixture_empty ();
  double t = 70;

  start_bare (session);
  t = add_set (session, t, 4.83);
  fixture_event (session, rw_event_make_symptom (t + 6, "resets", RW_SYMPTOM_PRESENT));
  fixture_event (session, rw_event_make_mark (t + 16, "reset seen"));
  t += 30;
  for (guint i = 0; i < G_N_ELEMENTS (settings); i++)
    {
      fixture_event (session, rw_event_make_trim (t));
      t = add_set (session, t + 8, settings[i]) + 14;
    }
  fixture_event (session, rw_event_make_note (t - 4, "fan is noisy"));
  fixture_reading (session, t + 6, "p5", RW_PLACE_TERMINALS, 5.21);
  fixture_event (session, rw_event_make_repair (t + 24, "edge-connector", RW_REPAIR_FIXED));
  t = add_set (session, t + 40, 5.08);
  fixture_event (session, rw_event_make_mark (
                              t + 8, "ran ten minutes without a reset, attract mode, sound on"));
  return session;
}

RwSession *
fixture_stream (guint n)
{
  RwSession *session = fixture_empty ();
  g_autoptr (GRand) random = g_rand_new_with_seed (7);
  double t = 2;

  fixture_event (session,
                 rw_event_make_setup (0, (RwSetup){ RW_SAID_YES, RW_SAID_YES, RW_SAID_NO }));
  for (guint i = 0; i < n; i++)
    {
      const double share = (double) i / n,
                   noise = g_rand_double_range (random, -1, 1) * g_rand_double (random);
      const double spike = i == n / 5 ? 0.9 : i == n / 2 ? -3 : 0;

      fixture_sample (session, t, "p5", RW_PLACE_BOARD,
                      5.0 + 0.09 * exp (-4 * share) + (share > 0.7 ? 0.05 : 0) + 0.02 * noise
                          + spike);
      if (i == n / 3)
        {
          fixture_event (session, rw_event_make_gap (t + 0.2, "m1", "unplugged"));
          t += 11;
        }
      if (i == n * 7 / 10)
        fixture_event (session, rw_event_make_trim (t));
      t += 0.1;
    }
  fixture_reading (session, t, "p5", RW_PLACE_BOARD, 5.05);
  fixture_event (session, rw_event_make_mark (t, "settled"));
  return session;
}

static void
add_kind (RwSession  *session,
          double      t,
          const char *rail,
          RwPlace     place,
          RwKind      kind,
          double      value)
{
  const RwReading reading = rw_reading_make (rail, place, kind, value, 0.001, "m1");

  fixture_event (session, rw_event_make_reading (t, &reading));
}

RwSession *
fixture_oddities (void)
{
  RwSession *session = fixture_empty ();

  fixture_reading (session, 5, "p5", RW_PLACE_BOARD, 5.02);
  fixture_reading (session, 15, "p12", RW_PLACE_BOARD, 0.31);
  fixture_reading (session, 25, "m5", RW_PLACE_BOARD, NAN);
  fixture_reading (session, 35, "p5", RW_PLACE_CHIP, 4.91);
  add_kind (session, 45, "p5", RW_PLACE_BOARD, RW_KIND_RIPPLE, 0.031);
  add_kind (session, 55, "p5", RW_PLACE_WIRE, RW_KIND_DC, 0.14);
  add_kind (session, 65, RW_RAIL_GROUND, RW_PLACE_WIRE, RW_KIND_DC, 0.021);
  add_kind (session, 75, "heater", RW_PLACE_TERMINALS, RW_KIND_DC, 6.3);
  add_kind (session, 85, "p5", RW_PLACE_BOARD, RW_KIND_OHMS, 12);
  fixture_reading (session, 95, "p12", RW_PLACE_BOARD, 12.1);
  fixture_reading (session, 105, "m5", RW_PLACE_BOARD, -5.02);
  return session;
}

static RwEvent
random_event (RwSession *session,
              GRand     *random,
              double     t)
{
  static const char *const rails[] = { "p5", "p12", "m5", RW_RAIL_GROUND, "heater" };
  const guint n = rw_session_get_n_events (session);
  const char *rail = rails[g_rand_int_range (random, 0, G_N_ELEMENTS (rails))];
  const double value = g_rand_int_range (random, 0, 12) == 0
                           ? (double) NAN
                           : g_rand_double_range (random, -6, 14);
  const RwReading reading = rw_reading_make (
      rail, (RwPlace) g_rand_int_range (random, 0, RW_N_PLACES), RW_KIND_DC, value, 0.01,
      g_rand_boolean (random) ? "m1" : NULL);

  switch (g_rand_int_range (random, 0, 20))
    {
    case 0:
      return rw_event_make_trim (t);
    case 1:
      return rw_event_make_mark (t, "here");
    case 2:
      return rw_event_make_gap (t, "m1", "unplugged");
    case 3:
      return rw_event_make_setup (t, (RwSetup){ g_rand_int_range (random, -1, 2),
                                                g_rand_int_range (random, -1, 2),
                                                g_rand_int_range (random, -1, 2) });
    case 4:
      return rw_event_make_note (t, "said");
    case 5:
      return n > 0 ? rw_event_make_retract (t, (guint) g_rand_int_range (random, 1, (int) n + 1))
                   : rw_event_make_trim (t);
    case 6:
      return rw_event_make_symptom (t, "hum", RW_SYMPTOM_CURED);
    case 7:
    case 8:
    case 9:
      return rw_event_make_reading (t, &reading);
    default:
      return rw_event_make_sample (t, &reading);
    }
}

double
fixture_add_random (RwSession *session,
                    GRand     *random,
                    double     t)
{
  const double later = t + (g_rand_int_range (random, 0, 10) == 0 ? 8 : g_rand_double (random));

  fixture_event (session, random_event (session, random, later));
  return later;
}

RwSession *
fixture_random (guint32 seed,
                guint   n)
{
  RwSession *session = fixture_empty ();
  g_autoptr (GRand) random = g_rand_new_with_seed (seed);
  double t = 0;

  for (guint i = 0; i < n; i++)
    t = fixture_add_random (session, random, t);
  return session;
}
