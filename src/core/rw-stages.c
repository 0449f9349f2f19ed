/* rw-stages.c: the bring-up computed from the events: stages, their gates, what was gone past, what is unproven.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The events are folded once, in order, into a book (rw-stages-book.c); a stage is judged from it when the stage is left,
 * when somebody goes on against advice, and at the end. Ids of reasons, and where each is found:
 *   here:   hazard-unread (hard)
 *   judge:  answer-no, look-no, not-isolated, board-in, board-out, power-on, power-unsaid, power-off, plugged-live,
 *           board-unsaid, supply-unproven, bare-ripple, warm-not-cold, fault-there, symptom-there
 *   bare:   bare-unread, bare-stale, bare-over, bare-sign, bare-missing, bare-never-above, bare-beyond, bare-close,
 *           donor-unproven
 *   power:  off-now, off-close, never-above, never-close, sign, guard-missing, guard-close
 *   trim:   trim-before-load, load-unread, wiring-not-trim, wiring-close, drop-unread, drop-beyond, drop-close,
 *           trim-no-load, recheck-due, rail-outside, rail-close, board-unread
 *
 * Going on against advice covers the reasons that stand at that moment, each by its id, its rail and the event that shows
 * it: a worse reading afterwards is a reason of its own, and stops again.
 */
#include "config.h"

#include "rw-stages-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"
#include "rw-warm-up.h"

/* --- reasons ------------------------------------------------------------------------------------ */

void
rw_gate_reason_clear (RwGateReason *self)
{
  g_clear_pointer (&self->text, g_free);
}

RwGateReason *
rw_stages_add_reason (GArray       *reasons,
                      const char   *id,
                      RwGate        gate,
                      const RwRail *rail,
                      guint         n,
                      char         *text)
{
  const RwGateReason reason = { .id = id, .gate = gate, .rail = rail, .n = n, .text = text };

  g_array_append_val (reasons, reason);
  return &g_array_index (reasons, RwGateReason, reasons->len - 1);
}

char *
rw_stages_dup_value (const RwStageRead *read)
{
  return rw_quantity_format (read->reading.over ? (double) NAN : read->reading.value, read->reading.step,
                             read->reading.kind);
}

char *
rw_stages_dup_volts (double volts)
{
  return rw_quantity_format (volts, 0.01, RW_KIND_DC);
}

static char *
dup_key (const RwGateReason *reason)
{
  return g_strdup_printf ("%s/%s/%u", reason->id, reason->rail != NULL ? reason->rail->id : "", reason->n);
}

static int
get_rank (const RwGateReason *reason)
{
  return reason->covered ? 4 : reason->off ? 0 : reason->hard ? 1 : reason->gate == RW_GATE_STOP ? 2 : 3;
}

/* The gravest first; those alike as they were found. */
static void
sort_reasons (GArray *reasons)
{
  g_autoptr (GArray) sorted = g_array_new (FALSE, FALSE, sizeof (RwGateReason));

  for (int rank = 0; rank <= 4; rank++)
    for (guint i = 0; i < reasons->len; i++)
      if (get_rank (&g_array_index (reasons, RwGateReason, i)) == rank)
        g_array_append_val (sorted, g_array_index (reasons, RwGateReason, i));
  for (guint i = 0; i < reasons->len; i++)
    g_array_index (reasons, RwGateReason, i) = g_array_index (sorted, RwGateReason, i);
}

/* --- one stage ---------------------------------------------------------------------------------- */

static void
clear_state (RwStageState *state)
{
  g_clear_pointer (&state->reasons, g_array_unref);
  g_clear_pointer (&state->spots, g_array_unref);
  g_clear_pointer (&state->questions, g_array_unref);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (RwStageState, clear_state)

static void
find_reasons (const RwStagesBook *book,
              RwStageState       *state)
{
  if (!state->hazard_read)
    rw_stages_add_reason (state->reasons, "hazard-unread", RW_GATE_STOP, NULL, 0,
                          g_strdup (_ ("Read what can hurt here before the first step.")))
        ->hard = TRUE;
  rw_stages_add_all (book, state->stage, state->reasons);
}

/* All but the status. Clear *state when done. */
static void
judge_stage (const RwStagesBook *book,
             RwStage             stage,
             RwStageState       *state)
{
  *state = (RwStageState){ .stage = stage, .words = rw_stage_words_get (book->words, stage) };
  state->reasons = g_array_new (FALSE, FALSE, sizeof (RwGateReason));
  g_array_set_clear_func (state->reasons, (GDestroyNotify) rw_gate_reason_clear);
  state->spots = g_array_new (FALSE, FALSE, sizeof (RwAsked));
  state->questions = g_array_new (FALSE, FALSE, sizeof (RwQuestioned));
  state->hazard_read = state->words->caution == NULL || book->hazard_read[stage];
  state->entered = book->entered[stage];
  rw_stages_ask (book, state);
  find_reasons (book, state);
  for (guint i = 0; i < state->reasons->len; i++)
    {
      RwGateReason *reason = &g_array_index (state->reasons, RwGateReason, i);
      g_autofree char *key = dup_key (reason);

      reason->covered = !reason->hard && g_hash_table_contains (book->covered, key);
      if (!reason->covered)
        state->gate = MAX (state->gate, reason->gate);
    }
  sort_reasons (state->reasons);
}

/* --- stage events ------------------------------------------------------------------------------- */

static void
leave (RwStagesBook *book)
{
  g_auto (RwStageState) state = { 0 };

  if (book->current < 0)
    return;
  judge_stage (book, (RwStage) book->current, &state);
  book->left_done[book->current] = state.complete && state.gate != RW_GATE_STOP;
}

static void
enter (RwStagesBook  *book,
       RwStage        stage,
       const RwEvent *event)
{
  leave (book);
  if (book->entered[stage] != 0)
    rw_stages_book_forget (book, stage);
  book->entered[stage] = event->n;
  book->entered_t[stage] = event->t;
  book->left_done[stage] = FALSE;
  book->current = (int) stage;
  book->furthest = MAX (book->furthest, (int) stage);
}

/* What stands against going on at this moment is covered, and kept with the person's reason. */
static void
go_against (RwStagesBook  *book,
            RwStage        stage,
            const RwEvent *event)
{
  g_auto (RwStageState) state = { 0 };
  g_autoptr (GString) advice = g_string_new (NULL);

  judge_stage (book, stage, &state);
  for (guint i = 0; i < state.reasons->len; i++)
    {
      const RwGateReason *reason = &g_array_index (state.reasons, RwGateReason, i);

      if (reason->hard || reason->covered)
        continue;
      g_hash_table_add (book->covered, dup_key (reason));
      if (reason->gate == RW_GATE_STOP)
        g_string_append_printf (advice, "%s%s", advice->len > 0 ? " " : "", reason->text);
    }

  const RwAgainst against = { stage, event->n, event->t, g_strdup (event->stage.against),
                              g_string_free (g_steal_pointer (&advice), FALSE) };

  g_array_append_val (book->against, against);
}

/* A reason of spaces is none. */
static gboolean
is_reason (const char *why)
{
  g_autofree char *text = g_strdup (why != NULL ? why : "");

  return *g_strstrip (text) != '\0';
}

static void
take_stage (RwStagesBook  *book,
            const RwEvent *event)
{
  RwStage stage;

  if (!rw_stage_from_id (event->stage.id, &stage))
    return;
  if (book->current != (int) stage)
    enter (book, stage, event);
  book->hazard_read[stage] = book->hazard_read[stage] || event->stage.read;
  if (is_reason (event->stage.against))
    go_against (book, stage, event);
}

/* --- the whole ---------------------------------------------------------------------------------- */

static RwStageStatus
get_status (const RwStagesBook *book,
            const RwStageState *state)
{
  const int stage = (int) state->stage;

  if (stage == book->current)
    return state->gate == RW_GATE_STOP ? RW_STAGE_BLOCKED : RW_STAGE_CURRENT;
  if (book->entered[stage] != 0)
    return book->left_done[stage] ? RW_STAGE_DONE : RW_STAGE_LEFT;
  if (stage > book->furthest)
    return RW_STAGE_AHEAD;
  return state->complete && state->spots->len > 0 ? RW_STAGE_DONE : RW_STAGE_SKIPPED;
}

static char *
describe_left (const RwStageState *state)
{
  g_autoptr (GString) open = g_string_new (NULL);

  for (guint i = 0; i < state->spots->len; i++)
    {
      const RwAsked *asked = &g_array_index (state->spots, RwAsked, i);
      g_autofree char *spot = rw_asked_describe (asked);

      if (asked->state != RW_ASKED_READ)
        g_string_append_printf (open, "%s%s", open->len > 0 ? "; " : "", spot);
    }
  /* Translators: title of a stage, what was not measured, with semicolons between. */
  return open->len > 0 ? g_strdup_printf (_ ("%s, not read: %s."), state->words->title, open->str)
                       /* Translators: title of a stage. */
                       : g_strdup_printf (_ ("%s: begun, and not brought to its end."), state->words->title);
}

static void
clear_unproven (gpointer data)
{
  g_clear_pointer (&((RwUnproven *) data)->text, g_free);
}

/* Where the trim was never turned there is nothing to read again. */
static void
list_unproven (RwStages           *self,
               const RwStagesBook *book)
{
  for (guint i = 0; i < RW_N_STAGES; i++)
    {
      const RwStageState *state = &self->stages[i];
      const gboolean skipped = state->status == RW_STAGE_SKIPPED;
      RwUnproven unproven = { state->stage, NULL };

      if ((!skipped && state->status != RW_STAGE_LEFT) || (i == RW_STAGE_RECHECK && book->turned == 0))
        continue;
      unproven.text = skipped ? g_strdup (state->words->unproven) : describe_left (state);
      g_array_append_val (self->unproven, unproven);
    }
}

static double
find_next_due (const RwStages *self)
{
  const GArray *spots = self->stages[RW_STAGE_WARM_UP].spots;

  for (guint i = 0; i < spots->len; i++)
    {
      const RwAsked *asked = &g_array_index (spots, RwAsked, i);

      if (asked->state == RW_ASKED_LATER)
        return self->warm_from + 60 * rw_warm_up_find_minute (asked->minutes)->from;
    }
  return NAN;
}

static void
take_all (RwStagesBook *book,
          RwSession    *session)
{
  for (guint i = 0; i < rw_session_get_n_landmarks (session); i++)
    {
      const guint index = rw_session_get_landmark (session, i);
      const RwEvent *event = rw_session_get_event (session, index);

      if (!rw_session_is_live (session, index))
        continue;
      book->now = event->t;
      if (event->type == RW_EVENT_STAGE)
        take_stage (book, event);
      else
        rw_stages_book_take (book, session, event);
    }
}

RwStages *
rw_stages_new (RwSession    *session,
               RwStageWords *words,
               double        now)
{
  return rw_stages_new_named (session, words, now, NULL, NULL);
}

RwStages *
rw_stages_new_named (RwSession         *session,
                     RwStageWords      *words,
                     double             now,
                     RwSymptomNameFunc  name,
                     gpointer           name_data)
{
  RwStages *self = g_atomic_rc_box_new0 (RwStages);
  RwStagesBook book;

  self->profile = rw_profile_ref (rw_session_get_profile (session));
  self->words = rw_stage_words_ref (words);
  self->unproven = g_array_new (FALSE, FALSE, sizeof (RwUnproven));
  g_array_set_clear_func (self->unproven, clear_unproven);
  rw_stages_book_init (&book, self->profile, words);
  book.name = name;
  book.name_data = name_data;
  take_all (&book, session);
  book.now = now > rw_session_get_end (session) ? now : rw_session_get_end (session);
  for (guint i = 0; i < RW_N_STAGES; i++)
    {
      judge_stage (&book, (RwStage) i, &self->stages[i]);
      self->stages[i].status = get_status (&book, &self->stages[i]);
    }
  self->current = book.current;
  self->against = g_array_ref (book.against);
  self->warm_from = book.setup.power_on == RW_SAID_NO ? (double) NAN : rw_stages_warm_from (&book);
  self->next_due = find_next_due (self);
  self->donor = g_array_new (FALSE, FALSE, sizeof (RwGateReason));
  g_array_set_clear_func (self->donor, (GDestroyNotify) rw_gate_reason_clear);
  rw_stages_add_donor (&book, self->donor);
  list_unproven (self, &book);
  rw_stages_book_clear (&book);
  return self;
}

static void
clear_stages (gpointer data)
{
  RwStages *self = data;

  for (guint i = 0; i < RW_N_STAGES; i++)
    clear_state (&self->stages[i]);
  g_clear_pointer (&self->against, g_array_unref);
  g_clear_pointer (&self->unproven, g_array_unref);
  g_clear_pointer (&self->donor, g_array_unref);
  g_clear_pointer (&self->words, rw_stage_words_unref);
  g_clear_pointer (&self->profile, rw_profile_unref);
}

RwStages *
rw_stages_ref (RwStages *self)
{
  return g_atomic_rc_box_acquire (self);
}

void
rw_stages_unref (RwStages *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full (self, clear_stages);
}

/* --- asking ------------------------------------------------------------------------------------- */

const RwGateReason *
rw_stages_get_reason (const RwStages *self,
                      RwStage         stage)
{
  g_return_val_if_fail (stage < RW_N_STAGES, NULL);

  const GArray *reasons = self->stages[stage].reasons;
  const RwGateReason *first = reasons->len > 0 ? &g_array_index (reasons, RwGateReason, 0) : NULL;

  return first != NULL && !first->covered ? first : NULL;
}

const RwGateReason *
rw_stages_get_off (const RwStages *self)
{
  const RwGateReason *reason = rw_stages_get_reason (self, RW_STAGE_FIRST_POWER);

  return reason != NULL && reason->off ? reason : NULL;
}

void
rw_stages_get_next (const RwStages      *self,
                    const RwAsked      **spot,
                    const RwQuestioned **question)
{
  *spot = NULL;
  *question = NULL;
  if (self->current < 0)
    return;

  const RwStageState *state = &self->stages[self->current];

  for (guint i = 0; i < state->spots->len && *spot == NULL; i++)
    {
      const RwAsked *asked = &g_array_index (state->spots, RwAsked, i);

      if (asked->state != RW_ASKED_READ && asked->state != RW_ASKED_LATER && asked->state != RW_ASKED_MISSED)
        *spot = asked;
    }
  for (guint i = 0; i < state->questions->len && *spot == NULL && *question == NULL; i++)
    if (g_array_index (state->questions, RwQuestioned, i).answer == RW_ANSWER_NONE)
      *question = &g_array_index (state->questions, RwQuestioned, i);
}

RwGate
rw_stages_judge_donor (const RwStages *self,
                       char          **text)
{
  const RwGateReason *reason = self->donor->len > 0 ? &g_array_index (self->donor, RwGateReason, 0) : NULL;

  *text = reason != NULL ? g_strdup (reason->text) : NULL;
  return reason != NULL ? reason->gate : RW_GATE_OPEN;
}
