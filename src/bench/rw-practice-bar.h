/* rw-practice-bar.h: hands on the practice cabinet: power, board, trim, and what eyes and ears tell.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_PRACTICE_BAR (rw_practice_bar_get_type ())
G_DECLARE_FINAL_TYPE (RwPracticeBar, rw_practice_bar, RW, PRACTICE_BAR, GtkWidget)

void rw_practice_bar_set_job (RwPracticeBar *self, RwJob *job); /* (nullable) a practice job */

/* The window to work on it; once open it is brought to the front. */
void rw_practice_bar_open_bench (RwPracticeBar *self);

G_END_DECLS
