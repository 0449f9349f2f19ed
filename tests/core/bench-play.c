/* bench-play.c: a session out of a few words.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "bench-play.h"

#include <math.h>
#include <string.h>

#include "fixtures.h"

#define HEADER_FORMAT                                                                                \
  "{\"railwright\":1,\"id\":\"0b7f\",\"started\":\"2026-03-14T09:30:00Z\","                          \
  "\"cabinet\":{\"name\":\"Tidepool Racer\",\"tag\":\"B-07\"},\"profile\":%s,\"meters\":["           \
  "{\"id\":\"m1\",\"name\":\"one\",\"percent\":0.5,\"counts\":2},"                                   \
  "{\"id\":\"m2\",\"name\":\"two\",\"percent\":0.5,\"counts\":2},"                                   \
  "{\"id\":\"m3\",\"name\":\"fine\",\"percent\":0.05,\"counts\":3}]}"

typedef struct
{
  RwSession  *session;
  double      t;
  const char *meter;
  double      step;
  gboolean    low;
} Play;

static void
add (Play   *self,
     RwEvent event)
{
  rw_session_add (self->session, &event);
}

static void
take_reading (Play   *self,
              char  **words)
{
  const guint n = g_strv_length (words);
  RwPlace place;
  RwKind kind = RW_KIND_DC;

  g_assert_cmpuint (n, >=, 3);
  g_assert_true (rw_place_from_id (words[1], &place));
  if (n > 3)
    g_assert_true (rw_kind_from_id (words[3], &kind));

  const gboolean over = g_str_equal (words[2], "OL");
  RwReading reading = rw_reading_make (words[0], place, kind, over ? (double) NAN : g_ascii_strtod (words[2], NULL),
                                       self->step, self->meter);

  reading.over = over;
  reading.low_battery = self->low;
  self->low = FALSE;
  add (self, rw_event_make_reading (self->t, &reading));
}

static void
take_back (Play *self)
{
  for (guint i = rw_session_get_n_events (self->session); i-- > 0;)
    {
      const RwEvent *event = rw_session_get_event (self->session, i);

      if (event->type != RW_EVENT_READING || !rw_session_is_live (self->session, i))
        continue;
      add (self, rw_event_make_retract (self->t, event->n));
      return;
    }
  g_assert_not_reached ();
}

static gboolean
set_up (Play       *self,
        const char *word)
{
  static const struct
  {
    const char *word;
    RwSetup     setup;
  } rows[] = {
    { "on", { RW_SAID_YES, RW_SAID_NOT, RW_SAID_NOT } },     { "off", { RW_SAID_NO, RW_SAID_NOT, RW_SAID_NOT } },
    { "fitted", { RW_SAID_NOT, RW_SAID_YES, RW_SAID_NOT } }, { "out", { RW_SAID_NOT, RW_SAID_NO, RW_SAID_NOT } },
    { "warm", { RW_SAID_NOT, RW_SAID_NOT, RW_SAID_YES } },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    if (g_str_equal (rows[i].word, word))
      {
        add (self, rw_event_make_setup (self->t, rows[i].setup));
        return TRUE;
      }
  return FALSE;
}

static void
take_word (Play  *self,
           char **words)
{
  const char *word = words[0];

  if (set_up (self, word))
    return;
  if (g_str_equal (word, "turn"))
    add (self, rw_event_make_trim (self->t));
  else if (g_str_equal (word, "fixed") || g_str_equal (word, "vain"))
    add (self, rw_event_make_repair (self->t, "edge-oxidised",
                                     g_str_equal (word, "fixed") ? RW_REPAIR_FIXED : RW_REPAIR_NO_CHANGE));
  else if (g_str_equal (word, "find"))
    add (self, rw_event_make_finding (self->t, "edge-connector-look", "dull"));
  else if (g_str_equal (word, "seen"))
    add (self, rw_event_make_symptom (self->t, "resets", RW_SYMPTOM_PRESENT));
  else if (g_str_equal (word, "note"))
    add (self, rw_event_make_note (self->t, "fan is noisy"));
  else if (g_str_equal (word, "undo"))
    take_back (self);
  else if (g_str_equal (word, "wait"))
    self->t += g_ascii_strtod (words[1], NULL);
  else if (g_str_equal (word, "nobody"))
    self->meter = NULL;
  else if (word[0] == 'm' && (word[1] >= '1' && word[1] <= '3') && words[1] == NULL)
    self->meter = g_intern_string (word);
  else if (g_str_equal (word, "step"))
    self->step = g_ascii_strtod (words[1], NULL);
  else if (g_str_equal (word, "low"))
    self->low = TRUE;
  else
    take_reading (self, words);
}

void
bench_go_on (RwSession  *session,
             const char *script)
{
  g_auto (GStrv) parts = g_strsplit (script, ";", -1);
  Play self = { session, rw_session_get_end (session), g_intern_static_string ("m1"), 0.001, FALSE };

  for (guint i = 0; parts[i] != NULL; i++)
    {
      g_auto (GStrv) words = g_strsplit (g_strstrip (parts[i]), " ", -1);

      if (words[0] == NULL || words[0][0] == '\0')
        continue;
      self.t += 3;
      take_word (&self, words);
    }
}

RwSession *
bench_play (const char *script,
            const char *profile)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *line = g_strdup_printf (HEADER_FORMAT, profile != NULL ? profile : FIXTURE_PROFILE);
  RwSessionHeader *header = rw_session_header_from_line (line, strlen (line), &error);

  g_assert_no_error (error);

  RwSession *session = rw_session_new (header);

  bench_go_on (session, script);
  return session;
}

char *
bench_ids (const RwBenchState *state)
{
  g_autoptr (GString) ids = g_string_new (NULL);

  for (guint i = 0; i < rw_bench_state_get_n_warnings (state); i++)
    g_string_append_printf (ids, "%s%s", i > 0 ? " " : "", rw_bench_state_get_warning (state, i)->id);
  return g_strdup (ids->str);
}

/* --- cases -------------------------------------------------------------------------------------- */

static void
assert_is_about_something (RwSession       *session,
                           const RwWarning *warning)
{
  const int index = rw_session_find (session, warning->n);

  g_assert_cmpint (index, >=, 0);
  g_assert_true (rw_session_is_live (session, (guint) index));

  const RwEventType type = rw_session_get_event (session, (guint) index)->type;

  g_assert_true (type == RW_EVENT_READING || type == RW_EVENT_TRIM);
  g_assert_true (g_utf8_validate (warning->text, -1, NULL));
  g_assert_cmpuint (g_utf8_strlen (warning->text, -1), >, 40);
}

void
bench_assert_sound (RwSession          *session,
                    const RwBenchState *state)
{
  for (guint i = 0; i < rw_bench_state_get_n_warnings (state); i++)
    {
      const RwWarning *it = rw_bench_state_get_warning (state, i);

      assert_is_about_something (session, it);
      for (guint k = 0; k < i; k++)
        {
          const RwWarning *before = rw_bench_state_get_warning (state, k);

          g_assert_true (before->danger > it->danger || (before->danger == it->danger && before->n >= it->n));
          g_assert_false (before->n == it->n && g_str_equal (before->id, it->id));
        }
    }
}

static void
assert_goes_when_taken_back (RwSession       *session,
                             const RwWarning *warning)
{
  RwEvent retract = rw_event_make_retract (rw_session_get_end (session), warning->n);

  rw_session_add (session, &retract);

  g_autoptr (RwBenchState) after = rw_bench_state_new (session);

  for (guint i = 0; i < rw_bench_state_get_n_warnings (after); i++)
    g_assert_cmpuint (rw_bench_state_get_warning (after, i)->n, !=, warning->n);
}

static void
check (const BenchCase *row,
       const char      *profile)
{
  g_autoptr (RwSession) session = bench_play (row->script, profile);
  g_autoptr (RwBenchState) state = rw_bench_state_new (session);
  g_autofree char *ids = bench_ids (state);

  g_test_message ("%s", row->claim);
  for (guint i = 0; i < rw_bench_state_get_n_warnings (state); i++)
    g_test_message ("  %u %s: %s", rw_bench_state_get_warning (state, i)->n, rw_bench_state_get_warning (state, i)->id,
                    rw_bench_state_get_warning (state, i)->text);
  g_assert_cmpstr (ids, ==, row->ids);
  bench_assert_sound (session, state);
  if (row->says != NULL)
    g_assert_nonnull (strstr (rw_bench_state_get_warning (state, 0)->text, row->says));
  for (guint i = 0; i < rw_bench_state_get_n_warnings (state); i++)
    {
      g_autoptr (RwSession) again = bench_play (row->script, profile);

      assert_goes_when_taken_back (again, rw_bench_state_get_warning (state, i));
    }
}

void
bench_check (const BenchCase *cases,
             guint            n,
             const char      *profile)
{
  for (guint i = 0; i < n; i++)
    check (&cases[i], profile);
}
