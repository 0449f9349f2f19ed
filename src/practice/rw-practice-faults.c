/* rw-practice-faults.c: what can be wrong with a practice cabinet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The table lies in parts, by area; beside each fault stands what trade practice says it shows. The
 * sizes at strength 1 are the worst that trade practice reports: a joint of 100 mΩ loses 0.3 V at
 * 3 A and browns its plug; a dried-out capacitor keeps a quarter of its microfarads; and so on.
 */
#include "config.h"

#include "rw-practice-faults.h"

#include <math.h>

#include "rw-practice-faults-private.h"

static const RwPracticeFaultKind *const parts[] = {
  rw_practice_faults_supply,
  rw_practice_faults_wiring,
  rw_practice_faults_board,
  rw_practice_faults_linear,
  rw_practice_faults_rest,
};

static const RwPracticeFaultKind *
nth (guint index)
{
  for (guint part = 0; part < G_N_ELEMENTS (parts); part++)
    for (const RwPracticeFaultKind *kind = parts[part]; kind->id != NULL; kind++)
      if (index-- == 0)
        return kind;
  return NULL;
}

static const RwPracticeFaultKind *
find (const char *id)
{
  const RwPracticeFaultKind *kind;

  for (guint i = 0; (kind = nth (i)) != NULL; i++)
    if (g_strcmp0 (kind->id, id) == 0)
      return kind;
  return NULL;
}

guint
rw_practice_faults_get_n (void)
{
  guint n = 0;

  while (nth (n) != NULL)
    n++;
  return n;
}

const char *
rw_practice_faults_get_id (guint index)
{
  const RwPracticeFaultKind *kind = nth (index);

  g_return_val_if_fail (kind != NULL, NULL);
  return kind->id;
}

gboolean
rw_practice_faults_has (const char *id)
{
  return find (id) != NULL;
}

gboolean
rw_practice_faults_fit (const char             *id,
                        const RwPracticeParams *params)
{
  const RwPracticeFaultKind *kind = find (id);

  return kind != NULL && kind->fits (params);
}

gboolean
rw_practice_faults_apply (const char       *id,
                          double            strength,
                          RwPracticeParams *params)
{
  const RwPracticeFaultKind *kind = find (id);

  if (kind == NULL || !kind->fits (params) || isnan (strength))
    return FALSE;
  kind->apply (params, CLAMP (strength, 0, 1));
  return TRUE;
}
