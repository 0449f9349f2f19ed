/* rw-meter-hand-page.c: says by hand where a meter is and how it speaks.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-meter-hand-page.h"

#include <glib/gi18n-lib.h>

#include "rw-compat.h"
#include "rw-decoder.h"
#include "rw-meter-books.h"
#include "rw-meter-lines-box.h"
#include "rw-meter-ports.h"

struct _RwMeterHandPage
{
  GtkWidget        parent_instance;
  RwKnownMeter    *meter;   /* (nullable) the one that is changed */
  RwKnownMeter    *chosen;  /* (nullable) */
  RwSerialSettings base;    /* what the page does not ask: the control lines */
  GArray          *bauds;   /* of guint: those that are offered */
  GPtrArray       *found;   /* of RwSerialPort */
  GtkWidget       *box;
  GtkDropDown     *ports;
  GtkButton       *again;
  GtkEntry        *place;
  GtkDropDown     *format;
  GtkDropDown     *baud;
  GtkDropDown     *bits;
  GtkDropDown     *parity;
  GtkDropDown     *stop_bits;
  GtkLabel        *error;
  RwMeterLinesBox *lines;
  GtkButton       *next;
};

static guint chosen_signal;

G_DEFINE_FINAL_TYPE (RwMeterHandPage, rw_meter_hand_page, GTK_TYPE_WIDGET)

static const guint usual_bauds[] = { 600, 1200, 2400, 4800, 9600, 19200, 38400, 57600, 115200 };

static const char *
chosen_format (RwMeterHandPage *self)
{
  return rw_decoder_list_formats ()[gtk_drop_down_get_selected (self->format)];
}

static void
show_error (RwMeterHandPage *self,
            const char      *message)
{
  gtk_label_set_text (self->error, message != NULL ? message : "");
  gtk_widget_set_visible (GTK_WIDGET (self->error), message != NULL);
}

/* --- the line ------------------------------------------------------------------------------------- */

static RwSerialSettings
get_line (RwMeterHandPage *self)
{
  const guint baud = gtk_drop_down_get_selected (self->baud);
  RwSerialSettings line = self->base;

  if (baud < self->bauds->len)
    line.baud = g_array_index (self->bauds, guint, baud);
  line.bits = gtk_drop_down_get_selected (self->bits) == 0 ? 7 : 8;
  line.parity = (RwParity) MIN (gtk_drop_down_get_selected (self->parity), RW_N_PARITIES - 1);
  line.stop_bits = gtk_drop_down_get_selected (self->stop_bits) == 0 ? 1 : 2;
  return line;
}

/* The usual speeds, and @unusual when it is none of them. */
static void
offer_bauds (RwMeterHandPage *self,
             guint            unusual)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  gboolean usual = FALSE;

  g_array_set_size (self->bauds, 0);
  g_array_append_vals (self->bauds, usual_bauds, G_N_ELEMENTS (usual_bauds));
  for (guint i = 0; i < G_N_ELEMENTS (usual_bauds); i++)
    usual = usual || usual_bauds[i] == unusual;
  if (!usual)
    g_array_append_val (self->bauds, unusual);
  for (guint i = 0; i < self->bauds->len; i++)
    {
      g_autofree char *name = g_strdup_printf ("%u", g_array_index (self->bauds, guint, i));

      gtk_string_list_append (names, name);
    }
  gtk_drop_down_set_model (self->baud, G_LIST_MODEL (names));
  for (guint i = 0; i < self->bauds->len; i++)
    if (g_array_index (self->bauds, guint, i) == unusual)
      gtk_drop_down_set_selected (self->baud, i);
}

static void
show_line (RwMeterHandPage        *self,
           const RwSerialSettings *line)
{
  self->base = *line;
  offer_bauds (self, line->baud);
  gtk_drop_down_set_selected (self->bits, line->bits == 7 ? 0 : 1);
  gtk_drop_down_set_selected (self->parity, line->parity);
  gtk_drop_down_set_selected (self->stop_bits, line->stop_bits == 2 ? 1 : 0);
}

/* --- following what is chosen --------------------------------------------------------------------- */

static RwMeterAddress *
parse_place (RwMeterHandPage *self,
             GError         **error)
{
  const RwSerialSettings line = get_line (self);

  return rw_meter_address_parse (gtk_editable_get_text (GTK_EDITABLE (self->place)), &line, error);
}

/* A network has no line settings; only a place that makes sense can be captured from. */
static void
follow_place (RwMeterHandPage *self)
{
  g_autoptr (RwMeterAddress) address = parse_place (self, NULL);
  const gboolean serial = address == NULL || address->kind == RW_METER_ADDRESS_SERIAL;

  gtk_widget_set_sensitive (GTK_WIDGET (self->baud), serial);
  gtk_widget_set_sensitive (GTK_WIDGET (self->bits), serial);
  gtk_widget_set_sensitive (GTK_WIDGET (self->parity), serial);
  gtk_widget_set_sensitive (GTK_WIDGET (self->stop_bits), serial);
  rw_meter_lines_box_set_address (self->lines, address);
}

static void
place_cb (RwMeterHandPage *self)
{
  const char *typed = gtk_editable_get_text (GTK_EDITABLE (self->place));
  guint selected = 0;

  for (guint i = 0; i < self->found->len; i++)
    {
      const RwSerialPort *port = self->found->pdata[i];

      if (g_str_equal (port->name, typed) || g_str_equal (port->stable_name, typed))
        selected = i + 1;
    }
  gtk_drop_down_set_selected (self->ports, selected);
  show_error (self, NULL);
  follow_place (self);
}

static void
port_cb (RwMeterHandPage *self)
{
  const guint i = gtk_drop_down_get_selected (self->ports);
  const RwSerialPort *port = i > 0 && i <= self->found->len ? self->found->pdata[i - 1] : NULL;
  const char *typed = gtk_editable_get_text (GTK_EDITABLE (self->place));

  if (port != NULL && !g_str_equal (port->name, typed) && !g_str_equal (port->stable_name, typed))
    gtk_editable_set_text (GTK_EDITABLE (self->place), port->stable_name);
}

static void
look_again_cb (RwMeterHandPage *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  g_clear_pointer (&self->found, g_ptr_array_unref);
  self->found = rw_serial_list_ports ();
  gtk_string_list_append (names, self->found->len > 0 ? _ ("another, typed below") : _ ("no serial port: type it below"));
  for (guint i = 0; i < self->found->len; i++)
    {
      g_autofree char *name = rw_meter_ports_describe (self->found->pdata[i]);

      gtk_string_list_append (names, name);
    }
  gtk_drop_down_set_model (self->ports, G_LIST_MODEL (names));
  gtk_widget_set_sensitive (GTK_WIDGET (self->ports), self->found->len > 0);
  place_cb (self);
}

/* The line settings that meters of this format usually have. */
static void
format_cb (RwMeterHandPage *self)
{
  show_line (self, rw_decoder_get_usual_line (chosen_format (self)));
  gtk_widget_set_visible (GTK_WIDGET (self->lines), g_str_equal (chosen_format (self), "lines"));
  follow_place (self);
}

/* --- going on ------------------------------------------------------------------------------------- */

/* The meter that is changed, or the one of the book that is reached there, or a new one. (transfer full) */
static RwKnownMeter *
begin_meter (RwMeterHandPage      *self,
             const RwMeterAddress *address)
{
  RwMeterBook *book = rw_meter_books_get_default ();
  const RwKnownMeter *known = self->meter != NULL
                                  ? self->meter
                                  : rw_meter_books_find_same (address, chosen_format (self), NULL);

  if (known != NULL)
    return rw_known_meter_copy (known);

  g_autofree char *id = rw_meter_book_make_id (book);
  g_autoptr (RwMeterFacts) facts = rw_meter_facts_new (id, "", 0, 0);

  return rw_known_meter_new (facts);
}

static void
next_cb (RwMeterHandPage *self)
{
  g_autoptr (GError) error = NULL;
  RwMeterAddress *address = parse_place (self, &error);
  const gboolean lines = g_str_equal (chosen_format (self), "lines");

  show_error (self, error != NULL ? error->message : NULL);
  if (address == NULL)
    {
      gtk_widget_grab_focus (GTK_WIDGET (self->place));
      return;
    }
  if (lines && !rw_meter_lines_box_is_right (self->lines))
    {
      rw_meter_address_free (address);
      gtk_widget_grab_focus (GTK_WIDGET (self->lines));
      return;
    }
  g_clear_pointer (&self->chosen, rw_known_meter_free);
  self->chosen = begin_meter (self, address);
  g_clear_pointer (&self->chosen->address, rw_meter_address_free);
  self->chosen->address = address;
  g_free (self->chosen->format);
  self->chosen->format = g_strdup (chosen_format (self));
  g_free (self->chosen->pattern);
  self->chosen->pattern = lines ? rw_meter_lines_box_dup_pattern (self->lines) : NULL;
  self->chosen->mark = lines ? rw_meter_lines_box_get_mark (self->lines) : '.';
  g_signal_emit (self, chosen_signal, 0);
}

RwKnownMeter *
rw_meter_hand_page_dup_chosen (RwMeterHandPage *self)
{
  return self->chosen != NULL ? rw_known_meter_copy (self->chosen) : NULL;
}

/* --- the page ------------------------------------------------------------------------------------- */

static void
show_meter (RwMeterHandPage    *self,
            const RwKnownMeter *meter)
{
  const char *const *ids = rw_decoder_list_formats ();
  const RwMeterAddress *address = meter->address;

  for (guint i = 0; ids[i] != NULL; i++)
    if (g_strcmp0 (ids[i], meter->format) == 0)
      gtk_drop_down_set_selected (self->format, i);
  format_cb (self);
  if (address == NULL)
    return;
  if (address->kind == RW_METER_ADDRESS_SERIAL)
    {
      show_line (self, &address->line);
      gtk_editable_set_text (GTK_EDITABLE (self->place), address->port);
    }
  else
    {
      g_autofree char *words = rw_meter_address_to_words (address);

      gtk_editable_set_text (GTK_EDITABLE (self->place), words);
    }
}

void
rw_meter_hand_page_start (RwMeterHandPage    *self,
                          const RwKnownMeter *meter)
{
  g_clear_pointer (&self->meter, rw_known_meter_free);
  gtk_editable_set_text (GTK_EDITABLE (self->place), "");
  look_again_cb (self);
  if (meter != NULL)
    {
      self->meter = rw_known_meter_copy (meter);
      show_meter (self, meter);
      rw_meter_lines_box_set (self->lines, meter->pattern, meter->mark);
      return;
    }
  format_cb (self);
  if (self->found->len > 0)
    gtk_drop_down_set_selected (self->ports, 1);
  rw_meter_lines_box_set (self->lines, NULL, '.');
}

void
rw_meter_hand_page_stop (RwMeterHandPage *self)
{
  rw_meter_lines_box_stop (self->lines);
}

static gboolean
rw_meter_hand_page_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (RW_METER_HAND_PAGE (widget)->place));
}

static void
rw_meter_hand_page_dispose (GObject *object)
{
  RwMeterHandPage *self = RW_METER_HAND_PAGE (object);

  g_clear_pointer (&self->meter, rw_known_meter_free);
  g_clear_pointer (&self->chosen, rw_known_meter_free);
  gtk_widget_dispose_template (GTK_WIDGET (self), RW_TYPE_METER_HAND_PAGE);
  G_OBJECT_CLASS (rw_meter_hand_page_parent_class)->dispose (object);
}

static void
rw_meter_hand_page_finalize (GObject *object)
{
  RwMeterHandPage *self = RW_METER_HAND_PAGE (object);

  g_array_unref (self->bauds);
  g_ptr_array_unref (self->found);
  G_OBJECT_CLASS (rw_meter_hand_page_parent_class)->finalize (object);
}

static void
rw_meter_hand_page_class_init (RwMeterHandPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (RW_TYPE_METER_LINES_BOX);
  G_OBJECT_CLASS (klass)->dispose = rw_meter_hand_page_dispose;
  G_OBJECT_CLASS (klass)->finalize = rw_meter_hand_page_finalize;
  widget_class->grab_focus = rw_meter_hand_page_grab_focus;
  chosen_signal = g_signal_new ("chosen", RW_TYPE_METER_HAND_PAGE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-meter-hand-page.ui");
  gtk_widget_class_bind_template_child (widget_class, RwMeterHandPage, box);
  gtk_widget_class_bind_template_child (widget_class, RwMeterHandPage, ports);
  gtk_widget_class_bind_template_child (widget_class, RwMeterHandPage, again);
  gtk_widget_class_bind_template_child (widget_class, RwMeterHandPage, place);
  gtk_widget_class_bind_template_child (widget_class, RwMeterHandPage, format);
  gtk_widget_class_bind_template_child (widget_class, RwMeterHandPage, baud);
  gtk_widget_class_bind_template_child (widget_class, RwMeterHandPage, bits);
  gtk_widget_class_bind_template_child (widget_class, RwMeterHandPage, parity);
  gtk_widget_class_bind_template_child (widget_class, RwMeterHandPage, stop_bits);
  gtk_widget_class_bind_template_child (widget_class, RwMeterHandPage, error);
  gtk_widget_class_bind_template_child (widget_class, RwMeterHandPage, lines);
  gtk_widget_class_bind_template_child (widget_class, RwMeterHandPage, next);
}

/* @names: NULL-terminated. */
static void
fill (GtkDropDown       *drop,
      const char        *label,
      const char *const *names)
{
  g_autoptr (GtkStringList) list = gtk_string_list_new (names);

  rw_compat_name_drop_down (drop, label);
  gtk_drop_down_set_model (drop, G_LIST_MODEL (list));
}

static void
fill_choices (RwMeterHandPage *self)
{
  const char *const *ids = rw_decoder_list_formats ();
  g_autoptr (GtkStringList) formats = gtk_string_list_new (NULL);

  for (guint i = 0; ids[i] != NULL; i++)
    {
      g_autofree char *name = g_strdup_printf ("%s · %s", ids[i], rw_decoder_get_title (ids[i]));

      gtk_string_list_append (formats, name);
    }
  gtk_drop_down_set_model (self->format, G_LIST_MODEL (formats));
  rw_compat_name_drop_down (self->format, _ ("Format of the meter"));
  rw_compat_name_drop_down (self->ports, _ ("Ports found here"));
  rw_compat_name_drop_down (self->baud, _ ("Bits a second"));
  fill (self->bits, _ ("Data bits"), (const char *const[]){ "7", "8", NULL });
  fill (self->parity, _ ("Parity"), (const char *const[]){ _ ("none"), _ ("odd"), _ ("even"), NULL });
  fill (self->stop_bits, _ ("Stop bits"), (const char *const[]){ "1", "2", NULL });
}

static void
rw_meter_hand_page_init (RwMeterHandPage *self)
{
  self->found = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_serial_port_free);
  self->bauds = g_array_new (FALSE, FALSE, sizeof (guint));
  gtk_widget_init_template (GTK_WIDGET (self));
  fill_choices (self);
  format_cb (self);

  GtkDropDown *const line[] = { self->baud, self->bits, self->parity, self->stop_bits };

  for (guint i = 0; i < G_N_ELEMENTS (line); i++)
    g_signal_connect_swapped (line[i], "notify::selected", G_CALLBACK (follow_place), self);
  g_signal_connect_swapped (self->ports, "notify::selected", G_CALLBACK (port_cb), self);
  g_signal_connect_swapped (self->place, "changed", G_CALLBACK (place_cb), self);
  g_signal_connect_swapped (self->format, "notify::selected", G_CALLBACK (format_cb), self);
  g_signal_connect_swapped (self->again, "clicked", G_CALLBACK (look_again_cb), self);
  g_signal_connect_swapped (self->next, "clicked", G_CALLBACK (next_cb), self);
}
