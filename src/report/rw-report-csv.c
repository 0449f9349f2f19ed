/* rw-report-csv.c: a session as a table.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * RFC 4180: rows end in CR LF, the last one too; a field with a comma, a quote, CR or LF stands
 * in double quotes, and a quote inside is doubled. A row is an array of texts, one a column, of
 * which only those that its event has are filled in.
 *
 * A spreadsheet takes a field that begins with =, +, -, @, a tab or a line end for a formula, and a formula may fetch or
 * run things. Words of a session are never one: such a word gets an apostrophe before it. Numbers stay numbers.
 */
#include "config.h"

#include "rw-report-csv.h"

#include <math.h>
#include <string.h>

#include "rw-json.h"
#include "rw-verdict.h"

typedef enum
{
  COLUMN_N,
  COLUMN_T,
  COLUMN_TYPE,
  COLUMN_RAIL,
  COLUMN_PLACE,
  COLUMN_KIND,
  COLUMN_VALUE,
  COLUMN_OVER,
  COLUMN_STEP,
  COLUMN_U,
  COLUMN_VERDICT,
  COLUMN_MARGIN,
  COLUMN_METER,
  COLUMN_POWER,
  COLUMN_BOARD,
  COLUMN_WARM,
  COLUMN_ID,
  COLUMN_STATE,
  COLUMN_TEXT,
  COLUMN_RETRACTED,
  N_COLUMNS
} Column;

static const char *const headings[N_COLUMNS] = {
  "n", "t", "type", "rail", "place", "kind", "value", "over", "step", "u", "verdict", "margin",
  "meter", "power", "board", "warm", "id", "state", "text", "retracted"
};

static const char *const symptom_states[] = { "present", "absent", "cured" };

/* One row. Texts are borrowed; numbers stand in buffers of their own (made once, used for every
 * row). */
typedef struct
{
  const char *fields[N_COLUMNS];
  GString    *numbers[N_COLUMNS]; /* NULL until the column first held a number */
} Row;

static void
row_clear (Row *row)
{
  for (int i = 0; i < N_COLUMNS; i++)
    if (row->numbers[i] != NULL)
      g_string_free (g_steal_pointer (&row->numbers[i]), TRUE);
}

/* The empty text of a column's number; the field is to be set when it is written. */
static GString *
begin_number (Row   *row,
              Column column)
{
  if (row->numbers[column] == NULL)
    row->numbers[column] = g_string_new (NULL);
  g_string_truncate (row->numbers[column], 0);
  return row->numbers[column];
}

/* A number of the session: reads back as the same double. */
static void
put_number (Row   *row,
            Column column,
            double value)
{
  if (isnan (value))
    return;

  GString *text = begin_number (row, column);

  rw_json_append_number (text, value);
  row->fields[column] = text->str;
}

/* A number worked out: nine digits are more than any meter has, and quick to write. */
static void
put_result (Row   *row,
            Column column,
            double value)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];

  if (!isfinite (value)) /* of a reading past all bounds */
    return;

  GString *text = begin_number (row, column);

  g_string_append (text, g_ascii_formatd (buffer, sizeof buffer, "%.9g", value));
  row->fields[column] = text->str;
}

static void
put_count (Row   *row,
           Column column,
           guint  value)
{
  GString *text = begin_number (row, column);

  g_string_append_printf (text, "%u", value);
  row->fields[column] = text->str;
}

static const char *
said (RwSaid      saying,
      const char *yes,
      const char *no)
{
  return saying == RW_SAID_NOT ? NULL : saying == RW_SAID_YES ? yes : no;
}

static void
put_setup (Row           *row,
           const RwSetup *setup)
{
  row->fields[COLUMN_POWER] = said (setup->power_on, "on", "off");
  row->fields[COLUMN_BOARD] = said (setup->board_fitted, "fitted", "out");
  row->fields[COLUMN_WARM] = said (setup->warm, "true", "false");
}

static void
put_judgement (Row             *row,
               RwSession       *session,
               const RwReading *reading)
{
  const RwRail *rail = rw_profile_find_rail (rw_session_get_profile (session), reading->rail);
  const RwMeterFacts *meter = rw_session_find_meter (session, reading->meter);
  const double u = rw_meter_facts_u_total (meter, reading);
  RwVerdict verdict = RW_VERDICT_NONE;
  double lo, hi;

  if (rw_rail_limits_at (rail, reading->rail, reading->place, reading->kind, &lo, &hi)
      && !reading->over)
    {
      verdict = rw_verdict_judge (reading->value, u, lo, hi);
      put_result (row, COLUMN_MARGIN, rw_margin (reading->value, lo, hi));
    }
  put_result (row, COLUMN_U, u);
  row->fields[COLUMN_VERDICT] = rw_verdict_to_id (verdict);
}

static void
put_reading (Row             *row,
             RwSession       *session,
             const RwReading *reading)
{
  row->fields[COLUMN_RAIL] = reading->rail;
  row->fields[COLUMN_PLACE] = rw_place_to_id (reading->place);
  row->fields[COLUMN_KIND] = rw_kind_to_id (reading->kind);
  row->fields[COLUMN_OVER] = reading->over ? "true" : "false";
  row->fields[COLUMN_METER] = reading->meter;
  put_number (row, COLUMN_VALUE, reading->over ? (double) NAN : reading->value);
  if (reading->step > 0)
    put_number (row, COLUMN_STEP, reading->step);
  put_judgement (row, session, reading);
}

static void
put_call (Row              *row,
          const RwCallSaid *call)
{
  static const char *const forms[] = { "ask", "value", "hands", "reveal", "drop" };

  row->fields[COLUMN_STATE] = forms[call->form];
  if (call->form == RW_CALL_ASK)
    {
      row->fields[COLUMN_RAIL] = call->ask.rail;
      row->fields[COLUMN_PLACE] = rw_place_to_id (call->ask.place);
      row->fields[COLUMN_KIND] = rw_kind_to_id (call->ask.kind);
      put_number (row, COLUMN_VALUE, call->ask.was);
    }
  else if (call->form == RW_CALL_VALUE)
    {
      row->fields[COLUMN_ID] = call->value.by;
      put_number (row, COLUMN_VALUE, call->value.value);
      put_number (row, COLUMN_TEXT, call->value.give);
    }
  else if (call->form == RW_CALL_HANDS)
    {
      GString *text = begin_number (row, COLUMN_TEXT);

      g_string_append_printf (text, "%u lower, %u same, %u higher", call->hands[RW_CALL_LOWER],
                              call->hands[RW_CALL_SAME], call->hands[RW_CALL_HIGHER]);
      row->fields[COLUMN_TEXT] = text->str;
    }
  else if (call->form == RW_CALL_REVEAL)
    put_count (row, COLUMN_ID, call->reveal);
}

static void
put_payload (Row           *row,
             RwSession     *session,
             const RwEvent *event)
{
  switch (event->type)
    {
    case RW_EVENT_SETUP:
      put_setup (row, &event->setup);
      break;
    case RW_EVENT_READING:
    case RW_EVENT_SAMPLE:
      put_reading (row, session, &event->reading);
      break;
    case RW_EVENT_TRIM:
      row->fields[COLUMN_STATE] = event->trim.moved ? "moved" : "not-moved";
      break;
    case RW_EVENT_SYMPTOM:
      row->fields[COLUMN_ID] = event->symptom.id;
      row->fields[COLUMN_STATE] = symptom_states[event->symptom.state];
      break;
    case RW_EVENT_FINDING:
      row->fields[COLUMN_ID] = event->finding.check;
      row->fields[COLUMN_STATE] = event->finding.outcome;
      break;
    case RW_EVENT_REPAIR:
      row->fields[COLUMN_ID] = event->repair.cause;
      row->fields[COLUMN_STATE] = event->repair.result == RW_REPAIR_FIXED ? "fixed" : "no-change";
      break;
    case RW_EVENT_MARK:
    case RW_EVENT_NOTE:
      row->fields[COLUMN_TEXT] = event->words.text;
      break;
    case RW_EVENT_STAGE:
      row->fields[COLUMN_ID] = event->stage.id;
      row->fields[COLUMN_STATE] = event->stage.against != NULL ? "against" : event->stage.read ? "read" : NULL;
      row->fields[COLUMN_TEXT] = event->stage.against;
      break;
    case RW_EVENT_RETRACT:
      put_count (row, COLUMN_ID, event->retract.n);
      break;
    case RW_EVENT_GAP:
      row->fields[COLUMN_METER] = event->gap.meter;
      row->fields[COLUMN_TEXT] = event->gap.why;
      break;
    case RW_EVENT_METER:
      row->fields[COLUMN_METER] = event->meter->id;
      row->fields[COLUMN_TEXT] = event->meter->name;
      break;
    case RW_EVENT_CALL:
      put_call (row, &event->call);
      break;
    case RW_EVENT_UNKNOWN:
    case RW_N_EVENT_TYPES:
    default:
      row->fields[COLUMN_TEXT] = event->line;
      break;
    }
}

static gboolean
looks_like_formula (const char *text)
{
  return *text != '\0' && strchr ("=+-@\t\r\n", *text) != NULL;
}

static void
append_field (GString    *out,
              const char *words,
              gboolean    number)
{
  if (words == NULL)
    return;

  g_autofree char *guarded = !number && looks_like_formula (words) ? g_strconcat ("'", words, NULL) : NULL;
  const char *text = guarded != NULL ? guarded : words;

  if (strpbrk (text, ",\"\r\n") == NULL)
    {
      g_string_append (out, text);
      return;
    }
  g_string_append_c (out, '"');
  for (const char *p = text; *p != '\0'; p++)
    {
      if (*p == '"')
        g_string_append_c (out, '"');
      g_string_append_c (out, *p);
    }
  g_string_append_c (out, '"');
}

static void
append_row (GString   *out,
            const Row *row)
{
  for (int i = 0; i < N_COLUMNS; i++)
    {
      if (i > 0)
        g_string_append_c (out, ',');

      const gboolean number = row->numbers[i] != NULL && row->fields[i] == row->numbers[i]->str;

      append_field (out, row->fields[i], number);
    }
  g_string_append (out, "\r\n");
}

GString *
rw_report_csv (RwSession *session)
{
  g_return_val_if_fail (RW_IS_SESSION (session), NULL);

  GString *out = g_string_new (NULL);
  Row row = { 0 };

  memcpy (row.fields, headings, sizeof headings);
  append_row (out, &row);
  for (guint i = 0; i < rw_session_get_n_events (session); i++)
    {
      const RwEvent *event = rw_session_get_event (session, i);
      const char *type = event->type != RW_EVENT_UNKNOWN ? rw_event_type_to_key (event->type)
                                                         : "unknown";

      memset (row.fields, 0, sizeof row.fields);
      put_count (&row, COLUMN_N, event->n);
      put_number (&row, COLUMN_T, event->t);
      row.fields[COLUMN_TYPE] = type;
      row.fields[COLUMN_RETRACTED] = rw_session_is_live (session, i) ? "false" : "true";
      put_payload (&row, session, event);
      append_row (out, &row);
    }
  row_clear (&row);
  return out;
}
