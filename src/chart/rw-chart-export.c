/* rw-chart-export.c: the charts as PNG, SVG or PDF files.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The picture is drawn into memory and then put into the file in one go, so that a full disk
 * leaves no half a picture behind.
 *
 * cairo numbers the groups of an SVG from a counter of the whole process ("surface41"), so that a
 * second export would differ from the first; the ids are numbered anew from 1, in order of
 * appearance. A title element, which cairo cannot write, follows the opening tag.
 */
#include "config.h"

#include "rw-chart-export.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <glib/gi18n-lib.h>
#include <string.h>

static const double points_per_pixel = 0.75; /* 72 points, 96 pixels to the inch */
static const char *const format_ids[RW_N_CHART_FORMATS] = { "png", "svg", "pdf" };

G_DEFINE_QUARK (rw_chart_error, rw_chart_error)

const char *
rw_chart_format_to_id (RwChartFormat format)
{
  g_return_val_if_fail (format < RW_N_CHART_FORMATS, NULL);
  return format_ids[format];
}

gboolean
rw_chart_format_from_id (const char    *id,
                         RwChartFormat *out)
{
  for (guint i = 0; id != NULL && i < RW_N_CHART_FORMATS; i++)
    if (g_ascii_strcasecmp (id, format_ids[i]) == 0)
      {
        *out = (RwChartFormat) i;
        return TRUE;
      }
  return FALSE;
}

gboolean
rw_chart_format_from_path (const char    *path,
                           RwChartFormat *out)
{
  const char *dot = path != NULL ? strrchr (path, '.') : NULL;

  return dot != NULL && rw_chart_format_from_id (dot + 1, out);
}

static cairo_status_t
append_bytes (void                *closure,
              const unsigned char *data,
              unsigned int         length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static char *
dup_title (RwSession *session)
{
  const RwSessionHeader *header = rw_session_get_header (session);

  if (header->cabinet_tag == NULL || header->cabinet_tag[0] == '\0')
    return g_strdup (header->cabinet_name);
  return g_strconcat (header->cabinet_name, " · ", header->cabinet_tag, NULL);
}

/* A date that reads the same everywhere. */
static char *
dup_date (RwSession *session)
{
  GDateTime *started = rw_session_get_header (session)->started;

  return started != NULL ? g_date_time_format (started, "%Y-%m-%d %H:%M UTC") : g_strdup ("");
}

static cairo_surface_t *
make_surface (RwChartFormat format,
              int           width,
              int           height,
              GByteArray   *out)
{
  const double w = width * points_per_pixel, h = height * points_per_pixel;

  if (format == RW_CHART_SVG)
    {
      cairo_surface_t *surface = cairo_svg_surface_create_for_stream (append_bytes, out, width,
                                                                      height);

      cairo_svg_surface_set_document_unit (surface, CAIRO_SVG_UNIT_PX);
      return surface;
    }
  if (format == RW_CHART_PDF)
    return cairo_pdf_surface_create_for_stream (append_bytes, out, w, h);
  return cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
}

static void
set_pdf_facts (cairo_surface_t *surface,
               RwSession       *session)
{
  GDateTime *started = rw_session_get_header (session)->started;
  g_autofree char *title = dup_title (session);

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, title);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, "Railwright");
  if (started == NULL)
    return;

  g_autofree char *date = g_date_time_format (started, "%Y-%m-%dT%H:%M:%SZ");

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, date);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_MOD_DATE, date);
}

/* Gives each "surfaceN" and the like a number of its own, from 1 up. */
static gboolean
renumber (const GMatchInfo *match,
          GString          *result,
          gpointer          user_data)
{
  GHashTable *numbers = user_data;
  g_autofree char *kind = g_match_info_fetch (match, 1);
  g_autofree char *old = g_match_info_fetch (match, 0);
  const char *known = g_hash_table_lookup (numbers, old);

  if (known == NULL)
    {
      char *fresh = g_strdup_printf ("%s%u", kind, g_hash_table_size (numbers) + 1);

      known = fresh;
      g_hash_table_insert (numbers, g_steal_pointer (&old), fresh);
    }
  g_string_append (result, known);
  return FALSE;
}

static char *
with_own_ids (const char *svg,
              gssize      length)
{
  static const char numbered[] = "\\b(surface|source|clip|mask|image|pattern|linear|radial|filter)"
                                 "-?[0-9]+\\b";
  g_autoptr (GRegex) regex = g_regex_new (numbered, 0, 0, NULL);
  g_autoptr (GHashTable) numbers = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);

  return g_regex_replace_eval (regex, svg, length, 0, 0, renumber, numbers, NULL);
}

/* The title goes right behind <svg …>. */
static GBytes *
finish_svg (GByteArray *drawn,
            RwSession  *session)
{
  g_autofree char *title = dup_title (session);
  g_autofree char *escaped = g_markup_escape_text (title, -1);
  g_autofree char *svg = with_own_ids ((const char *) drawn->data, (gssize) drawn->len);
  const char *tag = svg != NULL ? strstr (svg, "<svg") : NULL;
  const char *end = tag != NULL ? strchr (tag, '>') : NULL;

  if (end == NULL)
    return g_bytes_new (drawn->data, drawn->len);

  GString *out = g_string_new_len (svg, end + 1 - svg);

  g_string_append_printf (out, "\n<title>%s</title>", escaped);
  g_string_append (out, end + 1);
  return g_string_free_to_bytes (out);
}

/* What is exported; borrowed. */
typedef struct
{
  RwSession       *session;
  RwView          *view;
  RwChartFormat    format;
  int              width, height;
  gboolean         trim; /* the trim map; else the chart over time */
  const RwTrimSet *set;  /* (nullable) */
  RwChartNameFunc  name; /* (nullable) */
  RwChartDrawFunc  draw; /* (nullable): draws instead of either chart */
  gpointer         user_data;
} Wish;

static void
draw_time (const Wish *wish,
           cairo_t    *cr,
           const char *title,
           const char *date)
{
  g_autoptr (RwBenchState) state = rw_bench_state_new (wish->session);
  g_autoptr (RwChart) chart = rw_chart_new (wish->session, wish->view);

  rw_chart_set_title (chart, title, date);
  rw_chart_set_name_func (chart, wish->name, wish->user_data, NULL);
  rw_chart_set_state (chart, state);
  rw_chart_ink (chart, cr, wish->width, wish->height,
                wish->format == RW_CHART_PNG ? RW_INK_SCREEN : RW_INK_VECTOR);
}

static void
draw_trim (const Wish *wish,
           cairo_t    *cr,
           const char *title,
           const char *date)
{
  g_autoptr (RwTrimMap) map = rw_trim_map_new (wish->view);

  rw_trim_map_set_title (map, title, date);
  rw_trim_map_set_set (map, wish->set);
  rw_trim_map_ink (map, cr, wish->width, wish->height);
}

static void
draw_picture (const Wish      *wish,
              cairo_surface_t *surface)
{
  g_autofree char *title = dup_title (wish->session);
  g_autofree char *date = dup_date (wish->session);
  cairo_t *cr = cairo_create (surface);

  if (wish->format == RW_CHART_PDF)
    cairo_scale (cr, points_per_pixel, points_per_pixel);
  if (wish->draw != NULL)
    wish->draw (cr, wish->width, wish->height,
                wish->format == RW_CHART_PNG ? RW_INK_SCREEN : RW_INK_VECTOR, wish->user_data);
  else if (wish->trim)
    draw_trim (wish, cr, title, date);
  else
    draw_time (wish, cr, title, date);
  cairo_destroy (cr);
}

/* Writes the rest out and gives up the surface. */
static cairo_status_t
finish_surface (cairo_surface_t *surface,
                RwChartFormat    format,
                GByteArray      *out)
{
  cairo_status_t status = cairo_surface_status (surface);

  if (status == CAIRO_STATUS_SUCCESS && format == RW_CHART_PNG)
    status = cairo_surface_write_to_png_stream (surface, append_bytes, out);
  cairo_surface_finish (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  return status;
}

static gboolean
is_size (int width,
         int height)
{
  return width >= 1 && height >= 1 && width <= RW_CHART_LARGEST && height <= RW_CHART_LARGEST;
}

static GBytes *
export_bytes (const Wish *wish,
              GError    **error)
{
  if (!is_size (wish->width, wish->height))
    {
      g_set_error (error, RW_CHART_ERROR, RW_CHART_ERROR_SIZE,
                   _ ("A picture of %d × %d pixels cannot be made: each side must be 1 to %d."),
                   wish->width, wish->height, RW_CHART_LARGEST);
      return NULL;
    }

  g_autoptr (GByteArray) out = g_byte_array_new ();
  cairo_surface_t *surface = make_surface (wish->format, wish->width, wish->height, out);

  if (wish->format == RW_CHART_PDF)
    set_pdf_facts (surface, wish->session);
  draw_picture (wish, surface);

  const cairo_status_t status = finish_surface (surface, wish->format, out);

  if (status != CAIRO_STATUS_SUCCESS)
    {
      g_set_error (error, RW_CHART_ERROR, RW_CHART_ERROR_DRAW,
                   _ ("The picture could not be drawn: %s."), cairo_status_to_string (status));
      return NULL;
    }
  if (wish->format == RW_CHART_SVG)
    return finish_svg (out, wish->session);
  return g_byte_array_free_to_bytes (g_steal_pointer (&out));
}

gboolean
rw_chart_export_save (GBytes     *bytes,
                      const char *path,
                      GError    **error)
{
  g_autoptr (GError) trouble = NULL;
  gsize length;

  if (bytes == NULL)
    return FALSE;

  const char *data = g_bytes_get_data (bytes, &length);

  if (g_file_set_contents (path, data, (gssize) length, &trouble))
    return TRUE;
  /* Translators: file name, then what the system says of it. */
  g_set_error (error, RW_CHART_ERROR, RW_CHART_ERROR_WRITE,
               _ ("%s: the picture could not be saved: %s. Choose another place."), path,
               trouble->message);
  return FALSE;
}

static RwView *
own_or_plain_view (RwView    *view,
                   RwSession *session)
{
  return view == NULL ? rw_view_new (session) : g_object_ref (view);
}

GBytes *
rw_chart_export_bytes (RwSession      *session,
                       RwView         *view,
                       RwChartFormat   format,
                       int             width,
                       int             height,
                       RwChartNameFunc name,
                       gpointer        user_data,
                       GError        **error)
{
  g_return_val_if_fail (RW_IS_SESSION (session) && (view == NULL || RW_IS_VIEW (view)), NULL);
  g_return_val_if_fail (format < RW_N_CHART_FORMATS, NULL);

  g_autoptr (RwView) own = own_or_plain_view (view, session);
  const Wish wish = { .session = session,
                      .view = own,
                      .format = format,
                      .width = width,
                      .height = height,
                      .name = name,
                      .user_data = user_data };

  return export_bytes (&wish, error);
}

gboolean
rw_chart_export (RwSession     *session,
                 RwView        *view,
                 const char    *path,
                 RwChartFormat  format,
                 int            width,
                 int            height,
                 GError       **error)
{
  g_return_val_if_fail (path != NULL, FALSE);

  g_autoptr (GBytes) bytes = rw_chart_export_bytes (session, view, format, width, height, NULL,
                                                    NULL, error);

  return rw_chart_export_save (bytes, path, error);
}

GBytes *
rw_trim_map_export_bytes (RwSession       *session,
                          RwView          *view,
                          const RwTrimSet *set,
                          RwChartFormat    format,
                          int              width,
                          int              height,
                          GError         **error)
{
  g_return_val_if_fail (RW_IS_SESSION (session) && (view == NULL || RW_IS_VIEW (view)), NULL);
  g_return_val_if_fail (format < RW_N_CHART_FORMATS, NULL);

  g_autoptr (RwView) own = own_or_plain_view (view, session);
  const Wish wish = { .session = session,
                      .view = own,
                      .format = format,
                      .width = width,
                      .height = height,
                      .trim = TRUE,
                      .set = set };

  return export_bytes (&wish, error);
}

gboolean
rw_trim_map_export (RwSession       *session,
                    RwView          *view,
                    const RwTrimSet *set,
                    const char      *path,
                    RwChartFormat    format,
                    int              width,
                    int              height,
                    GError         **error)
{
  g_return_val_if_fail (path != NULL, FALSE);

  g_autoptr (GBytes) bytes = rw_trim_map_export_bytes (session, view, set, format, width, height,
                                                       error);

  return rw_chart_export_save (bytes, path, error);
}

GBytes *
rw_chart_export_drawn (RwSession      *session,
                       RwChartFormat   format,
                       int             width,
                       int             height,
                       RwChartDrawFunc draw,
                       gpointer        user_data,
                       GError        **error)
{
  g_return_val_if_fail (RW_IS_SESSION (session) && draw != NULL && format < RW_N_CHART_FORMATS, NULL);

  const Wish wish = { .session = session,
                      .format = format,
                      .width = width,
                      .height = height,
                      .draw = draw,
                      .user_data = user_data };

  return export_bytes (&wish, error);
}
