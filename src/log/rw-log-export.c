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
#include "rw-log-file.h"
#include "rw-log-io.h"
#include "rw-log-options.h"
#include "rw-report-csv.h"
#include "rw-report-json.h"

/* Pixels of a picture, at 96 to the inch. */
static const int picture_width = 1280, picture_height = 720;

typedef struct
{
  char         *as;
  char         *chart;
  char         *out;
  char        **words;
  const char   *path;    /* the one of words */
  gboolean      picture; /* svg, png, pdf */
  RwChartFormat format;  /* when it is one */
} Wish;

static void
wish_clear (Wish *wish)
{
  g_free (wish->as);
  g_free (wish->chart);
  g_free (wish->out);
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
  wish->path = rw_log_options_one_file ("export", wish->words);
  if (wish->path == NULL)
    return RW_LOG_USAGE;
  if (wish->as == NULL)
    return wrong (_ ("--as is missing: csv, json, svg, png or pdf"));
  wish->picture = rw_chart_format_from_id (wish->as, &wish->format);
  if (!wish->picture && !g_str_equal (wish->as, "csv") && !g_str_equal (wish->as, "json"))
    return wrong (_ ("--as must be csv, json, svg, png or pdf"));
  if (wish->out == NULL)
    return wrong (_ ("-o OUT is missing: where to write (“-” is standard output)"));
  if (wish->chart != NULL && !wish->picture)
    return wrong (_ ("--chart goes with svg, png and pdf only"));
  if (wish->chart != NULL && !g_str_equal (wish->chart, "time")
      && !g_str_equal (wish->chart, "trim"))
    return wrong (_ ("--chart must be time or trim"));
  if (rw_log_same_file (wish->path, wish->out))
    return wrong (_ ("OUT is the session file itself, which is never overwritten"));
  return RW_LOG_DONE;
}

/* Words for the ids of symptoms and causes. */
static char *
name_cb (RwEventType type,
         const char *id,
         gpointer    user_data)
{
  RwKnowledge *knowledge = user_data;

  if (knowledge == NULL)
    return NULL;

  const RwSymptom *symptom = rw_knowledge_find_symptom (knowledge, id);
  const RwCause *cause = rw_knowledge_find_cause (knowledge, id);

  if (type == RW_EVENT_SYMPTOM && symptom != NULL)
    return g_strdup (symptom->title);
  if (type == RW_EVENT_REPAIR && cause != NULL)
    return g_strdup (cause->repair.title);
  return NULL;
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

  return rw_trim_map_export_bytes (file->read->session, NULL, most_read_set (state), wish->format,
                                   picture_width, picture_height, error);
}

static int
export_picture (const Wish      *wish,
                const RwLogFile *file,
                RwKnowledge     *knowledge)
{
  g_autoptr (GError) error = NULL;
  const gboolean trim = wish->chart != NULL && g_str_equal (wish->chart, "trim");
  g_autoptr (GBytes) bytes = trim ? trim_picture (wish, file, &error)
                                  : rw_chart_export_bytes (file->read->session, NULL, wish->format,
                                                           picture_width, picture_height, name_cb,
                                                           knowledge, &error);

  if (bytes == NULL)
    {
      rw_log_complain ("%s", error->message);
      return RW_LOG_DAMAGED;
    }
  return rw_log_write (wish->out, g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
}

static int
export_json (const Wish      *wish,
             const RwLogFile *file,
             RwKnowledge     *knowledge)
{
  rw_log_plain_numbers ();

  g_autoptr (RwSummary) summary = rw_summary_new_from_read (file->read, knowledge);
  g_autoptr (GString) text = rw_report_json_session (summary);

  return rw_log_write (wish->out, text->str, text->len);
}

static int
export_csv (const Wish      *wish,
            const RwLogFile *file)
{
  g_autoptr (GString) text = rw_report_csv (file->read->session);

  return rw_log_write (wish->out, text->str, text->len);
}

static int
carry_out (const Wish *wish)
{
  g_autoptr (RwLogFile) file = rw_log_file_load (wish->path);

  if (file == NULL)
    return RW_LOG_DAMAGED;

  int status;

  if (g_str_equal (wish->as, "csv"))
    status = export_csv (wish, file);
  else
    {
      g_autoptr (RwKnowledge) knowledge = rw_log_load_knowledge ();

      status = wish->picture ? export_picture (wish, file, knowledge)
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
    { "as", 0, 0, G_OPTION_ARG_STRING, &wish.as, N_ ("What to make: csv, json, svg, png or pdf"),
      N_ ("KIND") },
    { "chart", 0, 0, G_OPTION_ARG_STRING, &wish.chart,
      N_ ("Which picture: time (unless said otherwise) or trim"), N_ ("CHART") },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &wish.out,
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
