/* pty-cable.c: for tests: a serial cable made of a pseudo-terminal.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "pty-cable.h"

#include <fcntl.h>
#include <glib/gstdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

PtyCable *
pty_cable_new (void)
{
  PtyCable *self = g_new0 (PtyCable, 1);
  g_autoptr (GError) error = NULL;

  self->folder = g_dir_make_tmp ("railwright-pty-XXXXXX", &error);
  g_assert_no_error (error);
  self->port = g_build_filename (self->folder, "port", NULL);
  self->meter = -1;
  return self;
}

void
pty_cable_free (PtyCable *self)
{
  pty_cable_unplug (self);
  g_rmdir (self->folder);
  g_free (self->folder);
  g_free (self->port);
  g_free (self);
}

void
pty_cable_plug (PtyCable *self)
{
  self->meter = posix_openpt (O_RDWR | O_NOCTTY | O_CLOEXEC);
  g_assert_cmpint (self->meter, >=, 0);
  g_assert_cmpint (grantpt (self->meter), ==, 0);
  g_assert_cmpint (unlockpt (self->meter), ==, 0);
  g_assert_cmpint (symlink (ptsname (self->meter), self->port), ==, 0);
}

void
pty_cable_unplug (PtyCable *self)
{
  if (self->meter < 0)
    return;
  g_assert_cmpint (g_unlink (self->port), ==, 0);
  close (self->meter);
  self->meter = -1;
}

void
pty_cable_send (PtyCable   *self,
                const char *text)
{
  gsize left = strlen (text);

  while (left > 0)
    {
      const gssize n = write (self->meter, text, left);

      g_assert_cmpint (n, >, 0);
      text += n;
      left -= (gsize) n;
    }
}
