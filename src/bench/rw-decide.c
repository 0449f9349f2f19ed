/* rw-decide.c: a replay stops at each decision and asks.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   off ⇄ waiting ──the clock passes a decision──► asked ──choose──► answered ──go on──► waiting
 *                                                    └──somebody moves the replay──► waiting
 *
 * The clock of a replay moves in strides; the stride that passes a decision is taken back to it.
 */
#include "config.h"

#include "rw-decide.h"

struct _RwDecide
{
  GObject           parent_instance;
  RwReplay         *replay;
  RwKnowledge      *knowledge;
  RwSession        *part;     /* of the source: what has happened before a decision */
  RwDecideQuestion *question; /* (nullable) */
  RwDecideScore     score;
  gboolean          on;
  gboolean          moving;   /* by ourselves */
  gboolean          played;   /* the replay was playing when it moved last */
  guint             at;       /* events of the target then */
  gint64            asked;    /* events at the decision asked last; −1: none */
};

static guint changed_signal;

G_DEFINE_FINAL_TYPE (RwDecide, rw_decide, G_TYPE_OBJECT)

static void
rw_decide_finalize (GObject *object)
{
  RwDecide *self = RW_DECIDE (object);

  g_signal_handlers_disconnect_by_data (self->replay, self);
  g_clear_object (&self->replay);
  g_clear_object (&self->part);
  g_clear_pointer (&self->knowledge, rw_knowledge_unref);
  g_clear_pointer (&self->question, rw_decide_question_free);
  G_OBJECT_CLASS (rw_decide_parent_class)->finalize (object);
}

static void
rw_decide_class_init (RwDecideClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rw_decide_finalize;
  changed_signal = g_signal_new ("changed", RW_TYPE_DECIDE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
rw_decide_init (RwDecide *self)
{
  self->asked = -1;
}

static void
drop_question (RwDecide *self)
{
  if (self->question == NULL)
    return;
  g_clear_pointer (&self->question, rw_decide_question_free);
  g_signal_emit (self, changed_signal, 0);
}

static RwDecideQuestion *
question_at (RwDecide       *self,
             const RwMoment *moment)
{
  RwSession *source = rw_replay_get_source (self->replay);

  rw_session_rewind (self->part, moment->n_events);
  rw_session_advance (self->part, moment->n_events);

  RwDecideQuestion *question
      = rw_decide_question_new (self->knowledge, self->part, rw_session_get_event (source, moment->index));

  if (question != NULL)
    question->t = moment->t;
  return question;
}

/* The first decision with @from … @to events before it that can be asked. (transfer full) (nullable) */
static RwDecideQuestion *
find_question (RwDecide *self,
               gint64    from,
               gint64    to)
{
  RwChapters *chapters = rw_replay_get_chapters (self->replay);
  const guint n = rw_chapters_get_n_moments (chapters, RW_MOMENT_DECISION);

  for (guint i = 0; i < n; i++)
    {
      const RwMoment *moment = rw_chapters_get_moment (chapters, RW_MOMENT_DECISION, i);

      if ((gint64) moment->n_events < from)
        continue;
      if ((gint64) moment->n_events > to)
        break;

      RwDecideQuestion *question = question_at (self, moment);

      if (question != NULL)
        return question;
    }
  return NULL;
}

/* Takes @question. */
static void
ask (RwDecide         *self,
     RwDecideQuestion *question)
{
  self->question = question;
  self->asked = question->n_events;
  self->at = question->n_events;
  self->played = FALSE;
  self->moving = TRUE;
  rw_replay_set_playing (self->replay, FALSE);
  rw_replay_go_to (self->replay, question->n_events, question->t);
  self->moving = FALSE;
  g_signal_emit (self, changed_signal, 0);
}

static void
moved_cb (RwDecide *self)
{
  if (self->moving)
    return;

  const guint before = self->at, now = rw_session_get_n_events (rw_replay_get_target (self->replay));
  const gboolean playing = rw_replay_get_playing (self->replay);
  const gboolean clock = playing || self->played;

  self->at = now;
  self->played = playing;
  if (now < before)
    self->asked = -1; /* what was asked comes again */
  if (self->question != NULL && (playing || now != self->question->n_events))
    drop_question (self);
  if (!self->on || self->question != NULL || !clock || now < before || rw_replay_get_chapters (self->replay) == NULL)
    return;

  RwDecideQuestion *question = find_question (self, MAX ((gint64) before, self->asked + 1), now);

  if (question != NULL)
    ask (self, question);
}

RwDecide *
rw_decide_new (RwReplay    *replay,
               RwKnowledge *knowledge)
{
  g_return_val_if_fail (RW_IS_REPLAY (replay) && knowledge != NULL, NULL);

  RwDecide *self = g_object_new (RW_TYPE_DECIDE, NULL);

  self->replay = g_object_ref (replay);
  self->knowledge = rw_knowledge_ref (knowledge);
  self->part = rw_session_new_part (rw_replay_get_source (replay));
  self->at = rw_session_get_n_events (rw_replay_get_target (replay));
  g_signal_connect_swapped (replay, "moved", G_CALLBACK (moved_cb), self);
  return self;
}

void
rw_decide_set_on (RwDecide *self,
                  gboolean  on)
{
  g_return_if_fail (RW_IS_DECIDE (self));
  if (self->on == on)
    return;
  self->on = on;
  g_clear_pointer (&self->question, rw_decide_question_free);
  self->asked = -1;
  g_signal_emit (self, changed_signal, 0);
}

gboolean
rw_decide_get_on (RwDecide *self)
{
  g_return_val_if_fail (RW_IS_DECIDE (self), FALSE);
  return self->on;
}

const RwDecideQuestion *
rw_decide_get_question (RwDecide *self)
{
  g_return_val_if_fail (RW_IS_DECIDE (self), NULL);
  return self->question;
}

const RwDecideScore *
rw_decide_get_score (RwDecide *self)
{
  g_return_val_if_fail (RW_IS_DECIDE (self), NULL);
  return &self->score;
}

void
rw_decide_choose (RwDecide *self,
                  guint     i)
{
  g_return_if_fail (RW_IS_DECIDE (self));
  if (self->question == NULL || self->question->chosen >= 0 || i >= rw_decide_question_get_n (self->question))
    return;
  self->question->chosen = (int) i;
  rw_decide_score_add (&self->score, self->question);
  g_signal_emit (self, changed_signal, 0);
}

void
rw_decide_go_on (RwDecide *self)
{
  g_return_if_fail (RW_IS_DECIDE (self));
  drop_question (self);
  rw_replay_set_playing (self->replay, TRUE);
}
