/* rw-distribution.h: the chances behind the tests of a fit: χ², F and Student's t.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* All return NAN for arguments outside their range, infinities included where named. */

/* The chance that χ² with @dof degrees of freedom is at least @chi2 (≥ 0, may be infinite).
 * 1 when @dof is 0: with nothing left over nothing can misfit. */
double rw_chi2_survival (double chi2, guint dof);

/* The chance that F with @d1 and @d2 (≥ 1) degrees of freedom is at least @f (≥ 0, may be infinite). */
double rw_f_survival (double f, guint d1, guint d2);

/* Student's t with @dof (≥ 1) degrees of freedom: half the width of the interval that holds the share
 * @p (0 < p < 1) in its middle: 2.2621… for p = 0.95 and dof = 9. */
double rw_t_half_width (double p, guint dof);

G_END_DECLS
