/* rw-rail-strip.c: all rails side by side.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-rail-strip.h"

#include <glib/gi18n-lib.h>

#include "rw-rail-card.h"
#include "rw-wiring-card.h"

struct _RwRailStrip
{
  GtkWidget  parent_instance;
  RwJob     *job;
  GtkWidget *box;
};

G_DEFINE_FINAL_TYPE (RwRailStrip, rw_rail_strip, GTK_TYPE_WIDGET)

static void
refresh_cb (RwRailStrip *self)
{
  if (!gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  for (GtkWidget *child = gtk_widget_get_first_child (self->box); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (RW_IS_RAIL_CARD (child))
      rw_rail_card_refresh (RW_RAIL_CARD (child));
}

static void
remove_cards (RwRailStrip *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->box)) != NULL)
    gtk_box_remove (GTK_BOX (self->box), child);
}

void
rw_rail_strip_set_job (RwRailStrip *self,
                       RwJob       *job)
{
  g_return_if_fail (RW_IS_RAIL_STRIP (self));
  if (self->job == job)
    return;
  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (self->job, self);
  remove_cards (self);
  g_set_object (&self->job, job);
  if (job == NULL)
    return;

  RwProfile *profile = rw_job_get_profile (job);

  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    gtk_box_append (GTK_BOX (self->box), rw_rail_card_new (job, rw_profile_get_rail (profile, i)->id));
  gtk_box_append (GTK_BOX (self->box), rw_wiring_card_new (job));
  g_signal_connect_object (job, "tick", G_CALLBACK (refresh_cb), self, G_CONNECT_SWAPPED);
}

void
rw_rail_strip_hide (RwRailStrip *self,
                    const char  *rail)
{
  RwProfile *profile = self->job != NULL ? rw_job_get_profile (self->job) : NULL;
  const int index = profile != NULL && rail != NULL ? rw_profile_index_of (profile, rail) : -1;
  int i = 0;

  /* The cards stand in the order of the profile. */
  for (GtkWidget *child = gtk_widget_get_first_child (self->box); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    gtk_widget_set_visible (child, i++ != index);
}

static void
rw_rail_strip_dispose (GObject *object)
{
  RwRailStrip *self = RW_RAIL_STRIP (object);

  g_clear_object (&self->job);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS (rw_rail_strip_parent_class)->dispose (object);
}

static void
rw_rail_strip_class_init (RwRailStripClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_rail_strip_dispose;
  gtk_widget_class_set_css_name (widget_class, "railstrip");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
rw_rail_strip_init (RwRailStrip *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  gtk_box_set_homogeneous (GTK_BOX (self->box), TRUE);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Rails"), -1);
}
