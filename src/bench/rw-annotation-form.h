/* rw-annotation-form.h: asks for a note on a moment of a replay.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_ANNOTATION_FORM (rw_annotation_form_get_type ())
G_DECLARE_FINAL_TYPE (RwAnnotationForm, rw_annotation_form, RW, ANNOTATION_FORM, GtkWindow)

/* The replay pauses; what is written is about the moment at which it stands. */
GtkWidget *rw_annotation_form_new (GtkWindow *parent, RwJob *job);

G_END_DECLS
