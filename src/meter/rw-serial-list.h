/* rw-serial-list.h: the serial ports of this computer.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct
{
  char *name;        /* "/dev/ttyUSB0" */
  char *stable_name; /* a name that stays when the adapter is plugged in again; may equal name */
  char *description; /* for people, as the adapter or system gives it; never NULL or empty */
} RwSerialPort;

void rw_serial_port_free (RwSerialPort *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwSerialPort, rw_serial_port_free)

/* All ports that are there now, sorted by name: USB adapters first. (transfer full)
 * (element-type RwSerialPort) Never NULL; empty when there are none. */
GPtrArray *rw_serial_list_ports (void);

G_END_DECLS
