/* test-session.c: everything that happened, in order: numbering, retracting, undo, redo, rewinding.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <string.h>

#include "fixtures.h"

static guint
add (RwSession *session,
     RwEvent    event)
{
  return rw_session_add (session, &event);
}

static guint
number_of (RwSession *session,
           guint      index)
{
  return rw_session_get_event (session, index)->n;
}

static void
retract (RwSession *session,
         guint      n)
{
  add (session, rw_event_make_retract (rw_session_get_end (session), n));
}

static void
added_cb (RwSession *session,
          guint      index,
          GArray    *seen)
{
  g_assert_cmpuint (index + 1, ==, rw_session_get_n_events (session));
  g_array_append_val (seen, index);
}

static void
test_adding (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  g_autoptr (GArray) seen = g_array_new (FALSE, FALSE, sizeof (guint));
  RwEvent note = rw_event_make_note (1.5, "fan is noisy");
  const RwReading reading = rw_reading_make ("p5", RW_PLACE_BOARD, RW_KIND_DC, 5.02, 0.01, "m1");

  g_signal_connect (session, "added", G_CALLBACK (added_cb), seen);
  g_assert_cmpfloat (rw_session_get_end (session), ==, 0);
  g_assert_cmpuint (rw_session_get_undo (session), ==, 0);
  g_assert_cmpuint (rw_session_get_redo (session), ==, 0);
  g_assert_cmpuint (rw_session_add (session, &note), ==, 0);
  g_assert_null (note.words.text); /* it is the session's now */
  g_assert_cmpint (note.type, ==, RW_EVENT_UNKNOWN);
  for (guint i = 0; i < 5; i++)
    add (session, rw_event_make_sample (2 + i, &reading));
  add (session, rw_event_make_trim (9));

  g_assert_cmpuint (rw_session_get_n_events (session), ==, 7);
  g_assert_cmpuint (seen->len, ==, 7);
  g_assert_cmpstr (rw_session_get_event (session, 0)->words.text, ==, "fan is noisy");
  g_assert_cmpfloat (rw_session_get_end (session), ==, 9);
  for (guint i = 0; i < 7; i++)
    g_assert_cmpuint (number_of (session, i), ==, i + 1);

  /* Landmarks leave the samples out. */
  g_assert_cmpuint (rw_session_get_n_landmarks (session), ==, 2);
  g_assert_cmpuint (rw_session_get_landmark (session, 0), ==, 0);
  g_assert_cmpuint (rw_session_get_landmark (session, 1), ==, 6);
}

static void
test_meters_and_profile (void)
{
  g_autoptr (RwSession) session = fixture_session ();

  g_assert_cmpstr (rw_profile_get_id (rw_session_get_profile (session)), ==, "three");
  g_assert_cmpfloat (rw_session_find_meter (session, "m1")->percent, ==, 0.5);
  g_assert_null (rw_session_find_meter (session, "m2"));
  g_assert_null (rw_session_find_meter (session, NULL));
  g_assert_cmpstr (rw_session_get_header (session)->cabinet_name, ==, "Tidepool Racer");
}

/* Facts hold from the event that tells them on, and a rewound session is back at those before. */
static void
test_a_meter_can_join_and_be_told_of_again (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  const RwMeterFacts second = { .id = (char *) "m2", .name = (char *) "second", .percent = 0.8, .counts = 3,
                                .ac = RW_METER_AC_AVERAGING };
  const RwMeterFacts better = { .id = (char *) "m1", .name = (char *) "bench", .percent = 0.05, .counts = 4 };
  RwEvent joins = rw_event_make_meter (1, &second), mark = rw_event_make_mark (2, "x");
  RwEvent again = rw_event_make_meter (3, &better);

  rw_session_add (session, &joins);
  rw_session_add (session, &mark);
  rw_session_add (session, &again);
  g_assert_cmpfloat (rw_session_find_meter (session, "m2")->percent, ==, 0.8);
  g_assert_cmpint (rw_session_find_meter (session, "m2")->ac, ==, RW_METER_AC_AVERAGING);
  g_assert_cmpfloat (rw_session_find_meter (session, "m1")->percent, ==, 0.05);
  g_assert_cmpuint (rw_session_get_undo (session), ==, 2); /* nobody did it by hand */
  rw_session_rewind (session, 2);
  g_assert_cmpfloat (rw_session_find_meter (session, "m1")->percent, ==, 0.5);
  g_assert_nonnull (rw_session_find_meter (session, "m2"));
  rw_session_rewind (session, 0);
  g_assert_null (rw_session_find_meter (session, "m2"));
}

/* An event that asks for a number keeps it, and the next ones go on from the highest. */
static void
test_holes_in_the_numbering (void)
{
  static const guint numbers[] = { 1, 2, 5, 6, 9, 100, 101, 4000 };
  g_autoptr (RwSession) session = fixture_session ();
  guint i = 0;

  for (; i < G_N_ELEMENTS (numbers); i++)
    {
      RwEvent event = rw_event_make_trim (i);

      event.n = numbers[i];
      rw_session_add (session, &event);
    }
  for (guint n = 0, next = 0; n < 4100; n++)
    {
      const gboolean there = next < G_N_ELEMENTS (numbers) && numbers[next] == n;

      g_assert_cmpint (rw_session_find (session, n), ==, there ? (int) next++ : -1);
    }
  g_assert_cmpuint (number_of (session, add (session, rw_event_make_trim (20))), ==, 4001);
}

/* A damaged digit can put numbers out of order; events must be found all the same. */
static void
test_disorder_in_the_numbering (void)
{
  static const guint numbers[] = { 1, 2, 93, 4, 5, 6, 7, 8, 3999999999U, 10 };
  g_autoptr (RwSession) session = fixture_session ();

  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      RwEvent event = rw_event_make_trim (i);

      event.n = numbers[i];
      rw_session_add (session, &event);
    }
  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    g_assert_cmpint (rw_session_find (session, numbers[i]), ==, (int) i);
  g_assert_cmpint (rw_session_find (session, 3), ==, -1);
  retract (session, 4);
  g_assert_false (rw_session_is_live (session, 3));
  g_assert_true (rw_session_is_live (session, 4));

  /* The new number is fresh, and far from where numbers end. */
  g_assert_cmpuint (number_of (session, 10), ==, 94);
  rw_session_rewind (session, 2);
  g_assert_cmpuint (number_of (session, add (session, rw_event_make_trim (20))), ==, 3);
  g_assert_cmpint (rw_session_find (session, 3), ==, 2);
}

/* By the definition, from scratch: dead when a live retract that comes later names it. */
static gboolean
is_live_by_force (RwSession *session,
                  guint      index)
{
  for (guint i = index + 1; i < rw_session_get_n_events (session); i++)
    {
      const RwEvent *event = rw_session_get_event (session, i);

      if (event->type == RW_EVENT_RETRACT && event->retract.n == number_of (session, index)
          && is_live_by_force (session, i))
        return FALSE;
    }
  return TRUE;
}

static void
test_retracts_of_retracts (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (41);

  for (guint round = 0; round < 300; round++)
    {
      g_autoptr (RwSession) session = fixture_session ();

      for (guint i = 0; i < 40; i++)
        {
          /* Also of numbers to come, its own, and none. */
          if (g_rand_int_range (random, 0, 2) == 0)
            retract (session, (guint) g_rand_int_range (random, 1, (int) i + 4));
          else
            add (session, fixture_random_event (random, i, i));
          if (g_rand_int_range (random, 0,
                                4) == 0) /* so that answers kept from before are tried too */
            for (guint j = 0; j <= i; j++)
              g_assert_cmpint (rw_session_is_live (session, j), ==, is_live_by_force (session, j));
        }
    }
}

/* The model: which deeds stand, and a stack of what was taken back. */
typedef struct
{
  GArray *deeds; /* of guint, numbers of what a person did and that stands */
  GArray *taken; /* of guint, numbers taken back, the last one on top */
} Model;

static void
model_remove (GArray *list,
              guint   n)
{
  for (guint i = 0; i < list->len; i++)
    if (g_array_index (list, guint, i) == n)
      {
        g_array_remove_index (list, i);
        return;
      }
  g_assert_not_reached ();
}

static int
compare_numbers (gconstpointer a,
                 gconstpointer b)
{
  const guint x = *(const guint *) a, y = *(const guint *) b;

  return (x > y) - (x < y);
}

static void
model_check (const Model *model,
             RwSession   *session)
{
  const guint n_deeds = model->deeds->len, n_taken = model->taken->len;
  const guint undo = rw_session_get_undo (session), redo = rw_session_get_redo (session);

  g_assert_cmpuint (undo, ==, n_deeds > 0 ? g_array_index (model->deeds, guint, n_deeds - 1) : 0);
  g_assert_cmpint (redo > 0, ==, n_taken > 0);
  if (redo > 0)
    {
      const RwEvent *event = rw_session_get_event (session,
                                                   (guint) rw_session_find (session, redo));

      g_assert_cmpint (event->type, ==, RW_EVENT_RETRACT);
      g_assert_cmpuint (event->retract.n, ==, g_array_index (model->taken, guint, n_taken - 1));
    }
  for (guint i = 0; i < n_deeds; i++)
    g_assert_true (rw_session_is_live (session,
                                       (guint) rw_session_find (session,
                                                                g_array_index (model->deeds,
                                                                               guint, i))));
  for (guint i = 0; i < n_taken; i++)
    g_assert_false (rw_session_is_live (session,
                                        (guint) rw_session_find (session,
                                                                 g_array_index (model->taken,
                                                                                guint, i))));
}

static void
model_take_back (Model *model,
                 guint  n)
{
  model_remove (model->deeds, n);
  g_array_append_val (model->taken, n);
}

static void
model_bring_back (Model *model)
{
  const guint n = g_array_index (model->taken, guint, model->taken->len - 1);

  g_array_set_size (model->taken, model->taken->len - 1);
  g_array_append_val (model->deeds, n);
  g_array_sort (model->deeds, compare_numbers);
}

static void
do_something (Model     *model,
              RwSession *session,
              GRand     *random)
{
  const double t = rw_session_get_n_events (session);
  const RwReading reading = rw_reading_make ("p5", RW_PLACE_BOARD, RW_KIND_DC, 5.02, 0.01, NULL);
  guint n;

  switch (g_rand_int_range (random, 0, 9))
    {
    case 0: /* the meter's and the program's own doing leaves undo and redo alone */
      add (session, g_rand_boolean (random) ? rw_event_make_sample (t, &reading)
           : rw_event_make_gap (t, "m1", "unplugged"));
      break;
    case 1:
    case 2:
    case 3:
      if ((n = rw_session_get_undo (session)) == 0)
        break;
      model_take_back (model, n);
      retract (session, n);
      break;
    case 4:
    case 5:
      if ((n = rw_session_get_redo (session)) == 0)
        break;
      model_bring_back (model);
      retract (session, n);
      break;
    case 6: /* any deed may be taken back, not only the last */
      if (model->deeds->len == 0)
        break;
      n = g_array_index (model->deeds, guint,
                         g_rand_int_range (random, 0, (int) model->deeds->len));
      model_take_back (model, n);
      retract (session, n);
      break;
    default:
      n = number_of (session, add (session, g_rand_boolean (random)
                                   ? rw_event_make_reading (t, &reading)
                                       : rw_event_make_mark (t, "x")));
      g_array_append_val (model->deeds, n);
      g_array_set_size (model->taken, 0);
    }
}

static void
test_undo_and_redo_against_the_model (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (43);

  for (guint round = 0; round < 400; round++)
    {
      g_autoptr (RwSession) session = fixture_session ();
      Model model = { g_array_new (FALSE, FALSE, sizeof (guint)),
                      g_array_new (FALSE, FALSE, sizeof (guint)) };

      for (guint i = 0; i < 60; i++)
        {
          do_something (&model, session, random);
          model_check (&model, session);
        }
      g_array_unref (model.deeds);
      g_array_unref (model.taken);
    }
}

/* The same by hand, for a reader. */
static void
test_undo_redo_story (void)
{
  g_autoptr (RwSession) session = fixture_session ();

  add (session, rw_event_make_mark (0, "a"));  /* 1 */
  add (session, rw_event_make_mark (1, "b"));  /* 2 */
  g_assert_cmpuint (rw_session_get_undo (session), ==, 2);
  retract (session, 2);                        /* 3 */
  g_assert_cmpuint (rw_session_get_undo (session), ==, 1);
  retract (session, 1);                        /* 4 */
  g_assert_cmpuint (rw_session_get_undo (session), ==, 0);
  g_assert_cmpuint (rw_session_get_redo (session), ==, 4);
  retract (session, 4);                        /* 5: a is back */
  g_assert_true (rw_session_is_live (session, 0));
  g_assert_cmpuint (rw_session_get_redo (session), ==, 3);
  retract (session, 3);                        /* 6: b is back */
  g_assert_true (rw_session_is_live (session, 1));
  g_assert_cmpuint (rw_session_get_redo (session), ==, 0);
  retract (session, 2);                        /* 7: b is gone again */
  add (session, rw_event_make_mark (2, "c"));  /* 8: something new */
  g_assert_cmpuint (rw_session_get_redo (session), ==, 0);
  g_assert_false (rw_session_is_live (session, 1));
}

static void
rewound_cb (RwSession *session,
            guint      n_events,
            guint     *told)
{
  g_assert_cmpuint (rw_session_get_n_events (session), ==, n_events);
  *told = n_events;
}

static void
assert_same_session (RwSession *a,
                     RwSession *b)
{
  const guint n = rw_session_get_n_events (a);

  g_assert_cmpuint (n, ==, rw_session_get_n_events (b));
  g_assert_cmpuint (rw_session_get_n_landmarks (a), ==, rw_session_get_n_landmarks (b));
  for (guint i = 0; i < rw_session_get_n_landmarks (a); i++)
    g_assert_cmpuint (rw_session_get_landmark (a, i), ==, rw_session_get_landmark (b, i));
  for (guint i = 0; i < n; i++)
    {
      fixture_assert_same_event (rw_session_get_event (a, i), rw_session_get_event (b, i));
      g_assert_cmpint (rw_session_is_live (a, i), ==, rw_session_is_live (b, i));
      g_assert_cmpint (rw_session_find (a, number_of (a, i)), ==,
                       rw_session_find (b, number_of (a, i)));
    }
  g_assert_cmpuint (rw_session_get_undo (a), ==, rw_session_get_undo (b));
  g_assert_cmpuint (rw_session_get_redo (a), ==, rw_session_get_redo (b));
  g_assert_cmpfloat (rw_session_get_end (a), ==, rw_session_get_end (b));
  g_assert_cmpint (rw_session_find (a, n + 50), ==, rw_session_find (b, n + 50));
}

/* Going back gives what a session would be that never went further, whatever came in between. */
static void
test_rewound_equals_fresh (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (47);

  for (guint round = 0; round < 150; round++)
    {
      g_autoptr (RwSession) session = fixture_session (), fresh = fixture_session ();
      const guint n_events = 60, keep = (guint) g_rand_int_range (random, 0, (int) n_events);
      guint told = G_MAXUINT;

      g_signal_connect (session, "rewound", G_CALLBACK (rewound_cb), &told);
      for (guint i = 0; i < n_events; i++)
        {
          RwEvent event = fixture_random_event (random, i, i);

          /* A few numbers out of order. */
          event.n = g_rand_int_range (random, 0, 30) == 0
              ? (guint) g_rand_int_range (random, 1, 200) : 0;
          if (event.type == RW_EVENT_UNKNOWN)
            event.n = i + 1;
          if (i < keep)
            add (fresh, rw_event_copy (&event));
          rw_session_add (session, &event);
          rw_session_is_live (session, i);
        }
      rw_session_rewind (session, n_events); /* nothing to forget */
      g_assert_cmpuint (told, ==, G_MAXUINT);
      rw_session_rewind (session, keep);
      g_assert_cmpuint (told, ==, keep);
      assert_same_session (session, fresh);
      for (guint i = 0; i < 10; i++)
        {
          RwEvent event = fixture_random_event (random, 100 + i, keep);

          add (fresh, rw_event_copy (&event));
          rw_session_add (session, &event);
        }
      assert_same_session (session, fresh);
    }
}

/* A part whose end moves about in another session says at every place what a session of just those events says. */
static void
test_part_equals_fresh (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (48);

  for (guint round = 0; round < 60; round++)
    {
      g_autoptr (RwSession) session = fixture_session ();

      for (guint i = 0; i < 200; i++)
        {
          RwEvent event = fixture_random_event (random, i, i);

          event.n = g_rand_int_range (random, 0, 60) == 0 ? (guint) g_rand_int_range (random, 1, 200) : 0;
          if (event.type == RW_EVENT_UNKNOWN)
            event.n = i + 1;
          rw_session_add (session, &event);
        }

      g_autoptr (RwSession) part = rw_session_new_part (session);

      for (guint i = 0; i < 8; i++)
        {
          g_autoptr (RwSession) fresh = fixture_session ();
          const guint n = (guint) g_rand_int_range (random, 0, 201);

          for (guint k = 0; k < n; k++)
            add (fresh, rw_event_copy (rw_session_get_event (session, k)));
          rw_session_rewind (part, n);
          rw_session_advance (part, n);
          assert_same_session (part, fresh);
        }
    }
}

static void
count_cb (guint *n_told)
{
  (*n_told)++;
}

/* A step tells of each event, a jump once. */
static void
test_part_tells (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  guint n_added = 0, n_jumps = 0;

  for (guint i = 0; i < 1000; i++)
    add (session, rw_event_make_mark (i, "x"));

  g_autoptr (RwSession) part = rw_session_new_part (session);

  g_signal_connect_swapped (part, "added", G_CALLBACK (count_cb), &n_added);
  g_signal_connect_swapped (part, "rewound", G_CALLBACK (count_cb), &n_jumps);
  rw_session_advance (part, 5);
  rw_session_advance (part, 6);
  g_assert_cmpuint (n_added, ==, 6);
  g_assert_cmpuint (n_jumps, ==, 0);
  rw_session_advance (part, 900);
  rw_session_rewind (part, 899);
  rw_session_advance (part, 899);
  rw_session_advance (part, 5000);
  g_assert_cmpuint (rw_session_get_n_events (part), ==, 1000);
  g_assert_cmpuint (n_added, ==, 6);
  g_assert_cmpuint (n_jumps, ==, 3);
  g_clear_object (&session);
  g_assert_cmpuint (rw_session_get_event (part, 999)->n, ==, 1000); /* a part keeps what it shows */
}

static void
test_session_ends (void)
{
  RwSession *session = fixture_session ();
  g_autoptr (GRand) random = g_rand_new_with_seed (1);

  for (guint i = 0; i < 200; i++)
    add (session, fixture_random_event (random, i, i));
  g_assert_finalize_object (session);
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/session/a part of another is as fresh wherever its end is", test_part_equals_fresh);
  g_test_add_func ("/session/a part tells of steps one by one, of a jump once", test_part_tells);
  g_test_add_func ("/session/adding", test_adding);
  g_test_add_func ("/session/meters-and-profile", test_meters_and_profile);
  g_test_add_func ("/session/a-meter-can-join-and-be-told-of-again", test_a_meter_can_join_and_be_told_of_again);
  g_test_add_func ("/session/holes-in-the-numbering", test_holes_in_the_numbering);
  g_test_add_func ("/session/disorder-in-the-numbering", test_disorder_in_the_numbering);
  g_test_add_func ("/session/retracts-of-retracts", test_retracts_of_retracts);
  g_test_add_func ("/session/undo-and-redo-against-the-model",
                   test_undo_and_redo_against_the_model);
  g_test_add_func ("/session/undo-redo-story", test_undo_redo_story);
  g_test_add_func ("/session/rewound-equals-fresh", test_rewound_equals_fresh);
  g_test_add_func ("/session/ends", test_session_ends);
  return g_test_run ();
}
