/* rw-series.h: in which order to inspect parts that must all be good.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A chain of fuses, contacts, connectors: part i is bad with the chance p[i], independent of
 * the others, and inspecting it takes minutes[i]. Inspect until a bad one is found. The
 * expected minutes, Σ_k minutes_k Π_{l<k} (1 − p_l), are least in order of rising minutes/p
 * (Mitten 1960).
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* order[0] is inspected first; ties in the order given. @order has room for n. */
void rw_series_sort (guint n, const double *p, const double *minutes, guint *order);

/* Expected minutes of any order. */
double rw_series_cost (guint n, const double *p, const double *minutes, const guint *order);

G_END_DECLS
