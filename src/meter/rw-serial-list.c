/* rw-serial-list.c: the serial ports of this computer.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-serial-list.h"

#include <glib/gi18n-lib.h>
#include <libserialport.h>
#include <stdlib.h>

static const char stable_folder[] = "/dev/serial/by-id";

void
rw_serial_port_free (RwSerialPort *self)
{
  if (self == NULL)
    return;
  g_free (self->name);
  g_free (self->stable_name);
  g_free (self->description);
  g_free (self);
}

/* The link below /dev/serial/by-id that leads to the device, or its own name. (transfer full) */
static char *
find_stable_name (const char *device)
{
  g_autoptr (GDir) folder = g_dir_open (stable_folder, 0, NULL);
  const char *entry;

  while (folder != NULL && (entry = g_dir_read_name (folder)) != NULL)
    {
      g_autofree char *path = g_build_filename (stable_folder, entry, NULL);
      char *target = realpath (path, NULL);
      const gboolean same = g_strcmp0 (target, device) == 0;

      free (target);
      if (same)
        return g_steal_pointer (&path);
    }
  return g_strdup (device);
}

static char *
describe (const struct sp_port *port)
{
  const char *description = sp_get_port_description (port);

  if (description != NULL && *description != '\0')
    return g_utf8_make_valid (description, -1);
  switch (sp_get_port_transport (port))
    {
    case SP_TRANSPORT_USB:
      return g_strdup (_ ("USB adapter"));
    case SP_TRANSPORT_BLUETOOTH:
      return g_strdup (_ ("Bluetooth port"));
    case SP_TRANSPORT_NATIVE:
    default:
      return g_strdup (_ ("Serial port"));
    }
}

static gboolean
is_plugged (const RwSerialPort *port)
{
  return !g_str_has_prefix (port->name, "/dev/ttyS");
}

/* What can be plugged in before the ports that are built in, then by name. */
static int
compare (gconstpointer a,
         gconstpointer b)
{
  const RwSerialPort *first = *(const RwSerialPort *const *) a;
  const RwSerialPort *second = *(const RwSerialPort *const *) b;

  if (is_plugged (first) != is_plugged (second))
    return is_plugged (first) ? -1 : 1;
  return g_strcmp0 (first->name, second->name);
}

GPtrArray *
rw_serial_list_ports (void)
{
  GPtrArray *ports = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_serial_port_free);
  struct sp_port **list;

  if (sp_list_ports (&list) != SP_OK)
    return ports;
  for (guint i = 0; list[i] != NULL; i++)
    {
      RwSerialPort *port = g_new0 (RwSerialPort, 1);

      port->name = g_strdup (sp_get_port_name (list[i]));
      port->stable_name = find_stable_name (port->name);
      port->description = describe (list[i]);
      g_ptr_array_add (ports, port);
    }
  sp_free_port_list (list);
  g_ptr_array_sort (ports, compare);
  return ports;
}
