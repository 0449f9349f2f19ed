/* rw-warm-up-words.c: a warm-up in words.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-warm-up.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"

static const char *
verdict_words (RwWarmUpVerdict verdict)
{
  switch (verdict)
    {
    case RW_WARM_UP_GOOD:
      return _("That is steady.");
    case RW_WARM_UP_FAIR:
      return _("That is more than a good supply drifts, and less than what calls for a repair.");
    case RW_WARM_UP_BAD:
      return _("That is too much: compare the terminals with the board to find out where it is lost.");
    case RW_WARM_UP_STEPPED:
      return _("That is no warming: a contact let go or took hold, a relay, or a load that was switched. Wiggle the "
               "plugs, and think of what was switched then.");
    case RW_WARM_UP_UNSURE:
      return _("The error is too large to call it good or bad: read again later, or with a finer range.");
    case RW_WARM_UP_TOO_FEW:
    default:
      return _("A quarter of an hour at least is needed to judge it.");
    }
}

static char *
settle_words (const RwWarmUp *self)
{
  if (!self->approach)
    return g_strdup (self->settled ? _("It has settled.") : _("When it settles cannot be told yet."));

  g_autofree char *age = rw_quantity_format_age (self->settle_at);

  return g_strdup_printf (self->settled ? _("It settled %s after power on.") : _("It will settle about %s after power on."),
                          age);
}

/* Minutes after power on, a digit after the mark where the limits are close. (transfer full) */
static char *
minutes_words (const RwWarmUp *self,
               double          seconds)
{
  return rw_quantity_format_number (seconds / 60, self->step_to - self->step_from < 180 ? 1 : 0);
}

static char *
describe_step (const RwWarmUp *self,
               double          resolution)
{
  g_autofree char *size = rw_quantity_format (fabs (self->step), resolution, RW_KIND_DC);
  g_autofree char *error = rw_quantity_format_u (self->u_step, RW_KIND_DC);
  g_autofree char *at = minutes_words (self, self->step_at);
  g_autofree char *from = minutes_words (self, self->step_from);
  g_autofree char *to = minutes_words (self, self->step_to);
  /* Translators: size, its error, minutes after power on: about when, not before, not after; a sentence. */
  g_autofree char *text = g_strdup_printf (self->step < 0 ? _("It stepped down %s (%s) at %s min, between %s and %s min. %s")
                                                          : _("It stepped up %s (%s) at %s min, between %s and %s min. %s"),
                                           size, error, at, from, to, verdict_words (self->verdict));

  if (isnan (self->drift))
    return g_steal_pointer (&text);

  g_autofree char *drift = rw_quantity_format_signed (self->drift, resolution, RW_KIND_DC);
  g_autofree char *drift_error = rw_quantity_format_u (self->u, RW_KIND_DC);
  g_autofree char *span = rw_quantity_format_age (self->span);
  /* Translators: drift, its error, time. */
  g_autofree char *beside = g_strdup_printf (_("Beside it a drift of %s (%s) in %s."), drift, drift_error, span);

  return g_strdup_printf ("%s %s", text, beside);
}

static char *
describe_drift (const RwWarmUp *self,
                double          resolution)
{
  g_autofree char *drift = rw_quantity_format_signed (self->drift, resolution, RW_KIND_DC);
  g_autofree char *error = rw_quantity_format_u (self->u, RW_KIND_DC);
  g_autofree char *span = rw_quantity_format_age (self->span);
  g_autofree char *worth = rw_quantity_format_number (self->n_eff, 1);
  g_autofree char *settle = settle_words (self);

  /* Translators: drift, its error, time, number of readings, number that they are worth, two sentences. */
  return g_strdup_printf (ngettext ("Drift %s (%s) in %s, from %u reading worth %s independent ones. %s %s",
                                    "Drift %s (%s) in %s, from %u readings worth %s independent ones. %s %s", self->n),
                          drift, error, span, self->n, worth, verdict_words (self->verdict), settle);
}

char *
rw_warm_up_describe (const RwWarmUp *self,
                     double          nominal)
{
  const double resolution = fabs (nominal) < 20 ? 0.001 : 0.01;

  if (!isnan (self->step))
    return describe_step (self, resolution);
  if (isnan (self->drift))
    return g_strdup (_("No drift yet: it takes two readings of the same spot with the same meter."));
  return describe_drift (self, resolution);
}

const char *
rw_warm_up_where_describe (RwWarmUpWhere where)
{
  switch (where)
    {
    case RW_WARM_UP_WHERE_STILL:
      return _("The rail does not fall at the board.");
    case RW_WARM_UP_WHERE_SUPPLY:
      return _("Terminals and board both fall: the supply itself sags as it warms.");
    case RW_WARM_UP_WHERE_WIRING:
      return _("Only the board falls: a plug, a wire or the edge connector heats up.");
    case RW_WARM_UP_WHERE_STEP_BEFORE:
      return _("Terminals and board stepped together: a load came or went, or the supply itself.");
    case RW_WARM_UP_WHERE_STEP_BEHIND:
      return _("Only the board stepped: a plug, a wire or the edge connector between it and the terminals.");
    case RW_WARM_UP_WHERE_UNKNOWN:
    default:
      return "";
    }
}
