/* rw-log-summary.c: railwright-log summary FILE [--json].
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "rw-log-file.h"
#include "rw-log-io.h"
#include "rw-log-options.h"
#include "rw-report-json.h"
#include "rw-report-text.h"

int
rw_log_summary (int    argc,
                char **argv)
{
  gboolean json = FALSE;
  g_auto (GStrv) words = NULL;
  const GOptionEntry entries[] = {
    { "json", 0, 0, G_OPTION_ARG_NONE, &json, N_ ("One JSON object instead of text"), NULL },
    { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &words, NULL, NULL },
    G_OPTION_ENTRY_NULL
  };

  if (!rw_log_options_parse ("summary", N_ ("FILE"),
                             _ ("Tells what a session shows: readings and verdicts, symptoms, "
                                "likely causes, and what to check next."),
                             entries, &argc, &argv))
    return RW_LOG_USAGE;

  const char *path = rw_log_options_one_file ("summary", words);

  if (path == NULL)
    return RW_LOG_USAGE;
  if (json)
    rw_log_plain_numbers ();

  g_autoptr (RwLogFile) file = rw_log_file_load (path);

  if (file == NULL)
    return RW_LOG_DAMAGED;

  g_autoptr (RwKnowledge) knowledge = rw_log_load_knowledge ();
  g_autoptr (RwSummary) summary = rw_summary_new_from_read (file->read, knowledge);
  g_autoptr (GString) out = json ? rw_report_json_summary (summary)
                                 : rw_report_text_summary (summary);
  const int status = rw_log_print (out->str, (gssize) out->len);

  rw_log_file_complain (file);
  return knowledge == NULL || rw_log_file_is_damaged (file) ? RW_LOG_DAMAGED : status;
}
