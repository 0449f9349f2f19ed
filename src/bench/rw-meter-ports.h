/* rw-meter-ports.h: serial ports and addresses, and which of them a job is reading.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-job.h"
#include "rw-meter-address.h"
#include "rw-serial-list.h"

G_BEGIN_DECLS

/* The name of the job's meter that is on this port: its device or its stable name. (nullable) borrowed from the
 * book until it changes */
const char *rw_meter_ports_find_user (RwJob *job, const char *port);

/* As above, for a place of either kind; line settings do not matter. */
const char *rw_meter_ports_find_user_at (RwJob *job, const RwMeterAddress *address);

/* Short, for a list: "ttyUSB0 · USB adapter". (transfer full) */
char *rw_meter_ports_describe (const RwSerialPort *port);

G_END_DECLS
