/* bench-links.c: what eight meters at ten readings a second cost the processor.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Four serial links over pseudo-terminals and four over TCP, each with its thread, all into
 * one main loop. The meters are another process and send in turn, so that no two values share
 * a wake-up. Counted is all that this process uses, user and system, over five seconds.
 * Fails at 2 % of one core.
 */
#include "config.h"

#include <signal.h>
#include <sys/prctl.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "link-probe.h"
#include "pty-cable.h"
#include "rw-link-serial.h"
#include "rw-link-tcp.h"
#include "tcp-peer.h"

enum
{
  N_CABLES = 4,
  N_PEERS = 4,
  N_METERS = N_CABLES + N_PEERS,
  RATE = 10 /* a second and meter */
};

static const double seconds = 5;
static const double most_percent = 2;

typedef struct
{
  PtyCable  *cables[N_CABLES];
  TcpPeer   *peers[N_PEERS];
  LinkProbe *probes[N_METERS];
} Bench;

/* The other process. */
static void
be_the_meters (Bench *self)
{
  prctl (PR_SET_PDEATHSIG, SIGTERM);
  for (guint i = 0; i < N_PEERS; i++)
    tcp_peer_accept (self->peers[i]);

  const gint64 began_us = g_get_monotonic_time ();

  for (guint n = 0;; n++)
    {
      const gint64 due_us = began_us + (gint64) n * G_USEC_PER_SEC / (RATE * N_METERS);
      g_autofree char *text = g_strdup_printf ("+5.%04u V DC\r\n", n % 10000);
      const guint i = n % N_METERS;

      g_usleep ((gulong) MAX (due_us - g_get_monotonic_time (), 0));
      if (i < N_CABLES)
        pty_cable_send (self->cables[i], text);
      else
        tcp_peer_send (self->peers[i - N_CABLES], text);
    }
}

static pid_t
start_meters (Bench *self)
{
  pid_t meters;

  for (guint i = 0; i < N_CABLES; i++)
    {
      self->cables[i] = pty_cable_new ();
      pty_cable_plug (self->cables[i]);
    }
  for (guint i = 0; i < N_PEERS; i++)
    self->peers[i] = tcp_peer_new ();
  meters = fork ();
  g_assert_cmpint (meters, >=, 0);
  if (meters == 0)
    be_the_meters (self);
  return meters;
}

static void
open_links (Bench *self)
{
  for (guint i = 0; i < N_METERS; i++)
    {
      RwDecoder *decoder = rw_decoder_new ("lines");
      RwLink *link = i < N_CABLES
                         ? rw_link_serial_new (self->cables[i]->port,
                                               rw_decoder_get_usual_line ("lines"), decoder)
                         : rw_link_tcp_new ("127.0.0.1", self->peers[i - N_CABLES]->port, decoder);

      self->probes[i] = link_probe_new (link);
      rw_link_open (link);
    }
}

static guint
count_values (const Bench *self)
{
  guint n = 0;

  for (guint i = 0; i < N_METERS; i++)
    n += self->probes[i]->values->len;
  return n;
}

static double
get_used_seconds (void)
{
  struct rusage used;

  getrusage (RUSAGE_SELF, &used);
  return (double) (used.ru_utime.tv_sec + used.ru_stime.tv_sec)
         + (double) (used.ru_utime.tv_usec + used.ru_stime.tv_usec) / 1e6;
}

static gboolean
end_cb (gpointer data)
{
  g_main_loop_quit (data);
  return G_SOURCE_REMOVE;
}

/* Percent of one core. */
static double
measure (Bench *self)
{
  g_autoptr (GMainLoop) loop = g_main_loop_new (NULL, FALSE);
  const guint before = count_values (self);
  const gint64 began_us = g_get_monotonic_time ();
  const double used = get_used_seconds ();
  double took, share;
  guint n;

  g_timeout_add ((guint) (seconds * 1000), end_cb, loop);
  g_main_loop_run (loop);
  took = (double) (g_get_monotonic_time () - began_us) / G_USEC_PER_SEC;
  share = 100 * (get_used_seconds () - used) / took;
  n = count_values (self) - before;
  g_print ("# %d meters, %u values in %.2f s: %.2f %% of one core\n", N_METERS, n, took, share);
  /* The measured thing did happen. */
  g_assert_cmpfloat (n, >, 0.95 * RATE * N_METERS * took);
  return share;
}

static void
test_share (void)
{
  Bench bench = { 0 };
  const pid_t meters = start_meters (&bench);
  double share;

  open_links (&bench);
  for (guint i = 0; i < N_METERS; i++)
    g_assert_true (link_probe_wait_values (bench.probes[i], 5, 10));
  share = measure (&bench);
  g_test_minimized_result (share, "%.2f %% of one core", share);
  g_assert_cmpfloat (share, <, most_percent);
  kill (meters, SIGTERM);
  waitpid (meters, NULL, 0);
  for (guint i = 0; i < N_METERS; i++)
    link_probe_free (bench.probes[i]);
  for (guint i = 0; i < N_CABLES; i++)
    pty_cable_free (bench.cables[i]);
  for (guint i = 0; i < N_PEERS; i++)
    tcp_peer_free (bench.peers[i]);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/links/eight meters cost less than 2 % of one core", test_share);
  return g_test_run ();
}
