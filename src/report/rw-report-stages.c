/* rw-report-stages.c: the bring-up in the text report.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-report-stages.h"

#include <glib/gi18n-lib.h>

#include "rw-quantity.h"
#include "rw-report-words.h"
#include "rw-text-table.h"

static const char *
get_status_label (RwStageStatus status)
{
  switch (status)
    {
    case RW_STAGE_CURRENT:
      return _ ("current");
    case RW_STAGE_BLOCKED:
      return _ ("stopped");
    case RW_STAGE_DONE:
      return _ ("done");
    case RW_STAGE_LEFT:
      return _ ("left open");
    case RW_STAGE_SKIPPED:
      return _ ("skipped");
    case RW_STAGE_AHEAD:
    default:
      return NULL;
    }
}

static void
append_stages (const RwStages *stages,
               GString        *out)
{
  static const gboolean right[] = { FALSE, FALSE };
  g_autoptr (RwTextTable) table = rw_text_table_new (G_N_ELEMENTS (right), right);

  rw_report_words_append_heading (out, _ ("Stages of the bring-up"));
  for (guint i = 0; i < RW_N_STAGES; i++)
    {
      const RwStageState *state = &stages->stages[i];
      const char *label = get_status_label (state->status);

      if (label == NULL)
        continue;
      rw_text_table_take (table, g_strdup (state->words->title));
      rw_text_table_take (table, g_strdup (label));
    }
  rw_text_table_append (table, 2, out);
}

static void
append_answers (const RwStages *stages,
                GString        *out)
{
  for (guint i = 0; i < RW_N_STAGES; i++)
    for (guint k = 0; k < stages->stages[i].questions->len; k++)
      {
        const RwQuestioned *questioned = &g_array_index (stages->stages[i].questions, RwQuestioned, k);

        if (questioned->answer != RW_ANSWER_NONE)
          g_string_append_printf (out, "  %s %s\n", questioned->question->text,
                                  questioned->answer == RW_ANSWER_YES ? _ ("yes") : _ ("no"));
      }
}

static void
append_reason (const RwStages *stages,
               GString        *out)
{
  const RwGateReason *reason = rw_stages_get_reason (stages, (RwStage) stages->current);

  if (reason != NULL && reason->gate == RW_GATE_STOP)
    g_string_append_printf (out, "  ! %s\n", reason->text);
}

static void
append_against (const RwStages *stages,
                GString        *out)
{
  if (stages->against->len > 0)
    rw_report_words_append_heading (out, _ ("Gone on against advice"));
  for (guint i = 0; i < stages->against->len; i++)
    {
      const RwAgainst *against = &g_array_index (stages->against, RwAgainst, i);
      const char *title = rw_stage_words_get (stages->words, against->stage)->title;
      g_autofree char *clock = rw_quantity_format_clock (against->t);
      g_autofree char *why = g_strstrip (g_strdup (against->why));

      g_string_append (out, "  ");
      /* Translators: title of a stage, time since the start as minutes:seconds, a person's reason. */
      g_string_append_printf (out, _ ("%s, at %s, because: %s"), title, clock, why);
      g_string_append_c (out, '\n');
      if (*against->advice != '\0')
        {
          g_string_append (out, "    ");
          /* Translators: sentences that warned. */
          g_string_append_printf (out, _ ("Advised was: %s"), against->advice);
          g_string_append_c (out, '\n');
        }
    }
}

static void
append_unproven (const RwStages *stages,
                 GString        *out)
{
  if (stages->unproven->len > 0)
    rw_report_words_append_heading (out, _ ("Not proven"));
  for (guint i = 0; i < stages->unproven->len; i++)
    g_string_append_printf (out, "  %s\n", g_array_index (stages->unproven, RwUnproven, i).text);
}

void
rw_report_stages_append (const RwStages *stages,
                         GString        *out)
{
  if (stages->current < 0)
    return;
  append_stages (stages, out);
  append_answers (stages, out);
  append_reason (stages, out);
  append_against (stages, out);
  append_unproven (stages, out);
}

void
rw_report_stages_append_of (RwSession *session,
                            GString   *out)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RwStageWords) words = rw_stage_words_load_shipped (&error);

  if (words == NULL)
    {
      rw_report_words_append_heading (out, _ ("Stages of the bring-up"));
      g_string_append_printf (out, "  %s\n", error->message);
      return;
    }

  g_autoptr (RwStages) stages = rw_stages_new (session, words, 0);

  rw_report_stages_append (stages, out);
}
