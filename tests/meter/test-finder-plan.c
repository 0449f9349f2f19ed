/* test-finder-plan.c: what a search tries next, and what a negative reading teaches.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <string.h>

#include "rw-search-plan.h"
#include "rw-sign-lesson.h"

/* Bytes as they come from a sender that is @ratio times slower: one low stretch a byte. */
static void
make_slow (guint   ratio,
           guint8 *bytes,
           gsize   n)
{
  for (gsize i = 0; i < n; i++)
    bytes[i] = (guint8) ((i % 3 == 0 ? 0xFFu : 0xF0u << (i % 2)) << (ratio - 1));
}

static RwSearchStep
next_listen (RwSearchPlan *plan)
{
  const RwSearchStep step = rw_search_plan_next (plan);

  g_assert_cmpint (step.kind, ==, RW_SEARCH_LISTEN);
  return step;
}

static void
test_listens_before_it_asks (void)
{
  RwSearchPlan plan;
  guint asked = 0;
  gboolean powers[2] = { FALSE, FALSE };

  rw_search_plan_init (&plan, TRUE);
  for (guint i = 0; i < 2; i++)
    {
      const RwSearchStep step = next_listen (&plan);

      g_assert_cmpuint (step.line.baud, ==, i == 0 ? 2400 : 9600);
      g_assert_true (step.line.dtr);
      powers[step.line.rts ? 1 : 0] = TRUE;
      rw_search_plan_heard (&plan, &step, NULL, 0, 0);
    }
  g_assert_true (powers[0] && powers[1]);
  for (;;)
    {
      const RwSearchStep step = rw_search_plan_next (&plan);

      if (step.kind == RW_SEARCH_LISTEN)
        break;
      asked++;
      g_assert_nonnull (step.question);
      rw_search_plan_heard (&plan, &step, NULL, 0, 0);
    }
  g_assert_cmpuint (asked, ==, 4);
}

/* A round of every speed, and no question, as long as somebody talks. */
static void
test_never_asks_one_who_talks (void)
{
  static const guint8 bytes[] = { 0x31, 0x40, 0x13, 0x52 };
  RwSearchPlan plan;
  guint bauds = 0;

  rw_search_plan_init (&plan, TRUE);
  for (guint i = 0; i < 50; i++)
    {
      const RwSearchStep step = next_listen (&plan);

      if (i > 0 && i < 9)
        g_assert_false (step.line.rts); /* as it was when it was heard */
      bauds += i < 9 ? step.line.baud : 0;
      rw_search_plan_heard (&plan, &step, bytes, sizeof bytes, 1);
    }
  g_assert_cmpuint (bauds, ==, 2400 + 9600 + 19200 + 1200 + 600 + 4800 + 38400 + 57600 + 115200);
}

static void
test_garbage_tells_a_slower_sender (void)
{
  static const struct
  {
    guint ratio, next;
  } rows[] = { { 2, 4800 }, { 4, 2400 }, { 8, 1200 } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      RwSearchPlan plan;
      guint8 bytes[24];

      rw_search_plan_init (&plan, TRUE);

      RwSearchStep step = next_listen (&plan);

      rw_search_plan_heard (&plan, &step, NULL, 0, 0);
      step = next_listen (&plan);
      g_assert_cmpuint (step.line.baud, ==, 9600);
      make_slow (rows[i].ratio, bytes, sizeof bytes);
      rw_search_plan_heard (&plan, &step, bytes, sizeof bytes, 1);
      g_assert_cmpuint (next_listen (&plan).line.baud, ==, rows[i].next);
    }
}

static void
test_garbage_tells_a_faster_sender (void)
{
  static const guint8 bytes[] = { 0x31, 0x40, 0x13, 0x52, 0x77, 0x01, 0x99, 0x00, 0xFE };
  RwSearchPlan plan;

  rw_search_plan_init (&plan, TRUE);
  for (guint i = 0; i < 3; i++)
    {
      const RwSearchStep step = next_listen (&plan);

      /* At 19200 too: a sender of 1200 is then left out. */
      rw_search_plan_heard (&plan, &step, bytes, i == 2 ? sizeof bytes : 3, 1);
    }
  g_assert_cmpuint (next_listen (&plan).line.baud, ==, 38400);
}

static void
test_network_has_no_letters (void)
{
  RwSearchPlan plan;

  rw_search_plan_init (&plan, FALSE);
  for (guint i = 0; i < 20; i++)
    {
      const RwSearchStep step = rw_search_plan_next (&plan);

      g_assert_cmpint (step.kind, ==, i % 2 == 0 ? RW_SEARCH_LISTEN : RW_SEARCH_ASK_NAME);
      rw_search_plan_heard (&plan, &step, NULL, 0, 0);
    }
}

/* --- the lesson ---------------------------------------------------------------------- */

static RwSignLesson
judge (const char *statuses,
       gboolean    parity)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  RwSignCounts counts;

  for (const char *s = statuses; *s != '\0'; s++)
    {
      guint8 frame[] = "110155;0:0\r\n";

      memcpy (frame, "10155;", 6);
      frame[6] = (guint8) *s;
      memcpy (frame + 7, "0:\r\n", 4);
      g_byte_array_append (bytes, frame, 11);
    }
  for (guint i = 0; i < bytes->len && parity; i++)
    if (__builtin_parity (bytes->data[i]) == 0)
      bytes->data[i] |= 0x80;
  counts = rw_sign_lesson_count (bytes->data, bytes->len);
  g_assert_cmpuint (counts.frames, ==, strlen (statuses));
  return rw_sign_lesson_judge (&counts);
}

static void
test_lesson (void)
{
  for (guint parity = 0; parity < 2; parity++)
    {
      g_assert_cmpint (judge ("444", parity), ==, RW_SIGN_LESSON_A);
      g_assert_cmpint (judge ("464", parity), ==, RW_SIGN_LESSON_A);
      g_assert_cmpint (judge ("888", parity), ==, RW_SIGN_LESSON_B);
      g_assert_cmpint (judge ("8:9", parity), ==, RW_SIGN_LESSON_B);
      g_assert_cmpint (judge ("000", parity), ==, RW_SIGN_LESSON_NEITHER);
      g_assert_cmpint (judge ("123", parity), ==, RW_SIGN_LESSON_NEITHER);
      g_assert_cmpint (judge ("<<<", parity), ==, RW_SIGN_LESSON_BOTH);
      g_assert_cmpint (judge ("448", parity), ==, RW_SIGN_LESSON_MIXED);
      g_assert_cmpint (judge ("4440", parity), ==, RW_SIGN_LESSON_MIXED);
      g_assert_cmpint (judge ("44<", parity), ==, RW_SIGN_LESSON_MIXED);
      g_assert_cmpint (judge ("44", parity), ==, RW_SIGN_LESSON_FEW);
      g_assert_cmpint (judge ("", parity), ==, RW_SIGN_LESSON_FEW);
    }
}

/* The last eleven bytes of a longer frame, a digit that is none, a bad parity. */
static void
test_lesson_counts_whole_frames_only (void)
{
  static const char longer[] = "110155;400:0\r\n";
  static const char no_digit[] = "\n1015;;40:\r\n";
  guint8 odd[] = { 0x31, 0xB0, 0x31, 0xB5, 0xB5, 0x3B, 0x34, 0xB0, 0xBA, 0x0D, 0x8A };
  RwSignCounts counts = rw_sign_lesson_count ((const guint8 *) longer, strlen (longer));

  g_assert_cmpuint (counts.frames, ==, 0);
  counts = rw_sign_lesson_count ((const guint8 *) no_digit, strlen (no_digit));
  g_assert_cmpuint (counts.frames, ==, 0);
  counts = rw_sign_lesson_count (odd, sizeof odd);
  g_assert_cmpuint (counts.only_bit_2, ==, 1);
  odd[2] |= 0x80;
  counts = rw_sign_lesson_count (odd, sizeof odd);
  g_assert_cmpuint (counts.frames, ==, 0);
  g_assert_cmpuint (rw_sign_lesson_count (NULL, 0).frames, ==, 0);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/finder-plan/listens-before-it-asks", test_listens_before_it_asks);
  g_test_add_func ("/finder-plan/never-asks-one-who-talks", test_never_asks_one_who_talks);
  g_test_add_func ("/finder-plan/garbage-tells-a-slower-sender", test_garbage_tells_a_slower_sender);
  g_test_add_func ("/finder-plan/garbage-tells-a-faster-sender", test_garbage_tells_a_faster_sender);
  g_test_add_func ("/finder-plan/a-network-gets-no-letters", test_network_has_no_letters);
  g_test_add_func ("/sign-lesson/settles-only-when-all-agree", test_lesson);
  g_test_add_func ("/sign-lesson/counts-whole-frames-only", test_lesson_counts_whole_frames_only);
  return g_test_run ();
}
