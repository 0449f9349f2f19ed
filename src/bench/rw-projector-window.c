/* rw-projector-window.c: the window for the second screen.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * GTK knows no first screen: which one is the projector's is told by the connector's name, or taken to be one that the
 * main window is not on. A window that fills a screen which goes becomes a plain window; when the screen that was chosen
 * comes back it fills that again, unless somebody left full screen by hand meanwhile.
 */
#include "config.h"

#include "rw-projector-window.h"

#include <glib/gi18n-lib.h>

#include "rw-projector-view.h"

struct _RwProjectorWindow
{
  GtkWindow   parent_instance;
  GtkWindow  *main_window; /* not owned: outlives this */
  char       *screen;      /* as chosen */
  GdkMonitor *filled;      /* (nullable) the screen it fills */
  gboolean    by_hand;     /* somebody left full screen */
  guint       inhibited;   /* cookie; 0: not */
};

G_DEFINE_FINAL_TYPE (RwProjectorWindow, rw_projector_window, GTK_TYPE_WINDOW)

/* --- screens -------------------------------------------------------------------------------------- */

GStrv
rw_projector_window_list_screens (GdkDisplay *display,
                                  GStrv      *titles)
{
  GListModel *monitors = gdk_display_get_monitors (display);
  g_autoptr (GStrvBuilder) names = g_strv_builder_new ();
  g_autoptr (GStrvBuilder) words = g_strv_builder_new ();

  for (guint i = 0; i < g_list_model_get_n_items (monitors); i++)
    {
      g_autoptr (GdkMonitor) monitor = g_list_model_get_item (monitors, i);
      const char *name = gdk_monitor_get_connector (monitor);
      GdkRectangle area;

      if (name == NULL)
        continue;
      gdk_monitor_get_geometry (monitor, &area);

      g_autofree char *title = g_strdup_printf ("%s · %d×%d", name, area.width, area.height);

      g_strv_builder_add (names, name);
      g_strv_builder_add (words, title);
    }
  *titles = g_strv_builder_end (words);
  return g_strv_builder_end (names);
}

/* (nullable) not owned */
static GdkMonitor *
main_monitor (RwProjectorWindow *self)
{
  GdkSurface *surface = gtk_native_get_surface (GTK_NATIVE (self->main_window));

  return surface != NULL ? gdk_display_get_monitor_at_surface (gtk_widget_get_display (GTK_WIDGET (self)), surface) : NULL;
}

static gboolean
is_chosen (RwProjectorWindow *self,
           GdkMonitor        *monitor)
{
  if (self->screen[0] == '\0')
    return monitor != main_monitor (self);
  return g_strcmp0 (gdk_monitor_get_connector (monitor), self->screen) == 0;
}

/* (transfer full) (nullable) */
static GdkMonitor *
find_monitor (RwProjectorWindow *self)
{
  GListModel *monitors = gdk_display_get_monitors (gtk_widget_get_display (GTK_WIDGET (self)));

  for (guint i = 0; i < g_list_model_get_n_items (monitors); i++)
    {
      g_autoptr (GdkMonitor) monitor = g_list_model_get_item (monitors, i);

      if (gdk_monitor_is_valid (monitor) && is_chosen (self, monitor))
        return g_steal_pointer (&monitor);
    }
  return NULL;
}

/* --- idle ----------------------------------------------------------------------------------------- */

/* A class looks at it for minutes without a key. */
static void
keep_awake (RwProjectorWindow *self,
            gboolean           awake)
{
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (self));

  if (application == NULL || awake == (self->inhibited != 0))
    return;
  if (awake)
    self->inhibited = gtk_application_inhibit (application, GTK_WINDOW (self), GTK_APPLICATION_INHIBIT_IDLE,
                                               _ ("A class is looking at the projector"));
  else
    {
      gtk_application_uninhibit (application, self->inhibited);
      self->inhibited = 0;
    }
}

/* --- filling a screen ----------------------------------------------------------------------------- */

static void
fill (RwProjectorWindow *self,
      GdkMonitor        *monitor)
{
  g_set_object (&self->filled, monitor);
  gtk_window_fullscreen_on_monitor (GTK_WINDOW (self), monitor);
}

static void
leave (RwProjectorWindow *self)
{
  g_clear_object (&self->filled);
  gtk_window_unfullscreen (GTK_WINDOW (self));
}

static void
settle (RwProjectorWindow *self)
{
  g_autoptr (GdkMonitor) monitor = find_monitor (self);

  if (monitor == NULL)
    leave (self);
  else if (monitor != self->filled && !self->by_hand)
    fill (self, monitor);
}

void
rw_projector_window_put (RwProjectorWindow *self,
                         const char        *screen)
{
  g_return_if_fail (RW_IS_PROJECTOR_WINDOW (self) && screen != NULL);
  g_free (self->screen);
  self->screen = g_strdup (screen);
  self->by_hand = FALSE;
  g_clear_object (&self->filled);
  settle (self);
  gtk_window_present (GTK_WINDOW (self));
  keep_awake (self, TRUE);
}

static void
leave_by_hand (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  RwProjectorWindow *self = RW_PROJECTOR_WINDOW (widget);

  self->by_hand = TRUE;
  leave (self);
}

static void
toggle_fullscreen (GtkWidget  *widget,
                   const char *name,
                   GVariant   *parameter)
{
  RwProjectorWindow *self = RW_PROJECTOR_WINDOW (widget);
  g_autoptr (GdkMonitor) monitor = find_monitor (self);

  if (gtk_window_is_fullscreen (GTK_WINDOW (self)))
    leave_by_hand (widget, name, parameter);
  else if (monitor != NULL)
    fill (self, monitor);
  else
    gtk_window_fullscreen (GTK_WINDOW (self));
}

/* --- keys ----------------------------------------------------------------------------------------- */

/* All but its own mean the same as in the main window. */
static gboolean
key_cb (GtkEventControllerKey *controller,
        guint                  keyval,
        guint                  keycode,
        GdkModifierType        modifiers,
        RwProjectorWindow     *self)
{
  if (keyval == GDK_KEY_Escape || keyval == GDK_KEY_F11)
    return FALSE;
  return gtk_event_controller_key_forward (controller, GTK_WIDGET (self->main_window));
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_projector_window_dispose (GObject *object)
{
  RwProjectorWindow *self = RW_PROJECTOR_WINDOW (object);

  keep_awake (self, FALSE);
  g_clear_object (&self->filled);
  G_OBJECT_CLASS (rw_projector_window_parent_class)->dispose (object);
}

static void
rw_projector_window_finalize (GObject *object)
{
  g_free (RW_PROJECTOR_WINDOW (object)->screen);
  G_OBJECT_CLASS (rw_projector_window_parent_class)->finalize (object);
}

static void
rw_projector_window_class_init (RwProjectorWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_projector_window_dispose;
  G_OBJECT_CLASS (klass)->finalize = rw_projector_window_finalize;
  gtk_widget_class_install_action (widget_class, "projector.leave", NULL, leave_by_hand);
  gtk_widget_class_install_action (widget_class, "projector.fullscreen", NULL, toggle_fullscreen);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "projector.leave", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_F11, 0, "projector.fullscreen", NULL);
}

static void
rw_projector_window_init (RwProjectorWindow *self)
{
  GtkEventController *key = gtk_event_controller_key_new ();

  self->screen = g_strdup ("");
  gtk_window_set_title (GTK_WINDOW (self), _ ("Projector"));
  gtk_window_set_default_size (GTK_WINDOW (self), 960, 540);
  gtk_event_controller_set_propagation_phase (key, GTK_PHASE_CAPTURE);
  g_signal_connect (key, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), key);
}

GtkWidget *
rw_projector_window_new (GtkWindow    *main_window,
                         RwProjection *projection)
{
  RwProjectorWindow *self = g_object_new (RW_TYPE_PROJECTOR_WINDOW, "application",
                                          gtk_window_get_application (main_window), NULL);
  GListModel *monitors = gdk_display_get_monitors (gtk_widget_get_display (GTK_WIDGET (self)));

  self->main_window = main_window;
  gtk_window_set_child (GTK_WINDOW (self), rw_projector_view_new (projection));
  g_signal_connect_object (monitors, "items-changed", G_CALLBACK (settle), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}
