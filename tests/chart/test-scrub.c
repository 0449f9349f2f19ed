/* test-scrub.c: a session in small shows what it may, where it belongs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is covered or hidden is compared, pixel for pixel, with a session in which it never happened.
 */
#include "config.h"

#include <math.h>

#include "chart-fixture.h"
#include "rw-scrub-picture.h"

static const double width = 600;

/* Checksum of what is inked. */
static char *
inked (RwScrubPicture *picture)
{
  const double height = rw_scrub_picture_get_height (picture);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) width, (int) ceil (height));
  cairo_t *cr = cairo_create (surface);

  rw_scrub_picture_ink (picture, cr, width, height, 1);
  cairo_destroy (cr);
  cairo_surface_flush (surface);

  char *sum = g_compute_checksum_for_data (G_CHECKSUM_SHA256, cairo_image_surface_get_data (surface),
                                           (gsize) cairo_image_surface_get_stride (surface)
                                               * (gsize) cairo_image_surface_get_height (surface));

  cairo_surface_destroy (surface);
  return sum;
}

/* Up to 100 s all stories are one; @later tells the rest apart. Each ends at 200 s. */
static RwSession *
make_story (double later)
{
  RwSession *session = fixture_empty ();

  fixture_reading (session, 10, "p5", RW_PLACE_BOARD, 4.91);
  fixture_reading (session, 20, "m5", RW_PLACE_BOARD, -4.9);
  fixture_event (session, rw_event_make_mark (30, "low at the board"));
  fixture_reading (session, 90, "p12", RW_PLACE_BOARD, 11.9);
  fixture_event (session, rw_event_make_trim (120));
  fixture_event (session, rw_event_make_mark (130, later > 5 ? "too far" : "in the middle"));
  fixture_reading (session, 150, "p5", RW_PLACE_BOARD, later);
  fixture_event (session, rw_event_make_note (200, "the end"));
  return session;
}

static RwScrubPicture *
make_picture (RwSession *session)
{
  g_autoptr (RwChapters) chapters = rw_chapters_new (session, NULL, NULL);
  RwScrubPicture *picture = rw_scrub_picture_new (session);

  rw_scrub_picture_set_chapters (picture, chapters);
  return picture;
}

static void
test_cover (void)
{
  g_autoptr (RwSession) one = make_story (5.02);
  g_autoptr (RwSession) other = make_story (5.31);
  g_autoptr (RwScrubPicture) picture = make_picture (one);
  g_autoptr (RwScrubPicture) another = make_picture (other);
  g_autofree char *open = inked (picture);
  g_autofree char *open_other = inked (another);

  g_assert_cmpstr (open, !=, open_other);
  rw_scrub_picture_set_until (picture, 100, 4);
  rw_scrub_picture_set_until (another, 100, 4);

  g_autofree char *covered = inked (picture);
  g_autofree char *covered_other = inked (another);

  g_assert_cmpstr (covered, ==, covered_other);
  g_assert_cmpstr (covered, !=, open);
  rw_scrub_picture_set_until (picture, INFINITY, G_MAXUINT);

  g_autofree char *again = inked (picture);

  g_assert_cmpstr (again, ==, open);
}

/* Its full title counts what is still to come. */
static void
test_title_goes_on (void)
{
  g_autoptr (RwSession) one = fixture_empty ();
  g_autoptr (RwSession) other = fixture_empty ();

  fixture_event (one, rw_event_make_mark (10, "low"));
  fixture_event (other, rw_event_make_mark (10, "low"));
  fixture_event (one, rw_event_make_note (150, "the end"));
  fixture_event (other, rw_event_make_mark (150, "low"));

  g_autoptr (RwScrubPicture) picture = make_picture (one);
  g_autoptr (RwScrubPicture) another = make_picture (other);
  g_autofree char *open = inked (picture);
  g_autofree char *open_other = inked (another);

  g_assert_cmpstr (open, !=, open_other);
  rw_scrub_picture_set_until (picture, 140, 1);
  rw_scrub_picture_set_until (another, 140, 1);

  g_autofree char *covered = inked (picture);
  g_autofree char *covered_other = inked (another);

  g_assert_cmpstr (covered, ==, covered_other);
}

/* Of a hidden rail not even the height is told; that something was read then is no secret. */
static void
test_hidden (void)
{
  g_autoptr (RwSession) weak = make_story (5.02);
  g_autoptr (RwSession) strong = make_story (5.02);

  fixture_reading (weak, 200, "m5", RW_PLACE_BOARD, -4.6);
  fixture_reading (strong, 200, "m5", RW_PLACE_BOARD, -5.4);

  g_autoptr (RwScrubPicture) one = make_picture (weak);
  g_autoptr (RwScrubPicture) other = make_picture (strong);
  g_autofree char *shown = inked (one);
  g_autofree char *shown_other = inked (other);

  g_assert_cmpstr (shown, !=, shown_other);
  rw_scrub_picture_set_hidden (one, "m5");
  rw_scrub_picture_set_hidden (other, "m5");

  g_autofree char *hidden = inked (one);
  g_autofree char *hidden_other = inked (other);

  g_assert_cmpstr (hidden, ==, hidden_other);
  rw_scrub_picture_set_hidden (one, NULL);

  g_autofree char *again = inked (one);

  g_assert_cmpstr (shown, ==, again);
}

static void
test_axis (void)
{
  g_autoptr (RwSession) session = make_story (5.02);
  g_autoptr (RwScrubPicture) picture = make_picture (session);
  g_autofree char *sum = inked (picture);

  g_assert_nonnull (sum);
  g_assert_cmpfloat (rw_scrub_picture_x_at (picture, 0), ==, 0);
  g_assert_cmpfloat (rw_scrub_picture_x_at (picture, 200), ==, width);
  g_assert_cmpfloat (rw_scrub_picture_x_at (picture, 1e6), ==, width);
  for (double t = 0; t <= 200; t += 7.3)
    g_assert_cmpfloat_with_epsilon (rw_scrub_picture_time_at (picture, rw_scrub_picture_x_at (picture, t)), t, 1e-9);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/scrub/what is covered gives nothing of the rest away", test_cover);
  g_test_add_func ("/scrub/the title of a chapter that goes on counts nothing to come", test_title_goes_on);
  g_test_add_func ("/scrub/a hidden rail tells nothing, and comes back as it was", test_hidden);
  g_test_add_func ("/scrub/moments and pixels are each other's inverse", test_axis);
  return g_test_run ();
}
