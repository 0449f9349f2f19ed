/* rw-knowledge-read.c: what the readers of knowledge entries share, symptoms, and causes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * symptom: {"id","title","detail","group","chance":{"default":p,"CAUSE":p,…},"source"}
 * cause:   {"id","title","detail","area","prior","needs":{"rails":[…],"supply":"…"},"broad":true,"part":"…",
 *           "often_with":{"CAUSE":times,…},
 *           "repair":{"title","minutes","cost","hazard","who","steps":[…],"recheck":[…]},"source"}
 */
#include "config.h"

#include "rw-knowledge-read.h"

#include <glib/gi18n-lib.h>

#include "rw-json.h"

static const double most_minutes = 10000;
static const double most_times = 100; /* more often than by chance */

static const char *const hazard_words[] = { "none", "low-voltage", "near-mains", "mains", "tube",
                                            NULL };
static const char *const who_words[] = { "anyone", "trained", "licensed", NULL };
static const char *const source_words[] = { "estimate", "published", NULL };
static const char *const group_words[] = { "game", "power", "picture", "sound", "heat",
                                           "controls", NULL };
static const char *const area_words[] = { "supply", "wiring", "board", "sound", "monitor",
                                          "mains", "meter", "none", NULL };

/* --- texts -------------------------------------------------------------------------------------- */

/* The texts of the files are the message ids. An empty one would give the catalogue's header. */
static char *
translated (const char *text)
{
  return g_strdup (*text != '\0' ? g_dgettext (GETTEXT_PACKAGE, text) : "");
}

char *
rw_read_text (const RwKeys *keys,
              const char   *key,
              GError      **error)
{
  const char *text = rw_keys_string (keys, key, error);

  return text != NULL ? translated (text) : NULL;
}

char *
rw_read_optional_text (const RwKeys *keys,
                       const char   *key,
                       GError      **error)
{
  const char *text = NULL;

  return rw_keys_optional_string (keys, key, "", &text, error) ? translated (text) : NULL;
}

char **
rw_read_texts (const RwKeys *keys,
               const char   *key,
               GError      **error)
{
  char **texts = NULL;

  if (!rw_keys_strings (keys, key, &texts, error))
    return NULL;
  for (char **text = texts; *text != NULL; text++)
    {
      char *source = *text;

      *text = translated (source);
      g_free (source);
    }
  return texts;
}

const char **
rw_read_ids (const RwKeys *keys,
             const char   *key,
             GError      **error)
{
  g_auto (GStrv) texts = NULL;

  if (!rw_keys_strings (keys, key, &texts, error))
    return NULL;

  const guint n = g_strv_length (texts);
  const char **ids = g_new0 (const char *, n + 1);

  for (guint i = 0; i < n; i++)
    ids[i] = g_intern_string (texts[i]);
  return ids;
}

/* --- shared keys -------------------------------------------------------------------------------- */

gboolean
rw_read_object (const RwKeys *outer,
                const char   *key,
                char        **where,
                RwKeys       *keys,
                GError      **error)
{
  *where = g_strdup_printf ("%s: %s", outer->where, key);
  return rw_keys_init (keys, json_object_get_member (outer->object, key), *where, outer->domain,
                       outer->code, error);
}

gboolean
rw_read_needs (const RwKeys *keys,
               const char ***rails,
               const char  **supply,
               GError      **error)
{
  g_autofree char *where = NULL;
  const char *word = NULL;
  RwKeys needs;

  if (!json_object_has_member (keys->object, "needs"))
    return TRUE;
  if (!rw_read_object (keys, "needs", &where, &needs, error)
      || !rw_keys_optional_string (&needs, "supply", NULL, &word, error)
      || (*rails = rw_read_ids (&needs, "rails", error)) == NULL)
    return FALSE;
  *supply = g_intern_string (word);
  return TRUE;
}

gboolean
rw_read_hazard (const RwKeys *keys,
                RwHazard     *hazard,
                RwWho        *who,
                GError      **error)
{
  int hazard_index = 0;
  int who_index = 0;

  if (!rw_keys_choice (keys, "hazard", hazard_words, -1, &hazard_index, error)
      || !rw_keys_choice (keys, "who", who_words, -1, &who_index, error))
    return FALSE;
  *hazard = (RwHazard) hazard_index;
  *who = (RwWho) who_index;
  return TRUE;
}

gboolean
rw_read_published (const RwKeys *keys,
                   gboolean     *published,
                   GError      **error)
{
  int index = 0;

  if (!rw_keys_choice (keys, "source", source_words, 0, &index, error))
    return FALSE;
  *published = index == 1;
  return TRUE;
}

/* --- symptoms ----------------------------------------------------------------------------------- */

static void
clear_symptom (gpointer data)
{
  RwSymptom *self = data;

  g_free (self->title);
  g_free (self->detail);
  g_free (self->where);
  rw_chance_table_clear (&self->chance);
}

void
rw_symptom_unref (RwSymptom *self)
{
  g_atomic_rc_box_release_full (self, clear_symptom);
}

RwSymptom *
rw_symptom_read (const RwKeys *keys,
                 GError      **error)
{
  g_autoptr (RwSymptom) self = g_atomic_rc_box_new0 (RwSymptom);
  const char *id = rw_keys_string (keys, "id", error);
  int group = 0;

  self->where = g_strdup (keys->where);
  if (id == NULL || (self->title = rw_read_text (keys, "title", error)) == NULL
      || (self->detail = rw_read_optional_text (keys, "detail", error)) == NULL
      || !rw_keys_choice (keys, "group", group_words, -1, &group, error)
      || !rw_chance_table_read (&self->chance, keys, 1, error)
      || !rw_read_published (keys, &self->published, error))
    return NULL;
  self->id = g_intern_string (id);
  self->group = group_words[group];
  return g_steal_pointer (&self);
}

/* --- causes ------------------------------------------------------------------------------------- */

static void
clear_cause (gpointer data)
{
  RwCause *self = data;

  g_free (self->title);
  g_free (self->detail);
  g_free (self->where);
  g_free (self->needs_rails);
  g_clear_pointer (&self->often_with, g_hash_table_unref);
  g_free (self->repair.title);
  g_strfreev (self->repair.steps);
  g_free (self->repair.recheck);
}

void
rw_cause_unref (RwCause *self)
{
  g_atomic_rc_box_release_full (self, clear_cause);
}

static gboolean
read_repair (RwCause      *self,
             const RwKeys *outer,
             GError      **error)
{
  g_autofree char *where = NULL;
  double cost = 0;
  RwKeys keys;

  if (!rw_read_object (outer, "repair", &where, &keys, error)
      || (self->repair.title = rw_read_text (&keys, "title", error)) == NULL
      || !rw_keys_number (&keys, "minutes", 0, most_minutes, &self->repair.minutes, error)
      || !rw_read_hazard (&keys, &self->repair.hazard, &self->repair.who, error)
      || (self->repair.steps = rw_read_texts (&keys, "steps", error)) == NULL
      || (self->repair.recheck = rw_read_ids (&keys, "recheck", error)) == NULL)
    return FALSE;
  if (json_object_has_member (keys.object, "cost")
      && !rw_keys_number (&keys, "cost", 0, 4, &cost, error))
    return FALSE;
  if (cost != (int) cost)
    return rw_keys_fail (&keys, "cost", error, _ ("must be a whole number"));
  self->repair.cost = (int) cost;
  return TRUE;
}

static gboolean
read_prior (RwCause      *self,
            const RwKeys *keys,
            GError      **error)
{
  return (rw_json_get_number (keys->object, "prior", &self->prior) && self->prior > 0)
         || rw_keys_fail (keys, "prior", error, _ ("must be a number above 0"));
}

/* "broad", "part" and "often_with", all of them optional. */
static gboolean
read_company (RwCause      *self,
              const RwKeys *keys,
              GError      **error)
{
  const char *part = NULL;

  if (!rw_keys_optional_flag (keys, "broad", &self->broad, error)
      || !rw_keys_optional_string (keys, "part", NULL, &part, error))
    return FALSE;
  self->part = g_intern_string (part);
  self->often_with = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, g_free);
  if (!json_object_has_member (keys->object, "often_with"))
    return TRUE;

  g_autofree char *where = NULL;
  g_autoptr (GList) causes = NULL;
  RwKeys with;

  if (!rw_read_object (keys, "often_with", &where, &with, error))
    return FALSE;
  causes = json_object_get_members (with.object);
  for (const GList *it = causes; it != NULL; it = it->next)
    {
      double times = 0;

      if (!rw_keys_number (&with, it->data, 0, most_times, &times, error))
        return FALSE;
      g_hash_table_insert (self->often_with, (gpointer) g_intern_string (it->data),
                           g_memdup2 (&times, sizeof times));
    }
  return TRUE;
}

RwCause *
rw_cause_read (const RwKeys *keys,
               GError      **error)
{
  g_autoptr (RwCause) self = g_atomic_rc_box_new0 (RwCause);
  const char *id = rw_keys_string (keys, "id", error);
  int area = 0;

  self->where = g_strdup (keys->where);
  if (id == NULL || (self->title = rw_read_text (keys, "title", error)) == NULL
      || (self->detail = rw_read_optional_text (keys, "detail", error)) == NULL
      || !rw_keys_choice (keys, "area", area_words, -1, &area, error)
      || !read_prior (self, keys, error)
      || !rw_read_needs (keys, &self->needs_rails, &self->needs_supply, error)
      || !read_company (self, keys, error)
      || !read_repair (self, keys, error) || !rw_read_published (keys, &self->published, error))
    return NULL;
  self->id = g_intern_string (id);
  self->area = area_words[area];
  return g_steal_pointer (&self);
}

/* (transfer full) */
static const char **
copy_ids (const char **ids)
{
  guint n = 0;

  if (ids == NULL)
    return NULL;
  while (ids[n] != NULL)
    n++;
  return g_memdup2 (ids, (n + 1) * sizeof *ids);
}

RwCause *
rw_cause_copy (const RwCause *cause,
               double         prior)
{
  RwCause *self = g_atomic_rc_box_new0 (RwCause);

  *self = *cause;
  self->prior = prior;
  self->title = g_strdup (cause->title);
  self->detail = g_strdup (cause->detail);
  self->where = g_strdup (cause->where);
  self->needs_rails = copy_ids (cause->needs_rails);
  self->often_with = g_hash_table_ref (cause->often_with);
  self->repair.title = g_strdup (cause->repair.title);
  self->repair.steps = g_strdupv (cause->repair.steps);
  self->repair.recheck = copy_ids (cause->repair.recheck);
  return self;
}

/* --- words -------------------------------------------------------------------------------------- */

const char *
rw_hazard_to_id (RwHazard hazard)
{
  g_return_val_if_fail (hazard < RW_N_HAZARDS, "none");
  return hazard_words[hazard];
}

const char *
rw_hazard_get_label (RwHazard hazard)
{
  static const char *const labels[] = { N_ ("unplugged"), N_ ("live, low voltage"),
                                        N_ ("beside bare mains parts"),
                                        N_ ("live mains"),
                                        N_ ("beside the picture tube's high voltage") };

  g_return_val_if_fail (hazard < RW_N_HAZARDS, "");
  return _ (labels[hazard]);
}

const char *
rw_who_to_id (RwWho who)
{
  g_return_val_if_fail (who < RW_N_WHOS, "anyone");
  return who_words[who];
}

const char *
rw_who_get_label (RwWho who)
{
  static const char *const labels[] = { N_ ("for anyone"), N_ ("for trained people only"),
                                        N_ ("for licensed people only") };

  g_return_val_if_fail (who < RW_N_WHOS, "");
  return _ (labels[who]);
}
