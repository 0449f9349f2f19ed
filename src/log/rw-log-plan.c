/* rw-log-plan.c: railwright-log plan [FILE] [--symptom ID]… [--depth N] [--json | --as text|json|pdf] [-o OUT].
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * With FILE the plan goes on from where the session stands; without, from a cabinet of the usual
 * profile of which nothing is known yet. Symptoms named are added as present.
 */
#include "config.h"

#include "rw-log-plan.h"

#include <glib/gi18n-lib.h>

#include "rw-log-file.h"
#include "rw-log-io.h"
#include "rw-log-options.h"
#include "rw-report-plan-page.h"
#include "rw-skipped.h"

static const char usual_profile[] = "classic-5-12-m5";
static const int depth_not_given = G_MININT;

typedef struct
{
  char   **symptoms;
  char   **words;
  char    *problem;
  char    *as;     /* (nullable) */
  char    *output; /* (nullable) */
  int      depth;
  gboolean json;
} Wish;

static void
wish_clear (Wish *wish)
{
  g_strfreev (wish->symptoms);
  g_strfreev (wish->words);
  g_free (wish->problem);
  g_free (wish->as);
  g_free (wish->output);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Wish, wish_clear)

static int
wrong (const char *message)
{
  return rw_log_wrong_usage ("plan", message);
}

static gboolean
is_as (const Wish *wish,
       const char *format)
{
  return g_strcmp0 (wish->as, format) == 0;
}

static int
check_form (const Wish *wish)
{
  if (wish->as != NULL && !is_as (wish, "text") && !is_as (wish, "json") && !is_as (wish, "pdf"))
    return wrong (_ ("--as must be text, json or pdf"));
  if (wish->json && wish->as != NULL && !is_as (wish, "json"))
    return wrong (_ ("--json and --as ask for different forms"));
  if (is_as (wish, "pdf") && wish->output == NULL)
    return wrong (_ ("--as pdf needs -o OUT"));
  return RW_LOG_DONE;
}

static int
check_wish (const Wish *wish)
{
  if (wish->words != NULL && g_strv_length (wish->words) > 1)
    return wrong (_ ("only one FILE is taken"));
  if (wish->problem != NULL
      && (wish->words != NULL || wish->symptoms != NULL || wish->depth != depth_not_given || wish->as != NULL
          || wish->output != NULL))
    return wrong (_ ("--problem goes with --json alone"));
  if (wish->problem != NULL && !wish->json)
    return wrong (_ ("--problem needs --json"));
  if (wish->depth != depth_not_given
      && (wish->depth < 1 || wish->depth > RW_REPORT_PLAN_DEEPEST))
    {
      g_autofree char *message
          = g_strdup_printf (_ ("--depth must be 1 to %d"), RW_REPORT_PLAN_DEEPEST);

      return wrong (message);
    }
  return check_form (wish);
}

/* --- where the plan starts from ------------------------------------------------------------- */

static RwProfile *
find_usual_profile (void)
{
  g_autoptr (GPtrArray) problems = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) profiles = rw_profile_list (problems);

  for (guint i = 0; i < problems->len; i++)
    rw_log_complain ("%s", (const char *) problems->pdata[i]);
  for (guint i = 0; i < profiles->len; i++)
    if (g_str_equal (rw_profile_get_id (profiles->pdata[i]), usual_profile))
      return rw_profile_ref (profiles->pdata[i]);
  /* Translators: id of a profile. */
  rw_log_complain (_ ("The profile “%s” is missing: is the program installed whole?"),
                   usual_profile);
  return NULL;
}

static RwSession *
new_session (void)
{
  g_autoptr (RwProfile) profile = find_usual_profile ();
  g_autoptr (GDateTime) any_time = g_date_time_new_utc (2000, 1, 1, 0, 0, 0);

  if (profile == NULL)
    return NULL;
  return rw_session_new (rw_session_header_new (profile, "", "", NULL, any_time));
}

static gboolean
check_symptom (RwKnowledge *knowledge,
               const char  *id)
{
  g_autoptr (GString) known = g_string_new (NULL);

  if (rw_knowledge_find_symptom (knowledge, id) != NULL)
    return TRUE;
  for (guint i = 0; i < rw_knowledge_get_n_symptoms (knowledge); i++)
    g_string_append_printf (known, "%s%s", i > 0 ? ", " : "",
                            rw_knowledge_get_symptom (knowledge, i)->id);
  /* Translators: id that was asked for; ids that there are. */
  rw_log_complain (_ ("There is no symptom “%s”. Known are: %s"), id, known->str);
  return FALSE;
}

static gboolean
add_symptoms (RwSession   *session,
              RwKnowledge *knowledge,
              char       **ids)
{
  for (char **id = ids; id != NULL && *id != NULL; id++)
    {
      if (!check_symptom (knowledge, *id))
        return FALSE;

      const double end = rw_session_get_end (session);
      RwEvent event = rw_event_make_symptom (end, *id, RW_SYMPTOM_PRESENT);

      rw_session_add (session, &event);
    }
  return TRUE;
}

/* --- the command ---------------------------------------------------------------------------- */

/* To standard output, or to the file that is wished for. */
static int
write_text (const Wish    *wish,
            const GString *out)
{
  g_autoptr (GError) error = NULL;

  if (wish->output == NULL)
    return rw_log_print (out->str, (gssize) out->len);
  if (g_file_set_contents (wish->output, out->str, (gssize) out->len, &error))
    return RW_LOG_DONE;
  rw_log_complain ("%s", error->message);
  return RW_LOG_DAMAGED;
}

static int
write_pdf (const Wish         *wish,
           const RwReportPlan *plan,
           RwSession          *session)
{
  g_autoptr (GError) error = NULL;

  if (rw_report_plan_save_pdf (plan, session, wish->output, &error))
    return RW_LOG_DONE;
  rw_log_complain ("%s", error->message);
  return RW_LOG_DAMAGED;
}

static int
print_plan (const Wish  *wish,
            RwSession   *session,
            RwKnowledge *knowledge)
{
  g_autoptr (RwBenchState) state = rw_bench_state_new (session);
  g_autoptr (GHashTable) skipped = rw_skipped_gather (state);
  g_autoptr (RwAdvice) advice = rw_advice_new (knowledge, state, skipped);
  const guint depth = wish->depth != depth_not_given ? (guint) wish->depth : RW_REPORT_PLAN_DEPTH;
  g_autoptr (RwReportPlan) plan = rw_report_plan_new (advice, depth);

  if (is_as (wish, "pdf"))
    return write_pdf (wish, plan, session);

  g_autoptr (GString) out = wish->json || is_as (wish, "json") ? rw_report_plan_to_json (plan)
                                                               : rw_report_plan_to_text (plan);

  return write_text (wish, out);
}

static int
carry_out (const Wish *wish)
{
  g_autoptr (RwKnowledge) knowledge = rw_log_load_knowledge ();
  g_autoptr (RwLogFile) file = wish->words != NULL ? rw_log_file_load (wish->words[0]) : NULL;

  if (knowledge == NULL || (wish->words != NULL && file == NULL))
    return RW_LOG_DAMAGED;

  g_autoptr (RwSession) session = file != NULL ? g_object_ref (file->read->session)
                                               : new_session ();

  if (session == NULL || !add_symptoms (session, knowledge, wish->symptoms))
    return RW_LOG_DAMAGED;

  const int status = print_plan (wish, session, knowledge);

  if (file == NULL || !rw_log_file_is_damaged (file))
    return status;
  rw_log_file_complain (file);
  return RW_LOG_DAMAGED;
}

int
rw_log_plan (int    argc,
             char **argv)
{
  g_auto (Wish) wish = { .depth = depth_not_given };
  const GOptionEntry entries[] = {
    { "symptom", 0, 0, G_OPTION_ARG_STRING_ARRAY, &wish.symptoms,
      N_ ("A symptom that is seen; may be given again"), N_ ("ID") },
    { "depth", 0, 0, G_OPTION_ARG_INT, &wish.depth, N_ ("How many checks deep (4 unless given)"),
      N_ ("N") },
    { "json", 0, 0, G_OPTION_ARG_NONE, &wish.json, N_ ("One JSON object instead of text"), NULL },
    { "as", 0, 0, G_OPTION_ARG_STRING, &wish.as, N_ ("text, json or pdf"), N_ ("FORMAT") },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &wish.output, N_ ("File to write"), N_ ("OUT") },
    { "problem", 0, 0, G_OPTION_ARG_FILENAME, &wish.problem,
      N_ ("The whole plan of a bare problem, with --json"), N_ ("FILE") },
    { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &wish.words, NULL, NULL },
    G_OPTION_ENTRY_NULL
  };

  if (!rw_log_options_parse ("plan", N_ ("[FILE]"),
                             _ ("Works out which check comes next, what follows each outcome, and "
                                "so on. It is a computed guess and no safety device."),
                             entries, &argc, &argv))
    return RW_LOG_USAGE;

  const int status = check_wish (&wish);

  if (status != RW_LOG_DONE)
    return status;
  return wish.problem != NULL ? rw_log_plan_problems (wish.problem) : carry_out (&wish);
}
