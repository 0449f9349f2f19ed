/* rw-log.h: the command-line companion: finds the command and runs it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The exit status of every command. */
typedef enum
{
  RW_LOG_DONE = 0,    /* all was read and done */
  RW_LOG_DAMAGED = 1, /* a file or the input is damaged, not understood, or could not be read
                         or written */
  RW_LOG_USAGE = 2,   /* wrong usage */
} RwLogStatus;

/* Runs what the arguments ask for and returns the exit status. The locale is set up already. */
int rw_log_run (int argc, char **argv);

/* The commands. argv[0] is the command's own name; each returns an RwLogStatus. */
int rw_log_summary (int argc, char **argv);
int rw_log_plan (int argc, char **argv);
int rw_log_export (int argc, char **argv);
int rw_log_compare (int argc, char **argv);
int rw_log_decode (int argc, char **argv);
int rw_log_verify (int argc, char **argv);

G_END_DECLS
