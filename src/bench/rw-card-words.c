/* rw-card-words.c: what the card of the next check says.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-card-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"

static char *
dup_number (double minutes)
{
  return rw_quantity_format_number (minutes, fabs (minutes) < 9.95 && minutes != rint (minutes) ? 1 : 0);
}

char *
rw_card_words_minutes (double minutes)
{
  g_autofree char *number = dup_number (minutes);

  /* Translators: minutes. */
  return g_strdup_printf (_ ("%s min"), number);
}

char *
rw_card_words_hazard (RwHazard hazard,
                      RwWho    who)
{
  return g_strdup_printf ("%s%s · %s", hazard > RW_HAZARD_LOW_VOLTAGE || who != RW_WHO_ANYONE ? "⚠ " : "",
                          rw_hazard_get_label (hazard), rw_who_get_label (who));
}

/* --- the setup ------------------------------------------------------------------------------------ */

RwSetup
rw_card_words_missing (const RwCheck *check,
                       RwSetup        now)
{
  RwSetup missing = { RW_SAID_NOT, RW_SAID_NOT, RW_SAID_NOT };

  if (check->power != RW_SAID_NOT && check->power != now.power_on)
    missing.power_on = check->power;
  if (check->board != RW_SAID_NOT && check->board != now.board_fitted)
    missing.board_fitted = check->board;
  if (check->warm == RW_SAID_YES && check->warm != now.warm)
    missing.warm = check->warm;
  return missing;
}

static void
append (GString    *list,
        const char *separator,
        const char *words)
{
  g_string_append_printf (list, "%s%s", list->len > 0 ? separator : "", words);
}

char *
rw_card_words_change (const RwSetup *missing)
{
  GString *list = g_string_new (NULL);

  if (missing->board_fitted != RW_SAID_NOT)
    append (list, ", ", missing->board_fitted ? _ ("power down, fit the board") : _ ("power down, pull the board"));
  else if (missing->power_on == RW_SAID_NO)
    append (list, ", ", _ ("power down"));
  if (missing->power_on == RW_SAID_YES)
    append (list, ", ", _ ("power up"));
  if (missing->warm == RW_SAID_YES)
    append (list, ", ", _ ("warm up"));
  return g_string_free (list, list->len == 0);
}

char *
rw_card_words_way_there (const RwSetup *missing,
                         const RwSetup *now)
{
  GString *text;

  if ((missing->power_on != RW_SAID_NOT && now->power_on == RW_SAID_NOT)
      || (missing->board_fitted != RW_SAID_NOT && now->board_fitted == RW_SAID_NOT))
    return NULL;
  text = g_string_new (NULL);
  if (missing->board_fitted != RW_SAID_NOT)
    append (text, " ",
            missing->board_fitted ? _ ("First switch off, wait for the rails to fall, and fit the board. Check the key "
                                       "and the row twice.")
                                  : _ ("First switch off, wait for the rails to fall, and take the board out."));
  if (missing->power_on != RW_SAID_NOT)
    append (text, " ", missing->power_on ? _ ("Then switch on.") : _ ("Switch off and pull the plug."));
  if (missing->warm == RW_SAID_YES)
    append (text, " ", _ ("Let it warm up first."));
  return g_string_free (text, FALSE);
}

char *
rw_card_words_time (const RwAdviceCheck *offer,
                    const RwSetup       *missing)
{
  g_autofree char *all = rw_card_words_minutes (offer->minutes);
  g_autofree char *change = rw_card_words_minutes (offer->setup_minutes);
  g_autofree char *own = rw_card_words_minutes (offer->minutes - offer->setup_minutes);
  g_autofree char *words = rw_card_words_change (missing);

  if (words == NULL || !(offer->setup_minutes > 0))
    return g_steal_pointer (&all);
  /* Translators: minutes in all, what is changed first ("power down, pull the board"), its minutes, those of the
   * check. */
  return g_strdup_printf (_ ("%s: %s %s, the check itself %s"), all, words, change, own);
}

/* --- why ------------------------------------------------------------------------------------------ */

char *
rw_card_words_account (const RwAdvice      *advice,
                       const RwAdviceCheck *offer)
{
  g_autofree char *with = rw_card_words_minutes (rint (offer->expected));
  g_autofree char *without = rw_card_words_minutes (rint (rw_advice_get_repairs_only (advice)));

  /* Translators: minutes expected in all with this check, and without any. */
  return g_strdup_printf (_ ("%s expected in all, %s without measuring."), with, without);
}

char *
rw_card_words_sure (const RwAdvice *advice)
{
  g_autofree char *sure = rw_advice_dup_sure (advice);
  g_autofree char *reach = rw_advice_dup_reach (advice);

  return sure != NULL && reach != NULL ? g_strdup_printf ("%s %s", sure, reach) : g_steal_pointer (&sure);
}

char *
rw_card_words_pair (const RwAdvice *advice)
{
  if (rw_advice_get_n_pairs (advice) == 0)
    return NULL;

  const RwAdvicePair *pair = rw_advice_get_pair (advice, 0);
  g_autofree char *minutes = rw_card_words_minutes (pair->minutes);

  if (!(pair->minutes >= 0.05))
    return NULL;
  /* Translators: two causes, minutes. */
  return g_strdup_printf (_ ("Tells “%s” from “%s”: that alone saves %s."), pair->a->title, pair->b->title, minutes);
}

char *
rw_card_words_more (double expected,
                    double best)
{
  const double more = expected - best;

  if (!(fabs (more) >= RW_CARD_AS_GOOD * best))
    return g_strdup (_ ("equally good"));

  g_autofree char *number = rw_quantity_format_number (fabs (more), fabs (more) < 9.95 ? 1 : 0);

  /* Translators: sign, minutes. */
  return g_strdup_printf (_ ("%s%s min expected"), more > 0 ? "+" : "−", number);
}

/* --- repairs -------------------------------------------------------------------------------------- */

char *
rw_card_words_was (const RwCause *cause)
{
  /* Translators: a cause, and the repair that cured it. */
  return g_strdup_printf (_ ("It was: %s. What cured it: %s."), cause->title, cause->repair.title);
}

const char *
rw_card_words_cost (int cost)
{
  static const char *const words[] = { N_ ("no parts needed"), N_ ("cheap"), N_ ("moderate cost"), N_ ("costly"),
                                       N_ ("dear") };

  return _ (words[CLAMP (cost, 0, (int) G_N_ELEMENTS (words) - 1)]);
}

char *
rw_card_words_steps (char **steps)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; steps != NULL && steps[i] != NULL; i++)
    g_string_append_printf (text, "%s%u. %s", i > 0 ? "\n" : "", i + 1, steps[i]);
  return g_string_free (text, FALSE);
}

char *
rw_card_words_recheck (const RwKnowledge *knowledge,
                       const RwCause     *cause)
{
  g_autoptr (GString) list = g_string_new (NULL);

  for (guint i = 0; cause->repair.recheck != NULL && cause->repair.recheck[i] != NULL; i++)
    {
      const RwCheck *check = rw_knowledge_find_check (knowledge, cause->repair.recheck[i]);

      if (check != NULL)
        append (list, "; ", check->title);
    }
  if (list->len == 0)
    return NULL;
  /* Translators: titles of checks. */
  return g_strdup_printf (_ ("Check again afterwards: %s."), list->str);
}

static gboolean
begins_with_caution (const RwCause *cause)
{
  return cause->repair.hazard >= RW_HAZARD_NEAR_MAINS && cause->repair.steps != NULL && cause->repair.steps[0] != NULL;
}

char *
rw_card_words_repair_steps (const RwCause *cause)
{
  return rw_card_words_steps (begins_with_caution (cause) ? cause->repair.steps + 1 : cause->repair.steps);
}

char *
rw_card_words_repair_safety (const RwCause *cause)
{
  if (begins_with_caution (cause))
    return g_strdup (cause->repair.steps[0]);
  return cause->repair.who == RW_WHO_ANYONE ? NULL : g_strdup (_ ("Local rules decide who may do it."));
}

char *
rw_card_words_why (RwAdvice            *advice,
                   const RwAdviceCheck *offer)
{
  const RwAdviceCheck *best = rw_advice_get_check (advice);
  g_autofree char *pair = best != NULL && best->check == offer->check ? rw_card_words_pair (advice) : NULL;

  return pair != NULL ? g_strdup_printf ("%s\n%s", offer->check->why, pair) : g_strdup (offer->check->why);
}

char *
rw_card_words_repair_facts (RwAdvice      *advice,
                            const RwCause *cause)
{
  if (advice == NULL)
    {
      g_autofree char *minutes = rw_card_words_minutes (cause->repair.minutes);

      /* Translators: minutes of a repair, what it costs ("cheap"). */
      return g_strdup_printf (_ ("%s · %s"), minutes, rw_card_words_cost (cause->repair.cost));
    }

  double proof = 0;
  const double all = rw_advice_get_repair_minutes (advice, cause, &proof);
  g_autofree char *own = rw_card_words_minutes (all - proof);
  g_autofree char *proving = rw_card_words_minutes (proof);

  /* Translators: minutes of a repair, minutes of proving that it was the cure, what it costs ("cheap"). */
  return g_strdup_printf (_ ("%s, and %s to prove it · %s"), own, proving, rw_card_words_cost (cause->repair.cost));
}

char *
rw_card_words_repair_kicker (RwAdvice      *advice,
                             const RwCause *cause)
{
  if (advice == NULL)
    /* Translators: a cause. */
    return g_strdup_printf (_ ("Repair: %s"), cause->title);

  const RwCauseBelief *belief = rw_belief_find_cause (rw_advice_get_belief (advice), cause->id);
  g_autofree char *chance = rw_quantity_format_chance (belief != NULL ? belief->p : 0);

  /* Translators: chance that this is the cause, the cause. */
  return g_strdup_printf (_ ("Repair · %s likely: %s"), chance, cause->title);
}

char *
rw_card_words_repair_why (RwAdvice      *advice,
                          const RwCause *cause,
                          gboolean       chosen)
{
  if (advice == NULL)
    return g_strdup (cause->detail);

  const RwCause *then = rw_advice_get_repair_then (advice);
  g_autofree char *sure = rw_card_words_sure (advice);
  GString *text = g_string_new (cause->detail);

  if (chosen && cause != rw_advice_get_repair (advice))
    return g_string_free (text, FALSE);
  if (sure != NULL)
    g_string_append_printf (text, "\n%s", sure);
  if (then != NULL)
    /* Translators: the other of two repairs. */
    g_string_append_printf (text, _ ("\nThen also: %s."), then->repair.title);
  return g_string_free (text, FALSE);
}
