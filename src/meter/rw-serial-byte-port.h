/* rw-serial-byte-port.h: a serial port as a byte port, by libserialport.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-byte-port.h"
#include "rw-serial-settings.h"

G_BEGIN_DECLS

/* @path is followed to the device anew at each open. (transfer full) */
RwBytePort *rw_serial_byte_port_new (const char *path, const RwSerialSettings *settings);

G_END_DECLS
