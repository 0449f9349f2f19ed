/* tcp-peer.c: for tests: the other end of a TCP link, on this machine.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "tcp-peer.h"

#include <arpa/inet.h>
#include <netinet/in.h>
#include <poll.h>
#include <string.h>
#include <sys/socket.h>
#include <unistd.h>

TcpPeer *
tcp_peer_new (void)
{
  TcpPeer *self = g_new0 (TcpPeer, 1);

  self->listener = self->line = -1;
  tcp_peer_listen (self, 8);
  return self;
}

void
tcp_peer_free (TcpPeer *self)
{
  tcp_peer_deafen (self);
  tcp_peer_hang_up (self, FALSE);
  g_free (self);
}

void
tcp_peer_listen (TcpPeer *self,
                 int      backlog)
{
  struct sockaddr_in place = { .sin_family = AF_INET,
                               .sin_port = htons (self->port),
                               .sin_addr = { htonl (INADDR_LOOPBACK) } };
  socklen_t size = sizeof place;
  const int yes = 1;

  self->listener = socket (AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0);
  g_assert_cmpint (self->listener, >=, 0);
  setsockopt (self->listener, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof yes);
  g_assert_cmpint (bind (self->listener, (struct sockaddr *) &place, size), ==, 0);
  g_assert_cmpint (listen (self->listener, backlog), ==, 0);
  getsockname (self->listener, (struct sockaddr *) &place, &size);
  self->port = ntohs (place.sin_port);
}

void
tcp_peer_deafen (TcpPeer *self)
{
  if (self->listener >= 0)
    close (self->listener);
  self->listener = -1;
}

void
tcp_peer_accept (TcpPeer *self)
{
  struct pollfd waiting = { .fd = self->listener, .events = POLLIN };

  g_assert_cmpint (self->line, ==, -1);
  g_assert_cmpint (poll (&waiting, 1, 5000), ==, 1);
  self->line = accept4 (self->listener, NULL, NULL, SOCK_CLOEXEC);
  g_assert_cmpint (self->line, >=, 0);
}

void
tcp_peer_send (TcpPeer    *self,
               const char *text)
{
  gsize left = strlen (text);

  while (left > 0)
    {
      const gssize n = send (self->line, text, left, MSG_NOSIGNAL);

      g_assert_cmpint (n, >, 0);
      text += n;
      left -= (gsize) n;
    }
}

void
tcp_peer_hang_up (TcpPeer *self,
                  gboolean rudely)
{
  const struct linger reset = { .l_onoff = 1, .l_linger = 0 };

  if (self->line < 0)
    return;
  if (rudely)
    setsockopt (self->line, SOL_SOCKET, SO_LINGER, &reset, sizeof reset);
  close (self->line);
  self->line = -1;
}
