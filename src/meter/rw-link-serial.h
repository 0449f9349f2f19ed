/* rw-link-serial.h: a link over a serial port.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-link.h"
#include "rw-serial-settings.h"

G_BEGIN_DECLS

#define RW_TYPE_LINK_SERIAL (rw_link_serial_get_type ())
G_DECLARE_FINAL_TYPE (RwLinkSerial, rw_link_serial, RW, LINK_SERIAL, RwLink)

/* A link over @port: "/dev/ttyUSB0", or any path that leads there, such as the stable names
 * below /dev/serial/by-id; the path is followed anew at each attempt to open it. @decoder
 * (transfer full): the format and its options, not fed yet. With the format "scpi" the link
 * asks for each value (see rw-scpi-talk.h); with others it listens. (transfer full) */
RwLink *rw_link_serial_new (const char *port, const RwSerialSettings *settings, RwDecoder *decoder);

const char             *rw_link_serial_get_port (RwLinkSerial *self);
const RwSerialSettings *rw_link_serial_get_settings (RwLinkSerial *self);

/* How long to wait for an answer in scpi, and how long without values until the state is SILENT.
 * Milliseconds, at least 50; 3000 at first. Takes effect at the next open. */
void rw_link_serial_set_patience (RwLinkSerial *self, guint milliseconds);

G_END_DECLS
