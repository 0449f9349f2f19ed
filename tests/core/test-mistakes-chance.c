/* test-mistakes-chance.c: how often a right reading is called a mistake, and a planted mistake is missed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A cabinet of its own, written for this test: +5 V with one trim, +12 V that follows it, −5 V that follows or
 * has its own regulator; wires and contacts with a resistance in the + path and in ground, a chip a little below
 * the edge; loads that flicker. One fault at most: trim off, a bad contact in either path, +12 V or −5 V weak or
 * dead, ripple, a dead supply. The meters are off by a scale within their per cent and by whole and half last
 * digits within their counts, both uniformly, and round to their last digit.
 *
 * The person works as one should: bare, then loaded; drops before the trim; trims loaded, reads all again.
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "bench-play.h"
#include "fixtures.h"
#include "rw-event-json.h"

typedef enum
{
  FAULT_NONE,
  FAULT_TRIM_LOW,
  FAULT_TRIM_HIGH,
  FAULT_PATH,
  FAULT_GROUND,
  FAULT_P12_WEAK,
  FAULT_P12_DEAD,
  FAULT_M5_WEAK,
  FAULT_M5_DEAD,
  FAULT_RIPPLE,
  FAULT_DEAD,
  N_FAULTS
} Fault;

typedef struct
{
  GRand   *random;
  Fault    fault;
  double   trim;          /* +5 V at the terminals, loaded */
  double   amps;          /* drawn from +5 V */
  double   path, ground;  /* ohms */
  double   chip;          /* volts below the edge */
  double   p12, m5;       /* at the terminals for a trim of 5.05 V */
  gboolean m5_own;
  double   ripple;        /* volts AC */
  double   scale[3];      /* of the meters */
  double   step5;         /* last digit at 5 V */
  guint    meter;         /* 1 … 3 */
  gboolean one_meter;     /* no other is used */
  gboolean on, fitted;
  RwSession *session;
  double   t;
} Cabinet;

static double
between (Cabinet *self,
         double   lo,
         double   hi)
{
  return g_rand_double_range (self->random, lo, hi);
}

static void
init_cabinet (Cabinet *self,
              GRand   *random)
{
  *self = (Cabinet){ .random = random, .fault = FAULT_NONE, .meter = 1 };
  if (g_rand_double (random) < 0.6)
    self->fault = (Fault) g_rand_int_range (random, 1, N_FAULTS);
  self->trim = between (self, 5.02, 5.16);
  self->amps = between (self, 1, 6);
  self->path = between (self, 0.004, 0.015);
  self->ground = between (self, 0.002, 0.010);
  self->chip = between (self, 0.005, 0.05);
  self->p12 = between (self, 11.5, 12.5);
  self->m5 = between (self, -5.2, -4.8);
  self->m5_own = g_rand_boolean (random);
  self->ripple = between (self, 0.001, 0.03);
  for (guint i = 0; i < 2; i++)
    self->scale[i] = 1 + between (self, -0.005, 0.005);
  self->scale[2] = 1 + between (self, -0.0005, 0.0005);
  self->step5 = g_rand_boolean (random) ? 0.001 : 0.01;
  if (self->fault == FAULT_TRIM_LOW)
    self->trim = between (self, 4.5, 4.9);
  if (self->fault == FAULT_TRIM_HIGH)
    self->trim = between (self, 5.25, 5.45);
  if (self->fault == FAULT_PATH)
    self->path = between (self, 0.03, 0.12);
  if (self->fault == FAULT_GROUND)
    self->ground = between (self, 0.03, 0.12);
  if (self->fault == FAULT_P12_WEAK)
    self->p12 = between (self, 7, 10.8);
  if (self->fault == FAULT_P12_DEAD)
    self->p12 = between (self, 0, 0.5);
  if (self->fault == FAULT_M5_WEAK)
    self->m5 = between (self, -4.4, -2);
  if (self->fault == FAULT_M5_DEAD)
    self->m5 = between (self, -0.4, 0.4);
  if (self->fault == FAULT_RIPPLE)
    self->ripple = between (self, 0.05, 0.8);
  self->session = bench_play ("", NULL);
}

/* --- the truth ---------------------------------------------------------------------------------- */

static double
truth_at_terminals (Cabinet    *self,
                    const char *rail)
{
  const double share = self->trim / 5.05;
  /* Unloaded, +12 V sags and +5 V rises a little. */
  const double bare5 = self->fitted ? 0 : 0.03, bare12 = self->fitted ? 1 : 0.94;

  if (!self->on || self->fault == FAULT_DEAD)
    return between (self, -0.003, 0.003);
  if (g_str_equal (rail, "p5"))
    return self->trim + bare5;
  if (g_str_equal (rail, "p12"))
    return self->p12 * share * bare12;
  return self->m5_own ? self->m5 : self->m5 * share;
}

static double
truth (Cabinet    *self,
       const char *rail,
       RwPlace     place)
{
  const gboolean loaded = self->on && self->fitted && self->fault != FAULT_DEAD;
  const double amps = loaded ? self->amps * between (self, 0.97, 1.03) : 0;
  const double ground = amps * self->ground;
  const double path = g_str_equal (rail, "p5") ? amps * self->path : 0.1 * ground;
  const double sign = g_str_equal (rail, "m5") ? -1 : 1;

  if (place == RW_PLACE_WIRE)
    return g_str_equal (rail, "gnd") ? ground : sign * path;

  const double volts = truth_at_terminals (self, rail);

  if (place == RW_PLACE_TERMINALS)
    return volts;
  return volts - sign * path - ground - (place == RW_PLACE_CHIP ? sign * self->chip : 0);
}

/* --- reading it --------------------------------------------------------------------------------- */

static double
step_for (Cabinet *self,
          double   volts)
{
  if (self->meter == 3)
    return fabs (volts) < 2 ? 0.0001 : 0.001;
  if (fabs (volts) < 0.3)
    return self->step5 / 10;
  return fabs (volts) < 6 ? self->step5 : 0.01;
}

static void
keep (Cabinet    *self,
      const char *rail,
      RwPlace     place,
      RwKind      kind,
      double      volts,
      double      step)
{
  const char *const meters[] = { "m1", "m2", "m3" };
  const double counts = self->meter == 3 ? 3 : 2;
  const double off = volts * self->scale[self->meter - 1] + between (self, 0.5 - counts, counts - 0.5) * step;
  const double shown = round (off / step) * step;
  const RwReading reading = rw_reading_make (rail, place, kind, shown, step, meters[self->meter - 1]);
  RwEvent event = rw_event_make_reading (self->t += between (self, 2, 15), &reading);

  rw_session_add (self->session, &event);
}

static void
read_at (Cabinet    *self,
         const char *rail,
         RwPlace     place)
{
  const double volts = truth (self, rail, place) + between (self, -0.003, 0.003) * (place != RW_PLACE_WIRE);

  keep (self, rail, place, RW_KIND_DC, volts, step_for (self, volts));
}

static void
read_ripple (Cabinet    *self,
             const char *rail)
{
  const double volts = self->on && self->fault != FAULT_DEAD ? self->ripple : 0;

  keep (self, rail, RW_PLACE_BOARD, RW_KIND_RIPPLE, volts, volts < 0.5 ? 0.0001 : 0.001);
}

static void
happen (Cabinet *self,
        RwEvent  event)
{
  event.t = self->t += 5;
  rw_session_add (self->session, &event);
}

static void
set_up (Cabinet *self,
        gboolean on,
        gboolean fitted)
{
  self->on = on;
  self->fitted = fitted;
  happen (self, rw_event_make_setup (0, (RwSetup){ on ? RW_SAID_YES : RW_SAID_NO,
                                                   fitted ? RW_SAID_YES : RW_SAID_NO, RW_SAID_NO }));
}

/* --- working as one should ---------------------------------------------------------------------- */

static const char *const rails[] = { "p5", "p12", "m5" };

/* All rails at a place, in any order, some twice, some with another meter. */
static void
read_all (Cabinet *self,
          RwPlace  place)
{
  const guint first = (guint) g_rand_int_range (self->random, 0, 3);

  for (guint i = 0; i < 3; i++)
    {
      const char *rail = rails[(first + i) % 3];

      read_at (self, rail, place);
      if (g_rand_int_range (self->random, 0, 4) == 0)
        read_at (self, rail, place);
      if (!self->one_meter && g_rand_int_range (self->random, 0, 6) == 0)
        self->meter = (guint) g_rand_int_range (self->random, 1, 4);
    }
}

static void
read_drops (Cabinet *self)
{
  read_at (self, "p5", RW_PLACE_WIRE);
  read_at (self, "gnd", RW_PLACE_WIRE);
  if (g_rand_boolean (self->random))
    read_at (self, "m5", RW_PLACE_WIRE);
}

static void
trim (Cabinet *self)
{
  const double to = between (self, 5.05, 5.12) + self->amps * (self->path + self->ground);
  const guint turns = (guint) g_rand_int_range (self->random, 1, 4);
  const double by = (to - self->trim) / turns;

  for (guint i = 0; i < turns; i++)
    {
      happen (self, rw_event_make_trim (0));
      self->trim += by;
      read_at (self, "p5", RW_PLACE_BOARD);
      if (g_rand_boolean (self->random))
        read_at (self, "p12", RW_PLACE_BOARD);
    }
  read_all (self, RW_PLACE_BOARD);
}

/* What the bench says after each of the person's steps; dangers of the cabinet itself are none of it. */
static gboolean
is_accused (Cabinet *self)
{
  g_autoptr (RwBenchState) state = rw_bench_state_new (self->session);
  gboolean accused = FALSE;

  for (guint i = 0; i < rw_bench_state_get_n_warnings (state); i++)
    {
      const RwWarning *warning = rw_bench_state_get_warning (state, i);

      if (g_str_equal (warning->id, "never-above"))
        continue;
      g_test_message ("fault %d: %s: %s", self->fault, warning->id, warning->text);
      accused = TRUE;
    }
  return accused;
}

static gboolean
work_loaded (Cabinet *self)
{
  gboolean accused = FALSE;

  read_at (self, "p5", RW_PLACE_BOARD);
  accused |= is_accused (self);
  read_at (self, "p5", RW_PLACE_TERMINALS);
  read_drops (self);
  accused |= is_accused (self);
  read_all (self, RW_PLACE_BOARD);
  accused |= is_accused (self);
  read_ripple (self, rails[g_rand_int_range (self->random, 0, 3)]);
  read_at (self, "p5", RW_PLACE_CHIP);
  read_all (self, RW_PLACE_TERMINALS);
  return accused | is_accused (self);
}

static gboolean
work (Cabinet *self)
{
  gboolean accused = FALSE;

  set_up (self, FALSE, FALSE);
  set_up (self, TRUE, FALSE);
  read_all (self, RW_PLACE_TERMINALS);
  accused |= is_accused (self);
  set_up (self, FALSE, FALSE);
  set_up (self, TRUE, TRUE);
  accused |= work_loaded (self);
  if (self->fault == FAULT_PATH || self->fault == FAULT_GROUND)
    {
      self->path = self->ground = 0.005;
      set_up (self, FALSE, TRUE);
      happen (self, rw_event_make_repair (0, "edge-oxidised", RW_REPAIR_FIXED));
      set_up (self, TRUE, TRUE);
      return accused | work_loaded (self);
    }
  if (self->fault == FAULT_TRIM_LOW || self->fault == FAULT_TRIM_HIGH || g_rand_int_range (self->random, 0, 3) == 0)
    trim (self);
  accused |= is_accused (self);
  happen (self, rw_event_make_symptom (0, "resets", RW_SYMPTOM_CURED));
  return accused | is_accused (self);
}

static void
test_false (void)
{
  const guint n = 3000;
  g_autoptr (GRand) random = g_rand_new_with_seed (20260314);
  guint accused = 0, by_fault[N_FAULTS] = { 0 };

  for (guint i = 0; i < n; i++)
    {
      Cabinet cabinet;

      init_cabinet (&cabinet, random);
      if (work (&cabinet))
        {
          accused++;
          by_fault[cabinet.fault]++;
        }
      g_object_unref (cabinet.session);
    }
  for (guint i = 0; i < N_FAULTS; i++)
    g_test_message ("fault %u: %u", i, by_fault[i]);
  g_test_message ("%u of %u cabinets, measured as one should, were called a mistake", accused, n);
  g_assert_cmpuint (accused * 100, <, n);
}

/* --- the shipped sessions ------------------------------------------------------------------------- */

static RwSession *
open_session (const char *line)
{
  g_autoptr (GError) error = NULL;
  RwSessionHeader *header = rw_session_header_from_line (line, strlen (line), &error);

  g_assert_no_error (error);
  return rw_session_new (header);
}

/* What a demo session is there to show is a mistake that its people make, and take back. */
static const struct
{
  const char *demo;
  const char *id;
} shown[] = {
  { "tidepool-racer-a-year-later.rwlog", "chasing-drop" },
};

/* The one warning that this demo must show; "" for none. */
static const char *
find_shown (const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (shown); i++)
    if (g_str_equal (shown[i].demo, name))
      return shown[i].id;
  return "";
}

/* Nothing is said at any point of it but @shows, and that is said. Returns how many readings it has. */
static guint
look_through (const char *path,
              const char *shows)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *content = NULL;

  g_file_get_contents (path, &content, NULL, &error);
  g_assert_no_error (error);

  g_auto (GStrv) lines = g_strsplit (content, "\n", -1);
  g_autoptr (RwSession) session = open_session (lines[0]);
  guint n_readings = 0;
  gboolean seen = shows[0] == '\0';

  for (guint i = 1; lines[i] != NULL && lines[i][0] != '\0'; i++)
    {
      RwEvent event = fixture_event (lines[i]);
      const RwEventType type = event.type;

      rw_session_add (session, &event);
      if (type == RW_EVENT_SAMPLE)
        continue;
      n_readings += type == RW_EVENT_READING;

      g_autoptr (RwBenchState) state = rw_bench_state_new (session);
      g_autofree char *ids = bench_ids (state);

      if (ids[0] != '\0')
        g_assert_cmpstr (ids, ==, shows);
      seen = seen || g_str_equal (ids, shows);
    }
  g_assert_true (seen);
  return n_readings;
}

static void
test_demos (void)
{
  g_autofree char *folder = g_build_filename (g_getenv ("RAILWRIGHT_SRC_ROOT"), "demo-sessions", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (GDir) dir = g_dir_open (folder, 0, &error);
  const char *name;
  guint n = 0;

  g_assert_no_error (error);
  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      if (!g_str_has_suffix (name, ".rwlog"))
        continue;
      g_test_message ("%s", name);
      g_assert_cmpuint (look_through (path, find_shown (name)), >, 5);
      n++;
    }
  g_assert_cmpuint (n, >=, 4);
}

/* --- anything at all ------------------------------------------------------------------------------ */

/* Whatever happened: a mistake of a reading is told once, of something that was not taken back, dangers first. */
static void
test_anything (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (97);
  guint n_warnings = 0;

  for (guint round = 0; round < 1500; round++)
    {
      g_autoptr (RwSession) session = fixture_session ();

      for (guint i = 0; i < 60; i++)
        {
          RwEvent event = fixture_random_event (random, i * 2, i);

          rw_session_add (session, &event);
        }

      g_autoptr (RwBenchState) state = rw_bench_state_new (session);

      bench_assert_sound (session, state);
      n_warnings += rw_bench_state_get_n_warnings (state);
    }
  g_assert_cmpuint (n_warnings, >, 500);
}

/* --- planted mistakes --------------------------------------------------------------------------- */

typedef struct
{
  const char *id;
  void (*make) (Cabinet *self);
  double      least; /* share that has to be caught */
} Planted;

static void
reverse (Cabinet *self)
{
  keep (self, "p12", RW_PLACE_BOARD, RW_KIND_DC, -truth (self, "p12", RW_PLACE_BOARD), 0.01);
}

static void
slip_screw (Cabinet *self)
{
  keep (self, "p12", RW_PLACE_BOARD, RW_KIND_DC, truth (self, "p5", RW_PLACE_BOARD), 0.01);
}

static void
ground_on_chassis (Cabinet *self)
{
  keep (self, "p5", RW_PLACE_BOARD, RW_KIND_DC, truth (self, "p5", RW_PLACE_BOARD) - between (self, 0.15, 0.9), 0.001);
}

static void
write_terminals (Cabinet *self)
{
  const RwReading copied = rw_reading_make ("p5", RW_PLACE_BOARD, RW_KIND_DC, 5.123, 0.001, "m1");
  RwReading first = copied;

  first.place = RW_PLACE_TERMINALS;
  happen (self, rw_event_make_reading (0, &first));
  happen (self, rw_event_make_reading (0, &copied));
}

static void
read_one_side (Cabinet *self)
{
  keep (self, "p5", RW_PLACE_WIRE, RW_KIND_DC, 0, 0.0001);
}

static void
read_dc_for_ripple (Cabinet *self)
{
  keep (self, "p5", RW_PLACE_BOARD, RW_KIND_RIPPLE, truth (self, "p5", RW_PLACE_BOARD), 0.001);
}

static gboolean
is_caught (Cabinet    *self,
           const char *id)
{
  g_autoptr (RwBenchState) state = rw_bench_state_new (self->session);

  for (guint i = 0; i < rw_bench_state_get_n_warnings (state); i++)
    if (g_str_equal (rw_bench_state_get_warning (state, i)->id, id))
      return TRUE;

  g_autofree char *ids = bench_ids (state);

  g_test_message ("missed %s, said %s", id, ids);
  return FALSE;
}

/* Currents and wires great enough that the mistake shows. */
static void
test_planted (void)
{
  static const Planted planted[] = {
    { "leads-reversed", reverse, 1 },         { "wrong-terminal", slip_screw, 1 },
    { "chassis-ground", ground_on_chassis, 0.98 }, { "terminal-as-board", write_terminals, 0.98 },
    { "zero-drop", read_one_side, 0.95 },     { "dc-mode-for-ripple", read_dc_for_ripple, 1 },
  };
  const guint n = 150;
  g_autoptr (GRand) random = g_rand_new_with_seed (4711);

  for (guint k = 0; k < G_N_ELEMENTS (planted); k++)
    {
      guint caught = 0;

      for (guint i = 0; i < n; i++)
        {
          Cabinet cabinet;

          init_cabinet (&cabinet, random);
          cabinet.fault = FAULT_NONE;
          cabinet.one_meter = TRUE;
          cabinet.step5 = 0.001;
          cabinet.trim = 5.123;
          cabinet.p12 = between (&cabinet, 11.5, 12.5);
          cabinet.amps = between (&cabinet, 3, 6);
          cabinet.path = between (&cabinet, 0.015, 0.03);
          cabinet.ground = between (&cabinet, 0.002, 0.01);
          set_up (&cabinet, TRUE, TRUE);
          work_loaded (&cabinet);
          read_at (&cabinet, "p5", RW_PLACE_TERMINALS);
          read_drops (&cabinet);
          read_at (&cabinet, "p5", RW_PLACE_BOARD);
          cabinet.t += 20;
          planted[k].make (&cabinet);
          caught += is_caught (&cabinet, planted[k].id);
          g_object_unref (cabinet.session);
        }
      g_test_message ("%s: %u of %u caught", planted[k].id, caught, n);
      g_assert_cmpfloat (caught, >=, planted[k].least * n);
    }
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/mistakes/chance/right-readings-are-not-called-mistakes", test_false);
  g_test_add_func ("/mistakes/chance/shipped-sessions-have-none", test_demos);
  g_test_add_func ("/mistakes/chance/anything-is-told-once-dangers-first", test_anything);
  g_test_add_func ("/mistakes/chance/planted-mistakes-are-caught", test_planted);
  return g_test_run ();
}
