/* rw-journal-load.c: the bytes of a file that may be anything.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-journal-reader.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <sys/stat.h>
#include <unistd.h>

#include "rw-plain-text.h"

/* A pipe never ends and a device may do anything: only a file is opened, and opening waits for nobody. */
static int
open_plain (const char *path,
            GError    **error)
{
  struct stat found;
  const int fd = open (path, O_RDONLY | O_NONBLOCK | O_NOCTTY | O_CLOEXEC);
  g_autofree char *name = rw_plain_text_dup_path (path);

  if (fd >= 0 && fstat (fd, &found) == 0 && S_ISREG (found.st_mode))
    return fd;
  if (fd < 0)
    g_set_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_READ,
                 /* Translators: file name, what the system says. */
                 _ ("Cannot read %s: %s. Choose another file, or ask for the right to read it."), name,
                 g_strerror (errno));
  else
    g_set_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_READ,
                 _ ("Cannot read %s: it is a folder, a pipe or a device. Choose a file."), name);
  if (fd >= 0)
    close (fd);
  return -1;
}

/* Up to @most + 1 bytes into @bytes. */
static gboolean
read_all (int         fd,
          gsize       most,
          GByteArray *bytes)
{
  guint8 block[65536];

  while (bytes->len <= most)
    {
      const ssize_t got = read (fd, block, MIN (sizeof block, most + 1 - bytes->len));

      if (got < 0 && errno == EINTR)
        continue;
      if (got <= 0)
        return got == 0;
      g_byte_array_append (bytes, block, (guint) got);
    }
  return TRUE;
}

char *
rw_journal_load_bytes (const char *path,
                       gsize       most,
                       gsize      *length,
                       gboolean   *whole,
                       GError    **error)
{
  /* Not mapped: a file cut short while it is read would kill us. */
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  const int fd = open_plain (path, error);

  if (fd < 0)
    return NULL;

  const gboolean done = read_all (fd, most, bytes);
  const int code = errno;

  close (fd);
  if (!done)
    {
      g_autofree char *name = rw_plain_text_dup_path (path);

      g_set_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_READ,
                   _ ("Cannot read %s: %s. Choose another file, or ask for the right to read it."), name,
                   g_strerror (code));
      return NULL;
    }
  *whole = bytes->len <= most;
  *length = MIN (bytes->len, most);
  g_byte_array_append (bytes, (const guint8 *) "", 1); /* an empty file is no failure */
  return (char *) g_byte_array_free (g_steal_pointer (&bytes), FALSE);
}
