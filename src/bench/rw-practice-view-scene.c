/* rw-practice-view-scene.c: the practice cabinet of a job as a picture's scene.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where a spot is drawn follows from its area; what it is called there is short, since the place says the rest.
 */
#include "config.h"

#include "rw-practice-view-scene.h"

#include <glib/gi18n-lib.h>

#include "rw-job-practice.h"
#include "rw-practice-symptoms.h"
#include "rw-quantity.h"

/* Names of spots that belong to no rail, as short as a picture needs them. */
static const struct
{
  const char *id, *name;
} names[] = {
  { "mains:l", N_ ("live") },
  { "mains:n", N_ ("neutral") },
  { "mains:earth", N_ ("earth") },
  { "mains:fuse1", N_ ("mains fuse") },
  { "mains:fuse2", N_ ("mains fuse") },
  { "supply:sense", N_ ("sense") },
  { "supply:ac1", N_ ("AC, fuse end") },
  { "supply:ac2", N_ ("AC") },
  { "supply:fuse1", N_ ("fuse in") },
  { "supply:fuse2", N_ ("fuse out") },
  { "supply:raw+", N_ ("capacitor +") },
  { "supply:raw-", N_ ("capacitor −") },
  { "sound:gnd", N_ ("0 V") },
  { "sound:speaker+", N_ ("out +") },
  { "sound:speaker-", N_ ("out −") },
  { "cabinet:chassis", N_ ("frame") },
  { "cabinet:monitor", N_ ("monitor 0 V") },
  { "cabinet:lamp+", N_ ("lamp +") },
  { "cabinet:lamp-", N_ ("lamp −") },
};

/* --- spots ---------------------------------------------------------------------------------------- */

static RwBenchPart
part_of (const RwPracticeNode *node)
{
  switch (node->area)
    {
    case RW_PRACTICE_AREA_STRIP:
      return g_str_has_prefix (node->id, "mains:") ? RW_BENCH_MAINS : RW_BENCH_STRIP;
    case RW_PRACTICE_AREA_SUPPLY:
      return RW_BENCH_INSIDE;
    case RW_PRACTICE_AREA_HARNESS:
      return node->row == 0 ? RW_BENCH_LUG : RW_BENCH_PLUG;
    case RW_PRACTICE_AREA_EDGE:
      return RW_BENCH_EDGE;
    case RW_PRACTICE_AREA_BOARD:
      return RW_BENCH_CHIP;
    case RW_PRACTICE_AREA_SOUND:
      return RW_BENCH_SOUND;
    case RW_PRACTICE_AREA_CABINET:
    case RW_PRACTICE_N_AREAS:
    default:
      return RW_BENCH_CABINET;
    }
}

/* (transfer full) */
static char *
short_name (const RwPracticeNode *node,
            const RwProfile      *profile)
{
  const RwRail *rail = node->rail != NULL ? rw_profile_find_rail (profile, node->rail) : NULL;

  if (rail != NULL)
    return g_strdup (rail->label);
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    if (g_str_equal (names[i].id, node->id))
      return g_strdup (_ (names[i].name));
  return g_strdup (node->rail != NULL ? _ ("0 V") : node->label);
}

/* Ground first, then the rails in the profile's order, then what is on the strip besides. */
static guint
row_of (const RwPracticeNode *node,
        const RwProfile      *profile)
{
  if (node->rail == NULL)
    return rw_profile_get_n_rails (profile) + 1;
  return (guint) (rw_profile_index_of (profile, node->rail) + 1);
}

RwPracticeScene *
rw_practice_scene_new (RwJob *job)
{
  RwPracticeScene *self = g_new0 (RwPracticeScene, 1);
  RwPracticeCabinet *cabinet = rw_job_get_cabinet (job);
  const RwProfile *profile = rw_job_get_profile (job);

  self->scene = (RwBenchScene) { .nodes = self->nodes, .red = -1, .black = -1, .selected = -1, .value = "", .mode = "",
                                 .board_words = "" };
  self->scene.n_nodes = MIN (rw_practice_cabinet_get_n_nodes (cabinet), RW_BENCH_MAX_NODES);
  for (guint i = 0; i < self->scene.n_nodes; i++)
    {
      const RwPracticeNode *node = rw_practice_cabinet_get_node (cabinet, i);

      self->of[i] = node;
      self->short_names[i] = short_name (node, profile);
      self->nodes[i] = (RwBenchNode) {
        .part = part_of (node),
        .label = self->short_names[i],
        .row = row_of (node, profile),
        .series = rw_theme_series_index (profile, node->rail != NULL ? node->rail : RW_RAIL_GROUND),
        .hazard = node->hazard == RW_PRACTICE_HAZARD_MAINS,
      };
    }
  rw_practice_scene_refresh (self, job);
  return self;
}

void
rw_practice_scene_free (RwPracticeScene *self)
{
  if (self == NULL)
    return;
  for (guint i = 0; i < self->scene.n_nodes; i++)
    g_free (self->short_names[i]);
  g_free (self->value);
  g_free (self->mode);
  g_free (self);
}

/* --- what is seen now ----------------------------------------------------------------------------- */

const char *
rw_practice_scene_board_words (RwPracticeCabinet *cabinet)
{
  if (rw_practice_cabinet_get_tripped (cabinet))
    return _ ("the supply has tripped: switch off for a while");
  if (!rw_practice_cabinet_get_power (cabinet))
    return _ ("off");
  if (rw_practice_cabinet_get_ticking (cabinet))
    return _ ("the supply ticks");
  if (!rw_practice_cabinet_get_board_fitted (cabinet))
    return _ ("on, board out");
  switch (rw_practice_cabinet_get_board_state (cabinet))
    {
    case RW_PRACTICE_BOARD_RUNNING:
      return _ ("the game runs");
    case RW_PRACTICE_BOARD_RESET:
      return _ ("▲ the game resets");
    case RW_PRACTICE_BOARD_DEAD:
    default:
      return _ ("▲ nothing on the screen");
    }
}

char *
rw_practice_scene_dup_value (RwJob *job)
{
  const RwLive *live = rw_job_get_live (job);

  if (!live->has_value)
    return g_strdup ("");
  return live->sample.over ? g_strdup (_ ("OL"))
                           : rw_quantity_format (live->sample.value, live->sample.step, live->sample.kind);
}

static const char *
mode_words (RwPracticeMode mode)
{
  switch (mode)
    {
    case RW_PRACTICE_MODE_AC:
      return _ ("AC volts");
    case RW_PRACTICE_MODE_OHMS:
      return _ ("ohms");
    case RW_PRACTICE_MODE_AMPS:
      return _ ("amps");
    case RW_PRACTICE_MODE_DC:
      return _ ("DC volts");
    case RW_PRACTICE_MODE_FOLLOW:
    default:
      return _ ("as is measured");
    }
}

static char *
dup_mode (RwJob *job)
{
  RwPracticeMeter *meter = rw_job_get_practice_meter (job);
  const char *mode = mode_words (rw_practice_meter_get_mode (meter));

  if (rw_practice_meter_get_jack (meter) == RW_PRACTICE_JACK_AMPS)
    /* Translators: what the meter is set to; where its red lead is plugged in. */
    return g_strdup_printf (_ ("%s · red lead in the amps jack"), mode);
  return g_strdup (mode);
}

static guint
loudness (RwPracticeCabinet *cabinet)
{
  static const char *const heard[] = { "audio-hum", "distorted-sound" };

  if (!rw_practice_cabinet_get_power (cabinet) || !rw_practice_cabinet_get_board_fitted (cabinet)
      || rw_practice_cabinet_has_symptom (cabinet, "no-sound"))
    return 0;
  for (guint i = 0; i < G_N_ELEMENTS (heard); i++)
    if (rw_practice_cabinet_has_symptom (cabinet, heard[i]))
      return 3;
  return rw_practice_cabinet_get_board_state (cabinet) == RW_PRACTICE_BOARD_RUNNING ? 1 : 0;
}

int
rw_practice_scene_lead (const RwPracticeScene *self,
                        RwPracticeLead         lead)
{
  return lead == RW_PRACTICE_RED ? self->scene.red : self->scene.black;
}

static int
index_of (RwPracticeScene *self,
          const char      *id)
{
  for (guint i = 0; i < self->scene.n_nodes; i++)
    if (self->of[i]->id == id)
      return (int) i;
  return -1;
}

gboolean
rw_practice_scene_refresh (RwPracticeScene *self,
                           RwJob           *job)
{
  RwPracticeCabinet *cabinet = rw_job_get_cabinet (job);
  const RwBenchScene was = self->scene;
  char *value = rw_practice_scene_dup_value (job), *mode = dup_mode (job);
  const gboolean same_words = g_strcmp0 (value, self->value) == 0 && g_strcmp0 (mode, self->mode) == 0;
  RwBenchScene *now = &self->scene;

  /* Words that did not change stay where they are: a layout that was made of them borrows them. */
  g_free (same_words ? value : self->value);
  g_free (same_words ? mode : self->mode);
  now->value = self->value = same_words ? self->value : value;
  now->mode = self->mode = same_words ? self->mode : mode;
  now->red = index_of (self, rw_practice_cabinet_get_lead (cabinet, RW_PRACTICE_RED));
  now->black = index_of (self, rw_practice_cabinet_get_lead (cabinet, RW_PRACTICE_BLACK));
  now->power = rw_practice_cabinet_get_power (cabinet);
  now->fitted = rw_practice_cabinet_get_board_fitted (cabinet);
  now->trim = rw_practice_cabinet_get_trim (cabinet);
  now->board_words = now->fitted ? rw_practice_scene_board_words (cabinet) : "";
  now->sound = loudness (cabinet);
  return !same_words || was.red != now->red || was.black != now->black || was.power != now->power
         || was.fitted != now->fitted || was.trim != now->trim || was.sound != now->sound
         || g_strcmp0 (was.board_words, now->board_words) != 0;
}

/* --- words ---------------------------------------------------------------------------------------- */

static const char *
tip_words (const RwPracticeScene *self,
           int                    node)
{
  return node >= 0 ? self->of[node]->label : _ ("in the air");
}

char *
rw_practice_scene_describe (const RwPracticeScene *self)
{
  GString *text = g_string_new (self->scene.power ? _ ("Power on.") : _ ("Power off."));

  g_string_append_printf (text, " %s", self->scene.fitted ? _ ("Board fitted.") : _ ("Board out."));
  if (*self->scene.board_words != '\0')
    g_string_append_printf (text, " %s.", self->scene.board_words);
  g_string_append_c (text, ' ');
  /* Translators: where the tip of a lead is. */
  g_string_append_printf (text, _ ("Red tip: %s."), tip_words (self, self->scene.red));
  g_string_append_c (text, ' ');
  /* Translators: where the tip of a lead is. */
  g_string_append_printf (text, _ ("Black tip: %s."), tip_words (self, self->scene.black));
  if (*self->value != '\0')
    {
      g_string_append_c (text, ' ');
      /* Translators: value with unit. */
      g_string_append_printf (text, _ ("The meter shows %s."), self->value);
    }
  return g_string_free (text, FALSE);
}

char *
rw_practice_scene_describe_node (const RwPracticeScene *self,
                                 guint                  i)
{
  GString *text = g_string_new (self->of[i]->label);

  g_string_append_printf (text, " · %s", rw_practice_hazard_get_label (self->of[i]->hazard));
  if (self->scene.red == (int) i)
    g_string_append_printf (text, " · %s", _ ("the red tip is here"));
  if (self->scene.black == (int) i)
    g_string_append_printf (text, " · %s", _ ("the black tip is here"));
  return g_string_free (text, FALSE);
}
