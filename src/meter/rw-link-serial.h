/* rw-link-serial.h: makes a link over a serial port.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-link-port.h"

G_BEGIN_DECLS

/* An RwLinkPort over @port: "/dev/ttyUSB0", or any path that leads there, such as the stable
 * names below /dev/serial/by-id. @decoder (transfer full). (transfer full) */
RwLink *rw_link_serial_new (const char *port, const RwSerialSettings *settings, RwDecoder *decoder);

G_END_DECLS
