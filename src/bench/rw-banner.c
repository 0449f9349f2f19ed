/* rw-banner.c: a quiet bar with one sentence.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-banner.h"

struct _RwBanner
{
  GtkWidget  parent_instance;
  GtkWidget *box;
  GtkWidget *text;
  GtkWidget *first;
  GtkWidget *second;
};

static guint response_signal;

G_DEFINE_FINAL_TYPE (RwBanner, rw_banner, GTK_TYPE_WIDGET)

static const char *const style_classes[] = { "quiet-banner", "warning-banner", "danger-banner" };

static void
set_button (GtkWidget  *button,
            const char *label)
{
  gtk_button_set_label (GTK_BUTTON (button), label != NULL ? label : "");
  gtk_widget_set_visible (button, label != NULL);
}

void
rw_banner_show (RwBanner     *self,
                RwBannerStyle style,
                const char   *text,
                const char   *first,
                const char   *second)
{
  g_return_if_fail (RW_IS_BANNER (self));
  for (guint i = 0; i < G_N_ELEMENTS (style_classes); i++)
    gtk_widget_remove_css_class (GTK_WIDGET (self), style_classes[i]);
  gtk_widget_add_css_class (GTK_WIDGET (self), style_classes[style]);
  gtk_label_set_text (GTK_LABEL (self->text), text != NULL ? text : "");
  set_button (self->first, first);
  set_button (self->second, second);
  gtk_widget_set_visible (GTK_WIDGET (self), text != NULL);
}

static void
first_cb (RwBanner *self)
{
  g_signal_emit (self, response_signal, 0, TRUE);
}

static void
second_cb (RwBanner *self)
{
  g_signal_emit (self, response_signal, 0, FALSE);
}

static void
rw_banner_dispose (GObject *object)
{
  RwBanner *self = RW_BANNER (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS (rw_banner_parent_class)->dispose (object);
}

static void
rw_banner_class_init (RwBannerClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_banner_dispose;
  response_signal = g_signal_new ("response", RW_TYPE_BANNER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 1, G_TYPE_BOOLEAN);
  gtk_widget_class_set_css_name (widget_class, "banner");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_ALERT);
}

static void
rw_banner_init (RwBanner *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  self->text = gtk_label_new ("");
  self->first = gtk_button_new_with_label ("");
  self->second = gtk_button_new_with_label ("");
  gtk_label_set_wrap (GTK_LABEL (self->text), TRUE);
  gtk_label_set_xalign (GTK_LABEL (self->text), 0);
  gtk_widget_set_hexpand (self->text, TRUE);
  gtk_widget_set_valign (self->first, GTK_ALIGN_CENTER);
  gtk_widget_set_valign (self->second, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (self->box), self->text);
  gtk_box_append (GTK_BOX (self->box), self->first);
  gtk_box_append (GTK_BOX (self->box), self->second);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
  g_signal_connect_swapped (self->first, "clicked", G_CALLBACK (first_cb), self);
  g_signal_connect_swapped (self->second, "clicked", G_CALLBACK (second_cb), self);
}
