/* pty-shim.c: for tests: preloaded, it makes a pseudo-terminal good enough for libserialport.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * libserialport asks three things of a port that a pseudo-terminal cannot answer. Its device
 * must stand below /sys/class/tty: here /dev/pts/N borrows the entry of ptmx. It must have
 * modem lines (TIOCM…): here a request that the kernel refuses for a terminal succeeds, with
 * DSR and CTS on. And it must take seven data bits and a parity, which the C library checks:
 * here a refusal by that check succeeds, and the bytes still come whole.
 */
#include <dlfcn.h>
#include <errno.h>
#include <stdarg.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/stat.h>
#include <termios.h>
#include <unistd.h>

#define WANTED "/sys/class/tty/pts/"
#define LENT "/sys/class/tty/ptmx"

int __lxstat (int version, const char *path, struct stat *out);

static const char *
lend (const char *path)
{
  return path != NULL && strncmp (path, WANTED, strlen (WANTED)) == 0 ? LENT : path;
}

/* The function that would have been called without us. */
static void *
next (const char *name)
{
  return dlsym (RTLD_NEXT, name);
}

int
lstat (const char *path, struct stat *out)
{
  static int (*real) (const char *, struct stat *);

  if (real == NULL)
    real = (int (*) (const char *, struct stat *)) next ("lstat");
  return real (lend (path), out);
}

/* What a library built before glibc 2.33 calls for the same. */
int
__lxstat (int version, const char *path, struct stat *out)
{
  static int (*real) (int, const char *, struct stat *);

  if (real == NULL)
    real = (int (*) (int, const char *, struct stat *)) next ("__lxstat");
  return real (version, lend (path), out);
}

ssize_t
readlink (const char *path, char *buffer, size_t size)
{
  static ssize_t (*real) (const char *, char *, size_t);

  if (real == NULL)
    real = (ssize_t (*) (const char *, char *, size_t)) next ("readlink");
  return real (lend (path), buffer, size);
}

static int
asks_modem_lines (unsigned long request)
{
  return request == TIOCMGET || request == TIOCMSET || request == TIOCMBIS || request == TIOCMBIC;
}

int
ioctl (int fd, unsigned long request, ...)
{
  static int (*real) (int, unsigned long, ...);
  va_list rest;
  void *argument;
  int result;

  va_start (rest, request);
  argument = va_arg (rest, void *);
  va_end (rest);
  if (real == NULL)
    real = (int (*) (int, unsigned long, ...)) next ("ioctl");
  result = real (fd, request, argument);
  if (result == 0 || !asks_modem_lines (request) || !isatty (fd))
    return result;
  if (request == TIOCMGET)
    *(int *) argument = TIOCM_DSR | TIOCM_CTS;
  errno = 0;
  return 0;
}

int
tcsetattr (int fd, int when, const struct termios *line)
{
  static int (*real) (int, int, const struct termios *);
  int result;

  if (real == NULL)
    real = (int (*) (int, int, const struct termios *)) next ("tcsetattr");
  result = real (fd, when, line);
  if (result == 0 || errno != EINVAL || !isatty (fd))
    return result;
  errno = 0;
  return 0;
}
