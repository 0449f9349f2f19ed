/* rw-set-aside.h: "ask another way": sets a check aside with a reason, and brings back what was set aside.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signal "done": a check was set aside or brought back; the keyboard is free.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_SET_ASIDE (rw_set_aside_get_type ())
G_DECLARE_FINAL_TYPE (RwSetAside, rw_set_aside, RW, SET_ASIDE, GtkWidget)

/* @check: what would be set aside; NULL: there is nothing to set aside, only to bring back. @job: (nullable). It hides
 * itself when it can do neither. */
void rw_set_aside_show (RwSetAside *self, RwJob *job, const RwCheck *check);

void rw_set_aside_open (RwSetAside *self);

G_END_DECLS
