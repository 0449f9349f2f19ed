/* rw-stage-list.h: the ten stages, each with its state in a shape and a word.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signal "chosen" (guint stage): one was pressed.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-stages.h"

G_BEGIN_DECLS

#define RW_TYPE_STAGE_LIST (rw_stage_list_get_type ())
G_DECLARE_FINAL_TYPE (RwStageList, rw_stage_list, RW, STAGE_LIST, GtkWidget)

/* @shown: the one whose card is seen. */
void rw_stage_list_show (RwStageList *self, const RwStages *stages, RwStage shown);

G_END_DECLS
