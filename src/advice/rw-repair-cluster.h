/* rw-repair-cluster.h: the best order of repairs some of which lie inside something to open.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A case, a lid, a board to be pulled: it is opened once, before the first repair inside, and
 * need not be closed to see whether a repair helped.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define RW_CLUSTER_NONE (-1) /* nothing to open */

/* n causes with weights w ≥ 0 (any scale), repair minutes c ≥ 0 and the cluster each lies in
 * (0 … n_clusters − 1, or RW_CLUSTER_NONE); opening[k] ≥ 0: minutes to open cluster k. Fills
 * @order (room for n) with the best order and returns its expected cost in minutes × weight.
 *
 * Of the ways to go on take the one with the most weight for its minutes: a cause that lies
 * open, by w/c; or a closed cluster with the beginning of its content in order of w/c for which
 * Σw / (opening + Σc) is largest. Optimal (the problem is 1|outtree|Σ w C, Horn 1972; for
 * repairs Ottosen & Jensen 2012). O(n²) here. */
double rw_repair_cluster_order (guint n, const double *w, const double *c, const int *cluster,
                                guint n_clusters, const double *opening, guint *order);

/* What any order costs, in minutes × weight. */
double rw_repair_cluster_cost (guint n, const double *w, const double *c, const int *cluster,
                               guint n_clusters, const double *opening, const guint *order);

G_END_DECLS
