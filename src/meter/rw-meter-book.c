/* rw-meter-book.c: the meters of this bench, remembered in one JSON file.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   {"format":"railwright-meters","version":1,"meters":[
 *   {"id":"m2", …},            one meter a line, see rw-known-meter-json.h
 *   {"id":"m3", …}
 *   ]}
 *
 * The objects are kept as they were read, and only what this version knows is set in them, so that a newer
 * version's members outlive a rewriting by this one. A file that breaks a rule anywhere is set aside as a
 * whole: half a book would be written back as if it were all of it.
 */
#include "config.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "rw-json.h"
#include "rw-known-meter-json.h"
#include "rw-paths.h"

G_DEFINE_QUARK (rw_meter_book_error, rw_meter_book_error)

static const char format_id[] = "railwright-meters";

struct _RwMeterBook
{
  char       *path;
  GPtrArray  *meters;  /* of RwKnownMeter */
  JsonObject *root;    /* as read; its "meters" go along with meters */
  char       *trouble; /* why the file must not be written; NULL */
  gboolean    unsaved; /* the last writing failed: what is held is newer than the file */
};

/* What is in a file. */
typedef struct
{
  GPtrArray  *meters;
  JsonObject *root;
} Content;

static void
clear_content (Content *content)
{
  g_clear_pointer (&content->meters, g_ptr_array_unref);
  g_clear_pointer (&content->root, json_object_unref);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Content, clear_content)

static Content
make_empty (void)
{
  Content content = { g_ptr_array_new_with_free_func ((GDestroyNotify) rw_known_meter_free),
                      json_object_new () };

  json_object_set_string_member (content.root, "format", format_id);
  json_object_set_int_member (content.root, "version", 1);
  json_object_set_array_member (content.root, "meters", json_array_new ());
  return content;
}

/* --- reading ------------------------------------------------------------------------- */

static gboolean
find_id (const GPtrArray *meters,
         const char      *id,
         guint           *index)
{
  for (guint i = 0; i < meters->len; i++)
    {
      const RwKnownMeter *meter = g_ptr_array_index (meters, i);

      if (!g_str_equal (meter->facts->id, id))
        continue;
      if (index != NULL)
        *index = i;
      return TRUE;
    }
  return FALSE;
}

static gboolean
read_meter (JsonNode  *node,
            GPtrArray *meters,
            GError   **error)
{
  JsonObject *object = JSON_NODE_HOLDS_OBJECT (node) ? json_node_get_object (node) : NULL;
  g_autoptr (RwKnownMeter) meter
      = object != NULL ? rw_known_meter_from_object (object, error) : NULL;

  if (object == NULL)
    g_set_error_literal (error, RW_METER_BOOK_ERROR, RW_METER_BOOK_ERROR_DAMAGED, _ ("not an object"));
  else if (meter != NULL && find_id (meters, meter->facts->id, NULL))
    g_set_error (error, RW_METER_BOOK_ERROR, RW_METER_BOOK_ERROR_DAMAGED,
                 /* Translators: the id of a meter. */
                 _ ("another meter has the id “%s” too"), meter->facts->id);
  else if (meter != NULL)
    {
      g_ptr_array_add (meters, g_steal_pointer (&meter));
      return TRUE;
    }
  return FALSE;
}

static gboolean
read_root (JsonNode *node,
           Content  *content,
           GError  **error)
{
  JsonObject *root = JSON_NODE_HOLDS_OBJECT (node) ? json_node_get_object (node) : NULL;
  JsonArray *array = root != NULL ? rw_json_get_array (root, "meters") : NULL;
  double version;

  if (root == NULL || array == NULL
      || g_strcmp0 (rw_json_get_string (root, "format", NULL), format_id) != 0
      || !rw_json_get_number (root, "version", &version) || version < 1)
    {
      g_set_error_literal (error, RW_METER_BOOK_ERROR, RW_METER_BOOK_ERROR_DAMAGED,
                           _ ("It is no list of meters"));
      return FALSE;
    }
  clear_content (content);
  content->meters = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_known_meter_free);
  content->root = json_object_ref (root);
  for (guint i = 0; i < json_array_get_length (array); i++)
    if (!read_meter (json_array_get_element (array, i), content->meters, error))
      {
        /* Translators: goes before what is wrong with one meter of a list. */
        g_prefix_error (error, _ ("Meter %u: "), i + 1);
        return FALSE;
      }
  return TRUE;
}

/* Moves the file to the first free name. (transfer full) (nullable): NULL with errno set. */
static char *
set_aside (const char *path)
{
  for (guint i = 1; i < 1000; i++)
    {
      g_autofree char *aside = i == 1 ? g_strdup_printf ("%s.damaged", path)
                                      : g_strdup_printf ("%s.damaged-%u", path, i);

      if (g_file_test (aside, G_FILE_TEST_EXISTS))
        continue;
      return g_rename (path, aside) == 0 ? g_steal_pointer (&aside) : NULL;
    }
  errno = EEXIST;
  return NULL;
}

static void
explain_damage (RwMeterBook  *self,
                const GError *why,
                GError      **error)
{
  g_autofree char *aside = set_aside (self->path);

  if (aside != NULL)
    {
      g_set_error (error, RW_METER_BOOK_ERROR, RW_METER_BOOK_ERROR_DAMAGED,
                   /* Translators: a file, what is wrong with it, and its new name. */
                   _ ("The list of meters “%s” is damaged (%s). It was set aside as “%s”; the "
                      "list begins anew."),
                   self->path, why->message, aside);
      return;
    }
  self->trouble = g_strdup_printf (_ ("The list of meters “%s” is damaged (%s) and cannot be set "
                                      "aside (%s). Move it away yourself: until then no meter is "
                                      "remembered."),
                                   self->path, why->message, g_strerror (errno));
  g_set_error_literal (error, RW_METER_BOOK_ERROR, RW_METER_BOOK_ERROR_READ, self->trouble);
}

/* FALSE with *error when there is a file that is of no use; *content is then untouched, and empty or as it
 * was. */
static gboolean
load (RwMeterBook *self,
      Content     *content,
      GError     **error)
{
  g_autofree char *text = NULL;
  g_autoptr (GError) why = NULL;
  g_auto (Content) fresh = { NULL, NULL };
  gsize n;

  g_clear_pointer (&self->trouble, g_free);
  if (!g_file_get_contents (self->path, &text, &n, &why))
    {
      if (g_error_matches (why, G_FILE_ERROR, G_FILE_ERROR_NOENT))
        return TRUE;
      self->trouble = g_strdup_printf (_ ("The list of meters cannot be read: %s. Until that is put "
                                          "right no meter is remembered."),
                                       why->message);
      g_set_error_literal (error, RW_METER_BOOK_ERROR, RW_METER_BOOK_ERROR_READ, self->trouble);
      return FALSE;
    }

  g_autoptr (JsonNode) node = rw_json_parse (text, n, &why);

  if (node == NULL || !read_root (node, &fresh, &why))
    {
      explain_damage (self, why, error);
      return FALSE;
    }
  clear_content (content);
  *content = (Content){ g_steal_pointer (&fresh.meters), g_steal_pointer (&fresh.root) };
  return TRUE;
}

static void
take_content (RwMeterBook *self,
              Content     *content)
{
  g_clear_pointer (&self->meters, g_ptr_array_unref);
  g_clear_pointer (&self->root, json_object_unref);
  self->meters = g_steal_pointer (&content->meters);
  self->root = g_steal_pointer (&content->root);
}

RwMeterBook *
rw_meter_book_new (const char *path,
                   GError    **error)
{
  RwMeterBook *self = g_atomic_rc_box_new0 (RwMeterBook);
  g_auto (Content) content = make_empty ();

  self->path = path != NULL ? g_strdup (path) : rw_paths_dup_user ("meters.json");
  load (self, &content, error);
  take_content (self, &content);
  return self;
}

RwMeterBook *
rw_meter_book_ref (RwMeterBook *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
clear_book (gpointer data)
{
  RwMeterBook *self = data;

  g_free (self->path);
  g_free (self->trouble);
  g_ptr_array_unref (self->meters);
  json_object_unref (self->root);
}

void
rw_meter_book_unref (RwMeterBook *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full (self, clear_book);
}

/* --- asking -------------------------------------------------------------------------- */

guint
rw_meter_book_get_n (const RwMeterBook *self)
{
  return self->meters->len;
}

const RwKnownMeter *
rw_meter_book_get (const RwMeterBook *self,
                   guint              i)
{
  g_return_val_if_fail (i < self->meters->len, NULL);
  return g_ptr_array_index (self->meters, i);
}

const RwKnownMeter *
rw_meter_book_find (const RwMeterBook *self,
                    const char        *id)
{
  guint index;

  return find_id (self->meters, id, &index) ? g_ptr_array_index (self->meters, index) : NULL;
}

const RwKnownMeter *
rw_meter_book_find_address (const RwMeterBook    *self,
                            const RwMeterAddress *address)
{
  for (guint i = 0; i < self->meters->len; i++)
    {
      const RwKnownMeter *meter = g_ptr_array_index (self->meters, i);

      if (meter->address != NULL && rw_meter_address_equal (meter->address, address))
        return meter;
    }
  return NULL;
}

char *
rw_meter_book_make_id (const RwMeterBook *self)
{
  for (guint i = 2;; i++)
    {
      g_autofree char *id = g_strdup_printf ("m%u", i);

      if (!find_id (self->meters, id, NULL))
        return g_steal_pointer (&id);
    }
}

/* --- writing ------------------------------------------------------------------------- */

static void
append_meters (GString   *out,
               JsonArray *array)
{
  g_string_append_c (out, '[');
  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      g_string_append (out, i > 0 ? ",\n" : "\n");
      rw_json_append_node (out, json_array_get_element (array, i));
    }
  g_string_append (out, "\n]");
}

static GString *
make_text (RwMeterBook *self)
{
  GString *out = g_string_new ("{");
  g_autoptr (GList) keys = json_object_get_members (self->root);

  for (GList *key = keys; key != NULL; key = key->next)
    {
      if (key != keys)
        g_string_append_c (out, ',');
      rw_json_append_string (out, key->data);
      g_string_append_c (out, ':');
      if (g_str_equal (key->data, "meters"))
        append_meters (out, rw_json_get_array (self->root, "meters"));
      else
        rw_json_append_node (out, json_object_get_member (self->root, key->data));
    }
  g_string_append (out, "}\n");
  return out;
}

static gboolean
write_file (RwMeterBook *self,
            GError     **error)
{
  g_autofree char *folder = g_path_get_dirname (self->path);
  g_autoptr (GString) text = make_text (self);
  g_autoptr (GError) why = NULL;

  self->unsaved = TRUE;
  if (self->trouble != NULL)
    {
      g_set_error_literal (error, RW_METER_BOOK_ERROR, RW_METER_BOOK_ERROR_WRITE, self->trouble);
      return FALSE;
    }
  g_mkdir_with_parents (folder, 0700);
  if (g_file_set_contents_full (self->path, text->str, (gssize) text->len,
                                G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE, 0600, &why))
    {
      self->unsaved = FALSE;
      return TRUE;
    }
  g_set_error (error, RW_METER_BOOK_ERROR, RW_METER_BOOK_ERROR_WRITE,
               _ ("The list of meters could not be written: %s. The meter is known until the program "
                  "ends."),
               why->message);
  return FALSE;
}

/* Another window may have written the file since: what it holds goes before what is held here. A file that
 * went bad meanwhile was set aside, and is replaced by what is held here. */
static void
refresh (RwMeterBook *self)
{
  Content content = { g_ptr_array_ref (self->meters), json_object_ref (self->root) };
  g_autoptr (GError) ignored = NULL;

  load (self, &content, &ignored);
  if (!self->unsaved)
    take_content (self, &content);
  clear_content (&content);
}

gboolean
rw_meter_book_put (RwMeterBook        *self,
                   const RwKnownMeter *meter,
                   GError            **error)
{
  g_autoptr (RwKnownMeter) copy = rw_known_meter_copy (meter); /* @meter may be the book's own */
  JsonArray *array;
  guint index;

  refresh (self);
  array = rw_json_get_array (self->root, "meters");
  if (find_id (self->meters, copy->facts->id, &index))
    {
      rw_known_meter_to_object (copy, json_array_get_object_element (array, index));
      rw_known_meter_free (self->meters->pdata[index]);
      self->meters->pdata[index] = g_steal_pointer (&copy);
    }
  else
    {
      JsonObject *object = json_object_new ();

      rw_known_meter_to_object (copy, object);
      json_array_add_object_element (array, object);
      g_ptr_array_add (self->meters, g_steal_pointer (&copy));
    }
  return write_file (self, error);
}

gboolean
rw_meter_book_remove (RwMeterBook *self,
                      const char  *id,
                      GError     **error)
{
  g_autofree char *wanted = g_strdup (id); /* @id may be the book's own */
  guint index;

  refresh (self);
  if (!find_id (self->meters, wanted, &index))
    return TRUE;
  g_ptr_array_remove_index (self->meters, index);
  json_array_remove_element (rw_json_get_array (self->root, "meters"), index);
  return write_file (self, error);
}
