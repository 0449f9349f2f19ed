/* rw-record.c: which causes one restorer's closed jobs had, and what that makes of the chances.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The file, UTF-8, written whole each time:
 *   {"record":1,"jobs":{"JOB":"CAUSE",…}}
 * JOB is the id in the header of the session's file, CAUSE that of the knowledge. Jobs are kept by name, and not only
 * counted, so that a job that is opened again counts once, with its last end. A file that breaks the form anywhere is
 * renamed (".damaged", ".damaged.2", …) and not written over.
 *
 * Chances. With the shipped chances p_i of the listed causes (sum 1) worth a jobs, and n_i of N jobs with cause i:
 *   p'_i = (a p_i + n_i) / (a + N),
 * the mean of the Dirichlet distribution with the parameters a p_i after the counts n_i. "Other" is no cause that
 * can be confirmed by name as listed ones are, so its share of the whole stays.
 */
#include "config.h"

#include "rw-record.h"

#include <errno.h>
#include <gio/gio.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "rw-evidence.h"
#include "rw-json.h"
#include "rw-knowledge-private.h"
#include "rw-knowledge-read.h"
#include "rw-paths.h"

#define VERSION 1
#define MOST_ASIDE 100

G_DEFINE_QUARK (rw_record_error, rw_record_error)

struct _RwRecord
{
  GHashTable *jobs;      /* id, owned → interned cause */
  gboolean    protected; /* a file that could not be read or set aside lies where it would be written */
};

RwRecord *
rw_record_new (void)
{
  RwRecord *self = g_new0 (RwRecord, 1);

  self->jobs = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  return self;
}

void
rw_record_free (RwRecord *self)
{
  if (self == NULL)
    return;
  g_hash_table_unref (self->jobs);
  g_free (self);
}

gboolean
rw_record_set (RwRecord   *self,
               const char *job,
               const char *cause)
{
  const char *interned = g_intern_string (cause);

  g_return_val_if_fail (job != NULL, FALSE);
  if (g_hash_table_lookup (self->jobs, job) == interned)
    return FALSE;
  if (cause == NULL)
    return g_hash_table_remove (self->jobs, job);
  g_hash_table_insert (self->jobs, g_strdup (job), (gpointer) interned);
  return TRUE;
}

gboolean
rw_record_take (RwRecord           *self,
                const char         *job,
                const RwBenchState *state)
{
  const RwRepairSeen *fix = rw_evidence_find_fix (state);

  return rw_record_set (self, job, fix != NULL ? fix->cause : NULL);
}

guint
rw_record_get_count (const RwRecord *self,
                     const char     *cause)
{
  GHashTableIter iter;
  gpointer had = NULL;
  guint n = 0;

  g_hash_table_iter_init (&iter, self->jobs);
  while (g_hash_table_iter_next (&iter, NULL, &had))
    if (g_strcmp0 (had, cause) == 0)
      n++;
  return n;
}

guint
rw_record_get_n_jobs (const RwRecord *self)
{
  return g_hash_table_size (self->jobs);
}

/* --- file --------------------------------------------------------------------------------------- */

char *
rw_record_dup_path (void)
{
  return rw_paths_dup_user ("record.json");
}

static gboolean
read_jobs (RwRecord   *self,
           JsonObject *jobs)
{
  g_autoptr (GList) names = json_object_get_members (jobs);

  for (const GList *it = names; it != NULL; it = it->next)
    {
      const char *cause = rw_json_get_string (jobs, it->data, NULL);

      if (cause == NULL || *cause == '\0')
        return FALSE;
      rw_record_set (self, it->data, cause);
    }
  return TRUE;
}

/* NULL when it is not in the form of the head comment. (transfer full) */
static RwRecord *
read_node (JsonNode *root)
{
  g_autoptr (RwRecord) self = rw_record_new ();
  JsonObject *object = JSON_NODE_HOLDS_OBJECT (root) ? json_node_get_object (root) : NULL;
  JsonObject *jobs = object != NULL ? rw_json_get_object (object, "jobs") : NULL;
  double version = 0;

  if (jobs == NULL || !rw_json_get_number (object, "record", &version) || version != VERSION
      || !read_jobs (self, jobs))
    return NULL;
  return g_steal_pointer (&self);
}

/* Out of the way, under a name that is free; what it is called now, or NULL. (transfer full) */
static char *
set_aside (const char *path)
{
  for (guint i = 1; i <= MOST_ASIDE; i++)
    {
      g_autofree char *aside = i == 1 ? g_strdup_printf ("%s.damaged", path)
                                      : g_strdup_printf ("%s.damaged.%u", path, i);

      if (!g_file_test (aside, G_FILE_TEST_EXISTS))
        return g_rename (path, aside) == 0 ? g_steal_pointer (&aside) : NULL;
    }
  return NULL;
}

/* FALSE: it lies where it was. */
static gboolean
tell_damage (const char *path,
             GError    **error)
{
  g_autofree char *aside = set_aside (path);

  if (aside != NULL)
    g_set_error (error, RW_RECORD_ERROR, RW_RECORD_ERROR_FORMAT,
                 _ ("The record of your jobs, %s, is damaged. It was renamed to %s, and a new one is begun."), path,
                 aside);
  else
    g_set_error (error, RW_RECORD_ERROR, RW_RECORD_ERROR_FORMAT,
                 _ ("The record of your jobs, %s, is damaged and could not be renamed. Move it away: until then no "
                    "job is remembered."),
                 path);
  return aside != NULL;
}

RwRecord *
rw_record_load (const char *path,
                GError    **error)
{
  g_autoptr (GError) problem = NULL;

  if (!g_file_test (path, G_FILE_TEST_EXISTS))
    return rw_record_new ();

  g_autoptr (JsonNode) root = rw_json_parse_file (path, &problem);
  g_autoptr (RwRecord) read = root != NULL ? read_node (root) : NULL;

  if (read != NULL)
    return g_steal_pointer (&read);

  RwRecord *self = rw_record_new ();

  self->protected = TRUE;
  if (problem != NULL && problem->domain == G_FILE_ERROR)
    g_set_error (error, RW_RECORD_ERROR, RW_RECORD_ERROR_READ,
                 _ ("Cannot read the record of your jobs: %s"), problem->message);
  else
    self->protected = !tell_damage (path, error);
  return self;
}

static int
compare_names (gconstpointer a,
               gconstpointer b)
{
  return g_strcmp0 (a, b);
}

/* In the order of the names, so that the same record is the same file. (transfer full) */
static GString *
to_text (const RwRecord *self)
{
  GString *out = g_string_new (NULL);
  g_autoptr (GList) names = g_list_sort (g_hash_table_get_keys (self->jobs), compare_names);

  g_string_append_printf (out, "{\"record\":%d,\"jobs\":{", VERSION);
  for (const GList *it = names; it != NULL; it = it->next)
    {
      g_string_append (out, it == names ? "\n" : ",\n");
      rw_json_append_string (out, it->data);
      g_string_append_c (out, ':');
      rw_json_append_string (out, g_hash_table_lookup (self->jobs, it->data));
    }
  g_string_append (out, "}}\n");
  return out;
}

gboolean
rw_record_save (const RwRecord *self,
                const char     *path,
                GError        **error)
{
  g_autoptr (GError) problem = NULL;
  g_autofree char *folder = g_path_get_dirname (path);
  g_autoptr (GString) text = to_text (self);

  if (self->protected)
    {
      g_set_error (error, RW_RECORD_ERROR, RW_RECORD_ERROR_WRITE,
                   _ ("The record of your jobs is not written, so as not to lose what lies in %s."), path);
      return FALSE;
    }
  if (g_mkdir_with_parents (folder, 0700) != 0)
    {
      g_set_error (error, RW_RECORD_ERROR, RW_RECORD_ERROR_WRITE,
                   _ ("Cannot make the folder %s for the record of your jobs: %s"), folder, g_strerror (errno));
      return FALSE;
    }
  if (g_file_set_contents_full (path, text->str, (gssize) text->len,
                                G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE, 0600, &problem))
    return TRUE;
  g_set_error (error, RW_RECORD_ERROR, RW_RECORD_ERROR_WRITE,
               _ ("Cannot write the record of your jobs: %s"), problem->message);
  return FALSE;
}

/* --- chances ------------------------------------------------------------------------------------ */

/* Sum of the weights of listed causes, and how many jobs the record has of them. */
static double
sum_listed (const RwKnowledge *knowledge,
            const RwRecord    *record,
            guint             *jobs)
{
  double sum = 0;

  *jobs = 0;
  for (guint i = 0; i < rw_knowledge_get_n_causes (knowledge); i++)
    {
      const RwCause *cause = rw_knowledge_get_cause (knowledge, i);

      if (cause->broad)
        continue;
      sum += cause->prior;
      *jobs += rw_record_get_count (record, cause->id);
    }
  return sum;
}

static double
prior_with (const RwCause  *cause,
            const RwRecord *record,
            double          sum,
            guint           jobs)
{
  const double shipped = cause->prior / sum;

  if (cause->broad)
    return cause->prior;
  return sum * (RW_RECORD_SHIPPED_JOBS * shipped + rw_record_get_count (record, cause->id))
         / (RW_RECORD_SHIPPED_JOBS + jobs);
}

RwKnowledge *
rw_knowledge_with_record (RwKnowledge    *knowledge,
                          const RwRecord *record)
{
  guint jobs = 0;
  const double sum = record != NULL ? sum_listed (knowledge, record, &jobs) : 0;

  if (jobs == 0)
    return rw_knowledge_ref (knowledge);

  RwKnowledge *with = rw_knowledge_copy (knowledge);

  for (guint i = 0; i < with->causes->len; i++)
    {
      RwCause *shipped = with->causes->pdata[i];

      with->causes->pdata[i] = rw_cause_copy (shipped, prior_with (shipped, record, sum, jobs));
      rw_cause_unref (shipped);
    }
  return with;
}
