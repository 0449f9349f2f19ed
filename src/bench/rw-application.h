/* rw-application.h: the program: one process, a window a job.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define RW_TYPE_APPLICATION (rw_application_get_type ())
G_DECLARE_FINAL_TYPE (RwApplication, rw_application, RW, APPLICATION, GtkApplication)

RwApplication *rw_application_new (void);

G_END_DECLS
