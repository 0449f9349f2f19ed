/* rw-event-json.c: an event as a line of a session file, and back.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   {"n":<whole number ≥ 1>,"t":<seconds ≥ 0>,"<payload key>":{…}}
 *
 * Reading goes two ways. Lines in the very form that append_reading writes samples and readings in are
 * taken by the scanner of rw-event-scan.c (a session may hold a million samples). Everything else, and
 * every line on which the scanner hesitates, goes through json-glib. Both must agree: a test feeds both.
 * Writing: rw-event-json-write.c.
 */
#include "config.h"

#include "rw-event-json-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "rw-event-scan.h"
#include "rw-json.h"
#include "rw-limits.h"
#include "rw-meter-facts-json.h"
#include "rw-plain-text.h"

G_DEFINE_QUARK (rw_event_error, rw_event_error)

static gboolean
bad (GError    **error,
     const char *format,
     ...) G_GNUC_PRINTF (2, 3);

static gboolean
bad (GError    **error,
     const char *format,
     ...)
{
  va_list args;

  va_start (args, format);
  g_autofree char *message = g_strdup_vprintf (format, args);
  va_end (args);

  g_autofree char *plain = rw_plain_text_dup (message, RW_PLAIN_NAME); /* it may quote the line */

  g_set_error_literal (error, RW_EVENT_ERROR, RW_EVENT_ERROR_FORMAT, plain);
  return FALSE;
}

/* Notes whether an object holds a key that is not in @known (space-separated, spaces at both ends). */
static gboolean
has_stranger (JsonObject *object,
              const char *known)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *node;

  json_object_iter_init (&iter, object);
  while (json_object_iter_next (&iter, &name, &node))
    {
      g_autofree char *word = g_strdup_printf (" %s ", name);

      if (strstr (known, word) == NULL)
        return TRUE;
    }
  return FALSE;
}

static RwPlainKind
kind_of (const char *key)
{
  static const char *const texts[] = { "text", "what", "against", "why", NULL };

  return g_strv_contains (texts, key) ? RW_PLAIN_TEXT : RW_PLAIN_NAME;
}

/* Notes whether some text is shown otherwise than it is written. */
static gboolean
has_unplain (JsonObject *object)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *node;

  json_object_iter_init (&iter, object);
  while (json_object_iter_next (&iter, &name, &node))
    if (JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_STRING
        && !rw_plain_text_is (json_node_get_string (node), kind_of (name)))
      return TRUE;
  return FALSE;
}

/* An id that is there, interned; fit to be shown, since an id that nobody knows is shown as it is. NULL: refused. */
static const char *
take_id (const char *tainted,
         const char *key,
         GError    **error)
{
  if (g_utf8_strlen (tainted, -1) > RW_LIMIT_ID_CHARS)
    {
      bad (error, _ ("key “%s” is longer than %d characters"), key, RW_LIMIT_ID_CHARS);
      return NULL;
    }

  g_autofree char *id = rw_plain_text_dup (tainted, RW_PLAIN_NAME);

  return g_intern_string (id);
}

/* A member that may be missing or null, else must be a number of at least 0. */
static gboolean
read_size (JsonObject *object,
           const char *key,
           double     *out,
           GError    **error)
{
  JsonNode *node = json_object_get_member (object, key);

  if (node == NULL || JSON_NODE_HOLDS_NULL (node))
    return TRUE;
  if (rw_json_node_get_number (node, out) && *out >= 0)
    return TRUE;
  return bad (error, _ ("key “%s” must be a number, 0 or more"), key);
}

/* A member that may be missing or null, else must be true or false. */
static gboolean
read_truth (JsonObject *object,
            const char *key,
            RwSaid     *out,
            GError    **error)
{
  JsonNode *node = json_object_get_member (object, key);

  if (node == NULL || JSON_NODE_HOLDS_NULL (node))
    return TRUE;
  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_BOOLEAN)
    return bad (error, _ ("key “%s” must be true or false"), key);
  *out = json_node_get_boolean (node) ? RW_SAID_YES : RW_SAID_NO;
  return TRUE;
}

static gboolean
said_from_word (JsonObject *object,
                const char *key,
                const char *yes,
                const char *no,
                RwSaid     *out,
                GError    **error)
{
  JsonNode *node = json_object_get_member (object, key);

  *out = RW_SAID_NOT;
  if (node == NULL || JSON_NODE_HOLDS_NULL (node))
    return TRUE;

  const char *word = rw_json_get_string (object, key, "");

  if (g_str_equal (word, yes))
    *out = RW_SAID_YES;
  else if (g_str_equal (word, no))
    *out = RW_SAID_NO;
  else
    return bad (error, _ ("setup: key “%s” is neither “%s” nor “%s”"), key, yes, no);
  return TRUE;
}

static gboolean
read_setup (JsonObject *object,
            RwEvent    *event,
            GError    **error)
{
  RwSetup *setup = &event->setup;

  if (!said_from_word (object, "power", "on", "off", &setup->power_on, error)
      || !said_from_word (object, "board", "fitted", "out", &setup->board_fitted, error))
    return FALSE;
  setup->warm = RW_SAID_NOT;
  return read_truth (object, "warm", &setup->warm, error);
}

static gboolean
read_reading (JsonObject *object,
              RwEvent    *event,
              GError    **error)
{
  const char *rail = rw_json_get_string (object, "rail", NULL);
  const char *meter = rw_json_get_string (object, "meter", NULL);
  const char *place_id = rw_json_get_string (object, "place", NULL);
  const char *kind_id = rw_json_get_string (object, "kind", "dc");
  RwSaid over = RW_SAID_NO, low_battery = RW_SAID_NO;
  RwPlace place;
  RwKind kind;

  if (rail == NULL || *rail == '\0')
    return bad (error, _ ("reading: key “rail” is missing"));
  if (!rw_place_from_id (place_id, &place))
    return bad (error, _ ("reading: key “place”: there is no place “%s”"), place_id != NULL ? place_id : "");
  if (!rw_kind_from_id (kind_id, &kind))
    return bad (error, _ ("reading: key “kind”: there is no kind “%s”"), kind_id);
  rail = take_id (rail, "rail", error);
  if (rail == NULL)
    return FALSE;
  if (meter != NULL && (meter = take_id (meter, "meter", error)) == NULL)
    return FALSE;
  event->reading = rw_reading_make (rail, place, kind, 0, 0, meter);
  if (!read_size (object, "step", &event->reading.step, error)
      || !read_size (object, "u", &event->reading.u, error)
      || !read_truth (object, "over", &over, error)
      || !read_truth (object, "low_battery", &low_battery, error))
    return FALSE;
  event->reading.over = over == RW_SAID_YES;
  event->reading.low_battery = low_battery == RW_SAID_YES;
  if (event->reading.over)
    event->reading.value = NAN;
  else if (!rw_json_get_number (object, "value", &event->reading.value))
    return bad (error, _ ("reading: key “value” is not a number, and “over” is not true"));
  return TRUE;
}

static gboolean
read_trim (JsonObject *object,
           RwEvent    *event,
           GError    **error)
{
  RwSaid moved = RW_SAID_YES;

  if (!read_truth (object, "moved", &moved, error))
    return FALSE;
  event->trim.moved = moved == RW_SAID_YES;
  return TRUE;
}

/* A required id. */
static const char *
read_id (JsonObject *object,
         const char *key,
         GError    **error)
{
  const char *id = rw_json_get_string (object, key, NULL);

  if (id == NULL || *id == '\0')
    {
      bad (error, _ ("key “%s” is missing"), key);
      return NULL;
    }
  return take_id (id, key, error);
}

/* Index of the word under @key in @words (NULL-terminated). */
static gboolean
read_choice (JsonObject        *object,
             const char        *key,
             const char *const *words,
             guint             *out,
             GError           **error)
{
  const char *word = rw_json_get_string (object, key, "");

  for (guint i = 0; words[i] != NULL; i++)
    if (g_str_equal (words[i], word))
      {
        *out = i;
        return TRUE;
      }
  return bad (error, _ ("key “%s”: “%s” is not understood"), key, word);
}

const char *const rw_event_symptom_words[] = { "present", "absent", "cured", NULL };
const char *const rw_event_repair_words[] = { "fixed", "no-change", NULL };

static gboolean
read_symptom (JsonObject *object,
              RwEvent    *event,
              GError    **error)
{
  guint state;

  event->symptom.id = read_id (object, "id", error);
  if (event->symptom.id == NULL || !read_choice (object, "state", rw_event_symptom_words, &state, error))
    return FALSE;
  event->symptom.state = (RwSymptomState) state;
  return TRUE;
}

static gboolean
read_finding (JsonObject *object,
              RwEvent    *event,
              GError    **error)
{
  event->finding.check = read_id (object, "check", error);
  if (event->finding.check == NULL)
    return FALSE;
  event->finding.outcome = read_id (object, "outcome", error);
  return event->finding.outcome != NULL;
}

static gboolean
read_repair (JsonObject *object,
             RwEvent    *event,
             GError    **error)
{
  guint result;

  event->repair.cause = read_id (object, "cause", error);
  if (event->repair.cause == NULL || !read_choice (object, "result", rw_event_repair_words, &result, error))
    return FALSE;
  event->repair.result = (RwRepairResult) result;
  return TRUE;
}

static gboolean
read_words (JsonObject *object,
            const char *key,
            RwEvent    *event,
            GError    **error)
{
  const char *text = rw_json_get_string (object, key, NULL);

  if (text == NULL)
    return bad (error, _ ("key “%s” is missing"), key);
  event->words.text = rw_plain_text_dup (text, kind_of (key));
  return TRUE;
}

static gboolean
read_mark (JsonObject *object,
           RwEvent    *event,
           GError    **error)
{
  return read_words (object, "what", event, error);
}

static gboolean
read_note (JsonObject *object,
           RwEvent    *event,
           GError    **error)
{
  return read_words (object, "text", event, error);
}

static gboolean
read_stage (JsonObject *object,
            RwEvent    *event,
            GError    **error)
{
  JsonNode *against = json_object_get_member (object, "against");
  RwSaid read = RW_SAID_NO;

  event->stage.id = read_id (object, "id", error);
  if (event->stage.id == NULL || !read_truth (object, "read", &read, error))
    return FALSE;
  event->stage.read = read == RW_SAID_YES;
  if (against == NULL || JSON_NODE_HOLDS_NULL (against))
    return TRUE;
  if (!JSON_NODE_HOLDS_VALUE (against) || json_node_get_value_type (against) != G_TYPE_STRING)
    return bad (error, _ ("stage: key “against” must be the reason, in words"));
  event->stage.against = rw_plain_text_dup (json_node_get_string (against), RW_PLAIN_TEXT);
  return TRUE;
}

/* A whole number ≥ 1 that fits a guint. */
static gboolean
read_count (JsonObject *object,
            guint      *out)
{
  double n;

  if (!rw_json_get_number (object, "n", &n) || n < 1 || n > 4e9 || n != floor (n))
    return FALSE;
  *out = (guint) n;
  return TRUE;
}

static gboolean
read_retract (JsonObject *object,
              RwEvent    *event,
              GError    **error)
{
  if (!read_count (object, &event->retract.n))
    return bad (error, _ ("retract: key “n” must be the number of an event"));
  return TRUE;
}

static gboolean
read_gap (JsonObject *object,
          RwEvent    *event,
          GError    **error)
{
  const char *meter = rw_json_get_string (object, "meter", NULL);

  if (meter != NULL && (meter = take_id (meter, "meter", error)) == NULL)
    return FALSE;
  event->gap.meter = meter;
  event->gap.why = rw_plain_text_dup (rw_json_get_string (object, "why", ""), RW_PLAIN_TEXT);
  return TRUE;
}

static gboolean
read_meter (JsonObject *object,
            RwEvent    *event,
            GError    **error)
{
  event->meter = rw_meter_facts_from_object (object);
  return event->meter != NULL || bad (error, _ ("key “%s” is missing"), "id");
}

static gboolean
read_call (JsonObject *object,
           RwEvent    *event,
           GError    **error)
{
  return rw_call_said_from_object (object, &event->call, error);
}

typedef gboolean (*ReadFunc) (JsonObject *object,
                              RwEvent    *event,
                              GError    **error);

/* In the order of RwEventType. */
static const struct
{
  ReadFunc    read;
  const char *known;
} payloads[RW_N_EVENT_TYPES] = {
  { NULL, NULL },
  { read_setup, " power board warm " },
  { read_reading, " rail place kind value step meter over u low_battery " },
  { read_reading, " rail place kind value step meter over u low_battery " },
  { read_trim, " moved " },
  { read_symptom, " id state " },
  { read_finding, " check outcome " },
  { read_repair, " cause result " },
  { read_mark, " what " },
  { read_stage, " id read against " },
  { read_note, " text " },
  { read_retract, " n " },
  { read_gap, " meter why " },
  { read_meter, " id name percent counts ac " },
  { read_call, " ask place kind was by value give lower same higher reveal drop " },
};

/* The payload an object holds; UNKNOWN when none or more than one of ours. */
static RwEventType
find_payload (JsonObject *object)
{
  RwEventType found = RW_EVENT_UNKNOWN;

  for (int type = 1; type < RW_N_EVENT_TYPES; type++)
    if (json_object_has_member (object, rw_event_type_to_key ((RwEventType) type)))
      {
        if (found != RW_EVENT_UNKNOWN)
          return RW_EVENT_UNKNOWN;
        found = (RwEventType) type;
      }
  return found;
}

/* *strange tells whether some key is not ours, so that the line must be kept as it is. */
static gboolean
read_payload (JsonObject *object,
              RwEvent    *event,
              gboolean   *strange,
              GError    **error)
{
  event->type = find_payload (object);
  *strange = event->type == RW_EVENT_UNKNOWN;
  if (*strange)
    return TRUE;

  const char *key = rw_event_type_to_key (event->type);
  JsonObject *payload = rw_json_get_object (object, key);

  if (payload == NULL)
    return bad (error, _ ("key “%s” must hold an object"), key);
  if (!payloads[event->type].read (payload, event, error))
    return FALSE;

  g_autofree char *known = g_strdup_printf (" n t %s ", key);

  *strange = has_stranger (object, known) || has_stranger (payload, payloads[event->type].known)
             || has_unplain (payload);
  return TRUE;
}

static gboolean
read_with_parser (const char *line,
                  gsize       length,
                  RwEvent    *event,
                  GError    **error)
{
  g_autoptr (GError) problem = NULL;
  g_autoptr (JsonNode) root = rw_json_parse (line, length, &problem);
  gboolean strange = FALSE;

  if (root == NULL)
    return bad (error, "%s", problem->message);
  if (!JSON_NODE_HOLDS_OBJECT (root))
    return bad (error, _ ("not a JSON object"));

  JsonObject *object = json_node_get_object (root);

  if (!read_count (object, &event->n))
    return bad (error, _ ("key “n” must be a whole number from 1"));
  if (!rw_json_get_number (object, "t", &event->t) || event->t < 0
      || event->t > RW_EVENT_MAX_SECONDS)
    return bad (error, _ ("key “t” must be seconds since the start"));
  if (!read_payload (object, event, &strange, error))
    {
      rw_event_clear (event);
      return FALSE;
    }
  event->line = strange ? g_strndup (line, length) : NULL;
  return TRUE;
}

gboolean
rw_event_from_line (const char *line,
                    gsize       length,
                    RwEvent    *event,
                    GError    **error)
{
  *event = (RwEvent){ 0 };
  if (rw_event_scan (line, length, event))
    return TRUE;
  *event = (RwEvent){ 0 };
  return read_with_parser (line, length, event, error);
}
