/* rw-chart-words.h: what the chart says in words.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-chart.h"
#include "rw-scene.h"

G_BEGIN_DECLS

/* Who knows names for ids of symptoms and causes; func may be NULL. */
typedef struct
{
  RwChartNameFunc func;
  gpointer        user_data;
} RwChartNamer;

/* Of a vertical, without its time, on one line: "reset seen", "trim 3", "board fitted". (transfer
 * full) */
char *rw_chart_words_vertical (RwSession *session, const RwChartVertical *vertical,
                               const RwChartNamer *namer);

/* Completes a hit whose kind, n, t, x and y are set: rail, place, value, u, verdict, text.
 * @index: of the event. */
void rw_chart_words_fill_hit (RwSession *session, guint index, const RwChartNamer *namer,
                              RwChartHit *hit);

/* Same for what is expected of @channel; kind, t, x and y are set. */
void rw_chart_words_fill_expected (const RwChartChannel *channel, const RwExpectedKnot *knot,
                                   RwChartHit *hit);

/* A few sentences about the whole picture. (transfer full) */
char *rw_chart_words_summary (const RwScene *scene);

G_END_DECLS
