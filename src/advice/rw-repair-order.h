/* rw-repair-order.h: what repairing straight away costs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * n causes with weights w (any scale) and repair minutes c; all results are in minutes ×
 * weight: divide by the sum of the weights for minutes.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Expected cost of repairing in the best order, which is decreasing w/c (swap argument;
 * Kadane & Simon 1977, Heckerman, Breese & Rommelse 1995), in closed form without sorting:
 *   U = Σ_i c_i w_i + Σ_{i<j} min (c_i w_j, c_j w_i). O(n²). */
double rw_repair_cost (guint n, const double *w, const double *c);

/* The cost if the cause were known: Σ c_i w_i, a lower bound of any plan (Vomlelová & Vomlel
 * 2000). */
double rw_repair_cost_known (guint n, const double *w, const double *c);

/* The first repair of the best order, the largest w/c; −1 when no cause has weight. Ties:
 * the first. */
int rw_repair_best (guint n, const double *w, const double *c);

G_END_DECLS
