/* rw-main-window-note.c: a note is written, beside the entry that values are typed in.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-main-window-private.h"

#include <glib/gi18n-lib.h>

static void
note_done_cb (RwMainWindow *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->note_entry));

  if (*text != '\0' && self->job != NULL)
    {
      RwEvent event = rw_event_make_note (0, text);

      rw_job_add (self->job, &event);
    }
  gtk_editable_set_text (GTK_EDITABLE (self->note_entry), "");
  gtk_popover_popdown (GTK_POPOVER (self->note_popover));
}

static void
make_note_popover (RwMainWindow *self)
{
  self->note_popover = gtk_popover_new ();
  self->note_entry = GTK_ENTRY (gtk_entry_new ());
  gtk_entry_set_placeholder_text (self->note_entry, _ ("A note; Enter keeps it"));
  gtk_editable_set_width_chars (GTK_EDITABLE (self->note_entry), 40);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->note_entry), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Note"), -1);
  g_signal_connect_swapped (self->note_entry, "activate", G_CALLBACK (note_done_cb), self);
  gtk_popover_set_child (GTK_POPOVER (self->note_popover), GTK_WIDGET (self->note_entry));
  gtk_popover_set_position (GTK_POPOVER (self->note_popover), GTK_POS_TOP);
  gtk_widget_set_parent (self->note_popover, GTK_WIDGET (self->entry));
}

void
rw_main_window_note (GtkWidget  *widget,
                     const char *name,
                     GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);
  GdkRectangle place;

  if (self->note_popover == NULL)
    make_note_popover (self);
  rw_entry_row_get_note_place (self->entry, &place);
  gtk_popover_set_pointing_to (GTK_POPOVER (self->note_popover), &place);
  gtk_popover_popup (GTK_POPOVER (self->note_popover));
  gtk_widget_grab_focus (GTK_WIDGET (self->note_entry));
}
