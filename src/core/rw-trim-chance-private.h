/* rw-trim-chance-private.h: the chance that several rails are inside at once, bare of the fit.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* What a rail shows when the setting is off by e volts of the reference: normal around value + slope·e. */
typedef struct
{
  double value;         /* volts */
  double slope;         /* volts a volt */
  double var, var1, var2; /* its variance: var + var1·e + var2·e², volts²; below 0 counts as 0 */
  double lo, hi;        /* limits of the true volts, lo < hi; may be infinite */
} RwTrimChanceRail;

/* The chance that all rails are inside: a meter shows V·(1 + s) for true volts V, s rectangular within
 * ±@half_scale (a share), and e rectangular within ±@half_setting volts; both are the same for all rails,
 * which are independent given both. 0 for both halves: the plain product. */
double rw_trim_chance_all (const RwTrimChanceRail *rails, guint n, double half_scale, double half_setting);

G_END_DECLS
