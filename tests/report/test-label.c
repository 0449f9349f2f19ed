/* test-label.c: the label of the supply and the record of the bring-up.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <cairo.h>
#include <gio/gio.h>
#include <glib/gstdio.h>
#include <string.h>

#include "report-fixture.h"
#include "rw-label.h"
#include "rw-report-stages-page.h"
#include "rw-report-text.h"

#define SETUP(n, t, words) EVENT (n, t, "\"setup\":{" words "}")
#define STAGE(n, t, words) EVENT (n, t, "\"stage\":{" words "}")
#define DC(n, t, rail, place, value) \
  READING (n, t, rail, place, "dc", "\"value\":" value ",\"step\":0.01,\"meter\":\"m1\"")

#define EVENT_FORMAT "{\"n\":%u,\"t\":%u,\"stage\":{\"id\":\"fit-board\",\"against\":\"reason %u\"}}\n"

static const char job[]
    = SETUP (1, 1, "\"power\":\"on\",\"board\":\"out\",\"warm\":false") DC (2, 2, "p5", "terminals", "5.30")
      SETUP (3, 3, "\"power\":\"off\"") SETUP (4, 4, "\"board\":\"fitted\"") SETUP (5, 5, "\"power\":\"on\",\"warm\":true")
      DC (6, 6, "p5", "board", "4.81") DC (7, 7, "m5", "board", "-4.90") EVENT (8, 8, "\"trim\":{\"moved\":true}")
      DC (9, 9, "p5", "board", "5.05") DC (10, 10, "p5", "terminals", "5.11");

static RwLabel *
make_label (const char *lines,
            const char *who)
{
  g_autoptr (RwJournalRead) read = fixture_read (lines);
  g_autoptr (RwBenchState) state = rw_bench_state_new (read->session);

  return rw_label_new (read->session, state, "2026-03-14", who);
}

static void
test_says_what_was_set (void)
{
  g_autoptr (RwLabel) label = make_label (job, "Mo");
  const RwLabelRow *p5 = &g_array_index (label->rows, RwLabelRow, 0);
  g_autoptr (GString) text = rw_label_to_text (label);

  g_assert_cmpstr (label->cabinet, ==, "Tidepool \"Racer\" · B-07");
  g_assert_cmpstr (label->date, ==, "2026-03-14");
  g_assert_cmpstr (label->who, ==, "Mo");
  g_assert_cmpstr (label->warm, ==, "warm");
  g_assert_cmpstr (label->meter, ==, "bench meter, ±(0.50 % + 2 counts)");
  g_assert_cmpstr (label->set_point, ==, "+5 V: 5.05\u202fV at the board, 5.11\u202fV at the terminals");
  g_assert_cmpuint (label->rows->len, ==, 2);
  g_assert_cmpstr (p5->board, ==, "5.05\u202fV");
  g_assert_cmpstr (p5->terminals, ==, "5.11\u202fV");
  for (guint i = 0; i < 2; i++)
    g_assert_nonnull (strstr (text->str, g_array_index (label->rows, RwLabelRow, i).rail));
  g_assert_nonnull (strstr (text->str, "Set 2026-03-14, warm\n"));
  g_assert_nonnull (strstr (text->str, "By: Mo\n"));
}

/* −5 was read before the trim was turned: the label does not show what no longer holds. Nor what was read bare. */
static void
test_leaves_out_what_no_longer_holds (void)
{
  g_autoptr (RwLabel) label = make_label (job, NULL), empty = make_label ("", "");

  g_assert_cmpstr (g_array_index (label->rows, RwLabelRow, 1).board, ==, "–");
  g_assert_cmpstr (label->who, ==, "–");
  g_assert_cmpstr (empty->set_point, ==, "+5 V: – at the board, – at the terminals");
  g_assert_cmpstr (empty->meter, ==, "–");
  g_assert_cmpstr (empty->warm, ==, "warm or cold: not said");
}

/* --- drawn -------------------------------------------------------------------------------------- */

static guint
count_dark (cairo_surface_t *surface,
            int              x0,
            int              y0,
            int              x1,
            int              y1)
{
  const guchar *data = cairo_image_surface_get_data (surface);
  const int stride = cairo_image_surface_get_stride (surface);
  guint n = 0;

  for (int y = y0; y < y1; y++)
    for (int x = x0; x < x1; x++)
      n += data[y * stride + 4 * x] < 128;
  return n;
}

static void
test_drawing_keeps_within_its_frame (void)
{
  g_autoptr (RwLabel) label = make_label (job, "a person with a very long name that no label of this size can hold, or can it");
  const int width = (int) (2 * RW_LABEL_WIDTH) + 100, height = (int) (2 * RW_LABEL_HEIGHT) + 100;

  for (guint i = 0; i < 9; i++)
    {
      const RwLabelRow row = { g_strdup ("+24 V"), g_strdup ("24.02 V"), g_strdup ("24.31 V") };

      g_array_append_val (label->rows, row);
    }

  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create (surface);

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_scale (cr, 2, 2);
  rw_label_draw (label, cr);
  cairo_surface_flush (surface);

  const int right = (int) (2 * RW_LABEL_WIDTH), bottom = (int) (2 * RW_LABEL_HEIGHT);

  g_assert_cmpuint (count_dark (surface, 0, 0, width, height), >, 1000);
  g_assert_cmpuint (count_dark (surface, right - 4, 0, width, height), ==, 0);
  g_assert_cmpuint (count_dark (surface, 0, bottom - 4, width, height), ==, 0);
  g_assert_cmpuint (count_dark (surface, 10, bottom - 14, right - 10, bottom - 8), ==, 0);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

/* The pixels of a label with this set point and cabinet. (transfer full) */
static GBytes *
ink (const char *cabinet,
     const char *set_point,
     const char *terminals)
{
  g_autoptr (RwLabel) label = make_label (job, "Mo");
  cairo_surface_t *surface
      = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) (6 * RW_LABEL_WIDTH), (int) (6 * RW_LABEL_HEIGHT));
  cairo_t *cr = cairo_create (surface);

  g_free (label->cabinet);
  label->cabinet = g_strdup (cabinet);
  g_free (label->set_point);
  label->set_point = g_strdup (set_point);
  g_free (g_array_index (label->rows, RwLabelRow, 0).terminals);
  g_array_index (label->rows, RwLabelRow, 0).terminals = g_strdup (terminals);
  cairo_scale (cr, 6, 6);
  rw_label_draw (label, cr);
  cairo_surface_flush (surface);

  const gsize length = (gsize) cairo_image_surface_get_stride (surface) * (gsize) cairo_image_surface_get_height (surface);
  GBytes *bytes = g_bytes_new (cairo_image_surface_get_data (surface), length);

  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return bytes;
}

/* Two labels that differ in their very last letter look different: it was drawn. The German words are those of the
 * shipped catalogue. */
static void
test_nothing_is_cut (void)
{
  static const char *const texts[] = {
    "+5 V: 5.05 V at the board, 5.10 V at the terminals 7",
    "+5 V Versorgung der Rechnerplatine: 5,05 V an der Platine, 5,11 V an den Anschlussklemmen des Netzteils 7",
    "Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaftsspielautomat 7",
    "a supply whose label somebody wrote with everything that could be said about it: where it came from, who mended it "
    "last, what it was set to then, which of its screws is worn and must not be turned again, what it powered before that, "
    "and that it hums a little when the evening is damp, which it did already when it came, so never mind it 7",
  };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autofree char *other = g_strdup (texts[i]);

      other[strlen (other) - 1] = '8';

      g_autoptr (GBytes) cabinet_7 = ink (texts[i], "short", "5"), cabinet_8 = ink (other, "short", "5");
      g_autoptr (GBytes) set_7 = ink ("short", texts[i], "5"), set_8 = ink ("short", other, "5");
      g_autoptr (GBytes) cell_7 = ink ("short", "short", texts[i]), cell_8 = ink ("short", "short", other);
      g_autoptr (GBytes) again = ink ("short", texts[i], "5");

      g_assert_true (g_bytes_equal (set_7, again));
      g_assert_false (g_bytes_equal (cabinet_7, cabinet_8));
      g_assert_false (g_bytes_equal (set_7, set_8));
      g_assert_false (g_bytes_equal (cell_7, cell_8));
    }
}

static void
test_pdf_is_the_same_twice (void)
{
  g_autoptr (RwJournalRead) read = fixture_read (job);
  g_autoptr (RwBenchState) state = rw_bench_state_new (read->session);
  g_autoptr (RwLabel) label = rw_label_new (read->session, state, "2026-03-14", "Mo");
  g_autofree char *folder = g_dir_make_tmp ("label-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "label.pdf", NULL);
  g_autofree char *one = NULL, *other = NULL;
  gsize n_one = 0, n_other = 0;

  g_assert_true (rw_label_save_pdf (label, read->session, path, NULL));
  g_assert_true (g_file_get_contents (path, &one, &n_one, NULL));
  g_assert_true (rw_label_save_pdf (label, read->session, path, NULL));
  g_assert_true (g_file_get_contents (path, &other, &n_other, NULL));
  g_assert_true (g_str_has_prefix (one, "%PDF"));
  g_assert_cmpmem (one, n_one, other, n_other);
  g_remove (path);
  g_rmdir (folder);
}

static void
test_pdf_says_what_went_wrong (void)
{
  g_autoptr (RwJournalRead) read = fixture_read (job);
  g_autoptr (RwBenchState) state = rw_bench_state_new (read->session);
  g_autoptr (RwLabel) label = rw_label_new (read->session, state, "2026-03-14", "Mo");
  g_autoptr (GError) error = NULL;

  g_assert_false (rw_label_save_pdf (label, read->session, "/nowhere/at/all.pdf", &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_NOENT);
}

/* --- the record --------------------------------------------------------------------------------- */

static GString *
report (const char *lines)
{
  g_autoptr (RwJournalRead) read = fixture_read (lines);
  g_autoptr (RwSummary) summary = rw_summary_new_from_read (read, NULL);

  return rw_report_text_summary (summary);
}

static void
test_record_tells_stages_and_reasons (void)
{
  g_autoptr (GString) text
      = report (SETUP (1, 1, "\"power\":\"on\",\"board\":\"out\"") DC (2, 2, "p5", "terminals", "5.80")
                SETUP (3, 3, "\"power\":\"off\"") STAGE (4, 61, "\"id\":\"fit-board\",\"read\":true")
                STAGE (5, 62, "\"id\":\"fit-board\",\"against\":\"a spare board\"") STAGE (6, 70, "\"id\":\"first-power\"")
                EVENT (7, 71, "\"finding\":{\"check\":\"stage-key-checked\",\"outcome\":\"yes\"}"));

  g_test_message ("%s", text->str);
  g_assert_nonnull (strstr (text->str, "Stages of the bring-up"));
  g_assert_nonnull (strstr (text->str, "Look and isolate          skipped"));
  g_assert_nonnull (strstr (text->str, "Fit the board             left open"));
  g_assert_nonnull (strstr (text->str, "First power               stopped"));
  g_assert_nonnull (strstr (text->str, "Fit the board, at 1:02, because: a spare board"));
  g_assert_nonnull (strstr (text->str, "Advised was: Do not fit the board: +5 V stands at 5.80\u202fV"));
  g_assert_nonnull (strstr (text->str, "looked at twice? yes\n"));
  g_assert_null (strstr (text->str, "stage-key-checked"));
  g_assert_null (strstr (text->str, "Found"));
  g_assert_nonnull (strstr (text->str, "Not proven"));
  g_assert_nonnull (strstr (text->str, "Nobody looked"));
}

/* A record of many reasons takes several pages, and all of its lines stand on one of them. */
static void
test_record_on_paper (void)
{
  g_autoptr (GString) lines = g_string_new (SETUP (1, 1, "\"power\":\"on\",\"board\":\"out\""));
  g_autoptr (GError) error = NULL;
  g_autoptr (RwStageWords) words = rw_stage_words_load_shipped (&error);
  g_autofree char *folder = g_dir_make_tmp ("record-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "record.pdf", NULL);
  g_autofree char *one = NULL, *other = NULL;
  gsize n_one = 0, n_other = 0;

  g_assert_no_error (error);
  for (guint i = 2; i < 82; i++)
    g_string_append_printf (lines, EVENT_FORMAT, i, i, i);

  g_autoptr (RwJournalRead) read = fixture_read (lines->str), few = fixture_read (STAGE (1, 1, "\"id\":\"trim\""));
  g_autoptr (RwStages) stages = rw_stages_new (read->session, words, 0), short_one = rw_stages_new (few->session, words, 0);
  g_autoptr (RwReportStagesPages) pages = rw_report_stages_pages_new (stages, read->session);
  g_autoptr (RwReportStagesPages) page = rw_report_stages_pages_new (short_one, few->session);

  g_assert_cmpuint (rw_report_stages_pages_count (page), ==, 1);
  g_assert_cmpuint (rw_report_stages_pages_count (pages), >, 1);
  g_assert_true (rw_report_stages_save_pdf (stages, read->session, path, &error));
  g_assert_true (g_file_get_contents (path, &one, &n_one, NULL));
  g_assert_true (rw_report_stages_save_pdf (stages, read->session, path, &error));
  g_assert_true (g_file_get_contents (path, &other, &n_other, NULL));
  g_assert_true (g_str_has_prefix (one, "%PDF"));
  g_assert_cmpmem (one, n_one, other, n_other);
  g_assert_false (rw_report_stages_save_pdf (stages, read->session, "/nowhere/at/all.pdf", &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_NOENT);
  g_remove (path);
  g_rmdir (folder);
}

static void
test_record_is_silent_without_stages (void)
{
  g_autoptr (GString) none = report (job), strange = report (STAGE (1, 1, "\"id\":\"lift-off\""));

  g_assert_null (strstr (none->str, "bring-up"));
  g_assert_null (strstr (strange->str, "bring-up"));
  g_assert_nonnull (strstr (strange->str, "stage: lift-off"));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/label/says-what-was-set", test_says_what_was_set);
  g_test_add_func ("/label/leaves-out-what-no-longer-holds", test_leaves_out_what_no_longer_holds);
  g_test_add_func ("/label/drawing-keeps-within-its-frame", test_drawing_keeps_within_its_frame);
  g_test_add_func ("/label/nothing-is-cut-however-long", test_nothing_is_cut);
  g_test_add_func ("/label/pdf-is-the-same-twice", test_pdf_is_the_same_twice);
  g_test_add_func ("/label/pdf-says-what-went-wrong", test_pdf_says_what_went_wrong);
  g_test_add_func ("/label/record-tells-stages-and-reasons", test_record_tells_stages_and_reasons);
  g_test_add_func ("/label/record-on-paper", test_record_on_paper);
  g_test_add_func ("/label/record-is-silent-without-stages", test_record_is_silent_without_stages);
  return g_test_run ();
}
