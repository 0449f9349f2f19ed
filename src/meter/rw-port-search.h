/* rw-port-search.h: looks for a meter on one port, in a thread of its own.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-meter-finder.h"

G_BEGIN_DECLS

typedef struct _RwPortSearch RwPortSearch;

/* What a search has come to. */
typedef struct
{
  gboolean   ended;    /* the thread does nothing any more, and its port is closed */
  char      *words;    /* translated: what is tried now; NULL before the first */
  GPtrArray *found;    /* of RwMeterFound, the likeliest first */
  char      *trouble;  /* translated: why the port could not be tried; NULL */
  char      *stranger; /* text that came and makes no reading; NULL */
  GBytes    *bytes;    /* of a search that only listens: what came */
} RwPortReport;

void rw_port_report_clear (RwPortReport *self);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (RwPortReport, rw_port_report_clear)

/* Searches until something is sure, or @until_us (monotonic). (transfer full) */
RwPortSearch *rw_port_search_start (const RwMeterAddress *address,
                                    gint64                until_us,
                                    RwPortMaker           maker,
                                    gpointer              data);

/* Only listens to a meter that is known, with its own line, until so many bytes came. (transfer full) */
RwPortSearch *rw_port_search_start_lesson (const RwMeterAddress *address,
                                           gsize                 enough_bytes,
                                           gint64                until_us,
                                           RwPortMaker           maker,
                                           gpointer              data);

void rw_port_search_unref (RwPortSearch *self);

/* Asks the thread to end; it does so soon. */
void rw_port_search_stop (RwPortSearch *self);

/* Waits for the end; FALSE when it did not come in time. */
gboolean rw_port_search_wait (RwPortSearch *self, gint64 until_us);

/* @report is to be cleared. */
void rw_port_search_look (RwPortSearch *self, RwPortReport *report);

G_END_DECLS
