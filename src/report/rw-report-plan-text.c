/* rw-report-plan-text.c: a plan as indented text.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   Check: +5 V at the board, running (3 min; expected 90 min), power on · board fitted
 *     31 %  Below 4.80 V
 *       ! beside bare mains parts
 *       Check: …
 *     12 %  4.80 to 4.95 V
 *       Repair: set the trim (5 min, 78 %), then clean the edge (8 min, 20 %); expected 7 min
 *     too rare to plan for: 5.20 V or more (< 1 %)
 *
 * Repairs that follow one another without a check between stand on one line, likeliest per minute
 * first; each with the chance that it fixes, given that one comes to it. After the first few the
 * rest is only counted. What a step can do to people stands on a line of its own before it.
 */
#include "config.h"

#include "rw-report-plan.h"

#include <glib/gi18n-lib.h>

#include "rw-quantity.h"
#include "rw-report-words.h"

static const guint step_indent = 2;    /* spaces a level */
static const guint repairs_spelled = 3; /* of a run of repairs */

/* What is carried down the tree while it is printed. */
typedef struct
{
  const RwReportPlan *plan;
  RwKnowledge        *knowledge;
  GString            *out;
  double              rare; /* chance of coming to a branch that is too rare to plan for */
  double              deep; /* … to a check that is too deep to show */
} Print;

static void
begin_line (Print *print,
            guint  level)
{
  for (guint i = 0; i < level * step_indent; i++)
    g_string_append_c (print->out, ' ');
}

static void
append_danger (Print      *print,
               guint       level,
               const char *danger)
{
  if (danger == NULL || *danger == '\0')
    return;
  begin_line (print, level);
  g_string_append_printf (print->out, "! %s\n", danger);
}

/* --- repairs -------------------------------------------------------------------------------- */

static const RwPlanTree *
after_repair (const RwPlanTree *node)
{
  return node->n_children > 0 ? node->children[0] : NULL;
}

/* TRUE when only repairs follow. */
static gboolean
is_run (const RwPlanTree *node)
{
  while (node != NULL && node->kind == RW_ACTION_REPAIR)
    node = after_repair (node);
  return node == NULL;
}

static guint
run_length (const RwPlanTree *node)
{
  guint n = 0;

  for (; node != NULL; node = after_repair (node))
    n++;
  return n;
}

/* Dangers of the repairs from @first up to @end (not with it). */
static void
append_repair_dangers (Print            *print,
                       guint             level,
                       const RwPlanTree *first,
                       const RwPlanTree *end)
{
  for (const RwPlanTree *node = first; node != end; node = after_repair (node))
    {
      const RwCause *cause = rw_knowledge_get_cause (print->knowledge, node->index);
      g_autofree char *danger = rw_report_words_danger (cause->repair.hazard, cause->repair.who);
      g_autofree char *line = g_strdup_printf ("%s: %s", cause->repair.title, danger);

      append_danger (print, level, danger != NULL ? line : NULL);
    }
}

/* "set the trim (5 min, 78 %)"; the chance is that it fixes, given that one comes to it. */
static char *
dup_repair (Print            *print,
            const RwPlanTree *node)
{
  const RwCause *cause = rw_knowledge_get_cause (print->knowledge, node->index);
  const RwPlanTree *next = after_repair (node);
  const double left = next != NULL && node->reach > 0 ? next->reach / node->reach : 0;
  g_autofree char *minutes = rw_report_words_minutes (node->minutes);
  g_autofree char *chance = rw_quantity_format_chance (1 - left);

  /* Translators: what is repaired, minutes with their unit, chance that it fixes. */
  return g_strdup_printf (_ ("%s (%s, %s)"), cause->repair.title, minutes, chance);
}

/* The first of the run that is not spelled out; NULL: all are. */
static const RwPlanTree *
end_of_words (const RwPlanTree *first)
{
  const RwPlanTree *node = first;

  for (guint i = 0; node != NULL && i < repairs_spelled; i++)
    node = after_repair (node);
  return node;
}

static char *
dup_rest (const RwPlanTree *first,
          const RwPlanTree *rest)
{
  const guint n = run_length (rest);
  g_autofree char *chance = rw_quantity_format_chance (rest->reach / first->reach);

  /* Translators: number of repairs, chance that they are needed. */
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u more (%s)", "%u more (%s)", n), n,
                          chance);
}

static void
append_run (Print            *print,
            const RwPlanTree *first,
            guint             level)
{
  const RwPlanTree *rest = end_of_words (first);
  g_autoptr (GPtrArray) words = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *expected = rw_report_words_minutes (first->expected);

  append_repair_dangers (print, level, first, rest);
  for (const RwPlanTree *node = first; node != rest; node = after_repair (node))
    g_ptr_array_add (words, dup_repair (print, node));
  if (rest != NULL)
    g_ptr_array_add (words, dup_rest (first, rest));
  g_ptr_array_add (words, NULL);

  /* Translators: stands between repairs; each is done if the one before changed nothing. */
  g_autofree char *run = g_strjoinv (_ (", then "), (char **) words->pdata);

  begin_line (print, level);
  /* Translators: one or more repairs in order, minutes with their unit. */
  g_string_append_printf (print->out, _ ("Repair: %s; expected %s"), run, expected);
  g_string_append_c (print->out, '\n');
}

/* --- the tree ------------------------------------------------------------------------------- */

/* @above: checks above the node. */
static void append_step (Print            *print,
                         const RwPlanTree *node,
                         guint             level,
                         guint             above);

static void
append_outcome (Print            *print,
                const RwPlanTree *node,
                const RwOutcome  *outcome,
                const RwPlanTree *child,
                guint             level,
                guint             above)
{
  const RwCheck *check = rw_knowledge_get_check (print->knowledge, node->index);
  g_autofree char *chance = rw_quantity_format_chance (child->reach / node->reach);
  g_autofree char *words = rw_report_words_outcome (check, outcome);

  begin_line (print, level);
  g_string_append_printf (print->out, "%s  %s\n", chance, words);
  append_step (print, child, level + 1, above);
}

/* Those that can happen but are come to too rarely, on one line. */
static void
append_rare_outcomes (Print            *print,
                      const RwPlanTree *node,
                      const RwCheck    *check,
                      guint             level)
{
  g_autoptr (GString) list = g_string_new (NULL);

  for (guint i = 0; i < node->n_children; i++)
    if (node->children[i] != NULL && node->children[i]->reach < RW_REPORT_PLAN_MIN_SHARE)
      {
        const double share = node->children[i]->reach / node->reach;
        g_autofree char *chance = rw_quantity_format_chance (share);
        g_autofree char *words = rw_report_words_outcome (check, &check->outcomes[i]);

        g_string_append_printf (list, "%s%s (%s)", list->len > 0 ? ", " : "", words, chance);
        print->rare += node->children[i]->reach;
      }
  if (list->len == 0)
    return;
  begin_line (print, level);
  /* Translators: a list of what a check may show. */
  g_string_append_printf (print->out, _ ("too rare to plan for: %s"), list->str);
  g_string_append_c (print->out, '\n');
}

/* The check's own line, what can hurt before it; how to keep safe where the check is unfolded. */
static void
append_title (Print            *print,
              const RwPlanTree *node,
              const RwCheck    *check,
              guint             level,
              guint             above)
{
  g_autofree char *danger = rw_report_words_danger (check->hazard, check->who);
  g_autofree char *minutes = rw_report_words_minutes (node->minutes);
  g_autofree char *expected = rw_report_words_minutes (node->expected);
  g_autofree char *wanted = rw_report_words_wanted (check);

  append_danger (print, level, danger);
  if (above < print->plan->depth)
    append_danger (print, level, check->safety);
  begin_line (print, level);
  /* Translators: title of a check, minutes it takes, minutes to go from here. */
  g_string_append_printf (print->out, _ ("Check: %s (%s; expected %s)"), check->title, minutes,
                          expected);
  if (wanted != NULL)
    g_string_append_printf (print->out, ", %s", wanted);
}

static void
append_check (Print            *print,
              const RwPlanTree *node,
              guint             level,
              guint             above)
{
  const RwCheck *check = rw_knowledge_get_check (print->knowledge, node->index);

  append_title (print, node, check, level, above);
  if (above >= print->plan->depth)
    {
      g_string_append (print->out, " …\n");
      print->deep += node->reach;
      return;
    }
  g_string_append_c (print->out, '\n');
  for (guint i = 0; i < node->n_children; i++)
    if (node->children[i] != NULL && node->children[i]->reach >= RW_REPORT_PLAN_MIN_SHARE)
      append_outcome (print, node, &check->outcomes[i], node->children[i], level + 1, above + 1);
  append_rare_outcomes (print, node, check, level + 1);
}

/* A repair with a check somewhere after it. */
static void
append_repair_and_on (Print            *print,
                      const RwPlanTree *node,
                      guint             level,
                      guint             above)
{
  g_autofree char *repair = dup_repair (print, node);

  append_repair_dangers (print, level, node, after_repair (node));
  begin_line (print, level);
  /* Translators: a repair. */
  g_string_append_printf (print->out, _ ("Repair: %s; if that changes nothing:"), repair);
  g_string_append_c (print->out, '\n');
  append_step (print, after_repair (node), level, above);
}

static void
append_step (Print            *print,
             const RwPlanTree *node,
             guint             level,
             guint             above)
{
  if (node->kind == RW_ACTION_CHECK)
    append_check (print, node, level, above);
  else if (is_run (node))
    append_run (print, node, level);
  else
    append_repair_and_on (print, node, level, above);
}

/* --- around it ------------------------------------------------------------------------------ */

static void
append_seen (Print *print)
{
  RwBelief *belief = rw_advice_get_belief (print->plan->advice);
  g_autoptr (GPtrArray) titles = g_ptr_array_new ();

  for (guint i = 0; i < rw_belief_get_n_evidence (belief); i++)
    g_ptr_array_add (titles, rw_belief_get_evidence (belief, i)->title);
  if (titles->len == 0)
    return;
  g_ptr_array_add (titles, NULL);

  g_autofree char *list = g_strjoinv ("; ", (char **) titles->pdata);

  /* Translators: what was seen and measured so far. */
  g_string_append_printf (print->out, _ ("Known so far: %s"), list);
  g_string_append_c (print->out, '\n');
}

static void
append_left_out (Print *print)
{
  const guint depth = print->plan->depth;
  g_autofree char *rare = rw_quantity_format_chance (print->rare);
  g_autofree char *deep = rw_quantity_format_chance (print->deep);
  g_autofree char *least = rw_quantity_format_chance (RW_REPORT_PLAN_MIN_SHARE);

  if (print->deep > 0 || print->rare > 0)
    g_string_append_c (print->out, '\n');
  if (print->deep > 0)
    g_string_append_printf (
        print->out,
        /* Translators: number of checks, share of cases. */
        g_dngettext (GETTEXT_PACKAGE,
                     "Cut: only %u check deep is shown; %s of cases go deeper (…).\n",
                     "Cut: only %u checks deep are shown; %s of cases go deeper (…).\n", depth),
        depth, deep);
  if (print->rare > 0)
    g_string_append_printf (
        print->out,
        /* Translators: a chance; share of cases. */
        _ ("Cut: branches below %s were not planned, in all %s of cases.\n"), least, rare);
}

GString *
rw_report_plan_to_text (const RwReportPlan *self)
{
  g_return_val_if_fail (self != NULL, NULL);

  Print print = { .plan = self,
                  .knowledge = rw_advice_get_knowledge (self->advice),
                  .out = g_string_new (NULL) };

  append_seen (&print);
  if (self->tree == NULL)
    {
      const gboolean done = rw_advice_get_kind (self->advice) == RW_ADVICE_DONE;

      g_string_append (print.out,
                       done ? _ ("It is fixed: there is nothing to plan.")
                            : _ ("Nothing to plan: no cause is known for this cabinet."));
      g_string_append_c (print.out, '\n');
      return print.out;
    }
  rw_report_words_append_account (print.out, self->advice, self->tree->expected);
  g_string_append_c (print.out, '\n');
  append_step (&print, self->tree, 0, 0);
  append_left_out (&print);
  return print.out;
}
