/* test-decoder-frames.c: frames of display meters: what they say, and what is none.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <json-glib/json-glib.h>
#include <string.h>

#include "decoder-probe.h"

/* --- helpers ------------------------------------------------------------------------- */

static GByteArray *
from_hex (const char *hex)
{
  g_auto (GStrv) words = g_strsplit (hex, " ", -1);
  GByteArray *bytes = g_byte_array_new ();

  for (guint i = 0; words[i] != NULL; i++)
    {
      const guint8 byte = (guint8) g_ascii_strtoull (words[i], NULL, 16);

      g_byte_array_append (bytes, &byte, 1);
    }
  return bytes;
}

static char *
run (const char       *format_id,
     const GByteArray *bytes,
     gsize             chunk,
     gboolean          end)
{
  g_autoptr (RwDecoder) decoder = rw_decoder_new (format_id);

  return decoder_probe_run (decoder, (const char *) bytes->data, bytes->len, chunk, end);
}

/* One frame alone, as a capture of it. */
static char *
run_hex (const char *format_id,
         const char *hex)
{
  g_autoptr (GByteArray) bytes = from_hex (hex);

  return run (format_id, bytes, bytes->len, TRUE);
}

static JsonNode *
load (const char *name)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "meter", name, NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();

  g_assert_true (json_parser_load_from_file (parser, path, NULL));
  return json_parser_steal_root (parser);
}

typedef void (*CaseFunc) (const char *format_id, JsonObject *frame);

/* Every entry of frames.json, by the name of its list. */
static void
for_each (const char *list,
          CaseFunc    check)
{
  g_autoptr (JsonNode) root = load ("frames.json");
  g_autoptr (GList) ids = json_object_get_members (json_node_get_object (root));
  guint n = 0;

  for (GList *id = ids; id != NULL; id = id->next)
    {
      JsonObject *format = json_object_get_object_member (json_node_get_object (root), id->data);
      JsonArray *frames = json_object_get_array_member (format, list);

      for (guint i = 0; i < json_array_get_length (frames); i++, n++)
        check (id->data, json_array_get_object_element (frames, i));
    }
  g_assert_cmpuint (n, >, 15);
}

/* --- the published layouts ----------------------------------------------------------- */

static void
check_bytes (const char *format_id,
             JsonObject *frame,
             GByteArray *bytes)
{
  g_autoptr (RwDecoder) decoder = rw_decoder_new (format_id);
  g_autoptr (GArray) values = decoder_probe_values (decoder, bytes, TRUE);
  const RwMeterValue *value = &g_array_index (values, RwMeterValue, 0);
  const char *mode = json_object_get_string_member (frame, "mode");
  RwDecoderCounts counts;

  g_test_message ("%s: %s", format_id, json_object_get_string_member (frame, "display"));
  g_assert_cmpuint (values->len, ==, 1);
  g_assert_true (value->over == json_object_get_null_member (frame, "value"));
  if (!value->over)
    g_assert_true (value->value
                   == g_ascii_strtod (json_object_get_string_member (frame, "value"), NULL));
  g_assert_cmpstr (rw_meter_unit_to_id (value->unit), ==,
                   json_object_get_string_member (frame, "unit"));
  g_assert_cmpstr (rw_meter_mode_to_id (value->mode), ==,
                   g_str_equal (mode, "none") ? NULL : mode);
  g_assert_true (value->low_battery == json_object_get_boolean_member (frame, "low_battery"));
  g_assert_true (value->hold == json_object_get_boolean_member (frame, "hold"));
  rw_decoder_get_counts (decoder, &counts);
  g_assert_cmpuint (counts.values, ==, 1);
  g_assert_cmpuint (counts.not_understood, ==, 0);
  g_assert_cmpuint (counts.doubted, ==, 0);
  g_assert_cmpuint (counts.bytes_explained, ==, bytes->len);
}

static void
check_frame (const char *format_id,
             JsonObject *frame)
{
  g_autoptr (GByteArray) bytes = from_hex (json_object_get_string_member (frame, "hex"));

  check_bytes (format_id, frame, bytes);
  if (json_object_has_member (frame, "hex8"))
    {
      g_autoptr (GByteArray) parity = from_hex (json_object_get_string_member (frame, "hex8"));

      check_bytes (format_id, frame, parity);
    }
}

static void
test_published (void)
{
  for_each ("frames", check_frame);
}

static void
check_bad (const char *format_id,
           JsonObject *frame)
{
  g_autoptr (GByteArray) bytes = from_hex (json_object_get_string_member (frame, "hex"));
  g_autoptr (RwDecoder) decoder = rw_decoder_new (format_id);
  g_autofree char *got = decoder_probe_run (decoder, (const char *) bytes->data, bytes->len, 3,
                                            TRUE);
  RwDecoderCounts counts;

  g_test_message ("%s: %s", format_id, json_object_get_string_member (frame, "why"));
  g_assert_cmpstr (got, ==, "");
  rw_decoder_get_counts (decoder, &counts);
  g_assert_cmpuint (counts.not_understood, ==, 1);
  g_assert_cmpuint (counts.bytes_explained, ==, 0);
  g_assert_nonnull (rw_decoder_get_last_bad (decoder));
}

static void
test_bad (void)
{
  for_each ("bad", check_bad);
}

/* --- single claims ------------------------------------------------------------------- */

typedef struct
{
  const char *format_id;
  const char *hex;
  const char *wanted; /* "" none */
} Case;

static void
check_cases (const Case *cases,
             guint       n)
{
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *got = run_hex (cases[i].format_id, cases[i].hex);

      g_test_message ("%s: %s", cases[i].format_id, cases[i].hex);
      g_assert_cmpstr (got, ==, cases[i].wanted);
    }
}

static void
test_minus_bits (void)
{
  static const Case cases[] = {
    { "digits-11a", "31 31 32 30 36 3B 34 30 3A 0D 0A", "-12.06 V dc step 0.01\n" },
    { "digits-11b", "31 31 32 30 36 3B 34 30 3A 0D 0A", "12.06 V dc step 0.01 low\n" },
    { "digits-11a", "31 31 32 30 36 3B 38 30 3A 0D 0A", "12.06 V dc step 0.01\n" },
    { "digits-11b", "31 31 32 30 36 3B 38 30 3A 0D 0A", "-12.06 V dc step 0.01\n" },
    { "digits-11b", "31 31 32 30 36 3B 32 30 34 0D 0A", "- V ac step 0 over\n" },
  };

  check_cases (cases, G_N_ELEMENTS (cases));
}

static void
test_segments (void)
{
  static const Case cases[] = {
    /* leading digits blank: "  .5", "   7", and an all blank display */
    { "segments-14", "17 20 30 40 50 60 70 8B 9E A0 B0 C0 D4 E0", "0.5 V dc step 0.1\n" },
    { "segments-14", "17 20 30 40 50 60 70 81 95 A0 B0 C0 D4 E0", "7 V dc step 1\n" },
    { "segments-14", "17 20 30 40 50 60 70 80 90 A0 B0 C0 D4 E0", "" },
    /* "4 12": a blank inside */
    { "segments-14", "17 22 37 40 50 60 75 85 9B A0 B0 C0 D4 E0", "" },
    /* an index too high where nothing else is wrong */
    { "segments-14", "17 22 37 4F 9F 60 75 85 9B A0 B0 C0 D4 E0", "" },
    /* two points; two units; none; two prefixes; per cent */
    { "segments-14", "17 22 37 4F 5F 68 75 85 9B A0 B0 C0 D4 E0", "" },
    { "segments-14", "17 22 37 4F 5F 60 75 85 9B A0 B0 C0 DC E0", "" },
    { "segments-14", "17 22 37 4F 5F 60 75 85 9B A0 B0 C0 D0 E0", "" },
    { "segments-14", "17 22 37 4F 5F 60 75 85 9B A8 B8 C0 D4 E0", "" },
    { "segments-14", "13 22 37 4F 5F 60 75 85 9B A0 B4 C0 D0 E0", "" },
    /* °C alone, and beside volts, where the bit is the meter's own affair */
    { "segments-14", "13 22 37 4F 5F 60 75 85 9B A0 B0 C0 D0 E4", "4.812 C none step 0.001\n" },
    { "segments-14", "17 22 37 4F 5F 60 75 85 9B A0 B0 C0 D4 E4", "4.812 V dc step 0.001\n" },
    /* minus, diode, continuity, HOLD; a diode test in ohms */
    { "segments-14", "17 2A 37 4F 5F 60 75 85 9B A0 B0 C0 D4 E0", "-4.812 V dc step 0.001\n" },
    { "segments-14", "13 22 37 4F 5F 60 75 85 9B A1 B0 C0 D4 E0", "4.812 V diode step 0.001\n" },
    { "segments-14", "13 22 37 4F 5F 60 75 85 9B A0 B1 C4 D0 E0",
      "4.812 ohm continuity step 0.001\n" },
    { "segments-14", "17 22 37 4F 5F 60 75 85 9B A0 B0 C1 D4 E0",
      "4.812 V dc step 0.001 hold\n" },
    { "segments-14", "13 22 37 4F 5F 60 75 85 9B A1 B0 C4 D0 E0", "" },
    /* overload with the point elsewhere, and without one; "L0" */
    { "segments-14", "17 20 30 47 5D 66 78 80 90 A0 B0 C0 D4 E0", "- V dc step 0 over\n" },
    { "segments-14", "17 20 30 4F 5D 66 78 80 90 A0 B0 C0 D4 E0", "- V dc step 0 over\n" },
    { "segments-14", "17 20 30 46 58 67 7D 80 90 A0 B0 C0 D4 E0", "" },
  };

  check_cases (cases, G_N_ELEMENTS (cases));
}

static void
test_digits (void)
{
  static const Case cases[] = {
    { "digits-14", "31 31 32 30 35 38 3B 34 30 30 3C 30 0D 0A", "-12.058 V ac+dc step 0.001\n" },
    { "digits-14", "31 31 32 30 35 38 3B 31 30 30 3A 30 0D 0A", "- V dc step 0 over\n" },
    { "digits-14", "31 31 32 30 35 38 3B 32 30 30 3A 32 0D 0A",
      "12.058 V dc step 0.001 low hold\n" },
    { "digits-14", "30 30 35 31 32 30 31 30 30 30 38 30 0D 0A", "0.512 V diode step 0.0001\n" },
    { "digits-14", "30 30 30 31 32 30 35 30 30 30 30 30 0D 0A", "1.2 ohm continuity step 0.01\n" },
    { "digits-14", "30 32 32 30 30 30 3D 30 30 30 3A 30 0D 0A", "0.00022 A dc step 1e-08\n" },
    /* underload; the maximum of a while; neither DC nor AC; VAHZ; a bit that is never set */
    { "digits-14", "31 31 32 30 35 38 3B 30 30 38 3A 30 0D 0A", "- V dc step 0 over\n" },
    { "digits-14", "31 31 32 30 35 38 3B 30 38 30 3A 30 0D 0A", "12.058 V dc step 0.001 hold\n" },
    { "digits-14", "31 31 32 30 35 38 3B 30 30 30 32 30 0D 0A", "" },
    { "digits-14", "31 31 32 30 35 38 3B 30 30 30 3B 30 0D 0A", "" },
    { "digits-14", "31 31 32 30 35 38 3B 30 30 31 3A 30 0D 0A", "" },
    /* functions whose ranges nobody wrote down; letters; CR missing */
    { "digits-14", "31 31 32 30 35 38 32 30 30 30 3A 30 0D 0A", "" },
    { "digits-14", "31 31 32 30 35 38 4B 30 30 30 3A 30 0D 0A", "" },
    { "digits-14", "31 31 32 30 35 38 3B 30 30 30 3A 30 30 0A", "" },
    { "digits-11a", "31 31 32 30 36 3B 31 30 3A 0D 0A", "- V dc step 0 over\n" },
    { "digits-11a", "31 31 32 30 36 3B 30 30 30 0D 0A", "" },
  };

  check_cases (cases, G_N_ELEMENTS (cases));
}

static void
test_texts (void)
{
  static const char *const cases[][3] = {
    { "text-14", "DC -1.999   V\r", "-1.999 V dc step 0.001\n" },
    { "text-14", "DC -1.999  V \r", "-1.999 V dc step 0.001\n" },
    { "text-14", "DC -1.999 V\r", "" },
    { "text-14", "DC -1.999    V\r", "" },
    { "text-14", "DC  -1.999  V\r", "" }, /* a digit in the unit's field */
    { "text-14", "DC  -1.99   V\r", "-1.99 V dc step 0.01\n" },
    { "text-14", "DC-  1.99   V\r", "-1.99 V dc step 0.01\n" },
    { "text-14", "DC+  1.99   V\r", "1.99 V dc step 0.01\n" },
    { "text-14", "DC- -1.99   V\r", "" },
    { "text-14", "DC 1 1.99   V\r", "" },
    { "text-14", "DC  1.9E3   V\r", "" },
    { "text-14", "DC          V\r", "" },
    { "text-14", "DC    -OL   V\r", "- V dc step 0 over\n" },
    { "text-14", "DC  1.999 ohm\r", "" }, /* not a mode of ohms */
    { "text-14", "OH  1.999   V\r", "" },
    { "text-14", "HF    123    \r", "" },
    { "text-14", "CA  19.99  uF\r", "1.999e-05 F none step 1e-08\n" },
    { "text-14", "FR  19.99 kHz\r", "19990 Hz none step 10\n" },
    { "text-14", "TE     23   C\r", "23 C none step 1\n" },
    { "text-16", "\00241020100000212\r", "-6 C none step 0.0555555555555556\n" },
    { "text-16", "\00243341200001206\r", "-12.06 V dc step 0.01\n" },
    { "text-16", "\00244340200001206\r", "" }, /* no such display */
    { "text-16", "\00251340200001206\r", "" },
    { "text-16", "\00241340400001206\r", "" },
    { "text-16", "\00241342200001206\r", "" },
    { "text-16", "\00241680200001206\r", "" }, /* henry: no unit of ours */
    { "text-16", "\002413402000012 6\r", "" },
    { "text-16", "\0024134020001206\r", "" },
    { "text-16", "\002413402000001206\r", "" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (RwDecoder) decoder = rw_decoder_new (cases[i][0]);
      g_autofree char *got = decoder_probe_run (decoder, cases[i][1], strlen (cases[i][1]), 5,
                                                TRUE);

      g_test_message ("“%s”", cases[i][1]);
      g_assert_cmpstr (got, ==, cases[i][2]);
    }
}

static void
test_bad_bytes_shown (void)
{
  static const char *const cases[][3] = {
    { "segments-14", "17 22 37 4A 5F 60 75 85 9B A0 B0 C0 D4 E0",
      "17 22 37 4A 5F 60 75 85 9B A0 B0 C0 D4 E0" },
    { "digits-11a", "B0 B5 B0 31 32 BB B0 B0 BA 0D 8A", "B0 B5 B0 31 32 BB B0 B0 BA 0D 8A" },
    { "text-14", "58 58 20 20 31 32 2E 30 36 20 20 20 56 0D", "XX  12.06   V?" },
    { "text-14", "D8 D8 A0 A0 B1 B2 AE B0 B6 A0 A0 A0 D6 8D", "XX  12.06   V?" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (RwDecoder) decoder = rw_decoder_new (cases[i][0]);
      g_autoptr (GByteArray) bytes = from_hex (cases[i][1]);
      g_autofree char *got = decoder_probe_run (decoder, (const char *) bytes->data, bytes->len,
                                                1, TRUE);

      g_assert_cmpstr (got, ==, "");
      g_assert_cmpstr (rw_decoder_get_last_bad (decoder), ==, cases[i][2]);
    }
}

static void
test_offer (void)
{
  static const char *const order[] = { "lines",      "scpi",       "segments-14", "digits-14",
                                       "digits-11a", "digits-11b", "text-14",     "text-16" };
  const char *const *ids = rw_decoder_list_formats ();
  const RwSerialSettings *line = rw_decoder_get_usual_line ("segments-14");

  g_assert_cmpuint (g_strv_length ((char **) ids), ==, G_N_ELEMENTS (order));
  for (guint i = 0; i < G_N_ELEMENTS (order); i++)
    {
      g_assert_cmpstr (ids[i], ==, order[i]);
      g_assert_cmpstr (rw_decoder_get_poll (ids[i]), ==,
                       g_str_equal (ids[i], "text-14") ? "D" : NULL);
    }
  g_assert_null (rw_decoder_get_poll ("no-such-format"));
  g_assert_true (line->baud == 2400 && line->dtr && !line->rts);
  line = rw_decoder_get_usual_line ("digits-14");
  g_assert_true (line->baud == 19200 && line->bits == 7 && line->parity == RW_PARITY_ODD);
  line = rw_decoder_get_usual_line ("text-14");
  g_assert_true (line->baud == 1200 && line->bits == 7 && line->stop_bits == 2);
}

/* Lines: their bytes with one CR, LF or pair each; never those of a line not understood. */
static void
test_lines_explained (void)
{
  static const char text[] = "5.012 V\r\n5.013 V\r5.014 V\n\nhello\r\n5.0 V\n\r\r\n";
  g_autoptr (RwDecoder) decoder = rw_decoder_new ("lines");
  g_autofree char *got = decoder_probe_run (decoder, text, strlen (text), 1, FALSE);
  RwDecoderCounts counts;

  rw_decoder_get_counts (decoder, &counts);
  g_assert_cmpuint (counts.values, ==, 4);
  g_assert_cmpuint (counts.bytes_explained, ==, 9 + 8 + 8 + 7);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/frames/reads the published layouts", test_published);
  g_test_add_func ("/frames/refuses and counts what breaks a layout", test_bad);
  g_test_add_func ("/frames/knows the minus of each variant", test_minus_bits);
  g_test_add_func ("/frames/reads segments strictly", test_segments);
  g_test_add_func ("/frames/reads digits and flags strictly", test_digits);
  g_test_add_func ("/frames/reads text fields strictly", test_texts);
  g_test_add_func ("/frames/shows bad bytes so that people can read them", test_bad_bytes_shown);
  g_test_add_func ("/formats/are offered in order, with their line and question", test_offer);
  g_test_add_func ("/lines/counts the bytes it explains", test_lines_explained);
  return g_test_run ();
}
