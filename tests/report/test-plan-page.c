/* test-plan-page.c: a plan on paper, and the cautions in it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The tree is made by hand from the check and the causes of mini-knowledge.json: the one check that has a caution, six
 * times deep, with runs of repairs at its leaves that are different enough not to be told together.
 */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>

#include "report-fixture.h"
#include "rw-report-plan-lines.h"
#include "rw-report-plan-page.h"

#define CAUTION "Mains inside: a licensed person only."

static RwPlanTree *
make_node (RwActionKind kind,
           guint        index,
           double       reach,
           guint        n_children)
{
  RwPlanTree *node = g_new0 (RwPlanTree, 1);

  *node = (RwPlanTree) { .kind = kind, .index = index, .minutes = 2, .reach = reach, .expected = 10,
                         .n_children = n_children };
  node->children = g_new0 (RwPlanTree *, n_children);
  return node;
}

static RwPlanTree *
make_run (guint  pattern,
          guint  length,
          double reach)
{
  RwPlanTree *node = make_node (RW_ACTION_REPAIR, pattern & 1, reach, 1);

  if (length > 1)
    node->children[0] = make_run (pattern >> 1, length - 1, reach / 2);
  return node;
}

static RwPlanTree *
make_tree (GRand *random,
           guint  check,
           guint  depth,
           double reach)
{
  if (depth == 0)
    return make_run ((guint) g_rand_int_range (random, 0, 8), (guint) g_rand_int_range (random, 1, 4), reach);

  RwPlanTree *node = make_node (RW_ACTION_CHECK, check, reach, 2);

  for (guint i = 0; i < 2; i++)
    node->children[i] = make_tree (random, check, depth - 1, reach / 2);
  return node;
}

static RwReportPlan *
make_plan (guint depth)
{
  g_autoptr (RwKnowledge) knowledge = fixture_load_knowledge ();
  g_autoptr (RwJournalRead) read = fixture_read ("");
  g_autoptr (RwBenchState) state = rw_bench_state_new (read->session);
  g_autoptr (GRand) random = g_rand_new_with_seed (11);
  RwReportPlan *plan = g_new0 (RwReportPlan, 1);

  plan->advice = rw_advice_new (knowledge, state, NULL);
  plan->depth = depth;
  plan->tree = make_tree (random,
                          (guint) rw_knowledge_index_of_check (rw_advice_get_knowledge (plan->advice), "look-inside"),
                          depth, 1);
  return plan;
}

/* --- cautions ------------------------------------------------------------------------------------- */

/* Before the first step in full, before each later one by number, right before it. */
static void
test_a_caution_is_said_in_full_once (void)
{
  g_autoptr (RwReportPlan) plan = make_plan (3);
  g_autoptr (GPtrArray) lines = rw_report_plan_lines (plan);
  guint n_full = 0, n_checks = 0;

  for (guint i = 0; i < lines->len; i++)
    {
      const RwPlanLine *line = lines->pdata[i];
      const RwPlanLine *before = i > 0 ? lines->pdata[i - 1] : NULL;

      if (strstr (line->text, CAUTION) != NULL)
        {
          n_full++;
          g_assert_false (line->repeats);
        }
      if (line->kind != RW_PLAN_LINE_CHECK)
        continue;
      g_assert_cmpint (before->kind, ==, RW_PLAN_LINE_DANGER);
      g_assert_cmpuint (before->caution, ==, 1);
      g_assert_cmpint (before->repeats, ==, n_checks > 0);
      g_assert_cmpuint (before->level, ==, line->level);
      n_checks++;
    }
  g_assert_cmpuint (n_full, ==, 1);
  g_assert_cmpuint (n_checks, ==, 7);
}

static void
test_a_mark_says_what_hurts_and_where_to_read (void)
{
  g_autoptr (RwReportPlan) plan = make_plan (2);
  g_autoptr (GPtrArray) lines = rw_report_plan_lines (plan);
  g_autoptr (GString) text = rw_report_plan_to_text (plan);
  const RwPlanLine *mark = NULL;

  for (guint i = 0; i < lines->len && mark == NULL; i++)
    mark = ((RwPlanLine *) lines->pdata[i])->repeats ? lines->pdata[i] : NULL;
  g_assert_nonnull (mark);

  g_autofree char *on_paper = rw_plan_line_dup_text (mark, 3);

  g_assert_true (g_str_has_prefix (on_paper, rw_hazard_get_label (RW_HAZARD_MAINS)));
  g_assert_true (g_str_has_suffix (on_paper, ": caution 1, page 3"));
  g_assert_nonnull (strstr (text->str, "! Caution 1: " CAUTION "\n"));
  g_assert_nonnull (strstr (text->str, ": caution 1 above\n"));
}

/* --- pages ---------------------------------------------------------------------------------------- */

/* Dark pixels of a page, drawn a point a pixel, between two heights. */
static guint
ink (const RwReportPlanPages *pages,
     guint                    page,
     int                      from,
     int                      to)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) RW_PAPER_WIDTH,
                                                         (int) RW_PAPER_HEIGHT);
  cairo_t *cr = cairo_create (surface);
  guint n = 0;

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  rw_report_plan_pages_draw (pages, cr, page);
  cairo_surface_flush (surface);
  for (int y = from; y < to; y++)
    for (int x = 0; x < cairo_image_surface_get_width (surface); x++)
      if (cairo_image_surface_get_data (surface)[y * cairo_image_surface_get_stride (surface) + 4 * x + 1] < 128)
        n++;
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return n;
}

static void
test_a_long_plan_has_many_pages_each_inside_its_margins (void)
{
  g_autoptr (RwReportPlan) plan = make_plan (6);
  g_autoptr (RwReportPlanPages) pages = rw_report_plan_pages_new (plan, NULL);
  const guint n = rw_report_plan_pages_count (pages);

  g_assert_cmpuint (n, >, 2);
  for (guint i = 0; i < n; i++)
    {
      g_assert_cmpuint (ink (pages, i, 90, 740), >, 100);
      g_assert_cmpuint (ink (pages, i, 0, 36), ==, 0);
      g_assert_cmpuint (ink (pages, i, 810, 841), ==, 0);
    }
}

static void
test_a_short_plan_is_one_page (void)
{
  g_autoptr (RwReportPlan) plan = make_plan (1);
  g_autoptr (RwReportPlanPages) pages = rw_report_plan_pages_new (plan, NULL);

  g_assert_cmpuint (rw_report_plan_pages_count (pages), ==, 1);
}

static char *
save (const char *path,
      guint       depth,
      gsize      *size)
{
  g_autoptr (RwReportPlan) plan = make_plan (depth);
  g_autoptr (RwJournalRead) read = fixture_read ("");
  g_autoptr (GError) error = NULL;
  char *bytes = NULL;

  g_assert_true (rw_report_plan_save_pdf (plan, read->session, path, &error));
  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (path, &bytes, size, NULL));
  return bytes;
}

/* The words of a PDF; NULL without the tool that reads them. (transfer full) (nullable) */
static char *
read_words (const char *path)
{
  const char *command[] = { "pdftotext", "-layout", path, "-", NULL };
  g_autofree char *tool = g_find_program_in_path (command[0]);
  char *words = NULL;
  int status = 1;

  if (tool == NULL)
    return NULL;
  g_assert_true (g_spawn_sync (NULL, (char **) command, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &words, NULL, &status,
                               NULL));
  g_assert_cmpint (status, ==, 0);
  return words;
}

/* On every page the mark names the page where the caution is; on that one it stands, once, and nowhere else. */
static void
check_words (const char *words)
{
  g_auto (GStrv) pages = g_strsplit (words, "\f", -1);

  g_assert_cmpuint (g_strv_length (pages), >, 3);
  for (guint i = 0; pages[i + 1] != NULL; i++)
    {
      g_assert_cmpint (strstr (pages[i], CAUTION) != NULL, ==, i == 0);
      g_assert_nonnull (strstr (pages[i], "caution 1, page 1"));
      g_assert_null (strstr (pages[i], "caution 1, page 2"));
    }
}

static void
test_marks_name_the_page_of_the_caution (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = g_dir_make_tmp ("plan-page-XXXXXX", &error);
  g_autofree char *path = g_build_filename (folder, "plan.pdf", NULL);
  gsize first_size = 0, second_size = 0;

  g_assert_no_error (error);

  g_autofree char *first = save (path, 6, &first_size);
  g_autofree char *second = save (path, 6, &second_size);
  g_autofree char *words = read_words (path);

  g_assert_cmpmem (first, first_size, second, second_size); /* the same plan, the same pages */
  g_remove (path);
  g_rmdir (folder);
  if (words == NULL)
    g_test_skip ("pdftotext is not installed");
  else
    check_words (words);
}

static void
test_a_folder_that_is_not_there_is_an_error (void)
{
  g_autoptr (RwReportPlan) plan = make_plan (1);
  g_autoptr (GError) error = NULL;

  g_assert_false (rw_report_plan_save_pdf (plan, NULL, "/nowhere/at/all/plan.pdf", &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_NOENT);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan-page/a caution is said in full once", test_a_caution_is_said_in_full_once);
  g_test_add_func ("/plan-page/a mark says what hurts and where to read", test_a_mark_says_what_hurts_and_where_to_read);
  g_test_add_func ("/plan-page/a long plan has many pages, each inside its margins",
                   test_a_long_plan_has_many_pages_each_inside_its_margins);
  g_test_add_func ("/plan-page/a short plan is one page", test_a_short_plan_is_one_page);
  g_test_add_func ("/plan-page/marks name the page of the caution", test_marks_name_the_page_of_the_caution);
  g_test_add_func ("/plan-page/a folder that is not there is an error", test_a_folder_that_is_not_there_is_an_error);
  return g_test_run ();
}
