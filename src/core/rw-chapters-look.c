/* rw-chapters-look.c: the moments of a session, and what the bench state tells of its chapters.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One bench state goes on through the session (rw-bench-walk.h), and warnings are looked for after every landmark that
 * can change it. A warning comes up where a state has one of an id and a rail that the state before did not have.
 */
#include "config.h"

#include "rw-chapters-private.h"

#include "rw-bench-walk.h"
#include "rw-stage-words.h"

typedef struct
{
  const char *id;   /* interned */
  const char *rail; /* interned; NULL: the event it is about is no reading */
} Warned;

typedef struct
{
  RwChapters   *chapters;
  RwBenchWalk  *walk;     /* at the present landmark */
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
  RwSession *part = rw_bench_walk_get_part (looker->walk);
  const int index = rw_session_find (part, warning->n);
  const RwEvent *event = index >= 0 ? rw_session_get_event (part, (guint) index) : NULL;

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
  const RwBenchState *state = rw_bench_walk_get_state (looker->walk);

  for (guint i = 0; i < rw_bench_state_get_n_warnings (state); i++)
    {
      const Warned one = make_warned (looker, rw_bench_state_get_warning (state, i));
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
  const RwBenchState *state = rw_bench_walk_get_state (looker->walk);
  GArray *verdicts = list_verdicts (state);
  RwProfile *profile = rw_bench_state_get_profile (state);

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
take_landmark (Looker        *looker,
               const RwEvent *event,
               guint          index)
{
  if (changes_state (event))
    {
      rw_bench_walk_look (looker->walk);
      take_warnings (looker, event, index);
    }
}

/* The landmark at @index is the next one: it may head a chapter. */
static void
turn_page (Looker *looker,
           guint   index)
{
  const RwChapter *next = rw_chapters_get (looker->chapters, looker->chapter + 1);

  if (next == NULL || index < next->index)
    return;
  note_verdicts (looker);
  looker->chapter++;
}

void
rw_chapters_look_at_states (RwChapters *self,
                            RwSession  *session)
{
  g_autoptr (RwBenchWalk) walk = rw_bench_walk_new (session);
  Looker looker = { .chapters = self, .walk = walk };

  looker.warned = g_array_new (FALSE, FALSE, sizeof (Warned));
  looker.verdicts = list_verdicts (rw_bench_walk_get_state (walk));
  for (guint i = 0; i < rw_session_get_n_landmarks (session); i++)
    {
      guint index = rw_session_get_landmark (session, i);

      turn_page (&looker, index);
      rw_bench_walk_step (walk, &index);
      take_landmark (&looker, rw_session_get_event (session, index), index);
    }
  note_verdicts (&looker);
  g_array_unref (looker.warned);
  g_array_unref (looker.verdicts);
}
