/* rw-report-text-next.c: what was seen, what is likely, and what to do next.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An id that the knowledge does not have is shown as it is. What can hurt stands on a line of its
 * own, begun with "!", before the step that meets it.
 */
#include "config.h"

#include "rw-report-text-next.h"

#include <glib/gi18n-lib.h>

#include "rw-quantity.h"
#include "rw-report-words.h"
#include "rw-stage-words.h"
#include "rw-text-table.h"

static const guint causes_shown = 6;
static const double likely_from = 0.01; /* causes less likely than this are not listed */
static const guint others_shown = 3;

static RwKnowledge *
knowledge_of (const RwSummary *summary)
{
  return summary->advice != NULL ? rw_advice_get_knowledge (summary->advice) : NULL;
}

/* --- what was seen -------------------------------------------------------------------------- */

static void
append_symptom (RwKnowledge         *knowledge,
                const RwSymptomSeen *seen,
                GString             *out)
{
  const RwSymptom *symptom = knowledge != NULL ? rw_knowledge_find_symptom (knowledge, seen->id)
                                               : NULL;
  const char *title = symptom != NULL ? symptom->title : seen->id;

  g_string_append (out, "  ");
  switch (seen->state)
    {
    case RW_SYMPTOM_PRESENT:
      /* Translators: what the cabinet does. */
      g_string_append_printf (out, _ ("seen: %s"), title);
      break;
    case RW_SYMPTOM_ABSENT:
      /* Translators: what the cabinet does not do. */
      g_string_append_printf (out, _ ("not seen: %s"), title);
      break;
    case RW_SYMPTOM_CURED:
    default:
      /* Translators: what the cabinet did. */
      g_string_append_printf (out, _ ("cured: %s"), title);
      break;
    }
  g_string_append_c (out, '\n');
}

/* Answers to the questions of a stage stand with the stages. */
static void
append_finding (RwKnowledge         *knowledge,
                const RwFindingSeen *seen,
                gboolean            *headed,
                GString             *out)
{
  const RwCheck *check = knowledge != NULL ? rw_knowledge_find_check (knowledge, seen->check)
                                           : NULL;
  const int outcome = check != NULL ? rw_check_find_outcome (check, seen->outcome) : -1;

  if (!*headed)
    rw_report_words_append_heading (out, _ ("Found"));
  *headed = TRUE;
  g_string_append_printf (out, "  %s: %s\n", check != NULL ? check->title : seen->check,
                          outcome >= 0 ? check->outcomes[outcome].title : seen->outcome);
}

static void
append_repair (RwKnowledge        *knowledge,
               const RwRepairSeen *seen,
               GString            *out)
{
  const RwCause *cause = knowledge != NULL ? rw_knowledge_find_cause (knowledge, seen->cause)
                                           : NULL;
  const char *title = cause != NULL ? cause->repair.title : seen->cause;

  g_string_append (out, "  ");
  if (seen->result == RW_REPAIR_FIXED)
    /* Translators: what was repaired. */
    g_string_append_printf (out, _ ("%s: fixed"), title);
  else
    /* Translators: what was repaired. */
    g_string_append_printf (out, _ ("%s: no change"), title);
  g_string_append_c (out, '\n');
}

void
rw_report_text_append_seen (const RwSummary *summary,
                            GString         *out)
{
  RwKnowledge *knowledge = knowledge_of (summary);
  const RwBenchState *state = summary->state;
  const guint n_symptoms = rw_bench_state_get_n_symptoms (state);
  const guint n_findings = rw_bench_state_get_n_findings (state);
  const guint n_repairs = rw_bench_state_get_n_repairs (state);
  gboolean headed = FALSE;

  if (n_symptoms > 0)
    rw_report_words_append_heading (out, _ ("Symptoms"));
  for (guint i = 0; i < n_symptoms; i++)
    append_symptom (knowledge, rw_bench_state_get_symptom (state, i), out);
  for (guint i = 0; i < n_findings; i++)
    if (!g_str_has_prefix (rw_bench_state_get_finding (state, i)->check, RW_STAGE_QUESTION_PREFIX))
      append_finding (knowledge, rw_bench_state_get_finding (state, i), &headed, out);
  if (n_repairs > 0)
    rw_report_words_append_heading (out, _ ("Repaired"));
  for (guint i = 0; i < n_repairs; i++)
    append_repair (knowledge, rw_bench_state_get_repair (state, i), out);
}

/* --- likely causes -------------------------------------------------------------------------- */

static void
append_causes (RwAdvice *advice,
               GString  *out)
{
  static const gboolean right[] = { TRUE, FALSE };
  g_autoptr (RwTextTable) table = rw_text_table_new (G_N_ELEMENTS (right), right);
  RwBelief *belief = rw_advice_get_belief (advice);
  const guint n = MIN (rw_belief_get_n_causes (belief), causes_shown);

  if (n > 0)
    rw_report_words_append_heading (out, _ ("Likely causes"));
  for (guint rank = 0; rank < n; rank++)
    {
      const RwCauseBelief *held = rw_belief_get_cause (belief, rank);

      if (held->p < likely_from)
        break;
      rw_text_table_take (table, rw_quantity_format_chance (held->p));
      rw_text_table_take (table, g_strdup (held->cause->title));
    }
  rw_text_table_append (table, 2, out);
}

/* --- what to do next ------------------------------------------------------------------------ */

static void
append_danger (RwHazard    hazard,
               RwWho       who,
               const char *safety,
               const char *indent,
               GString    *out)
{
  g_autofree char *danger = rw_report_words_danger (hazard, who);

  if (danger != NULL)
    g_string_append_printf (out, "%s! %s\n", indent, danger);
  else
    {
      g_string_append (out, indent);
      /* Translators: what can hurt; who may do it. */
      g_string_append_printf (out, _ ("%s; %s"), rw_hazard_get_label (hazard), rw_who_get_label (who));
      g_string_append_c (out, '\n');
    }
  if (*safety != '\0')
    g_string_append_printf (out, "%s! %s\n", indent, safety);
}

static void
append_step (const RwAdviceCheck *advised,
             const char          *indent,
             GString             *out)
{
  const RwCheck *check = advised->check;
  g_autofree char *minutes = rw_report_words_minutes (advised->minutes);
  g_autofree char *wanted = rw_report_words_wanted (check);
  g_autofree char *saves = rw_report_words_minutes (advised->saves);

  append_danger (check->hazard, check->who, check->safety, indent, out);
  g_string_append (out, indent);
  /* Translators: title of a check, minutes it takes, minutes it saves (each with its unit). */
  g_string_append_printf (out, _ ("%s: takes %s, saves %s"), check->title, minutes, saves);
  if (wanted != NULL)
    g_string_append_printf (out, " (%s)", wanted);
  g_string_append_c (out, '\n');
}

static void
append_outcome (const RwAdvice        *advice,
                const RwAdviceOutcome *seen,
                GString               *out)
{
  g_autofree char *chance = rw_quantity_format_chance (seen->chance);
  const RwCheck *check = rw_advice_get_check (advice)->check;
  g_autofree char *words = rw_report_words_outcome (check, seen->outcome);

  if (seen->likely == NULL)
    return;
  g_string_append_printf (out, "    %s  %s", chance, words);
  if (seen->next_title != NULL)
    {
      g_string_append (out, " → ");
      g_string_append (out, seen->next_title);
    }
  g_string_append_c (out, '\n');
}

static void
append_check (const RwSummary *summary,
              GString         *out)
{
  const RwAdvice *advice = summary->advice;
  const RwAdviceCheck *advised = rw_advice_get_check (advice);
  g_autoptr (GPtrArray) next = rw_summary_list_next (summary);

  rw_report_words_append_heading (out, _ ("Next check"));
  append_step (advised, "  ", out);
  g_string_append_printf (out, "    %s\n", advised->check->why);
  for (char **how = advised->check->how; how != NULL && *how != NULL; how++)
    g_string_append_printf (out, "    – %s\n", *how);
  for (guint i = 0; i < rw_advice_get_n_outcomes (advice); i++)
    append_outcome (advice, rw_advice_get_outcome (advice, i), out);
  if (next->len > 1)
    rw_report_words_append_heading (out, _ ("Or instead"));
  for (guint i = 1; i < next->len && i <= others_shown; i++)
    append_step (next->pdata[i], "  ", out);
}

static void
append_repair_now (const RwCause *cause,
                   GString       *out)
{
  g_autofree char *minutes = rw_report_words_minutes (cause->repair.minutes);

  rw_report_words_append_heading (out, _ ("Repair now: no check pays for its minutes"));
  append_danger (cause->repair.hazard, cause->repair.who, "", "  ", out);
  g_string_append_printf (out, "  %s (%s)\n", cause->repair.title, minutes);
  for (char **step = cause->repair.steps; step != NULL && *step != NULL; step++)
    g_string_append_printf (out, "    – %s\n", *step);
}

static void
append_account (const RwAdvice *advice,
                GString        *out)
{
  g_string_append_c (out, '\n');
  rw_report_words_append_account (out, advice, rw_advice_get_expected (advice));
}

void
rw_report_text_append_next (const RwSummary *summary,
                            GString         *out)
{
  RwAdvice *advice = summary->advice;

  if (advice == NULL)
    return;

  const RwCause *repair = rw_advice_get_repair (advice);

  append_causes (advice, out);
  switch (rw_advice_get_kind (advice))
    {
    case RW_ADVICE_CHECK:
      append_check (summary, out);
      append_account (advice, out);
      break;
    case RW_ADVICE_REPAIR:
      append_repair_now (repair, out);
      append_account (advice, out);
      break;
    case RW_ADVICE_DONE:
      rw_report_words_append_heading (out, _ ("Fixed"));
      g_string_append_printf (out, "  %s\n", repair != NULL ? repair->title : "");
      break;
    case RW_ADVICE_NOTHING:
    default:
      rw_report_words_append_heading (out, _ ("No cause is known for this cabinet."));
      break;
    }
}
