/* rw-main-window.c: the window of one job.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-main-window-private.h"

#include <glib/gi18n-lib.h>

#include "rw-compat.h"
#include "rw-color-scheme.h"
#include "rw-doors.h"
#include "rw-job-stages.h"
#include "rw-low-bin.h"
#include "rw-narrow-bin.h"
#include "rw-quantity.h"
#include "rw-sentence.h"
#include "rw-wrap-box.h"

G_DEFINE_FINAL_TYPE (RwMainWindow, rw_main_window, GTK_TYPE_APPLICATION_WINDOW)

/* Below this the side folds into a drawer; from the other one the plan has a column of its own. Pixels. */
static const int narrow_below = 1100;
static const int wide_from = 1700;

/* --- what the header says ------------------------------------------------------------------------- */

static void
show_title (RwMainWindow *self)
{
  const RwSessionHeader *header = rw_session_get_header (rw_job_get_session (self->job));
  g_autofree char *name = *header->cabinet_tag != '\0'
                              ? g_strdup_printf ("%s · %s", header->cabinet_name, header->cabinet_tag)
                              : g_strdup (header->cabinet_name);
  RwEvent setup = rw_event_make_setup (0, rw_bench_state_get_setup (rw_job_get_state (self->job)));
  g_autofree char *words = rw_event_describe (&setup, NULL);
  const char *mode = rw_job_get_mode (self->job) == RW_JOB_REPLAY     ? _ ("replay")
                     : rw_job_get_mode (self->job) == RW_JOB_PRACTICE ? _ ("practice")
                                                                      : NULL;
  g_autofree char *subtitle = mode != NULL ? g_strdup_printf ("%s · %s", mode, words) : g_strdup (words);
  g_autofree char *label = g_strdup_printf ("%s, %s", name, subtitle);

  gtk_label_set_text (GTK_LABEL (self->title), name);
  gtk_label_set_text (GTK_LABEL (self->subtitle), subtitle);
  gtk_window_set_title (GTK_WINDOW (self), name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->setup_button), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

static void
show_meter (RwMainWindow *self)
{
  const RwLive *live = self->job != NULL ? rw_job_get_live (self->job) : NULL;
  const char *link = self->job != NULL ? rw_job_get_link_words (self->job) : NULL;

  if (live != NULL && live->has_value)
    {
      g_autofree char *value = rw_quantity_format (live->sample.value, live->sample.step, live->sample.kind);
      /* Translators: the value that the meter shows now. */
      g_autofree char *text = g_strdup_printf (live->settled.settled ? _ ("%s settled") : _ ("%s live"), value);

      gtk_button_set_label (self->meter_button, text);
    }
  else
    gtk_button_set_label (self->meter_button, link != NULL ? _ ("Meter: no value") : _ ("Meter…"));
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->meter_button), link != NULL ? link : _ ("Plug a meter in"));
}

static void
show_sentence (RwMainWindow *self)
{
  gboolean danger;
  RwTrimLive live;
  RwSentenceLive now = { rw_job_get_rail (self->job), rw_job_get_trim_live (self->job, &live), NULL };

  now.live = now.set != NULL ? &live : NULL;

  g_autofree char *text = rw_sentence_new (rw_job_get_state (self->job), &now, &danger);

  if (now.set != NULL)
    rw_trim_live_clear (&live);

  g_autofree char *off = rw_job_dup_off_now (self->job);

  gtk_label_set_text (self->sentence, danger ? "" : text);
  gtk_widget_set_visible (GTK_WIDGET (self->sentence),
                          !danger && rw_call_panel_get_hidden_here (self->call_panel) == NULL);
  rw_banner_show (self->danger, RW_BANNER_DANGER, off != NULL ? off : danger ? text : NULL, NULL, NULL);
}

static void
changed_cb (RwMainWindow *self)
{
  show_title (self);
  show_sentence (self);
  rw_main_window_update_actions (self);
}

/* A replay at full speed brings many changes a second; the window follows at the pace of the ticks. */
static void
live_cb (RwMainWindow *self)
{
  show_meter (self);
  show_sentence (self);
  rw_main_window_update_actions (self);
}

static void
noticed_cb (RwMainWindow *self,
            const char   *message)
{
  rw_banner_show (self->banner, RW_BANNER_QUIET, message, _ ("Close"), NULL);
}

static void
trouble_cb (RwMainWindow *self,
            const char   *message)
{
  rw_banner_show (self->trouble, RW_BANNER_WARNING, message, message != NULL ? _ ("Save in another place…") : NULL,
                  message != NULL ? _ ("Try again") : NULL);
}

static void
trouble_response_cb (RwMainWindow *self,
                     gboolean      first)
{
  if (first)
    rw_main_window_ask_move (self);
  else if (self->job != NULL)
    rw_job_flush (self->job, NULL); /* the banner stays or goes with what "trouble" says */
}

static void
banner_response_cb (RwMainWindow *self,
                    gboolean      first)
{
  rw_banner_show (self->banner, RW_BANNER_QUIET, NULL, NULL, NULL);
}

/* --- theme and text size -------------------------------------------------------------------------- */

static void
apply_theme (RwMainWindow *self)
{
  GtkSettings *settings = gtk_widget_get_settings (GTK_WIDGET (self));
  int dpi = 0;

  if (self->job == NULL)
    return;
  g_object_get (settings, "gtk-xft-dpi", &dpi, NULL);

  const gboolean contrast = rw_color_scheme_is_contrast ();
  const gboolean dark = rw_color_scheme_is_dark ();
  RwView *view = rw_job_get_view (self->job);

  rw_view_set_theme (view, contrast ? dark ? RW_THEME_DARK_CONTRAST : RW_THEME_LIGHT_CONTRAST
                           : dark   ? RW_THEME_DARK
                                    : RW_THEME_LIGHT);
  rw_view_set_text_scale (view, dpi > 0 ? dpi / (96.0 * 1024) : 1);
}

/* --- width ---------------------------------------------------------------------------------------- */

static void
arrange (RwMainWindow *self,
         int           width)
{
  const gboolean narrow = width < narrow_below;
  const gboolean wide = width >= wide_from;
  const gboolean side = narrow ? self->side_wanted : TRUE;

  gtk_widget_set_visible (GTK_WIDGET (self->side_button), narrow);
  gtk_revealer_set_reveal_child (GTK_REVEALER (self->side_revealer), side);
  gtk_widget_set_visible (self->side_revealer, side);
  gtk_widget_set_visible (self->plan_column, wide);
  rw_symptom_side_set_shows_plan (self->side, !wide);
  rw_plan_view_set_roomy (self->plan, wide);
}

static void
layout_cb (RwMainWindow *self,
           int           width)
{
  if (width == self->last_width)
    return;
  self->last_width = width;
  arrange (self, width);
}

static void
rw_main_window_realize (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (rw_main_window_parent_class)->realize (widget);
  g_signal_connect_object (gtk_native_get_surface (GTK_NATIVE (widget)), "layout", G_CALLBACK (layout_cb), widget,
                           G_CONNECT_SWAPPED);
}

void
rw_main_window_show_side (RwMainWindow *self,
                          gboolean      show)
{
  self->side_wanted = show;
  if (self->settings != NULL)
    g_settings_set_boolean (self->settings, "symptom-side-visible", show);
  arrange (self, self->last_width);
}

/* --- the job -------------------------------------------------------------------------------------- */

static void
follow_job (RwMainWindow *self)
{
  g_signal_connect_object (self->job, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->job, "live", G_CALLBACK (live_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->job, "link", G_CALLBACK (show_meter), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->job, "spot", G_CALLBACK (show_sentence), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->job, "noticed", G_CALLBACK (noticed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->job, "trouble", G_CALLBACK (trouble_cb), self, G_CONNECT_SWAPPED);
  apply_theme (self);
  rw_main_window_show_charts (self);
  changed_cb (self);
  show_meter (self);
  trouble_cb (self, rw_job_get_trouble (self->job));
}

static void
show_modes (RwMainWindow *self)
{
  const RwJobMode mode = rw_job_get_mode (self->job);

  gtk_widget_set_visible (GTK_WIDGET (self->practice), mode == RW_JOB_PRACTICE);
  gtk_widget_set_visible (GTK_WIDGET (self->entry), mode != RW_JOB_REPLAY);
  gtk_widget_set_visible (self->replay_box, mode == RW_JOB_REPLAY);
}

void
rw_main_window_set_job (RwMainWindow *self,
                        RwJob        *job)
{
  g_return_if_fail (RW_IS_MAIN_WINDOW (self));
  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (self->job, self);
  rw_symptom_side_set_job (self->side, job);
  rw_rail_strip_set_job (self->strip, job);
  rw_chart_view_set_job (self->chart, job);
  rw_trim_map_view_set_job (self->trim_map, job);
  rw_entry_row_set_job (self->entry, job);
  rw_plan_view_set_job (self->plan, job);
  rw_practice_bar_set_job (self->practice, job != NULL && rw_job_get_cabinet (job) != NULL ? job : NULL);
  rw_banner_show (self->banner, RW_BANNER_QUIET, NULL, NULL, NULL);
  g_clear_object (&self->job);
  self->job = job;
  gtk_stack_set_visible_child_name (self->stack, job != NULL ? "bench" : "doors");
  if (job != NULL)
    {
      show_modes (self);
      follow_job (self);
    }
  else
    {
      gtk_label_set_text (GTK_LABEL (self->title), _ ("Railwright"));
      gtk_label_set_text (GTK_LABEL (self->subtitle), _ ("no job is open"));
      show_meter (self);
    }
  rw_main_window_show_hands (self);
  rw_main_window_show_stages (self);
  rw_main_window_show_replay (self);
  rw_main_window_follow_watch (self);
  rw_main_window_show_class (self);
  rw_main_window_show_open_notes (self);
  rw_main_window_show_notes (self);
  rw_main_window_show_lesson (self);
  gtk_widget_set_visible (GTK_WIDGET (self->meter_button), job != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->setup_button), job != NULL);
  rw_main_window_update_actions (self);
}

gboolean
rw_main_window_is_free (RwMainWindow *self)
{
  return self->job == NULL && self->looking == NULL;
}

/* --- the type ------------------------------------------------------------------------------------- */

static gboolean
rw_main_window_close_request (GtkWindow *window)
{
  RwMainWindow *self = RW_MAIN_WINDOW (window);
  g_autoptr (GError) error = NULL;

  /* A job whose file cannot be written is not thrown away by closing the window. */
  if (self->job != NULL && !rw_job_flush (self->job, &error))
    {
      trouble_cb (self, error->message);
      return TRUE;
    }
  return GTK_WINDOW_CLASS (rw_main_window_parent_class)->close_request (window);
}

static void
rw_main_window_dispose (GObject *object)
{
  RwMainWindow *self = RW_MAIN_WINDOW (object);

  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (self->job, self);
  rw_main_window_drop_hands (self);
  rw_main_window_drop_watch (self);
  rw_main_window_drop_notes (self);
  rw_main_window_drop_open_notes (self);
  rw_main_window_drop_lesson (self);
  rw_main_window_drop_class (self);
  g_clear_pointer (&self->note_popover, gtk_widget_unparent);
  gtk_widget_dispose_template (GTK_WIDGET (self), RW_TYPE_MAIN_WINDOW);
  g_clear_object (&self->job);
  g_clear_object (&self->settings);
  G_OBJECT_CLASS (rw_main_window_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, title);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, subtitle);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, setup_button);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, side_button);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, meter_button);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, banner);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, danger);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, trouble);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, live_warning);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, asking);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, warning);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, due);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, offer);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, hands_button);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, big);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, stack);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, side);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, side_revealer);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, sides);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, side_bin);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, stages);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, strip);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, chart);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, chart_mode);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, charts);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, time_tools);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, trim_map);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, sentence);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, entry);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, practice);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, replay_bar);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, replay_box);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, decide_panel);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, plan_column);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, plan);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, project_button);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, class_words);
  gtk_widget_class_bind_template_child (widget_class, RwMainWindow, screen_menu);
}

static void
rw_main_window_class_init (RwMainWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_main_window_dispose;
  widget_class->realize = rw_main_window_realize;
  GTK_WINDOW_CLASS (klass)->close_request = rw_main_window_close_request;
  g_type_ensure (RW_TYPE_BANNER);
  g_type_ensure (RW_TYPE_BIG_VIEW);
  g_type_ensure (RW_TYPE_DOORS);
  g_type_ensure (RW_TYPE_SYMPTOM_SIDE);
  g_type_ensure (RW_TYPE_STAGE_SIDE);
  g_type_ensure (RW_TYPE_RAIL_STRIP);
  g_type_ensure (RW_TYPE_CHART_VIEW);
  g_type_ensure (RW_TYPE_TRIM_MAP_VIEW);
  g_type_ensure (RW_TYPE_ENTRY_ROW);
  g_type_ensure (RW_TYPE_PRACTICE_BAR);
  g_type_ensure (RW_TYPE_REPLAY_BAR);
  g_type_ensure (RW_TYPE_DECIDE_PANEL);
  g_type_ensure (RW_TYPE_PLAN_VIEW);
  g_type_ensure (RW_TYPE_NARROW_BIN);
  g_type_ensure (RW_TYPE_LOW_BIN);
  g_type_ensure (RW_TYPE_WRAP_BOX);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-main-window.ui");
  bind_children (widget_class);
  rw_main_window_install_actions (widget_class);
  rw_main_window_install_stage_actions (widget_class);
  rw_main_window_install_replay_actions (widget_class);
  rw_main_window_install_notes_actions (widget_class);
  rw_main_window_install_class_actions (widget_class);
  rw_main_window_install_lesson_actions (widget_class);
}

static void
aimed_cb (RwMainWindow *self)
{
  rw_entry_row_focus (self->entry);
}

static void
rw_main_window_init (RwMainWindow *self)
{
  GtkSettings *settings;

  gtk_widget_init_template (GTK_WIDGET (self));
  settings = gtk_widget_get_settings (GTK_WIDGET (self));
  g_signal_connect_swapped (self->side, "aimed", G_CALLBACK (aimed_cb), self);
  rw_main_window_add_stages (self);
  g_signal_connect_swapped (self->banner, "response", G_CALLBACK (banner_response_cb), self);
  g_signal_connect_swapped (self->trouble, "response", G_CALLBACK (trouble_response_cb), self);
  g_signal_connect_object (settings, "notify::gtk-application-prefer-dark-theme", G_CALLBACK (apply_theme), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (settings, "notify::gtk-theme-name", G_CALLBACK (apply_theme), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (settings, "notify::gtk-xft-dpi", G_CALLBACK (apply_theme), self, G_CONNECT_SWAPPED);
  rw_main_window_add_open_notes (self);
  rw_main_window_add_charts (self);
  rw_main_window_add_hands (self);
  rw_main_window_add_watch (self);
  rw_main_window_add_class (self);
  rw_main_window_add_lesson (self);
  rw_main_window_add_keys (self);
  rw_main_window_set_job (self, NULL);
}

GtkWidget *
rw_main_window_new (GtkApplication *application,
                    GSettings      *settings)
{
  RwMainWindow *self = g_object_new (RW_TYPE_MAIN_WINDOW, "application", application, NULL);

  if (settings != NULL)
    {
      self->settings = g_object_ref (settings);
      g_settings_bind (settings, "window-width", self, "default-width", G_SETTINGS_BIND_DEFAULT);
      g_settings_bind (settings, "window-height", self, "default-height", G_SETTINGS_BIND_DEFAULT);
      g_settings_bind (settings, "maximized", self, "maximized", G_SETTINGS_BIND_DEFAULT);
      self->side_wanted = g_settings_get_boolean (settings, "symptom-side-visible");
      rw_main_window_recall_class (self);
    }
  return GTK_WIDGET (self);
}
