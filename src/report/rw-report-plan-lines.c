/* rw-report-plan-lines.c: a plan as lines.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-report-plan-lines.h"

#include <glib/gi18n-lib.h>

#include "rw-quantity.h"
#include "rw-report-plan-merge.h"
#include "rw-report-words.h"

/* What is carried down the tree while it is told. */
typedef struct
{
  const RwReportPlan *plan;
  RwKnowledge        *knowledge;
  GPtrArray          *lines;
  GPtrArray          *said; /* (element-type utf8) borrowed: the cautions that stand in full, in order */
  double              rare; /* chance of coming to a branch that is too rare to plan for */
  double              deep; /* … to a check that is too deep to show */
} Print;

static void
line_free (gpointer data)
{
  RwPlanLine *line = data;

  g_free (line->text);
  g_free (line);
}

/* @text: (transfer full) */
static RwPlanLine *
add_line (Print         *print,
          RwPlanLineKind kind,
          guint          level,
          char          *text)
{
  RwPlanLine *line = g_new0 (RwPlanLine, 1);

  *line = (RwPlanLine) { .kind = kind, .level = level, .text = text };
  g_ptr_array_add (print->lines, line);
  return line;
}

static void
append_danger (Print      *print,
               guint       level,
               const char *danger)
{
  if (danger != NULL && *danger != '\0')
    add_line (print, RW_PLAN_LINE_DANGER, level, g_strdup (danger));
}

char *
rw_plan_line_dup_text (const RwPlanLine *line,
                       guint             page)
{
  g_return_val_if_fail (line != NULL, NULL);
  if (!line->repeats)
    return g_strdup (line->text);
  if (page == 0)
    /* Translators: what can hurt; number of a caution that stands above. */
    return g_strdup_printf (_ ("%s: caution %u above"), line->text, line->caution);
  /* Translators: what can hurt; number of a caution, and of the page where it stands. */
  return g_strdup_printf (_ ("%s: caution %u, page %u"), line->text, line->caution, page);
}

/* --- cautions ------------------------------------------------------------------------------- */

/* The number of a caution, 1 …; a new one joins the list. */
static guint
number_of (Print      *print,
           const char *safety,
           gboolean   *is_new)
{
  guint index = 0;

  *is_new = !g_ptr_array_find_with_equal_func (print->said, safety, g_str_equal, &index);
  if (*is_new)
    {
      index = print->said->len;
      g_ptr_array_add (print->said, (gpointer) safety);
    }
  return index + 1;
}

/* What can hurt in a check, and how to keep safe: in full once, by its number afterwards. */
static void
append_check_dangers (Print         *print,
                      guint          level,
                      const RwCheck *check)
{
  g_autofree char *danger = rw_report_words_danger (check->hazard, check->who);
  gboolean is_new = FALSE;
  RwPlanLine *line;

  if (check->safety == NULL || *check->safety == '\0')
    {
      append_danger (print, level, danger);
      return;
    }

  const guint number = number_of (print, check->safety, &is_new);

  if (is_new)
    {
      append_danger (print, level, danger);
      line = add_line (print, RW_PLAN_LINE_DANGER, level,
                       /* Translators: its number, and how to keep safe. */
                       g_strdup_printf (_ ("Caution %u: %s"), number, check->safety));
    }
  else
    line = add_line (print, RW_PLAN_LINE_DANGER, level,
                     g_strdup (danger != NULL ? danger : rw_hazard_get_label (check->hazard)));
  line->caution = number;
  line->repeats = !is_new;
}

/* --- repairs -------------------------------------------------------------------------------- */

static guint
run_length (const RwPlanTree *node)
{
  guint n = 0;

  for (; node != NULL; node = rw_report_plan_after (node))
    n++;
  return n;
}

static void
append_cause_danger (Print         *print,
                     guint          level,
                     const RwCause *cause)
{
  g_autofree char *danger = rw_report_words_danger (cause->repair.hazard, cause->repair.who);
  g_autofree char *line = g_strdup_printf ("%s: %s", cause->repair.title, danger);

  append_danger (print, level, danger != NULL ? line : NULL);
}

/* Dangers of the repairs from @first up to @end (not with it). */
static void
append_repair_dangers (Print            *print,
                       guint             level,
                       const RwPlanTree *first,
                       const RwPlanTree *end)
{
  for (const RwPlanTree *node = first; node != end; node = rw_report_plan_after (node))
    {
      const RwCause *then = NULL;

      append_cause_danger (print, level, rw_advice_get_cause (print->plan->advice, node->index, &then));
      if (then != NULL)
        append_cause_danger (print, level, then);
    }
}

/* "set the trim (5 min, 78 %)"; the chance is that it fixes, given that one comes to it. */
static char *
dup_repair (Print            *print,
            const RwPlanTree *node)
{
  const RwCause *then = NULL;
  const RwCause *cause = rw_advice_get_cause (print->plan->advice, node->index, &then);
  const RwPlanTree *next = rw_report_plan_after (node);
  const double left = next != NULL && node->reach > 0 ? next->reach / node->reach : 0;
  g_autofree char *minutes = rw_report_words_minutes (node->minutes);
  g_autofree char *chance = rw_quantity_format_chance (1 - left);

  if (then != NULL)
    /* Translators: two repairs for two faults at once, minutes with their unit, chance that they fix. */
    return g_strdup_printf (_ ("%s, and %s (%s, %s)"), cause->repair.title, then->repair.title, minutes, chance);
  /* Translators: what is repaired, minutes with their unit, chance that it fixes. */
  return g_strdup_printf (_ ("%s (%s, %s)"), cause->repair.title, minutes, chance);
}

/* The first of the run that is not spelled out; NULL: all are. */
static const RwPlanTree *
end_of_words (const RwPlanTree *first)
{
  const RwPlanTree *node = first;

  for (guint i = 0; node != NULL && i < RW_REPORT_PLAN_SPELLED; i++)
    node = rw_report_plan_after (node);
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
  for (const RwPlanTree *node = first; node != rest; node = rw_report_plan_after (node))
    g_ptr_array_add (words, dup_repair (print, node));
  if (rest != NULL)
    g_ptr_array_add (words, dup_rest (first, rest));
  g_ptr_array_add (words, NULL);

  /* Translators: stands between repairs; each is done if the one before changed nothing. */
  g_autofree char *run = g_strjoinv (_ (", then "), (char **) words->pdata);

  add_line (print, RW_PLAN_LINE_REPAIR, level,
            /* Translators: one or more repairs in order, minutes with their unit. */
            g_strdup_printf (_ ("Repair: %s; expected %s"), run, expected));
}

/* --- the tree ------------------------------------------------------------------------------- */

/* @above: checks above the node. */
static void append_step (Print            *print,
                         const RwPlanTree *node,
                         guint             level,
                         guint             above);

/* "Below 4.80 V, or 4.80 to 4.90 V". */
static char *
dup_outcomes (const RwCheck *check,
              const GArray  *outcomes)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < outcomes->len; i++)
    g_ptr_array_add (words, rw_report_words_outcome (check, &check->outcomes[g_array_index (outcomes, guint, i)]));
  g_ptr_array_add (words, NULL);
  /* Translators: stands between outcomes of a check after which the same is done. */
  return g_strjoinv (_ (", or "), (char **) words->pdata);
}

static void
append_branch (Print                *print,
               const RwPlanTree     *node,
               const RwReportBranch *branch,
               guint                 level,
               guint                 above)
{
  const RwCheck *check = rw_knowledge_get_check (print->knowledge, node->index);
  g_autofree char *chance = rw_quantity_format_chance (branch->tree->reach / node->reach);
  g_autofree char *words = dup_outcomes (check, branch->outcomes);

  add_line (print, RW_PLAN_LINE_OUTCOME, level, g_strdup_printf ("%s  %s", chance, words));
  append_step (print, branch->tree, level + 1, above);
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
  /* Translators: a list of what a check may show. */
  add_line (print, RW_PLAN_LINE_RARE, level, g_strdup_printf (_ ("too rare to plan for: %s"), list->str));
}

/* The check's own line, what can hurt before it; how to keep safe where the check is unfolded. A live low voltage, which
 * most checks meet, stands on the line itself. */
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
  g_autoptr (GString) text = g_string_new (NULL);

  if (above < print->plan->depth)
    append_check_dangers (print, level, check);
  else
    append_danger (print, level, danger);
  /* Translators: title of a check, minutes it takes, minutes to go from here. */
  g_string_printf (text, _ ("Check: %s (%s; expected %s)"), check->title, minutes, expected);
  if (wanted != NULL)
    g_string_append_printf (text, ", %s", wanted);
  if (danger == NULL && check->hazard != RW_HAZARD_NONE)
    g_string_append_printf (text, "; %s", rw_hazard_get_label (check->hazard));
  if (above >= print->plan->depth)
    g_string_append (text, " …");
  add_line (print, RW_PLAN_LINE_CHECK, level, g_strdup (text->str));
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
      print->deep += node->reach;
      return;
    }

  g_autoptr (GPtrArray) branches = rw_report_plan_merge (print->plan, node, above + 1);

  for (guint i = 0; i < branches->len; i++)
    append_branch (print, node, branches->pdata[i], level + 1, above + 1);
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

  append_repair_dangers (print, level, node, rw_report_plan_after (node));
  /* Translators: a repair. */
  add_line (print, RW_PLAN_LINE_REPAIR, level, g_strdup_printf (_ ("Repair: %s; if that changes nothing:"), repair));
  append_step (print, rw_report_plan_after (node), level, above);
}

static void
append_step (Print            *print,
             const RwPlanTree *node,
             guint             level,
             guint             above)
{
  if (node->kind == RW_ACTION_CHECK)
    append_check (print, node, level, above);
  else if (rw_report_plan_is_run (node))
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
  add_line (print, RW_PLAN_LINE_KNOWN, 0, g_strdup_printf (_ ("Known so far: %s"), list));
}

static void
append_left_out (Print *print)
{
  const guint depth = print->plan->depth;
  g_autofree char *rare = rw_quantity_format_chance (print->rare);
  g_autofree char *deep = rw_quantity_format_chance (print->deep);
  g_autofree char *least = rw_quantity_format_chance (RW_REPORT_PLAN_MIN_SHARE);

  if (print->deep > 0)
    add_line (print, RW_PLAN_LINE_CUT, 0,
              g_strdup_printf (
                  /* Translators: number of checks, share of cases. */
                  g_dngettext (GETTEXT_PACKAGE, "Cut: only %u check deep is shown; %s of cases go deeper (…).",
                               "Cut: only %u checks deep are shown; %s of cases go deeper (…).", depth),
                  depth, deep));
  if (print->rare > 0)
    add_line (print, RW_PLAN_LINE_CUT, 0,
              /* Translators: a chance; share of cases. */
              g_strdup_printf (_ ("Cut: branches below %s were not planned, in all %s of cases."), least, rare));
}

static void
append_account (Print *print)
{
  g_autoptr (GString) account = g_string_new (NULL);

  rw_report_words_append_account (account, print->plan->advice, print->plan->tree->expected);
  add_line (print, RW_PLAN_LINE_KNOWN, 0, g_strdup (g_strstrip (account->str)));
}

GPtrArray *
rw_report_plan_lines (const RwReportPlan *self)
{
  g_return_val_if_fail (self != NULL, NULL);

  g_autoptr (GPtrArray) said = g_ptr_array_new ();
  Print print = { .plan = self,
                  .knowledge = rw_advice_get_knowledge (self->advice),
                  .lines = g_ptr_array_new_with_free_func (line_free),
                  .said = said };

  append_seen (&print);
  if (self->tree == NULL)
    {
      const gboolean done = rw_advice_get_kind (self->advice) == RW_ADVICE_DONE;

      add_line (&print, RW_PLAN_LINE_KNOWN, 0,
                g_strdup (done ? _ ("It is fixed: there is nothing to plan.")
                               : _ ("Nothing to plan: no cause is known for this cabinet.")));
      return print.lines;
    }
  append_account (&print);
  add_line (&print, RW_PLAN_LINE_KNOWN, 0,
            g_strdup_printf (_ ("What can hurt, and who may do it, stands before a step; “%s” in its line. Where nothing does: "
                                "%s; %s."),
                             rw_hazard_get_label (RW_HAZARD_LOW_VOLTAGE), rw_hazard_get_label (RW_HAZARD_NONE),
                             rw_who_get_label (RW_WHO_ANYONE)));
  append_step (&print, self->tree, 0, 0);
  append_left_out (&print);
  return print.lines;
}
