/* rw-event-json-write.c: an event as a line of a session file.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-event-json-private.h"

#include <math.h>

#include "rw-json.h"
#include "rw-meter-facts-json.h"

/* Three decimals, six where three would lose something. */
static void
append_time (GString *out,
             double   t)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  const gboolean coarse = fabs (t * 1e3 - round (t * 1e3)) < 1e-4;

  g_string_append (out, g_ascii_formatd (text, sizeof text, coarse ? "%.3f" : "%.6f", t));
}

static void
append_member (GString    *out,
               const char *key,
               const char *text)
{
  if (out->str[out->len - 1] != '{')
    g_string_append_c (out, ',');
  g_string_append_printf (out, "\"%s\":", key);
  rw_json_append_string (out, text);
}

static void
append_number_member (GString    *out,
                      const char *key,
                      double      value)
{
  g_string_append_printf (out, ",\"%s\":", key);
  rw_json_append_number (out, value);
}

static void
append_reading (GString         *out,
                const RwReading *reading)
{
  append_member (out, "rail", reading->rail);
  append_member (out, "place", rw_place_to_id (reading->place));
  append_member (out, "kind", rw_kind_to_id (reading->kind));
  append_number_member (out, "value", reading->over ? (double) NAN : reading->value);
  if (reading->over)
    g_string_append (out, ",\"over\":true");
  if (reading->step > 0)
    append_number_member (out, "step", reading->step);
  if (reading->meter != NULL)
    append_member (out, "meter", reading->meter);
  if (!isnan (reading->u))
    append_number_member (out, "u", reading->u);
  if (reading->low_battery)
    g_string_append (out, ",\"low_battery\":true");
}

static void
append_setup (GString       *out,
              const RwSetup *setup)
{
  if (setup->power_on != RW_SAID_NOT)
    append_member (out, "power", setup->power_on ? "on" : "off");
  if (setup->board_fitted != RW_SAID_NOT)
    append_member (out, "board", setup->board_fitted ? "fitted" : "out");
  if (setup->warm != RW_SAID_NOT)
    g_string_append_printf (out, "%s\"warm\":%s", out->str[out->len - 1] == '{' ? "" : ",",
                            setup->warm ? "true" : "false");
}

static void
append_stage (GString       *out,
              const RwEvent *event)
{
  append_member (out, "id", event->stage.id);
  if (event->stage.read)
    g_string_append (out, ",\"read\":true");
  if (event->stage.against != NULL)
    append_member (out, "against", event->stage.against);
}

static void
append_payload (GString       *out,
                const RwEvent *event)
{
  switch (event->type)
    {
    case RW_EVENT_SETUP:
      append_setup (out, &event->setup);
      break;
    case RW_EVENT_READING:
    case RW_EVENT_SAMPLE:
      append_reading (out, &event->reading);
      break;
    case RW_EVENT_TRIM:
      g_string_append_printf (out, "\"moved\":%s", event->trim.moved ? "true" : "false");
      break;
    case RW_EVENT_SYMPTOM:
      append_member (out, "id", event->symptom.id);
      append_member (out, "state", rw_event_symptom_words[event->symptom.state]);
      break;
    case RW_EVENT_FINDING:
      append_member (out, "check", event->finding.check);
      append_member (out, "outcome", event->finding.outcome);
      break;
    case RW_EVENT_REPAIR:
      append_member (out, "cause", event->repair.cause);
      append_member (out, "result", rw_event_repair_words[event->repair.result]);
      break;
    case RW_EVENT_MARK:
      append_member (out, "what", event->words.text);
      break;
    case RW_EVENT_NOTE:
      append_member (out, "text", event->words.text);
      break;
    case RW_EVENT_STAGE:
      append_stage (out, event);
      break;
    case RW_EVENT_RETRACT:
      g_string_append_printf (out, "\"n\":%u", event->retract.n);
      break;
    case RW_EVENT_GAP:
      if (event->gap.meter != NULL)
        append_member (out, "meter", event->gap.meter);
      append_member (out, "why", event->gap.why);
      break;
    case RW_EVENT_METER:
      rw_meter_facts_append_members (event->meter, out);
      break;
    case RW_EVENT_CALL:
      rw_call_said_append_members (&event->call, out);
      break;
    case RW_EVENT_UNKNOWN:
    case RW_N_EVENT_TYPES:
    default:
      g_assert_not_reached ();
    }
}

void
rw_event_append_line (const RwEvent *event,
                      GString       *out)
{
  if (event->line != NULL)
    {
      g_string_append (out, event->line);
      g_string_append_c (out, '\n');
      return;
    }
  g_return_if_fail (event->type != RW_EVENT_UNKNOWN);
  g_string_append_printf (out, "{\"n\":%u,\"t\":", event->n);
  append_time (out, event->t);
  g_string_append_printf (out, ",\"%s\":{", rw_event_type_to_key (event->type));
  append_payload (out, event);
  g_string_append (out, "}}\n");
}
