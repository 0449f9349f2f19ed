/* tcp-peer.h: for tests: the other end of a TCP link, on this machine.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

typedef struct
{
  guint16 port;
  int     listener; /* −1: nobody listens */
  int     line;     /* the connection; −1: none */
} TcpPeer;

/* Listens on a free port. */
TcpPeer *tcp_peer_new (void);
void     tcp_peer_free (TcpPeer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TcpPeer, tcp_peer_free)

/* Listens again on the same port; @backlog as listen () takes it. */
void tcp_peer_listen (TcpPeer *self, int backlog);

/* Nobody listens any more; the connection stays. */
void tcp_peer_deafen (TcpPeer *self);

/* Takes the connection that waits, within 5 s. */
void tcp_peer_accept (TcpPeer *self);

void tcp_peer_send (TcpPeer *self, const char *text);

/* Ends the connection: in order, or, with @rudely, with a reset. */
void tcp_peer_hang_up (TcpPeer *self, gboolean rudely);
