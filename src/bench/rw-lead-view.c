/* rw-lead-view.c: the picture of where the leads go.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-lead-view.h"

#include <glib/gi18n-lib.h>

#include "rw-lead-picture.h"

static const double height_by_width = 0.56;

struct _RwLeadView
{
  GtkWidget   parent_instance;
  RwView     *view;  /* theme and size of text */
  RwLeadScene scene; /* valid while visible */
  char       *rail;  /* owns the scene's text */
};

G_DEFINE_FINAL_TYPE (RwLeadView, rw_lead_view, GTK_TYPE_WIDGET)

void
rw_lead_view_show (RwLeadView    *self,
                   RwJob         *job,
                   const RwCheck *check)
{
  g_return_if_fail (RW_IS_LEAD_VIEW (self));

  RwView *view = job != NULL ? rw_job_get_view (job) : NULL;
  const gboolean shown = job != NULL && check != NULL
                         && rw_lead_scene_of_check (check, rw_job_get_profile (job), &self->scene);

  if (self->view != view)
    {
      if (self->view != NULL)
        g_signal_handlers_disconnect_by_data (self->view, self);
      g_set_object (&self->view, view);
      if (view != NULL)
        {
          g_signal_connect_object (view, "notify::theme", G_CALLBACK (gtk_widget_queue_draw), self, G_CONNECT_SWAPPED);
          g_signal_connect_object (view, "notify::text-scale", G_CALLBACK (gtk_widget_queue_draw), self,
                                   G_CONNECT_SWAPPED);
        }
    }
  gtk_widget_set_visible (GTK_WIDGET (self), shown);
  if (!shown)
    return;
  g_free (self->rail);
  self->rail = g_strdup (self->scene.rail);
  self->scene.rail = self->rail;

  g_autofree char *words = rw_lead_picture_describe (&self->scene);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Where the leads go"),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), words);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
rw_lead_view_snapshot (GtkWidget   *widget,
                       GtkSnapshot *snapshot)
{
  RwLeadView *self = RW_LEAD_VIEW (widget);
  const int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);

  if (self->view == NULL || width < 1 || height < 1)
    return;

  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  const PangoFontDescription *font = pango_context_get_font_description (gtk_widget_get_pango_context (widget));

  rw_lead_picture_draw (cr, rw_theme_get (rw_view_get_theme (self->view)), font, rw_view_get_text_scale (self->view),
                        &self->scene, width, height);
  cairo_destroy (cr);
}

static void
rw_lead_view_measure (GtkWidget     *widget,
                      GtkOrientation orientation,
                      int            for_size,
                      int           *minimum,
                      int           *natural,
                      int           *minimum_baseline,
                      int           *natural_baseline)
{
  const int height = for_size > 0 ? (int) (MIN (for_size, 420) * height_by_width) : 100;

  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 200 : height;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 300 : height;
}

static GtkSizeRequestMode
rw_lead_view_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
rw_lead_view_finalize (GObject *object)
{
  RwLeadView *self = RW_LEAD_VIEW (object);

  g_clear_object (&self->view);
  g_free (self->rail);
  G_OBJECT_CLASS (rw_lead_view_parent_class)->finalize (object);
}

static void
rw_lead_view_class_init (RwLeadViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = rw_lead_view_finalize;
  widget_class->snapshot = rw_lead_view_snapshot;
  widget_class->measure = rw_lead_view_measure;
  widget_class->get_request_mode = rw_lead_view_get_request_mode;
  gtk_widget_class_set_css_name (widget_class, "leadview");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
rw_lead_view_init (RwLeadView *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}
