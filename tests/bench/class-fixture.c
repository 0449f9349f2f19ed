/* class-fixture.c: a job with a projection, filled for the tests of what a class sees.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "class-fixture.h"

#include <glib/gstdio.h>
#include <string.h>

#include "rw-chart.h"
#include "rw-trim-map.h"

/* --- a job ---------------------------------------------------------------------------------------- */

void
class_init (Class *self)
{
  g_autofree char *profile_path = g_build_filename (g_getenv ("RAILWRIGHT_DATA_DIR"), "profiles", "classic-5-12-m5.json",
                                                    NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (RwProfile) profile = rw_profile_load (profile_path, &error);
  g_autoptr (GPtrArray) meters = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_meter_facts_free);
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();
  const int file = g_file_open_tmp ("rw-class-XXXXXX", &self->path, &error);

  g_assert_no_error (error);
  g_close (file, NULL);
  g_unlink (self->path);
  g_ptr_array_add (meters, rw_meter_facts_new ("m1", "bench", 0.2, 1));
  self->job = rw_job_new_bench (rw_session_header_new (profile, "Tidepool Racer", "B-07", meters, now), self->path, &error);
  g_assert_no_error (error);
  self->projection = rw_projection_new ();
  rw_projection_set_job (self->projection, self->job);
  rw_projection_set_open (self->projection, TRUE);
}

void
class_clear (Class *self)
{
  g_clear_object (&self->projection);
  g_clear_object (&self->job);
  g_unlink (self->path);
  g_clear_pointer (&self->path, g_free);
}

void
class_settle (void)
{
  while (g_main_context_iteration (NULL, FALSE))
    ;
}

void
class_wait_for_advice (Class *self)
{
  const gint64 end = g_get_monotonic_time () + 20 * G_USEC_PER_SEC;

  class_settle ();
  while (rw_job_get_advice (self->job) == NULL && g_get_monotonic_time () < end)
    g_main_context_iteration (NULL, TRUE);
  g_assert_nonnull (rw_job_get_advice (self->job));
  class_settle ();
}

void
class_add (Class  *self,
           guint   n,
           double  t,
           RwEvent event)
{
  event.n = n;
  event.t = t;
  rw_session_add (rw_job_get_session (self->job), &event);
}

void
class_add_value (Class      *self,
                 guint       n,
                 double      t,
                 const char *rail,
                 double      value,
                 gboolean    sample)
{
  const RwReading reading = rw_reading_make (rail, RW_PLACE_BOARD, RW_KIND_DC, value, 0.001, "m1");

  class_add (self, n, t, sample ? rw_event_make_sample (0, &reading) : rw_event_make_reading (0, &reading));
}

void
class_fill (Class   *self,
            gboolean minus)
{
  guint n = 1;
  double t = 1;

  class_add (self, n++, t, rw_event_make_setup (0, (RwSetup){ RW_SAID_YES, RW_SAID_YES, RW_SAID_YES }));
  for (int turn = 0; turn < 2; turn++)
    {
      const double x = 4.90 + 0.12 * turn;
      const struct { const char *rail; double value; } reads[] = { { "p5", x }, { "p12", 2.4 * x }, { "m5", -0.95 * x } };

      for (guint i = 0; i < G_N_ELEMENTS (reads); i++)
        for (int k = 0; k < 5; k++, n++, t += 1)
          if (minus || !g_str_equal (reads[i].rail, "m5"))
            class_add_value (self, n, t, reads[i].rail, reads[i].value, k < 4);
      if (turn == 0)
        class_add (self, n++, t++, rw_event_make_trim (0));
    }
  class_add_value (self, n++, t++, "p5", 5.021, TRUE);
  class_settle ();
}

char *
class_dup_text (Class *self)
{
  return rw_projection_content_dup_text (rw_projection_get_content (self->projection));
}

void
class_assert_says (Class      *self,
                   const char *words,
                   gboolean    says)
{
  g_autofree char *text = class_dup_text (self);

  if ((strstr (text, words) != NULL) != says)
    g_error ("%s %s in: %s", words, says ? "is not" : "is", text);
}

/* --- pictures ------------------------------------------------------------------------------------- */

static char *
bytes_of (cairo_surface_t *surface)
{
  cairo_surface_flush (surface);

  char *sum = g_compute_checksum_for_data (G_CHECKSUM_SHA256, cairo_image_surface_get_data (surface),
                                           (gsize) cairo_image_surface_get_stride (surface)
                                               * (gsize) cairo_image_surface_get_height (surface));

  cairo_surface_destroy (surface);
  return sum;
}

char *
class_draw_chart (Class *self,
                  char **summary)
{
  g_autoptr (RwChart) chart = rw_chart_new (rw_projection_get_session (self->projection),
                                            rw_projection_get_view (self->projection));
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 640, 360);
  cairo_t *cr = cairo_create (surface);

  rw_chart_set_state (chart, rw_projection_get_state (self->projection));
  rw_chart_set_draw_text (chart, FALSE);
  rw_chart_ink (chart, cr, 640, 360, RW_INK_SCREEN);
  cairo_destroy (cr);
  *summary = rw_chart_dup_summary (chart);
  return bytes_of (surface);
}

char *
class_draw_map (Class *self,
                char **summary)
{
  const RwClassTrim *trim = rw_projection_get_trim (self->projection);
  g_autoptr (RwTrimMap) map = rw_trim_map_new (rw_projection_get_view (self->projection));
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 640, 360);
  cairo_t *cr = cairo_create (surface);

  rw_trim_map_set_draw_text (map, FALSE);
  rw_trim_map_set_note (map, FALSE);
  rw_trim_map_set_set (map, trim->set);
  rw_trim_map_set_live (map, trim->has_live ? &trim->live : NULL);
  rw_trim_map_ink (map, cr, 640, 360);
  cairo_destroy (cr);
  *summary = rw_trim_map_dup_summary (map);
  return bytes_of (surface);
}
