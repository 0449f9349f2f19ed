/* rw-replay-bar.c: plays a saved session.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-replay-bar.h"

#include <glib/gi18n-lib.h>

#include "rw-chapter-veil.h"
#include "rw-compat.h"
#include "rw-quantity.h"
#include "rw-replay-chapters.h"
#include "rw-scrub-bar.h"
#include "rw-wrap-box.h"

struct _RwReplayBar
{
  GtkWidget        parent_instance;
  RwJob           *job;
  RwReplay        *replay; /* the job's; borrowed */
  GtkWidget       *box;
  RwScrubBar      *scrub;
  GtkButton       *play;
  GtkDropDown     *speed;
  GtkToggleButton *skip;
  GtkMenuButton   *chapter;
  GtkLabel        *chapter_title;
  GtkMenuButton   *jump;
  GtkLabel        *clock;
  GtkLabel        *now;
  GtkWidget       *chapters; /* the list; of the button */
  const char      *hidden;   /* (nullable) interned id of a rail */
  gboolean         veiled;   /* what is to come is not told */
  gboolean         filling;  /* controls follow the replay, not a person */
};

G_DEFINE_FINAL_TYPE (RwReplayBar, rw_replay_bar, GTK_TYPE_WIDGET)

/* What happened last, in words; samples are passed over. */
static char *
describe_last (RwReplayBar *self)
{
  RwSession *session = rw_replay_get_target (self->replay);
  const guint n = rw_session_get_n_landmarks (session);

  const RwEvent *event = n > 0 ? rw_session_get_event (session, rw_session_get_landmark (session, n - 1)) : NULL;

  if (event == NULL || (event->type == RW_EVENT_READING && event->reading.rail == self->hidden))
    return g_strdup (_ ("Replay of a saved file: nothing is written."));

  g_autofree char *what = rw_job_describe (self->job, event);

  /* Translators: what happened last in the replay. */
  return g_strdup_printf (_ ("Replay of a saved file: nothing is written. Last: %s"), what);
}

static void
show_chapter (RwReplayBar *self)
{
  guint index = 0;
  const RwChapter *chapter = rw_replay_get_chapter (self->replay, &index);
  g_autofree char *title = NULL, *words = NULL;

  gtk_widget_set_sensitive (GTK_WIDGET (self->chapter), chapter != NULL);
  if (chapter == NULL)
    return;

  const guint now = rw_session_get_n_events (rw_replay_get_target (self->replay));
  const RwChapterVeil veil = { rw_replay_get_source (self->replay), self->hidden, self->veiled ? now : G_MAXUINT };

  title = rw_chapter_veil_dup_title (&veil, chapter);
  /* Translators: number of the chapter, count of chapters, its title. */
  words = g_strdup_printf (_ ("%u of %u: %s"), index + 1, rw_chapters_get_n (rw_replay_get_chapters (self->replay)),
                           title);
  if (g_strcmp0 (gtk_label_get_text (self->chapter_title), words) == 0)
    return;
  gtk_label_set_text (self->chapter_title, words);

  g_autofree char *tip = g_strdup_printf ("%s\n%s", words, _ ("All chapters (Ctrl+G)"));

  gtk_widget_set_tooltip_text (GTK_WIDGET (self->chapter), tip); /* the label may be cut */

  /* Translators: what the button that lists the chapters is called; %s is the present one. */
  g_autofree char *name = g_strdup_printf (_ ("Chapter %s"), words);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self->chapter), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static void
moved_cb (RwReplayBar *self)
{
  g_autofree char *at = rw_quantity_format_clock (rw_replay_get_position (self->replay));
  g_autofree char *of = rw_quantity_format_clock (rw_replay_get_length (self->replay));
  g_autofree char *clock = g_strdup_printf ("\u2066%s / %s\u2069", at, of); /* left to right, whatever the text does */
  g_autofree char *last = describe_last (self);

  gtk_label_set_text (self->clock, clock);
  if (g_strcmp0 (gtk_label_get_text (self->now), last) != 0)
    {
      gtk_label_set_text (self->now, last);
      gtk_widget_set_tooltip_text (GTK_WIDGET (self->now), last);
    }
  gtk_button_set_label (self->play, rw_replay_get_playing (self->replay) ? _ ("Pause") : _ ("Play"));
  show_chapter (self);
}

static void
settings_cb (RwReplayBar *self)
{
  self->filling = TRUE;
  gtk_drop_down_set_selected (self->speed, rw_replay_get_nearest_speed (self->replay));
  gtk_toggle_button_set_active (self->skip, rw_replay_get_skips_waiting (self->replay));
  self->filling = FALSE;
}

static void
skip_cb (RwReplayBar *self)
{
  if (!self->filling && self->replay != NULL)
    rw_replay_set_skips_waiting (self->replay, gtk_toggle_button_get_active (self->skip));
}

/* From where a chapter was chosen Space plays on and the arrows move, instead of opening the list again. */
static void
list_closed_cb (RwReplayBar *self)
{
  if (self->replay != NULL)
    gtk_widget_grab_focus (GTK_WIDGET (self->scrub));
}

static void
speed_cb (RwReplayBar *self)
{
  if (self->filling || self->replay == NULL)
    return;
  rw_replay_set_speed (self->replay,
                       rw_replay_speeds[MIN (gtk_drop_down_get_selected (self->speed), RW_REPLAY_N_SPEEDS - 1)]);
}

void
rw_replay_bar_list_chapters (RwReplayBar *self)
{
  g_return_if_fail (RW_IS_REPLAY_BAR (self));
  if (self->replay != NULL && rw_replay_get_chapters (self->replay) != NULL)
    gtk_menu_button_popup (self->chapter);
}

void
rw_replay_bar_set_veiled (RwReplayBar *self,
                          gboolean     veiled)
{
  g_return_if_fail (RW_IS_REPLAY_BAR (self));
  self->veiled = veiled;
  rw_scrub_bar_set_veiled (self->scrub, veiled);
  rw_replay_chapters_set_veiled (RW_REPLAY_CHAPTERS (self->chapters), veiled);
  if (self->replay != NULL)
    show_chapter (self);
}

void
rw_replay_bar_hide_rail (RwReplayBar *self,
                         const char  *rail)
{
  g_return_if_fail (RW_IS_REPLAY_BAR (self));
  self->hidden = g_intern_string (rail);
  rw_scrub_bar_hide_rail (self->scrub, rail);
  rw_replay_chapters_hide_rail (RW_REPLAY_CHAPTERS (self->chapters), rail);
  if (self->replay != NULL)
    moved_cb (self);
}

void
rw_replay_bar_set_job (RwReplayBar *self,
                       RwJob       *job)
{
  g_return_if_fail (RW_IS_REPLAY_BAR (self));
  if (self->replay != NULL)
    g_signal_handlers_disconnect_by_data (self->replay, self);
  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (self->job, self);
  g_set_object (&self->job, job);
  self->replay = job != NULL ? rw_job_get_replay (job) : NULL;
  self->hidden = NULL;
  self->veiled = FALSE;
  rw_scrub_bar_set_job (self->scrub, job);
  rw_replay_chapters_set_job (RW_REPLAY_CHAPTERS (self->chapters), job);
  if (self->replay == NULL)
    return;
  g_signal_connect_object (self->replay, "moved", G_CALLBACK (moved_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (job, "advice", G_CALLBACK (moved_cb), self, G_CONNECT_SWAPPED); /* it brings the words */
  g_signal_connect_object (self->replay, "settings-changed", G_CALLBACK (settings_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->replay, "chapters-changed", G_CALLBACK (show_chapter), self, G_CONNECT_SWAPPED);
  settings_cb (self);
  moved_cb (self);
}

static void
rw_replay_bar_dispose (GObject *object)
{
  RwReplayBar *self = RW_REPLAY_BAR (object);

  self->replay = NULL;
  g_clear_object (&self->job);
  gtk_widget_dispose_template (GTK_WIDGET (self), RW_TYPE_REPLAY_BAR);
  G_OBJECT_CLASS (rw_replay_bar_parent_class)->dispose (object);
}

static void
rw_replay_bar_class_init (RwReplayBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_replay_bar_dispose;
  g_type_ensure (RW_TYPE_SCRUB_BAR);
  g_type_ensure (RW_TYPE_WRAP_BOX);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-replay-bar.ui");
  gtk_widget_class_bind_template_child (widget_class, RwReplayBar, box);
  gtk_widget_class_bind_template_child (widget_class, RwReplayBar, scrub);
  gtk_widget_class_bind_template_child (widget_class, RwReplayBar, play);
  gtk_widget_class_bind_template_child (widget_class, RwReplayBar, skip);
  gtk_widget_class_bind_template_child (widget_class, RwReplayBar, chapter);
  gtk_widget_class_bind_template_child (widget_class, RwReplayBar, chapter_title);
  gtk_widget_class_bind_template_child (widget_class, RwReplayBar, jump);
  gtk_widget_class_bind_template_child (widget_class, RwReplayBar, speed);
  gtk_widget_class_bind_template_child (widget_class, RwReplayBar, clock);
  gtk_widget_class_bind_template_child (widget_class, RwReplayBar, now);
}

static void
rw_replay_bar_init (RwReplayBar *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  gtk_widget_init_template (GTK_WIDGET (self));
  for (guint i = 0; i < RW_REPLAY_N_SPEEDS; i++)
    {
      g_autofree char *number = rw_quantity_format_number (rw_replay_speeds[i], rw_replay_speeds[i] < 0.5 ? 2 : rw_replay_speeds[i] < 1 ? 1 : 0);
      g_autofree char *name = g_strdup_printf ("\u2066×%s\u2069", number);

      gtk_string_list_append (names, name);
    }
  self->filling = TRUE;
  gtk_drop_down_set_model (self->speed, G_LIST_MODEL (names));
  self->filling = FALSE;
  rw_compat_name_drop_down (self->speed, _ ("Speed"));
  self->chapters = rw_replay_chapters_new ();
  gtk_menu_button_set_popover (self->chapter, self->chapters);
  g_signal_connect_object (self->chapters, "closed", G_CALLBACK (list_closed_cb), self, G_CONNECT_SWAPPED);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->jump), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Jump to"), -1);
  g_signal_connect_swapped (self->skip, "toggled", G_CALLBACK (skip_cb), self);
  g_signal_connect_swapped (self->speed, "notify::selected", G_CALLBACK (speed_cb), self);
}
