/* rw-chart-export.h: the charts as PNG, SVG or PDF files.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The same session and view give the same bytes: no clock, no counter, no locale but that of the
 * text. The PDF's creation date is the session's start.
 */
#pragma once

#include "rw-chart.h"
#include "rw-trim-map.h"

G_BEGIN_DECLS

typedef enum
{
  RW_CHART_PNG,
  RW_CHART_SVG,
  RW_CHART_PDF,
  RW_N_CHART_FORMATS
} RwChartFormat;

typedef enum
{
  RW_CHART_ERROR_SIZE,   /* a picture of no size, or of more than RW_CHART_LARGEST pixels a side */
  RW_CHART_ERROR_DRAW,   /* cairo could not draw it (memory) */
  RW_CHART_ERROR_FORMAT, /* no such picture format */
  RW_CHART_ERROR_WRITE,  /* the file could not be written; the message says why */
} RwChartError;
#define RW_CHART_ERROR (rw_chart_error_quark ())
GQuark rw_chart_error_quark (void);

#define RW_CHART_LARGEST 16384

/* "png", "svg", "pdf". */
const char *rw_chart_format_to_id (RwChartFormat format);
gboolean    rw_chart_format_from_id (const char *id, RwChartFormat *out);

/* By the ending of a file name, in any case. */
gboolean rw_chart_format_from_path (const char *path, RwChartFormat *out);

/* @view: (nullable): all of the session, light. Pixels at 96 to the inch. The file is replaced as
 * a whole or not at all. */
gboolean rw_chart_export (RwSession *session, RwView *view, const char *path,
                          RwChartFormat format, int width, int height, GError **error);

/* Same, with words for ids as in rw_chart_set_name_func (), into memory. (transfer full) */
GBytes *rw_chart_export_bytes (RwSession *session, RwView *view, RwChartFormat format, int width,
                               int height, RwChartNameFunc name, gpointer user_data,
                               GError **error);

/* Anything else that belongs to a session, drawn by @draw into [0, width] × [0, height]. (transfer full) */
typedef void (*RwChartDrawFunc) (cairo_t *cr, double width, double height, RwInkTarget target,
                                 gpointer user_data);
GBytes *rw_chart_export_drawn (RwSession *session, RwChartFormat format, int width, int height,
                               RwChartDrawFunc draw, gpointer user_data, GError **error);

/* Puts an exported picture into a file, as a whole or not at all. @bytes: (nullable): FALSE, @error is set already. */
gboolean rw_chart_export_save (GBytes *bytes, const char *path, GError **error);

/* The trim map, likewise. @session gives the title and the date; @view: (nullable): light, no rail
 * chosen. @set: (nullable): the picture says in words what is missing. (transfer full) */
GBytes *rw_trim_map_export_bytes (RwSession *session, RwView *view, const RwTrimSet *set,
                                  RwChartFormat format, int width, int height, GError **error);
gboolean rw_trim_map_export (RwSession *session, RwView *view, const RwTrimSet *set,
                             const char *path, RwChartFormat format, int width, int height,
                             GError **error);

G_END_DECLS
