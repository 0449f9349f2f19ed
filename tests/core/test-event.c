/* test-event.c: events made, copied, cleared, and in words for people.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <string.h>

#include "fixtures.h"

static void
test_words (void)
{
  g_autoptr (RwProfile) profile = fixture_profile ();
  static const struct
  {
    const char *line, *words;
  } rows[] = {
    { "{\"n\":1,\"t\":0,\"setup\":{\"power\":\"on\",\"board\":\"out\",\"warm\":false}}", "power on · board out · cold" },
    { "{\"n\":1,\"t\":0,\"setup\":{\"power\":\"off\"}}", "power off" },
    { "{\"n\":1,\"t\":0,\"setup\":{\"board\":\"fitted\",\"warm\":true}}", "board fitted · warm" },
    { "{\"n\":1,\"t\":0,\"setup\":{}}", "setup not said" },
    { "{\"n\":1,\"t\":0,\"reading\":{\"rail\":\"p5\",\"place\":\"board\",\"kind\":\"dc\",\"value\":5.02,\"step\":0.01}}",
      "+5 V, board: 5.02\u202FV" },
    { "{\"n\":1,\"t\":0,\"sample\":{\"rail\":\"gnd\",\"place\":\"wire\",\"kind\":\"dc\",\"value\":-0.035,\"step\":0.001}}",
      "ground, along the wire: −35\u202FmV" },
    { "{\"n\":1,\"t\":0,\"reading\":{\"rail\":\"p24\",\"place\":\"chip\",\"kind\":\"dc\",\"value\":null,\"over\":true}}",
      "p24, far chip: OL" },
    { "{\"n\":1,\"t\":0,\"trim\":{\"moved\":true}}", "trim turned" },
    { "{\"n\":1,\"t\":0,\"symptom\":{\"id\":\"hum\",\"state\":\"present\"}}", "symptom seen: hum" },
    { "{\"n\":1,\"t\":0,\"symptom\":{\"id\":\"hum\",\"state\":\"absent\"}}", "symptom not there: hum" },
    { "{\"n\":1,\"t\":0,\"symptom\":{\"id\":\"hum\",\"state\":\"cured\"}}", "symptom cured: hum" },
    { "{\"n\":1,\"t\":0,\"finding\":{\"check\":\"look\",\"outcome\":\"dark\"}}", "found: look: dark" },
    { "{\"n\":1,\"t\":0,\"repair\":{\"cause\":\"fuse\",\"result\":\"fixed\"}}", "repair: fuse: fixed" },
    { "{\"n\":1,\"t\":0,\"repair\":{\"cause\":\"fuse\",\"result\":\"no-change\"}}", "repair: fuse: no change" },
    { "{\"n\":1,\"t\":0,\"mark\":{\"what\":\"reset seen\"}}", "reset seen" },
    { "{\"n\":1,\"t\":0,\"note\":{\"text\":\"%s %n\"}}", "%s %n" },
    { "{\"n\":1,\"t\":0,\"stage\":{\"id\":\"under-load\"}}", "stage: under-load" },
    { "{\"n\":1,\"t\":0,\"stage\":{\"id\":\"trim\",\"read\":true}}", "stage: trim, its hazards were read" },
    { "{\"n\":1,\"t\":0,\"stage\":{\"id\":\"trim\",\"against\":\"my wire\"}}", "stage: trim, on against advice: my wire" },
    { "{\"n\":1,\"t\":0,\"retract\":{\"n\":8}}", "taken back: event 8" },
    { "{\"n\":1,\"t\":0,\"gap\":{\"why\":\"unplugged\"}}", "meter gone: unplugged" },
    { "{\"n\":1,\"t\":0,\"meter\":{\"id\":\"m2\",\"name\":\"second\",\"percent\":0.8,\"counts\":3}}",
      "meter: second, ±(0.80 % + 3 counts)" },
    { "{\"n\":1,\"t\":0,\"call\":{\"ask\":\"p12\",\"place\":\"board\",\"kind\":\"dc\"}}", "call it first: what will +12 V, board, read?" },
    { "{\"n\":1,\"t\":0,\"call\":{\"ask\":\"gnd\",\"place\":\"wire\"}}", "call it first: what will ground, along the wire, read?" },
    { "{\"n\":1,\"t\":0,\"call\":{\"by\":\"%n\",\"value\":-4.985,\"give\":0.05}}", "called by %n: −4.985 ± 0.050" },
    { "{\"n\":1,\"t\":0,\"call\":{\"by\":\"Mo\",\"value\":12}}", "called by Mo: 12.000" },
    { "{\"n\":1,\"t\":0,\"call\":{\"lower\":3,\"same\":5,\"higher\":12}}", "hands: lower 3, same 5, higher 12" },
    { "{\"n\":1,\"t\":0,\"call\":{\"reveal\":17}}", "calls revealed: event 17 is the answer" },
    { "{\"n\":1,\"t\":0,\"call\":{\"drop\":true}}", "the round of calls is given up" },
    { "{\"n\":1,\"t\":0,\"weather\":{}}", "not understood" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      RwEvent event = fixture_event (rows[i].line);
      g_autofree char *words = rw_event_describe (&event, profile);
      g_autofree char *bare = rw_event_describe (&event, NULL);

      /* A number's point is the locale's; the test runs in one with a point. */
      g_assert_cmpstr (words, ==, rows[i].words);
      g_assert_nonnull (bare);
      rw_event_clear (&event);
    }
}

static void
test_keys (void)
{
  static const char *const keys[RW_N_EVENT_TYPES] = { NULL, "setup", "reading", "sample", "trim",
                                                      "symptom", "finding",
                                                      "repair", "mark", "stage", "note", "retract", "gap",
                                                      "meter", "call" };

  for (int i = 0; i < RW_N_EVENT_TYPES; i++)
    g_assert_cmpstr (rw_event_type_to_key ((RwEventType) i), ==, keys[i]);
}

/* A copy is deep: it stands when the first one is gone; clearing twice does no harm. */
static void
test_copies_stand_alone (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (97);

  for (guint i = 0; i < 2000; i++)
    {
      RwEvent event = fixture_random_event (random, i, i);

      event.n = event.n > 0 ? event.n : i + 1;

      g_autofree char *before = fixture_line (&event);
      RwEvent copy = rw_event_copy (&event);

      if (event.line != NULL)
        memset (event.line, '?', strlen (event.line));
      rw_event_clear (&event);
      rw_event_clear (&event);

      g_autofree char *after = fixture_line (&copy);

      g_assert_cmpstr (after, ==, before);
      rw_event_clear (&copy);
    }
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/event/words", test_words);
  g_test_add_func ("/event/keys", test_keys);
  g_test_add_func ("/event/copies-stand-alone", test_copies_stand_alone);
  return g_test_run ();
}
