/* test-link-poll.c: a link that asks a text-14 meter for each value, over a pseudo-terminal.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <poll.h>
#include <string.h>
#include <unistd.h>

#include "link-probe.h"
#include "pty-cable.h"
#include "rw-link-serial.h"

static const double soon = 10;

/* Written from the published layout: mode, value in seven characters, unit in four, CR, for
 * each "D". Each value is shown twice in a row: a jump is believed when two frames agree. */
typedef struct
{
  PtyCable *cable;
  guint     deaf;     /* swallows so many questions first */
  gulong    takes_us; /* for an answer */
  int       stop;     /* atomic */
  int       asked;    /* atomic */
  gint64    first_us, last_us; /* the meter's, read when it has ended */
  guint     answered;
  GThread  *thread;
} Meter;

static void
answer (Meter *self)
{
  g_autofree char *text = g_strdup_printf ("DC%+07.3fV   \r", 1 + 0.5 * (self->answered / 2));

  g_assert_cmpuint (strlen (text), ==, 14);
  g_usleep (self->takes_us);
  self->answered++;
  /* In two pieces, as adapters do. */
  g_assert_cmpint (write (self->cable->meter, text, 5), ==, 5);
  g_usleep (20 * 1000);
  g_assert_cmpint (write (self->cable->meter, text + 5, 9), ==, 9);
}

static gpointer
run (gpointer data)
{
  Meter *self = data;

  while (!g_atomic_int_get (&self->stop))
    {
      struct pollfd line = { .fd = self->cable->meter, .events = POLLIN };
      char question;

      if (poll (&line, 1, 20) <= 0 || (line.revents & POLLIN) == 0
          || read (line.fd, &question, 1) != 1)
        continue;
      g_assert_cmpint (question, ==, 'D');
      self->last_us = g_get_monotonic_time ();
      if (g_atomic_int_add (&self->asked, 1) == 0)
        self->first_us = self->last_us;
      if (self->deaf > 0)
        self->deaf--;
      else
        answer (self);
    }
  return NULL;
}

static void
meter_start (Meter *self)
{
  self->cable = pty_cable_new ();
  pty_cable_plug (self->cable);
  self->thread = g_thread_new ("meter", run, self);
}

static void
meter_end (Meter *self)
{
  g_atomic_int_set (&self->stop, 1);
  g_thread_join (self->thread);
  pty_cable_free (self->cable);
}

static LinkProbe *
open_link (Meter *meter,
           guint  patience_ms)
{
  LinkProbe *probe = link_probe_new (rw_link_serial_new (
      meter->cable->port, rw_decoder_get_usual_line ("text-14"), rw_decoder_new ("text-14")));

  rw_link_port_set_patience (RW_LINK_PORT (probe->link), patience_ms);
  rw_link_open (probe->link);
  return probe;
}

static void
check_values (LinkProbe *probe)
{
  for (guint i = 0; i < probe->values->len; i++)
    g_assert_cmpfloat_with_epsilon (g_array_index (probe->values, double, i), 1 + 0.5 * (i / 2),
                                    1e-9);
}

static void
test_polls (void)
{
  Meter meter = { .takes_us = 50 * 1000 };

  meter_start (&meter);
  {
    g_autoptr (LinkProbe) probe = open_link (&meter, 3000);

    g_assert_true (link_probe_wait_values (probe, 16, soon));
    rw_link_close (probe->link);
    check_values (probe);
    g_assert_true (g_str_has_prefix (probe->story->str, "opening listening reading 1 1 1.5 1.5 2"));
    g_assert_null (strstr (probe->story->str, "silent"));
  }
  meter_end (&meter);
  /* Four a second at most, and not much less. */
  g_assert_cmpint ((meter.last_us - meter.first_us) / (meter.asked - 1), >=, 245 * 1000);
  g_assert_cmpint ((meter.last_us - meter.first_us) / (meter.asked - 1), <=, 400 * 1000);
}

static void
test_lost_questions (void)
{
  Meter meter = { .deaf = 2 };

  meter_start (&meter);
  {
    g_autoptr (LinkProbe) probe = open_link (&meter, 1500);

    g_assert_true (link_probe_wait_values (probe, 4, soon));
    rw_link_close (probe->link);
    check_values (probe);
    g_assert_nonnull (strstr (probe->story->str, "silent")); /* and it says so meanwhile */
  }
  meter_end (&meter);
}

static void
test_slow_meter (void)
{
  Meter meter = { .takes_us = 900 * 1000 };

  meter_start (&meter);
  {
    g_autoptr (LinkProbe) probe = open_link (&meter, 1500);

    g_assert_true (link_probe_wait_values (probe, 6, 2 * soon));
    rw_link_close (probe->link);
    check_values (probe);
  }
  meter_end (&meter);
  g_assert_cmpint (meter.asked, <=, (int) meter.answered + 3);
}

/* Closed in the middle of a question. */
static void
test_close (void)
{
  Meter meter = { .deaf = 1000 };

  meter_start (&meter);
  {
    g_autoptr (LinkProbe) probe = open_link (&meter, 3000);
    gint64 began_us;

    g_assert_true (link_probe_wait_state (probe, RW_LINK_LISTENING, soon));
    link_probe_run (0.5);
    g_assert_cmpint (g_atomic_int_get (&meter.asked), >=, 1);
    began_us = g_get_monotonic_time ();
    rw_link_close (probe->link);
    g_assert_cmpint (g_get_monotonic_time () - began_us, <, 300 * 1000);
  }
  meter_end (&meter);
}

/* Unplugged within an answer, and plugged in again: the halves are never joined. */
static void
test_unplugged (void)
{
  g_autoptr (PtyCable) cable = pty_cable_new ();
  Meter meter = { .cable = cable };

  pty_cable_plug (cable);

  g_autoptr (LinkProbe) probe = open_link (&meter, 3000);

  g_assert_true (link_probe_wait_state (probe, RW_LINK_LISTENING, soon));
  link_probe_run (0.2);
  pty_cable_send (cable, "DC+05.021V   \rDC+05.021V   \rDC+05");
  g_assert_true (link_probe_wait_values (probe, 2, soon));
  pty_cable_unplug (cable);
  g_assert_true (link_probe_wait_state (probe, RW_LINK_LOST, soon));
  pty_cable_plug (cable);
  g_assert_true (link_probe_wait_state (probe, RW_LINK_LISTENING, soon));
  link_probe_run (0.2);
  pty_cable_send (cable, ".999V   \r");
  pty_cable_send (cable, "DC+07.000V   \rDC+07.000V   \r");
  g_assert_true (link_probe_wait_values (probe, 4, soon));
  g_assert_cmpstr (probe->story->str, ==,
                   "opening listening reading 5.021 5.021 lost listening reading 7 7");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/poll link/asks for each value, four times a second at most", test_polls);
  g_test_add_func ("/poll link/asks again when a question is lost", test_lost_questions);
  g_test_add_func ("/poll link/gives a slow meter its time", test_slow_meter);
  g_test_add_func ("/poll link/is closed at once", test_close);
  g_test_add_func ("/poll link/never joins halves of answers", test_unplugged);
  return g_test_run ();
}
