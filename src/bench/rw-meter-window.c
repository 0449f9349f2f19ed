/* rw-meter-window.c: the meters of this bench, a page at a time.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-meter-window.h"

#include <glib/gi18n-lib.h>

#include "rw-meter-books.h"
#include "rw-meter-facts-page.h"
#include "rw-meter-find-page.h"
#include "rw-meter-hand-page.h"
#include "rw-meter-list-page.h"

typedef enum
{
  PAGE_LIST,
  PAGE_FIND,
  PAGE_HAND,
  PAGE_FACTS,
  N_PAGES
} Page;

struct _RwMeterWindow
{
  GtkWindow         parent_instance;
  RwJob            *job;
  GSettings        *settings;      /* (nullable) */
  Page              before[N_PAGES]; /* the page that each was come to from */
  Page              page;
  GtkButton        *back;
  GtkStack         *pages;
  RwMeterListPage  *list;
  RwMeterFindPage  *find;
  RwMeterHandPage  *hand;
  RwMeterFactsPage *facts;
};

G_DEFINE_FINAL_TYPE (RwMeterWindow, rw_meter_window, GTK_TYPE_WINDOW)

static const struct
{
  const char *id;
  const char *title;
} pages[N_PAGES] = {
  [PAGE_LIST] = { "list", N_ ("Meters") },
  [PAGE_FIND] = { "find", N_ ("Find my meter") },
  [PAGE_HAND] = { "hand", N_ ("Add a meter by hand") },
  [PAGE_FACTS] = { "facts", N_ ("Facts about the meter") },
};

/* --- from page to page ---------------------------------------------------------------------------- */

/* Ports are let go of as soon as their page is left. */
static void
show_page (RwMeterWindow *self,
           Page           page)
{
  if (page != PAGE_FIND)
    rw_meter_find_page_stop (self->find);
  if (page != PAGE_HAND)
    rw_meter_hand_page_stop (self->hand);
  if (page == PAGE_LIST)
    rw_meter_list_page_refill (self->list);
  self->page = page;
  gtk_stack_set_visible_child_name (self->pages, pages[page].id);
  gtk_window_set_title (GTK_WINDOW (self), _ (pages[page].title));
  gtk_widget_set_visible (GTK_WIDGET (self->back), page != PAGE_LIST);
  gtk_widget_grab_focus (gtk_stack_get_visible_child (self->pages));
}

static void
go_to (RwMeterWindow *self,
       Page           page)
{
  self->before[page] = self->page;
  show_page (self, page);
}

static void
go_back (RwMeterWindow *self)
{
  show_page (self, self->before[self->page]);
}

static void
back (GtkWidget  *widget,
      const char *name,
      GVariant   *parameter)
{
  go_back (RW_METER_WINDOW (widget));
}

static gboolean
escape (GtkWidget *widget,
        GVariant  *parameter,
        gpointer   data)
{
  RwMeterWindow *self = RW_METER_WINDOW (widget);

  if (self->page == PAGE_LIST)
    gtk_window_close (GTK_WINDOW (self));
  else
    go_back (self);
  return TRUE;
}

static void
find (GtkWidget  *widget,
      const char *name,
      GVariant   *parameter)
{
  RwMeterWindow *self = RW_METER_WINDOW (widget);

  rw_meter_find_page_start (self->find);
  go_to (self, PAGE_FIND);
}

static void
by_hand (GtkWidget  *widget,
         const char *name,
         GVariant   *parameter)
{
  RwMeterWindow *self = RW_METER_WINDOW (widget);

  rw_meter_hand_page_start (self->hand, NULL);
  go_to (self, PAGE_HAND);
}

static void
edit (GtkWidget  *widget,
      const char *name,
      GVariant   *parameter)
{
  RwMeterWindow *self = RW_METER_WINDOW (widget);
  const RwKnownMeter *meter
      = rw_meter_book_find (rw_meter_books_get_default (), g_variant_get_string (parameter, NULL));

  if (meter == NULL)
    return;
  rw_meter_facts_page_start (self->facts, meter);
  go_to (self, PAGE_FACTS);
}

static void
remove_meter (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  RwMeterWindow *self = RW_METER_WINDOW (widget);
  const char *id = g_variant_get_string (parameter, NULL);
  const RwKnownMeter *meter = rw_meter_book_find (rw_meter_books_get_default (), id);

  /* One that is read by eye has no link; the practice meter has its id. */
  if (meter != NULL && meter->address != NULL)
    rw_meter_let_go (self->job, id, self->settings);
  rw_meter_books_remove (id);
  show_page (self, PAGE_LIST);
}

/* --- what the pages say --------------------------------------------------------------------------- */

static void
found_cb (RwMeterWindow *self)
{
  g_autoptr (RwKnownMeter) meter = rw_meter_find_page_dup_chosen (self->find);

  rw_meter_facts_page_start (self->facts, meter);
  go_to (self, PAGE_FACTS);
}

/* When port and format were changed from the facts, going back from there leads where it led before. */
static void
hand_cb (RwMeterWindow *self)
{
  g_autoptr (RwKnownMeter) meter = rw_meter_hand_page_dup_chosen (self->hand);

  rw_meter_facts_page_start (self->facts, meter);
  if (self->before[PAGE_HAND] == PAGE_FACTS)
    show_page (self, PAGE_FACTS);
  else
    go_to (self, PAGE_FACTS);
}

static void
change_cb (RwMeterWindow *self)
{
  g_autoptr (RwKnownMeter) meter = rw_meter_facts_page_dup_meter (self->facts);

  rw_meter_hand_page_start (self->hand, meter);
  go_to (self, PAGE_HAND);
}

static void
saved_cb (RwMeterWindow *self,
          gboolean       listen)
{
  g_autoptr (RwKnownMeter) meter = rw_meter_facts_page_dup_meter (self->facts);
  RwJobMeterInfo info;

  rw_meter_books_put (meter);
  /* One that is listened to goes on with what is known now. */
  if (listen || rw_meter_is_listened_to (self->job, meter->facts->id, &info))
    rw_meter_listen (self->job, meter, self->settings, NULL);
  rw_meter_tell_facts (self->job, meter->facts);
  show_page (self, PAGE_LIST);
}

/* --- the window ----------------------------------------------------------------------------------- */

static void
rw_meter_window_dispose (GObject *object)
{
  RwMeterWindow *self = RW_METER_WINDOW (object);

  g_clear_object (&self->job);
  g_clear_object (&self->settings);
  G_OBJECT_CLASS (rw_meter_window_parent_class)->dispose (object);
}

static void
rw_meter_window_class_init (RwMeterWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (RW_TYPE_METER_LIST_PAGE);
  g_type_ensure (RW_TYPE_METER_FIND_PAGE);
  g_type_ensure (RW_TYPE_METER_HAND_PAGE);
  g_type_ensure (RW_TYPE_METER_FACTS_PAGE);
  G_OBJECT_CLASS (klass)->dispose = rw_meter_window_dispose;
  gtk_widget_class_install_action (widget_class, "meters.back", NULL, back);
  gtk_widget_class_install_action (widget_class, "meters.find", NULL, find);
  gtk_widget_class_install_action (widget_class, "meters.by-hand", NULL, by_hand);
  gtk_widget_class_install_action (widget_class, "meters.edit", "s", edit);
  gtk_widget_class_install_action (widget_class, "meters.remove", "s", remove_meter);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Escape, 0, escape, NULL);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-meter-window.ui");
  gtk_widget_class_bind_template_child (widget_class, RwMeterWindow, back);
  gtk_widget_class_bind_template_child (widget_class, RwMeterWindow, pages);
  gtk_widget_class_bind_template_child (widget_class, RwMeterWindow, list);
  gtk_widget_class_bind_template_child (widget_class, RwMeterWindow, find);
  gtk_widget_class_bind_template_child (widget_class, RwMeterWindow, hand);
  gtk_widget_class_bind_template_child (widget_class, RwMeterWindow, facts);
}

static void
rw_meter_window_init (RwMeterWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_swapped (self->find, "chosen", G_CALLBACK (found_cb), self);
  g_signal_connect_swapped (self->hand, "chosen", G_CALLBACK (hand_cb), self);
  g_signal_connect_swapped (self->facts, "saved", G_CALLBACK (saved_cb), self);
  g_signal_connect_swapped (self->facts, "change", G_CALLBACK (change_cb), self);
}

GtkWidget *
rw_meter_window_new (GtkWindow *parent,
                     RwJob     *job,
                     GSettings *settings)
{
  RwMeterWindow *self = g_object_new (RW_TYPE_METER_WINDOW, "transient-for", parent, NULL);

  self->job = g_object_ref (job);
  g_set_object (&self->settings, settings);
  rw_meter_list_page_set_job (self->list, job, settings);
  rw_meter_find_page_set_job (self->find, job);
  gtk_widget_grab_focus (GTK_WIDGET (self->list));
  return GTK_WIDGET (self);
}
