/* rw-symptom-list.h: every symptom, in groups, to be searched and said to be there or not.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Letters typed anywhere in @popover search; Enter then says that the first one found is seen, Ctrl+Enter that it is
 * not there.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_SYMPTOM_LIST (rw_symptom_list_get_type ())
G_DECLARE_FINAL_TYPE (RwSymptomList, rw_symptom_list, RW, SYMPTOM_LIST, GtkWidget)

/* @popover: what the list is shown in. */
GtkWidget *rw_symptom_list_new (GtkWidget *popover);

void rw_symptom_list_set_job (RwSymptomList *self, RwJob *job); /* (nullable) */

/* Fills it when it is still empty, and presses its toggles as the state says. */
void rw_symptom_list_refresh (RwSymptomList *self);

/* Forgets the search; the keyboard to the first toggle. */
void rw_symptom_list_start (RwSymptomList *self);

/* The last word on a symptom. (nullable) */
const RwSymptomSeen *rw_symptom_list_find_seen (RwJob *job, const char *id);

G_END_DECLS
