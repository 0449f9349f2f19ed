/* rw-practice-view-dial.c: the meter of the practice bench.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-practice-view-dial.h"

#include <glib/gi18n-lib.h>

#include "rw-compat.h"
#include "rw-job-practice.h"
#include "rw-practice-view-scene.h"

struct _RwPracticeDial
{
  GtkWidget       parent_instance;
  RwJob          *job;
  GtkWidget      *box;
  GtkLabel       *value;
  GtkLabel       *caution;
  GtkDropDown    *mode;
  GtkDropDown    *range;
  GtkCheckButton *amps;
  GtkCheckButton *zeroed;
  GtkWidget      *fuse;
  gboolean        filling; /* it follows the job, not a person */
};

G_DEFINE_FINAL_TYPE (RwPracticeDial, rw_practice_dial, GTK_TYPE_WIDGET)

/* In the order of the drop-down. */
static const RwPracticeMode modes[] = { RW_PRACTICE_MODE_DC, RW_PRACTICE_MODE_AC, RW_PRACTICE_MODE_OHMS,
                                        RW_PRACTICE_MODE_AMPS };

/* The first of the list is "by itself". */
static const int first_range = -1;

static void
show_text (GtkLabel   *label,
           const char *text)
{
  if (g_strcmp0 (gtk_label_get_text (label), text) != 0)
    gtk_label_set_text (label, text);
}

void
rw_practice_dial_refresh (RwPracticeDial *self)
{
  g_return_if_fail (RW_IS_PRACTICE_DIAL (self));
  if (self->job == NULL)
    return;

  RwPracticeMeter *meter = rw_job_get_practice_meter (self->job);
  const char *caution = rw_practice_meter_get_caution (meter);
  g_autofree char *value = rw_practice_scene_dup_value (self->job);

  show_text (self->value, *value != '\0' ? value : "—");
  show_text (self->caution, caution != NULL ? caution : "");
  gtk_widget_set_visible (GTK_WIDGET (self->caution), caution != NULL);
  gtk_widget_set_visible (self->fuse, rw_practice_meter_get_fuse_blown (meter));
}

static void
turned_cb (RwPracticeDial *self)
{
  if (self->filling || self->job == NULL)
    return;

  const guint mode = MIN (gtk_drop_down_get_selected (self->mode), G_N_ELEMENTS (modes) - 1);
  const guint range = gtk_drop_down_get_selected (self->range);

  rw_practice_meter_set_zeroed (rw_job_get_practice_meter (self->job), gtk_check_button_get_active (self->zeroed));
  rw_job_set_practice_meter (self->job, modes[mode],
                             gtk_check_button_get_active (self->amps) ? RW_PRACTICE_JACK_AMPS : RW_PRACTICE_JACK_VOLTS,
                             range == 0 ? RW_PRACTICE_RANGE_AUTO : first_range + (int) range - 1);
  rw_practice_dial_refresh (self);
}

void
rw_practice_dial_turn (RwPracticeDial *self,
                       gboolean        range)
{
  g_return_if_fail (RW_IS_PRACTICE_DIAL (self));

  GtkDropDown *dial = range ? self->range : self->mode;
  const guint n = g_list_model_get_n_items (gtk_drop_down_get_model (dial));

  gtk_drop_down_set_selected (dial, (gtk_drop_down_get_selected (dial) + 1) % n);
}

static void
fuse_cb (RwPracticeDial *self)
{
  rw_practice_meter_replace_fuse (rw_job_get_practice_meter (self->job));
  rw_practice_dial_refresh (self);
}

static guint
mode_for (RwKind kind)
{
  switch ((int) kind)
    {
    case RW_KIND_RIPPLE:
      return 1;
    case RW_KIND_OHMS:
      return 2;
    case RW_KIND_AMPS:
      return 3;
    default:
      return 0;
    }
}

void
rw_practice_dial_set_job (RwPracticeDial *self,
                          RwJob          *job)
{
  g_return_if_fail (RW_IS_PRACTICE_DIAL (self));
  g_set_object (&self->job, job);
  if (job == NULL)
    return;
  self->filling = TRUE;
  gtk_drop_down_set_selected (self->mode, mode_for (rw_job_get_kind (job)));
  gtk_drop_down_set_selected (self->range, 0);
  gtk_check_button_set_active (self->amps, FALSE);
  self->filling = FALSE;
  turned_cb (self);
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_practice_dial_dispose (GObject *object)
{
  RwPracticeDial *self = RW_PRACTICE_DIAL (object);

  g_clear_object (&self->job);
  gtk_widget_dispose_template (GTK_WIDGET (self), RW_TYPE_PRACTICE_DIAL);
  G_OBJECT_CLASS (rw_practice_dial_parent_class)->dispose (object);
}

static void
rw_practice_dial_class_init (RwPracticeDialClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_practice_dial_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-practice-view-dial.ui");
  gtk_widget_class_bind_template_child (widget_class, RwPracticeDial, box);
  gtk_widget_class_bind_template_child (widget_class, RwPracticeDial, value);
  gtk_widget_class_bind_template_child (widget_class, RwPracticeDial, caution);
  gtk_widget_class_bind_template_child (widget_class, RwPracticeDial, mode);
  gtk_widget_class_bind_template_child (widget_class, RwPracticeDial, range);
  gtk_widget_class_bind_template_child (widget_class, RwPracticeDial, amps);
  gtk_widget_class_bind_template_child (widget_class, RwPracticeDial, zeroed);
  gtk_widget_class_bind_template_child (widget_class, RwPracticeDial, fuse);
}

static void
fill (RwPracticeDial *self)
{
  const char *const mode_names[] = { _ ("DC volts"), _ ("AC volts"), _ ("Ohms"), _ ("Amps"), NULL };
  const char *const range_names[] = { _ ("Range by itself"), _ ("Lowest range"), _ ("Second range"), _ ("Third range"),
                                      _ ("Fourth range"), NULL };
  g_autoptr (GtkStringList) mode_list = gtk_string_list_new (mode_names);
  g_autoptr (GtkStringList) range_list = gtk_string_list_new (range_names);

  gtk_drop_down_set_model (self->mode, G_LIST_MODEL (mode_list));
  gtk_drop_down_set_model (self->range, G_LIST_MODEL (range_list));
  rw_compat_name_drop_down (self->mode, _ ("Dial of the meter"));
  rw_compat_name_drop_down (self->range, _ ("Range of the meter"));
}

static void
rw_practice_dial_init (RwPracticeDial *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fill (self);
  g_signal_connect_swapped (self->mode, "notify::selected", G_CALLBACK (turned_cb), self);
  g_signal_connect_swapped (self->range, "notify::selected", G_CALLBACK (turned_cb), self);
  g_signal_connect_swapped (self->amps, "toggled", G_CALLBACK (turned_cb), self);
  g_signal_connect_swapped (self->zeroed, "toggled", G_CALLBACK (turned_cb), self);
  g_signal_connect_swapped (self->fuse, "clicked", G_CALLBACK (fuse_cb), self);
}
