/* test-big-view.c: the big view says the right thing, at a size that is read from four metres, and cuts nothing off.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The picture is laid out without a display. On a screen of 1280×800 and 15 inches a pixel is 0.252 mm; 10 minutes of
 * arc, the least that a good eye reads, are 12 mm at four metres: 46 pixels.
 */
#include "config.h"

#include <glib.h>
#include <glib/gstdio.h>
#include <math.h>

#include "rw-big-content.h"
#include "rw-big-picture.h"
#include "rw-ink.h"

static const double legible_pixels = 46;

/* --- what it says --------------------------------------------------------------------------------- */

typedef struct
{
  char  *path;
  RwJob *job;
} Bench;

static void
bench_init (Bench *self)
{
  g_autofree char *profile_path = g_build_filename (g_getenv ("RAILWRIGHT_DATA_DIR"), "profiles", "classic-5-12-m5.json",
                                                    NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (RwProfile) profile = rw_profile_load (profile_path, &error);
  g_autoptr (GPtrArray) meters = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_meter_facts_free);
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();
  const int file = g_file_open_tmp ("rw-big-XXXXXX", &self->path, &error);

  g_assert_no_error (error);
  g_close (file, NULL);
  g_unlink (self->path);
  g_ptr_array_add (meters, rw_meter_facts_new ("m1", "bench", 0.2, 1));
  self->job = rw_job_new_bench (rw_session_header_new (profile, "Tidepool Racer", "B-07", meters, now), self->path, &error);
  g_assert_no_error (error);
}

static void
bench_clear (Bench *self)
{
  g_clear_object (&self->job);
  g_unlink (self->path);
  g_free (self->path);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Bench, bench_clear)
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (RwBigContent, rw_big_content_clear)

static RwReading
reads (const char *rail,
       double      value)
{
  RwReading reading = rw_reading_make (rail, RW_PLACE_BOARD, RW_KIND_DC, value, 0.01, "m1");

  reading.over = isnan (value);
  return reading;
}

static void
show (Bench    *bench,
      double    ago,
      RwReading sample)
{
  RwEvent event = rw_event_make_sample (rw_job_get_now (bench->job) - ago, &sample);

  rw_session_add (rw_job_get_session (bench->job), &event);
}

static void
keep (Bench      *bench,
      RwPlace     place,
      const char *rail,
      double      value)
{
  RwReading reading = reads (rail, value);

  reading.place = place;

  RwEvent event = rw_event_make_reading (0, &reading);

  rw_job_add (bench->job, &event);
}

/* Two positions of a supply whose +12 V = 2.4·x + 0.1 and −5 V = −0.9·x − 0.2; the screw stays at @x. */
static void
know_trim (Bench *bench,
           double x)
{
  rw_job_set_setup (bench->job, (RwSetup){ RW_SAID_YES, RW_SAID_YES, RW_SAID_YES });
  for (int i = 1; i >= 0; i--)
    {
      const double at = x - 0.1 * i;

      keep (bench, RW_PLACE_TERMINALS, "p5", at + 0.03);
      keep (bench, RW_PLACE_BOARD, "p5", at);
      keep (bench, RW_PLACE_BOARD, "p12", 2.4 * at + 0.1);
      keep (bench, RW_PLACE_BOARD, "m5", -0.9 * at - 0.2);
      if (i > 0)
        rw_job_turn_trim (bench->job, 0);
    }
}

static void
assert_says (Bench      *bench,
             const char *where,
             const char *value,
             const char *verdict,
             const char *todo)
{
  g_auto (RwBigContent) content = { 0 };

  rw_big_content_init (&content, bench->job, NULL);
  g_assert_cmpstr (content.where, ==, where);
  g_assert_cmpstr (content.value, ==, value);
  g_assert_cmpstr (content.verdict, ==, verdict);
  g_assert_cmpstr (content.todo, ==, todo);
}

static void
test_says_what_to_do_first (void)
{
  g_auto (Bench) bench = { 0 };
  g_auto (RwBigContent) nothing = { 0 };

  bench_init (&bench);
  assert_says (&bench, NULL, NULL, NULL, "Connect a meter to see its value here");
  rw_job_set_spot (bench.job, "p12", RW_PLACE_BOARD, RW_KIND_DC);
  show (&bench, 0, reads ("p12", 0.00));
  assert_says (&bench, "+12 V · board", "0.00\u202fV", NULL, "Touch +12 V at the board");
  rw_big_content_init (&nothing, NULL, "hello");
  g_assert_null (nothing.value);
  g_assert_cmpstr (nothing.message, ==, "hello");
}

static void
test_says_turn_and_leave (void)
{
  g_auto (Bench) high = { 0 };
  g_auto (Bench) good = { 0 };

  bench_init (&high);
  know_trim (&high, 5.17);
  show (&high, 0, reads ("p5", 5.17));

  g_auto (RwBigContent) content = { 0 };

  rw_big_content_init (&content, high.job, NULL);
  g_assert_true (g_str_has_prefix (content.todo, "Down 0.0") && g_strrstr (content.todo, " to 5.1") != NULL);
  g_assert_cmpfloat (content.bar.aim, <, content.bar.value);
  g_assert_cmpfloat (content.bar.window_lo, <, content.bar.window_hi);

  bench_init (&good);
  know_trim (&good, 5.10);
  show (&good, 0, reads ("m5", -4.79));
  assert_says (&good, "−5 V · board", "−4.79\u202fV", "● inside", "Leave it");
}

static void
test_says_limits (void)
{
  g_auto (Bench) bench = { 0 };

  bench_init (&bench);
  show (&bench, 0, reads ("p5", 5.05));
  assert_says (&bench, "+5 V · board", "5.05\u202fV", "● inside", "Leave it");
  show (&bench, 0, reads ("p5", 4.76));
  assert_says (&bench, "+5 V · board", "4.76\u202fV", "▲ outside", "0.14\u202fV short of 4.90\u202fV");
  show (&bench, 0, reads ("m5", -5.80));
  assert_says (&bench, "−5 V · board", "−5.80\u202fV", "▲ outside", "0.30\u202fV past −5.50\u202fV");
  show (&bench, 0, reads ("p5", 4.90));
  assert_says (&bench, "+5 V · board", "4.90\u202fV", "◐ too close to call", "The limit is 4.90\u202fV");
}

static void
test_says_what_is_wrong (void)
{
  g_auto (Bench) bench = { 0 };

  bench_init (&bench);
  show (&bench, 0, reads ("p5", -5.02));
  assert_says (&bench, "+5 V · board", "−5.02\u202fV", "▲ outside", "Wrong sign: swap the leads");
  show (&bench, 0, reads ("p5", 5.62));
  assert_says (&bench, "+5 V · board", "5.62\u202fV", "▲ outside", "Too much: power off now");
  show (&bench, 0, reads ("p5", NAN));
  assert_says (&bench, "+5 V · board", "OL", "▲ overload", "Choose a higher range");
  show (&bench, 0, reads (RW_LIVE_SOMEWHERE, 8.10));
  assert_says (&bench, "which rail?", "8.10\u202fV", NULL, NULL);
}

static void
test_old_value_is_stale (void)
{
  g_auto (Bench) bench = { 0 };
  g_auto (RwBigContent) content = { 0 };

  bench_init (&bench);
  show (&bench, 5, reads ("p5", 5.62));
  rw_big_content_init (&content, bench.job, NULL);
  g_assert_true (content.stale);
  g_assert_false (content.danger);
  g_assert_cmpstr (content.verdict, ==, "◌ stale");
  g_assert_cmpint (content.look, ==, RW_VERDICT_NONE);
  g_assert_cmpstr (content.todo, ==, "Touch +5 V at the board");
}

static void
test_all_of_it_in_words (void)
{
  g_auto (Bench) bench = { 0 };
  g_auto (RwBigContent) content = { 0 };
  g_auto (RwBigContent) again = { 0 };

  bench_init (&bench);
  show (&bench, 0, reads ("p5", 5.05));
  rw_big_content_init (&content, bench.job, "Look");
  rw_big_content_init (&again, bench.job, "Look");

  g_autofree char *text = rw_big_content_dup_text (&content);

  g_assert_cmpstr (text, ==, "Look, +5 V · board, 5.05\u202fV, ● inside, Leave it");
  g_assert_true (rw_big_content_equal (&content, &again));
  again.bar.value += 0.1;
  g_assert_false (rw_big_content_equal (&content, &again));
}

/* --- how it looks --------------------------------------------------------------------------------- */

static const RwBigBar some_bar = { TRUE, FALSE, 0.3, 0.1, -0.2, 0.4 };

/* The longest that is said, and German of it. */
static const struct
{
  const char *texts[RW_N_BIG_LINES];
  RwVerdict   look;
  gboolean    danger;
} samples[] = {
  { { "+5 V · board", "5.02\u202fV", "● inside", "Leave it", NULL }, RW_VERDICT_INSIDE, FALSE },
  { { "+12 V · board", "−12.06\u202fV", "▲ Outside", "Down 0.14\u202fV to 5.06\u202fV", NULL }, RW_VERDICT_OUTSIDE, FALSE },
  { { "+12 V · terminals", "12.06\u202fV", "◐ too close to call", "0.14\u202fV short of 10.80\u202fV", NULL },
    RW_VERDICT_CLOSE, FALSE },
  { { "+12 V Brummen · am fernen Chip", "−12,06\u202fV", "⊘ mit diesem Messgerät nicht zu zeigen",
      "Hinunter um 0,14\u202fV auf 10,80\u202fV", NULL },
    RW_VERDICT_BLIND, FALSE },
  { { "+5 V · Platine", "5,62\u202fV", "▲ außerhalb", "Zu viel: Strom jetzt abschalten", NULL }, RW_VERDICT_OUTSIDE, TRUE },
  { { NULL, NULL, NULL, "Beide Enden der Masseleitung berühren", NULL }, RW_VERDICT_NONE, FALSE },
  { { "which rail?", "11.96\u202fV", NULL, NULL,
      "11.96 V settled. Is it +12 V at board (Y) or +13 V at terminals (E)?" },
    RW_VERDICT_NONE, FALSE },
};

static const double sizes[][2] = { { 640, 480 }, { 1280, 754 }, { 1280, 800 }, { 1920, 1080 }, { 900, 1400 }, { 2000, 500 } };

static RwBigContent
content_of (guint i)
{
  char *const *texts = (char *const *) samples[i].texts;

  return (RwBigContent){
    .where = texts[RW_BIG_WHERE], .value = texts[RW_BIG_VALUE],     .verdict = texts[RW_BIG_VERDICT],
    .todo = texts[RW_BIG_TODO],   .message = texts[RW_BIG_MESSAGE], .look = samples[i].look,
    .danger = samples[i].danger,  .bar = some_bar,
  };
}

/* One for all. */
static PangoContext *
get_context (void)
{
  static PangoContext *context;

  if (context == NULL)
    {
      PangoFontDescription *font = pango_font_description_from_string ("Sans 10");

      context = pango_font_map_create_context (pango_cairo_font_map_get_default ());
      pango_context_set_font_description (context, font);
      pango_font_description_free (font);
    }
  return context;
}

static gboolean
is_within (const RwRect *inner,
           double        width,
           double        height)
{
  return inner->x >= -0.5 && inner->y >= -0.5 && rw_rect_right (inner) <= width + 0.5
         && rw_rect_bottom (inner) <= height + 0.5;
}

static void
check_room (const RwBigLayout *layout)
{
  for (guint a = 0; a < RW_N_BIG_LINES; a++)
    {
      if (layout->lines[a].layout == NULL)
        continue;
      g_assert_true (is_within (&layout->lines[a].ink, layout->width, layout->height));
      g_assert_false (layout->bar.width > 0 && rw_rect_overlap (&layout->lines[a].ink, &layout->bar));
      for (guint b = 0; b < a; b++)
        g_assert_false (layout->lines[b].layout != NULL
                        && rw_rect_overlap (&layout->lines[a].ink, &layout->lines[b].ink));
    }
  g_assert_true (is_within (&layout->band, layout->width, layout->height));
  g_assert_false (layout->band.width > 0 && rw_rect_overlap (&layout->band, &layout->lines[RW_BIG_VALUE].ink));
  g_assert_false (layout->band.width > 0 && layout->bar.width > 0 && rw_rect_overlap (&layout->band, &layout->bar));
}

static void
test_nothing_is_cut_off (void)
{
  PangoContext *context = get_context ();

  for (guint i = 0; i < G_N_ELEMENTS (samples); i++)
    for (guint k = 0; k < G_N_ELEMENTS (sizes); k++)
      {
        const RwBigContent content = content_of (i);
        RwBigLayout layout;

        rw_big_layout_init (&layout, context, &content, sizes[k][0], sizes[k][1]);
        check_room (&layout);
        for (guint a = 0; a < RW_N_BIG_LINES; a++)
          g_assert_true ((layout.lines[a].layout != NULL) == (samples[i].texts[a] != NULL));
        rw_big_layout_clear (&layout);
      }
}

static void
test_legible_from_four_metres (void)
{
  PangoContext *context = get_context ();

  for (guint i = 0; i < G_N_ELEMENTS (samples); i++)
    {
      const RwBigContent content = content_of (i);
      RwBigLayout layout;

      if (samples[i].look == RW_VERDICT_BLIND)
        continue; /* a sentence of a verdict: to be read from nearer */
      rw_big_layout_init (&layout, context, &content, 1280, 800);
      for (guint a = 0; a < RW_N_BIG_LINES; a++)
        if (layout.lines[a].layout != NULL)
          g_assert_cmpfloat (layout.lines[a].capital, >=, legible_pixels);
      rw_big_layout_clear (&layout);
    }
}

static double
value_height (const char *value,
              double      width,
              double      height)
{
  PangoContext *context = get_context ();
  RwBigContent content = content_of (0);
  RwBigLayout layout;
  double capital;

  content.value = (char *) value;
  rw_big_layout_init (&layout, context, &content, width, height);
  capital = layout.lines[RW_BIG_VALUE].capital;
  rw_big_layout_clear (&layout);
  return capital;
}

/* A third of the height, or as wide as the window. */
static void
test_value_is_huge (void)
{
  PangoContext *context = get_context ();
  const RwBigContent content = content_of (1);
  RwBigLayout layout;

  g_assert_cmpfloat (value_height ("5.02\u202fV", 1280, 754), >=, 754 / 3.0);
  g_assert_cmpfloat (value_height ("12.06\u202fV", 1920, 1080), >=, 1080 / 3.0);
  rw_big_layout_init (&layout, context, &content, 1280, 754);
  g_assert_cmpfloat (layout.lines[RW_BIG_VALUE].ink.width, >, 0.88 * 1280);
  rw_big_layout_clear (&layout);
}

static void
test_digits_do_not_change_the_size (void)
{
  g_assert_cmpfloat (value_height ("11.11\u202fV", 900, 1400), ==, value_height ("12.06\u202fV", 900, 1400));
  g_assert_cmpfloat (value_height ("−1.11\u202fV", 700, 1400), ==, value_height ("−8.06\u202fV", 700, 1400));
}

/* Every colour that words are inked with, on what it stands on. */
static void
test_contrast (void)
{
  for (guint id = 0; id < RW_N_THEMES; id++)
    {
      const RwTheme *theme = rw_theme_get (id);

      for (guint verdict = 0; verdict < RW_N_VERDICTS; verdict++)
        g_assert_cmpfloat (rw_color_contrast (theme->verdicts[verdict], theme->paper), >=, 4.5);
      g_assert_cmpfloat (rw_color_contrast (theme->quiet, theme->paper), >=, 4.5);
      g_assert_cmpfloat (rw_color_contrast (theme->line, theme->paper), >=, 3);
    }
}

/* Pixels of @color, give or take, in the picture. */
static guint
count_color (cairo_surface_t *surface,
             RwColor          color)
{
  const int stride = cairo_image_surface_get_stride (surface), width = cairo_image_surface_get_width (surface);
  const guchar *data = cairo_image_surface_get_data (surface);
  guint n = 0;

  for (int y = 0; y < cairo_image_surface_get_height (surface); y++)
    for (int x = 0; x < width; x++)
      {
        const guint32 pixel = ((const guint32 *) (const void *) (data + y * stride))[x];

        n += fabs ((pixel >> 16 & 0xff) / 255.0 - color.r) < 0.01 && fabs ((pixel >> 8 & 0xff) / 255.0 - color.g) < 0.01
             && fabs ((pixel & 0xff) / 255.0 - color.b) < 0.01;
      }
  return n;
}

static guint
ink_and_count (guint     sample,
               gboolean  stale,
               RwThemeId id,
               RwVerdict verdict)
{
  PangoContext *context = get_context ();
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 1280, 800);
  cairo_t *cr = cairo_create (surface);
  RwBigContent content = content_of (sample);
  RwBigLayout layout;
  guint n;

  content.stale = stale;
  content.look = stale ? RW_VERDICT_NONE : content.look;
  rw_big_layout_init (&layout, context, &content, 1280, 800);
  rw_big_layout_ink (&layout, cr, &content, rw_theme_get (id));
  cairo_destroy (cr);
  n = count_color (surface, rw_theme_get (id)->verdicts[verdict]);
  cairo_surface_destroy (surface);
  rw_big_layout_clear (&layout);
  return n;
}

static void
test_verdict_is_seen (void)
{
  for (guint id = 0; id < RW_N_THEMES; id++)
    {
      g_assert_cmpint (ink_and_count (1, FALSE, id, RW_VERDICT_OUTSIDE), >, 10000);
      g_assert_cmpint (ink_and_count (2, FALSE, id, RW_VERDICT_CLOSE), >, 5000);
      g_assert_cmpint (ink_and_count (4, FALSE, id, RW_VERDICT_OUTSIDE), >, 100000);
      g_assert_cmpint (ink_and_count (1, TRUE, id, RW_VERDICT_OUTSIDE), ==, 0);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/big-view/says what to do first", test_says_what_to_do_first);
  g_test_add_func ("/big-view/says turn, and leave", test_says_turn_and_leave);
  g_test_add_func ("/big-view/says limits", test_says_limits);
  g_test_add_func ("/big-view/says what is wrong", test_says_what_is_wrong);
  g_test_add_func ("/big-view/an old value is stale", test_old_value_is_stale);
  g_test_add_func ("/big-view/all of it in words", test_all_of_it_in_words);
  g_test_add_func ("/big-view/nothing is cut off", test_nothing_is_cut_off);
  g_test_add_func ("/big-view/legible from four metres", test_legible_from_four_metres);
  g_test_add_func ("/big-view/the value is huge", test_value_is_huge);
  g_test_add_func ("/big-view/digits do not change the size", test_digits_do_not_change_the_size);
  g_test_add_func ("/big-view/contrast", test_contrast);
  g_test_add_func ("/big-view/the verdict is seen", test_verdict_is_seen);
  return g_test_run ();
}
