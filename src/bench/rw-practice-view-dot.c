/* rw-practice-view-dot.c: one spot of the practice bench.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-practice-view-dot.h"

#include "rw-practice-cabinet.h"

struct _RwPracticeDot
{
  GtkWidget parent_instance;
  guint     index;
  char     *name;
};

enum
{
  TOUCH,
  CHOSEN,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (RwPracticeDot, rw_practice_dot, GTK_TYPE_WIDGET)

static void
touch_action (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  const guint lead = g_str_equal (name, "spot.red") ? RW_PRACTICE_RED : RW_PRACTICE_BLACK;

  g_signal_emit (widget, signals[TOUCH], 0, RW_PRACTICE_DOT (widget)->index, lead);
}

static void
focus_cb (RwPracticeDot *self)
{
  g_signal_emit (self, signals[CHOSEN], 0, self->index);
}

/* The left button is the red lead, the right one the black. */
static void
pressed_cb (GtkGestureClick *click,
            int              n,
            double           x,
            double           y,
            RwPracticeDot  *self)
{
  const guint button = gtk_gesture_single_get_current_button (GTK_GESTURE_SINGLE (click));

  gtk_widget_grab_focus (GTK_WIDGET (self));
  if (button == GDK_BUTTON_PRIMARY || button == GDK_BUTTON_SECONDARY)
    g_signal_emit (self, signals[TOUCH], 0, self->index,
                   (guint) (button == GDK_BUTTON_PRIMARY ? RW_PRACTICE_RED : RW_PRACTICE_BLACK));
}

static void
rw_practice_dot_finalize (GObject *object)
{
  g_free (RW_PRACTICE_DOT (object)->name);
  G_OBJECT_CLASS (rw_practice_dot_parent_class)->finalize (object);
}

static void
rw_practice_dot_class_init (RwPracticeDotClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = rw_practice_dot_finalize;
  signals[TOUCH] = g_signal_new ("touch", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 2,
                                 G_TYPE_UINT, G_TYPE_UINT);
  signals[CHOSEN] = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                  G_TYPE_UINT);
  gtk_widget_class_install_action (widget_class, "spot.red", NULL, touch_action);
  gtk_widget_class_install_action (widget_class, "spot.black", NULL, touch_action);
  gtk_widget_class_set_css_name (widget_class, "practicedot");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_BUTTON);
}

static void
rw_practice_dot_init (RwPracticeDot *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (click), 0);
  g_signal_connect_swapped (focus, "enter", G_CALLBACK (focus_cb), self);
  g_signal_connect (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
}

GtkWidget *
rw_practice_dot_new (guint index)
{
  RwPracticeDot *self = g_object_new (RW_TYPE_PRACTICE_DOT, NULL);

  self->index = index;
  return GTK_WIDGET (self);
}

void
rw_practice_dot_set_name (RwPracticeDot *self,
                           const char     *name)
{
  g_return_if_fail (RW_IS_PRACTICE_DOT (self));
  if (g_strcmp0 (self->name, name) == 0)
    return;
  g_free (self->name);
  self->name = g_strdup (name);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}
