/* test-plain-text.c: a stranger's words are shown as words, and kept as they were written.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <string.h>

#include "fixtures.h"
#include "rw-event-json.h"
#include "rw-limits.h"
#include "rw-plain-text.h"

static void
assert_shown (const char *tainted,
              RwPlainKind kind,
              const char *shown)
{
  g_autofree char *plain = rw_plain_text_dup (tainted, kind);

  g_assert_cmpstr (plain, ==, shown);
  g_assert_true (rw_plain_text_is (plain, kind));
  g_assert_cmpint (rw_plain_text_is (tainted, kind), ==, g_str_equal (tainted, shown));
}

static void
test_common_words_stay (void)
{
  static const char *const words[] = { "", "+5 V", "fan is “noisy”", "−5 V · käuflich", "عطل \xE2\x80\x8E+5 V\xE2\x80\x8F", "नमस्ते", "👩‍🔧",
                                       "<b>5 V</b> & more", "=1+1", "../../etc" };

  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    {
      assert_shown (words[i], RW_PLAIN_NAME, words[i]);
      assert_shown (words[i], RW_PLAIN_TEXT, words[i]);
    }
  assert_shown ("two\nlines\tand a tab", RW_PLAIN_TEXT, "two\nlines\tand a tab");
  assert_shown ("two\r\nlines", RW_PLAIN_TEXT, "two\r\nlines");
  assert_shown ("over\rwritten", RW_PLAIN_TEXT, "over�written");
  assert_shown ("two\nlines\tand a tab", RW_PLAIN_NAME, "two lines and a tab");
}

static void
test_hidden_characters_are_seen (void)
{
  assert_shown ("bell\a, escape\033[31m", RW_PLAIN_TEXT, "bell�, escape�[31m");
  assert_shown ("c1 \302\233 del \177", RW_PLAIN_TEXT, "c1 � del �");
  assert_shown ("\xE2\x80\xAEgpj.exe", RW_PLAIN_NAME, "�gpj.exe");
  assert_shown ("\xE2\x81\xA6" "inside\xE2\x81\xA9", RW_PLAIN_NAME, "�inside�");
  assert_shown ("\xEF\xBB\xBFmark", RW_PLAIN_NAME, "�mark");
  assert_shown ("\xF3\xA0\x80\x81tag", RW_PLAIN_NAME, "�tag");
  assert_shown ("line\xE2\x80\xA8separator", RW_PLAIN_TEXT, "line separator");
}

static void
test_long_words_are_cut (void)
{
  g_autofree char *name = g_strnfill (RW_LIMIT_NAME_CHARS, 'x');
  g_autofree char *more = g_strconcat (name, "y", NULL);
  g_autofree char *plain = rw_plain_text_dup (more, RW_PLAIN_NAME);

  assert_shown (name, RW_PLAIN_NAME, name);
  g_assert_cmpint (g_utf8_strlen (plain, -1), ==, RW_LIMIT_NAME_CHARS);
  g_assert_true (g_str_has_suffix (plain, "x…"));
  g_assert_true (rw_plain_text_is (more, RW_PLAIN_TEXT));
}

/* Every way in which words of a line come to be shown. */
static void
test_no_event_tells_hidden_characters (void)
{
  static const char *const payloads[] = {
    "\"note\":{\"text\":\"a\\u202eb\\u001b[2J\"}",
    "\"mark\":{\"what\":\"a\\u202eb\"}",
    "\"symptom\":{\"id\":\"a\\u202eb\",\"state\":\"present\"}",
    "\"finding\":{\"check\":\"a\\u202eb\",\"outcome\":\"\\u202e\"}",
    "\"repair\":{\"cause\":\"a\\u202eb\",\"result\":\"fixed\"}",
    "\"stage\":{\"id\":\"a\\u202eb\",\"against\":\"because\\u0007\"}",
    "\"gap\":{\"meter\":\"\\u202em\",\"why\":\"\\u0008\"}",
    "\"meter\":{\"id\":\"\\u202em\",\"name\":\"\\u202em\"}",
    "\"reading\":{\"rail\":\"\\u202ep5\",\"place\":\"board\",\"value\":5,\"meter\":\"\\u202em\"}",
    "\"call\":{\"by\":\"\\u202eMo\",\"value\":5}",
  };

  for (guint i = 0; i < G_N_ELEMENTS (payloads); i++)
    {
      g_autofree char *line = g_strdup_printf ("{\"n\":1,\"t\":0.000,%s}", payloads[i]);
      RwEvent event = fixture_event (line);
      g_autofree char *told = rw_event_describe (&event, NULL);
      g_autofree char *written = fixture_line (&event);

      g_test_message ("%s", told);
      g_assert_true (rw_plain_text_is (told, RW_PLAIN_TEXT));
      g_assert_cmpstr (written, ==, line); /* and nothing is lost */
      rw_event_clear (&event);
    }
}

static void
test_no_header_tells_hidden_characters (void)
{
  static const char line[]
      = "{\"railwright\":1,\"id\":\"a\\u202eb\",\"started\":\"2026-03-14T09:30:00Z\","
        "\"cabinet\":{\"name\":\"Tide\\u202epool\\n<b>\",\"tag\":\"\\u001b]0;x\\u0007\"},"
        "\"profile\":{\"id\":\"x\\u202e\",\"title\":\"t\\u202e\",\"reference\":\"p\\u202e5\",\"rails\":[{\"id\":\"p\\u202e5\","
        "\"label\":\"+5\\u202e V\",\"feeds\":\"\\u202e\",\"nominal\":5,\"limits\":[4.9,5.2]}]},"
        "\"meters\":[{\"id\":\"m\\u202e1\",\"name\":\"\\u202e\"}]}";
  g_autoptr (GError) error = NULL;
  g_autoptr (RwSessionHeader) header = rw_session_header_from_line (line, strlen (line), &error);
  g_autoptr (GString) written = g_string_new (NULL);

  g_assert_no_error (error);

  const RwRail *rail = rw_profile_get_reference (header->profile);
  const RwMeterFacts *meter = header->meters->pdata[0];
  const char *const shown[] = { header->id, header->cabinet_name, header->cabinet_tag,
                                rw_profile_get_id (header->profile), rw_profile_get_title (header->profile),
                                rail->id, rail->label, rail->feeds, meter->id, meter->name };

  for (guint i = 0; i < G_N_ELEMENTS (shown); i++)
    g_assert_true (rw_plain_text_is (shown[i], RW_PLAIN_NAME));
  rw_session_header_append_line (header, written);
  g_string_truncate (written, written->len - 1);
  g_assert_cmpstr (written->str, ==, line);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/plain-text/common words of all scripts stay as they are", test_common_words_stay);
  g_test_add_func ("/plain-text/what is hidden is seen", test_hidden_characters_are_seen);
  g_test_add_func ("/plain-text/long words are cut", test_long_words_are_cut);
  g_test_add_func ("/plain-text/no event tells anything hidden, and none loses it",
                   test_no_event_tells_hidden_characters);
  g_test_add_func ("/plain-text/no header tells anything hidden, and none loses it",
                   test_no_header_tells_hidden_characters);
  return g_test_run ();
}
