/* rw-chart-data.h: what there is to draw of a session, kept up with it as it grows.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Follows the session's "added" and "rewound"; only live (not retracted) events are here. Knows
 * nothing of pixels or views, so that every chart of one session shares one (rw_chart_data_for
 * ()).
 *
 * Signal "changed": there is something else to draw.
 */
#pragma once

#include "rw-chart-channel.h"
#include "rw-session.h"

G_BEGIN_DECLS

/* A moment that is drawn from top to bottom. */
typedef struct
{
  double      t;
  guint       index; /* of the event in the session */
  RwEventType type;  /* SETUP, TRIM, SYMPTOM, REPAIR, MARK, NOTE or GAP */
  guint       count; /* TRIM: which turn this is, from 1 */
  RwSetup     news;  /* SETUP: what changed; RW_SAID_NOT for the rest */
  RwSetup     after; /* SETUP: all that is known from here on */
} RwChartVertical;

#define RW_TYPE_CHART_DATA (rw_chart_data_get_type ())
G_DECLARE_FINAL_TYPE (RwChartData, rw_chart_data, RW, CHART_DATA, GObject)

RwChartData *rw_chart_data_new (RwSession *session); /* O(events) */

/* The one that all charts of @session share, made when there is none yet. (transfer full) */
RwChartData *rw_chart_data_for (RwSession *session);

RwSession *rw_chart_data_get_session (RwChartData *self); /* borrowed */

/* Takes in what the session gained or lost, when its signal has not come here yet. Pointers into
 * the data are void afterwards. */
void rw_chart_data_catch_up (RwChartData *self);

guint                 rw_chart_data_get_n_channels (RwChartData *self);
const RwChartChannel *rw_chart_data_get_channel (RwChartData *self, guint i);
const RwChartChannel *rw_chart_data_find_channel (RwChartData *self, const char *rail,
                                                  RwPlace place, RwKind kind); /* (nullable) */

guint                  rw_chart_data_get_n_verticals (RwChartData *self);
const RwChartVertical *rw_chart_data_get_vertical (RwChartData *self, guint i);

G_END_DECLS
