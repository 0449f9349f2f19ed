/* test-rail-guess.c: which rail are the leads on? What is told apart, what is not, and how often it is right.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The study draws cabinets of four rails with faults and drops, a history of readings and turns of the trim, and a
 * person who mostly touches what was asked. It knows nothing of the densities behind the guess.
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "fixtures.h"
#include "rw-rail-guess.h"

#define RAIL(id, volts, limits, bare, follows)                                                       \
  "{\"id\":\"" id "\",\"label\":\"" id "\",\"nominal\":" volts ",\"limits\":" limits ",\"bare_limits\":" bare \
  ",\"priority\":1,\"follows_trim\":\"" follows "\",\"feeds\":\"x\"}"

static const char twins[] =
  "{\"railwright\":1,\"id\":\"0b7f\",\"started\":\"2026-03-14T09:30:00Z\",\"cabinet\":{\"name\":\"Gull Chase\"},"
  "\"meters\":[{\"id\":\"m1\",\"name\":\"bench meter\",\"percent\":0.5,\"counts\":2}],\"profile\":"
  "{\"id\":\"twins\",\"title\":\"Twins\",\"reference\":\"p5\",\"rails\":["
  RAIL ("p5", "5", "[4.9,5.2]", "[4.75,5.4]", "yes") "," RAIL ("p12", "12", "[10.8,13.2]", "[10,14]", "yes") ","
  RAIL ("p13", "13", "[11.7,15]", "[11.7,16]", "no") "," RAIL ("m5", "-5", "[-5.5,-4.5]", "[-6.5,-4.5]", "yes") "]}}";

static const double nominals[] = { 5, 12, 13, -5 };
static const char *const rail_ids[] = { "p5", "p12", "p13", "m5" };

enum
{
  N_RAILS = 4,
  MOST_GUESSES = 64
};

static RwSession *
begin (RwSaid board)
{
  g_autoptr (GError) error = NULL;
  RwSessionHeader *header = rw_session_header_from_line (twins, strlen (twins), &error);

  g_assert_no_error (error);

  RwSession *session = rw_session_new (header);
  RwEvent setup = rw_event_make_setup (0, (RwSetup){ RW_SAID_YES, board, RW_SAID_NOT });

  rw_session_add (session, &setup);
  return session;
}

static void
read_at (RwSession  *session,
         const char *rail,
         RwPlace     place,
         double      value)
{
  const RwReading reading = rw_reading_make (g_intern_string (rail), place, RW_KIND_DC, value, 0.001,
                                             g_intern_string ("m1"));
  RwEvent event = rw_event_make_reading (rw_session_get_end (session) + 5, &reading);

  rw_session_add (session, &event);
}

static void
turn (RwSession *session)
{
  RwEvent event = rw_event_make_trim (rw_session_get_end (session) + 5);

  rw_session_add (session, &event);
}

/* The first of the guesses; all of them add up to 1. */
static RwRailGuess
guess (RwSession  *session,
       const char *asked,
       RwPlace     place,
       RwKind      kind,
       double      value)
{
  g_autoptr (RwBenchState) state = rw_bench_state_new (session);
  const RwRailGuessInput input = { .state = state, .asked_rail = g_intern_string (asked), .asked_place = place,
                                   .kind = kind, .value = value, .u = 0.016, .u_own = 0.0012 };
  RwRailGuess guesses[MOST_GUESSES];
  const guint n = rw_rail_guess (&input, guesses, MOST_GUESSES);
  double sum = 0;

  g_assert_cmpuint (n, >=, 1);
  g_assert_cmpuint (n, <, MOST_GUESSES);
  for (guint i = 0; i < n; i++)
    {
      g_assert_cmpfloat (guesses[i].p, >=, 0);
      if (i > 0)
        g_assert_cmpfloat (guesses[i].p, <=, guesses[i - 1].p);
      sum += guesses[i].p;
    }
  g_assert_cmpfloat_with_epsilon (sum, 1, 1e-12);
  return guesses[0];
}

static void
assert_guess (const RwRailGuess *it,
              const char        *rail,
              RwPlace            place,
              gboolean           reversed)
{
  g_test_message ("%s at %s%s: %.4f", it->rail != NULL ? it->rail : "none", rw_place_to_id (it->place),
                  it->reversed ? ", reversed" : "", it->p);
  g_assert_cmpstr (it->rail, ==, rail);
  g_assert_cmpint (it->place, ==, place);
  g_assert_cmpint (it->reversed, ==, reversed);
}

/* --- what is told apart ------------------------------------------------------------------------- */

static void
test_bare_supply (void)
{
  g_autoptr (RwSession) session = begin (RW_SAID_NO);
  const RwRailGuess asked = guess (session, "p5", RW_PLACE_TERMINALS, RW_KIND_DC, 5.06);
  const RwRailGuess other = guess (session, "p12", RW_PLACE_TERMINALS, RW_KIND_DC, 5.06);

  assert_guess (&asked, "p5", RW_PLACE_TERMINALS, FALSE);
  g_assert_cmpfloat (asked.p, >=, RW_RAIL_GUESS_SURE);
  assert_guess (&other, "p5", RW_PLACE_TERMINALS, FALSE);
}

static void
test_reversed (void)
{
  g_autoptr (RwSession) session = begin (RW_SAID_NO);

  read_at (session, "m5", RW_PLACE_TERMINALS, -5.31);
  read_at (session, "p5", RW_PLACE_TERMINALS, 5.062);

  const RwRailGuess it = guess (session, "p12", RW_PLACE_TERMINALS, RW_KIND_DC, -12.1);

  assert_guess (&it, "p12", RW_PLACE_TERMINALS, TRUE);
  g_assert_cmpfloat (it.p, >=, RW_RAIL_GUESS_SURE);
}

/* 12.55 V may be either of two rails, and either end of the wire. */
static void
test_twins_without_knowledge (void)
{
  g_autoptr (RwSession) session = begin (RW_SAID_YES);
  const RwRailGuess it = guess (session, "p12", RW_PLACE_TERMINALS, RW_KIND_DC, 12.55);

  assert_guess (&it, "p12", RW_PLACE_TERMINALS, FALSE);
  g_assert_cmpfloat (it.p, <, RW_RAIL_GUESS_SURE);
}

/* Two positions of the screw give every rail its line; then the reference is turned up to 5.15. p12 follows to
 * 12.55, p13 does not: it stays at 12.9. */
static void
lay_lines (RwSession *session,
           RwPlace    place)
{
  static const double xs[] = { 4.95, 5.05 };

  for (guint i = 0; i < G_N_ELEMENTS (xs); i++)
    {
      read_at (session, "p5", place, xs[i]);
      read_at (session, "p12", place, 12.55 + 2.4 * (xs[i] - 5.15));
      read_at (session, "p13", place, 12.9);
      turn (session);
    }
  read_at (session, "p5", place, 5.15);
}

static void
test_twins_with_lines (void)
{
  g_autoptr (RwSession) session = begin (RW_SAID_YES);

  lay_lines (session, RW_PLACE_TERMINALS);

  const RwRailGuess low = guess (session, "p12", RW_PLACE_TERMINALS, RW_KIND_DC, 12.549);
  const RwRailGuess high = guess (session, "p12", RW_PLACE_TERMINALS, RW_KIND_DC, 12.901);

  assert_guess (&low, "p12", RW_PLACE_TERMINALS, FALSE);
  g_assert_cmpfloat (low.p, >=, RW_RAIL_GUESS_SURE);
  assert_guess (&high, "p13", RW_PLACE_TERMINALS, FALSE);
}

static void
test_ends_of_a_wire (void)
{
  g_autoptr (RwSession) session = begin (RW_SAID_YES), knowing = begin (RW_SAID_YES), level = begin (RW_SAID_YES);
  const RwRailGuess before = guess (session, "p5", RW_PLACE_BOARD, RW_KIND_DC, 5.02);

  g_assert_cmpfloat (before.p, <, RW_RAIL_GUESS_SURE);
  assert_guess (&before, "p5", RW_PLACE_BOARD, FALSE);

  /* Both ends are known, and differ. */
  read_at (knowing, "p5", RW_PLACE_TERMINALS, 5.12);
  read_at (knowing, "p5", RW_PLACE_BOARD, 5.02);
  read_at (knowing, "p5", RW_PLACE_CHIP, 4.97);

  const RwRailGuess asked = guess (knowing, "p5", RW_PLACE_BOARD, RW_KIND_DC, 5.021);
  const RwRailGuess slipped = guess (knowing, "p5", RW_PLACE_BOARD, RW_KIND_DC, 5.119);

  assert_guess (&asked, "p5", RW_PLACE_BOARD, FALSE);
  g_assert_cmpfloat (asked.p, >=, RW_RAIL_GUESS_SURE);
  assert_guess (&slipped, "p5", RW_PLACE_TERMINALS, FALSE);
  g_assert_cmpfloat (slipped.p, >=, RW_RAIL_GUESS_SURE);

  /* A wire without a drop: its ends show the same. */
  read_at (level, "p5", RW_PLACE_TERMINALS, 5.021);
  read_at (level, "p5", RW_PLACE_BOARD, 5.02);

  const RwRailGuess same = guess (level, "p5", RW_PLACE_BOARD, RW_KIND_DC, 5.02);

  g_assert_cmpfloat (same.p, <, RW_RAIL_GUESS_SURE);
}

static void
test_air_is_no_rail (void)
{
  g_autoptr (RwSession) session = begin (RW_SAID_NO);
  const RwRailGuess it = guess (session, "p12", RW_PLACE_TERMINALS, RW_KIND_DC, 0.21);

  g_assert_false (it.rail != NULL && it.p >= RW_RAIL_GUESS_SURE);

  const RwRailGuess mains = guess (session, "p12", RW_PLACE_TERMINALS, RW_KIND_DC, 160);

  g_assert_null (mains.rail);
  g_assert_cmpfloat (mains.p, >=, RW_RAIL_GUESS_SURE);
}

/* Ohms tell nothing of a rail: what was asked stays the likeliest, and is asked about. */
static void
test_kinds_that_tell_nothing (void)
{
  g_autoptr (RwSession) session = begin (RW_SAID_NO);
  const RwRailGuess ohms = guess (session, "p12", RW_PLACE_TERMINALS, RW_KIND_OHMS, 47);
  const RwRailGuess drop = guess (session, "p5", RW_PLACE_WIRE, RW_KIND_DC, 0.08);
  const RwRailGuess ripple = guess (session, "p5", RW_PLACE_TERMINALS, RW_KIND_RIPPLE, 0.02);

  assert_guess (&ohms, "p12", RW_PLACE_TERMINALS, FALSE);
  g_assert_cmpfloat (ohms.p, <, RW_RAIL_GUESS_SURE);
  assert_guess (&drop, "p5", RW_PLACE_WIRE, FALSE);
  assert_guess (&ripple, "p5", RW_PLACE_TERMINALS, FALSE);
}

static void
test_nothing_to_guess_from (void)
{
  g_autoptr (RwSession) session = begin (RW_SAID_YES);
  g_autoptr (RwBenchState) state = rw_bench_state_new (session);
  RwRailGuessInput input = { .state = state, .asked_place = RW_PLACE_BOARD, .kind = RW_KIND_DC, .value = NAN, .u = 0.01,
                             .u_own = 0.001 };
  RwRailGuess out[2];

  g_assert_cmpuint (rw_rail_guess (&input, out, 2), ==, 0);
  input.value = 5;
  g_assert_cmpuint (rw_rail_guess (&input, out, 2), ==, 2);
  g_assert_cmpfloat (out[0].p, <, RW_RAIL_GUESS_SURE); /* nobody asked, nothing is known */
  g_assert_cmpstr (out[0].rail, ==, "p5");
}

/* --- how often it is right ---------------------------------------------------------------------- */

typedef struct
{
  GRand *random;
  double slope[N_RAILS], at5[N_RAILS], drop[N_RAILS], chip_drop[N_RAILS]; /* volts at the terminals, at x = 5 */
  double x;
  double scale;  /* of the meter */
  RwSaid board;
} Bench;

static double
uniform (Bench *self,
         double low,
         double high)
{
  return g_rand_double_range (self->random, low, high);
}

static void
bench_init (Bench *self)
{
  self->x = uniform (self, 4.9, 5.15);
  self->scale = 1 + uniform (self, -0.005, 0.005);
  self->board = uniform (self, 0, 1) < 0.8 ? RW_SAID_YES : RW_SAID_NO;
  for (guint i = 0; i < N_RAILS; i++)
    {
      const double fault = uniform (self, 0, 1);

      self->slope[i] = i == 2 ? 0 : nominals[i] / 5 * uniform (self, 0.8, 1.1);
      self->at5[i] = i == 0 ? 5 : nominals[i] * uniform (self, 0.95, 1.06);
      if (i > 0 && fault < 0.06)
        self->at5[i] *= uniform (self, 0.5, 0.95); /* low */
      else if (i > 0 && fault < 0.09)
        self->at5[i] = self->slope[i] = 0; /* dead */
      else if (i > 0 && fault < 0.11)
        self->at5[i] *= uniform (self, 1.05, 1.3); /* high */
      self->drop[i] = copysign (uniform (self, 0.005, 0.12), nominals[i]);
      if (uniform (self, 0, 1) < 0.15)
        self->drop[i] = copysign (uniform (self, 0.12, 0.4), nominals[i]); /* a tired connector */
      self->chip_drop[i] = copysign (uniform (self, 0.005, 0.08), nominals[i]);
      if (self->board == RW_SAID_NO || self->at5[i] == 0)
        self->drop[i] = self->chip_drop[i] = 0;
    }
  self->slope[0] = 1;
}

static double
show (Bench  *self,
      guint   rail,
      RwPlace place)
{
  double volts = self->at5[rail] + self->slope[rail] * (self->x - 5);

  if (place >= RW_PLACE_BOARD)
    volts -= self->drop[rail];
  if (place == RW_PLACE_CHIP)
    volts -= self->chip_drop[rail];
  return round ((volts * self->scale + uniform (self, -0.002, 0.002)) / 0.001) * 0.001;
}

typedef struct
{
  guint   rail;
  RwPlace place;
} Touch;

static Touch
draw_touch (Bench *self)
{
  return (Touch){ g_rand_int_range (self->random, 0, N_RAILS),
                  self->board == RW_SAID_NO ? RW_PLACE_TERMINALS
                                            : g_rand_int_range (self->random, 0, RW_PLACE_CHIP + 1) };
}

/* Some readings, perhaps with turns between them, each followed by the reference. */
static void
live_through (Bench     *self,
              RwSession *session)
{
  const guint turns = g_rand_int_range (self->random, 0, 3), readings = g_rand_int_range (self->random, 0, 9);

  for (guint k = 0; k <= turns; k++)
    {
      for (guint i = 0; i < readings; i++)
        {
          const Touch touch = draw_touch (self);

          read_at (session, rail_ids[touch.rail], touch.place, show (self, touch.rail, touch.place));
        }
      if (k == turns)
        break;
      turn (session);
      self->x += uniform (self, -0.1, 0.1);
      if (uniform (self, 0, 1) < 0.8)
        read_at (session, "p5", RW_PLACE_TERMINALS, show (self, 0, RW_PLACE_TERMINALS));
      if (self->board == RW_SAID_YES && uniform (self, 0, 1) < 0.8)
        read_at (session, "p5", RW_PLACE_BOARD, show (self, 0, RW_PLACE_BOARD));
    }
}

typedef struct
{
  guint touches, sure, right, best_right, asked_touched, sure_when_asked, slips, slips_caught;
} Tally;

/* @slip: 0 what was asked, 1 another place or rail, 2 reversed, 3 in the air. */
static void
judge (Tally             *tally,
       const RwRailGuess *it,
       Touch              asked,
       Touch              touched,
       gboolean           reversed,
       gboolean           air)
{
  const gboolean right = air ? it->rail == NULL
                             : g_strcmp0 (it->rail, rail_ids[touched.rail]) == 0 && it->place == touched.place
                                 && it->reversed == reversed;
  const gboolean slip = air || reversed || touched.rail != asked.rail || touched.place != asked.place;
  const gboolean sure = it->p >= RW_RAIL_GUESS_SURE;

  tally->touches++;
  tally->best_right += right;
  tally->sure += sure;
  tally->right += sure && right;
  tally->asked_touched += !slip;
  tally->sure_when_asked += !slip && sure;
  tally->slips += slip;
  tally->slips_caught += slip && (!sure || right);
}

static void
touch_once (Tally *tally,
            GRand *random)
{
  Bench bench = { .random = random };

  bench_init (&bench);

  g_autoptr (RwSession) session = begin (bench.board);

  live_through (&bench, session);

  const Touch asked = draw_touch (&bench);
  const double how = uniform (&bench, 0, 1);
  const gboolean air = how > 0.98, reversed = !air && how > 0.95;
  Touch touched = asked;

  if (how < 0.08)
    touched.rail = draw_touch (&bench).rail;
  else if (how < 0.15)
    touched.place = draw_touch (&bench).place;

  const double value = air ? uniform (&bench, -0.3, 0.3) : show (&bench, touched.rail, touched.place) * (reversed ? -1 : 1);
  const RwRailGuess it = guess (session, rail_ids[asked.rail], asked.place, RW_KIND_DC, value);

  /* A dead rail has no right way round. */
  judge (tally, &it, asked, touched, reversed && fabs (value) > 0.05, air);
}

static void
test_study (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (512);
  const guint touches = g_test_slow () ? 20000 : 4000;
  Tally tally = { 0 };

  for (guint i = 0; i < touches; i++)
    touch_once (&tally, random);
  g_test_message ("%u touches: sure of %.3f, right then %.4f; the likeliest is right in %.3f", touches,
                  (double) tally.sure / touches, (double) tally.right / tally.sure,
                  (double) tally.best_right / touches);
  g_test_message ("touched what was asked: sure in %.3f; slips: asked about or named in %.3f",
                  (double) tally.sure_when_asked / tally.asked_touched, (double) tally.slips_caught / tally.slips);
  g_assert_cmpfloat (tally.right, >=, 0.99 * tally.sure);
  g_assert_cmpfloat (tally.sure, >=, 0.25 * touches);
  g_assert_cmpfloat (tally.best_right, >=, 0.85 * touches);
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/rail-guess/a bare supply tells its rails apart", test_bare_supply);
  g_test_add_func ("/rail-guess/reversed leads are named", test_reversed);
  g_test_add_func ("/rail-guess/+12 and +13 are not told apart by nothing", test_twins_without_knowledge);
  g_test_add_func ("/rail-guess/the trim's lines tell +12 and +13 apart", test_twins_with_lines);
  g_test_add_func ("/rail-guess/terminals and board, where a drop tells them apart", test_ends_of_a_wire);
  g_test_add_func ("/rail-guess/leads in the air and mains are no rail", test_air_is_no_rail);
  g_test_add_func ("/rail-guess/kinds that tell nothing of the rail", test_kinds_that_tell_nothing);
  g_test_add_func ("/rail-guess/nothing to guess from", test_nothing_to_guess_from);
  g_test_add_func ("/rail-guess/sure guesses are right 99 times in 100", test_study);
  return g_test_run ();
}
