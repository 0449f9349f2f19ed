/* test-mistakes-live.c: what is said of a sample before anything is kept.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "bench-play.h"
#include "fixtures.h"

typedef struct
{
  const char *claim, *script;
  const char *rail;
  RwKind      kind;
  double      value; /* NaN: overload */
  const char *id;    /* NULL: nothing is said */
  gboolean    danger;
} LiveCase;

static const LiveCase cases[] = {
  { "mains", "on", "p5", RW_KIND_DC, 230, "mains-sized", TRUE },
  { "mains as AC", "on", "p5", RW_KIND_RIPPLE, 118, "mains-sized", TRUE },
  { "primary, negative", "on", "p12", RW_KIND_DC, -311, "mains-sized", TRUE },
  { "past what a board survives", "on", "p5", RW_KIND_DC, 5.9, "never-above", TRUE },
  { "leads on their way to +12", "on", "p5", RW_KIND_DC, 11.9, NULL, FALSE },
  { "leads on their way to the +12 that was read", "on; p12 board 11.9", "p5", RW_KIND_DC, 11.92, NULL, FALSE },
  { "reversed", "on", "p12", RW_KIND_DC, -11.9, "leads-reversed", FALSE },
  { "reversed on the reference", "on", "p5", RW_KIND_DC, -5.02, "leads-reversed", FALSE },
  { "reversed by no more than nothing", "on", "p5", RW_KIND_DC, -0.02, NULL, FALSE },
  { "leads in the air", "on; fitted; p12 board 11.9; m5 board -5", "p5", RW_KIND_DC, 0.0, NULL, FALSE },
  { "overload", "on", "p5", RW_KIND_DC, NAN, "overload", FALSE },
  { "ohms, power on", "on", "p5", RW_KIND_OHMS, 12, "ohms-power-on", FALSE },
  { "ohms in the air, power on", "on", "p5", RW_KIND_OHMS, NAN, "ohms-power-on", FALSE },
  { "ohms, power off", "off", "p5", RW_KIND_OHMS, 12, NULL, FALSE },
  { "ohms in the air, power off", "off", "p5", RW_KIND_OHMS, NAN, NULL, FALSE },
  { "negative ohms", "off", "p5", RW_KIND_OHMS, -4, "ohms-power-on", FALSE },
  { "AC of a rail's size", "on", "p5", RW_KIND_RIPPLE, 5.6, "ac-mode", FALSE },
  { "AC of twice a rail's size", "on", "p12", RW_KIND_RIPPLE, 26.4, "ac-mode", FALSE },
  { "ripple", "on", "p5", RW_KIND_RIPPLE, 0.012, NULL, FALSE },
  { "a good value", "on", "p5", RW_KIND_DC, 5.02, NULL, FALSE },
  { "a low one", "on", "p5", RW_KIND_DC, 4.2, NULL, FALSE },
  { "a stranger", "on", "p24", RW_KIND_DC, 24.1, NULL, FALSE },
  { "a drop", "on", "gnd", RW_KIND_DC, 0.03, NULL, FALSE },
};

static gboolean
look (const LiveCase *row,
      gboolean        low,
      RwWarning      *out)
{
  g_autoptr (RwSession) session = bench_play (row->script, NULL);
  g_autoptr (RwBenchState) state = rw_bench_state_new (session);
  const gboolean drop = g_str_equal (row->rail, "gnd");
  RwReading sample = rw_reading_make (row->rail, drop ? RW_PLACE_WIRE : RW_PLACE_BOARD, row->kind, row->value, 0.01,
                                      "m1");

  sample.over = isnan (row->value);
  sample.low_battery = low;
  return rw_mistakes_look_live (state, &sample, out);
}

static void
test_said (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      RwWarning warning = { 77, NULL, FALSE, NULL };
      const gboolean said = look (&cases[i], FALSE, &warning);

      g_test_message ("%s: %s", cases[i].claim, said ? warning.text : "nothing");
      g_assert_cmpstr (warning.id, ==, cases[i].id);
      g_assert_cmpint (said, ==, cases[i].id != NULL);
      g_assert_cmpint (warning.danger, ==, cases[i].danger);
      g_assert_cmpuint (warning.n, ==, said ? 0 : 77);
      if (said)
        g_assert_cmpuint (strlen (warning.text), >, 40);
      rw_warning_clear (&warning);
      g_assert_null (warning.text);
    }
}

/* A tired battery is said when there is nothing graver. */
static void
test_battery_comes_last (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      RwWarning warning = { 0 };

      g_assert_true (look (&cases[i], TRUE, &warning));
      g_assert_cmpstr (warning.id, ==, cases[i].id != NULL ? cases[i].id : "low-battery");
      rw_warning_clear (&warning);
    }
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/mistakes/live/the-gravest-is-said", test_said);
  g_test_add_func ("/mistakes/live/a-low-battery-comes-last", test_battery_comes_last);
  return g_test_run ();
}
