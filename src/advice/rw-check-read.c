/* rw-check-read.c: one check out of a knowledge file.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * {"id","title","how":[…],"why","minutes","hazard","who","safety","needs",
 *  "setup":{"power":"on|off|any","board":"fitted|out|any","warm":"warm|cold|any"},
 *  "measure":{"rail","place","kind"},"contact":true,"returns":"OUTCOME",
 *  "outcomes":[{"id","title","meaning","from","to"},…],
 *  "chance":{"default":[…],"CAUSE":[…],…},"source"}
 * With "measure" the outcomes tile the real line, each from "from" (inclusive) to "to" (exclusive).
 */
#include "config.h"

#include "rw-knowledge-read.h"

#include <glib/gi18n-lib.h>

static const double most_minutes = 10000;

static void
clear_check (gpointer data)
{
  RwCheck *self = data;

  rw_outcomes_free (self->outcomes, self->n_outcomes);
  g_free (self->title);
  g_free (self->why);
  g_strfreev (self->how);
  g_free (self->safety);
  g_free (self->where);
  g_free (self->needs_rails);
  rw_chance_table_clear (&self->chance);
}

void
rw_check_unref (RwCheck *self)
{
  g_atomic_rc_box_release_full (self, clear_check);
}

int
rw_check_find_outcome (const RwCheck *self,
                       const char    *outcome)
{
  for (guint o = 0; o < self->n_outcomes; o++)
    if (g_strcmp0 (self->outcomes[o].id, outcome) == 0)
      return (int) o;
  return -1;
}

gboolean
rw_check_is_reserved (const RwCheck *self)
{
  return self->hazard > RW_HAZARD_NEAR_MAINS || self->who != RW_WHO_ANYONE;
}

/* One axis of the setup; the words stand for no, yes, any. */
static gboolean
read_axis (const RwKeys      *keys,
           const char        *key,
           const char *const *words,
           RwSaid            *out,
           GError           **error)
{
  static const RwSaid meanings[] = { RW_SAID_NO, RW_SAID_YES, RW_SAID_NOT };
  int index = 0;

  if (!rw_keys_choice (keys, key, words, 2, &index, error))
    return FALSE;
  *out = meanings[index];
  return TRUE;
}

static gboolean
read_setup (RwCheck      *self,
            const RwKeys *outer,
            GError      **error)
{
  static const char *const power[] = { "off", "on", "any", NULL };
  static const char *const board[] = { "out", "fitted", "any", NULL };
  static const char *const warm[] = { "cold", "warm", "any", NULL };
  g_autofree char *where = g_strdup_printf ("%s: setup", outer->where);
  RwKeys keys;

  self->power = self->board = self->warm = RW_SAID_NOT;
  if (!json_object_has_member (outer->object, "setup"))
    return TRUE;
  return rw_keys_init (&keys, json_object_get_member (outer->object, "setup"), where, outer->domain,
                       outer->code, error)
         && read_axis (&keys, "power", power, &self->power, error)
         && read_axis (&keys, "board", board, &self->board, error)
         && read_axis (&keys, "warm", warm, &self->warm, error);
}

static gboolean
read_measure (RwCheck      *self,
              const RwKeys *outer,
              GError      **error)
{
  g_autofree char *where = g_strdup_printf ("%s: measure", outer->where);
  const char *rail;
  const char *place;
  const char *kind;
  RwKeys keys;

  if (!json_object_has_member (outer->object, "measure"))
    return TRUE;
  if (!rw_keys_init (&keys, json_object_get_member (outer->object, "measure"), where, outer->domain,
                     outer->code, error)
      || (rail = rw_keys_string (&keys, "rail", error)) == NULL
      || (place = rw_keys_string (&keys, "place", error)) == NULL
      || (kind = rw_keys_string (&keys, "kind", error)) == NULL)
    return FALSE;
  if (!rw_place_from_id (place, &self->place))
    return rw_keys_fail (&keys, "place", error, _ ("names no place: “%s”"), place);
  if (!rw_kind_from_id (kind, &self->kind))
    return rw_keys_fail (&keys, "kind", error, _ ("names nothing that can be measured: “%s”"),
                         kind);
  self->rail = g_intern_string (rail);
  self->measures = TRUE;
  return TRUE;
}

/* A drop along a wire runs through the connector at its end. */
static gboolean
read_contact (RwCheck      *self,
              const RwKeys *keys,
              GError      **error)
{
  if (!rw_keys_optional_flag (keys, "contact", &self->contact, error))
    return FALSE;
  if (!json_object_has_member (keys->object, "contact"))
    self->contact = self->measures && self->place == RW_PLACE_WIRE;
  return TRUE;
}

static gboolean
read_returns (RwCheck      *self,
              const RwKeys *keys,
              GError      **error)
{
  const char *outcome = NULL;

  self->returns = -1;
  if (!json_object_has_member (keys->object, "returns"))
    return TRUE;
  outcome = rw_keys_string (keys, "returns", error);
  if (outcome == NULL)
    return FALSE;
  self->returns = rw_check_find_outcome (self, outcome);
  if (self->returns < 0)
    rw_keys_fail (keys, "returns", error, _ ("it must be one of the check's outcomes"));
  return self->returns >= 0;
}

static gboolean
read_safety (RwCheck      *self,
             const RwKeys *keys,
             GError      **error)
{
  self->safety = rw_read_optional_text (keys, "safety", error);
  if (self->safety == NULL)
    return FALSE;
  if (self->hazard > RW_HAZARD_LOW_VOLTAGE && *self->safety == '\0')
    return rw_keys_fail (keys, "safety", error, _ ("is needed with the hazard “%s”"),
                         rw_hazard_to_id (self->hazard));
  return TRUE;
}

RwCheck *
rw_check_read (const RwKeys *keys,
               GError      **error)
{
  g_autoptr (RwCheck) self = g_atomic_rc_box_new0 (RwCheck);
  const char *id = rw_keys_string (keys, "id", error);

  self->where = g_strdup (keys->where);
  if (id == NULL || (self->title = rw_read_text (keys, "title", error)) == NULL
      || (self->why = rw_read_optional_text (keys, "why", error)) == NULL
      || (self->how = rw_read_texts (keys, "how", error)) == NULL
      || !rw_keys_number (keys, "minutes", 0, most_minutes, &self->minutes, error)
      || !rw_read_hazard (keys, &self->hazard, &self->who, error)
      || !read_safety (self, keys, error)
      || !rw_read_needs (keys, &self->needs_rails, &self->needs_supply, error)
      || !read_setup (self, keys, error) || !read_measure (self, keys, error)
      || !rw_outcomes_read (&self->outcomes, &self->n_outcomes, keys, self->measures, error)
      || !read_contact (self, keys, error) || !read_returns (self, keys, error)
      || !rw_chance_table_read (&self->chance, keys, self->n_outcomes, error)
      || !rw_read_published (keys, &self->published, error))
    return NULL;
  self->id = g_intern_string (id);
  return g_steal_pointer (&self);
}
