/* rw-coverage.h: how far a sum of rectangular and normal errors reaches 95 % of the time.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * 1.645 for one rectangle, 1.902 for two alike, 1.960 for many or for a normal error.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Two rectangular errors and a normal one, independent, by their standard uncertainties (≥ 0, any
 * unit). The half-width that holds the sum 95 % of the time, over its standard uncertainty;
 * exact, good to 1e-9 relative. 1.959964 when all are 0. */
double rw_coverage_factor (double rectangle, double other_rectangle, double normal);

/* Any number of independent rectangular errors, and a normal one. With p the share of a
 * rectangular error in the variance of the whole: @sum2 = Σ p², @sum3 = Σ p³ over the rectangular
 * ones. Good to 0.4 %. */
double rw_coverage_factor_of_many (double sum2, double sum3);

G_END_DECLS
