/* rw-main-window-keys.c: keys without a modifier, while no text field has the focus.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The reading entry is half a text field: it takes digits, signs and units, so the letters that no unit
 * begins with mean the same there as anywhere (B and T choose the place), and while it is empty the other
 * keys do too. Lists, drop-downs and popovers keep their own keys.
 */
#include "config.h"

#include "rw-main-window-private.h"

#include <string.h>

/* key, action, its string parameter or NULL, and whether it works in a filled entry */
static const struct
{
  guint       key;
  const char *action;
  const char *parameter;
  gboolean    while_typing;
} keys[] = {
  { GDK_KEY_b, "win.place", "board", TRUE },
  { GDK_KEY_t, "win.place", "terminals", TRUE },
  { GDK_KEY_x, "win.place", "chip", TRUE },
  { GDK_KEY_w, "win.place", "wire", TRUE },
  { GDK_KEY_g, "win.ground", NULL, TRUE },
  { GDK_KEY_m, "win.mark", NULL, FALSE },
  { GDK_KEY_n, "win.note", NULL, FALSE },
  { GDK_KEY_s, "win.symptoms", NULL, FALSE },
  { GDK_KEY_c, "win.take-check", NULL, FALSE },
  { GDK_KEY_i, "win.take-other", NULL, FALSE },
  { GDK_KEY_j, "win.take-second-other", NULL, FALSE },
  { GDK_KEY_q, "win.ask-another", NULL, FALSE },
  { GDK_KEY_r, "win.trim-turned", NULL, FALSE },
  { GDK_KEY_p, "win.toggle-power", NULL, FALSE },
  { GDK_KEY_f, "win.toggle-board", NULL, FALSE },
  { GDK_KEY_h, "win.toggle-warm", NULL, FALSE },
  { GDK_KEY_l, "win.log", NULL, FALSE },
  { GDK_KEY_v, "win.other-chart", NULL, FALSE },
  { GDK_KEY_k, "win.hands-free", NULL, FALSE },
  { GDK_KEY_y, "win.answer-first", NULL, FALSE },
  { GDK_KEY_e, "win.answer-second", NULL, FALSE },
  { GDK_KEY_u, "win.other-side", NULL, FALSE },
  { GDK_KEY_o, "win.stage-on", NULL, FALSE },
  { GDK_KEY_d, "win.big-view", NULL, FALSE },
  { GDK_KEY_a, "win.sound", NULL, FALSE },
  { GDK_KEY_z, "win.watch", NULL, FALSE },
};

typedef enum
{
  FOCUS_FREE,    /* nothing that wants letters */
  FOCUS_ENTRY,   /* the reading entry */
  FOCUS_TAKEN,   /* a text field, a list, a popover */
} Focus;

static Focus
find_focus (RwMainWindow *self)
{
  GtkWidget *focus = gtk_root_get_focus (GTK_ROOT (self));

  if (focus == NULL)
    return FOCUS_FREE;
  if (rw_entry_row_has_focus (self->entry))
    return FOCUS_ENTRY;
  if (GTK_IS_TEXT (focus) || GTK_IS_TEXT_VIEW (focus)
      || gtk_widget_get_ancestor (focus, GTK_TYPE_LIST_VIEW) != NULL
      || gtk_widget_get_ancestor (focus, GTK_TYPE_POPOVER) != NULL)
    return FOCUS_TAKEN;
  return FOCUS_FREE;
}

static gboolean
is_key_widget (GtkWidget *focus)
{
  return GTK_IS_BUTTON (focus) || GTK_IS_MENU_BUTTON (focus) || GTK_IS_DROP_DOWN (focus) || GTK_IS_RANGE (focus)
         || (focus != NULL && gtk_widget_get_ancestor (focus, GTK_TYPE_DROP_DOWN) != NULL)
         || (focus != NULL && gtk_widget_get_ancestor (focus, GTK_TYPE_MENU_BUTTON) != NULL);
}

static void
activate (RwMainWindow *self,
          const char   *action,
          const char   *parameter)
{
  gtk_widget_activate_action_variant (GTK_WIDGET (self), action,
                                      parameter != NULL ? g_variant_new_string (parameter) : NULL);
}

static gboolean
letter_key (RwMainWindow *self,
            guint         keyval,
            gboolean      typing)
{
  const guint lower = gdk_keyval_to_lower (keyval);

  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    if (keys[i].key == lower && (!typing || keys[i].while_typing))
      {
        activate (self, keys[i].action, keys[i].parameter);
        return TRUE;
      }
  return FALSE;
}

/* Digits and signs start an entry wherever the focus is. */
static gboolean
number_key (RwMainWindow *self,
            guint         keyval)
{
  const gunichar c = gdk_keyval_to_unicode (keyval);
  char text[7] = { 0 };

  if (c == 0 || (!g_unichar_isdigit (c) && (c >= 0x80 ? c != 0x2212 : strchr ("+-.,", (int) c) == NULL)))
    return FALSE;
  g_unichar_to_utf8 (c, text);
  rw_entry_row_start (self->entry, text);
  return TRUE;
}

static gboolean
trim_key (RwMainWindow *self,
          guint         keyval)
{
  if (rw_job_get_cabinet (self->job) == NULL || (keyval != GDK_KEY_bracketleft && keyval != GDK_KEY_bracketright))
    return FALSE;
  gtk_widget_activate_action (GTK_WIDGET (self), "win.trim", "d", keyval == GDK_KEY_bracketleft ? -0.01 : 0.01);
  return TRUE;
}

static gboolean
replay_key (RwMainWindow *self,
            guint         keyval)
{
  GtkWidget *focus = gtk_root_get_focus (GTK_ROOT (self));

  if (rw_job_get_replay (self->job) == NULL)
    return FALSE;
  if (keyval == GDK_KEY_space && !is_key_widget (focus))
    activate (self, "win.play", NULL);
  else if (keyval == GDK_KEY_comma)
    activate (self, "win.step-back", NULL);
  else if (keyval == GDK_KEY_period)
    activate (self, "win.step-forward", NULL);
  else if (keyval == GDK_KEY_plus)
    activate (self, "win.faster", NULL);
  else if (keyval == GDK_KEY_minus)
    activate (self, "win.slower", NULL);
  else
    return FALSE;
  return TRUE;
}

static gboolean
rail_key (RwMainWindow *self,
          guint         keyval,
          Focus         focus)
{
  if (focus == FOCUS_FREE && is_key_widget (gtk_root_get_focus (GTK_ROOT (self))))
    return FALSE;
  if (keyval == GDK_KEY_Up || keyval == GDK_KEY_Down)
    activate (self, keyval == GDK_KEY_Down ? "win.next-rail" : "win.previous-rail", NULL);
  else
    return FALSE;
  return TRUE;
}

static gboolean
space_key (RwMainWindow *self,
           guint         keyval,
           Focus         focus)
{
  if (keyval != GDK_KEY_space || (focus == FOCUS_ENTRY && !rw_entry_row_is_empty (self->entry))
      || is_key_widget (gtk_root_get_focus (GTK_ROOT (self))))
    return FALSE;
  activate (self, "win.keep-settled", NULL);
  return TRUE;
}

static gboolean
key_cb (GtkEventControllerKey *controller,
        guint                  keyval,
        guint                  keycode,
        GdkModifierType        modifiers,
        RwMainWindow          *self)
{
  const Focus focus = find_focus (self);
  const gboolean typing = focus == FOCUS_ENTRY && !rw_entry_row_is_empty (self->entry);

  rw_main_window_update_actions (self);
  if (self->job == NULL || focus == FOCUS_TAKEN
      || (modifiers & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK)) != 0)
    return FALSE;
  if (replay_key (self, keyval))
    return TRUE;
  if (!rw_job_can_write (self->job))
    return letter_key (self, keyval, FALSE); /* actions that would write are disabled */
  return rail_key (self, keyval, focus) || space_key (self, keyval, focus) || trim_key (self, keyval)
         || letter_key (self, keyval, typing) || (focus == FOCUS_FREE && number_key (self, keyval));
}

void
rw_main_window_add_keys (RwMainWindow *self)
{
  GtkEventController *key = gtk_event_controller_key_new ();

  gtk_event_controller_set_propagation_phase (key, GTK_PHASE_CAPTURE);
  g_signal_connect (key, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), key);
}
