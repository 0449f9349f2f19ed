/* rw-practice-view-looks.c: what eyes, ears and hands find at a practice cabinet, in words.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The answers are the cabinet's own (rw-practice-look.h), the words those of the knowledge. Which check a look or a
 * wiggle is depends on the part that is selected; what only trained people do is left out.
 */
#include "config.h"

#include "rw-practice-view-looks.h"

#include <glib/gi18n-lib.h>

#include "rw-job-practice.h"
#include "rw-practice-look.h"

#define MOST_CHECKS 6

static const char *const looks[RW_PRACTICE_N_AREAS][MOST_CHECKS] = {
  [RW_PRACTICE_AREA_STRIP] = { "look-and-smell", "trim-seal-look", "supply-heat" },
  [RW_PRACTICE_AREA_SUPPLY] = { "look-and-smell", "supply-heat", "fuse-holder-look", "trim-seal-look" },
  [RW_PRACTICE_AREA_HARNESS] = { "look-and-smell", "connector-temperature" },
  [RW_PRACTICE_AREA_EDGE] = { "edge-connector-look", "connector-temperature" },
  [RW_PRACTICE_AREA_BOARD] = { "look-and-smell", "self-test" },
  [RW_PRACTICE_AREA_SOUND] = { "look-and-smell" },
  [RW_PRACTICE_AREA_CABINET] = { "look-and-smell" },
};

static const char *const wiggles[RW_PRACTICE_N_AREAS][MOST_CHECKS] = {
  [RW_PRACTICE_AREA_STRIP] = { "crimp-tug" },
  [RW_PRACTICE_AREA_HARNESS] = { "wiggle-test", "crimp-tug" },
  [RW_PRACTICE_AREA_EDGE] = { "wiggle-test", "crimp-tug" },
  [RW_PRACTICE_AREA_BOARD] = { "tap-test" },
  [RW_PRACTICE_AREA_SOUND] = { "tap-test" },
};

static const RwOutcome *
ask (RwJob         *job,
     const char    *id,
     const RwCheck **check)
{
  RwKnowledge *knowledge = rw_job_get_knowledge (job);
  const RwCheck *it = knowledge != NULL ? rw_knowledge_find_check (knowledge, id) : NULL;

  if (it == NULL || rw_check_is_reserved (it))
    return NULL;

  const char *outcome = rw_practice_look (rw_job_get_cabinet (job), id);
  const int index = outcome != NULL ? rw_check_find_outcome (it, outcome) : -1;

  *check = it;
  return index >= 0 ? &it->outcomes[index] : NULL;
}

static const char *
nothing_words (RwPracticeTask sense)
{
  return sense == RW_PRACTICE_LOOKING ? _ ("Nothing to be seen there as things are now.")
                                      : _ ("Nothing moves there, or nothing comes of it as things are now.");
}

char *
rw_practice_looks_take (RwJob                *job,
                        const RwPracticeNode *node,
                        RwPracticeTask       sense,
                        guint                *turn,
                        RwPracticeSeen       *seen)
{
  const RwPracticeArea area = node != NULL ? node->area : RW_PRACTICE_AREA_CABINET;
  const char *const *list = sense == RW_PRACTICE_LOOKING ? looks[area] : wiggles[area];

  *seen = (RwPracticeSeen) { 0 };
  for (guint i = 0; i < MOST_CHECKS; i++)
    {
      const char *id = list[(*turn + i) % MOST_CHECKS];
      const RwCheck *check = NULL;
      const RwOutcome *outcome = id != NULL ? ask (job, id, &check) : NULL;

      if (outcome == NULL)
        continue;
      *turn = (*turn + i + 1) % MOST_CHECKS;
      *seen = (RwPracticeSeen) { check->id, outcome->id };
      /* Translators: what was looked at or done; what came of it. */
      return g_strdup_printf (_ ("%s: %s."), check->title, outcome->title);
    }
  return g_strdup (nothing_words (sense));
}

/* --- listening ------------------------------------------------------------------------------------ */

static const char *
hear (RwPracticeCabinet *cabinet)
{
  if (!rw_practice_cabinet_get_power (cabinet))
    return _ ("Silence: it is off.");
  if (rw_practice_cabinet_get_ticking (cabinet))
    return _ ("The supply ticks: it starts, gives up and starts again.");
  if (!rw_practice_cabinet_get_board_fitted (cabinet))
    return _ ("Silence: no board, no sound.");
  if (rw_practice_cabinet_has_symptom (cabinet, "no-sound"))
    return _ ("No sound from the loudspeaker.");
  if (rw_practice_cabinet_has_symptom (cabinet, "distorted-sound"))
    return _ ("The sound is there, but rough and distorted.");
  if (rw_practice_cabinet_has_symptom (cabinet, "audio-hum"))
    return _ ("A hum that goes on when the game is quiet.");
  if (rw_practice_cabinet_get_board_state (cabinet) != RW_PRACTICE_BOARD_RUNNING)
    return _ ("No game sound, no hum.");
  return _ ("The game's sound, clean, and no hum.");
}

char *
rw_practice_looks_listen (RwJob          *job,
                          RwPracticeSeen *seen)
{
  const RwCheck *check = NULL;
  const RwOutcome *outcome = ask (job, "hum-volume-zero", &check);
  const char *heard = hear (rw_job_get_cabinet (job));

  *seen = (RwPracticeSeen) { 0 };
  if (outcome == NULL || !rw_practice_cabinet_has_symptom (rw_job_get_cabinet (job), "audio-hum"))
    return g_strdup (heard);
  *seen = (RwPracticeSeen) { check->id, outcome->id };
  /* Translators: what is heard; what was done; what came of it. */
  return g_strdup_printf (_ ("%s %s: %s."), heard, check->title, outcome->title);
}
