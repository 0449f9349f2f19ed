/* rw-byte-port.h: something that bytes come from and go to, with a file descriptor to wait on.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Used by one thread at a time, but for cancel (). A kind of port is one RwBytePortClass; its
 * own struct begins with an RwBytePort. What is zero in the class has a default.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  RW_PORT_ERROR_NOT_THERE, /* no such port or host, or it went away */
  RW_PORT_ERROR_REFUSED,   /* there, but not for us: permission, in use, nobody listens */
  RW_PORT_ERROR_FAILED     /* something did not work, such as a setting; or no answer */
} RwPortError;
#define RW_PORT_ERROR (rw_port_error_quark ())
GQuark rw_port_error_quark (void);

typedef struct _RwBytePort RwBytePort;

typedef struct
{
  /* May take some seconds (a network). An RW_PORT_ERROR, or G_IO_ERROR_CANCELLED. */
  gboolean (*open) (RwBytePort *self, GError **error);
  int (*get_fd) (RwBytePort *self);
  /* What is there, without waiting; 0 when nothing is. −1: it failed or was hung up. */
  gssize (*read) (RwBytePort *self, guint8 *bytes, gsize n);
  /* All of a short command, or FALSE. */
  gboolean (*write) (RwBytePort *self, const char *text, gsize n);
  /* Throws away what came in and was not read. */
  void (*drop_input) (RwBytePort *self);
  /* Whether the port still exists, for those whose descriptor does not tell. */
  gboolean (*is_there) (RwBytePort *self);
  void (*close) (RwBytePort *self);
  void (*free) (RwBytePort *self);
  /* Nullable. From any thread, while the port lives: open () and write () that are under way
   * fail at once, and so does every later one. */
  void (*cancel) (RwBytePort *self);

  gboolean is_network;  /* what to tell people to look at: a network, else a cable */
  guint    torn_ms;     /* bytes that come so soon after open () may begin inside a frame; 0: 50 */
  guint    reopen_ms;   /* from one attempt to open to the next; 0: 500 */
} RwBytePortClass;

struct _RwBytePort
{
  const RwBytePortClass *class;
  char                  *name; /* for people: "ttyUSB0", "bench-box:5025" */
};

G_END_DECLS
