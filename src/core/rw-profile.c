/* rw-profile.c: the rails of a cabinet, read from JSON.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-profile.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-json.h"
#include "rw-limits.h"
#include "rw-paths.h"
#include "rw-plain-text.h"

struct _RwProfile
{
  char     *id;
  char     *title;
  GArray   *rails;     /* of RwRail, in the order of the file */
  guint     reference; /* index into rails */
  JsonNode *node;      /* what it was made from */
};

/* Drops that trade practice calls good: up to these, in volts (estimates). */
static const double good_drop_wire = 0.100;
static const double good_drop_ground = 0.050;

G_DEFINE_QUARK (rw_profile_error, rw_profile_error)

static void
clear_rail (gpointer data)
{
  RwRail *rail = data;

  g_clear_pointer (&rail->label, g_free);
  g_clear_pointer (&rail->feeds, g_free);
}

static void
clear_profile (gpointer data)
{
  RwProfile *self = data;

  g_clear_pointer (&self->id, g_free);
  g_clear_pointer (&self->title, g_free);
  g_clear_pointer (&self->rails, g_array_unref);
  g_clear_pointer (&self->node, json_node_unref);
}

RwProfile *
rw_profile_ref (RwProfile *self)
{
  return g_atomic_rc_box_acquire (self);
}

void
rw_profile_unref (RwProfile *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full (self, clear_profile);
}

static gboolean
read_follows (JsonObject *object,
              RwFollows  *out,
              const char *where,
              GError    **error)
{
  const char *word = rw_json_get_string (object, "follows_trim",
                                         json_object_has_member (object, "follows_trim") ? "" : "unknown");

  if (g_str_equal (word, "yes"))
    *out = RW_FOLLOWS_YES;
  else if (g_str_equal (word, "no"))
    *out = RW_FOLLOWS_NO;
  else if (g_str_equal (word, "unknown"))
    *out = RW_FOLLOWS_UNKNOWN;
  else
    {
      g_autofree char *plain = rw_plain_text_dup (word, RW_PLAIN_NAME);

      g_set_error (error, RW_PROFILE_ERROR, RW_PROFILE_ERROR_FORMAT,
                   _ ("%s: key “follows_trim”: “%s” is none of yes, no, unknown"), where, plain);
      return FALSE;
    }
  return TRUE;
}

/* A pair [low, high], low < high, both finite. */
static gboolean
read_pair (JsonObject *object,
           const char *key,
           double     *lo,
           double     *hi,
           const char *where,
           GError    **error)
{
  JsonNode *node = json_object_get_member (object, key);
  JsonArray *array = node != NULL && JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;

  if (array != NULL && json_array_get_length (array) == 2
      && rw_json_node_get_number (json_array_get_element (array, 0), lo)
      && rw_json_node_get_number (json_array_get_element (array, 1), hi) && *lo < *hi)
    return TRUE;
  g_set_error (error, RW_PROFILE_ERROR, RW_PROFILE_ERROR_FORMAT,
               _ ("%s: key “%s” must be two numbers, the lower one first"), where, key);
  return FALSE;
}

/* A magnitude that may be missing; then *out stays. */
static gboolean
read_magnitude (JsonObject *object,
                const char *key,
                double     *out,
                const char *where,
                GError    **error)
{
  if (!json_object_has_member (object, key))
    return TRUE;
  if (rw_json_get_number (object, key, out) && *out > 0)
    return TRUE;
  g_set_error (error, RW_PROFILE_ERROR, RW_PROFILE_ERROR_FORMAT,
               _ ("%s: key “%s” must be a number above 0"), where, key);
  return FALSE;
}

/* Limits of a negative rail are negative too: [4.5, 5.5] for −5 V would call every good value bad. */
static gboolean
check_signs (const RwRail *rail,
             const char   *where,
             GError      **error)
{
  const double sign = rail->nominal < 0 ? -1 : 1;

  if ((sign * rail->lo > 0 || sign * rail->hi > 0) && (sign * rail->bare_lo > 0 || sign * rail->bare_hi > 0))
    return TRUE;
  g_set_error (error, RW_PROFILE_ERROR, RW_PROFILE_ERROR_FORMAT,
               _ ("%s: keys “limits” and “bare_limits” must have the sign of “nominal”"), where);
  return FALSE;
}

static gboolean
read_rail_numbers (JsonObject *object,
                   RwRail     *rail,
                   const char *where,
                   GError    **error)
{
  if (!rw_json_get_number (object, "nominal", &rail->nominal) || rail->nominal == 0)
    {
      g_set_error (error, RW_PROFILE_ERROR, RW_PROFILE_ERROR_FORMAT,
                   _ ("%s: key “nominal” must be a number other than 0"), where);
      return FALSE;
    }
  if (!read_pair (object, "limits", &rail->lo, &rail->hi, where, error))
    return FALSE;
  rail->bare_lo = rail->lo;
  rail->bare_hi = rail->hi;
  if (json_object_has_member (object, "bare_limits")
      && !read_pair (object, "bare_limits", &rail->bare_lo, &rail->bare_hi, where, error))
    return FALSE;
  if (!check_signs (rail, where, error))
    return FALSE;

  double priority = 9;

  rail->never_above = INFINITY;
  rail->ripple_limit = INFINITY;
  if (!read_magnitude (object, "never_above", &rail->never_above, where, error)
      || !read_magnitude (object, "ripple_limit", &rail->ripple_limit, where, error)
      || !read_magnitude (object, "priority", &priority, where, error))
    return FALSE;
  rail->priority = (int) CLAMP (priority, 1, 99);
  return TRUE;
}

static gboolean
read_rail (RwProfile  *self,
           JsonNode   *node,
           const char *where,
           GError    **error)
{
  if (!JSON_NODE_HOLDS_OBJECT (node))
    {
      g_set_error (error, RW_PROFILE_ERROR, RW_PROFILE_ERROR_FORMAT, _ ("%s: must be an object"), where);
      return FALSE;
    }

  JsonObject *object = json_node_get_object (node);
  g_autofree char *id = rw_plain_text_dup (rw_json_get_string (object, "id", NULL), RW_PLAIN_NAME);
  RwRail rail = { 0 };

  if (id == NULL || *id == '\0' || rw_profile_find_rail (self, id) != NULL
      || g_str_equal (id, RW_RAIL_GROUND))
    {
      g_set_error (error, RW_PROFILE_ERROR, RW_PROFILE_ERROR_FORMAT,
                   _ ("%s: key “id” is missing, used twice, or the ground's own"), where);
      return FALSE;
    }
  if (g_utf8_strlen (id, -1) > RW_LIMIT_ID_CHARS)
    {
      g_set_error (error, RW_PROFILE_ERROR, RW_PROFILE_ERROR_FORMAT,
                   _ ("%s: key “id” is longer than %d characters"), where, RW_LIMIT_ID_CHARS);
      return FALSE;
    }
  if (!read_rail_numbers (object, &rail, where, error)
      || !read_follows (object, &rail.follows_trim, where, error))
    return FALSE;
  rail.id = g_intern_string (id);
  rail.label = rw_plain_text_dup (rw_json_get_string (object, "label", id), RW_PLAIN_NAME);
  rail.feeds = rw_plain_text_dup (rw_json_get_string (object, "feeds", ""), RW_PLAIN_NAME);
  g_array_append_val (self->rails, rail);
  return TRUE;
}

static gboolean
read_rails (RwProfile  *self,
            JsonObject *object,
            const char *where,
            GError    **error)
{
  JsonNode *node = json_object_get_member (object, "rails");
  JsonArray *array = node != NULL && JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;
  const guint n = array != NULL ? json_array_get_length (array) : 0;

  if (n == 0)
    {
      g_set_error (error, RW_PROFILE_ERROR, RW_PROFILE_ERROR_FORMAT,
                   _ ("%s: key “rails” must list at least one rail"), where);
      return FALSE;
    }
  if (n > RW_LIMIT_RAILS)
    {
      g_set_error (error, RW_PROFILE_ERROR, RW_PROFILE_ERROR_FORMAT,
                   _ ("%s: key “rails” lists %u rails; a profile has at most %d"), where, n, RW_LIMIT_RAILS);
      return FALSE;
    }
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *place = g_strdup_printf ("%s: rails[%u]", where, i);

      if (!read_rail (self, json_array_get_element (array, i), place, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
read_profile (RwProfile  *self,
              JsonObject *object,
              const char *where,
              GError    **error)
{
  self->id = rw_plain_text_dup (rw_json_get_string (object, "id", NULL), RW_PLAIN_NAME);
  if (self->id == NULL || *self->id == '\0')
    {
      g_set_error (error, RW_PROFILE_ERROR, RW_PROFILE_ERROR_FORMAT, _ ("%s: key “id” is missing"), where);
      return FALSE;
    }
  self->title = rw_plain_text_dup (rw_json_get_string (object, "title", self->id), RW_PLAIN_NAME);
  if (!read_rails (self, object, where, error))
    return FALSE;

  g_autofree char *reference = rw_plain_text_dup (rw_json_get_string (object, "reference", ""), RW_PLAIN_NAME);
  const int index = json_object_has_member (object, "reference") ? rw_profile_index_of (self, reference) : 0;

  if (index < 0)
    {
      g_set_error (error, RW_PROFILE_ERROR, RW_PROFILE_ERROR_FORMAT,
                   _ ("%s: key “reference”: there is no rail “%s”"), where, reference);
      return FALSE;
    }
  self->reference = (guint) index;
  return TRUE;
}

RwProfile *
rw_profile_new_from_node (JsonNode   *node,
                          const char *where,
                          GError    **error)
{
  if (node == NULL || !JSON_NODE_HOLDS_OBJECT (node))
    {
      g_set_error (error, RW_PROFILE_ERROR, RW_PROFILE_ERROR_FORMAT,
                   _ ("%s: a profile must be an object"), where);
      return NULL;
    }

  g_autoptr (RwProfile) self = g_atomic_rc_box_new0 (RwProfile);

  self->rails = g_array_new (FALSE, TRUE, sizeof (RwRail));
  g_array_set_clear_func (self->rails, clear_rail);
  self->node = json_node_copy (node);
  if (!read_profile (self, json_node_get_object (node), where, error))
    return NULL;
  return g_steal_pointer (&self);
}

RwProfile *
rw_profile_load (const char *path,
                 GError    **error)
{
  g_autoptr (GError) problem = NULL;
  g_autoptr (JsonNode) root = rw_json_parse_file (path, &problem);

  if (root == NULL)
    {
      const gboolean format = problem->domain == JSON_PARSER_ERROR;

      g_set_error (error, RW_PROFILE_ERROR,
                   format ? RW_PROFILE_ERROR_FORMAT : RW_PROFILE_ERROR_READ,
                   _ ("Cannot read this profile: %s"), problem->message);
      return NULL;
    }
  return rw_profile_new_from_node (root, path, error);
}

const char *
rw_profile_get_id (const RwProfile *self)
{
  return self->id;
}

const char *
rw_profile_get_title (const RwProfile *self)
{
  return self->title;
}

guint
rw_profile_get_n_rails (const RwProfile *self)
{
  return self->rails->len;
}

const RwRail *
rw_profile_get_rail (const RwProfile *self,
                     guint            index)
{
  g_return_val_if_fail (index < self->rails->len, NULL);
  return &g_array_index (self->rails, RwRail, index);
}

int
rw_profile_index_of (const RwProfile *self,
                     const char      *id)
{
  for (guint i = 0; i < self->rails->len; i++)
    if (g_strcmp0 (g_array_index (self->rails, RwRail, i).id, id) == 0)
      return (int) i;
  return -1;
}

const RwRail *
rw_profile_find_rail (const RwProfile *self,
                      const char      *id)
{
  const int index = rw_profile_index_of (self, id);

  return index < 0 ? NULL : rw_profile_get_rail (self, (guint) index);
}

const RwRail *
rw_profile_get_reference (const RwProfile *self)
{
  return rw_profile_get_rail (self, self->reference);
}

JsonNode *
rw_profile_get_node (const RwProfile *self)
{
  return self->node;
}

static gboolean
has_profile (GPtrArray  *list,
             const char *id)
{
  for (guint i = 0; i < list->len; i++)
    if (g_str_equal (rw_profile_get_id (list->pdata[i]), id))
      return TRUE;
  return FALSE;
}

static void
list_folder (GPtrArray  *list,
             const char *folder,
             GPtrArray  *problems)
{
  g_autoptr (GPtrArray) paths = rw_paths_list (folder, ".json");

  for (guint i = 0; i < paths->len; i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (RwProfile) profile = rw_profile_load (paths->pdata[i], &error);

      if (profile == NULL && problems != NULL)
        g_ptr_array_add (problems, g_strdup (error->message));
      else if (profile != NULL && !has_profile (list, profile->id))
        g_ptr_array_add (list, g_steal_pointer (&profile));
    }
}

GPtrArray *
rw_profile_list (GPtrArray *problems)
{
  GPtrArray *list = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_profile_unref);
  g_autofree char *user = rw_paths_dup_user ("profiles");
  g_autofree char *shipped = rw_paths_dup_shipped ("profiles");

  list_folder (list, user, problems);
  list_folder (list, shipped, problems);
  return list;
}

gboolean
rw_rail_limits_at (const RwRail *rail,
                   const char   *rail_id,
                   RwPlace       place,
                   RwKind        kind,
                   double       *lo,
                   double       *hi)
{
  if (kind == RW_KIND_DC && place == RW_PLACE_WIRE)
    {
      *hi = g_strcmp0 (rail_id, RW_RAIL_GROUND) == 0 ? good_drop_ground : good_drop_wire;
      *lo = -*hi;
      return TRUE;
    }
  if (rail == NULL)
    return FALSE;
  if (kind == RW_KIND_RIPPLE && isfinite (rail->ripple_limit))
    {
      *lo = -INFINITY;
      *hi = rail->ripple_limit;
      return TRUE;
    }
  if (kind != RW_KIND_DC)
    return FALSE;
  *lo = place == RW_PLACE_TERMINALS ? rail->bare_lo : rail->lo;
  *hi = place == RW_PLACE_TERMINALS ? rail->bare_hi : rail->hi;
  return TRUE;
}

double
rw_position (double   value,
             double   lo,
             double   hi,
             gboolean negative)
{
  if (isinf (lo))
    return value / hi;
  if (isinf (hi))
    return value / lo;

  const double half = (hi - lo) / 2;
  const double position = (value - (lo + half)) / half;

  return negative ? -position : position;
}

double
rw_margin (double value,
           double lo,
           double hi)
{
  return 1 - fabs (rw_position (value, lo, hi, FALSE));
}
