/* rw-trim-words.c: the trim's advice as people read it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-trim-advice.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"
#include "rw-trim-evidence.h"

static const RwRail *
rail_of (const RwTrimSet *set,
         guint            i)
{
  return rw_profile_get_rail (set->profile, i);
}

/* No more digits than the value is sure of. */
static char *
format_expected (double value,
                 double u)
{
  return rw_quantity_format (value, u < 0.025 ? 0.01 : 0.1, RW_KIND_DC);
}

static char *
format_volts (double value)
{
  return rw_quantity_format (value, 0.01, RW_KIND_DC);
}

/* --- turning ------------------------------------------------------------------------------------ */

/* "+12 V about 11.7 V, −5 V about −4.66 V". @watch is left out. (transfer full) */
static char *
list_expected (const RwTrimSet *set,
               guint            watch)
{
  GString *list = g_string_new (NULL);

  for (guint i = 0; i < rw_profile_get_n_rails (set->profile); i++)
    {
      RwTrimExpected it;

      if (i == watch || !rw_trim_fit_expect (set->fit, i, set->window.best, 0, &it))
        continue;

      g_autofree char *value = format_expected (it.value, it.u);

      if (list->len > 0)
        g_string_append (list, ", ");
      /* Translators: rail, value expected of it: "+12 V about 11.7 V". */
      g_string_append_printf (list, _ ("%s about %s"), rail_of (set, i)->label, value);
    }
  return g_string_free (list, FALSE);
}

static char *
say_turn (const RwTrimAdvice *advice)
{
  const RwTrimSet *set = advice->set;
  const char *label = rail_of (set, advice->watch)->label;
  g_autofree char *by = format_volts (fabs (advice->to - advice->now));
  g_autofree char *to = format_volts (advice->to);
  g_autofree char *others = list_expected (set, advice->watch);
  g_autofree char *chance = rw_quantity_format_chance (set->chance);
  g_autofree char *turn = advice->up
                              /* Translators: amount, rail, value: "Up 0.14 V on +5 V, to 5.06 V." */
                              ? g_strdup_printf (_ ("Up %s on %s, to %s."), by, label, to)
                              : g_strdup_printf (_ ("Down %s on %s, to %s."), by, label, to);

  if (others[0] == '\0')
    return g_steal_pointer (&turn);
  if (set->chance >= RW_VERDICT_SURE)
    /* Translators: "Down 0.14 V on +5 V, to 5.06 V.", list of rails with values. */
    return g_strdup_printf (_ ("%s Then %s."), turn, others);
  /* Translators: "Down 0.14 V on +5 V, to 5.06 V.", list of rails with values, chance. */
  return g_strdup_printf (_ ("%s Then %s; all inside: %s sure."), turn, others, chance);
}

static char *
say_leave (const RwTrimAdvice *advice)
{
  const RwTrimSet *set = advice->set;
  g_autofree char *now = format_volts (advice->x);

  /* Translators: reference rail, its value. */
  return g_strdup_printf (_ ("Leave the trim where it is: with %s at %s every rail is inside with room to spare."),
                          rail_of (set, set->reference)->label, now);
}

/* --- what stands in the way --------------------------------------------------------------------- */

static char *
say_no_window (const RwTrimAdvice *advice)
{
  const RwTrimSet *set = advice->set;
  const RwTrimWindow *window = &set->window;
  const char *low = rail_of (set, (guint) window->low_rail)->label;
  const char *high = rail_of (set, (guint) window->high_rail)->label;
  g_autofree char *why = rw_trim_evidence_why (set);
  g_autofree char *gap = NULL;

  if (window->low_rail == window->high_rail)
    /* Translators: rail, what that usually means (a sentence, may be empty). */
    return g_strdup_printf (_ ("No position of the trim brings %s inside: it does not move with the others. %s"), low,
                            why != NULL ? why : "");
  gap = format_volts (window->gap);
  /* Translators: rail, rail, volts between them on the reference, what that usually means (a sentence). */
  return g_strdup_printf (_ ("No position of the trim suits all rails: %s and %s are %s apart. %s"), low, high, gap,
                          why != NULL ? why : "");
}

static char *
say_wiring (const RwTrimAdvice *advice)
{
  const char *label = rail_of (advice->set, advice->rail)->label;
  g_autofree char *drop = isnan (advice->drop) ? NULL : rw_quantity_format (advice->drop, 0.01, RW_KIND_DC);

  if (drop == NULL)
    return g_strdup (_ ("Too much is lost on the way to the board: mend the wiring before the trim is touched."));
  /* Translators: rail, volts. */
  return g_strdup_printf (_ ("%s loses %s between the terminals and the board: mend the wiring, and leave the trim "
                             "alone until then."),
                          label, drop);
}

static char *
say_never (const RwTrimAdvice *advice)
{
  const RwRail *rail = rail_of (advice->set, advice->rail);
  g_autofree char *most = format_volts (rail->never_above);

  /* Translators: rail, volts. */
  return g_strdup_printf (_ ("Do not turn the trim: %s could pass %s, more than the board survives. Find out why this "
                             "supply needs to stand so high."),
                          rail->label, most);
}

char *
rw_trim_advice_say (const RwTrimAdvice *advice)
{
  const char *label = advice->set != NULL ? rail_of (advice->set, advice->rail)->label : NULL;

  switch (advice->says)
    {
    case RW_TRIM_SAYS_READ:
      /* Translators: rail, place. */
      return g_strdup_printf (_ ("Read %s, %s, too: then it can be said what the trim does to every rail."), label,
                              rw_place_get_label (advice->set->place));
    case RW_TRIM_SAYS_LOAD:
      return g_strdup (_ ("Leave the trim alone while the board is out: without its load the supply reads otherwise. "
                          "Set it with the board running."));
    case RW_TRIM_SAYS_BOARD:
      /* Translators: rail. */
      return g_strdup_printf (_ ("The trim is set by what reaches the board: read %s there before it is turned."), label);
    case RW_TRIM_SAYS_TERMINALS:
      /* Translators: rail. */
      return g_strdup_printf (_ ("Before the trim goes up, read %s at the terminals: what is lost on the way must not be "
                                 "trimmed away."),
                              label);
    case RW_TRIM_SAYS_WIRING:
      return say_wiring (advice);
    case RW_TRIM_SAYS_NEVER:
      return say_never (advice);
    case RW_TRIM_SAYS_NO_WINDOW:
      return say_no_window (advice);
    case RW_TRIM_SAYS_TURN:
      return say_turn (advice);
    case RW_TRIM_SAYS_LEAVE:
      return say_leave (advice);
    case RW_TRIM_SAYS_NOTHING:
    default:
      return NULL;
    }
}

/* --- while it is turned ------------------------------------------------------------------------- */

/* Volts on the reference below which nothing was turned. */
static const double nothing_turned = 0.02;

/* Where the reference stood when it was last read; NaN when it never was. */
static double
last_x (const RwTrimSet *set)
{
  for (guint i = set->positions->len; i-- > 0;)
    {
      const RwTrimPosition *position = &g_array_index (set->positions, RwTrimPosition, i);

      if (!isnan (position->x))
        return position->x;
    }
  return NAN;
}

/* The end of what is expected of rail @i that is nearest the limit on that side; both signed volts. */
static gboolean
is_past (const RwTrimSet      *set,
         const RwTrimExpected *it,
         guint                 i,
         gboolean              up,
         double               *limit)
{
  const gboolean high = up == (rail_of (set, i)->nominal > 0);

  *limit = high ? set->hi[i] : set->lo[i];
  return high ? it->hi > *limit : it->lo < *limit;
}

static char *
say_danger (const RwRail         *rail,
            const RwTrimExpected *it)
{
  g_autofree char *value = format_expected (it->value, it->u);
  g_autofree char *most = format_volts (rail->never_above);

  /* Translators: rail, expected value, limit. */
  return g_strdup_printf (_ ("Stop turning: %s is expected at %s, and may pass %s, which a board does not survive. Turn "
                             "back down."),
                          rail->label, value, most);
}

char *
rw_trim_live_warn (const RwTrimSet  *set,
                   const RwTrimLive *live,
                   gboolean         *danger)
{
  const double last = last_x (set);
  const gboolean up = live->x > last;
  char *text = NULL;

  *danger = FALSE;
  if (!(fabs (live->x - last) > MAX (nothing_turned, 3 * live->u_x)))
    return NULL;
  for (guint i = 0; i < live->n_rails; i++)
    {
      const RwRail *rail = rail_of (set, i);
      const RwTrimExpected *it = &live->rails[i];
      double limit;

      if (i == live->from || isnan (it->value))
        continue;
      if (up && MAX (fabs (it->lo), fabs (it->hi)) > rail->never_above)
        {
          *danger = TRUE;
          g_free (text);
          return say_danger (rail, it);
        }
      if (text != NULL || !is_past (set, it, i, up, &limit))
        continue;

      g_autofree char *value = format_expected (it->value, it->u);
      g_autofree char *words = format_volts (limit);

      /* Translators: rail, expected value, limit. */
      text = g_strdup_printf (_ ("Slowly: %s is expected at %s, and about to pass its limit of %s."), rail->label, value,
                              words);
    }
  return text;
}
