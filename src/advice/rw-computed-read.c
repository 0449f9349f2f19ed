/* rw-computed-read.c: one computed finding out of a knowledge file.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * {"id","title","of":"trim-window","place":"board|terminals",
 *  "outcomes":[{"id","title"},…],"chance":{"default":[…],"CAUSE":[…],…},"source"}
 * What is computed has outcomes of its own: every one of them is listed once, in any order; the rows of
 * "chance" are in the order of the list, and are turned into the program's own here.
 */
#include "config.h"

#include "rw-knowledge-read.h"

#include <glib/gi18n-lib.h>

#include "rw-trim-evidence.h"

static void
clear_computed (gpointer data)
{
  RwComputed *self = data;

  for (guint o = 0; o < self->n_outcomes; o++)
    g_free (self->titles[o]);
  g_free (self->titles);
  g_free (self->title);
  g_free (self->where);
  rw_chance_table_clear (&self->chance);
}

void
rw_computed_unref (RwComputed *self)
{
  g_atomic_rc_box_release_full (self, clear_computed);
}

static int
outcome_index (const char *id)
{
  for (guint o = 0; o < RW_N_TRIM_OUTCOMES; o++)
    if (g_str_equal (id, rw_trim_outcome_to_id (o)))
      return (int) o;
  return -1;
}

/* *index: which of the program's outcomes it is. */
static gboolean
read_outcome (RwComputed   *self,
              const RwKeys *keys,
              guint        *index,
              GError      **error)
{
  const char *id = rw_keys_string (keys, "id", error);

  if (id == NULL)
    return FALSE;

  const int found = outcome_index (id);

  if (found < 0)
    return rw_keys_fail (keys, "id", error, _ ("names no outcome of “%s”: “%s”"), self->of, id);
  if (self->titles[found] != NULL)
    return rw_keys_fail (keys, "id", error, _ ("is used twice: “%s”"), id);
  *index = (guint) found;
  self->titles[found] = rw_read_text (keys, "title", error);
  return self->titles[found] != NULL;
}

/* @order: [n_outcomes] the program's index of each listed outcome. */
static gboolean
read_outcomes (RwComputed   *self,
               const RwKeys *outer,
               guint        *order,
               GError      **error)
{
  JsonArray *list = rw_keys_array (outer, "outcomes", error);

  if (list == NULL)
    return FALSE;
  if (json_array_get_length (list) != self->n_outcomes)
    return rw_keys_fail (outer, "outcomes", error, _ ("must list %u"), self->n_outcomes);
  for (guint o = 0; o < self->n_outcomes; o++)
    {
      g_autofree char *where = g_strdup_printf ("%s: outcomes[%u]", outer->where, o);
      RwKeys keys;

      if (!rw_keys_init (&keys, json_array_get_element (list, o), where, outer->domain, outer->code,
                         error)
          || !read_outcome (self, &keys, &order[o], error))
        return FALSE;
    }
  return TRUE;
}

static void
reorder (double      *row,
         const guint *order,
         guint        n)
{
  g_autofree double *listed = g_memdup2 (row, n * sizeof *row);

  for (guint o = 0; o < n; o++)
    row[order[o]] = listed[o];
}

static void
reorder_table (RwChanceTable *table,
               const guint   *order)
{
  GHashTableIter iter;
  gpointer row = NULL;

  reorder (table->row_default, order, table->n_outcomes);
  g_hash_table_iter_init (&iter, table->rows);
  while (g_hash_table_iter_next (&iter, NULL, &row))
    reorder (row, order, table->n_outcomes);
}

RwComputed *
rw_computed_read (const RwKeys *keys,
                  GError      **error)
{
  static const char *const of_words[] = { "trim-window", NULL };
  static const char *const place_words[] = { "board", "terminals", NULL };
  static const RwPlace places[] = { RW_PLACE_BOARD, RW_PLACE_TERMINALS };
  g_autoptr (RwComputed) self = g_atomic_rc_box_new0 (RwComputed);
  const char *id = rw_keys_string (keys, "id", error);
  guint order[RW_N_TRIM_OUTCOMES] = { 0 };
  int of = 0;
  int place = 0;

  self->where = g_strdup (keys->where);
  self->n_outcomes = RW_N_TRIM_OUTCOMES;
  self->titles = g_new0 (char *, RW_N_TRIM_OUTCOMES);
  if (id == NULL || (self->title = rw_read_text (keys, "title", error)) == NULL
      || !rw_keys_choice (keys, "of", of_words, -1, &of, error)
      || !rw_keys_choice (keys, "place", place_words, -1, &place, error))
    return NULL;
  self->id = g_intern_string (id);
  self->of = of_words[of];
  self->place = places[place];
  if (!read_outcomes (self, keys, order, error)
      || !rw_chance_table_read (&self->chance, keys, self->n_outcomes, error)
      || !rw_read_published (keys, &self->published, error))
    return NULL;
  reorder_table (&self->chance, order);
  return g_steal_pointer (&self);
}
