/* fuzz.c: what the fuzz targets share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "fuzz.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* A warning is a broken promise too. GLib itself would end in a breakpoint trap, which libFuzzer
 * does not catch. */
static void
log_cb (const char    *domain,
        GLogLevelFlags level,
        const char    *message,
        gpointer       data)
{
  if (level & (G_LOG_LEVEL_ERROR | G_LOG_LEVEL_CRITICAL | G_LOG_LEVEL_WARNING))
    fuzz_fail ("%s: %s", domain != NULL ? domain : "log", message);
}

int
LLVMFuzzerInitialize (int    *argc,
                      char ***argv)
{
  g_log_set_default_handler (log_cb, NULL);
  return 0;
}

void
fuzz_fail (const char *format,
           ...)
{
  va_list args;

  va_start (args, format);
  vfprintf (stderr, format, args);
  va_end (args);
  fputc ('\n', stderr);
  abort ();
}

uint8_t *
fuzz_alone (const uint8_t *data,
            size_t         size)
{
  uint8_t *copy = malloc (MAX (size, 1));

  if (copy == NULL)
    abort ();
  if (size > 0)
    memcpy (copy, data, size);
  return copy;
}

void
fuzz_expect_text (const char *text)
{
  if (text == NULL || *text == '\0')
    fuzz_fail ("a message says nothing");
  if (!g_utf8_validate (text, -1, NULL))
    fuzz_fail ("a message is not UTF-8: %s", text);
}
