/* rw-known-meter-json.c: a remembered meter as the object that the meter book holds, and back.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-known-meter-json.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-json.h"
#include "rw-meter-facts-json.h"

static const char *const parity_ids[RW_N_PARITIES] = { "none", "odd", "even" };

/* --- reading ------------------------------------------------------------------------- */

static gboolean
refuse (const char *key,
        GError    **error)
{
  g_set_error (error, RW_METER_BOOK_ERROR, RW_METER_BOOK_ERROR_DAMAGED,
               /* Translators: the name of a member of a JSON object; keep it. */
               _ ("“%s” is missing or makes no sense"), key);
  return FALSE;
}

/* A whole number from least to most. */
static gboolean
read_count (JsonObject *object,
            const char *key,
            guint       least,
            guint       most,
            guint      *out,
            GError    **error)
{
  double number;

  if (!rw_json_get_number (object, key, &number) || number < least || number > most
      || floor (number) < number)
    return refuse (key, error);
  *out = (guint) number;
  return TRUE;
}

/* A string that may be left out or null. */
static gboolean
read_text (JsonObject *object,
           const char *key,
           char      **out,
           GError    **error)
{
  JsonNode *node = json_object_get_member (object, key);

  if (node == NULL || JSON_NODE_HOLDS_NULL (node))
    return TRUE;

  const char *text = rw_json_get_string (object, key, NULL);

  if (text == NULL || *text == '\0')
    return refuse (key, error);
  *out = g_strdup (text);
  return TRUE;
}

static gboolean
read_parity (JsonObject *object,
             RwParity   *out,
             GError    **error)
{
  const char *id = rw_json_get_string (object, "parity", NULL);

  for (guint i = 0; i < RW_N_PARITIES; i++)
    if (g_strcmp0 (id, parity_ids[i]) == 0)
      {
        *out = (RwParity) i;
        return TRUE;
      }
  return refuse ("parity", error);
}

static RwMeterAddress *
read_serial (JsonObject *object,
             GError    **error)
{
  const char *port = rw_json_get_string (object, "port", "");
  RwSerialSettings line = { .dtr = rw_json_get_boolean (object, "dtr", TRUE),
                            .rts = rw_json_get_boolean (object, "rts", TRUE) };

  if (*port == '\0')
    {
      refuse ("port", error);
      return NULL;
    }
  if (!read_count (object, "baud", 75, 4000000, &line.baud, error)
      || !read_count (object, "bits", 7, 8, &line.bits, error)
      || !read_parity (object, &line.parity, error)
      || !read_count (object, "stop_bits", 1, 2, &line.stop_bits, error))
    return NULL;
  return rw_meter_address_new_serial (port, &line);
}

static RwMeterAddress *
read_tcp (JsonObject *object,
          GError    **error)
{
  const char *host = rw_json_get_string (object, "host", "");
  guint tcp_port;

  if (*host == '\0')
    {
      refuse ("host", error);
      return NULL;
    }
  if (!read_count (object, "tcp_port", 1, G_MAXUINT16, &tcp_port, error))
    return NULL;
  return rw_meter_address_new_tcp (host, (guint16) tcp_port);
}

static gboolean
read_address (JsonObject   *object,
              RwKnownMeter *self,
              GError      **error)
{
  JsonNode *node = json_object_get_member (object, "address");
  JsonObject *address = rw_json_get_object (object, "address");

  if (node == NULL || JSON_NODE_HOLDS_NULL (node))
    return TRUE;

  const char *kind = address != NULL ? rw_json_get_string (address, "kind", NULL) : NULL;

  if (g_strcmp0 (kind, "serial") == 0)
    self->address = read_serial (address, error);
  else if (g_strcmp0 (kind, "tcp") == 0)
    self->address = read_tcp (address, error);
  else
    refuse ("address", error);
  return self->address != NULL;
}

static gboolean
read_mark (JsonObject   *object,
           RwKnownMeter *self,
           GError      **error)
{
  const char *mark = rw_json_get_string (object, "mark", ".");

  if ((mark[0] != '.' && mark[0] != ',') || mark[1] != '\0')
    return refuse ("mark", error);
  self->mark = mark[0];
  return TRUE;
}

/* rw_meter_facts_from_object () forgives a bad figure, which a session has to; a book must not, since
 * the figure would be lost at the next writing. */
static RwMeterFacts *
read_facts (JsonObject *object,
            GError    **error)
{
  static const char *const figures[] = { "percent", "counts" };
  const char *id = rw_json_get_string (object, "id", "");

  if (*id == '\0')
    {
      refuse ("id", error);
      return NULL;
    }
  for (guint i = 0; i < G_N_ELEMENTS (figures); i++)
    {
      double figure;

      if (!rw_json_get_number (object, figures[i], &figure) || figure < 0)
        {
          refuse (figures[i], error);
          return NULL;
        }
    }
  return rw_meter_facts_from_object (object);
}

RwKnownMeter *
rw_known_meter_from_object (JsonObject *object,
                            GError    **error)
{
  g_autoptr (RwMeterFacts) facts = read_facts (object, error);

  if (facts == NULL)
    return NULL;

  g_autoptr (RwKnownMeter) self = rw_known_meter_new (facts);

  if (!read_address (object, self, error) || !read_mark (object, self, error)
      || !read_text (object, "format", &self->format, error)
      || !read_text (object, "pattern", &self->pattern, error)
      || !read_text (object, "identity", &self->identity, error)
      || !read_text (object, "rail", &self->rail, error))
    return NULL;
  if (self->address != NULL && self->format == NULL)
    {
      refuse ("format", error);
      return NULL;
    }
  return g_steal_pointer (&self);
}

/* --- writing ------------------------------------------------------------------------- */

static void
set_text (JsonObject *object,
          const char *key,
          const char *text)
{
  if (text != NULL)
    json_object_set_string_member (object, key, text);
  else if (json_object_has_member (object, key))
    json_object_remove_member (object, key);
}

static JsonObject *
make_serial (const RwMeterAddress *address)
{
  JsonObject *object = json_object_new ();

  json_object_set_string_member (object, "kind", "serial");
  json_object_set_string_member (object, "port", address->port);
  json_object_set_int_member (object, "baud", address->line.baud);
  json_object_set_int_member (object, "bits", address->line.bits);
  json_object_set_string_member (object, "parity", parity_ids[address->line.parity]);
  json_object_set_int_member (object, "stop_bits", address->line.stop_bits);
  json_object_set_boolean_member (object, "dtr", address->line.dtr);
  json_object_set_boolean_member (object, "rts", address->line.rts);
  return object;
}

static JsonObject *
make_tcp (const RwMeterAddress *address)
{
  JsonObject *object = json_object_new ();

  json_object_set_string_member (object, "kind", "tcp");
  json_object_set_string_member (object, "host", address->host);
  json_object_set_int_member (object, "tcp_port", address->tcp_port);
  return object;
}

void
rw_known_meter_to_object (const RwKnownMeter *self,
                          JsonObject         *object)
{
  const RwMeterAddress *address = self->address;
  const char mark[] = { self->mark, '\0' };

  json_object_set_string_member (object, "id", self->facts->id);
  json_object_set_string_member (object, "name", self->facts->name);
  json_object_set_double_member (object, "percent", self->facts->percent);
  json_object_set_double_member (object, "counts", self->facts->counts);
  set_text (object, "ac", rw_meter_ac_to_id (self->facts->ac));
  if (address == NULL)
    json_object_set_null_member (object, "address");
  else
    json_object_set_object_member (object, "address",
                                   address->kind == RW_METER_ADDRESS_TCP ? make_tcp (address)
                                                                         : make_serial (address));
  set_text (object, "format", self->format);
  set_text (object, "pattern", self->pattern);
  json_object_set_string_member (object, "mark", mark);
  set_text (object, "identity", self->identity);
  set_text (object, "rail", self->rail);
}
