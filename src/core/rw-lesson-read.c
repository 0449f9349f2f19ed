/* rw-lesson-read.c: a lesson out of its file.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   {"id":"what-the-screw-does","title":"…","about":"…","caution":"…","minutes":20,
 *    "on":{"session":"lantern-drift-wiring"}
 *      or {"practice":{"profile":"classic-5-12-m5","cabinet":"Tidepool Racer","seed":11,
 *                      "faults":[{"cause":"trim-low","strength":0.5}]}}
 *      or {"practice":{"drill":1,"seed":4711}},
 *    "steps":[{"title":"…","say":"…","class":"…","ask":"…","caution":"…","hide":["p12"],"show":"map","spotlight":"p5",
 *              "call":{"rail":"p12","place":"board"},"go":{"chapter":"…"} or {"t":120},"until":"reading"}, …]}
 *
 * Unknown keys are ignored.
 */
#include "config.h"

#include "rw-lesson-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-json.h"
#include "rw-keys.h"
#include "rw-limits.h"
#include "rw-plain-text.h"

#define MAX_FAULTS 4
#define MAX_DRILL 3

static const char *const show_words[] = { "values", "map", "chart", "check", "text", "blank", NULL };
static const char *const until_words[] = { "reading", "trim", "mark", "finding", "repair", "reveal", NULL };

/* *out NULL when it is not there. Translated. */
static gboolean
read_text (const RwKeys *keys,
           const char   *key,
           gboolean      required,
           char        **out,
           GError      **error)
{
  if (!required && !rw_keys_has (keys, key))
    return TRUE;

  const char *text = rw_keys_string (keys, key, error);

  if (text == NULL)
    return FALSE;
  if (g_utf8_strlen (text, -1) > RW_LESSON_MAX_TEXT)
    return rw_keys_fail (keys, key, error, _ ("is too long: 1500 characters at most"));
  *out = rw_plain_text_dup (_ (text), RW_PLAIN_TEXT);
  return TRUE;
}

static gboolean
is_id (const char *text)
{
  gsize n = 0;

  while (g_ascii_isalnum (text[n]) || text[n] == '-')
    n++;
  return n > 0 && text[n] == '\0' && n <= RW_LIMIT_ID_CHARS;
}

static gboolean
read_id (const RwKeys *keys,
         const char   *key,
         const char  **out,
         GError      **error)
{
  const char *id = rw_json_get_string (keys->object, key, "");

  if (!is_id (id))
    return rw_keys_fail (keys, key, error, _ ("must be an id of letters, digits and hyphens"));
  *out = g_intern_string (id);
  return TRUE;
}

/* *out untouched when it is not there. */
static gboolean
read_choice (const RwKeys      *keys,
             const char        *key,
             const char *const *words,
             int               *out,
             GError           **error)
{
  return !rw_keys_has (keys, key) || rw_keys_choice (keys, key, words, -1, out, error);
}

/* An object in this one, for what stands in it. */
static RwKeys
inside (const RwKeys *keys,
        JsonObject   *object)
{
  return (RwKeys){ object, keys->where, keys->domain, keys->code };
}

/* --- what it is held on ----------------------------------------------------------------------------- */

static gboolean
read_fault (RwLesson     *self,
            const RwKeys *keys,
            JsonNode     *node,
            GError      **error)
{
  RwLessonFault fault = { .strength = 1 };

  if (!JSON_NODE_HOLDS_OBJECT (node))
    return rw_keys_fail (keys, "faults", error, _ ("must be a list of objects"));

  const RwKeys inner = inside (keys, json_node_get_object (node));

  if (!read_id (&inner, "cause", &fault.id, error)
      || (rw_keys_has (&inner, "strength") && !rw_keys_number (&inner, "strength", 0, 1, &fault.strength, error)))
    return FALSE;
  g_array_append_val (self->faults, fault);
  return TRUE;
}

static gboolean
read_faults (RwLesson     *self,
             const RwKeys *keys,
             GError      **error)
{
  JsonArray *array = rw_json_get_array (keys->object, "faults");

  if (!rw_keys_has (keys, "faults"))
    return TRUE;
  if (array == NULL || json_array_get_length (array) > MAX_FAULTS)
    return rw_keys_fail (keys, "faults", error, _ ("must be a list of four causes at most"));
  for (guint i = 0; i < json_array_get_length (array); i++)
    if (!read_fault (self, keys, json_array_get_element (array, i), error))
      return FALSE;
  return TRUE;
}

static gboolean
read_practice (RwLesson     *self,
               const RwKeys *keys,
               GError      **error)
{
  double seed = 1, drill;

  if (rw_keys_has (keys, "seed") && !rw_keys_number (keys, "seed", 0, 1e9, &seed, error))
    return FALSE;
  self->seed = (guint64) seed;
  if (rw_keys_has (keys, "drill"))
    {
      if (!rw_keys_number (keys, "drill", 1, MAX_DRILL, &drill, error))
        return FALSE;
      self->drill = (guint) drill;
      return TRUE;
    }
  return read_id (keys, "profile", &self->profile, error) && read_text (keys, "cabinet", TRUE, &self->cabinet, error)
         && read_faults (self, keys, error);
}

static gboolean
read_on (RwLesson     *self,
         const RwKeys *keys,
         GError      **error)
{
  JsonObject *on = rw_json_get_object (keys->object, "on");

  if (on == NULL)
    return rw_keys_fail (keys, "on", error, _ ("must be an object that names a session or a practice cabinet"));

  const RwKeys inner = inside (keys, on);
  JsonObject *practice = rw_json_get_object (on, "practice");

  if (practice == NULL)
    return read_id (&inner, "session", &self->session, error);

  const RwKeys cabinet = inside (keys, practice);

  return read_practice (self, &cabinet, error);
}

/* --- the steps ---------------------------------------------------------------------------------- */

static gboolean
read_hidden (RwLessonStep *step,
             const RwKeys *keys,
             GError      **error)
{
  JsonArray *array = rw_json_get_array (keys->object, "hide");

  if (!rw_keys_has (keys, "hide"))
    return TRUE;
  if (array == NULL || json_array_get_length (array) > RW_LIMIT_RAILS)
    return rw_keys_fail (keys, "hide", error, _ ("must be a list of rails"));
  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      JsonNode *node = json_array_get_element (array, i);
      const char *id = JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_STRING
                           ? json_node_get_string (node)
                           : "";

      if (!is_id (id))
        return rw_keys_fail (keys, "hide", error, _ ("must be a list of rails"));
      g_ptr_array_add (step->hide, (gpointer) g_intern_string (id));
    }
  return TRUE;
}

static gboolean
read_call (RwLessonStep *step,
           const RwKeys *keys,
           GError      **error)
{
  JsonObject *call = rw_json_get_object (keys->object, "call");

  if (!rw_keys_has (keys, "call"))
    return TRUE;
  if (call == NULL)
    return rw_keys_fail (keys, "call", error, _ ("must be an object with a rail and a place"));

  const RwKeys inner = inside (keys, call);

  if (!read_id (&inner, "rail", &step->call_rail, error))
    return FALSE;
  if (!rw_place_from_id (rw_json_get_string (call, "place", ""), &step->call_place))
    return rw_keys_fail (&inner, "place", error, _ ("must be one of the places"));
  return TRUE;
}

static gboolean
read_go (RwLessonStep *step,
         const RwKeys *keys,
         GError      **error)
{
  JsonObject *go = rw_json_get_object (keys->object, "go");

  if (!rw_keys_has (keys, "go"))
    return TRUE;
  if (go == NULL)
    return rw_keys_fail (keys, "go", error, _ ("must be an object with a chapter or seconds"));

  const RwKeys inner = inside (keys, go);

  if (rw_keys_has (&inner, "t"))
    return rw_keys_number (&inner, "t", 0, 1e9, &step->t, error);

  const char *chapter = rw_json_get_string (go, "chapter", "");

  if (*chapter == '\0')
    return rw_keys_fail (&inner, "chapter", error, _ ("must be the title of a chapter"));
  step->chapter = rw_plain_text_dup (chapter, RW_PLAIN_TEXT);
  return TRUE;
}

static gboolean
read_scene (RwLessonStep *step,
            const RwKeys *keys,
            GError      **error)
{
  int show = step->show, until = -1;

  if (!read_choice (keys, "show", show_words, &show, error) || !read_choice (keys, "until", until_words, &until, error)
      || (rw_keys_has (keys, "spotlight") && !read_id (keys, "spotlight", &step->spotlight, error)))
    return FALSE;
  step->show = (RwLessonShow) show;
  step->until = until < 0 ? RW_LESSON_UNTIL_NOTHING : (RwLessonUntil) (until + 1);
  return TRUE;
}

static gboolean
read_step (RwLesson *self,
           JsonNode *node,
           guint     i,
           GError  **error)
{
  g_autofree char *where = g_strdup_printf ("%s: steps[%u]", self->path, i);
  const RwLessonStep *former = i > 0 ? self->steps->pdata[i - 1] : NULL;
  RwLessonStep *step = rw_lesson_step_new ();
  RwKeys keys;

  step->t = NAN;
  step->show = former != NULL ? former->show : RW_LESSON_SHOW_VALUES;
  g_ptr_array_add (self->steps, step);
  if (!rw_keys_init (&keys, node, where, RW_LESSON_ERROR, RW_LESSON_ERROR_FORMAT, error))
    return FALSE;
  return read_text (&keys, "title", TRUE, &step->title, error) && read_text (&keys, "say", FALSE, &step->say, error)
         && read_text (&keys, "class", FALSE, &step->words, error) && read_text (&keys, "ask", FALSE, &step->ask, error)
         && read_text (&keys, "caution", FALSE, &step->caution, error) && read_hidden (step, &keys, error)
         && read_scene (step, &keys, error) && read_call (step, &keys, error) && read_go (step, &keys, error);
}

static gboolean
read_steps (RwLesson     *self,
            const RwKeys *keys,
            GError      **error)
{
  JsonArray *array = rw_json_get_array (keys->object, "steps");

  if (array == NULL || json_array_get_length (array) == 0 || json_array_get_length (array) > RW_LESSON_MAX_STEPS)
    return rw_keys_fail (keys, "steps", error, _ ("must be a list of 1 to 100 steps"));
  for (guint i = 0; i < json_array_get_length (array); i++)
    if (!read_step (self, json_array_get_element (array, i), i, error))
      return FALSE;
  return TRUE;
}

static gboolean
read_lesson (RwLesson *self,
             JsonNode *root,
             GError  **error)
{
  RwKeys keys;

  if (!rw_keys_init (&keys, root, self->path, RW_LESSON_ERROR, RW_LESSON_ERROR_FORMAT, error))
    return FALSE;
  return read_id (&keys, "id", &self->id, error) && read_text (&keys, "title", TRUE, &self->title, error)
         && read_text (&keys, "about", TRUE, &self->about, error)
         && read_text (&keys, "caution", FALSE, &self->caution, error)
         && rw_keys_number (&keys, "minutes", 1, 600, &self->minutes, error) && read_on (self, &keys, error)
         && read_steps (self, &keys, error);
}

static gboolean
is_small (const char *path,
          GError    **error)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) problem = NULL;
  g_autoptr (GFileInfo) info = g_file_query_info (file, G_FILE_ATTRIBUTE_STANDARD_SIZE, G_FILE_QUERY_INFO_NONE, NULL,
                                                  &problem);

  if (info == NULL)
    g_set_error (error, RW_LESSON_ERROR, RW_LESSON_ERROR_READ, _ ("Cannot read this lesson: %s"), problem->message);
  else if (g_file_info_get_size (info) > RW_LESSON_MAX_BYTES)
    g_set_error (error, RW_LESSON_ERROR, RW_LESSON_ERROR_FORMAT, _ ("%s: a lesson holds 256 kB at most"), path);
  else
    return TRUE;
  return FALSE;
}

RwLesson *
rw_lesson_load (const char *path,
                GError    **error)
{
  g_autoptr (GError) problem = NULL;

  if (!is_small (path, error))
    return NULL;

  g_autoptr (JsonNode) root = rw_json_parse_file (path, &problem);

  if (root == NULL)
    {
      const gboolean format = problem->domain == JSON_PARSER_ERROR;

      g_set_error (error, RW_LESSON_ERROR, format ? RW_LESSON_ERROR_FORMAT : RW_LESSON_ERROR_READ,
                   _ ("Cannot read this lesson: %s"), problem->message);
      return NULL;
    }

  g_autoptr (RwLesson) self = rw_lesson_new (path);

  return read_lesson (self, root, error) ? g_steal_pointer (&self) : NULL;
}
