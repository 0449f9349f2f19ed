/* rw-meter-address.h: where a meter is reached: a serial port with its line settings, or a host and port.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-byte-port.h"
#include "rw-link.h"
#include "rw-serial-settings.h"

G_BEGIN_DECLS

typedef enum
{
  RW_METER_ADDRESS_SERIAL,
  RW_METER_ADDRESS_TCP
} RwMeterAddressKind;

/* Owned strings; the part that does not belong to the kind is NULL or zero. */
typedef struct
{
  RwMeterAddressKind kind;
  char              *port; /* serial: "/dev/ttyUSB0" or a stable name */
  RwSerialSettings   line; /* serial */
  char              *host; /* TCP: a name or an IPv4 or IPv6 address */
  guint16            tcp_port;
} RwMeterAddress;

/* The port SCPI instruments listen on (registered with IANA as "scpi-raw"). */
#define RW_METER_ADDRESS_SCPI_PORT 5025

RwMeterAddress *rw_meter_address_new_serial (const char *port, const RwSerialSettings *line);
RwMeterAddress *rw_meter_address_new_tcp (const char *host, guint16 tcp_port);
RwMeterAddress *rw_meter_address_copy (const RwMeterAddress *self);
void            rw_meter_address_free (RwMeterAddress *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwMeterAddress, rw_meter_address_free)

/* Same kind, place and line settings; host names without regard to case. */
gboolean rw_meter_address_equal (const RwMeterAddress *a, const RwMeterAddress *b);

/* For people: "/dev/ttyUSB0 · 2400 8N1", "bench-box:5025". (transfer full) */
char *rw_meter_address_to_words (const RwMeterAddress *self);

/* What a person typed. With "/" in it, or "tty…": a serial port's path, with @line (NULL: 9600 8N1).
 * Else "host", "host:port", "[::1]:port", "::1", each with or without "tcp:" before it; without a port it is
 * RW_METER_ADDRESS_SCPI_PORT. NULL with RW_PORT_ERROR_NOT_THERE and a sentence on what to write.
 * (transfer full) */
RwMeterAddress *rw_meter_address_parse (const char *typed, const RwSerialSettings *line, GError **error);

/* A port to what is there, not open yet. (transfer full) */
RwBytePort *rw_meter_address_make_port (const RwMeterAddress *self);

/* The link to what is there. @decoder (transfer full). It asks where the format needs asking ("scpi",
 * "text-14"), else it listens. (transfer full) */
RwLink *rw_meter_address_link (const RwMeterAddress *self, RwDecoder *decoder);

G_END_DECLS
