/* rw-serial-byte-port.c: a serial port as a byte port, by libserialport.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * libserialport takes device names only, so a link such as those below /dev/serial/by-id is
 * followed here.
 */
#include "config.h"

#include "rw-serial-byte-port.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <libserialport.h>
#include <stdlib.h>
#include <unistd.h>

/* A command is some twenty bytes: the kernel takes it at once, unless the line is stuck. */
static const guint write_wait_ms = 200;

typedef struct
{
  RwBytePort       parent;
  char            *path;
  char            *device; /* what path led to; NULL while closed */
  RwSerialSettings settings;
  struct sp_port  *port;   /* NULL while closed */
} RwSerialBytePort;

static RwSerialBytePort *
get_self (RwBytePort *port)
{
  return (RwSerialBytePort *) port;
}

/* --- opening ------------------------------------------------------------------------- */

static gboolean
explain (RwSerialBytePort *self,
         int               code,
         GError          **error)
{
  const char *name = self->parent.name;

  if (code == ENOENT || code == ENODEV || code == ENXIO)
    g_set_error (error, RW_PORT_ERROR, RW_PORT_ERROR_NOT_THERE,
                 _ ("There is no port “%s”. Plug the cable in, or choose another port."), name);
  else if (code == EACCES || code == EPERM)
    g_set_error (error, RW_PORT_ERROR, RW_PORT_ERROR_REFUSED,
                 /* Translators: dialout is the name of a group of users; keep it. */
                 _ ("You may not open “%s”. Join the group that owns it (often “dialout”), then "
                    "log in again."),
                 name);
  else if (code == EBUSY)
    g_set_error (error, RW_PORT_ERROR, RW_PORT_ERROR_REFUSED,
                 _ ("“%s” is used by another program. Close that one first."), name);
  else
    g_set_error (error, RW_PORT_ERROR, RW_PORT_ERROR_FAILED,
                 _ ("“%s” could not be opened: %s. Choose another port or other settings."),
                 name, g_strerror (code));
  return FALSE;
}

static int
last_code (enum sp_return result)
{
  if (result == SP_ERR_FAIL)
    return sp_last_error_code ();
  return result == SP_ERR_MEM ? ENOMEM : result == SP_ERR_SUPP ? ENOTTY : ENODEV;
}

static gboolean
find_port (RwSerialBytePort *self,
           GError          **error)
{
  char *device = realpath (self->path, NULL);
  enum sp_return result;

  if (device == NULL)
    return explain (self, errno, error);
  g_free (self->device);
  self->device = g_strdup (device);
  free (device);
  result = sp_get_port_by_name (self->device, &self->port);
  if (result != SP_OK)
    return explain (self, last_code (result), error);
  return TRUE;
}

static gboolean
set_line (RwSerialBytePort *self,
          GError          **error)
{
  static const enum sp_parity parities[RW_N_PARITIES]
      = { SP_PARITY_NONE, SP_PARITY_ODD, SP_PARITY_EVEN };
  const RwSerialSettings *settings = &self->settings;
  struct sp_port *port = self->port;

  /* The speed last: it is what drivers refuse, and the rest is then already right. */
  if (sp_set_flowcontrol (port, SP_FLOWCONTROL_NONE) == SP_OK
      && sp_set_bits (port, (int) settings->bits) == SP_OK
      && sp_set_parity (port, parities[settings->parity]) == SP_OK
      && sp_set_stopbits (port, (int) settings->stop_bits) == SP_OK
      && sp_set_dtr (port, settings->dtr ? SP_DTR_ON : SP_DTR_OFF) == SP_OK
      && sp_set_rts (port, settings->rts ? SP_RTS_ON : SP_RTS_OFF) == SP_OK
      && sp_set_baudrate (port, (int) settings->baud) == SP_OK)
    return TRUE;
  g_set_error (error, RW_PORT_ERROR, RW_PORT_ERROR_FAILED,
               _ ("“%s” does not take these line settings (%u baud, %u data bits). Choose others."),
               self->parent.name, settings->baud, settings->bits);
  return FALSE;
}

static void
serial_close (RwBytePort *port)
{
  RwSerialBytePort *self = get_self (port);

  if (self->port == NULL)
    return;
  /* What is still to be sent would make the close wait for it. */
  sp_flush (self->port, SP_BUF_OUTPUT);
  sp_close (self->port);
  g_clear_pointer (&self->port, sp_free_port);
}

static gboolean
serial_open (RwBytePort *port,
             GError    **error)
{
  RwSerialBytePort *self = get_self (port);
  enum sp_return result;

  if (!find_port (self, error))
    return FALSE;
  result = sp_open (self->port, SP_MODE_READ_WRITE);
  if (result != SP_OK)
    {
      const int code = last_code (result);

      g_clear_pointer (&self->port, sp_free_port);
      return explain (self, code, error);
    }
  if (set_line (self, error))
    return TRUE;
  serial_close (port);
  return FALSE;
}

/* --- open ---------------------------------------------------------------------------- */

static int
serial_get_fd (RwBytePort *port)
{
  int fd = -1;

  return sp_get_port_handle (get_self (port)->port, &fd) == SP_OK ? fd : -1;
}

static gssize
serial_read (RwBytePort *port,
             guint8     *bytes,
             gsize       n)
{
  const enum sp_return result = sp_nonblocking_read (get_self (port)->port, bytes, n);

  return result < 0 ? -1 : (gssize) result;
}

static gboolean
serial_write (RwBytePort *port,
              const char *text,
              gsize       n)
{
  const enum sp_return result = sp_blocking_write (get_self (port)->port, text, n, write_wait_ms);

  return result >= 0 && (gsize) result == n;
}

static void
serial_drop_input (RwBytePort *port)
{
  sp_flush (get_self (port)->port, SP_BUF_INPUT);
}

static gboolean
serial_is_there (RwBytePort *port)
{
  return access (get_self (port)->device, F_OK) == 0;
}

static void
serial_free (RwBytePort *port)
{
  RwSerialBytePort *self = get_self (port);

  serial_close (port);
  g_free (self->parent.name);
  g_free (self->path);
  g_free (self->device);
  g_free (self);
}

static const RwBytePortClass serial_class = {
  .open = serial_open,
  .get_fd = serial_get_fd,
  .read = serial_read,
  .write = serial_write,
  .drop_input = serial_drop_input,
  .is_there = serial_is_there,
  .close = serial_close,
  .free = serial_free,
};

RwBytePort *
rw_serial_byte_port_new (const char             *path,
                         const RwSerialSettings *settings)
{
  RwSerialBytePort *self = g_new0 (RwSerialBytePort, 1);

  self->parent.class = &serial_class;
  self->parent.name = g_path_get_basename (path);
  self->path = g_strdup (path);
  self->settings = *settings;
  return &self->parent;
}
