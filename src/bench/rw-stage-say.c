/* rw-stage-say.c: the bring-up in short words and shapes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-stage-say.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"

/* (transfer full) */
static char *
say_state (const RwAsked *asked)
{
  g_autofree char *value = isnan (asked->value) ? NULL : rw_quantity_format (asked->value, asked->step, asked->kind);

  switch (asked->state)
    {
    case RW_ASKED_READ:
      if (asked->verdict == RW_VERDICT_NONE)
        return g_strdup (value);
      /* Translators: value, verdict. */
      return g_strdup_printf (_ ("%s, %s"), value, rw_verdict_get_label (asked->verdict));
    case RW_ASKED_STALE:
      /* Translators: value read before something was changed. */
      return value != NULL ? g_strdup_printf (_ ("%s before the change, read it again"), value)
                           : g_strdup (_ ("read it again"));
    case RW_ASKED_OVER:
      return g_strdup (_ ("the meter showed overload, choose a higher range"));
    case RW_ASKED_DUE:
      return g_strdup (_ ("due now"));
    case RW_ASKED_LATER:
      return g_strdup (_ ("later"));
    case RW_ASKED_MISSED:
      return g_strdup (_ ("its time has gone by"));
    case RW_ASKED_UNREAD:
    default:
      return g_strdup (_ ("not read yet"));
    }
}

static const char *
shape_of (const RwAsked *asked)
{
  if (asked->state == RW_ASKED_READ)
    return asked->verdict == RW_VERDICT_NONE ? "✓" : rw_verdict_get_glyph (asked->verdict);
  return asked->state == RW_ASKED_STALE ? "◌" : asked->state == RW_ASKED_MISSED ? "–" : "○";
}

char *
rw_stage_say_asked (const RwAsked *asked)
{
  g_autofree char *spot = rw_asked_describe (asked);
  g_autofree char *state = say_state (asked);

  /* Translators: shape, spot, how it stands. */
  return g_strdup_printf (_ ("%s %s: %s"), shape_of (asked), spot, state);
}

char *
rw_stage_say_reason (const RwGateReason *reason)
{
  if (reason->covered)
    /* Translators: what had spoken against going on. */
    return g_strdup_printf (_ ("↷ Gone past: %s"), reason->text);
  if (reason->gate == RW_GATE_STOP)
    /* Translators: why not to go on. */
    return g_strdup_printf (_ ("■ Stop: %s"), reason->text);
  /* Translators: what to mind. */
  return g_strdup_printf (_ ("▲ Careful: %s"), reason->text);
}

char *
rw_stage_say_hazard (const RwStageText *words)
{
  const char *hazard = rw_stage_hazard_get_label (words->hazard);
  const char *who = rw_stage_who_get_label (words->who);

  return hazard != NULL ? g_strdup_printf ("%s · %s", hazard, who) : g_strdup (who);
}
