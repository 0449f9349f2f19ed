/* rw-knowledge-load.c: reads knowledge files and puts them on top of each other.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A knowledge file is an object with any of the lists "symptoms", "causes", "checks",
 * "computed"; other keys are ignored. Files are read whole before anything of them is taken, so a file that is
 * wrong leaves no half behind. Among the shipped files an id may stand once; each file of
 * the user's replaces what came before. At the end, every cause that a chance table names
 * and every check that a repair names must exist.
 */
#include "config.h"

#include "rw-knowledge.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "rw-json.h"
#include "rw-knowledge-private.h"
#include "rw-knowledge-read.h"
#include "rw-paths.h"

G_DEFINE_QUARK (rw_knowledge_error, rw_knowledge_error)

/* --- reading ------------------------------------------------------------------------------------ */

typedef gpointer (*ReadEntry) (const RwKeys *keys,
                               GError      **error);

static gpointer
read_symptom (const RwKeys *keys,
              GError      **error)
{
  return rw_symptom_read (keys, error);
}

static gpointer
read_cause (const RwKeys *keys,
            GError      **error)
{
  return rw_cause_read (keys, error);
}

static gpointer
read_check (const RwKeys *keys,
            GError      **error)
{
  return rw_check_read (keys, error);
}

static gpointer
read_computed (const RwKeys *keys,
               GError      **error)
{
  return rw_computed_read (keys, error);
}

static gboolean
read_list (GPtrArray    *list,
           const RwKeys *file,
           const char   *key,
           ReadEntry     read,
           GError      **error)
{
  if (!json_object_has_member (file->object, key))
    return TRUE;

  JsonArray *array = rw_keys_array (file, key, error);

  for (guint i = 0; array != NULL && i < json_array_get_length (array); i++)
    {
      g_autofree char *where = g_strdup_printf ("%s: %s[%u]", file->where, key, i);
      RwKeys keys;
      gpointer entry = NULL;

      if (!rw_keys_init (&keys, json_array_get_element (array, i), where, file->domain,
                         file->code, error)
          || (entry = read (&keys, error)) == NULL)
        return FALSE;
      g_ptr_array_add (list, entry);
      if (rw_knowledge_find (list, rw_knowledge_id_of (entry)) != (int) list->len - 1)
        return rw_keys_fail (&keys, "id", error, _ ("is used twice: “%s”"),
                             rw_knowledge_id_of (entry));
    }
  return array != NULL;
}

/* One file by itself. (transfer full) */
static RwKnowledge *
read_file (const char *path,
           GError    **error)
{
  g_autoptr (GError) problem = NULL;
  g_autoptr (JsonNode) root = rw_json_parse_file (path, &problem);
  g_autoptr (RwKnowledge) self = rw_knowledge_new_empty ();
  RwKeys keys;

  if (root == NULL)
    {
      const gboolean format = problem->domain == JSON_PARSER_ERROR;

      g_set_error (error, RW_KNOWLEDGE_ERROR,
                   format ? RW_KNOWLEDGE_ERROR_FORMAT : RW_KNOWLEDGE_ERROR_READ,
                   _ ("Cannot read this knowledge file: %s"), problem->message);
      return NULL;
    }
  if (!rw_keys_init (&keys, root, path, RW_KNOWLEDGE_ERROR, RW_KNOWLEDGE_ERROR_FORMAT, error)
      || !read_list (self->symptoms, &keys, "symptoms", read_symptom, error)
      || !read_list (self->causes, &keys, "causes", read_cause, error)
      || !read_list (self->checks, &keys, "checks", read_check, error)
      || !read_list (self->computed, &keys, "computed", read_computed, error))
    return NULL;
  return g_steal_pointer (&self);
}

/* --- merging ------------------------------------------------------------------------------------ */

static void
merge_list (GPtrArray *into,
            GPtrArray *from)
{
  for (guint i = 0; i < from->len; i++)
    {
      gpointer entry = g_atomic_rc_box_acquire (from->pdata[i]);
      const int index = rw_knowledge_find (into, rw_knowledge_id_of (entry));

      if (index < 0)
        {
          g_ptr_array_add (into, entry);
          continue;
        }

      g_ptr_array_remove_index (into, (guint) index);
      g_ptr_array_insert (into, index, entry);
    }
}

static void
merge (RwKnowledge *into,
       RwKnowledge *from)
{
  merge_list (into->symptoms, from->symptoms);
  merge_list (into->causes, from->causes);
  merge_list (into->checks, from->checks);
  merge_list (into->computed, from->computed);
}

static gboolean
shares_an_id (const GPtrArray *a,
              const GPtrArray *b,
              const char      *key,
              const char      *path,
              GError         **error)
{
  for (guint i = 0; i < b->len; i++)
    if (rw_knowledge_find (a, rw_knowledge_id_of (b->pdata[i])) >= 0)
      {
        g_set_error (error, RW_KNOWLEDGE_ERROR, RW_KNOWLEDGE_ERROR_FORMAT,
                     _ ("%s: key “%s”: another file has the id “%s” already"), path, key,
                     rw_knowledge_id_of (b->pdata[i]));
        return TRUE;
      }
  return FALSE;
}

/* --- references --------------------------------------------------------------------------------- */

/* FALSE when a table names a cause that nobody knows. */
static gboolean
check_table (const RwKnowledge   *self,
             const RwChanceTable *table,
             const char          *where,
             GError             **error)
{
  GHashTableIter iter;
  gpointer cause = NULL;

  g_hash_table_iter_init (&iter, table->rows);
  while (g_hash_table_iter_next (&iter, &cause, NULL))
    if (rw_knowledge_find (self->causes, cause) < 0)
      {
        g_set_error (error, RW_KNOWLEDGE_ERROR, RW_KNOWLEDGE_ERROR_FORMAT,
                     _ ("%s: key “chance” names a cause that is not there: “%s”"), where,
                     (const char *) cause);
        return FALSE;
      }
  return TRUE;
}

static gboolean
check_company (const RwKnowledge *self,
               const RwCause     *cause,
               GError           **error)
{
  GHashTableIter iter;
  gpointer other = NULL;

  g_hash_table_iter_init (&iter, cause->often_with);
  while (g_hash_table_iter_next (&iter, &other, NULL))
    if (rw_knowledge_find (self->causes, other) < 0)
      {
        g_set_error (error, RW_KNOWLEDGE_ERROR, RW_KNOWLEDGE_ERROR_FORMAT,
                     _ ("%s: key “often_with” names a cause that is not there: “%s”"),
                     cause->where, (const char *) other);
        return FALSE;
      }
  return TRUE;
}

static gboolean
check_recheck (const RwKnowledge *self,
               const RwCause     *cause,
               GError           **error)
{
  for (const char **id = cause->repair.recheck; *id != NULL; id++)
    if (rw_knowledge_find (self->checks, *id) < 0)
      {
        g_set_error (error, RW_KNOWLEDGE_ERROR, RW_KNOWLEDGE_ERROR_FORMAT,
                     _ ("%s: key “recheck” names a check that is not there: “%s”"),
                     cause->where, *id);
        return FALSE;
      }
  return TRUE;
}

/* The place of the first entry that names what is not there; NULL when there is none. Borrowed. */
static const char *
find_dangling (const RwKnowledge *self,
               GError           **error)
{
  for (guint i = 0; i < self->symptoms->len; i++)
    {
      const RwSymptom *symptom = self->symptoms->pdata[i];

      if (!check_table (self, &symptom->chance, symptom->where, error))
        return symptom->where;
    }
  for (guint i = 0; i < self->causes->len; i++)
    {
      const RwCause *cause = self->causes->pdata[i];

      if (!check_recheck (self, cause, error) || !check_company (self, cause, error))
        return cause->where;
    }
  for (guint i = 0; i < self->checks->len; i++)
    {
      const RwCheck *check = self->checks->pdata[i];

      if (!check_table (self, &check->chance, check->where, error))
        return check->where;
    }
  for (guint i = 0; i < self->computed->len; i++)
    {
      const RwComputed *computed = self->computed->pdata[i];

      if (!check_table (self, &computed->chance, computed->where, error))
        return computed->where;
    }
  return NULL;
}

/* --- loading ------------------------------------------------------------------------------------ */

RwKnowledge *
rw_knowledge_load_files (GPtrArray *paths,
                         GError   **error)
{
  g_autoptr (RwKnowledge) self = rw_knowledge_new_empty ();

  for (guint i = 0; i < paths->len; i++)
    {
      g_autoptr (RwKnowledge) file = read_file (paths->pdata[i], error);

      if (file == NULL)
        return NULL;
      merge (self, file);
    }
  return find_dangling (self, error) == NULL ? g_steal_pointer (&self) : NULL;
}

static RwKnowledge *
load_shipped (GError **error)
{
  g_autofree char *folder = rw_paths_dup_shipped ("knowledge");
  g_autoptr (GPtrArray) paths = rw_paths_list (folder, ".json");
  g_autoptr (RwKnowledge) self = rw_knowledge_new_empty ();

  if (paths->len == 0)
    {
      g_set_error (error, RW_KNOWLEDGE_ERROR, RW_KNOWLEDGE_ERROR_READ,
                   _ ("No knowledge files in %s. Is the program installed whole?"), folder);
      return NULL;
    }
  for (guint i = 0; i < paths->len; i++)
    {
      const char *path = paths->pdata[i];
      g_autoptr (RwKnowledge) file = read_file (path, error);

      if (file == NULL || shares_an_id (self->symptoms, file->symptoms, "symptoms", path, error)
          || shares_an_id (self->causes, file->causes, "causes", path, error)
          || shares_an_id (self->checks, file->checks, "checks", path, error)
          || shares_an_id (self->computed, file->computed, "computed", path, error))
        return NULL;
      merge (self, file);
    }
  return find_dangling (self, error) == NULL ? g_steal_pointer (&self) : NULL;
}

static void
tell (GPtrArray    *problems,
      const GError *error)
{
  if (problems != NULL)
    g_ptr_array_add (problems, g_strdup (error->message));
}

/* The user's files that can be read by themselves. *paths keeps only theirs. (element-type
 * RwKnowledge) */
static GPtrArray *
read_user_files (GPtrArray *paths,
                 GPtrArray *problems)
{
  GPtrArray *files = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_knowledge_unref);

  while (files->len < paths->len)
    {
      g_autoptr (GError) error = NULL;
      RwKnowledge *file = read_file (paths->pdata[files->len], &error);

      if (file != NULL)
        {
          g_ptr_array_add (files, file);
          continue;
        }
      tell (problems, error);
      g_ptr_array_remove_index (paths, files->len);
    }
  return files;
}

/* Drops the file that the entry at @where came from. FALSE when none of them did. */
static gboolean
drop_file (GPtrArray  *paths,
           GPtrArray  *files,
           const char *where)
{
  for (guint i = 0; i < paths->len; i++)
    {
      const char *path = paths->pdata[i];

      if (g_str_has_prefix (where, path) && where[strlen (path)] == ':')
        {
          g_ptr_array_remove_index (paths, i);
          g_ptr_array_remove_index (files, i);
          return TRUE;
        }
    }
  return FALSE;
}

/* @base with the user's files on top, less those that name what is not there. (transfer full) */
static RwKnowledge *
with_user_files (RwKnowledge *base,
                 GPtrArray   *paths,
                 GPtrArray   *problems)
{
  g_autoptr (GPtrArray) files = read_user_files (paths, problems);

  for (;;)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (RwKnowledge) all = rw_knowledge_new_empty ();

      merge (all, base);
      for (guint i = 0; i < files->len; i++)
        merge (all, files->pdata[i]);

      const char *where = find_dangling (all, &error);

      if (where == NULL)
        return g_steal_pointer (&all);
      tell (problems, error);
      if (!drop_file (paths, files, where))
        return rw_knowledge_ref (base);
    }
}

RwKnowledge *
rw_knowledge_load (GPtrArray *problems,
                   GError   **error)
{
  g_autoptr (RwKnowledge) shipped = load_shipped (error);
  g_autofree char *folder = rw_paths_dup_user ("knowledge");
  g_autoptr (GPtrArray) paths = rw_paths_list (folder, ".json");

  return shipped != NULL ? with_user_files (shipped, paths, problems) : NULL;
}
