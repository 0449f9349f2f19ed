/* test-mistakes-places.c: what two or more readings give away: drops that do not add up, chips, repeats, meters.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "bench-play.h"
#include "fixtures.h"

static void
test_chassis (void)
{
  static const BenchCase cases[] = {
    { "drops explain it",
      "on; fitted; p5 terminals 5.10; p5 board 5.01; p5 wire 0.055; gnd wire 0.034", "", NULL },
    { "0.2 V too much",
      "on; fitted; p5 wire 0.055; gnd wire 0.034; p5 terminals 5.10; "
      "p5 board 4.80", "chassis-ground", "chassis" },
    { "0.12 V too little",
      "on; fitted; p5 wire 0.12; gnd wire 0.06; p5 terminals 5.10; p5 board 5.04", "chassis-ground", "0 V" },
    { "a load that changed a little",
      "on; fitted; p5 wire 0.28; gnd wire 0.142; p5 terminals 5.154; p5 board 4.743", "", NULL },
    { "large drops that changed with the load",
      "on; fitted; p5 wire 0.30; gnd wire 0.15; p5 terminals 5.154; p5 board 4.743", "", NULL },
    { "within the errors of a coarse meter",
      "on; fitted; step 0.01; p5 terminals 5.10; p5 board 5.00; step 0.001; "
      "p5 wire 0.025; gnd wire 0.015", "", NULL },
    { "two meters, within both errors",
      "on; fitted; m2; p5 terminals 5.13; m1; p5 board 5.01; p5 wire 0.055; gnd wire 0.034", "", NULL },
    { "ground alone is more than the loss",
      "on; fitted; gnd wire 0.15; p5 terminals 5.10; p5 board 5.05", "chassis-ground", NULL },
    { "seen to move by itself before",
      "on; fitted; p5 wire 0.055; gnd wire 0.034; p5 terminals 5.10; p5 board 5.01; wait 20; "
      "p5 board 4.86; wait 20; p5 board 4.88", "", NULL },
    { "moved by itself once, or was it a lead",
      "on; fitted; p5 wire 0.055; gnd wire 0.034; p5 terminals 5.10; p5 board 5.01; wait 20; "
      "p5 board 4.86", "chassis-ground", NULL },
    { "the path not read", "on; fitted; gnd wire 0.03; p5 terminals 5.10; p5 board 4.85", "", NULL },
    { "a turn between",
      "on; fitted; p5 wire 0.055; gnd wire 0.034; p5 terminals 5.10; turn; p5 board 4.80", "", NULL },
    { "unloaded and loaded",
      "on; out; p5 terminals 5.30; fitted; p5 board 4.80; p5 wire 0.01; gnd wire 0.01", "", NULL },
    { "−5 stands on the lifted ground",
      "on; fitted; gnd wire 0.10; m5 wire 0.005; m5 terminals -4.90; m5 board -4.995", "", NULL },
    { "−5 as if ground did not lift",
      "on; fitted; gnd wire 0.15; m5 wire 0.005; m5 terminals -5.00; "
      "m5 board -4.85", "chassis-ground", NULL },
    { "read again",
      "on; fitted; p5 wire 0.055; gnd wire 0.034; p5 terminals 5.10; p5 board 4.80; wait 20; "
      "p5 board 5.01", "", NULL },
  };

  bench_check (cases, G_N_ELEMENTS (cases), NULL);
}

static void
test_terminal_as_board (void)
{
  static const BenchCase cases[] = {
    { "equal although drops say otherwise",
      "on; fitted; p5 wire 0.12; gnd wire 0.05; p5 terminals 5.10; p5 board 5.10",
      "terminal-as-board", "written for the other" },
    { "equal and small drops",
      "on; fitted; p5 wire 0.008; gnd wire 0.005; p5 terminals 5.10; p5 board 5.10", "", NULL },
    { "equal and nothing else read", "on; fitted; p5 terminals 5.10; p5 board 5.10", "", NULL },
    { "board above terminals",
      "on; fitted; p5 board 5.10; p5 terminals 5.00", "terminal-as-board", "while current flows" },
    { "by the meter's error", "on; fitted; step 0.01; p5 board 5.04; p5 terminals 5.00", "", NULL },
    { "by both meters' errors", "on; fitted; p5 board 5.06; m2; p5 terminals 5.00", "", NULL },
    { "−5 may", "on; fitted; m5 board -4.99; m5 terminals -4.90", "", NULL },
    { "+12 with its loads", "on; fitted; step 0.01; p12 board 11.93; p12 terminals 11.90", "", NULL },
    { "the board out", "on; out; p5 terminals 5.00; fitted; p5 board 5.10", "", NULL },
    { "at the plug, nothing in it", "on; out; p5 terminals 5.00; p5 board 5.10", "", NULL },
    { "warmed up between", "on; fitted; p5 terminals 5.00; warm; p5 board 5.10", "", NULL },
  };

  bench_check (cases, G_N_ELEMENTS (cases), NULL);
}

static void
test_zero_drop (void)
{
  static const BenchCase cases[] = {
    { "while 0.1 V is lost",
      "on; fitted; p5 terminals 5.10; p5 board 4.99; step 0.0001; p5 wire 0.0002", "zero-drop", "same side" },
    { "of ground, and the path explains half",
      "on; fitted; p5 terminals 5.10; p5 board 4.90; step 0.0001; p5 wire 0.09; gnd wire 0",
      "zero-drop", "ground" },
    { "the path explains all",
      "on; fitted; p5 terminals 5.10; p5 board 5.00; step 0.0001; p5 wire 0.0985; "
      "gnd wire 0.0004", "", NULL },
    { "while amperes flow", "on; fitted; p5 board 3.2 amps; step 0.0001; p5 wire 0.0", "zero-drop", NULL },
    { "hardly any amperes", "on; fitted; p5 board 0.3 amps; step 0.0001; p5 wire 0.0", "", NULL },
    { "a meter too coarse to say",
      "on; fitted; step 0.01; p5 terminals 5.10; p5 board 5.00; p5 wire 0.00", "", NULL },
    { "a small drop",
      "on; fitted; p5 terminals 5.10; p5 board 5.06; step 0.0001; p5 wire 0.012; gnd wire 0.011", "", NULL },
    { "the board out", "on; out; p5 terminals 5.10; step 0.0001; p5 wire 0.0", "", NULL },
    { "nothing else read", "on; fitted; step 0.0001; p5 wire 0.0; gnd wire 0.0", "", NULL },
  };

  bench_check (cases, G_N_ELEMENTS (cases), NULL);
}

static void
test_chips (void)
{
  static const BenchCase cases[] = {
    { "0.15 V below", "on; fitted; p5 board 5.03; p5 chip 4.88", "drop-skipped", "crimp" },
    { "0.1 V, within the errors", "on; fitted; step 0.01; p5 board 5.03; p5 chip 4.91", "", NULL },
    { "low at the edge as well: a fault", "on; fitted; p5 board 4.60; p5 chip 4.45", "", NULL },
    { "0.05 V below", "on; fitted; p5 board 5.03; p5 chip 4.98", "", NULL },
    { "above", "on; fitted; p5 board 4.90; p5 chip 5.03", "chip-above-board", "lifts" },
    { "above by the errors of two meters", "on; fitted; p5 board 4.98; m2; p5 chip 5.03", "", NULL },
    { "a turn between", "on; fitted; p5 board 5.13; turn; p5 chip 4.9", "", NULL },
  };

  bench_check (cases, G_N_ELEMENTS (cases), NULL);
}

static void
test_meters (void)
{
  static const BenchCase cases[] = {
    /* 0.5 % of 5 V and two last digits: 27 mV each, and 10 mV for the cabinet. */
    { "beyond both errors", "on; fitted; p5 board 5.08; m2; p5 board 4.99", "meters-disagree", "Two meters" },
    { "within both errors: no change", "on; fitted; p5 board 5.06; m2; p5 board 5.01", "", NULL },
    { "three times, still no change",
      "on; fitted; p5 board 5.06; m2; p5 board 5.01; m1; p5 board 5.06", "", NULL },
    { "at another spot", "on; fitted; p5 terminals 5.2; m2; p5 board 5.09", "", NULL },
    { "a turn between", "on; fitted; p5 board 5.10; turn; m2; p5 board 4.95", "", NULL },
    { "much later", "on; fitted; p5 board 5.08; wait 1200; m2; p5 board 4.98", "", NULL },
    { "a meter that nobody knows", "on; fitted; p5 board 5.08; nobody; p5 board 4.99", "", NULL },
    { "read again with the first",
      "on; fitted; p5 board 5.08; m2; p5 board 4.99; m1; p5 board 5.0", "", NULL },
  };

  bench_check (cases, G_N_ELEMENTS (cases), NULL);
}

static void
test_repeats (void)
{
  static const BenchCase cases[] = {
    { "eleven last digits", "on; fitted; p5 board 5.030; p5 board 5.041", "reading-in-change", "middle one" },
    { "six last digits of a coarse meter",
      "on; fitted; step 0.01; p5 board 5.03; p5 board 5.09", "reading-in-change", NULL },
    { "five", "on; fitted; step 0.01; p5 board 5.03; p5 board 5.08", "", NULL },
    { "what loads do anyway", "on; fitted; p5 board 5.030; p5 board 5.039", "", NULL },
    { "a rail that is dead", "on; fitted; p12 board 0.020; p12 board 0.028", "", NULL },
    { "seconds later", "on; fitted; p5 board 5.030; wait 20; p5 board 5.05", "", NULL },
    { "the third agrees", "on; fitted; p5 board 5.030; p5 board 5.06; p5 board 5.061", "", NULL },
    { "taken back", "on; fitted; p5 board 5.030; p5 board 5.06; undo", "", NULL },
    { "a turn between", "on; fitted; p5 board 5.030; turn; p5 board 5.06", "", NULL },
    { "a drop moves with the load", "on; fitted; p5 wire 0.050; p5 wire 0.060", "", NULL },
    { "a last digit that nobody knows", "on; fitted; step 0; p5 board 5.030; p5 board 5.06", "", NULL },
  };

  bench_check (cases, G_N_ELEMENTS (cases), NULL);
}

/* A reading that is something else is compared with nothing: one mistake, one warning. */
static void
test_one_mistake_one_warning (void)
{
  static const BenchCase cases[] = {
    { "the wrong screw",
      "on; fitted; p5 terminals 5.1; p5 wire 0.05; gnd wire 0.03; "
      "p5 board 11.9", "never-above wrong-terminal", NULL },
    { "leads",
      "on; fitted; p5 terminals 5.1; p5 wire 0.05; gnd wire 0.03; p5 board -5.0; "
      "p5 chip 4.9", "leads-reversed", NULL },
    { "ground of three rails",
      "on; fitted; p5 terminals 5.1; p5 board 5.03; p12 terminals 12; p12 board 11.92; p5 wire 0.04; "
      "p12 wire 0.04; gnd wire 0.3", "chassis-ground", NULL },
  };

  bench_check (cases, G_N_ELEMENTS (cases), NULL);
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/mistakes/chassis-ground-when-drops-do-not-add-up", test_chassis);
  g_test_add_func ("/mistakes/terminal-as-board-when-the-board-stands-too-high", test_terminal_as_board);
  g_test_add_func ("/mistakes/zero-drop-while-current-flows", test_zero_drop);
  g_test_add_func ("/mistakes/chips-stand-a-little-below-the-edge", test_chips);
  g_test_add_func ("/mistakes/meters-disagree-beyond-both-errors-only", test_meters);
  g_test_add_func ("/mistakes/reading-in-change-when-repeats-differ", test_repeats);
  g_test_add_func ("/mistakes/one-mistake-one-warning", test_one_mistake_one_warning);
  return g_test_run ();
}
