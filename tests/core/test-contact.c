/* test-contact.c: one touch of the leads after another: what is kept, and how often.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Streams at four samples a second, by hand.
 */
#include "config.h"

#include <math.h>

#include "fixtures.h"
#include "rw-contact.h"

static const double step = 0.001, per_second = 4;

typedef struct
{
  RwContact     *contact;
  double         t;
  guint          n_kept;
  gboolean       moved; /* the last kept */
  RwSettled      kept;
  RwContactState state;
} Stream;

static Stream
begin (void)
{
  return (Stream){ .contact = rw_contact_new () };
}

static void
end (Stream *self)
{
  rw_contact_free (self->contact);
}

static void
push_of (Stream *self,
         double  value,
         double  of_step)
{
  RwSettled out;

  self->state = rw_contact_push (self->contact, self->t, value, of_step, &out);
  self->t += 1 / per_second;
  if (self->state == RW_CONTACT_SETTLED)
    {
      self->n_kept++;
      self->kept = out;
      self->moved = rw_contact_get_moved (self->contact);
    }
  if (self->state == RW_CONTACT_HOLDING)
    {
      g_assert_cmpfloat (out.value, ==, self->kept.value);
      g_assert_cmpfloat (out.u, ==, self->kept.u);
    }
}

static void
push (Stream *self,
      double  value)
{
  push_of (self, value, step);
}

/* The last digit flickers up and down in turn. */
static void
hold (Stream *self,
      double  value,
      double  seconds)
{
  for (guint i = 0; i < seconds * per_second; i++)
    push (self, value + (i % 3 == 1) * step);
}

/* Wandering, 20–40 mV a sample. */
static void
hold_in_air (Stream *self,
             double  seconds)
{
  for (guint i = 0; i < seconds * per_second; i++)
    push (self, 0.2 * sin (i * 0.21 + self->t));
}

static void
test_kept_once (void)
{
  Stream stream = begin ();

  g_assert_cmpint (stream.state, ==, RW_CONTACT_NONE);
  hold_in_air (&stream, 5);
  g_assert_cmpint (stream.state, ==, RW_CONTACT_NONE);
  push (&stream, 3.1);
  g_assert_cmpint (stream.state, ==, RW_CONTACT_MOVING);
  hold (&stream, 5.02, 60);
  g_assert_cmpint (stream.state, ==, RW_CONTACT_HOLDING);
  g_assert_cmpuint (stream.n_kept, ==, 1);
  g_assert_false (stream.moved);
  g_assert_cmpfloat_with_epsilon (stream.kept.value, 5.02, 0.0011);
  hold_in_air (&stream, 1.5);
  g_assert_cmpint (stream.state, ==, RW_CONTACT_NONE);
  end (&stream);
}

static void
test_the_same_point_again (void)
{
  Stream stream = begin ();

  for (guint i = 1; i <= 3; i++)
    {
      hold (&stream, -5.1, 5);
      g_assert_cmpuint (stream.n_kept, ==, i);
      hold_in_air (&stream, 1.5);
    }
  end (&stream);
}

static void
test_a_skid_is_the_same_contact (void)
{
  static const double odd[] = { 0.02, 3.3, NAN, 11.9 };

  for (guint k = 0; k < G_N_ELEMENTS (odd); k++)
    {
      Stream stream = begin ();

      hold (&stream, 5.02, 5);
      push (&stream, odd[k]);
      push (&stream, odd[k]);
      hold (&stream, 5.02, 5);
      g_assert_cmpuint (stream.n_kept, ==, 1);

      /* Three of nothing: the leads were off. Something else may be a slip under a slow meter for 1.3 s. */
      for (guint i = 0; i < (odd[k] > 1 ? 6 : 3); i++)
        push (&stream, odd[k] + (odd[k] > 5 ? 0.05 : -0.05) * i);
      hold (&stream, 5.02, 5);
      g_assert_cmpuint (stream.n_kept, ==, 2);
      end (&stream);
    }
}

static void
test_a_turn_is_kept_anew (void)
{
  Stream stream = begin ();

  hold (&stream, 5.02, 5);
  for (guint i = 0; i < 12; i++)
    push (&stream, 5.02 + 0.01 * i);
  g_assert_cmpint (stream.state, ==, RW_CONTACT_MOVING);
  g_assert_cmpuint (stream.n_kept, ==, 1);
  hold (&stream, 5.13, 5);
  g_assert_cmpuint (stream.n_kept, ==, 2);
  g_assert_true (stream.moved);
  g_assert_cmpfloat_with_epsilon (stream.kept.value, 5.13, 0.002);

  /* There and back again is no other value. */
  for (guint i = 0; i < 6; i++)
    push (&stream, 5.13 + 0.01 * i);
  for (guint i = 0; i < 6; i++)
    push (&stream, 5.18 - 0.01 * i);
  hold (&stream, 5.13, 5);
  g_assert_cmpuint (stream.n_kept, ==, 2);

  /* Another rail without air between is another contact. */
  hold (&stream, 12.1, 5);
  g_assert_cmpuint (stream.n_kept, ==, 3);
  g_assert_false (stream.moved);
  end (&stream);
}

/* 60 mV in ten minutes: the supply warms up. */
static void
test_a_drift_is_not_kept (void)
{
  Stream stream = begin ();

  for (guint i = 0; i < 600 * per_second; i++)
    push (&stream, round (5020 + 60 * i / (600 * per_second)) * step);
  g_assert_cmpuint (stream.n_kept, ==, 1);
  end (&stream);
}

static void
test_a_dead_rail_held_firmly (void)
{
  Stream stream = begin ();

  hold_in_air (&stream, 5);
  hold (&stream, 0.0, 2);
  g_assert_cmpuint (stream.n_kept, ==, 0); /* may be chance */
  hold (&stream, 0.0, 2);
  g_assert_cmpuint (stream.n_kept, ==, 1);
  g_assert_cmpfloat_with_epsilon (stream.kept.value, 0, 0.001);
  hold_in_air (&stream, 5);
  g_assert_cmpint (stream.state, ==, RW_CONTACT_NONE);
  for (guint i = 0; i < 20; i++)
    push_of (&stream, 0.0832 + 0.0001 * (i % 2), 0.0001); /* a drop along a wire */
  g_assert_cmpuint (stream.n_kept, ==, 2);
  end (&stream);
}

static void
test_air_is_never_kept (void)
{
  Stream stream = begin ();

  for (guint k = 0; k < 50; k++)
    hold_in_air (&stream, 7.3);
  for (guint i = 0; i < 2000; i++)
    push (&stream, 0.3 * sin (i * 0.9)); /* pick-up */
  for (guint i = 0; i < 20; i++)
    push (&stream, NAN);
  g_assert_cmpuint (stream.n_kept, ==, 0);
  end (&stream);
}

/* 5 V on the lowest range: overload, one wild value, then the next range. */
static void
test_ranging (void)
{
  Stream stream = begin ();

  hold_in_air (&stream, 2);
  push_of (&stream, NAN, 0.0001);
  push_of (&stream, 3.912, 0.0001);
  for (guint i = 0; i < 20; i++)
    push_of (&stream, 5.02, 0.01);
  g_assert_cmpuint (stream.n_kept, ==, 1);
  g_assert_cmpfloat_with_epsilon (stream.kept.value, 5.02, 1e-9);

  /* Another digit of the same value is the same contact. */
  for (guint i = 0; i < 20; i++)
    push_of (&stream, 5.021, 0.001);
  g_assert_cmpuint (stream.n_kept, ==, 1);
  end (&stream);
}

static void
test_reset (void)
{
  Stream stream = begin ();

  hold (&stream, 5.02, 5);
  rw_contact_reset (stream.contact);
  hold (&stream, 5.02, 5);
  g_assert_cmpuint (stream.n_kept, ==, 2);
  g_assert_false (stream.moved);
  rw_contact_free (NULL);
  end (&stream);
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/contact/a value is kept once", test_kept_once);
  g_test_add_func ("/contact/the same point touched again is kept again", test_the_same_point_again);
  g_test_add_func ("/contact/a skid of two samples is the same contact", test_a_skid_is_the_same_contact);
  g_test_add_func ("/contact/a turned trim is kept anew", test_a_turn_is_kept_anew);
  g_test_add_func ("/contact/a slow drift is not kept", test_a_drift_is_not_kept);
  g_test_add_func ("/contact/millivolts count when held firmly", test_a_dead_rail_held_firmly);
  g_test_add_func ("/contact/leads in the air are never kept", test_air_is_never_kept);
  g_test_add_func ("/contact/ranges and digits change under one contact", test_ranging);
  g_test_add_func ("/contact/reset forgets", test_reset);
  return g_test_run ();
}
