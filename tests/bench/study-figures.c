/* study-figures.c: what a study says, in figures and in tables.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "study-figures.h"

#include <math.h>

static gboolean
counts_for (const StudyResult *result,
            StudyFamily        family,
            const char        *fault)
{
  return result->job.family == family
         && (fault == NULL || study_case_has (&result->job, fault));
}

static gboolean
first_is_alike (const StudyResult *result,
                StudyMoment        moment)
{
  const char *first = result->done[STUDY_PROGRAM].first[moment];

  for (guint i = 0; i < result->job.n_faults; i++)
    if (study_alike (first, result->job.faults[i].id))
      return TRUE;
  return FALSE;
}

static void
add_result (StudyFigures      *out,
            const StudyResult *result)
{
  const StudyJob *done = &result->done[STUDY_PROGRAM];

  out->n++;
  out->fixed += done->fixed;
  out->half += done->half;
  out->checks += done->n_checks;
  out->repairs += done->n_repairs;
  out->again += done->n_again;
  for (guint moment = 0; moment < STUDY_N_MOMENTS; moment++)
    {
      out->first[moment] += done->rank[moment] == 1;
      out->among_three[moment] += done->rank[moment] >= 1 && done->rank[moment] <= 3;
      out->first_alike[moment] += done->rank[moment] == 1 || first_is_alike (result, moment);
    }
  for (guint way = 0; way < STUDY_N_WAYS; way++)
    if (result->gone[way])
      {
        out->gone[way]++;
        out->minutes[way] += result->done[way].minutes;
        out->against[way] += done->minutes;
        out->first_there[way] += result->done[way].rank[STUDY_BEFORE_REPAIR] == 1;
        out->first_against[way] += done->rank[STUDY_BEFORE_REPAIR] == 1;
      }
}

void
study_figures (const Study  *study,
               StudyFamily   family,
               const char   *fault,
               StudyFigures *out)
{
  *out = (StudyFigures) { 0 };
  for (guint i = 0; i < study->results->len; i++)
    if (counts_for (study_result (study, i), family, fault))
      add_result (out, study_result (study, i));
  if (out->n == 0)
    return;
  out->checks /= out->n;
  out->repairs /= out->n;
  for (guint moment = 0; moment < STUDY_N_MOMENTS; moment++)
    {
      out->first[moment] /= out->n;
      out->among_three[moment] /= out->n;
      out->first_alike[moment] /= out->n;
    }
  for (guint way = 0; way < STUDY_N_WAYS; way++)
    {
      out->minutes[way] /= MAX (1, out->gone[way]);
      out->against[way] /= MAX (1, out->gone[way]);
      out->first_there[way] /= MAX (1, out->gone[way]);
      out->first_against[way] /= MAX (1, out->gone[way]);
    }
  out->again /= out->n;
}

void
study_calibration (const Study *study,
                   StudyFamily  family,
                   StudyDecile  out[STUDY_DECILES])
{
  for (guint d = 0; d < STUDY_DECILES; d++)
    out[d] = (StudyDecile) { 0 };
  for (guint i = 0; i < study->results->len; i++)
    {
      const StudyResult *result = study_result (study, i);
      const StudyJob *done = &result->done[STUDY_PROGRAM];

      if (result->job.family != family)
        continue;
      for (guint k = 0; k < done->n_claims; k++)
        {
          const guint d = MIN (STUDY_DECILES - 1, (guint) (done->claims[k].p * STUDY_DECILES));

          out[d].n++;
          out[d].stated += done->claims[k].p;
          out[d].right += done->claims[k].right;
        }
    }
  for (guint d = 0; d < STUDY_DECILES; d++)
    if (out[d].n > 0)
      {
        out[d].stated /= out[d].n;
        out[d].right /= out[d].n;
      }
}

/* One row of a table of texts. */
static void
append_cells (GString           *out,
              const char *const *cells,
              guint              n)
{
  for (guint i = 0; i < n; i++)
    g_string_append_printf (out, "| %s ", cells[i]);
  g_string_append (out, "|\n");
  for (guint i = 0; i < n; i++)
    g_string_append (out, "|---");
  g_string_append (out, "|\n");
}

void
study_append_families (const Study *study,
                       GString     *out)
{
  static const char *const heads[] = { "cabinets",  "n",           "first before a repair", "among three",
                                       "first, alike as one",      "first after three checks",
                                       "among three", "first after the symptoms",
                                       "first with every check taken", "among three",
                                       "fixed",     "works again", "checks", "repairs", "minutes" };

  append_cells (out, heads, G_N_ELEMENTS (heads));
  for (guint family = 0; family < STUDY_N_FAMILIES; family++)
    {
      StudyFigures it;

      study_figures (study, family, NULL, &it);
      if (it.n == 0 || family == STUDY_EVERY_PAIR)
        continue;

      const double shares[] = { it.first[STUDY_BEFORE_REPAIR],
                                it.among_three[STUDY_BEFORE_REPAIR],
                                it.first_alike[STUDY_BEFORE_REPAIR],
                                it.first[STUDY_AFTER_THREE],
                                it.among_three[STUDY_AFTER_THREE],
                                it.first[STUDY_AFTER_SYMPTOMS],
                                it.first[STUDY_AFTER_ALL],
                                it.among_three[STUDY_AFTER_ALL],
                                (double) it.fixed / it.n,
                                (double) (it.fixed + it.half) / it.n };

      g_string_append_printf (out, "| %s | %u |", study_family_get_label (family), it.n);
      for (guint i = 0; i < G_N_ELEMENTS (shares); i++)
        g_string_append_printf (out, " %.1f %% |", 100 * shares[i]);
      g_string_append_printf (out, " %.1f | %.2f | %.0f |\n", it.checks, it.repairs,
                              it.minutes[STUDY_PROGRAM]);
    }
}

void
study_append_ways (const Study *study,
                   GString     *out)
{
  static const char *const heads[] = { "cabinets", "way", "n", "minutes", "the program there", "ratio",
                                       "first before a repair", "the program there" };

  append_cells (out, heads, G_N_ELEMENTS (heads));
  for (guint family = 0; family < STUDY_N_FAMILIES; family++)
    for (guint way = STUDY_PROGRAM + 1; way < STUDY_N_WAYS; way++)
      {
        StudyFigures it;

        study_figures (study, family, NULL, &it);
        if (it.gone[way] == 0)
          continue;
        g_string_append_printf (out, "| %s | %s | %u | %.1f | %.1f | %.2f | %.1f %% | %.1f %% |\n",
                                study_family_get_label (family), study_way_get_label (way),
                                it.gone[way], it.minutes[way], it.against[way],
                                it.against[way] / it.minutes[way], 100 * it.first_there[way],
                                100 * it.first_against[way]);
      }
}

void
study_append_calibration (const Study *study,
                          GString     *out)
{
  g_string_append (out, "| stated |");
  for (guint d = 0; d < STUDY_DECILES; d++)
    g_string_append_printf (out, " %u–%u %% |", 10 * d, 10 * d + 10);
  g_string_append (out, "\n|---|---|---|---|---|---|---|---|---|---|---|\n");
  for (guint family = 0; family < STUDY_N_FAMILIES; family++)
    {
      StudyDecile deciles[STUDY_DECILES];

      if (study->plan.n[family] == 0)
        continue;
      study_calibration (study, family, deciles);
      g_string_append_printf (out, "| right, %s |", study_family_get_label (family));
      for (guint d = 0; d < STUDY_DECILES; d++)
        if (deciles[d].n > 0)
          g_string_append_printf (out, " %.0f %% of %u |", 100 * deciles[d].right, deciles[d].n);
        else
          g_string_append (out, " – |");
      g_string_append_c (out, '\n');
    }
}

/* Whom it takes for the fault most often when it is wrong. */
static void
append_mistaken (const Study *study,
                 StudyFamily  family,
                 const char  *fault,
                 GString     *out)
{
  g_autoptr (GHashTable) count = g_hash_table_new (g_str_hash, g_str_equal);
  GHashTableIter iter;
  gpointer key, value;
  const char *worst = NULL;
  guint most = 0;

  for (guint i = 0; i < study->results->len; i++)
    {
      const StudyResult *result = study_result (study, i);
      const char *first = result->done[STUDY_PROGRAM].first[STUDY_BEFORE_REPAIR];

      if (!counts_for (result, family, fault) || first == NULL
          || study_case_has (&result->job, first))
        continue;

      const guint so_far = GPOINTER_TO_UINT (g_hash_table_lookup (count, first));

      g_hash_table_insert (count, (gpointer) first, GUINT_TO_POINTER (so_far + 1));
    }
  g_hash_table_iter_init (&iter, count);
  while (g_hash_table_iter_next (&iter, &key, &value))
    if (GPOINTER_TO_UINT (value) > most
        || (GPOINTER_TO_UINT (value) == most && g_strcmp0 (key, worst) < 0))
      {
        most = GPOINTER_TO_UINT (value);
        worst = key;
      }
  if (worst != NULL)
    g_string_append_printf (out, " %s %u |\n", worst, most);
  else
    g_string_append (out, " |\n");
}

void
study_append_faults (const Study *study,
                     StudyFamily  family,
                     GString     *out)
{
  static const char *const heads[] = { "fault", "n", "first", "among three",
                                       "first with every check", "fixed", "checks", "repairs",
                                       "minutes", "list", "taken for" };

  append_cells (out, heads, G_N_ELEMENTS (heads));
  for (guint i = 0; i < rw_practice_faults_get_n (); i++)
    {
      const char *fault = rw_practice_faults_get_id (i);
      StudyFigures it;

      study_figures (study, family, fault, &it);
      if (it.n == 0)
        continue;
      g_string_append_printf (out, "| %s | %u | %.0f %% | %.0f %% | %.0f %% | %.0f %% |", fault, it.n,
                              100 * it.first[STUDY_BEFORE_REPAIR],
                              100 * it.among_three[STUDY_BEFORE_REPAIR],
                              100 * it.first[STUDY_AFTER_ALL], 100.0 * it.fixed / it.n);
      g_string_append_printf (out, " %.1f | %.2f | %.0f | %.0f |", it.checks, it.repairs,
                              it.minutes[STUDY_PROGRAM], it.minutes[STUDY_LIST_FILES]);
      append_mistaken (study, family, fault, out);
    }
}
