/* study-pairs.c: every two faults that one cabinet can have at once.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "study-pairs.h"

#include "rw-practice-build.h"
#include "rw-practice-faults.h"

static gboolean
can_be (GPtrArray *profiles,
        StudyPair  pair)
{
  for (guint i = 0; i < profiles->len; i++)
    {
      RwPracticeParams params;

      rw_practice_build (&params, profiles->pdata[i], 1);
      if (rw_practice_faults_fit (rw_practice_faults_get_id (pair.a), &params)
          && rw_practice_faults_fit (rw_practice_faults_get_id (pair.b), &params))
        return TRUE;
    }
  return FALSE;
}

GArray *
study_pairs_new (GPtrArray *profiles)
{
  GArray *pairs = g_array_new (FALSE, FALSE, sizeof (StudyPair));
  const guint n = rw_practice_faults_get_n ();

  for (guint distance = 1; distance <= n / 2; distance++)
    /* Half a round of an even number meets each pair from both of its ends. */
    for (guint a = 0; a < (2 * distance == n ? n / 2 : n); a++)
      {
        const StudyPair pair = { a, (a + distance) % n };

        if (can_be (profiles, pair))
          g_array_append_val (pairs, pair);
      }
  return pairs;
}
