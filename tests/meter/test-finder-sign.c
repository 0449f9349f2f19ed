/* test-finder-sign.c: learns from a negative reading which of the two digits-11 formats it is.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <string.h>

#include "fake-line.h"
#include "frame-encoder.h"

typedef struct
{
  GPtrArray     *lines;
  FakeLine      *line; /* borrowed */
  RwMeterFinder *finder;
  guint          done;
} Bench;

static void
show (Bench          *self,
      const char     *format,
      const FrameShow *display)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();

  g_assert_true (frame_encode (format, display, bytes));
  g_mutex_lock (&self->line->lock);
  g_ptr_array_set_size (self->line->frames, 0);
  g_ptr_array_add (self->line->frames, g_bytes_new (bytes->data, bytes->len));
  g_mutex_unlock (&self->line->lock);
}

static void
done_cb (RwMeterFinder *finder,
         gpointer       data)
{
  ((Bench *) data)->done++;
}

static void
wait (Bench *self,
      guint  done)
{
  while (self->done < done)
    g_main_context_iteration (NULL, TRUE);
}

/* A meter of this format that shows +5.012 V, found. */
static void
set_up (Bench        *self,
        gconstpointer format)
{
  static const FrameShow positive = { .unit = "V", .mode = "dc", .counts = 5012, .decimals = 3 };
  g_autoptr (GPtrArray) ports = g_ptr_array_new ();

  self->lines = g_ptr_array_new_with_free_func ((GDestroyNotify) fake_line_free);
  self->line = fake_line_new ("ttyMeter", format);
  self->line->line.baud = 2400;
  self->line->pause = 0.1;
  g_ptr_array_add (self->lines, self->line);
  g_ptr_array_add (ports, self->line->name);
  show (self, format, &positive);
  self->finder = rw_meter_finder_new ();
  rw_meter_finder_set_maker (self->finder, fake_line_make_port, self->lines);
  g_signal_connect (self->finder, "done", G_CALLBACK (done_cb), self);
  rw_meter_finder_start (self->finder, ports, NULL);
  wait (self, 1);
  g_assert_cmpuint (rw_meter_finder_get_n_found (self->finder), ==, 1);
  g_assert_true (rw_meter_finder_get_found (self->finder, 0)->sign_unsure);
}

static void
tear_down (Bench        *self,
           gconstpointer format)
{
  g_object_unref (self->finder);
  g_ptr_array_unref (self->lines);
}

static void
learn (Bench           *self,
       const char      *format,
       const FrameShow *display)
{
  if (display != NULL)
    {
      show (self, format, display);
      g_usleep (400 * 1000); /* what is under way is still the old display */
    }
  rw_meter_finder_learn_negative (self->finder, 0);
  g_assert_true (rw_meter_finder_is_running (self->finder));
  wait (self, self->done + 1);
  g_assert_cmpuint (self->line->open_now, ==, 0);
  g_assert_cmpstr (self->line->written->str, ==, "");
}

static void
check_unsettled (Bench      *self,
                 const char *why)
{
  g_autofree char *words = rw_meter_finder_describe (self->finder);
  const RwMeterFound *found = rw_meter_finder_get_found (self->finder, 0);

  g_test_message ("%s", words);
  g_assert_true (found->sign_unsure);
  g_assert_cmpstr (found->format, ==, "digits-11a");
  g_assert_cmpfloat (found->newest.value, >, 0);
  g_assert_nonnull (strstr (words, why));
}

static void
test_learns (Bench        *self,
             gconstpointer format)
{
  static const FrameShow positive = { .unit = "V", .mode = "dc", .counts = 1523, .decimals = 3 };
  static const FrameShow negative
      = { .unit = "V", .mode = "dc", .counts = 1523, .decimals = 3, .negative = TRUE };

  /* The user was wrong at first. */
  learn (self, format, &positive);
  check_unsettled (self, "not negative");
  learn (self, format, &negative);

  const RwMeterFound *found = rw_meter_finder_get_found (self->finder, 0);

  g_assert_false (found->sign_unsure);
  g_assert_cmpstr (found->format, ==, format);
  g_assert_cmpfloat_with_epsilon (found->newest.value, -1.523, 1e-9);
}

/* In -b the low battery is what the minus is in -a. */
static void
test_low_battery_is_not_settled (Bench        *self,
                                 gconstpointer format)
{
  static const FrameShow both = { .unit = "V", .mode = "dc", .counts = 1523, .decimals = 3,
                                  .negative = TRUE, .low_battery = TRUE };

  learn (self, format, &both);
  check_unsettled (self, "battery");
}

static void
test_silence_is_not_settled (Bench        *self,
                             gconstpointer format)
{
  g_mutex_lock (&self->line->lock);
  self->line->pause = 0;
  g_array_set_size (self->line->sendings, 0);
  g_mutex_unlock (&self->line->lock);
  learn (self, format, NULL);
  check_unsettled (self, "Too little");
  self->line->error = RW_PORT_ERROR_REFUSED;
  learn (self, format, NULL);
  check_unsettled (self, "locked");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/finder-sign/learns/digits-11a", Bench, "digits-11a", set_up, test_learns, tear_down);
  g_test_add ("/finder-sign/learns/digits-11b", Bench, "digits-11b", set_up, test_learns, tear_down);
  g_test_add ("/finder-sign/two-marks-settle-nothing", Bench, "digits-11b", set_up,
              test_low_battery_is_not_settled, tear_down);
  g_test_add ("/finder-sign/silence-settles-nothing", Bench, "digits-11a", set_up,
              test_silence_is_not_settled, tear_down);
  return g_test_run ();
}
