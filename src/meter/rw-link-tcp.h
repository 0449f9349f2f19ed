/* rw-link-tcp.h: makes a link over a TCP connection.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-link-port.h"

G_BEGIN_DECLS

/* An RwLinkPort to @port (1 … 65535) of @host, a name or an IPv4 or IPv6 address.
 * @decoder (transfer full). (transfer full) */
RwLink *rw_link_tcp_new (const char *host, guint16 port, RwDecoder *decoder);

G_END_DECLS
