/* test-link-serial.c: a serial link over a pseudo-terminal, up to the millionth value.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <fcntl.h>
#include <string.h>
#include <termios.h>
#include <unistd.h>

#include "link-probe.h"
#include "pty-cable.h"
#include "rw-link-serial.h"
#include "rw-serial-list.h"

static const double soon = 5;

static LinkProbe *
make_link (PtyCable *cable)
{
  RwLink *link = rw_link_serial_new (cable->port, rw_decoder_get_usual_line ("lines"),
                                     rw_decoder_new ("lines"));

  return link_probe_new (link);
}

static LinkProbe *
open_link (PtyCable *cable)
{
  LinkProbe *probe = make_link (cable);

  rw_link_open (probe->link);
  g_assert_true (link_probe_wait_state (probe, RW_LINK_LISTENING, soon));
  return probe;
}

static void
test_reads (void)
{
  g_autoptr (PtyCable) cable = pty_cable_new ();
  RwDecoderCounts counts;

  pty_cable_plug (cable);

  g_autoptr (LinkProbe) probe = open_link (cable);
  const gint64 before_us = g_get_monotonic_time ();

  pty_cable_send (cable, "5.012 V DC\r\nnonsense\r\nOL V\r\n-12.06 V\r\n");
  g_assert_true (link_probe_wait_values (probe, 3, soon));
  g_assert_cmpstr (probe->story->str, ==, "opening listening reading 5.012 over -12.06");
  for (guint i = 0; i < 3; i++)
    {
      g_assert_cmpint (g_array_index (probe->when, gint64, i), >=, before_us);
      g_assert_cmpint (g_array_index (probe->when, gint64, i), <=, g_get_monotonic_time ());
    }
  rw_link_get_counts (probe->link, &counts);
  g_assert_cmpuint (counts.values, ==, 3);
  g_assert_cmpuint (counts.not_understood, ==, 1);
  rw_link_close (probe->link);
  g_assert_cmpstr (probe->story->str, ==, "opening listening reading 5.012 over -12.06 closed");
}

/* The time a value carries is that of its bytes, not that of its delivery. */
static void
test_time_is_of_arrival (void)
{
  g_autoptr (PtyCable) cable = pty_cable_new ();

  pty_cable_plug (cable);

  g_autoptr (LinkProbe) probe = open_link (cable);

  pty_cable_send (cable, "1 V\n");
  g_usleep (300 * 1000); /* the owner is busy */

  const gint64 sent_again_us = g_get_monotonic_time ();

  pty_cable_send (cable, "2 V\n");
  g_assert_true (link_probe_wait_values (probe, 2, soon));
  g_assert_cmpint (g_array_index (probe->when, gint64, 0), <, sent_again_us - 200 * 1000);
  g_assert_cmpint (g_array_index (probe->when, gint64, 1), >=, sent_again_us);
}

static void
test_settings (void)
{
  const RwSerialSettings settings = { .baud = 2400,
                                      .bits = 8,
                                      .parity = RW_PARITY_NONE,
                                      .stop_bits = 2,
                                      .dtr = TRUE,
                                      .rts = FALSE };
  g_autoptr (PtyCable) cable = pty_cable_new ();
  struct termios line;
  int fd;

  pty_cable_plug (cable);

  g_autoptr (LinkProbe) probe
      = link_probe_new (rw_link_serial_new (cable->port, &settings, rw_decoder_new ("lines")));

  rw_link_open (probe->link);
  g_assert_true (link_probe_wait_state (probe, RW_LINK_LISTENING, soon));
  fd = open (cable->port, O_RDWR | O_NOCTTY | O_CLOEXEC);
  g_assert_cmpint (tcgetattr (fd, &line), ==, 0);
  close (fd);
  g_assert_cmpuint (cfgetispeed (&line), ==, B2400);
  g_assert_cmpuint (line.c_cflag & CSTOPB, !=, 0);
  g_assert_cmpuint (line.c_lflag & (ICANON | ECHO), ==, 0);
  g_assert_cmpuint (line.c_iflag & (IXON | IXOFF | ICRNL), ==, 0);
  g_assert_cmpstr (rw_link_port_get_address (RW_LINK_PORT (probe->link))->port, ==, cable->port);
  g_assert_cmpuint (rw_link_port_get_address (RW_LINK_PORT (probe->link))->line.baud, ==, 2400);
}

static void
test_unplugged (void)
{
  g_autoptr (PtyCable) cable = pty_cable_new ();

  pty_cable_plug (cable);

  g_autoptr (LinkProbe) probe = open_link (cable);

  pty_cable_send (cable, "5 V\n");
  g_assert_true (link_probe_wait_values (probe, 1, soon));
  for (guint round = 0; round < 3; round++)
    {
      const gint64 pulled_us = g_get_monotonic_time ();

      /* Half a value is on the line when it is cut: "1" must not become "16". */
      pty_cable_send (cable, "1");
      pty_cable_unplug (cable);
      g_assert_true (link_probe_wait_state (probe, RW_LINK_LOST, soon));
      g_assert_cmpint (probe->state_us - pulled_us, <, G_USEC_PER_SEC);
      link_probe_run (0.7);
      g_assert_cmpint (rw_link_get_state (probe->link), ==, RW_LINK_LOST);

      const gint64 plugged_us = g_get_monotonic_time ();

      pty_cable_plug (cable);
      g_assert_true (link_probe_wait_state (probe, RW_LINK_LISTENING, soon));
      g_assert_cmpint (probe->state_us - plugged_us, <, 1500 * 1000);
      pty_cable_send (cable, "6 V\n");
      g_assert_true (link_probe_wait_values (probe, 2 + round, soon));
    }
  g_assert_cmpstr (
      probe->story->str, ==,
      "opening listening reading 5 lost listening reading 6 "
      "lost listening reading 6 lost listening reading 6");
}

static void
test_plugged_late (void)
{
  g_autoptr (PtyCable) cable = pty_cable_new ();
  g_autoptr (LinkProbe) probe = make_link (cable);

  rw_link_open (probe->link);
  g_assert_true (link_probe_wait_story (probe, "opening opening", soon));
  g_assert_nonnull (strstr (rw_link_get_message (probe->link), "port")); /* names it */
  link_probe_run (0.8);
  g_assert_cmpstr (probe->story->str, ==, "opening opening");
  pty_cable_plug (cable);
  g_assert_true (link_probe_wait_state (probe, RW_LINK_LISTENING, soon));
}

static void
test_no_serial_port (void)
{
  g_autoptr (LinkProbe) probe = link_probe_new (rw_link_serial_new (
      "/dev/null", rw_decoder_get_usual_line ("lines"), rw_decoder_new ("lines")));

  rw_link_open (probe->link);
  g_assert_true (link_probe_wait_story (probe, "opening opening", soon));
  g_assert_nonnull (strstr (rw_link_get_message (probe->link), "null"));
  rw_link_close (probe->link);
  g_assert_cmpstr (probe->story->str, ==, "opening opening closed");
}

/* The port is opened while a line is under way. */
static void
test_torn_beginning (void)
{
  g_autoptr (PtyCable) cable = pty_cable_new ();
  g_autoptr (LinkProbe) probe = make_link (cable);

  pty_cable_plug (cable);
  pty_cable_send (cable, "12.");
  rw_link_open (probe->link);
  g_assert_true (link_probe_wait_state (probe, RW_LINK_LISTENING, soon));
  pty_cable_send (cable, "06 V\n");
  link_probe_run (0.2);
  pty_cable_send (cable, "7 V\n");
  g_assert_true (link_probe_wait_values (probe, 1, soon));
  g_assert_cmpstr (probe->story->str, ==, "opening listening reading 7");
}

static void
test_silence (void)
{
  g_autoptr (PtyCable) cable = pty_cable_new ();
  g_autoptr (LinkProbe) probe = make_link (cable);

  pty_cable_plug (cable);
  rw_link_port_set_patience (RW_LINK_PORT (probe->link), 300);
  rw_link_open (probe->link);
  g_assert_true (link_probe_wait_state (probe, RW_LINK_SILENT, soon));
  g_assert_null (strstr (rw_link_get_message (probe->link), "furlong"));
  pty_cable_send (cable, "1 V\n");
  g_assert_true (link_probe_wait_state (probe, RW_LINK_READING, soon));
  pty_cable_send (cable, "12 furlong\n");
  g_assert_true (link_probe_wait_state (probe, RW_LINK_SILENT, soon));
  g_assert_nonnull (strstr (rw_link_get_message (probe->link), "12 furlong"));
  g_assert_cmpstr (probe->story->str, ==, "opening listening silent reading 1 silent");
}

static void
test_close_delivers (void)
{
  g_autoptr (PtyCable) cable = pty_cable_new ();

  pty_cable_plug (cable);

  g_autoptr (LinkProbe) probe = open_link (cable);

  for (guint i = 0; i < 500; i++)
    pty_cable_send (cable, "1 V\n");
  g_usleep (200 * 1000); /* time for the thread, none for the main loop */
  rw_link_close (probe->link);
  g_assert_cmpuint (probe->values->len, ==, 500);
  g_assert_true (g_str_has_suffix (probe->story->str, " 1 closed"));

  /* And it can be opened again. */
  rw_link_open (probe->link);
  g_assert_true (link_probe_wait_state (probe, RW_LINK_LISTENING, soon));
  pty_cable_send (cable, "2 V\n");
  g_assert_true (link_probe_wait_values (probe, 501, soon));
}

static void
close_cb (RwLink             *link,
          const RwMeterValue *value,
          gint64              when_us,
          gpointer            data)
{
  if (value->value == 2)
    rw_link_close (link);
}

static void
test_close_in_handler (void)
{
  g_autoptr (PtyCable) cable = pty_cable_new ();

  pty_cable_plug (cable);

  g_autoptr (LinkProbe) probe = open_link (cable);

  g_signal_connect (probe->link, "value", G_CALLBACK (close_cb), NULL);
  pty_cable_send (cable, "1 V\n2 V\n3 V\n");
  g_assert_true (link_probe_wait_state (probe, RW_LINK_CLOSED, soon));
  g_assert_cmpstr (probe->story->str, ==, "opening listening reading 1 2 3 closed");
}

static void
unref_cb (RwLink             *link,
          const RwMeterValue *value,
          gint64              when_us,
          gpointer            data)
{
  RwLink **owned = data;

  g_clear_object (owned);
}

static void
gone_cb (gpointer data,
         GObject *object)
{
  *(gboolean *) data = TRUE;
}

static void
test_unref_in_handler (void)
{
  g_autoptr (PtyCable) cable = pty_cable_new ();
  RwLink *link;
  gboolean gone = FALSE;

  pty_cable_plug (cable);
  link = rw_link_serial_new (cable->port, rw_decoder_get_usual_line ("lines"),
                             rw_decoder_new ("lines"));
  g_object_weak_ref (G_OBJECT (link), gone_cb, &gone);
  g_signal_connect (link, "value", G_CALLBACK (unref_cb), &link);
  rw_link_open (link);
  while (rw_link_get_state (link) != RW_LINK_LISTENING)
    g_main_context_iteration (NULL, TRUE);
  pty_cable_send (cable, "1 V\n2 V\n3 V\n");
  for (guint i = 0; i < 100 && !gone; i++)
    link_probe_run (0.05);
  g_assert_true (gone);
  g_assert_null (link);
}

/* --- a million ----------------------------------------------------------------------- */

static const guint million = 1000000;

static gpointer
send_million (gpointer data)
{
  PtyCable *cable = data;
  g_autoptr (GString) text = g_string_sized_new (70000);

  for (guint i = 0; i < million; i++)
    {
      g_string_append_printf (text, "%u V DC\r\n", i);
      if (text->len < 65000 && i + 1 < million)
        continue;
      pty_cable_send (cable, text->str);
      g_string_truncate (text, 0);
    }
  return NULL;
}

static gboolean
idle_cb (gpointer data)
{
  ++*(guint *) data;
  g_usleep (100); /* what an idle handler does for a living */
  return G_SOURCE_CONTINUE;
}

static void
test_million (void)
{
  g_autoptr (PtyCable) cable = pty_cable_new ();
  guint idles = 0;

  pty_cable_plug (cable);

  g_autoptr (LinkProbe) probe = open_link (cable);


  const gint64 began_us = g_get_monotonic_time ();
  const guint idle_id = g_idle_add (idle_cb, &idles);
  GThread *meter = g_thread_new ("meter", send_million, cable);
  const gboolean all = link_probe_wait_values (probe, million, 30);
  const double seconds = (double) (g_get_monotonic_time () - began_us) / G_USEC_PER_SEC;

  g_source_remove (idle_id);
  g_test_message ("%u values in %.1f s", probe->values->len, seconds);
  g_assert_true (all);
  g_thread_join (meter);
  link_probe_run (0.2);
  g_assert_cmpuint (probe->values->len, ==, million);
  for (guint i = 0; i < million; i++)
    if (g_array_index (probe->values, double, i) != i)
      g_error ("value %u is %g", i, g_array_index (probe->values, double, i));
  for (guint i = 1; i < million; i++)
    g_assert_cmpint (g_array_index (probe->when, gint64, i), >=,
                     g_array_index (probe->when, gint64, i - 1));

  /* The windows live on: things of the lowest priority had their turn all along. */
  g_assert_cmpuint (idles, >, 50);
  g_assert_null (strstr (probe->story->str, "silent"));
}

static void
test_list (void)
{
  g_autoptr (GPtrArray) ports = rw_serial_list_ports ();

  for (guint i = 0; i < ports->len; i++)
    {
      const RwSerialPort *port = g_ptr_array_index (ports, i);

      g_assert_true (g_str_has_prefix (port->name, "/dev/"));
      g_assert_nonnull (port->stable_name);
      g_assert_cmpstr (port->description, !=, "");
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/serial/reads what the meter sends", test_reads);
  g_test_add_func ("/serial/tells when the bytes arrived", test_time_is_of_arrival);
  g_test_add_func ("/serial/sets the line", test_settings);
  g_test_add_func ("/serial/notices an unplugging within a second and comes back", test_unplugged);
  g_test_add_func ("/serial/waits for a port that is not there yet", test_plugged_late);
  g_test_add_func ("/serial/explains what is no serial port", test_no_serial_port);
  g_test_add_func ("/serial/does not believe a torn first line", test_torn_beginning);
  g_test_add_func ("/serial/tells of silence and why", test_silence);
  g_test_add_func ("/serial/delivers what had arrived when it is closed", test_close_delivers);
  g_test_add_func ("/serial/may be closed by a handler", test_close_in_handler);
  g_test_add_func ("/serial/may be dropped by a handler", test_unref_in_handler);
  g_test_add_func ("/serial/misses and doubles none of a million values", test_million);
  g_test_add_func ("/serial/lists the ports", test_list);
  return g_test_run ();
}
