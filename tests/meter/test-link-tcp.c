/* test-link-tcp.c: a TCP link against a peer on this machine: hang-ups, refusals, silence, names.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <netinet/in.h>
#include <netinet/tcp.h>
#include <string.h>
#include <sys/socket.h>
#include <unistd.h>

#include "fake-resolver.h"
#include "link-probe.h"
#include "rw-link-tcp.h"
#include "rw-tcp-byte-port.h"
#include "tcp-peer.h"

static const double soon = 8;

/* A close that gives up waiting for its thread takes 250 ms. */
static const gint64 close_limit_us = 200 * 1000;

static LinkProbe *
make_link (const char *host,
           guint16     port)
{
  return link_probe_new (rw_link_tcp_new (host, port, rw_decoder_new ("lines")));
}

static LinkProbe *
open_link (TcpPeer *peer)
{
  LinkProbe *probe = make_link ("127.0.0.1", peer->port);

  rw_link_open (probe->link);
  g_assert_true (link_probe_wait_state (probe, RW_LINK_LISTENING, soon));
  tcp_peer_accept (peer);
  return probe;
}

static void
close_in_time (LinkProbe *probe)
{
  const gint64 began_us = g_get_monotonic_time ();

  rw_link_close (probe->link);
  g_assert_cmpint (g_get_monotonic_time () - began_us, <, close_limit_us);
  g_assert_cmpint (rw_link_get_state (probe->link), ==, RW_LINK_CLOSED);
}

static void
test_reads (void)
{
  g_autoptr (TcpPeer) peer = tcp_peer_new ();
  g_autoptr (LinkProbe) probe = open_link (peer);

  tcp_peer_send (peer, "5.012 V DC\r\nnonsense\r\nOL V\r\n-12.06 V\r\n");
  g_assert_true (link_probe_wait_values (probe, 3, soon));
  close_in_time (probe);
  g_assert_cmpstr (probe->story->str, ==, "opening listening reading 5.012 over -12.06 closed");
}

/* The server closes, in order or with a reset, within a line; comes back on the same port. */
static void
test_hang_ups (void)
{
  g_autoptr (TcpPeer) peer = tcp_peer_new ();
  g_autoptr (LinkProbe) probe = open_link (peer);

  tcp_peer_send (peer, "5 V\n");
  g_assert_true (link_probe_wait_values (probe, 1, soon));
  for (guint round = 0; round < 4; round++)
    {
      /* Half a value is on the line when it is cut: "1" must not become "16". */
      tcp_peer_send (peer, "1");
      link_probe_run (0.05);
      tcp_peer_deafen (peer);
      tcp_peer_hang_up (peer, round % 2 == 1);
      g_assert_true (link_probe_wait_state (probe, RW_LINK_LOST, 1));
      g_assert_true (link_probe_wait_story (probe, "lost lost", soon)); /* and why not yet */
      g_assert_nonnull (strstr (rw_link_get_message (probe->link), "takes no connection"));
      tcp_peer_listen (peer, 8);
      g_assert_true (link_probe_wait_state (probe, RW_LINK_LISTENING, soon));
      tcp_peer_accept (peer);
      tcp_peer_send (peer, "6 V\n");
      g_assert_true (link_probe_wait_values (probe, 2 + round, soon));
      g_assert_cmpfloat (g_array_index (probe->values, double, 1 + round), ==, 6);
      g_string_truncate (probe->story, 0);
    }
}

static void
test_server_comes_late (void)
{
  g_autoptr (TcpPeer) peer = tcp_peer_new ();
  g_autoptr (LinkProbe) probe = make_link ("127.0.0.1", peer->port);

  tcp_peer_deafen (peer);
  rw_link_open (probe->link);
  g_assert_true (link_probe_wait_story (probe, "opening opening", soon));
  g_assert_nonnull (strstr (rw_link_get_message (probe->link), "takes no connection"));
  link_probe_run (1.2);
  g_assert_cmpstr (probe->story->str, ==, "opening opening");
  tcp_peer_listen (peer, 8);
  g_assert_true (link_probe_wait_state (probe, RW_LINK_LISTENING, soon));
}

/* The peer neither takes the connection nor refuses it: a full queue of connections. */
static void
test_no_answer (void)
{
  g_autoptr (TcpPeer) peer = tcp_peer_new ();
  g_autoptr (LinkProbe) probe = NULL;
  int fillers[8];
  struct sockaddr_in place = { .sin_family = AF_INET, .sin_addr = { htonl (INADDR_LOOPBACK) } };

  tcp_peer_deafen (peer);
  tcp_peer_listen (peer, 0);
  place.sin_port = htons (peer->port);
  for (guint i = 0; i < G_N_ELEMENTS (fillers); i++)
    {
      fillers[i] = socket (AF_INET, SOCK_STREAM | SOCK_NONBLOCK | SOCK_CLOEXEC, 0);
      (void) !connect (fillers[i], (struct sockaddr *) &place, sizeof place);
    }
  probe = make_link ("127.0.0.1", peer->port);
  rw_link_open (probe->link);
  link_probe_run (0.3);
  g_assert_cmpstr (probe->story->str, ==, "opening");
  close_in_time (probe); /* while it is connecting */

  rw_link_open (probe->link);
  g_assert_true (link_probe_wait_story (probe, "closed opening opening", soon));
  g_assert_nonnull (strstr (rw_link_get_message (probe->link), "No answer"));

  /* It vanishes while it is being connected to, and comes back. */
  link_probe_run (1.2);
  for (guint i = 0; i < G_N_ELEMENTS (fillers); i++)
    close (fillers[i]);
  tcp_peer_deafen (peer);
  tcp_peer_listen (peer, 8);
  g_assert_true (link_probe_wait_state (probe, RW_LINK_LISTENING, 2 * soon));
  tcp_peer_accept (peer);
  tcp_peer_send (peer, "7 V\n");
  g_assert_true (link_probe_wait_values (probe, 1, soon));
}

/* --- names --------------------------------------------------------------------------- */

static void
test_name (void)
{
  g_autoptr (TcpPeer) peer = tcp_peer_new ();
  g_autoptr (LinkProbe) probe = make_link ("bench-box", peer->port);
  g_autofree char *name = g_strdup_printf ("“bench-box:%u”", peer->port);

  rw_link_open (probe->link);
  g_assert_true (link_probe_wait_state (probe, RW_LINK_LISTENING, soon));
  g_assert_nonnull (strstr (rw_link_get_message (probe->link), name));
}

static void
test_second_address (void)
{
  g_autoptr (TcpPeer) peer = tcp_peer_new ();
  g_autoptr (LinkProbe) probe = make_link ("two.test", peer->port);

  rw_link_open (probe->link);
  g_assert_true (link_probe_wait_state (probe, RW_LINK_LISTENING, soon));
}

static void
test_no_such_host (void)
{
  g_autoptr (LinkProbe) probe = make_link ("nobody.test", 5025);

  rw_link_open (probe->link);
  g_assert_true (link_probe_wait_story (probe, "opening opening", soon));
  g_assert_nonnull (strstr (rw_link_get_message (probe->link), "There is no “nobody.test”"));
  close_in_time (probe);
}

static void
test_slow_lookup (void)
{
  g_autoptr (LinkProbe) probe = make_link ("slow.test", 5025);

  rw_link_open (probe->link);
  link_probe_run (0.3);
  g_assert_cmpstr (probe->story->str, ==, "opening");
  close_in_time (probe);

  rw_link_open (probe->link);
  g_assert_true (link_probe_wait_story (probe, "closed opening opening", soon));
  g_assert_nonnull (strstr (rw_link_get_message (probe->link), "slow.test"));
  close_in_time (probe);
}

/* --- the rest ------------------------------------------------------------------------ */

static void
test_silence (void)
{
  g_autoptr (TcpPeer) peer = tcp_peer_new ();
  g_autoptr (LinkProbe) probe = make_link ("127.0.0.1", peer->port);

  rw_link_port_set_patience (RW_LINK_PORT (probe->link), 400);
  rw_link_open (probe->link);
  g_assert_true (link_probe_wait_state (probe, RW_LINK_SILENT, soon));
  tcp_peer_accept (peer);
  tcp_peer_send (peer, "1 V\n");
  g_assert_true (link_probe_wait_state (probe, RW_LINK_READING, soon));
  g_assert_true (link_probe_wait_state (probe, RW_LINK_SILENT, soon));
  close_in_time (probe);
  g_assert_cmpstr (probe->story->str, ==, "opening listening silent reading 1 silent closed");
}

/* A serial server forwards what comes, from the middle of a line on. */
static void
test_torn_beginning (void)
{
  g_autoptr (TcpPeer) peer = tcp_peer_new ();
  g_autoptr (LinkProbe) probe = make_link ("127.0.0.1", peer->port);

  rw_link_open (probe->link);
  tcp_peer_accept (peer);
  link_probe_run (0.1); /* the way through a network */
  tcp_peer_send (peer, "06 V\n");
  link_probe_run (0.3);
  tcp_peer_send (peer, "7 V\n");
  g_assert_true (link_probe_wait_values (probe, 1, soon));
  g_assert_cmpstr (probe->story->str, ==, "opening listening reading 7");
}

/* A peer that is gone without a word cannot be made here; that the kernel is told to look for
 * it can be seen. */
static void
test_socket_options (void)
{
  static const struct
  {
    int level, option, least, most;
  } wanted[] = { { SOL_SOCKET, SO_KEEPALIVE, 1, 1 },
                 { IPPROTO_TCP, TCP_NODELAY, 1, 1 },
                 { IPPROTO_TCP, TCP_KEEPIDLE, 1, 10 },
                 { IPPROTO_TCP, TCP_KEEPINTVL, 1, 5 },
                 { IPPROTO_TCP, TCP_KEEPCNT, 1, 5 },
                 { IPPROTO_TCP, TCP_USER_TIMEOUT, 1000, 15000 } };
  g_autoptr (TcpPeer) peer = tcp_peer_new ();
  RwBytePort *port = rw_tcp_byte_port_new ("127.0.0.1", peer->port);
  g_autoptr (GError) error = NULL;

  port->class->open (port, &error);
  g_assert_no_error (error);
  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    {
      int value = 0;
      socklen_t size = sizeof value;

      g_assert_cmpint (getsockopt (port->class->get_fd (port), wanted[i].level, wanted[i].option,
                                   &value, &size), ==, 0);
      g_assert_cmpint (value, >=, wanted[i].least);
      g_assert_cmpint (value, <=, wanted[i].most);
    }
  port->class->free (port);
}

/* --- ten thousand -------------------------------------------------------------------- */

static const guint n_sent = 10000;
static const guint n_lines = 4; /* hang-ups in between */

/* The meter counts up in odd pieces; every so often the line is cut, in the middle of a value
 * that is then sent again whole. */
static gpointer
send_all (gpointer data)
{
  TcpPeer *peer = data;

  for (guint part = 0; part < n_lines; part++)
    {
      g_autoptr (GString) text = g_string_new (NULL);
      gsize at = 0;

      tcp_peer_accept (peer);
      g_usleep (400 * 1000); /* the first moments may begin inside a line */
      for (guint i = part * n_sent / n_lines; i < (part + 1) * n_sent / n_lines; i++)
        g_string_append_printf (text, "%u V DC\r\n", i);
      g_string_append_printf (text, "%u", part + 1);
      for (guint piece = 1; at < text->len; piece = piece % 61 + 1)
        {
          g_autofree char *cut = g_strndup (text->str + at, piece);

          tcp_peer_send (peer, cut);
          at += piece;
        }
      tcp_peer_hang_up (peer, FALSE);
    }
  return NULL;
}

static void
test_ten_thousand (void)
{
  g_autoptr (TcpPeer) peer = tcp_peer_new ();
  g_autoptr (LinkProbe) probe = make_link ("127.0.0.1", peer->port);
  GThread *meter = g_thread_new ("meter", send_all, peer);

  rw_link_open (probe->link);
  g_assert_true (link_probe_wait_values (probe, n_sent, 30));
  g_thread_join (meter);
  link_probe_run (0.2);
  g_assert_cmpuint (probe->values->len, ==, n_sent);
  for (guint i = 0; i < n_sent; i++)
    g_assert_cmpfloat (g_array_index (probe->values, double, i), ==, i);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  fake_resolver_install ();
  g_test_add_func ("/tcp/reads what the meter sends", test_reads);
  g_test_add_func ("/tcp/notices a hang-up within a second and comes back", test_hang_ups);
  g_test_add_func ("/tcp/waits for a server that is not there yet", test_server_comes_late);
  g_test_add_func ("/tcp/gives up on one that does not answer, and tries on", test_no_answer);
  g_test_add_func ("/tcp/looks the name up", test_name);
  g_test_add_func ("/tcp/tries each address of a name", test_second_address);
  g_test_add_func ("/tcp/tells that there is no such host", test_no_such_host);
  g_test_add_func ("/tcp/does not wait long for a lookup", test_slow_lookup);
  g_test_add_func ("/tcp/tells of silence", test_silence);
  g_test_add_func ("/tcp/does not believe a torn first line", test_torn_beginning);
  g_test_add_func ("/tcp/has the kernel look for a peer that is gone", test_socket_options);
  g_test_add_func ("/tcp/misses and doubles none of ten thousand values", test_ten_thousand);
  return g_test_run ();
}
