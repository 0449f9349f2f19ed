/* rw-log-picture.c: the picture that a command is to write: its options, and the writing.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-log-picture.h"

#include <glib/gi18n-lib.h>

#include "rw-log-io.h"
#include "rw-log-options.h"

void
rw_log_picture_clear (RwLogPicture *self)
{
  g_clear_pointer (&self->as, g_free);
  g_clear_pointer (&self->chart, g_free);
  g_clear_pointer (&self->out, g_free);
}

int
rw_log_picture_check (const RwLogPicture *self,
                      const char         *command,
                      char              **files)
{
  if (self->out == NULL)
    return rw_log_wrong_usage (command, _ ("-o OUT is missing: where to write (“-” is standard output)"));
  if (self->chart != NULL && !g_str_equal (self->chart, "time") && !g_str_equal (self->chart, "trim"))
    return rw_log_wrong_usage (command, _ ("--chart must be time or trim"));
  for (char **file = files; *file != NULL; file++)
    if (rw_log_same_file (*file, self->out))
      return rw_log_wrong_usage (command, _ ("OUT is the session file itself, which is never overwritten"));
  return RW_LOG_DONE;
}

gboolean
rw_log_picture_is_trim (const RwLogPicture *self)
{
  return g_strcmp0 (self->chart, "trim") == 0;
}

int
rw_log_picture_write (const RwLogPicture *self,
                      GBytes             *bytes,
                      const GError       *error)
{
  if (bytes != NULL)
    return rw_log_write (self->out, g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
  rw_log_complain ("%s", error->message);
  return RW_LOG_DAMAGED;
}
