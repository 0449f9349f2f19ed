/* rw-line-pattern.h: a user's own description of a meter's lines.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A pattern is text with fields in braces; a whole line must match it:
 *
 *   {number}        the number, or a usual overload word (OL, OVLD, ----); once, always needed
 *   {number|FLOW}   as above, and FLOW too means overload; more words may follow after more bars
 *   {unit}          a unit such as mV, kΩ, VDC; this or the next is needed once
 *   {unit=mV}       takes nothing from the line: the unit is always this
 *   {sign}          + or − that stands apart from the number; may be missing
 *   {mode}          DC, AC, DIODE, …; may be missing
 *   {any}           any text, also none
 *   a blank         any number of blanks, also none
 *   {{ and }}       a brace
 *   all else        itself
 *
 * "{number} {unit}" reads "5.012 V"; "{any};{sign};{number};{unit}" reads "17;-;5.012;V".
 *
 * {any} takes as little as it can, and never a part of a number: "{any}{number} {unit}" does
 * not read 5 V from "1,5 V". As in a file name pattern the leftmost match up to each {any} is
 * enough, so that the time is bounded by pattern length × line length.
 */
#pragma once

#include "rw-line-fields.h"

G_BEGIN_DECLS

typedef struct _RwLinePattern RwLinePattern;

/* (transfer full); NULL with RW_DECODER_ERROR_PATTERN when it makes no sense. */
RwLinePattern *rw_line_pattern_new (const char *text, GError **error);
void           rw_line_pattern_free (RwLinePattern *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwLinePattern, rw_line_pattern_free)

/* As it was written. */
const char *rw_line_pattern_get_text (const RwLinePattern *self);

/* @clean comes from rw_line_text_clean (). FALSE when the line does not match. */
gboolean rw_line_pattern_read (const RwLinePattern *self,
                               const char          *clean,
                               gsize                n,
                               char                 mark,
                               RwLineFields        *fields);

G_END_DECLS
