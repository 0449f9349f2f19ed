/* rw-text-table.h: columns of text that line up in a terminal.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Rows of texts, printed so that each column is as wide as its widest text. Widths are counted in
 * terminal cells: wide characters take two, combining ones and other marks of no width none. */
typedef struct _RwTextTable RwTextTable;

/* @n_columns: from 1. @right: for each column, whether its texts stand to the right (numbers). */
RwTextTable *rw_text_table_new (guint n_columns, const gboolean *right);
void         rw_text_table_free (RwTextTable *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwTextTable, rw_text_table_free)

/* The next text, left to right, row after row. Takes it; NULL is an empty one. */
void rw_text_table_take (RwTextTable *self, char *text);

/* Appends all rows, each after @indent spaces, two spaces between columns, none at a line's end.
 * A last row that is not full ends early. */
void rw_text_table_append (const RwTextTable *self, guint indent, GString *out);

/* Terminal cells that a text takes. */
guint rw_text_width (const char *text);

G_END_DECLS
