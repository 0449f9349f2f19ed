/* rw-meter-window.c: plugs a meter in.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-meter-window.h"

#include <glib/gi18n-lib.h>

#include "rw-compat.h"
#include "rw-link-serial.h"
#include "rw-serial-list.h"

struct _RwMeterWindow
{
  GtkWindow    parent_instance;
  RwJob       *job;
  GSettings   *settings; /* (nullable) */
  GPtrArray   *found;    /* of RwSerialPort */
  GtkDropDown *ports;
  GtkButton   *again;
  GtkEntry    *port;
  GtkDropDown *format;
  GtkDropDown *baud;
  GtkDropDown *frame;
  GtkLabel    *words;
  GtkButton   *stop;
  GtkButton   *close;
  GtkButton   *start;
};

G_DEFINE_FINAL_TYPE (RwMeterWindow, rw_meter_window, GTK_TYPE_WINDOW)

static const guint bauds[] = { 600, 1200, 2400, 4800, 9600, 19200, 38400, 57600, 115200 };

static const struct
{
  const char *name;
  guint       bits;
  RwParity    parity;
  guint       stop_bits;
} frames[] = {
  { "8N1", 8, RW_PARITY_NONE, 1 },
  { "7O1", 7, RW_PARITY_ODD, 1 },
  { "7E1", 7, RW_PARITY_EVEN, 1 },
  { "7N2", 7, RW_PARITY_NONE, 2 },
};

static void
port_cb (RwMeterWindow *self)
{
  const guint i = gtk_drop_down_get_selected (self->ports);

  if (i < self->found->len)
    gtk_editable_set_text (GTK_EDITABLE (self->port), ((RwSerialPort *) self->found->pdata[i])->stable_name);
}

static void
look_again_cb (RwMeterWindow *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  g_clear_pointer (&self->found, g_ptr_array_unref);
  self->found = rw_serial_list_ports ();
  for (guint i = 0; i < self->found->len; i++)
    {
      const RwSerialPort *port = self->found->pdata[i];
      g_autofree char *name = g_strdup_printf ("%s · %s", port->name, port->description);

      gtk_string_list_append (names, name);
    }
  if (self->found->len == 0)
    gtk_string_list_append (names, _ ("no serial port found"));
  gtk_drop_down_set_model (self->ports, G_LIST_MODEL (names));
  gtk_widget_set_sensitive (GTK_WIDGET (self->ports), self->found->len > 0);
}

static const char *
chosen_format (RwMeterWindow *self)
{
  return rw_decoder_list_formats ()[gtk_drop_down_get_selected (self->format)];
}

/* The line settings that meters of this format usually have. */
static void
format_cb (RwMeterWindow *self)
{
  const RwSerialSettings *usual = rw_decoder_get_usual_line (chosen_format (self));

  for (guint i = 0; i < G_N_ELEMENTS (bauds); i++)
    if (bauds[i] == usual->baud)
      gtk_drop_down_set_selected (self->baud, i);
  for (guint i = 0; i < G_N_ELEMENTS (frames); i++)
    if (frames[i].bits == usual->bits && frames[i].parity == usual->parity
        && frames[i].stop_bits == usual->stop_bits)
      gtk_drop_down_set_selected (self->frame, i);
}

/* The port, format and speed that were used last. */
static void
recall (RwMeterWindow *self)
{
  g_autofree char *port = g_settings_get_string (self->settings, "serial-port");
  g_autofree char *format = g_settings_get_string (self->settings, "serial-format");
  const guint baud = (guint) g_settings_get_int (self->settings, "serial-baud");
  const char *const *ids = rw_decoder_list_formats ();

  if (*port == '\0')
    return;
  gtk_editable_set_text (GTK_EDITABLE (self->port), port);
  for (guint i = 0; ids[i] != NULL; i++)
    if (g_str_equal (ids[i], format))
      gtk_drop_down_set_selected (self->format, i);
  for (guint i = 0; i < G_N_ELEMENTS (bauds); i++)
    if (bauds[i] == baud)
      gtk_drop_down_set_selected (self->baud, i);
}

static void
words_cb (RwMeterWindow *self)
{
  const char *words = rw_job_get_link_words (self->job);

  gtk_label_set_text (self->words, words != NULL ? words
                                                 : _ ("Values go to the rail and place that are chosen in the window. "
                                                      "Power the meter from its battery only."));
  gtk_widget_set_sensitive (GTK_WIDGET (self->stop), words != NULL);
}

static void
start_cb (RwMeterWindow *self)
{
  const char *port = gtk_editable_get_text (GTK_EDITABLE (self->port));
  const char *format = chosen_format (self);
  RwSerialSettings line = *rw_decoder_get_usual_line (format);
  const guint frame = MIN (gtk_drop_down_get_selected (self->frame), G_N_ELEMENTS (frames) - 1);

  if (*port == '\0')
    {
      gtk_label_set_text (self->words, _ ("Choose or type the port that the meter is on."));
      return;
    }
  line.baud = bauds[MIN (gtk_drop_down_get_selected (self->baud), G_N_ELEMENTS (bauds) - 1)];
  line.bits = frames[frame].bits;
  line.parity = frames[frame].parity;
  line.stop_bits = frames[frame].stop_bits;
  if (self->settings != NULL)
    {
      g_settings_set_string (self->settings, "serial-port", port);
      g_settings_set_string (self->settings, "serial-format", format);
      g_settings_set_int (self->settings, "serial-baud", (int) line.baud);
    }
  rw_job_set_link (self->job, rw_link_serial_new (port, &line, rw_decoder_new (format)));
}

static void
stop_cb (RwMeterWindow *self)
{
  rw_job_set_link (self->job, NULL);
}

static void
rw_meter_window_dispose (GObject *object)
{
  RwMeterWindow *self = RW_METER_WINDOW (object);

  g_clear_object (&self->job);
  g_clear_object (&self->settings);
  g_clear_pointer (&self->found, g_ptr_array_unref);
  gtk_widget_dispose_template (GTK_WIDGET (self), RW_TYPE_METER_WINDOW);
  G_OBJECT_CLASS (rw_meter_window_parent_class)->dispose (object);
}

static void
rw_meter_window_class_init (RwMeterWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_meter_window_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-meter-window.ui");
  gtk_widget_class_bind_template_child (widget_class, RwMeterWindow, ports);
  gtk_widget_class_bind_template_child (widget_class, RwMeterWindow, again);
  gtk_widget_class_bind_template_child (widget_class, RwMeterWindow, port);
  gtk_widget_class_bind_template_child (widget_class, RwMeterWindow, format);
  gtk_widget_class_bind_template_child (widget_class, RwMeterWindow, baud);
  gtk_widget_class_bind_template_child (widget_class, RwMeterWindow, frame);
  gtk_widget_class_bind_template_child (widget_class, RwMeterWindow, words);
  gtk_widget_class_bind_template_child (widget_class, RwMeterWindow, stop);
  gtk_widget_class_bind_template_child (widget_class, RwMeterWindow, close);
  gtk_widget_class_bind_template_child (widget_class, RwMeterWindow, start);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
fill_choices (RwMeterWindow *self)
{
  g_autoptr (GtkStringList) formats = gtk_string_list_new (NULL);
  g_autoptr (GtkStringList) baud_names = gtk_string_list_new (NULL);
  g_autoptr (GtkStringList) frame_names = gtk_string_list_new (NULL);
  const char *const *ids = rw_decoder_list_formats ();

  for (guint i = 0; ids[i] != NULL; i++)
    {
      g_autofree char *name = g_strdup_printf ("%s · %s", ids[i], rw_decoder_get_title (ids[i]));

      gtk_string_list_append (formats, name);
    }
  for (guint i = 0; i < G_N_ELEMENTS (bauds); i++)
    {
      g_autofree char *name = g_strdup_printf ("%u", bauds[i]);

      gtk_string_list_append (baud_names, name);
    }
  for (guint i = 0; i < G_N_ELEMENTS (frames); i++)
    gtk_string_list_append (frame_names, frames[i].name);
  rw_compat_name_drop_down (self->ports, _ ("Ports found here"));
  rw_compat_name_drop_down (self->format, _ ("Format of the meter"));
  rw_compat_name_drop_down (self->baud, _ ("Bits a second"));
  rw_compat_name_drop_down (self->frame, _ ("Data bits, parity, stop bits"));
  gtk_drop_down_set_model (self->format, G_LIST_MODEL (formats));
  gtk_drop_down_set_model (self->baud, G_LIST_MODEL (baud_names));
  gtk_drop_down_set_model (self->frame, G_LIST_MODEL (frame_names));
}

static void
rw_meter_window_init (RwMeterWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->found = g_ptr_array_new ();
  fill_choices (self);
  format_cb (self);
  g_signal_connect_swapped (self->ports, "notify::selected", G_CALLBACK (port_cb), self);
  g_signal_connect_swapped (self->format, "notify::selected", G_CALLBACK (format_cb), self);
  g_signal_connect_swapped (self->again, "clicked", G_CALLBACK (look_again_cb), self);
  g_signal_connect_swapped (self->start, "clicked", G_CALLBACK (start_cb), self);
  g_signal_connect_swapped (self->stop, "clicked", G_CALLBACK (stop_cb), self);
}

GtkWidget *
rw_meter_window_new (GtkWindow *parent,
                     RwJob     *job,
                     GSettings *settings)
{
  RwMeterWindow *self = g_object_new (RW_TYPE_METER_WINDOW, "transient-for", parent, NULL);

  self->job = g_object_ref (job);
  g_set_object (&self->settings, settings);
  look_again_cb (self);
  port_cb (self);
  if (settings != NULL)
    recall (self);
  g_signal_connect_object (job, "link", G_CALLBACK (words_cb), self, G_CONNECT_SWAPPED);
  words_cb (self);
  return GTK_WIDGET (self);
}
