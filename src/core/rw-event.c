/* rw-event.c: makers and clean-up of events, and their words.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-event.h"

#include <glib/gi18n-lib.h>

#include "rw-quantity.h"

static const char *const keys[RW_N_EVENT_TYPES] = {
  NULL, "setup", "reading", "sample", "trim", "symptom", "finding",
  "repair", "mark", "stage", "note", "retract", "gap", "meter", "call"
};

static RwEvent
make (RwEventType type,
      double      t)
{
  return (RwEvent){ .type = type, .t = t };
}

RwEvent
rw_event_make_setup (double  t,
                     RwSetup setup)
{
  RwEvent event = make (RW_EVENT_SETUP, t);

  event.setup = setup;
  return event;
}

RwEvent
rw_event_make_reading (double           t,
                       const RwReading *reading)
{
  RwEvent event = make (RW_EVENT_READING, t);

  event.reading = *reading;
  return event;
}

RwEvent
rw_event_make_sample (double           t,
                      const RwReading *sample)
{
  RwEvent event = make (RW_EVENT_SAMPLE, t);

  event.reading = *sample;
  return event;
}

RwEvent
rw_event_make_trim (double t)
{
  RwEvent event = make (RW_EVENT_TRIM, t);

  event.trim.moved = TRUE;
  return event;
}

RwEvent
rw_event_make_symptom (double         t,
                       const char    *id,
                       RwSymptomState state)
{
  RwEvent event = make (RW_EVENT_SYMPTOM, t);

  event.symptom.id = g_intern_string (id);
  event.symptom.state = state;
  return event;
}

RwEvent
rw_event_make_finding (double      t,
                       const char *check,
                       const char *outcome)
{
  RwEvent event = make (RW_EVENT_FINDING, t);

  event.finding.check = g_intern_string (check);
  event.finding.outcome = g_intern_string (outcome);
  return event;
}

RwEvent
rw_event_make_repair (double         t,
                      const char    *cause,
                      RwRepairResult result)
{
  RwEvent event = make (RW_EVENT_REPAIR, t);

  event.repair.cause = g_intern_string (cause);
  event.repair.result = result;
  return event;
}

RwEvent
rw_event_make_mark (double      t,
                    const char *what)
{
  RwEvent event = make (RW_EVENT_MARK, t);

  event.words.text = g_strdup (what);
  return event;
}

RwEvent
rw_event_make_note (double      t,
                    const char *text)
{
  RwEvent event = make (RW_EVENT_NOTE, t);

  event.words.text = g_strdup (text);
  return event;
}

RwEvent
rw_event_make_stage (double      t,
                     const char *id)
{
  RwEvent event = make (RW_EVENT_STAGE, t);

  event.stage.id = g_intern_string (id);
  return event;
}

RwEvent
rw_event_make_stage_read (double      t,
                          const char *id)
{
  RwEvent event = rw_event_make_stage (t, id);

  event.stage.read = TRUE;
  return event;
}

RwEvent
rw_event_make_stage_against (double      t,
                             const char *id,
                             const char *why)
{
  RwEvent event = rw_event_make_stage (t, id);

  event.stage.against = g_strdup (why);
  return event;
}

RwEvent
rw_event_make_retract (double t,
                       guint  n)
{
  RwEvent event = make (RW_EVENT_RETRACT, t);

  event.retract.n = n;
  return event;
}

RwEvent
rw_event_make_gap (double      t,
                   const char *meter,
                   const char *why)
{
  RwEvent event = make (RW_EVENT_GAP, t);

  event.gap.meter = meter != NULL ? g_intern_string (meter) : NULL;
  event.gap.why = g_strdup (why);
  return event;
}

RwEvent
rw_event_make_meter (double              t,
                     const RwMeterFacts *facts)
{
  RwEvent event = make (RW_EVENT_METER, t);

  event.meter = rw_meter_facts_copy (facts);
  return event;
}

RwEvent
rw_event_make_call (double            t,
                    const RwCallSaid *said)
{
  RwEvent event = make (RW_EVENT_CALL, t);

  event.call = rw_call_said_copy (said);
  return event;
}

static gboolean
has_words (const RwEvent *event)
{
  return event->type == RW_EVENT_NOTE || event->type == RW_EVENT_MARK;
}

RwEvent
rw_event_copy (const RwEvent *event)
{
  RwEvent copy = *event;

  copy.line = g_strdup (event->line);
  if (has_words (event))
    copy.words.text = g_strdup (event->words.text);
  else if (event->type == RW_EVENT_GAP)
    copy.gap.why = g_strdup (event->gap.why);
  else if (event->type == RW_EVENT_STAGE)
    copy.stage.against = g_strdup (event->stage.against);
  else if (event->type == RW_EVENT_METER)
    copy.meter = rw_meter_facts_copy (event->meter);
  else if (event->type == RW_EVENT_CALL)
    copy.call = rw_call_said_copy (&event->call);
  return copy;
}

void
rw_event_clear (RwEvent *event)
{
  g_clear_pointer (&event->line, g_free);
  if (has_words (event))
    g_clear_pointer (&event->words.text, g_free);
  else if (event->type == RW_EVENT_GAP)
    g_clear_pointer (&event->gap.why, g_free);
  else if (event->type == RW_EVENT_STAGE)
    g_clear_pointer (&event->stage.against, g_free);
  else if (event->type == RW_EVENT_METER)
    g_clear_pointer (&event->meter, rw_meter_facts_free);
  else if (event->type == RW_EVENT_CALL)
    rw_call_said_clear (&event->call);
}

const char *
rw_event_type_to_key (RwEventType type)
{
  g_return_val_if_fail (type < RW_N_EVENT_TYPES, NULL);
  return keys[type];
}

static char *
describe_setup (const RwSetup *setup)
{
  const char *power = setup->power_on == RW_SAID_NOT ? NULL
                      : setup->power_on            ? _ ("power on")
                                                   : _ ("power off");
  const char *board = setup->board_fitted == RW_SAID_NOT ? NULL
                      : setup->board_fitted            ? _ ("board fitted")
                                                       : _ ("board out");
  const char *warm = setup->warm == RW_SAID_NOT ? NULL : setup->warm ? _ ("warm") : _ ("cold");
  const char *words[4] = { NULL };
  guint n = 0;

  if (power != NULL)
    words[n++] = power;
  if (board != NULL)
    words[n++] = board;
  if (warm != NULL)
    words[n++] = warm;
  return n > 0 ? g_strjoinv (" · ", (char **) words) : g_strdup (_ ("setup not said"));
}

static const char *
label_of (const char      *rail_id,
          const RwProfile *profile)
{
  const RwRail *rail = profile != NULL ? rw_profile_find_rail (profile, rail_id) : NULL;

  if (rail != NULL)
    return rail->label;
  return g_str_equal (rail_id, RW_RAIL_GROUND) ? _ ("ground") : rail_id;
}

static char *
describe_reading (const RwReading *reading,
                  const RwProfile *profile)
{
  g_autofree char *value = reading->over ? g_strdup ("OL")
                                         : rw_quantity_format (reading->value, reading->step, reading->kind);

  /* Translators: rail, place, value with its unit. */
  return g_strdup_printf (_ ("%s, %s: %s"), label_of (reading->rail, profile), rw_place_get_label (reading->place), value);
}

static char *
describe_symptom (const RwEvent *event)
{
  switch (event->symptom.state)
    {
    case RW_SYMPTOM_PRESENT:
      /* Translators: id of a symptom. */
      return g_strdup_printf (_ ("symptom seen: %s"), event->symptom.id);
    case RW_SYMPTOM_ABSENT:
      return g_strdup_printf (_ ("symptom not there: %s"), event->symptom.id);
    case RW_SYMPTOM_CURED:
    default:
      return g_strdup_printf (_ ("symptom cured: %s"), event->symptom.id);
    }
}

static char *
describe_stage (const RwEvent *event)
{
  if (event->stage.against != NULL)
    /* Translators: id of a stage of the bring-up, the person's reason. */
    return g_strdup_printf (_ ("stage: %s, on against advice: %s"), event->stage.id, event->stage.against);
  if (event->stage.read)
    return g_strdup_printf (_ ("stage: %s, its hazards were read"), event->stage.id);
  return g_strdup_printf (_ ("stage: %s"), event->stage.id);
}

static char *
describe_meter (const RwMeterFacts *facts)
{
  g_autofree char *percent = rw_quantity_format_number (facts->percent, 2);
  g_autofree char *counts = rw_quantity_format_number (facts->counts, 0);

  /* Translators: a meter's name, per cent of reading, counts of the last digit. */
  return g_strdup_printf (_ ("meter: %s, ±(%s %% + %s counts)"), facts->name, percent, counts);
}

char *
rw_event_describe (const RwEvent   *event,
                   const RwProfile *profile)
{
  switch (event->type)
    {
    case RW_EVENT_SETUP:
      return describe_setup (&event->setup);
    case RW_EVENT_READING:
    case RW_EVENT_SAMPLE:
      return describe_reading (&event->reading, profile);
    case RW_EVENT_TRIM:
      return g_strdup (_ ("trim turned"));
    case RW_EVENT_SYMPTOM:
      return describe_symptom (event);
    case RW_EVENT_FINDING:
      /* Translators: id of a check, id of what it showed. */
      return g_strdup_printf (_ ("found: %s: %s"), event->finding.check, event->finding.outcome);
    case RW_EVENT_REPAIR:
      return event->repair.result == RW_REPAIR_FIXED
                 ? g_strdup_printf (_ ("repair: %s: fixed"), event->repair.cause)
                 : g_strdup_printf (_ ("repair: %s: no change"), event->repair.cause);
    case RW_EVENT_MARK:
    case RW_EVENT_NOTE:
      return g_strdup (event->words.text);
    case RW_EVENT_STAGE:
      return describe_stage (event);
    case RW_EVENT_RETRACT:
      return g_strdup_printf (_ ("taken back: event %u"), event->retract.n);
    case RW_EVENT_GAP:
      return g_strdup_printf (_ ("meter gone: %s"), event->gap.why);
    case RW_EVENT_METER:
      return describe_meter (event->meter);
    case RW_EVENT_CALL:
      return rw_call_said_describe (&event->call, profile);
    case RW_EVENT_UNKNOWN:
    case RW_N_EVENT_TYPES:
    default:
      return g_strdup (_ ("not understood"));
    }
}
