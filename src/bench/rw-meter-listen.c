/* rw-meter-listen.c: meters of the book and a job: which of them it listens to.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-meter-listen.h"

#include <glib/gi18n-lib.h>

#include "rw-meter-books.h"

static const char in_use[] = "meters-in-use";

/* Events that are looked at for a meter's newest sample: with eight meters at ten values a second, a second's. */
static const guint far_back = 80;

/* Adds the id to those in use, or takes it out. */
static void
remember (GSettings  *settings,
          const char *id,
          gboolean    used)
{
  if (settings == NULL)
    return;

  g_auto (GStrv) old = g_settings_get_strv (settings, in_use);
  g_autoptr (GStrvBuilder) ids = g_strv_builder_new ();

  for (guint i = 0; old[i] != NULL; i++)
    if (!g_str_equal (old[i], id))
      g_strv_builder_add (ids, old[i]);
  if (used)
    g_strv_builder_add (ids, id);

  g_auto (GStrv) new = g_strv_builder_end (ids);

  g_settings_set_strv (settings, in_use, (const char *const *) new);
}

static gboolean
plug (RwJob              *job,
      const RwKnownMeter *meter,
      GError            **error)
{
  RwDecoder *decoder = rw_known_meter_make_decoder (meter, error);
  RwPlace place;
  g_autofree char *rail = rw_meter_stay_from_text (meter->rail, &place);

  if (decoder == NULL)
    return FALSE;
  /* Another supply may not have that rail. */
  if (rail != NULL && rw_profile_find_rail (rw_job_get_profile (job), rail) == NULL)
    g_clear_pointer (&rail, g_free);
  rw_job_plug (job, meter->facts, rw_meter_address_link (meter->address, decoder), rail, place);
  return TRUE;
}

gboolean
rw_meter_listen (RwJob              *job,
                 const RwKnownMeter *meter,
                 GSettings          *settings,
                 GError            **error)
{
  if (meter->address == NULL)
    {
      g_set_error (error, RW_DECODER_ERROR, RW_DECODER_ERROR_OPTION,
                   _ ("“%s” is read by eye: it has no port to listen to."), meter->facts->name);
      return FALSE;
    }
  if (!plug (job, meter, error))
    return FALSE;
  remember (settings, meter->facts->id, TRUE);
  return TRUE;
}

void
rw_meter_let_go (RwJob      *job,
                 const char *id,
                 GSettings  *settings)
{
  rw_job_unplug (job, id);
  remember (settings, id, FALSE);
}

void
rw_meter_resume (RwJob     *job,
                 GSettings *settings)
{
  if (settings == NULL || rw_job_get_mode (job) != RW_JOB_BENCH || !rw_job_can_write (job))
    return;

  g_auto (GStrv) ids = g_settings_get_strv (settings, in_use);

  for (guint i = 0; ids[i] != NULL; i++)
    {
      const RwKnownMeter *meter = rw_meter_book_find (rw_meter_books_get_default (), ids[i]);
      g_autoptr (GError) error = NULL;

      if (meter != NULL && meter->address != NULL && !plug (job, meter, &error))
        g_message ("%s: %s", meter->facts->name, error->message);
    }
}

gboolean
rw_meter_is_listened_to (RwJob          *job,
                         const char     *id,
                         RwJobMeterInfo *out)
{
  RwJobMeterInfo info;

  for (guint i = 0; rw_job_get_meter (job, i, &info); i++)
    if (g_strcmp0 (info.id, id) == 0)
      {
        *out = info;
        return TRUE;
      }
  return FALSE;
}

static gboolean
take_live (const RwLive *live,
           const char   *id,
           RwReading    *out)
{
  if (live == NULL || !live->has_value || g_strcmp0 (live->meter, id) != 0)
    return FALSE;
  *out = live->sample;
  return TRUE;
}

/* Of several meters on one rail the job's live value is the newest one's; the session has them all. */
static gboolean
take_sample (RwSession  *session,
             const char *id,
             RwReading  *out)
{
  const guint n = rw_session_get_n_events (session);

  for (guint i = n; i-- > 0 && i + far_back >= n;)
    {
      const RwEvent *event = rw_session_get_event (session, i);

      if (event->type != RW_EVENT_SAMPLE || g_strcmp0 (event->reading.meter, id) != 0)
        continue;
      *out = event->reading;
      return TRUE;
    }
  return FALSE;
}

gboolean
rw_meter_find_newest (RwJob      *job,
                      const char *id,
                      RwReading  *out)
{
  RwJobMeterInfo info;

  if (!rw_meter_is_listened_to (job, id, &info) || info.state != RW_LINK_READING)
    return FALSE;
  return take_live (rw_job_find_live (job, info.rail != NULL ? info.rail : RW_LIVE_SOMEWHERE), id, out)
         || take_live (rw_job_get_live (job), id, out) || take_sample (rw_job_get_session (job), id, out);
}

void
rw_meter_tell_facts (RwJob              *job,
                     const RwMeterFacts *facts)
{
  RwSession *session = rw_job_get_session (job);
  const RwMeterFacts *known = rw_session_find_meter (session, facts->id);

  if (rw_job_get_mode (job) != RW_JOB_BENCH || known == NULL || !rw_job_can_write (job))
    return;
  if (known->percent == facts->percent && known->counts == facts->counts && known->ac == facts->ac
      && g_strcmp0 (known->name, facts->name) == 0)
    return;

  RwEvent event = rw_event_make_meter (0, facts);

  rw_job_add (job, &event);
}
