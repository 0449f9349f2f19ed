/* rw-report-plan-page.h: a plan on paper: A4 pages as PDF.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The lines of rw-report-plan-lines.h, wrapped; each level is set in and has a rule at its left, so that a branch can be
 * followed down the page. What can hurt stands before its step, with a sign and in a colour, both. The same plan and
 * session give the same pages; the PDF's dates are the session's start.
 */
#pragma once

#include "rw-paper.h"
#include "rw-report-plan.h"
#include "rw-session.h"

G_BEGIN_DECLS

/* Broken into pages, ready to be drawn. */
typedef struct _RwReportPlanPages RwReportPlanPages;

/* @session: names the cabinet; (nullable). (transfer full) */
RwReportPlanPages *rw_report_plan_pages_new (const RwReportPlan *plan, RwSession *session);
void               rw_report_plan_pages_free (RwReportPlanPages *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwReportPlanPages, rw_report_plan_pages_free)

guint rw_report_plan_pages_count (const RwReportPlanPages *self); /* ≥ 1 */

/* Draws page @page, 0 …, into 0, 0 … RW_PAPER_WIDTH, RW_PAPER_HEIGHT. */
void rw_report_plan_pages_draw (const RwReportPlanPages *self, cairo_t *cr, guint page);

/* As a PDF file, replaced as a whole or not at all. Errors: G_FILE_ERROR, and G_IO_ERROR when it cannot be drawn. */
gboolean rw_report_plan_save_pdf (const RwReportPlan *plan, RwSession *session, const char *path, GError **error);

G_END_DECLS
