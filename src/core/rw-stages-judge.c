/* rw-stages-judge.c: which reasons make up the gate of which stage.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Those of setup and answers are found here, those of readings in rw-stages-bare.c, -power.c and -trim.c.
 */
#include "config.h"

#include "rw-stages-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"

/* Power on for longer before the warm-up begins: its first minutes were missed. Seconds. */
static const double cold_seconds = 300;

/* --- reasons of the setup ----------------------------------------------------------------------- */

static void
add_power_to_be_off (const RwStagesBook *book,
                     GArray             *reasons)
{
  if (book->setup.power_on == RW_SAID_YES)
    rw_stages_add_reason (reasons, "power-on", RW_GATE_STOP, NULL, book->setup_n,
                          g_strdup (_ ("The power is on: switch off, pull the plug and wait until the rails have fallen "
                                       "below 0.5 V before anything is plugged or unplugged.")));
  else if (book->setup.power_on == RW_SAID_NOT)
    rw_stages_add_reason (reasons, "power-unsaid", RW_GATE_WARN, NULL, 0,
                          g_strdup (_ ("Nobody said that the power is off. See that the plug is out before anything is "
                                       "plugged or unplugged.")));
}

static void
add_board_to_be_in (const RwStagesBook *book,
                    GArray             *reasons)
{
  if (book->setup.board_fitted == RW_SAID_NO)
    rw_stages_add_reason (reasons, "board-out", RW_GATE_STOP, NULL, book->setup_n,
                          g_strdup (_ ("The board is out: what is read now says nothing of the supply under load.")));
}

static void
add_power_to_be_on (const RwStagesBook *book,
                    GArray             *reasons)
{
  if (book->setup.power_on == RW_SAID_NO)
    rw_stages_add_reason (reasons, "power-off", RW_GATE_WARN, NULL, book->setup_n,
                          g_strdup (_ ("The power is off: there is nothing to read yet.")));
}

static void
add_plugged_live (const RwStagesBook *book,
                  GArray             *reasons)
{
  if (book->plugged_live != 0)
    rw_stages_add_reason (reasons, "plugged-live", RW_GATE_WARN, NULL, book->plugged_live,
                          g_strdup (_ ("The board was plugged or unplugged with the power on. If something is wrong from "
                                       "here on, look at memory and sound first.")));
}

/* --- reasons of questions ----------------------------------------------------------------------- */

static void
add_answers (const RwStagesBook *book,
             RwStage             stage,
             const char         *id,
             gboolean            stops_only,
             GArray             *reasons)
{
  const GArray *questions = rw_stage_words_get (book->words, stage)->questions;

  for (guint i = 0; i < questions->len; i++)
    {
      const RwStageQuestion *question = &g_array_index (questions, RwStageQuestion, i);
      const RwStageAnswer *answer = rw_stages_book_find_answer (book, question->id);

      if (answer == NULL || answer->yes || question->no == NULL || (stops_only && !question->no_stops))
        continue;
      rw_stages_add_reason (reasons, id, question->no_stops ? RW_GATE_STOP : RW_GATE_WARN, NULL, answer->n,
                            g_strdup (question->no));
    }
}

static void
add_isolation (const RwStagesBook *book,
               GArray             *reasons)
{
  const GArray *questions = rw_stage_words_get (book->words, RW_STAGE_LOOK)->questions;

  add_answers (book, RW_STAGE_LOOK, "look-no", TRUE, reasons);
  for (guint i = 0; i < questions->len; i++)
    if (g_array_index (questions, RwStageQuestion, i).no_stops
        && rw_stages_book_find_answer (book, g_array_index (questions, RwStageQuestion, i).id) == NULL)
      {
        rw_stages_add_reason (reasons, "not-isolated", RW_GATE_WARN, NULL, 0,
                              g_strdup (_ ("Nobody said that earth and covers were looked at with the plug out. See to "
                                           "both before any power.")));
        return;
      }
}

/* --- stage by stage ----------------------------------------------------------------------------- */

static void
judge_look (const RwStagesBook *book,
            GArray             *reasons)
{
  add_power_to_be_off (book, reasons);
}

static void
add_bare_ripple (const RwStagesBook *book,
                 GArray             *reasons)
{
  const RwRail *reference = rw_profile_get_reference (book->profile);
  const RwStageRead *read = rw_stages_book_fresh (book, reference->id, RW_PLACE_TERMINALS, RW_KIND_RIPPLE, TRUE);

  if (read == NULL || isinf (reference->ripple_limit)
      || rw_verdict_judge (read->reading.value, read->u, -INFINITY, reference->ripple_limit) == RW_VERDICT_INSIDE)
    return;

  g_autofree char *value = rw_stages_dup_value (read);
  g_autofree char *limit = rw_quantity_format (reference->ripple_limit, 0.001, RW_KIND_RIPPLE);

  rw_stages_add_reason (reasons, "bare-ripple", RW_GATE_WARN, reference, read->n,
                        /* Translators: rail, value, limit. */
                        g_strdup_printf (_ ("%s has %s of ripple without the board, not surely below %s: the filtering may "
                                            "be tired."),
                                         reference->label, value, limit));
}

static void
add_board_to_be_out (const RwStagesBook *book,
                     GArray             *reasons)
{
  if (book->setup.board_fitted == RW_SAID_YES)
    rw_stages_add_reason (reasons, "board-in", RW_GATE_STOP, NULL, book->setup_n,
                          g_strdup (_ ("The board is still fitted: power off and unplug it first.")));
  else if (book->setup.board_fitted == RW_SAID_NOT)
    rw_stages_add_reason (reasons, "board-unsaid", RW_GATE_WARN, NULL, 0,
                          g_strdup (_ ("Nobody said that the board is out. Unplug it with the power off, and say so "
                                       "before you read.")));
}

/* What was read so far stops here already, and what was not is no reason yet. */
static void
judge_bare_supply (const RwStagesBook *book,
                   GArray             *reasons)
{
  add_isolation (book, reasons);
  add_board_to_be_out (book, reasons);
  rw_stages_add_power (book, reasons);
  rw_stages_add_bare (book, TRUE, reasons);
  add_bare_ripple (book, reasons);
}

static void
judge_fit_board (const RwStagesBook *book,
                 GArray             *reasons)
{
  const RwStageAnswer *own = rw_stages_book_find_answer (book, "stage-own-board");

  add_power_to_be_off (book, reasons);
  add_plugged_live (book, reasons);
  rw_stages_add_bare (book, FALSE, reasons);
  add_bare_ripple (book, reasons);
  if (own != NULL && !own->yes)
    rw_stages_add_donor (book, reasons);
}

/* What the readings without the board showed stops here as well, for those who came by another way; what nobody
 * read is said once. */
static void
judge_first_power (const RwStagesBook *book,
                   GArray             *reasons)
{
  g_autoptr (GArray) all = g_array_new (FALSE, FALSE, sizeof (RwGateReason));

  g_array_set_clear_func (all, (GDestroyNotify) rw_gate_reason_clear);
  add_board_to_be_in (book, reasons);
  add_answers (book, RW_STAGE_FIT_BOARD, "answer-no", TRUE, reasons);
  add_plugged_live (book, reasons);
  rw_stages_add_power (book, reasons);

  const guint between = reasons->len;

  rw_stages_add_bare (book, TRUE, reasons);
  rw_stages_add_bare (book, FALSE, all);
  if (all->len > reasons->len - between)
    rw_stages_add_reason (reasons, "supply-unproven", RW_GATE_WARN, NULL, 0,
                          g_strdup (_ ("Not every rail was read without the board: watch the meter, a finger on the "
                                       "switch.")));
}

static void
judge_under_load (const RwStagesBook *book,
                  GArray             *reasons)
{
  add_board_to_be_in (book, reasons);
  add_power_to_be_on (book, reasons);
  add_plugged_live (book, reasons);
  rw_stages_add_power (book, reasons);
}

static void
judge_trim (const RwStagesBook *book,
            GArray             *reasons)
{
  rw_stages_add_power (book, reasons);
  rw_stages_add_trim (book, reasons);
  rw_stages_add_no_load (book, reasons);
}

static void
judge_recheck (const RwStagesBook *book,
               GArray             *reasons)
{
  add_board_to_be_in (book, reasons);
  rw_stages_add_power (book, reasons);
  rw_stages_add_no_load (book, reasons);
  rw_stages_add_limits (book, RW_GATE_STOP, reasons);
}

static void
add_warm_start (const RwStagesBook *book,
                GArray             *reasons)
{
  const double on = book->entered_t[RW_STAGE_WARM_UP] - book->power_on;

  if (book->entered[RW_STAGE_WARM_UP] == 0 || !(on > cold_seconds))
    return;

  g_autofree char *age = rw_quantity_format_age (on);

  rw_stages_add_reason (reasons, "warm-not-cold", RW_GATE_WARN, NULL, book->entered[RW_STAGE_WARM_UP],
                        /* Translators: how long, with its unit. */
                        g_strdup_printf (_ ("The power had been on for %s when the warm-up began: its first minutes were "
                                            "not watched. For all of it switch off, let it cool, and begin again."),
                                         age));
}

static void
judge_warm_up (const RwStagesBook *book,
               GArray             *reasons)
{
  judge_under_load (book, reasons);
  rw_stages_add_recheck (book, reasons);
  rw_stages_add_limits (book, RW_GATE_WARN, reasons);
  add_warm_start (book, reasons);
}

static void
judge_exercise (const RwStagesBook *book,
                GArray             *reasons)
{
  add_board_to_be_in (book, reasons);
  rw_stages_add_power (book, reasons);
  rw_stages_add_recheck (book, reasons);
  rw_stages_add_limits (book, RW_GATE_WARN, reasons);
  add_answers (book, RW_STAGE_WARM_UP, "answer-no", TRUE, reasons);
}

/* One reason for each complaint, so that what was gone past covers those known by then alone. */
static void
add_symptoms (const RwStagesBook *book,
              GArray             *reasons)
{
  for (guint i = 0; i < book->symptoms->len; i++)
    {
      const RwStageSymptom *symptom = &g_array_index (book->symptoms, RwStageSymptom, i);
      const char *title = book->name != NULL ? book->name (symptom->id, book->name_data) : symptom->id;

      rw_stages_add_reason (reasons, "symptom-there", RW_GATE_STOP, NULL, symptom->n,
                            /* Translators: title of a symptom. */
                            g_strdup_printf (_ ("The complaint is still there: “%s”. Find what is left of it, or say that "
                                                "it is cured, before the job is closed."),
                                             title));
    }
}

static void
judge_close (const RwStagesBook *book,
             GArray             *reasons)
{
  rw_stages_add_power (book, reasons);
  rw_stages_add_recheck (book, reasons);
  rw_stages_add_unread (book, reasons);
  rw_stages_add_limits (book, RW_GATE_STOP, reasons);
  add_answers (book, RW_STAGE_LOOK, "look-no", TRUE, reasons);
  add_answers (book, RW_STAGE_WARM_UP, "fault-there", FALSE, reasons);
  add_answers (book, RW_STAGE_EXERCISE, "fault-there", FALSE, reasons);
  add_symptoms (book, reasons);
}

typedef void (*Judge) (const RwStagesBook *book,
                       GArray             *reasons);

static const Judge judges[RW_N_STAGES] = { judge_look, judge_bare_supply, judge_fit_board, judge_first_power,
                                           judge_under_load, judge_trim, judge_recheck, judge_warm_up,
                                           judge_exercise, judge_close };

void
rw_stages_add_all (const RwStagesBook *self,
                   RwStage             stage,
                   GArray             *reasons)
{
  judges[stage](self, reasons);
  add_answers (self, stage, "answer-no", FALSE, reasons);
}
