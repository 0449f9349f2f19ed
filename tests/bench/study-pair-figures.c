/* study-pair-figures.c: tables of cabinets with two faults at once, and of every fault alone and in pairs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Right, of a cabinet with two faults: the leading cause of the list is one of the two, whichever; a pair that is
 * spoken of counts by its members, whose chances have the pair's in them. The rest, once one of the two was mended:
 * the other one leads those whose repair was not tried.
 */
#include "config.h"

#include "study-figures.h"

typedef struct
{
  guint  n, n_rest;
  double first, among_three, both_among_three, own_among_three, own_mended;
  double rest_first, rest_among_three, works, fixed, checks, repairs, minutes;
} Pairs;

static gboolean
is_among_three (guint rank)
{
  return rank >= 1 && rank <= 3;
}

static void
add (Pairs             *out,
     const StudyResult *result,
     const char        *fault)
{
  const StudyJob *done = &result->done[STUDY_PROGRAM];

  out->n++;
  out->first += done->rank[STUDY_BEFORE_REPAIR] == 1;
  out->among_three += is_among_three (done->rank[STUDY_BEFORE_REPAIR]);
  out->both_among_three += is_among_three (done->own_rank[0]) && is_among_three (done->own_rank[1]);
  out->n_rest += done->rest_rank > 0;
  out->rest_first += done->rest_rank == 1;
  out->rest_among_three += is_among_three (done->rest_rank);
  out->works += done->fixed || done->half;
  out->fixed += done->fixed;
  out->checks += done->n_checks;
  out->repairs += done->n_repairs;
  out->minutes += done->minutes;
  for (guint i = 0; i < result->job.n_faults; i++)
    if (g_strcmp0 (result->job.faults[i].id, fault) == 0)
      {
        out->own_among_three += is_among_three (done->own_rank[i]);
        out->own_mended += done->mended[i];
      }
}

/* Those of a family that have the fault, or all when it is NULL. */
static Pairs
sum_up (const Study *study,
        StudyFamily  family,
        const char  *fault)
{
  Pairs out = { 0 };

  for (guint i = 0; i < study->results->len; i++)
    {
      const StudyResult *result = study_result (study, i);

      if (result->job.family == family && (fault == NULL || study_case_has (&result->job, fault)))
        add (&out, result, fault);
    }
  return out;
}

static double
percent (double count,
         guint  n)
{
  return 100 * count / MAX (1, n);
}

void
study_append_pairs (const Study *study,
                    GString     *out)
{
  g_string_append (out, "| cabinets | n | one of the two first before a repair | among three | both among three |"
                        " one mended, something left | the other one first | among three | works again |"
                        " both mended | checks | repairs | minutes |\n|---|---|---|---|---|---|---|---|---|---|---|---|---|\n");
  for (StudyFamily family = STUDY_PAIRS; family < STUDY_N_FAMILIES; family++)
    {
      const Pairs it = sum_up (study, family, NULL);

      if (it.n == 0)
        continue;
      g_string_append_printf (out, "| %s | %u | %.1f %% | %.1f %% | %.1f %% | %u | %.1f %% | %.1f %% |",
                              study_family_get_label (family), it.n, percent (it.first, it.n),
                              percent (it.among_three, it.n), percent (it.both_among_three, it.n), it.n_rest,
                              percent (it.rest_first, it.n_rest), percent (it.rest_among_three, it.n_rest));
      g_string_append_printf (out, " %.1f %% | %.1f %% | %.1f | %.2f | %.0f |\n", percent (it.works, it.n),
                              percent (it.fixed, it.n), it.checks / it.n, it.repairs / it.n, it.minutes / it.n);
    }
}

void
study_append_each_fault (const Study *study,
                         GString     *out)
{
  g_string_append (out, "| fault | alone, n | first | among three | in pairs, n | one of the two first | among three |"
                        " this one among three | this one mended |\n|---|---|---|---|---|---|---|---|---|\n");
  for (guint i = 0; i < rw_practice_faults_get_n (); i++)
    {
      const char *fault = rw_practice_faults_get_id (i);
      const Pairs alone = sum_up (study, STUDY_EACH_ALIKE, fault), pairs = sum_up (study, STUDY_EVERY_PAIR, fault);

      g_string_append_printf (out, "| %s | %u | %.0f %% | %.0f %% | %u | %.0f %% | %.0f %% | %.0f %% | %.0f %% |\n", fault,
                              alone.n, percent (alone.first, alone.n), percent (alone.among_three, alone.n), pairs.n,
                              percent (pairs.first, pairs.n), percent (pairs.among_three, pairs.n),
                              percent (pairs.own_among_three, pairs.n), percent (pairs.own_mended, pairs.n));
    }
}
