/* rw-log-main.c: where railwright-log begins.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib.h>
#include <libintl.h>
#include <locale.h>

#include "rw-log.h"

int
main (int    argc,
      char **argv)
{
  const char *override = g_getenv ("RAILWRIGHT_LOCALE_DIR"); /* a build tree */

  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, override != NULL ? override : RW_LOCALEDIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  return rw_log_run (argc, argv);
}
