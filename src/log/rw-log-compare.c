/* rw-log-compare.c: railwright-log compare FILE FILE [--json] [--as KIND -o OUT].
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "rw-chart-names.h"
#include "rw-compare-picture.h"
#include "rw-log-file.h"
#include "rw-log-io.h"
#include "rw-log-options.h"
#include "rw-log-picture.h"
#include "rw-report-compare.h"

/* Pixels of a picture, at 96 to the inch. */
static const int picture_width = 1280, picture_height = 800;

typedef struct
{
  gboolean        json;
  char           *meters;
  RwLogPicture    picture;
  char          **words;
  RwCompareMeters whose;
} Wish;

static void
wish_clear (Wish *wish)
{
  g_free (wish->meters);
  rw_log_picture_clear (&wish->picture);
  g_strfreev (wish->words);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Wish, wish_clear)

static int
wrong (const char *message)
{
  return rw_log_wrong_usage ("compare", message);
}

static gboolean
read_meters (Wish *wish)
{
  wish->whose = RW_COMPARE_METERS_BY_NAME;
  if (wish->meters == NULL)
    return TRUE;
  wish->whose = g_str_equal (wish->meters, "same") ? RW_COMPARE_METERS_SAME : RW_COMPARE_METERS_OTHER;
  return g_str_equal (wish->meters, "same") || g_str_equal (wish->meters, "other");
}

/* RW_LOG_DONE, or RW_LOG_USAGE when it has been said what is wrong. */
static int
check_wish (Wish *wish)
{
  RwLogPicture *picture = &wish->picture;
  const guint n = wish->words != NULL ? g_strv_length (wish->words) : 0;

  if (n != 2)
    return wrong (n < 2 ? _ ("two FILEs are needed") : _ ("only two FILEs are taken"));
  if (!read_meters (wish))
    return wrong (_ ("--meters must be same or other"));
  if (picture->as == NULL && (picture->out != NULL || picture->chart != NULL))
    return wrong (_ ("-o and --chart go with --as only"));
  if (picture->as == NULL)
    return RW_LOG_DONE;
  if (!rw_chart_format_from_id (picture->as, &picture->format))
    return wrong (_ ("--as must be svg, png or pdf"));
  if (wish->json)
    return wrong (_ ("--json and --as do not go together"));
  return rw_log_picture_check (picture, "compare", wish->words);
}

static int
write_picture (const Wish  *wish,
               RwCompare   *compare,
               RwKnowledge *knowledge)
{
  g_autoptr (RwComparePicture) picture = rw_compare_picture_new (compare, NULL, NULL);
  g_autoptr (GError) error = NULL;

  rw_compare_picture_set_name_func (picture, rw_chart_name_known, knowledge);
  if (rw_log_picture_is_trim (&wish->picture))
    rw_compare_picture_set_chart (picture, RW_VIEW_TRIM);

  g_autoptr (GBytes) bytes
      = rw_compare_picture_export_bytes (picture, wish->picture.format, picture_width, picture_height, &error);

  return rw_log_picture_write (&wish->picture, bytes, error);
}

static int
write_words (const Wish  *wish,
             RwCompare   *compare,
             RwKnowledge *knowledge)
{
  g_autoptr (RwCompareCauses) causes = rw_compare_causes_new (compare, knowledge);
  g_autoptr (GString) out = wish->json ? rw_report_compare_json (compare, causes)
                                       : rw_report_compare_text (compare, causes, knowledge);

  return rw_log_print (out->str, (gssize) out->len);
}

static int
carry_out (const Wish *wish)
{
  g_autoptr (RwLogFile) a = rw_log_file_load (wish->words[0]);
  g_autoptr (RwLogFile) b = a != NULL ? rw_log_file_load (wish->words[1]) : NULL;

  if (a == NULL || b == NULL)
    return RW_LOG_DAMAGED;
  if (wish->json)
    rw_log_plain_numbers ();

  g_autoptr (RwKnowledge) knowledge = rw_log_load_knowledge ();
  g_autoptr (RwCompare) compare = rw_compare_new (a->read->session, b->read->session, wish->whose);
  const int status = wish->picture.as != NULL ? write_picture (wish, compare, knowledge)
                                      : write_words (wish, compare, knowledge);

  rw_log_file_complain (a);
  rw_log_file_complain (b);
  return knowledge == NULL || rw_log_file_is_damaged (a) || rw_log_file_is_damaged (b) ? RW_LOG_DAMAGED : status;
}

int
rw_log_compare (int    argc,
                char **argv)
{
  g_auto (Wish) wish = { 0 };
  const GOptionEntry entries[] = {
    { "json", 0, 0, G_OPTION_ARG_NONE, &wish.json, N_ ("One JSON object instead of text"), NULL },
    { "meters", 0, 0, G_OPTION_ARG_STRING, &wish.meters,
      N_ ("“same”: it was one meter both times; “other”: two, or adjusted in between. Without it, meters of one name "
          "and figures are one"),
      N_ ("WHICH") },
    { "as", 0, 0, G_OPTION_ARG_STRING, &wish.picture.as, N_ ("A picture instead of text: svg, png or pdf"), N_ ("KIND") },
    { "chart", 0, 0, G_OPTION_ARG_STRING, &wish.picture.chart,
      N_ ("Which charts it shows: time (unless said otherwise) or trim"), N_ ("CHART") },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &wish.picture.out,
      N_ ("Where to write the picture; “-” is standard output"), N_ ("OUT") },
    { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &wish.words, NULL, NULL },
    G_OPTION_ENTRY_NULL
  };

  if (!rw_log_options_parse ("compare", N_ ("FILE FILE"),
                             _ ("Tells what changed between two sessions of one cabinet beyond the meters' errors: "
                                "readings, the trim, symptoms, likely causes and limits."),
                             entries, &argc, &argv))
    return RW_LOG_USAGE;

  const int status = check_wish (&wish);

  return status == RW_LOG_DONE ? carry_out (&wish) : status;
}
