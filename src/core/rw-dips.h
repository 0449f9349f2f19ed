/* rw-dips.h: watches the samples of one spot for dips and steps while somebody wiggles a plug.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The baseline is the median of the last RW_DIPS_BASE quiet samples: a slow drift moves it and is no dip. The noise is
 * from the differences of neighbours, never below the last digit. A sample departs when it is further from the
 * baseline than 6 sigma, 3 last digits and 5 mV (half of what trade practice calls moving). Back within the threshold:
 * a dip (or a peak); RW_DIPS_STEP samples on the new level: a step. Overload, and falls below a fifth of the baseline
 * (a lifted lead), are interruptions and not dips; after one, or a change of the last digit (another range), the
 * baseline is learnt anew.
 */
#pragma once

#include "rw-reading.h"

G_BEGIN_DECLS

#define RW_DIPS_BASE 15 /* samples of the baseline */
#define RW_DIPS_LEARN 7 /* samples before anything is named */
#define RW_DIPS_STEP 8  /* samples away before it is a step */

typedef enum
{
  RW_DIP_DIP,  /* towards 0 and back */
  RW_DIP_PEAK, /* away from 0 and back */
  RW_DIP_STEP, /* a new level */
} RwDipKind;

typedef struct
{
  RwDipKind kind;
  double    start, end; /* seconds: first sample away, last sample away (a step: its first both) */
  double    size;       /* volts, signed as the change of the value: deepest of a dip, new level less old of a step */
  double    base;       /* baseline before it, volts */
} RwDip;

typedef struct _RwDips RwDips;

/* @most: dips kept at most (the oldest are forgotten, not the count), > 0. */
RwDips *rw_dips_new (guint most);
void    rw_dips_free (RwDips *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwDips, rw_dips_free)

/* @t rising seconds; a sample that is not later than the last is left out. TRUE when a dip, peak or step was just
 * completed (it is the last one then). A few microseconds. */
gboolean rw_dips_push (RwDips *self, double t, const RwReading *sample);

guint        rw_dips_get_n (const RwDips *self);            /* kept */
const RwDip *rw_dips_get (const RwDips *self, guint i);     /* oldest first; until the next push */
guint        rw_dips_get_count (const RwDips *self, RwDipKind kind); /* ever */
double       rw_dips_get_base (const RwDips *self);         /* NaN while learning */
double       rw_dips_get_threshold (const RwDips *self);    /* volts; NaN while learning */
double       rw_dips_get_watched (const RwDips *self);      /* seconds under watch; gaps above 5 s, interruptions and
                                                             * learning do not count */
guint        rw_dips_get_interruptions (const RwDips *self);
gboolean     rw_dips_is_away (const RwDips *self);          /* in the middle of one */

/* The last dip or step towards 0 that began within @window seconds before @t (or at it). (nullable) */
const RwDip *rw_dips_find_before (const RwDips *self, double t, double window);

G_END_DECLS
