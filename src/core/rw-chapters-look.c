/* rw-chapters-look.c: the moments of a session, and what the bench state tells of its chapters.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The state is made after every landmark that can change it, of a part of the session whose end moves on. A warning
 * comes up where a state has one of an id and a rail that the state before did not have.
 */
#include "config.h"

#include "rw-chapters-private.h"

#include "rw-bench-state.h"
#include "rw-stage-words.h"

typedef struct
{
  const char *id;   /* interned */
  const char *rail; /* interned; NULL: the event it is about is no reading */
} Warned;

typedef struct
{
  RwChapters   *chapters;
  RwSession    *part;     /* of the session, up to the present landmark */
  RwBenchState *state;    /* as of now */
  GArray       *warned;   /* of Warned: by that state */
  GArray       *verdicts; /* of RwVerdict, one a rail: when the present chapter began */
  guint         chapter;  /* the present one */
} Looker;

static void
add_moment (RwChapters  *self,
            RwMomentKind kind,
            RwMoment     moment)
{
  g_array_append_val (self->moments[kind], moment);
}

/* --- what happens --------------------------------------------------------------------------------- */

/* @last: the last live reading; NULL: none, or something was mended since. */
static gboolean
was_decided (const RwEvent   *event,
             const RwReading *last)
{
  if (event->type == RW_EVENT_FINDING)
    return !g_str_has_prefix (event->finding.check, RW_STAGE_QUESTION_PREFIX);
  return event->type == RW_EVENT_READING && (last == NULL || !rw_reading_same_spot (last, &event->reading));
}

/* @before: where it was decided. */
static void
take_deed (RwChapters    *self,
           const RwEvent *event,
           guint          index,
           RwMoment       before,
           const RwReading **last)
{
  const RwMoment after = { event->t, index + 1, index, NULL };

  if (was_decided (event, *last))
    add_moment (self, RW_MOMENT_DECISION, before);
  if (event->type == RW_EVENT_TRIM && event->trim.moved)
    add_moment (self, RW_MOMENT_TRIM, after);
  if (event->type == RW_EVENT_READING)
    add_moment (self, RW_MOMENT_KEEP, after);
  if (event->type == RW_EVENT_READING || event->type == RW_EVENT_REPAIR)
    *last = event->type == RW_EVENT_READING ? &event->reading : NULL;
}

void
rw_chapters_look_at_deeds (RwChapters *self,
                           RwSession  *session)
{
  const RwReading *last = NULL;
  RwMoment before = { 0 };

  for (guint i = 0; i < rw_session_get_n_landmarks (session); i++)
    {
      const guint index = rw_session_get_landmark (session, i);
      const RwEvent *event = rw_session_get_event (session, index);

      before.index = index;
      if (rw_session_is_live (session, index))
        take_deed (self, event, index, before, &last);
      before = (RwMoment){ event->t, index + 1, 0, NULL };
    }
}

/* --- what the state says -------------------------------------------------------------------------- */

static Warned
make_warned (Looker          *looker,
             const RwWarning *warning)
{
  const int index = rw_session_find (looker->part, warning->n);
  const RwEvent *event = index >= 0 ? rw_session_get_event (looker->part, (guint) index) : NULL;

  return (Warned){ g_intern_string (warning->id),
                   event != NULL && event->type == RW_EVENT_READING ? event->reading.rail : NULL };
}

static gboolean
holds (const GArray *warned,
       const Warned *one)
{
  for (guint i = 0; i < warned->len; i++)
    {
      const Warned *other = &g_array_index (warned, Warned, i);

      if (other->id == one->id && other->rail == one->rail)
        return TRUE;
    }
  return FALSE;
}

static void
take_warnings (Looker        *looker,
               const RwEvent *event,
               guint          index)
{
  g_autoptr (GArray) warned = g_array_new (FALSE, FALSE, sizeof (Warned));
  RwChapter *chapter = &g_array_index (looker->chapters->chapters, RwChapter, looker->chapter);

  for (guint i = 0; i < rw_bench_state_get_n_warnings (looker->state); i++)
    {
      const Warned one = make_warned (looker, rw_bench_state_get_warning (looker->state, i));
      const RwMoment moment = { event->t, index + 1, index, one.id };

      if (!holds (looker->warned, &one) && !holds (warned, &one))
        {
          add_moment (looker->chapters, RW_MOMENT_WARNING, moment);
          chapter->n_warnings++;
        }
      g_array_append_val (warned, one);
    }
  g_array_unref (looker->warned);
  looker->warned = g_steal_pointer (&warned);
}

/* Of every rail of the profile, as its last reading says. (transfer full) */
static GArray *
list_verdicts (const RwBenchState *state)
{
  GArray *verdicts = g_array_new (FALSE, FALSE, sizeof (RwVerdict));
  RwProfile *profile = rw_bench_state_get_profile (state);

  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    {
      const RwSpotState *spot = rw_bench_state_find_rail (state, rw_profile_get_rail (profile, i)->id);
      const RwVerdict verdict = spot != NULL ? spot->verdict : RW_VERDICT_NONE;

      g_array_append_val (verdicts, verdict);
    }
  return verdicts;
}

/* The present chapter is at its end. */
static void
note_verdicts (Looker *looker)
{
  RwChapter *chapter = &g_array_index (looker->chapters->chapters, RwChapter, looker->chapter);
  GArray *verdicts = list_verdicts (looker->state);
  RwProfile *profile = rw_bench_state_get_profile (looker->state);

  for (guint i = 0; i < verdicts->len; i++)
    {
      const RwChapterVerdict change = { g_intern_string (rw_profile_get_rail (profile, i)->id),
                                        g_array_index (looker->verdicts, RwVerdict, i),
                                        g_array_index (verdicts, RwVerdict, i) };

      if (change.before != change.after)
        g_array_append_val (chapter->verdicts, change);
    }
  g_array_unref (looker->verdicts);
  looker->verdicts = verdicts;
}

/* Marks, notes and the like change nothing that is computed. */
static gboolean
changes_state (const RwEvent *event)
{
  return event->type == RW_EVENT_SETUP || event->type == RW_EVENT_READING || event->type == RW_EVENT_TRIM
         || event->type == RW_EVENT_SYMPTOM || event->type == RW_EVENT_FINDING || event->type == RW_EVENT_REPAIR
         || event->type == RW_EVENT_RETRACT || event->type == RW_EVENT_METER;
}

/* --- the walk ------------------------------------------------------------------------------------- */

static void
take_landmark (Looker    *looker,
               RwSession *session,
               guint      index)
{
  const RwEvent *event = rw_session_get_event (session, index);
  const RwChapter *next = rw_chapters_get (looker->chapters, looker->chapter + 1);

  if (next != NULL && index >= next->index)
    {
      note_verdicts (looker);
      looker->chapter++;
    }
  rw_session_advance (looker->part, index + 1);
  if (changes_state (event))
    {
      rw_bench_state_unref (looker->state);
      looker->state = rw_bench_state_new (looker->part);
      take_warnings (looker, event, index);
    }
}

void
rw_chapters_look_at_states (RwChapters *self,
                            RwSession  *session)
{
  g_autoptr (RwSession) part = rw_session_new_part (session);
  Looker looker = { .chapters = self, .part = part };

  looker.state = rw_bench_state_new (part);
  looker.warned = g_array_new (FALSE, FALSE, sizeof (Warned));
  looker.verdicts = list_verdicts (looker.state);
  for (guint i = 0; i < rw_session_get_n_landmarks (session); i++)
    take_landmark (&looker, session, rw_session_get_landmark (session, i));
  note_verdicts (&looker);
  rw_bench_state_unref (looker.state);
  g_array_unref (looker.warned);
  g_array_unref (looker.verdicts);
}
