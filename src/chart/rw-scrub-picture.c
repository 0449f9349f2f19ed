/* rw-scrub-picture.c: a whole session in small.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *     ├ Low at the board ─┤├ 3 turns of the trim ──┤├─┤    chapters, by turns in two tints, named where there is room
 *     ─────────│──│──│───────────△──────────────────────    strong limit; a line at each turn, a sign at each warning
 *     ~~~~~~~~~~~~~~~~~~~~~~~~~~~~~////~~~~~~~~~~~~~~~~    rails as position; hatched where the waiting is skipped
 *     ──'──'───'─────'─────'──────────────────────'────    weak limit; a tick at each kept reading
 */
#include "config.h"

#include "rw-scrub-picture.h"

#include <math.h>

#include "rw-chapter-veil.h"
#include "rw-chart-data.h"
#include "rw-chart-text.h"
#include "rw-ink.h"

/* Pixels at text scale 1. */
static const double body_height = 34, least_body = 14, pad = 3, thickness = 1.4, handle = 5, sign = 8, tick = 4;

/* The body reaches from minus to plus so many halves of the space between the limits. */
static const double reach = 1.7;

/* A chapter narrower than this has no title; no shorter session has a length. */
static const double least_room = 24, least_seconds = 1e-3;

struct _RwScrubPicture
{
  RwSession   *session;
  RwChartData *data;
  RwChapters  *chapters; /* (nullable) */
  const RwIdle *idle;    /* (nullable) */
  const char   *hidden;  /* (nullable) interned id of a rail */
  double        until;   /* seconds; what comes after is covered */
  guint         n_until; /* events that have happened there */
  RwThemeId    theme_id;
  double       scale;
  RwChartText *text;     /* NULL: to be made for this scale */
  double       width, height, device_scale; /* as last inked */
  cairo_surface_t *kept; /* NULL: to be drawn */
};

RwScrubPicture *
rw_scrub_picture_new (RwSession *session)
{
  g_return_val_if_fail (RW_IS_SESSION (session), NULL);

  RwScrubPicture *self = g_new0 (RwScrubPicture, 1);

  self->session = g_object_ref (session);
  self->data = rw_chart_data_for (session);
  self->scale = 1;
  self->until = INFINITY;
  self->n_until = G_MAXUINT;
  self->width = self->height = self->device_scale = 1;
  return self;
}

static void
drop_kept (RwScrubPicture *self)
{
  g_clear_pointer (&self->kept, cairo_surface_destroy);
}

void
rw_scrub_picture_free (RwScrubPicture *self)
{
  if (self == NULL)
    return;
  drop_kept (self);
  g_clear_pointer (&self->text, rw_chart_text_free);
  g_clear_pointer (&self->chapters, rw_chapters_unref);
  g_object_unref (self->data);
  g_object_unref (self->session);
  g_free (self);
}

void
rw_scrub_picture_set_chapters (RwScrubPicture *self,
                               RwChapters     *chapters)
{
  RwChapters *ours = chapters != NULL ? rw_chapters_ref (chapters) : NULL;

  g_clear_pointer (&self->chapters, rw_chapters_unref);
  self->chapters = ours;
  drop_kept (self);
}

void
rw_scrub_picture_set_idle (RwScrubPicture *self,
                           const RwIdle   *idle)
{
  if (self->idle == idle)
    return;
  self->idle = idle;
  drop_kept (self);
}

void
rw_scrub_picture_set_hidden (RwScrubPicture *self,
                             const char     *rail)
{
  self->hidden = g_intern_string (rail);
  drop_kept (self);
}

void
rw_scrub_picture_set_until (RwScrubPicture *self,
                            double          t,
                            guint           n_events)
{
  if (self->until == t && self->n_until == n_events)
    return;
  self->until = t;
  self->n_until = n_events;
  drop_kept (self);
}

void
rw_scrub_picture_set_look (RwScrubPicture *self,
                           RwThemeId       theme,
                           double          text_scale)
{
  if (self->theme_id == theme && self->scale == text_scale)
    return;
  self->theme_id = theme;
  self->scale = text_scale;
  g_clear_pointer (&self->text, rw_chart_text_free);
  drop_kept (self);
}

static RwChartText *
get_text (RwScrubPicture *self)
{
  if (self->text == NULL)
    self->text = rw_chart_text_new (NULL, self->scale, TRUE);
  return self->text;
}

static double
band_height (RwScrubPicture *self)
{
  return ceil (rw_chart_text_height (get_text (self), RW_TEXT_CAPTION) + 2 * pad * self->scale);
}

double
rw_scrub_picture_get_height (RwScrubPicture *self)
{
  return band_height (self) + ceil (body_height * self->scale);
}

double
rw_scrub_picture_get_least_height (RwScrubPicture *self)
{
  return band_height (self) + ceil (least_body * self->scale);
}

/* --- the axes ------------------------------------------------------------------------------------- */

static double
length_of (RwScrubPicture *self)
{
  const double end = rw_session_get_end (self->session);

  return MAX (self->idle != NULL ? rw_idle_to_play (self->idle, end) : end, least_seconds);
}

double
rw_scrub_picture_x_at (RwScrubPicture *self,
                       double          t)
{
  const double at = self->idle != NULL ? rw_idle_to_play (self->idle, t) : t;

  return CLAMP (at / length_of (self), 0, 1) * self->width;
}

double
rw_scrub_picture_time_at (RwScrubPicture *self,
                          double          x)
{
  const double at = CLAMP (x / self->width, 0, 1) * length_of (self);
  const double t = self->idle != NULL ? rw_idle_to_session (self->idle, at) : at;

  return CLAMP (t, 0, MAX (rw_session_get_end (self->session), 0));
}

static double
y_of (RwScrubPicture *self,
      double          position)
{
  const double edge = thickness * self->scale; /* what lies beyond is still seen along the edge */
  const double top = band_height (self) + edge, bottom = self->height - edge;

  return (top + bottom) / 2 - CLAMP (position, -reach, reach) / reach * (bottom - top) / 2;
}

/* Where the cover begins. */
static double
cover_x (RwScrubPicture *self)
{
  return isfinite (self->until) ? rw_scrub_picture_x_at (self, self->until) : self->width;
}

/* --- chapters ------------------------------------------------------------------------------------- */

static void
ink_title (RwScrubPicture  *self,
           cairo_t         *cr,
           const RwChapter *chapter,
           double           left,
           double           right)
{
  const double edge = pad * self->scale;
  const RwChapterVeil veil = { self->session, self->hidden, self->n_until };
  g_autofree char *title = rw_chapter_veil_dup_title (&veil, chapter);
  g_autofree char *words = right - left > least_room * self->scale
                               ? rw_chart_text_fit (get_text (self), RW_TEXT_CAPTION, title, right - left - 2 * edge)
                               : NULL;

  if (words != NULL)
    rw_chart_text_ink (get_text (self), cr, RW_TEXT_CAPTION, words, left + edge, band_height (self) / 2, 0,
                       rw_theme_get (self->theme_id)->ink);
}

static void
ink_chapters (RwScrubPicture *self,
              cairo_t        *cr)
{
  const RwTheme *theme = rw_theme_get (self->theme_id);
  const double height = band_height (self);

  for (guint i = 0; self->chapters != NULL && i < rw_chapters_get_n (self->chapters); i++)
    {
      const RwChapter *chapter = rw_chapters_get (self->chapters, i);
      const double left = rw_scrub_picture_x_at (self, chapter->t), right = rw_scrub_picture_x_at (self, chapter->end);

      rw_ink_color (cr, rw_ink_mixed (theme->ink, theme->paper, i % 2 == 0 ? 0.06 : 0.14));
      cairo_rectangle (cr, left, 0, right - left, height);
      cairo_fill (cr);
      rw_ink_color (cr, theme->line);
      cairo_set_line_width (cr, theme->weight);
      if (i > 0)
        rw_ink_line (cr, rw_ink_crisp (left), 0, rw_ink_crisp (left), height);
      ink_title (self, cr, chapter, left, MIN (right, cover_x (self)));
    }
}

/* --- the rails ------------------------------------------------------------------------------------ */

static void
ink_limits (RwScrubPicture *self,
            cairo_t        *cr)
{
  const RwTheme *theme = rw_theme_get (self->theme_id);

  rw_ink_color (cr, theme->line);
  cairo_set_line_width (cr, theme->weight);
  for (int limit = -1; limit <= 1; limit += 2)
    rw_ink_line (cr, 0, rw_ink_crisp (y_of (self, limit)), self->width, rw_ink_crisp (y_of (self, limit)));
}

static gboolean
is_shown (const RwChartChannel *channel)
{
  return channel->kind == RW_KIND_DC && channel->limited && channel->place != RW_PLACE_WIRE;
}

/* One column a pixel: what the samples cover there. */
static void
ink_samples (RwScrubPicture       *self,
             cairo_t              *cr,
             const RwChartChannel *channel)
{
  const double thick = thickness * self->scale;

  for (double x = 0; x < self->width; x++)
    {
      const double from = rw_scrub_picture_time_at (self, x), to = rw_scrub_picture_time_at (self, x + 1);
      RwSpan span;

      if (!(to > from))
        continue;
      rw_pyramid_columns (channel->samples, from, to - from, 1, &span);
      if (isnan (span.lo) || isnan (span.hi))
        continue;

      const double a = y_of (self, channel->gain * span.lo + channel->offset);
      const double b = y_of (self, channel->gain * span.hi + channel->offset);

      cairo_rectangle (cr, x, MIN (a, b) - thick / 2, 1, fabs (a - b) + thick);
    }
  cairo_fill (cr);
}

static void
ink_readings (RwScrubPicture       *self,
              cairo_t              *cr,
              const RwChartChannel *channel)
{
  for (guint i = 0; i < channel->readings->len; i++)
    {
      const RwChartReading *reading = &g_array_index (channel->readings, RwChartReading, i);

      if (reading->over)
        continue;
      cairo_new_sub_path (cr);
      cairo_arc (cr, rw_scrub_picture_x_at (self, reading->t),
                 y_of (self, channel->gain * reading->value + channel->offset), 1.2 * thickness * self->scale, 0, 2 * G_PI);
    }
  cairo_fill (cr);
}

static void
ink_rails (RwScrubPicture *self,
           cairo_t        *cr)
{
  for (guint i = 0; i < rw_chart_data_get_n_channels (self->data); i++)
    {
      const RwChartChannel *channel = rw_chart_data_get_channel (self->data, i);

      if (!is_shown (channel) || channel->rail == self->hidden)
        continue;
      rw_ink_color (cr, rw_theme_series (rw_theme_get (self->theme_id), channel->series).color);
      ink_samples (self, cr, channel);
      ink_readings (self, cr, channel);
    }
}

/* --- what happened -------------------------------------------------------------------------------- */

static void
ink_turns (RwScrubPicture *self,
           cairo_t        *cr)
{
  const RwTheme *theme = rw_theme_get (self->theme_id);

  rw_ink_color (cr, theme->quiet);
  cairo_set_line_width (cr, theme->weight);
  for (guint i = 0; i < rw_chapters_get_n_moments (self->chapters, RW_MOMENT_TRIM); i++)
    {
      const double x = rw_ink_crisp (rw_scrub_picture_x_at (self, rw_chapters_get_moment (self->chapters, RW_MOMENT_TRIM, i)->t));

      rw_ink_line (cr, x, band_height (self), x, self->height);
    }
}

static void
ink_keeps (RwScrubPicture *self,
           cairo_t        *cr)
{
  const RwTheme *theme = rw_theme_get (self->theme_id);

  rw_ink_color (cr, theme->ink);
  cairo_set_line_width (cr, theme->weight);
  for (guint i = 0; i < rw_chapters_get_n_moments (self->chapters, RW_MOMENT_KEEP); i++)
    {
      const double x = rw_ink_crisp (rw_scrub_picture_x_at (self, rw_chapters_get_moment (self->chapters, RW_MOMENT_KEEP, i)->t));

      rw_ink_line (cr, x, self->height - tick * self->scale, x, self->height);
    }
}

static void
ink_warnings (RwScrubPicture *self,
              cairo_t        *cr)
{
  const RwTheme *theme = rw_theme_get (self->theme_id);
  const double size = sign * self->scale;

  for (guint i = 0; i < rw_chapters_get_n_moments (self->chapters, RW_MOMENT_WARNING); i++)
    {
      const double t = rw_chapters_get_moment (self->chapters, RW_MOMENT_WARNING, i)->t;
      const double x = CLAMP (rw_scrub_picture_x_at (self, t), size / 2, MAX (self->width - size / 2, size / 2));

      rw_ink_marker (cr, RW_MARKER_TRIANGLE, RW_FILL_SOLID, x, band_height (self) + size / 2 + 1, size,
                     theme->verdicts[RW_VERDICT_OUTSIDE], theme->paper);
    }
}

static void
hatch (RwScrubPicture *self,
       cairo_t        *cr,
       double          left,
       double          right)
{
  const RwTheme *theme = rw_theme_get (self->theme_id);
  const double top = band_height (self), height = self->height - top, step = 5 * self->scale;

  cairo_save (cr);
  cairo_rectangle (cr, left, top, MAX (right - left, 1), height);
  rw_ink_color (cr, rw_ink_mixed (theme->ink, theme->paper, 0.08));
  cairo_fill_preserve (cr);
  cairo_clip (cr);
  rw_ink_color (cr, theme->line);
  cairo_set_line_width (cr, 0.8 * theme->weight);
  for (double x = left - height; x < right; x += step)
    rw_ink_line (cr, x, self->height, x + height, top);
  cairo_restore (cr);
}

static void
ink_waiting (RwScrubPicture *self,
             cairo_t        *cr)
{
  for (guint i = 0; self->idle != NULL && i < rw_idle_get_n (self->idle); i++)
    {
      const RwIdleStretch *stretch = rw_idle_get (self->idle, i);

      hatch (self, cr, rw_scrub_picture_x_at (self, stretch->from), rw_scrub_picture_x_at (self, stretch->to));
    }
}

static void
ink_cover (RwScrubPicture *self,
           cairo_t        *cr)
{
  const RwTheme *theme = rw_theme_get (self->theme_id);
  const double left = cover_x (self);

  if (left >= self->width)
    return;
  rw_ink_color (cr, rw_ink_mixed (theme->ink, theme->paper, 0.08));
  cairo_rectangle (cr, left, 0, self->width - left, self->height);
  cairo_fill (cr);
}

/* --- the picture ---------------------------------------------------------------------------------- */

static void
ink_all (RwScrubPicture *self,
         cairo_t        *cr)
{
  rw_ink_color (cr, rw_theme_get (self->theme_id)->paper);
  cairo_paint (cr);
  ink_waiting (self, cr);
  ink_limits (self, cr);
  ink_chapters (self, cr);
  if (self->chapters != NULL)
    ink_turns (self, cr);
  ink_rails (self, cr);
  if (self->chapters != NULL)
    {
      ink_keeps (self, cr);
      ink_warnings (self, cr);
    }
  ink_cover (self, cr);
}

void
rw_scrub_picture_ink (RwScrubPicture *self,
                      cairo_t        *cr,
                      double          width,
                      double          height,
                      double          device_scale)
{
  if (self->width != width || self->height != height || self->device_scale != device_scale)
    drop_kept (self);
  self->width = MAX (width, 1);
  self->height = MAX (height, 1);
  self->device_scale = MAX (device_scale, 1);
  if (self->kept == NULL)
    {
      self->kept = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) ceil (self->width * self->device_scale),
                                               (int) ceil (self->height * self->device_scale));
      cairo_surface_set_device_scale (self->kept, self->device_scale, self->device_scale);

      cairo_t *into = cairo_create (self->kept);

      ink_all (self, into);
      cairo_destroy (into);
    }
  cairo_set_source_surface (cr, self->kept, 0, 0);
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_fill (cr);
}

void
rw_scrub_picture_ink_cursor (RwScrubPicture *self,
                             cairo_t        *cr,
                             double          t,
                             gboolean        is_position)
{
  const RwTheme *theme = rw_theme_get (self->theme_id);
  const double wide = handle * self->scale;
  const double x = CLAMP (rw_scrub_picture_x_at (self, t), 1, MAX (self->width - 1, 1));

  rw_ink_color (cr, is_position ? theme->accent : theme->quiet);
  cairo_set_line_width (cr, (is_position ? 2 : 1) * self->scale * theme->weight);
  rw_ink_line (cr, x, 0, x, self->height);
  if (!is_position)
    return;
  cairo_move_to (cr, x - wide, 0);
  cairo_line_to (cr, x + wide, 0);
  cairo_line_to (cr, x, 1.4 * wide);
  cairo_close_path (cr);
  cairo_fill (cr);
}
