/* rw-practice-drill.c: a cabinet with hidden faults, drawn from a level and a seed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One stream of chance, seeded by seed and level, draws in this order: the profile (among those that ship with the
 * program, by id), the faults until they fit its supply, their strengths, the cabinet's own seed. Then somebody plays
 * it: half a minute from cold and as long with all warm. When nothing shows, everything is drawn anew from the same
 * stream.
 */
#include "config.h"

#include "rw-practice-drill.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "rw-practice-build.h"
#include "rw-practice-symptoms.h"

static const guint most_draws = 200;
static const double watch_seconds = 25, glance_seconds = 5, play_minutes = 20;

/* Of the program itself: a person's own profiles would make the same seed another cabinet elsewhere. */
static const char *const shipped[] = { "classic-5-12-m5",  "dram-5-12-m5",     "linear-5-audio",
                                       "switcher-5-12",    "switcher-5-12-24", "switcher-5-12-m12" };

/* What everybody meets in the first year. */
static const char *const plain[] = {
  "trim-low",         "trim-high",          "edge-oxidised",       "edge-burnt",
  "plus5-wire-thin",  "loose-terminal-screw", "ground-wire-poor",  "poor-crimp",
  "supply-primary-dead", "output-capacitors-tired", "raw-capacitor-tired", "minus5-lost-supply",
  "board-short",      "mains-path-open",
};

static const char *const watched[] = {
  "resets",    "boot-loop",  "memory-error",    "garbled-graphics", "picture-bars", "audio-hum",     "no-sound",
  "distorted-sound", "dead", "board-dead",      "supply-ticks",     "lamps-dim",    "burning-smell", "chips-hot",
};

G_STATIC_ASSERT (G_N_ELEMENTS (watched) <= RW_PRACTICE_DRILL_SYMPTOMS);

/* --- drawing -------------------------------------------------------------------------------------- */

/* (transfer container) In the order of the table. */
static GPtrArray *
choose_profiles (GPtrArray *profiles)
{
  GPtrArray *list = g_ptr_array_new ();

  for (guint i = 0; i < G_N_ELEMENTS (shipped); i++)
    for (guint k = 0; k < profiles->len; k++)
      if (g_str_equal (rw_profile_get_id (profiles->pdata[k]), shipped[i]))
        g_ptr_array_add (list, profiles->pdata[k]);
  return list;
}

static guint
draw_index (RwPracticeRandom *random,
            guint             n)
{
  return MIN ((guint) (rw_practice_random_uniform (random) * n), n - 1);
}

static const char *
draw_fault (guint             level,
            RwPracticeRandom *random)
{
  return level == 1 ? plain[draw_index (random, G_N_ELEMENTS (plain))]
                    : rw_practice_faults_get_id (draw_index (random, rw_practice_faults_get_n ()));
}

static double
draw_strength (const RwPracticeDrill *self,
               RwPracticeRandom      *random)
{
  if (self->level == 1)
    return rw_practice_random_between (random, 0.8, 1);
  if (self->level == 2 || self->n_faults == 2)
    return rw_practice_random_between (random, 0.4, 0.9);
  return rw_practice_random_between (random, 0.05, 0.4);
}

/* "Supply and wiring are fine" is no second fault beside one of theirs. */
static gboolean
are_two (const RwPracticeDrill *self)
{
  return self->faults[0].id != self->faults[1].id && !g_str_equal (self->faults[0].id, "supply-fine")
         && !g_str_equal (self->faults[1].id, "supply-fine");
}

static gboolean
fit (const RwPracticeDrill *self)
{
  RwPracticeParams params;

  rw_practice_build (&params, self->profile, self->cabinet_seed);
  for (guint i = 0; i < self->n_faults; i++)
    if (!rw_practice_faults_fit (self->faults[i].id, &params))
      return FALSE;
  return self->n_faults < 2 || are_two (self);
}

/* FALSE: the faults do not suit the supply. */
static gboolean
draw_once (RwPracticeDrill  *self,
           GPtrArray        *profiles,
           RwPracticeRandom *random)
{
  RwProfile *profile = profiles->pdata[draw_index (random, profiles->len)];

  g_clear_pointer (&self->profile, rw_profile_unref);
  self->profile = rw_profile_ref (profile);
  self->n_faults = self->level == 3 && rw_practice_random_uniform (random) < 0.5 ? 2 : 1;
  for (guint i = 0; i < self->n_faults; i++)
    self->faults[i].id = draw_fault (self->level, random);
  for (guint i = 0; i < self->n_faults; i++)
    self->faults[i].strength = draw_strength (self, random);
  self->cabinet_seed = rw_practice_random_next (random);
  return fit (self);
}

/* --- playing it ----------------------------------------------------------------------------------- */

/* Of a cabinet that is dead altogether nobody says that its board is. */
static gboolean
is_seen (const RwPracticeModel *model,
         const char            *symptom)
{
  if (g_str_equal (symptom, "board-dead") && rw_practice_symptoms_present (model, "dead"))
    return FALSE;
  return rw_practice_symptoms_present (model, symptom);
}

static void
note_symptoms (RwPracticeDrill       *self,
               const RwPracticeModel *model)
{
  for (guint i = 0; i < G_N_ELEMENTS (watched); i++)
    {
      gboolean known = FALSE;

      for (guint k = 0; k < self->n_symptoms; k++)
        known = known || self->symptoms[k] == watched[i];
      if (!known && is_seen (model, watched[i]))
        self->symptoms[self->n_symptoms++] = watched[i];
    }
}

static gboolean
is_outside (const RwPracticeDrill *self,
            const RwPracticeModel *model)
{
  for (guint i = 0; i < rw_profile_get_n_rails (self->profile); i++)
    {
      const RwRail *rail = rw_profile_get_rail (self->profile, i);
      const double volts = rw_practice_model_get_volts (model, rail->id, RW_PLACE_BOARD, RW_KIND_DC);

      if (volts < rail->lo || volts > rail->hi)
        return TRUE;
    }
  return FALSE;
}

static gboolean
watch (RwPracticeDrill *self,
       RwPracticeModel *model)
{
  gboolean outside = FALSE;

  for (double t = 0; t < watch_seconds; t += glance_seconds)
    {
      for (double s = 0; s < glance_seconds; s += RW_PRACTICE_STEP)
        rw_practice_model_step (model);
      note_symptoms (self, model);
      outside = outside || is_outside (self, model);
    }
  return outside;
}

/* TRUE when there is something to complain of, or to measure. */
static gboolean
shows (RwPracticeDrill *self)
{
  RwPracticeModel model = { 0 };
  gboolean outside;

  rw_practice_build (&model.params, self->profile, self->cabinet_seed);
  for (guint i = 0; i < self->n_faults; i++)
    rw_practice_faults_apply (self->faults[i].id, self->faults[i].strength, &model.params);
  rw_practice_model_start (&model, self->cabinet_seed);
  model.state.power = TRUE;
  self->n_symptoms = 0;
  outside = watch (self, &model);
  model.state.warm = model.state.tripped ? 0 : 1;
  model.state.on_seconds = 60 * play_minutes;
  outside = watch (self, &model) || outside;
  return outside || self->n_symptoms > 0;
}

/* --- all ------------------------------------------------------------------------------------------ */

gboolean
rw_practice_drill_draw (RwPracticeDrill *out,
                        guint            level,
                        guint64          seed,
                        GPtrArray       *profiles,
                        GError         **error)
{
  g_return_val_if_fail (out != NULL && profiles != NULL, FALSE);

  g_autoptr (GPtrArray) list = choose_profiles (profiles);
  guint64 mixed = seed;
  RwPracticeRandom random;

  *out = (RwPracticeDrill) { .level = CLAMP (level, 1, RW_PRACTICE_DRILL_LEVELS), .seed = seed };
  if (list->len == 0)
    {
      g_set_error_literal (error, RW_PRACTICE_ERROR, RW_PRACTICE_ERROR_PROFILE,
                           _ ("None of the program's own profiles was found, so no drill can be drawn. Install the "
                              "program again, or set RAILWRIGHT_DATA_DIR."));
      return FALSE;
    }
  rw_practice_random_seed (&random, rw_practice_splitmix (&mixed) + out->level);
  for (guint draw = 0; draw < most_draws; draw++)
    if (draw_once (out, list, &random) && shows (out))
      return TRUE;
  rw_practice_drill_clear (out);
  g_set_error_literal (error, RW_PRACTICE_ERROR, RW_PRACTICE_ERROR_STATE,
                       _ ("Nothing drawn from this seed shows at a cabinet. Choose another seed."));
  return FALSE;
}

void
rw_practice_drill_clear (RwPracticeDrill *self)
{
  g_clear_pointer (&self->profile, rw_profile_unref);
}

void
rw_practice_drill_copy (const RwPracticeDrill *self,
                        RwPracticeDrill       *out)
{
  *out = *self;
  if (out->profile != NULL)
    rw_profile_ref (out->profile);
}

RwPracticeCabinet *
rw_practice_drill_open (const RwPracticeDrill *self,
                        const char            *name,
                        GError               **error)
{
  g_return_val_if_fail (self != NULL && self->profile != NULL, NULL);
  return rw_practice_cabinet_new (self->profile, self->cabinet_seed, self->faults, self->n_faults, name, error);
}

/* --- codes ---------------------------------------------------------------------------------------- */

char *
rw_practice_drill_dup_code (guint   level,
                            guint64 seed)
{
  return g_strdup_printf ("%u-%" G_GUINT64_FORMAT, level, seed);
}

gboolean
rw_practice_drill_parse_code (const char *text,
                              guint      *level,
                              guint64    *seed)
{
  g_return_val_if_fail (text != NULL && level != NULL && seed != NULL, FALSE);

  g_autofree char *tainted = g_strstrip (g_strdup (text));
  const char *dash = strchr (tainted, '-');
  guint64 number, first = *level;

  if (dash != NULL)
    {
      g_autofree char *head = g_strndup (tainted, (gsize) (dash - tainted));

      if (!g_ascii_string_to_unsigned (head, 10, 1, RW_PRACTICE_DRILL_LEVELS, &first, NULL))
        return FALSE;
    }
  if (!g_ascii_string_to_unsigned (dash != NULL ? dash + 1 : tainted, 10, 0, G_MAXUINT64, &number, NULL))
    return FALSE;
  *level = (guint) first;
  *seed = number;
  return TRUE;
}

const char *
rw_practice_drill_level_label (guint level)
{
  switch (level)
    {
    case 1:
      return _ ("One plain fault, strong");
    case 2:
      return _ ("One fault of all, fair");
    default:
      return _ ("A subtle fault, or two at once");
    }
}
