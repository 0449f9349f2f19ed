/* rw-cure-question.h: did the repair cure it? Yes, no, or partly, and then what stays.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signal "answered": the answer is in the session.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_CURE_QUESTION (rw_cure_question_get_type ())
G_DECLARE_FINAL_TYPE (RwCureQuestion, rw_cure_question, RW, CURE_QUESTION, GtkWidget)

/* @cause: whose repair was done; NULL hides it. Asked for the same cause again it stays as it is. */
void rw_cure_question_ask (RwCureQuestion *self, RwJob *job, const char *cause);

/* The keyboard to its first answer. */
void rw_cure_question_focus (RwCureQuestion *self);

/* "Yes", as if its button were pressed. FALSE: it does not ask. */
gboolean rw_cure_question_yes (RwCureQuestion *self);

G_END_DECLS
