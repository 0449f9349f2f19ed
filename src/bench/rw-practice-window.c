/* rw-practice-window.c: the practice bench, in a window beside the main one.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-practice-window.h"

#include <glib/gi18n-lib.h>

#include "rw-banner.h"
#include "rw-practice-view.h"
#include "rw-window-size.h"

struct _RwPracticeWindow
{
  GtkWindow       parent_instance;
  GtkWindow      *main; /* weak */
  RwBanner       *banner;
  RwPracticeView *view;
};

enum
{
  NEW_DRILL,
  END_DRILL,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (RwPracticeWindow, rw_practice_window, GTK_TYPE_WINDOW)

/* --- keys ----------------------------------------------------------------------------------------- */

/* Of the picture, while it has the focus. */
static const struct
{
  guint      key;
  RwBenchWay way;
} arrows[] = {
  { GDK_KEY_Left, RW_BENCH_LEFT },
  { GDK_KEY_Right, RW_BENCH_RIGHT },
  { GDK_KEY_Up, RW_BENCH_UP },
  { GDK_KEY_Down, RW_BENCH_DOWN },
};

static const struct
{
  guint       key;
  const char *action;
  double      by; /* 0: no parameter */
  gboolean    picture; /* only there */
} hands[] = {
  { GDK_KEY_Return, "hands.red", 0, TRUE },
  { GDK_KEY_KP_Enter, "hands.red", 0, TRUE },
  { GDK_KEY_space, "hands.black", 0, TRUE },
  { GDK_KEY_BackSpace, "hands.off", 0, FALSE },
  { GDK_KEY_o, "hands.look", 0, FALSE },
  { GDK_KEY_z, "hands.wiggle", 0, FALSE },
  { GDK_KEY_u, "hands.listen", 0, FALSE },
  { GDK_KEY_p, "hands.power", 0, FALSE },
  { GDK_KEY_f, "hands.board", 0, FALSE },
  { GDK_KEY_bracketleft, "hands.trim", -0.01, FALSE },
  { GDK_KEY_bracketright, "hands.trim", 0.01, FALSE },
  { GDK_KEY_F2, "hands.mode", 0, FALSE },
  { GDK_KEY_F3, "hands.range", 0, FALSE },
  { GDK_KEY_F4, "hands.pass", 10, FALSE },
};

/* The same with Shift. */
static const double minute_with_shift = 1;

/* What the main window does with them. */
static const struct
{
  guint           key;
  GdkModifierType with;
  const char     *action, *parameter;
} passed_on[] = {
  { GDK_KEY_b, 0, "win.place", "board" },
  { GDK_KEY_t, 0, "win.place", "terminals" },
  { GDK_KEY_x, 0, "win.place", "chip" },
  { GDK_KEY_w, 0, "win.place", "wire" },
  { GDK_KEY_g, 0, "win.ground", NULL },
  { GDK_KEY_m, 0, "win.mark", NULL },
  { GDK_KEY_Page_Up, 0, "win.previous-rail", NULL },
  { GDK_KEY_Page_Down, 0, "win.next-rail", NULL },
  { GDK_KEY_Return, GDK_CONTROL_MASK, "win.keep-settled", NULL },
  { GDK_KEY_z, GDK_CONTROL_MASK, "win.undo", NULL },
};

static gboolean
picture_key (RwPracticeWindow *self,
             guint             key)
{
  for (guint i = 0; i < G_N_ELEMENTS (arrows); i++)
    if (arrows[i].key == key && rw_practice_view_has_picture_focus (self->view))
      {
        rw_practice_view_step (self->view, arrows[i].way);
        return TRUE;
      }
  return FALSE;
}

static gboolean
hand_key (RwPracticeWindow *self,
          guint             key,
          gboolean          shift)
{
  if (shift && key == GDK_KEY_F4)
    {
      gtk_widget_activate_action (GTK_WIDGET (self->view), "hands.pass", "d", minute_with_shift);
      return TRUE;
    }
  for (guint i = 0; i < G_N_ELEMENTS (hands); i++)
    if (hands[i].key == key && (!hands[i].picture || rw_practice_view_has_picture_focus (self->view)))
      {
        gtk_widget_activate_action_variant (GTK_WIDGET (self->view), hands[i].action,
                                            hands[i].by != 0 ? g_variant_new_double (hands[i].by) : NULL);
        return TRUE;
      }
  return FALSE;
}

static gboolean
main_key (RwPracticeWindow *self,
          guint             key,
          GdkModifierType   with)
{
  if (self->main == NULL)
    return FALSE;
  if (with == GDK_ALT_MASK && key >= GDK_KEY_1 && key <= GDK_KEY_9)
    return gtk_widget_activate_action (GTK_WIDGET (self->main), "win.rail", "i", (gint32) (key - GDK_KEY_0));
  for (guint i = 0; i < G_N_ELEMENTS (passed_on); i++)
    if (passed_on[i].key == key && passed_on[i].with == with)
      return gtk_widget_activate_action_variant (
          GTK_WIDGET (self->main), passed_on[i].action,
          passed_on[i].parameter != NULL ? g_variant_new_string (passed_on[i].parameter) : NULL);
  return FALSE;
}

static gboolean
key_cb (GtkEventControllerKey *controller,
        guint                  keyval,
        guint                  keycode,
        GdkModifierType        modifiers,
        RwPracticeWindow      *self)
{
  const GdkModifierType with = modifiers & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK);
  const guint key = gdk_keyval_to_lower (keyval);
  GtkWidget *focus = gtk_root_get_focus (GTK_ROOT (self));

  if (focus != NULL && (gtk_widget_get_ancestor (focus, GTK_TYPE_POPOVER) != NULL || GTK_IS_TEXT (focus)))
    return FALSE;
  if (key == GDK_KEY_F8 && with == 0)
    {
      g_signal_emit (self, signals[END_DRILL], 0);
      return TRUE;
    }
  if (key == GDK_KEY_F6 && with == 0 && self->main != NULL)
    {
      gtk_window_present (self->main);
      return TRUE;
    }
  if (with == 0 && (picture_key (self, key) || hand_key (self, key, (modifiers & GDK_SHIFT_MASK) != 0)))
    return TRUE;
  return main_key (self, key, with);
}

/* --- what is told --------------------------------------------------------------------------------- */

static void
warn_cb (RwPracticeWindow *self,
         const char       *text,
         gboolean          danger)
{
  rw_banner_show (self->banner, danger ? RW_BANNER_DANGER : RW_BANNER_WARNING, text, _ ("Understood"), NULL);
}

static void
response_cb (RwPracticeWindow *self)
{
  rw_banner_show (self->banner, RW_BANNER_QUIET, NULL, NULL, NULL);
  rw_practice_view_focus (self->view);
}

static void
drill_cb (RwPracticeWindow *self)
{
  g_signal_emit (self, signals[NEW_DRILL], 0);
}

static void
end_cb (RwPracticeWindow *self)
{
  g_signal_emit (self, signals[END_DRILL], 0);
}

void
rw_practice_window_set_drill (RwPracticeWindow *self,
                              gboolean          drill)
{
  g_return_if_fail (RW_IS_PRACTICE_WINDOW (self));
  rw_practice_view_set_drill (self->view, drill);
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_practice_window_dispose (GObject *object)
{
  RwPracticeWindow *self = RW_PRACTICE_WINDOW (object);

  g_clear_weak_pointer (&self->main);
  G_OBJECT_CLASS (rw_practice_window_parent_class)->dispose (object);
}

static void
rw_practice_window_class_init (RwPracticeWindowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_practice_window_dispose;
  signals[NEW_DRILL] = g_signal_new ("new-drill", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                     G_TYPE_NONE, 0);
  signals[END_DRILL] = g_signal_new ("end-drill", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                     G_TYPE_NONE, 0);
  gtk_widget_class_add_binding_action (GTK_WIDGET_CLASS (klass), GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
rw_practice_window_init (RwPracticeWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkEventController *key = gtk_event_controller_key_new ();

  self->banner = g_object_new (RW_TYPE_BANNER, NULL);
  self->view = g_object_new (RW_TYPE_PRACTICE_VIEW, "vexpand", TRUE, NULL);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->banner));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->view));
  gtk_window_set_child (GTK_WINDOW (self), box);
  rw_window_size_set (GTK_WINDOW (self), 960, 680);
  gtk_event_controller_set_propagation_phase (key, GTK_PHASE_CAPTURE);
  g_signal_connect (key, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), key);
  g_signal_connect_swapped (self->banner, "response", G_CALLBACK (response_cb), self);
  g_signal_connect_swapped (self->view, "warn", G_CALLBACK (warn_cb), self);
  g_signal_connect_swapped (self->view, "new-drill", G_CALLBACK (drill_cb), self);
  g_signal_connect_swapped (self->view, "end-drill", G_CALLBACK (end_cb), self);
  rw_banner_show (self->banner, RW_BANNER_QUIET, NULL, NULL, NULL);
}

GtkWidget *
rw_practice_window_new (GtkWindow *main,
                        RwJob     *job)
{
  g_return_val_if_fail (GTK_IS_WINDOW (main) && rw_job_get_cabinet (job) != NULL, NULL);

  RwPracticeWindow *self = g_object_new (RW_TYPE_PRACTICE_WINDOW, "application", gtk_window_get_application (main), NULL);
  /* Translators: name of a cabinet. */
  g_autofree char *title = g_strdup_printf (_ ("Practice bench: %s"),
                                            rw_practice_cabinet_get_name (rw_job_get_cabinet (job)));

  g_set_weak_pointer (&self->main, main);
  gtk_window_set_title (GTK_WINDOW (self), title);
  g_signal_connect_object (main, "destroy", G_CALLBACK (gtk_window_destroy), self, G_CONNECT_SWAPPED);
  rw_practice_view_set_job (self->view, job);
  rw_practice_view_focus (self->view);
  return GTK_WIDGET (self);
}
