/* rw-big-view.h: the live value, its rail and its target, to be read from four metres.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_BIG_VIEW (rw_big_view_get_type ())
G_DECLARE_FINAL_TYPE (RwBigView, rw_big_view, RW, BIG_VIEW, GtkWidget)

GtkWidget *rw_big_view_new (void);

/* @job: (nullable). */
void rw_big_view_set_job (RwBigView *self, RwJob *job);

/* A short question or message in a line of its own; two lines at most are readable from afar. @message: (nullable). */
void rw_big_view_set_message (RwBigView *self, const char *message);

G_END_DECLS
