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

/* Could any value be proven inside? The best one lies half-way between the limits. */
static gboolean
can_be_shown (double u,
              double lo,
              double hi)
{
  return isinf (lo) || isinf (hi) || rw_chance_inside ((lo + hi) / 2, u, lo, hi) >= RW_VERDICT_SURE;
}

/* The chance of being beyond the likelier one of the limits. With a coarse meter the chances of both sides
 * add up to 0.95 even for a value in the middle, and that proves nothing. */
static double
beyond_one_limit (double value,
                  double u,
                  double lo,
                  double hi)
{
  return MAX (rw_chance_inside (value, u, hi, INFINITY), rw_chance_inside (value, u, -INFINITY, lo));
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

  if (inside >= RW_VERDICT_SURE)
    return RW_VERDICT_INSIDE;
  if (!can_be_shown (u, lo, hi))
    return beyond_one_limit (value, u, lo, hi) >= RW_VERDICT_SURE ? RW_VERDICT_OUTSIDE : RW_VERDICT_BLIND;
  return 1.0 - inside >= RW_VERDICT_SURE ? RW_VERDICT_OUTSIDE : RW_VERDICT_CLOSE;
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
