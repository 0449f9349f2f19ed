/* rw-known-meter-json.h: a remembered meter as the object that the meter book holds, and back.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   {"id":"m2","name":"green meter","percent":0.5,"counts":2,"ac":"true-rms",
 *    "address":{"kind":"serial","port":"/dev/ttyUSB0","baud":19200,"bits":7,"parity":"odd",
 *               "stop_bits":1,"dtr":true,"rts":true},
 *    "format":"digits-14","pattern":null,"mark":".","identity":null,"rail":"p5"}
 *
 * Only id, percent and counts must be there. An address of kind "tcp" has host and tcp_port.
 */
#pragma once

#include <json-glib/json-glib.h>

#include "rw-meter-book.h"

G_BEGIN_DECLS

/* NULL, and *error (RW_METER_BOOK_ERROR_DAMAGED) says which member is wrong. (transfer full) */
RwKnownMeter *rw_known_meter_from_object (JsonObject *object, GError **error);

/* Sets the members that this version knows; others stay. */
void rw_known_meter_to_object (const RwKnownMeter *self, JsonObject *object);

G_END_DECLS
