/* rw-meter-facts-json.c: a meter's facts as the object that session files hold, and back.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-meter-facts-json.h"

#include "rw-json.h"
#include "rw-limits.h"
#include "rw-plain-text.h"

static const char *const ac_ids[] = { NULL, "averaging", "true-rms" };

const char *
rw_meter_ac_to_id (RwMeterAc ac)
{
  g_return_val_if_fail ((guint) ac < G_N_ELEMENTS (ac_ids), NULL);
  return ac_ids[ac];
}

RwMeterAc
rw_meter_ac_from_id (const char *id)
{
  for (guint i = 1; i < G_N_ELEMENTS (ac_ids); i++)
    if (g_strcmp0 (id, ac_ids[i]) == 0)
      return (RwMeterAc) i;
  return RW_METER_AC_UNKNOWN;
}

RwMeterFacts *
rw_meter_facts_from_object (JsonObject *object)
{
  const char *id = rw_json_get_string (object, "id", NULL);
  double percent = 0, counts = 0;

  if (id == NULL || *id == '\0' || g_utf8_strlen (id, -1) > RW_LIMIT_ID_CHARS)
    return NULL;
  rw_json_get_number (object, "percent", &percent);
  rw_json_get_number (object, "counts", &counts);

  g_autofree char *plain_id = rw_plain_text_dup (id, RW_PLAIN_NAME);
  g_autofree char *name = rw_plain_text_dup (rw_json_get_string (object, "name", id), RW_PLAIN_NAME);
  RwMeterFacts *self = rw_meter_facts_new (plain_id, name, MAX (percent, 0), MAX (counts, 0));

  self->ac = rw_meter_ac_from_id (rw_json_get_string (object, "ac", NULL));
  return self;
}

void
rw_meter_facts_append_members (const RwMeterFacts *self,
                               GString            *out)
{
  const char *ac = rw_meter_ac_to_id (self->ac);

  g_string_append (out, "\"id\":");
  rw_json_append_string (out, self->id);
  g_string_append (out, ",\"name\":");
  rw_json_append_string (out, self->name);
  g_string_append (out, ",\"percent\":");
  rw_json_append_number (out, self->percent);
  g_string_append (out, ",\"counts\":");
  rw_json_append_number (out, self->counts);
  if (ac != NULL)
    g_string_append_printf (out, ",\"ac\":\"%s\"", ac);
}
