/* rw-log-window.c: everything that was done on a job.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The list holds one string a landmark, its index; rows read the session when they are bound. It is filled
 * anew with each change: landmarks are few, since samples are none.
 */
#include "config.h"

#include "rw-log-window.h"

#include <glib/gi18n-lib.h>
#include <stdlib.h>

#include "rw-quantity.h"

struct _RwLogWindow
{
  GtkWindow      parent_instance;
  RwJob         *job;
  GtkStringList *rows;
  GtkWidget     *list;
};

G_DEFINE_FINAL_TYPE (RwLogWindow, rw_log_window, GTK_TYPE_WINDOW)

/* The live retract that names event @n, or 0. */
static guint
find_retract (RwSession *session,
              guint      n)
{
  for (guint i = rw_session_get_n_landmarks (session); i-- > 0;)
    {
      const guint index = rw_session_get_landmark (session, i);
      const RwEvent *event = rw_session_get_event (session, index);

      if (event->type == RW_EVENT_RETRACT && event->retract.n == n && rw_session_is_live (session, index))
        return event->n;
    }
  return 0;
}

static void
take_back_cb (GtkWidget   *button,
              RwLogWindow *self)
{
  RwSession *session = rw_job_get_session (self->job);
  const guint n = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "event"));
  const int index = rw_session_find (session, n);

  if (index < 0)
    return;
  rw_job_retract (self->job, rw_session_is_live (session, (guint) index) ? n : find_retract (session, n));
}

static void
setup_cb (GtkSignalListItemFactory *factory,
          GtkListItem              *item,
          RwLogWindow              *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *clock = gtk_label_new ("");
  GtkWidget *text = gtk_label_new ("");
  GtkWidget *button = gtk_button_new_with_label ("");

  gtk_widget_add_css_class (clock, "numeric");
  gtk_label_set_width_chars (GTK_LABEL (clock), 8);
  gtk_label_set_xalign (GTK_LABEL (clock), 1);
  gtk_label_set_xalign (GTK_LABEL (text), 0);
  gtk_label_set_ellipsize (GTK_LABEL (text), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (text, TRUE);
  gtk_widget_add_css_class (box, "log-row");
  gtk_box_append (GTK_BOX (box), clock);
  gtk_box_append (GTK_BOX (box), text);
  gtk_box_append (GTK_BOX (box), button);
  g_signal_connect (button, "clicked", G_CALLBACK (take_back_cb), self);
  gtk_list_item_set_child (item, box);
}

static void
bind_cb (GtkSignalListItemFactory *factory,
         GtkListItem              *item,
         RwLogWindow              *self)
{
  RwSession *session = rw_job_get_session (self->job);
  GtkWidget *clock = gtk_widget_get_first_child (gtk_list_item_get_child (item));
  GtkWidget *text = gtk_widget_get_next_sibling (clock);
  GtkWidget *button = gtk_widget_get_next_sibling (text);
  const guint index = (guint) atoi (gtk_string_object_get_string (gtk_list_item_get_item (item)));
  const RwEvent *event = rw_session_get_event (session, index);
  const gboolean live = rw_session_is_live (session, index);
  g_autofree char *time = rw_quantity_format_clock (event->t);
  g_autofree char *what = rw_job_describe (self->job, event);
  /* Translators: what happened; it was taken back. */
  g_autofree char *words = live ? g_strdup (what) : g_strdup_printf (_ ("%s (taken back)"), what);
  g_autofree char *label = g_strdup_printf ("%s: %s", live ? _ ("Take back") : _ ("Put back"), what);

  gtk_label_set_text (GTK_LABEL (clock), time);
  gtk_label_set_text (GTK_LABEL (text), words);
  gtk_widget_set_tooltip_text (text, words);
  gtk_button_set_label (GTK_BUTTON (button), live ? _ ("Take back") : _ ("Put back"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  g_object_set_data (G_OBJECT (button), "event", GUINT_TO_POINTER (event->n));
  gtk_widget_set_visible (button, event->type != RW_EVENT_RETRACT && rw_job_can_write (self->job));
}

static void
refill (RwLogWindow *self)
{
  RwSession *session = rw_job_get_session (self->job);

  gtk_string_list_splice (self->rows, 0, g_list_model_get_n_items (G_LIST_MODEL (self->rows)), NULL);
  for (guint i = rw_session_get_n_landmarks (session); i-- > 0;)
    {
      g_autofree char *row = g_strdup_printf ("%u", rw_session_get_landmark (session, i));

      gtk_string_list_append (self->rows, row);
    }
}

static void
rw_log_window_dispose (GObject *object)
{
  RwLogWindow *self = RW_LOG_WINDOW (object);

  g_clear_object (&self->job);
  G_OBJECT_CLASS (rw_log_window_parent_class)->dispose (object);
}

static void
rw_log_window_class_init (RwLogWindowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_log_window_dispose;
  gtk_widget_class_add_binding_action (GTK_WIDGET_CLASS (klass), GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
rw_log_window_init (RwLogWindow *self)
{
  gtk_window_set_title (GTK_WINDOW (self), _ ("What was done"));
  gtk_window_set_default_size (GTK_WINDOW (self), 560, 480);
}

/* The newest stands first, so where it all came from stands last. */
static void
add_origin (GtkWidget           *box,
            const RwSessionFrom *from)
{
  if (from == NULL)
    return;

  g_autofree char *origin = rw_session_from_describe (from);
  /* Translators: "branched from …". */
  g_autofree char *words = g_strdup_printf (_ ("This session was %s."), origin);
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_widget_set_margin_top (label, 9);
  gtk_widget_set_margin_bottom (label, 9);
  gtk_widget_set_margin_start (label, 12);
  gtk_widget_set_margin_end (label, 12);
  gtk_box_append (GTK_BOX (box), label);
}

GtkWidget *
rw_log_window_new (GtkWindow *parent,
                   RwJob     *job)
{
  RwLogWindow *self = g_object_new (RW_TYPE_LOG_WINDOW, "transient-for", parent, NULL);
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  GtkWidget *scroller = gtk_scrolled_window_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->job = g_object_ref (job);
  self->rows = gtk_string_list_new (NULL);
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), self);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), self);
  self->list = gtk_list_view_new (GTK_SELECTION_MODEL (gtk_no_selection_new (G_LIST_MODEL (self->rows))), factory);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("What was done"), -1);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), self->list);
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_box_append (GTK_BOX (box), scroller);
  add_origin (box, rw_session_get_header (rw_job_get_session (job))->from);
  gtk_window_set_child (GTK_WINDOW (self), box);
  refill (self);
  g_signal_connect_object (job, "changed", G_CALLBACK (refill), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}
