/* rw-cause-words.c: how likely a cause is, in words, and why.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-cause-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"

/* Larger factors say no more than that. */
static const double largest_told = 9999;

const char *
rw_cause_words_chance (double p)
{
  if (p >= RW_CAUSE_CERTAIN)
    return _ ("almost certain");
  if (p >= RW_CAUSE_LIKELY)
    return _ ("likely");
  return p >= RW_CAUSE_POSSIBLE ? _ ("possible") : _ ("unlikely");
}

/* --- factors -------------------------------------------------------------------------------------- */

static double
size_of (double factor)
{
  return factor >= 1 ? factor : 1 / factor;
}

static void
reason_free (gpointer data)
{
  RwReason *reason = data;

  g_free (reason->title);
  g_free (reason);
}

static int
compare_reasons (gconstpointer a,
                 gconstpointer b)
{
  const double x = size_of ((*(const RwReason *const *) a)->factor);
  const double y = size_of ((*(const RwReason *const *) b)->factor);

  return x > y ? -1 : x < y ? 1 : 0;
}

static void
add_reason (GPtrArray *reasons,
            double     factor,
            char      *title)
{
  RwReason *reason = g_new0 (RwReason, 1);

  reason->factor = factor;
  reason->title = title;
  g_ptr_array_add (reasons, reason);
}

GPtrArray *
rw_cause_words_reasons (const RwBelief *belief,
                        guint           rank)
{
  GPtrArray *reasons = g_ptr_array_new_with_free_func (reason_free);
  double small = 1;
  guint n_small = 0;

  for (guint i = 0; i < rw_belief_get_n_evidence (belief); i++)
    {
      const double factor = rw_belief_get_factor (belief, rank, i);

      if (size_of (factor) >= RW_CAUSE_SMALL)
        add_reason (reasons, factor, g_strdup (rw_belief_get_evidence (belief, i)->title));
      else
        {
          small *= factor;
          n_small++;
        }
    }
  g_ptr_array_sort (reasons, compare_reasons);
  if (n_small > 0)
    add_reason (reasons, small,
                /* Translators: number of things seen that changed little. */
                g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u thing seen that changed little",
                                              "%u things seen that changed little", n_small),
                                 n_small));
  return reasons;
}

double
rw_cause_words_trend (const RwBelief *belief,
                      guint           rank)
{
  const guint n = rw_belief_get_n_evidence (belief);
  guint newest = 0;
  double factor = 1;

  if (rw_belief_get_fixed (belief) != NULL)
    return 0; /* the repair is the proof, and nothing weighs any more */
  for (guint i = 0; i < n; i++)
    newest = MAX (newest, rw_belief_get_evidence (belief, i)->n);
  for (guint i = 0; i < n; i++)
    if (rw_belief_get_evidence (belief, i)->n == newest)
      factor *= rw_belief_get_factor (belief, rank, i);
  return factor;
}

static char *
dup_size (double factor)
{
  const double size = MIN (size_of (factor), largest_told);

  return rw_quantity_format_number (size, size < 9.95 ? 1 : 0);
}

char *
rw_cause_words_factor (double factor)
{
  g_autofree char *size = dup_size (factor);
  g_autofree char *fine = rw_quantity_format_number (size_of (factor), 2);

  if (size_of (factor) < RW_CAUSE_SMALL)
    return g_strdup_printf ("%s%s", factor >= 1 ? "×" : "÷", fine);
  return g_strdup_printf ("%s%s", factor >= 1 ? "×" : "÷", size);
}

char *
rw_cause_words_trend_text (double factor)
{
  g_autofree char *words = rw_cause_words_factor (factor);

  if (size_of (factor) < RW_CAUSE_SMALL)
    return g_strdup ("=");
  return g_strdup_printf ("%s %s", factor > 1 ? "▲" : "▼", words);
}

char *
rw_cause_words_trend_spoken (double factor)
{
  g_autofree char *size = dup_size (factor);

  if (size_of (factor) < RW_CAUSE_SMALL)
    return g_strdup (_ ("the same since the last finding"));
  /* Translators: a factor, "2.1". */
  return g_strdup_printf (factor > 1 ? _ ("up by a factor of %s since the last finding")
                                     : _ ("down by a factor of %s since the last finding"),
                          size);
}

/* --- odds ----------------------------------------------------------------------------------------- */

char *
rw_cause_words_odds (double p)
{
  const double odds = p / (1 - p);
  g_autofree char *number = isfinite (odds) && odds > 0 ? dup_size (odds) : NULL;

  if (number == NULL)
    return g_strdup (odds > 0 ? "∞ : 1" : "1 : ∞");
  return odds >= 1 ? g_strdup_printf ("%s : 1", number) : g_strdup_printf ("1 : %s", number);
}

char *
rw_cause_words_prior (const RwCauseBelief *cause)
{
  g_autofree char *odds = rw_cause_words_odds (cause->prior);
  g_autofree char *chance = rw_quantity_format_chance (cause->prior);

  /* Translators: odds "1 : 24", chance "4 %". */
  return g_strdup_printf (_ ("Before anything was seen %s (%s)."), odds, chance);
}

char *
rw_cause_words_product (const RwCauseBelief *cause,
                        GPtrArray           *reasons)
{
  g_autofree char *prior = rw_cause_words_odds (cause->prior);
  g_autofree char *odds = rw_cause_words_odds (cause->p);
  g_autofree char *chance = rw_quantity_format_chance (cause->p);
  g_autoptr (GString) factors = g_string_new (NULL);

  for (guint i = 0; i < reasons->len; i++)
    {
      g_autofree char *factor = rw_cause_words_factor (((const RwReason *) reasons->pdata[i])->factor);

      g_string_append_printf (factors, " %s", factor);
    }
  /* Translators: odds before, factors, odds now, chance now. */
  return g_strdup_printf (_ ("%s%s = %s, that is %s."), prior, factors->str, odds, chance);
}

char *
rw_cause_words_record (const RwRecord *record,
                       const char     *cause)
{
  const guint n = record != NULL ? rw_record_get_n_jobs (record) : 0;

  if (n == 0)
    return NULL;
  /* Translators: jobs that ended in this cause, jobs in all. */
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Your own record: %u of %u job.", "Your own record: %u of %u jobs.", n),
                          rw_record_get_count (record, cause), n);
}
