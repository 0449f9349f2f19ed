/* rw-meter-find-page.c: finds the meter.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The job goes on reading while a search runs, so the ports that it reads are left out, and the page says so.
 */
#include "config.h"

#include "rw-meter-find-page.h"

#include <glib/gi18n-lib.h>

#include "rw-meter-books.h"
#include "rw-meter-finder.h"
#include "rw-meter-found-card.h"
#include "rw-meter-ports.h"

struct _RwMeterFindPage
{
  GtkWidget       parent_instance;
  RwJob          *job;
  RwMeterFinder  *finder;
  GPtrArray      *free_ports; /* of char *: to be tried */
  guint           chosen;
  GtkWidget      *box;
  GtkLabel       *ports;
  GtkEntry       *also;
  GtkLabel       *error;
  GtkProgressBar *progress;
  GtkLabel       *words;
  GtkWidget      *found;
  GtkButton      *search;
};

static guint chosen_signal;

G_DEFINE_FINAL_TYPE (RwMeterFindPage, rw_meter_find_page, GTK_TYPE_WIDGET)

/* --- which ports ---------------------------------------------------------------------------------- */

static void
look_at_ports (RwMeterFindPage *self)
{
  g_autoptr (GPtrArray) all = rw_serial_list_ports ();
  g_autoptr (GString) names = g_string_new (NULL);
  GString *text = g_string_new (NULL);

  g_ptr_array_set_size (self->free_ports, 0);
  for (guint i = 0; i < all->len; i++)
    {
      const RwSerialPort *port = all->pdata[i];
      const char *user = rw_meter_ports_find_user (self->job, port->name);
      g_autofree char *described = rw_meter_ports_describe (port);

      if (user != NULL)
        /* Translators: port, name of the meter that is on it. */
        g_string_append_printf (text, _ (" %s is left out: this job reads “%s” there."), described, user);
      else
        {
          g_ptr_array_add (self->free_ports, g_strdup (port->stable_name));
          g_string_append_printf (names, "%s%s", names->len > 0 ? ", " : "", described);
        }
    }
  if (names->len > 0)
    {
      /* Translators: a list of ports. */
      g_autofree char *will = g_strdup_printf (_ ("Ports that will be tried: %s."), names->str);

      g_string_prepend (text, will);
    }
  else
    g_string_prepend (text, _ ("No free serial port is there. Plug the meter's cable in, or type where the meter is."));
  gtk_label_set_text (self->ports, text->str);
  g_string_free (text, TRUE);
}

static void
show_error (RwMeterFindPage *self,
            const char      *message)
{
  gtk_label_set_text (self->error, message != NULL ? message : "");
  gtk_widget_set_visible (GTK_WIDGET (self->error), message != NULL);
}

/* Adds what was typed to the ports or the hosts. FALSE: it is said why that cannot be. */
static gboolean
take_typed (RwMeterFindPage *self,
            GPtrArray       *ports,
            GPtrArray       *hosts)
{
  const char *typed = gtk_editable_get_text (GTK_EDITABLE (self->also));
  g_autoptr (GError) error = NULL;

  show_error (self, NULL);
  if (*typed == '\0')
    return TRUE;

  g_autoptr (RwMeterAddress) address = rw_meter_address_parse (typed, NULL, &error);
  const char *user = address != NULL ? rw_meter_ports_find_user_at (self->job, address) : NULL;

  if (user != NULL)
    error = g_error_new (RW_PORT_ERROR, RW_PORT_ERROR_REFUSED,
                         /* Translators: name of a meter. */
                         _ ("This job reads “%s” there. Let it go first, or leave the field empty."), user);
  if (error != NULL)
    {
      show_error (self, error->message);
      gtk_widget_grab_focus (GTK_WIDGET (self->also));
      return FALSE;
    }
  if (address->kind == RW_METER_ADDRESS_TCP)
    g_ptr_array_add (hosts, g_steal_pointer (&address));
  else if (!g_ptr_array_find_with_equal_func (ports, address->port, g_str_equal, NULL))
    g_ptr_array_add (ports, g_strdup (address->port));
  return TRUE;
}

/* --- searching ------------------------------------------------------------------------------------ */

/* Only one button is the one to press next: a meter that was found comes before another search. */
static void
show_running (RwMeterFindPage *self)
{
  const gboolean running = rw_meter_finder_is_running (self->finder);

  gtk_widget_set_visible (GTK_WIDGET (self->progress), running);
  gtk_button_set_label (self->search, running ? _ ("Stop") : _ ("Search"));
  gtk_widget_set_sensitive (GTK_WIDGET (self->also), !running);
  if (gtk_widget_get_first_child (self->found) != NULL)
    gtk_widget_remove_css_class (GTK_WIDGET (self->search), "suggested-action");
  else
    gtk_widget_add_css_class (GTK_WIDGET (self->search), "suggested-action");
}

static void
clear_found (RwMeterFindPage *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->found)) != NULL)
    gtk_box_remove (GTK_BOX (self->found), child);
}

static void
progress_cb (RwMeterFindPage *self,
             double           share,
             const char      *words)
{
  gtk_progress_bar_set_fraction (self->progress, CLAMP (share, 0, 1));
  gtk_label_set_text (self->words, words);
}

static void
done_cb (RwMeterFindPage *self)
{
  g_autofree char *outcome = rw_meter_finder_describe (self->finder);

  clear_found (self);
  for (guint i = 0; i < rw_meter_finder_get_n_found (self->finder); i++)
    gtk_box_append (GTK_BOX (self->found),
                    rw_meter_found_card_new (rw_meter_finder_get_found (self->finder, i), i));
  gtk_label_set_text (self->words, outcome);
  show_running (self);
  if (gtk_widget_get_first_child (self->found) != NULL)
    gtk_widget_child_focus (self->found, GTK_DIR_TAB_FORWARD);
}

static void
search (RwMeterFindPage *self)
{
  g_autoptr (GPtrArray) ports = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) hosts = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_meter_address_free);

  for (guint i = 0; i < self->free_ports->len; i++)
    g_ptr_array_add (ports, g_strdup (self->free_ports->pdata[i]));
  if (!take_typed (self, ports, hosts))
    return;
  if (ports->len == 0 && hosts->len == 0)
    {
      show_error (self, _ ("There is nothing to try yet. Plug the meter's cable in, or type where the meter is."));
      return;
    }
  clear_found (self);
  gtk_progress_bar_set_fraction (self->progress, 0);
  gtk_label_set_text (self->words, _ ("Searching…"));
  rw_meter_finder_start (self->finder, ports, hosts);
  show_running (self);
}

static void
search_cb (RwMeterFindPage *self)
{
  if (rw_meter_finder_is_running (self->finder))
    {
      rw_meter_find_page_stop (self);
      gtk_label_set_text (self->words, _ ("Stopped."));
      return;
    }
  look_at_ports (self);
  search (self);
}

static void
use (GtkWidget  *widget,
     const char *name,
     GVariant   *parameter)
{
  RwMeterFindPage *self = RW_METER_FIND_PAGE (widget);

  self->chosen = g_variant_get_uint32 (parameter);
  g_signal_emit (self, chosen_signal, 0);
}

/* What was found stays with the finder, under its number; the cards go while it listens again. */
static void
learn_negative (GtkWidget  *widget,
                const char *name,
                GVariant   *parameter)
{
  RwMeterFindPage *self = RW_METER_FIND_PAGE (widget);

  clear_found (self);
  gtk_progress_bar_set_fraction (self->progress, 0);
  gtk_label_set_text (self->words, _ ("Listening for the minus: leave the leads where they are."));
  rw_meter_finder_learn_negative (self->finder, g_variant_get_uint32 (parameter));
  show_running (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->search));
}

/* --- the page ------------------------------------------------------------------------------------- */

void
rw_meter_find_page_start (RwMeterFindPage *self)
{
  clear_found (self);
  rw_meter_find_page_stop (self);
  gtk_label_set_text (self->words, "");
  show_error (self, NULL);
  look_at_ports (self);
}

void
rw_meter_find_page_stop (RwMeterFindPage *self)
{
  rw_meter_finder_stop (self->finder);
  show_running (self);
}

/* A name to begin with: what it says it is, else where it is. (transfer full) */
static char *
suggest_name (const RwMeterFound *found)
{
  if (found->identity != NULL && *found->identity != '\0')
    return g_strdup (found->identity);
  if (found->address->kind == RW_METER_ADDRESS_TCP)
    /* Translators: host. */
    return g_strdup_printf (_ ("Meter at %s"), found->address->host);

  g_autofree char *base = g_path_get_basename (found->address->port);

  /* Translators: port. */
  return g_strdup_printf (_ ("Meter on %s"), base);
}

RwKnownMeter *
rw_meter_find_page_dup_chosen (RwMeterFindPage *self)
{
  RwMeterBook *book = rw_meter_books_get_default ();
  const RwMeterFound *found = rw_meter_finder_get_found (self->finder, self->chosen);
  const RwKnownMeter *known = rw_meter_books_find_same (found->address, found->format, found->identity);
  RwKnownMeter *meter;

  if (known != NULL)
    meter = rw_known_meter_copy (known);
  else
    {
      g_autofree char *id = rw_meter_book_make_id (book);
      g_autofree char *name = suggest_name (found);
      g_autoptr (RwMeterFacts) facts = rw_meter_facts_new (id, name, 0, 0);

      meter = rw_known_meter_new (facts);
      meter->address = rw_meter_address_copy (found->address);
    }
  g_free (meter->format);
  meter->format = g_strdup (found->format);
  g_free (meter->identity);
  meter->identity = g_strdup (found->identity);
  return meter;
}

void
rw_meter_find_page_set_job (RwMeterFindPage *self,
                            RwJob           *job)
{
  g_return_if_fail (RW_IS_METER_FIND_PAGE (self) && RW_IS_JOB (job));
  g_set_object (&self->job, job);
}

static gboolean
rw_meter_find_page_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (RW_METER_FIND_PAGE (widget)->search));
}

static void
rw_meter_find_page_dispose (GObject *object)
{
  RwMeterFindPage *self = RW_METER_FIND_PAGE (object);

  if (self->finder != NULL)
    rw_meter_finder_stop (self->finder);
  g_clear_object (&self->finder);
  g_clear_object (&self->job);
  g_clear_pointer (&self->free_ports, g_ptr_array_unref);
  gtk_widget_dispose_template (GTK_WIDGET (self), RW_TYPE_METER_FIND_PAGE);
  G_OBJECT_CLASS (rw_meter_find_page_parent_class)->dispose (object);
}

static void
rw_meter_find_page_class_init (RwMeterFindPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_meter_find_page_dispose;
  widget_class->grab_focus = rw_meter_find_page_grab_focus;
  chosen_signal = g_signal_new ("chosen", RW_TYPE_METER_FIND_PAGE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 0);
  gtk_widget_class_install_action (widget_class, "found.use", "u", use);
  gtk_widget_class_install_action (widget_class, "found.negative", "u", learn_negative);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-meter-find-page.ui");
  gtk_widget_class_bind_template_child (widget_class, RwMeterFindPage, box);
  gtk_widget_class_bind_template_child (widget_class, RwMeterFindPage, ports);
  gtk_widget_class_bind_template_child (widget_class, RwMeterFindPage, also);
  gtk_widget_class_bind_template_child (widget_class, RwMeterFindPage, error);
  gtk_widget_class_bind_template_child (widget_class, RwMeterFindPage, progress);
  gtk_widget_class_bind_template_child (widget_class, RwMeterFindPage, words);
  gtk_widget_class_bind_template_child (widget_class, RwMeterFindPage, found);
  gtk_widget_class_bind_template_child (widget_class, RwMeterFindPage, search);
}

static void
rw_meter_find_page_init (RwMeterFindPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->free_ports = g_ptr_array_new_with_free_func (g_free);
  self->finder = rw_meter_finder_new ();
  g_signal_connect_object (self->finder, "progress", G_CALLBACK (progress_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->finder, "done", G_CALLBACK (done_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_swapped (self->search, "clicked", G_CALLBACK (search_cb), self);
  g_signal_connect_swapped (self->also, "activate", G_CALLBACK (search_cb), self);
  show_running (self);
}
