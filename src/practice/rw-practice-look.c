/* rw-practice-look.c: what looking, listening and feeling show at a practice cabinet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One line of a table a check of data/knowledge, by area. What can be worked out from the
 * circuit is: a joint's heat from its current and ohms, a sound from the ripple, drift from a
 * copy of the cabinet that is cold and one that is warm. What physics does not tell (is the
 * paint on the trim broken?) comes from the fault itself. A check that needs a running machine
 * answers nothing while it is off.
 *
 * Limits are trade practice, as in the checks: a joint above 15 mV is suspect, a big
 * capacitor's ripple above 0.70 V, and so on.
 */
#include "config.h"

#include "rw-practice-look.h"

#include "rw-practice-look-private.h"

static const RwPracticeLookKind *const parts[] = {
  rw_practice_looks_supply,
  rw_practice_looks_wiring,
  rw_practice_looks_board,
};

gboolean
rw_practice_look_has (const RwPracticeLook *look,
                      const char           *fault)
{
  const guint n = rw_practice_cabinet_get_true_n_faults (look->cabinet);

  for (guint i = 0; i < n; i++)
    if (g_str_equal (rw_practice_cabinet_get_true_fault (look->cabinet, i)->id, fault))
      return TRUE;
  return FALSE;
}

gboolean
rw_practice_look_has_any (const RwPracticeLook *look,
                          const char    *const *faults)
{
  for (; *faults != NULL; faults++)
    if (rw_practice_look_has (look, *faults))
      return TRUE;
  return FALSE;
}

static const RwPracticeLookKind *
find (const char *check)
{
  for (guint part = 0; part < G_N_ELEMENTS (parts); part++)
    for (const RwPracticeLookKind *kind = parts[part]; kind->check != NULL; kind++)
      if (g_strcmp0 (kind->check, check) == 0)
        return kind;
  return NULL;
}

const char *
rw_practice_look (RwPracticeCabinet *cabinet,
                  const char        *check)
{
  g_return_val_if_fail (RW_IS_PRACTICE_CABINET (cabinet), NULL);

  const RwPracticeLookKind *kind = find (check);
  const RwPracticeModel *model = rw_practice_cabinet_get_true_model (cabinet);
  const guint reference = model->params.reference;
  const RwPracticeLook look = { cabinet,
                                model,
                                &model->params,
                                &model->state,
                                &model->params.rail[reference],
                                &model->state.flow[reference] };

  if (kind == NULL || (kind->running && (!model->state.power || !model->state.fitted)))
    return NULL;
  return kind->outcome (&look);
}
