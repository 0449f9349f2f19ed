/* rw-report-plan-text.c: a plan as indented text.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The lines of rw-report-plan-lines.h, two spaces a level, a "!" before what can hurt, an empty line before the tree
 * and after it.
 */
#include "config.h"

#include "rw-report-plan-lines.h"

static const guint step_indent = 2; /* spaces a level */

static gboolean
is_tree (RwPlanLineKind kind)
{
  return kind != RW_PLAN_LINE_KNOWN && kind != RW_PLAN_LINE_CUT;
}

GString *
rw_report_plan_to_text (const RwReportPlan *self)
{
  g_return_val_if_fail (self != NULL, NULL);

  g_autoptr (GPtrArray) lines = rw_report_plan_lines (self);
  GString *out = g_string_new (NULL);
  gboolean in_tree = FALSE;

  for (guint i = 0; i < lines->len; i++)
    {
      const RwPlanLine *line = lines->pdata[i];
      g_autofree char *words = rw_plan_line_dup_text (line, 0);

      if (is_tree (line->kind) != in_tree)
        g_string_append_c (out, '\n');
      in_tree = is_tree (line->kind);
      g_string_append_printf (out, "%*s%s%s\n", (int) (line->level * step_indent), "",
                              line->kind == RW_PLAN_LINE_DANGER ? "! " : "", words);
    }
  return out;
}
