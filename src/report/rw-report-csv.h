/* rw-report-csv.h: a session as a table for a spreadsheet or a script.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-session.h"

G_BEGIN_DECLS

/* RFC 4180: a heading, then one row an event, in the order of the file, each ended by CR LF.
 * UTF-8, points in numbers whatever the locale; every number of the session reads back as the
 * same double, numbers worked out have nine digits. The columns:
 *
 *   n, t        number of the event, seconds since the session's start
 *   type        payload key of the session file; "unknown" for an event that is not understood
 *   rail, place, kind, value, over, step, meter
 *               of a reading or sample; value is empty when over
 *   u           its total standard uncertainty, as written or worked out, in the unit of value
 *   verdict     against the limits that hold at that spot: inside, close, outside, blind, none
 *   margin      1 in the middle of the limits, 0 on one, negative outside; empty without limits
 *   power, board, warm   of a setup event, as the file writes them; empty where nothing was said
 *   id          of a symptom, check, cause or stage; of a retract, the event number taken back
 *   state       present, absent, cured; the outcome of a finding; fixed, no-change; of a trim,
 *               moved or not-moved; of a stage, read (its hazards) or against (advice)
 *   text        of a note, a mark or a gap; of a stage, why it goes on against advice; an event
 *               not understood stands here as its whole line
 *   retracted   true when a live retract names the event
 *
 * (transfer full) O(events). */
GString *rw_report_csv (RwSession *session);

G_END_DECLS
