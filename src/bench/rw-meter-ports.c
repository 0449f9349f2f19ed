/* rw-meter-ports.c: serial ports and addresses, and which of them a job is reading.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-meter-ports.h"

#include <stdlib.h>

#include "rw-meter-books.h"

/* The same device, also by way of a link such as those below /dev/serial/by-id. */
static gboolean
is_same_port (const char *a,
              const char *b)
{
  char *real_a = realpath (a, NULL);
  char *real_b = realpath (b, NULL);
  const gboolean same = g_strcmp0 (real_a != NULL ? real_a : a, real_b != NULL ? real_b : b) == 0;

  free (real_a);
  free (real_b);
  return same;
}

static gboolean
is_same_place (const RwMeterAddress *a,
               const RwMeterAddress *b)
{
  if (a->kind != b->kind)
    return FALSE;
  return a->kind == RW_METER_ADDRESS_SERIAL ? is_same_port (a->port, b->port) : rw_meter_address_equal (a, b);
}

const char *
rw_meter_ports_find_user_at (RwJob                *job,
                             const RwMeterAddress *address)
{
  RwJobMeterInfo info;

  for (guint i = 0; rw_job_get_meter (job, i, &info); i++)
    {
      const RwKnownMeter *meter = rw_meter_book_find (rw_meter_books_get_default (), info.id);

      if (meter != NULL && meter->address != NULL && is_same_place (meter->address, address))
        return meter->facts->name;
    }
  return NULL;
}

const char *
rw_meter_ports_find_user (RwJob      *job,
                          const char *port)
{
  static const RwSerialSettings any = { .baud = 9600, .bits = 8, .stop_bits = 1 };
  g_autoptr (RwMeterAddress) address = rw_meter_address_new_serial (port, &any);

  return rw_meter_ports_find_user_at (job, address);
}

char *
rw_meter_ports_describe (const RwSerialPort *port)
{
  g_autofree char *base = g_path_get_basename (port->name);

  if (g_str_equal (base, port->description))
    return g_steal_pointer (&base);
  return g_strdup_printf ("%s · %s", base, port->description);
}
