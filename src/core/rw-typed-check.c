/* rw-typed-check.c: does a typed value look like a slip?
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Plausible: on a DC rail 40 % … 160 % of the nominal; for a drop up to 1 V; for ripple up to a fifth of the
 * nominal; where nothing is known of a rail, anything that is not mains-sized. A value that is not plausible
 * but would be after a change (its sign, a factor of 10, 100 or 1000, or both) is asked about. A dead rail
 * (near 0) is plausible: rails do die. On a DC rail 502 is a slip of 5.02, but 230 is no slip of 2.3.
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
  if (rail == NULL)
    return fabs (value) <= mains_from;

  const double share = value / rail->nominal;

  if (kind == RW_KIND_RIPPLE)
    return fabs (share) <= 0.2;
  return (share >= 0.4 && share <= 1.6) || fabs (share) <= dead_share;
}

/* The typed digits with the point moved: one conversion from decimal text, so that 50.2 becomes the very
 * double that 5.02 is. */
static double
move_point (const RwQuantityTyped *typed,
            int                    power)
{
  if (!(typed->step > 0))
    return typed->value * pow (10, power);

  char text[64];
  const int last_digit = (int) lround (log10 (typed->step));

  g_snprintf (text, sizeof text, "%.0fe%d", typed->value / typed->step, last_digit + power);
  return g_ascii_strtod (text, NULL);
}

/* Would the value be what was meant? A dead rail is plausible, but nobody means it by a slip; and what may be
 * a mains voltage is only taken for a slip when it then comes out near the nominal. */
static gboolean
is_likely (const RwRail *rail,
           RwPlace       place,
           RwKind        kind,
           double        value,
           gboolean      mains_sized)
{
  if (!is_plausible (rail, place, kind, value))
    return FALSE;
  if (kind == RW_KIND_RIPPLE || place == RW_PLACE_WIRE)
    return TRUE;

  const double share = fabs (value / rail->nominal);

  return mains_sized ? share >= 0.8 && share <= 1.2 : share > dead_share;
}

/* The nearest power of ten, and the sign, that make the value a likely one. */
static gboolean
find_scale (const RwRail          *rail,
            RwPlace                place,
            RwKind                 kind,
            const RwQuantityTyped *typed,
            double                *suggestion)
{
  static const int powers[] = { -1, 1, -2, 2, -3, 3 };
  const gboolean mains_sized = fabs (typed->value) > mains_from;

  if (rail == NULL && !(place == RW_PLACE_WIRE && kind == RW_KIND_DC))
    return FALSE;
  for (guint i = 0; i < 2 * G_N_ELEMENTS (powers); i++)
    {
      const double moved = move_point (typed, powers[i % G_N_ELEMENTS (powers)]);
      const double candidate = i < G_N_ELEMENTS (powers) ? moved : -moved;

      if (is_likely (rail, place, kind, candidate, mains_sized))
        {
          *suggestion = candidate;
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
  if (find_scale (rail, place, kind, typed, suggestion))
    return RW_SLIP_SCALE;
  return fabs (value) > mains_from ? RW_SLIP_MAINS : RW_SLIP_NONE;
}
