/* test-view.c: what is looked at.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <string.h>

#include "chart-fixture.h"
#include "rw-view.h"

/* What was told since the last look. */
typedef struct
{
  GString *notified; /* names of properties, in order */
  guint    n_changed;
} Told;

static void
notify_cb (GObject    *object,
           GParamSpec *pspec,
           gpointer    user_data)
{
  Told *told = user_data;

  g_string_append_printf (told->notified, "%s ", pspec->name);
}

static void
changed_cb (RwView  *view,
            gpointer user_data)
{
  ((Told *) user_data)->n_changed++;
}

static void
listen_to (RwView *view,
           Told   *told)
{
  *told = (Told){ g_string_new (NULL), 0 };
  g_signal_connect (view, "notify", G_CALLBACK (notify_cb), told);
  g_signal_connect (view, "changed", G_CALLBACK (changed_cb), told);
}

static void
forget (Told *told)
{
  g_string_truncate (told->notified, 0);
  told->n_changed = 0;
}

/* Another value than the one there is, for any kind of property. */
static void
other_value (GParamSpec   *pspec,
             const GValue *now,
             GValue       *other)
{
  if (G_IS_PARAM_SPEC_BOOLEAN (pspec))
    g_value_set_boolean (other, !g_value_get_boolean (now));
  else if (G_IS_PARAM_SPEC_INT (pspec))
    g_value_set_int (other, g_value_get_int (now) == G_PARAM_SPEC_INT (pspec)->minimum
                                ? G_PARAM_SPEC_INT (pspec)->maximum
                                : G_PARAM_SPEC_INT (pspec)->minimum);
  else if (G_IS_PARAM_SPEC_UINT (pspec))
    g_value_set_uint (other, g_value_get_uint (now) + 7);
  else if (G_IS_PARAM_SPEC_DOUBLE (pspec))
    g_value_set_double (other, g_value_get_double (now) + 1.5);
  else if (G_IS_PARAM_SPEC_STRING (pspec))
    g_value_set_string (other, "m5");
  else if (G_IS_PARAM_SPEC_OBJECT (pspec))
    g_value_take_object (other, fixture_trims ());
  else
    g_assert_not_reached ();
}

static gboolean
same_value (GParamSpec   *pspec,
            const GValue *a,
            const GValue *b)
{
  return g_param_values_cmp (pspec, a, b) == 0;
}

static void
check_property (GParamSpec *pspec)
{
  g_autoptr (RwSession) session = fixture_empty ();
  g_autoptr (RwView) view = rw_view_new (session);
  g_auto (GValue) now = G_VALUE_INIT, other = G_VALUE_INIT, got = G_VALUE_INIT;
  Told told;

  g_object_get_property (G_OBJECT (view), pspec->name, &now);
  g_value_init (&other, pspec->value_type);
  other_value (pspec, &now, &other);
  listen_to (view, &told);

  g_object_set_property (G_OBJECT (view), pspec->name, &other);
  g_object_get_property (G_OBJECT (view), pspec->name, &got);
  g_assert_true (same_value (pspec, &got, &other));
  g_assert_nonnull (strstr (told.notified->str, pspec->name));
  g_assert_cmpuint (told.n_changed, ==, 1);

  forget (&told);
  g_object_set_property (G_OBJECT (view), pspec->name, &other);
  g_assert_cmpstr (told.notified->str, ==, "");
  g_assert_cmpuint (told.n_changed, ==, 0);
  g_string_free (told.notified, TRUE);
}

static void
test_every_property_keeps_what_it_is_given (void)
{
  GObjectClass *klass = g_type_class_ref (RW_TYPE_VIEW);
  guint n;
  g_autofree GParamSpec **specs = g_object_class_list_properties (klass, &n);

  g_assert_cmpuint (n, >=, 12);
  for (guint i = 0; i < n; i++)
    {
      g_assert_true (specs[i]->flags & G_PARAM_EXPLICIT_NOTIFY);
      if (specs[i]->flags & G_PARAM_WRITABLE)
        check_property (specs[i]);
    }
  g_type_class_unref (klass);
}

static void
test_follows_its_session (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  g_autoptr (RwView) view = rw_view_new (session);
  Told told;

  listen_to (view, &told);
  fixture_reading (session, 200, "p5", RW_PLACE_BOARD, 5);
  g_assert_cmpfloat (rw_view_get_extent (view), ==, 200);
  g_assert_cmpstr (told.notified->str, ==, "end ");
  g_assert_cmpuint (told.n_changed, ==, 1);
  forget (&told);
  rw_session_rewind (session, 0);
  g_assert_cmpfloat (rw_view_get_end (view), ==, RW_TIME_SPAN_EMPTY);
  g_assert_cmpuint (told.n_changed, ==, 1);
  g_string_free (told.notified, TRUE);
}

static void
test_another_session_is_fitted_and_the_old_one_let_go (void)
{
  g_autoptr (RwSession) first = fixture_trims (), second = fixture_empty ();
  g_autoptr (RwView) view = rw_view_new (first);

  rw_view_set_span (view, 10, 40);
  rw_view_set_hovered (view, 3);
  rw_view_set_session (view, second);
  g_assert_true (rw_view_get_fit (view));
  g_assert_cmpuint (rw_view_get_hovered (view), ==, 0);
  fixture_reading (first, 5000, "p5", RW_PLACE_BOARD, 5);
  g_assert_cmpfloat (rw_view_get_end (view), ==, RW_TIME_SPAN_EMPTY);
  g_assert_finalize_object (g_steal_pointer (&first));
}

static void
test_horizon_reaches_past_the_last_event (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  g_autoptr (RwView) view = rw_view_new (session);

  rw_view_set_horizon (view, 500);
  g_assert_cmpfloat (rw_view_get_end (view), >=, 500);
  fixture_reading (session, 700, "p5", RW_PLACE_BOARD, 5);
  g_assert_cmpfloat (rw_view_get_extent (view), ==, 700);
  rw_view_set_horizon (view, G_MAXDOUBLE * 10);
  g_assert_cmpfloat (rw_view_get_horizon (view), ==, 0);
}

static void
test_copy_goes_its_own_way (void)
{
  g_autoptr (RwSession) session = fixture_trims ();
  g_autoptr (RwView) view = rw_view_new (session);

  rw_view_set_span (view, 20, 90);
  rw_view_set_rail (view, "m5");
  rw_view_set_theme (view, RW_THEME_DARK);
  rw_view_set_mode (view, RW_VIEW_VOLTS);
  rw_view_set_text_scale (view, 1.5);

  g_autoptr (RwView) copy = rw_view_dup (view);

  g_assert_cmpfloat (rw_view_get_start (copy), ==, 20);
  g_assert_cmpfloat (rw_view_get_end (copy), ==, 90);
  g_assert_cmpstr (rw_view_get_rail (copy), ==, "m5");
  g_assert_cmpint ((int) rw_view_get_theme (copy), ==, RW_THEME_DARK);
  g_assert_cmpint ((int) rw_view_get_mode (copy), ==, RW_VIEW_VOLTS);
  g_assert_cmpfloat (rw_view_get_text_scale (copy), ==, 1.5);
  rw_view_fit (copy);
  g_assert_cmpfloat (rw_view_get_start (view), ==, 20);
}

static void
test_view_is_let_go (void)
{
  g_autoptr (RwSession) session = fixture_trims ();
  RwView *view = rw_view_new (session);

  rw_view_zoom (view, 0.5, 100);
  g_assert_finalize_object (view);
  fixture_reading (session, 5000, "p5", RW_PLACE_BOARD, 5); /* nobody listens any more */
}

static void
test_view_without_session_works (void)
{
  g_autoptr (RwView) view = rw_view_new (NULL);

  rw_view_zoom (view, 0.5, 10);
  rw_view_pan (view, 3);
  rw_view_fit (view);
  g_assert_cmpfloat (rw_view_get_end (view), ==, RW_TIME_SPAN_EMPTY);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/view/every-property-keeps-what-it-is-given",
                   test_every_property_keeps_what_it_is_given);
  g_test_add_func ("/view/follows-its-session", test_follows_its_session);
  g_test_add_func ("/view/another-session-is-fitted",
                   test_another_session_is_fitted_and_the_old_one_let_go);
  g_test_add_func ("/view/horizon-reaches-past-the-last-event",
                   test_horizon_reaches_past_the_last_event);
  g_test_add_func ("/view/copy-goes-its-own-way", test_copy_goes_its_own_way);
  g_test_add_func ("/view/is-let-go", test_view_is_let_go);
  g_test_add_func ("/view/without-session-works", test_view_without_session_works);
  return g_test_run ();
}
