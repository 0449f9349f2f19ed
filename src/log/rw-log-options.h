/* rw-log-options.h: options of the commands, and what is said when they are wrong.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-log.h"

G_BEGIN_DECLS

/* Parses the options of @command (NULL: those before a command, which stop at the first word).
 * @arguments: untranslated words for what follows the options. @summary: translated. @entries:
 * their targets are filled in. --help is answered and ends the program with status 0. FALSE:
 * wrong usage, which has been said. */
gboolean rw_log_options_parse (const char         *command,
                               const char         *arguments,
                               const char         *summary,
                               const GOptionEntry *entries,
                               int                *argc,
                               char             ***argv) G_GNUC_WARN_UNUSED_RESULT;

/* Says in one line what is wrong, and where help is. Returns RW_LOG_USAGE. */
int rw_log_wrong_usage (const char *command, const char *message);

/* The one FILE among the words behind the options. NULL, and wrong usage said, when there is none
 * or more. Borrowed. */
const char *rw_log_options_one_file (const char *command, char **words);

G_END_DECLS
