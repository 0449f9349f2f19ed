/* rw-live-target.c: where the rail that a job's meter is on should stand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-live-target.h"

gboolean
rw_live_target (RwJob    *job,
                RwTarget *out,
                double   *age)
{
  const RwLive *live = rw_job_get_live (job);

  if (!live->has_value)
    return FALSE;

  RwTrimLive others;
  const RwTrimSet *set = rw_job_get_trim_live (job, &others);

  rw_target_init (out, rw_job_get_state (job), &live->sample,
                  rw_session_find_meter (rw_job_get_session (job), live->sample.meter), set,
                  set != NULL ? &others : NULL);
  if (set != NULL)
    rw_trim_live_clear (&others);
  if (age != NULL)
    *age = MAX (0, rw_job_get_now (job) - live->t);
  return TRUE;
}
