/* rw-log-export.c: railwright-log export FILE --as KIND [--chart CHART] -o OUT.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A damaged file is exported as far as it can be read; the damage is said and shows in the exit
 * status.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "rw-bench-state.h"
#include "rw-chart-export.h"
#include "rw-chart-names.h"
#include "rw-log-file.h"
#include "rw-log-io.h"
#include "rw-log-options.h"
#include "rw-log-picture.h"
#include "rw-report-csv.h"
#include "rw-report-json.h"

/* Pixels of a picture, at 96 to the inch. */
static const int picture_width = 1280, picture_height = 720;

typedef struct
{
  RwLogPicture picture; /* or what else as names */
  char       **words;
  gboolean     is_picture; /* svg, png, pdf */
} Wish;

static void
wish_clear (Wish *wish)
{
  rw_log_picture_clear (&wish->picture);
  g_strfreev (wish->words);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Wish, wish_clear)

static int
wrong (const char *message)
{
  return rw_log_wrong_usage ("export", message);
}

/* RW_LOG_DONE, or RW_LOG_USAGE when it has been said what is wrong. */
static int
check_wish (Wish *wish)
{
  RwLogPicture *picture = &wish->picture;

  if (rw_log_options_one_file ("export", wish->words) == NULL)
    return RW_LOG_USAGE;
  if (picture->as == NULL)
    return wrong (_ ("--as is missing: csv, json, svg, png or pdf"));
  wish->is_picture = rw_chart_format_from_id (picture->as, &picture->format);
  if (!wish->is_picture && !g_str_equal (picture->as, "csv") && !g_str_equal (picture->as, "json"))
    return wrong (_ ("--as must be csv, json, svg, png or pdf"));
  if (picture->out != NULL && picture->chart != NULL && !wish->is_picture)
    return wrong (_ ("--chart goes with svg, png and pdf only"));
  return rw_log_picture_check (picture, "export", wish->words);
}

/* The place and board of which most was read; the first of equals. NULL: nothing was. */
static const RwTrimSet *
most_read_set (const RwBenchState *state)
{
  const RwTrimSet *best = NULL;

  for (guint i = 0; i < rw_bench_state_get_n_trim_sets (state); i++)
    {
      const RwTrimSet *set = rw_bench_state_get_trim_set (state, i);

      if (best == NULL || set->points->len > best->points->len)
        best = set;
    }
  return best;
}

static GBytes *
trim_picture (const Wish      *wish,
              const RwLogFile *file,
              GError         **error)
{
  g_autoptr (RwBenchState) state = rw_bench_state_new (file->read->session);

  return rw_trim_map_export_bytes (file->read->session, NULL, most_read_set (state), wish->picture.format,
                                   picture_width, picture_height, error);
}

static int
export_picture (const Wish      *wish,
                const RwLogFile *file,
                RwKnowledge     *knowledge)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = rw_log_picture_is_trim (&wish->picture)
                                 ? trim_picture (wish, file, &error)
                                 : rw_chart_export_bytes (file->read->session, NULL, wish->picture.format,
                                                          picture_width, picture_height, rw_chart_name_known,
                                                          knowledge, &error);

  return rw_log_picture_write (&wish->picture, bytes, error);
}

static int
export_json (const Wish      *wish,
             const RwLogFile *file,
             RwKnowledge     *knowledge)
{
  rw_log_plain_numbers ();

  g_autoptr (RwSummary) summary = rw_summary_new_from_read (file->read, knowledge);
  g_autoptr (GString) text = rw_report_json_session (summary);

  return rw_log_write (wish->picture.out, text->str, text->len);
}

static int
export_csv (const Wish      *wish,
            const RwLogFile *file)
{
  g_autoptr (GString) text = rw_report_csv (file->read->session);

  return rw_log_write (wish->picture.out, text->str, text->len);
}

static int
carry_out (const Wish *wish)
{
  g_autoptr (RwLogFile) file = rw_log_file_load (wish->words[0]);

  if (file == NULL)
    return RW_LOG_DAMAGED;

  int status;

  if (g_str_equal (wish->picture.as, "csv"))
    status = export_csv (wish, file);
  else
    {
      g_autoptr (RwKnowledge) knowledge = rw_log_load_knowledge ();

      status = wish->is_picture ? export_picture (wish, file, knowledge)
                             : export_json (wish, file, knowledge);
      status = knowledge == NULL ? RW_LOG_DAMAGED : status;
    }
  rw_log_file_complain (file);
  return rw_log_file_is_damaged (file) ? RW_LOG_DAMAGED : status;
}

int
rw_log_export (int    argc,
               char **argv)
{
  g_auto (Wish) wish = { 0 };
  const GOptionEntry entries[] = {
    { "as", 0, 0, G_OPTION_ARG_STRING, &wish.picture.as, N_ ("What to make: csv, json, svg, png or pdf"),
      N_ ("KIND") },
    { "chart", 0, 0, G_OPTION_ARG_STRING, &wish.picture.chart,
      N_ ("Which picture: time (unless said otherwise) or trim"), N_ ("CHART") },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &wish.picture.out,
      N_ ("Where to write; “-” is standard output"), N_ ("OUT") },
    { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &wish.words, NULL, NULL },
    G_OPTION_ENTRY_NULL
  };

  if (!rw_log_options_parse ("export", N_ ("FILE"),
                             _ ("Makes a table with a row an event (csv), the summary with all "
                                "events (json), or a chart (svg, png, pdf): the rails over time, "
                                "or what the trim does to them."),
                             entries, &argc, &argv))
    return RW_LOG_USAGE;

  const int status = check_wish (&wish);

  return status == RW_LOG_DONE ? carry_out (&wish) : status;
}
