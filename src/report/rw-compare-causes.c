/* rw-compare-causes.c: what was held likely at the end of two sessions, then and now.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The beliefs of a session's end: after a repair that fixed it the cause that it had stands first.
 */
#include "config.h"

#include "rw-compare-causes.h"

#include <glib/gi18n-lib.h>

#include "rw-quantity.h"
#include "rw-skipped.h"

static const guint likeliest = 3;
static const double likely_from = 0.05;

static RwAdvice *
advice_of (RwBenchState *state,
           RwKnowledge  *knowledge)
{
  g_autoptr (GHashTable) skipped = rw_skipped_gather (state);

  return rw_advice_new (knowledge, state, skipped);
}

/* Of the same id: two sessions may have restricted the knowledge each in its own way. */
static RwCompareCause *
find_cause (RwCompareCauses *self,
            const char      *id)
{
  for (guint i = 0; i < self->causes->len; i++)
    if (g_str_equal (g_array_index (self->causes, RwCompareCause, i).cause->id, id))
      return &g_array_index (self->causes, RwCompareCause, i);
  return NULL;
}

static void
name_likely (RwCompareCauses *self,
             RwBelief        *belief)
{
  for (guint i = 0; i < MIN (rw_belief_get_n_causes (belief), likeliest); i++)
    {
      const RwCauseBelief *held = rw_belief_get_cause (belief, i);
      const RwCompareCause fresh = { held->cause, 0, 0 };

      if (held->p >= likely_from && find_cause (self, held->cause->id) == NULL)
        g_array_append_val (self->causes, fresh);
    }
}

static void
fill_in (RwCompareCauses *self,
         RwBelief        *belief,
         gboolean         now)
{
  for (guint i = 0; i < rw_belief_get_n_causes (belief); i++)
    {
      const RwCauseBelief *held = rw_belief_get_cause (belief, i);
      RwCompareCause *cause = find_cause (self, held->cause->id);

      if (cause != NULL)
        *(now ? &cause->now : &cause->then) = held->p;
    }
}

static int
compare_causes (const void *a,
                const void *b)
{
  const RwCompareCause *x = a, *y = b;
  const double px = MAX (x->then, x->now), py = MAX (y->then, y->now);

  return px > py ? -1 : px < py;
}

RwCompareCauses *
rw_compare_causes_new (const RwCompare *compare,
                       RwKnowledge     *knowledge)
{
  RwCompareCauses *self = g_new0 (RwCompareCauses, 1);

  self->causes = g_array_new (FALSE, FALSE, sizeof (RwCompareCause));
  if (knowledge == NULL)
    return self;

  g_autoptr (RwAdvice) then = advice_of (rw_compare_get_then_state (compare), knowledge);
  g_autoptr (RwAdvice) now = advice_of (rw_compare_get_now_state (compare), knowledge);

  self->knowledge[0] = rw_knowledge_ref (rw_advice_get_knowledge (then));
  self->knowledge[1] = rw_knowledge_ref (rw_advice_get_knowledge (now));
  name_likely (self, rw_advice_get_belief (then));
  name_likely (self, rw_advice_get_belief (now));
  fill_in (self, rw_advice_get_belief (then), FALSE);
  fill_in (self, rw_advice_get_belief (now), TRUE);
  g_array_sort (self->causes, compare_causes);
  return self;
}

void
rw_compare_causes_free (RwCompareCauses *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->causes);
  for (guint i = 0; i < G_N_ELEMENTS (self->knowledge); i++)
    g_clear_pointer (&self->knowledge[i], rw_knowledge_unref);
  g_free (self);
}

char *
rw_compare_causes_words (const RwCompareCause *cause)
{
  g_autofree char *then = rw_quantity_format_chance (cause->then);
  g_autofree char *now = rw_quantity_format_chance (cause->now);

  /* Translators: chances of a cause at the end of either visit: “62 % then, < 1 % now”. */
  return g_strdup_printf (_ ("%s then, %s now"), then, now);
}
