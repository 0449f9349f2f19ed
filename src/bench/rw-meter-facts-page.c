/* rw-meter-facts-page.c: asks a meter's name and accuracy.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-meter-facts-page.h"

#include <glib/gi18n-lib.h>

#include "rw-compat.h"
#include "rw-meter-words.h"

struct _RwMeterFactsPage
{
  GtkWidget     parent_instance;
  RwKnownMeter *meter;   /* as the page began, then as it was saved */
  gboolean      filling; /* the fields follow the class, or the class the fields */
  GtkWidget    *box;
  GtkLabel     *where;
  GtkEntry     *name;
  GtkDropDown  *preset;
  GtkEntry     *percent;
  GtkEntry     *counts;
  GtkDropDown  *ac;
  GtkLabel     *error;
  GtkButton    *change;
  GtkButton    *save;
  GtkButton    *save_listen;
};

static guint saved_signal;
static guint change_signal;

G_DEFINE_FINAL_TYPE (RwMeterFactsPage, rw_meter_facts_page, GTK_TYPE_WIDGET)

/* The words of RwMeterAc, in its order. */
static const char *const ac_words[] = { N_ ("not known"), N_ ("averaging, right for a sine wave only"), N_ ("true RMS") };

static void
show_error (RwMeterFactsPage *self,
            const char       *message)
{
  gtk_label_set_text (self->error, message != NULL ? message : "");
  gtk_widget_set_visible (GTK_WIDGET (self->error), message != NULL);
}

static void
set_figure (GtkEntry *entry,
            double    value)
{
  g_autofree char *text = rw_meter_words_figure (value);

  gtk_editable_set_text (GTK_EDITABLE (entry), text);
}

static gboolean
read_figure (GtkEntry *entry,
             double   *out,
             GError  **error)
{
  return rw_meter_words_read_figure (gtk_editable_get_text (GTK_EDITABLE (entry)), out, error);
}

/* --- class and figures follow each other ---------------------------------------------------------- */

static void
preset_cb (RwMeterFactsPage *self)
{
  guint n;
  const RwMeterPreset *presets = rw_meter_preset_list (&n);
  const guint i = gtk_drop_down_get_selected (self->preset);

  if (self->filling || i >= n)
    return;
  self->filling = TRUE;
  set_figure (self->percent, presets[i].percent);
  set_figure (self->counts, presets[i].counts);
  gtk_drop_down_set_selected (self->ac, presets[i].ac);
  self->filling = FALSE;
  show_error (self, NULL);
}

static gboolean
is_class (RwMeterFactsPage    *self,
          const RwMeterPreset *preset)
{
  double percent, counts;

  return read_figure (self->percent, &percent, NULL) && read_figure (self->counts, &counts, NULL)
         && preset->percent == percent && preset->counts == counts
         && (guint) preset->ac == gtk_drop_down_get_selected (self->ac);
}

/* Figures of no class are "other"; of several classes the one that is chosen stays. */
static void
figures_cb (RwMeterFactsPage *self)
{
  guint n;
  const RwMeterPreset *presets = rw_meter_preset_list (&n);
  const guint now = gtk_drop_down_get_selected (self->preset);
  guint selected = n;

  show_error (self, NULL);
  if (self->filling || (now < n && is_class (self, &presets[now])))
    return;
  for (guint i = n; i-- > 0;)
    if (is_class (self, &presets[i]))
      selected = i;
  self->filling = TRUE;
  gtk_drop_down_set_selected (self->preset, selected);
  self->filling = FALSE;
}

/* --- saving --------------------------------------------------------------------------------------- */

static gboolean
complain (RwMeterFactsPage *self,
          GtkEntry         *entry,
          const char       *message)
{
  show_error (self, message);
  gtk_widget_grab_focus (GTK_WIDGET (entry));
  return FALSE;
}

static gboolean
are_empty (RwMeterFactsPage *self)
{
  return *gtk_editable_get_text (GTK_EDITABLE (self->percent)) == '\0'
         && *gtk_editable_get_text (GTK_EDITABLE (self->counts)) == '\0';
}

static gboolean
take (RwMeterFactsPage *self)
{
  RwMeterFacts *facts = self->meter->facts;
  g_autofree char *name = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->name))));
  double percent = 0, counts = 0;
  g_autoptr (GError) error = NULL;

  if (*name == '\0')
    return complain (self, self->name, _ ("Give the meter a name: what is written on it, or whose it is."));
  if (are_empty (self))
    return complain (self, self->percent, _ ("Choose the class of the meter, or type the figures of its manual. Type 0 "
                                             "where nothing is known."));
  if (!read_figure (self->percent, &percent, &error))
    return complain (self, self->percent, error->message);
  if (!read_figure (self->counts, &counts, &error))
    return complain (self, self->counts, error->message);
  g_free (facts->name);
  facts->name = g_steal_pointer (&name);
  facts->percent = percent;
  facts->counts = counts;
  facts->ac = (RwMeterAc) MIN (gtk_drop_down_get_selected (self->ac), RW_METER_AC_TRUE_RMS);
  return TRUE;
}

static void
save_cb (RwMeterFactsPage *self)
{
  if (take (self))
    g_signal_emit (self, saved_signal, 0, FALSE);
}

static void
save_listen_cb (RwMeterFactsPage *self)
{
  if (take (self))
    g_signal_emit (self, saved_signal, 0, self->meter->address != NULL);
}

static void
enter_cb (RwMeterFactsPage *self)
{
  if (self->meter->address != NULL)
    save_listen_cb (self);
  else
    save_cb (self);
}

static void
change_cb (RwMeterFactsPage *self)
{
  g_signal_emit (self, change_signal, 0);
}

RwKnownMeter *
rw_meter_facts_page_dup_meter (RwMeterFactsPage *self)
{
  return rw_known_meter_copy (self->meter);
}

/* --- the page ------------------------------------------------------------------------------------- */

void
rw_meter_facts_page_start (RwMeterFactsPage   *self,
                           const RwKnownMeter *meter)
{
  const RwMeterFacts *facts = meter->facts;
  const gboolean linked = meter->address != NULL;
  g_autofree char *where = rw_meter_words_where (meter);

  g_clear_pointer (&self->meter, rw_known_meter_free);
  self->meter = rw_known_meter_copy (meter);
  gtk_label_set_text (self->where, where);
  gtk_editable_set_text (GTK_EDITABLE (self->name), facts->name != NULL ? facts->name : "");
  self->filling = TRUE;
  gtk_drop_down_set_selected (self->ac, facts->ac);
  if (facts->percent > 0 || facts->counts > 0)
    {
      set_figure (self->percent, facts->percent);
      set_figure (self->counts, facts->counts);
    }
  else
    {
      gtk_editable_set_text (GTK_EDITABLE (self->percent), "");
      gtk_editable_set_text (GTK_EDITABLE (self->counts), "");
    }
  self->filling = FALSE;
  figures_cb (self);
  gtk_widget_set_visible (GTK_WIDGET (self->change), linked);
  gtk_widget_set_visible (GTK_WIDGET (self->save_listen), linked);
  show_error (self, NULL);
}

static gboolean
rw_meter_facts_page_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (RW_METER_FACTS_PAGE (widget)->name));
}

static void
rw_meter_facts_page_dispose (GObject *object)
{
  RwMeterFactsPage *self = RW_METER_FACTS_PAGE (object);

  g_clear_pointer (&self->meter, rw_known_meter_free);
  gtk_widget_dispose_template (GTK_WIDGET (self), RW_TYPE_METER_FACTS_PAGE);
  G_OBJECT_CLASS (rw_meter_facts_page_parent_class)->dispose (object);
}

static void
rw_meter_facts_page_class_init (RwMeterFactsPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_meter_facts_page_dispose;
  widget_class->grab_focus = rw_meter_facts_page_grab_focus;
  saved_signal = g_signal_new ("saved", RW_TYPE_METER_FACTS_PAGE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                               1, G_TYPE_BOOLEAN);
  change_signal = g_signal_new ("change", RW_TYPE_METER_FACTS_PAGE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-meter-facts-page.ui");
  gtk_widget_class_bind_template_child (widget_class, RwMeterFactsPage, box);
  gtk_widget_class_bind_template_child (widget_class, RwMeterFactsPage, where);
  gtk_widget_class_bind_template_child (widget_class, RwMeterFactsPage, name);
  gtk_widget_class_bind_template_child (widget_class, RwMeterFactsPage, preset);
  gtk_widget_class_bind_template_child (widget_class, RwMeterFactsPage, percent);
  gtk_widget_class_bind_template_child (widget_class, RwMeterFactsPage, counts);
  gtk_widget_class_bind_template_child (widget_class, RwMeterFactsPage, ac);
  gtk_widget_class_bind_template_child (widget_class, RwMeterFactsPage, error);
  gtk_widget_class_bind_template_child (widget_class, RwMeterFactsPage, change);
  gtk_widget_class_bind_template_child (widget_class, RwMeterFactsPage, save);
  gtk_widget_class_bind_template_child (widget_class, RwMeterFactsPage, save_listen);
}

static void
fill_choices (RwMeterFactsPage *self)
{
  guint n;
  const RwMeterPreset *presets = rw_meter_preset_list (&n);
  g_autoptr (GtkStringList) classes = gtk_string_list_new (NULL);
  g_autoptr (GtkStringList) ways = gtk_string_list_new (NULL);

  for (guint i = 0; i < n; i++)
    gtk_string_list_append (classes, _ (presets[i].title));
  gtk_string_list_append (classes, _ ("other, or not chosen yet"));
  for (guint i = 0; i < G_N_ELEMENTS (ac_words); i++)
    gtk_string_list_append (ways, _ (ac_words[i]));
  gtk_drop_down_set_model (self->preset, G_LIST_MODEL (classes));
  gtk_drop_down_set_selected (self->preset, n);
  gtk_drop_down_set_model (self->ac, G_LIST_MODEL (ways));
  rw_compat_name_drop_down (self->preset, _ ("Class of the meter"));
  rw_compat_name_drop_down (self->ac, _ ("How it measures AC volts"));
}

static void
rw_meter_facts_page_init (RwMeterFactsPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fill_choices (self);

  GtkEntry *const entries[] = { self->name, self->percent, self->counts };

  for (guint i = 0; i < G_N_ELEMENTS (entries); i++)
    {
      g_signal_connect_swapped (entries[i], "changed", G_CALLBACK (figures_cb), self);
      g_signal_connect_swapped (entries[i], "activate", G_CALLBACK (enter_cb), self);
    }
  g_signal_connect_swapped (self->ac, "notify::selected", G_CALLBACK (figures_cb), self);
  g_signal_connect_swapped (self->preset, "notify::selected", G_CALLBACK (preset_cb), self);
  g_signal_connect_swapped (self->change, "clicked", G_CALLBACK (change_cb), self);
  g_signal_connect_swapped (self->save, "clicked", G_CALLBACK (save_cb), self);
  g_signal_connect_swapped (self->save_listen, "clicked", G_CALLBACK (save_listen_cb), self);
}
