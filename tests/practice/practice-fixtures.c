/* practice-fixtures.c: what the tests of the practice cabinet share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "practice-fixtures.h"

#include <string.h>

#include "rw-practice-circuit.h"

RwProfile *
practice_profile (const char *id)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *file = g_strconcat (id, ".json", NULL);
  g_autofree char *path = g_build_filename (g_getenv ("RAILWRIGHT_DATA_DIR"), "profiles", file,
                                            NULL);
  RwProfile *profile = rw_profile_load (path, &error);

  g_assert_no_error (error);
  return profile;
}

RwPracticeCabinet *
practice_cabinet (const char *profile,
                  guint64     seed,
                  const char *fault,
                  double      strength)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RwProfile) its = practice_profile (profile);
  const RwPracticeFault one = { fault, strength };
  RwPracticeCabinet *cabinet = rw_practice_cabinet_new (
      its, seed, fault != NULL ? &one : NULL, fault != NULL ? 1 : 0, "Tidepool Racer", &error);

  g_assert_no_error (error);
  return cabinet;
}

RwPracticeCabinet *
practice_running (const char *profile,
                  guint64     seed,
                  const char *fault,
                  double      strength,
                  double      seconds)
{
  RwPracticeCabinet *cabinet = practice_cabinet (profile, seed, fault, strength);

  rw_practice_cabinet_set_power (cabinet, TRUE);
  rw_practice_cabinet_advance (cabinet, seconds);
  return cabinet;
}

double
practice_dc (RwPracticeCabinet *cabinet,
             const char        *rail,
             RwPlace            place)
{
  return rw_practice_cabinet_get_true_volts (cabinet, rail, place, RW_KIND_DC);
}

double
practice_ripple (RwPracticeCabinet *cabinet,
                 const char        *rail,
                 RwPlace            place)
{
  return rw_practice_cabinet_get_true_volts (cabinet, rail, place, RW_KIND_RIPPLE);
}

static void
bare_rail (RwPracticeRail *rail,
           const char     *id,
           double          nominal,
           double          turns,
           double          diode_volts)
{
  rail->id = g_intern_string (id);
  rail->sign = nominal < 0 ? -1 : 1;
  rail->nominal = nominal < 0 ? -nominal : nominal;
  rail->feed = turns == 1 ? RW_PRACTICE_REFERENCE : RW_PRACTICE_FOLLOWER;
  rail->turns = turns;
  rail->diode_volts = diode_volts;
  rail->alive = 1;
}

void
practice_bare_switcher (RwPracticeModel *model,
                        double           volts)
{
  memset (model, 0, sizeof *model);
  model->params.supply = RW_PRACTICE_SWITCHER;
  model->params.n_rails = 3;
  model->params.audio = -1;
  bare_rail (&model->params.rail[0], "p5", 5, 1, 0.40);
  bare_rail (&model->params.rail[1], "p12", 12, 12.0 / 5.0, 0.75);
  bare_rail (&model->params.rail[2], "m12", -12, 12.0 / 5.0, 0.75);
  model->params.trim_lo_volts = 4;
  model->params.trim_hi_volts = 6;
  model->params.trim_start = (volts - 4) / 2;
  model->params.mains_share = 1;
  model->params.mains_hertz = 50;
  rw_practice_model_start (model, 1);
  model->state.power = TRUE;
  model->state.level = 1;
  model->state.board = RW_PRACTICE_BOARD_RUNNING;
  rw_practice_circuit_solve (model);
}

void
practice_pull_board (RwPracticeCabinet *cabinet,
                     double             seconds)
{
  rw_practice_cabinet_set_power (cabinet, FALSE);
  rw_practice_cabinet_advance (cabinet, 10);
  rw_practice_cabinet_set_board_fitted (cabinet, FALSE);
  rw_practice_cabinet_set_power (cabinet, TRUE);
  rw_practice_cabinet_advance (cabinet, seconds);
}
