/* rw-journal-file.c: the file under a journal.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-journal-file.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include "rw-journal-reader.h"
#include "rw-plain-text.h"

static gboolean
fail (GError    **error,
      const char *path,
      int         code)
{
  const char *advice = code == EEXIST ? _ ("There is a file of that name already. Choose another name.")
                       : code == ENOSPC || code == EDQUOT || code == EFBIG
                           ? _ ("The disk is full. Free some space, or save in another place.")
                           : _ ("Nothing is lost so far. Bring the place back, or save in another one.");

  g_autofree char *name = rw_plain_text_dup_path (path);

  g_set_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_WRITE,
               /* Translators: path, what the system says, what to do. */
               _ ("Cannot write %s: %s. %s"), name, g_strerror (code), advice);
  return FALSE;
}

static gboolean
take_lock (RwJournalFile *self,
           GError       **error)
{
  if (flock (self->fd, LOCK_EX | LOCK_NB) == 0 || errno != EWOULDBLOCK)
    return TRUE; /* a file system without locks is no reason not to write */

  g_autofree char *name = rw_plain_text_dup_path (self->path);

  g_set_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_LOCKED,
               _ ("%s is being written by another window or program. Close it there, or open it as a replay."), name);
  return FALSE;
}

/* A new name in a folder is safe only once the folder is on disk too. */
static void
sync_folder (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);
  const int fd = open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);

  if (fd < 0)
    return;
  fsync (fd);
  close (fd);
}

static int
open_new (const char *path)
{
  return open (path, O_RDWR | O_CREAT | O_EXCL | O_APPEND | O_CLOEXEC, 0644);
}

gboolean
rw_journal_file_create (RwJournalFile *self,
                        const char    *path,
                        GError       **error)
{
  g_autofree char *folder = g_path_get_dirname (path);

  *self = (RwJournalFile){ .fd = -1 };
  if (g_mkdir_with_parents (folder, 0755) != 0)
    return fail (error, folder, errno);
  self->fd = open_new (path);
  if (self->fd < 0)
    return fail (error, path, errno);
  self->path = g_strdup (path);
  if (!take_lock (self, error))
    {
      rw_journal_file_close (self);
      return FALSE;
    }
  sync_folder (path);
  return TRUE;
}

gboolean
rw_journal_file_open (RwJournalFile *self,
                      const char    *path,
                      GError       **error)
{
  *self = (RwJournalFile){ .fd = open (path, O_RDWR | O_APPEND | O_CLOEXEC) };
  if (self->fd < 0)
    return fail (error, path, errno);
  self->path = g_strdup (path);
  if (take_lock (self, error))
    return TRUE;
  rw_journal_file_close (self);
  return FALSE;
}

static int
write_all (int         fd,
           const char *bytes,
           gsize       length)
{
  while (length > 0)
    {
      const ssize_t done = write (fd, bytes, length);

      if (done < 0 && errno == EINTR)
        continue;
      if (done < 0)
        return errno;
      if (done == 0)
        return ENOSPC;
      bytes += done;
      length -= (gsize) done;
    }
  return 0;
}

/* Is what the path names still the file we write? */
static gboolean
is_in_place (RwJournalFile *self)
{
  struct stat ours, theirs;

  return fstat (self->fd, &ours) == 0 && stat (self->path, &theirs) == 0
         && ours.st_ino == theirs.st_ino && ours.st_dev == theirs.st_dev;
}

static int
copy_good_part (RwJournalFile *self,
                int            to)
{
  char block[65536];

  for (goffset at = 0; at < self->good_end;)
    {
      const gsize want = (gsize) MIN ((goffset) sizeof block, self->good_end - at);
      const ssize_t got = pread (self->fd, block, want, at);

      if (got <= 0)
        return got < 0 ? errno : EIO;

      const int code = write_all (to, block, (gsize) got);

      if (code != 0)
        return code;
      at += got;
    }
  return fdatasync (to) == 0 ? 0 : errno;
}

/* The file was removed or its folder went away; the open descriptor still holds every byte. */
static int
make_again (RwJournalFile *self)
{
  const int fd = open_new (self->path);

  if (fd < 0)
    return errno;
  flock (fd, LOCK_EX | LOCK_NB);

  const int code = copy_good_part (self, fd);

  if (code != 0)
    {
      close (fd);
      g_unlink (self->path);
      return code;
    }
  close (self->fd);
  self->fd = fd;
  sync_folder (self->path);
  return 0;
}

/* After a write that failed half-way: nothing may stay of it, or the next line would be torn into it. */
static void
cut_back (RwJournalFile *self)
{
  struct stat now;

  if (ftruncate (self->fd, self->good_end) == 0)
    return;
  if (fstat (self->fd, &now) == 0 && now.st_size > self->good_end)
    {
      self->good_end = now.st_size;
      self->needs_newline = TRUE;
    }
}

void
rw_journal_file_resume (RwJournalFile *self,
                        goffset        good_end,
                        gboolean       needs_newline)
{
  self->good_end = good_end;
  self->needs_newline = needs_newline;
  cut_back (self);
}

gboolean
rw_journal_file_append (RwJournalFile *self,
                        const char    *bytes,
                        gsize          length,
                        GError       **error)
{
  int code = is_in_place (self) ? 0 : make_again (self);

  if (code != 0)
    return fail (error, self->path, code);
  if (self->needs_newline)
    code = write_all (self->fd, "\n", 1);
  if (code == 0)
    code = write_all (self->fd, bytes, length);
  if (code == 0 && fdatasync (self->fd) != 0)
    code = errno;
  if (code != 0)
    {
      cut_back (self);
      return fail (error, self->path, code);
    }

  const goffset before = self->good_end;

  self->good_end += (goffset) length + self->needs_newline;
  code = is_in_place (self) ? 0 : make_again (self);
  if (code != 0)
    {
      /* The bytes went into a file that nobody can open any more: they are still to be written. */
      self->good_end = before;
      cut_back (self);
      return fail (error, self->path, code);
    }
  self->needs_newline = FALSE;
  return TRUE;
}

void
rw_journal_file_close (RwJournalFile *self)
{
  if (self->fd >= 0)
    close (self->fd);
  self->fd = -1;
  g_clear_pointer (&self->path, g_free);
}
