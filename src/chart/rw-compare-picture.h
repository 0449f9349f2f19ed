/* rw-compare-picture.h: the charts of two sessions side by side on one scale.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *     ┌ then ───────────────────────┬ now ────────────────────────┐
 *     │ strong ├──────────────┤     │ strong ├──────────────┤     │
 *     │        │              │     │        │              │     │
 *     │ weak   ├──────────────┤     │ weak   ├──────────────┤     │
 *     └─────────────────────────────┴─────────────────────────────┘
 *
 * Both plots have the same size, the same vertical range and, over time, the same seconds a pixel: what looks higher or
 * longer is. They stand above each other where the picture is too narrow for two. Then always comes first, as time runs
 * left to right.
 */
#pragma once

#include "rw-chart-export.h"
#include "rw-compare.h"

G_BEGIN_DECLS

typedef struct _RwComparePicture RwComparePicture;

/* Refs @compare. Fits both, in position, light, over time. @changed: (nullable): called when the picture is no longer
 * what was last inked. */
typedef void (*RwComparePictureFunc) (gpointer user_data);
RwComparePicture *rw_compare_picture_new (RwCompare *compare, RwComparePictureFunc changed, gpointer user_data);
void              rw_compare_picture_free (RwComparePicture *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwComparePicture, rw_compare_picture_free)

void        rw_compare_picture_set_chart (RwComparePicture *self, RwViewChart chart);
RwViewChart rw_compare_picture_get_chart (const RwComparePicture *self);
void        rw_compare_picture_set_look (RwComparePicture *self, RwThemeId theme, double text_scale);
void        rw_compare_picture_set_font (RwComparePicture *self, const PangoFontDescription *font);
void        rw_compare_picture_set_draw_text (RwComparePicture *self, gboolean draw_text);
void        rw_compare_picture_set_device_scale (RwComparePicture *self, double scale);

/* As in rw_chart_set_name_func (), of both. */
void rw_compare_picture_set_name_func (RwComparePicture *self, RwChartNameFunc func, gpointer user_data);

/* Both alike; over time only. */
void rw_compare_picture_zoom (RwComparePicture *self, double factor);
void rw_compare_picture_pan (RwComparePicture *self, double share);
void rw_compare_picture_fit (RwComparePicture *self);

/* Draws both into [0, width] × [0, height]. */
void rw_compare_picture_ink (RwComparePicture *self, cairo_t *cr, double width, double height, RwInkTarget target);

/* Where the two plots lie in a picture of that size. FALSE: there is none (a trim map without readings). */
gboolean rw_compare_picture_get_plot (RwComparePicture *self, double width, double height, gboolean now, RwRect *out);

/* Seconds a pixel of either; NaN for the trim map. */
double rw_compare_picture_get_pace (RwComparePicture *self, double width, double height, gboolean now);

/* A few translated sentences for people who hear it: then, and now. (transfer full) */
char *rw_compare_picture_dup_summary (RwComparePicture *self);

/* A whole page: cabinet, dates, main thing, both charts, what changed. (transfer full) Errors: RW_CHART_ERROR. */
GBytes *rw_compare_picture_export_bytes (RwComparePicture *self, RwChartFormat format, int width, int height,
                                         GError **error);

G_END_DECLS
