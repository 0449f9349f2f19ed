/* rw-rail-strip.c: all rails side by side.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where they have too little room (large text, many rails) the figures are set smaller first; where that is not enough,
 * the strip scrolls, and the rail that the leads are on is scrolled to.
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
  GtkWidget *scroller;
  GtkWidget *box;
  int        ample;  /* pixels that the cards want with large figures */
  guint      sizing; /* source that sets the figures' size; 0: none */
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

/* The card of the rail that the leads are on; NULL when they are on none. */
static GtkWidget *
find_aimed (RwRailStrip *self)
{
  const int index = rw_profile_index_of (rw_job_get_profile (self->job), rw_job_get_rail (self->job));
  GtkWidget *child = gtk_widget_get_first_child (self->box);

  for (int i = 0; i < index && child != NULL; i++)
    child = gtk_widget_get_next_sibling (child);
  return index >= 0 ? child : NULL;
}

static void
spot_cb (RwRailStrip *self)
{
  GtkAdjustment *across = gtk_scrolled_window_get_hadjustment (GTK_SCROLLED_WINDOW (self->scroller));
  GtkWidget *card = find_aimed (self);
  graphene_rect_t at;

  if (card == NULL || !gtk_widget_compute_bounds (card, self->box, &at))
    return;
  gtk_adjustment_clamp_page (across, at.origin.x, at.origin.x + at.size.width);
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
  g_signal_connect_object (job, "spot", G_CALLBACK (spot_cb), self, G_CONNECT_SWAPPED);
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

  g_clear_handle_id (&self->sizing, g_source_remove);
  g_clear_object (&self->job);
  g_clear_pointer (&self->scroller, gtk_widget_unparent);
  G_OBJECT_CLASS (rw_rail_strip_parent_class)->dispose (object);
}

/* --- room ----------------------------------------------------------------------------------------- */

static void
rw_rail_strip_measure (GtkWidget     *widget,
                       GtkOrientation orientation,
                       int            for_size,
                       int           *minimum,
                       int           *natural,
                       int           *minimum_baseline,
                       int           *natural_baseline)
{
  RwRailStrip *self = RW_RAIL_STRIP (widget);

  gtk_widget_measure (self->scroller, orientation, for_size, minimum, natural, NULL, NULL);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    return;

  /* The bar takes height only where it shows, which a scrolled window does not reckon with. */
  GtkWidget *bar = gtk_scrolled_window_get_hscrollbar (GTK_SCROLLED_WINDOW (self->scroller));
  int least, height;

  gtk_widget_measure (self->box, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  gtk_widget_measure (self->box, orientation, MAX (least, for_size), minimum, natural, NULL, NULL);
  gtk_widget_measure (bar, orientation, -1, &height, NULL, NULL, NULL);
  if (for_size >= 0 && for_size < least)
    {
      *minimum += height;
      *natural += height;
    }
}

static GtkSizeRequestMode
rw_rail_strip_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

/* Large figures come back only where they were seen to fit: the smaller ones do not tell how wide those are. */
static gboolean
size_cb (gpointer data)
{
  RwRailStrip *self = data;
  const gboolean dense = gtk_widget_has_css_class (self->box, "dense");
  const int width = gtk_widget_get_width (GTK_WIDGET (self));
  int least;

  self->sizing = 0;
  gtk_widget_measure (self->box, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  if (!dense)
    self->ample = least;
  if (!dense && least > width)
    gtk_widget_add_css_class (self->box, "dense");
  else if (dense && self->ample <= width)
    gtk_widget_remove_css_class (self->box, "dense");
  return G_SOURCE_REMOVE;
}

static void
rw_rail_strip_size_allocate (GtkWidget *widget,
                             int        width,
                             int        height,
                             int        baseline)
{
  RwRailStrip *self = RW_RAIL_STRIP (widget);

  gtk_widget_size_allocate (self->scroller, &(GtkAllocation) { 0, 0, width, height }, baseline);
  if (self->sizing == 0)
    self->sizing = g_idle_add (size_cb, self); /* nothing may change size while sizes are given out */
}

static void
rw_rail_strip_class_init (RwRailStripClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_rail_strip_dispose;
  gtk_widget_class_set_css_name (widget_class, "railstrip");
  widget_class->measure = rw_rail_strip_measure;
  widget_class->get_request_mode = rw_rail_strip_get_request_mode;
  widget_class->size_allocate = rw_rail_strip_size_allocate;
}

static void
rw_rail_strip_init (RwRailStrip *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  gtk_box_set_homogeneous (GTK_BOX (self->box), TRUE);
  self->scroller = gtk_scrolled_window_new ();
  g_object_set (self->scroller, "vscrollbar-policy", GTK_POLICY_NEVER, "overlay-scrolling", FALSE, "propagate-natural-width",
                TRUE, "propagate-natural-height", TRUE, "child", self->box, NULL);
  gtk_widget_set_parent (self->scroller, GTK_WIDGET (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Rails"), -1);
}
