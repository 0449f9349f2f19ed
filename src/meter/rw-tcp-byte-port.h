/* rw-tcp-byte-port.h: a TCP connection as a byte port: serial servers, instruments in the network.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-byte-port.h"

G_BEGIN_DECLS

/* @host: a name or an IPv4 or IPv6 address, without brackets; looked up anew at each open,
 * which takes 4 s at most. Errors: NOT_THERE no such host; REFUSED nobody listens there;
 * FAILED no answer in time, or no way there. (transfer full) */
RwBytePort *rw_tcp_byte_port_new (const char *host, guint16 port);

G_END_DECLS
