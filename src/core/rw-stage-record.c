/* rw-stage-record.c: the record of a bring-up for people: passed, skipped, gone on against advice, unproven.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-stage-record.h"

#include <glib/gi18n-lib.h>

#include "rw-quantity.h"

const char *
rw_stage_status_get_label (RwStageStatus status)
{
  switch (status)
    {
    case RW_STAGE_CURRENT:
      return _ ("now");
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
      return _ ("ahead");
    }
}

const char *
rw_stage_status_get_glyph (RwStageStatus status)
{
  switch (status)
    {
    case RW_STAGE_CURRENT:
      return "▶";
    case RW_STAGE_BLOCKED:
      return "■";
    case RW_STAGE_DONE:
      return "✓";
    case RW_STAGE_LEFT:
      return "◐";
    case RW_STAGE_SKIPPED:
      return "↷";
    case RW_STAGE_AHEAD:
    default:
      return "○";
    }
}

static void
clear_line (gpointer data)
{
  g_clear_pointer (&((RwRecordLine *) data)->text, g_free);
}

/* @text: (transfer full) */
static void
add (GArray       *lines,
     RwRecordKind  kind,
     char         *text)
{
  const RwRecordLine line = { kind, RW_STAGE_AHEAD, text };

  g_array_append_val (lines, line);
}

static void
add_stages (const RwStages *stages,
            GArray         *lines)
{
  add (lines, RW_RECORD_HEADING, g_strdup (_ ("Stages of the bring-up")));
  for (guint i = 0; i < RW_N_STAGES; i++)
    {
      const RwStageState *state = &stages->stages[i];

      if (state->status == RW_STAGE_AHEAD)
        continue;
      add (lines, RW_RECORD_STAGE, g_strdup (state->words->title));
      g_array_index (lines, RwRecordLine, lines->len - 1).status = state->status;
    }
}

static void
add_answer (const RwQuestioned *questioned,
            gboolean           *headed,
            GArray             *lines)
{
  if (questioned->answer == RW_ANSWER_NONE)
    return;
  if (!*headed)
    add (lines, RW_RECORD_HEADING, g_strdup (_ ("Answered")));
  *headed = TRUE;
  add (lines, RW_RECORD_ANSWER,
       g_strdup_printf ("%s %s", questioned->question->text,
                        questioned->answer == RW_ANSWER_YES ? _ ("yes") : _ ("no")));
}

static void
add_answers (const RwStages *stages,
             GArray         *lines)
{
  gboolean headed = FALSE;

  for (guint i = 0; i < RW_N_STAGES; i++)
    for (guint k = 0; k < stages->stages[i].questions->len; k++)
      add_answer (&g_array_index (stages->stages[i].questions, RwQuestioned, k), &headed, lines);
}

static void
add_stops (const RwStages *stages,
           GArray         *lines)
{
  const GArray *reasons = stages->stages[stages->current].reasons;

  for (guint i = 0; i < reasons->len; i++)
    {
      const RwGateReason *reason = &g_array_index (reasons, RwGateReason, i);

      if (reason->gate == RW_GATE_STOP && !reason->covered)
        add (lines, RW_RECORD_STOP, g_strdup (reason->text));
    }
}

static void
add_against (const RwStages *stages,
             GArray         *lines)
{
  if (stages->against->len > 0)
    add (lines, RW_RECORD_HEADING, g_strdup (_ ("Gone on against advice")));
  for (guint i = 0; i < stages->against->len; i++)
    {
      const RwAgainst *against = &g_array_index (stages->against, RwAgainst, i);
      const char *title = rw_stage_words_get (stages->words, against->stage)->title;
      g_autofree char *clock = rw_quantity_format_clock (against->t);
      g_autofree char *why = g_strstrip (g_strdup (against->why));

      /* Translators: title of a stage, time since the start as minutes:seconds, a person's reason. */
      add (lines, RW_RECORD_AGAINST, g_strdup_printf (_ ("%s, at %s, because: %s"), title, clock, why));
      if (*against->advice != '\0')
        /* Translators: sentences that warned. */
        add (lines, RW_RECORD_ADVICE, g_strdup_printf (_ ("Advised was: %s"), against->advice));
    }
}

static void
add_unproven (const RwStages *stages,
              GArray         *lines)
{
  if (stages->unproven->len > 0)
    add (lines, RW_RECORD_HEADING, g_strdup (_ ("Not proven")));
  for (guint i = 0; i < stages->unproven->len; i++)
    add (lines, RW_RECORD_UNPROVEN, g_strdup (g_array_index (stages->unproven, RwUnproven, i).text));
}

GArray *
rw_stage_record_list (const RwStages *stages)
{
  GArray *lines = g_array_new (FALSE, FALSE, sizeof (RwRecordLine));

  g_array_set_clear_func (lines, clear_line);
  if (stages->current < 0)
    return lines;
  add_stages (stages, lines);
  add_stops (stages, lines);
  add_against (stages, lines);
  add_unproven (stages, lines);
  add_answers (stages, lines);
  return lines;
}
