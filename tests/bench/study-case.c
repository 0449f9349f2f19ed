/* study-case.c: the virtual cabinets that the study of the diagnosis is made with.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A case is drawn in this order: the fault, a supply that can have it, how bad it is (evenly from 0 to
 * 1), the cabinet's own spread (its seed) and the meter. Nobody brings in a cabinet that nothing can
 * be seen, heard or read of: a draw without a symptom and with every rail inside its limits at the
 * board, cold and warm, is drawn again from the supply on. After sixty draws it is taken as it is: an
 * owner says that something is wrong, and nothing shows.
 *
 * How often faults come in: weights for a thousand cabinets, trade estimates; nobody publishes counts.
 * A third of the supplies are linear. None of this is read from the program's own tables.
 */
#include "config.h"

#include "study-case.h"

#include "rw-practice-build.h"
#include "rw-practice-hands.h"
#include "rw-practice-symptoms.h"

static const struct
{
  const char *id;
  double      weight;
} often[] = {
  { "trim-low", 60 },           { "trim-high", 20 },           { "trim-worn", 12 },
  { "output-capacitors-tired", 80 }, { "minimum-load-missing", 12 }, { "supply-overloaded", 12 },
  { "supply-overheats", 12 },   { "supply-primary-dead", 24 }, { "p12-lost-supply", 9 },
  { "p24-lost-supply", 9 },     { "minus5-lost-supply", 16 },  { "minus12-lost-supply", 9 },
  { "raw-capacitor-tired", 36 }, { "bridge-diode-open", 9 },   { "pass-transistor-bad", 12 },
  { "regulator-drifted", 15 },  { "sense-open", 13 },          { "protection-latched", 4 },
  { "low-mains", 9 },           { "mains-path-open", 15 },     { "edge-oxidised", 100 },
  { "edge-burnt", 40 },         { "poor-crimp", 48 },          { "cracked-joint", 16 },
  { "loose-terminal-screw", 18 }, { "ground-wire-poor", 35 },  { "plus5-wire-thin", 16 },
  { "minus5-open-wire", 8 },    { "audio-filter-tired", 20 },  { "audio-amp-bad", 16 },
  { "audio-ground-loop", 11 },  { "board-short", 22 },         { "board-trace-loss", 12 },
  { "memory-bad", 24 },         { "socket-oxidised", 36 },     { "supply-fine", 83 },
  { "reset-part-bad", 9 },      { "board-corroded", 9 },       { "fuse-holder-tired", 18 },
  { "fuse-blown", 10 },         { "wrong-tap", 5 },            { "bridge-diode-shorted", 12 },
  { "lamp-circuit-short", 5 },  { "connector-shifted", 5 },    { "panel-ground-open", 9 },
  { "meter-or-leads", 15 },     { "monitor-filter-tired", 18 }, { "video-ground-open", 7 },
  { "earth-missing", 3 },
};

/* A fault of the practice cabinet that the table does not know yet. */
static const double usual_weight = 10;

static const struct
{
  double percent, counts;
  guint  full_counts;
} meters[] = { { 0.5, 2, 6000 }, { 0.8, 3, 4000 }, { 0.09, 2, 6000 } };

static const double linear_share = 1.0 / 3;
static const double cold_watch_seconds = 30, warm_watch_seconds = 60, play_seconds = 900,
                    glance_seconds = 5;
static const guint most_draws = 60;

static const char *const watched[] = {
  "resets", "boot-loop", "watchdog-barks", "memory-error", "thump-cures", "garbled-graphics",
  "sprites-wrong", "palette-wrong", "colour-missing", "picture-bars", "picture-rolls",
  "picture-dim", "sound-bars", "picture-buzz", "audio-hum", "hum-with-volume", "no-sound",
  "distorted-sound", "amp-hot", "controls-erratic", "control-dead", "coins-wrong",
  "scores-lost", "dead", "board-dead", "supply-ticks", "cold-start", "warm-freeze",
  "evening-fails", "lamps-dim", "fuse-blows", "mains-fuse-blows", "fuse-later",
  "burning-smell", "chips-hot", "tingle",
};

G_STATIC_ASSERT (G_N_ELEMENTS (watched) <= STUDY_MAX_SYMPTOMS);

const char *
study_family_get_label (StudyFamily family)
{
  static const char *const labels[] = { "as they come in", "each alike", "two at once", "every pair" };

  return labels[family];
}

GPtrArray *
study_profiles_new (void)
{
  g_autoptr (GPtrArray) all = rw_profile_list (NULL);

  g_assert_cmpuint (all->len, >, 0);
  return g_steal_pointer (&all);
}

static double
weight_of (const char *fault)
{
  for (guint i = 0; i < G_N_ELEMENTS (often); i++)
    if (g_str_equal (often[i].id, fault))
      return often[i].weight;
  return usual_weight;
}

static const char *
draw_fault (RwPracticeRandom *random)
{
  double sum = 0;

  for (guint i = 0; i < rw_practice_faults_get_n (); i++)
    sum += weight_of (rw_practice_faults_get_id (i));

  double at = rw_practice_random_uniform (random) * sum;

  for (guint i = 0; i < rw_practice_faults_get_n (); i++)
    {
      at -= weight_of (rw_practice_faults_get_id (i));
      if (at < 0)
        return rw_practice_faults_get_id (i);
    }
  return rw_practice_faults_get_id (0);
}

/* Can a cabinet of this profile have all these faults? */
static gboolean
fits (RwProfile             *profile,
      const RwPracticeFault *faults,
      guint                  n_faults,
      gboolean              *linear)
{
  RwPracticeParams params;

  rw_practice_build (&params, profile, 1);
  *linear = params.supply == RW_PRACTICE_LINEAR;
  for (guint i = 0; i < n_faults; i++)
    if (!rw_practice_faults_fit (faults[i].id, &params))
      return FALSE;
  return TRUE;
}

/* NULL when no profile can have them all. */
static RwProfile *
draw_profile (const StudyCase  *it,
              GPtrArray        *profiles,
              RwPracticeRandom *random)
{
  g_autofree double *weights = g_new0 (double, profiles->len);
  guint n_linear = 0;
  double sum = 0;

  for (guint i = 0; i < profiles->len; i++)
    {
      gboolean linear = FALSE;

      fits (profiles->pdata[i], NULL, 0, &linear);
      n_linear += linear;
    }
  for (guint i = 0; i < profiles->len; i++)
    {
      gboolean linear = FALSE;

      if (fits (profiles->pdata[i], it->faults, it->n_faults, &linear))
        weights[i] = linear ? linear_share / n_linear
                            : (1 - linear_share) / (profiles->len - n_linear);
      sum += weights[i];
    }

  double at = rw_practice_random_uniform (random) * sum;

  for (guint i = 0; i < profiles->len; i++)
    if (weights[i] > 0 && (at -= weights[i]) <= 0)
      return profiles->pdata[i];
  return NULL;
}

RwPracticeCabinet *
study_case_open (const StudyCase *self)
{
  g_autoptr (GError) error = NULL;
  RwPracticeCabinet *cabinet = rw_practice_cabinet_new (self->profile, self->seed, self->faults,
                                                        self->n_faults, "Tidepool Racer", &error);

  g_assert_no_error (error);
  return cabinet;
}

/* "Board dead" is said of a cabinet whose lamps and monitor are on; the other is dead altogether. */
static gboolean
is_said (RwPracticeCabinet *cabinet,
         const char        *symptom)
{
  return !g_str_equal (symptom, "board-dead") || !rw_practice_cabinet_has_symptom (cabinet, "dead");
}

static void
note_symptoms (StudyCase         *it,
               RwPracticeCabinet *cabinet)
{
  for (guint i = 0; i < G_N_ELEMENTS (watched); i++)
    {
      gboolean told = !is_said (cabinet, watched[i]);

      for (guint k = 0; k < it->n_symptoms; k++)
        told = told || it->symptoms[k] == watched[i];
      if (!told && rw_practice_cabinet_has_symptom (cabinet, watched[i]))
        it->symptoms[it->n_symptoms++] = watched[i];
    }
}

static gboolean
is_outside (const StudyCase   *it,
            RwPracticeCabinet *cabinet)
{
  for (guint i = 0; i < rw_profile_get_n_rails (it->profile); i++)
    {
      const RwRail *rail = rw_profile_get_rail (it->profile, i);
      const double volts = rw_practice_cabinet_get_true_volts (cabinet, rail->id, RW_PLACE_BOARD,
                                                               RW_KIND_DC);

      if (volts < rail->lo || volts > rail->hi)
        return TRUE;
    }
  return FALSE;
}

/* What somebody who plays it notices. FALSE: nothing at all. */
static gboolean
watch (StudyCase *it)
{
  g_autoptr (RwPracticeCabinet) cabinet = study_case_open (it);
  gboolean outside;

  it->n_symptoms = 0;
  rw_practice_cabinet_set_power (cabinet, TRUE);
  rw_practice_cabinet_advance (cabinet, cold_watch_seconds);
  note_symptoms (it, cabinet);
  outside = is_outside (it, cabinet);
  rw_practice_hands_skip (cabinet, play_seconds);
  for (double t = 0; t < warm_watch_seconds; t += glance_seconds)
    {
      rw_practice_cabinet_advance (cabinet, glance_seconds);
      note_symptoms (it, cabinet);
      outside = outside || is_outside (it, cabinet);
    }
  it->plays = rw_practice_cabinet_get_board_state (cabinet) == RW_PRACTICE_BOARD_RUNNING;
  return outside || it->n_symptoms > 0;
}

/* Some families go through the faults, or the pairs of them, in turn; the others draw. */
static void
pick_faults (StudyCase        *out,
             const GArray     *pairs,
             RwPracticeRandom *random)
{
  const guint n = rw_practice_faults_get_n ();
  const StudyPair *pair;

  switch (out->family)
    {
    case STUDY_EACH_ALIKE:
      out->faults[0].id = rw_practice_faults_get_id (out->index % n);
      return;
    case STUDY_EVERY_PAIR:
      pair = &g_array_index (pairs, StudyPair, out->index % pairs->len);
      out->faults[0].id = rw_practice_faults_get_id (pair->a);
      out->faults[1].id = rw_practice_faults_get_id (pair->b);
      return;
    case STUDY_AS_THEY_COME:
    case STUDY_PAIRS:
    case STUDY_N_FAMILIES:
    default:
      for (guint i = 0; i < out->n_faults; i++)
        out->faults[i].id = draw_fault (random);
    }
}

static void
draw_faults (StudyCase        *out,
             GPtrArray        *profiles,
             const GArray     *pairs,
             RwPracticeRandom *random)
{
  out->n_faults = out->family == STUDY_PAIRS || out->family == STUDY_EVERY_PAIR ? 2 : 1;
  do
    {
      pick_faults (out, pairs, random);
      out->profile = draw_profile (out, profiles, random);
    }
  while (out->profile == NULL || (out->n_faults == 2 && out->faults[0].id == out->faults[1].id));
}

void
study_case_draw (StudyCase    *out,
                 StudyFamily   family,
                 guint         index,
                 GPtrArray    *profiles,
                 const GArray *pairs)
{
  RwPracticeRandom random;
  gboolean shows = FALSE;

  *out = (StudyCase) { .family = family, .index = index };
  rw_practice_random_seed (&random, 1000003ULL * family + index + 1);
  draw_faults (out, profiles, pairs, &random);
  for (guint draw = 0; draw < most_draws && !shows; draw++)
    {
      const guint meter = (guint) (rw_practice_random_uniform (&random) * G_N_ELEMENTS (meters));

      out->profile = draw_profile (out, profiles, &random);
      for (guint i = 0; i < out->n_faults; i++)
        out->faults[i].strength = rw_practice_random_uniform (&random);
      out->seed = rw_practice_random_next (&random);
      out->percent = meters[meter].percent;
      out->counts = meters[meter].counts;
      out->full_counts = meters[meter].full_counts;
      out->redrawn = draw;
      shows = watch (out);
    }
  out->shows = shows;
}

gboolean
study_case_has (const StudyCase *self,
                const char      *fault)
{
  for (guint i = 0; i < self->n_faults; i++)
    if (g_str_equal (self->faults[i].id, fault))
      return TRUE;
  return FALSE;
}
