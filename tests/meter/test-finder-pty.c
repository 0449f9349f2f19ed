/* test-finder-pty.c: the search over real pseudo-terminals, and a link to what it found.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <fcntl.h>
#include <poll.h>
#include <string.h>
#include <termios.h>
#include <unistd.h>

#include "pty-cable.h"
#include "rw-meter-finder.h"

typedef struct
{
  PtyCable *cable;
  guint     baud;     /* the meter's; the bytes are spoiled at any other */
  gboolean  polled;
  int       stop;     /* atomic */
  GThread  *thread;
} Meter;

static gboolean
is_at_speed (const Meter *self)
{
  struct termios line;

  return tcgetattr (self->cable->meter, &line) == 0
         && cfgetospeed (&line) == (self->baud == 2400 ? B2400 : B600);
}

static void
send_frame (const Meter *self)
{
  static const char segments[] = "\x17\x20\x35\x45\x5B\x6F\x7D\x87\x9E\xA0\xB0\xC0\xD4\xE0";
  static const char text[] = "DC 3.302    V\r";
  char frame[14];

  memcpy (frame, self->polled ? text : segments, sizeof frame);
  for (gsize i = 0; i < sizeof frame && !is_at_speed (self); i++)
    frame[i] = (char) ((guint) frame[i] * 37 + 11);
  g_assert_cmpint (write (self->cable->meter, frame, sizeof frame), ==, sizeof frame);
}

static gpointer
run (gpointer data)
{
  Meter *self = data;

  while (!g_atomic_int_get (&self->stop))
    {
      struct pollfd line = { .fd = self->cable->meter, .events = POLLIN };
      char question;

      if (poll (&line, 1, 50) > 0 && (line.revents & POLLIN) != 0
          && read (line.fd, &question, 1) == 1 && self->polled && question == 'D' && is_at_speed (self))
        send_frame (self);
      if (!self->polled && (line.revents & POLLHUP) == 0)
        {
          send_frame (self);
          g_usleep (200 * 1000);
        }
    }
  return NULL;
}

static void
set_cb (RwMeterFinder *finder,
        gpointer       data)
{
  *(gboolean *) data = TRUE;
}

static void
value_cb (RwLink             *link,
          const RwMeterValue *value,
          gint64              when_us,
          gpointer            data)
{
  *(double *) data = value->value;
}

static void
check (gboolean    polled,
       guint       baud,
       const char *format,
       double      value)
{
  g_autoptr (PtyCable) cable = pty_cable_new ();
  g_autoptr (RwMeterFinder) finder = rw_meter_finder_new ();
  g_autoptr (GPtrArray) ports = g_ptr_array_new ();
  Meter meter = { .cable = cable, .polled = polled, .baud = baud };
  gboolean done = FALSE;
  double read_value = 0;

  pty_cable_plug (cable);
  meter.thread = g_thread_new ("meter", run, &meter);
  g_ptr_array_add (ports, cable->port);
  g_signal_connect (finder, "done", G_CALLBACK (set_cb), &done);
  rw_meter_finder_start (finder, ports, NULL);
  while (!done)
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpuint (rw_meter_finder_get_n_found (finder), ==, 1);

  const RwMeterFound *found = rw_meter_finder_get_found (finder, 0);
  g_autoptr (RwLink) link = rw_meter_address_link (found->address, rw_decoder_new (found->format));

  g_assert_cmpstr (found->format, ==, format);
  g_assert_cmpuint (found->address->line.baud, ==, baud);
  g_assert_cmpuint (found->address->line.bits, ==, rw_decoder_get_usual_line (format)->bits);
  g_assert_cmpfloat_with_epsilon (found->newest.value, value, 1e-9);
  g_assert_cmpfloat (found->sure, >=, 0.99);

  /* The port is free, and an ordinary link reads the meter with what was found. */
  g_signal_connect (link, "value", G_CALLBACK (value_cb), &read_value);
  rw_link_open (link);
  while (read_value <= 0)
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpfloat_with_epsilon (read_value, value, 1e-9);
  rw_link_close (link);
  g_atomic_int_set (&meter.stop, 1);
  g_thread_join (meter.thread);
}

static void
test_one_who_talks (void)
{
  check (FALSE, 2400, "segments-14", 12.06);
}

static void
test_one_who_is_asked (void)
{
  check (TRUE, 600, "text-14", 3.302);
}

static void
test_unplugged (void)
{
  g_autoptr (PtyCable) cable = pty_cable_new ();
  g_autoptr (RwMeterFinder) finder = rw_meter_finder_new ();
  g_autoptr (GPtrArray) ports = g_ptr_array_new ();
  g_autofree char *words = NULL;
  gboolean done = FALSE;

  g_ptr_array_add (ports, cable->port);
  g_signal_connect (finder, "done", G_CALLBACK (set_cb), &done);
  rw_meter_finder_start (finder, ports, NULL);
  while (!done)
    g_main_context_iteration (NULL, TRUE);
  words = rw_meter_finder_describe (finder);
  g_assert_nonnull (strstr (words, "There is no port"));
  g_assert_nonnull (strstr (words, "“port”"));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/finder-pty/finds-one-who-talks", test_one_who_talks);
  g_test_add_func ("/finder-pty/finds-one-who-is-asked", test_one_who_is_asked);
  g_test_add_func ("/finder-pty/an-unplugged-port-is-told", test_unplugged);
  return g_test_run ();
}
