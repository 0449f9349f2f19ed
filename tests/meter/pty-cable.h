/* pty-cable.h: for tests: a serial cable made of a pseudo-terminal, with a fixed name for its port.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

typedef struct
{
  char *folder;
  char *port;   /* a link in folder: the port to open, whatever pseudo-terminal it is just now */
  int   meter;  /* the meter's end; −1 while unplugged */
} PtyCable;

/* Unplugged at first. */
PtyCable *pty_cable_new (void);
void      pty_cable_free (PtyCable *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (PtyCable, pty_cable_free)

void pty_cable_plug (PtyCable *self);
void pty_cable_unplug (PtyCable *self);

/* The meter sends; blocks while the line is full. */
void pty_cable_send (PtyCable *self, const char *text);
