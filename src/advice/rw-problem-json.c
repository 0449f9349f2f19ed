/* rw-problem-json.c: a bare problem read from JSON.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * {"causes": [{"id": "c1", "prior": 0.21, "repair_minutes": 10}, …],
 *  "checks": [{"id": "t1", "minutes": 9,
 *              "chance": [[P(outcome 1 | c1), P(outcome 1 | c2), …], …]}, …]}
 * or a collection {"problems": [that, …]}.
 */
#include "config.h"

#include "rw-problem.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-json.h"
#include "rw-keys.h"

/* Far more than anybody's patience, and small enough that sums stay exact to 1e-9. */
static const double most_minutes = 1e6;
static const double sum_tolerance = 1e-3;

G_DEFINE_QUARK (rw_problem_error, rw_problem_error)

static gboolean
read_cause (RwProblem    *self,
            guint         index,
            const RwKeys *keys,
            GError      **error)
{
  RwProblemCause *cause = &self->causes[index];
  const char *id = rw_keys_string (keys, "id", error);

  if (id == NULL || !rw_keys_number (keys, "prior", 0, most_minutes, &cause->weight, error)
      || !rw_keys_number (keys, "repair_minutes", 0, most_minutes, &cause->repair_minutes, error))
    return FALSE;
  for (guint i = 0; i < index; i++)
    if (g_str_equal (self->causes[i].id, id))
      return rw_keys_fail (keys, "id", error, _ ("is used twice: “%s”"), id);
  cause->id = g_strdup (id);
  return TRUE;
}

/* Scales the chances of each cause to sum to exactly 1. */
static gboolean
scale_columns (RwProblem    *self,
               guint         index,
               const RwKeys *keys,
               GError      **error)
{
  RwProblemCheck *check = &self->checks[index];

  for (guint i = 0; i < self->n_causes; i++)
    {
      double sum = 0;

      for (guint o = 0; o < check->n_outcomes; o++)
        sum += check->chance[o * self->n_causes + i];
      if (fabs (sum - 1) > sum_tolerance)
        return rw_keys_fail (keys, "chance", error, _ ("must sum to 1 for cause “%s”, not to %g"),
                             self->causes[i].id, sum);
      for (guint o = 0; o < check->n_outcomes; o++)
        check->chance[o * self->n_causes + i] /= sum;
    }
  return TRUE;
}

static gboolean
read_check (RwProblem    *self,
            guint         index,
            const RwKeys *keys,
            GError      **error)
{
  RwProblemCheck *check = &self->checks[index];
  const char *id = rw_keys_string (keys, "id", error);

  if (id == NULL || !rw_keys_number (keys, "minutes", 0, most_minutes, &check->minutes, error))
    return FALSE;
  for (guint j = 0; j < index; j++)
    if (g_str_equal (self->checks[j].id, id))
      return rw_keys_fail (keys, "id", error, _ ("is used twice: “%s”"), id);
  check->id = g_strdup (id);

  JsonArray *rows = rw_keys_array (keys, "chance", error);

  if (rows == NULL)
    return FALSE;

  const guint n_outcomes = json_array_get_length (rows);

  if (n_outcomes < 1 || n_outcomes > RW_PROBLEM_MAX_OUTCOMES)
    return rw_keys_fail (keys, "chance", error, _ ("must have 1 to %d outcomes"),
                         RW_PROBLEM_MAX_OUTCOMES);
  rw_problem_set_outcomes (self, index, n_outcomes);
  for (guint o = 0; o < n_outcomes; o++)
    if (!rw_keys_row (keys, "chance", json_array_get_element (rows, o), self->n_causes, 0, 1,
                      check->chance + o * self->n_causes, error))
      return FALSE;
  return scale_columns (self, index, keys, error);
}

typedef gboolean (*ReadItem) (RwProblem    *self,
                              guint         index,
                              const RwKeys *keys,
                              GError      **error);

static gboolean
read_list (RwProblem    *self,
           const RwKeys *outer,
           const char   *key,
           JsonArray    *list,
           ReadItem      read,
           GError      **error)
{
  for (guint i = 0; i < json_array_get_length (list); i++)
    {
      g_autofree char *where = g_strdup_printf ("%s: %s[%u]", outer->where, key, i);
      RwKeys keys;

      if (!rw_keys_init (&keys, json_array_get_element (list, i), where, outer->domain, outer->code,
                         error)
          || !read (self, i, &keys, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
some_weight (const RwProblem *self)
{
  double sum = 0;

  for (guint i = 0; i < self->n_causes; i++)
    sum += self->causes[i].weight;
  return sum > 0;
}

RwProblem *
rw_problem_new_from_node (JsonNode   *node,
                          const char *where,
                          GError    **error)
{
  RwKeys keys;
  JsonArray *causes;
  JsonArray *checks;

  if (!rw_keys_init (&keys, node, where, RW_PROBLEM_ERROR, RW_PROBLEM_ERROR_FORMAT, error)
      || (causes = rw_keys_array (&keys, "causes", error)) == NULL
      || (checks = rw_keys_array (&keys, "checks", error)) == NULL)
    return NULL;

  const guint n_causes = json_array_get_length (causes);
  const guint n_checks = json_array_get_length (checks);

  if (n_causes < 1 || n_causes > RW_PROBLEM_MAX_CAUSES)
    {
      rw_keys_fail (&keys, "causes", error, _ ("must list 1 to %d"), RW_PROBLEM_MAX_CAUSES);
      return NULL;
    }
  if (n_checks > RW_PROBLEM_MAX_CHECKS)
    {
      rw_keys_fail (&keys, "checks", error, _ ("must list %d at most"), RW_PROBLEM_MAX_CHECKS);
      return NULL;
    }

  g_autoptr (RwProblem) self = rw_problem_new (n_causes, n_checks);

  if (!read_list (self, &keys, "causes", causes, read_cause, error)
      || !read_list (self, &keys, "checks", checks, read_check, error))
    return NULL;
  if (!some_weight (self))
    {
      rw_keys_fail (&keys, "prior", error, _ ("is 0 for every cause"));
      return NULL;
    }
  return g_steal_pointer (&self);
}

/* One problem out of a collection. */
static RwProblem *
problem_at (JsonArray  *problems,
            guint       index,
            const char *path,
            GError    **error)
{
  const guint n = json_array_get_length (problems);
  g_autofree char *where = g_strdup_printf ("%s: problems[%u]", path, index);

  if (index < n)
    return rw_problem_new_from_node (json_array_get_element (problems, index), where, error);
  g_set_error (error, RW_PROBLEM_ERROR, RW_PROBLEM_ERROR_FORMAT,
               _ ("%s: key “problems” has %u entries, there is no number %u"), path, n, index);
  return NULL;
}

RwProblem *
rw_problem_load (const char *path,
                 guint       index,
                 GError    **error)
{
  g_autoptr (GError) problem = NULL;
  g_autoptr (JsonNode) root = rw_json_parse_file (path, &problem);

  if (root == NULL)
    {
      const gboolean format = problem->domain == JSON_PARSER_ERROR;

      g_set_error (error, RW_PROBLEM_ERROR,
                   format ? RW_PROBLEM_ERROR_FORMAT : RW_PROBLEM_ERROR_READ,
                   _ ("Cannot read this problem: %s"), problem->message);
      return NULL;
    }

  JsonArray *problems = JSON_NODE_HOLDS_OBJECT (root)
                            ? rw_json_get_array (json_node_get_object (root), "problems")
                            : NULL;

  if (problems != NULL)
    return problem_at (problems, index, path, error);
  if (index > 0)
    {
      g_set_error (error, RW_PROBLEM_ERROR, RW_PROBLEM_ERROR_FORMAT,
                   _ ("%s: holds one problem, there is no number %u"), path, index);
      return NULL;
    }
  return rw_problem_new_from_node (root, path, error);
}
