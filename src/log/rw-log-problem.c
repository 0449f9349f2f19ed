/* rw-log-problem.c: railwright-log plan --problem FILE --json.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "rw-json.h"
#include "rw-log-io.h"
#include "rw-log-plan.h"
#include "rw-plan-tree.h"

static int
print_problem (JsonNode   *node,
               const char *where)
{
  static const RwPlanLimits whole = { 0 };
  g_autoptr (GError) error = NULL;
  g_autoptr (RwProblem) problem = rw_problem_new_from_node (node, where, &error);

  if (problem == NULL)
    {
      rw_log_complain ("%s", error->message);
      rw_log_print ("null\n", -1);
      return RW_LOG_DAMAGED;
    }

  g_autoptr (RwPlanState) start = rw_plan_state_new (problem);
  g_autoptr (RwPlanTree) tree = rw_plan_tree_solve (problem, start, &rw_plan_budget_file, &whole);
  g_autofree char *json = rw_plan_tree_to_json (tree, problem);
  g_autofree char *line = g_strconcat (json, "\n", NULL);

  return rw_log_print (line, -1);
}

static int
print_collection (JsonArray  *problems,
                  const char *name)
{
  int status = RW_LOG_DONE;

  for (guint i = 0; i < json_array_get_length (problems); i++)
    {
      /* Translators: file, number of a problem in it. */
      g_autofree char *where = g_strdup_printf (_ ("%s, problem %u"), name, i + 1);
      const int one = print_problem (json_array_get_element (problems, i), where);

      status = one != RW_LOG_DONE ? one : status;
    }
  return status;
}

int
rw_log_plan_problems (const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) root = rw_json_parse_file (path, &error);
  g_autofree char *name = g_filename_display_name (path);

  if (root == NULL)
    {
      rw_log_complain ("%s", error->message);
      return RW_LOG_DAMAGED;
    }

  JsonArray *problems = JSON_NODE_HOLDS_OBJECT (root)
                            ? rw_json_get_array (json_node_get_object (root), "problems")
                            : NULL;

  return problems != NULL ? print_collection (problems, name) : print_problem (root, name);
}
