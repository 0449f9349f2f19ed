/* test-stage-say.c: how a stage, a spot and a reason of the bring-up are put in words and shapes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib.h>
#include <math.h>
#include <string.h>

#include "rw-stage-record.h"
#include "rw-stage-say.h"

/* No two ways to stand look or read alike: a person who sees no colours tells them apart, and so does one who hears
 * the words alone. */
static void
every_status_has_its_own_word_and_shape (void)
{
  g_autoptr (GHashTable) words = g_hash_table_new (g_str_hash, g_str_equal);
  g_autoptr (GHashTable) shapes = g_hash_table_new (g_str_hash, g_str_equal);

  for (int status = RW_STAGE_AHEAD; status <= RW_STAGE_SKIPPED; status++)
    {
      g_assert_true (g_hash_table_add (words, (gpointer) rw_stage_status_get_label (status)));
      g_assert_true (g_hash_table_add (shapes, (gpointer) rw_stage_status_get_glyph (status)));
    }
  g_assert_cmpstr (rw_stage_status_get_glyph (RW_STAGE_DONE), ==, "✓");
  g_assert_cmpstr (rw_stage_status_get_glyph (RW_STAGE_CURRENT), ==, "▶");
}

static RwAsked
make_asked (const RwRail *rail,
            RwAskedState  state,
            double        value)
{
  return (RwAsked){ .rail_id = rail->id,
                    .rail = rail,
                    .place = RW_PLACE_BOARD,
                    .kind = RW_KIND_DC,
                    .minutes = NAN,
                    .state = state,
                    .value = value,
                    .step = 0.01,
                    .u = 0.01,
                    .verdict = isnan (value) ? RW_VERDICT_NONE : RW_VERDICT_INSIDE };
}

static void
assert_said (const RwAsked *asked,
             const char    *wanted)
{
  g_autofree char *said = rw_stage_say_asked (asked);

  g_assert_cmpstr (said, ==, wanted);
}

static void
a_spot_says_where_and_how_it_stands (void)
{
  char label[] = "+5 V";
  const RwRail rail = { .id = "p5", .label = label, .nominal = 5 };
  const RwAsked unread = make_asked (&rail, RW_ASKED_UNREAD, NAN);
  const RwAsked read = make_asked (&rail, RW_ASKED_READ, 5.02);
  const RwAsked stale = make_asked (&rail, RW_ASKED_STALE, 4.75);
  RwAsked due = make_asked (&rail, RW_ASKED_DUE, NAN);

  due.minutes = 15;
  assert_said (&unread, "○ +5 V, board: not read yet");
  assert_said (&read, "● +5 V, board: 5.02\u202fV, inside");
  assert_said (&stale, "◌ +5 V, board: 4.75\u202fV before the change, read it again");
  assert_said (&due, "○ +5 V, board, after 15 min: due now");
}

static void
assert_reason (RwGate      gate,
               gboolean    covered,
               const char *wanted)
{
  char text[] = "The power is on.";
  const RwGateReason reason = { .gate = gate, .covered = covered, .text = text };
  g_autofree char *said = rw_stage_say_reason (&reason);

  g_assert_cmpstr (said, ==, wanted);
}

static void
a_reason_says_first_how_grave_it_is (void)
{
  assert_reason (RW_GATE_STOP, FALSE, "■ Stop: The power is on.");
  assert_reason (RW_GATE_WARN, FALSE, "▲ Careful: The power is on.");
  assert_reason (RW_GATE_STOP, TRUE, "↷ Gone past: The power is on.");
}

/* The shipped words: whatever has a caution has a line above it that names the level. */
static void
a_hazard_is_named_above_every_caution (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RwStageWords) words = rw_stage_words_load_shipped (&error);

  g_assert_no_error (error);
  for (guint i = 0; i < RW_N_STAGES; i++)
    {
      const RwStageText *text = rw_stage_words_get (words, i);
      g_autofree char *said = rw_stage_say_hazard (text);

      g_assert_nonnull (strstr (said, rw_stage_who_get_label (text->who)));
      if (text->hazard != RW_STAGE_HAZARD_NONE)
        {
          g_assert_nonnull (text->caution);
          g_assert_true (g_str_has_prefix (said, rw_stage_hazard_get_label (text->hazard)));
        }
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/stage-say/every-status-has-its-own-word-and-shape", every_status_has_its_own_word_and_shape);
  g_test_add_func ("/stage-say/a-spot-says-where-and-how-it-stands", a_spot_says_where_and_how_it_stands);
  g_test_add_func ("/stage-say/a-reason-says-first-how-grave-it-is", a_reason_says_first_how_grave_it_is);
  g_test_add_func ("/stage-say/a-hazard-is-named-above-every-caution", a_hazard_is_named_above_every_caution);
  return g_test_run ();
}
