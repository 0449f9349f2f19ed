/* rw-report-compare-json.c: what changed between two sessions, for programs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-compare-words.h"
#include "rw-json-out.h"
#include "rw-report-compare.h"

static const char *const symptom_states[] = { "present", "absent", "cured" };
static const char *const what_ids[RW_N_COMPARE_WHATS] = { "reading", "slope", "level" };
static const char *const why_ids[] = { NULL, "overload", "meter", "coarse" };
static const char *const meters_ids[RW_N_COMPARE_METERS] = { "by-name", "same", "other" };

static void
append_visit (const char *key,
              RwSession  *session,
              GString    *out)
{
  const RwSessionHeader *header = rw_session_get_header (session);
  g_autofree char *started = g_date_time_format (header->started, "%Y-%m-%dT%H:%M:%SZ");

  rw_json_out_key (out, key);
  rw_json_out_open (out, '{');
  rw_json_out_string (out, "id", header->id);
  rw_json_out_string (out, "cabinet", header->cabinet_name);
  rw_json_out_string (out, "tag", header->cabinet_tag);
  rw_json_out_string (out, "profile", rw_profile_get_id (header->profile));
  rw_json_out_string (out, "started", started);
  rw_json_out_close (out, '}');
}

static void
append_said (const char *key,
             RwSaid      said,
             const char *yes,
             const char *no,
             GString    *out)
{
  rw_json_out_string (out, key, said == RW_SAID_NOT ? NULL : said == RW_SAID_YES ? yes : no);
}

static void
append_setup (const RwSetup *setup,
              GString       *out)
{
  rw_json_out_key (out, "setup");
  rw_json_out_open (out, '{');
  append_said ("power", setup->power_on, "on", "off", out);
  append_said ("board", setup->board_fitted, "fitted", "out", out);
  append_said ("warm", setup->warm, "warm", "cold", out);
  rw_json_out_close (out, '}');
}

static void
append_value (const char           *key,
              const RwCompareValue *value,
              gboolean              line,
              GString              *out)
{
  rw_json_out_key (out, key);
  rw_json_out_open (out, '{');
  rw_json_out_number (out, "value", value->value);
  rw_json_out_number (out, "u", value->u);
  rw_json_out_string (out, "verdict", rw_verdict_to_id (value->verdict));
  if (line)
    {
      rw_json_out_number (out, "offset", value->offset);
      rw_json_out_number (out, "offset_u", value->offset_u);
      rw_json_out_boolean (out, "before_repair", value->before_repair);
    }
  else
    {
      rw_json_out_count (out, "n", value->n);
      rw_json_out_number (out, "t", value->t);
    }
  rw_json_out_close (out, '}');
}

static void
append_item (const RwCompareItem *item,
             GString             *out)
{
  const gboolean line = item->what != RW_COMPARE_READING;
  g_autofree char *text = rw_compare_words_item (item);

  rw_json_out_open (out, '{');
  rw_json_out_string (out, "what", what_ids[item->what]);
  rw_json_out_string (out, "rail", item->rail);
  rw_json_out_string (out, "place", rw_place_to_id (item->place));
  rw_json_out_string (out, "kind", rw_kind_to_id (item->kind));
  append_setup (&item->setup, out);
  if (item->what == RW_COMPARE_LEVEL)
    rw_json_out_number (out, "x", item->x);
  append_value ("then", &item->then, line, out);
  append_value ("now", &item->now, line, out);
  rw_json_out_number (out, "difference", item->difference);
  rw_json_out_number (out, "u", item->u);
  rw_json_out_number (out, "p", item->p);
  rw_json_out_number (out, "p_adjusted", item->p_adjusted);
  rw_json_out_string (out, "result", rw_compare_result_to_id (item->result));
  rw_json_out_string (out, "why", why_ids[item->why]);
  rw_json_out_string (out, "text", text);
  rw_json_out_close (out, '}');
}

static void
append_items (const RwCompare *compare,
              GString         *out)
{
  rw_json_out_key (out, "items");
  rw_json_out_open (out, '[');
  for (guint i = 0; i < rw_compare_get_n_items (compare); i++)
    append_item (rw_compare_get_item (compare, i), out);
  rw_json_out_close (out, ']');
}

static void
append_left (const RwCompare *compare,
             GString         *out)
{
  rw_json_out_key (out, "not_compared");
  rw_json_out_open (out, '[');
  for (guint i = 0; i < rw_compare_get_n_left (compare); i++)
    {
      const RwCompareLeft *left = rw_compare_get_left (compare, i);
      g_autofree char *text = rw_compare_words_left (left);

      rw_json_out_open (out, '{');
      rw_json_out_string (out, "rail", left->rail);
      rw_json_out_string (out, "place", rw_place_to_id (left->place));
      rw_json_out_string (out, "kind", rw_kind_to_id (left->kind));
      append_setup (&left->setup, out);
      rw_json_out_boolean (out, "in_then", left->in_then);
      rw_json_out_boolean (out, "in_now", left->in_now);
      rw_json_out_string (out, "text", text);
      rw_json_out_close (out, '}');
    }
  rw_json_out_close (out, ']');
}

static void
append_symptoms (const RwCompare *compare,
                 GString         *out)
{
  rw_json_out_key (out, "symptoms");
  rw_json_out_open (out, '[');
  for (guint i = 0; i < rw_compare_get_n_symptoms (compare); i++)
    {
      const RwCompareSymptom *symptom = rw_compare_get_symptom (compare, i);

      rw_json_out_open (out, '{');
      rw_json_out_string (out, "id", symptom->id);
      rw_json_out_string (out, "then", symptom->then_said ? symptom_states[symptom->then] : NULL);
      rw_json_out_string (out, "now", symptom->now_said ? symptom_states[symptom->now] : NULL);
      rw_json_out_close (out, '}');
    }
  rw_json_out_close (out, ']');
}

static void
append_causes (const RwCompareCauses *causes,
               GString               *out)
{
  rw_json_out_key (out, "causes");
  rw_json_out_open (out, '[');
  for (guint i = 0; causes != NULL && i < causes->causes->len; i++)
    {
      const RwCompareCause *cause = &g_array_index (causes->causes, RwCompareCause, i);

      rw_json_out_open (out, '{');
      rw_json_out_string (out, "cause", cause->cause->id);
      rw_json_out_number (out, "then", cause->then);
      rw_json_out_number (out, "now", cause->now);
      rw_json_out_close (out, '}');
    }
  rw_json_out_close (out, ']');
}

static void
append_words (const char      *key,
              const RwCompare *compare,
              guint            n,
              char          *(*dup) (const RwCompare *compare, guint i),
              GString    *out)
{
  rw_json_out_key (out, key);
  rw_json_out_open (out, '[');
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *words = dup (compare, i);

      rw_json_out_add_string (out, words);
    }
  rw_json_out_close (out, ']');
}

static char *
dup_remark (const RwCompare *compare,
            guint            i)
{
  return g_strdup (rw_compare_get_remark (compare, i));
}

static char *
dup_limit (const RwCompare *compare,
           guint            i)
{
  return rw_compare_words_limit (rw_compare_get_limit (compare, i));
}

GString *
rw_report_compare_json (const RwCompare       *compare,
                        const RwCompareCauses *causes)
{
  GString *out = g_string_new (NULL);
  g_autofree char *headline = rw_compare_words_headline (compare);

  rw_json_out_open (out, '{');
  append_visit ("then", rw_compare_get_then (compare), out);
  append_visit ("now", rw_compare_get_now (compare), out);
  append_words ("remarks", compare, rw_compare_get_n_remarks (compare), dup_remark, out);
  rw_json_out_string (out, "meters", meters_ids[rw_compare_get_meters (compare)]);
  rw_json_out_string (out, "correction", "holm");
  rw_json_out_number (out, "alpha", RW_COMPARE_ALPHA);
  rw_json_out_count (out, "tests", rw_compare_get_n_tests (compare));
  rw_json_out_count (out, "changed", rw_compare_get_n_results (compare, RW_COMPARE_CHANGED));
  append_items (compare, out);
  append_left (compare, out);
  append_symptoms (compare, out);
  append_causes (causes, out);
  append_words ("limits", compare, rw_compare_get_n_limits (compare), dup_limit, out);
  rw_json_out_string (out, "text", headline);
  rw_json_out_close (out, '}');
  g_string_append_c (out, '\n');
  return out;
}
