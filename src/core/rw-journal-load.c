/* rw-journal-load.c: the bytes of a file that may be anything.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-journal-reader.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <string.h>
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

/* A step of reading, bytes: of a whole file, and of a first line, which is some thousand long. */
enum
{
  STEP = 65536,
  LINE_STEP = 8192,
};

/* Up to @most + 1 bytes into @bytes; of a line no more once its end was read. */
static gboolean
read_all (int         fd,
          gsize       most,
          gboolean    line,
          GByteArray *bytes)
{
  guint8 block[STEP];

  while (bytes->len <= most)
    {
      const ssize_t got = read (fd, block, MIN ((gsize) (line ? LINE_STEP : STEP), most + 1 - bytes->len));

      if (got < 0 && errno == EINTR)
        continue;
      if (got <= 0)
        return got == 0;
      g_byte_array_append (bytes, block, (guint) got);
      if (line && memchr (block, '\n', (gsize) got) != NULL)
        return TRUE;
    }
  return TRUE;
}

/* Closed by a 0 that is not counted, so that an empty file is no failure. (transfer full) */
static char *
load (const char *path,
      gsize       most,
      gboolean    line,
      gsize      *length,
      GError    **error)
{
  /* Not mapped: a file cut short while it is read would kill us. */
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  const int fd = open_plain (path, error);

  if (fd < 0)
    return NULL;

  const gboolean done = read_all (fd, most, line, bytes);
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
  *length = bytes->len;
  g_byte_array_append (bytes, (const guint8 *) "", 1);
  return (char *) g_byte_array_free (g_steal_pointer (&bytes), FALSE);
}

char *
rw_journal_load_bytes (const char *path,
                       gsize       most,
                       gsize      *length,
                       gboolean   *whole,
                       GError    **error)
{
  char *tainted = load (path, most, FALSE, length, error);

  if (tainted == NULL)
    return NULL;
  *whole = *length <= most;
  *length = MIN (*length, most);
  return tainted;
}

char *
rw_journal_load_first_line (const char *path,
                            gsize       most,
                            gsize      *length,
                            GError    **error)
{
  char *tainted = load (path, most, TRUE, length, error);
  const char *end = tainted != NULL ? memchr (tainted, '\n', *length) : NULL;

  if (end != NULL)
    *length = (gsize) (end - tainted) + 1;
  return tainted;
}
