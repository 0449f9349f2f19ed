/* rw-search-list.c: a list of rows in a popover, and a field that searches it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-search-list.h"

#include <glib/gi18n-lib.h>
#include <string.h>

struct _RwSearchList
{
  GtkWidget  parent_instance;
  GtkWidget *box;
  GtkWidget *field;
  GtkWidget *list;    /* headings and rows */
  GtkWidget *nothing; /* said when nothing is found */
};

/* Of a row, folded: its title, and all that is known of it. A heading has neither. */
static const char title_key[] = "title", words_key[] = "words";

G_DEFINE_FINAL_TYPE (RwSearchList, rw_search_list, GTK_TYPE_WIDGET)

/* --- searching ------------------------------------------------------------------------------------ */

static gboolean
has_all (GtkWidget  *row,
         const char *key,
         char      **wanted)
{
  const char *words = g_object_get_data (G_OBJECT (row), key);

  for (guint i = 0; words != NULL && wanted[i] != NULL; i++)
    if (strstr (words, wanted[i]) == NULL)
      return FALSE;
  return words != NULL;
}

static gboolean
any_is_titled (RwSearchList *self,
               char        **wanted)
{
  for (GtkWidget *row = rw_search_list_get_first (self); row != NULL; row = gtk_widget_get_next_sibling (row))
    if (has_all (row, title_key, wanted))
      return TRUE;
  return FALSE;
}

static void
search_cb (RwSearchList *self)
{
  g_autofree char *text = g_utf8_casefold (gtk_editable_get_text (GTK_EDITABLE (self->field)), -1);
  g_auto (GStrv) wanted = g_strsplit_set (text, " \t", -1);
  const char *key = any_is_titled (self, wanted) ? title_key : words_key;
  GtkWidget *heading = NULL;
  gboolean any = FALSE;

  for (GtkWidget *row = rw_search_list_get_first (self); row != NULL; row = gtk_widget_get_next_sibling (row))
    {
      const gboolean found = has_all (row, key, wanted);

      if (g_object_get_data (G_OBJECT (row), title_key) == NULL)
        heading = row;
      gtk_widget_set_visible (row, found);
      if (found && heading != NULL)
        gtk_widget_set_visible (heading, TRUE);
      any |= found;
    }
  gtk_widget_set_visible (self->nothing, !any);
}

static void
stopped_cb (RwSearchList *self)
{
  GtkWidget *popover = gtk_widget_get_ancestor (GTK_WIDGET (self), GTK_TYPE_POPOVER);

  if (rw_search_list_is_searching (self))
    gtk_editable_set_text (GTK_EDITABLE (self->field), "");
  else if (popover != NULL)
    gtk_popover_popdown (GTK_POPOVER (popover));
}

/* --- what it holds -------------------------------------------------------------------------------- */

void
rw_search_list_add (RwSearchList *self,
                    GtkWidget    *row,
                    const char   *title,
                    const char   *more)
{
  g_return_if_fail (RW_IS_SEARCH_LIST (self) && title != NULL);

  g_autofree char *all = g_strjoin (" ", title, more, NULL);

  g_object_set_data_full (G_OBJECT (row), title_key, g_utf8_casefold (title, -1), g_free);
  g_object_set_data_full (G_OBJECT (row), words_key, g_utf8_casefold (all, -1), g_free);
  gtk_box_append (GTK_BOX (self->list), row);
}

void
rw_search_list_add_heading (RwSearchList *self,
                            GtkWidget    *heading)
{
  g_return_if_fail (RW_IS_SEARCH_LIST (self));
  gtk_box_append (GTK_BOX (self->list), heading);
}

void
rw_search_list_clear (RwSearchList *self)
{
  GtkWidget *child;

  g_return_if_fail (RW_IS_SEARCH_LIST (self));
  while ((child = rw_search_list_get_first (self)) != NULL)
    gtk_box_remove (GTK_BOX (self->list), child);
}

gboolean
rw_search_list_is_empty (RwSearchList *self)
{
  return rw_search_list_get_first (self) == NULL;
}

GtkWidget *
rw_search_list_get_first (RwSearchList *self)
{
  g_return_val_if_fail (RW_IS_SEARCH_LIST (self), NULL);
  return gtk_widget_get_first_child (self->list);
}

GtkWidget *
rw_search_list_find (RwSearchList *self)
{
  for (GtkWidget *row = rw_search_list_get_first (self); row != NULL; row = gtk_widget_get_next_sibling (row))
    if (gtk_widget_get_visible (row) && g_object_get_data (G_OBJECT (row), title_key) != NULL)
      return row;
  return NULL;
}

gboolean
rw_search_list_is_searching (RwSearchList *self)
{
  g_return_val_if_fail (RW_IS_SEARCH_LIST (self), FALSE);
  return *gtk_editable_get_text (GTK_EDITABLE (self->field)) != '\0';
}

void
rw_search_list_reset (RwSearchList *self)
{
  g_return_if_fail (RW_IS_SEARCH_LIST (self));
  gtk_editable_set_text (GTK_EDITABLE (self->field), "");
  search_cb (self); /* rows may be new */
}

GtkWidget *
rw_search_list_get_field (RwSearchList *self)
{
  g_return_val_if_fail (RW_IS_SEARCH_LIST (self), NULL);
  return self->field;
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_search_list_dispose (GObject *object)
{
  RwSearchList *self = RW_SEARCH_LIST (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS (rw_search_list_parent_class)->dispose (object);
}

static void
rw_search_list_class_init (RwSearchListClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_search_list_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
rw_search_list_init (RwSearchList *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  self->field = gtk_search_entry_new ();
  g_signal_connect_swapped (self->field, "changed", G_CALLBACK (search_cb), self);
  g_signal_connect_swapped (self->field, "stop-search", G_CALLBACK (stopped_cb), self);
  gtk_box_append (GTK_BOX (self->box), self->field);
}

static GtkWidget *
make_scroller (RwSearchList *self,
               int           height,
               int           spacing)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *inside = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);

  self->list = gtk_box_new (GTK_ORIENTATION_VERTICAL, spacing);
  self->nothing = gtk_label_new (_ ("Nothing found. Other words?"));
  gtk_widget_set_visible (self->nothing, FALSE);
  gtk_widget_set_margin_end (inside, 12);
  gtk_box_append (GTK_BOX (inside), self->list);
  gtk_box_append (GTK_BOX (inside), self->nothing);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scroller), height);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), inside);
  return scroller;
}

GtkWidget *
rw_search_list_new (GtkWidget  *popover,
                    const char *name,
                    const char *hint,
                    int         height,
                    int         spacing)
{
  RwSearchList *self = g_object_new (RW_TYPE_SEARCH_LIST, NULL);

  gtk_search_entry_set_key_capture_widget (GTK_SEARCH_ENTRY (self->field), popover);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->field), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_widget_set_tooltip_text (self->field, hint);
  gtk_box_append (GTK_BOX (self->box), make_scroller (self, height, spacing));
  return GTK_WIDGET (self);
}
