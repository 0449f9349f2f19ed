/* rw-computed-read.c: one computed finding out of a knowledge file.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * {"id","title","of","place":"board|terminals|chip","rail":"p5",
 *  "outcomes":[{"id","title","from","to"},…],"chance":{"default":[…],"CAUSE":[…],…},"source"}
 *
 * Some of what is computed has outcomes of its own: every one of them is listed once, in any order; the rows of
 * "chance" are in the order of the list, and are turned into the program's own here:
 *   "trim-window"  "none-suits", "higher-suits", "lower-suits", "this-suits" (rw-trim-evidence.h)
 *   "trim-line"    "on-line", "off-line": whether the readings of the trim lie on their lines
 * The rest are values of one rail, whose outcomes tile the real line:
 *   "drop"      volts lost on the way: "place":"board" from the terminals to the board, "chip" from there to the chip
 *   "fall"      volts that the terminals had with the board out, less those at the place with the board fitted
 *   "tracking"  share of moving in proportion with the reference, by the trim's line at the place
 */
#include "config.h"

#include "rw-knowledge-read.h"

#include <glib/gi18n-lib.h>

#include "rw-trim-evidence.h"

static const char *const of_words[] = { "trim-window", "trim-line", "drop", "fall", "tracking", NULL };
static const char *const line_ids[] = { "on-line", "off-line" };

/* Its own outcomes, in order; NULL: a value of a rail. */
static const char *
own_outcome (int   of,
             guint outcome)
{
  if (of == 0)
    return rw_trim_outcome_to_id (outcome);
  return of == 1 && outcome < G_N_ELEMENTS (line_ids) ? line_ids[outcome] : NULL;
}

static void
clear_computed (gpointer data)
{
  RwComputed *self = data;

  rw_outcomes_free (self->outcomes, self->n_outcomes);
  g_free (self->title);
  g_free (self->where);
  rw_chance_table_clear (&self->chance);
}

void
rw_computed_unref (RwComputed *self)
{
  g_atomic_rc_box_release_full (self, clear_computed);
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

/* @order: [n_outcomes] the program's index of each listed outcome. */
static void
reorder_all (RwComputed  *self,
             const guint *order)
{
  g_autofree RwOutcome *listed = g_memdup2 (self->outcomes, self->n_outcomes * sizeof (RwOutcome));
  GHashTableIter iter;
  gpointer row = NULL;

  for (guint o = 0; o < self->n_outcomes; o++)
    self->outcomes[order[o]] = listed[o];
  reorder (self->chance.row_default, order, self->n_outcomes);
  g_hash_table_iter_init (&iter, self->chance.rows);
  while (g_hash_table_iter_next (&iter, NULL, &row))
    reorder (row, order, self->n_outcomes);
}

/* Which of its own outcomes an id names, or −1. */
static int
find_own (int         of,
          const char *id)
{
  for (guint n = 0; own_outcome (of, n) != NULL; n++)
    if (g_str_equal (own_outcome (of, n), id))
      return (int) n;
  return -1;
}

/* Puts outcomes and rows into the program's own order; no outcome stands twice. */
static gboolean
sort_own (RwComputed   *self,
          int           of,
          const RwKeys *keys,
          GError      **error)
{
  g_autofree guint *order = g_new0 (guint, self->n_outcomes);

  for (guint o = 0; o < self->n_outcomes; o++)
    {
      g_autofree char *where = g_strdup_printf ("%s: outcomes[%u]", keys->where, o);
      const RwKeys outcome = { NULL, where, keys->domain, keys->code };
      const int found = find_own (of, self->outcomes[o].id);

      if (found < 0)
        return rw_keys_fail (&outcome, "id", error, _ ("names no outcome of “%s”: “%s”"), self->of,
                             self->outcomes[o].id);
      order[o] = (guint) found;
    }
  reorder_all (self, order);
  return TRUE;
}

static gboolean
read_outcomes (RwComputed   *self,
               int           of,
               const RwKeys *keys,
               GError      **error)
{
  JsonArray *list = rw_keys_array (keys, "outcomes", error);
  guint n = 0;

  while (own_outcome (of, n) != NULL)
    n++;
  if (list != NULL && n > 0 && json_array_get_length (list) != n)
    return rw_keys_fail (keys, "outcomes", error, _ ("must list %u"), n);
  return list != NULL && rw_outcomes_read (&self->outcomes, &self->n_outcomes, keys, n == 0, error);
}

/* "rail": needed by values, of no use to what is about all rails. */
static gboolean
read_rail (RwComputed   *self,
           int           of,
           const RwKeys *keys,
           GError      **error)
{
  if (own_outcome (of, 0) != NULL)
    return TRUE;

  const char *rail = rw_keys_string (keys, "rail", error);

  self->rail = g_intern_string (rail);
  return rail != NULL;
}

RwComputed *
rw_computed_read (const RwKeys *keys,
                  GError      **error)
{
  static const char *const place_words[] = { "board", "terminals", "chip", NULL };
  static const RwPlace places[] = { RW_PLACE_BOARD, RW_PLACE_TERMINALS, RW_PLACE_CHIP };
  g_autoptr (RwComputed) self = g_atomic_rc_box_new0 (RwComputed);
  const char *id = rw_keys_string (keys, "id", error);
  int of = 0;
  int place = 0;

  self->where = g_strdup (keys->where);
  if (id == NULL || (self->title = rw_read_text (keys, "title", error)) == NULL
      || !rw_keys_choice (keys, "of", of_words, -1, &of, error)
      || !rw_keys_choice (keys, "place", place_words, -1, &place, error))
    return NULL;
  self->id = g_intern_string (id);
  self->of = of_words[of];
  self->place = places[place];
  if (!read_rail (self, of, keys, error)
      || !read_outcomes (self, of, keys, error)
      || !rw_chance_table_read (&self->chance, keys, self->n_outcomes, error)
      || !rw_read_published (keys, &self->published, error)
      || (self->rail == NULL && !sort_own (self, of, keys, error)))
    return NULL;
  return g_steal_pointer (&self);
}
