/* rw-link-tcp.c: makes a link over a TCP connection.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-link-tcp.h"

RwLink *
rw_link_tcp_new (const char *host,
                 guint16     port,
                 RwDecoder  *decoder)
{
  g_autoptr (RwMeterAddress) address = rw_meter_address_new_tcp (host, port);

  return rw_link_port_new (address, decoder);
}
