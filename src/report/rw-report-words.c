/* rw-report-words.c: the small phrases that the text reports share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-report-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "rw-quantity.h"
#include "rw-trim-advice.h"

void
rw_report_words_append_heading (GString    *out,
                                const char *heading)
{
  g_string_append_printf (out, "\n%s\n", heading);
}

char *
rw_report_words_minutes (double minutes)
{
  /* Below ten minutes a tenth matters, unless it is none. */
  const gboolean whole = fabs (minutes) >= 10 || fabs (minutes - round (minutes)) < 0.05;
  g_autofree char *number = rw_quantity_format_number (minutes, whole ? 0 : 1);

  /* Translators: a number of minutes, as short as can be. */
  return g_strdup_printf (_ ("%s min"), number);
}

void
rw_report_words_append_account (GString        *out,
                                const RwAdvice *advice,
                                double          expected)
{
  g_autofree char *this_way = rw_report_words_minutes (expected);
  g_autofree char *repairs = rw_report_words_minutes (rw_advice_get_repairs_only (advice));
  g_autofree char *perfect = rw_report_words_minutes (rw_advice_get_perfect (advice));

  /* Translators: three numbers of minutes with their unit. */
  g_string_append_printf (out,
                          _ ("Expected until fixed: %s this way, %s repairing straight away, %s if "
                             "the cause were known."),
                          this_way, repairs, perfect);
  g_string_append_c (out, '\n');
}

/* The coarsest decimal step that a bound is a whole multiple of, so that it is shown as it was
 * laid down. */
static double
step_of (double bound)
{
  double step = 1;

  for (int i = 0; i < 6; i++)
    {
      if (fabs (bound / step - round (bound / step)) < 1e-6)
        break;
      step /= 10;
    }
  return step;
}

static char *
format_bound (const RwCheck *check,
              double         bound)
{
  /* Two decimals at least for volts, as a meter shows them. */
  const double step = check->kind == RW_KIND_DC ? MIN (step_of (bound), 0.01) : step_of (bound);

  return rw_quantity_format (bound, MIN (step, fabs (bound) < 0.2 ? 0.001 : step), check->kind);
}

/* NULL when the check does not measure, or any value would do. */
static char *
dup_range (const RwCheck   *check,
           const RwOutcome *outcome)
{
  if (!check->measures || (isinf (outcome->from) && isinf (outcome->to)))
    return NULL;

  g_autofree char *from = format_bound (check, isinf (outcome->from) ? 0 : outcome->from);
  g_autofree char *to = format_bound (check, isinf (outcome->to) ? 0 : outcome->to);

  if (isinf (outcome->from))
    /* Translators: a value with its unit. */
    return g_strdup_printf (_ ("below %s"), to);
  if (isinf (outcome->to))
    /* Translators: a value with its unit. */
    return g_strdup_printf (_ ("from %s"), from);
  /* Translators: two values with their units. */
  return g_strdup_printf (_ ("%s to %s"), from, to);
}

char *
rw_report_words_outcome (const RwCheck   *check,
                         const RwOutcome *outcome)
{
  g_autofree char *range = dup_range (check, outcome);

  if (range == NULL || strpbrk (outcome->title, "0123456789") != NULL)
    return g_strdup (outcome->title);
  return g_strdup_printf ("%s (%s)", outcome->title, range);
}

char *
rw_report_words_danger (RwHazard hazard,
                        RwWho    who)
{
  if (hazard <= RW_HAZARD_LOW_VOLTAGE && who == RW_WHO_ANYONE)
    return NULL;
  if (who == RW_WHO_ANYONE)
    return g_strdup (rw_hazard_get_label (hazard));
  /* Translators: what can hurt; who may do it. */
  return g_strdup_printf (_ ("%s; %s"), rw_hazard_get_label (hazard), rw_who_get_label (who));
}

char *
rw_report_words_setup (RwSetup setup)
{
  if (setup.power_on == RW_SAID_NOT && setup.board_fitted == RW_SAID_NOT
      && setup.warm == RW_SAID_NOT)
    return NULL;

  const RwEvent event = rw_event_make_setup (0, setup); /* owns nothing */

  return rw_event_describe (&event, NULL);
}

char *
rw_report_words_wanted (const RwCheck *check)
{
  const RwSetup setup = { check->power, check->board, check->warm };

  return rw_report_words_setup (setup);
}

char *
rw_report_words_conflict (const RwTrimSet *set)
{
  /* The trim's advice has the words, and they need nothing but the set. */
  const RwTrimAdvice advice = { .says = RW_TRIM_SAYS_NO_WINDOW, .set = set };

  return rw_trim_advice_say (&advice);
}
