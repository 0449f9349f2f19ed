/* test-projector-picture.c: what stands on the projector can be read from ten metres, and nothing is cut off or covered.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The picture is laid out without a display, on the shapes that projectors have.
 */
#include "config.h"

#include <glib.h>

#include "rw-projector-picture.h"

static const double widths[] = { 1280, 960, 1152, 1680 }; /* 16:9, 4:3, 16:10, 21:9 */
static const double slack = 1;

static PangoContext *
make_context (void)
{
  PangoContext *context = pango_font_map_create_context (pango_cairo_font_map_get_default ());
  g_autoptr (PangoFontDescription) font = pango_font_description_from_string ("Sans");

  pango_context_set_font_description (context, font);
  return context;
}

static RwProjectionContent *
make_content (RwProjectionPart part,
              guint            n_rails)
{
  static const char *const labels[] = { "+5 V", "+12 V", "−5 V", "−12 V", "+24 V" };
  static const char *const values[] = { "5.009\u202fV", "11.86\u202fV", "−4.913\u202fV", "−12.04\u202fV", "24.10\u202fV" };
  RwProjectionContent *content = rw_projection_content_new ();

  content->part = part;
  for (guint i = 0; i < n_rails; i++)
    {
      RwProjectionRail *rail = rw_projection_rail_new (labels[i]);

      rail->label = g_strdup (labels[i]);
      rail->value = g_strdup (values[i]);
      rail->verdict = g_strdup (i % 2 == 0 ? "◐ too close" : "● inside");
      rail->place = g_strdup ("terminals · live");
      rail->look = i % 2 == 0 ? RW_VERDICT_CLOSE : RW_VERDICT_INSIDE;
      g_ptr_array_add (content->rails, rail);
      g_ptr_array_add (content->shown, rail);
    }
  return content;
}

static void
assert_tidy (const RwProjectorLayout *layout)
{
  for (guint i = 0; i < layout->texts->len; i++)
    {
      const RwRect *box = &g_array_index (layout->texts, RwProjectorText, i).box;

      g_assert_cmpfloat (box->x, >=, -slack);
      g_assert_cmpfloat (box->y, >=, -slack);
      g_assert_cmpfloat (rw_rect_right (box), <=, layout->width + slack);
      g_assert_cmpfloat (rw_rect_bottom (box), <=, RW_PROJECTOR_HEIGHT + slack);
      for (guint k = 0; k < i; k++)
        {
          RwRect other = g_array_index (layout->texts, RwProjectorText, k).box;

          other.x += slack;
          other.y += slack;
          other.width -= 2 * slack;
          other.height -= 2 * slack;
          if (rw_rect_overlap (box, &other))
            g_error ("“%s” covers “%s” in a picture %.0f wide",
                     pango_layout_get_text (g_array_index (layout->texts, RwProjectorText, i).layout),
                     pango_layout_get_text (g_array_index (layout->texts, RwProjectorText, k).layout), layout->width);
        }
      if (layout->part.width > 0)
        g_assert_cmpfloat (rw_rect_bottom (box), <=, layout->part.y + slack);
    }
}

static void
assert_legible (const RwProjectorLayout *layout,
                double                   value)
{
  for (guint i = 0; i < layout->texts->len; i++)
    {
      const RwProjectorText *text = &g_array_index (layout->texts, RwProjectorText, i);

      g_assert_cmpfloat (text->size, >=, (text->value ? value : RW_PROJECTOR_READ) - 0.01);
    }
}

typedef PangoContext Context;
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Context, g_object_unref)

typedef void (*CheckFunc) (const RwProjectorLayout *layout, gpointer data);

/* On every shape, in both directions. */
static void
check_all (const RwProjectionContent *content,
           guint                      n_widths,
           CheckFunc                  check,
           gpointer                   data)
{
  g_autoptr (Context) context = make_context ();

  for (guint i = 0; i < n_widths; i++)
    for (int rtl = 0; rtl < 2; rtl++)
      {
        RwProjectorLayout layout;

        rw_projector_layout_init (&layout, context, content, widths[i], rtl);
        assert_tidy (&layout);
        if (check != NULL)
          check (&layout, data);
        rw_projector_layout_clear (&layout);
      }
}

static void
check_value (const RwProjectorLayout *layout,
             gpointer                 data)
{
  assert_legible (layout, *(const double *) data);
}

static void
test_values_are_large (void)
{
  double value = RW_PROJECTOR_VALUE;

  for (guint n = 1; n <= 5; n++)
    {
      g_autoptr (RwProjectionContent) content = make_content (RW_PROJECTION_VALUES, n);

      check_all (content, 1, check_value, &value);
      check_all (content, G_N_ELEMENTS (widths), NULL, NULL);
    }
}

static void
check_part (const RwProjectorLayout *layout,
            gpointer                 data)
{
  assert_legible (layout, RW_PROJECTOR_READ);
  g_assert_cmpfloat (layout->part.width, ==, layout->width);
  g_assert_cmpfloat (layout->part.height, >=, 0.85 * RW_PROJECTOR_HEIGHT);
  g_assert_cmpfloat_with_epsilon (rw_rect_bottom (&layout->part), RW_PROJECTOR_HEIGHT, 1e-6);
}

static void
test_picture_has_the_height (void)
{
  const RwProjectionPart parts[] = { RW_PROJECTION_TRIM, RW_PROJECTION_CHART };

  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    for (guint n = 0; n < 2; n++)
      {
        g_autoptr (RwProjectionContent) content = make_content (parts[i], n);

        check_all (content, G_N_ELEMENTS (widths), check_part, NULL);
      }
}

static void
test_check_can_be_read (void)
{
  static const char *const lines[] = { "• below 50 mV", "• 50 to 100 mV, and it moves when the wire is touched",
                                       "• over 100 mV", NULL };
  g_autoptr (RwProjectionContent) content = make_content (RW_PROJECTION_CHECK, 3);
  double value = RW_PROJECTOR_READ;

  content->title = g_strdup ("Next check: drop along the ground wire, board running");
  content->lines = g_strdupv ((GStrv) lines);
  check_all (content, 1, check_value, &value);
  check_all (content, G_N_ELEMENTS (widths), NULL, NULL);
}

static void
test_table_can_be_read (void)
{
  static const char *const cells[] = { "Who", "Called", "Read", "Team A", "4.95 V", "5.02 V", "The back row", "5.10 V",
                                       "5.02 V", NULL };
  g_autoptr (RwProjectionContent) content = make_content (RW_PROJECTION_VALUES, 3);
  double value = RW_PROJECTOR_READ;

  content->has_text = TRUE;
  content->title = g_strdup ("Call it first: +5 V after the turn");
  content->cells = g_strdupv ((GStrv) cells);
  content->n_columns = 3;
  check_all (content, 1, check_value, &value);
  check_all (content, G_N_ELEMENTS (widths), NULL, NULL);
}

/* Nothing is cut off for the sake of size. */
static void
test_much_is_smaller_but_whole (void)
{
  g_autoptr (RwProjectionContent) content = make_content (RW_PROJECTION_VALUES, 3);
  g_autoptr (GStrvBuilder) lines = g_strv_builder_new ();

  for (guint i = 0; i < 40; i++)
    g_strv_builder_add (lines, "A long line of a lesson, which goes on and on until nobody can read any of it from afar");
  content->has_text = TRUE;
  content->lines = g_strv_builder_end (lines);
  check_all (content, G_N_ELEMENTS (widths), NULL, NULL);
}

static void
check_empty (const RwProjectorLayout *layout,
             gpointer                 data)
{
  g_assert_cmpuint (layout->texts->len + layout->frames->len + layout->lines->len, ==, 0);
  g_assert_cmpfloat (layout->part.width, ==, 0);
}

static void
test_blank_is_empty (void)
{
  g_autoptr (RwProjectionContent) content = make_content (RW_PROJECTION_CHART, 3);

  content->blank = TRUE;
  check_all (content, G_N_ELEMENTS (widths), check_empty, NULL);
}

/* A digit that counts moves nothing and changes no size. */
static void
test_digits_do_not_dance (void)
{
  g_autoptr (Context) context = make_context ();
  double first_size = 0, first_x = 0;

  for (int digit = 0; digit < 10; digit++)
    {
      g_autoptr (RwProjectionContent) content = make_content (RW_PROJECTION_VALUES, 3);
      RwProjectionRail *rail = content->rails->pdata[0];
      RwProjectorLayout layout;

      g_free (rail->value);
      rail->value = g_strdup_printf ("%d.%d%d%d\u202fV", digit, digit, digit, digit);
      rw_projector_layout_init (&layout, context, content, 1280, FALSE);
      for (guint i = 0; i < layout.texts->len; i++)
        {
          const RwProjectorText *text = &g_array_index (layout.texts, RwProjectorText, i);

          if (!text->value)
            continue;
          if (digit == 0)
            {
              first_size = text->size;
              first_x = text->x;
            }
          g_assert_cmpfloat (text->size, ==, first_size);
          g_assert_cmpfloat_with_epsilon (text->x, first_x, 0.5);
          break;
        }
      rw_projector_layout_clear (&layout);
    }
}

/* 4.5 to 1 for everything that must be read. */
static void
test_contrast (void)
{
  const RwThemeId themes[] = { RW_THEME_LIGHT, RW_THEME_DARK };

  for (guint i = 0; i < G_N_ELEMENTS (themes); i++)
    {
      const RwTheme *theme = rw_theme_get (themes[i]);

      g_assert_cmpfloat (rw_color_contrast (theme->ink, theme->paper), >=, 7);
      g_assert_cmpfloat (rw_color_contrast (theme->quiet, theme->paper), >=, 4.5);
      for (guint k = 0; k < RW_N_VERDICTS; k++)
        g_assert_cmpfloat (rw_color_contrast (theme->verdicts[k], theme->paper), >=, 4.5);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/projector/values are at least 12 % of the height, words 7 %", test_values_are_large);
  g_test_add_func ("/projector/a chart has most of the height", test_picture_has_the_height);
  g_test_add_func ("/projector/the next check can be read", test_check_can_be_read);
  g_test_add_func ("/projector/a table can be read", test_table_can_be_read);
  g_test_add_func ("/projector/much text is smaller but whole", test_much_is_smaller_but_whole);
  g_test_add_func ("/projector/a blank one is empty", test_blank_is_empty);
  g_test_add_func ("/projector/digits that count move nothing", test_digits_do_not_dance);
  g_test_add_func ("/projector/contrast is enough", test_contrast);
  return g_test_run ();
}
