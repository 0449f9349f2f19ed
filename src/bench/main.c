/* main.c: sets up the language and runs the program.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib/gi18n.h>
#include <locale.h>

#include "rw-application.h"
#include "rw-paths.h"

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, rw_paths_get_locale_dir ());
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  g_set_application_name (_ ("Railwright"));

  g_autoptr (RwApplication) application = rw_application_new ();

  return g_application_run (G_APPLICATION (application), argc, argv);
}
