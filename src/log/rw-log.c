/* rw-log.c: the command-line companion: finds the command and runs it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Options before the command are ours (--help, --version); from the command on everything is the
 * command's.
 */
#include "config.h"

#include "rw-log.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "rw-log-io.h"
#include "rw-log-options.h"

typedef struct
{
  const char *name;
  const char *help; /* one line, untranslated */
  int (*run) (int    argc,
              char **argv);
} Command;

static const Command commands[] = {
  { "summary", N_ ("what a session shows"), rw_log_summary },
  { "plan", N_ ("the tree of next checks, from a session or from symptoms"), rw_log_plan },
  { "export", N_ ("a session as a table, JSON or a picture"), rw_log_export },
  { "compare", N_ ("what changed between two sessions of one cabinet"), rw_log_compare },
  { "decode", N_ ("readings from captured meter bytes on standard input"), rw_log_decode },
  { "verify", N_ ("reads a whole session and says what is damaged"), rw_log_verify },
};

static const Command *
find_command (const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    if (g_str_equal (commands[i].name, name))
      return &commands[i];
  return NULL;
}

static char *
list_commands (void)
{
  GString *list = g_string_new (_ ("Reads and tells sessions of Railwright without a display."));

  g_string_append_printf (list, "\n\n%s", _ ("Commands:"));
  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    g_string_append_printf (list, "\n  %-9s %s", commands[i].name, _ (commands[i].help));
  g_string_append_printf (list, "\n\n%s\n%s",
                          _ ("Exit status: 0 done; 1 the file or input is damaged or not "
                             "understood; 2 wrong usage."),
                          _ ("Every command has its own --help."));
  return g_string_free (list, FALSE);
}

int
rw_log_run (int    argc,
            char **argv)
{
  gboolean version = FALSE;
  const GOptionEntry entries[] = {
    { "version", 0, 0, G_OPTION_ARG_NONE, &version, N_ ("Say the version"), NULL },
    G_OPTION_ENTRY_NULL
  };
  g_autofree char *summary = list_commands ();

  rw_log_io_begin ();
  if (!rw_log_options_parse (NULL, N_ ("COMMAND …"), summary, entries, &argc, &argv))
    return RW_LOG_USAGE;
  if (version)
    return rw_log_print ("railwright-log " RW_VERSION "\n", -1);
  if (argc < 2)
    return rw_log_wrong_usage (NULL, _ ("a command is missing"));

  const Command *command = find_command (argv[1]);

  if (command == NULL)
    {
      g_autofree char *shown = g_filename_display_name (argv[1]);
      g_autofree char *message = g_strdup_printf (_ ("there is no command “%s”"), shown);

      return rw_log_wrong_usage (NULL, message);
    }
  return command->run (argc - 1, argv + 1);
}
