/* rw-compare-list.c: all that two visits say of each other, in rows.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-compare-list.h"

#include <glib/gi18n-lib.h>

#include "rw-compare-words.h"

#define N_COLUMNS 5

static const int least_chars = 12; /* of a column of words */

/* A list that is being filled. */
typedef struct
{
  const RwCompare *compare;
  GtkListBox      *list;
  GtkSizeGroup    *columns[N_COLUMNS];
  const char      *heading; /* of the next row; NULL: it stands under the one before */
  gboolean         titled;  /* its columns have titles, too */
} Filling;

static GtkWidget *
make_label (const char *text,
            float       xalign,
            gboolean    wrap)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), xalign);
  gtk_label_set_wrap (GTK_LABEL (label), wrap);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  return label;
}

static void
header_cb (GtkListBoxRow *row,
           GtkListBoxRow *before,
           gpointer       data)
{
  const char *heading = g_object_get_data (G_OBJECT (row), "heading");
  GtkWidget *titles = g_object_get_data (G_OBJECT (row), "titles"); /* (nullable) */
  GtkWidget *box, *label;

  if (heading == NULL || gtk_list_box_row_get_header (row) != NULL)
    return; /* no row ever comes between */
  box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  label = make_label (heading, 0, FALSE);
  gtk_widget_add_css_class (label, "group");
  gtk_box_append (GTK_BOX (box), label);
  if (titles != NULL)
    gtk_box_append (GTK_BOX (box), titles);
  gtk_list_box_row_set_header (row, box);
}

/* All rows share the columns' widths; words wrap before a row is wider than the window. A grid, since a box would give
 * words less width in a row that is higher. */
static void
fill_columns (Filling    *self,
              GtkGrid    *grid,
              GtkWidget **cells,
              const char *css)
{
  for (guint i = 0; i < N_COLUMNS; i++)
    {
      gtk_widget_add_css_class (cells[i], css);
      if (gtk_label_get_wrap (GTK_LABEL (cells[i])))
        gtk_label_set_width_chars (GTK_LABEL (cells[i]), least_chars);
      gtk_size_group_add_widget (self->columns[i], cells[i]);
      gtk_grid_attach (grid, cells[i], (int) i, 0, 1, 1);
    }
  gtk_widget_set_hexpand (cells[N_COLUMNS - 1], TRUE);
}

static GtkWidget *
make_grid (void)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_column_spacing (GTK_GRID (grid), 12);
  return grid;
}

/* The dates over the columns of values. */
static GtkWidget *
make_titles (Filling *self)
{
  GtkWidget *grid = make_grid ();
  g_autofree char *then = rw_compare_words_date (rw_compare_get_then (self->compare));
  g_autofree char *now = rw_compare_words_date (rw_compare_get_now (self->compare));
  GtkWidget *cells[N_COLUMNS] = { make_label ("", 0, TRUE), make_label (then, 1, FALSE), make_label (now, 1, FALSE),
                                  make_label ("", 0, TRUE), make_label ("", 0, TRUE) };

  fill_columns (self, GTK_GRID (grid), cells, "caption");
  gtk_widget_add_css_class (grid, "compare-titles");
  return grid;
}

/* Takes @child. @words: what the row says to people who hear it. */
static void
add_row (Filling    *self,
         GtkWidget  *child,
         const char *words)
{
  GtkWidget *row = gtk_list_box_row_new ();

  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), FALSE);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), child);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  g_object_set_data (G_OBJECT (row), "heading", (gpointer) self->heading);
  if (self->heading != NULL && self->titled)
    g_object_set_data_full (G_OBJECT (row), "titles", g_object_ref_sink (make_titles (self)), g_object_unref);
  self->heading = NULL;
  self->titled = FALSE;
  gtk_list_box_append (self->list, row);
}

static void
add_words (Filling    *self,
           const char *words)
{
  add_row (self, make_label (words, 0, TRUE), words);
}

/* A title and what is said of it. */
static void
add_pair (Filling    *self,
          const char *title,
          const char *words)
{
  g_autofree char *all = g_strdup_printf ("%s: %s", title, words);

  add_words (self, all);
}

static void
add_item (Filling             *self,
          const RwCompareItem *item)
{
  GtkWidget *grid = make_grid ();
  g_autofree char *spot = rw_compare_words_spot (item);
  g_autofree char *then = rw_compare_words_value (item, &item->then);
  g_autofree char *now = rw_compare_words_value (item, &item->now);
  g_autofree char *difference = rw_compare_words_difference (item);
  g_autofree char *result = rw_compare_words_result (item);
  g_autofree char *words = rw_compare_words_item (item);
  GtkWidget *cells[N_COLUMNS] = { make_label (spot, 0, TRUE), make_label (then, 1, FALSE), make_label (now, 1, FALSE),
                                  make_label (difference, 0, TRUE), make_label (result, 0, TRUE) };

  fill_columns (self, GTK_GRID (grid), cells, "numeric");
  if (item->result == RW_COMPARE_CHANGED)
    gtk_widget_add_css_class (cells[3], "strong");
  add_row (self, grid, words);
}

static void
add_items (Filling         *self,
           const RwCompare *compare,
           RwCompareResult  result,
           const char      *heading)
{
  self->heading = heading;
  self->titled = TRUE;
  for (guint i = 0; i < rw_compare_get_n_items (compare); i++)
    if (rw_compare_get_item (compare, i)->result == result)
      add_item (self, rw_compare_get_item (compare, i));
}

static void
add_symptoms (Filling         *self,
              const RwCompare *compare,
              RwKnowledge     *knowledge)
{
  self->titled = FALSE;
  self->heading = _ ("Symptoms at the end");
  for (guint i = 0; i < rw_compare_get_n_symptoms (compare); i++)
    {
      const RwCompareSymptom *symptom = rw_compare_get_symptom (compare, i);
      const RwSymptom *known = knowledge != NULL ? rw_knowledge_find_symptom (knowledge, symptom->id) : NULL;
      g_autofree char *words = rw_compare_words_symptom (symptom);

      add_pair (self, known != NULL ? known->title : symptom->id, words);
    }
}

static void
add_causes (Filling               *self,
            const RwCompareCauses *causes)
{
  self->heading = _ ("Likely causes at the end");
  for (guint i = 0; i < causes->causes->len; i++)
    {
      const RwCompareCause *cause = &g_array_index (causes->causes, RwCompareCause, i);
      g_autofree char *words = rw_compare_causes_words (cause);

      add_pair (self, cause->cause->title, words);
    }
}

static void
add_rest (Filling         *self,
          const RwCompare *compare)
{
  self->heading = _ ("Limits that are not the same");
  for (guint i = 0; i < rw_compare_get_n_limits (compare); i++)
    {
      g_autofree char *words = rw_compare_words_limit (rw_compare_get_limit (compare, i));

      add_words (self, words);
    }
  self->heading = _ ("Not compared");
  for (guint i = 0; i < rw_compare_get_n_left (compare); i++)
    {
      g_autofree char *words = rw_compare_words_left (rw_compare_get_left (compare, i));

      add_words (self, words);
    }
}

void
rw_compare_list_fill (GtkListBox            *list,
                      const RwCompare       *compare,
                      const RwCompareCauses *causes,
                      RwKnowledge           *knowledge)
{
  Filling self = { .compare = compare, .list = list };
  GtkListBoxRow *row;

  while ((row = gtk_list_box_get_row_at_index (list, 0)) != NULL)
    gtk_list_box_remove (list, GTK_WIDGET (row));
  for (guint i = 0; i < N_COLUMNS; i++)
    self.columns[i] = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  gtk_list_box_set_header_func (list, header_cb, NULL, NULL);
  add_items (&self, compare, RW_COMPARE_CHANGED, _ ("What changed, the surest first"));
  add_items (&self, compare, RW_COMPARE_UNTOLD, _ ("What these meters cannot tell"));
  add_items (&self, compare, RW_COMPARE_NOT, _ ("What did not change"));
  add_symptoms (&self, compare, knowledge);
  add_causes (&self, causes);
  add_rest (&self, compare);
  gtk_list_box_invalidate_headers (list);
  for (guint i = 0; i < N_COLUMNS; i++)
    g_object_unref (self.columns[i]);
}
