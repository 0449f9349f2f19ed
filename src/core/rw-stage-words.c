/* rw-stage-words.c: the stages of the bring-up in words, read from JSON.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   {"about":"…","stages":[{"id":"look","title":"…","purpose":"…","hazard":"mains","who":"anyone","caution":"…",
 *     "needs":["…"],"steps":["…"],"measure":[{"rails":"every","place":"board","kind":"dc","board":"fitted",
 *     "minutes":[0,5]}],"questions":[{"id":"…","text":"…","no":"…","no_gate":"stop","supply":"switcher"}],
 *     "ends":["…"],"stops":["…"],"unproven":"…"}, …]}
 *
 * All ten stages must be there, in order. A stage with a hazard must state it ("caution"): a file that leaves it out
 * is refused, since nobody could then be warned before the step.
 */
#include "config.h"

#include "rw-stage-words.h"

#include <glib/gi18n-lib.h>

#include "rw-json.h"
#include "rw-keys.h"
#include "rw-paths.h"
#include "rw-warm-up.h"

struct _RwStageWords
{
  RwStageText stages[RW_N_STAGES];
};

static const char *const stage_ids[RW_N_STAGES] = { "look", "bare-supply", "fit-board", "first-power", "under-load",
                                                    "trim", "recheck",     "warm-up",   "exercise",    "close" };
static const char *const hazard_words[] = { "none", "low-voltage", "near-mains", "mains", "tube", NULL };
static const char *const who_words[] = { "anyone", "trained", "licensed", NULL };
static const char *const rail_words[] = { "every", "reference", "ground", "guards", NULL };
static const char *const board_words[] = { "out", "fitted", NULL };
static const char *const gate_words[] = { "warn", "stop", NULL };
static const char *const supply_words[] = { "switcher", "linear", NULL };

G_DEFINE_QUARK (rw_stage_error, rw_stage_error)

const char *
rw_stage_to_id (RwStage stage)
{
  g_return_val_if_fail (stage < RW_N_STAGES, NULL);
  return stage_ids[stage];
}

gboolean
rw_stage_from_id (const char *id,
                  RwStage    *out)
{
  for (guint i = 0; i < RW_N_STAGES; i++)
    if (g_strcmp0 (stage_ids[i], id) == 0)
      {
        *out = (RwStage) i;
        return TRUE;
      }
  return FALSE;
}

/* --- freeing ------------------------------------------------------------------------------------ */

static void
clear_measure (gpointer data)
{
  g_clear_pointer (&((RwStageMeasure *) data)->minutes, g_array_unref);
}

static void
clear_question (gpointer data)
{
  RwStageQuestion *question = data;

  g_clear_pointer (&question->text, g_free);
  g_clear_pointer (&question->no, g_free);
}

static void
clear_stage (RwStageText *stage)
{
  g_clear_pointer (&stage->title, g_free);
  g_clear_pointer (&stage->purpose, g_free);
  g_clear_pointer (&stage->caution, g_free);
  g_clear_pointer (&stage->needs, g_strfreev);
  g_clear_pointer (&stage->steps, g_strfreev);
  g_clear_pointer (&stage->measure, g_array_unref);
  g_clear_pointer (&stage->questions, g_array_unref);
  g_clear_pointer (&stage->ends, g_strfreev);
  g_clear_pointer (&stage->stops, g_strfreev);
  g_clear_pointer (&stage->unproven, g_free);
}

static void
clear_words (gpointer data)
{
  RwStageWords *self = data;

  for (guint i = 0; i < RW_N_STAGES; i++)
    clear_stage (&self->stages[i]);
}

RwStageWords *
rw_stage_words_ref (RwStageWords *self)
{
  return g_atomic_rc_box_acquire (self);
}

void
rw_stage_words_unref (RwStageWords *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full (self, clear_words);
}

/* --- reading ------------------------------------------------------------------------------------ */

/* A text for people, translated. */
static gboolean
read_text (const RwKeys *keys,
           const char   *key,
           char        **out,
           GError      **error)
{
  const char *text = rw_keys_string (keys, key, error);

  *out = text != NULL ? g_strdup (_ (text)) : NULL;
  return text != NULL;
}

static gboolean
read_optional_text (const RwKeys *keys,
                    const char   *key,
                    char        **out,
                    GError      **error)
{
  *out = NULL;
  return !json_object_has_member (keys->object, key) || read_text (keys, key, out, error);
}

/* A list of texts, translated; at least @least of them. */
static gboolean
read_texts (const RwKeys *keys,
            const char   *key,
            guint         least,
            char       ***out,
            GError      **error)
{
  JsonArray *array = rw_keys_array (keys, key, error);

  if (array == NULL || !rw_keys_strings (keys, key, out, error))
    return FALSE;
  if (json_array_get_length (array) < least)
    return rw_keys_fail (keys, key, error, _ ("must be a list of texts"));
  for (char **text = *out; *text != NULL; text++)
    {
      g_autofree char *source = *text;

      *text = g_strdup (_ (source));
    }
  return TRUE;
}

static gboolean
read_minutes (const RwKeys *keys,
              GArray       *minutes,
              GError      **error)
{
  JsonArray *array = rw_json_get_array (keys->object, "minutes");
  double last = -1;

  if (!json_object_has_member (keys->object, "minutes"))
    return TRUE;
  for (guint i = 0; array != NULL && i < json_array_get_length (array); i++)
    {
      double minute;

      if (!rw_json_node_get_number (json_array_get_element (array, i), &minute) || minute <= last
          || rw_warm_up_find_minute (minute) == NULL)
        return rw_keys_fail (keys, "minutes", error, _ ("must be minutes of a warm-up, rising: 0, 5, 15, 30, 60"));
      g_array_append_val (minutes, minute);
      last = minute;
    }
  return minutes->len > 0
         || rw_keys_fail (keys, "minutes", error, _ ("must be minutes of a warm-up, rising: 0, 5, 15, 30, 60"));
}

static gboolean
read_measure (const RwKeys *keys,
              GArray       *into,
              GError      **error)
{
  RwStageMeasure measure = { .minutes = g_array_new (FALSE, FALSE, sizeof (double)) };
  int rails = 0, board = 0;

  g_array_append_val (into, measure);

  RwStageMeasure *last = &g_array_index (into, RwStageMeasure, into->len - 1);

  if (!rw_keys_choice (keys, "rails", rail_words, -1, &rails, error)
      || !rw_keys_choice (keys, "board", board_words, -1, &board, error))
    return FALSE;
  last->rails = (RwStageRail) rails;
  last->bare = board == 0;
  if (!rw_place_from_id (rw_json_get_string (keys->object, "place", ""), &last->place))
    return rw_keys_fail (keys, "place", error, _ ("holds a word that is not known"));
  if (!rw_kind_from_id (rw_json_get_string (keys->object, "kind", ""), &last->kind))
    return rw_keys_fail (keys, "kind", error, _ ("holds a word that is not known"));
  return read_minutes (keys, last->minutes, error);
}

static gboolean
read_question (const RwKeys *keys,
               GArray       *into,
               GError      **error)
{
  const char *id = rw_json_get_string (keys->object, "id", "");
  RwStageQuestion question = { 0 };
  int gate = 0, supply = 0;

  if (!g_str_has_prefix (id, RW_STAGE_QUESTION_PREFIX))
    return rw_keys_fail (keys, "id", error, _ ("must begin with “stage-”"));
  g_array_append_val (into, question);

  RwStageQuestion *last = &g_array_index (into, RwStageQuestion, into->len - 1);

  last->id = g_intern_string (id);
  if (!read_text (keys, "text", &last->text, error) || !read_optional_text (keys, "no", &last->no, error))
    return FALSE;
  if (last->no != NULL && !rw_keys_choice (keys, "no_gate", gate_words, -1, &gate, error))
    return FALSE;
  last->no_stops = gate == 1;
  if (!json_object_has_member (keys->object, "supply"))
    return TRUE;
  if (!rw_keys_choice (keys, "supply", supply_words, -1, &supply, error))
    return FALSE;
  last->supply = supply_words[supply];
  return TRUE;
}

typedef gboolean (*ReadItem) (const RwKeys *keys,
                              GArray       *into,
                              GError      **error);

static gboolean
read_items (const RwKeys *keys,
            const char   *key,
            ReadItem      read,
            GArray       *into,
            GError      **error)
{
  JsonArray *array = rw_keys_array (keys, key, error);

  if (array == NULL)
    return FALSE;
  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      g_autofree char *where = g_strdup_printf ("%s: %s[%u]", keys->where, key, i);
      RwKeys item;

      if (!rw_keys_init (&item, json_array_get_element (array, i), where, keys->domain, keys->code, error)
          || !read (&item, into, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
read_safety (const RwKeys *keys,
             RwStageText  *stage,
             GError      **error)
{
  int hazard = 0, who = 0;

  if (!rw_keys_choice (keys, "hazard", hazard_words, -1, &hazard, error)
      || !rw_keys_choice (keys, "who", who_words, -1, &who, error)
      || !read_optional_text (keys, "caution", &stage->caution, error))
    return FALSE;
  stage->hazard = (RwStageHazard) hazard;
  stage->who = (RwStageWho) who;
  if (stage->caution == NULL && stage->hazard != RW_STAGE_HAZARD_NONE)
    return rw_keys_fail (keys, "caution", error, _ ("must state the hazard"));
  return TRUE;
}

static gboolean
read_stage (const RwKeys *keys,
            RwStageText  *stage,
            GError      **error)
{
  if (g_strcmp0 (rw_json_get_string (keys->object, "id", NULL), stage_ids[stage->stage]) != 0)
    return rw_keys_fail (keys, "id", error, _ ("is not that of the stage which stands here"));
  stage->measure = g_array_new (FALSE, FALSE, sizeof (RwStageMeasure));
  g_array_set_clear_func (stage->measure, clear_measure);
  stage->questions = g_array_new (FALSE, FALSE, sizeof (RwStageQuestion));
  g_array_set_clear_func (stage->questions, clear_question);
  return read_text (keys, "title", &stage->title, error) && read_text (keys, "purpose", &stage->purpose, error)
         && read_safety (keys, stage, error) && read_texts (keys, "needs", 0, &stage->needs, error)
         && read_texts (keys, "steps", 1, &stage->steps, error)
         && read_items (keys, "measure", read_measure, stage->measure, error)
         && read_items (keys, "questions", read_question, stage->questions, error)
         && read_texts (keys, "ends", 1, &stage->ends, error)
         && read_texts (keys, "stops", 1, &stage->stops, error)
         && read_text (keys, "unproven", &stage->unproven, error);
}

static gboolean
read_all (RwStageWords *self,
          JsonNode     *root,
          const char   *path,
          GError      **error)
{
  RwKeys file;

  if (!rw_keys_init (&file, root, path, RW_STAGE_ERROR, RW_STAGE_ERROR_FORMAT, error))
    return FALSE;

  JsonArray *array = rw_json_get_array (file.object, "stages");

  if (array == NULL || json_array_get_length (array) != RW_N_STAGES)
    return rw_keys_fail (&file, "stages", error, _ ("must list all ten stages, in the order of the work"));
  for (guint i = 0; i < RW_N_STAGES; i++)
    {
      g_autofree char *where = g_strdup_printf ("%s: stages[%u]", path, i);
      RwKeys keys;

      self->stages[i].stage = (RwStage) i;
      if (!rw_keys_init (&keys, json_array_get_element (array, i), where, file.domain, file.code, error)
          || !read_stage (&keys, &self->stages[i], error))
        return FALSE;
    }
  return TRUE;
}

RwStageWords *
rw_stage_words_load (const char *path,
                     GError    **error)
{
  g_autoptr (GError) problem = NULL;
  g_autoptr (JsonNode) root = rw_json_parse_file (path, &problem);

  if (root == NULL)
    {
      const gboolean format = problem->domain == JSON_PARSER_ERROR;

      g_set_error (error, RW_STAGE_ERROR, format ? RW_STAGE_ERROR_FORMAT : RW_STAGE_ERROR_READ,
                   _ ("Cannot read the stages of the bring-up: %s"), problem->message);
      return NULL;
    }

  g_autoptr (RwStageWords) self = g_atomic_rc_box_new0 (RwStageWords);

  return read_all (self, root, path, error) ? g_steal_pointer (&self) : NULL;
}

RwStageWords *
rw_stage_words_load_shipped (GError **error)
{
  g_autofree char *folder = rw_paths_dup_shipped ("stages");
  g_autofree char *path = g_build_filename (folder, "stages.json", NULL);

  return rw_stage_words_load (path, error);
}

const RwStageText *
rw_stage_words_get (const RwStageWords *self,
                    RwStage             stage)
{
  g_return_val_if_fail (stage < RW_N_STAGES, NULL);
  return &self->stages[stage];
}

/* --- words for people --------------------------------------------------------------------------- */

const char *
rw_stage_hazard_get_label (RwStageHazard hazard)
{
  static const char *const labels[] = { NULL, N_ ("live, low voltage"), N_ ("beside bare mains parts"),
                                        N_ ("live mains"), N_ ("beside the picture tube's high voltage") };

  return hazard < G_N_ELEMENTS (labels) && labels[hazard] != NULL ? _ (labels[hazard]) : NULL;
}

const char *
rw_stage_who_get_label (RwStageWho who)
{
  static const char *const labels[] = { N_ ("for anyone"), N_ ("for trained people only"),
                                        N_ ("for licensed people only") };

  return who < G_N_ELEMENTS (labels) ? _ (labels[who]) : NULL;
}
