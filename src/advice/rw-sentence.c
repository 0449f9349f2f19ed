/* rw-sentence.c: the one most useful sentence about how things stand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-sentence.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"

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

char *
rw_sentence_new (const RwBenchState *state,
                 gboolean           *danger)
{
  const RwSpotState *spot;
  char *stale;

  *danger = FALSE;
  for (guint pass = 0; pass < 2; pass++)
    for (guint i = 0; i < rw_bench_state_get_n_warnings (state); i++)
      {
        const RwWarning *warning = rw_bench_state_get_warning (state, i);

        if (warning->danger != (pass == 0))
          continue;
        *danger = warning->danger;
        return g_strdup (warning->text);
      }
  if ((spot = find_worst (state, RW_VERDICT_OUTSIDE, TRUE)) != NULL)
    return say_drop (spot);
  if ((spot = find_worst (state, RW_VERDICT_OUTSIDE, FALSE)) != NULL)
    return say_outside (spot);
  if ((stale = say_stale (state)) != NULL)
    return stale;
  if ((spot = find_worst (state, RW_VERDICT_CLOSE, FALSE)) != NULL)
    return say_close (spot);
  return say_well (state);
}
