/* test-typed-check.c: does a typed value look like a slip?
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "fixtures.h"
#include "rw-typed-check.h"

typedef struct
{
  const char *rail;
  RwPlace     place;
  RwKind      kind;
  const char *typed;
  RwSlip      slip;
  double      suggestion; /* NaN: none is made */
} Row;

#define NOTHING ((double) NAN)

static const Row rows[] = {
  /* As it should be. */
  { "p5", RW_PLACE_BOARD, RW_KIND_DC, "5.02", RW_SLIP_NONE, NOTHING },
  { "p5", RW_PLACE_BOARD, RW_KIND_DC, "+5,02", RW_SLIP_NONE, NOTHING },
  { "p5", RW_PLACE_BOARD, RW_KIND_DC, "3.1", RW_SLIP_NONE, NOTHING },
  { "p5", RW_PLACE_BOARD, RW_KIND_DC, "7.9", RW_SLIP_NONE, NOTHING },
  { "m5", RW_PLACE_BOARD, RW_KIND_DC, "-5.02", RW_SLIP_NONE, NOTHING },
  { "m5", RW_PLACE_TERMINALS, RW_KIND_DC, "−6.4", RW_SLIP_NONE, NOTHING },
  { "p12", RW_PLACE_BOARD, RW_KIND_DC, "11.8", RW_SLIP_NONE, NOTHING },
  /* Dead rails are real. */
  { "p5", RW_PLACE_BOARD, RW_KIND_DC, "0.00", RW_SLIP_NONE, NOTHING },
  { "p5", RW_PLACE_BOARD, RW_KIND_DC, "35 mV", RW_SLIP_NONE, NOTHING },
  { "p12", RW_PLACE_BOARD, RW_KIND_DC, "0.6", RW_SLIP_NONE, NOTHING },
  { "m5", RW_PLACE_BOARD, RW_KIND_DC, "0.3", RW_SLIP_NONE, NOTHING },
  /* The minus forgotten, or the leads the wrong way round. */
  { "m5", RW_PLACE_BOARD, RW_KIND_DC, "5.02", RW_SLIP_MINUS, -5.02 },
  { "m5", RW_PLACE_BOARD, RW_KIND_DC, "+5.02", RW_SLIP_SIGN, -5.02 },
  { "p5", RW_PLACE_BOARD, RW_KIND_DC, "-5.02", RW_SLIP_SIGN, 5.02 },
  { "p12", RW_PLACE_CHIP, RW_KIND_DC, "−12", RW_SLIP_SIGN, 12 },
  /* A point or a unit slipped. */
  { "p5", RW_PLACE_BOARD, RW_KIND_DC, "50.2", RW_SLIP_SCALE, 5.02 },
  { "p5", RW_PLACE_BOARD, RW_KIND_DC, "502", RW_SLIP_SCALE, 5.02 },
  { "p5", RW_PLACE_BOARD, RW_KIND_DC, "5020", RW_SLIP_SCALE, 5.02 },
  { "p5", RW_PLACE_BOARD, RW_KIND_DC, "-50.2", RW_SLIP_SCALE, 5.02 },
  { "p12", RW_PLACE_BOARD, RW_KIND_DC, "120", RW_SLIP_SCALE, 12 },
  { "p12", RW_PLACE_BOARD, RW_KIND_DC, "1.18", RW_SLIP_NONE, NOTHING },
  { "m5", RW_PLACE_BOARD, RW_KIND_DC, "502", RW_SLIP_SCALE, -5.02 },
  { "m5", RW_PLACE_BOARD, RW_KIND_DC, "-502", RW_SLIP_SCALE, -5.02 },
  { "m5", RW_PLACE_BOARD, RW_KIND_DC, "5020 mV", RW_SLIP_MINUS, -5.02 },
  { "p5", RW_PLACE_WIRE, RW_KIND_DC, "120", RW_SLIP_SCALE, 0.12 },
  { "gnd", RW_PLACE_WIRE, RW_KIND_DC, "35", RW_SLIP_SCALE, 0.35 },
  { "p5", RW_PLACE_WIRE, RW_KIND_DC, "120 mV", RW_SLIP_NONE, NOTHING },
  { "p5", RW_PLACE_WIRE, RW_KIND_DC, "-0.035", RW_SLIP_NONE, NOTHING },
  { "p5", RW_PLACE_BOARD, RW_KIND_RIPPLE, "0.02", RW_SLIP_NONE, NOTHING },
  { "p5", RW_PLACE_BOARD, RW_KIND_RIPPLE, "120", RW_SLIP_SCALE, 0.12 },
  { "m5", RW_PLACE_BOARD, RW_KIND_RIPPLE, "20", RW_SLIP_SCALE, 0.2 },
  /* Mains-sized: never called a slip of something harmless without good reason. */
  { "p5", RW_PLACE_BOARD, RW_KIND_DC, "230", RW_SLIP_MAINS, NOTHING },
  { "p5", RW_PLACE_TERMINALS, RW_KIND_DC, "325", RW_SLIP_MAINS, NOTHING },
  { "p12", RW_PLACE_BOARD, RW_KIND_DC, "230", RW_SLIP_MAINS, NOTHING },
  { "m5", RW_PLACE_BOARD, RW_KIND_DC, "-230", RW_SLIP_MAINS, NOTHING },
  { "gnd", RW_PLACE_BOARD, RW_KIND_DC, "230", RW_SLIP_MAINS, NOTHING },
  { "p24", RW_PLACE_BOARD, RW_KIND_DC, "-61", RW_SLIP_MAINS, NOTHING },
  { "p24", RW_PLACE_BOARD, RW_KIND_RIPPLE, "230", RW_SLIP_MAINS, NOTHING },
  { "p24", RW_PLACE_BOARD, RW_KIND_DC, "24.2", RW_SLIP_NONE, NOTHING },
  /* Nothing to say. */
  { "p5", RW_PLACE_BOARD, RW_KIND_OHMS, "1200", RW_SLIP_NONE, NOTHING },
  { "p5", RW_PLACE_CHIP, RW_KIND_CELSIUS, "85", RW_SLIP_NONE, NOTHING },
  { "p5", RW_PLACE_BOARD, RW_KIND_AMPS, "90", RW_SLIP_NONE, NOTHING },
  { "p5", RW_PLACE_BOARD, RW_KIND_DC, "OL", RW_SLIP_NONE, NOTHING },
};

static void
test_table (void)
{
  g_autoptr (RwProfile) profile = fixture_profile ();

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const Row *row = &rows[i];
      g_autoptr (GError) error = NULL;
      RwQuantityTyped typed;
      double suggestion = NAN;

      g_test_message ("%s %s %s", row->rail, rw_place_to_id (row->place), row->typed);
      rw_quantity_parse (row->typed, row->kind, &typed, &error);
      g_assert_no_error (error);
      g_assert_cmpint (rw_typed_check (rw_profile_find_rail (profile, row->rail), row->rail,
                                       row->place, row->kind,
                                       &typed, &suggestion),
                       ==, row->slip);
      if (isnan (row->suggestion))
        g_assert_true (isnan (suggestion));
      else
        g_assert_cmpfloat (suggestion, ==,
                           row->suggestion); /* the very double that typing it right gives */
    }
}

/* Whatever is typed: what is suggested needs no asking itself. */
static void
test_suggestions_are_plausible (void)
{
  g_autoptr (RwProfile) profile = fixture_profile ();
  g_autoptr (GRand) random = g_rand_new_with_seed (5);
  guint n_suggested = 0;

  for (guint i = 0; i < 50000; i++)
    {
      const RwRail *rail = rw_profile_get_rail (profile, i % 3);
      const RwPlace place = (RwPlace) g_rand_int_range (random, 0, RW_N_PLACES);
      const RwKind kind = g_rand_boolean (random) ? RW_KIND_DC : RW_KIND_RIPPLE;
      const double step = pow (10, g_rand_int_range (random, -4, 1));
      RwQuantityTyped typed = { .value = round (g_rand_double_range (random, -2000,
                                                                     2000) / step) * step,
                                                                         .step = step,
                                .has_sign = TRUE };
      double suggestion = NAN;
      const RwSlip slip = rw_typed_check (rail, rail->id, place, kind, &typed, &suggestion);

      g_assert_cmpint (isnan (suggestion), ==, slip == RW_SLIP_NONE || slip == RW_SLIP_MAINS);
      if (isnan (suggestion))
        continue;
      n_suggested++;
      typed.value = suggestion;
      g_assert_cmpint (rw_typed_check (rail, rail->id, place, kind, &typed, &suggestion), ==,
                       RW_SLIP_NONE);
    }
  g_assert_cmpuint (n_suggested, >, 5000);
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/typed-check/table", test_table);
  g_test_add_func ("/typed-check/suggestions-are-plausible", test_suggestions_are_plausible);
  return g_test_run ();
}
