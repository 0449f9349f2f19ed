/* rw-report-json.h: a session's summary, and the whole session, as JSON.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One line each, ended by a newline. Keys stand in the order of the format; the same session
 * gives the same bytes. Numbers never obey the locale; NaN and infinities are null. "text" of a
 * warning is for people and translated.
 */
#pragma once

#include "rw-summary.h"

G_BEGIN_DECLS

/* Appends the summary object (no newline):
 *
 *   cabinet        its name
 *   events         every event read, also retracted ones and those not understood
 *   readings, samples
 *                  live and retracted alike
 *   seconds        time of the last event since the start
 *   skipped_lines  numbers of the damaged lines; the header is line 1
 *   torn_tail      the file ended in the middle of a line
 *   rails          the last live DC reading of each rail and place: a wire's drop has place
 *                  "wire", the ground return is rail "gnd"; value and u are null when the meter
 *                  showed overload, margin is null and verdict "none" where no limits are.
 *                  Ripple, resistance, current and temperature stand in the text report only.
 *   trim           empty: no fit is made
 *   symptoms       the last live state of each symptom spoken of
 *   causes         every cause that the cabinet can have, the likeliest first
 *   next           see rw_summary_list_next (); minutes include the change of setup, saves is
 *                  minutes against repairing straight away
 *   warnings       of readings that still hold */
void rw_report_json_append_summary (const RwSummary *summary, GString *out);

/* The summary object as a line. (transfer full) */
GString *rw_report_json_summary (const RwSummary *summary);

/* {"header":{…},"summary":{…},"retracted":[n, …],"events":[{…}, …]}: header and events as the
 * session file has them, keys that are not understood included; "retracted" lists the numbers of
 * the events that a live retract names. (transfer full) O(events). */
GString *rw_report_json_session (const RwSummary *summary);

G_END_DECLS
