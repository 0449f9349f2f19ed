/* rw-sentence.c: the one most useful sentence about how things stand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-sentence.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"
#include "rw-trim-advice.h"
#include "rw-trim-recheck.h"

static const char *
label_of (const RwSpotState *spot)
{
  return spot->rail != NULL ? spot->rail->label : _ ("Ground");
}

static gboolean
is_drop (const RwSpotState *spot)
{
  return spot->reading.place == RW_PLACE_WIRE;
}

static int
priority_of (const RwSpotState *spot)
{
  return spot->rail != NULL ? spot->rail->priority : 0;
}

/* Current readings with a verdict: the most important rail first, then the worst margin. */
static const RwSpotState *
find_worst (const RwBenchState *state,
            RwVerdict           verdict,
            gboolean            drops)
{
  const RwSpotState *worst = NULL;

  for (guint i = 0; i < rw_bench_state_get_n_spots (state); i++)
    {
      const RwSpotState *spot = rw_bench_state_get_spot (state, i);

      if (spot->stale || spot->verdict != verdict || is_drop (spot) != drops)
        continue;
      if (worst == NULL || priority_of (spot) < priority_of (worst)
          || (priority_of (spot) == priority_of (worst) && spot->margin < worst->margin))
        worst = spot;
    }
  return worst;
}

static char *
say_outside (const RwSpotState *spot)
{
  const gboolean above = spot->reading.value > spot->hi;
  const double by = above ? spot->reading.value - spot->hi : spot->lo - spot->reading.value;
  const char *place = rw_place_get_label (spot->reading.place);
  g_autofree char *amount = rw_quantity_format (by, spot->reading.step, spot->reading.kind);
  g_autofree char *limit = rw_quantity_format (above ? spot->hi : spot->lo, 0.01, spot->reading.kind);

  if (spot->reading.kind == RW_KIND_RIPPLE)
    /* Translators: rail, place, amount, limit. */
    return g_strdup_printf (_ ("Ripple on %s, %s, is %s over its limit of %s."), label_of (spot), place, amount, limit);
  if (above)
    /* Translators: rail, place, amount, limit. */
    return g_strdup_printf (_ ("%s, %s, is %s above its limit of %s."), label_of (spot), place, amount, limit);
  /* Translators: rail, place, amount, limit. */
  return g_strdup_printf (_ ("%s, %s, is %s below its limit of %s."), label_of (spot), place, amount, limit);
}

static char *
say_drop (const RwSpotState *spot)
{
  g_autofree char *drop = rw_quantity_format (spot->reading.value, spot->reading.step, spot->reading.kind);
  g_autofree char *limit = rw_quantity_format (spot->hi, 0.001, spot->reading.kind);

  /* Translators: rail or ground, drop, limit. */
  return g_strdup_printf (_ ("%s loses %s on the way, more than %s: mend the wiring before the trim is touched."),
                          label_of (spot), drop, limit);
}

static char *
say_stale (const RwBenchState *state)
{
  GString *rails = g_string_new (NULL);
  char *sentence = NULL;

  for (guint i = 0; i < rw_bench_state_get_n_spots (state); i++)
    {
      const RwSpotState *spot = rw_bench_state_get_spot (state, i);

      if (!spot->stale || spot->reading.kind != RW_KIND_DC)
        continue;
      g_string_append_printf (rails, "%s%s (%s)", rails->len > 0 ? ", " : "", label_of (spot),
                              rw_place_get_label (spot->reading.place));
    }
  if (rails->len > 0)
    /* Translators: list of rails with their places. */
    sentence = g_strdup_printf (_ ("Something was changed since; take again: %s."), rails->str);
  g_string_free (rails, TRUE);
  return sentence;
}

static char *
say_close (const RwSpotState *spot)
{
  g_autofree char *u = rw_quantity_format_u (spot->u, spot->reading.kind);

  /* Translators: rail, place, uncertainty. */
  return g_strdup_printf (_ ("%s, %s, is too close to its limit to call with this meter (%s)."), label_of (spot),
                          rw_place_get_label (spot->reading.place), u);
}

/* Every rail of the profile read at the board or the terminals, none stale, all inside. */
static char *
say_well (const RwBenchState *state)
{
  RwProfile *profile = rw_bench_state_get_profile (state);
  guint measured = 0;

  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    measured += rw_bench_state_find_rail (state, rw_profile_get_rail (profile, i)->id) != NULL;
  if (measured == 0)
    return g_strdup (_ ("Say what the cabinet does, or type the first reading."));
  if (measured < rw_profile_get_n_rails (profile))
    return g_strdup (_ ("What was measured is inside its limits; not every rail has been measured."));
  return g_strdup (_ ("Every rail is inside its limits."));
}

/* --- the trim ------------------------------------------------------------------------------------- */

/* "Read again after the turn: +5 V, then −5 V, +12 V (board)." */
static char *
say_recheck (const RwBenchState *state)
{
  RwTrimRecheck recheck;
  char *sentence = NULL;

  rw_trim_recheck_init (&recheck, state);
  if (recheck.n_due > 0)
    {
      RwProfile *profile = rw_bench_state_get_profile (state);
      g_autoptr (GString) rest = g_string_new (NULL);
      const char *first = rw_profile_get_rail (profile, recheck.due[0])->label;
      const char *place = rw_place_get_label (recheck.place);

      for (guint i = 1; i < recheck.n_due; i++)
        g_string_append_printf (rest, "%s%s", i > 1 ? ", " : "", rw_profile_get_rail (profile, recheck.due[i])->label);
      if (rest->len > 0)
        /* Translators: place, rail, list of rails. */
        sentence = g_strdup_printf (_ ("Read again after the turn, %s: %s next, then %s."), place, first, rest->str);
      else
        /* Translators: place, rail. */
        sentence = g_strdup_printf (_ ("Read again after the turn, %s: only %s is left."), place, first);
    }
  rw_trim_recheck_clear (&recheck);
  return sentence;
}

static char *
say_rechecked (const RwBenchState *state)
{
  RwTrimRecheck recheck;

  rw_trim_recheck_init (&recheck, state);

  const gboolean complete = recheck.complete;

  rw_trim_recheck_clear (&recheck);
  return complete ? g_strdup (_ ("Recheck complete: every rail was read again after the turn, and is inside its limits."))
                  : NULL;
}

/* What to do instead of trimming, or how far to turn: worth saying when a rail is outside. */
static gboolean
helps_outside (RwTrimSays says)
{
  switch (says)
    {
    case RW_TRIM_SAYS_LOAD:
    case RW_TRIM_SAYS_TERMINALS:
    case RW_TRIM_SAYS_WIRING:
    case RW_TRIM_SAYS_NEVER:
    case RW_TRIM_SAYS_NO_WINDOW:
    case RW_TRIM_SAYS_TURN:
      return TRUE;
    case RW_TRIM_SAYS_NOTHING:
    case RW_TRIM_SAYS_READ:
    case RW_TRIM_SAYS_BOARD:
    case RW_TRIM_SAYS_LEAVE:
    default:
      return FALSE;
    }
}

/* The screw stands elsewhere than at the last reading, and the meter sees where. */
static gboolean
is_turning (const RwSentenceLive *now)
{
  return now != NULL && now->live != NULL && now->set != NULL && !now->set->is_current && !isnan (now->live->x);
}

/* --- dangers and warnings ------------------------------------------------------------------------- */

/* The first warning that is a danger, or the first that is none. (nullable) */
static const RwWarning *
find_warning (const RwBenchState *state,
              gboolean            danger)
{
  for (guint i = 0; i < rw_bench_state_get_n_warnings (state); i++)
    {
      const RwWarning *warning = rw_bench_state_get_warning (state, i);

      if (warning->danger == danger)
        return warning;
    }
  return NULL;
}

/* Dangers, a limit about to be passed, warnings: what comes before all measuring. NULL: none. */
static char *
say_first (const RwBenchState   *state,
           const RwSentenceLive *now,
           gboolean             *danger)
{
  const RwWarning *warning = find_warning (state, TRUE);
  char *text = NULL;

  *danger = warning != NULL;
  if (warning == NULL && now != NULL && now->live != NULL && now->set != NULL)
    text = rw_trim_live_warn (now->set, now->live, danger);
  if (text != NULL)
    return text;
  if (warning == NULL)
    warning = find_warning (state, FALSE);
  return warning != NULL ? g_strdup (warning->text) : NULL;
}

char *
rw_sentence_new (const RwBenchState   *state,
                 const RwSentenceLive *now,
                 gboolean             *danger)
{
  const RwSpotState *spot;
  RwTrimAdvice trim;
  char *text = say_first (state, now, danger);

  if (text != NULL)
    return text;
  if ((spot = find_worst (state, RW_VERDICT_OUTSIDE, TRUE)) != NULL)
    return say_drop (spot);
  rw_trim_advice_work_out (state, now != NULL ? now->rail : NULL, now != NULL ? now->live : NULL, &trim);
  if (trim.says == RW_TRIM_SAYS_WIRING)
    return rw_trim_advice_say (&trim);
  if ((spot = find_worst (state, RW_VERDICT_OUTSIDE, FALSE)) != NULL)
    return spot->reading.kind == RW_KIND_DC && helps_outside (trim.says) ? rw_trim_advice_say (&trim)
                                                                         : say_outside (spot);
  if (is_turning (now) && (trim.says == RW_TRIM_SAYS_TURN || trim.says == RW_TRIM_SAYS_LEAVE))
    return rw_trim_advice_say (&trim);
  if ((text = say_recheck (state)) != NULL || (text = say_stale (state)) != NULL)
    return text;
  if ((spot = find_worst (state, RW_VERDICT_CLOSE, FALSE)) != NULL)
    return trim.says == RW_TRIM_SAYS_TURN ? rw_trim_advice_say (&trim) : say_close (spot);
  if (trim.says == RW_TRIM_SAYS_TURN || trim.says == RW_TRIM_SAYS_NO_WINDOW)
    return rw_trim_advice_say (&trim);
  if ((text = say_rechecked (state)) != NULL)
    return text;
  return say_well (state);
}
