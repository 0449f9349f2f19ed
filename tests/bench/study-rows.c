/* study-rows.c: how often the physics shows an outcome, against what the knowledge says of it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For a fault and a check, f(o) is the share of cabinets that showed outcome o and q(o) the chance in the
 * table. What the table loses on the average of those cabinets is D = Σ f log2 (f/q) bits (Kullback &
 * Leibler 1951), which by chance alone is about (outcomes − 1)/(2 n ln 2): that much is taken off.
 * A row at odds is a question to the knowledge or to the practice cabinet; tables are never made from it.
 */
#include "config.h"

#include "study-rows.h"

#include <math.h>

#include "study-hands.h"

#define MOST_OUTCOMES 16

typedef struct
{
  const char *fault;
  const char *what; /* check or symptom */
  gboolean    symptom;
  guint       n;
  guint       seen[MOST_OUTCOMES];
} Row;

struct _StudyRows
{
  RwKnowledge *knowledge;
  GMutex       lock;
  GHashTable  *rows; /* "fault what" → Row */
};

StudyRows *
study_rows_new (RwKnowledge *knowledge)
{
  StudyRows *self = g_new0 (StudyRows, 1);

  self->knowledge = rw_knowledge_ref (knowledge);
  g_mutex_init (&self->lock);
  self->rows = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  return self;
}

void
study_rows_free (StudyRows *self)
{
  rw_knowledge_unref (self->knowledge);
  g_mutex_clear (&self->lock);
  g_hash_table_unref (self->rows);
  g_free (self);
}

static void
count (StudyRows  *self,
       const char *fault,
       const char *what,
       gboolean    symptom,
       guint       outcome)
{
  g_autofree char *key = g_strdup_printf ("%s %s", fault, what);

  g_mutex_lock (&self->lock);

  Row *row = g_hash_table_lookup (self->rows, key);

  if (row == NULL)
    {
      row = g_new0 (Row, 1);
      *row = (Row) { .fault = fault, .what = what, .symptom = symptom };
      g_hash_table_insert (self->rows, g_steal_pointer (&key), row);
    }
  row->n++;
  row->seen[outcome]++;
  g_mutex_unlock (&self->lock);
}

static void
count_symptoms (StudyRows       *self,
                const StudyCase *job)
{
  for (guint s = 0; s < rw_knowledge_get_n_symptoms (self->knowledge); s++)
    {
      const char *id = rw_knowledge_get_symptom (self->knowledge, s)->id;
      gboolean present = FALSE;

      if (!rw_practice_cabinet_knows_symptom (id))
        continue;
      for (guint k = 0; k < job->n_symptoms; k++)
        present = present || g_str_equal (job->symptoms[k], id);
      count (self, job->faults[0].id, id, TRUE, present ? 1 : 0);
    }
}

/* Unplugged first, then the board in, cold and warm, then out: few changes. */
static int
compare_setups (gconstpointer a,
                gconstpointer b)
{
  const RwCheck *x = *(const RwCheck *const *) a, *y = *(const RwCheck *const *) b;

  if (x->board != y->board)
    return (int) y->board - (int) x->board;
  if (x->warm != y->warm)
    return (int) x->warm - (int) y->warm;
  return (int) x->power - (int) y->power;
}

static void
count_check (StudyRows     *self,
             StudyHands    *hands,
             const RwCheck *check)
{
  const RwOutcome *outcome = study_hands_check (hands, check);

  if (outcome != NULL && hands->job->n_faults == 1)
    count (self, hands->job->faults[0].id, check->id, FALSE, (guint) (outcome - check->outcomes));
}

void
study_rows_survey (StudyRows       *self,
                   const StudyCase *job,
                   StudyJob        *out)
{
  g_autoptr (RwKnowledge) knowledge = rw_knowledge_for_profile (self->knowledge, job->profile);
  g_autoptr (GPtrArray) list = g_ptr_array_new ();
  StudyHands hands;

  for (guint j = 0; j < rw_knowledge_get_n_checks (knowledge); j++)
    g_ptr_array_add (list, (gpointer) rw_knowledge_get_check (knowledge, j));
  g_ptr_array_sort (list, compare_setups);
  study_hands_init (&hands, job);
  study_hands_tell_symptoms (&hands);
  if (job->n_faults == 1)
    count_symptoms (self, job);
  for (guint j = 0; j < list->len; j++)
    count_check (self, &hands, list->pdata[j]);

  g_autoptr (RwBenchState) state = rw_bench_state_new (hands.hands.session);
  g_autoptr (RwBelief) belief = rw_belief_new (knowledge, state);

  study_job_look_at (out, job, belief, STUDY_AFTER_ALL);
  study_hands_clear (&hands);
}

/* The chances of the knowledge for a row; @q of MOST_OUTCOMES. Returns the number of outcomes. */
static guint
chances_of (const StudyRows *self,
            const Row       *row,
            const char      *fault,
            double          *q)
{
  const RwCheck *check = row->symptom ? NULL : rw_knowledge_find_check (self->knowledge, row->what);

  if (check != NULL)
    {
      const double *chance = rw_chance_table_get (&check->chance, fault);

      for (guint o = 0; o < check->n_outcomes; o++)
        q[o] = chance[o];
      return check->n_outcomes;
    }

  const RwSymptom *symptom = rw_knowledge_find_symptom (self->knowledge, row->what);

  q[1] = *rw_chance_table_get (&symptom->chance, fault);
  q[0] = 1 - q[1];
  return 2;
}

static double
bits_lost (const Row    *row,
           const double *q,
           guint         n)
{
  double bits = 0;

  for (guint o = 0; o < n; o++)
    if (row->seen[o] > 0)
      {
        const double f = (double) row->seen[o] / row->n;

        bits += f * log2 (f / MAX (q[o], 1e-6));
      }
  return MAX (0, bits - (n - 1) / (2 * row->n * G_LN2));
}

typedef struct
{
  const Row *row;
  double     bits;
} Loss;

static int
compare_losses (gconstpointer a,
                gconstpointer b)
{
  const Loss *x = a, *y = b;

  if (x->bits != y->bits)
    return x->bits > y->bits ? -1 : 1;
  return g_strcmp0 (x->row->fault, y->row->fault);
}

static void
append_row (const StudyRows *self,
            GString         *out,
            const Loss      *loss)
{
  double q[MOST_OUTCOMES];
  const Row *row = loss->row;
  const guint n = chances_of (self, row, row->fault, q);
  const RwCheck *check = rw_knowledge_find_check (self->knowledge, row->what);

  g_string_append_printf (out, "%5.2f bits  %-24s %s%-22s n=%-4u", loss->bits, row->fault,
                          row->symptom ? "symptom " : "", row->what, row->n);
  for (guint o = 0; o < n; o++)
    g_string_append_printf (out, "  %s %.2f/%.2f",
                            row->symptom ? (o == 1 ? "present" : "absent") : check->outcomes[o].id,
                            (double) row->seen[o] / row->n, q[o]);
  g_string_append_c (out, '\n');
}

void
study_rows_append (StudyRows  *self,
                   GString    *out,
                   const char *fault,
                   guint       most)
{
  g_autoptr (GArray) losses = g_array_new (FALSE, FALSE, sizeof (Loss));
  GHashTableIter iter;
  gpointer value;

  g_hash_table_iter_init (&iter, self->rows);
  while (g_hash_table_iter_next (&iter, NULL, &value))
    {
      const Row *row = value;
      double q[MOST_OUTCOMES];

      if (fault != NULL && !g_str_equal (row->fault, fault))
        continue;

      const guint n = chances_of (self, row, row->fault, q);
      const Loss loss = { row, bits_lost (row, q, n) };

      g_array_append_val (losses, loss);
    }
  g_array_sort (losses, compare_losses);
  for (guint i = 0; i < MIN (most, losses->len); i++)
    append_row (self, out, &g_array_index (losses, Loss, i));
}
