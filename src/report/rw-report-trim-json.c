/* rw-report-trim-json.c: what a session says of the trim, as JSON.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Volts as the meter shows them. "u" of a prediction is without the meter's common part, which is given
 * apart ("u_scale"); "low" and "high" hold what the meter will show 95 % of the time. "chance" counts both
 * parts: it is about true volts.
 */
#include "config.h"

#include "rw-report-trim.h"

#include "rw-json-out.h"
#include "rw-report-words.h"
#include "rw-trim-bend.h"

static const char *
rail_id (const RwTrimSet *set,
         guint            rail)
{
  return rw_profile_get_rail (set->profile, rail)->id;
}

static void
append_lines (const RwTrimSet *set,
              GString         *out)
{
  rw_json_out_key (out, "rails");
  rw_json_out_open (out, '[');
  for (guint i = 0; i < rw_profile_get_n_rails (set->profile); i++)
    {
      RwTrimLine line;

      if (i == set->reference || !rw_trim_fit_get_line (set->fit, i, &line))
        continue;
      rw_json_out_open (out, '{');
      rw_json_out_string (out, "rail", rail_id (set, i));
      rw_json_out_number (out, "slope", line.slope);
      rw_json_out_number (out, "slope_u", line.slope_u);
      rw_json_out_number (out, "offset", line.offset);
      rw_json_out_number (out, "offset_u", line.offset_u);
      rw_json_out_count (out, "readings", line.n_readings);
      rw_json_out_boolean (out, "curved", rw_trim_bend_is_curved (set, i));
      rw_json_out_close (out, '}');
    }
  rw_json_out_close (out, ']');
}

static void
append_window (const RwTrimSet *set,
               GString         *out)
{
  if (!set->window.exists || set->n_lined == 0)
    {
      rw_json_out_null (out, "window");
      return;
    }
  rw_json_out_key (out, "window");
  rw_json_out_open (out, '[');
  rw_json_out_add_number (out, set->window.lo);
  rw_json_out_add_number (out, set->window.hi);
  rw_json_out_close (out, ']');
}

static void
append_predicted (const RwTrimSet *set,
                  GString         *out)
{
  rw_json_out_key (out, "predicted");
  rw_json_out_open (out, '[');
  for (guint i = 0; i < set->predicted->len; i++)
    {
      const RwTrimPredicted *it = &g_array_index (set->predicted, RwTrimPredicted, i);

      rw_json_out_open (out, '{');
      rw_json_out_string (out, "rail", rail_id (set, it->rail));
      rw_json_out_number (out, "value", it->expected.value);
      rw_json_out_number (out, "u", it->expected.u);
      rw_json_out_number (out, "u_scale", it->u_common);
      rw_json_out_number (out, "low", it->expected.lo);
      rw_json_out_number (out, "high", it->expected.hi);
      rw_json_out_number (out, "margin", it->margin);
      rw_json_out_close (out, '}');
    }
  rw_json_out_close (out, ']');
}

static void
append_conflict (const RwTrimSet *set,
                 GString         *out)
{
  if (set->window.exists || set->window.low_rail < 0 || set->window.high_rail < 0)
    {
      rw_json_out_null (out, "conflict");
      return;
    }

  g_autofree char *text = rw_report_words_conflict (set);

  rw_json_out_key (out, "conflict");
  rw_json_out_open (out, '{');
  rw_json_out_key (out, "rails");
  rw_json_out_open (out, '[');
  rw_json_out_add_string (out, rail_id (set, (guint) set->window.low_rail));
  if (set->window.high_rail != set->window.low_rail)
    rw_json_out_add_string (out, rail_id (set, (guint) set->window.high_rail));
  rw_json_out_close (out, ']');
  rw_json_out_number (out, "gap", set->window.gap);
  rw_json_out_string (out, "text", text);
  rw_json_out_close (out, '}');
}

/* How well the readings lie on lines, and which were left out. */
static void
append_fit (const RwTrimSet *set,
            GString         *out)
{
  rw_json_out_key (out, "outliers");
  rw_json_out_open (out, '[');
  for (guint i = 0; i < set->points->len; i++)
    {
      const RwTrimPoint *point = &g_array_index (set->points, RwTrimPoint, i);

      if (point->outlier)
        rw_json_out_add_number (out, point->n);
    }
  rw_json_out_close (out, ']');
  rw_json_out_number (out, "chi2", rw_trim_fit_get_chi2 (set->fit));
  rw_json_out_count (out, "dof", rw_trim_fit_get_dof (set->fit));
  rw_json_out_number (out, "p", rw_trim_fit_get_p (set->fit));
  rw_json_out_boolean (out, "unclear", rw_trim_fit_get_unclear (set->fit));
}

static void
append_set (const RwTrimSet *set,
            GString         *out)
{
  rw_json_out_open (out, '{');
  rw_json_out_string (out, "place", rw_place_to_id (set->place));
  rw_json_out_string (out, "board", set->board == RW_SAID_NOT ? NULL : set->board == RW_SAID_YES ? "fitted" : "out");
  rw_json_out_string (out, "reference", rail_id (set, set->reference));
  rw_json_out_count (out, "positions", set->positions->len);
  append_lines (set, out);
  append_window (set, out);
  rw_json_out_number (out, "best", set->window.best);
  rw_json_out_number (out, "margin", set->window.margin);
  rw_json_out_number (out, "chance", set->chance);
  append_predicted (set, out);
  append_conflict (set, out);
  rw_json_out_boolean (out, "complete", set->complete);
  append_fit (set, out);
  rw_json_out_close (out, '}');
}

void
rw_report_trim_append_json (const RwBenchState *state,
                            GString            *out)
{
  rw_json_out_open (out, '[');
  for (guint i = 0; i < rw_bench_state_get_n_trim_sets (state); i++)
    append_set (rw_bench_state_get_trim_set (state, i), out);
  rw_json_out_close (out, ']');
}
