/* fixtures.c: what the tests of the core share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "fixtures.h"

#include <glib/gstdio.h>
#include <locale.h>
#include <math.h>
#include <string.h>

#include "rw-event-json.h"

void
fixture_init (int    *argc,
              char ***argv)
{
  const char *asked = g_getenv ("LC_ALL");

  setlocale (LC_ALL, "");
  if (asked != NULL && g_str_has_prefix (asked, "de_DE")
      && !g_str_equal (localeconv ()->decimal_point, ","))
    g_error ("the locale with a comma was not made: LC_ALL is %s, but the mark is “%s”", asked,
             localeconv ()->decimal_point);
  g_test_init (argc, argv, NULL);
}

RwProfile *
fixture_profile (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) node = json_from_string (FIXTURE_PROFILE, &error);

  g_assert_no_error (error);

  RwProfile *profile = rw_profile_new_from_node (node, "fixture", &error);

  g_assert_no_error (error);
  return profile;
}

RwSession *
fixture_session (void)
{
  g_autoptr (GError) error = NULL;
  RwSessionHeader *header = rw_session_header_from_line (FIXTURE_HEADER, strlen (FIXTURE_HEADER),
                                                         &error);

  g_assert_no_error (error);
  return rw_session_new (header);
}

JsonNode *
fixture_refdata (const char *name)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "core", "data", name, NULL);

  json_parser_load_from_file (parser, path, &error);
  g_assert_no_error (error);
  return json_parser_steal_root (parser);
}

double
fixture_number (JsonNode *node,
                ...)
{
  va_list keys;
  const char *key;

  va_start (keys, node);
  while ((key = va_arg (keys, const char *)) != NULL)
    {
      node = json_object_get_member (json_node_get_object (node), key);
      g_assert_nonnull (node);
    }
  va_end (keys);
  return json_node_get_double (node);
}

RwEvent
fixture_event (const char *line)
{
  g_autoptr (GError) error = NULL;
  RwEvent event;

  if (!rw_event_from_line (line, strlen (line), &event, &error))
    g_error ("%s: %s", line, error->message);
  return event;
}

char *
fixture_line (const RwEvent *event)
{
  GString *out = g_string_new (NULL);

  rw_event_append_line (event, out);
  g_assert_cmpint (out->str[out->len - 1], ==, '\n');
  g_string_truncate (out, out->len - 1);
  return g_string_free (out, FALSE);
}

static RwReading
random_reading (GRand *random)
{
  static const char *const rails[] = { "p5", "p12", "m5", "gnd", "p24" };
  static const double steps[] = { 0, 0.1, 0.01, 0.001, 0.0001 };
  const double step = steps[g_rand_int_range (random, 0, G_N_ELEMENTS (steps))];
  const double raw = g_rand_double_range (random, -15, 15);
  RwReading reading = rw_reading_make (rails[g_rand_int_range (random, 0, G_N_ELEMENTS (rails))],
                                       (RwPlace) g_rand_int_range (random, 0, RW_N_PLACES),
                                       (RwKind) g_rand_int_range (random, 0, RW_N_KINDS),
                                       step > 0 ? round (raw / step) * step : raw, step,
                                       g_rand_boolean (random) ? "m1" : NULL);

  if (g_rand_int_range (random, 0, 12) == 0)
    {
      reading.over = TRUE;
      reading.value = NAN;
    }
  if (g_rand_int_range (random, 0, 8) == 0)
    reading.u = g_rand_double_range (random, 0, 0.1);
  reading.low_battery = g_rand_int_range (random, 0, 8) == 0;
  return reading;
}

static RwEvent
random_meter (GRand *random,
              double t)
{
  const RwMeterFacts facts = { .id = (char *) (g_rand_boolean (random) ? "m1" : "m2"),
                               .name = (char *) (g_rand_boolean (random) ? "bench \"meter\"" : ""),
                               .percent = g_rand_double_range (random, 0, 2),
                               .counts = g_rand_int_range (random, 0, 10),
                               .ac = (RwMeterAc) g_rand_int_range (random, 0, 3) };

  return rw_event_make_meter (t, &facts);
}

static RwEvent
random_words (GRand *random,
              double t)
{
  static const char *const words[] = {
    "fan is noisy", "", "quote \" and \\ back", "tab\tand\nnewline", "−5 V µ Ω ünïcödé 😀", "}{][,:", "\t\n\t",
  };
  const char *word = words[g_rand_int_range (random, 0, G_N_ELEMENTS (words))];

  switch (g_rand_int_range (random, 0, 3))
    {
    case 0:
      return rw_event_make_mark (t, word);
    case 1:
      return rw_event_make_note (t, word);
    default:
      return rw_event_make_gap (t, g_rand_boolean (random) ? "m1" : NULL, word);
    }
}

static RwEvent
random_call (GRand *random,
             double t)
{
  const double give = g_rand_boolean (random) ? g_rand_double_range (random, 0.001, 1) : (double) NAN;
  RwCallSaid said;

  switch (g_rand_int_range (random, 0, 5))
    {
    case 0:
      said = rw_call_said_ask ("p12", (RwPlace) g_rand_int_range (random, 0, RW_N_PLACES),
                               (RwKind) g_rand_int_range (random, 0, RW_N_KINDS), give);
      break;
    case 1:
      said = rw_call_said_value ("team \"1\" \\", g_rand_double_range (random, -15, 15), give);
      break;
    case 2:
      said = rw_call_said_hands (g_rand_int_range (random, 0, 30), 0, g_rand_int_range (random, 0, 30));
      break;
    case 3:
      said = rw_call_said_reveal ((guint) g_rand_int_range (random, 1, 1000));
      break;
    default:
      said = rw_call_said_drop ();
      break;
    }

  RwEvent event = rw_event_make_call (t, &said);

  rw_call_said_clear (&said);
  return event;
}

static RwEvent
random_setup (GRand *random,
              double t)
{
  const RwSetup setup = {
    (RwSaid) g_rand_int_range (random, -1, 2),
    (RwSaid) g_rand_int_range (random, -1, 2),
    (RwSaid) g_rand_int_range (random, -1, 2),
  };

  return rw_event_make_setup (t, setup);
}

RwEvent
fixture_random_event (GRand *random,
                      double t,
                      guint  n)
{
  const RwReading reading = random_reading (random);

  switch (g_rand_int_range (random, 0, 16))
    {
    case 0:
      return random_setup (random, t);
    case 1:
    case 2:
      return rw_event_make_reading (t, &reading);
    case 3:
      return rw_event_make_trim (t);
    case 4:
      return rw_event_make_symptom (t, "resets", (RwSymptomState) g_rand_int_range (random, 0, 3));
    case 5:
      return rw_event_make_finding (t, "edge-connector-look",
                                    g_rand_boolean (random) ? "dark" : "bright");
    case 6:
      return rw_event_make_repair (t, "trim-low", (RwRepairResult) g_rand_int_range (random, 0, 2));
    case 7:
    case 8:
      return random_words (random, t);
    case 9:
      return g_rand_boolean (random)   ? rw_event_make_stage (t, "under-load")
             : g_rand_boolean (random) ? rw_event_make_stage_read (t, "bare-supply")
                                       : rw_event_make_stage_against (t, "fit-board", "it ran \"yesterday\"");
    case 10:
      return n > 0 ? rw_event_make_retract (t, (guint) g_rand_int_range (random, 1, (int) n + 1))
                   : rw_event_make_trim (t);
    case 11:
      {
        char time[G_ASCII_DTOSTR_BUF_SIZE];
        g_autofree char *line =
            g_strdup_printf ("{\"n\":%u,\"t\":%s,\"weather\":{\"hot\":[1,2.50,null]}}", n + 1,
                                                 g_ascii_formatd (time, sizeof time, "%.3f", t));

        return fixture_event (line);
      }
    case 12:
      return random_meter (random, t);
    case 13:
      return random_call (random, t);
    default:
      return rw_event_make_sample (t, &reading);
    }
}

static void
assert_same_number (double a,
                    double b)
{
  if (!(isnan (a) && isnan (b)))
    g_assert_cmpfloat (a, ==, b);
}

static void
assert_same_reading (const RwReading *a,
                     const RwReading *b)
{
  g_assert_cmpstr (a->rail, ==, b->rail);
  g_assert_cmpstr (a->meter, ==, b->meter);
  g_assert_true (a->rail == b->rail && a->meter == b->meter); /* interned */
  g_assert_cmpint (a->place, ==, b->place);
  g_assert_cmpint (a->kind, ==, b->kind);
  g_assert_cmpint (a->over, ==, b->over);
  assert_same_number (a->value, b->value);
  assert_same_number (a->step, b->step);
  assert_same_number (a->u, b->u);
  g_assert_cmpint (a->low_battery, ==, b->low_battery);
}

static void
assert_same_call (const RwCallSaid *a,
                  const RwCallSaid *b)
{
  g_assert_cmpint (a->form, ==, b->form);
  if (a->form == RW_CALL_ASK)
    {
      g_assert_cmpstr (a->ask.rail, ==, b->ask.rail);
      g_assert_cmpint (a->ask.place, ==, b->ask.place);
      g_assert_cmpint (a->ask.kind, ==, b->ask.kind);
      assert_same_number (a->ask.was, b->ask.was);
    }
  else if (a->form == RW_CALL_VALUE)
    {
      g_assert_cmpstr (a->value.by, ==, b->value.by);
      assert_same_number (a->value.value, b->value.value);
      assert_same_number (a->value.give, b->value.give);
    }
  else if (a->form == RW_CALL_HANDS)
    for (guint i = 0; i < RW_N_CALL_SIDES; i++)
      g_assert_cmpuint (a->hands[i], ==, b->hands[i]);
  else if (a->form == RW_CALL_REVEAL)
    g_assert_cmpuint (a->reveal, ==, b->reveal);
}

static void
assert_same_payload (const RwEvent *a,
                     const RwEvent *b)
{
  switch (a->type)
    {
    case RW_EVENT_SETUP:
      g_assert_cmpint (a->setup.power_on, ==, b->setup.power_on);
      g_assert_cmpint (a->setup.board_fitted, ==, b->setup.board_fitted);
      g_assert_cmpint (a->setup.warm, ==, b->setup.warm);
      break;
    case RW_EVENT_READING:
    case RW_EVENT_SAMPLE:
      assert_same_reading (&a->reading, &b->reading);
      break;
    case RW_EVENT_TRIM:
      g_assert_cmpint (a->trim.moved, ==, b->trim.moved);
      break;
    case RW_EVENT_SYMPTOM:
      g_assert_cmpstr (a->symptom.id, ==, b->symptom.id);
      g_assert_cmpint (a->symptom.state, ==, b->symptom.state);
      break;
    case RW_EVENT_FINDING:
      g_assert_cmpstr (a->finding.check, ==, b->finding.check);
      g_assert_cmpstr (a->finding.outcome, ==, b->finding.outcome);
      break;
    case RW_EVENT_REPAIR:
      g_assert_cmpstr (a->repair.cause, ==, b->repair.cause);
      g_assert_cmpint (a->repair.result, ==, b->repair.result);
      break;
    case RW_EVENT_MARK:
    case RW_EVENT_NOTE:
      g_assert_cmpstr (a->words.text, ==, b->words.text);
      break;
    case RW_EVENT_STAGE:
      g_assert_cmpstr (a->stage.id, ==, b->stage.id);
      g_assert_cmpint (a->stage.read, ==, b->stage.read);
      g_assert_cmpstr (a->stage.against, ==, b->stage.against);
      break;
    case RW_EVENT_RETRACT:
      g_assert_cmpuint (a->retract.n, ==, b->retract.n);
      break;
    case RW_EVENT_GAP:
      g_assert_cmpstr (a->gap.meter, ==, b->gap.meter);
      g_assert_cmpstr (a->gap.why, ==, b->gap.why);
      break;
    case RW_EVENT_METER:
      g_assert_cmpstr (a->meter->id, ==, b->meter->id);
      g_assert_cmpstr (a->meter->name, ==, b->meter->name);
      assert_same_number (a->meter->percent, b->meter->percent);
      assert_same_number (a->meter->counts, b->meter->counts);
      g_assert_cmpint (a->meter->ac, ==, b->meter->ac);
      break;
    case RW_EVENT_CALL:
      assert_same_call (&a->call, &b->call);
      break;
    case RW_EVENT_UNKNOWN:
      g_assert_nonnull (a->line);
      break;
    case RW_N_EVENT_TYPES:
    default:
      g_assert_not_reached ();
    }
}

void
fixture_assert_same_event (const RwEvent *a,
                           const RwEvent *b)
{
  g_assert_cmpuint (a->n, ==, b->n);
  g_assert_cmpfloat (a->t, ==, b->t);
  g_assert_cmpint (a->type, ==, b->type);
  g_assert_cmpstr (a->line, ==, b->line);
  assert_same_payload (a, b);
}

char *
fixture_folder (void)
{
  g_autoptr (GError) error = NULL;
  char *folder = g_dir_make_tmp ("railwright-XXXXXX", &error);

  g_assert_no_error (error);
  return folder;
}

void
fixture_remove (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      if (g_file_test (path, G_FILE_TEST_IS_DIR) && !g_file_test (path, G_FILE_TEST_IS_SYMLINK))
        fixture_remove (path);
      else
        g_unlink (path);
    }
  g_rmdir (folder);
}

static gboolean
time_over_cb (gpointer data)
{
  *(gboolean *) data = TRUE;
  return G_SOURCE_REMOVE;
}

void
fixture_spin (double          seconds,
              const gboolean *flag)
{
  gboolean over = FALSE;
  const guint id = g_timeout_add ((guint) (seconds * 1000), time_over_cb, &over);

  while (!over && (flag == NULL || !*flag))
    g_main_context_iteration (NULL, TRUE);
  if (!over)
    g_source_remove (id);
}
