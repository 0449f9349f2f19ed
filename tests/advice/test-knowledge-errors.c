/* test-knowledge-errors.c: whatever is wrong with a knowledge file, the message names file and key.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each wrong file is a good one with one piece replaced.
 */
#include "config.h"

#include <string.h>

#include "job-fixtures.h"

static const char good[] =
    "{\"symptoms\":[{\"id\":\"s\",\"title\":\"S\",\"group\":\"game\",\"chance\":{\"default\":0.1,\"a\":0.5}}],"
    "\"causes\":[{\"id\":\"a\",\"title\":\"A\",\"area\":\"supply\",\"prior\":2,"
    "\"needs\":{\"rails\":[\"p5\"],\"supply\":\"linear\"},"
    "\"repair\":{\"title\":\"R\",\"minutes\":7,\"cost\":1,\"hazard\":\"none\",\"who\":\"anyone\","
    "\"steps\":[\"one\"],\"recheck\":[\"t\"]}}],"
    "\"checks\":[{\"id\":\"t\",\"title\":\"T\",\"minutes\":3,\"hazard\":\"low-voltage\",\"who\":\"anyone\","
    "\"how\":[\"first\"],\"why\":\"because\",\"setup\":{\"power\":\"on\",\"board\":\"any\",\"warm\":\"cold\"},"
    "\"measure\":{\"rail\":\"p5\",\"place\":\"board\",\"kind\":\"dc\"},"
    "\"outcomes\":[{\"id\":\"x\",\"title\":\"X\",\"to\":4.8},{\"id\":\"y\",\"title\":\"Y\",\"from\":4.8}],"
    "\"chance\":{\"default\":[0.2,0.8],\"a\":[0.9,0.1]},\"source\":\"estimate\"}]}";

static const struct
{
  const char *piece;
  const char *instead;
  const char *where; /* in the message */
  const char *key;
} wrong[] = {
  { "\"symptoms\":[{", "\"symptoms\":{\"x\":{", NULL, "" }, /* not JSON */
  { "\"id\":\"s\"", "\"id\":\"\"", "symptoms[0]", "“id”" },
  { "\"title\":\"S\"", "\"title\":5", "symptoms[0]", "“title”" },
  { "\"group\":\"game\"", "\"group\":\"weather\"", "symptoms[0]", "“group”" },
  { "{\"default\":0.1,\"a\":0.5}", "{\"a\":0.5}", "symptoms[0]: chance", "“default”" },
  { "{\"default\":0.1,\"a\":0.5}", "{\"default\":1.1}", "symptoms[0]: chance", "“default”" },
  { "{\"default\":0.1,\"a\":0.5}", "7", "symptoms[0]: chance", "object" },
  { "{\"default\":0.1,\"a\":0.5}", "{\"default\":0.1,\"b\":0.5}", "symptoms[0]", "“b”" },
  { "\"area\":\"supply\"", "\"area\":\"moon\"", "causes[0]", "“area”" },
  { "\"prior\":2", "\"prior\":0", "causes[0]", "“prior”" },
  { "\"needs\":{\"rails\":[\"p5\"]", "\"needs\":{\"rails\":\"p5\"", "causes[0]: needs", "“rails”" },
  { "\"supply\":\"linear\"", "\"supply\":[]", "causes[0]: needs", "“supply”" },
  { "\"minutes\":7", "\"minutes\":\"7\"", "causes[0]: repair", "“minutes”" },
  { "\"cost\":1", "\"cost\":5", "causes[0]: repair", "“cost”" },
  { "\"cost\":1", "\"cost\":1.5", "causes[0]: repair", "“cost”" },
  { "\"hazard\":\"none\"", "\"hazard\":\"some\"", "causes[0]: repair", "“hazard”" },
  { "\"hazard\":\"none\",\"who\":\"anyone\"", "\"hazard\":\"none\"", "causes[0]: repair", "“who”" },
  { "\"steps\":[\"one\"]", "\"steps\":[1]", "causes[0]: repair", "“steps”" },
  { "\"recheck\":[\"t\"]", "\"recheck\":[\"u\"]", "causes[0]", "“recheck”" },
  { "\"repair\":{", "\"mend\":{", "causes[0]: repair", "object" },
  { "\"minutes\":3", "\"minutes\":-3", "checks[0]", "“minutes”" },
  { "\"hazard\":\"low-voltage\"", "\"hazard\":\"mains\"", "checks[0]", "“safety”" },
  { "\"how\":[\"first\"]", "\"how\":\"first\"", "checks[0]", "“how”" },
  { "\"why\":\"because\"", "\"why\":1", "checks[0]", "“why”" },
  { "\"power\":\"on\"", "\"power\":\"perhaps\"", "checks[0]: setup", "“power”" },
  { "\"warm\":\"cold\"", "\"warm\":true", "checks[0]: setup", "“warm”" },
  { "\"place\":\"board\"", "\"place\":\"moon\"", "checks[0]: measure", "“place”" },
  { "\"kind\":\"dc\"", "\"kind\":\"taste\"", "checks[0]: measure", "“kind”" },
  { "\"rail\":\"p5\",", "", "checks[0]: measure", "“rail”" },
  { "\"id\":\"y\"", "\"id\":\"x\"", "checks[0]: outcomes[1]", "“id”" },
  { "\"from\":4.8", "\"from\":4.9", "checks[0]", "“outcomes”" },
  { "\"from\":4.8", "\"from\":4.7", "checks[0]", "“outcomes”" },
  { "\"from\":4.8", "\"from\":4.8,\"to\":6", "checks[0]", "“outcomes”" },
  { "\"to\":4.8", "\"to\":\"4,8\"", "checks[0]: outcomes[0]", "“to”" },
  { "[0.2,0.8]", "[0.2,0.7]", "checks[0]: chance", "“default”" },
  { "[0.9,0.1]", "[0.9,0.05,0.05]", "checks[0]: chance", "“a”" },
  { "[0.9,0.1]", "[1.9,-0.9]", "checks[0]: chance", "“a”" },
  { "\"a\":[0.9,0.1]", "\"c\":[0.9,0.1]", "checks[0]", "“c”" },
  { "\"source\":\"estimate\"", "\"source\":\"hearsay\"", "checks[0]", "“source”" },
  { "\"checks\":[{", "\"checks\":[7,{", "checks[0]", "object" },
};

static char *
with_piece_replaced (guint k)
{
  const char *at = strstr (good, wrong[k].piece);

  g_assert_nonnull (at);
  return g_strdup_printf ("%.*s%s%s", (int) (at - good), good, wrong[k].instead,
                          at + strlen (wrong[k].piece));
}

static void
test_good_one_is_good (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge_from (good);

  g_assert_cmpuint (rw_knowledge_get_n_checks (knowledge), ==, 1);
}

static void
test_errors_name_file_and_key (void)
{
  for (guint k = 0; k < G_N_ELEMENTS (wrong); k++)
    {
      g_autofree char *text = with_piece_replaced (k);
      g_autoptr (GError) error = NULL;
      g_autoptr (RwKnowledge) knowledge = fixture_try_knowledge (text, &error);

      g_test_message ("%s → %s", wrong[k].instead, error != NULL ? error->message : "read");
      g_assert_null (knowledge);
      g_assert_error (error, RW_KNOWLEDGE_ERROR, RW_KNOWLEDGE_ERROR_FORMAT);
      g_assert_nonnull (strstr (error->message, "mine.json"));
      g_assert_nonnull (strstr (error->message, wrong[k].where != NULL ? wrong[k].where : ""));
      g_assert_nonnull (strstr (error->message, wrong[k].key));
    }
}

static void
test_id_stands_once_in_a_file (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RwKnowledge) knowledge = fixture_try_knowledge (
      "{\"symptoms\":[{\"id\":\"s\",\"title\":\"S\",\"group\":\"game\",\"chance\":{\"default\":0.1}},"
      "{\"id\":\"s\",\"title\":\"S\",\"group\":\"game\",\"chance\":{\"default\":0.1}}]}",
      &error);

  g_assert_null (knowledge);
  g_assert_nonnull (strstr (error->message, "mine.json: symptoms[1]"));
  g_assert_nonnull (strstr (error->message, "“id”"));
}

static void
test_cut_file_never_crashes (void)
{
  for (gsize length = 0; length < strlen (good); length += 7)
    {
      g_autofree char *text = g_strndup (good, length);
      g_autoptr (GError) error = NULL;

      g_assert_null (fixture_try_knowledge (text, &error));
      g_assert_error (error, RW_KNOWLEDGE_ERROR, RW_KNOWLEDGE_ERROR_FORMAT);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/knowledge-errors/the good one is good", test_good_one_is_good);
  g_test_add_func ("/knowledge-errors/errors name file and key", test_errors_name_file_and_key);
  g_test_add_func ("/knowledge-errors/an id stands once in a file", test_id_stands_once_in_a_file);
  g_test_add_func ("/knowledge-errors/a cut file never crashes", test_cut_file_never_crashes);
  return g_test_run ();
}
