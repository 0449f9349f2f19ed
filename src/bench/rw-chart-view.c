/* rw-chart-view.c: the chart on screen.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two widgets lie on each other: the picture, redrawn only when the chart says that it changed, and the
 * cursor over it, which is cheap to redraw with every move of the pointer.
 */
#include "config.h"

#include "rw-chart-view.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-chart.h"

struct _RwChartView
{
  GtkWidget  parent_instance;
  RwJob     *job;
  RwChart   *chart;
  GtkWidget *picture;
  GtkWidget *cursor;
  RwChartHit hit;
  gboolean   has_hit;
  double     pan_from_start, pan_from_end; /* span when a drag began */
  double     pointer_x;
};

G_DEFINE_FINAL_TYPE (RwChartView, rw_chart_view, GTK_TYPE_WIDGET)

static void
forget_hit (RwChartView *self)
{
  if (self->has_hit)
    rw_chart_hit_clear (&self->hit);
  self->has_hit = FALSE;
}

static void
draw_picture (GtkDrawingArea *area,
              cairo_t        *cr,
              int             width,
              int             height,
              gpointer        data)
{
  RwChartView *self = data;

  if (self->chart == NULL || width < 2 || height < 2)
    return;
  rw_chart_set_device_scale (self->chart, gtk_widget_get_scale_factor (GTK_WIDGET (area)));
  rw_chart_ink (self->chart, cr, width, height, RW_INK_SCREEN);
}

static void
draw_cursor (GtkDrawingArea *area,
             cairo_t        *cr,
             int             width,
             int             height,
             gpointer        data)
{
  RwChartView *self = data;

  if (self->chart != NULL && self->has_hit)
    rw_chart_ink_cursor (self->chart, cr, &self->hit);
}

static void
describe (RwChartView *self)
{
  g_autofree char *summary = self->chart != NULL ? rw_chart_dup_summary (self->chart) : NULL;
  const char *text = self->has_hit ? self->hit.text : summary != NULL ? summary : "";

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}

/* @hit: taken; NULL for none. */
static void
set_hit (RwChartView *self,
         RwChartHit  *hit)
{
  const gboolean same = self->has_hit == (hit != NULL)
                        && (hit == NULL || (hit->n == self->hit.n && hit->n > 0));

  forget_hit (self);
  if (hit != NULL)
    {
      self->hit = *hit;
      self->has_hit = TRUE;
    }
  if (self->job != NULL)
    rw_view_set_hovered (rw_job_get_view (self->job), self->has_hit ? self->hit.n : 0);
  if (same)
    return;
  gtk_widget_queue_draw (self->cursor);
  describe (self);
}

static void
motion_cb (GtkEventControllerMotion *controller,
           double                    x,
           double                    y,
           RwChartView              *self)
{
  RwChartHit hit;

  self->pointer_x = x;
  if (self->chart == NULL)
    return;
  set_hit (self, rw_chart_lookup (self->chart, x, y, &hit) ? &hit : NULL);
}

static void
leave_cb (RwChartView *self)
{
  set_hit (self, NULL);
}

static gboolean
scroll_cb (GtkEventControllerScroll *controller,
           double                    dx,
           double                    dy,
           RwChartView              *self)
{
  if (self->chart == NULL)
    return FALSE;

  RwView *view = rw_job_get_view (self->job);

  if (dx != 0)
    rw_view_pan (view, dx * 0.05);
  if (dy != 0)
    rw_view_zoom (view, pow (1.25, dy), rw_chart_time_at (self->chart, self->pointer_x));
  return TRUE;
}

static void
drag_begin_cb (RwChartView *self)
{
  if (self->job == NULL)
    return;
  self->pan_from_start = rw_view_get_start (rw_job_get_view (self->job));
  self->pan_from_end = rw_view_get_end (rw_job_get_view (self->job));
  gtk_widget_grab_focus (GTK_WIDGET (self));
}

static void
drag_update_cb (GtkGestureDrag *drag,
                double          x,
                double          y,
                RwChartView    *self)
{
  RwRect plot;

  if (self->chart == NULL || fabs (x) < 4)
    return;
  rw_chart_get_plot (self->chart, &plot);
  if (plot.width < 1)
    return;

  const double by = -x / plot.width * (self->pan_from_end - self->pan_from_start);

  rw_view_set_span (rw_job_get_view (self->job), self->pan_from_start + by, self->pan_from_end + by);
}

static void
pressed_cb (GtkGestureClick *click,
            int              n_press,
            double           x,
            double           y,
            RwChartView     *self)
{
  if (self->job != NULL && n_press == 2)
    rw_view_fit (rw_job_get_view (self->job));
}

static void
step_cursor (RwChartView *self,
             gboolean     forward)
{
  RwChartHit hit;

  if (rw_chart_step (self->chart, self->has_hit ? self->hit.n : 0, forward, &hit))
    set_hit (self, &hit);
}

static gboolean
key_cb (GtkEventControllerKey *controller,
        guint                  keyval,
        guint                  keycode,
        GdkModifierType        modifiers,
        RwChartView           *self)
{
  if (self->chart == NULL || (modifiers & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0)
    return FALSE;

  RwView *view = rw_job_get_view (self->job);
  const double middle = (rw_view_get_start (view) + rw_view_get_end (view)) / 2;

  switch (keyval)
    {
    case GDK_KEY_Left:
    case GDK_KEY_Right:
      if ((modifiers & GDK_SHIFT_MASK) != 0)
        rw_view_pan (view, keyval == GDK_KEY_Right ? 0.2 : -0.2);
      else
        step_cursor (self, keyval == GDK_KEY_Right);
      return TRUE;
    case GDK_KEY_plus:
    case GDK_KEY_KP_Add:
      rw_view_zoom (view, 0.5, middle);
      return TRUE;
    case GDK_KEY_KP_Subtract:
    case GDK_KEY_underscore:
      rw_view_zoom (view, 2, middle);
      return TRUE;
    case GDK_KEY_Home:
      rw_view_fit (view);
      return TRUE;
    case GDK_KEY_End:
      rw_view_set_follow (view, TRUE);
      return TRUE;
    case GDK_KEY_Escape:
      set_hit (self, NULL);
      return FALSE;
    default:
      return FALSE;
    }
}

static void
chart_changed_cb (RwChartView *self)
{
  if (!gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  gtk_widget_queue_draw (self->picture);
  if (self->has_hit)
    {
      RwChartHit hit;

      /* An expected value is no event: it is found where it was, if it still lies there. */
      const gboolean found = self->hit.n > 0 ? rw_chart_locate (self->chart, self->hit.n, &hit)
                                             : rw_chart_lookup (self->chart, self->hit.x, self->hit.y, &hit);

      set_hit (self, found ? &hit : NULL);
      gtk_widget_queue_draw (self->cursor);
    }
}

static void
job_changed_cb (RwChartView *self)
{
  rw_chart_set_state (self->chart, rw_job_get_state (self->job));
  describe (self);
}

/* Names of symptoms and causes come from the knowledge, which only the job has. */
static char *
name_cb (RwEventType type,
         const char *id,
         gpointer    data)
{
  RwChartView *self = data;

  if (type == RW_EVENT_SYMPTOM)
    return g_strdup (rw_job_symptom_title (self->job, id));
  return type == RW_EVENT_REPAIR ? g_strdup (rw_job_cause_title (self->job, id)) : NULL;
}

void
rw_chart_view_set_job (RwChartView *self,
                       RwJob       *job)
{
  g_return_if_fail (RW_IS_CHART_VIEW (self));
  if (self->job == job)
    return;
  forget_hit (self);
  if (self->chart != NULL)
    g_signal_handlers_disconnect_by_data (self->chart, self);
  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (self->job, self);
  g_clear_object (&self->chart);
  g_set_object (&self->job, job);
  if (job == NULL)
    return;
  self->chart = rw_chart_new (rw_job_get_session (job), rw_job_get_view (job));
  rw_chart_set_name_func (self->chart, name_cb, self, NULL);
  g_signal_connect_object (self->chart, "changed", G_CALLBACK (chart_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (job, "changed", G_CALLBACK (job_changed_cb), self, G_CONNECT_SWAPPED);
  gtk_widget_queue_draw (self->picture);
  job_changed_cb (self);
}

static void
map (GtkWidget *widget)
{
  RwChartView *self = RW_CHART_VIEW (widget);

  GTK_WIDGET_CLASS (rw_chart_view_parent_class)->map (widget);
  gtk_widget_queue_draw (self->picture);
}

static void
rw_chart_view_dispose (GObject *object)
{
  RwChartView *self = RW_CHART_VIEW (object);

  forget_hit (self);
  g_clear_object (&self->chart);
  g_clear_object (&self->job);
  g_clear_pointer (&self->picture, gtk_widget_unparent);
  g_clear_pointer (&self->cursor, gtk_widget_unparent);
  G_OBJECT_CLASS (rw_chart_view_parent_class)->dispose (object);
}

static void
rw_chart_view_class_init (RwChartViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_chart_view_dispose;
  widget_class->map = map;
  gtk_widget_class_set_css_name (widget_class, "chartview");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static GtkWidget *
add_layer (RwChartView          *self,
           GtkDrawingAreaDrawFunc draw)
{
  GtkWidget *layer = gtk_drawing_area_new ();

  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (layer), draw, self, NULL);
  gtk_widget_set_can_target (layer, FALSE);
  gtk_widget_set_parent (layer, GTK_WIDGET (self));
  return layer;
}

static void
add_pointer (RwChartView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *scroll = gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_BOTH_AXES);
  GtkGesture *drag = gtk_gesture_drag_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  g_signal_connect (motion, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (leave_cb), self);
  g_signal_connect (scroll, "scroll", G_CALLBACK (scroll_cb), self);
  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (widget, motion);
  gtk_widget_add_controller (widget, scroll);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (drag));
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (click));
}

static void
rw_chart_view_init (RwChartView *self)
{
  GtkEventController *key = gtk_event_controller_key_new ();

  self->picture = add_layer (self, draw_picture);
  self->cursor = add_layer (self, draw_cursor);
  g_signal_connect (key, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), key);
  add_pointer (self);
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Chart over time"), -1);
}
