/* rw-chart-names.c: the words of the knowledge for what a chart shows by an id.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-chart-names.h"

#include "rw-knowledge.h"

char *
rw_chart_name_known (RwEventType type,
                     const char *id,
                     gpointer    knowledge)
{
  if (knowledge == NULL)
    return NULL;

  const RwSymptom *symptom = type == RW_EVENT_SYMPTOM ? rw_knowledge_find_symptom (knowledge, id) : NULL;
  const RwCause *cause = type == RW_EVENT_REPAIR ? rw_knowledge_find_cause (knowledge, id) : NULL;

  if (symptom != NULL)
    return g_strdup (symptom->title);
  return cause != NULL ? g_strdup (cause->repair.title) : NULL;
}
