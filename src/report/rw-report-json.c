/* rw-report-json.c: a session's summary, and the whole session, as JSON.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-report-json.h"

#include <math.h>

#include "rw-event-json.h"
#include "rw-json-out.h"
#include "rw-report-trim.h"

static const char *const symptom_states[] = { "present", "absent", "cured" };

static void
append_rail (const RwSpotState *spot,
             GString           *out)
{
  rw_json_out_open (out, '{');
  rw_json_out_string (out, "rail", spot->reading.rail);
  rw_json_out_string (out, "place", rw_place_to_id (spot->reading.place));
  rw_json_out_number (out, "value", spot->reading.over ? (double) NAN : spot->reading.value);
  rw_json_out_number (out, "u", spot->u);
  rw_json_out_string (out, "verdict", rw_verdict_to_id (spot->verdict));
  rw_json_out_number (out, "margin", spot->margin);
  rw_json_out_boolean (out, "stale", spot->stale);
  rw_json_out_number (out, "t", spot->t);
  rw_json_out_close (out, '}');
}

static void
append_rails (const RwSummary *summary,
              GString         *out)
{
  g_autoptr (GPtrArray) rails = rw_summary_list_rails (summary);

  rw_json_out_key (out, "rails");
  rw_json_out_open (out, '[');
  for (guint i = 0; i < rails->len; i++)
    append_rail (rails->pdata[i], out);
  rw_json_out_close (out, ']');
}

static void
append_symptoms (const RwSummary *summary,
                 GString         *out)
{
  rw_json_out_key (out, "symptoms");
  rw_json_out_open (out, '[');
  for (guint i = 0; i < rw_bench_state_get_n_symptoms (summary->state); i++)
    {
      const RwSymptomSeen *seen = rw_bench_state_get_symptom (summary->state, i);

      rw_json_out_open (out, '{');
      rw_json_out_string (out, "id", seen->id);
      rw_json_out_string (out, "state", symptom_states[seen->state]);
      rw_json_out_close (out, '}');
    }
  rw_json_out_close (out, ']');
}

static void
append_causes (const RwSummary *summary,
               GString         *out)
{
  const RwBelief *belief = summary->advice != NULL ? rw_advice_get_belief (summary->advice)
                                                   : NULL;
  const guint n = belief != NULL ? rw_belief_get_n_causes (belief) : 0;

  rw_json_out_key (out, "causes");
  rw_json_out_open (out, '[');
  for (guint rank = 0; rank < n; rank++)
    {
      const RwCauseBelief *held = rw_belief_get_cause (belief, rank);

      rw_json_out_open (out, '{');
      rw_json_out_string (out, "cause", held->cause->id);
      rw_json_out_number (out, "p", held->p);
      rw_json_out_close (out, '}');
    }
  rw_json_out_close (out, ']');
}

static void
append_next (const RwSummary *summary,
             GString         *out)
{
  g_autoptr (GPtrArray) next = rw_summary_list_next (summary);

  rw_json_out_key (out, "next");
  rw_json_out_open (out, '[');
  for (guint i = 0; i < next->len; i++)
    {
      const RwAdviceCheck *check = next->pdata[i];

      rw_json_out_open (out, '{');
      rw_json_out_string (out, "check", check->check->id);
      rw_json_out_number (out, "minutes", check->minutes);
      rw_json_out_number (out, "saves", check->saves);
      rw_json_out_close (out, '}');
    }
  rw_json_out_close (out, ']');
}

static void
append_warnings (const RwSummary *summary,
                 GString         *out)
{
  rw_json_out_key (out, "warnings");
  rw_json_out_open (out, '[');
  for (guint i = 0; i < rw_bench_state_get_n_warnings (summary->state); i++)
    {
      const RwWarning *warning = rw_bench_state_get_warning (summary->state, i);

      rw_json_out_open (out, '{');
      rw_json_out_count (out, "n", warning->n);
      rw_json_out_string (out, "id", warning->id);
      rw_json_out_string (out, "text", warning->text);
      rw_json_out_close (out, '}');
    }
  rw_json_out_close (out, ']');
}

static void
append_file_facts (const RwSummary *summary,
                   GString         *out)
{
  rw_json_out_string (out, "cabinet", rw_session_get_header (summary->session)->cabinet_name);
  rw_json_out_count (out, "events", summary->n_events);
  rw_json_out_count (out, "readings", summary->n_readings);
  rw_json_out_count (out, "samples", summary->n_samples);
  rw_json_out_number (out, "seconds", summary->seconds);
  rw_json_out_key (out, "skipped_lines");
  rw_json_out_open (out, '[');
  for (guint i = 0; i < summary->skipped_lines->len; i++)
    rw_json_out_add_number (out, g_array_index (summary->skipped_lines, guint, i));
  rw_json_out_close (out, ']');
  rw_json_out_boolean (out, "torn_tail", summary->torn_tail);
}

void
rw_report_json_append_summary (const RwSummary *summary,
                               GString         *out)
{
  g_return_if_fail (summary != NULL);

  rw_json_out_open (out, '{');
  append_file_facts (summary, out);
  append_rails (summary, out);
  rw_json_out_key (out, "trim");
  rw_report_trim_append_json (summary->state, out);
  append_symptoms (summary, out);
  append_causes (summary, out);
  append_next (summary, out);
  append_warnings (summary, out);
  rw_json_out_close (out, '}');
}

GString *
rw_report_json_summary (const RwSummary *summary)
{
  GString *out = g_string_new (NULL);

  rw_report_json_append_summary (summary, out);
  g_string_append_c (out, '\n');
  return out;
}

/* The lines of the file end in a newline: that goes. */
static void
drop_newline (GString *out)
{
  if (out->len > 0 && out->str[out->len - 1] == '\n')
    g_string_truncate (out, out->len - 1);
}

static void
append_events (RwSession *session,
               GString   *out)
{
  const guint n = rw_session_get_n_events (session);

  rw_json_out_key (out, "events");
  rw_json_out_open (out, '[');
  for (guint i = 0; i < n; i++)
    {
      if (i > 0)
        g_string_append_c (out, ',');
      rw_event_append_line (rw_session_get_event (session, i), out);
      drop_newline (out);
    }
  rw_json_out_close (out, ']');
}

static void
append_retracted (RwSession *session,
                  GString   *out)
{
  rw_json_out_key (out, "retracted");
  rw_json_out_open (out, '[');
  for (guint i = 0; i < rw_session_get_n_events (session); i++)
    if (!rw_session_is_live (session, i))
      rw_json_out_add_number (out, rw_session_get_event (session, i)->n);
  rw_json_out_close (out, ']');
}

GString *
rw_report_json_session (const RwSummary *summary)
{
  g_return_val_if_fail (summary != NULL, NULL);

  GString *out = g_string_new (NULL);

  rw_json_out_open (out, '{');
  rw_json_out_key (out, "header");
  rw_session_header_append_line (rw_session_get_header (summary->session), out);
  drop_newline (out);
  rw_json_out_key (out, "summary");
  rw_report_json_append_summary (summary, out);
  append_retracted (summary->session, out);
  append_events (summary->session, out);
  rw_json_out_close (out, '}');
  g_string_append_c (out, '\n');
  return out;
}
