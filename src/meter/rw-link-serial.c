/* rw-link-serial.c: makes a link over a serial port.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-link-serial.h"

RwLink *
rw_link_serial_new (const char             *port,
                    const RwSerialSettings *settings,
                    RwDecoder              *decoder)
{
  g_autoptr (RwMeterAddress) address = rw_meter_address_new_serial (port, settings);

  return rw_link_port_new (address, decoder);
}
