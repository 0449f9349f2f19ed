/* rw-meter-row.c: one meter of the book, and how its link is.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-meter-row.h"

#include <glib/gi18n-lib.h>

#include "rw-compat.h"
#include "rw-meter-books.h"
#include "rw-meter-listen.h"
#include "rw-meter-words.h"
#include "rw-quantity.h"

struct _RwMeterRow
{
  GtkWidget     parent_instance;
  RwJob        *job;
  GSettings    *settings; /* (nullable) */
  RwKnownMeter *meter;
  char         *refusal;  /* why it could not be listened to; NULL */
  GtkWidget    *box;
  GtkLabel     *name;
  GtkLabel     *value;
  GtkLabel     *facts;
  GtkLabel     *link;
  GtkLabel     *trouble;
  GtkDropDown  *stay;
  GtkButton    *listen;
  GtkButton    *edit;
  GtkButton    *remove;
  GtkWidget    *question_box;
  GtkLabel     *question;
  GtkButton    *do_remove;
  GtkButton    *keep;
};

G_DEFINE_FINAL_TYPE (RwMeterRow, rw_meter_row, GTK_TYPE_WIDGET)

/* Where a meter can stay: each rail at each of these. */
static const RwPlace places[] = { RW_PLACE_BOARD, RW_PLACE_TERMINALS };

/* --- how it is ------------------------------------------------------------------------------------ */

/* A screen reader reads the button alone: its name says which meter it is about. */
static void
name_button (RwMeterRow *self,
             GtkButton  *button)
{
  g_autofree char *name = g_strdup_printf ("%s: %s", gtk_button_get_label (button), self->meter->facts->name);

  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static void
show_value (RwMeterRow *self)
{
  RwReading newest;
  g_autofree char *text = NULL;

  if (rw_meter_find_newest (self->job, self->meter->facts->id, &newest))
    text = newest.over ? g_strdup (_ ("overload")) : rw_quantity_format (newest.value, newest.step, newest.kind);
  gtk_label_set_text (self->value, text != NULL ? text : "");
}

static void
show_trouble (RwMeterRow *self,
              const char *trouble)
{
  gtk_label_set_text (self->trouble, trouble != NULL ? trouble : "");
  gtk_widget_set_visible (GTK_WIDGET (self->trouble), trouble != NULL);
}

void
rw_meter_row_refresh (RwMeterRow *self)
{
  const gboolean by_eye = self->meter->address == NULL;
  RwJobMeterInfo info = { 0 };
  const gboolean on = !by_eye && rw_meter_is_listened_to (self->job, self->meter->facts->id, &info);
  const char *label = on ? _ ("Let go") : _ ("Listen");

  if (by_eye)
    gtk_label_set_text (self->link, _ ("You read it and type the values."));
  else if (!on)
    gtk_label_set_text (self->link, _ ("Not listened to."));
  else
    gtk_label_set_text (self->link, *info.words != '\0' ? info.words : _ ("Opening…"));
  if (on)
    g_clear_pointer (&self->refusal, g_free);
  show_trouble (self, on ? info.trouble : self->refusal);
  show_value (self);
  if (g_strcmp0 (gtk_button_get_label (self->listen), label) == 0)
    return;
  gtk_button_set_label (self->listen, label);
  name_button (self, self->listen);
}

/* --- what can be done ----------------------------------------------------------------------------- */

static void
listen_cb (RwMeterRow *self)
{
  const char *id = self->meter->facts->id;
  RwJobMeterInfo info;
  g_autoptr (GError) error = NULL;

  g_clear_pointer (&self->refusal, g_free);
  if (rw_meter_is_listened_to (self->job, id, &info))
    rw_meter_let_go (self->job, id, self->settings);
  else if (!rw_meter_listen (self->job, self->meter, self->settings, &error))
    self->refusal = g_strdup (error->message);
  rw_meter_row_refresh (self);
}

static void
stay_cb (RwMeterRow *self)
{
  const guint chosen = gtk_drop_down_get_selected (self->stay);
  const guint n = G_N_ELEMENTS (places);

  if (self->job == NULL || chosen == GTK_INVALID_LIST_POSITION)
    return;

  RwProfile *profile = rw_job_get_profile (self->job);
  const char *rail = chosen > 0 ? rw_profile_get_rail (profile, (chosen - 1) / n)->id : NULL;
  const RwPlace place = chosen > 0 ? places[(chosen - 1) % n] : RW_PLACE_BOARD;

  g_free (self->meter->rail);
  self->meter->rail = rw_meter_stay_to_text (rail, place);
  rw_meter_books_put (self->meter);
  gtk_widget_activate_action (GTK_WIDGET (self), "meters.written", NULL);
  rw_job_stay_on (self->job, self->meter->facts->id, rail, place);
}

static void
edit_cb (RwMeterRow *self)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "meters.edit", "s", self->meter->facts->id);
}

static void
ask_cb (RwMeterRow *self)
{
  gtk_widget_set_visible (self->question_box, TRUE);
  gtk_widget_grab_focus (GTK_WIDGET (self->keep));
}

static void
keep_cb (RwMeterRow *self)
{
  gtk_widget_set_visible (self->question_box, FALSE);
  gtk_widget_grab_focus (GTK_WIDGET (self->remove));
}

/* The row is gone when the action returns. */
static void
remove_cb (RwMeterRow *self)
{
  g_autofree char *id = g_strdup (self->meter->facts->id);

  gtk_widget_activate_action (GTK_WIDGET (self), "meters.remove", "s", id);
}

/* --- making it ------------------------------------------------------------------------------------ */

static void
fill_stay (RwMeterRow *self)
{
  RwProfile *profile = rw_job_get_profile (self->job);
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  g_autofree char *about = rw_meter_words_stay (NULL, RW_PLACE_BOARD);
  RwPlace at;
  g_autofree char *rail = rw_meter_stay_from_text (self->meter->rail, &at);
  guint selected = 0;

  gtk_string_list_append (names, about);
  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    for (guint j = 0; j < G_N_ELEMENTS (places); j++)
      {
        const RwRail *one = rw_profile_get_rail (profile, i);
        g_autofree char *words = rw_meter_words_stay (one, places[j]);

        if (g_strcmp0 (one->id, rail) == 0 && at == places[j])
          selected = g_list_model_get_n_items (G_LIST_MODEL (names));
        gtk_string_list_append (names, words);
      }
  gtk_drop_down_set_model (self->stay, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->stay, selected);
}

static void
show_meter (RwMeterRow *self)
{
  const gboolean by_eye = self->meter->address == NULL;
  g_autofree char *facts = rw_meter_words_facts (self->meter->facts);
  g_autofree char *where = rw_meter_words_where (self->meter);
  g_autofree char *line = g_strdup_printf ("%s · %s", facts, where);
  /* Translators: name of a meter. */
  g_autofree char *question = g_strdup_printf (_ ("Take “%s” off the list? Sessions keep what it measured."),
                                               self->meter->facts->name);
  /* Translators: name of a meter. */
  g_autofree char *stay = g_strdup_printf (_ ("Where %s is"), self->meter->facts->name);

  gtk_label_set_text (self->name, self->meter->facts->name);
  gtk_label_set_text (self->facts, line);
  gtk_label_set_text (self->question, question);
  gtk_widget_set_visible (GTK_WIDGET (self->stay), !by_eye);
  gtk_widget_set_visible (GTK_WIDGET (self->listen), !by_eye);
  rw_compat_name_drop_down (self->stay, stay);
  name_button (self, self->edit);
  name_button (self, self->remove);
  name_button (self, self->do_remove);
  name_button (self, self->keep);
}

static void
rw_meter_row_dispose (GObject *object)
{
  RwMeterRow *self = RW_METER_ROW (object);

  g_clear_object (&self->job);
  g_clear_object (&self->settings);
  g_clear_pointer (&self->meter, rw_known_meter_free);
  g_clear_pointer (&self->refusal, g_free);
  gtk_widget_dispose_template (GTK_WIDGET (self), RW_TYPE_METER_ROW);
  G_OBJECT_CLASS (rw_meter_row_parent_class)->dispose (object);
}

static void
rw_meter_row_class_init (RwMeterRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_meter_row_dispose;
  gtk_widget_class_set_css_name (widget_class, "meterrow");
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-meter-row.ui");
  gtk_widget_class_bind_template_child (widget_class, RwMeterRow, box);
  gtk_widget_class_bind_template_child (widget_class, RwMeterRow, name);
  gtk_widget_class_bind_template_child (widget_class, RwMeterRow, value);
  gtk_widget_class_bind_template_child (widget_class, RwMeterRow, facts);
  gtk_widget_class_bind_template_child (widget_class, RwMeterRow, link);
  gtk_widget_class_bind_template_child (widget_class, RwMeterRow, trouble);
  gtk_widget_class_bind_template_child (widget_class, RwMeterRow, stay);
  gtk_widget_class_bind_template_child (widget_class, RwMeterRow, listen);
  gtk_widget_class_bind_template_child (widget_class, RwMeterRow, edit);
  gtk_widget_class_bind_template_child (widget_class, RwMeterRow, remove);
  gtk_widget_class_bind_template_child (widget_class, RwMeterRow, question_box);
  gtk_widget_class_bind_template_child (widget_class, RwMeterRow, question);
  gtk_widget_class_bind_template_child (widget_class, RwMeterRow, do_remove);
  gtk_widget_class_bind_template_child (widget_class, RwMeterRow, keep);
}

static void
rw_meter_row_init (RwMeterRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_swapped (self->listen, "clicked", G_CALLBACK (listen_cb), self);
  g_signal_connect_swapped (self->edit, "clicked", G_CALLBACK (edit_cb), self);
  g_signal_connect_swapped (self->remove, "clicked", G_CALLBACK (ask_cb), self);
  g_signal_connect_swapped (self->keep, "clicked", G_CALLBACK (keep_cb), self);
  g_signal_connect_swapped (self->do_remove, "clicked", G_CALLBACK (remove_cb), self);
}

GtkWidget *
rw_meter_row_new (RwJob              *job,
                  GSettings          *settings,
                  const RwKnownMeter *meter)
{
  RwMeterRow *self = g_object_new (RW_TYPE_METER_ROW, NULL);

  self->job = g_object_ref (job);
  g_set_object (&self->settings, settings);
  self->meter = rw_known_meter_copy (meter);
  show_meter (self);
  fill_stay (self);
  g_signal_connect_swapped (self->stay, "notify::selected", G_CALLBACK (stay_cb), self);
  g_signal_connect_object (job, "link", G_CALLBACK (rw_meter_row_refresh), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (job, "live", G_CALLBACK (show_value), self, G_CONNECT_SWAPPED);
  rw_meter_row_refresh (self);
  return GTK_WIDGET (self);
}
