/* rw-main-window.h: the window of one job.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_MAIN_WINDOW (rw_main_window_get_type ())
G_DECLARE_FINAL_TYPE (RwMainWindow, rw_main_window, RW, MAIN_WINDOW, GtkApplicationWindow)

GtkWidget *rw_main_window_new (GtkApplication *application, GSettings *settings); /* @settings (nullable) */

/* @job: (transfer full) (nullable): the doors. */
void rw_main_window_set_job (RwMainWindow *self, RwJob *job);

/* The doors are shown, and nothing is about to be opened here. */
gboolean rw_main_window_is_free (RwMainWindow *self);

/* Opens a saved file as a replay; what goes wrong is shown in a banner. */
void rw_main_window_open (RwMainWindow *self, const char *path);

/* The practice cabinet, switched on, with something wrong. */
void rw_main_window_practice (RwMainWindow *self);

G_END_DECLS
