/* rw-trim-map-view.c: the trim map on screen.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * As with the chart over time, two widgets lie on each other: the picture, redrawn only when the map says
 * that it changed, and the cursor over it.
 */
#include "config.h"

#include "rw-trim-map-view.h"

#include <glib/gi18n-lib.h>

#include "rw-trim-map.h"

struct _RwTrimMapView
{
  GtkWidget    parent_instance;
  RwJob       *job;
  RwTrimMap   *map;
  GtkWidget   *picture;
  GtkWidget   *cursor;
  RwTrimMapHit hit;
  gboolean     has_hit;
};

G_DEFINE_FINAL_TYPE (RwTrimMapView, rw_trim_map_view, GTK_TYPE_WIDGET)

/* --- drawing -------------------------------------------------------------------------------------- */

static void
draw_picture (GtkDrawingArea *area,
              cairo_t        *cr,
              int             width,
              int             height,
              gpointer        data)
{
  RwTrimMapView *self = data;

  if (self->map != NULL && width > 1 && height > 1)
    rw_trim_map_ink (self->map, cr, width, height);
}

static void
draw_cursor (GtkDrawingArea *area,
             cairo_t        *cr,
             int             width,
             int             height,
             gpointer        data)
{
  RwTrimMapView *self = data;

  if (self->map != NULL && self->has_hit)
    rw_trim_map_ink_cursor (self->map, cr, &self->hit);
}

static void
describe (RwTrimMapView *self)
{
  g_autofree char *summary = self->map != NULL ? rw_trim_map_dup_summary (self->map) : NULL;
  const char *text = self->has_hit ? self->hit.text : summary != NULL ? summary : "";

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}

/* @hit: taken; NULL for none. */
static void
set_hit (RwTrimMapView *self,
         RwTrimMapHit  *hit)
{
  if (self->has_hit)
    rw_trim_map_hit_clear (&self->hit);
  else if (hit == NULL)
    return;
  self->has_hit = hit != NULL;
  if (hit != NULL)
    self->hit = *hit;
  gtk_widget_queue_draw (self->cursor);
  describe (self);
}

/* --- pointer and keys ----------------------------------------------------------------------------- */

static void
motion_cb (GtkEventControllerMotion *controller,
           double                    x,
           double                    y,
           RwTrimMapView            *self)
{
  RwTrimMapHit hit;

  if (self->map != NULL)
    set_hit (self, rw_trim_map_lookup (self->map, x, y, &hit) ? &hit : NULL);
}

static void
leave_cb (RwTrimMapView *self)
{
  set_hit (self, NULL);
}

static void
pressed_cb (RwTrimMapView *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self));
}

static gboolean
key_cb (GtkEventControllerKey *controller,
        guint                  keyval,
        guint                  keycode,
        GdkModifierType        modifiers,
        RwTrimMapView         *self)
{
  RwTrimMapHit hit;

  if (self->map == NULL || (modifiers & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0)
    return FALSE;
  if (keyval == GDK_KEY_Escape)
    {
      set_hit (self, NULL);
      return FALSE;
    }
  if (keyval != GDK_KEY_Left && keyval != GDK_KEY_Right)
    return FALSE;
  if (rw_trim_map_step (self->map, self->has_hit ? self->hit.n : 0, keyval == GDK_KEY_Right, &hit))
    set_hit (self, &hit);
  return TRUE;
}

/* --- following the job ---------------------------------------------------------------------------- */

/* What was pointed at may have moved; a reading is found again, the rest is let go. */
static void
keep_hit (RwTrimMapView *self)
{
  RwTrimMapHit hit;

  if (self->has_hit)
    set_hit (self, self->hit.n > 0 && rw_trim_map_locate (self->map, self->hit.n, &hit) ? &hit : NULL);
}

static void
show_live (RwTrimMapView *self)
{
  RwTrimLive live;
  const RwTrimSet *set = rw_job_get_trim_live (self->job, &live);
  const gboolean ours = set != NULL && set == rw_trim_map_get_set (self->map);

  rw_trim_map_set_live (self->map, ours ? &live : NULL);
  if (set != NULL)
    rw_trim_live_clear (&live);
}

static void
show_set (RwTrimMapView *self)
{
  rw_trim_map_set_set (self->map, rw_job_get_trim_set (self->job));
  show_live (self);
  keep_hit (self);
  describe (self);
}

static void
refresh_cb (RwTrimMapView *self)
{
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    show_set (self);
}

static void
live_cb (RwTrimMapView *self)
{
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    show_live (self);
}

static void
map_changed_cb (RwTrimMapView *self)
{
  gtk_widget_queue_draw (self->picture);
  gtk_widget_queue_draw (self->cursor);
}

void
rw_trim_map_view_set_job (RwTrimMapView *self,
                          RwJob         *job)
{
  g_return_if_fail (RW_IS_TRIM_MAP_VIEW (self));
  if (self->job == job)
    return;
  set_hit (self, NULL);
  if (self->map != NULL)
    g_signal_handlers_disconnect_by_data (self->map, self);
  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (self->job, self);
  g_clear_object (&self->map);
  g_set_object (&self->job, job);
  if (job == NULL)
    return;
  self->map = rw_trim_map_new (rw_job_get_view (job));
  g_signal_connect_object (self->map, "changed", G_CALLBACK (map_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (job, "changed", G_CALLBACK (refresh_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (job, "spot", G_CALLBACK (refresh_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (job, "live", G_CALLBACK (live_cb), self, G_CONNECT_SWAPPED);
  show_set (self);
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
map_cb (GtkWidget *widget)
{
  RwTrimMapView *self = RW_TRIM_MAP_VIEW (widget);

  GTK_WIDGET_CLASS (rw_trim_map_view_parent_class)->map (widget);
  if (self->job != NULL)
    show_set (self);
}

static void
rw_trim_map_view_dispose (GObject *object)
{
  RwTrimMapView *self = RW_TRIM_MAP_VIEW (object);

  if (self->has_hit)
    rw_trim_map_hit_clear (&self->hit);
  self->has_hit = FALSE;
  g_clear_object (&self->map);
  g_clear_object (&self->job);
  g_clear_pointer (&self->picture, gtk_widget_unparent);
  g_clear_pointer (&self->cursor, gtk_widget_unparent);
  G_OBJECT_CLASS (rw_trim_map_view_parent_class)->dispose (object);
}

static void
rw_trim_map_view_class_init (RwTrimMapViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_trim_map_view_dispose;
  widget_class->map = map_cb;
  gtk_widget_class_set_css_name (widget_class, "chartview");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static GtkWidget *
add_layer (RwTrimMapView         *self,
           GtkDrawingAreaDrawFunc draw)
{
  GtkWidget *layer = gtk_drawing_area_new ();

  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (layer), draw, self, NULL);
  gtk_widget_set_can_target (layer, FALSE);
  gtk_widget_set_parent (layer, GTK_WIDGET (self));
  return layer;
}

static void
rw_trim_map_view_init (RwTrimMapView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  GtkEventController *key = gtk_event_controller_key_new ();
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  self->picture = add_layer (self, draw_picture);
  self->cursor = add_layer (self, draw_cursor);
  g_signal_connect (key, "key-pressed", G_CALLBACK (key_cb), self);
  g_signal_connect (motion, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (leave_cb), self);
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (widget, key);
  gtk_widget_add_controller (widget, motion);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (click));
  gtk_widget_set_focusable (widget, TRUE);
  gtk_widget_set_hexpand (widget, TRUE);
  gtk_widget_set_vexpand (widget, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Trim map"), -1);
}
