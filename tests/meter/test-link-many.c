/* test-link-many.c: eight links at once, serial and TCP: each gets its own values, all and in order.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "link-probe.h"
#include "pty-cable.h"
#include "rw-link-serial.h"
#include "rw-link-tcp.h"
#include "tcp-peer.h"

enum
{
  N_LINKS = 8,
  N_SENT = 1000
};

/* Meter @i sends i × 10 000 + 0, 1, 2 …; the even ones by cable, the odd ones by TCP. */
typedef struct
{
  guint      i;
  PtyCable  *cable;
  TcpPeer   *peer;
  LinkProbe *probe;
  GThread   *thread;
} Meter;

static gpointer
send_all (gpointer data)
{
  Meter *self = data;

  for (guint n = 0; n < N_SENT; n++)
    {
      g_autofree char *text = g_strdup_printf ("%u V\n", self->i * 10000 + n);

      if (self->cable != NULL)
        pty_cable_send (self->cable, text);
      else
        tcp_peer_send (self->peer, text);
      if (n % 50 == 0)
        g_usleep (1000 * (self->i + 1));
    }
  return NULL;
}

static void
meter_open (Meter *self,
            guint  i)
{
  RwDecoder *decoder = rw_decoder_new ("lines");

  self->i = i;
  if (i % 2 == 0)
    {
      self->cable = pty_cable_new ();
      pty_cable_plug (self->cable);
      self->probe = link_probe_new (rw_link_serial_new (
          self->cable->port, rw_decoder_get_usual_line ("lines"), decoder));
    }
  else
    {
      self->peer = tcp_peer_new ();
      self->probe = link_probe_new (rw_link_tcp_new ("127.0.0.1", self->peer->port, decoder));
    }
  rw_link_open (self->probe->link);
}

static void
meter_start (Meter *self)
{
  g_assert_true (link_probe_wait_state (self->probe, RW_LINK_LISTENING, 8));
  if (self->peer != NULL)
    tcp_peer_accept (self->peer);
  self->thread = g_thread_new ("meter", send_all, self);
}

static void
meter_check (Meter *self)
{
  g_assert_true (link_probe_wait_values (self->probe, N_SENT, 20));
  g_thread_join (self->thread);
  g_assert_cmpuint (self->probe->values->len, ==, N_SENT);
  for (guint n = 0; n < N_SENT; n++)
    g_assert_cmpfloat (g_array_index (self->probe->values, double, n), ==, self->i * 10000 + n);
}

static void
meter_clear (Meter *self)
{
  link_probe_free (self->probe);
  g_clear_pointer (&self->cable, pty_cable_free);
  g_clear_pointer (&self->peer, tcp_peer_free);
}

/* One of each kind is lost: the others do not notice. */
static void
lose_two (Meter meters[N_LINKS])
{
  pty_cable_unplug (meters[2].cable);
  tcp_peer_hang_up (meters[5].peer, TRUE);
  tcp_peer_deafen (meters[5].peer);
  g_assert_true (link_probe_wait_state (meters[2].probe, RW_LINK_LOST, 2));
  g_assert_true (link_probe_wait_state (meters[5].probe, RW_LINK_LOST, 2));
  for (guint i = 0; i < N_LINKS; i++)
    if (i != 2 && i != 5)
      g_assert_cmpint (rw_link_get_state (meters[i].probe->link), ==, RW_LINK_READING);
}

static void
test_eight (void)
{
  Meter meters[N_LINKS] = { 0 };
  gint64 began_us;

  for (guint i = 0; i < N_LINKS; i++)
    meter_open (&meters[i], i);
  for (guint i = 0; i < N_LINKS; i++)
    meter_start (&meters[i]);
  for (guint i = 0; i < N_LINKS; i++)
    meter_check (&meters[i]);
  lose_two (meters);
  began_us = g_get_monotonic_time ();
  for (guint i = 0; i < N_LINKS; i++)
    rw_link_close (meters[i].probe->link);
  g_assert_cmpint (g_get_monotonic_time () - began_us, <, 300 * 1000);
  for (guint i = 0; i < N_LINKS; i++)
    meter_clear (&meters[i]);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/many/eight links each get their own values, all and in order", test_eight);
  return g_test_run ();
}
