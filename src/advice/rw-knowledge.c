/* rw-knowledge.c: what is known of symptoms, causes, checks and computed findings.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-knowledge.h"

#include "rw-json.h"
#include "rw-knowledge-private.h"
#include "rw-knowledge-read.h"

RwKnowledge *
rw_knowledge_new_empty (void)
{
  RwKnowledge *self = g_atomic_rc_box_new0 (RwKnowledge);

  self->symptoms = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_symptom_unref);
  self->causes = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_cause_unref);
  self->checks = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_check_unref);
  self->computed = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_computed_unref);
  return self;
}

static void
share_entries (GPtrArray *into,
               GPtrArray *from)
{
  for (guint i = 0; i < from->len; i++)
    g_ptr_array_add (into, g_atomic_rc_box_acquire (from->pdata[i]));
}

RwKnowledge *
rw_knowledge_copy (RwKnowledge *self)
{
  RwKnowledge *copy = rw_knowledge_new_empty ();

  share_entries (copy->symptoms, self->symptoms);
  share_entries (copy->causes, self->causes);
  share_entries (copy->checks, self->checks);
  share_entries (copy->computed, self->computed);
  return copy;
}

static void
clear_knowledge (gpointer data)
{
  RwKnowledge *self = data;

  g_clear_pointer (&self->symptoms, g_ptr_array_unref);
  g_clear_pointer (&self->causes, g_ptr_array_unref);
  g_clear_pointer (&self->checks, g_ptr_array_unref);
  g_clear_pointer (&self->computed, g_ptr_array_unref);
}

RwKnowledge *
rw_knowledge_ref (RwKnowledge *self)
{
  return g_atomic_rc_box_acquire (self);
}

void
rw_knowledge_unref (RwKnowledge *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full (self, clear_knowledge);
}

/* --- entries ------------------------------------------------------------------------------------ */

G_STATIC_ASSERT (G_STRUCT_OFFSET (RwSymptom, id) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (RwCause, id) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (RwCheck, id) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (RwComputed, id) == 0);

const char *
rw_knowledge_id_of (gconstpointer entry)
{
  return *(const char *const *) entry;
}

int
rw_knowledge_find (const GPtrArray *list,
                   const char      *id)
{
  for (guint i = 0; i < list->len; i++)
    if (g_strcmp0 (rw_knowledge_id_of (list->pdata[i]), id) == 0)
      return (int) i;
  return -1;
}

static gpointer
find_entry (const GPtrArray *list,
            const char      *id)
{
  const int index = rw_knowledge_find (list, id);

  return index >= 0 ? list->pdata[index] : NULL;
}

/* --- one cabinet -------------------------------------------------------------------------------- */

static gboolean
has_rail (const RwProfile *profile,
          const char      *rail)
{
  return g_str_equal (rail, RW_RAIL_GROUND) || rw_profile_find_rail (profile, rail) != NULL;
}

/* A profile that does not tell its supply rules nothing out. */
static gboolean
meets (const RwProfile *profile,
       const char     **rails,
       const char      *supply)
{
  JsonObject *object = json_node_get_object (rw_profile_get_node (profile));
  const char *has = rw_json_get_string (object, "supply", NULL);

  if (supply != NULL && has != NULL && !g_str_equal (supply, has))
    return FALSE;
  for (; rails != NULL && *rails != NULL; rails++)
    if (!has_rail (profile, *rails))
      return FALSE;
  return TRUE;
}

RwKnowledge *
rw_knowledge_for_profile (RwKnowledge     *self,
                          const RwProfile *profile)
{
  RwKnowledge *some = rw_knowledge_new_empty ();

  share_entries (some->symptoms, self->symptoms);
  for (guint i = 0; i < self->causes->len; i++)
    {
      RwCause *cause = self->causes->pdata[i];

      if (meets (profile, cause->needs_rails, cause->needs_supply))
        g_ptr_array_add (some->causes, g_atomic_rc_box_acquire (cause));
    }
  for (guint i = 0; i < self->checks->len; i++)
    {
      RwCheck *check = self->checks->pdata[i];

      if (meets (profile, check->needs_rails, check->needs_supply)
          && (!check->measures || has_rail (profile, check->rail)))
        g_ptr_array_add (some->checks, g_atomic_rc_box_acquire (check));
    }
  for (guint i = 0; i < self->computed->len; i++)
    {
      RwComputed *computed = self->computed->pdata[i];

      if (computed->rail == NULL || has_rail (profile, computed->rail))
        g_ptr_array_add (some->computed, g_atomic_rc_box_acquire (computed));
    }
  return some;
}

/* --- getters ------------------------------------------------------------------------------------ */

guint
rw_knowledge_get_n_symptoms (const RwKnowledge *self)
{
  return self->symptoms->len;
}

const RwSymptom *
rw_knowledge_get_symptom (const RwKnowledge *self,
                          guint              i)
{
  g_return_val_if_fail (i < self->symptoms->len, NULL);
  return self->symptoms->pdata[i];
}

const RwSymptom *
rw_knowledge_find_symptom (const RwKnowledge *self,
                           const char        *id)
{
  return find_entry (self->symptoms, id);
}

guint
rw_knowledge_get_n_causes (const RwKnowledge *self)
{
  return self->causes->len;
}

const RwCause *
rw_knowledge_get_cause (const RwKnowledge *self,
                        guint              i)
{
  g_return_val_if_fail (i < self->causes->len, NULL);
  return self->causes->pdata[i];
}

const RwCause *
rw_knowledge_find_cause (const RwKnowledge *self,
                         const char        *id)
{
  return find_entry (self->causes, id);
}

int
rw_knowledge_index_of_cause (const RwKnowledge *self,
                             const char        *id)
{
  return rw_knowledge_find (self->causes, id);
}

guint
rw_knowledge_get_n_checks (const RwKnowledge *self)
{
  return self->checks->len;
}

const RwCheck *
rw_knowledge_get_check (const RwKnowledge *self,
                        guint              i)
{
  g_return_val_if_fail (i < self->checks->len, NULL);
  return self->checks->pdata[i];
}

const RwCheck *
rw_knowledge_find_check (const RwKnowledge *self,
                         const char        *id)
{
  return find_entry (self->checks, id);
}

int
rw_knowledge_index_of_check (const RwKnowledge *self,
                             const char        *id)
{
  return rw_knowledge_find (self->checks, id);
}

const RwComputed *
rw_knowledge_find_computed (const RwKnowledge *self,
                            const char        *of,
                            RwPlace            place,
                            const char        *rail)
{
  for (guint i = self->computed->len; i-- > 0;)
    {
      const RwComputed *computed = self->computed->pdata[i];

      if (computed->place == place && g_str_equal (computed->of, of)
          && g_strcmp0 (computed->rail, rail) == 0)
        return computed;
    }
  return NULL;
}
