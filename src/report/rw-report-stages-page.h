/* rw-report-stages-page.h: the record of a bring-up on paper: A4 pages as PDF.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The lines of rw-stage-record.h, wrapped. The same stages and session give the same bytes; the PDF's dates are the
 * session's start.
 */
#pragma once

#include <cairo.h>

#include "rw-stages.h"

G_BEGIN_DECLS

/* Broken into pages, ready to be drawn. */
typedef struct _RwReportStagesPages RwReportStagesPages;

/* (transfer full) */
RwReportStagesPages *rw_report_stages_pages_new (const RwStages *stages, RwSession *session);
void                 rw_report_stages_pages_free (RwReportStagesPages *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwReportStagesPages, rw_report_stages_pages_free)

guint rw_report_stages_pages_count (const RwReportStagesPages *self); /* ≥ 1 */

/* Draws page @page, 0 …, on A4 (rw-paper.h). */
void rw_report_stages_pages_draw (const RwReportStagesPages *self, cairo_t *cr, guint page);

/* As a PDF file, replaced as a whole or not at all. Errors: as rw_paper_save_pdf (). */
gboolean rw_report_stages_save_pdf (const RwStages *stages, RwSession *session, const char *path, GError **error);

G_END_DECLS
