/* rw-verdict.c: is a value within its limits, and how sure is that?
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-verdict.h"

#include <glib/gi18n-lib.h>
#include <math.h>

double
rw_normal_cdf (double z)
{
  return 0.5 * erfc (-z * M_SQRT1_2);
}

/* Φ(b) − Φ(a) for a ≤ b, taken in the tail where nothing cancels. */
static double
normal_between (double a,
                double b)
{
  if (a > 0)
    return 0.5 * (erfc (a * M_SQRT1_2) - erfc (b * M_SQRT1_2));
  return 0.5 * (erfc (-b * M_SQRT1_2) - erfc (-a * M_SQRT1_2));
}

double
rw_chance_inside (double value,
                  double u,
                  double lo,
                  double hi)
{
  if (isnan (value) || isnan (u))
    return NAN;
  if (u <= 0)
    return value >= lo && value <= hi ? 1.0 : 0.0;
  return normal_between ((lo - value) / u, (hi - value) / u);
}

RwVerdict
rw_verdict_judge (double value,
                  double u,
                  double lo,
                  double hi)
{
  if (isnan (value) || isnan (u) || isnan (lo) || isnan (hi))
    return RW_VERDICT_NONE;

  const double inside = rw_chance_inside (value, u, lo, hi);
  const double at_best = isinf (lo) || isinf (hi)
                             ? 1.0
                             : rw_chance_inside ((lo + hi) / 2, u, lo, hi);

  if (inside >= RW_VERDICT_SURE)
    return RW_VERDICT_INSIDE;
  if (1.0 - inside >= RW_VERDICT_SURE)
    return RW_VERDICT_OUTSIDE;
  return at_best < RW_VERDICT_SURE ? RW_VERDICT_BLIND : RW_VERDICT_CLOSE;
}

const char *
rw_verdict_to_id (RwVerdict verdict)
{
  static const char *const ids[RW_N_VERDICTS] = { "none", "inside", "close", "outside", "blind" };

  g_return_val_if_fail (verdict < RW_N_VERDICTS, "none");
  return ids[verdict];
}

const char *
rw_verdict_get_label (RwVerdict verdict)
{
  switch (verdict)
    {
    case RW_VERDICT_INSIDE:
      return _ ("inside");
    case RW_VERDICT_CLOSE:
      return _ ("too close to call");
    case RW_VERDICT_OUTSIDE:
      return _ ("outside");
    case RW_VERDICT_BLIND:
      return _ ("cannot be shown with this meter");
    case RW_VERDICT_NONE:
      return _ ("no limits here");
    case RW_N_VERDICTS:
    default:
      g_return_val_if_reached ("");
    }
}

const char *
rw_verdict_get_glyph (RwVerdict verdict)
{
  static const char *const glyphs[RW_N_VERDICTS] = { "–", "●", "◐", "▲", "⊘" };

  g_return_val_if_fail (verdict < RW_N_VERDICTS, "–");
  return glyphs[verdict];
}
