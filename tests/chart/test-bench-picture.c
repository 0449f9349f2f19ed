/* test-bench-picture.c: the bench's picture has room for every word and spot, and every spot can be reached.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-bench-picture.h"

#include <math.h>
#include <string.h>

#include "rw-ink.h"

/* A supply, its harness and a board, as large as they come. */
typedef struct
{
  RwBenchNode  nodes[RW_BENCH_MAX_NODES];
  RwBenchScene scene;
} Bench;

static void
add (Bench      *bench,
     RwBenchPart part,
     const char *label,
     guint       row,
     gboolean    hazard)
{
  bench->nodes[bench->scene.n_nodes++] = (RwBenchNode) { part, label, row, row, hazard };
}

static void
make_bench (Bench *bench,
            guint  n_rails)
{
  static const char *const rails[] = { "0 V", "+5 V", "+12 V", "−5 V", "−12 V", "+24 V", "+3.3 V", "+9 V", "−9 V" };

  memset (bench, 0, sizeof *bench);
  bench->scene = (RwBenchScene) { .nodes = bench->nodes, .red = -1, .black = -1, .selected = -1, .power = TRUE,
                                  .fitted = TRUE, .trim = 0.4, .value = "5.021 V", .mode = "DC V · range by itself",
                                  .board_words = "the game runs", .sound = 2 };
  for (guint row = 0; row <= n_rails; row++)
    {
      add (bench, RW_BENCH_STRIP, rails[row], row, FALSE);
      add (bench, RW_BENCH_LUG, rails[row], row, FALSE);
      add (bench, RW_BENCH_PLUG, rails[row], row, FALSE);
      add (bench, RW_BENCH_EDGE, rails[row], row, FALSE);
      add (bench, RW_BENCH_CHIP, rails[row], row, FALSE);
    }
  add (bench, RW_BENCH_STRIP, "sense", n_rails + 1, FALSE);
  add (bench, RW_BENCH_MAINS, "L", 0, TRUE);
  add (bench, RW_BENCH_MAINS, "N", 0, TRUE);
  add (bench, RW_BENCH_MAINS, "earth", 0, FALSE);
  add (bench, RW_BENCH_INSIDE, "fuse 1", 0, TRUE);
  add (bench, RW_BENCH_INSIDE, "fuse 2", 0, TRUE);
  add (bench, RW_BENCH_SOUND, "0 V", 0, FALSE);
  add (bench, RW_BENCH_SOUND, "out +", 0, FALSE);
  add (bench, RW_BENCH_CABINET, "frame", 0, FALSE);
  add (bench, RW_BENCH_CABINET, "lamp 1", 0, FALSE);
  add (bench, RW_BENCH_CABINET, "lamp 2", 0, FALSE);
}

static const struct
{
  double width, height;
} sizes[] = { { 620, 390 }, { 640, 400 }, { 700, 420 }, { 960, 600 }, { 1240, 640 }, { 1600, 900 }, { 2400, 1300 }, { 620, 1200 } };

static const double scales[] = { 1, 1.25, 1.5, 2 };

/* With fonts and without; each size, each scale, three kinds of supply, board in and out. */
static void
each_layout (void (*check) (const Bench *bench, const RwBenchLayout *at))
{
  static const guint rails[] = { 1, 3, 8 };

  for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
    for (guint t = 0; t < G_N_ELEMENTS (scales); t++)
      for (guint r = 0; r < 2 * 2 * G_N_ELEMENTS (rails); r++)
        {
          Bench bench;
          RwBenchLayout at;

          make_bench (&bench, rails[r / 4]);
          bench.scene.fitted = (r & 1) != 0;
          if (!rw_bench_layout_make (&bench.scene, NULL, scales[t], (r & 2) != 0, sizes[s].width, sizes[s].height, &at))
            g_error ("%.0f × %.0f, text %.2f, %u rails: no layout", sizes[s].width, sizes[s].height, scales[t],
                     rails[r / 4]);
          check (&bench, &at);
        }
}

static gboolean
is_inside (const RwBenchLayout *at,
           const RwRect        *rect)
{
  return rect->x >= 0 && rect->y >= 0 && rw_rect_right (rect) <= at->width && rw_rect_bottom (rect) <= at->height;
}

static void
check_words (const Bench         *bench,
             const RwBenchLayout *at)
{
  for (guint i = 0; i < at->n_labels; i++)
    {
      if (!is_inside (at, &at->labels[i].rect))
        g_error ("“%s” lies outside %.0f × %.0f", at->labels[i].text, at->width, at->height);
      for (guint j = 0; j < i; j++)
        if (rw_rect_overlap (&at->labels[i].rect, &at->labels[j].rect))
          g_error ("“%s” and “%s” overlap at %.0f × %.0f, text %.2f", at->labels[i].text, at->labels[j].text, at->width,
                   at->height, at->text_scale);
    }
}

/* Every spot has its name or shares the row of one that has; no word lies on a spot. */
static void
check_spots (const Bench         *bench,
             const RwBenchLayout *at)
{
  for (guint i = 0; i < bench->scene.n_nodes; i++)
    {
      const RwRect spot = { at->node[i].x - 2, at->node[i].y - 2, 4, 4 };

      g_assert_true (is_inside (at, &spot));
      for (guint k = 0; k < at->n_labels; k++)
        if (rw_rect_overlap (&spot, &at->labels[k].rect))
          g_error ("“%s” lies on a spot at %.0f × %.0f", at->labels[k].text, at->width, at->height);
      for (guint j = 0; j < i; j++)
        g_assert_cmpfloat (hypot (at->node[i].x - at->node[j].x, at->node[i].y - at->node[j].y), >, 1.9 * at->spot);
    }
}

static void
check_named (const Bench         *bench,
             const RwBenchLayout *at)
{
  for (guint i = 0; i < bench->scene.n_nodes; i++)
    {
      gboolean named = bench->nodes[i].part == RW_BENCH_LUG || bench->nodes[i].part == RW_BENCH_PLUG;

      for (guint k = 0; k < at->n_labels; k++)
        named = named || (at->labels[k].node == (int) i && strcmp (at->labels[k].text, bench->nodes[i].label) == 0);
      g_assert_true (named);
    }
}

static void
test_words (void)
{
  each_layout (check_words);
}

static void
test_spots (void)
{
  each_layout (check_spots);
}

static void
test_named (void)
{
  each_layout (check_named);
}

static void
test_text_size (void)
{
  Bench bench;
  RwBenchLayout at;

  make_bench (&bench, 3);
  g_assert_true (rw_bench_layout_make (&bench.scene, NULL, 1, TRUE, 660, 420, &at));
  g_assert_cmpfloat (at.text_scale, ==, 1);
  g_assert_true (rw_bench_layout_make (&bench.scene, NULL, 2, TRUE, 1400, 900, &at));
  g_assert_cmpfloat (at.text_scale, ==, 2);
  make_bench (&bench, 8);
  g_assert_true (rw_bench_layout_make (&bench.scene, NULL, 2, TRUE, 660, 420, &at));
  g_assert_cmpfloat (at.text_scale, <, 2);
}

/* --- the pointer and the arrows ------------------------------------------------------------------- */

static void
check_hits (const Bench         *bench,
            const RwBenchLayout *at)
{
  for (guint i = 0; i < bench->scene.n_nodes; i++)
    {
      const RwBenchPoint p = at->node[i];

      g_assert_cmpint (rw_bench_layout_hit (at, bench->scene.n_nodes, p.x, p.y), ==, (int) i);
      g_assert_cmpint (rw_bench_layout_hit (at, bench->scene.n_nodes, p.x + 0.4 * at->spot, p.y - 0.4 * at->spot), ==,
                       (int) i);
    }
  g_assert_cmpint (rw_bench_layout_hit (at, bench->scene.n_nodes, rw_rect_right (&at->plug) / 2 + at->plug.x / 2,
                                        at->height - 1), ==, -1);
  g_assert_cmpint (rw_bench_layout_hit (at, bench->scene.n_nodes, NAN, 10), ==, -1);
}

static void
test_hits (void)
{
  each_layout (check_hits);
}

static void
check_arrows (const Bench         *bench,
              const RwBenchLayout *at)
{
  const guint n = bench->scene.n_nodes;
  gboolean seen[RW_BENCH_MAX_NODES] = { TRUE };
  int queue[RW_BENCH_MAX_NODES] = { 0 };
  guint head = 0, tail = 1;

  while (head < tail)
    {
      const int from = queue[head++];

      for (guint way = RW_BENCH_LEFT; way <= RW_BENCH_DOWN; way++)
        {
          const int to = rw_bench_layout_step (at, n, from, (RwBenchWay) way);

          g_assert_true (to >= 0 && to < (int) n);
          if (!seen[to])
            queue[tail++] = to;
          seen[to] = TRUE;
        }
    }
  if (tail != n)
    g_error ("%u of %u spots can be reached by arrows at %.0f × %.0f", tail, n, at->width, at->height);
}

static void
test_arrows (void)
{
  each_layout (check_arrows);
}

/* Along the wire of a rail an arrow goes from the screw to the crimp, the plug and the finger. */
static void
test_along_wire (void)
{
  Bench bench;
  RwBenchLayout at;

  make_bench (&bench, 3);
  g_assert_true (rw_bench_layout_make (&bench.scene, NULL, 1, FALSE, 800, 500, &at));
  for (int i = 5; i < 8; i++)
    g_assert_cmpint (rw_bench_layout_step (&at, bench.scene.n_nodes, i, RW_BENCH_RIGHT), ==, i + 1);
  g_assert_cmpint (rw_bench_layout_step (&at, bench.scene.n_nodes, 0, RW_BENCH_DOWN), ==, 5);
  g_assert_cmpint (rw_bench_layout_step (&at, bench.scene.n_nodes, -1, RW_BENCH_DOWN), ==, 0);
}

/* --- what is drawn -------------------------------------------------------------------------------- */

static cairo_surface_t *
paint (const RwTheme       *theme,
       const RwBenchScene  *scene,
       const RwBenchLayout *at)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 800, 500);
  cairo_t *cr = cairo_create (surface);

  rw_ink_color (cr, theme->paper);
  cairo_paint (cr);
  rw_bench_picture_draw (cr, theme, NULL, scene, at);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

static guint32
pixel (cairo_surface_t *surface,
       double           x,
       double           y)
{
  const unsigned char *row = cairo_image_surface_get_data (surface) + (int) y * cairo_image_surface_get_stride (surface);

  return ((const guint32 *) (const void *) row)[(int) x] & 0xffffff;
}

static void
test_tips (void)
{
  for (guint id = 0; id < RW_N_THEMES; id++)
    {
      const RwTheme *theme = rw_theme_get ((RwThemeId) id);
      Bench bench;
      RwBenchLayout at;

      make_bench (&bench, 3);
      bench.scene.red = 5;
      bench.scene.black = 3;
      g_assert_true (rw_bench_layout_make (&bench.scene, NULL, 1, TRUE, 800, 500, &at));

      cairo_surface_t *surface = paint (theme, &bench.scene, &at);
      const guint32 red = pixel (surface, at.node[5].x, at.node[5].y - 6);

      g_assert_cmpuint (red >> 16, >, 150);
      g_assert_cmpuint (red >> 16, >, 2 * (red & 0xff));
      g_assert_cmphex (pixel (surface, at.node[3].x - 6, at.node[3].y - 6), ==, 0);
      cairo_surface_destroy (surface);
    }
}

/* The slot's mark goes from one side of the screw to the other. */
static void
test_slot (void)
{
  const RwTheme *theme = rw_theme_get (RW_THEME_LIGHT);
  Bench bench;
  RwBenchLayout at;

  make_bench (&bench, 3);
  g_assert_true (rw_bench_layout_make (&bench.scene, NULL, 1, TRUE, 800, 500, &at));
  for (int side = -1; side <= 1; side += 2)
    {
      bench.scene.trim = side < 0 ? 0 : 1;

      cairo_surface_t *surface = paint (theme, &bench.scene, &at);
      const double x = sin (0.75 * G_PI) * 0.8 * at.trim_radius, y = -cos (0.75 * G_PI) * 0.8 * at.trim_radius;

      g_assert_cmphex (pixel (surface, at.trim.x + side * x, at.trim.y + y), !=, 0xffffff);
      g_assert_cmphex (pixel (surface, at.trim.x - side * x, at.trim.y + y), ==, 0xffffff);
      cairo_surface_destroy (surface);
    }
}

static void
test_too_small (void)
{
  Bench bench;
  RwBenchLayout at;

  make_bench (&bench, 3);
  g_assert_false (rw_bench_layout_make (&bench.scene, NULL, 1, FALSE, 200, 90, &at));
  g_assert_cmpuint (at.n_labels, ==, 0);
  g_assert_cmpint (rw_bench_layout_hit (&at, bench.scene.n_nodes, 0, 0), ==, -1);
  g_assert_false (rw_bench_layout_make (&bench.scene, NULL, 1, FALSE, NAN, 500, &at));
  g_assert_false (rw_bench_layout_make (&bench.scene, NULL, 0, FALSE, 800, 500, &at));

  cairo_surface_t *surface = paint (rw_theme_get (RW_THEME_LIGHT), &bench.scene, &at);

  for (double x = 0; x < 800; x += 3)
    for (double y = 0; y < 500; y += 3)
      g_assert_cmphex (pixel (surface, x, y), ==, 0xffffff);
  cairo_surface_destroy (surface);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bench-picture/no-two-words-overlap", test_words);
  g_test_add_func ("/bench-picture/spots-lie-apart-and-clear-of-words", test_spots);
  g_test_add_func ("/bench-picture/every-spot-is-named", test_named);
  g_test_add_func ("/bench-picture/text-gets-smaller-only-when-it-must", test_text_size);
  g_test_add_func ("/bench-picture/the-pointer-finds-every-spot", test_hits);
  g_test_add_func ("/bench-picture/arrows-reach-every-spot", test_arrows);
  g_test_add_func ("/bench-picture/an-arrow-follows-the-wire", test_along_wire);
  g_test_add_func ("/bench-picture/tips-show-on-every-theme", test_tips);
  g_test_add_func ("/bench-picture/the-slot-shows-how-far-the-screw-is-turned", test_slot);
  g_test_add_func ("/bench-picture/too-small-draws-nothing", test_too_small);
  return g_test_run ();
}
