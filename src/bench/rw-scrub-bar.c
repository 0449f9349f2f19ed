/* rw-scrub-bar.c: a whole session in small, to move about in.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Three layers: the picture, drawn when the chapters, the skipping or the look change; the cursors, drawn with every
 * move; and a label that follows the pointer. What is said to those who hear it changes once a second at most while
 * the replay plays, since each change is told to everybody who listens.
 */
#include "config.h"

#include "rw-scrub-bar.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-chapter-veil.h"
#include "rw-quantity.h"
#include "rw-scrub-picture.h"

struct _RwScrubBar
{
  GtkWidget       parent_instance;
  RwJob          *job;
  RwReplay       *replay; /* the job's; borrowed */
  RwScrubPicture *picture;
  GtkWidget      *ground;  /* the picture */
  GtkWidget      *cursors;
  GtkWidget      *readout;
  const char     *hidden;  /* (nullable) interned id of a rail */
  double          until;   /* seconds; INFINITY: nothing is veiled */
  double          hover_t; /* seconds; NaN: the pointer is elsewhere */
  double          pressed_x;
  gint64          said_at; /* monotonic µs */
  int             window_height; /* pixels; 0: not known yet */
};

G_DEFINE_FINAL_TYPE (RwScrubBar, rw_scrub_bar, GTK_TYPE_WIDGET)

static const gint64 say_every = G_USEC_PER_SEC;
static const double small_share = 0.01, large_share = 0.1;

/* Between pointer and read-out, pixels. */
static const double beside = 10;

static const int least_width = 120;

/* A window lower than this, at text scale 1, needs its height for other things: the bar does with its least. */
static const double low_window = 640;

/* --- drawing -------------------------------------------------------------------------------------- */

static void
draw_ground (GtkDrawingArea *area,
             cairo_t        *cr,
             int             width,
             int             height,
             gpointer        data)
{
  RwScrubBar *self = data;

  if (self->picture != NULL)
    rw_scrub_picture_ink (self->picture, cr, width, height, gtk_widget_get_scale_factor (GTK_WIDGET (area)));
}

static void
draw_cursors (GtkDrawingArea *area,
              cairo_t        *cr,
              int             width,
              int             height,
              gpointer        data)
{
  RwScrubBar *self = data;

  if (self->picture == NULL)
    return;
  if (!isnan (self->hover_t))
    rw_scrub_picture_ink_cursor (self->picture, cr, self->hover_t, FALSE);
  rw_scrub_picture_ink_cursor (self->picture, cr, rw_replay_get_position (self->replay), TRUE);
}

/* --- words ---------------------------------------------------------------------------------------- */

/* The chapter that second @t falls in. (nullable) */
static const RwChapter *
chapter_at (RwScrubBar *self,
            double      t)
{
  RwChapters *chapters = rw_replay_get_chapters (self->replay);
  const RwChapter *found = NULL;

  for (guint i = 0; chapters != NULL && i < rw_chapters_get_n (chapters); i++)
    if (rw_chapters_get (chapters, i)->t <= t)
      found = rw_chapters_get (chapters, i);
  return found;
}

static RwChapterVeil
veil_of (RwScrubBar *self)
{
  const guint now = rw_session_get_n_events (rw_replay_get_target (self->replay));

  return (RwChapterVeil) { rw_replay_get_source (self->replay), self->hidden, isfinite (self->until) ? now : G_MAXUINT };
}

static char *
describe_hover (RwScrubBar *self)
{
  const RwChapter *chapter = chapter_at (self, self->hover_t);
  g_autofree char *clock = rw_quantity_format_clock (self->hover_t);

  if (chapter == NULL || self->hover_t > self->until)
    return g_steal_pointer (&clock);

  const RwChapterVeil veil = veil_of (self);
  g_autofree char *title = rw_chapter_veil_dup_title (&veil, chapter);
  g_autofree char *change = rw_chapter_veil_dup_change (&veil, chapter);

  return *change != '\0' ? g_strdup_printf ("%s · %s\n%s", clock, title, change)
                         : g_strdup_printf ("%s · %s", clock, title);
}

static char *
describe_position (RwScrubBar *self)
{
  guint index = 0;
  const RwChapter *chapter = rw_replay_get_chapter (self->replay, &index);
  g_autofree char *at = rw_quantity_format_clock (rw_replay_get_position (self->replay));
  g_autofree char *of = rw_quantity_format_clock (rw_replay_get_length (self->replay));

  if (chapter == NULL)
    /* Translators: a moment of the replay, its whole length. */
    return g_strdup_printf (_ ("%s of %s"), at, of);

  const RwChapterVeil veil = veil_of (self);
  g_autofree char *title = rw_chapter_veil_dup_title (&veil, chapter);

  /* Translators: a moment of the replay, its whole length, number of the chapter, count of chapters, its title. */
  return g_strdup_printf (_ ("%s of %s, chapter %u of %u: %s"), at, of, index + 1,
                          rw_chapters_get_n (rw_replay_get_chapters (self->replay)), title);
}

static void
say_position (RwScrubBar *self)
{
  const gint64 now = g_get_monotonic_time ();
  g_autofree char *words = NULL;

  if (rw_replay_get_playing (self->replay) && now - self->said_at < say_every)
    return;
  self->said_at = now;
  words = describe_position (self);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, words, GTK_ACCESSIBLE_PROPERTY_VALUE_MIN, 0.0,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_MAX, rw_replay_get_length (self->replay),
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_NOW, rw_replay_get_position (self->replay), -1);
}

static void
show_readout (RwScrubBar *self)
{
  g_autofree char *words = NULL;

  gtk_widget_set_visible (self->readout, !isnan (self->hover_t));
  if (isnan (self->hover_t))
    return;
  words = describe_hover (self);
  gtk_label_set_text (GTK_LABEL (self->readout), words);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

/* --- following ------------------------------------------------------------------------------------ */

static void
redraw (RwScrubBar *self)
{
  gtk_widget_queue_draw (self->ground);
  gtk_widget_queue_draw (self->cursors);
}

static void
veil_after (RwScrubBar *self,
            double      t)
{
  self->until = t;
  if (self->picture == NULL)
    return;
  rw_scrub_picture_set_until (self->picture, t, veil_of (self).n_events);
  redraw (self);
}

/* While it plays the veil stays behind: drawing it anew with every frame would cost more than all the rest. */
static void
moved_cb (RwScrubBar *self)
{
  const double position = rw_replay_get_position (self->replay);

  if (isfinite (self->until) && (position < self->until || !rw_replay_get_playing (self->replay)))
    veil_after (self, position);
  gtk_widget_queue_draw (self->cursors);
  say_position (self);
}

static void
settings_cb (RwScrubBar *self)
{
  rw_scrub_picture_set_idle (self->picture, rw_replay_get_skips_waiting (self->replay)
                                                ? rw_replay_get_idle (self->replay)
                                                : NULL);
  redraw (self);
}

static void
chapters_cb (RwScrubBar *self)
{
  rw_scrub_picture_set_chapters (self->picture, rw_replay_get_chapters (self->replay));
  redraw (self);
  self->said_at = 0;
  say_position (self);
}

static void
look_cb (RwScrubBar *self)
{
  RwView *view = rw_job_get_view (self->job);

  rw_scrub_picture_set_look (self->picture, rw_view_get_theme (view), rw_view_get_text_scale (view));
  gtk_widget_queue_resize (GTK_WIDGET (self));
  redraw (self);
}

void
rw_scrub_bar_hide_rail (RwScrubBar *self,
                        const char *rail)
{
  g_return_if_fail (RW_IS_SCRUB_BAR (self));
  self->hidden = g_intern_string (rail);
  if (self->picture == NULL)
    return;
  rw_scrub_picture_set_hidden (self->picture, self->hidden);
  redraw (self);
  self->said_at = 0;
  say_position (self);
}

void
rw_scrub_bar_set_veiled (RwScrubBar *self,
                         gboolean    veiled)
{
  g_return_if_fail (RW_IS_SCRUB_BAR (self));
  veil_after (self, veiled && self->replay != NULL ? rw_replay_get_position (self->replay) : (double) INFINITY);
  if (self->replay == NULL)
    return;
  self->said_at = 0;
  say_position (self);
}

void
rw_scrub_bar_set_job (RwScrubBar *self,
                      RwJob      *job)
{
  g_return_if_fail (RW_IS_SCRUB_BAR (self));
  if (self->replay != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->replay, self);
      g_signal_handlers_disconnect_by_data (rw_job_get_view (self->job), self);
    }
  g_clear_pointer (&self->picture, rw_scrub_picture_free);
  g_set_object (&self->job, job);
  self->replay = job != NULL ? rw_job_get_replay (job) : NULL;
  self->hidden = NULL;
  self->until = INFINITY;
  self->hover_t = NAN;
  if (self->replay == NULL)
    return;
  self->picture = rw_scrub_picture_new (rw_replay_get_source (self->replay));
  g_signal_connect_object (self->replay, "moved", G_CALLBACK (moved_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->replay, "settings-changed", G_CALLBACK (settings_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->replay, "chapters-changed", G_CALLBACK (chapters_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (rw_job_get_view (job), "notify::theme", G_CALLBACK (look_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (rw_job_get_view (job), "notify::text-scale", G_CALLBACK (look_cb), self, G_CONNECT_SWAPPED);
  settings_cb (self);
  chapters_cb (self);
  look_cb (self);
}

/* --- pointer and keys ----------------------------------------------------------------------------- */

static void
hover_at (RwScrubBar *self,
          double      t)
{
  self->hover_t = t;
  gtk_widget_queue_draw (self->cursors);
  show_readout (self);
}

static void
motion_cb (GtkEventControllerMotion *controller,
           double                    x,
           double                    y,
           RwScrubBar               *self)
{
  if (self->picture != NULL)
    hover_at (self, rw_scrub_picture_time_at (self->picture, x));
}

static void
leave_cb (RwScrubBar *self)
{
  hover_at (self, NAN);
}

static void
drag_begin_cb (GtkGestureDrag *drag,
               double          x,
               double          y,
               RwScrubBar     *self)
{
  self->pressed_x = x;
  gtk_widget_grab_focus (GTK_WIDGET (self));
  if (self->picture != NULL)
    rw_replay_seek (self->replay, rw_scrub_picture_time_at (self->picture, x));
}

static void
drag_update_cb (GtkGestureDrag *drag,
                double          x,
                double          y,
                RwScrubBar     *self)
{
  if (self->picture != NULL)
    rw_replay_seek (self->replay, rw_scrub_picture_time_at (self->picture, self->pressed_x + x));
}

/* @share: of what there is to play. */
static void
move_by (RwScrubBar *self,
         double      share)
{
  const double x = rw_scrub_picture_x_at (self->picture, rw_replay_get_position (self->replay));
  const double width = gtk_widget_get_width (self->ground);

  rw_replay_seek (self->replay, rw_scrub_picture_time_at (self->picture, x + share * width));
}

static gboolean
key_cb (GtkEventControllerKey *controller,
        guint                  keyval,
        guint                  keycode,
        GdkModifierType        modifiers,
        RwScrubBar            *self)
{
  const double share = (modifiers & GDK_SHIFT_MASK) != 0 ? large_share : small_share;

  if (self->picture == NULL || (modifiers & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0)
    return FALSE;
  switch (keyval)
    {
    case GDK_KEY_Left:
    case GDK_KEY_Right:
      move_by (self, keyval == GDK_KEY_Right ? share : -share);
      return TRUE;
    case GDK_KEY_Page_Up:
    case GDK_KEY_Page_Down:
      move_by (self, keyval == GDK_KEY_Page_Down ? large_share : -large_share);
      return TRUE;
    case GDK_KEY_Home:
    case GDK_KEY_End:
      rw_replay_seek (self->replay, keyval == GDK_KEY_End ? rw_replay_get_length (self->replay) : 0);
      return TRUE;
    default:
      return FALSE;
    }
}

/* --- the widget ----------------------------------------------------------------------------------- */

static gboolean
is_compact (RwScrubBar *self)
{
  const double scale = rw_view_get_text_scale (rw_job_get_view (self->job));

  return self->window_height > 0 && self->window_height < low_window * scale;
}

static void
layout_cb (RwScrubBar *self,
           int         width,
           int         height)
{
  if (height == self->window_height)
    return;
  self->window_height = height;
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

static void
realize (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (rw_scrub_bar_parent_class)->realize (widget);
  g_signal_connect_object (gtk_native_get_surface (gtk_widget_get_native (widget)), "layout", G_CALLBACK (layout_cb),
                           widget, G_CONNECT_SWAPPED);
}

static void
measure (GtkWidget     *widget,
         GtkOrientation orientation,
         int            for_size,
         int           *minimum,
         int           *natural,
         int           *minimum_baseline,
         int           *natural_baseline)
{
  RwScrubBar *self = RW_SCRUB_BAR (widget);
  RwScrubPicture *picture = self->picture;

  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? least_width : 0;
  if (picture == NULL || orientation == GTK_ORIENTATION_HORIZONTAL)
    return;
  *minimum = (int) ceil (rw_scrub_picture_get_least_height (picture));
  *natural = is_compact (self) ? *minimum : (int) ceil (rw_scrub_picture_get_height (picture));
}

/* The read-out stands beside the pointer, on the side where there is room, and above the bar's lower edge. */
static void
place_readout (RwScrubBar *self,
               int         width,
               int         height)
{
  GtkRequisition size;
  double x;

  if (!gtk_widget_get_visible (self->readout) || self->picture == NULL || isnan (self->hover_t))
    return;
  gtk_widget_get_preferred_size (self->readout, &size, NULL);
  x = rw_scrub_picture_x_at (self->picture, self->hover_t) + beside;
  if (x + size.width > width)
    x -= size.width + 2 * beside;

  GtkAllocation at = { (int) CLAMP (x, 0, MAX (width - size.width, 0)), -size.height - 3, size.width, size.height };

  gtk_widget_size_allocate (self->readout, &at, -1);
}

static void
size_allocate (GtkWidget *widget,
               int        width,
               int        height,
               int        baseline)
{
  RwScrubBar *self = RW_SCRUB_BAR (widget);

  gtk_widget_allocate (self->ground, width, height, -1, NULL);
  gtk_widget_allocate (self->cursors, width, height, -1, NULL);
  place_readout (self, width, height);
}

static void
rw_scrub_bar_dispose (GObject *object)
{
  RwScrubBar *self = RW_SCRUB_BAR (object);

  rw_scrub_bar_set_job (self, NULL);
  g_clear_pointer (&self->ground, gtk_widget_unparent);
  g_clear_pointer (&self->cursors, gtk_widget_unparent);
  g_clear_pointer (&self->readout, gtk_widget_unparent);
  G_OBJECT_CLASS (rw_scrub_bar_parent_class)->dispose (object);
}

static void
rw_scrub_bar_class_init (RwScrubBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_scrub_bar_dispose;
  widget_class->realize = realize;
  widget_class->measure = measure;
  widget_class->size_allocate = size_allocate;
  gtk_widget_class_set_css_name (widget_class, "scrubbar");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_SLIDER);
}

static GtkWidget *
add_layer (RwScrubBar            *self,
           GtkDrawingAreaDrawFunc draw)
{
  GtkWidget *layer = gtk_drawing_area_new ();

  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (layer), draw, self, NULL);
  gtk_widget_set_can_target (layer, FALSE);
  gtk_widget_set_parent (layer, GTK_WIDGET (self));
  return layer;
}

static void
add_input (RwScrubBar *self)
{
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *key = gtk_event_controller_key_new ();
  GtkGesture *drag = gtk_gesture_drag_new ();

  g_signal_connect (motion, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (leave_cb), self);
  g_signal_connect (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect (key, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
  gtk_widget_add_controller (GTK_WIDGET (self), key);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
}

static void
rw_scrub_bar_init (RwScrubBar *self)
{
  self->hover_t = NAN;
  self->until = INFINITY;
  self->ground = add_layer (self, draw_ground);
  self->cursors = add_layer (self, draw_cursors);
  self->readout = gtk_label_new (NULL);
  gtk_widget_add_css_class (self->readout, "scrub-readout");
  gtk_widget_set_can_target (self->readout, FALSE);
  gtk_widget_set_visible (self->readout, FALSE);
  gtk_widget_set_parent (self->readout, GTK_WIDGET (self));
  add_input (self);
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Moment in the session"), -1);
}
