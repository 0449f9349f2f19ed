/* test-mistakes-trim.c: what turns of the trim and the readings around them give away.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "bench-play.h"
#include "fixtures.h"

static void
test_no_load (void)
{
  static const BenchCase cases[] = {
    { "falls 0.25 V",
      "on; out; p5 terminals 4.7; turn; p5 terminals 5.02; off; fitted; on; "
      "p5 board 4.77", "trim-no-load", "without load" },
    { "falls at the terminals",
      "on; out; turn; p5 terminals 5.02; fitted; p5 terminals 4.8", "trim-no-load", NULL },
    { "falls 0.1 V", "on; out; turn; p5 terminals 5.02; fitted; p5 board 4.92", "", NULL },
    { "falls by 0.15 V and the errors",
      "on; out; step 0.01; turn; p5 terminals 5.02; fitted; p5 board 4.84", "", NULL },
    { "never turned", "on; out; p5 terminals 5.02; fitted; p5 board 4.77", "", NULL },
    { "turned with the board fitted",
      "on; fitted; turn; out; p5 terminals 5.02; fitted; p5 board 4.77", "", NULL },
    { "set again under load",
      "on; out; turn; p5 terminals 5.02; fitted; p5 board 4.77; turn; p5 board 5.03", "", NULL },
    { "turned down again, not read",
      "on; out; turn; p5 terminals 5.3; turn; fitted; p5 board 5.0", "", NULL },
    { "the supply was mended since",
      "on; out; turn; p5 terminals 5.3; fixed; fitted; p5 board 5.03", "", NULL },
  };

  bench_check (cases, G_N_ELEMENTS (cases), NULL);
}

static void
test_chasing_drop (void)
{
  static const BenchCase cases[] = {
    { "turned up with 0.35 V lost",
      "on; fitted; p5 terminals 5.05; p5 board 4.70; turn; p5 board 4.80", "chasing-drop", "mend plugs" },
    { "in two turns",
      "on; fitted; p5 terminals 5.05; p5 board 4.70; turn; p5 board 4.72; turn; "
      "p5 board 4.85", "chasing-drop", NULL },
    { "seen at the terminals",
      "on; fitted; p5 terminals 5.05; p5 board 4.70; turn; p5 terminals 5.25", "chasing-drop", NULL },
    { "terminals far up, board just right",
      "on; fitted; p5 terminals 5.39; p5 board 5.02", "chasing-drop", NULL },
    { "far up within the errors", "on; fitted; p5 terminals 5.32; p5 board 5.02", "", NULL },
    { "both far up: the trim, and no wiring", "on; fitted; p5 terminals 5.45; p5 board 5.19", "", NULL },
    { "lost, but not turned", "on; fitted; p5 terminals 5.05; p5 board 4.70", "", NULL },
    { "turned down", "on; fitted; p5 terminals 5.25; p5 board 4.90; turn; p5 board 4.80", "", NULL },
    { "little lost", "on; fitted; p5 terminals 4.80; p5 board 4.70; turn; p5 board 4.98", "", NULL },
    { "0.25 V within the errors",
      "on; fitted; p5 terminals 4.96; p5 board 4.708; turn; p5 board 4.9", "", NULL },
    { "mended",
      "on; fitted; p5 terminals 5.05; p5 board 4.70; turn; p5 board 4.80; off; fixed; on; "
      "p5 board 5.10", "", NULL },
    { "turned back down",
      "on; fitted; p5 terminals 5.05; p5 board 4.70; turn; p5 board 4.80; turn; p5 board 4.70", "", NULL },
    { "the next contact is good",
      "on; fitted; p5 terminals 5.05; p5 board 4.70; turn; p5 board 4.95; p5 terminals 5.07", "", NULL },
  };

  bench_check (cases, G_N_ELEMENTS (cases), NULL);
}

static void
test_chasing_minus (void)
{
  static const BenchCase cases[] = {
    { "+5 up, −5 hardly changed",
      "on; fitted; p5 board 5.03; m5 board -4.1; turn; p5 board 5.32; "
      "m5 board -4.15", "chasing-minus", "back down" },
    { "−5 not read again",
      "on; fitted; p5 board 5.03; m5 board -4.1; turn; p5 board 5.35", "chasing-minus", "−5 V" },
    { "past what a board survives: that first",
      "on; fitted; p5 board 5.03; m5 board -4.1; turn; "
      "p5 board 5.62", "never-above chasing-minus", "Power off" },
    { "up to the limit and no more",
      "on; fitted; p5 board 5.03; m5 board -4.1; turn; p5 board 5.19; m5 board -4.2", "", NULL },
    { "−5 was well", "on; fitted; p5 board 5.03; m5 board -4.9; turn; p5 board 5.32", "", NULL },
    { "−5 came right",
      "on; fitted; p5 board 5.03; m5 board -4.4; turn; p5 board 5.32; m5 board -4.7", "", NULL },
    { "high before", "on; fitted; p5 board 5.32; m5 board -4.1", "", NULL },
    { "turned down, still high", "on; fitted; p5 board 5.42; m5 board -4.1; turn; p5 board 5.32", "", NULL },
    { "back down",
      "on; fitted; p5 board 5.03; m5 board -4.1; turn; p5 board 5.32; turn; p5 board 5.04", "", NULL },
  };

  bench_check (cases, G_N_ELEMENTS (cases), NULL);
}

static void
test_stale (void)
{
#define READ "on; fitted; p5 board 4.8; p12 board 11.5; m5 board -4.8; turn; "
  static const BenchCase cases[] = {
    { "a finding", READ "p5 board 5.02; wait 60; find", "stale-after-trim", "one screw moves every rail" },
    { "a symptom", READ "p5 board 5.02; wait 60; seen", "stale-after-trim", NULL },
    { "other readings",
      READ "p5 board 5.02; wait 60; p5 wire 0.03; gnd wire 0.02", "stale-after-trim", NULL },
    { "not long after", READ "p5 board 5.02; p5 wire 0.03; gnd wire 0.02", "", NULL },
    { "still at it", READ "p5 board 5.02; wait 60; p12 board 12.03", "", NULL },
    { "all read", READ "p5 board 5.02; p12 board 12.03; m5 board -5.02; wait 60; find", "", NULL },
    { "turned again", READ "p5 board 5.02; wait 60; find; turn", "", NULL },
    { "power off: nothing to read", READ "p5 board 5.02; off; wait 60; find", "", NULL },
    { "others never read",
      "on; fitted; p5 board 4.8; turn; p5 board 5.02; wait 60; find; p5 wire 0.03", "", NULL },
    { "no turn", "on; fitted; p5 board 5.02; wait 60; find; p5 wire 0.03; gnd wire 0.02", "", NULL },
    { "a note is no going on", READ "p5 board 5.02; wait 60; note", "", NULL },
  };
#undef READ

  bench_check (cases, G_N_ELEMENTS (cases), NULL);
}

static void
test_slopes (void)
{
  static const BenchCase cases[] = {
    { "follows by its turns",
      "on; fitted; p5 board 4.80; p12 board 11.50; turn; p5 board 4.95; p12 board 11.85; turn; "
      "p5 board 5.10; p12 board 12.20", "", NULL },
    { "stands still",
      "on; fitted; p5 board 4.80; p12 board 11.90; turn; p5 board 4.95; p12 board 11.901; turn; "
      "p5 board 5.10; p12 board 11.90", "slope-odd", "another output" },
    { "readings that lie on no line",
      "on; fitted; p5 board 4.80; p12 board 11.90; turn; p5 board 4.95; p12 board 11.93; turn; "
      "p5 board 5.10; p12 board 11.90", "", NULL },
    { "stands still, but too few to say",
      "on; fitted; p5 board 4.80; p12 board 11.90; turn; p5 board 4.84; p12 board 11.90", "", NULL },
    { "−5 with a regulator of its own",
      "on; fitted; p5 board 4.80; m5 board -4.98; turn; p5 board 4.95; m5 board -4.98; turn; "
      "p5 board 5.10; m5 board -4.98", "", NULL },
    { "read again elsewhere",
      "on; fitted; p5 board 4.80; p12 board 11.90; turn; p5 board 4.95; p12 board 11.901; turn; "
      "p5 board 5.10; p12 board 11.90; off", "", NULL },
  };

  static const char profile[] = "{\"id\":\"all\",\"title\":\"All\",\"reference\":\"p5\",\"rails\":["
                                "{\"id\":\"p5\",\"label\":\"+5 V\",\"nominal\":5,\"limits\":[4.7,5.3],\"priority\":1},"
                                "{\"id\":\"p12\",\"label\":\"+12 V\",\"nominal\":12,\"limits\":[10.8,13.2],\"priority\":2,"
                                "\"follows_trim\":\"unknown\"},"
                                "{\"id\":\"m5\",\"label\":\"−5 V\",\"nominal\":-5,\"limits\":[-5.25,-4.75],\"priority\":3,"
                                "\"follows_trim\":\"yes\"}]}";
  static const BenchCase others[] = {
    { "−5 may have a regulator whatever the profile says",
      "on; fitted; p5 board 4.80; m5 board -4.98; turn; p5 board 4.95; "
      "m5 board -4.98; turn; p5 board 5.10; m5 board -4.98", "", NULL },
    { "+12 that may have one",
      "on; fitted; p5 board 4.80; p12 board 11.9; turn; p5 board 4.95; p12 board 11.9; turn; "
      "p5 board 5.10; p12 board 11.9", "", NULL },
  };

  bench_check (cases, G_N_ELEMENTS (cases), NULL);
  bench_check (others, G_N_ELEMENTS (others), profile);
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/mistakes/trim-no-load-when-the-set-point-falls", test_no_load);
  g_test_add_func ("/mistakes/chasing-drop-when-turned-up-for-the-wiring", test_chasing_drop);
  g_test_add_func ("/mistakes/chasing-minus-when-turned-up-for-a-weak-minus", test_chasing_minus);
  g_test_add_func ("/mistakes/stale-after-trim-when-the-recheck-was-forgotten", test_stale);
  g_test_add_func ("/mistakes/slope-odd-when-a-follower-does-not-follow", test_slopes);
  return g_test_run ();
}
