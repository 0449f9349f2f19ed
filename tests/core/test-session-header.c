/* test-session-header.c: the first line of a session file.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <string.h>

#include "fixtures.h"
#include "rw-event-json.h"

static RwSessionHeader *
from_line (const char *line,
           GError    **error)
{
  return rw_session_header_from_line (line, strlen (line), error);
}

static void
test_header_is_read (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RwSessionHeader) header = from_line (FIXTURE_HEADER, &error);

  g_assert_no_error (error);

  g_autofree char *started = g_date_time_format_iso8601 (header->started);

  g_assert_cmpstr (header->id, ==, "0b7f");
  g_assert_cmpstr (started, ==, "2026-03-14T09:30:00Z");
  g_assert_cmpstr (header->cabinet_name, ==, "Tidepool Racer");
  g_assert_cmpstr (header->cabinet_tag, ==, "B-07");
  g_assert_cmpuint (rw_profile_get_n_rails (header->profile), ==, 3);
  g_assert_cmpuint (header->meters->len, ==, 1);
  g_assert_cmpfloat (((const RwMeterFacts *) header->meters->pdata[0])->counts, ==, 2);
}

/* Made, written, read: the same; read, written: the very bytes. */
static void
test_header_round_trips (void)
{
  g_autoptr (RwProfile) profile = fixture_profile ();
  g_autoptr (GPtrArray) meters =
      g_ptr_array_new_with_free_func ((GDestroyNotify) rw_meter_facts_free);
  g_autoptr (GTimeZone) zone = g_time_zone_new_offset (3600);
  g_autoptr (GDateTime) started = g_date_time_new (zone, 2026, 3, 14, 10, 30, 5);
  g_autoptr (GString) line = g_string_new (NULL), again = g_string_new (NULL);
  g_autoptr (GError) error = NULL;

  g_ptr_array_add (meters, rw_meter_facts_new ("m1", "“bench” \"meter\" µ", 0.09, 2));
  g_ptr_array_add (meters, rw_meter_facts_new ("m2", NULL, 0.5, 3.5));

  g_autoptr (RwSessionHeader) made = rw_session_header_new (profile, "Pier \\ \"Pilot\"", NULL,
                                                            meters, started);

  rw_session_header_append_line (made, line);
  g_assert_true (g_str_has_suffix (line->str, "\n"));
  g_string_truncate (line, line->len - 1);
  g_assert_null (strchr (line->str, '\n'));

  g_autoptr (RwSessionHeader) read = from_line (line->str, &error);

  g_assert_no_error (error);
  g_assert_cmpstr (read->id, ==, made->id);
  g_assert_true (g_uuid_string_is_valid (read->id));
  g_assert_true (g_date_time_equal (read->started, started));
  g_assert_cmpstr (read->cabinet_name, ==, "Pier \\ \"Pilot\"");
  g_assert_cmpstr (read->cabinet_tag, ==, "");
  g_assert_cmpuint (read->meters->len, ==, 2);
  g_assert_cmpstr (((const RwMeterFacts *) read->meters->pdata[0])->name, ==,
                   "“bench” \"meter\" µ");
  g_assert_cmpfloat (((const RwMeterFacts *) read->meters->pdata[0])->percent, ==, 0.09);
  g_assert_cmpfloat (((const RwMeterFacts *) read->meters->pdata[1])->counts, ==, 3.5);
  for (guint i = 0; i < 3; i++)
    {
      const RwRail *a = rw_profile_get_rail (read->profile, i);
      const RwRail *b = rw_profile_get_rail (profile, i);

      g_assert_cmpstr (a->label, ==, b->label);
      g_assert_true (a->lo == b->lo && a->hi == b->hi && a->bare_lo == b->bare_lo
                     && a->never_above == b->never_above);
      g_assert_true (a->priority == b->priority && a->follows_trim == b->follows_trim
                     && a->ripple_limit == b->ripple_limit);
    }

  g_autoptr (RwSessionHeader) copy = rw_session_header_copy (read);

  rw_session_header_append_line (copy, again);
  g_string_append_c (line, '\n');
  g_assert_cmpstr (again->str, ==, line->str);
}

static void
test_unknown_keys_stay (void)
{
  const char *line = "{\"club\":{\"seat\": 7.0},\"railwright\":1,\"id\":\"z\",\"started\":\"2026-03-14T09:30:00.250Z\",\"profile\":"
                     "{\"id\":\"x\",\"lamp\":[1.50],\"rails\":[{\"id\":\"p5\",\"nominal\":5,\"limits\":[4.9,5.2],\"pin\":3}]}}";
  g_autoptr (GError) error = NULL;
  g_autoptr (RwSessionHeader) header = from_line (line, &error);
  g_autoptr (GString) out = g_string_new (NULL);

  g_assert_no_error (error);
  g_assert_cmpstr (header->cabinet_name, ==, "");
  g_assert_cmpuint (header->meters->len, ==, 0);

  g_autoptr (RwSessionHeader) copy = rw_session_header_copy (header);

  rw_session_header_append_line (copy, out);
  g_string_truncate (out, out->len - 1);
  g_assert_cmpstr (out->str, ==, line);
}

static void
test_odd_meters_do_no_harm (void)
{
  g_autofree char *line = g_strconcat ("{\"railwright\":1,\"id\":\"z\",\"started\":\"2026-03-14T09:30:00Z\",\"profile\":" FIXTURE_PROFILE,
                                       ",\"meters\":[5,{},{\"id\":7},{\"id\":\"m1\",\"percent\":-3,\"counts\":\"x\"}]}", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (RwSessionHeader) header = from_line (line, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (header->meters->len, ==, 1);
  g_assert_cmpfloat (((const RwMeterFacts *) header->meters->pdata[0])->percent, ==, 0);
  g_assert_cmpfloat (((const RwMeterFacts *) header->meters->pdata[0])->counts, ==, 0);
  g_assert_cmpstr (((const RwMeterFacts *) header->meters->pdata[0])->name, ==, "m1");
}

static void
test_bad_headers_say_what (void)
{
  static const struct
  {
    const char *line, *message;
  } rows[] = {
    { "", "not the header" },
    { "x", "not the header" },
    { "[1]", "not the header" },
    { "{\"n\":1,\"t\":0,\"trim\":{}}", "“railwright”" },
    { "{\"railwright\":\"1\",\"started\":\"2026-03-14T09:30:00Z\"}", "“railwright”" },
    { "{\"railwright\":0,\"started\":\"2026-03-14T09:30:00Z\"}", "“railwright”" },
    { "{\"railwright\":2,\"started\":\"2026-03-14T09:30:00Z\"}", "newer" },
    { "{\"railwright\":1}", "“started”" },
    { "{\"railwright\":1,\"started\":\"yesterday\"}", "“started”" },
    { "{\"railwright\":1,\"started\":5}", "“started”" },
    { "{\"railwright\":1,\"started\":\"2026-03-14T09:30:00Z\"}", "profile" },
    { "{\"railwright\":1,\"started\":\"2026-03-14T09:30:00Z\",\"profile\":{}}", "“id”" },
    { "{\"railwright\":1,\"started\":\"2026-03-14T09:30:00Z\",\"profile\":{\"id\":\"x\",\"rails\":[{\"id\":\"p5\"}]}}", "“nominal”" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_null (from_line (rows[i].line, &error));
      g_test_message ("%s", error->message);
      g_assert_true (error->domain == RW_EVENT_ERROR || error->domain == RW_PROFILE_ERROR);
      g_assert_nonnull (strstr (error->message, rows[i].message));
    }
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/session-header/is-read", test_header_is_read);
  g_test_add_func ("/session-header/round-trips", test_header_round_trips);
  g_test_add_func ("/session-header/unknown-keys-stay", test_unknown_keys_stay);
  g_test_add_func ("/session-header/odd-meters-do-no-harm", test_odd_meters_do_no_harm);
  g_test_add_func ("/session-header/bad-headers-say-what", test_bad_headers_say_what);
  return g_test_run ();
}
