/* rw-typed-check.c: does a typed value look like a slip?
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Plausible: on a DC rail 40 % … 160 % of the nominal; for a drop up to 1 V; for ripple up to a fifth of the
 * nominal. A value that is not plausible but would be after one change (its sign, or a factor of
 * 10, 100 or 1000) is asked about. A dead rail (near 0) is plausible: rails do die.
 */
#include "config.h"

#include "rw-typed-check.h"

#include <math.h>

/* No DC point that a bench user may touch carries more (extra-low voltage). */
static const double mains_from = 60.0;

static const double dead_share = 0.12;

static gboolean
is_plausible (const RwRail *rail,
              RwPlace       place,
              RwKind        kind,
              double        value)
{
  if (kind == RW_KIND_DC && place == RW_PLACE_WIRE)
    return fabs (value) <= 1.0;
  if (rail == NULL || (kind != RW_KIND_DC && kind != RW_KIND_RIPPLE))
    return TRUE;

  const double share = value / rail->nominal;

  if (kind == RW_KIND_RIPPLE)
    return fabs (share) <= 0.2;
  return (share >= 0.4 && share <= 1.6) || fabs (share) <= dead_share;
}

/* The nearest factor that makes the value plausible, and not just dead. */
static gboolean
find_scale (const RwRail *rail,
            RwPlace       place,
            RwKind        kind,
            double        value,
            double       *suggestion)
{
  static const double factors[] = { 0.1, 10, 0.01, 100, 0.001, 1000 };

  for (guint i = 0; i < G_N_ELEMENTS (factors); i++)
    {
      const double scaled = value * factors[i];
      const gboolean dead = kind == RW_KIND_DC && rail != NULL && place != RW_PLACE_WIRE
                            && fabs (scaled / rail->nominal) <= dead_share;

      if (is_plausible (rail, place, kind, scaled) && !dead)
        {
          *suggestion = scaled;
          return TRUE;
        }
    }
  return FALSE;
}

RwSlip
rw_typed_check (const RwRail          *rail,
                const char            *rail_id,
                RwPlace                place,
                RwKind                 kind,
                const RwQuantityTyped *typed,
                double                *suggestion)
{
  const double value = typed->value;
  const gboolean negative_rail = rail != NULL && rail->nominal < 0 && place != RW_PLACE_WIRE;

  if (typed->over || isnan (value) || (kind != RW_KIND_DC && kind != RW_KIND_RIPPLE))
    return RW_SLIP_NONE;
  if (is_plausible (rail, place, kind, value))
    return RW_SLIP_NONE;
  if (kind == RW_KIND_DC && place != RW_PLACE_WIRE && rail != NULL
      && is_plausible (rail, place, kind, -value))
    {
      *suggestion = -value;
      return negative_rail && !typed->has_sign ? RW_SLIP_MINUS : RW_SLIP_SIGN;
    }
  if (find_scale (rail, place, kind, value, suggestion)
      || (negative_rail && value > 0 && find_scale (rail, place, kind, -value, suggestion)))
    return RW_SLIP_SCALE;
  return fabs (value) > mains_from ? RW_SLIP_MAINS : RW_SLIP_NONE;
}
