/* test-lead-picture.c: the leads go where the check says, in the picture and in words.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-lead-picture.h"

#include "rw-ink.h"

#include <math.h>
#include <string.h>

static const double width = 300, height = 170;

static RwLeadScene
scene_at (const char *rail,
          RwPlace     place)
{
  return (RwLeadScene) { rail, 0, place, RW_KIND_DC, RW_SAID_YES, RW_SAID_YES };
}

static gboolean
same (RwLeadPoint a,
      RwLeadPoint b)
{
  return a.x == b.x && a.y == b.y;
}

static void
test_tips (void)
{
  RwLeadLayout at;
  RwLeadScene scene = scene_at ("+5 V", RW_PLACE_TERMINALS);

  rw_lead_layout_make (&scene, width, height, &at);
  g_assert_true (same (at.red, at.rail_screw) && same (at.black, at.ground_screw));
  scene.place = RW_PLACE_BOARD;
  rw_lead_layout_make (&scene, width, height, &at);
  g_assert_true (same (at.red, at.rail_finger) && same (at.black, at.ground_finger));
  scene.place = RW_PLACE_CHIP;
  rw_lead_layout_make (&scene, width, height, &at);
  g_assert_true (same (at.red, at.rail_pin) && same (at.black, at.ground_pin));
  g_assert_true (at.red.x > at.board.x && at.black.x > at.board.x);
}

static void
test_drops (void)
{
  RwLeadLayout at;
  RwLeadScene scene = scene_at ("+5 V", RW_PLACE_WIRE);

  rw_lead_layout_make (&scene, width, height, &at);
  g_assert_true (same (at.red, at.rail_screw) && same (at.black, at.rail_finger));
  scene = scene_at (NULL, RW_PLACE_WIRE);
  rw_lead_layout_make (&scene, width, height, &at);
  g_assert_true (same (at.red, at.ground_finger) && same (at.black, at.ground_screw));
}

static void
test_mains (void)
{
  for (guint place = 0; place < RW_N_PLACES; place++)
    {
      RwLeadLayout at;
      RwLeadScene scene = scene_at ("+5 V", (RwPlace) place);

      rw_lead_layout_make (&scene, width, height, &at);
      g_assert_cmpfloat (hypot (at.red.x - at.mains_screw.x, at.red.y - at.mains_screw.y), >, 25);
      g_assert_cmpfloat (hypot (at.black.x - at.mains_screw.x, at.black.y - at.mains_screw.y), >, 25);
    }
}

static void
test_board_out (void)
{
  RwLeadLayout fitted, out;
  RwLeadScene scene = scene_at ("+5 V", RW_PLACE_TERMINALS);

  rw_lead_layout_make (&scene, width, height, &fitted);
  scene.board = RW_SAID_NO;
  rw_lead_layout_make (&scene, width, height, &out);
  g_assert_cmpfloat (fitted.board.x - rw_rect_right (&fitted.edge), <, 0.03 * width);
  g_assert_cmpfloat (out.board.x - rw_rect_right (&out.edge), >, 0.1 * width);
}

static void
test_words (void)
{
  RwLeadScene scene = scene_at ("−5 V", RW_PLACE_BOARD);
  g_autofree char *board = rw_lead_picture_describe (&scene);

  g_assert_nonnull (strstr (board, "−5 V finger on the board's side"));
  g_assert_nonnull (strstr (board, "Power on. Board fitted."));
  scene = (RwLeadScene) { NULL, 3, RW_PLACE_WIRE, RW_KIND_DC, RW_SAID_NO, RW_SAID_NO };

  g_autofree char *ground = rw_lead_picture_describe (&scene);

  g_assert_true (g_str_has_prefix (ground, "Red tip on a ground finger"));
  g_assert_nonnull (strstr (ground, "Power off, plug pulled. Board out."));
  scene = scene_at ("+12 V", RW_PLACE_TERMINALS);
  scene.kind = RW_KIND_RIPPLE;

  g_autofree char *ripple = rw_lead_picture_describe (&scene);

  g_assert_nonnull (strstr (ripple, "supply's +12 V screw"));
  g_assert_nonnull (strstr (ripple, "Meter on AC."));
}

/* --- pixels ------------------------------------------------------------------------------------- */

static cairo_surface_t *
paint (const RwTheme     *theme,
       const RwLeadScene *scene,
       double             w,
       double             h)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) width, (int) height);
  cairo_t *cr = cairo_create (surface);

  rw_ink_color (cr, theme->paper);
  cairo_paint (cr);
  rw_lead_picture_draw (cr, theme, NULL, 1, scene, w, h);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

static guint32
pixel (cairo_surface_t *surface,
       RwLeadPoint      at)
{
  const unsigned char *row = cairo_image_surface_get_data (surface)
                             + (int) at.y * cairo_image_surface_get_stride (surface);

  return ((const guint32 *) (const void *) row)[(int) at.x] & 0xffffff;
}

static guint
count_other (cairo_surface_t *surface,
             guint32          paper)
{
  guint n = 0;

  for (int y = 0; y < (int) height; y++)
    for (int x = 0; x < (int) width; x++)
      n += pixel (surface, (RwLeadPoint) { x, y }) != paper;
  return n;
}

static void
test_pixels (void)
{
  for (guint id = 0; id < RW_N_THEMES; id++)
    for (guint place = 0; place < RW_N_PLACES; place++)
      {
        const RwTheme *theme = rw_theme_get ((RwThemeId) id);
        const RwLeadScene scene = scene_at ("+5 V", (RwPlace) place);
        RwLeadLayout at;
        cairo_surface_t *surface = paint (theme, &scene, width, height);

        rw_lead_layout_make (&scene, width, height, &at);

        const guint32 red = pixel (surface, at.red);

        g_assert_cmpuint (red >> 16, >, 150);
        g_assert_cmpuint (red >> 16, >, 2 * (red & 0xff));
        g_assert_cmphex (pixel (surface, at.black), ==, 0);
        cairo_surface_destroy (surface);
      }
}

static void
test_too_small (void)
{
  const RwTheme *theme = rw_theme_get (RW_THEME_LIGHT);
  const RwLeadScene scene = scene_at ("+5 V", RW_PLACE_BOARD);
  cairo_surface_t *small = paint (theme, &scene, 100, 60);
  cairo_surface_t *nothing = paint (theme, &scene, NAN, NAN);
  cairo_surface_t *large = paint (theme, &scene, width, height);

  g_assert_cmpuint (count_other (small, 0xffffff), ==, 0);
  g_assert_cmpuint (count_other (nothing, 0xffffff), ==, 0);
  g_assert_cmpuint (count_other (large, 0xffffff), >, 1000);
  cairo_surface_destroy (small);
  cairo_surface_destroy (nothing);
  cairo_surface_destroy (large);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/lead-picture/tips-are-where-the-place-says", test_tips);
  g_test_add_func ("/lead-picture/a-drop-is-read-along-its-wire", test_drops);
  g_test_add_func ("/lead-picture/tips-keep-clear-of-the-mains-screw", test_mains);
  g_test_add_func ("/lead-picture/a-board-that-is-out-stands-clear", test_board_out);
  g_test_add_func ("/lead-picture/words-say-what-is-drawn", test_words);
  g_test_add_func ("/lead-picture/red-and-black-show-on-every-theme", test_pixels);
  g_test_add_func ("/lead-picture/too-small-draws-nothing", test_too_small);
  return g_test_run ();
}
