/* rw-log-io.c: what the commands write.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-log-io.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <locale.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

static void
put_out (const char *text)
{
  fputs (text, stdout);
}

static void
put_err (const char *text)
{
  fputs (text, stderr);
}

void
rw_log_io_begin (void)
{
  g_set_print_handler (put_out);
  g_set_printerr_handler (put_err);
}

void
rw_log_complain (const char *format,
                 ...)
{
  va_list args;

  va_start (args, format);
  g_autofree char *line = g_strdup_vprintf (format, args);
  va_end (args);
  fprintf (stderr, "%s\n", line);
}

static int
put_bytes (FILE       *stream,
           const char *name,
           const char *bytes,
           gsize       length)
{
  if (fwrite (bytes, 1, length, stream) == length && fflush (stream) == 0)
    return RW_LOG_DONE;

  const int why = errno;

  /* Translators: name of a file, what the system says. */
  rw_log_complain (_ ("Cannot write to %s: %s"), name, g_strerror (why));
  return RW_LOG_DAMAGED;
}

int
rw_log_print (const char *bytes,
              gssize      length)
{
  return put_bytes (stdout, _ ("standard output"), bytes,
                    length < 0 ? strlen (bytes) : (gsize) length);
}

void
rw_log_plain_numbers (void)
{
  setlocale (LC_NUMERIC, "C");
}

gboolean
rw_log_same_file (const char *a,
                  const char *b)
{
  GStatBuf first, second;

  return g_stat (a, &first) == 0 && g_stat (b, &second) == 0 && first.st_dev == second.st_dev
         && first.st_ino == second.st_ino;
}

/* A pipe or a device cannot be replaced as a whole. */
static int
write_straight (const char *path,
                const char *bytes,
                gsize       length)
{
  FILE *stream = g_fopen (path, "wb");

  if (stream == NULL)
    {
      rw_log_complain (_ ("Cannot write to %s: %s"), path, g_strerror (errno));
      return RW_LOG_DAMAGED;
    }

  int status = put_bytes (stream, path, bytes, length);

  if (fclose (stream) != 0 && status == RW_LOG_DONE)
    {
      rw_log_complain (_ ("Cannot write to %s: %s"), path, g_strerror (errno));
      status = RW_LOG_DAMAGED;
    }
  return status;
}

int
rw_log_write (const char *path,
              const char *bytes,
              gsize       length)
{
  g_autoptr (GError) error = NULL;

  if (g_str_equal (path, "-"))
    return rw_log_print (bytes, (gssize) length);
  if (g_file_test (path, G_FILE_TEST_EXISTS) && !g_file_test (path, G_FILE_TEST_IS_REGULAR)
      && !g_file_test (path, G_FILE_TEST_IS_DIR))
    return write_straight (path, bytes, length);
  if (g_file_set_contents_full (path, bytes, (gssize) length, G_FILE_SET_CONTENTS_CONSISTENT,
                                0666, &error))
    return RW_LOG_DONE;
  rw_log_complain ("%s", error->message);
  return RW_LOG_DAMAGED;
}
