/* test-mistakes-spot.c: what one reading gives away: sign, screw, mode, unit, overload, ohms, battery.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "bench-play.h"
#include "fixtures.h"

#define HEALTHY "on; fitted; p5 board 5.03; p12 board 11.92; m5 board -4.97; "

static void
test_terminal (void)
{
  static const BenchCase cases[] = {
    { "+12 for +5: a danger first, and then the screw",
      "on; p5 board 11.9", "never-above wrong-terminal", "Power off" },
    { "+5 for +12", "on; p12 board 5.03", "wrong-terminal", "+5 V" },
    { "and read before", "on; p5 board 5.03; p12 board 5.02", "wrong-terminal", "wrong point" },
    { "a +12 that sags to what is not what +5 reads", "on; p5 board 5.03; p12 board 5.4", "", NULL },
    { "a +12 that sags", "on; p5 board 5.03; p12 board 7.9", "", NULL },
    { "at both places: it really is", "on; fitted; p12 terminals 5.12; p12 board 5.05", "", NULL },
    { "at both places, with the board out and in",
      "on; out; p12 terminals 5.12; fitted; p12 board 5.05", "", NULL },
    { "−5 for +12", "on; p12 board -5.02", "wrong-terminal", "−5 V" },
    { "a little off", "on; p5 board 4.4; m5 board -5.6; p12 board 14.2", "", NULL },
    { "healthy", HEALTHY, "", NULL },
    { "read again, right", "on; p12 board 5.03; p12 board 11.9", "", NULL },
    { "power off since", "on; p12 board 5.03; off", "", NULL },
  };

  bench_check (cases, G_N_ELEMENTS (cases), NULL);
}

static void
test_sign (void)
{
  static const BenchCase cases[] = {
    { "+5", "on; p5 board -5.03", "leads-reversed", "wrong way" },
    { "−5", "on; m5 board 5.0", "leads-reversed", "−5 V" },
    { "+12", "on; p12 board -11.9", "leads-reversed", NULL },
    /* −5 V was 4.55 V strong at the terminals, +5 V is 5.03 V: 5.03 on −5 V is the +5 V screw. */
    { "the other screw fits better",
      "on; fitted; m5 terminals -4.55; p5 board 5.03; m5 board 5.03", "wrong-terminal", "+5 V" },
    { "the own rail fits better",
      "on; fitted; m5 terminals -4.55; p5 board 5.03; m5 board 4.54", "leads-reversed", NULL },
    { "both fit", "on; p5 board 5.03; m5 board 4.98", "leads-reversed", NULL },
    { "the newest first", "on; p12 board -11.9; m5 board 4.9", "leads-reversed leads-reversed", "−5 V" },
    { "a danger before all", "on; p5 board 5.9; m5 board 4.9", "never-above leads-reversed", NULL },
    { "a dead −5 that floats up", "on; m5 board 0.6", "", NULL },
    { "a drop has no sign", "on; fitted; p5 wire -0.05", "", NULL },
  };

  bench_check (cases, G_N_ELEMENTS (cases), NULL);
}

static void
test_mains (void)
{
  static const BenchCase cases[] = {
    { "230 V on +5: no slip of the point", "on; p5 board 230", "mains-sized", "pull the plug" },
    { "120 for 0.120 along a wire", "on; gnd wire 120", "mains-sized", NULL },
    { "502 for 5.02", "on; p5 board 502", "mains-sized", NULL },
    { "as ripple", "on; p12 board 118 ripple", "mains-sized", NULL },
    { "the primary", "on; p12 terminals -311", "mains-sized", NULL },
    { "24 V is none", "on; p24 board 24.2", "", NULL },
  };

  bench_check (cases, G_N_ELEMENTS (cases), NULL);
}

static void
test_slips (void)
{
  static const BenchCase cases[] = {
    { "50.2: the danger first", "on; step 0.1; p5 board 50.2", "never-above unit-slip", "Power off" },
    { "40: no slip of a 5 V rail", "on; step 0.1; p5 board 40.0", "never-above", NULL },
    { "12 for 12 mV along a wire", "on; fitted; p5 wire 12.0", "unit-slip", NULL },
    { "32 for 32 mV of ground", "on; fitted; gnd wire 32", "unit-slip", "unit" },
    { "a whole rail lost along a wire: a fault", "on; fitted; p5 wire 4.9", "", NULL },
    { "30 for 30 mV of ripple", "on; p5 board 30 ripple", "unit-slip", "millivolts" },
    { "a supply that runs away: no slip", "on; p5 board 6.9", "never-above", NULL },
    { "a dead rail that floats", "on; p5 board 0.49", "", NULL },
    { "drops as they are", "on; fitted; p5 wire 0.12; gnd wire 0.03", "", NULL },
  };

  bench_check (cases, G_N_ELEMENTS (cases), NULL);
}

static void
test_modes (void)
{
  static const BenchCase cases[] = {
    { "the rail as ripple", "on; p5 board 5.01 ripple", "dc-mode-for-ripple", "AC millivolts" },
    { "equal to the DC read", "on; p12 board 11.87; p12 board 11.87 ripple", "dc-mode-for-ripple", NULL },
    { "a quarter of it", "on; p5 board 1.25 ripple", "dc-mode-for-ripple", NULL },
    { "a fifth and less: bad, but ripple", "on; p5 board 0.98 ripple; p12 board 2.1 ripple", "", NULL },
    { "twice the rail", "on; p5 board 11.1 ripple", "ac-mode", "DC volts" },
    { "clean", "on; p5 board 0.012 ripple; p12 board 0.03 ripple", "", NULL },
    { "a supply that ticks", "on; p5 board 1.2; p5 board 1.1 ripple", "", NULL },
    { "nothing at the terminals, all at the board",
      "on; fitted; p5 board 5.03; p5 terminals 0.012", "ac-mode", "DC volts" },
    { "nothing at the edge, all at the chip", "on; fitted; p5 chip 4.98; p5 board 0.00", "ac-mode", NULL },
    { "nothing of +5 at the terminals while +12 is there",
      "on; out; p12 terminals 12.3; p5 terminals 0.02", "ac-mode", NULL },
    { "nothing of +5 at the board while both others are there",
      "on; fitted; p12 board 11.9; m5 board -4.98; p5 board 0.01", "ac-mode", "+5 V" },
    { "a broken +5 wire",
      "on; fitted; p5 terminals 5.1; p12 board 11.9; m5 board -4.98; p5 board 0.01", "", NULL },
    { "a dead −5", "on; fitted; p5 board 5.03; p12 board 11.9; m5 board 0.00", "", NULL },
    { "a dead +12", "on; fitted; p5 board 5.03; m5 board -4.9; p12 board 0.01", "", NULL },
    { "a dead supply", "on; fitted; p5 board 0.00; p12 board 0.00; m5 board 0.00", "", NULL },
    { "the power is off", "off; p5 terminals 0.0; p12 terminals 0.02", "", NULL },
  };

  bench_check (cases, G_N_ELEMENTS (cases), NULL);
}

/* Straight from the rectifier, without its capacitor: 48 % of ripple is a fault and no mistake. */
static void
test_raw_ripple (void)
{
  static const char profile[] = "{\"id\":\"raw\",\"title\":\"Raw\",\"reference\":\"p5\",\"rails\":["
                                "{\"id\":\"p5\",\"label\":\"+5 V\",\"nominal\":5,\"limits\":[4.9,5.2],\"priority\":1},"
                                "{\"id\":\"raw12\",\"label\":\"+12 V raw\",\"nominal\":12,\"limits\":[10.8,15],\"priority\":2,"
                                "\"follows_trim\":\"no\",\"ripple_limit\":0.7}]}";
  static const BenchCase cases[] = {
    { "no capacitor", "on; fitted; raw12 board 9.6; raw12 board 4.6 ripple", "", NULL },
    { "moves with the picture", "on; fitted; raw12 terminals 12.1; raw12 board 12.4", "", NULL },
    { "the rail itself",
      "on; fitted; raw12 board 12.6; raw12 board 12.6 ripple", "dc-mode-for-ripple", NULL },
    { "+5 dead while the raw rail is there: its regulator",
      "on; fitted; raw12 terminals 13; p5 terminals 0.01", "", NULL },
  };

  bench_check (cases, G_N_ELEMENTS (cases), profile);
}

static void
test_overload (void)
{
  static const BenchCase cases[] = {
    { "volts", "on; p5 board OL", "overload", "Take the leads away" },
    { "ripple", "on; p5 board OL ripple", "overload", NULL },
    { "amperes", "on; p5 wire OL amps", "overload", "Power off" },
    { "read again", "on; p5 board OL; p5 board 5.02", "", NULL },
    { "ohms without end are an open path", "off; p5 wire OL ohms", "", NULL },
  };

  bench_check (cases, G_N_ELEMENTS (cases), NULL);
}

static void
test_ohms (void)
{
  static const BenchCase cases[] = {
    { "power on", "on; step 1; p5 board 47 ohms", "ohms-power-on", "take the leads away" },
    { "power on, overload", "on; step 1; p5 board OL ohms", "ohms-power-on", NULL },
    { "negative", "off; step 0.1; p5 board -3.2 ohms", "ohms-power-on", "negative" },
    { "negative by the last digits", "off; step 0.1; p5 board -0.1 ohms", "", NULL },
    { "power off", "off; step 1; p5 board 47 ohms", "", NULL },
    { "nobody said", "step 1; p5 board 47 ohms", "", NULL },
    { "switched off and read again", "on; step 1; p5 board 47 ohms; off; p5 board 47 ohms", "", NULL },
  };

  bench_check (cases, G_N_ELEMENTS (cases), NULL);
}

static void
test_battery (void)
{
  static const BenchCase cases[] = {
    { "the meter says so", "on; low; p5 board 5.03", "low-battery", "battery" },
    { "told once a meter", "on; low; p5 board 5.03; low; p12 board 11.9", "low-battery", NULL },
    { "two meters", "on; low; p5 board 5.03; m2; low; p12 board 11.9", "low-battery low-battery", NULL },
    { "a fresh one", "on; low; p5 board 5.03; p5 board 5.03", "", NULL },
    { "only the other meter's is fresh", "on; low; p5 board 5.03; m2; p12 board 11.9", "low-battery", NULL },
    { "all high, but all by the trim",
      "on; fitted; p5 board 5.19; p12 board 12.46; m5 board -5.19", "", NULL },
  };
  static const char profile[] = "{\"id\":\"own\",\"title\":\"Own\",\"reference\":\"p5\",\"rails\":["
                                "{\"id\":\"p5\",\"label\":\"+5 V\",\"nominal\":5,\"limits\":[4.9,5.3],\"priority\":1},"
                                "{\"id\":\"p12\",\"label\":\"+12 V\",\"nominal\":12,\"limits\":[10.8,13.2],\"priority\":2},"
                                "{\"id\":\"m5\",\"label\":\"−5 V\",\"nominal\":-5,\"limits\":[-5.25,-4.75],\"priority\":3,"
                                "\"follows_trim\":\"no\"}]}";
  static const BenchCase own[] = {
    { "all high alike, the independent one too",
      "on; fitted; p5 board 5.22; p12 board 12.53; m5 board -5.21", "low-battery", "4 %" },
    { "told once, flag and all",
      "on; fitted; p5 board 5.22; p12 board 12.53; low; m5 board -5.21", "low-battery", "says" },
    { "all high, but not alike", "on; fitted; p5 board 5.22; p12 board 12.66; m5 board -5.21", "", NULL },
    { "one not high", "on; fitted; p5 board 5.22; p12 board 12.2; m5 board -5.21", "", NULL },
    { "only those that the trim moves",
      "on; fitted; p5 board 5.22; p12 board 12.53; m5 board -5.02", "", NULL },
    { "two of them", "on; fitted; p5 board 5.22; m5 board -5.22", "", NULL },
    { "low alike", "on; fitted; p5 board 4.79; p12 board 11.5; m5 board -4.79", "", NULL },
    { "by what the meter's error allows",
      "on; fitted; p5 board 5.13; p12 board 12.32; m5 board -5.13", "", NULL },
  };

  bench_check (cases, G_N_ELEMENTS (cases), NULL);
  bench_check (own, G_N_ELEMENTS (own), profile);
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/mistakes/wrong-terminal-when-another-rail-fits", test_terminal);
  g_test_add_func ("/mistakes/leads-reversed-when-only-the-sign-is-wrong", test_sign);
  g_test_add_func ("/mistakes/mains-sized-silences-the-rest", test_mains);
  g_test_add_func ("/mistakes/unit-slip-when-a-moved-point-fits", test_slips);
  g_test_add_func ("/mistakes/mode-when-ac-and-dc-are-mixed-up", test_modes);
  g_test_add_func ("/mistakes/raw-rails-may-ripple", test_raw_ripple);
  g_test_add_func ("/mistakes/overload-is-a-range-and-not-infinity", test_overload);
  g_test_add_func ("/mistakes/ohms-want-the-power-off", test_ohms);
  g_test_add_func ("/mistakes/low-battery-by-flag-or-by-a-common-factor", test_battery);
  return g_test_run ();
}
