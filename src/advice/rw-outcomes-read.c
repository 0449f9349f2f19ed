/* rw-outcomes-read.c: the outcomes of a check, or of what is computed, out of a knowledge file.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "outcomes":[{"id","title","meaning","from","to"},…]. Those of a value tile the real line, each from "from"
 * (inclusive, open when missing) to "to" (exclusive, open when missing).
 */
#include "config.h"

#include "rw-knowledge-read.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-problem.h"

void
rw_outcomes_free (RwOutcome *outcomes,
                  guint      n)
{
  for (guint o = 0; o < n; o++)
    {
      g_free (outcomes[o].title);
      g_free (outcomes[o].meaning);
    }
  g_free (outcomes);
}

/* An end of an outcome's range; @open when the key is missing. */
static gboolean
read_end (const RwKeys *keys,
          const char   *key,
          double        open,
          double       *out,
          GError      **error)
{
  *out = open;
  return !json_object_has_member (keys->object, key)
         || rw_keys_number (keys, key, -100000, 100000, out, error);
}

/* The outcome behind the @n that are read already. */
static gboolean
read_outcome (RwOutcome    *outcomes,
              guint         n,
              const RwKeys *keys,
              GError      **error)
{
  RwOutcome *outcome = &outcomes[n];
  const char *id = rw_keys_string (keys, "id", error);

  if (id == NULL || (outcome->title = rw_read_text (keys, "title", error)) == NULL
      || (outcome->meaning = rw_read_optional_text (keys, "meaning", error)) == NULL
      || !read_end (keys, "from", -(double) INFINITY, &outcome->from, error)
      || !read_end (keys, "to", (double) INFINITY, &outcome->to, error))
    return FALSE;
  for (guint o = 0; o < n; o++)
    if (g_str_equal (outcomes[o].id, id))
      return rw_keys_fail (keys, "id", error, _ ("is used twice: “%s”"), id);
  outcome->id = g_intern_string (id);
  return TRUE;
}

/* Every number falls into exactly one outcome: going up from the open bottom, each range
 * ends where one other begins, and the last is open. */
static gboolean
tile_the_line (const RwOutcome *outcomes,
               guint            n)
{
  double at = -(double) INFINITY;

  for (guint steps = 0; steps < n; steps++)
    {
      const RwOutcome *next = NULL;

      for (guint o = 0; o < n; o++)
        if (outcomes[o].from == at)
          {
            if (next != NULL)
              return FALSE;
            next = &outcomes[o];
          }
      if (next == NULL || next->to <= at)
        return FALSE;
      at = next->to;
    }
  return isinf (at) != 0;
}

gboolean
rw_outcomes_read (RwOutcome   **outcomes,
                  guint        *n_outcomes,
                  const RwKeys *outer,
                  gboolean      of_value,
                  GError      **error)
{
  JsonArray *list = rw_keys_array (outer, "outcomes", error);

  if (list == NULL)
    return FALSE;

  const guint n = json_array_get_length (list);

  if (n < 2 || n > RW_PROBLEM_MAX_OUTCOMES)
    return rw_keys_fail (outer, "outcomes", error, _ ("must list 2 to %d"),
                         RW_PROBLEM_MAX_OUTCOMES);
  *outcomes = g_new0 (RwOutcome, n);
  *n_outcomes = n;
  for (guint o = 0; o < n; o++)
    {
      g_autofree char *where = g_strdup_printf ("%s: outcomes[%u]", outer->where, o);
      RwKeys keys;

      if (!rw_keys_init (&keys, json_array_get_element (list, o), where, outer->domain, outer->code,
                         error)
          || !read_outcome (*outcomes, o, &keys, error))
        return FALSE;
    }
  if (of_value && !tile_the_line (*outcomes, n))
    return rw_keys_fail (outer, "outcomes", error,
                         _ ("must cover every value once: each “from” is another's “to”"));
  return TRUE;
}
