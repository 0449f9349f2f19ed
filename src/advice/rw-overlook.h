/* rw-overlook.h: where to look next for something that a look can miss.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A cold joint, a hairline crack, a worn contact: it is in exactly one of n places; a look at
 * the right place finds it with a chance below 1, and looks are independent. p[i]: chance that
 * it is in place i (any scale); finds[i]: chance that a look there finds it, 0 < finds ≤ 1;
 * minutes[i] > 0: of one look.
 *
 * Look where p_i finds_i (1 − finds_i)^looks_i / minutes_i is largest, looks_i being the looks
 * already spent there. This minimises the expected minutes until found (Blackwell's theorem, in
 * Matula 1964; Kadane 1968).
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The next place, after looks[i] fruitless looks at each. Ties: the first. */
guint rw_overlook_next (guint n, const double *p, const double *finds, const double *minutes,
                        const guint *looks);

/* Expected minutes until found, following the rule from the start, in minutes × the sum of p.
 * Sums until a look adds less than 1e-15 of it, or @most_looks are spent. */
double rw_overlook_cost (guint n, const double *p, const double *finds, const double *minutes,
                         guint most_looks);

G_END_DECLS
