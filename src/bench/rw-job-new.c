/* rw-job-new.c: the four ways to begin a job.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-job-private.h"

#include <glib/gi18n-lib.h>

#include "rw-job-stages.h"

/* @journal: (transfer full) (nullable). Second 0 is as long ago as the session says it started, but never so
 * late that time would run backwards. */
static void
take_session (RwJob     *self,
              RwSession *session,
              RwJournal *journal)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();
  const GTimeSpan since = g_date_time_difference (now, rw_session_get_header (session)->started);
  const gint64 least = (gint64) (rw_session_get_end (session) * G_USEC_PER_SEC);

  self->session = g_object_ref (session);
  self->view = rw_view_new (session);
  self->journal = journal;
  self->clock_zero = g_get_monotonic_time () - MAX (since, least);
  self->outdated = TRUE;
  rw_view_set_rail (self->view, rw_profile_get_reference (rw_session_get_profile (session))->id);
  rw_view_set_place (self->view, RW_PLACE_BOARD);
  rw_job_follow (self);
  rw_job_refresh_advice (self);
}

/* A sentence on what was lost, or NULL. (transfer full) */
static char *
report_damage (const RwJournalRead *read)
{
  if (read->damaged->len == 0 && !read->torn_tail)
    return NULL;

  GString *text = g_string_new (NULL);
  const guint n_damaged = read->damaged->len - (read->stopped != NULL ? 1 : 0); /* the last tells of the limit */

  if (read->stopped != NULL)
    g_string_append (text, read->stopped);
  if (n_damaged > 0)
    {
      const RwDamage *first = &g_array_index (read->damaged, RwDamage, 0);

      g_string_append (text, text->len > 0 ? " " : "");
      g_string_append_printf (text,
                              /* Translators: count of lines, number of the first, what is wrong with it. */
                              ngettext ("%u damaged line was left out (line %u: %s).",
                                        "%u damaged lines were left out (the first is line %u: %s).",
                                        n_damaged),
                              n_damaged, first->line, first->message);
    }
  if (read->torn_tail)
    g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "",
                            _ ("The last line was cut off while it was written and was left out."));
  return g_string_free (text, FALSE);
}

RwJob *
rw_job_new_bench (RwSessionHeader *header,
                  const char      *path,
                  GError         **error)
{
  g_autoptr (RwSession) session = rw_session_new (header);

  return rw_job_new_bench_branch (session, path, error);
}

RwJob *
rw_job_new_bench_branch (RwSession  *session,
                         const char *path,
                         GError    **error)
{
  RwJournal *journal = rw_journal_create (session, path, error);

  if (journal == NULL)
    return NULL;

  RwJob *self = g_object_new (RW_TYPE_JOB, NULL);

  self->mode = RW_JOB_BENCH;
  take_session (self, session, journal);
  return self;
}

RwJob *
rw_job_new_continued (const char *path,
                      char      **report,
                      GError    **error)
{
  g_autoptr (RwJournalRead) read = NULL;
  RwJournal *journal = rw_journal_open (path, &read, error);

  if (journal == NULL)
    return NULL;

  RwJob *self = g_object_new (RW_TYPE_JOB, NULL);

  self->mode = RW_JOB_BENCH;
  take_session (self, read->session, journal);
  *report = report_damage (read);
  return self;
}

/* A stage is called by its title. */
static char *
describe_heading (const RwEvent *event,
                  gpointer       data)
{
  const RwStageWords *words = rw_job_get_stage_words (data, NULL);
  RwStage stage;

  if (event->type == RW_EVENT_STAGE && words != NULL && rw_stage_from_id (event->stage.id, &stage))
    return g_strdup (rw_stage_words_get (words, stage)->title);
  return rw_job_describe (data, event);
}

RwJob *
rw_job_new_replay (const char *path,
                   char      **report,
                   GError    **error)
{
  g_autoptr (RwJournalRead) read = rw_journal_read_file (path, error);

  if (read == NULL)
    return NULL;

  RwJob *self = g_object_new (RW_TYPE_JOB, NULL);

  self->mode = RW_JOB_REPLAY;
  self->path = g_strdup (path);
  self->replay = rw_replay_new (read->session);
  take_session (self, rw_replay_get_target (self->replay), NULL);
  rw_view_set_horizon (self->view, rw_replay_get_length (self->replay));
  rw_replay_seek (self->replay, rw_replay_get_length (self->replay));
  rw_replay_look_for_chapters (self->replay, describe_heading, self);
  *report = report_damage (read);
  return self;
}

/* Its header names the practice meter as the bench meter, with its true specification. */
static RwSessionHeader *
practice_header (RwPracticeCabinet *cabinet,
                 RwPracticeMeter   *meter)
{
  g_autoptr (GPtrArray) meters = g_ptr_array_new ();
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();

  g_ptr_array_add (meters, (gpointer) rw_practice_meter_get_facts (meter));
  return rw_session_header_new (rw_practice_cabinet_get_profile (cabinet),
                                rw_practice_cabinet_get_name (cabinet), _ ("practice"), meters, now);
}

RwJob *
rw_job_new_practice (RwPracticeCabinet *cabinet,
                     const char        *path,
                     GError           **error)
{
  RwPracticeMeter *meter = rw_practice_meter_new (cabinet, RW_JOB_METER, _ ("practice meter"), 0.5, 2, 6000,
                                                  rw_practice_cabinet_get_seed (cabinet));
  g_autoptr (RwSession) session = rw_session_new (practice_header (cabinet, meter));

  return rw_job_new_practice_branch (session, cabinet, meter, path, error);
}

RwJob *
rw_job_new_practice_branch (RwSession         *session,
                            RwPracticeCabinet *cabinet,
                            RwPracticeMeter   *meter,
                            const char        *path,
                            GError           **error)
{
  g_autoptr (RwPracticeMeter) ours = meter;
  RwJournal *journal = rw_journal_create (session, path, error);

  if (journal == NULL)
    return NULL;

  RwJob *self = g_object_new (RW_TYPE_JOB, NULL);

  self->mode = RW_JOB_PRACTICE;
  self->cabinet = g_object_ref (cabinet);
  self->meter = g_steal_pointer (&ours);
  take_session (self, session, journal);
  rw_job_start_practice_meter (self);
  return self;
}
