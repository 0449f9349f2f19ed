/* rw-session-header.c: the first line of a session file.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-session.h"

#include <glib/gi18n-lib.h>

#include "rw-event-json.h"
#include "rw-json.h"
#include "rw-limits.h"
#include "rw-meter-facts-json.h"
#include "rw-plain-text.h"
#include "rw-session-from-private.h"

/* The version of the file format that this program writes. */
static const int format_version = 1;

RwSessionHeader *
rw_session_header_new (RwProfile  *profile,
                       const char *cabinet_name,
                       const char *cabinet_tag,
                       GPtrArray  *meters,
                       GDateTime  *started)
{
  RwSessionHeader *self = g_new0 (RwSessionHeader, 1);

  self->id = g_uuid_string_random ();
  self->started = g_date_time_to_utc (started);
  self->cabinet_name = g_strdup (cabinet_name);
  self->cabinet_tag = g_strdup (cabinet_tag != NULL ? cabinet_tag : "");
  self->profile = rw_profile_ref (profile);
  self->meters = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_meter_facts_free);
  for (guint i = 0; meters != NULL && i < meters->len; i++)
    g_ptr_array_add (self->meters, rw_meter_facts_copy (meters->pdata[i]));
  return self;
}

RwSessionHeader *
rw_session_header_copy (const RwSessionHeader *self)
{
  RwSessionHeader *copy = rw_session_header_new (self->profile, self->cabinet_name, self->cabinet_tag,
                                                 self->meters, self->started);

  g_free (copy->id);
  copy->id = g_strdup (self->id);
  copy->from = self->from != NULL ? rw_session_from_copy (self->from) : NULL;
  copy->line = g_strdup (self->line);
  return copy;
}

void
rw_session_header_free (RwSessionHeader *self)
{
  if (self == NULL)
    return;
  g_free (self->id);
  g_clear_pointer (&self->started, g_date_time_unref);
  g_free (self->cabinet_name);
  g_free (self->cabinet_tag);
  rw_profile_unref (self->profile);
  g_clear_pointer (&self->meters, g_ptr_array_unref);
  g_clear_pointer (&self->from, rw_session_from_free);
  g_free (self->line);
  g_free (self);
}

/* Those with an id. NULL: more than anybody has on one bench. */
static GPtrArray *
read_meters (JsonObject *object,
             GError    **error)
{
  JsonArray *array = rw_json_get_array (object, "meters");
  const guint n = array != NULL ? json_array_get_length (array) : 0;

  if (n > RW_LIMIT_METERS)
    {
      g_set_error (error, RW_EVENT_ERROR, RW_EVENT_ERROR_FORMAT,
                   _ ("header: key “meters” lists %u meters; a session has at most %d"), n, RW_LIMIT_METERS);
      return NULL;
    }

  GPtrArray *meters = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_meter_facts_free);

  for (guint i = 0; i < n; i++)
    {
      JsonNode *node = json_array_get_element (array, i);
      RwMeterFacts *facts = JSON_NODE_HOLDS_OBJECT (node)
                                ? rw_meter_facts_from_object (json_node_get_object (node))
                                : NULL;

      if (facts != NULL)
        g_ptr_array_add (meters, facts);
    }
  return meters;
}

static gboolean
refuse (GError    **error,
        const char *message)
{
  g_set_error_literal (error, RW_EVENT_ERROR, RW_EVENT_ERROR_FORMAT, message);
  return FALSE;
}

static gboolean
check_version (JsonObject *object,
               GError    **error)
{
  double version;

  if (!rw_json_get_number (object, "railwright", &version) || version < 1)
    return refuse (error, _ ("the first line is not the header of a session: key “railwright” is missing"));
  if (version > format_version)
    return refuse (error, _ ("this session was written by a newer version of the program"));
  return TRUE;
}

/* "" when it is missing; the line as read keeps what does not fit to be shown. */
static char *
dup_name (JsonObject *object,
          const char *key)
{
  return rw_plain_text_dup (object != NULL ? rw_json_get_string (object, key, "") : "", RW_PLAIN_NAME);
}

static RwSessionHeader *
header_from_object (JsonObject *object,
                    GError    **error)
{
  const char *started_text = rw_json_get_string (object, "started", "");
  g_autoptr (GTimeZone) utc = g_time_zone_new_utc ();
  g_autoptr (GDateTime) started = g_date_time_new_from_iso8601 (started_text, utc);
  JsonObject *cabinet = rw_json_get_object (object, "cabinet");

  if (!check_version (object, error))
    return NULL;
  if (started == NULL)
    {
      refuse (error, _ ("header: key “started” must be a date and time such as 2026-03-14T09:30:00Z"));
      return NULL;
    }

  g_autoptr (RwProfile) profile = rw_profile_new_from_node (json_object_get_member (object, "profile"),
                                                            "profile", error);

  if (profile == NULL)
    {
      g_prefix_error (error, "%s: ", _ ("header"));
      return NULL;
    }

  g_autoptr (GPtrArray) meters = read_meters (object, error);

  if (meters == NULL)
    return NULL;

  g_autofree char *name = dup_name (cabinet, "name");
  g_autofree char *tag = dup_name (cabinet, "tag");
  RwSessionHeader *self = rw_session_header_new (profile, name, tag, meters, started);

  g_free (self->id);
  self->id = dup_name (object, "id");
  self->from = rw_session_from_read (rw_json_get_object (object, "from"));
  return self;
}

RwSessionHeader *
rw_session_header_from_line (const char *line,
                             gsize       length,
                             GError    **error)
{
  g_autoptr (GError) problem = NULL;
  g_autoptr (JsonNode) root = rw_json_parse (line, length, &problem);

  if (root == NULL || !JSON_NODE_HOLDS_OBJECT (root))
    {
      g_set_error (error, RW_EVENT_ERROR, RW_EVENT_ERROR_FORMAT,
                   _ ("the first line is not the header of a session (%s)"),
                   problem != NULL ? problem->message : _ ("not a JSON object"));
      return NULL;
    }

  RwSessionHeader *self = header_from_object (json_node_get_object (root), error);

  if (self != NULL)
    self->line = g_strndup (line, length);
  return self;
}

static void
append_meter (GString            *out,
              const RwMeterFacts *facts)
{
  g_string_append_c (out, '{');
  rw_meter_facts_append_members (facts, out);
  g_string_append_c (out, '}');
}

void
rw_session_header_append_line (const RwSessionHeader *self,
                               GString               *out)
{
  if (self->line != NULL)
    {
      g_string_append (out, self->line);
      g_string_append_c (out, '\n');
      return;
    }

  g_autofree char *started = g_date_time_format (self->started, "%Y-%m-%dT%H:%M:%SZ");

  g_string_append_printf (out, "{\"railwright\":%d,\"id\":", format_version);
  rw_json_append_string (out, self->id);
  g_string_append_printf (out, ",\"started\":\"%s\",\"cabinet\":{\"name\":", started);
  rw_json_append_string (out, self->cabinet_name);
  g_string_append (out, ",\"tag\":");
  rw_json_append_string (out, self->cabinet_tag);
  g_string_append_c (out, '}');
  if (self->from != NULL)
    rw_session_from_append (self->from, out);
  g_string_append (out, ",\"profile\":");
  rw_json_append_node (out, rw_profile_get_node (self->profile));
  g_string_append (out, ",\"meters\":[");
  for (guint i = 0; i < self->meters->len; i++)
    {
      if (i > 0)
        g_string_append_c (out, ',');
      append_meter (out, self->meters->pdata[i]);
    }
  g_string_append (out, "]}\n");
}
