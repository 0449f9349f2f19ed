/* rw-event-call.c: what a call event says, as an object of a session file, and in words.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-event-call.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-event-json.h"
#include "rw-json.h"
#include "rw-limits.h"
#include "rw-plain-text.h"
#include "rw-quantity.h"

RwCallSaid
rw_call_said_ask (const char *rail,
                  RwPlace     place,
                  RwKind      kind,
                  double      was)
{
  RwCallSaid said = { .form = RW_CALL_ASK };

  said.ask.rail = g_intern_string (rail);
  said.ask.place = place;
  said.ask.kind = kind;
  said.ask.was = was;
  return said;
}

RwCallSaid
rw_call_said_value (const char *by,
                    double      value,
                    double      give)
{
  RwCallSaid said = { .form = RW_CALL_VALUE };

  said.value.by = g_strdup (by);
  said.value.value = value;
  said.value.give = give;
  return said;
}

RwCallSaid
rw_call_said_hands (guint lower,
                    guint same,
                    guint higher)
{
  return (RwCallSaid){ .form = RW_CALL_HANDS, .hands = { lower, same, higher } };
}

RwCallSaid
rw_call_said_reveal (guint n)
{
  return (RwCallSaid){ .form = RW_CALL_REVEAL, .reveal = n };
}

RwCallSaid
rw_call_said_drop (void)
{
  return (RwCallSaid){ .form = RW_CALL_DROP };
}

RwCallSaid
rw_call_said_copy (const RwCallSaid *self)
{
  RwCallSaid copy = *self;

  if (self->form == RW_CALL_VALUE)
    copy.value.by = g_strdup (self->value.by);
  return copy;
}

void
rw_call_said_clear (RwCallSaid *self)
{
  if (self->form == RW_CALL_VALUE)
    g_clear_pointer (&self->value.by, g_free);
}

/* --- reading ------------------------------------------------------------------------------------ */

static gboolean
bad (GError    **error,
     const char *message)
{
  g_set_error_literal (error, RW_EVENT_ERROR, RW_EVENT_ERROR_FORMAT, message);
  return FALSE;
}

/* There and not null. */
static gboolean
has (JsonObject *object,
     const char *key)
{
  JsonNode *node = json_object_get_member (object, key);

  return node != NULL && !JSON_NODE_HOLDS_NULL (node);
}

static gboolean
read_ask (JsonObject *object,
          RwCallSaid *out,
          GError    **error)
{
  const char *rail = rw_json_get_string (object, "ask", "");
  const char *place_id = rw_json_get_string (object, "place", "");
  const char *kind_id = rw_json_get_string (object, "kind", "dc");
  double was = NAN;
  RwPlace place;
  RwKind kind;

  if (*rail == '\0' || g_utf8_strlen (rail, -1) > RW_LIMIT_ID_CHARS)
    return bad (error, _ ("call: key “ask” must be the id of a rail"));
  if (!rw_place_from_id (place_id, &place))
    return bad (error, _ ("call: key “place” must be one of the places"));
  if (!rw_kind_from_id (kind_id, &kind))
    return bad (error, _ ("call: key “kind” must be one of the kinds of reading"));
  if (has (object, "was") && !rw_json_get_number (object, "was", &was))
    return bad (error, _ ("call: key “was” must be a number"));

  g_autofree char *plain = rw_plain_text_dup (rail, RW_PLAIN_NAME);

  *out = rw_call_said_ask (plain, place, kind, was);
  return TRUE;
}

static gboolean
read_value (JsonObject *object,
            RwCallSaid *out,
            GError    **error)
{
  const char *by = rw_json_get_string (object, "by", NULL);
  double value, give = NAN;

  if (by == NULL || g_utf8_strlen (by, -1) > RW_CALL_MAX_NAME)
    return bad (error, _ ("call: key “by” must be the caller’s name, of at most 200 letters"));
  if (!rw_json_get_number (object, "value", &value))
    return bad (error, _ ("call: key “value” must be a number"));
  if (has (object, "give") && (!rw_json_get_number (object, "give", &give) || !(give > 0)))
    return bad (error, _ ("call: key “give” must be a number above 0"));

  g_autofree char *plain = rw_plain_text_dup (by, RW_PLAIN_NAME);

  *out = rw_call_said_value (plain, value, give);
  return TRUE;
}

static const char *const hand_keys[RW_N_CALL_SIDES] = { "lower", "same", "higher" };

static gboolean
read_hands (JsonObject *object,
            RwCallSaid *out,
            GError    **error)
{
  RwCallSaid said = { .form = RW_CALL_HANDS };
  gboolean any = FALSE;

  for (guint i = 0; i < RW_N_CALL_SIDES; i++)
    {
      double n;

      if (!has (object, hand_keys[i]))
        continue;
      if (!rw_json_get_number (object, hand_keys[i], &n) || n < 0 || n > RW_CALL_MAX_HANDS || n != floor (n))
        return bad (error, _ ("call: “lower”, “same” and “higher” must be whole numbers of hands"));
      said.hands[i] = (guint) n;
      any = TRUE;
    }
  if (!any)
    return bad (error, _ ("call: none of the keys “ask”, “by”, “lower”, “same”, “higher”, “reveal”, “drop” is there"));
  *out = said;
  return TRUE;
}

gboolean
rw_call_said_from_object (JsonObject *object,
                          RwCallSaid *out,
                          GError    **error)
{
  if (has (object, "ask"))
    return read_ask (object, out, error);
  if (has (object, "by"))
    return read_value (object, out, error);
  if (has (object, "reveal"))
    {
      double n;

      if (!rw_json_get_number (object, "reveal", &n) || n < 1 || n > 4e9 || n != floor (n))
        return bad (error, _ ("call: key “reveal” must be the number of an event"));
      *out = rw_call_said_reveal ((guint) n);
      return TRUE;
    }
  if (has (object, "drop"))
    {
      if (!rw_json_get_boolean (object, "drop", FALSE))
        return bad (error, _ ("call: key “drop” can only be true"));
      *out = rw_call_said_drop ();
      return TRUE;
    }
  return read_hands (object, out, error);
}

/* --- writing ------------------------------------------------------------------------------------ */

static void
append_number (GString    *out,
               const char *key,
               double      value)
{
  g_string_append_printf (out, ",\"%s\":", key);
  rw_json_append_number (out, value);
}

static void
append_ask (const RwCallSaid *self,
            GString          *out)
{
  g_string_append (out, "\"ask\":");
  rw_json_append_string (out, self->ask.rail);
  g_string_append_printf (out, ",\"place\":\"%s\",\"kind\":\"%s\"", rw_place_to_id (self->ask.place),
                          rw_kind_to_id (self->ask.kind));
  if (isfinite (self->ask.was))
    append_number (out, "was", self->ask.was);
}

static void
append_value (const RwCallSaid *self,
              GString          *out)
{
  g_string_append (out, "\"by\":");
  rw_json_append_string (out, self->value.by);
  append_number (out, "value", self->value.value);
  if (isfinite (self->value.give))
    append_number (out, "give", self->value.give);
}

void
rw_call_said_append_members (const RwCallSaid *self,
                             GString          *out)
{
  switch (self->form)
    {
    case RW_CALL_ASK:
      append_ask (self, out);
      break;
    case RW_CALL_VALUE:
      append_value (self, out);
      break;
    case RW_CALL_HANDS:
      g_string_append_printf (out, "\"lower\":%u,\"same\":%u,\"higher\":%u", self->hands[RW_CALL_LOWER],
                              self->hands[RW_CALL_SAME], self->hands[RW_CALL_HIGHER]);
      break;
    case RW_CALL_REVEAL:
      g_string_append_printf (out, "\"reveal\":%u", self->reveal);
      break;
    case RW_CALL_DROP:
    default:
      g_string_append (out, "\"drop\":true");
      break;
    }
}

/* --- words -------------------------------------------------------------------------------------- */

static char *
describe_ask (const RwCallSaid *self,
              const RwProfile  *profile)
{
  const RwRail *rail = profile != NULL ? rw_profile_find_rail (profile, self->ask.rail) : NULL;
  const char *label = rail != NULL                                      ? rail->label
                      : g_str_equal (self->ask.rail, RW_RAIL_GROUND) ? _ ("ground")
                                                                        : self->ask.rail;

  /* Translators: a class is asked what a hidden rail will read. Rail, place. */
  return g_strdup_printf (_ ("call it first: what will %s, %s, read?"), label, rw_place_get_label (self->ask.place));
}

/* The round's kind is not known here, so that the numbers stand without a unit. */
static char *
describe_value (const RwCallSaid *self)
{
  g_autofree char *value = rw_quantity_format_number (self->value.value, 3);
  g_autofree char *give = isfinite (self->value.give) ? rw_quantity_format_number (self->value.give, 3) : NULL;

  if (give != NULL)
    /* Translators: who called, the value, how far it may be off. */
    return g_strdup_printf (_ ("called by %s: %s ± %s"), self->value.by, value, give);
  /* Translators: who called, the value. */
  return g_strdup_printf (_ ("called by %s: %s"), self->value.by, value);
}

char *
rw_call_said_describe (const RwCallSaid *self,
                       const RwProfile  *profile)
{
  switch (self->form)
    {
    case RW_CALL_ASK:
      return describe_ask (self, profile);
    case RW_CALL_VALUE:
      return describe_value (self);
    case RW_CALL_HANDS:
      /* Translators: numbers of raised hands. */
      return g_strdup_printf (_ ("hands: lower %u, same %u, higher %u"), self->hands[RW_CALL_LOWER],
                              self->hands[RW_CALL_SAME], self->hands[RW_CALL_HIGHER]);
    case RW_CALL_REVEAL:
      return g_strdup_printf (_ ("calls revealed: event %u is the answer"), self->reveal);
    case RW_CALL_DROP:
    default:
      return g_strdup (_ ("the round of calls is given up"));
    }
}
