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

/* The whole best order: order[0] is repaired first. Ties, and causes without weight, in the
 * order given; the latter last. @order has room for n. O(n log n). */
void rw_repair_sort (guint n, const double *w, const double *c, guint *order);

/* The cost when somebody can be called at any time who mends whatever it is for @service
 * minutes (≥ 0): repair the first *n_own of the best order, then call. Choosing the best of all
 * n + 1 places to stop is optimal: where any repair pays before the call, each with a larger
 * w/c pays as well, so what is repaired is always the beginning of the order. (Lin 2015 stops
 * before the first i with c_i ≥ service · w_i / Σ left, which can be too early when only few
 * causes are left, as a repair that does not pay by itself may lead to one that does.)
 * *n_own (nullable): the number of repairs before the call; n when nobody is called. Of equal
 * costs the fewest. O(n log n). */
double rw_repair_cost_service (guint n, const double *w, const double *c, double service,
                               guint *n_own);

G_END_DECLS
