/* rw-meter-lines-box.c: how a meter's lines of text are read, tried on text that it sent.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-meter-lines-box.h"

#include <glib/gi18n-lib.h>

#include "rw-compat.h"
#include "rw-meter-capture.h"
#include "rw-meter-read-lines.h"

struct _RwMeterLinesBox
{
  GtkWidget       parent_instance;
  RwMeterAddress *address;   /* (nullable) */
  GCancellable   *capturing; /* (nullable) */
  gboolean        right;
  GtkWidget      *box;
  GtkEntry       *pattern;
  GtkDropDown    *mark;
  GtkLabel       *error;
  GtkLabel       *help;
  GtkButton      *capture;
  GtkTextView    *text;
  GtkLabel       *read;
};

G_DEFINE_FINAL_TYPE (RwMeterLinesBox, rw_meter_lines_box, GTK_TYPE_WIDGET)

static const char marks[] = { '.', ',' };

/* As many seconds as a slow meter needs for some lines. */
static const guint capture_seconds = 5;

/* Of what was captured, this much is shown as read. */
static const guint most_lines = 12;

/* --- reading -------------------------------------------------------------------------------------- */

char *
rw_meter_lines_box_dup_pattern (RwMeterLinesBox *self)
{
  const char *pattern = gtk_editable_get_text (GTK_EDITABLE (self->pattern));

  return *pattern != '\0' ? g_strdup (pattern) : NULL;
}

char
rw_meter_lines_box_get_mark (RwMeterLinesBox *self)
{
  return marks[MIN (gtk_drop_down_get_selected (self->mark), G_N_ELEMENTS (marks) - 1)];
}

gboolean
rw_meter_lines_box_is_right (RwMeterLinesBox *self)
{
  return self->right;
}

static char *
dup_text (RwMeterLinesBox *self)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (self->text);
  GtkTextIter start, end;

  gtk_text_buffer_get_bounds (buffer, &start, &end);
  return gtk_text_buffer_get_text (buffer, &start, &end, FALSE);
}

static void
read_cb (RwMeterLinesBox *self)
{
  g_autofree char *text = dup_text (self);
  g_autofree char *pattern = rw_meter_lines_box_dup_pattern (self);
  g_autoptr (GError) error = NULL;
  g_autofree char *words = rw_meter_read_lines (text, pattern, rw_meter_lines_box_get_mark (self), most_lines, &error);

  self->right = words != NULL;
  gtk_label_set_text (self->error, error != NULL ? error->message : "");
  gtk_widget_set_visible (GTK_WIDGET (self->error), error != NULL);
  if (words == NULL)
    gtk_label_set_text (self->read, "");
  else
    gtk_label_set_text (self->read, *words != '\0' ? words : _ ("Paste some lines here to see what they are read as."));
}

/* --- capturing ------------------------------------------------------------------------------------ */

static void
show_capture (RwMeterLinesBox *self)
{
  gtk_button_set_label (self->capture, self->capturing != NULL ? _ ("Listening…") : _ ("Capture 5 seconds"));
  gtk_widget_set_sensitive (GTK_WIDGET (self->capture), self->address != NULL && self->capturing == NULL);
}

static void
captured_cb (GObject      *source,
             GAsyncResult *result,
             gpointer      data)
{
  g_autoptr (RwMeterLinesBox) self = data;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = rw_meter_capture_finish (result, &error);

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;
  g_clear_object (&self->capturing);
  show_capture (self);
  if (text == NULL)
    gtk_label_set_text (self->read, error->message);
  else if (*text == '\0')
    gtk_label_set_text (self->read, _ ("Nothing came. Is the meter sending, and are port and speed right?"));
  else
    gtk_text_buffer_set_text (gtk_text_view_get_buffer (self->text), text, -1);
}

static void
capture_cb (RwMeterLinesBox *self)
{
  if (self->address == NULL || self->capturing != NULL)
    return;
  self->capturing = g_cancellable_new ();
  rw_meter_capture_async (self->address, capture_seconds, self->capturing, captured_cb, g_object_ref (self));
  show_capture (self);
}

void
rw_meter_lines_box_stop (RwMeterLinesBox *self)
{
  g_cancellable_cancel (self->capturing);
  g_clear_object (&self->capturing);
  show_capture (self);
}

void
rw_meter_lines_box_set_address (RwMeterLinesBox      *self,
                                const RwMeterAddress *address)
{
  g_clear_pointer (&self->address, rw_meter_address_free);
  self->address = address != NULL ? rw_meter_address_copy (address) : NULL;
  show_capture (self);
}

/* --- the box -------------------------------------------------------------------------------------- */

void
rw_meter_lines_box_set (RwMeterLinesBox *self,
                        const char      *pattern,
                        char             mark)
{
  rw_meter_lines_box_stop (self);
  gtk_editable_set_text (GTK_EDITABLE (self->pattern), pattern != NULL ? pattern : "");
  gtk_drop_down_set_selected (self->mark, mark == ',' ? 1 : 0);
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (self->text), "", -1);
}

static gboolean
rw_meter_lines_box_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (RW_METER_LINES_BOX (widget)->pattern));
}

static void
rw_meter_lines_box_dispose (GObject *object)
{
  RwMeterLinesBox *self = RW_METER_LINES_BOX (object);

  g_cancellable_cancel (self->capturing);
  g_clear_object (&self->capturing);
  g_clear_pointer (&self->address, rw_meter_address_free);
  gtk_widget_dispose_template (GTK_WIDGET (self), RW_TYPE_METER_LINES_BOX);
  G_OBJECT_CLASS (rw_meter_lines_box_parent_class)->dispose (object);
}

static void
rw_meter_lines_box_class_init (RwMeterLinesBoxClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_meter_lines_box_dispose;
  widget_class->grab_focus = rw_meter_lines_box_grab_focus;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-meter-lines-box.ui");
  gtk_widget_class_bind_template_child (widget_class, RwMeterLinesBox, box);
  gtk_widget_class_bind_template_child (widget_class, RwMeterLinesBox, pattern);
  gtk_widget_class_bind_template_child (widget_class, RwMeterLinesBox, mark);
  gtk_widget_class_bind_template_child (widget_class, RwMeterLinesBox, error);
  gtk_widget_class_bind_template_child (widget_class, RwMeterLinesBox, help);
  gtk_widget_class_bind_template_child (widget_class, RwMeterLinesBox, capture);
  gtk_widget_class_bind_template_child (widget_class, RwMeterLinesBox, text);
  gtk_widget_class_bind_template_child (widget_class, RwMeterLinesBox, read);
}

static void
rw_meter_lines_box_init (RwMeterLinesBox *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_string_list_append (names, _ ("point"));
  gtk_string_list_append (names, _ ("comma"));
  rw_compat_name_drop_down (self->mark, _ ("Decimal mark"));
  gtk_drop_down_set_model (self->mark, G_LIST_MODEL (names));
  gtk_label_set_text (self->help,
                      /* Translators: the words in braces are typed as they are here. */
                      _ ("{number} the number; {number|FLOW} reads FLOW as overload. {unit} such as mV or VDC; {unit=mV} "
                         "when the line names none. {sign} a sign that stands apart, {mode} DC or AC: both may be missing. "
                         "{any} anything. A blank is any blanks or none; all else is itself: {any};{number};{unit}"));
  g_signal_connect_swapped (self->pattern, "changed", G_CALLBACK (read_cb), self);
  g_signal_connect_swapped (self->mark, "notify::selected", G_CALLBACK (read_cb), self);
  g_signal_connect_swapped (gtk_text_view_get_buffer (self->text), "changed", G_CALLBACK (read_cb), self);
  g_signal_connect_swapped (self->capture, "clicked", G_CALLBACK (capture_cb), self);
  show_capture (self);
  read_cb (self);
}
