/* rw-line-buffer.c: cuts a stream of bytes into lines.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-line-buffer.h"

#include <string.h>

static gboolean
ends_line (guint8 byte)
{
  return byte == '\n' || byte == '\r';
}

/* Adds a piece without a line end. */
static void
hold (RwLineBuffer *self,
      const guint8 *piece,
      gsize         n)
{
  if (self->skipping || n == 0)
    return;
  if (n > RW_LINE_BUFFER_MAX - self->n)
    {
      self->too_long++;
      self->skipping = TRUE;
      self->n = 0;
      return;
    }
  memcpy (self->bytes + self->n, piece, n);
  self->n += n;
}

static void
finish (RwLineBuffer *self,
        RwLineFunc    callback,
        gpointer      data)
{
  const gsize n = self->n;

  self->skipping = FALSE;
  self->explained = FALSE;
  self->n = 0;
  if (n == 0)
    return;
  callback (self->bytes, n, data);
  if (self->explained)
    self->bytes_explained += n;
}

/* A line's end, or the second byte of one. */
static void
take_end (RwLineBuffer *self,
          guint8        byte,
          RwLineFunc    callback,
          gpointer      data)
{
  if (self->n == 0 && !self->skipping && self->explained && byte != self->end)
    {
      self->bytes_explained++;
      self->explained = FALSE;
      return;
    }
  finish (self, callback, data);
  self->bytes_explained += self->explained ? 1 : 0;
  self->end = byte;
}

void
rw_line_buffer_feed (RwLineBuffer *self,
                     const guint8 *tainted,
                     gsize         n,
                     RwLineFunc    callback,
                     gpointer      data)
{
  gsize begin = 0;

  for (gsize i = 0; i < n; i++)
    {
      if (!ends_line (tainted[i]))
        continue;
      hold (self, tainted + begin, i - begin);
      take_end (self, tainted[i], callback, data);
      begin = i + 1;
    }
  hold (self, tainted + begin, n - begin);
}

void
rw_line_buffer_explain (RwLineBuffer *self)
{
  self->explained = TRUE;
}

void
rw_line_buffer_end (RwLineBuffer *self,
                    RwLineFunc    callback,
                    gpointer      data)
{
  finish (self, callback, data);
}

void
rw_line_buffer_restart (RwLineBuffer *self,
                        gboolean      torn)
{
  self->n = 0;
  self->skipping = torn;
  self->explained = FALSE;
}
