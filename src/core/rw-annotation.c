/* rw-annotation.c: one annotation as a line of its file, and back.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The file: UTF-8, lines ended by \n, the first one the header, the rest in the order in which they were written.
 *
 *   {"railwright_notes":1,"session":"<uuid>","cabinet":"Tidepool Racer","started":"2026-03-14T09:30:00Z"}
 *   {"n":1,"t":12.5,"at":7,"by":"Ada","text":"the fan stops here","written":"2026-03-14T18:02:11Z"}
 *   {"n":2,"t":30.0,"at":null,"by":"","text":"…","written":"…"}
 *   {"n":3,"t":31.0,"at":12,"written":"…","call":{"ask":"p5","place":"board","kind":"dc","was":4.98}}
 *   {"retract":1}
 *
 * Cabinet and start are those of the session, so that notes that travel alone say which one they want; files of older
 * programs have the id alone. Nothing in it is ever changed. Unknown keys are kept and ignored, and so is a line with a number and a time that is
 * neither a note nor a call but holds something else.
 */
#include "config.h"

#include "rw-annotations-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "rw-event.h"
#include "rw-json.h"
#include "rw-plain-text.h"

static const int format_version = 1;
static const char stamp_format[] = "%Y-%m-%dT%H:%M:%SZ"; /* of moments in UTC */

G_DEFINE_QUARK (rw_annotations_error, rw_annotations_error)

void
rw_annotation_line_clear (RwAnnotationLine *self)
{
  g_clear_pointer (&self->shown.by, g_free);
  g_clear_pointer (&self->shown.text, g_free);
  g_clear_pointer (&self->shown.written, g_free);
  rw_call_said_clear (&self->call);
  g_clear_pointer (&self->node, json_node_unref);
}

static gboolean
bad (GError    **error,
     const char *message)
{
  g_set_error_literal (error, RW_ANNOTATIONS_ERROR, RW_ANNOTATIONS_ERROR_READ, message);
  return FALSE;
}

static gboolean
read_count (JsonObject *object,
            const char *key,
            guint      *out)
{
  double n;

  if (!rw_json_get_number (object, key, &n) || n < 1 || n > 4e9 || n != floor (n))
    return FALSE;
  *out = (guint) n;
  return TRUE;
}

/* Is there more in the object than what is shown of it? */
static gboolean
holds_more (JsonObject *object)
{
  static const char *const known[] = { "n", "t", "at", "by", "text", "written", NULL };
  g_autoptr (GList) keys = json_object_get_members (object);

  for (GList *l = keys; l != NULL; l = l->next)
    if (!g_strv_contains (known, l->data))
      return TRUE;
  return !rw_plain_text_is (rw_json_get_string (object, "text", ""), RW_PLAIN_TEXT)
         || !rw_plain_text_is (rw_json_get_string (object, "by", ""), RW_PLAIN_NAME)
         || !rw_plain_text_is (rw_json_get_string (object, "written", ""), RW_PLAIN_NAME);
}

/* A note, a call, or something else. */
static gboolean
read_kind (JsonObject       *object,
           RwAnnotationLine *out,
           GError          **error)
{
  JsonNode *call = json_object_get_member (object, "call");

  if (rw_json_get_string (object, "text", NULL) != NULL)
    return TRUE;
  if (call == NULL && !holds_more (object))
    return bad (error, _ ("key “text” is missing"));
  out->kind = call != NULL ? RW_ANNOTATION_CALL : RW_ANNOTATION_OTHER;
  if (call == NULL)
    return TRUE;
  if (!JSON_NODE_HOLDS_OBJECT (call))
    return bad (error, _ ("key “call” must be an object"));
  return rw_call_said_from_object (json_node_get_object (call), &out->call, error);
}

static gboolean
read_annotation (JsonObject       *object,
                 RwAnnotationLine *out,
                 GError          **error)
{
  JsonNode *at = json_object_get_member (object, "at");

  if (!read_count (object, "n", &out->shown.n))
    return bad (error, _ ("key “n” must be a whole number from 1"));
  if (!rw_json_get_number (object, "t", &out->shown.t) || out->shown.t < 0 || out->shown.t > RW_EVENT_MAX_SECONDS)
    return bad (error, _ ("key “t” must be seconds since the start"));
  if (at != NULL && !JSON_NODE_HOLDS_NULL (at) && !read_count (object, "at", &out->shown.at))
    return bad (error, _ ("key “at” must be the number of an event, or null"));
  if (!read_kind (object, out, error))
    return FALSE;
  out->shown.text = rw_plain_text_dup (rw_json_get_string (object, "text", ""), RW_PLAIN_TEXT);
  out->shown.by = rw_plain_text_dup (rw_json_get_string (object, "by", ""), RW_PLAIN_NAME);
  out->shown.written = rw_plain_text_dup (rw_json_get_string (object, "written", ""), RW_PLAIN_NAME);
  return TRUE;
}

gboolean
rw_annotation_line_read (RwAnnotationLine *out,
                         const char       *tainted,
                         gsize             length,
                         GError          **error)
{
  g_autoptr (GError) problem = NULL;
  g_autoptr (JsonNode) root = rw_json_parse (tainted, length, &problem);

  *out = (RwAnnotationLine){ 0 };
  if (root == NULL)
    return bad (error, problem->message);
  if (!JSON_NODE_HOLDS_OBJECT (root))
    return bad (error, _ ("not a JSON object"));

  JsonObject *object = json_node_get_object (root);

  if (json_object_has_member (object, "retract"))
    return read_count (object, "retract", &out->retract)
           || bad (error, _ ("key “retract” must be the number of an annotation"));
  if (!read_annotation (object, out, error))
    return FALSE;
  if (holds_more (object))
    out->node = g_steal_pointer (&root);
  return TRUE;
}

static void
append_plain (const RwAnnotation *self,
              guint               n,
              GString            *out)
{
  g_string_append_printf (out, "{\"n\":%u,\"t\":", n);
  rw_json_append_number (out, self->t);
  if (self->at > 0)
    g_string_append_printf (out, ",\"at\":%u,\"by\":", self->at);
  else
    g_string_append (out, ",\"at\":null,\"by\":");
  rw_json_append_string (out, self->by);
  g_string_append (out, ",\"text\":");
  rw_json_append_string (out, self->text);
  g_string_append (out, ",\"written\":");
  rw_json_append_string (out, self->written);
  g_string_append (out, "}");
}

void
rw_annotation_line_append (const RwAnnotationLine *self,
                           guint                   n,
                           GString                *out)
{
  if (self->retract > 0)
    g_string_append_printf (out, "{\"retract\":%u}", n);
  else if (self->node == NULL)
    append_plain (&self->shown, n, out);
  else
    {
      json_object_set_int_member (json_node_get_object (self->node), "n", n);
      rw_json_append_node (out, self->node);
    }
  g_string_append_c (out, '\n');
}

char *
rw_annotation_line_make (double      t,
                         guint       at,
                         const char *by,
                         const char *text,
                         GDateTime  *written)
{
  g_autoptr (GDateTime) utc = g_date_time_to_utc (written);
  g_autofree char *stamp = g_date_time_format (utc, stamp_format);
  const RwAnnotation raw = { 1, t, at, (char *) by, (char *) text, stamp };
  GString *out = g_string_new (NULL);

  append_plain (&raw, 1, out);
  return g_string_free (out, FALSE);
}

char *
rw_annotation_line_make_call (double            t,
                              guint             at,
                              const RwCallSaid *said,
                              GDateTime        *written)
{
  g_autoptr (GDateTime) utc = g_date_time_to_utc (written);
  g_autofree char *stamp = g_date_time_format (utc, stamp_format);
  GString *out = g_string_new ("{\"n\":1,\"t\":");

  rw_json_append_number (out, t);
  if (at > 0)
    g_string_append_printf (out, ",\"at\":%u", at);
  g_string_append_printf (out, ",\"written\":\"%s\",\"call\":{", stamp);
  rw_call_said_append_members (said, out);
  g_string_append (out, "}}");
  return g_string_free (out, FALSE);
}

static void
append_without_number (JsonNode *node,
                       GString  *out)
{
  JsonObject *object = json_node_get_object (node);
  g_autoptr (GList) keys = json_object_get_members (object);

  for (GList *l = keys; l != NULL; l = l->next)
    if (!g_str_equal (l->data, "n"))
      {
        rw_json_append_string (out, l->data);
        rw_json_append_node (out, json_object_get_member (object, l->data));
      }
}

char *
rw_annotation_line_dup_key (const RwAnnotationLine *self)
{
  const RwAnnotation *shown = &self->shown;
  GString *key = g_string_new (NULL);

  g_string_append_printf (key, "%.6f\n%u\n%s\n%s\n%s", shown->t, shown->at, shown->by, shown->written, shown->text);
  if (self->kind == RW_ANNOTATION_CALL)
    {
      g_string_append_c (key, '\n');
      rw_call_said_append_members (&self->call, key);
    }
  if (self->kind == RW_ANNOTATION_OTHER)
    {
      g_string_append_c (key, '\n');
      append_without_number (self->node, key);
    }
  return g_string_free (key, FALSE);
}

/* --- the first line ------------------------------------------------------------------------------- */

void
rw_annotations_head_clear (RwAnnotationsHead *self)
{
  g_clear_pointer (&self->session, g_free);
  g_clear_pointer (&self->cabinet, g_free);
  g_clear_pointer (&self->started, g_date_time_unref);
}

void
rw_annotations_head_set (RwAnnotationsHead       *self,
                         const RwAnnotationsHead *other)
{
  rw_annotations_head_clear (self);
  self->session = g_strdup (other->session);
  self->cabinet = g_strdup (other->cabinet);
  self->started = other->started != NULL ? g_date_time_ref (other->started) : NULL;
}

void
rw_annotation_header_append (const RwAnnotationsHead *head,
                             GString                 *out)
{
  g_string_append_printf (out, "{\"railwright_notes\":%d,\"session\":", format_version);
  rw_json_append_string (out, head->session);
  if (head->cabinet != NULL)
    {
      g_string_append (out, ",\"cabinet\":");
      rw_json_append_string (out, head->cabinet);
    }
  if (head->started != NULL)
    {
      g_autofree char *stamp = g_date_time_format (head->started, stamp_format);

      g_string_append (out, ",\"started\":");
      rw_json_append_string (out, stamp);
    }
  g_string_append (out, "}\n");
}

static gboolean
refuse_header (GError    **error,
               const char *message)
{
  g_set_error_literal (error, RW_ANNOTATIONS_ERROR, RW_ANNOTATIONS_ERROR_HEADER, message);
  return FALSE;
}

/* What helps to find the session, and is no error when it is missing or makes no sense. */
static void
read_about (JsonObject        *object,
            RwAnnotationsHead *out)
{
  const char *cabinet = rw_json_get_string (object, "cabinet", NULL);
  g_autoptr (GTimeZone) utc = g_time_zone_new_utc ();
  g_autoptr (GDateTime) started = g_date_time_new_from_iso8601 (rw_json_get_string (object, "started", ""), utc);

  if (cabinet != NULL && *cabinet != '\0')
    out->cabinet = rw_plain_text_dup (cabinet, RW_PLAIN_NAME);
  out->started = started != NULL ? g_date_time_to_utc (started) : NULL;
}

gboolean
rw_annotation_header_read (RwAnnotationsHead *out,
                           const char        *tainted,
                           gsize              length,
                           GError           **error)
{
  *out = (RwAnnotationsHead){ 0 };

  g_autoptr (JsonNode) root = rw_json_parse (tainted, length, NULL);
  JsonObject *object = root != NULL && JSON_NODE_HOLDS_OBJECT (root) ? json_node_get_object (root) : NULL;
  double version = 0;

  if (object == NULL || !rw_json_get_number (object, "railwright_notes", &version) || version < 1)
    return refuse_header (error, _ ("the first line is not the header of annotations: key “railwright_notes” is missing"));
  if (version > format_version)
    return refuse_header (error, _ ("these annotations were written by a newer version of the program"));

  const char *session = rw_json_get_string (object, "session", NULL);

  if (session == NULL)
    return refuse_header (error, _ ("header: key “session” must name the session that they belong to"));
  out->session = rw_plain_text_dup (session, RW_PLAIN_NAME);
  read_about (object, out);
  return TRUE;
}
