/* rw-report-stages.c: the bring-up in the text report.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-report-stages.h"

#include <glib/gi18n-lib.h>

#include "rw-report-words.h"
#include "rw-stage-record.h"
#include "rw-text-table.h"

/* The stages that follow each other from @first on, as a table. Returns the first line after them. */
static guint
append_table (const GArray *lines,
              guint         first,
              GString      *out)
{
  static const gboolean right[] = { FALSE, FALSE };
  g_autoptr (RwTextTable) table = rw_text_table_new (G_N_ELEMENTS (right), right);
  guint i = first;

  for (; i < lines->len && g_array_index (lines, RwRecordLine, i).kind == RW_RECORD_STAGE; i++)
    {
      rw_text_table_take (table, g_strdup (g_array_index (lines, RwRecordLine, i).text));
      rw_text_table_take (table, g_strdup (rw_stage_status_get_label (g_array_index (lines, RwRecordLine, i).status)));
    }
  rw_text_table_append (table, 2, out);
  return i;
}

static void
append_line (const RwRecordLine *line,
             GString            *out)
{
  if (line->kind == RW_RECORD_HEADING)
    rw_report_words_append_heading (out, line->text);
  else
    g_string_append_printf (out, "%s%s\n",
                            line->kind == RW_RECORD_ADVICE ? "    "
                            : line->kind == RW_RECORD_STOP ? "  ! "
                                                           : "  ",
                            line->text);
}

void
rw_report_stages_append (const RwStages *stages,
                         GString        *out)
{
  g_autoptr (GArray) lines = rw_stage_record_list (stages);

  for (guint i = 0; i < lines->len;)
    if (g_array_index (lines, RwRecordLine, i).kind == RW_RECORD_STAGE)
      i = append_table (lines, i, out);
    else
      append_line (&g_array_index (lines, RwRecordLine, i++), out);
}

static const char *
name_symptom (const char *id,
              gpointer    data)
{
  const RwSymptom *symptom = data != NULL ? rw_knowledge_find_symptom (data, id) : NULL;

  return symptom != NULL ? symptom->title : id;
}

void
rw_report_stages_append_of (RwSession   *session,
                            RwKnowledge *knowledge,
                            GString     *out)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RwStageWords) words = rw_stage_words_load_shipped (&error);

  if (words == NULL)
    {
      rw_report_words_append_heading (out, _ ("Stages of the bring-up"));
      g_string_append_printf (out, "  %s\n", error->message);
      return;
    }

  g_autoptr (RwStages) stages = rw_stages_new_named (session, words, 0, name_symptom, knowledge);

  rw_report_stages_append (stages, out);
}
