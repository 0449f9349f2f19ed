/* test-export.c: the picture files.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <cairo.h>
#include <glib/gstdio.h>
#include <string.h>

#include "chart-fixture.h"
#include "rw-chart-export.h"

static GBytes *
exported (RwSession    *session,
          RwView       *view,
          RwChartFormat format)
{
  g_autoptr (GError) error = NULL;
  GBytes *bytes = rw_chart_export_bytes (session, view, format, 900, 420, NULL, NULL, &error);

  g_assert_no_error (error);
  g_assert_nonnull (bytes);
  return bytes;
}

static gboolean
holds (GBytes     *bytes,
       const char *words)
{
  gsize length;
  const char *data = g_bytes_get_data (bytes, &length);

  return memmem (data, length, words, strlen (words)) != NULL;
}

static guint32
big_endian (const guint8 *data)
{
  return (guint32) data[0] << 24 | (guint32) data[1] << 16 | (guint32) data[2] << 8 | data[3];
}

/* ISO 15948: signature, then IHDR with width and height. */
static void
test_png_has_its_header_and_size (void)
{
  static const guint8 signature[] = { 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n' };
  g_autoptr (RwSession) session = fixture_trims ();
  g_autoptr (GBytes) bytes = exported (session, NULL, RW_CHART_PNG);
  const guint8 *data = g_bytes_get_data (bytes, NULL);

  g_assert_cmpmem (data, sizeof signature, signature, sizeof signature);
  g_assert_cmpmem (data + 12, 4, "IHDR", 4);
  g_assert_cmpuint (big_endian (data + 16), ==, 900);
  g_assert_cmpuint (big_endian (data + 20), ==, 420);
  g_assert_true (holds (bytes, "IEND"));
}

/* What an XML reader saw. */
typedef struct
{
  guint    n_elements;
  guint    n_paths;
  gboolean in_title;
  GString *title;
} Svg;

static void
element_cb (GMarkupParseContext *context,
            const char          *element,
            const char         **names,
            const char         **values,
            gpointer             user_data,
            GError             **error)
{
  Svg *svg = user_data;

  if (svg->n_elements++ == 0)
    g_assert_cmpstr (element, ==, "svg");
  svg->n_paths += g_str_equal (element, "path") ? 1 : 0;
  svg->in_title = g_str_equal (element, "title");
  g_assert_cmpstr (element, !=, "image"); /* everything is vector */
}

static void
text_cb (GMarkupParseContext *context,
         const char          *text,
         gsize                length,
         gpointer             user_data,
         GError             **error)
{
  Svg *svg = user_data;

  if (svg->in_title)
    g_string_append_len (svg->title, text, (gssize) length);
  svg->in_title = FALSE;
}

static void
test_svg_parses_and_is_all_vector (void)
{
  static const GMarkupParser parser = { .start_element = element_cb, .text = text_cb };
  g_autoptr (RwSession) session = fixture_stream (4000);
  g_autoptr (GBytes) bytes = exported (session, NULL, RW_CHART_SVG);
  Svg svg = { .title = g_string_new (NULL) };
  g_autoptr (GMarkupParseContext) context = g_markup_parse_context_new (&parser, 0, &svg, NULL);
  g_autoptr (GError) error = NULL;

  g_assert_true (g_markup_parse_context_parse (context, g_bytes_get_data (bytes, NULL),
                                               (gssize) g_bytes_get_size (bytes), &error));
  g_assert_true (g_markup_parse_context_end_parse (context, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (svg.n_paths, >, 30);
  g_assert_cmpstr (svg.title->str, ==, "Tidepool Racer · B-07");
  g_string_free (svg.title, TRUE);
}

static void
test_pdf_is_dated_by_the_session (void)
{
  g_autoptr (RwSession) session = fixture_trims ();
  g_autoptr (GBytes) bytes = exported (session, NULL, RW_CHART_PDF);
  const char *data = g_bytes_get_data (bytes, NULL);

  g_assert_true (g_str_has_prefix (data, "%PDF-"));
  g_assert_true (holds (bytes, "%%EOF"));
  g_assert_true (holds (bytes, "/CreationDate (20260314093000Z)"));
}

static void
test_same_session_same_bytes (void)
{
  g_autoptr (RwSession) session = fixture_trims ();
  g_autoptr (RwSession) stream = fixture_stream (3000);
  g_autoptr (RwView) view = rw_view_new (stream);

  rw_view_set_mode (view, RW_VIEW_VOLTS);
  for (guint format = 0; format < RW_N_CHART_FORMATS; format++)
    {
      g_autoptr (GBytes) first = exported (session, NULL, (RwChartFormat) format);
      g_autoptr (GBytes) between = exported (stream, view, (RwChartFormat) format);
      g_autoptr (GBytes) second = exported (session, NULL, (RwChartFormat) format);
      g_autoptr (GBytes) again = exported (stream, view, (RwChartFormat) format);

      g_assert_true (g_bytes_equal (first, second));
      g_assert_true (g_bytes_equal (between, again));
      g_assert_false (g_bytes_equal (first, between));
    }
}

static void
test_view_rules_what_is_exported (void)
{
  g_autoptr (RwSession) session = fixture_trims ();
  g_autoptr (RwView) view = rw_view_new (session);
  g_autoptr (GBytes) plain = exported (session, NULL, RW_CHART_PNG);
  g_autoptr (GBytes) fitted = exported (session, view, RW_CHART_PNG);

  rw_view_set_theme (view, RW_THEME_DARK);

  g_autoptr (GBytes) dark = exported (session, view, RW_CHART_PNG);

  g_assert_true (g_bytes_equal (plain, fitted));
  g_assert_false (g_bytes_equal (plain, dark));
}

static void
test_file_is_written_whole (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = g_dir_make_tmp ("chart-XXXXXX", &error);
  g_autofree char *path = g_build_filename (folder, "picture.PDF", NULL);
  g_autoptr (RwSession) session = fixture_trims ();
  g_autoptr (GBytes) bytes = exported (session, NULL, RW_CHART_PDF);
  g_autofree char *contents = NULL;
  gsize length = 0;
  RwChartFormat format;

  g_assert_true (rw_chart_format_from_path (path, &format));
  g_assert_true (rw_chart_export (session, NULL, path, format, 900, 420, &error));
  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (path, &contents, &length, &error));
  g_assert_cmpmem (contents, length, g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
  g_unlink (path);
  g_rmdir (folder);
}

static void
test_bad_wishes_are_refused_in_words (void)
{
  static const int sizes[][2] = {
    { 0, 100 }, { 100, 0 }, { -5, 100 }, { 100, RW_CHART_LARGEST + 1 }
  };
  g_autoptr (RwSession) session = fixture_empty ();
  g_autoptr (GError) trouble = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_null (rw_chart_export_bytes (session, NULL, RW_CHART_PNG, sizes[i][0], sizes[i][1],
                                            NULL, NULL, &error));
      g_assert_error (error, RW_CHART_ERROR, RW_CHART_ERROR_SIZE);
    }
  g_assert_false (rw_chart_export (session, NULL, "/no/such/folder/picture.svg", RW_CHART_SVG,
                                   300, 200, &trouble));
  g_assert_error (trouble, RW_CHART_ERROR, RW_CHART_ERROR_WRITE);
  g_assert_nonnull (strstr (trouble->message, "/no/such/folder/picture.svg"));
}

static void
test_formats_go_by_their_ids (void)
{
  RwChartFormat format = RW_CHART_PNG;

  for (guint i = 0; i < RW_N_CHART_FORMATS; i++)
    {
      g_assert_true (rw_chart_format_from_id (rw_chart_format_to_id ((RwChartFormat) i), &format));
      g_assert_cmpuint (format, ==, i);
    }
  g_assert_false (rw_chart_format_from_id ("gif", &format));
  g_assert_false (rw_chart_format_from_id (NULL, &format));
  g_assert_false (rw_chart_format_from_path ("picture", &format));
  g_assert_true (rw_chart_format_from_path ("a.b/picture.Svg", &format));
  g_assert_cmpint ((int) format, ==, RW_CHART_SVG);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/export/png-has-its-header-and-size", test_png_has_its_header_and_size);
  g_test_add_func ("/export/svg-parses-and-is-all-vector", test_svg_parses_and_is_all_vector);
  g_test_add_func ("/export/pdf-is-dated-by-the-session", test_pdf_is_dated_by_the_session);
  g_test_add_func ("/export/same-session-same-bytes", test_same_session_same_bytes);
  g_test_add_func ("/export/view-rules-what-is-exported", test_view_rules_what_is_exported);
  g_test_add_func ("/export/file-is-written-whole", test_file_is_written_whole);
  g_test_add_func ("/export/bad-wishes-are-refused-in-words", test_bad_wishes_are_refused_in_words);
  g_test_add_func ("/export/formats-go-by-their-ids", test_formats_go_by_their_ids);
  return g_test_run ();
}
