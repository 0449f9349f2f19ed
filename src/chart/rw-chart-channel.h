/* rw-chart-channel.h: everything measured at one spot, ready to draw.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Samples are joined by a line only where the stream went on. A hole (a NaN in the pyramid) is put
 *  1. where the meter showed overload;
 *  2. where the caller says so: the meter was lost;
 *  3. where the pause before a sample is longer than 1.5 s and than four times the shorter of the
 *     two intervals before it: the leads were elsewhere. A slow meter has its line from the third
 *     sample on.
 * Rule 3 looks only at what the pyramid holds, so it says the same after a truncation.
 */
#pragma once

#include "rw-event.h"
#include "rw-meter-facts.h"
#include "rw-pyramid.h"

G_BEGIN_DECLS

/* A kept reading. */
typedef struct
{
  double   t;     /* seconds */
  double   value; /* NaN when over */
  double   u;     /* total standard uncertainty; 0 when nothing is known; NaN when over */
  guint    index; /* of the event in the session */
  gboolean over;
} RwChartReading;

/* Everything measured at one spot: one rail, place and kind (DC or ripple). */
typedef struct _RwChartChannel RwChartChannel;

struct _RwChartChannel
{
  const RwChartChannel *whole; /* of which this is a part: all its samples; NULL: they are our own */
  const char   *rail; /* interned */
  RwPlace       place;
  RwKind        kind;
  const RwRail *facts;    /* NULL for ground and for a rail that the profile does not have */
  guint         series;   /* rw_theme_series_index () */
  gboolean      limited;  /* lo and hi are laid down */
  double        lo, hi;   /* lo may be −INFINITY */
  double        gain;     /* position = gain·value + offset; NaN when not limited */
  double        offset;
  RwPyramid    *samples;  /* tags are event indices; NaN is a hole */
  GArray       *readings; /* of RwChartReading, in the order of the session */
};

/* @reading names the spot, in volts DC or AC. */
RwChartChannel *rw_chart_channel_new (const RwProfile *profile, const RwReading *reading);

/* Of the same spot, with none of its readings, and none of its samples until they are seen. @whole must outlive it. */
RwChartChannel *rw_chart_channel_new_part (const RwChartChannel *whole);
void            rw_chart_channel_free (RwChartChannel *self);

/* Of a part: the samples that came before event @n_events are there. O(log samples). */
void rw_chart_channel_see (RwChartChannel *self, guint n_events);

/* Events that are not at a finite time are left out. @meter: (nullable). */
void rw_chart_channel_add_sample (RwChartChannel *self, const RwEvent *event, guint index);
void rw_chart_channel_add_reading (RwChartChannel *self, const RwEvent *event, guint index,
                                   const RwMeterFacts *meter);
void rw_chart_channel_break (RwChartChannel *self, double t, guint index); /* rule 2 */

/* Keeps what came before event @n_events; of a part also sees no more. */
void rw_chart_channel_truncate (RwChartChannel *self, guint n_events);

/* Newest reading at or before @t. (nullable) O(readings) */
const RwChartReading *rw_chart_channel_last_reading (const RwChartChannel *self, double t);

G_END_DECLS
