/* practice-bench.c: a person with a meter at a practice cabinet, who writes down what they believe they read.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "practice-bench.h"

static void
lethal_cb (RwPracticeCabinet *cabinet,
           const char        *node,
           const char        *text,
           gpointer           data)
{
  PracticeBench *self = data;

  self->n_lethal++;
  g_free (self->lethal_text);
  self->lethal_text = g_strdup (text);
}

static void
say_setup (PracticeBench *self)
{
  const RwSetup setup = { rw_practice_cabinet_get_power (self->cabinet) ? RW_SAID_YES : RW_SAID_NO,
                          rw_practice_cabinet_get_board_fitted (self->cabinet) ? RW_SAID_YES : RW_SAID_NO,
                          rw_practice_cabinet_get_warm (self->cabinet) ? RW_SAID_YES : RW_SAID_NO };
  RwEvent event = rw_event_make_setup (rw_practice_cabinet_get_seconds (self->cabinet), setup);

  rw_session_add (self->session, &event);
}

PracticeBench *
practice_bench_new (const char *profile,
                    guint64     seed,
                    const char *fault,
                    double      strength)
{
  PracticeBench *self = g_new0 (PracticeBench, 1);
  g_autoptr (GPtrArray) meters = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_meter_facts_free);
  g_autoptr (GDateTime) started = g_date_time_new_utc (2024, 3, 9, 10, 0, 0);

  self->cabinet = practice_running (profile, seed, fault, strength, 3);
  self->meter = rw_practice_meter_new (self->cabinet, "m1", "bench meter", 0.09, 2, 6000, seed);
  rw_practice_meter_set_contact_volts (self->meter, 0);
  g_signal_connect (self->cabinet, "lethal", G_CALLBACK (lethal_cb), self);
  g_ptr_array_add (meters, rw_meter_facts_copy (rw_practice_meter_get_facts (self->meter)));
  self->session = rw_session_new (rw_session_header_new (rw_practice_cabinet_get_profile (self->cabinet),
                                                         "Tidepool Racer", "", meters, started));
  say_setup (self);
  return self;
}

void
practice_bench_free (PracticeBench *self)
{
  g_object_unref (self->meter);
  g_object_unref (self->cabinet);
  g_object_unref (self->session);
  g_free (self->lethal_text);
  g_free (self);
}

void
practice_bench_power (PracticeBench *self,
                      gboolean       on,
                      double         seconds)
{
  rw_practice_cabinet_set_power (self->cabinet, on);
  rw_practice_cabinet_advance (self->cabinet, seconds);
  say_setup (self);
}

void
practice_bench_fit (PracticeBench *self,
                    gboolean       fitted)
{
  practice_bench_power (self, FALSE, 60);
  rw_practice_cabinet_set_board_fitted (self->cabinet, fitted);
  practice_bench_power (self, TRUE, 5);
}

void
practice_bench_turn (PracticeBench *self,
                     double         volts)
{
  RwEvent event = rw_event_make_trim (rw_practice_cabinet_get_seconds (self->cabinet));

  rw_practice_cabinet_turn_trim_volts (self->cabinet, volts);
  rw_session_add (self->session, &event);
  rw_practice_cabinet_advance (self->cabinet, 1);
}

void
practice_bench_put (PracticeBench *self,
                    const char    *red,
                    const char    *black)
{
  g_assert_true (rw_practice_cabinet_put_lead (self->cabinet, RW_PRACTICE_RED, red));
  g_assert_true (rw_practice_cabinet_put_lead (self->cabinet, RW_PRACTICE_BLACK, black));
}

void
practice_bench_set (PracticeBench *self,
                    RwPracticeMode mode)
{
  rw_practice_meter_set_mode (self->meter, mode, RW_PRACTICE_JACK_VOLTS);
}

RwPracticeShown
practice_bench_look (PracticeBench *self)
{
  rw_practice_cabinet_advance (self->cabinet, 12); /* longer than a repeat of the same reading would be */

  g_autoptr (GArray) shown = rw_practice_meter_take_shown (self->meter);

  g_assert_cmpuint (shown->len, >, 0);
  return g_array_index (shown, RwPracticeShown, shown->len - 1);
}

static double
keep (PracticeBench *self,
      const char    *rail,
      RwPlace        place,
      RwKind         kind)
{
  const RwPracticeShown shown = practice_bench_look (self);
  RwReading reading = rw_reading_make (rail, place, kind, shown.value, shown.step, "m1");

  reading.over = shown.over;

  RwEvent event = rw_event_make_reading (shown.t, &reading);

  rw_session_add (self->session, &event);
  return shown.value;
}

void
practice_bench_claim (PracticeBench *self,
                      const char    *rail,
                      RwPlace        place,
                      RwKind         kind)
{
  keep (self, rail, place, kind);
}

double
practice_bench_read (PracticeBench *self,
                     const char    *red,
                     const char    *black,
                     const char    *rail,
                     RwPlace        place,
                     RwKind         kind)
{
  practice_bench_put (self, red, black);
  return keep (self, rail, place, kind);
}

gboolean
practice_bench_warned (PracticeBench *self,
                       const char    *id)
{
  g_autoptr (RwBenchState) state = rw_bench_state_new (self->session);

  for (guint i = 0; i < rw_bench_state_get_n_warnings (state); i++)
    if (g_strcmp0 (rw_bench_state_get_warning (state, i)->id, id) == 0)
      return TRUE;
  return FALSE;
}

guint
practice_bench_n_warnings (PracticeBench *self)
{
  g_autoptr (RwBenchState) state = rw_bench_state_new (self->session);

  for (guint i = 0; i < rw_bench_state_get_n_warnings (state); i++)
    g_test_message ("warning %s: %s", rw_bench_state_get_warning (state, i)->id,
                    rw_bench_state_get_warning (state, i)->text);
  return rw_bench_state_get_n_warnings (state);
}
