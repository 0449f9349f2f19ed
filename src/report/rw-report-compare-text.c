/* rw-report-compare-text.c: what changed between two sessions, for people.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "rw-compare-words.h"
#include "rw-report-compare.h"
#include "rw-report-words.h"
#include "rw-text-table.h"

static void
append_visit (RwSession  *session,
              const char *which,
              GString    *out)
{
  const RwSessionHeader *header = rw_session_get_header (session);
  g_autofree char *started = g_date_time_format (header->started, "%Y-%m-%d %H:%M");

  g_string_append_printf (out, "  %s: ", which);
  /* Translators: date and time, name of the cabinet. */
  g_string_append_printf (out, _ ("%s UTC, %s"), started, header->cabinet_name);
  if (header->cabinet_tag != NULL && header->cabinet_tag[0] != '\0')
    g_string_append_printf (out, " (%s)", header->cabinet_tag);
  g_string_append_c (out, '\n');
}

static void
append_head (const RwCompare *compare,
             GString         *out)
{
  g_autofree char *cabinet = rw_compare_words_cabinet (compare);
  g_autofree char *headline = rw_compare_words_headline (compare);

  g_string_append_printf (out, "%s\n", cabinet);
  append_visit (rw_compare_get_then (compare), _ ("then"), out);
  append_visit (rw_compare_get_now (compare), _ ("now"), out);
  for (guint i = 0; i < rw_compare_get_n_remarks (compare); i++)
    g_string_append_printf (out, "  ! %s\n", rw_compare_get_remark (compare, i));
  g_string_append_printf (out, "\n%s\n", headline);
}

static void
append_items (const RwCompare *compare,
              RwCompareResult  result,
              const char      *heading,
              GString         *out)
{
  static const gboolean right[] = { FALSE, TRUE, TRUE, FALSE, FALSE };
  g_autoptr (RwTextTable) table = rw_text_table_new (G_N_ELEMENTS (right), right);

  if (rw_compare_get_n_results (compare, result) == 0)
    return;
  rw_report_words_append_heading (out, heading);
  rw_text_table_take (table, NULL);
  rw_text_table_take (table, g_strdup (_ ("then")));
  rw_text_table_take (table, g_strdup (_ ("now")));
  rw_text_table_take (table, NULL);
  rw_text_table_take (table, NULL);
  for (guint i = 0; i < rw_compare_get_n_items (compare); i++)
    {
      const RwCompareItem *item = rw_compare_get_item (compare, i);

      if (item->result != result)
        continue;
      rw_text_table_take (table, rw_compare_words_spot (item));
      rw_text_table_take (table, rw_compare_words_value (item, &item->then));
      rw_text_table_take (table, rw_compare_words_value (item, &item->now));
      rw_text_table_take (table, rw_compare_words_difference (item));
      rw_text_table_take (table, rw_compare_words_result (item));
    }
  rw_text_table_append (table, 2, out);
}

static void
append_symptoms (const RwCompare *compare,
                 RwKnowledge     *knowledge,
                 GString         *out)
{
  if (rw_compare_get_n_symptoms (compare) > 0)
    rw_report_words_append_heading (out, _ ("Symptoms at the end"));
  for (guint i = 0; i < rw_compare_get_n_symptoms (compare); i++)
    {
      const RwCompareSymptom *symptom = rw_compare_get_symptom (compare, i);
      const RwSymptom *known = knowledge != NULL ? rw_knowledge_find_symptom (knowledge, symptom->id) : NULL;
      g_autofree char *words = rw_compare_words_symptom (symptom);

      g_string_append_printf (out, "  %s: %s\n", known != NULL ? known->title : symptom->id, words);
    }
}

static void
append_causes (const RwCompareCauses *causes,
               GString               *out)
{
  if (causes == NULL || causes->causes->len == 0)
    return;
  rw_report_words_append_heading (out, _ ("Likely causes at the end"));
  for (guint i = 0; i < causes->causes->len; i++)
    {
      const RwCompareCause *cause = &g_array_index (causes->causes, RwCompareCause, i);
      g_autofree char *words = rw_compare_causes_words (cause);

      g_string_append_printf (out, "  %s: %s\n", cause->cause->title, words);
    }
}

static void
append_limits (const RwCompare *compare,
               GString         *out)
{
  if (rw_compare_get_n_limits (compare) > 0)
    rw_report_words_append_heading (out, _ ("Limits that are not the same"));
  for (guint i = 0; i < rw_compare_get_n_limits (compare); i++)
    {
      g_autofree char *words = rw_compare_words_limit (rw_compare_get_limit (compare, i));

      g_string_append_printf (out, "  %s\n", words);
    }
}

static void
append_left (const RwCompare *compare,
             GString         *out)
{
  if (rw_compare_get_n_left (compare) > 0)
    rw_report_words_append_heading (out, _ ("Not compared"));
  for (guint i = 0; i < rw_compare_get_n_left (compare); i++)
    {
      g_autofree char *words = rw_compare_words_left (rw_compare_get_left (compare, i));

      g_string_append_printf (out, "  %s\n", words);
    }
}

GString *
rw_report_compare_text (const RwCompare       *compare,
                        const RwCompareCauses *causes,
                        RwKnowledge           *knowledge)
{
  GString *out = g_string_new (NULL);
  g_autofree char *method = rw_compare_words_method (compare);

  append_head (compare, out);
  append_items (compare, RW_COMPARE_CHANGED, _ ("What changed"), out);
  append_items (compare, RW_COMPARE_UNTOLD, _ ("What these meters cannot tell"), out);
  append_items (compare, RW_COMPARE_NOT, _ ("What did not change"), out);
  append_symptoms (compare, knowledge, out);
  append_causes (causes, out);
  append_limits (compare, out);
  append_left (compare, out);
  g_string_append_printf (out, "\n%s\n", method);
  return out;
}
