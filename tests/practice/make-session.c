/* make-session.c: runs a script at the practice cabinet and writes the session that comes of
 * it. SPDX-License-Identifier: GPL-3.0-or-later
 *
 * make-session SCRIPT OUTPUT [PROFILES-FOLDER]
 */
#include "config.h"

#include <locale.h>

#include "rw-journal.h"
#include "rw-practice-script.h"

int
main (int    argc,
      char **argv)
{
  g_autoptr (GError) error = NULL;

  setlocale (LC_ALL, "");
  if (argc != 3 && argc != 4)
    {
      g_printerr ("usage: make-session SCRIPT OUTPUT [PROFILES-FOLDER]\n");
      return 2;
    }

  g_autoptr (RwSession)
      session = rw_practice_script_run_file (argv[1], argc == 4 ? argv[3] : NULL, &error);

  if (session == NULL || !rw_journal_copy (session, argv[2], &error))
    {
      g_printerr ("%s\n", error->message);
      return 1;
    }
  return 0;
}
