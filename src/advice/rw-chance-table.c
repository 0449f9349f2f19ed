/* rw-chance-table.c: chances of outcomes given each cause, and given two of them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "chance": {"default":[p,…],"CAUSE":[p,…],…}; for a symptom the rows are plain numbers.
 *
 * Two causes. An outcome that either makes likelier than usual is likelier with both, so the deviations multiply:
 *   P (o | a, b) ∝ P (o | a) · P (o | b) / P (o | default), scaled to sum 1,
 * which is exact where the two act on a thing independently in log odds. A default of 0 gives no deviation to speak
 * of; the mean of both then stands for it, as it does where the products leave no outcome possible at all.
 */
#include "config.h"

#include "rw-knowledge-read.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "rw-json.h"

static const double sum_tolerance = 1e-3;

void
rw_chance_table_clear (RwChanceTable *self)
{
  g_clear_pointer (&self->row_default, g_free);
  g_clear_pointer (&self->rows, g_hash_table_unref);
}

const double *
rw_chance_table_get (const RwChanceTable *self,
                     const char          *cause)
{
  const double *row = g_hash_table_lookup (self->rows, cause);

  return row != NULL ? row : self->row_default;
}

/* @key: the cause, for messages. (transfer full) */
static double *
read_row (const RwKeys *keys,
          const char   *key,
          JsonNode     *node,
          guint         n,
          GError      **error)
{
  g_autofree double *row = g_new (double, n);
  double sum = 0;

  if (n == 1)
    {
      if (!rw_json_node_get_number (node, row) || row[0] < 0 || row[0] > 1)
        {
          rw_keys_fail (keys, key, error, _ ("must be a number from %g to %g"), 0.0, 1.0);
          return NULL;
        }
      return g_steal_pointer (&row);
    }
  if (!rw_keys_row (keys, key, node, n, 0, 1, row, error))
    return NULL;
  for (guint o = 0; o < n; o++)
    sum += row[o];
  if (fabs (sum - 1) > sum_tolerance)
    {
      rw_keys_fail (keys, key, error, _ ("must sum to 1, not to %g"), sum);
      return NULL;
    }
  for (guint o = 0; o < n; o++)
    row[o] /= sum;
  return g_steal_pointer (&row);
}

gboolean
rw_chance_table_read (RwChanceTable *self,
                      const RwKeys  *outer,
                      guint          n_outcomes,
                      GError       **error)
{
  g_autofree char *where = NULL;
  JsonObjectIter iter;
  const char *name = NULL;
  JsonNode *node = NULL;
  RwKeys keys;

  self->n_outcomes = n_outcomes;
  self->rows = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, g_free);
  if (!rw_read_object (outer, "chance", &where, &keys, error))
    return FALSE;
  json_object_iter_init (&iter, keys.object);
  while (json_object_iter_next (&iter, &name, &node))
    {
      double *row = read_row (&keys, name, node, n_outcomes, error);

      if (row == NULL)
        return FALSE;
      if (g_str_equal (name, "default"))
        self->row_default = row;
      else
        g_hash_table_insert (self->rows, (gpointer) g_intern_string (name), row);
    }
  return self->row_default != NULL || rw_keys_fail (&keys, "default", error, _ ("is missing"));
}

/* --- two causes --------------------------------------------------------------------------------- */

static double
both (double usual,
      double a,
      double b)
{
  return usual > 0 ? a * b / usual : (a + b) / 2;
}

static void
fill_symptom (double  usual,
              double  a,
              double  b,
              double *row)
{
  const double seen = both (usual, a, b);
  const double not_seen = both (1 - usual, 1 - a, 1 - b);

  *row = seen + not_seen > 0 ? seen / (seen + not_seen) : (a + b) / 2;
}

void
rw_chance_table_fill_pair (const RwChanceTable *self,
                           const double        *a,
                           const double        *b,
                           double              *row)
{
  const guint n = self->n_outcomes;
  double sum = 0;

  if (a == self->row_default || b == self->row_default)
    {
      memcpy (row, a == self->row_default ? b : a, n * sizeof *row);
      return;
    }
  if (n == 1)
    {
      fill_symptom (*self->row_default, *a, *b, row);
      return;
    }
  for (guint o = 0; o < n; o++)
    sum += row[o] = both (self->row_default[o], a[o], b[o]);
  for (guint o = 0; o < n; o++)
    row[o] = sum > 0 ? row[o] / sum : (a[o] + b[o]) / 2;
}
