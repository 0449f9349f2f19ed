/* rw-compare-chart.c: the charts of two visits side by side, on screen.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-compare-chart.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-chart-names.h"
#include "rw-color-scheme.h"

/* Pixels of a saved picture. */
static const int picture_width = 1280, picture_height = 800;

static const double least_height = 300; /* pixels at text scale 1 */

struct _RwCompareChart
{
  GtkWidget         parent_instance;
  RwCompare        *compare;
  RwKnowledge      *knowledge; /* (nullable) */
  RwComparePicture *picture;   /* NULL without compare */
};

G_DEFINE_FINAL_TYPE (RwCompareChart, rw_compare_chart, GTK_TYPE_WIDGET)

static void
describe (RwCompareChart *self)
{
  g_autofree char *summary = self->picture != NULL ? rw_compare_picture_dup_summary (self->picture) : NULL;

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  summary != NULL ? summary : "", -1);
}

static void
changed_cb (gpointer user_data)
{
  gtk_widget_queue_draw (user_data);
}

static double
text_scale (GtkWidget *widget)
{
  int dpi = 0;

  g_object_get (gtk_widget_get_settings (widget), "gtk-xft-dpi", &dpi, NULL);
  return dpi > 0 ? dpi / (96.0 * 1024) : 1;
}

static void
apply_look (RwCompareChart *self)
{
  const gboolean dark = rw_color_scheme_is_dark (), contrast = rw_color_scheme_is_contrast ();

  if (self->picture == NULL)
    return;
  rw_compare_picture_set_look (self->picture,
                               contrast ? dark ? RW_THEME_DARK_CONTRAST : RW_THEME_LIGHT_CONTRAST
                               : dark   ? RW_THEME_DARK
                                        : RW_THEME_LIGHT,
                               text_scale (GTK_WIDGET (self)));
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

void
rw_compare_chart_set_compare (RwCompareChart *self,
                              RwCompare      *compare,
                              RwKnowledge    *knowledge)
{
  g_return_if_fail (RW_IS_COMPARE_CHART (self) && compare != NULL);

  const RwViewChart chart = rw_compare_chart_get_chart (self);
  RwKnowledge *kept = knowledge != NULL ? rw_knowledge_ref (knowledge) : NULL;

  g_clear_pointer (&self->picture, rw_compare_picture_free);
  g_clear_pointer (&self->compare, rw_compare_unref);
  g_clear_pointer (&self->knowledge, rw_knowledge_unref);
  self->knowledge = kept;
  self->compare = rw_compare_ref (compare);
  self->picture = rw_compare_picture_new (compare, changed_cb, self);
  rw_compare_picture_set_name_func (self->picture, rw_chart_name_known, self->knowledge);
  rw_compare_picture_set_chart (self->picture, chart);
  apply_look (self);
  describe (self);
}

void
rw_compare_chart_set_chart (RwCompareChart *self,
                            RwViewChart     chart)
{
  g_return_if_fail (RW_IS_COMPARE_CHART (self));
  if (self->picture == NULL)
    return;
  rw_compare_picture_set_chart (self->picture, chart);
  describe (self);
}

RwViewChart
rw_compare_chart_get_chart (RwCompareChart *self)
{
  return self->picture != NULL ? rw_compare_picture_get_chart (self->picture) : RW_VIEW_TIME;
}

gboolean
rw_compare_chart_save (RwCompareChart *self,
                       const char     *path,
                       GError        **error)
{
  g_return_val_if_fail (RW_IS_COMPARE_CHART (self) && self->compare != NULL, FALSE);

  g_autoptr (RwComparePicture) page = rw_compare_picture_new (self->compare, NULL, NULL);
  RwChartFormat format;

  if (!rw_chart_format_from_path (path, &format))
    {
      g_set_error_literal (error, RW_CHART_ERROR, RW_CHART_ERROR_FORMAT,
                           _ ("The name must end in .png, .svg or .pdf."));
      return FALSE;
    }
  rw_compare_picture_set_name_func (page, rw_chart_name_known, self->knowledge);
  rw_compare_picture_set_chart (page, rw_compare_chart_get_chart (self));

  g_autoptr (GBytes) bytes = rw_compare_picture_export_bytes (page, format, picture_width, picture_height, error);

  return rw_chart_export_save (bytes, path, error);
}

/* --- the widget ----------------------------------------------------------------------------------- */

static void
rw_compare_chart_snapshot (GtkWidget   *widget,
                           GtkSnapshot *snapshot)
{
  RwCompareChart *self = RW_COMPARE_CHART (widget);
  const int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);

  if (self->picture == NULL || width < 2 || height < 2)
    return;

  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));

  rw_compare_picture_set_device_scale (self->picture, gtk_widget_get_scale_factor (widget));
  rw_compare_picture_ink (self->picture, cr, width, height, RW_INK_SCREEN);
  cairo_destroy (cr);
}

static void
rw_compare_chart_measure (GtkWidget     *widget,
                          GtkOrientation orientation,
                          int            for_size,
                          int           *minimum,
                          int           *natural,
                          int           *minimum_baseline,
                          int           *natural_baseline)
{
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 320 : (int) (least_height * text_scale (widget));
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 960 : *minimum;
}

static gboolean
key_cb (GtkEventControllerKey *controller,
        guint                  keyval,
        guint                  keycode,
        GdkModifierType        modifiers,
        RwCompareChart        *self)
{
  if (self->picture == NULL || (modifiers & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0)
    return FALSE;
  switch (keyval)
    {
    case GDK_KEY_plus:
    case GDK_KEY_KP_Add:
      rw_compare_picture_zoom (self->picture, 0.5);
      return TRUE;
    case GDK_KEY_minus:
    case GDK_KEY_KP_Subtract:
      rw_compare_picture_zoom (self->picture, 2);
      return TRUE;
    case GDK_KEY_Left:
      rw_compare_picture_pan (self->picture, -0.2);
      return TRUE;
    case GDK_KEY_Right:
      rw_compare_picture_pan (self->picture, 0.2);
      return TRUE;
    case GDK_KEY_Home:
      rw_compare_picture_fit (self->picture);
      return TRUE;
    default:
      return FALSE;
    }
}

static gboolean
scroll_cb (GtkEventControllerScroll *controller,
           double                    dx,
           double                    dy,
           RwCompareChart           *self)
{
  if (self->picture == NULL)
    return FALSE;
  if (dx != 0)
    rw_compare_picture_pan (self->picture, dx * 0.05);
  if (dy != 0)
    rw_compare_picture_zoom (self->picture, pow (1.25, dy));
  return TRUE;
}

static void
rw_compare_chart_dispose (GObject *object)
{
  RwCompareChart *self = RW_COMPARE_CHART (object);

  g_clear_pointer (&self->picture, rw_compare_picture_free);
  g_clear_pointer (&self->compare, rw_compare_unref);
  g_clear_pointer (&self->knowledge, rw_knowledge_unref);
  G_OBJECT_CLASS (rw_compare_chart_parent_class)->dispose (object);
}

static void
rw_compare_chart_class_init (RwCompareChartClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_compare_chart_dispose;
  widget_class->snapshot = rw_compare_chart_snapshot;
  widget_class->measure = rw_compare_chart_measure;
  gtk_widget_class_set_css_name (widget_class, "comparechart");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
rw_compare_chart_init (RwCompareChart *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *scroll = gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_BOTH_AXES);
  GtkSettings *settings = gtk_widget_get_settings (GTK_WIDGET (self));

  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Charts of both visits on one scale"), -1);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  g_signal_connect (scroll, "scroll", G_CALLBACK (scroll_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  gtk_widget_add_controller (GTK_WIDGET (self), scroll);
  g_signal_connect_object (settings, "notify::gtk-xft-dpi", G_CALLBACK (apply_look), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (settings, "notify::gtk-theme-name", G_CALLBACK (apply_look), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (settings, "notify::gtk-application-prefer-dark-theme", G_CALLBACK (apply_look), self,
                           G_CONNECT_SWAPPED);
}
