/* rw-log-options.c: options of the commands, and what is said when they are wrong.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-log-options.h"

#include <glib/gi18n-lib.h>

#include "rw-log-io.h"

static char *
dup_program (const char *command)
{
  return g_strconcat ("railwright-log", command != NULL ? " " : NULL, command, NULL);
}

int
rw_log_wrong_usage (const char *command,
                    const char *message)
{
  g_autofree char *program = dup_program (command);

  /* Translators: the command; what is wrong; the command again. */
  rw_log_complain (_ ("%s: %s. Try “%s --help”."), program, message, program);
  return RW_LOG_USAGE;
}

gboolean
rw_log_options_parse (const char         *command,
                      const char         *arguments,
                      const char         *summary,
                      const GOptionEntry *entries,
                      int                *argc,
                      char             ***argv)
{
  g_autofree char *program = dup_program (command);
  g_autoptr (GOptionContext) context = g_option_context_new (_ (arguments));
  g_autoptr (GError) error = NULL;

  g_set_prgname (program);
  g_option_context_set_summary (context, summary);
  g_option_context_set_strict_posix (context, command == NULL);
  g_option_context_add_main_entries (context, entries, GETTEXT_PACKAGE);
  if (g_option_context_parse (context, argc, argv, &error))
    return TRUE;
  rw_log_wrong_usage (command, error->message);
  return FALSE;
}

const char *
rw_log_options_one_file (const char *command,
                         char      **words)
{
  const guint n = words != NULL ? g_strv_length (words) : 0;

  if (n == 1)
    return words[0];
  rw_log_wrong_usage (command, n == 0 ? _ ("a FILE is missing") : _ ("only one FILE is taken"));
  return NULL;
}
