/* rw-main-window-chart.c: the two charts: which is seen, and what it shows.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-main-window-private.h"

#include <glib/gi18n-lib.h>

#include "rw-compat.h"

static void
fill_chart_modes (RwMainWindow *self)
{
  RwProfile *profile = rw_job_get_profile (self->job);
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  gtk_string_list_append (names, _ ("All rails, between their limits"));
  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    {
      /* Translators: rail. */
      g_autofree char *name = g_strdup_printf (_ ("%s in volts"), rw_profile_get_rail (profile, i)->label);

      gtk_string_list_append (names, name);
    }
  gtk_drop_down_set_model (self->chart_mode, G_LIST_MODEL (names));
}

static void
chart_mode_cb (RwMainWindow *self)
{
  const guint selected = gtk_drop_down_get_selected (self->chart_mode);

  if (self->job == NULL || selected == GTK_INVALID_LIST_POSITION)
    return;

  RwView *view = rw_job_get_view (self->job);

  rw_view_set_mode (view, selected == 0 ? RW_VIEW_POSITION : RW_VIEW_VOLTS);
  if (selected > 0 && selected <= rw_profile_get_n_rails (rw_job_get_profile (self->job)))
    rw_job_set_spot (self->job, rw_profile_get_rail (rw_job_get_profile (self->job), selected - 1)->id,
                     rw_job_get_place (self->job), rw_job_get_kind (self->job));
}

/* The view says which chart is looked at; the stack follows it. */
static void
view_chart_cb (RwMainWindow *self)
{
  const gboolean trim = rw_view_get_chart (rw_job_get_view (self->job)) == RW_VIEW_TRIM;

  gtk_stack_set_visible_child_name (self->charts, trim ? "trim" : "time");
  gtk_widget_set_visible (self->time_tools, !trim);
}

static void
stack_cb (RwMainWindow *self)
{
  const char *name = gtk_stack_get_visible_child_name (self->charts);

  if (self->job != NULL && name != NULL)
    rw_view_set_chart (rw_job_get_view (self->job), g_str_equal (name, "trim") ? RW_VIEW_TRIM : RW_VIEW_TIME);
}

void
rw_main_window_switch_chart (RwMainWindow *self)
{
  RwView *view = rw_job_get_view (self->job);

  rw_view_set_chart (view, rw_view_get_chart (view) == RW_VIEW_TRIM ? RW_VIEW_TIME : RW_VIEW_TRIM);
}

void
rw_main_window_show_charts (RwMainWindow *self)
{
  fill_chart_modes (self);
  g_signal_connect_object (rw_job_get_view (self->job), "notify::chart", G_CALLBACK (view_chart_cb), self,
                           G_CONNECT_SWAPPED);
  view_chart_cb (self);
}

void
rw_main_window_add_charts (RwMainWindow *self)
{
  g_signal_connect_swapped (self->chart_mode, "notify::selected", G_CALLBACK (chart_mode_cb), self);
  g_signal_connect_swapped (self->charts, "notify::visible-child-name", G_CALLBACK (stack_cb), self);
  rw_compat_name_drop_down (self->chart_mode, _ ("What the chart shows"));
}
