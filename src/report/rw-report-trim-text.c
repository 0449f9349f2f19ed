/* rw-report-trim-text.c: what a session says of the trim, as text.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-report-trim.h"

#include <glib/gi18n-lib.h>

#include "rw-quantity.h"
#include "rw-report-words.h"
#include "rw-trim-advice.h"
#include "rw-trim-bend.h"

static const char *
label_of (const RwTrimSet *set,
          guint            rail)
{
  return rw_profile_get_rail (set->profile, rail)->label;
}

static void
append_where (const RwTrimSet *set,
              GString         *out)
{
  const char *board = set->board == RW_SAID_YES ? _ ("board fitted") : set->board == RW_SAID_NO ? _ ("board out") : NULL;

  g_string_append_printf (out, "  %s", rw_place_get_label (set->place));
  if (board != NULL)
    g_string_append_printf (out, ", %s", board);
  g_string_append (out, ", ");
  g_string_append_printf (out, ngettext ("%u trim position", "%u trim positions", set->positions->len),
                          set->positions->len);
  g_string_append (out, ": ");
}

static void
append_window (const RwTrimSet *set,
               GString         *out)
{
  g_autofree char *lo = rw_quantity_format (set->window.lo, 0.01, RW_KIND_DC);
  g_autofree char *hi = rw_quantity_format (set->window.hi, 0.01, RW_KIND_DC);
  g_autofree char *best = rw_quantity_format (set->window.best, 0.01, RW_KIND_DC);
  g_autofree char *chance = rw_quantity_format_chance (set->chance);

  /* Translators: reference rail, volts from, volts to, set point, chance. */
  g_string_append_printf (out, _ ("window on %s from %s to %s, best at %s (%s sure that all of them are inside there)"),
                          label_of (set, set->reference), lo, hi, best, chance);
  g_string_append_c (out, '\n');
}

static void
append_conflict (const RwTrimSet *set,
                 GString         *out)
{
  g_autofree char *text = rw_report_words_conflict (set);

  g_string_append_printf (out, "%s\n", text);
}

/* One line a follower: how it moves, and what is expected of it at the set point. */
static void
append_rails (const RwTrimSet *set,
              GString         *out)
{
  for (guint i = 0; i < set->predicted->len; i++)
    {
      const RwTrimPredicted *it = &g_array_index (set->predicted, RwTrimPredicted, i);
      RwTrimLine line;

      if (!rw_trim_fit_get_line (set->fit, it->rail, &line))
        continue;

      g_autofree char *slope = rw_quantity_format_number (line.slope, 2);
      g_autofree char *slope_u = rw_quantity_format_number (1.96 * line.slope_u, 2);
      g_autofree char *value = rw_quantity_format (it->expected.value, 0.01, RW_KIND_DC);
      g_autofree char *half = rw_quantity_format ((it->expected.hi - it->expected.lo) / 2, 0.01, RW_KIND_DC);

      g_string_append (out, "    ");
      /* Translators: rail, volts a volt, its 95 %, reference rail, expected value, its 95 %. */
      g_string_append_printf (out, _ ("%s: %s ± %s V for each volt on %s; expected there %s ± %s"),
                              label_of (set, it->rail), slope, slope_u, label_of (set, set->reference), value, half);
      g_string_append_c (out, '\n');
      if (rw_trim_bend_is_curved (set, it->rail))
        {
          g_string_append (out, "    ");
          /* Translators: rail, reference rail. */
          g_string_append_printf (out, _ ("%s does not follow %s in a straight line: trust what was read, not what is "
                                          "expected"),
                                  label_of (set, it->rail), label_of (set, set->reference));
          g_string_append_c (out, '\n');
        }
    }
}

static void
append_outliers (const RwTrimSet *set,
                 GString         *out)
{
  for (guint i = 0; i < set->points->len; i++)
    {
      const RwTrimPoint *point = &g_array_index (set->points, RwTrimPoint, i);

      if (!point->outlier)
        continue;

      g_autofree char *value = rw_quantity_format (point->value, 0.001, RW_KIND_DC);

      g_string_append (out, "    ");
      /* Translators: number of an event, rail, value. */
      g_string_append_printf (out, _ ("left out: reading %u, %s %s, lies on no line with the others"), point->n,
                              label_of (set, point->rail), value);
      g_string_append_c (out, '\n');
    }
  if (rw_trim_fit_get_unclear (set->fit))
    g_string_append_printf (out, "    %s\n",
                            _ ("these readings agree less well than the meter's counts allow, and none can be named as the "
                               "wrong one: what is expected allows for that"));
}

static void
append_set (const RwTrimSet *set,
            GString         *out)
{
  append_where (set, out);
  if (set->window.exists)
    append_window (set, out);
  else
    append_conflict (set, out);
  append_rails (set, out);
  append_outliers (set, out);
}

void
rw_report_trim_append_text (const RwBenchState *state,
                            GString            *out)
{
  gboolean headed = FALSE;
  RwTrimAdvice advice;

  for (guint i = 0; i < rw_bench_state_get_n_trim_sets (state); i++)
    {
      const RwTrimSet *set = rw_bench_state_get_trim_set (state, i);

      if (set->predicted->len == 0)
        continue;
      if (!headed)
        rw_report_words_append_heading (out, _ ("Trim"));
      headed = TRUE;
      append_set (set, out);
    }
  if (!headed)
    return;
  rw_trim_advice_work_out (state, NULL, NULL, &advice);

  g_autofree char *sentence = rw_trim_advice_say (&advice);

  if (sentence != NULL)
    g_string_append_printf (out, "  %s\n", sentence);
}
