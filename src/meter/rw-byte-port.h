/* rw-byte-port.h: something that bytes come from and go to, with a file descriptor to wait on.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Used by one thread at a time. A kind of port is one RwBytePortClass; its own struct begins
 * with an RwBytePort.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  RW_PORT_ERROR_NOT_THERE, /* no such port, or it went away */
  RW_PORT_ERROR_REFUSED,   /* there, but not for us: permission, or in use */
  RW_PORT_ERROR_FAILED     /* opened, but something did not work, such as a setting */
} RwPortError;
#define RW_PORT_ERROR (rw_port_error_quark ())
GQuark rw_port_error_quark (void);

typedef struct _RwBytePort RwBytePort;

typedef struct
{
  gboolean (*open) (RwBytePort *self, GError **error);
  int (*get_fd) (RwBytePort *self);
  /* What is there, without waiting; 0 when nothing is. −1: it failed. */
  gssize (*read) (RwBytePort *self, guint8 *bytes, gsize n);
  /* All of a short command, or FALSE. */
  gboolean (*write) (RwBytePort *self, const char *text, gsize n);
  /* Throws away what came in and was not read. */
  void (*drop_input) (RwBytePort *self);
  /* Whether the port still exists, for those whose descriptor does not tell. */
  gboolean (*is_there) (RwBytePort *self);
  void (*close) (RwBytePort *self);
  void (*free) (RwBytePort *self);
} RwBytePortClass;

struct _RwBytePort
{
  const RwBytePortClass *class;
  char                  *name; /* for people: "ttyUSB0" */
};

G_END_DECLS
