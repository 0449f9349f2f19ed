/* rw-link-port.h: a link over a serial port or a TCP connection.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-meter-address.h"

G_BEGIN_DECLS

#define RW_TYPE_LINK_PORT (rw_link_port_get_type ())
G_DECLARE_FINAL_TYPE (RwLinkPort, rw_link_port, RW, LINK_PORT, RwLink)

/* @address: copied; followed anew at each attempt to open it. @decoder (transfer full): the
 * format and its options, not fed yet. The link asks for each value where the format needs
 * it ("scpi": rw-scpi-talk.h; a format with a poll: rw-poll-talk.h); else it listens.
 * (transfer full) */
RwLink *rw_link_port_new (const RwMeterAddress *address, RwDecoder *decoder);

const RwMeterAddress *rw_link_port_get_address (RwLinkPort *self);

/* How long to wait for an answer in scpi, and how long without values until the state is SILENT.
 * Milliseconds, at least 50; 3000 at first. Takes effect at the next open. */
void rw_link_port_set_patience (RwLinkPort *self, guint milliseconds);

G_END_DECLS
