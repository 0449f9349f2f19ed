/* rw-repair-picker.c: every repair that suits the cabinet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sorted by the words of the repair; under them stands the cause that it is for, and a search finds both. The list is
 * made when it is opened first: most jobs never do.
 */
#include "config.h"

#include "rw-repair-picker.h"

#include <glib/gi18n-lib.h>

#include "rw-job-practice.h"
#include "rw-search-list.h"

struct _RwRepairPicker
{
  GtkWidget     parent_instance;
  RwJob        *job;
  GtkWidget    *button;
  GtkWidget    *popover;
  RwSearchList *list; /* of buttons */
};

static guint repair_signal, closed_signal;

/* Pixels of the list at most, characters of a line. */
static const int most_height = 420, line_chars = 44;

G_DEFINE_FINAL_TYPE (RwRepairPicker, rw_repair_picker, GTK_TYPE_WIDGET)

/* --- the list ------------------------------------------------------------------------------------- */

static void
choose (RwRepairPicker *self,
        GtkWidget      *button)
{
  const char *cause = g_object_get_data (G_OBJECT (button), "cause");

  gtk_popover_popdown (GTK_POPOVER (self->popover));
  g_signal_emit (self, repair_signal, 0, cause);
}

static void
clicked_cb (GtkWidget      *button,
            RwRepairPicker *self)
{
  choose (self, button);
}

static GtkWidget *
make_line (const char *words,
           const char *style)
{
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (label), line_chars);
  gtk_label_set_max_width_chars (GTK_LABEL (label), line_chars);
  if (style != NULL)
    gtk_widget_add_css_class (label, style);
  return label;
}

static void
add_repair (RwRepairPicker *self,
            const RwCause  *cause)
{
  GtkWidget *button = gtk_button_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  g_autofree char *all = g_strconcat (cause->repair.title, " ", cause->title, NULL);
  /* Translators: a repair, and the cause that it is for. */
  g_autofree char *name = g_strdup_printf (_ ("%s, for: %s"), cause->repair.title, cause->title);

  gtk_box_append (GTK_BOX (box), make_line (cause->repair.title, NULL));
  gtk_box_append (GTK_BOX (box), make_line (cause->title, "caption"));
  gtk_button_set_child (GTK_BUTTON (button), box);
  gtk_widget_add_css_class (button, "flat");
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_object_set_data (G_OBJECT (button), "cause", (gpointer) cause->id);
  g_signal_connect (button, "clicked", G_CALLBACK (clicked_cb), self);
  rw_search_list_add (self->list, button, all, NULL);
}

static int
compare_titles (gconstpointer a,
                gconstpointer b)
{
  const RwCause *one = *(const RwCause *const *) a, *two = *(const RwCause *const *) b;
  const int titles = g_utf8_collate (one->repair.title, two->repair.title);

  return titles != 0 ? titles : g_utf8_collate (one->title, two->title);
}

static void
fill (RwRepairPicker *self)
{
  RwKnowledge *whole = self->job != NULL ? rw_job_get_knowledge (self->job) : NULL;

  if (whole == NULL || !rw_search_list_is_empty (self->list))
    return;

  g_autoptr (RwKnowledge) knowledge = rw_knowledge_for_profile (whole, rw_job_get_profile (self->job));
  g_autoptr (GPtrArray) causes = g_ptr_array_new ();

  for (guint i = 0; i < rw_knowledge_get_n_causes (knowledge); i++)
    g_ptr_array_add (causes, (gpointer) rw_knowledge_get_cause (knowledge, i));
  g_ptr_array_sort (causes, compare_titles);
  for (guint i = 0; i < causes->len; i++)
    add_repair (self, causes->pdata[i]);
}

/* --- searching ------------------------------------------------------------------------------------ */

/* Enter: the first one found, once something was searched for. */
static void
activate_cb (RwRepairPicker *self)
{
  GtkWidget *found = rw_search_list_is_searching (self->list) ? rw_search_list_find (self->list) : NULL;

  if (found != NULL)
    choose (self, found);
}

/* --- the job -------------------------------------------------------------------------------------- */

void
rw_repair_picker_set_job (RwRepairPicker *self,
                          RwJob          *job)
{
  g_return_if_fail (RW_IS_REPAIR_PICKER (self));
  rw_search_list_clear (self->list);
  g_set_object (&self->job, job);
  gtk_widget_set_sensitive (self->button, job != NULL && rw_job_can_write (job));
}

static void
shown_cb (RwRepairPicker *self)
{
  fill (self);
  rw_search_list_reset (self->list);
  gtk_widget_grab_focus (rw_search_list_get_field (self->list));
}

void
rw_repair_picker_open (RwRepairPicker *self)
{
  g_return_if_fail (RW_IS_REPAIR_PICKER (self));
  if (gtk_widget_get_sensitive (self->button))
    gtk_menu_button_popup (GTK_MENU_BUTTON (self->button));
}

static void
closed_cb (RwRepairPicker *self)
{
  g_signal_emit (self, closed_signal, 0);
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_repair_picker_dispose (GObject *object)
{
  RwRepairPicker *self = RW_REPAIR_PICKER (object);

  g_clear_object (&self->job);
  g_clear_pointer (&self->button, gtk_widget_unparent);
  G_OBJECT_CLASS (rw_repair_picker_parent_class)->dispose (object);
}

static void
rw_repair_picker_class_init (RwRepairPickerClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_repair_picker_dispose;
  repair_signal = g_signal_new ("repair", RW_TYPE_REPAIR_PICKER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                G_TYPE_STRING);
  closed_signal = g_signal_new ("closed", RW_TYPE_REPAIR_PICKER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "repairpicker");
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
rw_repair_picker_init (RwRepairPicker *self)
{
  GtkWidget *list;

  self->popover = gtk_popover_new ();
  list = rw_search_list_new (self->popover, _ ("Search the repairs"), _ ("Enter chooses the first one that is found."),
                             most_height, 0);
  self->list = RW_SEARCH_LIST (list);
  g_signal_connect_swapped (rw_search_list_get_field (self->list), "activate", G_CALLBACK (activate_cb), self);
  gtk_popover_set_child (GTK_POPOVER (self->popover), list);
  g_signal_connect_swapped (self->popover, "show", G_CALLBACK (shown_cb), self);
  g_signal_connect_swapped (self->popover, "closed", G_CALLBACK (closed_cb), self);
  self->button = gtk_menu_button_new ();
  gtk_menu_button_set_label (GTK_MENU_BUTTON (self->button), _ ("Any repair"));
  gtk_menu_button_set_popover (GTK_MENU_BUTTON (self->button), self->popover);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->button), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Choose a repair"), -1);
  gtk_widget_set_tooltip_text (self->button, _ ("Do a repair, whatever is suggested (Ctrl+R)"));
  gtk_widget_set_parent (self->button, GTK_WIDGET (self));
}
