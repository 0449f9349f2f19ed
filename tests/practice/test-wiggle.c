/* test-wiggle.c: a bad joint moves when it is moved, a good one does not.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "practice-fixtures.h"
#include "rw-practice-meter.h"
#include "rw-practice-wiggle.h"

#define CLASSIC "classic-5-12-m5"

/* By how much +5 V at the board moves while it is shaken, ten times. */
static double
movement (RwPracticeCabinet *cabinet,
          RwPracticeSpot     spot)
{
  const double before = practice_dc (cabinet, "p5", RW_PLACE_BOARD);
  double most = 0;

  for (guint i = 0; i < 10; i++)
    {
      rw_practice_cabinet_wiggle (cabinet, spot);
      for (guint k = 0; k < 10; k++)
        {
          rw_practice_cabinet_advance (cabinet, 0.02);
          most = fmax (most, fabs (practice_dc (cabinet, "p5", RW_PLACE_BOARD) - before));
        }
    }
  return most;
}

/* Trade practice: less than 10 mV. The board's own load steps are no movement of a joint. */
static void
a_good_cabinet_stays_still (void)
{
  for (guint64 seed = 1; seed <= 8; seed++)
    for (RwPracticeSpot spot = 0; spot < RW_PRACTICE_N_SPOTS; spot++)
      {
        g_autoptr (RwPracticeCabinet) cabinet = practice_running (CLASSIC, seed, NULL, 0, 20);
        RwPracticeModel *model = (RwPracticeModel *) rw_practice_cabinet_get_true_model (cabinet);

        model->params.step_rate = 0;
        g_assert_cmpfloat (movement (cabinet, spot), <, 0.010);
      }
}

typedef struct
{
  const char    *fault;
  RwPracticeSpot spot;
} Bad;

static const Bad bads[] = {
  { "edge-oxidised", RW_PRACTICE_SPOT_EDGE },      { "edge-burnt", RW_PRACTICE_SPOT_EDGE },
  { "poor-crimp", RW_PRACTICE_SPOT_HARNESS },      { "cracked-joint", RW_PRACTICE_SPOT_HARNESS },
  { "fuse-holder-tired", RW_PRACTICE_SPOT_HARNESS }, { "loose-terminal-screw", RW_PRACTICE_SPOT_SCREWS },
  { "trim-worn", RW_PRACTICE_SPOT_SUPPLY },
};

/* More than 50 mV where it is bad, and less than half of that anywhere it is not. */
static void
a_bad_joint_names_itself (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (bads); i++)
    for (guint64 seed = 1; seed <= 6; seed++)
      {
        g_autoptr (RwPracticeCabinet)
            cabinet = practice_running (CLASSIC, seed, bads[i].fault, 0.7, 20);
        g_autoptr (RwPracticeCabinet)
            other = practice_running (CLASSIC, seed, bads[i].fault, 0.7, 20);
        const double there = movement (cabinet, bads[i].spot);
        const double elsewhere = movement (other, bads[i].spot == RW_PRACTICE_SPOT_EDGE
                                                      ? RW_PRACTICE_SPOT_SCREWS
                                                      : RW_PRACTICE_SPOT_EDGE);

        g_test_message ("%s, seed %" G_GUINT64_FORMAT ": %.3f V there, %.3f V elsewhere",
                        bads[i].fault, seed, there, elsewhere);
        g_assert_cmpfloat (there, >, 0.050);
        if (!g_str_equal (bads[i].fault, "trim-worn") && !g_str_equal (bads[i].fault, "cracked-joint"))
          g_assert_cmpfloat (elsewhere, <, there / 2);
      }
}

static void
a_crack_is_found_by_tapping_its_own_side (void)
{
  guint on_board = 0;

  for (guint64 seed = 1; seed <= 10; seed++)
    {
      g_autoptr (RwPracticeCabinet)
          cabinet = practice_running (CLASSIC, seed, "cracked-joint", 0.6, 20);
      RwPracticeModel *model = (RwPracticeModel *) rw_practice_cabinet_get_true_model (cabinet);
      const gboolean here = model->params.crack_on_board;

      on_board += here;
      model->params.jerk_rate = 0; /* it shall not open by itself meanwhile */
      rw_practice_cabinet_advance (cabinet, 1);
      rw_practice_cabinet_wiggle (cabinet, here ? RW_PRACTICE_SPOT_SUPPLY : RW_PRACTICE_SPOT_BOARD);
      g_assert_cmpfloat (model->state.shake_ohms, ==, 0);
      rw_practice_cabinet_wiggle (cabinet, here ? RW_PRACTICE_SPOT_BOARD : RW_PRACTICE_SPOT_SUPPLY);
      g_assert_cmpfloat (model->state.shake_ohms, >, 0.1);
    }
  g_assert_cmpuint (on_board, >, 0);
  g_assert_cmpuint (on_board, <, 10);
}

static void
a_tap_resets_a_board_with_a_bad_socket (void)
{
  g_autoptr (RwPracticeCabinet)
      cabinet = practice_running (CLASSIC, 4, "socket-oxidised", 0.4, 10);
  g_autoptr (RwPracticeCabinet) healthy = practice_running (CLASSIC, 4, NULL, 0, 10);
  const guint before = rw_practice_cabinet_get_resets (cabinet);

  rw_practice_cabinet_wiggle (cabinet, RW_PRACTICE_SPOT_BOARD);
  rw_practice_cabinet_wiggle (healthy, RW_PRACTICE_SPOT_BOARD);
  rw_practice_cabinet_advance (cabinet, 0.02);
  rw_practice_cabinet_advance (healthy, 0.02);
  g_assert_cmpuint (rw_practice_cabinet_get_resets (cabinet), ==, before + 1);
  g_assert_cmpuint (rw_practice_cabinet_get_resets (healthy), ==, 0);
}

/* The meter on the edge sees it in its stream. */
static void
it_is_seen_on_the_stream (void)
{
  g_autoptr (RwPracticeCabinet) cabinet = practice_running (CLASSIC, 4, "poor-crimp", 0.7, 10);
  g_autoptr (RwPracticeMeter)
      meter = rw_practice_meter_new (cabinet, "m1", "bench meter", 0.5, 2, 6000, 7);
  double lo = INFINITY, hi = -INFINITY;

  rw_practice_meter_set_contact_volts (meter, 0);
  g_assert_true (rw_practice_cabinet_set_leads (cabinet, "p5", RW_PLACE_BOARD, RW_KIND_DC));
  rw_practice_cabinet_advance (cabinet, 3);
  g_bytes_unref (rw_practice_meter_take_bytes (meter));
  for (guint i = 0; i < 10; i++)
    {
      rw_practice_cabinet_wiggle (cabinet, RW_PRACTICE_SPOT_HARNESS);
      rw_practice_cabinet_advance (cabinet, 1);
    }

  g_autoptr (GBytes) bytes = rw_practice_meter_take_bytes (meter);
  g_autofree char *text = g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
  g_auto (GStrv) lines = g_strsplit (text, "\r\n", -1);

  for (guint i = 0; lines[i] != NULL && lines[i][0] != '\0'; i++)
    {
      lo = fmin (lo, g_ascii_strtod (lines[i], NULL));
      hi = fmax (hi, g_ascii_strtod (lines[i], NULL));
    }
  g_test_message ("%.3f to %.3f V", lo, hi);
  g_assert_cmpfloat (hi - lo, >, 0.050);
}

static void
the_same_hands_give_the_same (void)
{
  double seen[2];

  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (RwPracticeCabinet) cabinet = practice_running (CLASSIC, 4, "poor-crimp", 0.7, 10);

      rw_practice_cabinet_wiggle (cabinet, RW_PRACTICE_SPOT_HARNESS);
      rw_practice_cabinet_advance (cabinet, 0.1);
      seen[i] = practice_dc (cabinet, "p5", RW_PLACE_BOARD);
    }
  g_assert_cmpfloat (seen[0], ==, seen[1]);
}

static void
spots_have_ids_and_names (void)
{
  for (RwPracticeSpot spot = 0; spot < RW_PRACTICE_N_SPOTS; spot++)
    {
      g_assert_cmpint (rw_practice_spot_from_id (rw_practice_spot_to_id (spot)), ==, spot);
      g_assert_cmpuint (strlen (rw_practice_spot_get_label (spot)), >, 0);
    }
  g_assert_cmpint (rw_practice_spot_from_id ("attic"), ==, RW_PRACTICE_N_SPOTS);
  g_assert_cmpint (rw_practice_spot_from_id (NULL), ==, RW_PRACTICE_N_SPOTS);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, func) g_test_add_func ("/practice/wiggle/" name, func)
  ADD ("a-good-cabinet-stays-still", a_good_cabinet_stays_still);
  ADD ("a-bad-joint-names-itself", a_bad_joint_names_itself);
  ADD ("a-crack-is-found-by-tapping-its-own-side", a_crack_is_found_by_tapping_its_own_side);
  ADD ("a-tap-resets-a-board-with-a-bad-socket", a_tap_resets_a_board_with_a_bad_socket);
  ADD ("it-is-seen-on-the-stream", it_is_seen_on_the_stream);
  ADD ("the-same-hands-give-the-same", the_same_hands_give_the_same);
  ADD ("spots-have-ids-and-names", spots_have_ids_and_names);
#undef ADD
  return g_test_run ();
}
