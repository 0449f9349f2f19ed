/* rw-new-job.c: asks which cabinet and which meter.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-new-job.h"

#include <glib/gi18n-lib.h>

#include "rw-compat.h"
#include "rw-meter-books.h"
#include "rw-meter-words.h"
#include "rw-quantity.h"

struct _RwNewJob
{
  GtkWindow    parent_instance;
  GPtrArray   *profiles; /* of RwProfile */
  GtkEntry    *name;
  GtkEntry    *tag;
  GtkDropDown *profile;
  GtkDropDown *meter;
  GtkLabel    *limits;
  GtkButton   *cancel;
  GtkButton   *start;
};

static guint chosen_signal;

G_DEFINE_FINAL_TYPE (RwNewJob, rw_new_job, GTK_TYPE_WINDOW)

/* The bench meter in the book: the one that is read by eye. */
static const char bench_meter[] = "m1";

/* The class that is offered first, until the book knows better. */
static const char usual_class[] = "counts-6000";

static RwProfile *
chosen_profile (RwNewJob *self)
{
  const guint i = gtk_drop_down_get_selected (self->profile);

  return i < self->profiles->len ? self->profiles->pdata[i] : NULL;
}

static void
profile_cb (RwNewJob *self)
{
  RwProfile *profile = chosen_profile (self);
  GString *text = g_string_new (NULL);

  for (guint i = 0; profile != NULL && i < rw_profile_get_n_rails (profile); i++)
    {
      const RwRail *rail = rw_profile_get_rail (profile, i);
      g_autofree char *lo = rw_quantity_format_number (rail->lo, 2);
      g_autofree char *hi = rw_quantity_format (rail->hi, 0.01, RW_KIND_DC);

      /* Translators: rail, lower limit, upper limit with unit. */
      g_string_append_printf (text, _ ("%s: %s to %s at the board, loaded"), rail->label, lo, hi);
      g_string_append_c (text, '\n');
    }
  g_string_append (text, _ ("Figures of the trade. What the maker's own document says comes first."));
  gtk_label_set_text (self->limits, text->str);
  g_string_free (text, TRUE);
}

/* --- the bench meter ------------------------------------------------------------------------------ */

static const RwKnownMeter *
find_known (void)
{
  return rw_meter_book_find (rw_meter_books_get_default (), bench_meter);
}

/* Facts by the class that was chosen; what the book has stands before the classes. (transfer full) */
static RwMeterFacts *
make_facts (RwNewJob *self)
{
  const RwKnownMeter *known = find_known ();
  const guint before = known != NULL ? 1 : 0;
  const guint chosen = gtk_drop_down_get_selected (self->meter);
  guint n;
  const RwMeterPreset *presets = rw_meter_preset_list (&n);

  if (chosen < before)
    return rw_meter_facts_copy (known->facts);

  const RwMeterPreset *preset = &presets[MIN (chosen - before, n - 1)];
  RwMeterFacts *facts = rw_meter_facts_new (bench_meter, known != NULL ? known->facts->name : _ ("Bench meter"),
                                            preset->percent, preset->counts);

  facts->ac = preset->ac;
  return facts;
}

/* Asked once: the next job finds it in the book. */
static void
remember_meter (RwNewJob *self)
{
  const RwKnownMeter *known = find_known ();
  g_autoptr (RwMeterFacts) facts = make_facts (self);
  g_autoptr (RwKnownMeter) meter = known != NULL ? rw_known_meter_copy (known) : rw_known_meter_new (facts);

  if (known != NULL && gtk_drop_down_get_selected (self->meter) == 0)
    return;
  rw_meter_facts_free (meter->facts);
  meter->facts = g_steal_pointer (&facts);
  rw_meter_books_put (meter);
}

static void
start_cb (RwNewJob *self)
{
  g_signal_emit (self, chosen_signal, 0);
  remember_meter (self);
  gtk_window_destroy (GTK_WINDOW (self));
}

RwSessionHeader *
rw_new_job_dup_header (RwNewJob *self)
{
  RwProfile *profile = chosen_profile (self);
  g_autoptr (GPtrArray) list = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_meter_facts_free);
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();
  const char *name = gtk_editable_get_text (GTK_EDITABLE (self->name));

  if (profile == NULL)
    return NULL;
  g_ptr_array_add (list, make_facts (self));
  return rw_session_header_new (profile, *name != '\0' ? name : _ ("Cabinet"),
                                gtk_editable_get_text (GTK_EDITABLE (self->tag)), list, now);
}

static void
rw_new_job_dispose (GObject *object)
{
  RwNewJob *self = RW_NEW_JOB (object);

  g_clear_pointer (&self->profiles, g_ptr_array_unref);
  gtk_widget_dispose_template (GTK_WIDGET (self), RW_TYPE_NEW_JOB);
  G_OBJECT_CLASS (rw_new_job_parent_class)->dispose (object);
}

static void
rw_new_job_class_init (RwNewJobClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_new_job_dispose;
  chosen_signal = g_signal_new ("chosen", RW_TYPE_NEW_JOB, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-new-job.ui");
  gtk_widget_class_bind_template_child (widget_class, RwNewJob, name);
  gtk_widget_class_bind_template_child (widget_class, RwNewJob, tag);
  gtk_widget_class_bind_template_child (widget_class, RwNewJob, profile);
  gtk_widget_class_bind_template_child (widget_class, RwNewJob, meter);
  gtk_widget_class_bind_template_child (widget_class, RwNewJob, limits);
  gtk_widget_class_bind_template_child (widget_class, RwNewJob, cancel);
  gtk_widget_class_bind_template_child (widget_class, RwNewJob, start);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
fill_profiles (RwNewJob *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  guint selected = 0;

  self->profiles = rw_profile_list (NULL);
  for (guint i = 0; i < self->profiles->len; i++)
    {
      /* Titles of shipped profiles are in the message catalogue. */
      gtk_string_list_append (names, g_dgettext (GETTEXT_PACKAGE, rw_profile_get_title (self->profiles->pdata[i])));
      if (g_str_equal (rw_profile_get_id (self->profiles->pdata[i]), "classic-5-12-m5"))
        selected = i;
    }
  rw_compat_name_drop_down (self->profile, _ ("Supply and its rails"));
  gtk_drop_down_set_model (self->profile, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->profile, selected);
}

static void
fill_meters (RwNewJob *self)
{
  const RwKnownMeter *known = find_known ();
  guint n;
  const RwMeterPreset *presets = rw_meter_preset_list (&n);
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  guint selected = 0;

  if (known != NULL)
    {
      g_autofree char *facts = rw_meter_words_facts (known->facts);
      g_autofree char *name = g_strdup_printf ("%s, %s", known->facts->name, facts);

      gtk_string_list_append (names, name);
    }
  for (guint i = 0; i < n; i++)
    {
      gtk_string_list_append (names, _ (presets[i].title));
      if (known == NULL && g_str_equal (presets[i].id, usual_class))
        selected = i;
    }
  rw_compat_name_drop_down (self->meter, _ ("Class of the meter"));
  gtk_drop_down_set_model (self->meter, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->meter, selected);
}

static void
rw_new_job_init (RwNewJob *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_window_set_default_widget (GTK_WINDOW (self), GTK_WIDGET (self->start));
  fill_profiles (self);
  fill_meters (self);
  profile_cb (self);
  g_signal_connect_swapped (self->profile, "notify::selected", G_CALLBACK (profile_cb), self);
  g_signal_connect_swapped (self->start, "clicked", G_CALLBACK (start_cb), self);
  g_signal_connect_swapped (self->cancel, "clicked", G_CALLBACK (gtk_window_destroy), self);
}

GtkWidget *
rw_new_job_new (GtkWindow *parent)
{
  return g_object_new (RW_TYPE_NEW_JOB, "transient-for", parent, NULL);
}
