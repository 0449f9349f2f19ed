/* rw-report-text.c: a session's summary for people, as plain text.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sections under a heading each, a blank line between; a section with nothing to say is left out.
 * What was seen and what to do next stand in rw-report-text-next.c, the bring-up in rw-report-stages.c.
 */
#include "config.h"

#include "rw-report-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"
#include "rw-report-stages.h"
#include "rw-report-text-next.h"
#include "rw-report-trim.h"
#include "rw-report-words.h"
#include "rw-text-table.h"

/* --- the file ------------------------------------------------------------------------------- */

static void
append_title (const RwSummary *summary,
              GString         *out)
{
  const RwSessionHeader *header = rw_session_get_header (summary->session);
  const char *name = *header->cabinet_name != '\0' ? header->cabinet_name
                                                   : _ ("Cabinet without a name");
  g_autofree char *started = g_date_time_format (header->started, "%Y-%m-%d %H:%M");
  g_autofree char *length = rw_quantity_format_clock (summary->seconds);

  g_string_append (out, name);
  if (*header->cabinet_tag != '\0')
    g_string_append_printf (out, " (%s)", header->cabinet_tag);
  g_string_append_c (out, '\n');
  /* Translators: title of the cabinet's profile; date and time; length as minutes:seconds. */
  g_string_append_printf (out, _ ("%s; started %s UTC, %s long"),
                          rw_profile_get_title (header->profile), started, length);
  g_string_append_c (out, '\n');
  if (header->from != NULL)
    {
      g_autofree char *from = rw_session_from_describe (header->from);

      g_string_append_printf (out, "%s\n", from);
    }
}

/* Takes @text; a comma before it unless it begins the line. */
static void
take_count (GString *out,
            char    *text)
{
  if (out->str[out->len - 1] != '\n')
    g_string_append (out, ", ");
  g_string_append (out, text);
  g_free (text);
}

static void
append_counts (const RwSummary *summary,
               GString         *out)
{
  guint n = summary->n_events;

  take_count (out, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u event", "%u events", n),
                                    n));
  n = summary->n_readings;
  take_count (out, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u reading", "%u readings", n),
                                    n));
  n = summary->n_samples;
  take_count (out, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u sample", "%u samples", n),
                                    n));
  n = summary->n_retracted;
  if (n > 0)
    take_count (out, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u taken back",
                                                   "%u taken back", n),
                                      n));
  n = summary->n_unknown;
  if (n > 0)
    take_count (out, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u not understood",
                                                   "%u not understood", n),
                                      n));
  g_string_append_c (out, '\n');
}

static void
append_damage (const RwSummary *summary,
               GString         *out)
{
  const GArray *lines = summary->skipped_lines;

  if (lines->len > 0)
    g_string_append_printf (out,
                            g_dngettext (GETTEXT_PACKAGE, "%u damaged line was skipped:",
                                         "%u damaged lines were skipped:", lines->len),
                            lines->len);
  for (guint i = 0; i < lines->len; i++)
    g_string_append_printf (out, "%s %u", i > 0 ? "," : "", g_array_index (lines, guint, i));
  if (lines->len > 0)
    g_string_append_c (out, '\n');
  if (summary->torn_tail)
    g_string_append_printf (out, "%s\n",
                            _ ("The file ends in the middle of a line, which was left out."));
}

/* --- the bench ------------------------------------------------------------------------------ */

static void
append_bench (const RwSummary *summary,
              GString         *out)
{
  g_autofree char *setup = rw_report_words_setup (rw_bench_state_get_setup (summary->state));
  const guint trims = rw_bench_state_get_n_trims (summary->state);
  const char *stage = rw_bench_state_get_stage (summary->state);
  RwStage ours;

  rw_report_words_append_heading (out, _ ("On the bench"));
  g_string_append_printf (out, "  %s\n",
                          setup != NULL ? setup : _ ("nothing was said of power and board"));
  if (trims > 0)
    {
      g_string_append (out, "  ");
      g_string_append_printf (out,
                              g_dngettext (GETTEXT_PACKAGE, "the trim was turned %u time",
                                           "the trim was turned %u times", trims),
                              trims);
      g_string_append_c (out, '\n');
    }
  if (stage != NULL && !rw_stage_from_id (stage, &ours))
    {
      g_string_append (out, "  ");
      /* Translators: id of a stage that this program does not know. */
      g_string_append_printf (out, _ ("stage: %s"), stage);
      g_string_append_c (out, '\n');
    }
}

static void
append_warnings (const RwSummary *summary,
                 GString         *out)
{
  const guint n = rw_bench_state_get_n_warnings (summary->state);

  if (n > 0)
    rw_report_words_append_heading (out, _ ("Warnings"));
  for (guint i = 0; i < n; i++)
    {
      const RwWarning *warning = rw_bench_state_get_warning (summary->state, i);

      g_string_append_printf (out, "  ! %s\n", warning->text);
    }
}

/* --- readings ------------------------------------------------------------------------------- */

static const char *
rail_label (const RwSpotState *spot)
{
  if (spot->rail != NULL)
    return spot->rail->label;
  return g_str_equal (spot->reading.rail, RW_RAIL_GROUND) ? _ ("ground") : spot->reading.rail;
}

static char *
dup_verdict (const RwSpotState *spot)
{
  if (spot->verdict == RW_VERDICT_NONE)
    return NULL;
  return g_strdup_printf ("%s %s", rw_verdict_get_glyph (spot->verdict),
                          rw_verdict_get_label (spot->verdict));
}

static void
take_row (RwTextTable       *table,
          const RwSpotState *spot)
{
  const RwReading *reading = &spot->reading;
  g_autofree char *clock = rw_quantity_format_clock (spot->t);

  rw_text_table_take (table, g_strdup (rail_label (spot)));
  rw_text_table_take (table, g_strdup (rw_place_get_label (reading->place)));
  rw_text_table_take (table, g_strdup (reading->kind == RW_KIND_RIPPLE ? _ ("ripple") : ""));
  rw_text_table_take (table, rw_quantity_format (reading->value, reading->step, reading->kind));
  rw_text_table_take (table, rw_quantity_format_u (spot->u, reading->kind));
  rw_text_table_take (table, dup_verdict (spot));
  /* Translators: a time since the start, as minutes:seconds. */
  rw_text_table_take (table, g_strdup_printf (_ ("at %s"), clock));
  rw_text_table_take (table, g_strdup (spot->stale ? _ ("stale") : ""));
}

static void
append_readings (const RwSummary *summary,
                 GString         *out)
{
  static const gboolean right[] = { FALSE, FALSE, FALSE, TRUE, FALSE, FALSE, FALSE, FALSE };
  g_autoptr (RwTextTable) table = rw_text_table_new (G_N_ELEMENTS (right), right);
  const guint n = rw_bench_state_get_n_spots (summary->state);

  if (n > 0)
    rw_report_words_append_heading (out, _ ("Last readings"));
  for (guint i = 0; i < n; i++)
    take_row (table, rw_bench_state_get_spot (summary->state, i));
  rw_text_table_append (table, 2, out);
}

GString *
rw_report_text_summary (const RwSummary *summary)
{
  g_return_val_if_fail (summary != NULL, NULL);

  GString *out = g_string_new (NULL);

  append_title (summary, out);
  append_counts (summary, out);
  append_damage (summary, out);
  append_warnings (summary, out);
  append_bench (summary, out);
  append_readings (summary, out);
  rw_report_trim_append_text (summary->state, out);
  rw_report_text_append_seen (summary, out);
  rw_report_text_append_next (summary, out);
  if (rw_bench_state_get_stage (summary->state) != NULL)
    rw_report_stages_append_of (summary->session,
                                summary->advice != NULL ? rw_advice_get_knowledge (summary->advice) : NULL, out);
  return out;
}
