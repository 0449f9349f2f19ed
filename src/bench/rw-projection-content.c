/* rw-projection-content.c: what stands on the projector, in words.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-projection-content.h"

#include <glib/gi18n-lib.h>

static void
free_rail (gpointer data)
{
  RwProjectionRail *rail = data;

  g_free (rail->label);
  g_free (rail->place);
  g_free (rail->value);
  g_free (rail->verdict);
  g_free (rail);
}

RwProjectionRail *
rw_projection_rail_new (const char *rail)
{
  RwProjectionRail *self = g_new0 (RwProjectionRail, 1);

  self->rail = g_intern_string (rail);
  return self;
}

RwProjectionContent *
rw_projection_content_new (void)
{
  RwProjectionContent *self = g_new0 (RwProjectionContent, 1);

  self->rails = g_ptr_array_new_with_free_func (free_rail);
  self->shown = g_ptr_array_new ();
  return self;
}

void
rw_projection_content_free (RwProjectionContent *self)
{
  g_ptr_array_unref (self->shown);
  g_ptr_array_unref (self->rails);
  g_free (self->title);
  g_strfreev (self->lines);
  g_strfreev (self->cells);
  g_free (self);
}

/* --- the same? ------------------------------------------------------------------------------------ */

static gboolean
same_rail (gconstpointer a,
           gconstpointer b)
{
  const RwProjectionRail *one = a, *other = b;

  return one->rail == other->rail && one->look == other->look && one->stale == other->stale
         && one->lit == other->lit && one->dim == other->dim && g_strcmp0 (one->label, other->label) == 0
         && g_strcmp0 (one->place, other->place) == 0 && g_strcmp0 (one->value, other->value) == 0
         && g_strcmp0 (one->verdict, other->verdict) == 0;
}

static gboolean
same_rails (const GPtrArray *a,
            const GPtrArray *b)
{
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    if (!same_rail (a->pdata[i], b->pdata[i]))
      return FALSE;
  return TRUE;
}

static gboolean
same_texts (char **a,
            char **b)
{
  if (a == NULL || b == NULL)
    return a == b;
  return g_strv_equal ((const char *const *) a, (const char *const *) b);
}

gboolean
rw_projection_content_equal (const RwProjectionContent *a,
                             const RwProjectionContent *b)
{
  return a->blank == b->blank && a->part == b->part && a->enlarged == b->enlarged && a->has_text == b->has_text
         && a->alone == b->alone && a->n_columns == b->n_columns && g_strcmp0 (a->title, b->title) == 0
         && same_texts (a->lines, b->lines) && same_texts (a->cells, b->cells) && same_rails (a->rails, b->rails)
         && same_rails (a->shown, b->shown);
}

gboolean
rw_projection_content_is_words (const RwProjectionContent *self)
{
  return self->has_text || self->title != NULL;
}

/* --- in one text ---------------------------------------------------------------------------------- */

static void
say (GString    *text,
     const char *words)
{
  if (words == NULL || *words == '\0')
    return;
  if (text->len > 0)
    g_string_append_c (text, '\n');
  g_string_append (text, words);
}

static void
say_rail (GString                *text,
          const RwProjectionRail *rail)
{
  g_autofree char *start = g_strdup_printf ("%s: %s", rail->label, rail->value);
  g_autofree char *more = g_strjoin (", ", start, rail->verdict != NULL ? rail->verdict : rail->place,
                                     rail->verdict != NULL ? rail->place : NULL, NULL);

  say (text, more);
}

static void
say_table (GString                   *text,
           const RwProjectionContent *self)
{
  const guint n = self->cells != NULL && self->n_columns > 0 ? g_strv_length (self->cells) : 0;

  for (guint i = 0; i + self->n_columns <= n && self->n_columns > 0; i += self->n_columns)
    {
      g_autoptr (GString) row = g_string_new (self->cells[i]);

      for (guint k = 1; k < self->n_columns; k++)
        g_string_append_printf (row, ", %s", self->cells[i + k]);
      say (text, row->str);
    }
}

char *
rw_projection_content_dup_text (const RwProjectionContent *self)
{
  static const char *const names[RW_N_PROJECTION_PARTS] = { NULL, N_ ("Trim map"), N_ ("Chart over time"), NULL };
  GString *text = g_string_new (NULL);

  if (self->blank)
    return g_string_free (text, FALSE);
  for (guint i = 0; i < self->shown->len; i++)
    say_rail (text, self->shown->pdata[i]);
  if (!rw_projection_content_is_words (self) && names[self->part] != NULL)
    say (text, _ (names[self->part]));
  say (text, self->title);
  for (guint i = 0; self->lines != NULL && self->lines[i] != NULL; i++)
    say (text, self->lines[i]);
  say_table (text, self);
  return g_string_free (text, FALSE);
}
