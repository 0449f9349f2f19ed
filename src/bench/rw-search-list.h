/* rw-search-list.h: a list of rows in a popover, and a field that searches it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Letters typed anywhere in the popover search. What is found holds all words of the search in its title, in any case; if
 * nothing does, in its title or in what else is known of it. Escape ends the search first, then the popover.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define RW_TYPE_SEARCH_LIST (rw_search_list_get_type ())
G_DECLARE_FINAL_TYPE (RwSearchList, rw_search_list, RW, SEARCH_LIST, GtkWidget)

/* @popover: what it is shown in. @name: of the field, for those who cannot see it. @hint: what Enter does in it. @height:
 * pixels of the list at most. @spacing: pixels between rows. */
GtkWidget *rw_search_list_new (GtkWidget *popover, const char *name, const char *hint, int height,
                               int spacing);

/* A row that is found by @title, or by @more (nullable). It gets a copy of both. */
void rw_search_list_add (RwSearchList *self, GtkWidget *row, const char *title, const char *more);

/* Stands before rows, and shows when one of them does. */
void rw_search_list_add_heading (RwSearchList *self, GtkWidget *heading);

void     rw_search_list_clear (RwSearchList *self);
gboolean rw_search_list_is_empty (RwSearchList *self);

/* Of rows and headings. Borrowed. */
GtkWidget *rw_search_list_get_first (RwSearchList *self);

/* The first row that is found; NULL: none is. Borrowed. */
GtkWidget *rw_search_list_find (RwSearchList *self);

/* Is there anything in the field? */
gboolean rw_search_list_is_searching (RwSearchList *self);

/* Forgets the search. */
void rw_search_list_reset (RwSearchList *self);

/* A GtkSearchEntry. Borrowed. */
GtkWidget *rw_search_list_get_field (RwSearchList *self);

G_END_DECLS
