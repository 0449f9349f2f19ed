/* test-kinds.c: the fixed words of a reading.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "fixtures.h"
#include "rw-kinds.h"

static void
test_places_keep_their_ids (void)
{
  static const char *const ids[RW_N_PLACES] = { "terminals", "board", "chip", "wire" };

  for (int i = 0; i < RW_N_PLACES; i++)
    {
      RwPlace place = RW_N_PLACES;

      g_assert_cmpstr (rw_place_to_id ((RwPlace) i), ==, ids[i]);
      g_assert_true (rw_place_from_id (ids[i], &place));
      g_assert_cmpint (place, ==, i);
      g_assert_cmpint (*rw_place_get_label ((RwPlace) i), !=, '\0');
    }
}

static void
test_kinds_keep_their_ids_and_units (void)
{
  static const char *const ids[RW_N_KINDS] = { "dc", "ripple", "ohms", "amps", "celsius" };
  static const char *const units[RW_N_KINDS] = { "V", "V", "Ω", "A", "°C" };

  for (int i = 0; i < RW_N_KINDS; i++)
    {
      RwKind kind = RW_N_KINDS;

      g_assert_cmpstr (rw_kind_to_id ((RwKind) i), ==, ids[i]);
      g_assert_true (rw_kind_from_id (ids[i], &kind));
      g_assert_cmpint (kind, ==, i);
      g_assert_cmpstr (rw_kind_get_unit ((RwKind) i), ==, units[i]);
    }
}

static void
test_labels_differ (void)
{
  for (int i = 0; i < RW_N_PLACES; i++)
    for (int j = 0; j < i; j++)
      g_assert_cmpstr (rw_place_get_label ((RwPlace) i), !=, rw_place_get_label ((RwPlace) j));
}

static void
test_strangers_leave_the_answer_alone (void)
{
  static const char *const strangers[] = { "", "Board", "board ", "DC", "terminal", "wires",
                                           "volts" };
  RwPlace place = RW_PLACE_CHIP;
  RwKind kind = RW_KIND_AMPS;

  for (guint i = 0; i < G_N_ELEMENTS (strangers); i++)
    {
      g_assert_false (rw_place_from_id (strangers[i], &place));
      g_assert_false (rw_kind_from_id (strangers[i], &kind));
    }
  g_assert_false (rw_place_from_id (NULL, &place));
  g_assert_false (rw_kind_from_id (NULL, &kind));
  g_assert_cmpint (place, ==, RW_PLACE_CHIP);
  g_assert_cmpint (kind, ==, RW_KIND_AMPS);
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/kinds/places-keep-their-ids", test_places_keep_their_ids);
  g_test_add_func ("/kinds/kinds-keep-their-ids-and-units", test_kinds_keep_their_ids_and_units);
  g_test_add_func ("/kinds/labels-differ", test_labels_differ);
  g_test_add_func ("/kinds/strangers-leave-the-answer-alone",
                   test_strangers_leave_the_answer_alone);
  return g_test_run ();
}
