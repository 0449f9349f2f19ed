/* test-theme.c: colours that can be told apart and read.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <string.h>

#include "chart-fixture.h"
#include "rw-theme.h"

/* WCAG 2.1: black on white is 21:1, and #767676 on white the darkest grey short of 4.54:1. */
static void
test_contrast_is_that_of_wcag (void)
{
  const RwColor black = { 0, 0, 0, 1 }, white = { 1, 1, 1, 1 };
  const RwColor grey = { 0x76 / 255.0, 0x76 / 255.0, 0x76 / 255.0, 1 };

  g_assert_cmpfloat_with_epsilon (rw_color_contrast (black, white), 21, 1e-9);
  g_assert_cmpfloat_with_epsilon (rw_color_contrast (white, black), 21, 1e-9);
  g_assert_cmpfloat_with_epsilon (rw_color_contrast (grey, white), 4.54, 0.01);
}

static void
test_text_can_be_read_in_every_theme (void)
{
  for (guint id = 0; id < RW_N_THEMES; id++)
    {
      const RwTheme *theme = rw_theme_get ((RwThemeId) id);

      g_assert_cmpfloat (rw_color_contrast (theme->ink, theme->paper), >=, 7);
      g_assert_cmpfloat (rw_color_contrast (theme->quiet, theme->paper), >=, 4.5);
      g_assert_cmpfloat (rw_color_contrast (theme->line, theme->paper), >=, 3);
      for (guint i = 0; i < RW_N_SERIES; i++)
        g_assert_cmpfloat (rw_color_contrast (theme->series[i].color, theme->paper), >=, 4.5);
      for (guint i = 0; i < RW_N_VERDICTS; i++)
        g_assert_cmpfloat (rw_color_contrast (theme->verdicts[i], theme->paper), >=, 4.5);
    }
}

static void
test_high_contrast_shines_through_nowhere (void)
{
  for (guint id = RW_THEME_LIGHT_CONTRAST; id < RW_N_THEMES; id++)
    {
      const RwTheme *theme = rw_theme_get ((RwThemeId) id);

      g_assert_cmpfloat (theme->tint.a, ==, 1);
      g_assert_cmpfloat (theme->hatch.a, ==, 1);
      g_assert_cmpfloat (theme->weight, >, rw_theme_get (RW_THEME_LIGHT)->weight);
    }
}

static gboolean
same_style (const RwSeriesStyle *a,
            const RwSeriesStyle *b)
{
  const gboolean color = a->color.r == b->color.r && a->color.g == b->color.g
                         && a->color.b == b->color.b;

  return color && a->marker == b->marker && a->n_dashes == b->n_dashes
         && memcmp (a->dashes, b->dashes, sizeof a->dashes) == 0;
}

static void
test_thirty_six_styles_all_differ (void)
{
  for (guint id = 0; id < RW_N_THEMES; id++)
    for (guint i = 0; i < 36; i++)
      for (guint k = 0; k < i; k++)
        {
          const RwSeriesStyle a = rw_theme_series (rw_theme_get ((RwThemeId) id), i);
          const RwSeriesStyle b = rw_theme_series (rw_theme_get ((RwThemeId) id), k);

          g_assert_false (same_style (&a, &b));
        }
}

/* A rail keeps dash and marker when the theme changes. */
static void
test_first_six_go_by_place_in_the_profile (void)
{
  static const int n_dashes[RW_N_SERIES] = { 0, 2, 2, 4, 2, 2 };

  for (guint id = 0; id < RW_N_THEMES; id++)
    for (guint i = 0; i < RW_N_SERIES; i++)
      {
        const RwSeriesStyle style = rw_theme_series (rw_theme_get ((RwThemeId) id), i);

        g_assert_cmpint ((int) style.marker, ==, (int) i);
        g_assert_cmpint (style.n_dashes, ==, n_dashes[i]);
      }
}

static void
test_rails_then_ground_then_strangers (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  const RwProfile *profile = rw_session_get_profile (session);

  g_assert_cmpuint (rw_theme_series_index (profile, "p5"), ==, 0);
  g_assert_cmpuint (rw_theme_series_index (profile, "m5"), ==, 2);
  g_assert_cmpuint (rw_theme_series_index (profile, "gnd"), ==, 3);
  g_assert_cmpuint (rw_theme_series_index (profile, "heater"), ==, 4);
}

static void
test_theme_out_of_range_is_the_light_one (void)
{
  g_assert_true (rw_theme_get ((RwThemeId) 99) == rw_theme_get (RW_THEME_LIGHT));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/theme/contrast-is-that-of-wcag", test_contrast_is_that_of_wcag);
  g_test_add_func ("/theme/text-can-be-read-in-every-theme", test_text_can_be_read_in_every_theme);
  g_test_add_func ("/theme/high-contrast-shines-through-nowhere",
                   test_high_contrast_shines_through_nowhere);
  g_test_add_func ("/theme/thirty-six-styles-all-differ", test_thirty_six_styles_all_differ);
  g_test_add_func ("/theme/first-six-go-by-place-in-the-profile",
                   test_first_six_go_by_place_in_the_profile);
  g_test_add_func ("/theme/rails-then-ground-then-strangers",
                   test_rails_then_ground_then_strangers);
  g_test_add_func ("/theme/out-of-range-is-the-light-one",
                   test_theme_out_of_range_is_the_light_one);
  return g_test_run ();
}
