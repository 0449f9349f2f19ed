/* bench-advice.c: with all that is shipped: how long an advice takes, and how much memory.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every shipped profile, and for each 40 states of evidence that repeat exactly: none to three
 * symptoms, then, in every second state, DC readings at the board of some of the rails, inside
 * their limits and outside. Asked as the window asks: the state of the bench is made anew, then
 * the advice with the screen's budget. Then the plan is unfolded as the window's tree does it:
 * the outcomes of the first check, and below each outcome the next level. The bounds: 50 ms for
 * an advice, 50 ms for a level, 50 MB of resident memory that the whole run adds to the bare
 * process, knowledge read included. Times are of the processor, not of the clock on the wall,
 * so that other jobs on the machine do not count.
 */
#include "config.h"

#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "job-fixtures.h"
#include "rw-plan-node.h"

#define N_STATES 40
#define MOST_SYMPTOMS 3

static const double most_milliseconds = 50;
static const double most_megabytes = 50;
static const guint deepest = 2; /* checks above the last level that is unfolded */

typedef struct
{
  guint  n;
  double sum, most;
} Figure;

typedef struct
{
  Figure advice, level;
  guint  n_checks, n_causes; /* the most of any profile */
} Figures;

/* --- measuring -------------------------------------------------------------------------------- */

static double
milliseconds (void)
{
  struct timespec now;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &now);
  return 1000 * (double) now.tv_sec + (double) now.tv_nsec / 1e6;
}

static void
add_since (Figure *self,
           double  begin)
{
  const double took = milliseconds () - begin;

  self->n++;
  self->sum += took;
  self->most = MAX (self->most, took);
}

/* A line of the kernel's account of this process, "VmRSS:" or "VmHWM:" (the most ever), in
 * megabytes; kilobytes there. */
static double
megabytes (const char *key)
{
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;

  g_file_get_contents ("/proc/self/status", &text, NULL, &error);
  g_assert_no_error (error);

  const char *line = strstr (text, key);

  g_assert_nonnull (line);
  return (double) strtoul (line + strlen (key), NULL, 10) / 1024;
}

/* --- evidence --------------------------------------------------------------------------------- */

/* Anywhere from half a width below the limits to half a width above. */
static void
add_reading (RwSession    *job,
             GRand        *random,
             const RwRail *rail)
{
  const double value = rail->lo + (rail->hi - rail->lo) * g_rand_double_range (random, -0.5, 1.5);

  fixture_reading (job, rail->id, RW_PLACE_BOARD, RW_KIND_DC, value,
                   0.005 * (rail->hi - rail->lo));
}

static RwSession *
draw_job (GRand       *random,
          RwProfile   *profile,
          RwKnowledge *knowledge,
          guint        state)
{
  g_autoptr (GDateTime) started = g_date_time_new_utc (2026, 3, 14, 9, 30, 0);
  RwSession *job = rw_session_new (
      rw_session_header_new (profile, "Tidepool Racer", "B-07", NULL, started));
  const int n = (int) rw_knowledge_get_n_symptoms (knowledge);

  for (guint k = 0; k < state % (MOST_SYMPTOMS + 1); k++)
    {
      const guint which = (guint) g_rand_int_range (random, 0, n);

      fixture_symptom (job, rw_knowledge_get_symptom (knowledge, which)->id, RW_SYMPTOM_PRESENT);
    }
  if (state % 2 == 0)
    return job;
  fixture_setup (job, RW_SAID_YES, RW_SAID_YES, RW_SAID_NO);
  for (guint r = 0; r < rw_profile_get_n_rails (profile); r++)
    if (g_rand_boolean (random))
      add_reading (job, random, rw_profile_get_rail (profile, r));
  return job;
}

/* --- asking ----------------------------------------------------------------------------------- */

static void unfold (GListModel *level,
                    Figures    *figures);

static void
unfold_row (RwPlanNode *row,
            Figures    *figures)
{
  g_autoptr (GListModel) below = rw_plan_node_list_children (row);

  if (below != NULL && rw_plan_node_get_depth (row) <= deepest)
    unfold (below, figures);
}

static void
unfold (GListModel *level,
        Figures    *figures)
{
  const double begin = milliseconds ();
  const guint n = g_list_model_get_n_items (level);

  add_since (&figures->level, begin);
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (RwPlanNode) row = g_list_model_get_item (level, i);

      unfold_row (row, figures);
    }
}

static void
ask (RwKnowledge *knowledge,
     RwSession   *job,
     Figures     *figures)
{
  const double begin = milliseconds ();
  g_autoptr (RwBenchState) state = rw_bench_state_new (job);
  g_autoptr (RwAdvice) advice = rw_advice_new (knowledge, state, NULL);

  add_since (&figures->advice, begin);
  g_assert_cmpint (rw_advice_get_kind (advice), !=, RW_ADVICE_NOTHING);

  g_autoptr (GListModel) roots = rw_plan_node_list_roots (advice);
  RwKnowledge *own = rw_advice_get_knowledge (advice);

  figures->n_checks = MAX (figures->n_checks, rw_knowledge_get_n_checks (own));
  figures->n_causes = MAX (figures->n_causes, rw_knowledge_get_n_causes (own));
  unfold (roots, figures);
}

static void
print_figure (const char   *title,
              const Figure *figure)
{
  g_print ("# | %s | %u | %.2f | %.2f |\n", title, figure->n, figure->sum / figure->n,
           figure->most);
}

static void
test_shipped_knowledge (void)
{
  const double before = megabytes ("VmRSS:");
  g_autoptr (GError) error = NULL;
  g_autoptr (RwKnowledge) knowledge = rw_knowledge_load (NULL, &error);
  g_autoptr (GPtrArray) profiles = rw_profile_list (NULL);
  g_autoptr (GRand) random = g_rand_new_with_seed (4200);
  Figures figures = { 0 };

  g_assert_no_error (error);
  g_assert_cmpuint (profiles->len, >, 0);
  for (guint p = 0; p < profiles->len; p++)
    for (guint k = 0; k < N_STATES; k++)
      {
        g_autoptr (RwSession) job = draw_job (random, profiles->pdata[p], knowledge, k);

        ask (knowledge, job, &figures);
      }

  const double grown = megabytes ("VmHWM:") - before;

  g_print ("# %u profiles × %d states, up to %u causes and %u checks\n", profiles->len, N_STATES,
           figures.n_causes, figures.n_checks);
  g_print ("# | one core | times | mean ms | most ms |\n# | --- | --- | --- | --- |\n");
  print_figure ("advice after new evidence", &figures.advice);
  print_figure ("one level of the tree unfolded", &figures.level);
  g_print ("# resident memory: %.1f MB before, %.1f MB more at most\n", before, grown);
  g_assert_cmpfloat (figures.advice.most, <, most_milliseconds);
  g_assert_cmpfloat (figures.level.most, <, most_milliseconds);
  g_assert_cmpfloat (grown, <, most_megabytes);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  fixture_leave_home ();
  g_test_add_func ("/bench/advice: within 50 ms and 50 MB on all that is shipped",
                   test_shipped_knowledge);

  const int status = g_test_run ();

  fixture_come_home ();
  return status;
}
