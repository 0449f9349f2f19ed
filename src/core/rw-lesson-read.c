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
#include "rw-limits.h"
#include "rw-plain-text.h"

#define MAX_FAULTS 4
#define MAX_DRILL 3

static const char *const show_words[] = { "values", "map", "chart", "check", "text", "blank", NULL };
static const char *const until_words[] = { "reading", "trim", "mark", "finding", "repair", "reveal", NULL };

/* An object being read, and where it stands: "file: steps[3]". */
typedef struct
{
  JsonObject *object;
  const char *where;
} Source;

static gboolean
bad (const Source *source,
     const char   *key,
     const char   *what,
     GError      **error)
{
  /* Translators: file and place in it, key, what is wrong. */
  g_set_error (error, RW_LESSON_ERROR, RW_LESSON_ERROR_FORMAT, _ ("%s: key “%s” %s"), source->where, key, what);
  return FALSE;
}

static gboolean
has (const Source *source,
     const char   *key)
{
  JsonNode *node = json_object_get_member (source->object, key);

  return node != NULL && !JSON_NODE_HOLDS_NULL (node);
}

/* *out NULL when it is not there. Translated. */
static gboolean
read_text (const Source *source,
           const char   *key,
           gboolean      required,
           char        **out,
           GError      **error)
{
  const char *text = rw_json_get_string (source->object, key, "");

  if (!required && !has (source, key))
    return TRUE;
  if (*text == '\0')
    return bad (source, key, _ ("must be a text"), error);
  if (g_utf8_strlen (text, -1) > RW_LESSON_MAX_TEXT)
    return bad (source, key, _ ("is too long: 1500 characters at most"), error);
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
read_id (const Source *source,
         const char   *key,
         const char  **out,
         GError      **error)
{
  const char *id = rw_json_get_string (source->object, key, "");

  if (!is_id (id))
    return bad (source, key, _ ("must be an id of letters, digits and hyphens"), error);
  *out = g_intern_string (id);
  return TRUE;
}

static gboolean
read_number (const Source *source,
             const char   *key,
             double        lo,
             double        hi,
             double       *out,
             GError      **error)
{
  double number;

  if (!rw_json_get_number (source->object, key, &number) || number < lo || number > hi)
    {
      g_autofree char *what = g_strdup_printf (_ ("must be a number from %g to %g"), lo, hi);

      return bad (source, key, what, error);
    }
  *out = number;
  return TRUE;
}

/* *out untouched when it is not there. */
static gboolean
read_choice (const Source      *source,
             const char        *key,
             const char *const *words,
             guint             *out,
             GError           **error)
{
  const char *word = rw_json_get_string (source->object, key, "");
  g_autofree char *all = NULL;

  if (!has (source, key))
    return TRUE;
  for (guint i = 0; words[i] != NULL; i++)
    if (g_str_equal (words[i], word))
      {
        *out = i;
        return TRUE;
      }
  all = g_strjoinv (", ", (char **) words);

  g_autofree char *what = g_strdup_printf (_ ("must be one of %s"), all);

  return bad (source, key, what, error);
}

/* --- what it is held on ----------------------------------------------------------------------------- */

static gboolean
read_fault (RwLesson     *self,
            const Source *source,
            JsonNode     *node,
            GError      **error)
{
  RwLessonFault fault = { .strength = 1 };

  if (!JSON_NODE_HOLDS_OBJECT (node))
    return bad (source, "faults", _ ("must be a list of objects"), error);

  const Source inner = { json_node_get_object (node), source->where };

  if (!read_id (&inner, "cause", &fault.id, error)
      || (has (&inner, "strength") && !read_number (&inner, "strength", 0, 1, &fault.strength, error)))
    return FALSE;
  g_array_append_val (self->faults, fault);
  return TRUE;
}

static gboolean
read_faults (RwLesson     *self,
             const Source *source,
             GError      **error)
{
  JsonArray *array = rw_json_get_array (source->object, "faults");

  if (!has (source, "faults"))
    return TRUE;
  if (array == NULL || json_array_get_length (array) > MAX_FAULTS)
    return bad (source, "faults", _ ("must be a list of four causes at most"), error);
  for (guint i = 0; i < json_array_get_length (array); i++)
    if (!read_fault (self, source, json_array_get_element (array, i), error))
      return FALSE;
  return TRUE;
}

static gboolean
read_practice (RwLesson     *self,
               const Source *source,
               GError      **error)
{
  double seed = 1, drill;

  if (has (source, "seed") && !read_number (source, "seed", 0, 1e9, &seed, error))
    return FALSE;
  self->seed = (guint64) seed;
  if (has (source, "drill"))
    {
      if (!read_number (source, "drill", 1, MAX_DRILL, &drill, error))
        return FALSE;
      self->drill = (guint) drill;
      return TRUE;
    }
  return read_id (source, "profile", &self->profile, error) && read_text (source, "cabinet", TRUE, &self->cabinet, error)
         && read_faults (self, source, error);
}

static gboolean
read_on (RwLesson     *self,
         const Source *source,
         GError      **error)
{
  JsonObject *on = rw_json_get_object (source->object, "on");

  if (on == NULL)
    return bad (source, "on", _ ("must be an object that names a session or a practice cabinet"), error);

  const Source inner = { on, source->where };
  JsonObject *practice = rw_json_get_object (on, "practice");

  if (practice == NULL)
    return read_id (&inner, "session", &self->session, error);

  const Source cabinet = { practice, source->where };

  return read_practice (self, &cabinet, error);
}

/* --- the steps ---------------------------------------------------------------------------------- */

static gboolean
read_hidden (RwLessonStep *step,
             const Source *source,
             GError      **error)
{
  JsonArray *array = rw_json_get_array (source->object, "hide");

  if (!has (source, "hide"))
    return TRUE;
  if (array == NULL || json_array_get_length (array) > RW_LIMIT_RAILS)
    return bad (source, "hide", _ ("must be a list of rails"), error);
  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      JsonNode *node = json_array_get_element (array, i);
      const char *id = JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_STRING
                           ? json_node_get_string (node)
                           : "";

      if (!is_id (id))
        return bad (source, "hide", _ ("must be a list of rails"), error);
      g_ptr_array_add (step->hide, (gpointer) g_intern_string (id));
    }
  return TRUE;
}

static gboolean
read_call (RwLessonStep *step,
           const Source *source,
           GError      **error)
{
  JsonObject *call = rw_json_get_object (source->object, "call");

  if (!has (source, "call"))
    return TRUE;
  if (call == NULL)
    return bad (source, "call", _ ("must be an object with a rail and a place"), error);

  const Source inner = { call, source->where };

  if (!read_id (&inner, "rail", &step->call_rail, error))
    return FALSE;
  if (!rw_place_from_id (rw_json_get_string (call, "place", ""), &step->call_place))
    return bad (&inner, "place", _ ("must be one of the places"), error);
  return TRUE;
}

static gboolean
read_go (RwLessonStep *step,
         const Source *source,
         GError      **error)
{
  JsonObject *go = rw_json_get_object (source->object, "go");

  if (!has (source, "go"))
    return TRUE;
  if (go == NULL)
    return bad (source, "go", _ ("must be an object with a chapter or seconds"), error);

  const Source inner = { go, source->where };

  if (has (&inner, "t"))
    return read_number (&inner, "t", 0, 1e9, &step->t, error);

  const char *chapter = rw_json_get_string (go, "chapter", "");

  if (*chapter == '\0')
    return bad (&inner, "chapter", _ ("must be the title of a chapter"), error);
  step->chapter = rw_plain_text_dup (chapter, RW_PLAIN_TEXT);
  return TRUE;
}

static gboolean
read_scene (RwLessonStep *step,
            const Source *source,
            GError      **error)
{
  guint show = step->show, until = G_MAXUINT;

  if (!read_choice (source, "show", show_words, &show, error) || !read_choice (source, "until", until_words, &until, error)
      || (has (source, "spotlight") && !read_id (source, "spotlight", &step->spotlight, error)))
    return FALSE;
  step->show = (RwLessonShow) show;
  step->until = until == G_MAXUINT ? RW_LESSON_UNTIL_NOTHING : (RwLessonUntil) (until + 1);
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

  step->t = NAN;
  step->show = former != NULL ? former->show : RW_LESSON_SHOW_VALUES;
  g_ptr_array_add (self->steps, step);
  if (!JSON_NODE_HOLDS_OBJECT (node))
    {
      g_set_error (error, RW_LESSON_ERROR, RW_LESSON_ERROR_FORMAT, _ ("%s: a step must be an object"), where);
      return FALSE;
    }

  const Source source = { json_node_get_object (node), where };

  return read_text (&source, "title", TRUE, &step->title, error) && read_text (&source, "say", FALSE, &step->say, error)
         && read_text (&source, "class", FALSE, &step->words, error) && read_text (&source, "ask", FALSE, &step->ask, error)
         && read_text (&source, "caution", FALSE, &step->caution, error) && read_hidden (step, &source, error)
         && read_scene (step, &source, error) && read_call (step, &source, error) && read_go (step, &source, error);
}

static gboolean
read_steps (RwLesson     *self,
            const Source *source,
            GError      **error)
{
  JsonArray *array = rw_json_get_array (source->object, "steps");

  if (array == NULL || json_array_get_length (array) == 0 || json_array_get_length (array) > RW_LESSON_MAX_STEPS)
    return bad (source, "steps", _ ("must be a list of 1 to 100 steps"), error);
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
  if (!JSON_NODE_HOLDS_OBJECT (root))
    {
      g_set_error (error, RW_LESSON_ERROR, RW_LESSON_ERROR_FORMAT, _ ("%s: a lesson must be an object"), self->path);
      return FALSE;
    }

  const Source source = { json_node_get_object (root), self->path };

  return read_id (&source, "id", &self->id, error) && read_text (&source, "title", TRUE, &self->title, error)
         && read_text (&source, "about", TRUE, &self->about, error)
         && read_text (&source, "caution", FALSE, &self->caution, error)
         && read_number (&source, "minutes", 1, 600, &self->minutes, error) && read_on (self, &source, error)
         && read_steps (self, &source, error);
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
