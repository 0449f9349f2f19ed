/* rw-line.c: text that may be anything, line by line.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-line.h"

#include <string.h>

gboolean
rw_line_next (RwLine     *self,
              const char *tainted,
              gsize       length)
{
  if (self->next >= length)
    return FALSE;
  self->offset = self->next;
  self->number++;
  self->tainted = tainted + self->offset;

  const char *newline = memchr (self->tainted, '\n', length - self->offset);

  self->ended = newline != NULL;
  self->length = self->ended ? (gsize) (newline - self->tainted) : length - self->offset;
  self->next = self->offset + self->length + (self->ended ? 1 : 0);
  if (self->ended && self->length > 0 && self->tainted[self->length - 1] == '\r')
    self->length--;
  return TRUE;
}

gboolean
rw_line_is_empty (const RwLine *self)
{
  for (gsize i = 0; i < self->length; i++)
    if (strchr (" \t\r", self->tainted[i]) == NULL || self->tainted[i] == '\0')
      return FALSE;
  return TRUE;
}

gsize
rw_line_skip_mark (const RwLine *self)
{
  return self->length >= 3 && memcmp (self->tainted, "\xEF\xBB\xBF", 3) == 0 ? 3 : 0;
}
