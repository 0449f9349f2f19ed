/* rw-typed-check.h: does a typed value look like a slip? Asked before it is kept, never silently mended.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-profile.h"
#include "rw-quantity.h"

G_BEGIN_DECLS

typedef enum
{
  RW_SLIP_NONE,
  RW_SLIP_MINUS, /* a positive value on a negative rail, of plausible size */
  RW_SLIP_SIGN,  /* a negative value on a positive rail: leads reversed? */
  RW_SLIP_SCALE, /* a decimal point or unit slipped: 120 for 0.120, 50.2 for 5.02 */
  RW_SLIP_MAINS, /* above 60 V on a low-voltage point: stop */
} RwSlip;

/* @suggestion receives the value probably meant (base units); untouched for NONE and MAINS. */
RwSlip rw_typed_check (const RwRail *rail, const char *rail_id, RwPlace place, RwKind kind,
                       const RwQuantityTyped *typed, double *suggestion);

G_END_DECLS
