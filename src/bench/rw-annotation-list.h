/* rw-annotation-list.h: the notes that people wrote on a replayed session.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_ANNOTATION_LIST (rw_annotation_list_get_type ())
G_DECLARE_FINAL_TYPE (RwAnnotationList, rw_annotation_list, RW, ANNOTATION_LIST, GtkWindow)

/* Choosing one goes to its moment. @job: a replay. */
GtkWidget *rw_annotation_list_new (GtkWindow *parent, RwJob *job);

G_END_DECLS
