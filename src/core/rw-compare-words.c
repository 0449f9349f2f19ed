/* rw-compare-words.c: what two sessions have to say of each other, in words.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-compare-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"

/* --- where -------------------------------------------------------------------------------------- */

/* What goes without saying is left out: the power on, the board fitted where it is touched. (nullable) */
static char *
setup_words (RwSetup setup,
             RwPlace place)
{
  if (setup.power_on == RW_SAID_YES)
    setup.power_on = RW_SAID_NOT;
  if (setup.board_fitted == RW_SAID_YES && place != RW_PLACE_TERMINALS)
    setup.board_fitted = RW_SAID_NOT;
  if (setup.power_on == RW_SAID_NOT && setup.board_fitted == RW_SAID_NOT && setup.warm == RW_SAID_NOT)
    return NULL;

  const RwEvent event = rw_event_make_setup (0, setup); /* owns nothing */

  return rw_event_describe (&event, NULL);
}

static const char *
kind_words (RwKind kind)
{
  switch (kind)
    {
    case RW_KIND_RIPPLE:
      return _ ("ripple");
    case RW_KIND_OHMS:
      return _ ("resistance");
    case RW_KIND_AMPS:
      return _ ("current");
    case RW_KIND_CELSIUS:
      return _ ("temperature");
    case RW_KIND_DC:
    case RW_N_KINDS:
    default:
      return NULL;
    }
}

static void
take_part (GString    *out,
           const char *part)
{
  if (part != NULL)
    g_string_append_printf (out, "%s%s", out->len > 0 ? ", " : "", part);
}

static char *
place_words (const char *label,
             RwPlace     place,
             RwKind      kind,
             RwSetup     setup)
{
  GString *out = g_string_new (label);
  g_autofree char *how = setup_words (setup, place);

  take_part (out, rw_place_get_label (place));
  take_part (out, kind_words (kind));
  take_part (out, how);
  return g_string_free (out, FALSE);
}

char *
rw_compare_words_spot (const RwCompareItem *item)
{
  g_autofree char *x = NULL, *subject = NULL;

  switch (item->what)
    {
    case RW_COMPARE_SLOPE:
      /* Translators: rail, reference rail: how far the first moves with the second. */
      subject = g_strdup_printf (_ ("%s for each volt on %s"), item->label, item->reference);
      break;
    case RW_COMPARE_LEVEL:
      x = rw_quantity_format (item->x, 0.01, RW_KIND_DC);
      /* Translators: rail, reference rail, volts. */
      subject = g_strdup_printf (_ ("%s with %s at %s"), item->label, item->reference, x);
      break;
    case RW_COMPARE_READING:
    case RW_N_COMPARE_WHATS:
    default:
      subject = g_strdup (item->label);
      break;
    }
  return place_words (subject, item->place, item->kind, item->setup);
}

/* --- how much ----------------------------------------------------------------------------------- */

/* Last digit to show: the meter's, or one that goes with the uncertainty. */
static double
step_of (const RwCompareItem *item)
{
  if (item->step > 0)
    return item->step;
  return item->what == RW_COMPARE_READING ? 0.001 : 0.01;
}

char *
rw_compare_words_value (const RwCompareItem  *item,
                        const RwCompareValue *value)
{
  if (isnan (value->value))
    return g_strdup (_ ("overload"));
  return rw_quantity_format (value->value, step_of (item), item->kind);
}

/* A rail's strength and a drop's size are magnitudes; everything else goes up and down. */
static gboolean
is_magnitude (const RwCompareItem *item)
{
  return item->what != RW_COMPARE_SLOPE && item->kind == RW_KIND_DC
         && signbit (item->then.value) == signbit (item->now.value);
}

char *
rw_compare_words_difference (const RwCompareItem *item)
{
  const gboolean magnitude = is_magnitude (item);
  const gboolean more = magnitude ? fabs (item->now.value) > fabs (item->then.value) : item->difference > 0;

  if (isnan (item->difference))
    return g_strdup ("");
  if (fabs (item->difference) < step_of (item) / 2)
    return g_strdup (_ ("no difference"));

  g_autofree char *size = rw_quantity_format (fabs (item->difference), step_of (item), item->kind);
  g_autofree char *u = isnan (item->u) ? g_strdup (_ ("error not known")) : rw_quantity_format_u (item->u, item->kind);

  /* Translators: all of these: how much, and how sure: “weaker by 0.11 V (±0.03 V)”. */
  if (!magnitude)
    return more ? g_strdup_printf (_ ("up by %s (%s)"), size, u) : g_strdup_printf (_ ("down by %s (%s)"), size, u);
  if (item->place == RW_PLACE_WIRE)
    return more ? g_strdup_printf (_ ("%s more is lost (%s)"), size, u)
                : g_strdup_printf (_ ("%s less is lost (%s)"), size, u);
  return more ? g_strdup_printf (_ ("stronger by %s (%s)"), size, u)
              : g_strdup_printf (_ ("weaker by %s (%s)"), size, u);
}

/* Of what is worth seeing, the share below which a change is called little: a tenth of a margin. */
static const double little = 0.2;

/* --- what follows ------------------------------------------------------------------------------- */

static const char *
why_words (RwCompareWhy why)
{
  switch (why)
    {
    case RW_COMPARE_WHY_OVERLOAD:
      return _ ("overload is no value");
    case RW_COMPARE_WHY_METER:
      return _ ("nobody said how good the meter is");
    case RW_COMPARE_WHY_COARSE:
      return _ ("a change that matters could hide in their errors");
    case RW_COMPARE_WHY_NONE:
    default:
      return NULL;
    }
}

/* (nullable): nothing new to say. */
static char *
verdict_words (const RwCompareItem *item)
{
  if (item->then.verdict == RW_VERDICT_NONE || item->now.verdict == RW_VERDICT_NONE)
    return NULL;
  if (item->then.verdict == item->now.verdict)
    /* Translators: a verdict: “still inside”. */
    return g_strdup_printf (_ ("still %s"), rw_verdict_get_label (item->now.verdict));
  /* Translators: two verdicts: “inside then, outside now”. */
  return g_strdup_printf (_ ("%s then, %s now"), rw_verdict_get_label (item->then.verdict),
                          rw_verdict_get_label (item->now.verdict));
}

char *
rw_compare_words_result (const RwCompareItem *item)
{
  GString *out = g_string_new (rw_compare_result_get_label (item->result));
  g_autofree char *verdict = verdict_words (item);
  const char *why = item->result == RW_COMPARE_UNTOLD ? why_words (item->why) : NULL;

  if (why != NULL)
    g_string_append_printf (out, " (%s)", why);
  if (item->result == RW_COMPARE_CHANGED && fabs (item->difference) < little * item->worth)
    g_string_append_printf (out, " (%s)", _ ("by little beside its limits"));
  if (verdict != NULL)
    g_string_append_printf (out, "; %s", verdict);
  if (item->then.before_repair || item->now.before_repair)
    g_string_append_printf (out, "; %s", item->now.before_repair ? _ ("read before this visit's repair")
                                                                 : _ ("read before that visit's repair"));
  if (item->setup_unsure)
    g_string_append_printf (out, "; %s", _ ("once nobody said how it was set up"));
  return g_string_free (out, FALSE);
}

char *
rw_compare_words_item (const RwCompareItem *item)
{
  g_autofree char *spot = rw_compare_words_spot (item);
  g_autofree char *then = rw_compare_words_value (item, &item->then);
  g_autofree char *now = rw_compare_words_value (item, &item->now);
  g_autofree char *difference = rw_compare_words_difference (item);
  g_autofree char *result = rw_compare_words_result (item);

  if (difference[0] == '\0')
    /* Translators: where; value then; value now; what follows from it. */
    return g_strdup_printf (_ ("%s: %s then, %s now; %s"), spot, then, now, result);
  /* Translators: where; value then; value now; the difference; what follows from it. */
  return g_strdup_printf (_ ("%s: %s then, %s now, %s; %s"), spot, then, now, difference, result);
}

char *
rw_compare_words_left (const RwCompareLeft *left)
{
  g_autofree char *spot = place_words (left->label, left->place, left->kind, left->setup);
  const char *why = left->outdated  ? _ ("outdated at the end of one of the two, and not read again")
                    : left->in_then ? _ ("read then only")
                                    : _ ("read now only");

  return g_strdup_printf ("%s: %s", spot, why);
}

static char *
limit_words (double lo,
             double hi)
{
  if (!isfinite (hi))
    return g_strdup (_ ("none"));

  g_autofree char *high = rw_quantity_format (hi, 0.001, RW_KIND_DC);

  if (!isfinite (lo))
    return g_steal_pointer (&high);

  g_autofree char *low = rw_quantity_format (lo, 0.001, RW_KIND_DC);

  /* Translators: two values with units. */
  return g_strdup_printf (_ ("%s to %s"), low, high);
}

char *
rw_compare_words_limit (const RwCompareLimit *limit)
{
  g_autofree char *then = limit_words (limit->then_lo, limit->then_hi);
  g_autofree char *now = limit_words (limit->now_lo, limit->now_hi);

  /* Translators: rail, which limit, the limit then, the limit now. */
  return g_strdup_printf (_ ("%s, %s: %s then, %s now"), limit->label, limit->name, then, now);
}

static const char *
symptom_state (gboolean       said,
               RwSymptomState state)
{
  if (!said)
    return _ ("not spoken of");
  return state == RW_SYMPTOM_PRESENT ? _ ("there") : state == RW_SYMPTOM_ABSENT ? _ ("not there") : _ ("cured");
}

char *
rw_compare_words_symptom (const RwCompareSymptom *symptom)
{
  /* Translators: how a symptom stood at the end of either visit: “there then, cured now”. */
  return g_strdup_printf (_ ("%s then, %s now"), symptom_state (symptom->then_said, symptom->then),
                          symptom_state (symptom->now_said, symptom->now));
}

/* --- the two as a whole ------------------------------------------------------------------------- */

char *
rw_compare_words_headline (const RwCompare *self)
{
  const guint n = rw_compare_get_n_items (self), changed = rw_compare_get_n_results (self, RW_COMPARE_CHANGED),
              untold = rw_compare_get_n_results (self, RW_COMPARE_UNTOLD);

  if (n == 0)
    return g_strdup (_ ("Nothing can be compared: no spot was read in both and is still valid at the end."));

  GString *out = g_string_new (NULL);

  if (changed > 0)
    g_string_append_printf (out, ngettext ("%u of %u values changed beyond the meters' errors.",
                                           "%u of %u values changed beyond the meters' errors.", changed),
                            changed, n);
  else if (untold < n)
    g_string_append_printf (out, ngettext ("Nothing changed beyond the meters' errors: %u value was compared.",
                                           "Nothing changed beyond the meters' errors: %u values were compared.", n),
                            n);
  if (untold > 0 && out->len > 0)
    g_string_append_c (out, ' ');
  if (untold > 0)
    g_string_append_printf (out, ngettext ("Of %u these meters cannot tell.", "Of %u these meters cannot tell.", untold),
                            untold);
  return g_string_free (out, FALSE);
}

char *
rw_compare_words_method (const RwCompare *self)
{
  static const char *const meters[RW_N_COMPARE_METERS] = {
    N_ ("What per cent a meter is off counts once where its name and figures are the same, twice otherwise."),
    N_ ("It was one meter both times: what per cent it is off hardly counts."),
    N_ ("They were two meters, or it was adjusted in between: what per cent they are off counts for both."),
  };
  const guint n = rw_compare_get_n_tests (self);
  g_autofree char *many
      = g_strdup_printf (ngettext ("%u pair was looked at; a change is called where chance would do so once in 20 visits at "
                                   "most.",
                                   "%u pairs were looked at, and that is allowed for: chance would call any change at all "
                                   "once in 20 visits at most.",
                                   n),
                         n);

  return g_strconcat (_ (meters[rw_compare_get_meters (self)]), " ", many, NULL);
}

char *
rw_compare_words_cabinet (const RwCompare *self)
{
  const RwSessionHeader *header = rw_session_get_header (rw_compare_get_now (self));

  if (header->cabinet_tag == NULL || header->cabinet_tag[0] == '\0')
    return g_strdup (header->cabinet_name[0] != '\0' ? header->cabinet_name : _ ("Cabinet without a name"));
  return g_strconcat (header->cabinet_name, " · ", header->cabinet_tag, NULL);
}

char *
rw_compare_words_date (RwSession *session)
{
  return g_date_time_format (rw_session_get_header (session)->started, "%Y-%m-%d");
}

char *
rw_compare_words_dates (const RwCompare *self)
{
  g_autofree char *then = rw_compare_words_date (rw_compare_get_then (self));
  g_autofree char *now = rw_compare_words_date (rw_compare_get_now (self));

  if (g_str_equal (then, now))
    {
      g_free (then);
      g_free (now);
      then = g_date_time_format (rw_session_get_header (rw_compare_get_then (self))->started, "%Y-%m-%d %H:%M");
      now = g_date_time_format (rw_session_get_header (rw_compare_get_now (self))->started, "%Y-%m-%d %H:%M");
    }
  /* Translators: two dates. */
  return g_strdup_printf (_ ("%s and %s"), then, now);
}
