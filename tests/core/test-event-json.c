/* test-event-json.c: an event as a line of a session file, and back.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "fixtures.h"
#include "rw-event-json.h"
#include "rw-json.h"

/* One of each kind, in the form of the file format's description. */
static const char *const examples[] = {
  "{\"n\":1,\"t\":0.000,\"setup\":{\"power\":\"on\",\"board\":\"out\",\"warm\":false}}",
  "{\"n\":2,\"t\":4.210,\"reading\":{\"rail\":\"p5\",\"place\":\"terminals\",\"kind\":\"dc\",\"value\":5.021,\"step\":0.001,\"meter\":\"m1\"}}",
  "{\"n\":3,\"t\":4.400,\"sample\":{\"rail\":\"p5\",\"place\":\"terminals\",\"kind\":\"dc\",\"value\":5.022,\"meter\":\"m1\"}}",
  "{\"n\":4,\"t\":9.000,\"trim\":{\"moved\":true}}",
  "{\"n\":5,\"t\":12.000,\"symptom\":{\"id\":\"resets\",\"state\":\"present\"}}",
  "{\"n\":6,\"t\":14.000,\"finding\":{\"check\":\"edge-connector-look\",\"outcome\":\"dark\"}}",
  "{\"n\":7,\"t\":20.000,\"repair\":{\"cause\":\"trim-low\",\"result\":\"fixed\"}}",
  "{\"n\":8,\"t\":21.000,\"mark\":{\"what\":\"reset seen\"}}",
  "{\"n\":9,\"t\":22.000,\"stage\":{\"id\":\"under-load\"}}",
  "{\"n\":10,\"t\":23.000,\"note\":{\"text\":\"fan is noisy\"}}",
  "{\"n\":11,\"t\":24.000,\"retract\":{\"n\":8}}",
  "{\"n\":12,\"t\":25.000,\"gap\":{\"meter\":\"m1\",\"why\":\"unplugged\"}}",
  "{\"n\":13,\"t\":26.000,\"reading\":{\"rail\":\"m5\",\"place\":\"board\",\"kind\":\"dc\",\"value\":null,\"over\":true,\"meter\":\"m1\"}}",
  "{\"n\":14,\"t\":27.000,\"reading\":{\"rail\":\"gnd\",\"place\":\"wire\",\"kind\":\"dc\",\"value\":-0.035,\"step\":0.001,\"u\":0.0012}}",
  "{\"n\":15,\"t\":28.000001,\"sample\":{\"rail\":\"p12\",\"place\":\"chip\",\"kind\":\"ripple\",\"value\":0.03,\"over\":null}}",
  "{\"n\":16,\"t\":29.000,\"meter\":{\"id\":\"m2\",\"name\":\"second meter\",\"percent\":0.8,\"counts\":3,\"ac\":\"averaging\"}}",
  "{\"n\":17,\"t\":30.000,\"reading\":{\"rail\":\"p5\",\"place\":\"board\",\"kind\":\"dc\",\"value\":5.1,\"step\":0.001,\"meter\":\"m2\",\"low_battery\":true}}",
  "{\"n\":18,\"t\":31.000,\"stage\":{\"id\":\"bare-supply\",\"read\":true}}",
  "{\"n\":19,\"t\":32.000,\"stage\":{\"id\":\"fit-board\",\"against\":\"−5 is “known” to be 4.6\"}}",
  "{\"n\":20,\"t\":33.000,\"call\":{\"ask\":\"p12\",\"place\":\"board\",\"kind\":\"dc\",\"was\":11.62}}",
  "{\"n\":21,\"t\":34.000,\"call\":{\"ask\":\"gnd\",\"place\":\"wire\",\"kind\":\"dc\"}}",
  "{\"n\":22,\"t\":35.000,\"call\":{\"by\":\"team \\\"1\\\"\",\"value\":11.9,\"give\":0.1}}",
  "{\"n\":23,\"t\":36.000,\"call\":{\"by\":\"\",\"value\":-4.985}}",
  "{\"n\":24,\"t\":37.000,\"call\":{\"lower\":3,\"same\":5,\"higher\":12}}",
  "{\"n\":25,\"t\":38.000,\"call\":{\"reveal\":17}}",
  "{\"n\":26,\"t\":39.000,\"call\":{\"drop\":true}}",
  "{\"n\":4000000000,\"t\":999999999.999,\"symptom\":{\"id\":\"hum\",\"state\":\"cured\"}}",
};

static void
test_examples_round_trip (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (examples); i++)
    {
      RwEvent event = fixture_event (examples[i]);
      g_autofree char *line = fixture_line (&event);
      g_autofree char *wanted = g_strdup (examples[i]);
      char *over = strstr (wanted, ",\"over\":null");

      if (over != NULL) /* says nothing, and is not written again */
        memmove (over, over + strlen (",\"over\":null"),
                 strlen (over + strlen (",\"over\":null")) + 1);
      g_assert_cmpstr (line, ==, wanted);
      g_assert_null (event.line);

      RwEvent again = fixture_event (line);

      fixture_assert_same_event (&event, &again);
      rw_event_clear (&event);
      rw_event_clear (&again);
    }
}

static void
test_meaning_of_the_examples (void)
{
  RwEvent setup = fixture_event (examples[0]), reading = fixture_event (examples[1]);
  RwEvent over = fixture_event (examples[12]);

  g_assert_cmpint (setup.setup.power_on, ==, RW_SAID_YES);
  g_assert_cmpint (setup.setup.board_fitted, ==, RW_SAID_NO);
  g_assert_cmpint (setup.setup.warm, ==, RW_SAID_NO);
  g_assert_cmpuint (reading.n, ==, 2);
  g_assert_cmpfloat (reading.t, ==, 4.21);
  g_assert_cmpstr (reading.reading.rail, ==, "p5");
  g_assert_cmpint (reading.reading.place, ==, RW_PLACE_TERMINALS);
  g_assert_cmpint (reading.reading.kind, ==, RW_KIND_DC);
  g_assert_cmpfloat (reading.reading.value, ==, 5.021);
  g_assert_cmpfloat (reading.reading.step, ==, 0.001);
  g_assert_true (isnan (reading.reading.u));
  g_assert_true (over.reading.over && isnan (over.reading.value));
  rw_event_clear (&setup);
  rw_event_clear (&reading);
  rw_event_clear (&over);
}

static void
test_other_writers_are_understood (void)
{
  static const struct
  {
    const char *theirs, *ours;
  } rows[] = {
    { " { \"t\" : 4 , \"n\" : 2.0 , \"trim\" : { } } ", "{\"n\":2,\"t\":4.000,\"trim\":{\"moved\":true}}" },
    { "{\"n\":2,\"t\":4e0,\"trim\":{\"moved\":false}}", "{\"n\":2,\"t\":4.000,\"trim\":{\"moved\":false}}" },
    { "{\"note\":{\"text\":\"\\u00e9\\/\"},\"n\":2,\"t\":0.0000004}", "{\"n\":2,\"t\":0.000000,\"note\":{\"text\":\"é/\"}}" },
    { "{\"n\":2,\"t\":1.0005,\"setup\":{}}", "{\"n\":2,\"t\":1.000500,\"setup\":{}}" },
    { "{\"n\":2,\"t\":1,\"setup\":{\"power\":null,\"warm\":true}}", "{\"n\":2,\"t\":1.000,\"setup\":{\"warm\":true}}" },
    { "{\"n\":2,\"t\":1,\"stage\":{\"against\":null,\"read\":false,\"id\":\"trim\"}}", "{\"n\":2,\"t\":1.000,\"stage\":{\"id\":\"trim\"}}" },
    { "{\"n\":2,\"t\":1,\"call\":{\"higher\":4e0,\"same\":null}}", "{\"n\":2,\"t\":1.000,\"call\":{\"lower\":0,\"same\":0,\"higher\":4}}" },
    { "{\"n\":2,\"t\":1,\"call\":{\"was\":null,\"ask\":\"p5\",\"place\":\"chip\"}}", "{\"n\":2,\"t\":1.000,\"call\":{\"ask\":\"p5\",\"place\":\"chip\",\"kind\":\"dc\"}}" },
    { "{\"n\":2,\"t\":1,\"gap\":{}}", "{\"n\":2,\"t\":1.000,\"gap\":{\"why\":\"\"}}" },
    { "{\"n\":2,\"t\":1,\"reading\":{\"value\":5.0210000,\"rail\":\"p5\",\"place\":\"board\",\"step\":null,\"u\":null}}",
      "{\"n\":2,\"t\":1.000,\"reading\":{\"rail\":\"p5\",\"place\":\"board\",\"kind\":\"dc\",\"value\":5.021}}" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      RwEvent event = fixture_event (rows[i].theirs);
      g_autofree char *line = fixture_line (&event);

      g_assert_cmpstr (line, ==, rows[i].ours);
      rw_event_clear (&event);
    }
}

static void
test_random_events_round_trip (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (21);

  for (guint i = 0; i < 20000; i++)
    {
      const double t = g_rand_int_range (random, 0, 1000000) / 1000.0;
      RwEvent event = fixture_random_event (random, t, i);

      event.n = i + 1;

      g_autofree char *line = fixture_line (&event);
      g_autofree char *copied = NULL;

      g_assert_null (strchr (line, '\n'));

      RwEvent back = fixture_event (line), copy = rw_event_copy (&event);

      fixture_assert_same_event (&event, &back);
      fixture_assert_same_event (&event, &copy);
      copied = fixture_line (&copy);
      g_assert_cmpstr (copied, ==, line);
      rw_event_clear (&event);
      rw_event_clear (&back);
      rw_event_clear (&copy);
    }
}

/* Byte for byte, whatever order, spacing or number form they have. */
static void
test_unknown_is_kept (void)
{
  static const struct
  {
    const char *line;
    RwEventType type;
  } rows[] = {
    { "{\"n\":3,\"t\":1.50,\"weather\":{\"hot\":true}}", RW_EVENT_UNKNOWN },
    { "{\"n\":3,\"t\":1.5}", RW_EVENT_UNKNOWN },
    { "{\"n\":3,\"t\":1,\"weather\":7, \"x\" : [1.0, 2.00,3e0]}", RW_EVENT_UNKNOWN },
    { "{\"n\":3,\"t\":1,\"trim\":{\"moved\":true},\"note\":{\"text\":\"two at once\"}}", RW_EVENT_UNKNOWN },
    { "{\"n\":3,\"t\":1.0,\"trim\":{\"moved\":true,\"by\":\"Mo\"}}", RW_EVENT_TRIM },
    { "{\"n\":3,\"who\":\"Mo\",\"t\":1,\"note\":{\"text\":\"x\"}}", RW_EVENT_NOTE },
    { "{\"n\":3,\"t\":1,\"sample\":{\"rail\":\"p5\",\"place\":\"board\",\"kind\":\"dc\",\"value\":5.0200,\"hold\":true}}", RW_EVENT_SAMPLE },
    { "{\"n\":3,\"t\":1,\"reading\":{\"rail\":\"p5\",\"place\":\"board\",\"kind\":\"dc\",\"value\":5.02},\"ß\":\"µ\"}", RW_EVENT_READING },
    { "{\"n\":3,\"t\":1,\"retract\":{\"n\":2,\"t\":4}}", RW_EVENT_RETRACT },
    { "{\"n\":3,\"t\":1,\"gap\":{\"why\":\"\",\"note\":{\"text\":\"deep\"}}}", RW_EVENT_GAP },
    { "{\"n\":3,\"t\":1,\"call\":{\"by\":\"row 3\",\"value\":12.0,\"why\":\"gut\"}}", RW_EVENT_CALL },
    { "{\"n\":3,\"t\":1,\"call\":{\"drop\":true,\"again\":[1.0]}}", RW_EVENT_CALL },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      RwEvent event = fixture_event (rows[i].line), copy = rw_event_copy (&event);
      g_autofree char *line = fixture_line (&copy);

      g_assert_cmpint (event.type, ==, rows[i].type);
      g_assert_cmpuint (event.n, ==, 3);
      g_assert_cmpstr (line, ==, rows[i].line);
      rw_event_clear (&event);
      rw_event_clear (&copy);
    }
}

#define SPOT "\"rail\":\"p5\",\"place\":\"board\",\"kind\":\"dc\""

static void
test_damaged_lines_say_what (void)
{
  static const struct
  {
    const char *line, *message;
  } rows[] = {
    { "", "empty" },
    { "x", "“x” at byte 1" },
    { "5", "object" },
    { "[1]", "object" },
    { "{}", "“n”" },
    { "{\"n\":1}", "“t”" },
    { "{\"t\":1,\"trim\":{}}", "“n”" },
    { "{\"n\":0,\"t\":1,\"trim\":{}}", "“n”" },
    { "{\"n\":-1,\"t\":1,\"trim\":{}}", "“n”" },
    { "{\"n\":1.5,\"t\":1,\"trim\":{}}", "“n”" },
    { "{\"n\":\"1\",\"t\":1,\"trim\":{}}", "“n”" },
    { "{\"n\":4000000001,\"t\":1,\"trim\":{}}", "“n”" },
    { "{\"n\":1,\"t\":-0.001,\"trim\":{}}", "“t”" },
    { "{\"n\":1,\"t\":\"1\",\"trim\":{}}", "“t”" },
    { "{\"n\":1,\"t\":1e400,\"trim\":{}}", "“t”" },
    { "{\"n\":1,\"t\":1e50,\"trim\":{}}", "“t”" },
    { "{\"n\":1,\"t\":1000000000.5,\"sample\":{" SPOT ",\"value\":5}}", "“t”" },
    { "{\"n\":1,\"t\":1,\"trim\":true}", "“trim”" },
    { "{\"n\":1,\"t\":1,\"trim\":{\"moved\":\"yes\"}}", "“moved”" },
    { "{\"n\":1,\"t\":1,\"setup\":[]}", "“setup”" },
    { "{\"n\":1,\"t\":1,\"setup\":{\"power\":\"maybe\"}}", "“power”" },
    { "{\"n\":1,\"t\":1,\"setup\":{\"power\":true}}", "“power”" },
    { "{\"n\":1,\"t\":1,\"setup\":{\"board\":\"in\"}}", "“board”" },
    { "{\"n\":1,\"t\":1,\"setup\":{\"warm\":\"yes\"}}", "“warm”" },
    { "{\"n\":1,\"t\":1,\"setup\":{\"warm\":1}}", "“warm”" },
    { "{\"n\":1,\"t\":1,\"reading\":{\"place\":\"board\",\"value\":5}}", "“rail”" },
    { "{\"n\":1,\"t\":1,\"reading\":{\"rail\":\"\",\"place\":\"board\",\"value\":5}}", "“rail”" },
    { "{\"n\":1,\"t\":1,\"reading\":{\"rail\":\"p5\",\"value\":5}}", "“place”" },
    { "{\"n\":1,\"t\":1,\"reading\":{\"rail\":\"p5\",\"place\":\"moon\",\"value\":5}}", "“moon”" },
    { "{\"n\":1,\"t\":1,\"sample\":{\"rail\":\"p5\",\"place\":\"board\",\"kind\":\"lumen\",\"value\":5}}", "“lumen”" },
    { "{\"n\":1,\"t\":1,\"reading\":{" SPOT "}}", "“value”" },
    { "{\"n\":1,\"t\":1,\"reading\":{" SPOT ",\"value\":null}}", "“value”" },
    { "{\"n\":1,\"t\":1,\"reading\":{" SPOT ",\"value\":\"5\"}}", "“value”" },
    { "{\"n\":1,\"t\":1,\"reading\":{" SPOT ",\"value\":1e999}}", "“value”" },
    { "{\"n\":1,\"t\":1,\"reading\":{" SPOT ",\"value\":5,\"over\":\"yes\"}}", "“over”" },
    { "{\"n\":1,\"t\":1,\"reading\":{" SPOT ",\"value\":5,\"step\":-0.01}}", "“step”" },
    { "{\"n\":1,\"t\":1,\"reading\":{" SPOT ",\"value\":5,\"step\":\"0.01\"}}", "“step”" },
    { "{\"n\":1,\"t\":1,\"reading\":{" SPOT ",\"value\":5,\"u\":-1}}", "“u”" },
    { "{\"n\":1,\"t\":1,\"reading\":{" SPOT ",\"value\":5,\"u\":true}}", "“u”" },
    { "{\"n\":1,\"t\":1,\"reading\":{" SPOT ",\"value\":99999999999999999999}}", "too long" },
    { "{\"n\":1,\"t\":1,\"symptom\":{\"state\":\"present\"}}", "“id”" },
    { "{\"n\":1,\"t\":1,\"symptom\":{\"id\":\"hum\"}}", "“state”" },
    { "{\"n\":1,\"t\":1,\"symptom\":{\"id\":\"hum\",\"state\":\"loud\"}}", "“loud”" },
    { "{\"n\":1,\"t\":1,\"finding\":{\"outcome\":\"dark\"}}", "“check”" },
    { "{\"n\":1,\"t\":1,\"finding\":{\"check\":\"look\"}}", "“outcome”" },
    { "{\"n\":1,\"t\":1,\"repair\":{\"cause\":\"trim-low\",\"result\":\"luck\"}}", "“luck”" },
    { "{\"n\":1,\"t\":1,\"repair\":{\"result\":\"fixed\"}}", "“cause”" },
    { "{\"n\":1,\"t\":1,\"mark\":{}}", "“what”" },
    { "{\"n\":1,\"t\":1,\"note\":{\"text\":5}}", "“text”" },
    { "{\"n\":1,\"t\":1,\"stage\":{\"id\":\"\"}}", "“id”" },
    { "{\"n\":1,\"t\":1,\"stage\":{\"read\":true}}", "“id”" },
    { "{\"n\":1,\"t\":1,\"stage\":{\"id\":\"trim\",\"read\":\"yes\"}}", "“read”" },
    { "{\"n\":1,\"t\":1,\"stage\":{\"id\":\"trim\",\"against\":true}}", "“against”" },
    { "{\"n\":1,\"t\":1,\"call\":{}}", "“ask”" },
    { "{\"n\":1,\"t\":1,\"call\":{\"ask\":5,\"place\":\"board\"}}", "“ask”" },
    { "{\"n\":1,\"t\":1,\"call\":{\"ask\":\"p5\"}}", "“place”" },
    { "{\"n\":1,\"t\":1,\"call\":{\"ask\":\"p5\",\"place\":\"board\",\"kind\":\"lumen\"}}", "“kind”" },
    { "{\"n\":1,\"t\":1,\"call\":{\"ask\":\"p5\",\"place\":\"board\",\"was\":\"5\"}}", "“was”" },
    { "{\"n\":1,\"t\":1,\"call\":{\"by\":\"a\"}}", "“value”" },
    { "{\"n\":1,\"t\":1,\"call\":{\"by\":7,\"value\":5}}", "“by”" },
    { "{\"n\":1,\"t\":1,\"call\":{\"by\":\"a\",\"value\":\"5\"}}", "“value”" },
    { "{\"n\":1,\"t\":1,\"call\":{\"by\":\"a\",\"value\":5,\"give\":0}}", "“give”" },
    { "{\"n\":1,\"t\":1,\"call\":{\"by\":\"a\",\"value\":5,\"give\":-1}}", "“give”" },
    { "{\"n\":1,\"t\":1,\"call\":{\"lower\":-1}}", "“lower”" },
    { "{\"n\":1,\"t\":1,\"call\":{\"higher\":1.5}}", "“higher”" },
    { "{\"n\":1,\"t\":1,\"call\":{\"same\":100001}}", "“same”" },
    { "{\"n\":1,\"t\":1,\"call\":{\"reveal\":0}}", "“reveal”" },
    { "{\"n\":1,\"t\":1,\"call\":{\"reveal\":\"2\"}}", "“reveal”" },
    { "{\"n\":1,\"t\":1,\"call\":{\"drop\":false}}", "“drop”" },
    { "{\"n\":1,\"t\":1,\"retract\":{\"n\":0}}", "“n”" },
    { "{\"n\":1,\"t\":1,\"retract\":{}}", "“n”" },
    { "{\"n\":1,\"t\":1,\"trim\":{}}{\"n\":2,\"t\":2,\"trim\":{}}", "“{” at byte 24" },
    { "{\"n\":010,\"t\":1,\"trim\":{}}", "“0” at byte 6" },
    { "{\"n\":1,\"t\":1,\"note\":{\"text\":\"\\ud800\"}}", "half of a character" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GError) error = NULL;
      RwEvent event;

      if (rw_event_from_line (rows[i].line, strlen (rows[i].line), &event, &error))
        g_error ("taken: %s", rows[i].line);
      g_test_message ("%s → %s", rows[i].line, error->message);
      g_assert_error (error, RW_EVENT_ERROR, RW_EVENT_ERROR_FORMAT);
      g_assert_nonnull (strstr (error->message, rows[i].message));
    }
}

static void
test_deep_and_huge_lines (void)
{
  g_autoptr (GString) deep = g_string_new ("{\"n\":1,\"t\":0,\"x\":");
  g_autoptr (GString) huge = g_string_new ("{\"n\":1,\"t\":0,\"note\":{\"text\":\"");
  g_autoptr (GError) deep_error = NULL, huge_error = NULL;
  RwEvent event;

  for (guint i = 0; i < 500000; i++)
    g_string_append_c (deep, '[');
  g_assert_false (rw_event_from_line (deep->str, deep->len, &event, &deep_error));
  g_assert_nonnull (strstr (deep_error->message, "deeper than 64"));

  while (huge->len < RW_JSON_MAX_BYTES + 1)
    g_string_append (huge, "0123456789abcdef");
  g_string_append (huge, "\"}}");
  g_assert_false (rw_event_from_line (huge->str, huge->len, &event, &huge_error));
  g_assert_nonnull (strstr (huge_error->message, "longer than"));
}

/* A line is a length, not a C string: what stands behind it is not looked at. */
static void
test_length_is_obeyed (void)
{
  const char *line = examples[3];
  g_autofree char *exact = g_memdup2 (line, strlen (line)); /* without a terminator */
  RwEvent event;

  g_assert_true (rw_event_from_line (exact, strlen (line), &event, NULL));
  for (gsize length = 0; length < strlen (line); length++)
    {
      g_autofree char *cut = g_memdup2 (line, length);

      g_assert_false (rw_event_from_line (cut, length, &event, NULL));
    }
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/event-json/examples-round-trip", test_examples_round_trip);
  g_test_add_func ("/event-json/meaning-of-the-examples", test_meaning_of_the_examples);
  g_test_add_func ("/event-json/other-writers-are-understood", test_other_writers_are_understood);
  g_test_add_func ("/event-json/random-events-round-trip", test_random_events_round_trip);
  g_test_add_func ("/event-json/unknown-is-kept", test_unknown_is_kept);
  g_test_add_func ("/event-json/damaged-lines-say-what", test_damaged_lines_say_what);
  g_test_add_func ("/event-json/deep-and-huge-lines", test_deep_and_huge_lines);
  g_test_add_func ("/event-json/length-is-obeyed", test_length_is_obeyed);
  return g_test_run ();
}
